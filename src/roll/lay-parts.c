/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "roll/lay-parts.h"

#include <math.h>
#include <string.h>

/* Edges shorter than this may give way to others that lie outside them (µm): chords of arcs are. */
#define SHORT_UM 40000

/* How far outside one of them may lead (µm). Each round halves the edges of an arc, which makes it
 * four times as far: together about half a millimetre, the last counting for most. */
#define OUTSIDE_UM 300.0
#define ROUNDS 6

/* > 0 where a, b, c turn to the left. Of one item, so that products fit. */
static gint64
turn (SqGrid a, SqGrid b, SqGrid c)
{
  return ((gint64) b.x - a.x) * ((gint64) c.y - a.y) - ((gint64) b.y - a.y) * ((gint64) c.x - a.x);
}

static gboolean
same (SqGrid a, SqGrid b)
{
  return a.x == b.x && a.y == b.y;
}

#define at(ring, i) (g_array_index ((ring), SqGrid, (i)))

static SqGrid
cyclic (const GArray *ring, guint i)
{
  return at (ring, i % ring->len);
}

static double
distance (SqGrid a, SqGrid b)
{
  return hypot ((double) b.x - a.x, (double) b.y - a.y);
}

/* Of @p from the line through @a and @b, which differ. */
static double
distance_from_line (SqGrid p, SqGrid a, SqGrid b)
{
  return fabs ((double) turn (a, b, p)) / distance (a, b);
}

/* ---- fewer corners ------------------------------------------------------------------------- */

static void
drop_straight (GArray *ring)
{
  for (guint i = 0; i < ring->len && ring->len > 3;)
    {
      SqGrid before = cyclic (ring, i + ring->len - 1), p = at (ring, i),
             after = cyclic (ring, i + 1);
      if (same (before, p) || turn (before, p, after) == 0)
        {
          g_array_remove_index (ring, i);
          i -= i > 0;
        }
      else
        i++;
    }
}

static gboolean
is_short (SqGrid a, SqGrid b)
{
  return distance (a, b) < SHORT_UM;
}

/* Where corner @i of a dent may be left out: what is filled is cloth lost, no overlap. */
static gboolean
may_fill (const GArray *ring, guint i)
{
  SqGrid before = cyclic (ring, i + ring->len - 1), p = at (ring, i), after = cyclic (ring, i + 1);

  return turn (before, p, after) < 0 && is_short (before, p) && is_short (p, after)
         && !same (before, after) && distance_from_line (p, before, after) < OUTSIDE_UM;
}

/* The whole place next to (x, y) that lies left of neither a–b nor c–d. */
static gboolean
outside_both (double x, double y, SqGrid a, SqGrid b, SqGrid c, SqGrid d, SqGrid *found)
{
  double least = G_MAXDOUBLE;

  for (gint32 i = -1; i <= 2; i++)
    for (gint32 k = -1; k <= 2; k++)
      {
        SqGrid p = { (gint32) floor (x) + i, (gint32) floor (y) + k };
        double away = hypot (p.x - x, p.y - y);
        if (away < least && turn (a, b, p) <= 0 && turn (c, d, p) <= 0)
          {
            least = away;
            *found = p;
          }
      }
  return least < G_MAXDOUBLE;
}

/* Where the edges before and after the one that starts at @i meet, if that one may give way. */
static gboolean
may_cut (const GArray *ring, guint i, SqGrid *tip)
{
  SqGrid a = cyclic (ring, i + ring->len - 1), b = at (ring, i), c = cyclic (ring, i + 1),
         d = cyclic (ring, i + 2);

  if (ring->len < 5 || !is_short (b, c) || turn (a, b, c) <= 0 || turn (b, c, d) <= 0)
    return FALSE;
  double ux = (double) b.x - a.x, uy = (double) b.y - a.y;
  double vx = (double) d.x - c.x, vy = (double) d.y - c.y, cross = ux * vy - uy * vx;
  if (cross <= 0)
    return FALSE;
  double t = (((double) c.x - a.x) * vy - ((double) c.y - a.y) * vx) / cross;
  double x = a.x + t * ux, y = a.y + t * uy;
  if (hypot (x - b.x, y - b.y) + hypot (x - c.x, y - c.y) > 2 * SHORT_UM
      || !outside_both (x, y, a, b, c, d, tip))
    return FALSE;
  return distance_from_line (*tip, b, c) < OUTSIDE_UM;
}

/* One round; a corner that was just made is left alone, so that nothing adds up. */
static void
simplify_once (GArray *ring)
{
  for (guint i = 1; i + 2 < ring->len; i++)
    {
      SqGrid tip;
      if (may_fill (ring, i))
        g_array_remove_index (ring, i);
      else if (may_cut (ring, i, &tip))
        {
          at (ring, i) = tip;
          g_array_remove_index (ring, i + 1);
        }
    }
}

static gboolean
is_counter_clockwise (const SqGridRing *ring)
{
  double twice = 0;
  SqGrid o = ring->points[0];

  for (guint i = 1; i + 1 < ring->n; i++)
    twice += (double) turn (o, ring->points[i], ring->points[i + 1]);
  return twice > 0;
}

/* @ring with the material on its left, moved by −@origin. */
static GArray *
ring_of (const SqGridRing *ring, gboolean is_hole, SqGrid origin)
{
  GArray *result = g_array_sized_new (FALSE, FALSE, sizeof (SqGrid), ring->n);
  gboolean backwards = is_counter_clockwise (ring) == is_hole;

  for (guint i = 0; i < ring->n; i++)
    {
      SqGrid p = ring->points[backwards ? ring->n - 1 - i : i];
      p = (SqGrid){ p.x - origin.x, p.y - origin.y };
      g_array_append_val (result, p);
    }
  drop_straight (result);
  for (guint round = 0; round < ROUNDS; round++)
    simplify_once (result);
  drop_straight (result);
  return result;
}

/* ---- one ring ------------------------------------------------------------------------------ */

/* Whether the open line from a to b meets the edge c–d. */
static gboolean
is_in_way (SqGrid a, SqGrid b, SqGrid c, SqGrid d)
{
  gint64 c_side = turn (a, b, c), d_side = turn (a, b, d);
  gint64 a_side = turn (c, d, a), b_side = turn (c, d, b);

  if (same (a, c) || same (a, d) || same (b, c) || same (b, d))
    return FALSE;
  return ((c_side > 0) != (d_side > 0) || c_side == 0 || d_side == 0)
         && ((a_side > 0) != (b_side > 0) || a_side == 0 || b_side == 0);
}

static gboolean
is_clear (SqGrid a, SqGrid b, const GArray *ring)
{
  for (guint i = 0; i < ring->len; i++)
    if (is_in_way (a, b, at (ring, i), cyclic (ring, i + 1)))
      return FALSE;
  return TRUE;
}

/* Whether from corner @i of @ring the way to @to leads into the material. */
static gboolean
leads_inside (const GArray *ring, guint i, SqGrid to)
{
  SqGrid before = cyclic (ring, i + ring->len - 1), p = at (ring, i), after = cyclic (ring, i + 1);

  if (turn (before, p, after) >= 0)
    return turn (before, p, to) > 0 && turn (p, after, to) > 0;
  return turn (before, p, to) > 0 || turn (p, after, to) > 0;
}

/* Cuts @hole open to @outer by the shortest clear line; FALSE where there is none. */
static gboolean
join_hole (GArray *outer, const GArray *hole, const GPtrArray *others)
{
  double least = G_MAXDOUBLE;
  guint from = 0, to = 0;

  for (guint i = 0; i < outer->len; i++)
    for (guint k = 0; k < hole->len; k++)
      {
        SqGrid a = at (outer, i), b = at (hole, k);
        gboolean clear = distance (a, b) < least && leads_inside (outer, i, b)
                         && is_clear (a, b, outer) && is_clear (a, b, hole);
        for (guint h = 0; clear && h < others->len; h++)
          clear = is_clear (a, b, g_ptr_array_index (others, h));
        if (clear)
          {
            least = distance (a, b);
            from = i;
            to = k;
          }
      }
  if (least == G_MAXDOUBLE)
    return FALSE;

  g_autoptr (GArray) way = g_array_new (FALSE, FALSE, sizeof (SqGrid));
  for (guint k = 0; k <= hole->len; k++)
    {
      SqGrid p = cyclic (hole, to + k);
      g_array_append_val (way, p);
    }
  SqGrid back = at (outer, from);
  g_array_append_val (way, back);
  g_array_insert_vals (outer, from + 1, way->data, way->len);
  return TRUE;
}

/* ---- triangles ----------------------------------------------------------------------------- */

static gboolean
is_ear (const GArray *ring, guint i)
{
  SqGrid a = cyclic (ring, i + ring->len - 1), b = at (ring, i), c = cyclic (ring, i + 1);

  if (turn (a, b, c) <= 0)
    return FALSE;
  for (guint k = 0; k < ring->len; k++)
    {
      SqGrid p = at (ring, k);
      if (!same (p, a) && !same (p, b) && !same (p, c) && turn (a, b, p) >= 0 && turn (b, c, p) >= 0
          && turn (c, a, p) >= 0)
        return FALSE;
    }
  return TRUE;
}

static void
add_part (GArray *parts, const SqGrid *points, guint n)
{
  SqLayPart part = { g_memdup2 (points, n * sizeof (SqGrid)), n };
  g_array_append_val (parts, part);
}

/* Cuts ear after ear from @ring, which is used up; FALSE where there is none to cut. */
static gboolean
cut_ears (GArray *ring, GArray *parts)
{
  while (ring->len > 2)
    {
      guint best = ring->len;
      double widest = 0;
      for (guint i = 0; i < ring->len; i++)
        {
          SqGrid a = cyclic (ring, i + ring->len - 1), b = at (ring, i), c = cyclic (ring, i + 1);
          if (turn (a, b, c) == 0)
            {
              best = i;
              widest = 0;
              break;
            }
          /* The one whose cut is short for its area makes no slivers. */
          double worth = (double) turn (a, b, c) / (distance (a, c) * distance (a, c) + 1);
          if (worth > widest && is_ear (ring, i))
            {
              best = i;
              widest = worth;
            }
        }
      if (best == ring->len)
        return FALSE;
      SqGrid ear[] = { cyclic (ring, best + ring->len - 1), at (ring, best),
                       cyclic (ring, best + 1) };
      if (widest > 0)
        add_part (parts, ear, 3);
      g_array_remove_index (ring, best);
    }
  return TRUE;
}

/* ---- convex parts -------------------------------------------------------------------------- */

/* @a and @b joined over the edge from corner @i of @a, which is @b's from @k + 1 to @k; only where
 * that is convex. */
static gboolean
join_at (const SqLayPart *a, guint i, const SqLayPart *b, guint k, SqLayPart *joined)
{
  g_autoptr (GArray) ring = g_array_new (FALSE, FALSE, sizeof (SqGrid));

  for (guint m = 1; m <= a->n; m++)
    g_array_append_val (ring, a->points[(i + m) % a->n]);
  for (guint m = 2; m < b->n; m++)
    g_array_append_val (ring, b->points[(k + m) % b->n]);
  for (guint m = 0; m < ring->len; m++)
    if (turn (cyclic (ring, m + ring->len - 1), at (ring, m), cyclic (ring, m + 1)) < 0)
      return FALSE;
  drop_straight (ring);
  *joined = (SqLayPart){ g_memdup2 (ring->data, ring->len * sizeof (SqGrid)), ring->len };
  return TRUE;
}

static gboolean
join (const SqLayPart *a, const SqLayPart *b, SqLayPart *joined)
{
  for (guint i = 0; i < a->n; i++)
    for (guint k = 0; k < b->n; k++)
      if (same (a->points[i], b->points[(k + 1) % b->n])
          && same (a->points[(i + 1) % a->n], b->points[k]))
        return join_at (a, i, b, k, joined);
  return FALSE;
}

static void
join_parts (GArray *parts)
{
  for (guint i = 0; i < parts->len; i++)
    for (guint k = i + 1; k < parts->len; k++)
      {
        SqLayPart joined, *a = &g_array_index (parts, SqLayPart, i),
                          *b = &g_array_index (parts, SqLayPart, k);
        if (!join (a, b, &joined))
          continue;
        g_array_remove_index (parts, k);
        g_free (a->points);
        *a = joined;
        k = i;
      }
}

static void
clear_part (gpointer data)
{
  g_free (((SqLayPart *) data)->points);
}

static GArray *
new_parts (void)
{
  GArray *parts = g_array_new (FALSE, FALSE, sizeof (SqLayPart));
  g_array_set_clear_func (parts, clear_part);
  return parts;
}

/* ---- the hull ------------------------------------------------------------------------------ */

static int
compare_points (gconstpointer a, gconstpointer b)
{
  const SqGrid *p = a, *q = b;
  return p->x != q->x ? (p->x > q->x) - (p->x < q->x) : (p->y > q->y) - (p->y < q->y);
}

/* The convex hull of @points, which are sorted (Andrew's monotone chain). */
static SqLayPart
hull_of (GArray *points)
{
  SqLayPart hull = { g_new (SqGrid, 2 * points->len + 1), 0 };

  g_array_sort (points, compare_points);
  for (guint side = 0, base = 0; side < 2; side++)
    {
      for (guint i = 0; i < points->len; i++)
        {
          SqGrid p = at (points, side == 0 ? i : points->len - 1 - i);
          while (hull.n >= base + 2
                 && turn (hull.points[hull.n - 2], hull.points[hull.n - 1], p) <= 0)
            hull.n--;
          hull.points[hull.n++] = p;
        }
      hull.n--;
      base = hull.n;
    }
  return hull;
}

static double
area_of (const SqLayPart *part)
{
  double twice = 0;

  for (guint i = 1; i + 1 < part->n; i++)
    twice += (double) turn (part->points[0], part->points[i], part->points[i + 1]);
  return twice / 2;
}

/* ---- all of it ----------------------------------------------------------------------------- */

/* NULL where the rings can't be cut into triangles. */
static GArray *
parts_of_rings (const SqGridRing *rings, guint n_rings, SqGrid origin)
{
  g_autoptr (GArray) outer = ring_of (&rings[0], FALSE, origin);
  g_autoptr (GPtrArray) holes = g_ptr_array_new_with_free_func ((GDestroyNotify) g_array_unref);
  g_autoptr (GArray) parts = new_parts ();

  for (guint i = 1; i < n_rings; i++)
    g_ptr_array_add (holes, ring_of (&rings[i], TRUE, origin));
  while (holes->len > 0)
    {
      g_autoptr (GArray) hole = g_ptr_array_steal_index (holes, 0);
      if (!join_hole (outer, hole, holes))
        return NULL;
    }
  if (!cut_ears (outer, parts) || parts->len == 0)
    return NULL;
  join_parts (parts);
  return g_steal_pointer (&parts);
}

/* The hull of @rings as the only part. */
static GArray *
hull_of_rings (const SqGridRing *rings, guint n_rings, SqGrid origin)
{
  g_autoptr (GArray) points = g_array_new (FALSE, FALSE, sizeof (SqGrid));
  GArray *parts = new_parts ();

  for (guint i = 0; i < n_rings; i++)
    for (guint k = 0; k < rings[i].n; k++)
      {
        SqGrid p = { rings[i].points[k].x - origin.x, rings[i].points[k].y - origin.y };
        g_array_append_val (points, p);
      }
  SqLayPart hull = hull_of (points);
  g_array_append_val (parts, hull);
  return parts;
}

static SqLayParts *
parts_new (GArray *parts)
{
  SqLayParts *all = g_new0 (SqLayParts, 1);
  g_autoptr (GArray) points = g_array_new (FALSE, FALSE, sizeof (SqGrid));

  all->parts = parts;
  all->box = (SqGridBox){ { G_MAXINT32, G_MAXINT32 }, { G_MININT32, G_MININT32 } };
  for (guint i = 0; i < parts->len; i++)
    {
      const SqLayPart *part = sq_lay_part (all, i);
      const SqGridRing ring = { part->points, part->n };
      SqGridBox box = sq_grid_rings_box (&ring, 1);
      all->box.min = (SqGrid){ MIN (all->box.min.x, box.min.x), MIN (all->box.min.y, box.min.y) };
      all->box.max = (SqGrid){ MAX (all->box.max.x, box.max.x), MAX (all->box.max.y, box.max.y) };
      all->area += area_of (part);
      g_array_append_vals (points, part->points, part->n);
    }
  SqLayPart hull = hull_of (points);
  all->hull = area_of (&hull);
  clear_part (&hull);
  return all;
}

SqLayParts *
sq_lay_parts_new (const SqLayItem *item, SqGridPose pose)
{
  SqGridRing *keep = sq_grid_rings_posed (item->keep, item->n_keep, pose);
  SqGrid origin = sq_lay_item_box (item, pose).min;
  GArray *parts = parts_of_rings (keep, item->n_keep, origin);

  if (parts == NULL)
    parts = hull_of_rings (keep, item->n_keep, origin);
  sq_grid_rings_free (keep, item->n_keep);
  return parts_new (parts);
}

SqLayParts *
sq_lay_parts_new_box (SqGrid size)
{
  const SqGrid corners[] = { { 0, 0 }, { size.x, 0 }, size, { 0, size.y } };
  GArray *parts = new_parts ();

  add_part (parts, corners, G_N_ELEMENTS (corners));
  return parts_new (parts);
}

void
sq_lay_parts_free (SqLayParts *parts)
{
  g_array_unref (parts->parts);
  g_free (parts);
}
