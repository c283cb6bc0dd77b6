/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "window/lay-search.h"
#include "roll/lay-cost.h"

/* Where nothing better was found for so long (s), little more is to be expected. */
#define QUIET_S 20.0

/* More threads share one lay to little use; where there are more than two processors, one is left to
 * the hand. */
#define MOST_THREADS 4

typedef struct
{
  SqPlan *plan;
  SqLays *lays; /* what is begun from; NULL: nothing */
  double seconds;
  guint64 seed;
} Start;

static Start *
start_new (const SqPlan *plan, const SqLays *lays)
{
  Start *start = g_new0 (Start, 1);
  start->plan = sq_plan_ref (plan);
  start->lays = lays != NULL ? sq_lays_ref (lays) : NULL;
  return start;
}

static void
start_free (gpointer data)
{
  Start *start = data;
  sq_plan_unref (start->plan);
  sq_lays_unref (start->lays);
  g_free (start);
}

static gpointer
lay_first (SqBackground *background, gpointer data, const SqTask *watch)
{
  const Start *start = data;
  const SqLayBudget first = { .seed = 1 };
  (void) background;
  return sq_lays_new_from (start->plan, start->lays, &first, watch);
}

/* --- better ---------------------------------------------------------------------------------- */

/* The search for a better lay of one cloth. */
typedef struct
{
  SqBackground *background;
  const SqTask *watch;
  SqLays *best; /* changed by one thread at a time */
  guint cloth;
  gint64 begun_us, longest_us;
  gint better_ms; /* when the last better one was found, from its beginning; atomic */
} Search;

static gboolean
is_over (gpointer data)
{
  Search *search = data;
  gint64 us = g_get_monotonic_time () - search->begun_us;
  gint64 quiet_us = us - 1000 * (gint64) g_atomic_int_get (&search->better_ms);
  return search->watch->is_cancelled (search->watch->data) || us > search->longest_us
         || quiet_us > (gint64) (QUIET_S * G_USEC_PER_SEC);
}

static void
on_better (gpointer data, const SqLay *lay)
{
  Search *search = data;
  const SqClothLay *cloth = sq_lays_cloth (search->best, search->cloth);
  if (sq_lay_compare (cloth->task, lay, cloth->lay) >= 0)
    return;
  g_atomic_int_set (&search->better_ms,
                    (gint) ((g_get_monotonic_time () - search->begun_us) / 1000));
  SqLays *better = sq_lays_with_lay (search->best, search->cloth, lay);
  sq_lays_unref (search->best);
  search->best = better;
  sq_background_publish (search->background, sq_lays_ref (better));
}

static gboolean
can_be_better (const SqClothLay *cloth)
{
  return !cloth->is_kept && cloth->lay->placed->len + cloth->lay->unlaid->len > 1;
}

static guint
n_threads (void)
{
  guint n = g_get_num_processors ();
  return MIN (n > 2 ? n - 1 : n, MOST_THREADS);
}

/* Cloth by cloth, each with its share of the time. */
static gpointer
lay_better (SqBackground *background, gpointer data, const SqTask *watch)
{
  const Start *start = data;
  const SqLayBudget budget = { .seed = start->seed, .steps = G_MAXUINT64, .threads = n_threads () };
  Search search = { background, watch, sq_lays_ref (start->lays), .longest_us = 0 };
  guint n = 0;
  for (guint i = 0; i < start->lays->cloths->len; i++)
    n += can_be_better (sq_lays_cloth (start->lays, i));
  search.longest_us = (gint64) (start->seconds / MAX (n, 1) * G_USEC_PER_SEC);
  for (guint i = 0; i < start->lays->cloths->len; i++)
    {
      const SqClothLay *cloth = sq_lays_cloth (start->lays, i);
      const SqLayWatch lay_watch = { { is_over, NULL, &search }, on_better };
      if (!can_be_better (cloth) || watch->is_cancelled (watch->data))
        continue;
      search.cloth = i;
      search.begun_us = g_get_monotonic_time ();
      search.better_ms = 0;
      g_autoptr (SqLay) last = sq_lay_run (cloth->task, cloth->lay, &budget, &lay_watch);
    }
  return search.best;
}

gboolean
sq_lay_search_is_worth_it (const SqLays *lays)
{
  for (guint i = 0; i < lays->cloths->len; i++)
    if (can_be_better (sq_lays_cloth (lays, i)))
      return TRUE;
  return FALSE;
}

/* --- beginning ------------------------------------------------------------------------------- */

SqBackground *
sq_lay_search_first (GObject *owner, const SqPlan *plan, const SqLays *before,
                     SqBackgroundFound found)
{
  static const SqBackgroundWork work = { lay_first, start_free, (GDestroyNotify) sq_lays_unref };
  return sq_background_begin (owner, &work, start_new (plan, before), found);
}

SqBackground *
sq_lay_search_better (GObject *owner, const SqLays *lays, double seconds, guint64 seed,
                      SqBackgroundFound found)
{
  static const SqBackgroundWork work = { lay_better, start_free, (GDestroyNotify) sq_lays_unref };
  Start *start = start_new (lays->plan, lays);
  start->seconds = seconds;
  start->seed = seed;
  return sq_background_begin (owner, &work, start, found);
}
