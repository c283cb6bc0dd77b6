/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "plan/lays.h"

#include "plan/lay-tasks.h"

static void
clear_cloth (gpointer data)
{
  SqClothLay *cloth = data;

  g_clear_pointer (&cloth->task, sq_lay_task_unref);
  g_clear_pointer (&cloth->lay, sq_lay_unref);
}

/* What one cloth's share of the watched work is of the whole. */
typedef struct
{
  const SqTask *watch;
  double from, share;
} Part;

static gboolean
part_is_cancelled (gpointer data)
{
  const Part *part = data;
  return part->watch->is_cancelled != NULL && part->watch->is_cancelled (part->watch->data);
}

static void
part_progress (gpointer data, double fraction)
{
  const Part *part = data;
  if (part->watch->progress != NULL)
    part->watch->progress (part->watch->data, part->from + part->share * fraction);
}

/* A lay of @task in @before that was found with @budget, or NULL. */
static const SqLay *
same_lay (const SqLays *before, const SqLayTask *task, const SqLayBudget *budget)
{
  if (before == NULL || before->budget.seed != budget->seed
      || before->budget.steps != budget->steps)
    return NULL;
  for (guint i = 0; i < before->cloths->len; i++)
    if (sq_lays_cloth (before, i)->task->digest == task->digest)
      return sq_lays_cloth (before, i)->lay;
  return NULL;
}

/* FALSE if it was stopped. */
static gboolean
add_cloth (SqLays *lays, SqId id, const SqLays *before, const SqTask *watch)
{
  SqClothLay cloth = { .cloth = id, .task = sq_plan_lay_task (lays->plan, id) };
  const SqLay *same = same_lay (before, cloth.task, &lays->budget);

  cloth.lay = same != NULL ? sq_lay_ref (same)
                           : sq_lay_run (cloth.task, NULL, &lays->budget, watch);
  if (cloth.lay == NULL)
    {
      clear_cloth (&cloth);
      return FALSE;
    }
  cloth.purchase = sq_plan_purchase (lays->plan, cloth.task, cloth.lay);
  g_array_append_val (lays->cloths, cloth);
  return TRUE;
}

SqLays *
sq_lays_new (const SqPlan *plan, const SqLays *before, const SqLayBudget *budget,
             const SqTask *watch)
{
  g_autoptr (SqLays) lays = g_new0 (SqLays, 1);
  Part part = { .watch = watch, .share = 1.0 / MAX (plan->cloths->len, 1) };
  SqTask part_watch = { part_is_cancelled, part_progress, &part };

  lays->ref_count = 1;
  lays->plan = sq_plan_ref (plan);
  lays->budget = *budget;
  lays->cloths = g_array_new (FALSE, FALSE, sizeof (SqClothLay));
  g_array_set_clear_func (lays->cloths, clear_cloth);
  for (guint i = 0; i < plan->cloths->len; i++)
    {
      part.from = part.share * i;
      if (!add_cloth (lays, g_array_index (plan->cloths, SqClothTotal, i).cloth, before,
                      watch != NULL ? &part_watch : NULL))
        return NULL;
    }
  return g_steal_pointer (&lays);
}

SqLays *
sq_lays_ref (const SqLays *lays)
{
  SqLays *l = (SqLays *) lays;
  g_atomic_int_inc (&l->ref_count);
  return l;
}

void
sq_lays_unref (SqLays *lays)
{
  if (lays == NULL || !g_atomic_int_dec_and_test (&lays->ref_count))
    return;
  g_array_unref (lays->cloths);
  sq_plan_unref (lays->plan);
  g_free (lays);
}

guint
sq_lays_n_unlaid (const SqLays *lays)
{
  guint n = 0;

  for (guint i = 0; i < lays->cloths->len; i++)
    n += sq_lays_cloth (lays, i)->purchase.unlaid;
  return n;
}

const SqCutEntry *
sq_lays_entry (const SqLays *lays, const SqPlaced *placed)
{
  return &g_array_index (lays->plan->cut_list, SqCutEntry, placed->tag);
}

const SqPiece *
sq_lays_piece (const SqLays *lays, const SqPlaced *placed)
{
  const SqCutEntry *entry = sq_lays_entry (lays, placed);
  return sq_cover_piece (sq_plan_cover (lays->plan, entry->cushion), entry->piece);
}

void
sq_lays_place (const SqLays *lays, const SqPlaced *placed, double *turn_rad, SqPoint *at)
{
  *turn_rad = placed->quarters * (M_PI / 2) - sq_lays_piece (lays, placed)->grain_rad;
  *at = sq_point ((double) placed->at.x / SQ_GRID_PER_MM, (double) placed->at.y / SQ_GRID_PER_MM);
}
