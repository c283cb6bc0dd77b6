/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "plan/ways.h"

#include "plan/cost.h"
#include "plan/work.h"

#include "plan/way-kinds.h"

static void
clear_way (gpointer data)
{
  SqWay *way = data;

  g_clear_pointer (&way->as, sq_cushion_unref);
  g_clear_pointer (&way->plan, sq_plan_unref);
  g_clear_pointer (&way->cloths, g_array_unref);
}

/* The job with nothing but @cushion, and nothing that is kept of others. */
static SqJob *
job_of_one (const SqJob *job, const SqCushion *cushion)
{
  SqJob *one = sq_job_dup (job);

  g_ptr_array_set_size (one->cushions, 0);
  g_ptr_array_add (one->cushions, sq_cushion_ref (cushion));
  g_ptr_array_set_size (one->kept_lays, 0);
  return one;
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

/* Takes @as. FALSE if it was stopped. */
static gboolean
add_way (SqWays *ways, const SqJob *job, const SqWayKind *kind, SqCushion *as, const SqTask *watch)
{
  g_autoptr (SqJob) one = job_of_one (job, as);
  SqWay way = { .build = kind->build, .mixed = kind->mixed, .as = as };

  way.cloths = g_array_new (FALSE, FALSE, sizeof (SqWayCloth));
  way.plan = sq_plan_new (one, NULL);
  way.welt = kind->welt || sq_plan_cover (way.plan, 0)->welt.at != SQ_WELT_NONE;
  find_fault (&way);
  if (way.possible)
    reckon (&way);
  g_array_append_val (ways->ways, way);
  return !way.possible || !ways->has_lays
         || lay (&g_array_index (ways->ways, SqWay, ways->ways->len - 1), watch);
}

SqWays *
sq_ways_new (const SqJob *job, const SqCushion *cushion, gboolean with_lays, const SqTask *watch)
{
  g_autoptr (SqWays) ways = g_new0 (SqWays, 1);
  guint own = sq_way_kind_of (job, cushion);

  ways->ref_count = 1;
  ways->cushion = sq_cushion_ref (cushion);
  ways->has_lays = with_lays;
  ways->ways = g_array_new (FALSE, TRUE, sizeof (SqWay));
  g_array_set_clear_func (ways->ways, clear_way);
  for (guint i = 0; i < SQ_N_WAY_KINDS; i++)
    {
      SqCushion *as = i == own ? sq_cushion_ref (cushion)
                               : sq_way_kind_apply (&sq_way_kinds[i], cushion);
      if (i == own)
        ways->in_use = ways->ways->len;
      if (as != NULL && !add_way (ways, job, &sq_way_kinds[i], as, watch))
        return NULL;
    }
  return g_steal_pointer (&ways);
}

SqWays *
sq_ways_ref (const SqWays *ways)
{
  SqWays *w = (SqWays *) ways;
  g_atomic_int_inc (&w->ref_count);
  return w;
}

void
sq_ways_unref (SqWays *ways)
{
  if (ways == NULL || !g_atomic_int_dec_and_test (&ways->ref_count))
    return;
  g_array_unref (ways->ways);
  sq_cushion_unref (ways->cushion);
  g_free (ways);
}

const SqWay *
sq_ways_way (const SqWays *ways, guint i)
{
  return &g_array_index (ways->ways, SqWay, i);
}

double
sq_way_cost (const SqWay *way, guint *lacks)
{
  guint missing = (isnan (way->cloth_cost) ? SQ_COST_CLOTH : 0)
                  | (isnan (way->foam_cost) ? SQ_COST_FOAM : 0);

  if (lacks != NULL)
    *lacks = missing;
  return way->work_cost + (missing & SQ_COST_CLOTH ? 0 : way->cloth_cost)
         + (missing & SQ_COST_FOAM ? 0 : way->foam_cost);
}

gboolean
sq_ways_has_samples (const SqJob *job)
{
  for (SqRate rate = 0; rate < SQ_N_RATES; rate++)
    if (!sq_job_has_rate (job, rate))
      return TRUE;
  return FALSE;
}
