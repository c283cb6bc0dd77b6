/* SPDX-License-Identifier: GPL-3.0-or-later */
/* What the ways to begin a first cushion have in common. */
#pragma once

#include "job/frame.h"
#include "job/job.h"

/* What the user's country measures in. */
SqUnit sq_first_job_units (void);
/* Lengths as its fields show them. */
SqLengthStyle sq_first_job_style (SqUnit units);
/* @mm as a tape in @units has it: whole inches, or whole centimetres. */
double sq_first_job_rounded_mm (SqUnit units, double mm);
/* @bare in a room: @kinds stand at its front, right, back and left. A job in mm or cm has round
 * clearances of its own in its edges. New outline. */
SqOutline *sq_first_job_outline (const SqOutline *bare, const SqEdgeKind kinds[SQ_N_TOWARDS],
                                 SqUnit units, const SqDefaults *defaults);
/* A new job in @units with one cushion, all else as @defaults have it. */
SqJob *sq_first_job_new (const SqOutline *outline, double thickness_mm, SqUnit units,
                         const SqDefaults *defaults);
