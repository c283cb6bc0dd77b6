/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "roll/grid.h"

#include <math.h>

#define MOST_MM 500000.0

SqGrid
sq_grid_turned (SqGrid p, guint quarters)
{
  switch (quarters % 4)
    {
    case 1:
      return (SqGrid){ -p.y, p.x };
    case 2:
      return (SqGrid){ -p.x, -p.y };
    case 3:
      return (SqGrid){ p.y, -p.x };
    default:
      return p;
    }
}

SqGridBox
sq_grid_box_turned (SqGridBox box, guint quarters)
{
  SqGrid a = sq_grid_turned (box.min, quarters), b = sq_grid_turned (box.max, quarters);

  return (SqGridBox){ { MIN (a.x, b.x), MIN (a.y, b.y) }, { MAX (a.x, b.x), MAX (a.y, b.y) } };
}

gint32
sq_grid_from_mm (double mm)
{
  return (gint32) lround (CLAMP (mm, -MOST_MM, MOST_MM) * SQ_GRID_PER_MM);
}

SqGridRing *
sq_grid_rings_turned (const SqGridRing *rings, guint n_rings, guint quarters)
{
  SqGridRing *turned = g_new (SqGridRing, n_rings);

  for (guint i = 0; i < n_rings; i++)
    {
      turned[i] = (SqGridRing){ g_new (SqGrid, rings[i].n), rings[i].n };
      for (guint k = 0; k < rings[i].n; k++)
        turned[i].points[k] = sq_grid_turned (rings[i].points[k], quarters);
    }
  return turned;
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
