/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "plan/lay-choice.h"

#include "roll/lay-cuts.h"

/* The rule: a small job has so many cushions at most. Cloth that is worth more than the quicker cut, of
 * what is bought (mm). */
#define SMALL_JOB 20
#define WORTH_SHARE 0.03
#define WORTH_MM 250.0

/* Lengths as sold that are nearer to each other are equal. */
#define SAME_MM 0.01

/* So many pieces of one cloth are laid twice only to tell what the other way would take. */
#define MOST_TO_TELL 150

/* ---- what there is to cut ------------------------------------------------------------------ */

static double
length_mm (SqGrid a, SqGrid b)
{
  return hypot ((double) b.x - a.x, (double) b.y - a.y) / SQ_GRID_PER_MM;
}

/* Whether a straight cut along the side of the box is the edge, too. */
static gboolean
is_on_box (SqGrid a, SqGrid b, const SqGridBox *box)
{
  return (a.x == b.x && (a.x == box->min.x || a.x == box->max.x))
         || (a.y == b.y && (a.y == box->min.y || a.y == box->max.y));
}

static double
outline_mm (const SqLayItem *item, SqGridPose pose, gboolean off_box)
{
  SqGridRing *rings = sq_grid_rings_posed (item->rings, item->n_rings, pose);
  SqGridBox box = sq_grid_rings_box (rings, item->n_rings);
  double sum = 0;

  for (guint i = 0; i < item->n_rings; i++)
    for (guint k = 0; k < rings[i].n; k++)
      {
        SqGrid a = rings[i].points[k], b = rings[i].points[(k + 1) % rings[i].n];
        if (!off_box || !is_on_box (a, b, &box))
          sum += length_mm (a, b);
      }
  sq_grid_rings_free (rings, item->n_rings);
  return sum;
}

/* Copies of an item come one after the other, mostly in the same pose. */
SqCutting
sq_lay_cutting (const SqLayTask *task, const SqLay *lay)
{
  SqCutting cutting = { .pieces = lay->placed->len };
  gboolean is_straight = sq_lay_is_straight (task, lay, &cutting.cuts, &cutting.straight_mm);
  const SqPlaced *before = NULL;
  double outline = 0;

  if (!is_straight)
    cutting = (SqCutting){ .pieces = lay->placed->len };
  for (guint i = 0; i < lay->placed->len; i++)
    {
      const SqPlaced *placed = sq_lay_placed (lay, i);
      if (before == NULL || before->item != placed->item
          || !sq_grid_pose_equal (before->pose, placed->pose))
        outline = outline_mm (sq_lay_task_item (task, placed->item), placed->pose, is_straight);
      cutting.outline_mm += outline;
      before = placed;
    }
  return cutting;
}

/* ---- the choice ---------------------------------------------------------------------------- */

static gboolean
is_by_rule (const SqPlan *plan)
{
  return plan->job->laying.cuts == SQ_CUTS_BY_RULE && sq_plan_figures (plan).cushions <= SMALL_JOB;
}

gboolean
sq_cuts_want_both (const SqPlan *plan, guint pieces)
{
  return is_by_rule (plan) || pieces <= MOST_TO_TELL;
}

gboolean
sq_cuts_are_straight (const SqPlan *plan, const SqCutsLay *by_cuts)
{
  const SqCutsLay *free = &by_cuts[0], *straight = &by_cuts[1];

  if (!is_by_rule (plan))
    return plan->job->laying.cuts == SQ_CUTS_STRAIGHT;
  if (straight->task->bad_pins->len > free->task->bad_pins->len)
    return FALSE;
  if (free->purchase.unlaid != straight->purchase.unlaid)
    return straight->purchase.unlaid < free->purchase.unlaid;
  double saved_mm = straight->purchase.buy_mm - free->purchase.buy_mm;
  return saved_mm < WORTH_MM && saved_mm < WORTH_SHARE * straight->purchase.buy_mm + SAME_MM;
}
