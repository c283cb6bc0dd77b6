/* SPDX-License-Identifier: GPL-3.0-or-later */
/* Lays that are kept with the job: made from lays of a plan, and found again. */
#pragma once

#include "plan/lays.h"

/* The lay of cloth @i of @lays as it is to be kept, printed for the job's revision. New reference;
 * NULL where nothing is laid. The pieces' names are @names: one for each line of the plan's cut
 * list, borrowed; NULL: without names. */
SqKeptLay *sq_lays_keep (const SqLays *lays, guint i, const char *const *names);

/* @kept as a lay of @task, a lay task of @plan's: NULL where the task is another one now or the places can't be. New
 * reference. */
SqLay *sq_kept_lay_found (const SqKeptLay *kept, const SqPlan *plan, const SqLayTask *task);
