/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "roll/lay-leftovers.h"

#include "roll/trapezoids.h"

/* The strip is looked at in rows across: their bounds are where pieces begin and end, none nearer to
 * another than LEAST_ROW, and where these are farther apart than MOST_ROW some between, so that what
 * is slanted or round is followed that closely (µm). */
#define LEAST_ROW 200
#define MOST_ROW 5000

/* From – to along. */
typedef struct
{
  gint32 from, to;
} Span;

/* The largest rectangle worth keeping that begins in a row. Cutting out another leaves it the largest
 * unless it reaches into it. */
typedef struct
{
  SqGridBox box; /* empty: there is none */
  gint64 most;   /* its area; if it is not known, none is larger than this */
  gboolean is_known;
} Begun;

typedef struct
{
  gint32 end, width;
  GArray *bounds; /* of gint32, from 0 to width: one more than there are rows */
  GArray **busy;  /* by row, of Span: then, once sorted, of what is free */
  const SqLayLeast *least;
  guint n_least;
  gint32 least_along; /* of all @least */
  gint64 least_area;
  Begun *begun; /* by row */
} Rows;

#define n_rows(rows) ((rows)->bounds->len - 1)
#define bound(rows, i) (g_array_index ((rows)->bounds, gint32, (i)))

/* ---- the rows ------------------------------------------------------------------------------ */

static int
compare_ints (gconstpointer a, gconstpointer b)
{
  gint32 x = *(const gint32 *) a, y = *(const gint32 *) b;
  return (x > y) - (x < y);
}

static void
note_bound (GArray *at, gint64 y, gint32 width)
{
  gint32 held = (gint32) CLAMP (y, 0, width);
  g_array_append_val (at, held);
}

static SqGridBox
box_of (const SqLayTask *task, const SqPlaced *placed)
{
  SqGridBox box = sq_lay_item_box (sq_lay_task_item (task, placed->item), placed->pose);
  box.min = sq_grid_add (box.min, placed->at);
  box.max = sq_grid_add (box.max, placed->at);
  return box;
}

/* Where anything begins or ends across, in order. */
static GArray *
edges_across (const SqLayTask *task, const SqLay *lay, guint strip)
{
  const SqLayStrip *own = sq_lay_task_strip (task, strip);
  GArray *at = g_array_new (FALSE, FALSE, sizeof (gint32));

  note_bound (at, 0, own->width);
  note_bound (at, own->width, own->width);
  for (guint i = 0; i < lay->placed->len; i++)
    if (sq_lay_placed (lay, i)->strip == strip)
      {
        SqGridBox box = box_of (task, sq_lay_placed (lay, i));
        note_bound (at, box.min.y, own->width);
        note_bound (at, box.max.y, own->width);
      }
  for (guint i = 0; i < own->n_flaws; i++)
    {
      note_bound (at, own->flaws[i].min.y, own->width);
      note_bound (at, own->flaws[i].max.y, own->width);
    }
  g_array_sort (at, compare_ints);
  return at;
}

/* From the last bound to @y. */
static void
add_bounds_to (Rows *rows, gint32 y)
{
  gint32 from = bound (rows, n_rows (rows)), n = (y - from + MOST_ROW - 1) / MOST_ROW;

  for (gint32 k = 1; k <= n; k++)
    {
      gint32 next = from + (gint32) ((gint64) (y - from) * k / n);
      g_array_append_val (rows->bounds, next);
    }
}

/* What ends a little above a bound would take a whole row: it has a low one of its own. */
static void
fill_bounds (Rows *rows, const GArray *at)
{
  gint32 last = 0, low = 0; /* low: the last that is too near to the bound before it */

  rows->bounds = g_array_new (FALSE, FALSE, sizeof (gint32));
  g_array_append_val (rows->bounds, last);
  for (guint i = 0; i < at->len; i++)
    {
      gint32 y = g_array_index (at, gint32, i);
      if (y < rows->width && (y - last < LEAST_ROW || rows->width - y < LEAST_ROW))
        {
          low = y;
          continue;
        }
      if (low > last && y - last >= 2 * LEAST_ROW)
        add_bounds_to (rows, last + LEAST_ROW);
      add_bounds_to (rows, y);
      last = y;
    }
}

/* The row that @y is in; a bound is in the row above it. */
static guint
row_at (const Rows *rows, gint32 y)
{
  guint low = 0, high = n_rows (rows) - 1;

  while (low < high)
    {
      guint middle = (low + high + 1) / 2;
      if (bound (rows, middle) <= y)
        low = middle;
      else
        high = middle - 1;
    }
  return low;
}

/* ---- what is taken ------------------------------------------------------------------------- */

static gint32
floor_at (const SqGridEdge *edge, gint32 y)
{
  gint64 dy = (gint64) edge->to.y - edge->from.y;
  gint64 across = ((gint64) edge->to.x - edge->from.x) * ((gint64) y - edge->from.y);
  gint64 down = across / dy - (across % dy < 0);

  return (gint32) (edge->from.x + down);
}

static gint32
ceil_at (const SqGridEdge *edge, gint32 y)
{
  SqGridEdge mirrored = { { -edge->from.x, edge->from.y }, { -edge->to.x, edge->to.y } };
  return -floor_at (&mirrored, y);
}

static void
take (Rows *rows, guint row, gint64 from, gint64 to)
{
  Span span = { (gint32) CLAMP (from, 0, rows->end), (gint32) CLAMP (to, 0, rows->end) };

  if (span.from < span.to)
    g_array_append_val (rows->busy[row], span);
}

/* The edges are straight: within a row the outermost places are at its bounds. */
static void
take_trapezoid (Rows *rows, const SqTrapezoid *t, SqGrid at)
{
  gint32 y0 = MAX (t->y0 + at.y, 0), y1 = MIN (t->y1 + at.y, rows->width);

  for (guint i = row_at (rows, y0); i < n_rows (rows) && bound (rows, i) < y1; i++)
    {
      gint32 low = MAX (y0, bound (rows, i)) - at.y, high = MIN (y1, bound (rows, i + 1)) - at.y;
      gint32 from = MIN (floor_at (&t->left, low), floor_at (&t->left, high));
      gint32 to = MAX (ceil_at (&t->right, low), ceil_at (&t->right, high));
      take (rows, i, (gint64) from + at.x, (gint64) to + at.x);
    }
}

static void
take_box (Rows *rows, const SqGridBox *box)
{
  for (guint i = row_at (rows, MAX (box->min.y, 0)); i < n_rows (rows); i++)
    {
      if (bound (rows, i) >= box->max.y)
        break;
      take (rows, i, box->min.x, box->max.x);
    }
}

/* Copies of an item come one after the other: they share their trapezoids while they lie alike. */
static void
take_pieces (Rows *rows, const SqLayTask *task, const SqLay *lay, guint strip)
{
  const SqPlaced *before = NULL;
  g_autoptr (GArray) trapezoids = NULL;

  for (guint i = 0; i < lay->placed->len; i++)
    {
      const SqPlaced *placed = sq_lay_placed (lay, i);
      const SqLayItem *item = sq_lay_task_item (task, placed->item);
      if (placed->strip != strip)
        continue;
      if (before == NULL || before->item != placed->item
          || !sq_grid_pose_equal (before->pose, placed->pose))
        {
          SqGridRing *rings = sq_grid_rings_posed (item->rings, item->n_rings, placed->pose);
          g_clear_pointer (&trapezoids, g_array_unref);
          trapezoids = sq_trapezoids_new (rings, item->n_rings);
          sq_grid_rings_free (rings, item->n_rings);
        }
      for (guint k = 0; k < trapezoids->len; k++)
        take_trapezoid (rows, &g_array_index (trapezoids, SqTrapezoid, k), placed->at);
      before = placed;
    }
}

static int
compare_spans (gconstpointer a, gconstpointer b)
{
  const Span *x = a, *y = b;
  return (x->from > y->from) - (x->from < y->from);
}

/* What is between those of @busy, where it is long enough. */
static GArray *
between (GArray *busy, gint32 end, gint32 least)
{
  GArray *free = g_array_new (FALSE, FALSE, sizeof (Span));
  gint32 from = 0;

  g_array_sort (busy, compare_spans);
  for (guint i = 0; i <= busy->len; i++)
    {
      Span next = i < busy->len ? g_array_index (busy, Span, i) : (Span){ end, end };
      Span gap = { from, next.from };
      if (gap.to - gap.from >= least)
        g_array_append_val (free, gap);
      from = MAX (from, next.to);
    }
  return free;
}

static void
turn_to_free (Rows *rows)
{
  for (guint i = 0; i < n_rows (rows); i++)
    {
      GArray *free = between (rows->busy[i], rows->end, rows->least_along);
      g_array_unref (rows->busy[i]);
      rows->busy[i] = free;
    }
}

/* ---- the largest --------------------------------------------------------------------------- */

/* Into @both: what @a and @b have in common. The longest of that which is shorter than @least. */
static gint32
meet (GArray *both, const GArray *a, const GArray *b, gint32 least)
{
  guint i = 0, k = 0;
  gint32 lost = 0;

  g_array_set_size (both, 0);
  while (i < a->len && k < b->len)
    {
      Span x = g_array_index (a, Span, i), y = g_array_index (b, Span, k);
      Span common = { MAX (x.from, y.from), MIN (x.to, y.to) };
      if (common.to - common.from >= least)
        g_array_append_val (both, common);
      else
        lost = MAX (lost, common.to - common.from);
      if (x.to < y.to)
        i++;
      else
        k++;
    }
  return lost;
}

static gboolean
is_worth_keeping (const Rows *rows, gint32 along, gint32 across)
{
  for (guint i = 0; i < rows->n_least; i++)
    if (along >= rows->least[i].along && across >= rows->least[i].across)
      return TRUE;
  return FALSE;
}

static gint64
area (const SqGridBox *box)
{
  return (gint64) (box->max.x - box->min.x) * (box->max.y - box->min.y);
}

static void
improve (const Rows *rows, const GArray *free, gint32 low, gint32 high, SqGridBox *best)
{
  for (guint i = 0; i < free->len; i++)
    {
      Span span = g_array_index (free, Span, i);
      SqGridBox box = { { span.from, low }, { span.to, high } };
      if (area (&box) > area (best) && is_worth_keeping (rows, span.to - span.from, high - low))
        *best = box;
    }
}

static gint32
longest (const GArray *free)
{
  gint32 most = 0;

  for (guint i = 0; i < free->len; i++)
    most = MAX (most, g_array_index (free, Span, i).to - g_array_index (free, Span, i).from);
  return most;
}

/* The largest that begins in @row, or that there is none of @known or more: what is too short to
 * become one is left out at once. */
static void
look_from (Rows *rows, guint row, gint64 known)
{
  Begun *begun = &rows->begun[row];
  gint32 low = bound (rows, row);
  gint64 height = rows->width - low;
  gint32 least = (gint32) MIN (MAX (rows->least_along, (known + height - 1) / height), G_MAXINT32);
  g_autoptr (GArray) free = g_array_new (FALSE, FALSE, sizeof (Span));
  g_autoptr (GArray) both = g_array_new (FALSE, FALSE, sizeof (Span));

  begun->box = (SqGridBox){ { 0, 0 }, { 0, 0 } };
  gint64 lost = meet (free, rows->busy[row], rows->busy[row], least);
  for (guint k = row; k < n_rows (rows) && free->len > 0; k++)
    {
      lost = MAX (lost, meet (both, free, rows->busy[k], least));
      GArray *other = free;
      free = both;
      both = other;
      if (longest (free) * height <= area (&begun->box))
        break;
      improve (rows, free, low, bound (rows, k + 1), &begun->box);
    }
  begun->is_known = area (&begun->box) >= known || known <= rows->least_area;
  begun->most = begun->is_known ? area (&begun->box)
                                : MIN (MAX (area (&begun->box), lost * height), known - 1);
}

/* Of equal ones the one nearest to the near edge, then to the cut end. FALSE: none. */
static gboolean
find_largest (Rows *rows, SqGridBox *best)
{
  for (;;)
    {
      gint64 known = rows->least_area;
      guint at = 0;
      for (guint i = 0; i < n_rows (rows); i++)
        {
          at = rows->begun[i].most > rows->begun[at].most ? i : at;
          known = rows->begun[i].is_known ? MAX (known, rows->begun[i].most) : known;
        }
      *best = rows->begun[at].box;
      if (rows->begun[at].is_known)
        return rows->begun[at].most > 0;
      look_from (rows, at, known);
    }
}

static gboolean
boxes_meet (const SqGridBox *a, const SqGridBox *b)
{
  return a->min.x < b->max.x && b->min.x < a->max.x && a->min.y < b->max.y && b->min.y < a->max.y;
}

static void
cut_out (Rows *rows, const SqGridBox *box)
{
  Span around[] = { { 0, box->min.x }, { box->max.x, rows->end } };
  g_autoptr (GArray) outside = g_array_new (FALSE, FALSE, sizeof (Span));

  g_array_append_vals (outside, around, G_N_ELEMENTS (around));
  for (guint i = row_at (rows, box->min.y); i < n_rows (rows) && bound (rows, i) < box->max.y; i++)
    {
      GArray *left = g_array_new (FALSE, FALSE, sizeof (Span));
      meet (left, rows->busy[i], outside, rows->least_along);
      g_array_unref (rows->busy[i]);
      rows->busy[i] = left;
    }
  for (guint i = 0; i < n_rows (rows); i++)
    if (boxes_meet (&rows->begun[i].box, box))
      rows->begun[i].is_known = FALSE;
}

/* ---- all of them --------------------------------------------------------------------------- */

static void
fill (Rows *rows, const SqLayTask *task, const SqLay *lay, guint strip)
{
  const SqLayStrip *own = sq_lay_task_strip (task, strip);
  g_autoptr (GArray) at = edges_across (task, lay, strip);

  fill_bounds (rows, at);
  rows->busy = g_new (GArray *, n_rows (rows));
  for (guint i = 0; i < n_rows (rows); i++)
    rows->busy[i] = g_array_new (FALSE, FALSE, sizeof (Span));
  take_pieces (rows, task, lay, strip);
  for (guint i = 0; i < own->n_flaws; i++)
    take_box (rows, &own->flaws[i]);
  turn_to_free (rows);
  rows->begun = g_new0 (Begun, n_rows (rows));
  for (guint i = 0; i < n_rows (rows); i++)
    rows->begun[i].most = (gint64) rows->end * (rows->width - bound (rows, i));
}

GArray *
sq_lay_leftovers (const SqLayTask *task, const SqLay *lay, guint strip, gint32 end,
                  const SqLayLeast *least, guint n_least)
{
  GArray *found = g_array_new (FALSE, FALSE, sizeof (SqGridBox));
  Rows rows = { .end = end,
                .width = sq_lay_task_strip (task, strip)->width,
                .least = least,
                .n_least = n_least,
                .least_along = G_MAXINT32,
                .least_area = G_MAXINT64 };
  SqGridBox box;

  for (guint i = 0; i < n_least; i++)
    {
      rows.least_along = MIN (rows.least_along, least[i].along);
      rows.least_area = MIN (rows.least_area, (gint64) least[i].along * least[i].across);
    }
  fill (&rows, task, lay, strip);
  while (find_largest (&rows, &box))
    {
      g_array_append_val (found, box);
      cut_out (&rows, &box);
    }
  for (guint i = 0; i < n_rows (&rows); i++)
    g_array_unref (rows.busy[i]);
  g_free (rows.busy);
  g_free (rows.begun);
  g_array_unref (rows.bounds);
  return found;
}
