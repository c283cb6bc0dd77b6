/* SPDX-License-Identifier: GPL-3.0-or-later */
/* The changes a window makes to one edge or corner of a seat, each with its words. */
#pragma once

#include "job/sides.h"
#include "window/document.h"

typedef enum
{
  SQ_PLACE_SIDE,      /* chord of the edge; the end that the walk round the seat comes by earlier
                         stays */
  SQ_PLACE_RISE,      /* of its bow, outward */
  SQ_PLACE_CLEARANCE, /* what stays free at it */
  SQ_PLACE_RADIUS,    /* of the corner's rounding */
} SqPlaceLength;
#define SQ_N_PLACE_LENGTHS 4

/* Gives the length, or (NULL) leaves it to the rules; nothing is changed where that can't be, and
 * the result says why. One step. */
SqSidesResult sq_edit_place_length (SqDocument *document, SqId cushion, SqId corner,
                                    SqPlaceLength length, const double *mm);
/* The same for the chord of the edge that starts at @edge, the end named by @stays staying; and for
 * the angle at @corner, one of its sides staying, as sq_outline_with_angle() has it. */
SqSidesResult sq_edit_side_length (SqDocument *document, SqId cushion, SqId edge, double mm,
                                   SqStays stays);
SqSidesResult sq_edit_angle (SqDocument *document, SqId cushion, SqId corner, double rad,
                             SqStays stays);
/* What an edit of @before to @after means in @document: the same on both sides of the front's axis
 * while it edits symmetrically, else @after. What stands at a side is the room's, not the seat's
 * shape, and stays as in @after. New reference. */
SqOutline *sq_edit_outline_meant (SqDocument *document, const SqOutline *before,
                                  const SqOutline *after);
/* Puts a corner on the edge that starts at @edge, nearest to @p (seat, mm); its id, or 0 where it
 * can't be. Takes one away; FALSE where fewer than three would be left. One step each. While the
 * document edits symmetrically the twin comes and goes along. */
SqId sq_edit_add_corner (SqDocument *document, SqId cushion, SqId edge, SqPoint p);
gboolean sq_edit_remove_corner (SqDocument *document, SqId cushion, SqId corner);
/* What stands at the edge that starts at @edge; NULL: nothing. One step. */
void sq_edit_edge_kind (SqDocument *document, SqId cushion, SqId edge, const guint *kind);
/* How the side below that edge is built; NULL: as the cushion's way has it. One step. */
void sq_edit_edge_build (SqDocument *document, SqId cushion, SqId edge, const guint *build);
