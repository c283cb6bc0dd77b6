/* SPDX-License-Identifier: GPL-3.0-or-later */
/* Notches and clips as they are cut: short lines from the cut line inward. */
#pragma once

#include "cover/piece.h"

/* Between two ticks of one notch, 1/4 in (common practice, no source). */
#define SQ_TICKS_APART_MM 6.35

/* What a notch has at most. */
#define SQ_MOST_TICKS 8

/* The ticks of @mark, a notch or clip of @piece, into @ticks (room for SQ_MOST_TICKS), in piece
 * coordinates: each from the cut line inward by the mark's depth. How many there are; 0 for marks of
 * other kinds, and where there is no allowance to cut into. */
guint sq_mark_ticks (const SqPiece *piece, const SqMark *mark, SqSegment *ticks);
