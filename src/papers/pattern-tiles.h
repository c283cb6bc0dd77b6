/* SPDX-License-Identifier: GPL-3.0-or-later */
/* How pieces are divided that do not go onto a sheet. Internal to the room. */
#pragma once

#include "papers/pattern-sheets.h"

/* Long narrow pieces that are divided together: they lie below each other in one row of sheets, whose
 * trimmed edges go through all of them. */
typedef struct
{
  GArray *pieces; /* of guint, ascending; two at least */
  gboolean is_lying;
} SqPatternRow;

/* The rows of those pieces of @sheets for which @is_wanted says so, where these take fewer sheets than
 * each piece alone. New array of SqPatternRow, its own. */
GPtrArray *sq_pattern_rows (const SqPatternSheets *sheets, const SqPaperSpec *spec,
                            const gboolean *is_wanted);

/* Divides the pieces of @row, or piece @index alone, so that it takes the fewest sheets, of a roll the
 * least paper: sets how they lie, their lines and their grid. */
void sq_pattern_divide_row (SqPatternSheets *sheets, const SqPaperSpec *spec,
                            const SqPatternRow *row);
void sq_pattern_divide (SqPatternSheets *sheets, const SqPaperSpec *spec, guint index);
