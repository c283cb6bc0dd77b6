/* SPDX-License-Identifier: GPL-3.0-or-later */
/* Text set into a scene without asking a font: widths are those of sq_text_width_em(), on the safe
 * side, so that lines and pages break alike on every machine. Internal to the room. */
#pragma once

#include "drawing/scene.h"

typedef struct
{
  double em_mm;
  gboolean bold;
  SqTone tone;
} SqType;

/* From one line's top to the next one's, in em. */
#define SQ_LEADING_EM 1.36

/* A place for text: from @left_mm on, @width_mm wide, downwards from @top_mm. */
typedef struct
{
  double left_mm, top_mm, width_mm;
} SqColumn;

/* Height of @n_lines lines. */
double sq_type_height_mm (const SqType *type, guint n_lines);

/* Sets one line at the top of @column. What is wider ends in "…". A text that runs from right to
 * left starts at the column's right. */
void sq_set_line (SqSceneBuilder *builder, const SqColumn *column, SqAlign align,
                  const SqType *type, const char *text);

/* @text broken into lines of at most @width_mm, where Unicode allows it, else anywhere; a line
 * break in it is one. New array of texts that are its own. */
GPtrArray *sq_wrapped (const char *text, double width_mm, const SqType *type);

/* Sets @text in as many lines as it takes. Their height, mm. */
double sq_set_paragraph (SqSceneBuilder *builder, const SqColumn *column, const SqType *type,
                         const char *text);
/* The height it would take. */
double sq_paragraph_height_mm (double width_mm, const SqType *type, const char *text);
