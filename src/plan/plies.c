/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "plan/plies.h"

#include "base/units.h"
#include "plan/lay-tasks.h"
#include "roll/lay-run.h"

gboolean
sq_job_has_plies (const SqJob *job)
{
  return job->laying.most_plies > 1;
}

static void
clear_depth (gpointer data)
{
  SqPlyLay *depth = data;

  g_clear_pointer (&depth->task, sq_lay_task_unref);
  g_clear_pointer (&depth->lay, sq_lay_unref);
}

/* ---- its lays ------------------------------------------------------------------------------ */

static gboolean
lacks_room (const SqLay *lay)
{
  for (guint i = 0; i < lay->unlaid->len; i++)
    if (g_array_index (lay->unlaid, SqUnlaid, i).why == SQ_UNLAID_NO_ROOM)
      return TRUE;
  return FALSE;
}

/* Every ply begins where the pattern does. */
static double
ply_mm (double laid_mm, double repeat_mm)
{
  return repeat_mm > 0 ? ceil ((laid_mm + SQ_PLY_ENDS_MM) / repeat_mm) * repeat_mm
                       : laid_mm + SQ_PLY_ENDS_MM;
}

/* What may be laid of a ply that goes on the table. */
static double
longest_mm (double table_mm, double repeat_mm)
{
  double ply_mm = repeat_mm > 0 ? floor (table_mm / repeat_mm) * repeat_mm : table_mm;

  return MAX (ply_mm - SQ_PLY_ENDS_MM, 0);
}

/* Lays on so many tables that take @table_mm; FALSE if it was stopped. */
static gboolean
lay_on (SqPlyLay *depth, const SqPlan *plan, SqId cloth, guint tables, double table_mm,
        const SqTask *watch)
{
  const SqLayBudget first = { .seed = 1 };
  const SqLayWatch lay_watch = { .task.is_cancelled = watch != NULL ? watch->is_cancelled : NULL,
                                 .task.data = watch != NULL ? watch->data : NULL };

  clear_depth (depth);
  depth->task = sq_plan_lay_task_deep (plan, cloth, depth->plies, tables, table_mm);
  depth->lay = sq_lay_run (depth->task, NULL, &first, &lay_watch);
  return depth->lay != NULL;
}

/* On one table, or on as many as it takes. One ply alone has no ends to even. */
static gboolean
lay_deep (SqPlyLay *depth, const SqPlan *plan, SqId cloth, const SqTask *watch)
{
  double table_mm = plan->job->laying.table_mm;

  if (!lay_on (depth, plan, cloth, 0, 0, watch))
    return FALSE;
  double laid_mm = sq_lay_length (depth->lay, 0) / SQ_GRID_PER_MM;
  double most_mm = longest_mm (table_mm, sq_lay_task_repeat_mm (depth->task));
  if (table_mm <= 0 || laid_mm <= (depth->plies > 1 ? most_mm : table_mm))
    return TRUE;
  /* none of them is needed for less than a piece */
  guint most = depth->lay->placed->len;
  guint tables = (guint) MIN (ceil (laid_mm / MAX (most_mm, 1)), most);
  while (lay_on (depth, plan, cloth, tables, most_mm, watch))
    {
      if (tables >= most || !lacks_room (depth->lay))
        return TRUE;
      tables = MIN (tables + 1 + tables / 8, most);
    }
  return FALSE;
}

/* ---- its figures --------------------------------------------------------------------------- */

double
sq_ply_length_mm (const SqPlyLay *depth, guint strip)
{
  double laid_mm = sq_lay_length (depth->lay, strip) / SQ_GRID_PER_MM;

  if (laid_mm <= 0)
    return 0;
  /* one ply is cut as it comes off the bolt, with no ends of its own */
  return depth->plies == 1 && depth->lays == 1
             ? laid_mm
             : ply_mm (laid_mm, sq_lay_task_repeat_mm (depth->task));
}

static void
reckon_cloth (SqPlyLay *depth, const SqJob *job)
{
  double start_mm = SQ_SQUARING_MM + sq_lay_task_repeat_mm (depth->task);

  for (guint i = 0; i < depth->task->strips->len; i++)
    depth->lays += sq_lay_length (depth->lay, i) > 0;
  for (guint i = 0; i < depth->task->strips->len; i++)
    {
      double length_mm = sq_ply_length_mm (depth, i);
      depth->longest_mm = MAX (depth->longest_mm, length_mm);
      depth->cloth_mm += depth->plies * length_mm;
    }
  if (depth->lays > 0)
    depth->buy_mm = sq_sold_mm (job, depth->cloth_mm + start_mm);
}

static void
reckon_pieces (SqPlyLay *depth, const SqPlan *plan)
{
  const SqJob *job = plan->job;
  guint spread = depth->plies * depth->lays;

  for (guint i = 0; i < depth->task->items->len; i++)
    {
      const SqLayItem *item = sq_lay_task_item (depth->task, i);
      depth->spares += item->demand * depth->plies
                       - g_array_index (plan->cut_list, SqCutEntry, item->tag).count;
    }
  for (guint i = 0; i < depth->lay->unlaid->len; i++)
    {
      const SqUnlaid *unlaid = &g_array_index (depth->lay->unlaid, SqUnlaid, i);
      const SqLayItem *item = sq_lay_task_item (depth->task, unlaid->item);
      guint wanted = g_array_index (plan->cut_list, SqCutEntry, item->tag).count;
      guint laid = (item->demand - unlaid->count) * depth->plies;
      guint spare = item->demand * depth->plies - wanted;
      depth->spares -= spare - (laid > wanted ? laid - wanted : 0);
      depth->unlaid += wanted > laid ? wanted - laid : 0;
    }
  depth->minutes = sq_job_rate (job, SQ_RATE_CUT) * depth->lay->placed->len;
  if (spread > 1)
    depth->minutes += SQ_PLY_MINUTES * spread
                      + SQ_PLY_METRE_MINUTES * depth->cloth_mm / SQ_MM_PER_M;
}

/* ---- the best ------------------------------------------------------------------------------ */

static guint
fewest_unlaid (const SqPlies *all)
{
  guint fewest = G_MAXUINT;

  for (guint i = 0; i < all->depths->len; i++)
    fewest = MIN (fewest, sq_ply_lay (all, i)->unlaid);
  return fewest;
}

/* What may be bought: a little more than the least there is of those that leave out so few. */
static double
most_to_buy_mm (const SqPlies *all, guint unlaid)
{
  double least_mm = HUGE_VAL;

  for (guint i = 0; i < all->depths->len; i++)
    if (sq_ply_lay (all, i)->unlaid == unlaid)
      least_mm = fmin (least_mm, sq_ply_lay (all, i)->buy_mm);
  return least_mm * (1 + SQ_PLY_MORE_CLOTH);
}

static gboolean
is_better (const SqPlyLay *depth, const SqPlyLay *than)
{
  return depth->minutes < than->minutes
         || (depth->minutes <= than->minutes && depth->buy_mm <= than->buy_mm);
}

static guint
find_best (const SqPlies *all)
{
  guint unlaid = fewest_unlaid (all), best = G_MAXUINT;
  double most_mm = most_to_buy_mm (all, unlaid);

  for (guint i = 0; i < all->depths->len; i++)
    {
      const SqPlyLay *depth = sq_ply_lay (all, i);
      if (depth->unlaid == unlaid && depth->buy_mm <= most_mm
          && (best == G_MAXUINT || is_better (depth, sq_ply_lay (all, best))))
        best = i;
    }
  return best;
}

/* ---- all of them --------------------------------------------------------------------------- */

static guint
copies (guint wanted, guint plies)
{
  return wanted / plies + (wanted % plies > 0);
}

/* Whether so many plies have fewer copies of a piece of @cloth in them than @before. */
static gboolean
cuts_less (const SqPlan *plan, SqId cloth, guint plies, guint before)
{
  for (guint i = 0; i < plan->cut_list->len; i++)
    {
      const SqCutEntry *entry = &g_array_index (plan->cut_list, SqCutEntry, i);
      if (entry->cloth == cloth && copies (entry->count, plies) < copies (entry->count, before))
        return TRUE;
    }
  return FALSE;
}

/* FALSE if it was stopped. */
static gboolean
add_depth (SqPlies *all, const SqPlan *plan, SqId cloth, guint plies, const SqTask *watch)
{
  SqPlyLay depth = { .plies = plies };

  if (!lay_deep (&depth, plan, cloth, watch))
    {
      clear_depth (&depth);
      return FALSE;
    }
  reckon_cloth (&depth, plan->job);
  reckon_pieces (&depth, plan);
  g_array_append_val (all->depths, depth);
  return TRUE;
}

SqPlies *
sq_plies_new (const SqPlan *plan, SqId cloth, const SqTask *watch)
{
  guint most = CLAMP (plan->job->laying.most_plies, 1, SQ_MOST_PLIES), before = 1;
  g_autoptr (SqPlies) all = g_new0 (SqPlies, 1);

  all->ref_count = 1;
  all->depths = g_array_new (FALSE, FALSE, sizeof (SqPlyLay));
  g_array_set_clear_func (all->depths, clear_depth);
  for (guint plies = 1; plies <= most; plies++)
    if (plies == 1 || cuts_less (plan, cloth, plies, before))
      {
        if (!add_depth (all, plan, cloth, plies, watch))
          return NULL;
        before = plies;
      }
  all->best = find_best (all);
  return g_steal_pointer (&all);
}

SqPlies *
sq_plies_ref (const SqPlies *plies)
{
  SqPlies *p = (SqPlies *) plies;
  g_atomic_int_inc (&p->ref_count);
  return p;
}

void
sq_plies_unref (SqPlies *plies)
{
  if (plies == NULL || !g_atomic_int_dec_and_test (&plies->ref_count))
    return;
  g_array_unref (plies->depths);
  g_free (plies);
}
