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

/* A pocket is filled where it is narrower than this part of the length (1 / n); all are where that
 * takes no more than this part of the area, and where there would be more parts. */
#define NARROW_PART 40
#define LEAST_POCKETS 0.04
#define MOST_PARTS 8

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
  for (guint i = 0; i < shape->n_parts && shape->n_parts > 1; i++)
    {
      const SqLayShape *part = shape->parts[i];
      if (part->n_left > 0 && shape->n_ledges + 1 < MOST_LEDGES)
        {
          add_ledge (shape, part->keep.min.y);
          add_ledge (shape, part->keep.max.y);
        }
    }
}

/* ---- parts --------------------------------------------------------------------------------- */

/* The outlines of a part while it is drawn from below. */
typedef struct
{
  GArray *left, *right; /* of SqLaySide */
} Draft;

static void
clear_draft (gpointer data)
{
  Draft *draft = data;

  g_array_unref (draft->left);
  g_array_unref (draft->right);
}

static void
add_draft (GArray *drafts)
{
  Draft draft = { g_array_new (FALSE, FALSE, sizeof (SqLaySide)),
                  g_array_new (FALSE, FALSE, sizeof (SqLaySide)) };
  g_array_append_val (drafts, draft);
}

/* How wide the gap between two of a band is, in its middle. */
static gint64
gap_between (const SqTrapezoid *a, const SqTrapezoid *b)
{
  gint64 y = ((gint64) a->y0 + a->y1) / 2;
  return floor_x (&b->left, y) - ceil_x (&a->right, y);
}

/* Draws the band of @n trapezoids at @bands on the drafts that end below it: one each where it has as
 * many parts as the band before, else new ones. */
static void
draw_band (GArray *drafts, const SqTrapezoid *bands, guint n, gint64 narrow, guint *n_open)
{
  g_autofree SqTrapezoid *merged = g_new (SqTrapezoid, n);
  guint n_merged = 0;

  for (guint i = 0; i < n; i++)
    if (n_merged > 0 && gap_between (&merged[n_merged - 1], &bands[i]) < narrow)
      merged[n_merged - 1].right = bands[i].right;
    else
      merged[n_merged++] = bands[i];
  for (guint i = 0; i < n_merged && n_merged != *n_open; i++)
    add_draft (drafts);
  *n_open = n_merged;
  for (guint i = 0; i < n_merged; i++)
    {
      Draft *draft = &g_array_index (drafts, Draft, drafts->len - n_merged + i);
      add_side (draft->left, &merged[i], &merged[i].left);
      add_side (draft->right, &merged[i], &merged[i].right);
    }
}

/* Draws the parts of @bands, of sq_trapezoids_new; pockets narrower than @narrow are filled. At
 * least one, be it empty. */
static GArray *
draw_parts (const GArray *bands, gint64 narrow)
{
  GArray *drafts = g_array_new (FALSE, FALSE, sizeof (Draft));
  guint n_open = 0;

  g_array_set_clear_func (drafts, clear_draft);
  for (guint i = 0, end; i < bands->len; i = end)
    {
      const SqTrapezoid *first = &g_array_index (bands, SqTrapezoid, i);
      for (end = i + 1; end < bands->len; end++)
        if (g_array_index (bands, SqTrapezoid, end).y0 != first->y0)
          break;
      draw_band (drafts, first, end - i, narrow, &n_open);
    }
  if (drafts->len == 0)
    add_draft (drafts);
  return drafts;
}

/* The keep box of what is drawn; that of nothing is @otherwise. */
static SqGridBox
box_of_sides (const SqLayShape *shape, SqGridBox otherwise)
{
  if (shape->n_left == 0 || shape->n_right == 0)
    return otherwise;

  SqGridBox box = { { G_MAXINT32, shape->left[0].y0 },
                    { G_MININT32, shape->left[shape->n_left - 1].y1 } };
  for (guint i = 0; i < shape->n_left; i++)
    {
      const SqLaySide *side = &shape->left[i];
      gint64 x = MIN (floor_x (&side->edge, side->y0), floor_x (&side->edge, side->y1));
      box.min.x = (gint32) MIN (box.min.x, x);
    }
  for (guint i = 0; i < shape->n_right; i++)
    {
      const SqLaySide *side = &shape->right[i];
      gint64 x = MAX (ceil_x (&side->edge, side->y0), ceil_x (&side->edge, side->y1));
      box.max.x = (gint32) MAX (box.max.x, x);
    }
  return box;
}

/* Twice the area between the outlines. */
static double
area_between (const Draft *draft)
{
  double area = 0;

  for (guint side = 0; side < 2; side++)
    {
      const GArray *sides = side == 0 ? draft->left : draft->right;
      for (guint i = 0; i < sides->len; i++)
        {
          const SqLaySide *s = &g_array_index (sides, SqLaySide, i);
          double x = (double) (floor_x (&s->edge, s->y0) + floor_x (&s->edge, s->y1));
          area += (side == 0 ? -x : x) * ((double) s->y1 - s->y0);
        }
    }
  return area;
}

/* Whether there is enough to win in pockets. */
static gboolean
has_pockets (const GArray *parts, const Draft *all)
{
  double area = 0;

  for (guint i = 0; i < parts->len; i++)
    area += area_between (&g_array_index (parts, Draft, i));
  return parts->len > 1 && parts->len <= MOST_PARTS
         && area < (1 - LEAST_POCKETS) * area_between (all);
}

static void
finish (SqLayShape *shape, const Draft *draft, SqGridBox otherwise)
{
  shape->left = fewer (draft->left, -1, &shape->n_left);
  shape->right = fewer (draft->right, 1, &shape->n_right);
  shape->keep = box_of_sides (shape, otherwise);
  shape->core = find_core (shape);
}

static void
add_parts (SqLayShape *shape, const GArray *drafts)
{
  shape->n_parts = drafts->len;
  shape->parts = g_new0 (SqLayShape *, drafts->len);
  for (guint i = 0; i < drafts->len; i++)
    {
      shape->parts[i] = g_new0 (SqLayShape, 1);
      finish (shape->parts[i], &g_array_index (drafts, Draft, i), shape->keep);
    }
}

/* ---- shapes -------------------------------------------------------------------------------- */

static SqLayShape *
shape_of_rings (const SqGridRing *keep, guint n_keep)
{
  g_autoptr (GArray) bands = sq_trapezoids_new (keep, n_keep);
  SqGridBox box = sq_grid_rings_box (keep, n_keep);
  g_autoptr (GArray) all = draw_parts (bands, G_MAXINT64);
  g_autoptr (GArray) parts = draw_parts (bands, ((gint64) box.max.x - box.min.x) / NARROW_PART);
  SqLayShape *shape = g_new0 (SqLayShape, 1);

  finish (shape, &g_array_index (all, Draft, 0), box);
  if (has_pockets (parts, &g_array_index (all, Draft, 0)))
    add_parts (shape, parts);
  else
    {
      shape->n_parts = 1;
      shape->parts = g_new (SqLayShape *, 1);
      shape->parts[0] = shape;
    }
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
  for (guint i = 0; i < shape->n_parts; i++)
    if (shape->parts[i] != shape)
      sq_lay_shape_free (shape->parts[i]);
  g_free (shape->parts);
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
