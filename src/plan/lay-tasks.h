/* SPDX-License-Identifier: GPL-3.0-or-later */
/* What is to be laid on each cloth of a plan. */
#pragma once

#include "plan/plan.h"
#include "roll/lay-task.h"

/* Everything of @plan that is cut from @cloth, in the order of the cut list; an item's tag is its
 * index there. Pure: the same plan gives the same task and digest. New reference; no items where
 * nothing is cut from it. */
SqLayTask *sq_plan_lay_task (const SqPlan *plan, SqId cloth);
