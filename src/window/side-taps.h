/* SPDX-License-Identifier: GPL-3.0-or-later */
/* A drawing of a seat with a button at each of its four sides: taps on it go through what may stand
 * there. */
#pragma once

#include <gtk/gtk.h>

#include "job/frame.h"

#define SQ_TYPE_SIDE_TAPS (sq_side_taps_get_type ())
G_DECLARE_FINAL_TYPE (SqSideTaps, sq_side_taps, SQ, SIDE_TAPS, GtkWidget)

/* The buttons stand round @picture. Emits "changed" (no parameters). */
GtkWidget *sq_side_taps_new (GtkWidget *picture);
/* What stands at the front, right, back and left; borrowed. */
const SqEdgeKind *sq_side_taps_kinds (SqSideTaps *taps);
