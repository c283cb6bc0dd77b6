/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "plan/ways.h"

#include "plan/way-figures.h"
#include "plan/way-kinds.h"

static void
clear_way (gpointer data)
{
  sq_way_clear (data);
}

/* Takes @as. FALSE if it was stopped. */
static gboolean
add_way (SqWays *ways, const SqJob *job, const SqWayKind *kind, SqCushion *as, const SqTask *watch)
{
  g_autoptr (GPtrArray) one = g_ptr_array_new ();
  SqWay way = { .build = kind->build, .mixed = kind->mixed, .as = as };

  g_ptr_array_add (one, as);
  g_autoptr (SqJob) own = sq_way_job (job, one);
  way.cloths = g_array_new (FALSE, FALSE, sizeof (SqWayCloth));
  gboolean finished = sq_way_reckon (&way, own, ways->has_lays, watch);
  way.welt = kind->welt || sq_plan_cover (way.plan, 0)->welt.at != SQ_WELT_NONE;
  g_array_append_val (ways->ways, way);
  return finished;
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
