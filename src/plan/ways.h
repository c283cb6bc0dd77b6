/* SPDX-License-Identifier: GPL-3.0-or-later */
/* The ways a cushion could be built, side by side: whether each can be, and what it takes. */
#pragma once

#include "plan/lays.h"

/* Of one cloth. */
typedef struct
{
  SqId cloth; /* 0: the job names none */
  double area_mm2;
  double buy_mm; /* from a first lay of this cushion alone; NaN: not laid, or not all of it */
  guint unlaid;  /* pieces that found no place on it */
  double cost;   /* of what is bought; NaN: not known */
} SqWayCloth;

/* What a cost lacks, as bits. */
typedef enum
{
  SQ_COST_CLOTH = 1 << 0,
  SQ_COST_FOAM = 1 << 1,
} SqCostPart;

/* One way. All figures are of all cushions that the job wants of it, mirrored ones of a pair too; what
 * can't be built has none. */
typedef struct
{
  SqBuild build;
  gboolean welt;  /* boxed, with a welt */
  gboolean mixed; /* folded, with boxing let in at curves and at corners that turn inward */
  SqCushion *as;  /* the cushion built so; the very same where it is already */
  SqPlan *plan;   /* of it alone */

  gboolean possible;
  SqProblem why;        /* else the first fault … */
  const SqCover *where; /* … and the cover that has it, borrowed from the plan */

  guint pieces;
  double seam_mm;
  GArray *cloths; /* of SqWayCloth, as the plan's */
  double foam_mm3, foam_g;
  double minutes;                          /* by the job's rates */
  double cloth_cost, foam_cost, work_cost; /* NaN: not known */
} SqWay;

/* Immutable, shared by reference. */
typedef struct
{
  gint ref_count;
  SqCushion *cushion; /* as it was asked about */
  GArray *ways;       /* of SqWay, always in the same order */
  guint in_use;       /* which of them the cushion is built in */
  gboolean has_lays;
} SqWays;

/* All ways of @cushion of @job; @with_lays: with what cloth is to be bought, from a first lay of each.
 * Ways that would be the same as another are left out: a folded cover that nothing has to be let
 * into, or whose every edge would be boxed. Pure; may run on any thread. Long work for @watch (may
 * be NULL), NULL if it was stopped. New reference. */
SqWays *sq_ways_new (const SqJob *job, const SqCushion *cushion, gboolean with_lays,
                     const SqTask *watch);
SqWays *sq_ways_ref (const SqWays *ways);
void sq_ways_unref (SqWays *ways);
G_DEFINE_AUTOPTR_CLEANUP_FUNC (SqWays, sq_ways_unref)

/* Borrowed. */
const SqWay *sq_ways_way (const SqWays *ways, guint i);

/* What is known of the cost; *@lacks (may be NULL) gets what it lacks, bits of SqCostPart. */
double sq_way_cost (const SqWay *way, guint *lacks);

/* Whether any rate that times and costs follow from is a sample and not the maker's own. */
gboolean sq_ways_has_samples (const SqJob *job);
