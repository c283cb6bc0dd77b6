/* SPDX-License-Identifier: GPL-3.0-or-later */
/* The marks that problems have at their places on seat and pieces. */
#pragma once

#include "window/canvas.h"
#include "window/document.h"
#include "window/selection.h"

/* One mark for all problems at one place. */
typedef struct
{
  SqPoint at; /* its middle, whole pixels from the view's origin, y down */
  SqPlace place;
  SqSeverity severity; /* the worst */
} SqProblemMark;

/* A mark for each place of @cover's problems whose kind is one of @kinds (bits 1 << SQ_AT_…), not
 * yet put anywhere. New array of SqProblemMark. */
GArray *sq_problem_marks (const SqCover *cover, guint kinds);

/* Appends @marks; @layer and the next two are their layers' numbers. */
void sq_problem_marks_append (SqCanvas *canvas, GtkSnapshot *snapshot, const GArray *marks,
                              guint layer);

/* The mark at @at (pixels of the canvas), borrowed; NULL: none. */
const SqProblemMark *sq_problem_mark_at (SqCanvas *canvas, const GArray *marks, SqPoint at);

/* What @mark stands for: a line for each problem. New text. */
char *sq_problem_mark_words (const SqProblemMark *mark, SqDocument *document, const SqCover *cover);
