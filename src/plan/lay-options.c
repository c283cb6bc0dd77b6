/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "plan/lay-options.h"

#include "plan/lay-tasks.h"

/* 45, 54 and 60 in less an inch (mm): what cloth is commonly woven to; no source. */
static const double usual_widths_mm[] = { 1117.6, 1346.2, 1498.6 };

/* Widths that differ by less are the same cloth. */
#define SAME_WIDTH_MM 20.0

static double
own_width_mm (const SqPlan *plan, SqId id)
{
  const SqCloth *cloth = sq_plan_cloth (plan, id);

  return cloth != NULL && (cloth->given & SQ_GIVEN_CLOTH_WIDTH)
             ? cloth->width_mm
             : plan->job->defaults.cloth_width_mm;
}

/* FALSE if it was stopped. */
static gboolean
add_option (GArray *options, const SqPlan *plan, SqId id, gboolean is_own, gboolean is_matched,
            const SqTask *watch)
{
  const SqLayBudget first = { .seed = 1 };
  SqLayWatch lay_watch = { watch != NULL ? *watch : (SqTask){ NULL, NULL, NULL }, NULL };
  g_autoptr (SqLayTask) task = sq_plan_lay_task_otherwise (
      plan, id, SQ_LAY_ALL_BOUGHT | (is_matched ? 0u : SQ_LAY_UNMATCHED));

  lay_watch.task.progress = NULL;
  g_autoptr (SqLay) lay = sq_lay_run (task, NULL, &first, &lay_watch);
  if (lay == NULL)
    return FALSE;
  SqLayOption option = { .width_mm = own_width_mm (plan, id),
                         .is_own = is_own,
                         .is_matched = is_matched,
                         .purchase = sq_plan_purchase (plan, task, lay) };
  g_array_append_val (options, option);
  return TRUE;
}

/* Whether any piece of @cloth keeps to its pattern. */
static gboolean
has_pattern (const SqPlan *plan, SqId id)
{
  for (guint i = 0; i < plan->cut_list->len; i++)
    {
      const SqCutEntry *entry = &g_array_index (plan->cut_list, SqCutEntry, i);
      const SqPiece *piece = sq_cover_piece (sq_plan_cover (plan, entry->cushion), entry->piece);
      if (entry->cloth == id && (piece->phase.across || piece->phase.along))
        return TRUE;
    }
  return FALSE;
}

static SqPlan *
plan_of_width (const SqPlan *plan, SqId id, double width_mm)
{
  const SqCloth *cloth = sq_plan_cloth (plan, id);
  g_autoptr (SqJob) job = sq_job_dup (plan->job);

  if (cloth == NULL)
    {
      job->defaults.cloth_width_mm = width_mm;
      return sq_plan_new (job, NULL);
    }
  g_autoptr (SqCloth) other = sq_cloth_dup (cloth);
  other->width_mm = width_mm;
  other->given |= SQ_GIVEN_CLOTH_WIDTH;
  g_autoptr (SqJob) next = sq_job_with_cloth (job, other);
  return sq_plan_new (next, NULL);
}

static gboolean
is_cut_from (const SqPlan *plan, SqId id)
{
  for (guint i = 0; i < plan->cloths->len; i++)
    if (g_array_index (plan->cloths, SqClothTotal, i).cloth == id)
      return TRUE;
  return FALSE;
}

GArray *
sq_lay_options_new (const SqPlan *plan, SqId id, const SqTask *watch)
{
  g_autoptr (GArray) options = g_array_new (FALSE, FALSE, sizeof (SqLayOption));
  gboolean goes_on = TRUE;

  if (!is_cut_from (plan, id))
    return g_steal_pointer (&options);
  goes_on = add_option (options, plan, id, TRUE, TRUE, watch);
  if (goes_on && has_pattern (plan, id))
    goes_on = add_option (options, plan, id, TRUE, FALSE, watch);
  for (guint i = 0; goes_on && i < G_N_ELEMENTS (usual_widths_mm); i++)
    {
      if (fabs (usual_widths_mm[i] - own_width_mm (plan, id)) < SAME_WIDTH_MM)
        continue;
      g_autoptr (SqPlan) other = plan_of_width (plan, id, usual_widths_mm[i]);
      goes_on = add_option (options, other, id, FALSE, TRUE, watch);
    }
  return goes_on ? g_steal_pointer (&options) : NULL;
}

double
sq_lay_options_matching_mm (const GArray *options)
{
  if (options->len < 2 || !sq_lay_option (options, 1)->is_own)
    return NAN;
  const SqPurchase *matched = &sq_lay_option (options, 0)->purchase;
  const SqPurchase *free = &sq_lay_option (options, 1)->purchase;
  return matched->unlaid == 0 && free->unlaid == 0 ? matched->buy_mm - free->buy_mm : NAN;
}
