/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "roll/ring-crossings.h"

#include <math.h>

/* Outlines that touch may cross by this much when their corners are rounded (µm). */
#define ROUNDING_UM 2

__extension__ typedef __int128 Wide;

/* From its lower to its upper end; of equal heights, from left to right. */
typedef struct
{
  SqGrid from, to;
  gboolean is_down; /* the ring goes along it the other way */
} Edge;

static int
compare_by_foot (gconstpointer a, gconstpointer b)
{
  const Edge *x = a, *y = b;
  return (x->from.y > y->from.y) - (x->from.y < y->from.y);
}

static void
add_edges (GArray *edges, const SqGridRing *ring)
{
  for (guint i = 0; i < ring->n; i++)
    {
      SqGrid a = ring->points[i], b = ring->points[(i + 1) % ring->n];
      gboolean is_down = a.y > b.y || (a.y == b.y && a.x > b.x);
      Edge edge = is_down ? (Edge){ b, a, TRUE } : (Edge){ a, b, FALSE };
      if (a.x != b.x || a.y != b.y)
        g_array_append_val (edges, edge);
    }
}

static void
drop_below (GArray *active, gint32 y)
{
  guint n = 0;

  for (guint i = 0; i < active->len; i++)
    if (g_array_index (active, Edge, i).to.y > y)
      g_array_index (active, Edge, n++) = g_array_index (active, Edge, i);
  g_array_set_size (active, n);
}

/* ---- edges that cross ---------------------------------------------------------------------- */

/* Which side of @e @p is on: 1 left, −1 right; 0 where it is no farther from its line than rounding
 * takes it. */
static gint
side_of (const Edge *e, SqGrid p)
{
  gint64 dx = (gint64) e->to.x - e->from.x, dy = (gint64) e->to.y - e->from.y;
  gint64 px = (gint64) p.x - e->from.x, py = (gint64) p.y - e->from.y;
  Wide area = (Wide) dx * py - (Wide) dy * px;
  Wide least = ROUNDING_UM * (Wide) (ABS (dx) + ABS (dy));

  return (area > least) - (area < -least);
}

static gboolean
cross (const Edge *a, const Edge *b)
{
  if (MAX (a->from.x, a->to.x) <= MIN (b->from.x, b->to.x)
      || MAX (b->from.x, b->to.x) <= MIN (a->from.x, a->to.x))
    return FALSE;
  return side_of (a, b->from) * side_of (a, b->to) < 0
         && side_of (b, a->from) * side_of (b, a->to) < 0;
}

static gboolean
any_cross (const GArray *edges)
{
  g_autoptr (GArray) active = g_array_new (FALSE, FALSE, sizeof (Edge));

  for (guint i = 0; i < edges->len; i++)
    {
      const Edge *edge = &g_array_index (edges, Edge, i);
      drop_below (active, edge->from.y);
      for (guint k = 0; k < active->len; k++)
        if (cross (&g_array_index (active, Edge, k), edge))
          return TRUE;
      g_array_append_val (active, *edge);
    }
  return FALSE;
}

/* ---- a ring through its own corners -------------------------------------------------------- */

static double
x_at (const Edge *edge, double y)
{
  double dx = (double) edge->to.x - edge->from.x, dy = (double) edge->to.y - edge->from.y;
  return edge->from.x + dx * (y - edge->from.y) / dy;
}

/* Where an edge is at the middle of a band. */
typedef struct
{
  double x;
  double steepness; /* the sine of its slope */
  gint turn;
} Mark;

static int
compare_marks (gconstpointer a, gconstpointer b)
{
  const Mark *p = a, *q = b;

  if (p->x != q->x)
    return p->x < q->x ? -1 : 1;
  return p->turn - q->turn;
}

static int
compare_heights (gconstpointer a, gconstpointer b)
{
  gint32 x = *(const gint32 *) a, y = *(const gint32 *) b;
  return (x > y) - (x < y);
}

/* Whether more lies between the edges of a band than rounding does that the ring goes round twice,
 * or the other way than @turn, which it gets where it is 0. */
static gboolean
is_wound_wrongly (const GArray *active, double y, GArray *marks, gint *turn)
{
  gint winding = 0;

  g_array_set_size (marks, 0);
  for (guint i = 0; i < active->len; i++)
    {
      const Edge *edge = &g_array_index (active, Edge, i);
      double dx = (double) edge->to.x - edge->from.x, dy = (double) edge->to.y - edge->from.y;
      Mark mark = { x_at (edge, y), dy / hypot (dx, dy), edge->is_down ? 1 : -1 };
      g_array_append_val (marks, mark);
    }
  g_array_sort (marks, compare_marks);
  for (guint i = 0; i + 1 < marks->len; i++)
    {
      const Mark *mark = &g_array_index (marks, Mark, i), *next = mark + 1;
      double width = (next->x - mark->x) * MIN (mark->steepness, next->steepness);
      winding += mark->turn;
      if (winding == 0 || width <= 2 * ROUNDING_UM)
        continue;
      if (*turn == 0)
        *turn = winding;
      if (winding != *turn || ABS (winding) > 1)
        return TRUE;
    }
  return FALSE;
}

static gboolean
is_turned_over (const GArray *edges)
{
  g_autoptr (GArray) heights = g_array_new (FALSE, FALSE, sizeof (gint32));
  g_autoptr (GArray) active = g_array_new (FALSE, FALSE, sizeof (Edge));
  g_autoptr (GArray) marks = g_array_new (FALSE, FALSE, sizeof (Mark));
  guint next = 0;
  gint turn = 0;

  for (guint i = 0; i < edges->len; i++)
    {
      g_array_append_val (heights, g_array_index (edges, Edge, i).from.y);
      g_array_append_val (heights, g_array_index (edges, Edge, i).to.y);
    }
  g_array_sort (heights, compare_heights);
  for (guint i = 0; i + 1 < heights->len; i++)
    {
      gint32 y0 = g_array_index (heights, gint32, i), y1 = g_array_index (heights, gint32, i + 1);
      if (y0 == y1)
        continue;
      drop_below (active, y0);
      for (; next < edges->len && g_array_index (edges, Edge, next).from.y <= y0; next++)
        if (g_array_index (edges, Edge, next).to.y > y0)
          g_array_append_val (active, g_array_index (edges, Edge, next));
      if (y1 - y0 > 2 * ROUNDING_UM
          && is_wound_wrongly (active, ((double) y0 + y1) / 2, marks, &turn))
        return TRUE;
    }
  return FALSE;
}

gboolean
sq_grid_rings_cross (const SqGridRing *rings, guint n_rings)
{
  g_autoptr (GArray) all = g_array_new (FALSE, FALSE, sizeof (Edge));

  for (guint i = 0; i < n_rings; i++)
    {
      g_autoptr (GArray) edges = g_array_new (FALSE, FALSE, sizeof (Edge));
      add_edges (edges, &rings[i]);
      g_array_append_vals (all, edges->data, edges->len);
      g_array_sort (edges, compare_by_foot);
      if (is_turned_over (edges))
        return TRUE;
    }
  g_array_sort (all, compare_by_foot);
  return any_cross (all);
}
