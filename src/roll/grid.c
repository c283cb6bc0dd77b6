/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "roll/grid.h"

#include <math.h>

#define MOST_MM 500000.0

SqGrid
sq_grid_posed (SqGrid p, SqGridPose pose)
{
  gint32 x = pose.mirrored ? -p.x : p.x;

  switch (pose.turn)
    {
    case 0:
      return (SqGrid){ x, p.y };
    case SQ_GRID_QUARTER:
      return (SqGrid){ -p.y, x };
    case 2 * SQ_GRID_QUARTER:
      return (SqGrid){ -x, -p.y };
    case 3 * SQ_GRID_QUARTER:
      return (SqGrid){ p.y, -x };
    default:
      {
        double angle = pose.turn * (G_PI / (SQ_GRID_WHOLE_TURN / 2)), c = cos (angle),
               s = sin (angle);
        return (SqGrid){ (gint32) lround (c * x - s * p.y), (gint32) lround (s * x + c * p.y) };
      }
    }
}

gint32
sq_grid_from_mm (double mm)
{
  return (gint32) lround (CLAMP (mm, -MOST_MM, MOST_MM) * SQ_GRID_PER_MM);
}

SqGridRing *
sq_grid_rings_posed (const SqGridRing *rings, guint n_rings, SqGridPose pose)
{
  SqGridRing *posed = g_new (SqGridRing, n_rings);

  for (guint i = 0; i < n_rings; i++)
    {
      posed[i] = (SqGridRing){ g_new (SqGrid, rings[i].n), rings[i].n };
      for (guint k = 0; k < rings[i].n; k++)
        posed[i].points[k] = sq_grid_posed (rings[i].points[k], pose);
    }
  return posed;
}

void
sq_grid_rings_free (SqGridRing *rings, guint n_rings)
{
  for (guint i = 0; i < n_rings; i++)
    g_free (rings[i].points);
  g_free (rings);
}

SqGridBox
sq_grid_rings_box (const SqGridRing *rings, guint n_rings)
{
  SqGridBox box = { { G_MAXINT32, G_MAXINT32 }, { G_MININT32, G_MININT32 } };

  for (guint i = 0; i < n_rings; i++)
    for (guint k = 0; k < rings[i].n; k++)
      {
        SqGrid p = rings[i].points[k];
        box.min = (SqGrid){ MIN (box.min.x, p.x), MIN (box.min.y, p.y) };
        box.max = (SqGrid){ MAX (box.max.x, p.x), MAX (box.max.y, p.y) };
      }
  return box;
}

/* Against its own first point, so that nothing overflows; µm², without sign. */
static double
ring_area (const SqGridRing *ring)
{
  double twice = 0;

  for (guint i = 1; i + 1 < ring->n; i++)
    {
      SqGrid o = ring->points[0], a = ring->points[i], b = ring->points[i + 1];
      gint64 ax = (gint64) a.x - o.x, ay = (gint64) a.y - o.y;
      gint64 bx = (gint64) b.x - o.x, by = (gint64) b.y - o.y;
      twice += (double) (ax * by) - (double) (ay * bx);
    }
  return fabs (twice) / 2;
}

double
sq_grid_rings_area_mm2 (const SqGridRing *rings, guint n_rings)
{
  double area = 0;

  for (guint i = 0; i < n_rings; i++)
    area += (i == 0 ? 1 : -1) * ring_area (&rings[i]);
  return area / (SQ_GRID_PER_MM * SQ_GRID_PER_MM);
}
