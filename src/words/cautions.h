/* SPDX-License-Identifier: GPL-3.0-or-later */
/* What can hurt people at this work, and with what it makes. */
#pragma once

#include "plan/plan.h"

/* The cautions that fit the cloths, foams and seats of @plan, a short text each. New array of
 * const char *, the texts static. */
GPtrArray *sq_words_cautions (const SqPlan *plan);

/* Those of them that are about cutting its cloth. The same. */
GPtrArray *sq_words_cutting_cautions (const SqPlan *plan);
