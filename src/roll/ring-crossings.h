/* SPDX-License-Identifier: GPL-3.0-or-later */
/* Whether an outline is one that can be cut out. */
#pragma once

#include "roll/grid.h"

/* Whether one of @rings crosses itself or another by more than rounding to the micrometre can do.
 * They may touch, at points and along edges. */
gboolean sq_grid_rings_cross (const SqGridRing *rings, guint n_rings);
