/* SPDX-License-Identifier: GPL-3.0-or-later */
/* Pieces, cushions and covers made by hand, for tests of how they are drawn. */
#pragma once

#include "cover/cover.h"

/* A piece whose sew line is @sew (taken), one run, @allowance_mm all round; its phase is set across
 * with the anchor (0, 0) at @across_mm. */
SqPiece *hand_piece (SqPieceRole role, SqPath *sew, double allowance_mm, double grain_rad,
                     double across_mm);

/* A white cloth with one dark blue stripe of @width_mm at @at_mm every @repeat_mm. */
SqCloth *hand_striped_cloth (double at_mm, double width_mm, double repeat_mm);

/* A cushion of straight edges through @points, ids from 1. */
SqCushion *hand_cushion (const SqPoint *points, guint n);

/* A cover of @cushion (taken) without pieces. */
SqCover *hand_cover (SqCushion *cushion);
