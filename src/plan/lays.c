/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "plan/lays.h"

#include "base/units.h"
#include "plan/kept-lays.h"
#include "plan/lay-tasks.h"
#include "roll/lay-piece.h"

/* So many attempts make a first lay for straight cuts as good as one for free ones is at once; of 50
 * pieces they take some 14 ms. */
#define STRAIGHT_STEPS 2

static void
clear_cloth (gpointer data)
{
  SqClothLay *cloth = data;

  g_clear_pointer (&cloth->task, sq_lay_task_unref);
  g_clear_pointer (&cloth->lay, sq_lay_unref);
  g_clear_pointer (&cloth->plies, sq_plies_unref);
  for (guint k = 0; k < 2; k++)
    {
      g_clear_pointer (&cloth->by_cuts[k].task, sq_lay_task_unref);
      g_clear_pointer (&cloth->by_cuts[k].lay, sq_lay_unref);
    }
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

/* The same shapes for the same lines of the cut list. */
static gboolean
same_task (const SqLayTask *a, const SqLayTask *b)
{
  if (a->digest != b->digest || a->items->len != b->items->len)
    return FALSE;
  for (guint i = 0; i < a->items->len; i++)
    if (sq_lay_task_item (a, i)->tag != sq_lay_task_item (b, i)->tag)
      return FALSE;
  return TRUE;
}

/* What lays are made from; either may be NULL. */
typedef struct
{
  const SqLays *before; /* to share lays with */
  const SqLays *warm;   /* to begin from */
} Sources;

/* A lay of @task in @before: the same that is kept, or found with @budget; or NULL. */
static const SqLay *
same_lay (const SqLays *before, const SqClothLay *cloth, const SqLayTask *task,
          const SqLayBudget *budget, gboolean is_kept)
{
  for (guint i = 0; before != NULL && i < before->cloths->len; i++)
    {
      const SqClothLay *old = sq_lays_cloth (before, i);
      if (old->is_kept == is_kept && !old->is_given && same_task (old->task, task)
          && (is_kept
                  ? old->kept == cloth->kept
                  : before->budget.seed == budget->seed && before->budget.steps == budget->steps))
        return old->lay;
    }
  return NULL;
}

/* A first lay of @task in @before, or NULL. */
static const SqLay *
same_first (const SqLays *before, const SqLayTask *task, const SqLayBudget *budget)
{
  for (guint i = 0; before != NULL && i < before->cloths->len; i++)
    for (guint k = 0; k < 2; k++)
      {
        const SqCutsLay *old = &sq_lays_cloth (before, i)->by_cuts[k];
        if (old->lay != NULL && !old->is_given && before->budget.seed == budget->seed
            && same_task (old->task, task))
          return old->lay;
      }
  return NULL;
}

static const SqClothLay *
same_cloth (const SqLays *lays, SqId cloth)
{
  for (guint i = 0; lays != NULL && i < lays->cloths->len; i++)
    if (sq_lays_cloth (lays, i)->cloth == cloth)
      return sq_lays_cloth (lays, i);
  return NULL;
}

/* NULL if it was stopped. */
static SqLay *
run (const SqLayTask *task, const SqLay *warm, const SqLayBudget *budget, const SqTask *watch)
{
  SqLayWatch lay_watch = { watch != NULL ? *watch : (SqTask){ NULL, NULL, NULL }, NULL };

  return sq_lay_run (task, warm, budget, &lay_watch);
}

/* ---- straight cuts or free ones ------------------------------------------------------------ */

/* What becomes of the lay that @old has for such cuts; of the same task it is taken as it is. */
static SqLay *
lay_begun (const SqCutsLay *own, const SqClothLay *old, const SqLayBudget *budget,
           const SqTask *watch)
{
  guint k = own->task->straight ? 1 : 0;
  const SqCutsLay *same = &old->by_cuts[k];

  if (same->lay != NULL && same_task (same->task, own->task))
    return sq_lay_ref (same->lay);
  return run (own->task, sq_cloth_lay_cuts (old) == k ? old->lay : same->lay, budget, watch);
}

/* FALSE if it was stopped. */
static gboolean
lay_for (SqLays *lays, SqCutsLay *own, const SqClothLay *old, const SqLays *before,
         const SqTask *watch)
{
  const SqLayBudget first = { .seed = lays->budget.seed,
                              .steps = own->task->straight ? STRAIGHT_STEPS : 0,
                              .threads = lays->budget.threads };
  const SqLay *same = same_first (before, own->task, &first);

  if (old != NULL)
    own->lay = lay_begun (own, old, &first, watch);
  else
    own->lay = same != NULL ? sq_lay_ref (same) : run (own->task, NULL, &first, watch);
  own->is_given = old != NULL;
  if (own->lay != NULL)
    own->purchase = sq_plan_purchase (lays->plan, own->task, own->lay);
  return own->lay != NULL;
}

static guint
n_pieces (const SqLayTask *task)
{
  guint n = 0;

  for (guint i = 0; i < task->items->len; i++)
    n += sq_lay_task_item (task, i)->demand;
  return n;
}

/* Lays @cloth in both ways, where both are wanted, and has it be the one that is worth it. FALSE if it
 * was stopped. */
static gboolean
choose_cuts (SqLays *lays, SqClothLay *cloth, const Sources *from, const SqTask *watch)
{
  const SqTask quiet = { watch != NULL ? watch->is_cancelled : NULL, NULL,
                         watch != NULL ? watch->data : NULL };
  gboolean both = sq_cuts_want_both (lays->plan, n_pieces (cloth->by_cuts[0].task));

  for (guint k = 0; k < 2 && both; k++)
    if (!lay_for (lays, &cloth->by_cuts[k], same_cloth (from->warm, cloth->cloth), from->before,
                  &quiet))
      return FALSE;
  if (cloth->task == NULL)
    {
      guint k = sq_cuts_are_straight (lays->plan, cloth->by_cuts);
      cloth->task = sq_lay_task_ref (cloth->by_cuts[k].task);
    }
  return TRUE;
}

/* ---- a cloth ------------------------------------------------------------------------------- */

/* Takes the kept lay where it is one of either task. */
static void
find_kept (const SqLays *lays, SqClothLay *cloth, const SqLays *before)
{
  for (guint k = 0; k < 2 && cloth->kept != NULL && cloth->lay == NULL; k++)
    {
      SqLayTask *task = cloth->by_cuts[k].task;
      const SqLay *same = same_lay (before, cloth, task, &lays->budget, TRUE);
      cloth->lay = same != NULL ? sq_lay_ref (same)
                                : sq_kept_lay_found (cloth->kept, lays->plan, task);
      cloth->is_kept = cloth->lay != NULL;
      if (cloth->is_kept)
        cloth->task = sq_lay_task_ref (task);
    }
}

/* The lay of the same cloth in @warm; of the same task it is taken as it is. */
static void
find_warm (const SqLays *lays, SqClothLay *cloth, const SqLays *warm, const SqTask *watch)
{
  const SqClothLay *old = same_cloth (warm, cloth->cloth);
  const SqCutsLay *own = &cloth->by_cuts[sq_cloth_lay_cuts (cloth)];

  if (old != NULL && same_task (old->task, cloth->task))
    cloth->lay = sq_lay_ref (old->lay);
  else if (own->lay != NULL && lays->budget.steps <= own->lay->steps)
    cloth->lay = sq_lay_ref (own->lay);
  else
    cloth->lay = run (cloth->task, old != NULL ? old->lay : NULL, &lays->budget, watch);
  cloth->is_given = old != NULL;
}

static void
find (const SqLays *lays, SqClothLay *cloth, const Sources *from, const SqTask *watch)
{
  const SqCutsLay *own = &cloth->by_cuts[sq_cloth_lay_cuts (cloth)];
  const SqLay *same = same_lay (from->before, cloth, cloth->task, &lays->budget, FALSE);

  if (from->warm != NULL)
    find_warm (lays, cloth, from->warm, watch);
  else if (same != NULL)
    cloth->lay = sq_lay_ref (same);
  else if (own->lay != NULL && lays->budget.steps <= own->lay->steps)
    cloth->lay = sq_lay_ref (own->lay);
  else
    cloth->lay = run (cloth->task, NULL, &lays->budget, watch);
}

static gboolean
same_plies (const SqJob *a, const SqJob *b)
{
  return a->laying.most_plies == b->laying.most_plies && a->laying.table_mm == b->laying.table_mm
         && a->units == b->units && sq_job_rate (a, SQ_RATE_CUT) == sq_job_rate (b, SQ_RATE_CUT);
}

/* Those of the same cloth in @before, where they are the same. */
static SqPlies *
find_plies (const SqLays *lays, const SqClothLay *cloth, const SqLays *before, const SqTask *watch)
{
  for (guint i = 0; before != NULL && i < before->cloths->len; i++)
    {
      const SqClothLay *old = sq_lays_cloth (before, i);
      if (old->plies != NULL && same_task (old->task, cloth->task)
          && same_plies (before->plan->job, lays->plan->job))
        return sq_plies_ref (old->plies);
    }
  return sq_plies_new (lays->plan, cloth->cloth, watch);
}

/* FALSE if it was stopped. */
static gboolean
add_cloth (SqLays *lays, SqId id, const Sources *from, const SqTask *watch)
{
  const SqLays *shared = from->warm != NULL ? from->warm : from->before;
  SqClothLay cloth = {
    .cloth = id,
    .by_cuts = { { .task = sq_plan_lay_task_otherwise (lays->plan, id, SQ_LAY_FREE) },
                 { .task = sq_plan_lay_task_otherwise (lays->plan, id, SQ_LAY_STRAIGHT) } },
    .kept = sq_job_kept_lay (lays->plan->job, id)
  };

  find_kept (lays, &cloth, shared);
  if (choose_cuts (lays, &cloth, from, watch) && !cloth.is_kept)
    find (lays, &cloth, from, watch);
  if (cloth.lay != NULL && sq_job_has_plies (lays->plan->job))
    cloth.plies = find_plies (lays, &cloth, shared, watch);
  if (cloth.lay == NULL || (cloth.plies == NULL && sq_job_has_plies (lays->plan->job)))
    {
      clear_cloth (&cloth);
      return FALSE;
    }
  cloth.purchase = sq_plan_purchase (lays->plan, cloth.task, cloth.lay);
  g_array_append_val (lays->cloths, cloth);
  return sq_task_step (watch, 1);
}

static SqLays *
new_lays (const SqPlan *plan, const SqLayBudget *budget)
{
  SqLays *lays = g_new0 (SqLays, 1);

  lays->ref_count = 1;
  lays->plan = sq_plan_ref (plan);
  lays->budget = *budget;
  lays->cloths = g_array_new (FALSE, FALSE, sizeof (SqClothLay));
  g_array_set_clear_func (lays->cloths, clear_cloth);
  return lays;
}

/* NULL if it was stopped. */
static SqLays *
make (const SqPlan *plan, const Sources *from, const SqLayBudget *budget, const SqTask *watch)
{
  g_autoptr (SqLays) lays = new_lays (plan, budget);
  Part part = { .watch = watch, .share = 1.0 / MAX (plan->cloths->len, 1) };
  SqTask part_watch = { part_is_cancelled, part_progress, &part };

  for (guint i = 0; i < plan->cloths->len; i++)
    {
      part.from = part.share * i;
      if (!add_cloth (lays, g_array_index (plan->cloths, SqClothTotal, i).cloth, from,
                      watch != NULL ? &part_watch : NULL))
        return NULL;
    }
  const SqLays *shared = from->warm != NULL ? from->warm : from->before;
  lays->foams = sq_foam_lays_new (plan, shared != NULL ? shared->foams : NULL, watch);
  return lays->foams != NULL ? g_steal_pointer (&lays) : NULL;
}

SqLays *
sq_lays_new (const SqPlan *plan, const SqLays *before, const SqLayBudget *budget,
             const SqTask *watch)
{
  return make (plan, &(Sources){ .before = before }, budget, watch);
}

SqLays *
sq_lays_new_from (const SqPlan *plan, const SqLays *warm, const SqLayBudget *budget,
                  const SqTask *watch)
{
  return make (plan, &(Sources){ .warm = warm }, budget, watch);
}

/* Refs for a copy. */
static void
share_by_cuts (SqClothLay *cloth)
{
  for (guint k = 0; k < 2; k++)
    {
      SqCutsLay *own = &cloth->by_cuts[k];
      own->task = sq_lay_task_ref (own->task);
      own->lay = own->lay != NULL ? sq_lay_ref (own->lay) : NULL;
    }
}

SqLays *
sq_lays_with_lay (const SqLays *lays, guint i, const SqLay *lay)
{
  SqLays *next = new_lays (lays->plan, &lays->budget);

  for (guint k = 0; k < lays->cloths->len; k++)
    {
      SqClothLay cloth = *sq_lays_cloth (lays, k);
      cloth.task = sq_lay_task_ref (cloth.task);
      cloth.lay = sq_lay_ref (k == i ? lay : cloth.lay);
      cloth.plies = cloth.plies != NULL ? sq_plies_ref (cloth.plies) : NULL;
      share_by_cuts (&cloth);
      if (k == i)
        {
          cloth.is_kept = FALSE;
          cloth.is_given = TRUE;
          cloth.purchase = sq_plan_purchase (lays->plan, cloth.task, cloth.lay);
        }
      g_array_append_val (next->cloths, cloth);
    }
  next->foams = g_array_ref (lays->foams);
  return next;
}

SqLays *
sq_lays_of_plies (const SqLays *lays)
{
  SqLays *next = new_lays (lays->plan, &lays->budget);

  for (guint i = 0; i < lays->cloths->len; i++)
    {
      const SqClothLay *cloth = sq_lays_cloth (lays, i);
      const SqPlyLay *ply = cloth->plies != NULL ? sq_plies_best (cloth->plies) : NULL;
      SqClothLay of_ply = { .cloth = cloth->cloth,
                            .task = sq_lay_task_ref (ply != NULL ? ply->task : cloth->task),
                            .lay = sq_lay_ref (ply != NULL ? ply->lay : cloth->lay),
                            .is_given = TRUE };
      g_array_append_val (next->cloths, of_ply);
    }
  next->foams = g_array_ref (lays->foams);
  return next;
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
  g_clear_pointer (&lays->foams, g_array_unref);
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

gboolean
sq_lays_is_told (const SqLays *lays, const SqClothLay *cloth, const SqUnlaid *unlaid)
{
  guint line = sq_lay_task_item (cloth->task, unlaid->item)->tag;
  const SqCutEntry *entry = &g_array_index (lays->plan->cut_list, SqCutEntry, line);
  const SqCover *cover = sq_plan_cover (lays->plan, entry->cushion);

  for (guint i = 0; i < cover->problems->len; i++)
    {
      const SqProblem *problem = sq_cover_problem (cover, i);
      if ((problem->code == SQ_PROBLEM_WIDER_THAN_CLOTH
           || problem->code == SQ_PROBLEM_ACROSS_NO_PLACE)
          && problem->place.item == entry->piece)
        return TRUE;
    }
  return FALSE;
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

SqPinned
sq_lays_pinned (const SqLays *lays, const SqPlaced *placed)
{
  return sq_plan_pinned (lays->plan, placed->tag, placed->copy);
}

SqPin
sq_lays_pin (const SqLays *lays, const SqClothLay *cloth, const SqPlaced *placed)
{
  SqPin pin = { .of = sq_lays_pinned (lays, placed),
                .stock = sq_lay_task_strip (cloth->task, placed->strip)->tag };
  double turn_rad;

  sq_lays_place (lays, placed, &turn_rad, &pin.at);
  pin.turn_deg = sq_turn_deg (turn_rad);
  return pin;
}

gboolean
sq_lays_is_pinned (const SqClothLay *cloth, const SqPlaced *placed)
{
  for (guint i = 0; i < cloth->task->pins->len; i++)
    {
      const SqLayPin *pin = &g_array_index (cloth->task->pins, SqLayPin, i);
      if (pin->item == placed->item && pin->copy == placed->copy)
        return TRUE;
    }
  return FALSE;
}

static SqLayFault
pin_fault (const SqLayTask *task, const SqLayPin *pin)
{
  const SqLayItem *item = sq_lay_task_item (task, pin->item);

  if (sq_lay_item_pose (item, pin->pose) == G_MAXUINT)
    return SQ_LAY_POSE;
  SqLayPiece piece = sq_lay_piece (item, pin->pose);
  SqLayFault fault = sq_lay_piece_fault (&piece, item, pin->pose, pin->at,
                                         sq_lay_task_strip (task, pin->strip));
  sq_lay_piece_clear (&piece);
  return fault != SQ_LAY_RIGHT ? fault : SQ_LAY_OVERLAP;
}

const SqCutEntry *
sq_lays_bad_pin (const SqLays *lays, const SqClothLay *cloth, guint i, guint *copy,
                 SqLayFault *fault)
{
  const SqLayPin *pin = &g_array_index (cloth->task->bad_pins, SqLayPin, i);

  *copy = pin->copy;
  *fault = pin_fault (cloth->task, pin);
  return &g_array_index (lays->plan->cut_list, SqCutEntry,
                         sq_lay_task_item (cloth->task, pin->item)->tag);
}

const SqStock *
sq_lays_stock (const SqLays *lays, const SqClothLay *cloth, guint strip)
{
  const SqCloth *own = sq_plan_cloth (lays->plan, cloth->cloth);

  return own != NULL ? sq_cloth_find_stock (own, sq_lay_task_strip (cloth->task, strip)->tag)
                     : NULL;
}

void
sq_lays_place (const SqLays *lays, const SqPlaced *placed, double *turn_rad, SqPoint *at)
{
  *turn_rad = placed->pose.turn * (2 * M_PI / SQ_GRID_WHOLE_TURN)
              - sq_lays_piece (lays, placed)->grain_rad;
  *at = sq_point ((double) placed->at.x / SQ_GRID_PER_MM, (double) placed->at.y / SQ_GRID_PER_MM);
}

SqBox
sq_lays_box (const SqLays *lays, const SqPlaced *placed)
{
  double turn_rad;
  SqPoint at;

  sq_lays_place (lays, placed, &turn_rad, &at);
  g_autoptr (SqPath) cut = sq_path_moved (sq_piece_cut (sq_lays_piece (lays, placed), 0), turn_rad,
                                          at);
  return sq_path_box (cut);
}
