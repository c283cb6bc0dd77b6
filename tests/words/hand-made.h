/* SPDX-License-Identifier: GPL-3.0-or-later */
/* A cover and a plan put together by hand, so that the words are tested and not the cover: the
 * worked plate of the trade, a 25 × 25 in plate with 2 3/4 in notches, two cushions of it. */
#pragma once

#include "plan/plan.h"

/* A square seat of 469.9 mm (18 1/2 in) with corners 11, 12, 13, 14 and, in its middle, a hole with
 * corners 15, 16, 17. */
SqCushion *hand_made_cushion (void);

/* A piece of @role with empty lists. */
SqPiece *hand_made_piece (SqPieceRole role);

/* A cover of that cushion without pieces, finished outline or foam. */
SqCover *hand_made_cover (void);

/* The worked plate: plate, underside, zip, foam, one warning. */
SqCover *hand_made_plate_cover (void);

/* A plan of that cover. */
SqPlan *hand_made_plan (void);
