/* SPDX-License-Identifier: GPL-3.0-or-later */
/* The first cushion from a few figures: its shape, the lengths that shape asks for, its thickness,
 * and what stands at each of its four sides. */
#pragma once

#include <gtk/gtk.h>

#include "job/job.h"

#define SQ_TYPE_SEAT_MAKER (sq_seat_maker_get_type ())
G_DECLARE_FINAL_TYPE (SqSeatMaker, sq_seat_maker, SQ, SEAT_MAKER, GtkWidget)

/* Emits "made" (pointer to SqJob, borrowed): a job with one such cushion, everything else as the
 * defaults have it. Takes lengths in the units of the user's country. */
GtkWidget *sq_seat_maker_new (void);
