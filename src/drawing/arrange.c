/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "drawing/arrange.h"

#include <string.h>

/* Rows and scale from before stay while they reach this share of the best. */
#define GOOD_ENOUGH 0.85

/* Faces stand side by side as soon as that is nearly as large as one below the other; several parts of
 * them flow only where that is clearly larger. */
#define BESIDE_SHARE 0.98
#define FLOWING_SHARE 1.1

/* A new scale leaves a little room to grow into before it must change. */
#define FRESH_SHARE 0.97

/* Rows from before leave no more than this share of the margin free, so that a label with a fraction
 * more in it does not move them. */
#define KEPT_MARGIN 0.1

/* Halvings of the range of scales: finer than a thousandth of a pixel. */
#define N_HALVINGS 40

/* A piece as it stands: its cut box and its label. */
typedef struct
{
  SqBox box;      /* mm */
  double label;   /* width of its label above it, user units */
  gboolean large; /* a face or an underside */
} Cell;

typedef struct
{
  const SqTable *table;
  Cell *cells;
  guint n;
  double label_height;
  double margin; /* that the rows in question keep */
} Layout;

/* How the large pieces stand. */
typedef enum
{
  LARGE_STACKED, /* one below the other */
  LARGE_BESIDE,  /* all in one row */
  LARGE_FLOWING, /* as many in a row as go */
} Large;

static double
cell_width (const Cell *cell, double scale)
{
  return fmax ((cell->box.max.x - cell->box.min.x) * scale, cell->label);
}

static double
cell_height (const Layout *layout, const Cell *cell, double scale)
{
  return (cell->box.max.y - cell->box.min.y) * scale + layout->label_height;
}

/* Puts the large pieces, or the others, into rows from @first on: each into the first one that has
 * room for it. Gives the first free row. */
static guint
fill_flowing (const Layout *layout, double scale, gboolean large, guint first, guint *rows)
{
  double room = layout->table->width - 2 * layout->margin;
  g_autofree double *used = g_new0 (double, layout->n);
  guint n = 0;
  for (guint i = 0; i < layout->n; i++)
    {
      const Cell *cell = &layout->cells[i];
      double width = cell_width (cell, scale) + layout->table->gap;
      guint row = 0;
      if (cell->large != large)
        continue;
      while (row < n && used[row] + width > room + layout->table->gap)
        row++;
      n = MAX (n, row + 1);
      used[row] += width;
      rows[i] = first + row;
    }
  return first + n;
}

static guint
fill_large_rows (const Layout *layout, double scale, Large large, guint *rows)
{
  guint row = 0;
  gboolean any = FALSE;
  if (large == LARGE_FLOWING)
    return fill_flowing (layout, scale, TRUE, 0, rows);
  for (guint i = 0; i < layout->n; i++)
    if (layout->cells[i].large)
      {
        row += any && large == LARGE_STACKED ? 1 : 0;
        rows[i] = row;
        any = TRUE;
      }
  return any ? row + 1 : 0;
}

/* Puts every piece into a row: the large ones first, the others below them. */
static void
fill_rows (const Layout *layout, double scale, Large large, guint *rows)
{
  fill_flowing (layout, scale, FALSE, fill_large_rows (layout, scale, large, rows), rows);
}

static guint
n_rows (const Layout *layout, const guint *rows)
{
  guint n = 0;
  for (guint i = 0; i < layout->n; i++)
    n = MAX (n, rows[i] + 1);
  return n;
}

/* Width and height that the pieces of @row take. */
static void
measure_row (const Layout *layout, const guint *rows, guint row, double scale, double *width,
             double *height)
{
  *width = -layout->table->gap;
  *height = 0;
  for (guint i = 0; i < layout->n; i++)
    if (rows[i] == row)
      {
        *width += layout->table->gap + cell_width (&layout->cells[i], scale);
        *height = fmax (*height, cell_height (layout, &layout->cells[i], scale));
      }
}

static void
measure (const Layout *layout, const guint *rows, double scale, double *width, double *height)
{
  guint n = n_rows (layout, rows);
  *width = 0;
  *height = (n - 1) * layout->table->gap;
  for (guint row = 0; row < n; row++)
    {
      double w, h;
      measure_row (layout, rows, row, scale, &w, &h);
      *width = fmax (*width, w);
      *height += h;
    }
}

static gboolean
rows_fit (const Layout *layout, const guint *rows, double scale)
{
  double width, height;
  measure (layout, rows, scale, &width, &height);
  return width <= layout->table->width - 2 * layout->margin
         && height <= layout->table->height - 2 * layout->margin;
}

/* The scale at which the largest piece alone would fill the table. */
static double
most_scale (const Layout *layout)
{
  double scale = INFINITY;
  for (guint i = 0; i < layout->n; i++)
    {
      const SqBox *box = &layout->cells[i].box;
      scale = fmin (scale, layout->table->width / fmax (box->max.x - box->min.x, 1e-3));
      scale = fmin (scale, layout->table->height / fmax (box->max.y - box->min.y, 1e-3));
    }
  return scale;
}

/* The greatest scale at which the rows fit; @rows are filled anew at every scale where @anew. */
static double
best_scale (Layout *layout, guint *rows, gboolean anew, Large large)
{
  double low = 0, high = most_scale (layout);
  layout->margin = layout->table->margin * (anew ? 1 : KEPT_MARGIN);
  for (int i = 0; i < N_HALVINGS; i++)
    {
      double middle = (low + high) / 2;
      if (anew)
        fill_rows (layout, middle, large, rows);
      if (rows_fit (layout, rows, middle))
        low = middle;
      else
        high = middle;
    }
  if (anew)
    fill_rows (layout, low, large, rows);
  return low;
}

static gboolean
is_same_table (const SqTable *a, const SqTable *b)
{
  return a->width == b->width && a->height == b->height && a->margin == b->margin
         && a->gap == b->gap && a->em == b->em;
}

/* Lets @large have it where its scale reaches @share of the best so far. */
static void
take_if_better (Layout *layout, Large large, double share, double *scale, guint *rows)
{
  g_autofree guint *other = g_new0 (guint, layout->n);
  double other_scale = best_scale (layout, other, TRUE, large);
  if (other_scale < *scale * share)
    return;
  *scale = other_scale;
  memcpy (rows, other, layout->n * sizeof *rows);
}

/* Chooses @rows and gives the scale. */
static double
choose_rows (Layout *layout, const SqArrangement *before, guint *rows)
{
  g_autofree guint *other = g_new0 (guint, layout->n);
  double scale = best_scale (layout, rows, TRUE, LARGE_STACKED);
  take_if_better (layout, LARGE_BESIDE, BESIDE_SHARE, &scale, rows);
  take_if_better (layout, LARGE_FLOWING, FLOWING_SHARE, &scale, rows);
  if (before == NULL || before->n_stands != layout->n)
    return scale * FRESH_SHARE;
  for (guint i = 0; i < layout->n; i++)
    other[i] = before->stands[i].row;
  double kept_scale = best_scale (layout, other, FALSE, LARGE_STACKED);
  if (kept_scale >= GOOD_ENOUGH * scale)
    {
      scale = kept_scale;
      memcpy (rows, other, layout->n * sizeof *rows);
    }
  if (is_same_table (layout->table, &before->table) && before->scale <= scale
      && before->scale >= GOOD_ENOUGH * scale)
    return before->scale;
  return scale * FRESH_SHARE;
}

/* Where the rows begin: as before while all fits there at the same scale, else with the whole in the
 * middle of the table. */
static SqPoint
choose_corner (const Layout *layout, const guint *rows, double scale, const SqArrangement *before)
{
  const SqTable *table = layout->table;
  double width, height, margin = KEPT_MARGIN * table->margin;
  measure (layout, rows, scale, &width, &height);
  if (before != NULL && before->scale == scale && is_same_table (table, &before->table)
      && before->corner.x + width <= table->width - margin && before->corner.y - height >= margin)
    return before->corner;
  return sq_point ((table->width - width) / 2, (table->height + height) / 2);
}

/* Stands the pieces row by row. */
static void
stand_pieces (const Layout *layout, const guint *rows, SqArrangement *arrangement)
{
  double scale = arrangement->scale, gap = layout->table->gap;
  double left = arrangement->corner.x, top = arrangement->corner.y;
  for (guint row = 0; row < n_rows (layout, rows); row++)
    {
      double x = left, row_width, row_height;
      measure_row (layout, rows, row, scale, &row_width, &row_height);
      for (guint i = 0; i < layout->n; i++)
        {
          const Cell *cell = &layout->cells[i];
          if (rows[i] != row)
            continue;
          SqStand *stand = &arrangement->stands[i];
          stand->row = row;
          stand->offset.x = x / scale - cell->box.min.x;
          stand->offset.y = (top - layout->label_height) / scale - cell->box.max.y;
          x += cell_width (cell, scale) + gap;
        }
      top -= row_height + gap;
    }
}

SqArrangement *
sq_arrangement_new (const GPtrArray *pieces, const SqPieceLabel *labels, const SqTable *table,
                    const SqArrangement *before)
{
  g_return_val_if_fail (pieces != NULL && table != NULL, NULL);
  SqArrangement *arrangement = g_new0 (SqArrangement, 1);
  g_autofree Cell *cells = g_new0 (Cell, pieces->len);
  g_autofree guint *rows = g_new0 (guint, pieces->len);
  Layout layout = { table, cells, pieces->len, 1.6 * table->em, table->margin };
  arrangement->table = *table;
  arrangement->scale = 1;
  arrangement->n_stands = pieces->len;
  arrangement->stands = g_new0 (SqStand, pieces->len);
  if (pieces->len == 0)
    return arrangement;
  for (guint i = 0; i < pieces->len; i++)
    {
      const SqPiece *piece = g_ptr_array_index (pieces, i);
      cells[i].box = sq_path_box (sq_piece_cut (piece, 0));
      cells[i].label = sq_piece_label_width_em (&labels[i]) * table->em;
      cells[i].large = piece->role == SQ_ROLE_FACE || piece->role == SQ_ROLE_UNDERSIDE;
    }
  arrangement->scale = fmax (choose_rows (&layout, before, rows), 1e-6);
  arrangement->corner = choose_corner (&layout, rows, arrangement->scale, before);
  stand_pieces (&layout, rows, arrangement);
  return arrangement;
}

void
sq_arrangement_free (SqArrangement *arrangement)
{
  g_return_if_fail (arrangement != NULL);
  g_free (arrangement->stands);
  g_free (arrangement);
}
