/* SPDX-License-Identifier: GPL-3.0-or-later */
/* Feasible at once, better with time, the same for the same. */
#include "roll/lay-cost.h"
#include "roll/lay-run.h"

#include "roll/lay-order.h"
#include "roll/made-task.h"

static SqLay *
run (const SqLayTask *task, const SqLay *warm, guint64 seed, guint64 steps, const SqTask *watch)
{
  const SqLayBudget budget = { .seed = seed, .steps = steps };
  const SqLayWatch lay_watch = { .task = watch != NULL ? *watch : (SqTask){ NULL, NULL, NULL } };
  return sq_lay_run (task, warm, &budget, &lay_watch);
}

static gboolean
same_placed (const SqLay *a, const SqLay *b)
{
  if (a->placed->len != b->placed->len)
    return FALSE;
  for (guint i = 0; i < a->placed->len; i++)
    {
      const SqPlaced *p = sq_lay_placed (a, i), *q = sq_lay_placed (b, i);
      if (p->item != q->item || p->copy != q->copy || p->strip != q->strip || p->at.x != q->at.x
          || p->at.y != q->at.y || !sq_grid_pose_equal (p->pose, q->pose))
        return FALSE;
    }
  return TRUE;
}

/* Counts how often it is asked, and stops it then. */
typedef struct
{
  guint asked, most;
  double fraction;
} Watch;

static gboolean
is_enough (gpointer data)
{
  Watch *watch = data;
  return ++watch->asked > watch->most;
}

static void
hear (gpointer data, double fraction)
{
  Watch *watch = data;
  g_assert_cmpfloat (fraction, >=, watch->fraction);
  watch->fraction = fraction;
}

/* Enough pieces of random sizes that order matters. */
static SqLayTask *
many_pieces (guint32 seed, guint n)
{
  GRand *chance = g_rand_new_with_seed (seed);
  SqLayTask *task = made_task (1370, 0);

  for (guint i = 0; i < n; i++)
    add_path (task,
              sq_path_new_rectangle (0, 0, g_rand_int_range (chance, 60, 900),
                                     g_rand_int_range (chance, 60, 700)),
              (SqLayItemSpec){ .turns = SQ_LAY_UPRIGHT | SQ_LAY_HALF, .tag = 100 + i });
  g_rand_free (chance);
  sq_lay_task_seal (task);
  return task;
}

static void
test_same (void)
{
  for (guint32 seed = 1; seed <= 10; seed++)
    {
      g_autoptr (SqLayTask) task = random_task (seed);
      g_autoptr (SqLay) first = run (task, NULL, 5, 2, NULL);
      g_autoptr (SqLay) again = run (task, NULL, 5, 2, NULL);
      g_assert_true (same_placed (first, again));
      g_assert_true (first->task_digest == task->digest);
      g_assert_cmpuint (first->seed, ==, 5);
      g_assert_cmpuint (first->steps, <=, 2);
    }
}

/* More steps are never worse, and soon better. */
static void
test_better (void)
{
  guint n_better = 0;

  for (guint32 seed = 1; seed <= 2; seed++)
    {
      g_autoptr (SqLayTask) task = many_pieces (seed, 40);
      g_autoptr (SqLay) before = run (task, NULL, 1, 0, NULL);
      for (guint64 steps = 1; steps <= 9; steps *= 3)
        {
          SqLay *after = run (task, NULL, 1, steps, NULL);
          g_assert_true (sq_lay_is_valid (task, after));
          g_assert_cmpint (sq_lay_compare (task, after, before), <=, 0);
          n_better += sq_lay_compare (task, after, before) < 0;
          sq_lay_unref (before);
          before = after;
        }
    }
  g_assert_cmpuint (n_better, >=, 4);
}

/* A stop in the first lay leaves none; a later one leaves the best of the steps that were done. */
static void
test_stopped (void)
{
  g_autoptr (SqLayTask) task = many_pieces (3, 40);
  Watch early = { .most = 39 }, late = { .most = 20000 };
  const SqTask ends_early = { is_enough, hear, &early }, ends_late = { is_enough, hear, &late };

  g_assert_null (run (task, NULL, 1, 100, &ends_early));
  g_autoptr (SqLay) lay = run (task, NULL, 1, G_MAXUINT64, &ends_late);
  g_assert_true (sq_lay_is_valid (task, lay));
  g_assert_cmpuint (lay->steps, >, 0);
  g_autoptr (SqLay) again = run (task, NULL, 1, lay->steps, NULL);
  g_assert_true (same_placed (lay, again));
}

/* So often is asked while twenty are laid as boxes. */
#define AS_BOXES 21

static void
test_progress (void)
{
  g_autoptr (SqLayTask) task = many_pieces (3, 20);
  g_autoptr (SqLay) warm = run (task, NULL, 1, 2, NULL);
  Watch watch = { .most = G_MAXUINT };
  const SqTask all = { is_enough, hear, &watch };
  g_autoptr (SqLay) lay = run (task, warm, 1, 0, &all);

  g_assert_nonnull (lay);
  g_assert_cmpuint (watch.asked, ==, 20 * SQ_N_LAY_SORTS + AS_BOXES);
  g_assert_cmpfloat (watch.fraction, >, 0.75);
}

/* Few pieces are laid in all orders by size before any steps. */
static void
test_few (void)
{
  g_autoptr (SqLayTask) task = many_pieces (3, 20);
  Watch early = { .most = 20 * SQ_N_LAY_SORTS - 1 },
        late = { .most = 20 * SQ_N_LAY_SORTS + AS_BOXES + 15 };
  const SqTask ends_early = { is_enough, hear, &early }, ends_late = { is_enough, hear, &late };

  g_assert_null (run (task, NULL, 1, 100, &ends_early));
  g_autoptr (SqLay) lay = run (task, NULL, 1, 100, &ends_late);
  g_autoptr (SqLay) first = run (task, NULL, 1, 0, NULL);
  g_assert_cmpuint (lay->steps, ==, 0);
  g_assert_true (same_placed (lay, first));
}

/* From a good lay on it gets no worse, however few the steps; a stop gives it back. */
static void
test_warm (void)
{
  g_autoptr (SqLayTask) task = many_pieces (4, 30);
  g_autoptr (SqLay) good = run (task, NULL, 7, 6, NULL);
  g_autoptr (SqLay) cold = run (task, NULL, 1, 0, NULL);
  g_autoptr (SqLay) warm = run (task, good, 1, 0, NULL);
  Watch at_once = { .most = 0 };
  const SqTask stop = { is_enough, NULL, &at_once };
  g_autoptr (SqLay) back = run (task, good, 1, 5, &stop);

  g_assert_cmpint (sq_lay_compare (task, good, cold), <, 0);
  g_assert_cmpint (sq_lay_compare (task, warm, good), <=, 0);
  g_assert_true (sq_lay_is_valid (task, warm));
  g_assert_true (same_placed (back, good));
}

/* One piece more: the lay before only lends its order. */
static void
test_warm_from_other (void)
{
  g_autoptr (SqLayTask) before = many_pieces (4, 29);
  g_autoptr (SqLayTask) task = many_pieces (4, 30);
  g_autoptr (SqLay) good = run (before, NULL, 7, 6, NULL);
  g_autoptr (SqLay) warm = run (task, good, 1, 0, NULL);
  g_autoptr (SqLay) again = run (task, good, 1, 0, NULL);
  Watch at_once = { .most = 0 };
  const SqTask stop = { is_enough, NULL, &at_once };

  g_assert_true (sq_lay_is_valid (task, warm));
  g_assert_true (same_placed (warm, again));
  g_assert_null (run (task, good, 1, 0, &stop));
}

/* Bought cloth counts before what is there anyway. */
static void
test_compare (void)
{
  g_autoptr (SqLayTask) task = made_task (1000, 0);
  add_strip (task, SQ_STRIP_REMNANT, 1000, 1000, -1);
  add_rectangle (task, 600, 1000, SQ_LAY_UPRIGHT, 2);
  g_autoptr (SqLay) lay = lay_of (task, 0);
  g_autoptr (SqLay) worse = lay_of (task, 0);

  g_assert_cmpint (sq_lay_length (lay, 0), ==, 600000);
  g_assert_cmpint (sq_lay_compare (task, lay, worse), ==, 0);
  sq_lay_length (worse, 1) += 10;
  sq_lay_length (worse, 0) -= 1000;
  g_assert_cmpint (sq_lay_compare (task, lay, worse), <, 0);
  g_assert_cmpint (sq_lay_compare (task, worse, lay), >, 0);
  SqUnlaid unlaid = { 0, 1, SQ_UNLAID_NO_ROOM };
  g_array_append_val (lay->unlaid, unlaid);
  g_assert_cmpint (sq_lay_compare (task, lay, worse), >, 0);
}

/* Beside a pin, and two flaws that lie on each other, lays get better, too. */
static void
test_fixed (void)
{
  const SqPoint arrow[] = { { 0, 0 }, { 500, 150 }, { 350, 0 }, { 500, -150 } };
  SqGridBox flaws[] = { { { 300000, 0 }, { 400000, 60000 } },
                        { { 350000, 0 }, { 450000, 50000 } } };
  SqLayStrip strip = {
    .kind = SQ_STRIP_ROLL, .width = 1000000, .flaws = flaws, .n_flaws = G_N_ELEMENTS (flaws)
  };
  SqLayPin pin = { .item = 0, .copy = 2, .at = { 450000, 500000 } };
  g_autoptr (SqLayTask) task = sq_lay_task_new (0);

  sq_lay_task_add_strip (task, &strip);
  add_path (task, sq_path_new_polygon (arrow, G_N_ELEMENTS (arrow)),
            (SqLayItemSpec){ .turns = 5, .demand = 24 });
  sq_lay_task_add_pin (task, &pin);
  sq_lay_task_seal (task);
  g_assert_cmpuint (task->pins->len, ==, 1);
  g_autoptr (SqLay) before = run (task, NULL, 1, 0, NULL);
  g_autoptr (SqLay) after = run (task, NULL, 1, 12, NULL);
  g_assert_true (sq_lay_is_valid (task, after));
  g_assert_cmpint (sq_lay_length (after, 0), <, sq_lay_length (before, 0));
}

/* What is wanted most counts before how much it is. */
static void
test_priority (void)
{
  g_autoptr (SqLayTask) task = sq_lay_task_new (0);
  add_strip (task, SQ_STRIP_SHEET, 1000, 1000, 0);
  add_path (task, sq_path_new_rectangle (0, 0, 900, 600), (SqLayItemSpec){ .priority = 1 });
  add_path (task, sq_path_new_rectangle (0, 0, 200, 600), (SqLayItemSpec){ .priority = 0 });
  sq_lay_task_seal (task);
  g_autoptr (SqLay) small = sq_lay_new (task);
  g_autoptr (SqLay) large = sq_lay_new (task);
  SqUnlaid no_large = { 0, 1, SQ_UNLAID_NO_ROOM }, no_small = { 1, 1, SQ_UNLAID_NO_ROOM };

  g_array_append_val (small->unlaid, no_large);
  g_array_append_val (large->unlaid, no_small);
  g_assert_cmpint (sq_lay_compare (task, small, large), <, 0);
  g_assert_cmpint (sq_lay_compare (task, large, small), >, 0);
  g_array_append_val (small->unlaid, no_small);
  g_assert_cmpint (sq_lay_compare (task, small, large), >, 0);
}

int
main (int argc, char *argv[])
{
  g_test_init (&argc, &argv, NULL);
  g_test_add_func ("/roll/lay-run/same", test_same);
  g_test_add_func ("/roll/lay-run/better", test_better);
  g_test_add_func ("/roll/lay-run/stopped", test_stopped);
  g_test_add_func ("/roll/lay-run/progress", test_progress);
  g_test_add_func ("/roll/lay-run/few", test_few);
  g_test_add_func ("/roll/lay-run/warm", test_warm);
  g_test_add_func ("/roll/lay-run/warm-from-other", test_warm_from_other);
  g_test_add_func ("/roll/lay-run/fixed", test_fixed);
  g_test_add_func ("/roll/lay-run/priority", test_priority);
  g_test_add_func ("/roll/lay-run/compare", test_compare);
  return g_test_run ();
}
