/* SPDX-License-Identifier: GPL-3.0-or-later */
/* How much cloth to buy for a lay, as it is sold. */
#pragma once

#include "plan/plan.h"
#include "roll/lay.h"

/* What goes to square the end of a bolt, 2 in (mm; common practice, no source). */
#define SQ_SQUARING_MM 50.8

/* Whole steps that cloth is sold by (mm): an eighth of a yard where the job's lengths are in
 * inches, else 10 cm. */
double sq_sold_by_mm (const SqJob *job);
/* @needed_mm rounded up to them. */
double sq_sold_mm (const SqJob *job, double needed_mm);

/* The greatest repeat along that a piece of @task must keep to, mm; 0: none. */
double sq_lay_task_repeat_mm (const SqLayTask *task);

/* All in mm and mm². Remnants are there already and sheets are no lengths: both are left out. */
typedef struct
{
  guint bolts;             /* rolls to buy that something lies on */
  guint stock;             /* pieces that are there that something lies on */
  double laid_mm;          /* of all bolts together, as are the next three */
  double squaring_mm;      /* to square each bolt's end */
  double pattern_mm;       /* a repeat along for each bolt: where the pattern starts is not known */
  double buy_mm;           /* each bolt rounded up as sold */
  double buy_mm2, cut_mm2; /* of what is bought; of the pieces that lie on it */
  double waste;            /* the share of what is bought that is not cut: 0 … 1 */
  guint unlaid;            /* pieces the lay could not take */
} SqPurchase;

/* What to buy for @lay, which is of @task, a lay task of @plan's. Pure. */
SqPurchase sq_plan_purchase (const SqPlan *plan, const SqLayTask *task, const SqLay *lay);
