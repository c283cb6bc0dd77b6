/* SPDX-License-Identifier: GPL-3.0-or-later */
/* The changes a window makes to how an edge of a seat runs, each with its words. */
#pragma once

#include "window/document.h"

/* Makes the edge that starts at @edge run straight, as one arc, or as a free curve: as nearly as
 * that can as it lies; an arc made of a straight edge rises outward. One step. */
void sq_edit_edge_shape (SqDocument *document, SqId cushion, SqId edge, SqEdgeShape shape);
/* Marks the edge as the front. One step. */
void sq_edit_front (SqDocument *document, SqId cushion, SqId edge);
