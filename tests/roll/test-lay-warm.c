/* SPDX-License-Identifier: GPL-3.0-or-later */
/* What lay stays where it lay, as nearly as it can. */
#include "roll/lay-warm.h"

#include "roll/lay-first.h"
#include "roll/made-task.h"

#define N_PIECES 40

/* Seats and their bands; a corner of the seat numbered @changed is @by_mm farther out. */
static SqLayTask *
job (guint32 seed, guint changed, double by_mm, double repeat_mm)
{
  GRand *chance = g_rand_new_with_seed (seed);
  SqLayTask *task = made_task (1370, 0);

  for (guint i = 0; i < N_PIECES; i++)
    {
      double l = g_rand_double_range (chance, 300, 600), w = g_rand_double_range (chance, 60, 600);
      double more = i == changed ? by_mm : 0;
      const SqPoint p[] = { { 0, 0 }, { l + more, 10 }, { l - 40, w }, { 20, w - 15 } };
      add_path (task, sq_path_new_polygon (p, G_N_ELEMENTS (p)),
                (SqLayItemSpec){ .turns = SQ_LAY_UPRIGHT | SQ_LAY_HALF,
                                 .repeat_across_mm = repeat_mm,
                                 .tag = 100 + i });
    }
  g_rand_free (chance);
  sq_lay_task_seal (task);
  return task;
}

static SqLay *
fresh_of (const SqLayKinds *kinds)
{
  g_autoptr (GArray) order = sq_lay_order_new (kinds, SQ_LAY_BY_AREA);
  return sq_lay_first (kinds, order, NULL, 0, 1);
}

/* How far pieces are from where they were, in the mean (mm). */
static double
mean_moved (const SqLay *before, const SqLay *after)
{
  double sum = 0;

  g_assert_cmpuint (before->placed->len, ==, after->placed->len);
  for (guint i = 0; i < before->placed->len; i++)
    {
      const SqPlaced *p = sq_lay_placed (before, i), *q = sq_lay_placed (after, i);
      g_assert_cmpuint (p->tag, ==, q->tag);
      g_assert_true (sq_grid_pose_equal (p->pose, q->pose));
      sum += hypot (p->at.x - q->at.x, p->at.y - q->at.y) / 1000;
    }
  return sum / before->placed->len;
}

/* Of two that lie beside each other along the roll, the first stays the first. */
static void
assert_same_order (const SqLayTask *task, const SqLay *before, const SqLay *after)
{
  for (guint i = 0; i < before->placed->len; i++)
    for (guint k = 0; k < before->placed->len; k++)
      {
        const SqPlaced *a = sq_lay_placed (before, i), *b = sq_lay_placed (before, k);
        SqGridBox box_a = sq_lay_item_box (sq_lay_task_item (task, a->item), a->pose);
        SqGridBox box_b = sq_lay_item_box (sq_lay_task_item (task, b->item), b->pose);
        if (a->at.y + box_a.min.y < b->at.y + box_b.max.y
            && b->at.y + box_b.min.y < a->at.y + box_a.max.y
            && a->at.x + box_a.max.x <= b->at.x + box_b.min.x)
          g_assert_cmpint (sq_lay_placed (after, i)->at.x + box_a.min.x, <,
                           sq_lay_placed (after, k)->at.x + box_b.min.x);
      }
}

static void
check_corner (double by_mm, double repeat_mm, double most_moved, guint least_kept)
{
  guint n_kept = 0;
  double worst = 0;

  for (guint32 seed = 1; seed <= 20; seed++)
    {
      g_autoptr (SqLayTask) before = job (seed, seed, 0, repeat_mm);
      g_autoptr (SqLayTask) task = job (seed, seed, by_mm, repeat_mm);
      g_autoptr (SqLayKinds) kinds_before = sq_lay_kinds_new (before);
      g_autoptr (SqLayKinds) kinds = sq_lay_kinds_new (task);
      g_autoptr (SqLay) old = fresh_of (kinds_before);
      g_autoptr (SqLay) fresh = fresh_of (kinds);
      g_autoptr (SqLay) warm = sq_lay_warm (kinds, old, fresh, NULL);
      if (warm == NULL)
        continue;
      g_assert_cmpint (sq_lay_fault (task, warm, NULL), ==, SQ_LAY_RIGHT);
      g_assert_cmpfloat (sq_lay_length (warm, 0), <=, 1.02 * sq_lay_length (fresh, 0));
      assert_same_order (before, old, warm);
      worst = MAX (worst, mean_moved (old, warm));
      n_kept++;
    }
  g_test_message ("%u of 20, moved by %.2f mm in the mean", n_kept, worst);
  g_assert_cmpuint (n_kept, >=, least_kept);
  g_assert_cmpfloat (worst, <, most_moved);
}

static void
test_corner (void)
{
  check_corner (5, 0, 8, 16);
  check_corner (-5, 0, 8, 16);
}

static void
test_pattern (void)
{
  check_corner (5, 40, 25, 12);
}

/* From the lay of the very task nothing moves, but to the left. */
static void
test_same (void)
{
  g_autoptr (SqLayTask) task = job (5, 0, 0, 0);
  g_autoptr (SqLayKinds) kinds = sq_lay_kinds_new (task);
  g_autoptr (SqLay) old = fresh_of (kinds);
  g_autoptr (SqLay) warm = sq_lay_warm (kinds, old, old, NULL);
  g_autoptr (SqLay) again = sq_lay_warm (kinds, warm, old, NULL);

  g_assert_cmpfloat (mean_moved (old, warm), <, 0.2);
  g_assert_cmpfloat (mean_moved (warm, again), ==, 0);
}

/* One piece more finds room; copies keep their numbers, pins their places. */
static void
test_more (void)
{
  g_autoptr (SqLayTask) before = made_task (1000, 0);
  g_autoptr (SqLayTask) task = made_task (1000, 0);
  const SqLayPin pin = { .item = 0, .copy = 0, .at = { 0, 0 } };

  add_path (before, sq_path_new_rectangle (0, 0, 300, 400),
            (SqLayItemSpec){ .demand = 4, .tag = 1 });
  add_path (before, sq_path_new_rectangle (0, 0, 500, 100), (SqLayItemSpec){ .tag = 2 });
  add_path (task, sq_path_new_rectangle (0, 0, 300, 400), (SqLayItemSpec){ .demand = 5, .tag = 1 });
  add_path (task, sq_path_new_rectangle (0, 0, 200, 900), (SqLayItemSpec){ .tag = 3 });
  sq_lay_task_add_pin (task, &pin);
  g_autoptr (SqLay) old = lay_of (before, 0);
  sq_lay_task_seal (task);
  g_autoptr (SqLayKinds) kinds = sq_lay_kinds_new (task);
  g_autoptr (SqLay) warm = sq_lay_warm (kinds, old, NULL, NULL);
  g_assert_nonnull (warm);
  g_assert_cmpint (sq_lay_fault (task, warm, NULL), ==, SQ_LAY_RIGHT);
  g_assert_cmpuint (warm->unlaid->len, ==, 0);
  g_assert_cmpint (sq_lay_placed (warm, 0)->at.x, ==, 0);
  g_assert_cmpint (sq_lay_placed (warm, 1)->at.y, ==, sq_lay_placed (old, 1)->at.y);
}

/* All is larger by much, or nothing is the same: that is no warm start. */
static void
test_none (void)
{
  g_autoptr (SqLayTask) task = job (5, 0, 0, 0);
  g_autoptr (SqLayTask) other = made_task (1370, 0);
  g_autoptr (SqLayKinds) kinds = sq_lay_kinds_new (task);

  add_path (other, sq_path_new_rectangle (0, 0, 300, 400), (SqLayItemSpec){ .tag = 7 });
  g_autoptr (SqLay) strange = lay_of (other, 0);
  g_assert_null (sq_lay_warm (kinds, strange, NULL, NULL));
}

/* Right with all there is, from the lay of a task a little different; and the same every time. */
static void
test_random (void)
{
  guint n = 0;

  for (guint32 seed = 1; seed <= 300; seed++)
    {
      g_autoptr (SqLayTask) before = random_task (seed + seed % 2);
      g_autoptr (SqLayTask) task = random_task (seed);
      g_autoptr (SqLayKinds) kinds = sq_lay_kinds_new (task);
      g_autoptr (SqLay) old = lay_of (before, seed % 16 == 0 ? 1 : 0);
      g_autoptr (SqLay) warm = sq_lay_warm (kinds, old, NULL, NULL);
      if (warm == NULL)
        continue;
      if (!sq_lay_is_valid (task, warm))
        g_test_message ("seed %u", seed);
      g_assert_cmpint (sq_lay_fault (task, warm, NULL), ==, SQ_LAY_RIGHT);
      n++;
    }
  g_assert_cmpuint (n, >, 100);
}

int
main (int argc, char *argv[])
{
  g_test_init (&argc, &argv, NULL);
  g_test_add_func ("/roll/lay-warm/corner", test_corner);
  g_test_add_func ("/roll/lay-warm/pattern", test_pattern);
  g_test_add_func ("/roll/lay-warm/same", test_same);
  g_test_add_func ("/roll/lay-warm/more", test_more);
  g_test_add_func ("/roll/lay-warm/none", test_none);
  g_test_add_func ("/roll/lay-warm/random", test_random);
  return g_test_run ();
}
