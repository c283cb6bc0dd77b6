/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "roll/lay-boxes.h"

#include "roll/made-task.h"
#include "roll/packings.h"

/* ---- right --------------------------------------------------------------------------------- */

/* Any task, by any rule; of pieces that are no rectangles boxes count, so that the lay is right, too. */
static void
test_always_right (void)
{
  for (guint32 seed = 0; seed < 500; seed++)
    {
      g_autoptr (SqLayTask) task = random_task (seed);
      g_autoptr (SqLayKinds) kinds = sq_lay_kinds_new (task);
      g_autoptr (GArray) order = sq_lay_order_new (kinds, (SqLaySort) (seed % SQ_N_LAY_SORTS));
      g_autoptr (SqLay) lay = sq_lay_boxes (kinds, order, seed % SQ_N_LAY_BOX_RULES, NULL);
      g_autoptr (SqLay) again = sq_lay_boxes (kinds, order, seed % SQ_N_LAY_BOX_RULES, NULL);
      guint at;
      SqLayFault fault = sq_lay_fault (task, lay, &at);
      if (fault != SQ_LAY_RIGHT)
        g_test_message ("seed %u: fault %d at %u", seed, (int) fault, at);
      g_assert_cmpint (fault, ==, SQ_LAY_RIGHT);
      g_assert_cmpmem (lay->placed->data, lay->placed->len * sizeof (SqPlaced), again->placed->data,
                       again->placed->len * sizeof (SqPlaced));
    }
}

static gboolean
are_boxes (SqLayTask *task)
{
  sq_lay_task_seal (task);
  g_autoptr (SqLayKinds) kinds = sq_lay_kinds_new (task);
  return sq_lay_kinds_are_boxes (kinds);
}

static void
test_are_boxes (void)
{
  g_autoptr (SqLayTask) boxes = made_task (1000, 8), round = made_task (1000, 0);
  g_autoptr (SqLayTask) turned = made_task (1000, 0), noted = made_task (1000, 0);
  const SqPoint points[] = { { 0, 0 }, { 50, 0 }, { 100, 0 }, { 100, 60 }, { 0, 60 } };
  const SqPoint slanted[] = { { 0, 0 }, { 100, 0 }, { 100, 60 }, { 50, 60 }, { 0, 40 } };

  add_rectangle (boxes, 300, 200, 15, 3);
  add_rectangle (boxes, 100, 200, SQ_LAY_HALF, 1);
  g_assert_true (are_boxes (boxes));
  add_rectangle (round, 300, 200, 15, 3);
  add_path (round, sq_path_new_circle (sq_point (0, 0), 50), (SqLayItemSpec){ 0 });
  g_assert_false (are_boxes (round));
  add_path (turned, sq_path_new_rectangle (0, 0, 300, 200), (SqLayItemSpec){ .steps = 8 });
  g_assert_false (are_boxes (turned));
  add_path (noted, sq_path_new_polygon (points, G_N_ELEMENTS (points)), (SqLayItemSpec){ 0 });
  g_assert_true (are_boxes (noted));
  g_autoptr (SqLayTask) cut = made_task (1000, 0);
  add_path (cut, sq_path_new_polygon (slanted, G_N_ELEMENTS (slanted)), (SqLayItemSpec){ 0 });
  g_assert_false (are_boxes (cut));
}

/* A hole between pins and a flaw, exactly as large as a piece. */
static void
test_exact_hole (void)
{
  for (guint rule = 0; rule < SQ_N_LAY_BOX_RULES; rule++)
    {
      g_autoptr (SqLayTask) task = sq_lay_task_new (0);
      SqGridBox flaw = { { 400000, 0 }, { 500000, 200000 } };
      SqLayStrip roll = { .width = 600000, .flaws = &flaw, .n_flaws = 1 };
      SqLayPin pin = { .item = 0 };
      sq_lay_task_add_strip (task, &roll);
      add_rectangle (task, 500, 400, SQ_LAY_UPRIGHT, 1);
      add_rectangle (task, 200, 400, SQ_LAY_UPRIGHT | SQ_LAY_QUARTER, 1);
      pin.at.y = 200000;
      sq_lay_task_add_pin (task, &pin);
      sq_lay_task_seal (task);
      g_autoptr (SqLayKinds) kinds = sq_lay_kinds_new (task);
      g_autoptr (GArray) order = sq_lay_order_new (kinds, SQ_LAY_BY_AREA);
      g_autoptr (SqLay) lay = sq_lay_boxes (kinds, order, rule, NULL);
      g_assert_true (sq_lay_is_valid (task, lay));
      g_assert_cmpint (sq_lay_length (lay, 0), ==, 500000);
    }
}

static gboolean
yes (gpointer data G_GNUC_UNUSED)
{
  return TRUE;
}

static void
test_stopped (void)
{
  g_autoptr (SqLayTask) task = random_task (1);
  g_autoptr (SqLayKinds) kinds = sq_lay_kinds_new (task);
  g_autoptr (GArray) order = sq_lay_order_new (kinds, SQ_LAY_BY_AREA);
  const SqTask watch = { yes, NULL, NULL };

  g_assert_null (sq_lay_boxes (kinds, order, 0, &watch));
}

/* Each makes many lays, or one by another way that takes as long. */
#define STEPS 20

/* ---- well ---------------------------------------------------------------------------------- */

static SqLayTask *
task_of (const Rectangle *rectangles, guint n, gint width)
{
  SqLayTask *task = made_task (width, 0);

  for (guint i = 0; i < n; i++)
    add_rectangle (task, rectangles[i].length, rectangles[i].width, SQ_LAY_UPRIGHT | SQ_LAY_QUARTER,
                   1);
  sq_lay_task_seal (task);
  return task;
}

static gint
lay_length (const SqLayTask *task, guint64 steps)
{
  const SqLayBudget budget = { .seed = 1, .steps = steps };
  g_autoptr (SqLay) lay = sq_lay_run (task, NULL, &budget, NULL);

  g_assert_true (sq_lay_is_valid (task, lay));
  return sq_lay_length (lay, 0) / 1000;
}

static Rectangle *
random_set (guint n, GRand *chance)
{
  Rectangle *rectangles = g_new (Rectangle, n);

  for (guint i = 0; i < n; i++)
    {
      rectangles[i].length = g_rand_int_range (chance, 20, 160);
      rectangles[i].width = g_rand_int_range (chance, 20, 160);
    }
  return rectangles;
}

/* So many steps are never worse than the best of five times as many orders by all packings in the
 * books. */
static void
test_random_sets (void)
{
  GRand *chance = g_rand_new_with_seed (11);

  for (guint round = 0; round < 3; round++)
    {
      guint n = 12 + 6 * round;
      g_autofree Rectangle *rectangles = random_set (n, chance);
      g_autoptr (SqLayTask) task = task_of (rectangles, n, 400);
      gint best = best_packing (rectangles, n, 400, 5 * STEPS, chance),
           own = lay_length (task, STEPS);
      g_test_message ("%u random: %d, in the books %d", n, own, best);
      g_assert_cmpint (own, <=, best);
    }
  g_rand_free (chance);
}

/* Nor on sets that fill a strip without a rest; of that they are within a few parts in a hundred. */
static void
test_cut_up (void)
{
  GRand *chance = g_rand_new_with_seed (12);

  for (guint round = 0; round < 3; round++)
    {
      guint n = 12 + 6 * round;
      g_autofree Rectangle *rectangles = cut_up (600, 400, n, chance);
      g_autoptr (SqLayTask) task = task_of (rectangles, n, 400);
      gint best = best_packing (rectangles, n, 400, 5 * STEPS, chance),
           own = lay_length (task, STEPS);
      g_test_message ("%u cut from 600: %d, in the books %d", n, own, best);
      g_assert_cmpint (own, <=, best);
      g_assert_cmpint (own, <=, 600 * 106 / 100);
    }
  g_rand_free (chance);
}

/* The same however many threads work on it. */
static void
test_threads (void)
{
  GRand *chance = g_rand_new_with_seed (13);
  g_autofree Rectangle *rectangles = random_set (14, chance);
  g_autoptr (SqLayTask) task = task_of (rectangles, 14, 400);
  g_autoptr (SqLay) one = NULL;

  for (guint threads = 1; threads <= 4; threads++)
    {
      const SqLayBudget budget = { .seed = 2, .steps = 12, .threads = threads };
      g_autoptr (SqLay) lay = sq_lay_run (task, NULL, &budget, NULL);
      if (one == NULL)
        one = sq_lay_ref (lay);
      g_assert_cmpmem (lay->placed->data, lay->placed->len * sizeof (SqPlaced), one->placed->data,
                       one->placed->len * sizeof (SqPlaced));
    }
  g_rand_free (chance);
}

int
main (int argc, char *argv[])
{
  g_test_init (&argc, &argv, NULL);
  g_test_add_func ("/roll/lay-boxes/always-right", test_always_right);
  g_test_add_func ("/roll/lay-boxes/are-boxes", test_are_boxes);
  g_test_add_func ("/roll/lay-boxes/exact-hole", test_exact_hole);
  g_test_add_func ("/roll/lay-boxes/stopped", test_stopped);
  g_test_add_func ("/roll/lay-boxes/random-sets", test_random_sets);
  g_test_add_func ("/roll/lay-boxes/cut-up", test_cut_up);
  g_test_add_func ("/roll/lay-boxes/threads", test_threads);
  return g_test_run ();
}
