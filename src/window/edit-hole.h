/* SPDX-License-Identifier: GPL-3.0-or-later */
/* Holes cut into a seat, and closed again. */
#pragma once

#include "window/document.h"

typedef enum
{
  SQ_HOLE_ROUND,
  SQ_HOLE_RECTANGULAR,
} SqHoleShape;

/* Cuts a hole about @middle (seat, mm) into the cushion's seat: @width_mm is the diameter of a round
 * one, @depth_mm counts for a rectangle only. Its first corner's id, as one step; 0 and nothing
 * where it would reach the seat's edge or another hole. */
SqId sq_edit_cut_hole (SqDocument *document, SqId cushion, SqHoleShape shape, SqPoint middle,
                       double width_mm, double depth_mm);
/* Takes away the hole that @corner belongs to. One step; FALSE and nothing where it is none. */
gboolean sq_edit_close_hole (SqDocument *document, SqId cushion, SqId corner);
