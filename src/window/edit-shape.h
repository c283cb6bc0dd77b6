/* SPDX-License-Identifier: GPL-3.0-or-later */
/* The changes a window makes to where corners and edges of a seat are, and how edges run. */
#pragma once

#include "window/document.h"

/* @outline with the corner, or the edge that starts there, moved by @by (mm), as that is meant in
 * @document (see sq_edit_outline_meant()). New. */
SqOutline *sq_edit_outline_moved (SqDocument *document, const SqOutline *outline, SqId corner,
                                  gboolean is_edge, SqVector by);
/* Moves it so, as a step called @words, one with the step before if that has the same @key. FALSE
 * and nothing where sides would cross. */
gboolean sq_edit_move (SqDocument *document, SqId cushion, SqId corner, gboolean is_edge,
                       SqVector by, const char *words, const char *key);

/* Makes the edge that starts at @edge run straight, as one arc, or as a free curve: as nearly as
 * that can as it lies; an arc made of a straight edge rises outward. One step. */
void sq_edit_edge_shape (SqDocument *document, SqId cushion, SqId edge, SqEdgeShape shape);
/* Marks the edge as the front. One step. */
void sq_edit_front (SqDocument *document, SqId cushion, SqId edge);
