/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "roll/lay-run.h"

#include "roll/lay-first.h"

/* So few are laid at once by every size there is, and the best lay is the first: it takes no longer
 * than one of more pieces. */
#define FEW_PIECES 32

/* ---- which is better ----------------------------------------------------------------------- */

/* What counts of a lay, the first first; the less the better. */
typedef struct
{
  double unlaid_mm2, bought_mm2, length_mm;
} Cost;

static Cost
cost_of (const SqLayTask *task, const SqLay *lay)
{
  Cost cost = { 0, 0, 0 };

  for (guint i = 0; i < lay->unlaid->len; i++)
    {
      const SqUnlaid *unlaid = &g_array_index (lay->unlaid, SqUnlaid, i);
      const SqLayItem *item = sq_lay_task_item (task, unlaid->item);
      cost.unlaid_mm2 += unlaid->count * sq_grid_rings_area_mm2 (item->rings, item->n_rings);
    }
  for (guint i = 0; i < task->strips->len; i++)
    {
      const SqLayStrip *strip = sq_lay_task_strip (task, i);
      gint32 laid = sq_lay_length (lay, i);
      gint32 bought = strip->kind == SQ_STRIP_REMNANT             ? 0
                      : strip->kind == SQ_STRIP_ROLL || laid == 0 ? laid
                                                                  : sq_lay_strip_end (strip);
      cost.bought_mm2 += (bought / SQ_GRID_PER_MM) * (strip->width / SQ_GRID_PER_MM);
      cost.length_mm += laid / SQ_GRID_PER_MM;
    }
  return cost;
}

static int
compare_costs (const Cost *a, const Cost *b)
{
  if (a->unlaid_mm2 != b->unlaid_mm2)
    return a->unlaid_mm2 < b->unlaid_mm2 ? -1 : 1;
  if (a->bought_mm2 != b->bought_mm2)
    return a->bought_mm2 < b->bought_mm2 ? -1 : 1;
  return (a->length_mm > b->length_mm) - (a->length_mm < b->length_mm);
}

int
sq_lay_compare (const SqLayTask *task, const SqLay *a, const SqLay *b)
{
  Cost cost_a = cost_of (task, a), cost_b = cost_of (task, b);
  return compare_costs (&cost_a, &cost_b);
}

/* ---- the search ---------------------------------------------------------------------------- */

typedef struct
{
  const SqLayTask *task;
  SqLayKinds *kinds;
  const SqTask *watch;
  void (*better) (gpointer data, const SqLay *lay);
  gpointer data;
  guint n_first; /* how many orders by size make the first lay */
  guint64 chance;
  SqLay *best;
  GArray *order; /* that gave the best, or the first */
} Search;

/* Takes @lay and @order, and keeps them if they are no worse. */
static void
offer (Search *search, SqLay *lay, GArray *order)
{
  if (search->best == NULL || sq_lay_compare (search->task, lay, search->best) <= 0)
    {
      g_clear_pointer (&search->best, sq_lay_unref);
      g_clear_pointer (&search->order, g_array_unref);
      search->best = sq_lay_ref (lay);
      search->order = g_array_ref (order);
      if (search->better != NULL)
        search->better (search->data, lay);
    }
  sq_lay_unref (lay);
  g_array_unref (order);
}

/* Takes @order. FALSE if it was stopped. */
static gboolean
lay_order (Search *search, GArray *order, double from, double to)
{
  SqLay *lay = sq_lay_first (search->kinds, order, search->watch, from, to);

  if (lay != NULL)
    offer (search, lay, order);
  else
    g_array_unref (order);
  return lay != NULL;
}

/* The order to try in @step: the rest of those by size in turn, then what chance makes of the
 * best. */
static GArray *
next_order (Search *search, guint64 step)
{
  if (step < SQ_N_LAY_SORTS - search->n_first)
    return sq_lay_order_new (search->kinds, (SqLaySort) (search->n_first + step));
  return sq_lay_order_shuffled (search->order, &search->chance);
}

/* The best lay before any steps: the first, or what @warm gives; FALSE if it was stopped. */
static gboolean
begin (Search *search, const SqLay *warm, double to)
{
  double each = to / (search->n_first + (warm != NULL)), from = 0;

  if (warm != NULL)
    {
      GArray *as_warm = sq_lay_order_new_as (search->kinds, warm);
      if (sq_lay_is_valid (search->task, warm))
        offer (search, sq_lay_ref (warm), g_array_ref (as_warm));
      if (!lay_order (search, as_warm, 0, each))
        return FALSE;
      from = each;
    }
  for (guint i = 0; i < search->n_first; i++, from += each)
    if (!lay_order (search, sq_lay_order_new (search->kinds, (SqLaySort) i), from, from + each))
      return FALSE;
  return TRUE;
}

/* @lay as found with @seed in @steps steps; takes it. */
static SqLay *
signed_with (SqLay *lay, guint64 seed, guint64 steps)
{
  SqLay *result = g_new0 (SqLay, 1);

  *result = (SqLay){ .ref_count = 1,
                     .placed = g_array_ref (lay->placed),
                     .unlaid = g_array_ref (lay->unlaid),
                     .lengths = g_array_ref (lay->lengths),
                     .task_digest = lay->task_digest,
                     .seed = seed,
                     .steps = steps };
  sq_lay_unref (lay);
  return result;
}

SqLay *
sq_lay_run (const SqLayTask *task, const SqLay *warm, const SqLayBudget *budget,
            const SqLayWatch *watch)
{
  g_return_val_if_fail (task->digest != 0, NULL);

  g_autoptr (SqLayKinds) kinds = sq_lay_kinds_new (task);
  Search search = { .task = task,
                    .kinds = kinds,
                    .watch = watch != NULL ? &watch->task : NULL,
                    .n_first = sq_lay_n_pieces (kinds) <= FEW_PIECES ? SQ_N_LAY_SORTS : 1,
                    .chance = budget->seed,
                    .better = watch != NULL ? watch->better : NULL,
                    .data = watch != NULL ? watch->task.data : NULL };
  double share = 1.0 / ((double) budget->steps + 1);
  guint64 step = 0;

  if (!begin (&search, warm, share))
    g_clear_pointer (&search.best, sq_lay_unref);
  for (; search.best != NULL && step < budget->steps; step++)
    {
      double from = share * ((double) step + 1);
      if (!lay_order (&search, next_order (&search, step), from, from + share))
        break;
    }
  g_clear_pointer (&search.order, g_array_unref);
  if (search.best != NULL)
    return signed_with (search.best, budget->seed, step);
  return warm != NULL && sq_lay_is_valid (task, warm) ? sq_lay_ref (warm) : NULL;
}
