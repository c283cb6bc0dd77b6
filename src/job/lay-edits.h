/* SPDX-License-Identifier: GPL-3.0-or-later */
/* Edits of what a job is laid on and how: each gives a new job. Where the job has no cloth of the id
 * that is named, the new one is the same. Flaws and pins on a piece of cloth that is taken out stay
 * and count for nothing. */
#pragma once

#include "job/job.h"

/* An id that no piece in stock of @cloth has, and no flaw or pin names. */
SqId sq_job_new_stock_id (const SqJob *job, SqId cloth);
/* An id that no flaw of @cloth has. */
SqId sq_job_new_flaw_id (const SqJob *job, SqId cloth);

/* @stock takes the place of the piece with its id, or comes last; what is unknown to files is kept
 * with it, and that of @stock is not taken. So are flaws. */
SqJob *sq_job_with_stock (const SqJob *job, SqId cloth, const SqStock *stock);
SqJob *sq_job_without_stock (const SqJob *job, SqId cloth, SqId stock);
SqJob *sq_job_with_flaw (const SqJob *job, SqId cloth, const SqFlaw *flaw);
SqJob *sq_job_without_flaw (const SqJob *job, SqId cloth, SqId flaw);

/* The pin of that copy. Borrowed, or NULL. */
const SqPin *sq_job_find_pin (const SqJob *job, const SqPinned *of);
/* @pin takes the place of the one of its copy, or comes last. */
SqJob *sq_job_with_pin (const SqJob *job, const SqPin *pin);
SqJob *sq_job_without_pin (const SqJob *job, const SqPinned *of);
/* Without all pins of pieces of @cloth. */
SqJob *sq_job_without_pins (const SqJob *job, SqId cloth);

SqJob *sq_job_with_cuts (const SqJob *job, SqCuts cuts);
SqJob *sq_job_with_plies (const SqJob *job, guint most, double table_mm);
