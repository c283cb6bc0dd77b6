/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "roll/lay-run.h"

#include "roll/lay-boxes.h"
#include "roll/lay-cost.h"
#include "roll/lay-search.h"
#include "roll/lay-spots.h"
#include "roll/lay-warm.h"
#include "roll/lay-ways.h"

/* So few are laid at once by every size there is, and the best lay is the first: it takes no longer
 * than one of more pieces. */
#define FEW_PIECES 32

/* So many attempts may be under way at once: one begins only when the one so many before it is
 * done, whatever the number of threads. */
#define WINDOW 4

/* What an attempt takes off the length: of the lay, at most, and where it gives up halving. */
#define MOST_SHRINK 0.04
#define LEAST_SHRINK 0.0004

/* Lays that did not come out and are near to it. */
#define POOL 6

static const SqLayEffort effort = { .patience = 60, .strikes = 2 };

/* ---- a run --------------------------------------------------------------------------------- */

/* A lay that did not come out. */
typedef struct
{
  GArray *spots;
  double loss;
  guint64 number; /* of the attempt */
} Near;

/* Attempt number of an age; an age ends when one comes out, as the next begin from what that
 * found. What an attempt does follows from its number, the age's lay and the attempts that were done
 * when it might begin. */
typedef struct
{
  guint64 age, number, seed;
  GArray *spots;      /* to begin from; NULL: lay in order */
  gint32 *ends;       /* to make room within */
  double shrink;      /* what that takes off */
  SqLayTrack track;   /* of a lay in order: to begin from, then how far it came */
  guint64 way_number; /* of the attempts at a lay in order, of all ages */
  SqLay *lay;         /* what came out; NULL: nothing better */
  double loss;        /* how far it was from that */
  gboolean is_done;
} Attempt;

typedef struct
{
  const SqLayTask *task;
  const SqLayBudget *budget;
  const SqLayWatch *watch;
  SqLayKinds *kinds;
  SqLayWorld *world; /* NULL: lays are sought by changing the order */
  SqLayWay way;      /* in which lays are made in an order */

  GMutex lock; /* of all that follows */
  GCond changed;
  SqLay *best;
  GArray *order;             /* that gave the first */
  GArray *spots;             /* of the best */
  double shrink;             /* that the age's first attempt tries */
  guintptr age;              /* atomic, as it is asked while attempts are made */
  guint64 next, done;        /* attempts of the age: to be begun, and done before which all are */
  guint64 before;            /* attempts of earlier ages */
  SqLayTrack tracks[WINDOW]; /* of lays in order: attempts so many apart go on in the same one, as
                                the earlier is done when the later may begin */
  Attempt *window[WINDOW];
  GArray *pool;  /* of Near, the nearest first, of this age */
  GArray *fresh; /* of Near, by number: what may not be begun from yet */
  guint64 steps;
  gint is_over; /* atomic */
} Run;

static void
attempt_free (Attempt *attempt)
{
  g_clear_pointer (&attempt->spots, g_array_unref);
  sq_lay_track_clear (&attempt->track);
  g_clear_pointer (&attempt->lay, sq_lay_unref);
  g_free (attempt->ends);
  g_free (attempt);
}

static gboolean
is_stopped (const Run *run)
{
  const SqTask *task = run->watch != NULL ? &run->watch->task : NULL;
  return task != NULL && task->is_cancelled != NULL && task->is_cancelled (task->data);
}

static void
publish (Run *run)
{
  if (run->watch != NULL && run->watch->better != NULL)
    run->watch->better (run->watch->task.data, run->best);
}

static void
clear_near (gpointer data)
{
  g_array_unref (((Near *) data)->spots);
}

/* ---- an attempt ---------------------------------------------------------------------------- */

static guint64
mixed (guint64 seed, guint64 age, guint64 number)
{
  guint64 chance = seed ^ (age * G_GUINT64_CONSTANT (0x9e3779b97f4a7c15))
                   ^ (number * G_GUINT64_CONSTANT (0xc2b2ae3d27d4eb4f));
  return sq_lay_chance (&chance);
}

static GArray *
copy_of (const GArray *array, guint element)
{
  GArray *copy = g_array_sized_new (FALSE, FALSE, element, array->len);
  g_array_append_vals (copy, array->data, array->len);
  return copy;
}

/* Attempt @number may begin from what those did that were done before it might begin, on however many
 * threads. */
static void
pool_fresh (Run *run, guint64 number)
{
  while (run->fresh->len > 0 && g_array_index (run->fresh, Near, 0).number + WINDOW <= number)
    {
      Near near = g_array_index (run->fresh, Near, 0);
      guint at = run->pool->len;
      while (at > 0 && g_array_index (run->pool, Near, at - 1).loss > near.loss)
        at--;
      g_array_ref (near.spots);
      g_array_insert_val (run->pool, at, near);
      g_array_remove_index (run->fresh, 0);
      if (run->pool->len > POOL)
        g_array_set_size (run->pool, POOL);
    }
}

/* Number @number of its age: halving what is taken off until that is little; from then on by turns
 * from another cut, with two pieces swapped, or from what nearly came out. */
static void
plan_separation (Run *run, Attempt *attempt, guint64 number)
{
  guint open = sq_lay_open_strip (run->task, run->best);
  guint64 halvings = 0;
  double shrink = run->shrink;

  while (halvings < number && shrink > LEAST_SHRINK)
    {
      shrink /= 2;
      halvings++;
    }
  guint64 later = number - halvings;
  attempt->shrink = MAX (shrink, LEAST_SHRINK);
  attempt->ends = sq_lay_ends_new (run->task, run->best, attempt->shrink);
  gint32 laid = sq_lay_length (run->best, open), by = laid - attempt->ends[open];
  pool_fresh (run, attempt->number);
  if (later % 3 == 2 && run->pool->len > 0)
    {
      guint64 chance = attempt->seed;
      double drawn = (double) (sq_lay_chance (&chance) >> 11) / 9007199254740992.0;
      const Near *near = &g_array_index (run->pool, Near, (guint) (drawn * drawn * run->pool->len));
      attempt->spots = copy_of (near->spots, sizeof (SqLaySpot));
      sq_lay_search_swap (run->world, attempt->spots, attempt->seed);
      return;
    }
  attempt->spots = copy_of (run->spots, sizeof (SqLaySpot));
  sq_lay_spots_cut_out (run->kinds, attempt->spots, open, laid, by,
                        later == 0 && number == 0 ? 0 : attempt->seed);
  if (later % 3 == 1)
    sq_lay_search_swap (run->world, attempt->spots, attempt->seed);
}

/* Whether attempt @number of the run, of all ages, is a lay in order: of boxes every second one is. */
static gboolean
is_in_order (const Run *run, guint64 number)
{
  return run->world == NULL || (run->way == SQ_LAY_BY_BOXES && number % 2 != 0);
}

static Attempt *
plan_attempt (Run *run)
{
  Attempt *attempt = g_new0 (Attempt, 1);

  attempt->age = run->age;
  attempt->number = run->next++;
  attempt->seed = mixed (run->budget->seed, attempt->age, attempt->number);
  guint64 number = run->before + attempt->number, n_ways = run->world != NULL ? 2 : 1;
  if (is_in_order (run, number))
    {
      attempt->track = sq_lay_track_copy (&run->tracks[number % WINDOW]);
      attempt->way_number = number / n_ways;
    }
  else if (run->way == SQ_LAY_BY_BOXES)
    plan_separation (run, attempt, (number + 1) / 2 - (run->before + 1) / 2);
  else
    plan_separation (run, attempt, attempt->number);
  return attempt;
}

/* What an attempt asks while it is made. */
typedef struct
{
  Run *run;
  Attempt *attempt;
} Asking;

static gboolean
is_vain (gpointer data)
{
  const Asking *asking = data;

  if (g_atomic_int_get (&asking->run->is_over))
    return TRUE;
  if (is_stopped (asking->run))
    {
      g_atomic_int_set (&asking->run->is_over, TRUE);
      return TRUE;
    }
  return g_atomic_pointer_get (&asking->run->age) != asking->attempt->age;
}

/* Not locked. */
static void
make_attempt (Run *run, Attempt *attempt, const SqLay *best)
{
  Asking asking = { run, attempt };
  SqTask watch = { is_vain, NULL, &asking };

  if (attempt->spots == NULL)
    {
      if (sq_lay_way_attempt (run->kinds, run->way, attempt->way_number, attempt->seed,
                              &attempt->track, &watch))
        attempt->lay = sq_lay_ref (attempt->track.lay);
    }
  else if (sq_lay_search_separate (run->world, attempt->spots, attempt->ends, attempt->seed, effort,
                                   is_vain, &asking, &attempt->loss))
    {
      sq_lay_search_compact (run->world, attempt->spots, attempt->ends);
      attempt->lay = sq_lay_spots_to_lay (run->kinds, attempt->spots, best);
    }
  if (attempt->lay != NULL
      && (sq_lay_compare (run->task, attempt->lay, best) >= 0
          || !sq_lay_is_valid (run->task, attempt->lay)))
    g_clear_pointer (&attempt->lay, sq_lay_unref);
}

/* Whether no lay can be shorter: its pieces fill the strip, or one alone is as long. */
static gboolean
is_shortest (const Run *run)
{
  const SqLayTask *task = run->task;
  const SqLay *best = run->best;
  double area_mm2 = 0;
  gint32 longest = 0;

  if (task->strips->len != 1 || best->unlaid->len > 0)
    return FALSE;
  for (guint i = 0; i < run->kinds->kinds->len; i++)
    {
      const SqLayKind *kind = sq_lay_kind (run->kinds, i);
      const SqLayItem *item = sq_lay_task_item (task, kind->first);
      gint32 least = kind->count > 0 ? G_MAXINT32 : 0;
      for (guint k = 0; k < kind->n_shapes; k++)
        least = MIN (least, kind->shapes[k]->length);
      longest = MAX (longest, least);
      area_mm2 += kind->count * sq_grid_rings_area_mm2 (item->rings, item->n_rings);
    }
  double filled_um = area_mm2 * SQ_GRID_PER_MM * SQ_GRID_PER_MM
                     / sq_lay_task_strip (task, 0)->width;
  return sq_lay_length (best, 0) <= longest || sq_lay_length (best, 0) < filled_um + 1;
}

/* ---- what comes of it ---------------------------------------------------------------------- */

static void
set_track (Run *run, guint64 number, const SqLayTrack *track)
{
  SqLayTrack *old = &run->tracks[number % WINDOW], copy = sq_lay_track_copy (track);

  sq_lay_track_clear (old);
  *old = copy;
}

static void
begin_age (Run *run, Attempt *attempt)
{
  sq_lay_unref (run->best);
  run->best = sq_lay_ref (attempt->lay);
  run->before += attempt->number + 1;
  for (guint i = 0; i < WINDOW && attempt->spots == NULL; i++)
    set_track (run, i, &attempt->track);
  if (run->world != NULL)
    {
      g_array_unref (run->spots);
      run->spots = sq_lay_spots_new (run->kinds, run->best);
      /* more where the first of the age came out */
      if (attempt->spots != NULL)
        run->shrink = CLAMP (attempt->shrink >= run->shrink ? 2 * attempt->shrink : attempt->shrink,
                             2 * LEAST_SHRINK, MOST_SHRINK);
    }
  g_array_set_size (run->pool, 0);
  g_array_set_size (run->fresh, 0);
  for (guint i = 0; i < WINDOW; i++)
    if (run->window[i] != NULL && run->window[i]->is_done)
      g_clear_pointer (&run->window[i], attempt_free);
    else
      run->window[i] = NULL; /* whoever makes it frees it */
  run->next = run->done = 0;
  g_atomic_pointer_set (&run->age, run->age + 1);
  publish (run);
  if (is_shortest (run))
    g_atomic_int_set (&run->is_over, TRUE);
}

static void
keep_near (Run *run, Attempt *attempt)
{
  Near near = { attempt->spots, attempt->loss, attempt->number };

  if (attempt->spots == NULL || attempt->loss >= G_MAXDOUBLE)
    return;
  g_array_ref (near.spots);
  g_array_append_val (run->fresh, near);
}

/* Takes what attempts have found, in the order of their numbers. */
static void
commit (Run *run)
{
  for (;;)
    {
      Attempt *attempt = run->window[run->done % WINDOW];
      if (attempt == NULL || !attempt->is_done || run->steps >= run->budget->steps)
        return;
      run->steps++;
      if (attempt->lay != NULL)
        {
          Attempt taken = *attempt;
          taken.lay = sq_lay_ref (attempt->lay);
          begin_age (run, attempt);
          sq_lay_unref (taken.lay);
          return;
        }
      if (attempt->spots == NULL)
        set_track (run, run->before + attempt->number, &attempt->track);
      keep_near (run, attempt);
      run->window[run->done % WINDOW] = NULL;
      attempt_free (attempt);
      run->done++;
    }
}

static gpointer
work (gpointer data)
{
  Run *run = data;

  g_mutex_lock (&run->lock);
  while (!g_atomic_int_get (&run->is_over))
    {
      if (run->steps >= run->budget->steps)
        break;
      if (run->next >= run->done + WINDOW || run->window[run->next % WINDOW] != NULL)
        {
          g_cond_wait (&run->changed, &run->lock);
          continue;
        }
      guint slot = run->next % WINDOW;
      Attempt *attempt = plan_attempt (run);
      g_autoptr (SqLay) best = sq_lay_ref (run->best);
      run->window[slot] = attempt;
      g_mutex_unlock (&run->lock);
      make_attempt (run, attempt, best);
      g_mutex_lock (&run->lock);
      attempt->is_done = TRUE;
      if (attempt->age != run->age || g_atomic_int_get (&run->is_over))
        {
          if (run->window[slot] == attempt)
            run->window[slot] = NULL;
          attempt_free (attempt);
        }
      else
        commit (run);
      g_cond_broadcast (&run->changed);
    }
  g_cond_broadcast (&run->changed);
  g_mutex_unlock (&run->lock);
  return NULL;
}

/* ---- the first ----------------------------------------------------------------------------- */

/* Takes @lay and @order, and keeps them if they are no worse. */
static void
offer (Run *run, SqLay *lay, GArray *order)
{
  if (run->best == NULL || sq_lay_compare (run->task, lay, run->best) <= 0)
    {
      g_clear_pointer (&run->best, sq_lay_unref);
      g_clear_pointer (&run->order, g_array_unref);
      run->best = sq_lay_ref (lay);
      run->order = g_array_ref (order);
    }
  sq_lay_unref (lay);
  g_array_unref (order);
}

/* Takes @order. FALSE if it was stopped. */
static gboolean
lay_order (Run *run, GArray *order, double from, double to)
{
  const SqTask *watch = run->watch != NULL ? &run->watch->task : NULL;
  SqLayWay way = sq_lay_way_first (run->kinds);
  SqLay *lay = sq_lay_by_way (run->kinds, order, way, 0, watch, from, to);

  if (lay != NULL)
    offer (run, lay, order);
  else
    g_array_unref (order);
  return lay != NULL;
}

/* Boxes as they fit best, where that is better. FALSE if it was stopped. */
static gboolean
lay_boxes (Run *run)
{
  g_autoptr (GArray) order = sq_lay_order_new (run->kinds, SQ_LAY_BY_AREA);
  SqLay *lay = sq_lay_by_way (run->kinds, order, SQ_LAY_BY_BOXES, SQ_LAY_BOX_RULE_BEST_FIT,
                              run->watch != NULL ? &run->watch->task : NULL, 1, 1);

  if (lay == NULL)
    return FALSE;
  if (sq_lay_compare (run->task, lay, run->best) < 0)
    offer (run, sq_lay_ref (lay), g_array_ref (order));
  sq_lay_unref (lay);
  return TRUE;
}

/* What keeps the pieces where they lie in @warm takes the place of the best, though it may be a
 * little longer: a roll is not shuffled for a hand's breadth. */
static void
keep_warm (Run *run, const SqLay *warm)
{
  const SqTask *watch = run->watch != NULL ? &run->watch->task : NULL;
  SqLay *kept = sq_lay_is_valid (run->task, warm)
                    ? NULL
                    : sq_lay_warm (run->kinds, warm, run->best, watch);

  if (kept == NULL)
    return;
  sq_lay_unref (run->best);
  run->best = kept;
}

/* The best lay before any steps: the first, or what @warm gives; FALSE if it was stopped. */
static gboolean
begin (Run *run, const SqLay *warm)
{
  guint n_first = sq_lay_n_pieces (run->kinds) <= FEW_PIECES ? SQ_N_LAY_SORTS : 1;
  double each = 1.0 / (n_first + (warm != NULL)), from = 0;

  if (warm != NULL && sq_lay_is_valid (run->task, warm))
    offer (run, sq_lay_ref (warm), sq_lay_order_new_as (run->kinds, warm));
  else if (warm != NULL && run->task->straight)
    {
      if (!lay_order (run, sq_lay_order_new_as (run->kinds, warm), 0, each))
        return FALSE;
      from = each;
    }
  for (guint i = 0; i < n_first; i++, from += each)
    {
      SqLaySort sort = n_first > 1 ? (SqLaySort) i : sq_lay_sort_first (run->kinds);
      if (!lay_order (run, sq_lay_order_new (run->kinds, sort), from, from + each))
        return FALSE;
    }
  if (run->way == SQ_LAY_BY_BOXES && !lay_boxes (run))
    return FALSE;
  if (warm != NULL && !run->task->straight)
    keep_warm (run, warm);
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

static void
improve (Run *run)
{
  guint n = CLAMP (run->budget->threads, 1, WINDOW);
  GThread *threads[WINDOW];

  run->spots = sq_lay_spots_new (run->kinds, run->best);
  run->world = run->task->straight ? NULL : sq_lay_world_new (run->kinds, run->spots);
  run->shrink = MOST_SHRINK / 2;
  SqLayTrack track = { run->order, 0, run->way == SQ_LAY_BY_BOXES ? NULL : run->best };
  for (guint i = 0; i < WINDOW; i++)
    run->tracks[i] = sq_lay_track_copy (&track);
  for (guint i = 1; i < n; i++)
    threads[i] = g_thread_new ("lay", work, run);
  work (run);
  for (guint i = 1; i < n; i++)
    g_thread_join (threads[i]);
  for (guint i = 0; i < WINDOW; i++)
    {
      g_clear_pointer (&run->window[i], attempt_free);
      sq_lay_track_clear (&run->tracks[i]);
    }
  g_clear_pointer (&run->world, sq_lay_world_free);
  g_array_unref (run->spots);
}

SqLay *
sq_lay_run (const SqLayTask *task, const SqLay *warm, const SqLayBudget *budget,
            const SqLayWatch *watch)
{
  g_return_val_if_fail (task->digest != 0, NULL);

  g_autoptr (SqLayKinds) kinds = sq_lay_kinds_new (task);
  Run run = { .task = task, .kinds = kinds, .budget = budget, .watch = watch };

  run.way = sq_lay_way (kinds);
  if (!begin (&run, warm))
    g_clear_pointer (&run.best, sq_lay_unref);
  else
    publish (&run);
  if (run.best != NULL && budget->steps > 0 && !is_shortest (&run))
    {
      run.pool = g_array_new (FALSE, FALSE, sizeof (Near));
      g_array_set_clear_func (run.pool, clear_near);
      run.fresh = g_array_new (FALSE, FALSE, sizeof (Near));
      g_array_set_clear_func (run.fresh, clear_near);
      g_mutex_init (&run.lock);
      g_cond_init (&run.changed);
      improve (&run);
      g_mutex_clear (&run.lock);
      g_cond_clear (&run.changed);
      g_array_unref (run.pool);
      g_array_unref (run.fresh);
    }
  g_clear_pointer (&run.order, g_array_unref);
  if (run.best != NULL)
    return signed_with (run.best, budget->seed, run.steps);
  return warm != NULL && sq_lay_is_valid (task, warm) ? sq_lay_ref (warm) : NULL;
}
