/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "roll/lay-cost.h"

/* What counts of a lay, the first first; the less the better. */
typedef struct
{
  double bought_mm2, length_mm;
} Cost;

/* Of what is not laid, that of one priority. */
static double
unlaid_mm2 (const SqLayTask *task, const SqLay *lay, gint priority)
{
  double area = 0;

  for (guint i = 0; i < lay->unlaid->len; i++)
    {
      const SqUnlaid *unlaid = &g_array_index (lay->unlaid, SqUnlaid, i);
      const SqLayItem *item = sq_lay_task_item (task, unlaid->item);
      if (item->priority == priority)
        area += unlaid->count * sq_grid_rings_area_mm2 (item->rings, item->n_rings);
    }
  return area;
}

/* The least priority at which not as much is laid in the one as in the other decides. */
static int
compare_unlaid (const SqLayTask *task, const SqLay *a, const SqLay *b)
{
  int result = 0;
  gint decided = G_MAXINT, last = 0;
  const GArray *both[] = { a->unlaid, b->unlaid };

  for (guint side = 0; side < 2; side++)
    for (guint i = 0; i < both[side]->len; i++)
      {
        guint item = g_array_index (both[side], SqUnlaid, i).item;
        gint priority = sq_lay_task_item (task, item)->priority;
        if (i > 0 && priority == last)
          continue;
        last = priority;
        double in_a = unlaid_mm2 (task, a, priority), in_b = unlaid_mm2 (task, b, priority);
        if (in_a != in_b && (result == 0 || priority < decided))
          {
            decided = priority;
            result = in_a < in_b ? -1 : 1;
          }
      }
  return result;
}

static Cost
cost_of (const SqLayTask *task, const SqLay *lay)
{
  Cost cost = { 0, 0 };

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
  if (a->bought_mm2 != b->bought_mm2)
    return a->bought_mm2 < b->bought_mm2 ? -1 : 1;
  return (a->length_mm > b->length_mm) - (a->length_mm < b->length_mm);
}

int
sq_lay_compare (const SqLayTask *task, const SqLay *a, const SqLay *b)
{
  Cost cost_a = cost_of (task, a), cost_b = cost_of (task, b);
  int unlaid = compare_unlaid (task, a, b);

  return unlaid != 0 ? unlaid : compare_costs (&cost_a, &cost_b);
}
