/* SPDX-License-Identifier: GPL-3.0-or-later */
/* What can't be built, in the plan's JSON. Internal to the room. */
#pragma once

#include "cover/cover.h"
#include "exchange/json-write.h"

/* An object that says what @problem of @cover is, where, and in a sentence. */
void sq_plan_add_problem (SqJsonWriter *json, const char *key, const SqProblem *problem,
                          const SqCover *cover, const SqLengthStyle *style);
