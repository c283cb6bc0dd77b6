/* SPDX-License-Identifier: GPL-3.0-or-later */
/* Seats made symmetric, and corners put in and taken out on both sides. */
#include "job/symmetry.h"

#include "base/units.h"
#include "job/edge.h"

/* Corners this near to the axis (mm) are on it; the nearest place on a free curve is found to
 * less. */
#define ON_AXIS_MM 1e-4

#define HALVINGS 60

/* --- corners on both sides ----------------------------------------------------------------- */

static SqTwins
twins_of (const SqOutline *outline, const SqAxis *axis, SqId id)
{
  g_autoptr (GArray) twins = sq_outline_twins (outline, axis);

  for (guint i = 0; i < twins->len; i++)
    if (g_array_index (twins, SqTwins, i).corner == id)
      return g_array_index (twins, SqTwins, i);
  return (SqTwins){ id, 0, 0 };
}

static const SqCorner *
next_corner (const SqOutline *outline, SqId id, const SqCorner **next)
{
  guint ring = 0, i = 0, n;
  const SqCorner *corner = sq_outline_corner (outline, id, &ring, &i);
  const SqCorner *corners = sq_outline_ring (outline, ring, &n);

  *next = &corners[(i + 1) % n];
  return corner;
}

static double
away_mm (const SqOutline *outline, SqId edge, SqPoint p)
{
  const SqCorner *next, *corner = next_corner (outline, edge, &next);
  double t;

  return sq_edge_nearest_mm (corner, next, p, &t);
}

SqOutline *
sq_outline_with_corners_on_edges (const SqOutline *outline, SqId edge, SqPoint p,
                                  const SqAxis *axis, SqId new_ids[2])
{
  SqId twin = twins_of (outline, axis, edge).edge_twin;
  SqPoint image = sq_axis_mirrored (axis, p);
  SqOutline *both;

  new_ids[0] = new_ids[1] = 0;
  if (twin == edge && fabs (sq_axis_left_mm (axis, p)) <= SQ_TIE_MM)
    {
      p = sq_axis_foot (axis, p);
      twin = 0;
    }
  g_autoptr (SqOutline) one = sq_outline_with_corner_on_edge (outline, edge, p, &new_ids[0]);
  if (one == NULL || twin == 0)
    return g_steal_pointer (&one);
  if (twin == edge && away_mm (one, new_ids[0], image) < away_mm (one, edge, image))
    twin = new_ids[0];
  both = sq_outline_with_corner_on_edge (one, twin, image, &new_ids[1]);
  return both != NULL ? both : g_steal_pointer (&one);
}

SqOutline *
sq_outline_without_twins (const SqOutline *outline, SqId id, const SqAxis *axis)
{
  SqId twin = twins_of (outline, axis, id).twin;
  g_autoptr (SqOutline) one = sq_outline_without_corner (outline, id);

  return twin == 0 || twin == id || one == NULL ? g_steal_pointer (&one)
                                                : sq_outline_without_corner (one, twin);
}

/* --- one side for both --------------------------------------------------------------------- */

typedef struct
{
  const SqOutline *outline;
  SqAxis axis; /* turned so that the side to keep is on its left */
  GArray *twins;
  SqId next_id;
  GArray *corners, *sizes; /* what is made */
} Making;

/* A ring of the outline, and which side its corners are on: 1 to keep, 0 on the axis, −1. */
typedef struct
{
  const SqCorner *corners;
  const SqTwins *twins;
  int *side;
  guint n;
} Ring;

static void
making_init (Making *making, const SqOutline *outline, const SqAxis *axis)
{
  *making = (Making){ .outline = outline,
                      .axis = *axis,
                      .twins = sq_outline_twins (outline, axis),
                      .next_id = sq_outline_new_corner_id (outline),
                      .corners = g_array_new (FALSE, FALSE, sizeof (SqCorner)),
                      .sizes = g_array_new (FALSE, FALSE, sizeof (guint)) };
}

static void
making_clear (Making *making)
{
  g_array_unref (making->twins);
  g_array_unref (making->corners);
  g_array_unref (making->sizes);
}

static Ring
ring_of (const Making *making, guint index)
{
  guint first = 0;
  Ring ring = { 0 };

  for (guint r = 0; r < index; r++, first += ring.n)
    sq_outline_ring (making->outline, r, &ring.n);
  ring.corners = sq_outline_ring (making->outline, index, &ring.n);
  ring.twins = (const SqTwins *) making->twins->data + first;
  ring.side = g_new (int, ring.n);
  for (guint i = 0; i < ring.n; i++)
    {
      double left_mm = sq_axis_left_mm (&making->axis, ring.corners[i].at);
      gboolean is_on = fabs (left_mm) <= ON_AXIS_MM || ring.twins[i].twin == ring.corners[i].id;
      ring.side[i] = is_on ? 0 : left_mm > 0 ? 1 : -1;
    }
  return ring;
}

static gboolean
is_image (const SqAxis *axis, SqPoint p, SqPoint q)
{
  return sq_distance (sq_axis_mirrored (axis, p), q) <= SQ_TIE_MM;
}

static gboolean
is_used (const Making *making, SqId id)
{
  for (guint i = 0; i < making->corners->len; i++)
    if (g_array_index (making->corners, SqCorner, i).id == id)
      return TRUE;
  return FALSE;
}

/* The corner of @ring on the other side where the image of corner @i comes, or NULL. */
static const SqCorner *
stand_in (const Making *making, const Ring *ring, guint i)
{
  const SqCorner *found = NULL;

  for (guint k = 0; k < ring->n; k++)
    {
      const SqCorner *corner = &ring->corners[k];
      gboolean is_twin = corner->id == ring->twins[i].twin;
      if (ring->side[k] < 0 && !is_used (making, corner->id)
          && (is_twin
              || (found == NULL && is_image (&making->axis, ring->corners[i].at, corner->at))))
        found = corner;
    }
  return found;
}

/* Where the edge crosses the axis, its ends being on different sides. */
static SqPoint
crossing_of (const SqAxis *axis, const SqCorner *corner, const SqCorner *next)
{
  double left = 0, right = 1, sign = sq_axis_left_mm (axis, corner->at) > 0 ? 1 : -1;

  for (guint i = 0; i < HALVINGS; i++)
    {
      double t = (left + right) / 2;
      if (sign * sq_axis_left_mm (axis, sq_edge_point (corner, next, t)) > 0)
        left = t;
      else
        right = t;
    }
  return sq_axis_foot (axis, sq_edge_point (corner, next, left));
}

/* Whether an edge across the axis can stay one: it goes to the corner's image, or straight on
 * towards it. */
static gboolean
crosses_square (const SqAxis *axis, const SqCorner *corner, const SqCorner *next)
{
  SqVector along = sq_unit (sq_sub (next->at, corner->at));

  return is_image (axis, corner->at, next->at)
         || (sq_edge_is_straight (corner) && fabs (sq_dot (along, axis->along)) <= SQ_STRAIGHT_RAD);
}

/* The first edge that crosses the axis from one corner to another that is not its image; 0: none. */
static SqId
crossing_edge (const SqOutline *outline, const SqAxis *axis, SqPoint *at)
{
  Making making;
  SqId found = 0;

  making_init (&making, outline, axis);
  for (guint r = 0; r < sq_outline_n_rings (outline) && found == 0; r++)
    {
      Ring ring = ring_of (&making, r);
      for (guint i = 0; i < ring.n && found == 0; i++)
        {
          guint k = (i + 1) % ring.n;
          const SqCorner *corner = &ring.corners[i], *next = &ring.corners[k];
          if (ring.side[i] * ring.side[k] >= 0 || ring.twins[i].twin == next->id
              || crosses_square (axis, corner, next))
            continue;
          found = corner->id;
          *at = crossing_of (axis, corner, next);
        }
      g_free (ring.side);
    }
  making_clear (&making);
  return found;
}

/* The outline with corners wherever an edge crosses the axis askew. They stand on the axis, so
 * each edge is found no more than once. */
static SqOutline *
with_crossings (const SqOutline *outline, const SqAxis *axis)
{
  SqOutline *result = sq_outline_ref (outline);
  SqPoint at;

  for (SqId edge; (edge = crossing_edge (result, axis, &at)) != 0;)
    {
      SqOutline *more = sq_outline_with_corner_on_edge (result, edge, at, NULL);
      if (more == NULL)
        break;
      sq_outline_unref (result);
      result = more;
    }
  return result;
}

static SqVector
image (const Making *making, SqPoint p)
{
  return sq_axis_mirrored (&making->axis, p);
}

/* Gives @to the bend of the image of @edge. */
static void
bend_as_image (const Making *making, SqCorner *to, const SqCorner *edge)
{
  to->shape = edge->shape;
  to->bow_mm = edge->bow_mm;
  to->control[0] = image (making, edge->control[1]);
  to->control[1] = image (making, edge->control[0]);
}

/* Gives @to, which had another edge or none, what @edge is. */
static void
take_kind (SqCorner *to, const SqCorner *edge)
{
  to->kind = edge->kind;
  to->clearance_mm = edge->clearance_mm;
  to->seen = edge->seen;
  to->build = edge->build;
  to->given = (to->given & SQ_GIVEN_RADIUS) | (edge->given & ~(guint32) SQ_GIVEN_RADIUS);
}

static SqId
new_id (Making *making)
{
  SqId id = making->next_id;

  do
    making->next_id++;
  while (making->next_id == 0
         || sq_outline_corner (making->outline, making->next_id, NULL, NULL) != NULL);
  return id;
}

/* The image of corner @i; its edge is the image of @edge, or that very edge, which then crosses the
 * axis and keeps what is next to corner @i. */
static SqCorner
image_corner (Making *making, const Ring *ring, guint i, const SqCorner *edge, gboolean crosses)
{
  const SqCorner *from = &ring->corners[i], *old = stand_in (making, ring, i);
  SqCorner result = old != NULL ? *old : (SqCorner){ .id = new_id (making) };

  result.at = image (making, from->at);
  result.radius_mm = from->radius_mm;
  result.given = (result.given & ~(guint32) SQ_GIVEN_RADIUS) | (from->given & SQ_GIVEN_RADIUS);
  bend_as_image (making, &result, edge);
  if (crosses)
    result.control[1] = edge->control[1];
  if (old == NULL || (crosses && old != edge))
    take_kind (&result, edge);
  return result;
}

static void
add_corner (Making *making, SqCorner corner)
{
  g_array_append_val (making->corners, corner);
}

/* The corners on the side to keep are one run of the ring; FALSE if they are several. */
static gboolean
find_run (const Ring *ring, guint *first, guint *count)
{
  guint runs = 0;

  *count = 0;
  for (guint i = 0; i < ring->n; i++)
    {
      *count += ring->side[i] > 0;
      if (ring->side[i] <= 0 || ring->side[(i + ring->n - 1) % ring->n] > 0)
        continue;
      *first = i;
      runs++;
    }
  return runs <= 1;
}

/* A hole that is all on the side to keep, and its image. */
static void
add_whole (Making *making, const Ring *ring)
{
  for (guint i = 0; i < ring->n; i++)
    add_corner (making, ring->corners[i]);
  g_array_append_val (making->sizes, ring->n);
  for (guint i = 0; i < ring->n; i++)
    {
      guint k = (ring->n - i) % ring->n, edge = (k + ring->n - 1) % ring->n;
      add_corner (making, image_corner (making, ring, k, &ring->corners[edge], FALSE));
    }
  g_array_append_val (making->sizes, ring->n);
}

/* The corners made from @start on, begun at the one with @id if that is still there. */
static void
begin_at (Making *making, guint start, SqId id)
{
  guint n = making->corners->len - start, at = 0;
  SqCorner *corners = &g_array_index (making->corners, SqCorner, start);
  g_autofree SqCorner *old = g_memdup2 (corners, n * sizeof *corners);

  for (guint i = 0; i < n; i++)
    if (old[i].id == id)
      at = i;
  for (guint i = 0; i < n; i++)
    corners[i] = old[(at + i) % n];
}

/* From the axis along the run to the axis, and its image back. */
static void
add_run (Making *making, const Ring *ring, guint first, guint count)
{
  guint n = ring->n, before = (first + n - 1) % n, last = (first + count - 1) % n;
  guint after = (last + 1) % n, start = making->corners->len;
  gboolean from_axis = ring->side[before] == 0, to_axis = ring->side[after] == 0;

  if (from_axis)
    {
      SqCorner corner = ring->corners[before];
      corner.at = sq_axis_foot (&making->axis, corner.at);
      add_corner (making, corner);
    }
  for (guint k = 0; k < count; k++)
    {
      SqCorner corner = ring->corners[(first + k) % n];
      if (k + 1 == count && !to_axis)
        corner.control[1] = image (making, corner.control[0]);
      add_corner (making, corner);
    }
  if (to_axis)
    {
      SqCorner corner = ring->corners[after];
      corner.at = sq_axis_foot (&making->axis, corner.at);
      bend_as_image (making, &corner, &ring->corners[last]);
      if (ring->twins[last].edge_twin != corner.id)
        take_kind (&corner, &ring->corners[last]);
      add_corner (making, corner);
    }
  for (guint k = count; k-- > 0;)
    {
      guint i = (first + k) % n, edge = (i + n - 1) % n;
      gboolean crosses = k == 0 && !from_axis;
      add_corner (making, image_corner (making, ring, i, &ring->corners[edge], crosses));
    }
  begin_at (making, start, ring->corners[0].id);
  n = making->corners->len - start;
  g_array_append_val (making->sizes, n);
}

/* FALSE for a ring that can't be made symmetric. */
static gboolean
make_ring (Making *making, guint index)
{
  Ring ring = ring_of (making, index);
  guint first = 0, count = 0;
  gboolean is_made = find_run (&ring, &first, &count);

  /* a ring that touches the axis with one corner would be pinched there */
  if (is_made && count + 1 == ring.n)
    is_made = ring.side[(first + count) % ring.n] != 0;
  if (index == 0)
    is_made = is_made && count > 0 && count < ring.n;
  if (is_made && count == ring.n)
    add_whole (making, &ring);
  else if (is_made && count > 0)
    add_run (making, &ring, first, count);
  g_free (ring.side);
  return is_made;
}

SqOutline *
sq_outline_made_symmetric (const SqOutline *outline, const SqAxis *axis, gboolean from_left)
{
  SqAxis turned = { axis->at, sq_scale (axis->along, from_left ? 1 : -1) };
  SqOutline *result = NULL;
  gboolean is_made = TRUE;
  Making making;

  g_return_val_if_fail (outline != NULL && axis != NULL, NULL);
  if (sq_outline_n_rings (outline) == 0)
    return NULL;
  g_autoptr (SqOutline) crossed = with_crossings (outline, &turned);
  making_init (&making, crossed, &turned);
  for (guint r = 0; r < sq_outline_n_rings (crossed) && is_made; r++)
    is_made = make_ring (&making, r);
  if (is_made)
    result = sq_outline_new ((const SqCorner *) making.corners->data,
                             (const guint *) making.sizes->data, making.sizes->len);
  making_clear (&making);
  return result;
}
