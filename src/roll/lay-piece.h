/* SPDX-License-Identifier: GPL-3.0-or-later */
/* One piece where it lies: whether it may lie there, exactly. */
#pragma once

#include "roll/lay.h"

/* What is looked at again and again of an item in one pose. */
typedef struct
{
  SqGridBox box, keep_box; /* as posed, not moved */
  GArray *trapezoids;      /* of keep */
} SqLayPiece;

SqLayPiece sq_lay_piece (const SqLayItem *item, SqGridPose pose);
void sq_lay_piece_clear (SqLayPiece *piece);

/* What is wrong with @piece, @item in @pose, at @at of @strip by itself: SQ_LAY_OUTSIDE,
 * SQ_LAY_PATTERN, SQ_LAY_FLAW; SQ_LAY_RIGHT. */
SqLayFault sq_lay_piece_fault (const SqLayPiece *piece, const SqLayItem *item, SqGridPose pose,
                               SqGrid at, const SqLayStrip *strip);

/* Whether two on one strip overlap or come nearer than the gap. */
gboolean sq_lay_pieces_overlap (const SqLayPiece *a, SqGrid at_a, const SqLayPiece *b, SqGrid at_b);
