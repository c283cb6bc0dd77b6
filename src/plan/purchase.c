/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "plan/purchase.h"

#include "base/units.h"

#define DECIMETRE_MM 100.0
#define NM_PER_MM 1e6

/* A length that is that little above a step is on it (mm): the lay itself is in micrometres. */
#define STEP_SLACK_MM 1e-4

double
sq_sold_by_mm (const SqJob *job)
{
  return job->units == SQ_UNIT_IN ? SQ_MM_PER_YARD / 8 : DECIMETRE_MM;
}

double
sq_sold_mm (const SqJob *job, double needed_mm)
{
  double step_mm = sq_sold_by_mm (job);

  return ceil ((needed_mm - STEP_SLACK_MM) / step_mm) * step_mm;
}

double
sq_lay_task_repeat_mm (const SqLayTask *task)
{
  gint64 repeat_nm = 0;

  for (guint i = 0; i < task->items->len; i++)
    repeat_nm = MAX (repeat_nm, sq_lay_task_item (task, i)->phase.repeat_along_nm);
  return (double) repeat_nm / NM_PER_MM;
}

static void
add_bolt (SqPurchase *p, const SqLayTask *task, const SqLay *lay, guint strip, const SqJob *job)
{
  double width_mm = sq_lay_task_strip (task, strip)->width / SQ_GRID_PER_MM;
  double laid_mm = sq_lay_length (lay, strip) / SQ_GRID_PER_MM;
  double pattern_mm = sq_lay_task_repeat_mm (task);
  double buy_mm = sq_sold_mm (job, laid_mm + SQ_SQUARING_MM + pattern_mm);

  p->bolts++;
  p->laid_mm += laid_mm;
  p->squaring_mm += SQ_SQUARING_MM;
  p->pattern_mm += pattern_mm;
  p->buy_mm += buy_mm;
  p->buy_mm2 += buy_mm * width_mm;
  p->cut_mm2 += sq_lay_area_mm2 (task, lay, strip);
}

SqPurchase
sq_plan_purchase (const SqPlan *plan, const SqLayTask *task, const SqLay *lay)
{
  SqPurchase p = { 0 };

  for (guint i = 0; i < task->strips->len; i++)
    if (sq_lay_length (lay, i) > 0)
      switch (sq_lay_task_strip (task, i)->kind)
        {
        case SQ_STRIP_ROLL:
          add_bolt (&p, task, lay, i, plan->job);
          break;
        case SQ_STRIP_REMNANT:
          p.stock++;
          break;
        case SQ_STRIP_SHEET:
          break;
        }
  for (guint i = 0; i < lay->unlaid->len; i++)
    p.unlaid += g_array_index (lay->unlaid, SqUnlaid, i).count;
  p.waste = p.buy_mm2 > 0 ? 1 - p.cut_mm2 / p.buy_mm2 : 0;
  return p;
}
