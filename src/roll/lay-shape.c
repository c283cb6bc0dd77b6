/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "roll/lay-shape.h"

#include <math.h>

/* Edges shorter than this may be merged into one that lies outside them (µm): chords of arcs are,
 * and what was drawn straight is not, so that it still touches exactly. */
#define SHORT_UM 20000

/* How far outside it may lie (µm). */
#define MERGED_UM 200.0

/* And so many at most become one. */
#define MOST_MERGED 64

/* The core is looked for between so many heights. */
#define CORE_LEVELS 8

/* A ledge is wider than this (µm), and a shape has so many at most. */
#define LEDGE_UM 1000
#define MOST_LEDGES 8

static gint64
floor_div (gint64 a, gint64 b)
{
  return a / b - (a % b != 0 && (a < 0) != (b < 0));
}

/* The greatest whole x that is not right of the line of @edge at height @y. An item is at most
 * 1,000 m long, so its products fit. */
static gint64
floor_x (const SqGridEdge *edge, gint64 y)
{
  gint64 dx = (gint64) edge->to.x - edge->from.x, dy = (gint64) edge->to.y - edge->from.y;
  return dx == 0 ? edge->from.x : edge->from.x + floor_div (dx * (y - edge->from.y), dy);
}

static gint64
ceil_x (const SqGridEdge *edge, gint64 y)
{
  gint64 dx = (gint64) edge->to.x - edge->from.x, dy = (gint64) edge->to.y - edge->from.y;
  return dx == 0 ? edge->from.x : edge->from.x - floor_div (-dx * (y - edge->from.y), dy);
}

/* ---- outlines ------------------------------------------------------------------------------ */

static gboolean
same_edge (const SqGridEdge *a, const SqGridEdge *b)
{
  return a->from.x == b->from.x && a->from.y == b->from.y && a->to.x == b->to.x
         && a->to.y == b->to.y;
}

static void
add_side (GArray *sides, const SqTrapezoid *band, const SqGridEdge *edge)
{
  SqLaySide *last = sides->len > 0 ? &g_array_index (sides, SqLaySide, sides->len - 1) : NULL;
  SqLaySide side = { band->y0, band->y1, *edge };

  if (last != NULL && last->y1 == side.y0 && same_edge (&last->edge, edge))
    last->y1 = side.y1;
  else
    g_array_append_val (sides, side);
}

/* ---- fewer sides --------------------------------------------------------------------------- */

static gboolean
is_short (const SqLaySide *side)
{
  return hypot ((double) side->edge.to.x - side->edge.from.x,
                (double) side->edge.to.y - side->edge.from.y)
         < SHORT_UM;
}

/* Whether @b goes on where @a ends. */
static gboolean
goes_on (const SqLaySide *a, const SqLaySide *b)
{
  return a->y1 == b->y0 && floor_x (&a->edge, a->y1) == floor_x (&b->edge, b->y0);
}

/* How far right of the chord the sides reach, at most and at least. */
static void
measure (const SqLaySide *sides, guint n, const SqGridEdge *chord, gint64 *most, gint64 *least)
{
  *most = 0;
  *least = 0;
  for (guint i = 0; i < n; i++)
    for (guint end = 0; end < 2; end++)
      {
        gint64 y = end == 0 ? sides[i].y0 : sides[i].y1;
        *most = MAX (*most, ceil_x (&sides[i].edge, y) - floor_x (chord, y));
        *least = MIN (*least, floor_x (&sides[i].edge, y) - ceil_x (chord, y));
      }
}

/* One side outside of the @n sides, which go on in each other; FALSE where it would lie too far
 * out. @outward is 1 for a right outline and −1 for a left one. */
static gboolean
merge (const SqLaySide *sides, guint n, gint outward, SqLaySide *merged)
{
  const SqLaySide *first = &sides[0], *last = &sides[n - 1];
  SqGridEdge chord = { { (gint32) floor_x (&first->edge, first->y0), first->y0 },
                       { (gint32) floor_x (&last->edge, last->y1), last->y1 } };
  double dx = (double) chord.to.x - chord.from.x, dy = (double) chord.to.y - chord.from.y;
  gint64 most, least;

  measure (sides, n, &chord, &most, &least);
  if ((double) (most - least) * dy > MERGED_UM * hypot (dx, dy))
    return FALSE;
  gint32 by = (gint32) (outward > 0 ? most : least);
  chord.from.x += by;
  chord.to.x += by;
  *merged = (SqLaySide){ first->y0, last->y1, chord };
  return TRUE;
}

static SqLaySide *
fewer (const GArray *sides, gint outward, guint *n)
{
  const SqLaySide *all = (const SqLaySide *) (gconstpointer) sides->data;
  SqLaySide *result = g_new (SqLaySide, sides->len);

  *n = 0;
  for (guint i = 0, end = 0; i < sides->len; i = end)
    {
      SqLaySide best = all[i], longer;
      end = i + 1;
      while (end < sides->len && end - i < MOST_MERGED && is_short (&all[end - 1])
             && is_short (&all[end]) && goes_on (&all[end - 1], &all[end])
             && merge (&all[i], end + 1 - i, outward, &longer))
        {
          best = longer;
          end++;
        }
      result[(*n)++] = best;
    }
  return result;
}

/* ---- the core ------------------------------------------------------------------------------ */

/* The box between the sides from height y0 up to y1. */
static SqGridBox
core_between (const SqLayShape *shape, gint32 y0, gint32 y1)
{
  gint64 left = shape->keep.min.x, right = shape->keep.max.x;

  for (guint i = 0; i < shape->n_left; i++)
    {
      const SqLaySide *side = &shape->left[i];
      gint32 low = MAX (side->y0, y0), high = MIN (side->y1, y1);
      if (low < high)
        left = MAX (left, MAX (ceil_x (&side->edge, low), ceil_x (&side->edge, high)));
    }
  for (guint i = 0; i < shape->n_right; i++)
    {
      const SqLaySide *side = &shape->right[i];
      gint32 low = MAX (side->y0, y0), high = MIN (side->y1, y1);
      if (low < high)
        right = MIN (right, MIN (floor_x (&side->edge, low), floor_x (&side->edge, high)));
    }
  return (SqGridBox){ { (gint32) left, y0 }, { (gint32) MAX (left, right), y1 } };
}

/* The largest of those between a few heights. */
static SqGridBox
find_core (const SqLayShape *shape)
{
  gint64 bottom = shape->keep.min.y, height = (gint64) shape->keep.max.y - bottom, most = 0;
  SqGridBox best = { shape->keep.min, shape->keep.min };

  for (gint64 i = 0; i < CORE_LEVELS && shape->n_left > 0; i++)
    for (gint64 k = i + 1; k <= CORE_LEVELS; k++)
      {
        SqGridBox box = core_between (shape, (gint32) (bottom + height * i / CORE_LEVELS),
                                      (gint32) (bottom + height * k / CORE_LEVELS));
        gint64 area = ((gint64) box.max.x - box.min.x) * ((gint64) box.max.y - box.min.y);
        if (area > most)
          {
            most = area;
            best = box;
          }
      }
  return best;
}

/* ---- ledges -------------------------------------------------------------------------------- */

static void
add_ledge (SqLayShape *shape, gint32 y)
{
  for (guint i = 0; i < shape->n_ledges; i++)
    if (shape->ledges[i] == y)
      return;
  shape->ledges[shape->n_ledges++] = y;
}

/* Where one side ends and the next begins elsewhere. */
static void
add_ledges_of (SqLayShape *shape, const SqLaySide *sides, guint n)
{
  for (guint i = 0; i + 1 < n && shape->n_ledges < MOST_LEDGES; i++)
    if (ABS (floor_x (&sides[i].edge, sides[i].y1) - floor_x (&sides[i + 1].edge, sides[i + 1].y0))
        > LEDGE_UM)
      add_ledge (shape, sides[i].y1);
}

static void
find_ledges (SqLayShape *shape)
{
  shape->ledges = g_new (gint32, MOST_LEDGES);
  add_ledge (shape, shape->keep.min.y);
  add_ledge (shape, shape->keep.max.y);
  add_ledges_of (shape, shape->left, shape->n_left);
  add_ledges_of (shape, shape->right, shape->n_right);
}

/* ---- shapes -------------------------------------------------------------------------------- */

static SqLayShape *
shape_of_rings (const SqGridRing *keep, guint n_keep)
{
  g_autoptr (GArray) bands = sq_trapezoids_new_filled (keep, n_keep);
  g_autoptr (GArray) left = g_array_new (FALSE, FALSE, sizeof (SqLaySide));
  g_autoptr (GArray) right = g_array_new (FALSE, FALSE, sizeof (SqLaySide));
  SqLayShape *shape = g_new0 (SqLayShape, 1);

  for (guint i = 0; i < bands->len; i++)
    {
      const SqTrapezoid *band = &g_array_index (bands, SqTrapezoid, i);
      add_side (left, band, &band->left);
      add_side (right, band, &band->right);
    }
  shape->left = fewer (left, -1, &shape->n_left);
  shape->right = fewer (right, 1, &shape->n_right);
  shape->keep = sq_grid_rings_box (keep, n_keep);
  for (guint i = 0; i < shape->n_left; i++)
    {
      const SqGridEdge *edge = &shape->left[i].edge;
      shape->keep.min.x = MIN (shape->keep.min.x, MIN (edge->from.x, edge->to.x));
    }
  for (guint i = 0; i < shape->n_right; i++)
    {
      const SqGridEdge *edge = &shape->right[i].edge;
      shape->keep.max.x = MAX (shape->keep.max.x, MAX (edge->from.x, edge->to.x));
    }
  shape->core = find_core (shape);
  find_ledges (shape);
  return shape;
}

static void
move_rings (SqGridRing *rings, guint n_rings, SqGrid by)
{
  for (guint i = 0; i < n_rings; i++)
    for (guint k = 0; k < rings[i].n; k++)
      rings[i].points[k] = sq_grid_add (rings[i].points[k], by);
}

SqLayShape *
sq_lay_shape_new (const SqLayItem *item, SqGridPose pose)
{
  SqGridRing *keep = sq_grid_rings_posed (item->keep, item->n_keep, pose);
  SqGridBox box = sq_lay_item_box (item, pose);

  move_rings (keep, item->n_keep, (SqGrid){ -box.min.x, -box.min.y });
  SqLayShape *shape = shape_of_rings (keep, item->n_keep);
  shape->pose = pose;
  shape->at = box.min;
  shape->length = box.max.x - box.min.x;
  shape->width = box.max.y - box.min.y;
  sq_grid_rings_free (keep, item->n_keep);
  return shape;
}

SqLayShape *
sq_lay_shape_new_box (const SqGridBox *box)
{
  gint32 length = box->max.x - box->min.x, width = box->max.y - box->min.y;
  SqGrid corners[] = { { 0, 0 }, { length, 0 }, { length, width }, { 0, width } };
  const SqGridRing ring = { corners, G_N_ELEMENTS (corners) };
  SqLayShape *shape = shape_of_rings (&ring, 1);

  shape->at = box->min;
  shape->length = length;
  shape->width = width;
  return shape;
}

void
sq_lay_shape_free (SqLayShape *shape)
{
  g_free (shape->left);
  g_free (shape->right);
  g_free (shape->ledges);
  g_free (shape);
}

/* ---- side by side -------------------------------------------------------------------------- */

/* How far along x the left outline must lie from the right one, its heights @up above the other's,
 * so that they touch; rounded up. FALSE where they share no height. At each height looked at one
 * of the two has a corner, so that only one of the two x is rounded. */
static gboolean
touch (const SqLaySide *right, guint n_right, const SqLaySide *left, guint n_left, gint64 up,
       gint64 *distance)
{
  guint i = 0, k = 0;
  gint64 most = G_MININT64;

  while (i < n_right && k < n_left)
    {
      gint64 y0 = MAX (right[i].y0, left[k].y0 + up), y1 = MIN (right[i].y1, left[k].y1 + up);
      if (y0 < y1)
        {
          gint64 low = ceil_x (&right[i].edge, y0) - floor_x (&left[k].edge, y0 - up);
          gint64 high = ceil_x (&right[i].edge, y1) - floor_x (&left[k].edge, y1 - up);
          most = MAX (most, MAX (low, high));
        }
      if (right[i].y1 < left[k].y1 + up)
        i++;
      else
        k++;
    }
  *distance = most;
  return most != G_MININT64;
}

gboolean
sq_lay_shape_bar (const SqLayShape *shape, const SqLayShape *other, gint64 up, gint64 *from,
                  gint64 *to)
{
  gint64 behind, before;

  if (!touch (other->right, other->n_right, shape->left, shape->n_left, up, &behind)
      || !touch (shape->right, shape->n_right, other->left, other->n_left, -up, &before))
    return FALSE;
  *from = -before;
  *to = behind;
  return TRUE;
}
