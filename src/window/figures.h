/* SPDX-License-Identifier: GPL-3.0-or-later */
/* How the window shows figures: in the job's unit, fractions set as fractions, with the decimal
 * sign of the user's language. */
#pragma once

#include "cover/cover.h"
#include "window/document.h"

/* '.' or ',' as the user's language has it. */
char sq_figures_decimal (void);
/* Without a unit after the figure. */
SqLengthStyle sq_figures_style (const SqJob *job);

/* "12,345": new text. */
char *sq_figures_count (guint n);

/* The step of grid and arrow keys; above 0. */
double sq_figures_step_mm (const SqJob *job);

/* "46 3⁄4 × 20 1⁄8"; new text. */
char *sq_figures_size (double width_mm, double height_mm, const SqLengthStyle *style);
/* Width and depth of the seat as drawn, as seen from its front. */
SqVector sq_figures_seat_extent (const SqCover *cover);
/* The same of the finished outline; 0 × 0 where there is none. */
SqVector sq_figures_finished_extent (const SqCover *cover);
/* All of the seat, corners of curved and rounded edges too, in seat coordinates. */
SqBox sq_figures_seat_box (const SqCover *cover);
/* "Cloth 21.4 sq ft · foam 3.1 lb · zip 1.2 yd · seams 9.6 yd" of everything; new text. */
char *sq_figures_foot (const SqPlan *plan, const SqLengthStyle *style);
/* What is wrong with a length that was typed, for the maker. Static. */
const char *sq_figures_mistake (SqLengthResult result);
/* The first piece of the face; NULL: none. Borrowed. */
const SqPiece *sq_figures_face (const SqCover *cover);
/* The cloth of the face of a cover of @plan; NULL: the job names none. Borrowed. */
const SqCloth *sq_figures_face_cloth (const SqPlan *plan, const SqCover *cover);
/* A number that two cloths share only if they look alike. */
guint sq_figures_cloth_look (const SqCloth *cloth);
