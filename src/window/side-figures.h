/* SPDX-License-Identifier: GPL-3.0-or-later */
/* Figures of a seat's sides and corners as they are read and typed over: in the fields on the seat
 * and in the table of sides. */
#pragma once

#include "window/document.h"
#include "window/side-walk.h"

static inline gboolean
sq_side_figure_is_same (const SqSideFigure *a, const SqSideFigure *b)
{
  return a->measure == b->measure && a->corner == b->corner;
}

/* Whether it is an edge's, not a corner's. */
gboolean sq_side_figure_is_of_edge (const SqSideFigure *figure);
/* Whether giving it moves corners, so that it matters which end stays. */
gboolean sq_side_figure_moves (const SqSideFigure *figure);
/* Whether @cushion has it: its corner is there, and its edge is none that can't have a rise. */
gboolean sq_side_figure_is_there (const SqCushion *cushion, const SqSideFigure *figure);

/* "Length of side A–B"; new text. */
char *sq_side_figure_name (const SqCushion *cushion, const SqSideFigure *figure);
/* As it is shown to be typed over, without a unit but with a degree sign: "18 1⁄2", "101.3°". A
 * rise is outward, one inward below 0. New text. */
char *sq_side_figure_text (const SqJob *job, const SqCushion *cushion, const SqSideFigure *figure);
/* What stays where it is: "A", or "A–B" of an angle; new text. */
char *sq_side_figure_stays (const SqCushion *cushion, const SqSideFigure *figure, SqStays stays);

/* Gives the figure what was typed as @text, as one step of @document. NULL, or why that can't be,
 * for the maker (static); nothing is changed then. */
const char *sq_side_figure_give (SqDocument *document, SqId cushion, const SqSideFigure *figure,
                                 SqStays stays, const char *text);
