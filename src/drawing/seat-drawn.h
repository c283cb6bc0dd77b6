/* SPDX-License-Identifier: GPL-3.0-or-later */
/* What the seat's lines and its figures both need to know of how it is drawn. */
#pragma once

#include "job/outline.h"

/* A ring as it is drawn, corners rounded: tag i is the edge that starts at corner i, tag n_corners
 * + i the rounding there. Where a curve can't be fitted, straight from corner to corner. New; NULL
 * for fewer than 2 corners. */
SqPath *sq_seat_ring (const SqOutline *outline, guint ring);

/* Point and unit direction at the share @t, 0 … 1, of the stretch of @ring with @tag. FALSE if there
 * is none: roundings may use up an edge. */
gboolean sq_seat_edge_point (const SqPath *ring, guint32 tag, double t, SqPoint *at,
                             SqVector *along);

/* What stands at an edge of @kind is drawn as deep as this, in em; 0: nothing stands there. */
double sq_seat_hatch_depth_em (SqEdgeKind kind);
