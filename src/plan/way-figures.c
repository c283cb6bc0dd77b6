/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "plan/way-figures.h"

#include "plan/cost.h"
#include "plan/work.h"

/* A cloth as if all of it were bought: what is there of it is the whole job's, and would make every
 * way look as if it took nothing. */
static void
leave_stock (SqJob *own)
{
  for (guint i = 0; i < own->cloths->len; i++)
    {
      const SqCloth *cloth = own->cloths->pdata[i];
      if (cloth->stock->len == 0 && cloth->flaws->len == 0)
        continue;
      SqCloth *bought = sq_cloth_dup (cloth);
      g_array_set_size (bought->stock, 0);
      g_array_set_size (bought->flaws, 0);
      own->cloths->pdata[i] = bought;
      sq_cloth_unref ((SqCloth *) cloth);
    }
  g_array_set_size (own->pins, 0);
}

SqJob *
sq_way_job (const SqJob *job, const GPtrArray *cushions)
{
  SqJob *own = sq_job_dup (job);

  g_ptr_array_set_size (own->cushions, 0);
  for (guint i = 0; i < cushions->len; i++)
    g_ptr_array_add (own->cushions, sq_cushion_ref (cushions->pdata[i]));
  g_ptr_array_set_size (own->kept_lays, 0);
  leave_stock (own);
  return own;
}

static void
find_fault (SqWay *way)
{
  way->possible = TRUE;
  for (guint i = 0; i < way->plan->covers->len && way->possible; i++)
    {
      const SqCover *cover = sq_plan_cover (way->plan, i);
      for (guint k = 0; k < cover->problems->len && way->possible; k++)
        if (sq_cover_problem (cover, k)->severity == SQ_FAULT)
          {
            way->possible = FALSE;
            way->why = *sq_cover_problem (cover, k);
            way->where = cover;
          }
    }
}

/* Everything but what follows from a lay. */
static void
reckon (SqWay *way)
{
  SqFigures f = sq_plan_figures (way->plan);
  SqWork work = sq_plan_work (way->plan);

  way->pieces = f.pieces;
  way->seam_mm = f.seam_mm;
  way->foam_mm3 = f.foam_mm3;
  way->foam_g = f.foam_g;
  way->minutes = sq_work_minutes (&work, way->plan->job);
  way->work_cost = sq_cost_of_work (way->plan->job, way->minutes);
  way->foam_cost = sq_cost_of_foam (way->plan);
  way->cloth_cost = NAN;
  for (guint i = 0; i < way->plan->cloths->len; i++)
    {
      const SqClothTotal *total = &g_array_index (way->plan->cloths, SqClothTotal, i);
      SqWayCloth cloth = { total->cloth, total->area_mm2, NAN, 0, NAN };
      g_array_append_val (way->cloths, cloth);
    }
}

/* FALSE if it was stopped. */
static gboolean
lay (SqWay *way, const SqTask *watch)
{
  const SqLayBudget first = { .seed = 1 };
  g_autoptr (SqLays) lays = sq_lays_new (way->plan, NULL, &first, watch);

  if (lays == NULL)
    return FALSE;
  way->cloth_cost = 0;
  for (guint i = 0; i < way->cloths->len; i++)
    {
      SqWayCloth *cloth = &g_array_index (way->cloths, SqWayCloth, i);
      const SqPurchase *purchase = &sq_lays_cloth (lays, i)->purchase;
      cloth->unlaid = purchase->unlaid;
      if (purchase->unlaid == 0)
        cloth->buy_mm = purchase->buy_mm;
      cloth->cost = sq_cost_of_cloth (way->plan->job, cloth->cloth, cloth->buy_mm);
      way->cloth_cost += cloth->cost;
    }
  return TRUE;
}

gboolean
sq_way_reckon (SqWay *way, const SqJob *job, gboolean with_lays, const SqTask *watch)
{
  way->plan = sq_plan_new (job, NULL);
  find_fault (way);
  if (!way->possible)
    return TRUE;
  reckon (way);
  return !with_lays || lay (way, watch);
}

void
sq_way_clear (SqWay *way)
{
  g_clear_pointer (&way->as, sq_cushion_unref);
  g_clear_pointer (&way->plan, sq_plan_unref);
  g_clear_pointer (&way->cloths, g_array_unref);
}
