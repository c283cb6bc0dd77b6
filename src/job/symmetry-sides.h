/* SPDX-License-Identifier: GPL-3.0-or-later */
/* Figures typed over where both sides of a seat are edited alike. */
#pragma once

#include "job/sides.h"
#include "job/symmetry.h"

/* As sq_outline_with_side_length and sq_outline_with_angle, but on both sides of @axis. The half of
 * the seat beyond the end that stays moves, or turns, up to the axis, and its image likewise; the
 * edge that crosses the axis there takes up the change. A side across the axis is changed from both
 * its ends, an angle on the axis by both its sides. Where one side can't act the other does: what
 * crosses the axis stays square to it. Rings without twins are edited alone. NULL where that can't
 * be; *@result (may be NULL) says why. */
SqOutline *sq_outline_with_side_length_symmetric (const SqOutline *outline, SqId edge,
                                                  double length_mm, SqStays stays,
                                                  const SqAxis *axis, SqSidesResult *result);
SqOutline *sq_outline_with_angle_symmetric (const SqOutline *outline, SqId corner, double angle_rad,
                                            SqStays stays, const SqAxis *axis,
                                            SqSidesResult *result);
