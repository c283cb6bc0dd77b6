/* SPDX-License-Identifier: GPL-3.0-or-later */
/* Clips: snips into an allowance that must open to go round a curve. Internal to the room. */
#pragma once

#include "cover/making.h"

/* How far apart clips are at @radius_mm, so that the seam stays within @off_mm of round between them:
 * √(8 r q), the chord whose arc rises by q. */
double sq_clip_spacing_mm (double radius_mm, double off_mm);

/* Marks clips on all seams that join a curve to a straight edge, or run round a hollow: on the side
 * whose cut edge is shorter than it must become. Faces get a stay stitch and a clip at every sharp corner
 * that turns inward. */
void sq_clip_curves (SqMaking *making);
