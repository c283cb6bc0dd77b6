/* SPDX-License-Identifier: GPL-3.0-or-later */
/* What is left of a plan's cloth that is worth keeping. */
#pragma once

#include "plan/lays.h"

/* A rectangle of cloth that nothing is cut from (mm). */
typedef struct
{
  guint strip; /* of the lay task */
  double x_mm, y_mm, along_mm, across_mm;
} SqLeftover;

/* Of what is bought for @cloth of @lays and of what is there that something lies on; none over
 * another, the largest first. Of the roll that is bought, without what squares its end and finds where
 * its pattern starts. Worth keeping is 12 × 18 in, either way round, or 36 in along and 4 in across.
 * Array of SqLeftover. */
GArray *sq_lays_leftovers (const SqClothLay *cloth);
