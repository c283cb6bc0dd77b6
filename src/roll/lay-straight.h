/* SPDX-License-Identifier: GPL-3.0-or-later */
/* Lays that straight cuts can follow: lengths are cut off across the whole strip, then pieces off
 * those along and across by turns. */
#pragma once

#include "base/task.h"
#include "roll/lay-cuts.h"
#include "roll/lay-order.h"

/* So many rules there are for where a piece goes and what is cut next. */
#define SQ_N_LAY_STRAIGHT_RULES 24

/* Lays @order (of SqLayRun) piece by piece as rule number @rule has it, in the first strip that has
 * room; what is pinned is cut out first. @watch (may be NULL) is asked whether to go on: NULL if
 * not. Pure. */
SqLay *sq_lay_straight (const SqLayKinds *kinds, const GArray *order, guint rule,
                        const SqTask *watch);
