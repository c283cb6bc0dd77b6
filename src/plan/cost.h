/* SPDX-License-Identifier: GPL-3.0-or-later */
/* Prices of what a plan takes, in the maker's money. NaN wherever the job names no price: what is not
 * known is never taken for nothing. */
#pragma once

#include "plan/plan.h"

/* @length_mm of @cloth, along the roll. */
double sq_cost_of_cloth (const SqJob *job, SqId cloth, double length_mm);
/* Of all blocks of foam of all covers; 0 where there are none. */
double sq_cost_of_foam (const SqPlan *plan);
/* @minutes of work by the job's wage, its own or the sample. */
double sq_cost_of_work (const SqJob *job, double minutes);
