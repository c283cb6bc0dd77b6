/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "plan/cost.h"

#define MM_PER_M 1e3
#define MM3_PER_M3 1e9
#define MINUTES_PER_HOUR 60

double
sq_cost_of_cloth (const SqJob *job, SqId id, double length_mm)
{
  const SqCloth *cloth = sq_job_cloth (job, id);

  if (cloth == NULL || !(cloth->given & SQ_GIVEN_CLOTH_PRICE) || cloth->price < 0)
    return NAN;
  return cloth->price * length_mm / MM_PER_M;
}

static double
foam_price (const SqJob *job, SqFoamKind kind)
{
  const SqFoam *foam = sq_job_foam (job, kind);

  return foam != NULL && (foam->given & SQ_GIVEN_FOAM_PRICE) && foam->price >= 0 ? foam->price
                                                                                 : NAN;
}

/* What a firm foam counts as follows from its figures; it is bought as what the maker chose. */
static SqFoamKind
bought_as (const SqPlan *plan, const SqCover *cover, const SqFoamPart *part)
{
  const SqCushion *cushion = cover->cushion;
  SqFoamKind chosen = cushion->given & SQ_GIVEN_FOAM_KIND ? cushion->foam.kind
                                                          : plan->job->defaults.foam_kind;

  return part->kind == SQ_FOAM_FIRM ? chosen : part->kind;
}

double
sq_cost_of_foam (const SqPlan *plan)
{
  double cost = 0;

  for (guint i = 0; i < plan->covers->len; i++)
    {
      const SqCover *cover = sq_plan_cover (plan, i);
      for (guint k = 0; k < cover->foam->len; k++)
        {
          const SqFoamPart *part = g_ptr_array_index (cover->foam, k);
          cost += foam_price (plan->job, bought_as (plan, cover, part)) * part->volume_mm3
                  / MM3_PER_M3 * part->count * cover->cushion->count;
        }
    }
  return cost;
}

double
sq_cost_of_work (const SqJob *job, double minutes)
{
  return minutes * sq_job_rate (job, SQ_RATE_WAGE) / MINUTES_PER_HOUR;
}
