/* SPDX-License-Identifier: GPL-3.0-or-later */
/* A cushion from what a tape and a bevel say of its sides, with its thickness, its cover and what
 * stands round it. */
#pragma once

#include <gtk/gtk.h>

#include "job/job.h"

#define SQ_TYPE_TAPE_MAKER (sq_tape_maker_get_type ())
G_DECLARE_FINAL_TYPE (SqTapeMaker, sq_tape_maker, SQ, TAPE_MAKER, GtkWidget)

/* A cushion beside @like, of its cloths, in @job; NULL both: a first one, in the units of the
 * user's country, of a cloth that can be chosen, and with a button. Emits "made" (pointer to SqJob,
 * borrowed): a job with one such cushion. */
GtkWidget *sq_tape_maker_new (const SqJob *job, const SqCushion *like);
/* The job as the figures are now; NULL where they make no seat. New. */
SqJob *sq_tape_maker_read (SqTapeMaker *maker);
