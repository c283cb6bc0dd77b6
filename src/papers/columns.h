/* SPDX-License-Identifier: GPL-3.0-or-later */
/* Groups of lines in columns: down the first, then down the next, over as many pages as they take; on
 * the last page all columns are about as long. Internal to the room. */
#pragma once

#include "papers/pages.h"

typedef struct _SqColumns SqColumns;

/* As many columns as go beside each other, each at least @least_mm wide. */
SqColumns *sq_columns_new (SqPages *pages, double least_mm);
/* They begin beside what was set last and takes @taken of the page, where there is room. */
void sq_columns_begin_beside (SqColumns *columns, SqBox taken);
/* Sets all of it. @columns is gone. */
void sq_columns_end (SqColumns *columns);

/* How wide a column is. */
double sq_columns_width_mm (const SqColumns *columns);

/* How a group stands to the others. */
typedef enum
{
  SQ_GROUP_ALONE,
  SQ_GROUP_LEADS, /* the next one begins in the same column: a heading */
  SQ_GROUP_CLOSE, /* follows the one before without a gap */
} SqGroupKind;

/* What comes now stays together in one column, if it goes into one at all; where it doesn't, it goes on
 * under its first line. */
void sq_columns_group (SqColumns *columns, SqGroupKind kind);
/* A new line of the group, @height_mm high. */
void sq_columns_line (SqColumns *columns, double height_mm);
/* A text of that line, on its own stretch of it: from @left_mm of the column on, @width_mm wide. */
void sq_columns_text (SqColumns *columns, double left_mm, double width_mm, SqAlign align,
                      const SqType *type, const char *text);
/* A box to tick at the line's left, @side_mm wide and high. */
void sq_columns_tick_box (SqColumns *columns, double side_mm);
/* Lines of a text, from @left_mm on to the column's right. */
void sq_columns_paragraph (SqColumns *columns, double left_mm, const SqType *type,
                           const char *text);
