/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "plan/cloth-widths.h"

#include "plan/lay-tasks.h"

/* Widths that differ by less are one (mm). */
#define SAME_MM 1.0

static SqPlan *
plan_of_width (const SqJob *job, SqId id, double width_mm)
{
  g_autoptr (SqCloth) cloth = sq_cloth_dup (sq_job_cloth (job, id));

  cloth->width_mm = width_mm;
  cloth->given |= SQ_GIVEN_CLOTH_WIDTH;
  g_autoptr (SqJob) changed = sq_job_with_cloth (job, cloth);
  return sq_plan_new (changed, NULL);
}

/* What is to be bought of it; FALSE if it was stopped. */
static gboolean
lay (const SqPlan *plan, SqId id, guint otherwise, const SqTask *watch, SqPurchase *purchase)
{
  const SqLayBudget first = { .seed = 1 };
  const SqLayWatch lay_watch = { watch != NULL ? *watch : (SqTask){ NULL, NULL, NULL }, NULL };
  g_autoptr (SqLayTask) task = sq_plan_lay_task_otherwise (plan, id, otherwise | SQ_LAY_ALL_BOUGHT);
  g_autoptr (SqLay) found = sq_lay_run (task, NULL, &first, &lay_watch);

  if (found != NULL)
    *purchase = sq_plan_purchase (plan, task, found);
  return found != NULL;
}

static gboolean
lay_width (const SqClothWidths *widths, const SqJob *job, SqClothWidth *width, const SqTask *watch)
{
  g_autoptr (SqPlan) plan = plan_of_width (job, widths->cloth, width->width_mm);
  SqPurchase plain;

  if (!lay (plan, widths->cloth, 0, watch, &width->matched))
    return FALSE;
  width->plain = width->matched;
  if (!widths->has_pattern)
    return TRUE;
  if (!lay (plan, widths->cloth, SQ_LAY_UNMATCHED, watch, &plain))
    return FALSE;
  if (plain.unlaid < width->matched.unlaid
      || (plain.unlaid == width->matched.unlaid && plain.buy_mm < width->matched.buy_mm))
    width->plain = plain;
  return TRUE;
}

static int
compare_widths (gconstpointer a, gconstpointer b)
{
  const SqClothWidth *x = a, *y = b;
  return (x->width_mm > y->width_mm) - (x->width_mm < y->width_mm);
}

SqClothWidths *
sq_cloth_widths_new (const SqJob *job, SqId id, const double *widths_mm, guint n,
                     const SqTask *watch)
{
  const SqCloth *cloth = sq_job_cloth (job, id);
  g_return_val_if_fail (cloth != NULL, NULL);
  g_autoptr (SqClothWidths) widths = g_new0 (SqClothWidths, 1);
  SqClothWidth own = { .is_own = TRUE };
  gboolean across, along;

  widths->ref_count = 1;
  widths->cloth = id;
  widths->has_pattern = sq_cloth_has_phase (cloth, &across, &along);
  widths->widths = g_array_new (FALSE, TRUE, sizeof (SqClothWidth));
  own.width_mm = cloth->given & SQ_GIVEN_CLOTH_WIDTH ? cloth->width_mm
                                                     : job->defaults.cloth_width_mm;
  g_array_append_val (widths->widths, own);
  for (guint i = 0; i < n; i++)
    {
      SqClothWidth width = { .width_mm = widths_mm[i] };
      if (fabs (width.width_mm - own.width_mm) > SAME_MM)
        g_array_append_val (widths->widths, width);
    }
  g_array_sort (widths->widths, compare_widths);
  for (guint i = 0; i < widths->widths->len; i++)
    if (!lay_width (widths, job, sq_cloth_width (widths, i), watch))
      return NULL;
  return g_steal_pointer (&widths);
}

SqClothWidths *
sq_cloth_widths_ref (const SqClothWidths *widths)
{
  SqClothWidths *w = (SqClothWidths *) widths;
  g_atomic_int_inc (&w->ref_count);
  return w;
}

void
sq_cloth_widths_unref (SqClothWidths *widths)
{
  if (widths == NULL || !g_atomic_int_dec_and_test (&widths->ref_count))
    return;
  g_array_unref (widths->widths);
  g_free (widths);
}
