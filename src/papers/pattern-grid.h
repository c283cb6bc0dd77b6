/* SPDX-License-Identifier: GPL-3.0-or-later */
/* How a piece that is larger than its paper is divided into sheets: columns from the left, rows from
 * above, all windows equally large, neighbours with the overlap in common. Internal to the room. */
#pragma once

#include "papers/pattern-lines.h"

typedef struct
{
  SqVector window_mm; /* what a sheet shows */
  SqVector step_mm;   /* from one to the next: less the overlap */
  SqPoint corner;     /* upper left one of the first sheet, where the piece lies as it is posed */
  guint columns, rows;
  guint8 *used; /* row after row: whether the sheet is printed */
  guint n_used;
} SqPatternGrid;

/* The grid of windows of @window_mm over @lines (of SqPatternLine), in the middle of them. A sheet that
 * no line comes to is left out, unless it is what joins others. Free with sq_pattern_grid_free(). */
SqPatternGrid *sq_pattern_grid_new (const GArray *lines, SqVector window_mm, double overlap_mm);
void sq_pattern_grid_free (SqPatternGrid *grid);

/* How many columns or rows of @window_mm cover @length_mm. */
guint sq_pattern_grid_count (double length_mm, double window_mm, double overlap_mm);

/* FALSE, too, beyond the grid. */
gboolean sq_pattern_grid_has (const SqPatternGrid *grid, gint column, gint row);
SqBox sq_pattern_grid_window (const SqPatternGrid *grid, guint column, guint row);
