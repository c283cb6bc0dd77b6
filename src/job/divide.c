/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "job/divide.h"

#include "base/units.h"
#include "job/edge.h"

/* A corner nearer to the line is on it (mm). */
#define ON_LINE_MM 0.01
/* An edge is looked at in so many places for where it passes the line. */
#define N_PLACES 32

typedef struct
{
  SqPoint at;
  SqVector direction;
} Line;

static double
left_of (const Line *line, SqPoint p)
{
  return sq_cross (line->direction, sq_sub (p, line->at));
}

/* Where between @low and @high, on whose sides of the line they are, the edge passes it. */
static double
passage (const Line *line, const SqCorner *corner, const SqCorner *next, double low, double high)
{
  gboolean low_is_left = left_of (line, sq_edge_point (corner, next, low)) > 0;

  for (guint i = 0; i < 60; i++)
    {
      double middle = (low + high) / 2;
      if ((left_of (line, sq_edge_point (corner, next, middle)) > 0) == low_is_left)
        low = middle;
      else
        high = middle;
    }
  return (low + high) / 2;
}

/* The first place inside the edge where it passes the line; FALSE: it does not. */
static gboolean
find_passage (const Line *line, const SqCorner *corner, const SqCorner *next, SqPoint *at)
{
  double before = left_of (line, corner->at), low = 0;

  before = fabs (before) < ON_LINE_MM ? 0 : before;
  for (guint i = 1; i <= N_PLACES; i++)
    {
      double t = (double) i / N_PLACES;
      double here = left_of (line, sq_edge_point (corner, next, t));
      here = i == N_PLACES && fabs (here) < ON_LINE_MM ? 0 : here;
      if (before * here < 0)
        {
          *at = sq_edge_point (corner, next, passage (line, corner, next, low, t));
          return TRUE;
        }
      if (here == 0)
        continue;
      before = here;
      low = t;
    }
  return FALSE;
}

/* @outline with a corner wherever its outer ring passes the line. */
static SqOutline *
with_corners_on_line (const SqOutline *outline, const Line *line)
{
  g_autoptr (SqOutline) now = sq_outline_ref ((SqOutline *) outline);
  guint n;

  for (guint i = 0; sq_outline_ring (now, 0, &n) != NULL && i < n; i++)
    {
      const SqCorner *ring = sq_outline_ring (now, 0, &n);
      SqPoint at;
      if (!find_passage (line, &ring[i], &ring[(i + 1) % n], &at))
        continue;
      SqOutline *more = sq_outline_with_corner_on_edge (now, ring[i].id, at, NULL);
      if (more == NULL)
        return NULL;
      sq_outline_unref (now);
      now = more;
    }
  return g_steal_pointer (&now);
}

static gboolean
edge_is_left (const Line *line, const SqCorner *corner, const SqCorner *next)
{
  return left_of (line, sq_edge_point (corner, next, 0.5)) > 0;
}

/* The corners of the outer ring's one stretch left of the line, closed along it. FALSE where it is
 * not one. */
static gboolean
add_outer (GArray *corners, const SqCorner *ring, guint n, const Line *line)
{
  guint first = n, n_passages = 0, n_left = 0;

  for (guint i = 0; i < n; i++)
    {
      gboolean before = edge_is_left (line, &ring[(i + n - 1) % n], &ring[i]);
      gboolean after = edge_is_left (line, &ring[i], &ring[(i + 1) % n]);
      n_passages += before != after ? 1 : 0;
      n_left += after ? 1 : 0;
      first = !before && after ? i : first;
    }
  if (n_passages != 2)
    return FALSE;
  for (guint i = 0; i <= n_left; i++)
    {
      SqCorner corner = ring[(first + i) % n];
      corner.front = FALSE;
      /* A corner that the line goes through is not rounded any more. */
      if (i == 0 || i == n_left)
        {
          corner.radius_mm = 0;
          corner.given &= ~(guint32) SQ_GIVEN_RADIUS;
        }
      if (i == n_left)
        {
          corner.shape = SQ_SHAPE_STRAIGHT;
          corner.kind = SQ_EDGE_NEIGHBOUR;
          corner.given = SQ_GIVEN_KIND;
          corner.note = NULL;
        }
      g_array_append_val (corners, corner);
    }
  return TRUE;
}

/* How much of a ring is left of the line: 1 all, 0 nothing, −1 it passes it. */
static int
side_of_ring (const SqCorner *ring, guint n, const Line *line)
{
  SqPoint at;

  for (guint i = 0; i < n; i++)
    if (find_passage (line, &ring[i], &ring[(i + 1) % n], &at))
      return -1;
  return edge_is_left (line, &ring[0], &ring[1 % n]) ? 1 : 0;
}

SqOutline *
sq_outline_left_of (const SqOutline *outline, SqPoint at, SqVector direction)
{
  const Line line = { at, direction };
  g_autoptr (SqOutline) cut = with_corners_on_line (outline, &line);
  g_autoptr (GArray) corners = g_array_new (FALSE, FALSE, sizeof (SqCorner));
  g_autoptr (GArray) sizes = g_array_new (FALSE, FALSE, sizeof (guint));

  for (guint r = 0; cut != NULL && r < sq_outline_n_rings (cut); r++)
    {
      guint n, before = corners->len;
      const SqCorner *ring = sq_outline_ring (cut, r, &n);
      if (ring == NULL)
        return NULL;
      int side = r > 0 ? side_of_ring (ring, n, &line) : 1;
      if (side < 0 || (r == 0 && !add_outer (corners, ring, n, &line)))
        return NULL;
      if (r > 0 && side > 0)
        g_array_append_vals (corners, ring, n);
      n = corners->len - before;
      if (n > 0)
        g_array_append_val (sizes, n);
    }
  if (sizes->len == 0)
    return NULL;
  return sq_outline_new ((const SqCorner *) corners->data, (const guint *) sizes->data, sizes->len);
}
