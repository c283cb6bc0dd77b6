/* SPDX-License-Identifier: GPL-3.0-or-later */
/* Ways of laying piece by piece, and which of them suit a task. */
#pragma once

#include "base/task.h"
#include "roll/lay-order.h"

typedef enum
{
  SQ_LAY_BY_OUTLINES, /* see lay-first.h */
  SQ_LAY_BY_BOXES,
  SQ_LAY_BY_CUTS, /* straight ones */
} SqLayWay;

/* The way that suits a task for the first lay, and for attempts at better ones. */
SqLayWay sq_lay_way_first (const SqLayKinds *kinds);
SqLayWay sq_lay_way (const SqLayKinds *kinds);

/* Lays @order by @rule of @way; else as sq_lay_first(). */
SqLay *sq_lay_by_way (const SqLayKinds *kinds, const GArray *order, SqLayWay way, guint rule,
                      const SqTask *watch, double fraction_from, double fraction_to);

/* Attempt number @number: the best lay of several orders, as many as can be laid in no time. The
 * first attempts go through all orders by size and all rules; later ones by one rule through such as
 * differ ever more from *order, as @chance has it. *order (taken) becomes that of the lay. NULL if it
 * was stopped. Pure. */
SqLay *sq_lay_way_attempt (const SqLayKinds *kinds, SqLayWay way, guint64 number, guint64 chance,
                           GArray **order, const SqTask *watch);
