/* SPDX-License-Identifier: GPL-3.0-or-later */
/* The one place where cut lines come from. Internal to the room. */
#pragma once

#include "cover/piece.h"

/* Gives @piece, whose sew rings and runs are there, its cut rings and trims: every ring offset by
 * its runs' allowances with mitred corners. FALSE where a ring has no cut line of one ring; its sew
 * line then stands in. */
gboolean sq_piece_make_cut (SqPiece *piece);
