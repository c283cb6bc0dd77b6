/* SPDX-License-Identifier: GPL-3.0-or-later */
/* The changes a window makes to one edge or corner of a seat, each with its words. */
#pragma once

#include "job/sides.h"
#include "window/document.h"

typedef enum
{
  SQ_PLACE_SIDE,      /* chord of the edge; its start stays */
  SQ_PLACE_RISE,      /* of its bow, outward */
  SQ_PLACE_CLEARANCE, /* what stays free at it */
  SQ_PLACE_RADIUS,    /* of the corner's rounding */
} SqPlaceLength;
#define SQ_N_PLACE_LENGTHS 4

/* Gives the length, or (NULL) leaves it to the rules; nothing is changed where that can't be, and
 * the result says why. One step. */
SqSidesResult sq_edit_place_length (SqDocument *document, SqId cushion, SqId corner,
                                    SqPlaceLength length, const double *mm);
/* Puts a corner on the edge that starts at @edge, nearest to @p (seat, mm); its id, or 0 where it
 * can't be. Takes one away; FALSE where only three are left. One step each. */
SqId sq_edit_add_corner (SqDocument *document, SqId cushion, SqId edge, SqPoint p);
gboolean sq_edit_remove_corner (SqDocument *document, SqId cushion, SqId corner);
/* What stands at the edge that starts at @edge; NULL: nothing. One step. */
void sq_edit_edge_kind (SqDocument *document, SqId cushion, SqId edge, const guint *kind);
