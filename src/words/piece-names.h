/* SPDX-License-Identifier: GPL-3.0-or-later */
/* What a cushion's corners, edges, pieces and seams are called. All texts are new and yours to
 * free. */
#pragma once

#include "cover/cover.h"

/* "A" for 0, "Z" for 25, "AA" for 26: what corners are called in their order, and columns of
 * sheets. */
char *sq_words_letters (guint i);
/* Corners are A, B, C … Z, AA, AB … in the order of the outline's rings; "?" for an id that the
 * cushion does not have. */
char *sq_words_corner (const SqCushion *cushion, SqId corner);
/* The edge that starts at @corner, by its two corners: "A–B". */
char *sq_words_edge_corners (const SqCushion *cushion, SqId corner);
/* The same, with its side where the cover has a finished outline: "A–B (front)". */
char *sq_words_edge (const SqCover *cover, SqId corner);

/* "Top", "Plate", "Right and back boxing", "Front boxing, part 1 of 2". */
char *sq_words_piece (const SqCover *cover, guint piece);
/* The same as it stands inside a sentence: "right and back boxing". */
char *sq_words_piece_inside (const SqCover *cover, guint piece);
/* The same as a label in lists and on plans, where an underside says which way up it is seen. */
char *sq_words_piece_on_plan (const SqCover *cover, guint piece);

/* "Top to front boxing", "Plate, corner C", "Underside, zip". */
char *sq_words_seam (const SqCover *cover, guint seam);
