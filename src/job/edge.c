/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "job/edge.h"

#include "base/units.h"

/* A cubic's nearest point is looked for between so many places, then narrowed. */
#define CUBIC_PLACES 32
#define NARROWINGS 50

/* From @points[0] towards the first of the others that does not lie on it. */
static SqVector
leaving (const SqPoint *points, guint n)
{
  for (guint i = 1; i < n; i++)
    if (sq_distance (points[0], points[i]) > SQ_COINCIDE_MM)
      return sq_unit (sq_sub (points[i], points[0]));
  return sq_point (0, 0);
}

SqVector
sq_edge_direction (const SqCorner *corner, const SqCorner *next, gboolean at_end)
{
  const SqPoint from_start[] = { corner->at, corner->control[0], corner->control[1], next->at };
  const SqPoint from_end[] = { next->at, corner->control[1], corner->control[0], corner->at };
  SqSegment s = sq_edge_segment (corner, next);

  if (corner->shape != SQ_SHAPE_CURVE)
    return sq_segment_direction (&s, at_end ? 1 : 0);
  return at_end ? sq_scale (leaving (from_end, 4), -1) : leaving (from_start, 4);
}

SqPoint
sq_edge_point (const SqCorner *corner, const SqCorner *next, double t)
{
  SqSegment s = sq_edge_segment (corner, next);
  double u = 1 - t;

  if (corner->shape != SQ_SHAPE_CURVE)
    return sq_segment_point (&s, t);
  return sq_add (sq_add (sq_scale (corner->at, u * u * u), sq_scale (next->at, t * t * t)),
                 sq_add (sq_scale (corner->control[0], 3 * u * u * t),
                         sq_scale (corner->control[1], 3 * u * t * t)));
}

/* The golden section would save a few steps; thirds are plain. */
static double
nearest_between (const SqCorner *corner, const SqCorner *next, SqPoint p, double t0, double t1)
{
  for (guint i = 0; i < NARROWINGS; i++)
    {
      double a = t0 + (t1 - t0) / 3, b = t1 - (t1 - t0) / 3;

      if (sq_distance (sq_edge_point (corner, next, a), p)
          <= sq_distance (sq_edge_point (corner, next, b), p))
        t1 = b;
      else
        t0 = a;
    }
  return (t0 + t1) / 2;
}

static double
nearest_on_cubic (const SqCorner *corner, const SqCorner *next, SqPoint p)
{
  guint best = 0;
  double best_mm = INFINITY;

  for (guint i = 0; i <= CUBIC_PLACES; i++)
    {
      double mm = sq_distance (sq_edge_point (corner, next, (double) i / CUBIC_PLACES), p);

      if (mm < best_mm)
        {
          best = i;
          best_mm = mm;
        }
    }
  return nearest_between (corner, next, p, best > 0 ? (best - 1.0) / CUBIC_PLACES : 0,
                          best < CUBIC_PLACES ? (best + 1.0) / CUBIC_PLACES : 1);
}

double
sq_edge_nearest_mm (const SqCorner *corner, const SqCorner *next, SqPoint p, double *t)
{
  SqSegment s = sq_edge_segment (corner, next);

  if (corner->shape != SQ_SHAPE_CURVE)
    return sq_segment_nearest_mm (&s, p, t);
  *t = nearest_on_cubic (corner, next, p);
  return sq_distance (sq_edge_point (corner, next, *t), p);
}

/* All points of an arc see its chord under the same angle, half a turn less half the sweep; the
 * bulge is the cotangent of half of that. */
double
sq_bow_through (SqPoint from, SqPoint to, SqPoint p)
{
  SqVector a = sq_sub (from, p), b = sq_sub (to, p);
  double across = sq_cross (a, b), near = sq_norm (a) * sq_norm (b), along = sq_dot (a, b);
  double chord_mm = sq_distance (from, to), bulge;

  if (chord_mm <= SQ_COINCIDE_MM || near <= 0)
    return 0;
  /* of the two forms of the cotangent the one that does not cancel */
  bulge = along < 0 ? fabs (across) / (near - along) : (near + along) / fabs (across);
  bulge = fmin (bulge, SQ_MOST_BULGE);
  return (across > 0 ? -bulge : bulge) * chord_mm / 2;
}

/* The bow of a part of an arc. */
static double
part_bow_mm (const SqSegment *s, double t0, double t1)
{
  SqSegment part = sq_segment_part (s, t0, t1);
  return part.bulge * sq_distance (part.from, part.to) / 2;
}

/* De Casteljau: the handles of both parts of a cubic. */
static void
split_curve (const SqCorner *corner, const SqCorner *next, double t, SqCorner *first,
             SqCorner *second)
{
  SqPoint a = sq_between (corner->at, corner->control[0], t);
  SqPoint b = sq_between (corner->control[0], corner->control[1], t);
  SqPoint c = sq_between (corner->control[1], next->at, t);

  first->control[0] = a;
  first->control[1] = sq_between (a, b, t);
  second->control[0] = sq_between (b, c, t);
  second->control[1] = c;
}

SqOutline *
sq_outline_with_corner_on_edge (const SqOutline *outline, SqId edge, SqPoint p, SqId *new_id)
{
  guint ring, index, n;
  const SqCorner *corner = sq_outline_corner (outline, edge, &ring, &index);
  if (corner == NULL)
    return NULL;
  const SqCorner *corners = sq_outline_ring (outline, ring, &n), *next = &corners[(index + 1) % n];
  SqSegment s = sq_edge_segment (corner, next);
  SqCorner first = *corner, second = *corner;
  double t, length_mm = sq_distance (corner->at, next->at);

  sq_edge_nearest_mm (corner, next, p, &t);
  if (fmin (t, 1 - t) * fmax (length_mm, sq_segment_length_mm (&s)) <= 2 * SQ_COINCIDE_MM)
    return NULL;
  second.id = sq_outline_new_corner_id (outline);
  second.at = sq_edge_point (corner, next, t);
  second.radius_mm = 0;
  second.given &= ~(guint32) SQ_GIVEN_RADIUS;
  second.front = FALSE;
  second.note = second.corner_note = second.unknown = NULL;
  if (corner->shape == SQ_SHAPE_BOW)
    {
      first.bow_mm = part_bow_mm (&s, 0, t);
      second.bow_mm = part_bow_mm (&s, t, 1);
    }
  else if (corner->shape == SQ_SHAPE_CURVE)
    split_curve (corner, next, t, &first, &second);
  if (new_id != NULL)
    *new_id = second.id;
  g_autoptr (SqOutline) shortened = sq_outline_with_corner (outline, &first);
  return sq_outline_with_corner_after (shortened, edge, &second);
}
