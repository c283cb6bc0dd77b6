/* SPDX-License-Identifier: GPL-3.0-or-later */
/* Lots: a lay that is cut several layers of cloth deep, to fit a table. All layers lie right side up,
 * so what is one-way or has a hand stays right in every one of them. */
#pragma once

#include "base/task.h"
#include "plan/purchase.h"

/* What evens the two ends of a ply, 1 in; minutes to spread a ply, and a metre of it (common
 * practice, no source). */
#define SQ_PLY_ENDS_MM 25.4
#define SQ_PLY_MINUTES 1.0
#define SQ_PLY_METRE_MINUTES 0.5

/* Cloth within so much of the least is not worth an hour of cutting (common practice, no source). */
#define SQ_PLY_MORE_CLOTH 0.03

/* Deeper than any blade goes. */
#define SQ_MOST_PLIES 100

/* A cloth cut so deep: its lays follow one another on the table, each of as many plies. */
typedef struct
{
  guint plies;
  SqLayTask *task;   /* its strips: a ply of each lay, no longer than the table */
  SqLay *lay;        /* of what all of the plies are cut to */
  guint lays;        /* that something lies on */
  double longest_mm; /* a ply of the longest of them, with what evens its ends */
  double cloth_mm;   /* all plies of all lays */
  double buy_mm;     /* with the bolt's end squared and a pattern's start, rounded up as sold */
  double minutes;    /* to spread and to cut; one ply on no table: to cut alone */
  guint spares;      /* pieces that are cut beyond those wanted */
  guint unlaid;      /* that do not go on the cloth or the table, of those wanted */
} SqPlyLay;

/* Immutable, shared by reference. */
typedef struct
{
  gint ref_count;
  GArray *
      depths; /* of SqPlyLay, by plies, the first of one; none that cuts as much as one less deep */
  guint best; /* index: of those with the fewest unlaid, and with no more than SQ_PLY_MORE_CLOTH
               * above the least of these to buy, the one that takes the least time; then the one
               * with the least to buy, then the deepest */
} SqPlies;

/* Whether @job asks for more than one layer. */
gboolean sq_job_has_plies (const SqJob *job);

/* All of @plan that is cut from @cloth, laid for every number of plies up to the job's most, each as well
 * as a first lay is, as long as its table is. Stock, flaws and pins are left out: plies are equal.
 * NULL if @watch (may be NULL) stopped it. Pure; any thread. */
SqPlies *sq_plies_new (const SqPlan *plan, SqId cloth, const SqTask *watch);
SqPlies *sq_plies_ref (const SqPlies *plies);
void sq_plies_unref (SqPlies *plies);
G_DEFINE_AUTOPTR_CLEANUP_FUNC (SqPlies, sq_plies_unref)

/* How long each ply of the lay on strip @strip of its task is spread; 0: there is none. */
double sq_ply_length_mm (const SqPlyLay *depth, guint strip);

#define sq_ply_lay(of, i) (&g_array_index ((of)->depths, SqPlyLay, (i)))
#define sq_plies_best(of) sq_ply_lay (of, (of)->best)
