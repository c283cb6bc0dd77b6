/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "window/side-walk.h"

#include "job/frame.h"

guint
sq_walk_start (const SqOutline *outline, guint ring)
{
  SqFront front;
  return ring == 0 && sq_outline_front (outline, &front) ? front.edge : 0;
}

static void
append (GArray *figures, SqMeasure measure, const SqCorner *corner)
{
  SqSideFigure figure = { measure, corner->id };
  g_array_append_val (figures, figure);
}

GArray *
sq_walk_figures (const SqOutline *outline)
{
  GArray *figures = g_array_new (FALSE, FALSE, sizeof (SqSideFigure));
  for (guint ring = 0; ring < sq_outline_n_rings (outline); ring++)
    {
      guint n, start = sq_walk_start (outline, ring);
      const SqCorner *corners = sq_outline_ring (outline, ring, &n);
      for (guint k = 0; k < n; k++)
        {
          const SqCorner *side = &corners[(start + k) % n], *end = &corners[(start + k + 1) % n];
          append (figures, SQ_MEASURE_LENGTH, side);
          if (side->shape == SQ_SHAPE_BOW && side->bow_mm != 0)
            append (figures, SQ_MEASURE_RISE, side);
          append (figures, SQ_MEASURE_ANGLE, end);
          if (end->radius_mm > 0)
            append (figures, SQ_MEASURE_RADIUS, end);
        }
    }
  return figures;
}

/* How many sides of its ring the walk has gone before it comes to that corner; *@n: all of them. */
static guint
place_in_walk (const SqOutline *outline, SqId corner, guint *n)
{
  guint ring = 0, index = 0;
  sq_outline_corner (outline, corner, &ring, &index);
  sq_outline_ring (outline, ring, n);
  return (index + *n - sq_walk_start (outline, ring)) % *n;
}

SqStays
sq_walk_usual_stays (const SqOutline *outline, const SqSideFigure *figure)
{
  guint n, place;
  g_return_val_if_fail (sq_outline_corner (outline, figure->corner, NULL, NULL) != NULL,
                        SQ_STAYS_START);
  place = place_in_walk (outline, figure->corner, &n);
  if (figure->measure == SQ_MEASURE_ANGLE)
    return place == 0 ? SQ_STAYS_END : SQ_STAYS_START;
  return place + 1 == n ? SQ_STAYS_END : SQ_STAYS_START;
}

double
sq_walk_misclosure_mm (const SqOutline *outline, guint ring, double taped_mm, double *closes_mm)
{
  guint n, start = sq_walk_start (outline, ring);
  g_autofree SqSideReading *readings = sq_outline_side_readings (outline, ring, &n);
  g_autofree double *sides = g_new (double, n);
  g_autofree double *angles = g_new (double, n);
  double more;
  g_return_val_if_fail (n >= 3, 0);
  for (guint k = 0; k < n; k++)
    {
      sides[k] = readings[(start + k) % n].chord_mm;
      angles[k] = readings[(start + k + 1) % n].angle_rad;
    }
  sides[n - 1] = taped_mm;
  more = sq_sides_misclosure_mm (sides, angles, n);
  *closes_mm = taped_mm - more;
  return more;
}
