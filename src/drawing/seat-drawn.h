/* SPDX-License-Identifier: GPL-3.0-or-later */
/* What the seat's lines and its figures both need to know of how it is drawn. */
#pragma once

#include "job/outline.h"

/* A ring as it is drawn, corners rounded: tag i is the edge that starts at corner i, tag n_corners
 * + i the rounding there. Where a curve can't be fitted, straight from corner to corner. New; NULL
 * for fewer than 2 corners. */
SqPath *sq_seat_ring (const SqOutline *outline, guint ring);

/* What stands at an edge of @kind is drawn as deep as this, in em; 0: nothing stands there. */
double sq_seat_hatch_depth_em (SqEdgeKind kind);
