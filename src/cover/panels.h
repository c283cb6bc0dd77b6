/* SPDX-License-Identifier: GPL-3.0-or-later */
/* Pieces divided along a straight line, whatever way of building made them. Internal to the room. */
#pragma once

#include "cover/making.h"

/* Whether the line through @at along unit @direction (piece coordinates) divides @piece in two: it
 * passes its outer ring just twice, no hole, leaves no crumb, and both parts have a cut line with
 * @allowance_mm along it. */
gboolean sq_panels_possible (const SqPiece *piece, SqPoint at, SqVector direction,
                             double allowance_mm);

/* Divides piece @i of the cover along that line, after all pieces and seams are there and before
 * they are sealed: what lies to the left of it stays piece @i, the rest becomes piece @i + 1. Both
 * have the role, grain, turns and phase of the piece, so that its pattern goes on over the line.
 * Along it they get runs of @role with @allowance_mm, sewn to each other by a seam of @kind at
 * @step. Seams over the line become two on both of their sides; marks, patches, skirts and notches
 * go to the panel they lie on. FALSE: it is not possible, and nothing is changed. */
gboolean sq_panels_split (SqMaking *making, guint i, SqPoint at, SqVector direction,
                          SqSeamKind kind, SqRunRole role, double allowance_mm, guint step);
