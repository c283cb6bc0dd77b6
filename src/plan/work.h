/* SPDX-License-Identifier: GPL-3.0-or-later */
/* What there is to do for a plan, and how long it takes by the job's rates. */
#pragma once

#include "plan/lay-choice.h"

/* Of all cushions together. */
typedef struct
{
  guint pieces;
  double seam_mm;
  guint corners; /* sewn, or that a seam round a face turns at: direction changes by over 30° */
  guint zips;
  double welt_mm;
  guint blocks; /* of foam */
  guint cushions;
} SqWork;

SqWork sq_plan_work (const SqPlan *plan);
/* What @cutting takes, in minutes: by figures of its own, the quicker or slower as the maker's rate of
 * cutting a piece is than the sample. */
double sq_cutting_minutes (const SqCutting *cutting, const SqJob *job);
/* Making time by the rates of @job, in minutes. */
double sq_work_minutes (const SqWork *work, const SqJob *job);
