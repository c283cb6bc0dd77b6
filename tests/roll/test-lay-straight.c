/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "roll/lay-straight.h"

#include "roll/made-task.h"

/* Any task, by any rule: right in every way, straight cuts included. */
static void
test_always_right (void)
{
  for (guint32 seed = 0; seed < 400; seed++)
    {
      g_autoptr (SqLayTask) task = random_straight_task (seed);
      g_autoptr (SqLayKinds) kinds = sq_lay_kinds_new (task);
      g_autoptr (GArray) order = sq_lay_order_new (kinds, (SqLaySort) (seed % SQ_N_LAY_SORTS));
      g_autoptr (SqLay) lay = sq_lay_straight (kinds, order, seed % SQ_N_LAY_STRAIGHT_RULES, NULL);
      g_autoptr (SqLay) again = sq_lay_straight (kinds, order, seed % SQ_N_LAY_STRAIGHT_RULES,
                                                 NULL);
      guint at;
      SqLayFault fault = sq_lay_fault (task, lay, &at);
      if (fault != SQ_LAY_RIGHT)
        g_test_message ("seed %u: fault %d at %u", seed, (int) fault, at);
      g_assert_cmpint (fault, ==, SQ_LAY_RIGHT);
      g_assert_cmpmem (lay->placed->data, lay->placed->len * sizeof (SqPlaced), again->placed->data,
                       again->placed->len * sizeof (SqPlaced));
    }
}

/* What goes at all is laid: on the roll there is room. */
static void
test_all_laid (void)
{
  for (guint32 seed = 0; seed < 400; seed++)
    {
      g_autoptr (SqLayTask) task = random_straight_task (seed);
      if (sq_lay_task_strip (task, task->strips->len - 1)->length > 0)
        continue;
      g_autoptr (SqLay) lay = lay_of (task, 5);
      g_assert_true (sq_lay_is_valid (task, lay));
      for (guint i = 0; i < lay->unlaid->len; i++)
        g_assert_cmpint (g_array_index (lay->unlaid, SqUnlaid, i).why, !=, SQ_UNLAID_NO_ROOM);
    }
}

/* Four to a length, lengths one after another, and a last one in what they leave. */
static void
test_lengths (void)
{
  g_autoptr (SqLayTask) task = made_task (1400, 0);
  guint n_cuts;
  double cut_mm;

  add_rectangle (task, 500, 350, SQ_LAY_UPRIGHT, 8);
  add_rectangle (task, 600, 1300, SQ_LAY_UPRIGHT, 1);
  add_rectangle (task, 600, 100, SQ_LAY_UPRIGHT, 1);
  sq_lay_task_set_straight (task);
  g_autoptr (SqLay) lay = lay_of (task, 0);
  g_assert_cmpint (sq_lay_length (lay, 0), ==, 1600000);
  g_assert_true (sq_lay_is_straight (task, lay, &n_cuts, &cut_mm));
  g_assert_cmpuint (n_cuts, ==, 3 + 1 + 3 + 3);
  g_assert_cmpfloat_with_epsilon (cut_mm, 3 * 1400 + 600 + 6 * 500, 1e-6);
}

/* The first strip first, as long as it is; past a flaw; the rest on the roll. */
static void
test_strips (void)
{
  g_autoptr (SqLayTask) task = sq_lay_task_new (0);
  SqGridBox flaw = { { 0, 0 }, { 10000, 10000 } };
  SqLayStrip remnant = {
    .kind = SQ_STRIP_REMNANT, .width = 600000, .length = 1010000, .flaws = &flaw, .n_flaws = 1
  };

  sq_lay_task_add_strip (task, &remnant);
  add_strip (task, SQ_STRIP_ROLL, 1000, 0, 1);
  add_rectangle (task, 500, 600, SQ_LAY_UPRIGHT, 3);
  sq_lay_task_set_straight (task);
  g_autoptr (SqLay) lay = lay_of (task, 0);
  g_assert_true (sq_lay_is_valid (task, lay));
  g_assert_cmpint (sq_lay_length (lay, 0), ==, 1010000);
  g_assert_cmpint (sq_lay_length (lay, 1), ==, 500000);
  g_assert_cmpint (sq_lay_placed (lay, 0)->at.x, ==, 10000);
}

/* Attempts make it shorter, the same whatever the number of threads. */
static void
test_attempts (void)
{
  GRand *chance = g_rand_new_with_seed (9);
  g_autoptr (SqLayTask) task = made_task (1400, 0);
  gint32 length[3];

  for (guint i = 0; i < 60; i++)
    add_rectangle (task, g_rand_int_range (chance, 100, 700), g_rand_int_range (chance, 100, 700),
                   15, 1);
  sq_lay_task_set_straight (task);
  sq_lay_task_seal (task);
  for (guint i = 0; i < 3; i++)
    {
      const SqLayBudget budget = { .seed = 3, .steps = i == 0 ? 0 : 300, .threads = 1 + i };
      g_autoptr (SqLay) lay = sq_lay_run (task, NULL, &budget, NULL);
      length[i] = sq_lay_length (lay, 0);
      g_assert_true (sq_lay_is_valid (task, lay));
      g_test_message ("%u steps: %d mm, %.1f %%", i == 0 ? 0 : 300, length[i] / 1000,
                      100 * sq_lay_density (task, lay, 0));
    }
  g_assert_cmpint (length[1], <, length[0]);
  g_assert_cmpint (length[1], ==, length[2]);
  g_rand_free (chance);
}

/* A hundred pieces take a millisecond or two; this much would be felt. */
static void
test_quick (void)
{
  GRand *chance = g_rand_new_with_seed (5);
  g_autoptr (SqLayTask) task = made_task (1400, 0);

  for (guint i = 0; i < 100; i++)
    add_rectangle (task, g_rand_int_range (chance, 100, 700), g_rand_int_range (chance, 100, 700),
                   15, 1);
  sq_lay_task_set_straight (task);
  sq_lay_task_seal (task);
  g_autoptr (SqLayKinds) kinds = sq_lay_kinds_new (task);
  g_autoptr (GArray) order = sq_lay_order_new (kinds, SQ_LAY_BY_AREA);
  gint64 begin = g_get_monotonic_time ();
  for (guint i = 0; i < 2 * SQ_N_LAY_STRAIGHT_RULES; i++)
    sq_lay_unref (sq_lay_straight (kinds, order, i, NULL));
  gint64 each = (g_get_monotonic_time () - begin) / (2 * SQ_N_LAY_STRAIGHT_RULES);
  g_test_message ("%d µs", (int) each);
  g_assert_cmpint (each, <, 100000);
  g_rand_free (chance);
}

static gboolean
yes (gpointer data G_GNUC_UNUSED)
{
  return TRUE;
}

static void
test_stopped (void)
{
  g_autoptr (SqLayTask) task = random_straight_task (1);
  g_autoptr (SqLayKinds) kinds = sq_lay_kinds_new (task);
  g_autoptr (GArray) order = sq_lay_order_new (kinds, SQ_LAY_BY_AREA);
  const SqTask watch = { yes, NULL, NULL };

  g_assert_null (sq_lay_straight (kinds, order, 0, &watch));
}

int
main (int argc, char *argv[])
{
  g_test_init (&argc, &argv, NULL);
  g_test_add_func ("/roll/lay-straight/always-right", test_always_right);
  g_test_add_func ("/roll/lay-straight/all-laid", test_all_laid);
  g_test_add_func ("/roll/lay-straight/lengths", test_lengths);
  g_test_add_func ("/roll/lay-straight/strips", test_strips);
  g_test_add_func ("/roll/lay-straight/attempts", test_attempts);
  g_test_add_func ("/roll/lay-straight/quick", test_quick);
  g_test_add_func ("/roll/lay-straight/stopped", test_stopped);
  return g_test_run ();
}
