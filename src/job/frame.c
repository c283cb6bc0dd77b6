/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "job/frame.h"

#include "base/units.h"

/* Stretching is repeated until the extents are right to this; arcs between the frame's directions
 * don't grow in proportion. */
#define RIGHT_MM 1e-9
#define MOST_ROUNDS 50

/* No seat is stretched more than that. */
#define MOST_STRETCH 1e6

gboolean
sq_outline_front (const SqOutline *outline, SqFront *front)
{
  guint n = 0;
  const SqCorner *ring = sq_outline_n_rings (outline) > 0 ? sq_outline_ring (outline, 0, &n) : NULL;
  double best = INFINITY;

  if (n < 2)
    return FALSE;
  for (guint i = 0; i < n; i++)
    {
      SqVector along = sq_unit (sq_sub (ring[(i + 1) % n].at, ring[i].at));
      double outward = sq_right (along).y;
      gboolean nearer = outward < best - 1e-9
                        || (outward < best + 1e-9 && ring[i].id < ring[front->edge].id);

      if (nearer || ring[i].front)
        {
          best = fmin (best, outward);
          *front = (SqFront){ i, ring[i].at, sq_norm (along) > 0 ? along : sq_point (1, 0) };
        }
      if (ring[i].front)
        break;
    }
  return TRUE;
}

static SqPoint
into_frame (const SqFront *front, SqPoint p)
{
  SqVector v = sq_sub (p, front->at);

  return sq_point (sq_dot (v, front->along), sq_cross (front->along, v));
}

static SqPoint
out_of_frame (const SqFront *front, SqPoint p)
{
  return sq_moved (sq_moved (front->at, front->along, p.x), sq_left (front->along), p.y);
}

SqTowards
sq_outline_edge_towards (const SqOutline *outline, const SqFront *front, guint index)
{
  guint n;
  const SqCorner *ring = sq_outline_ring (outline, 0, &n);
  SqPoint from = into_frame (front, ring[index].at);
  SqVector outward = sq_right (
      sq_unit (sq_sub (into_frame (front, ring[(index + 1) % n].at), from)));

  if (fabs (outward.y) >= fabs (outward.x) - 1e-9)
    return outward.y <= 0 ? SQ_TOWARDS_FRONT : SQ_TOWARDS_BACK;
  return outward.x > 0 ? SQ_TOWARDS_RIGHT : SQ_TOWARDS_LEFT;
}

SqOutline *
sq_outline_with_kinds_towards (const SqOutline *outline, const SqEdgeKind kinds[SQ_N_TOWARDS])
{
  g_autofree guint *sizes = NULL;
  g_autofree SqCorner *corners = sq_outline_dup_corners (outline, &sizes);
  SqFront front;

  if (!sq_outline_front (outline, &front))
    return sq_outline_ref (outline);
  for (guint i = 0; i < sizes[0]; i++)
    {
      corners[i].kind = kinds[sq_outline_edge_towards (outline, &front, i)];
      corners[i].given |= SQ_GIVEN_KIND;
    }
  return sq_outline_new (corners, sizes, sq_outline_n_rings (outline));
}

gboolean
sq_outline_extents_mm (const SqOutline *outline, double *width_mm, double *depth_mm)
{
  SqFront front;
  g_autoptr (SqPath) path = NULL;
  g_autoptr (SqPath) turned = NULL;
  SqBox box;

  if (!sq_outline_front (outline, &front))
    return FALSE;
  path = sq_outline_path (outline, 0, NULL);
  if (path == NULL)
    return FALSE;
  turned = sq_path_moved (path, -atan2 (front.along.y, front.along.x), sq_point (0, 0));
  box = sq_path_box (turned);
  *width_mm = box.max.x - box.min.x;
  *depth_mm = box.max.y - box.min.y;
  return TRUE;
}

static SqPoint
stretched_point (const SqFront *front, SqVector by, SqPoint p)
{
  SqPoint inside = into_frame (front, p);

  return out_of_frame (front, sq_point (inside.x * by.x, inside.y * by.y));
}

/* The rise of @corner's bow after its chord from @was to @now: a stretch multiplies the area of
 * chord times height by by.x · by.y. */
static double
stretched_rise_mm (const SqCorner *corner, SqVector by, double was, double now)
{
  return now > 0 ? corner->bow_mm * by.x * by.y * was / now : corner->bow_mm;
}

static void
stretch_ring (const SqFront *front, SqVector by, SqCorner *ring, guint n)
{
  g_autofree SqCorner *old = g_memdup2 (ring, n * sizeof *ring);

  for (guint i = 0; i < n; i++)
    {
      ring[i].at = stretched_point (front, by, old[i].at);
      for (guint k = 0; k < 2; k++)
        ring[i].control[k] = stretched_point (front, by, old[i].control[k]);
    }
  for (guint i = 0; i < n; i++)
    ring[i].bow_mm = stretched_rise_mm (&old[i], by, sq_distance (old[i].at, old[(i + 1) % n].at),
                                        sq_distance (ring[i].at, ring[(i + 1) % n].at));
}

static SqOutline *
stretched (const SqOutline *outline, const SqFront *front, SqVector by)
{
  g_autofree guint *sizes = NULL;
  g_autofree SqCorner *corners = sq_outline_dup_corners (outline, &sizes);
  guint n_rings = sq_outline_n_rings (outline);
  SqCorner *ring = corners;

  for (guint r = 0; r < n_rings; r++)
    {
      stretch_ring (front, by, ring, sizes[r]);
      ring += sizes[r];
    }
  return sq_outline_new (corners, sizes, n_rings);
}

static gboolean
is_extent (double mm)
{
  return mm > 0 && mm <= SQ_SEAT_MOST_MM;
}

SqOutline *
sq_outline_scaled_to (const SqOutline *outline, double width_mm, double depth_mm)
{
  SqFront front;
  SqVector by = { 1, 1 };
  double off = INFINITY;
  g_autoptr (SqOutline) result = sq_outline_ref (outline);

  if (!is_extent (width_mm) || !is_extent (depth_mm) || !sq_outline_front (outline, &front))
    return NULL;
  for (guint round = 0; round < MOST_ROUNDS; round++)
    {
      double width, depth;

      if (!sq_outline_extents_mm (result, &width, &depth) || !is_extent (width)
          || !is_extent (depth))
        return NULL;
      off = fmax (fabs (width - width_mm), fabs (depth - depth_mm));
      if (off <= RIGHT_MM)
        break;
      by = sq_point (by.x * width_mm / width, by.y * depth_mm / depth);
      if (!(fmax (by.x, by.y) < MOST_STRETCH)) /* all but flat: rounding would be stretched */
        return NULL;
      sq_outline_unref (result);
      result = stretched (outline, &front, by);
    }
  /* A free curve's chain of arcs changes a little from round to round. */
  return off <= SQ_FIT_MM ? g_steal_pointer (&result) : NULL;
}
