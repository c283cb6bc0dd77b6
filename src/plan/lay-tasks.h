/* SPDX-License-Identifier: GPL-3.0-or-later */
/* What is to be laid on each cloth of a plan. */
#pragma once

#include "plan/plan.h"
#include "roll/lay-task.h"

/* Everything of @plan that is cut from @cloth, in the order of the cut list; an item's tag is its
 * index there. Strips are what the cloth has in stock, remnants first, then bolts, and at last the
 * roll that is to be bought, as long as it need be; a strip's tag is the id in stock, 0 the roll's.
 * Pins of what is not there are left out. Pure: the same plan gives the same task and digest. New
 * reference; no items where nothing is cut from it. For straight cuts only where the job says so: by
 * rule see lay-choice.h. */
SqLayTask *sq_plan_lay_task (const SqPlan *plan, SqId cloth);

/* The same otherwise than the job has it, as bits. */
typedef enum
{
  SQ_LAY_UNMATCHED = 1 << 0,  /* the pattern falls where it will */
  SQ_LAY_ALL_BOUGHT = 1 << 1, /* without stock, flaws and pins */
  SQ_LAY_FREE = 1 << 2,       /* so that a knife can go round every piece */
  SQ_LAY_STRAIGHT = 1 << 3,   /* so that straight cuts right through what is left can follow */
} SqLayOtherwise;
SqLayTask *sq_plan_lay_task_otherwise (const SqPlan *plan, SqId cloth, guint otherwise);

/* The same to be cut @plies layers deep, all bought: of each piece as many as make those that are
 * wanted, or a few more. Strips are so many @tables that take @table_mm each; 0: one roll, as long as
 * it need be. Their tags are no ids. */
SqLayTask *sq_plan_lay_task_deep (const SqPlan *plan, SqId cloth, guint plies, guint tables,
                                  double table_mm);

/* What pins call copy @copy of line @line of the cut list. */
SqPinned sq_plan_pinned (const SqPlan *plan, guint line, guint copy);
