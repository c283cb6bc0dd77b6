/* SPDX-License-Identifier: GPL-3.0-or-later */
/* The comparison of ways of building, in the plan's JSON. Internal to the room. */
#pragma once

#include "exchange/json-write.h"
#include "plan/wide.h"

/* All ways of @cushion with first lays, as the list "ways"; an empty one for NULL. */
void sq_plan_add_ways (SqJsonWriter *json, const SqJob *job, const SqCushion *cushion,
                       const SqLengthStyle *style);
/* The ways out for a face of @cushion wider than its cloth, with first lays, as the list "wide"; an empty
 * one for NULL and where no face is. */
void sq_plan_add_wide (SqJsonWriter *json, const SqJob *job, const SqCushion *cushion,
                       const SqLengthStyle *style);
/* The rates they are reckoned by, and which of them are samples. */
void sq_plan_add_rates (SqJsonWriter *json, const SqJob *job);
