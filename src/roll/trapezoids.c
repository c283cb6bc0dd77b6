/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "roll/trapezoids.h"

__extension__ typedef __int128 Wide;

/* ---- cutting ------------------------------------------------------------------------------- */

static int
compare_heights (gconstpointer a, gconstpointer b)
{
  gint32 x = *(const gint32 *) a, y = *(const gint32 *) b;
  return (x > y) - (x < y);
}

static int
compare_by_foot (gconstpointer a, gconstpointer b)
{
  const SqGridEdge *x = a, *y = b;
  return (x->from.y > y->from.y) - (x->from.y < y->from.y);
}

/* All edges that are not level, the lowest first. */
static GArray *
edges_of (const SqGridRing *rings, guint n_rings)
{
  GArray *edges = g_array_new (FALSE, FALSE, sizeof (SqGridEdge));

  for (guint i = 0; i < n_rings; i++)
    for (guint k = 0; k < rings[i].n; k++)
      {
        SqGrid a = rings[i].points[k], b = rings[i].points[(k + 1) % rings[i].n];
        SqGridEdge edge = a.y < b.y ? (SqGridEdge){ a, b } : (SqGridEdge){ b, a };
        if (a.y != b.y)
          g_array_append_val (edges, edge);
      }
  g_array_sort (edges, compare_by_foot);
  return edges;
}

/* Where corners are, from below, each height once. */
static GArray *
heights_of (const GArray *edges)
{
  GArray *heights = g_array_new (FALSE, FALSE, sizeof (gint32));
  guint n = 0;

  for (guint i = 0; i < edges->len; i++)
    {
      const SqGridEdge *edge = &g_array_index (edges, SqGridEdge, i);
      g_array_append_val (heights, edge->from.y);
      g_array_append_val (heights, edge->to.y);
    }
  g_array_sort (heights, compare_heights);
  for (guint i = 0; i < heights->len; i++)
    if (n == 0 || g_array_index (heights, gint32, i) != g_array_index (heights, gint32, n - 1))
      g_array_index (heights, gint32, n++) = g_array_index (heights, gint32, i);
  g_array_set_size (heights, n);
  return heights;
}

/* < 0 where @a lies to the left of @b at the height @twice_y / 2. */
static int
compare_at (const SqGridEdge *a, const SqGridEdge *b, gint64 twice_y)
{
  Wide ady = (Wide) a->to.y - a->from.y, adx = (Wide) a->to.x - a->from.x;
  Wide bdy = (Wide) b->to.y - b->from.y, bdx = (Wide) b->to.x - b->from.x;
  Wide ax = 2 * (Wide) a->from.x * ady + adx * (twice_y - 2 * (gint64) a->from.y);
  Wide bx = 2 * (Wide) b->from.x * bdy + bdx * (twice_y - 2 * (gint64) b->from.y);
  Wide difference = ax * bdy - bx * ady;

  return (difference > 0) - (difference < 0);
}

/* The edges in @active are few and nearly in order: put in order at @twice_y. */
static void
sort_at (GArray *active, gint64 twice_y)
{
  SqGridEdge *edges = (SqGridEdge *) (gpointer) active->data;

  for (guint i = 1; i < active->len; i++)
    for (guint k = i; k > 0 && compare_at (&edges[k - 1], &edges[k], twice_y) > 0; k--)
      {
        SqGridEdge other = edges[k];
        edges[k] = edges[k - 1];
        edges[k - 1] = other;
      }
}

static void
drop_ended (GArray *active, gint32 y)
{
  guint n = 0;

  for (guint i = 0; i < active->len; i++)
    if (g_array_index (active, SqGridEdge, i).to.y > y)
      g_array_index (active, SqGridEdge, n++) = g_array_index (active, SqGridEdge, i);
  g_array_set_size (active, n);
}

static void
add_trapezoid (GArray *trapezoids, gint32 y0, gint32 y1, const SqGridEdge *left,
               const SqGridEdge *right)
{
  SqTrapezoid t = { y0, y1, *left, *right };
  g_array_append_val (trapezoids, t);
}

/* The band between two heights: @active are the edges through it, from left to right. */
static void
add_band (GArray *trapezoids, gint32 y0, gint32 y1, const GArray *active, gboolean filled)
{
  const SqGridEdge *edges = (const SqGridEdge *) (gconstpointer) active->data;

  if (filled && active->len > 1)
    add_trapezoid (trapezoids, y0, y1, &edges[0], &edges[active->len - 1]);
  for (guint k = 0; k + 1 < active->len && !filled; k += 2)
    add_trapezoid (trapezoids, y0, y1, &edges[k], &edges[k + 1]);
}

static GArray *
cut (const SqGridRing *rings, guint n_rings, gboolean filled)
{
  g_autoptr (GArray) edges = edges_of (rings, n_rings);
  g_autoptr (GArray) heights = heights_of (edges);
  g_autoptr (GArray) active = g_array_new (FALSE, FALSE, sizeof (SqGridEdge));
  GArray *result = g_array_new (FALSE, FALSE, sizeof (SqTrapezoid));
  guint next = 0;

  for (guint i = 0; i + 1 < heights->len; i++)
    {
      gint32 y0 = g_array_index (heights, gint32, i), y1 = g_array_index (heights, gint32, i + 1);
      drop_ended (active, y0);
      for (; next < edges->len && g_array_index (edges, SqGridEdge, next).from.y <= y0; next++)
        g_array_append_val (active, g_array_index (edges, SqGridEdge, next));
      sort_at (active, (gint64) y0 + y1);
      add_band (result, y0, y1, active, filled);
    }
  return result;
}

GArray *
sq_trapezoids_new (const SqGridRing *rings, guint n_rings)
{
  return cut (rings, n_rings, FALSE);
}

GArray *
sq_trapezoids_new_filled (const SqGridRing *rings, guint n_rings)
{
  return cut (rings, n_rings, TRUE);
}

/* ---- overlap ------------------------------------------------------------------------------- */

static SqGridEdge
moved (SqGridEdge edge, SqGrid by)
{
  return (SqGridEdge){ sq_grid_add (edge.from, by), sq_grid_add (edge.to, by) };
}

/* Whether @a lies to the left of @b somewhere between y0 and y1. */
static gboolean
is_left_somewhere (const SqGridEdge *a, const SqGridEdge *b, gint32 y0, gint32 y1)
{
  return compare_at (a, b, 2 * (gint64) y0) < 0 || compare_at (a, b, 2 * (gint64) y1) < 0;
}

/* Both are as wide as they are between the heights they share. If each one's left edge is left of
 * the other's right edge somewhere, they overlap: at one height, or else they change sides between
 * two, which can't be done without passing through each other. */
static gboolean
overlap (const SqTrapezoid *a, SqGrid at_a, const SqTrapezoid *b, SqGrid at_b)
{
  gint32 y0 = MAX (a->y0 + at_a.y, b->y0 + at_b.y), y1 = MIN (a->y1 + at_a.y, b->y1 + at_b.y);

  if (y0 >= y1)
    return FALSE;
  SqGridEdge left_a = moved (a->left, at_a), right_a = moved (a->right, at_a);
  SqGridEdge left_b = moved (b->left, at_b), right_b = moved (b->right, at_b);
  return is_left_somewhere (&left_a, &right_b, y0, y1)
         && is_left_somewhere (&left_b, &right_a, y0, y1)
         && is_left_somewhere (&left_a, &right_a, y0, y1)
         && is_left_somewhere (&left_b, &right_b, y0, y1);
}

gboolean
sq_trapezoids_overlap (const GArray *a, SqGrid at_a, const GArray *b, SqGrid at_b)
{
  guint first = 0;

  for (guint i = 0; i < a->len; i++)
    {
      const SqTrapezoid *t = &g_array_index (a, SqTrapezoid, i);
      while (first < b->len && g_array_index (b, SqTrapezoid, first).y1 + at_b.y <= t->y0 + at_a.y)
        first++;
      for (guint k = first; k < b->len; k++)
        {
          const SqTrapezoid *u = &g_array_index (b, SqTrapezoid, k);
          if (u->y0 + at_b.y >= t->y1 + at_a.y)
            break;
          if (overlap (t, at_a, u, at_b))
            return TRUE;
        }
    }
  return FALSE;
}
