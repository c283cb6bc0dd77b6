/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "roll/made-task.h"

static SqLayTask *
task_of (SqPath *path, double turn_rad, guint demand, double gap_mm)
{
  g_autoptr (GPtrArray) rings = g_ptr_array_new_with_free_func ((GDestroyNotify) sq_path_unref);
  g_ptr_array_add (rings, path);
  SqLayItemSpec spec = { .rings = rings,
                         .turn_rad = turn_rad,
                         .turns = SQ_LAY_UPRIGHT | SQ_LAY_HALF,
                         .anchor = { 10, 0 },
                         .across_mm = 12.5,
                         .repeat_across_mm = 101.6,
                         .demand = demand,
                         .tag = 7 };
  SqLayTask *task = made_task (1346.2, gap_mm);
  sq_lay_task_add (task, &spec);
  sq_lay_task_seal (task);
  return task;
}

static void
test_turned (void)
{
  g_autoptr (SqLayTask) task = task_of (sq_path_new_rectangle (0, 0, 300, 100), -G_PI / 2, 2, 0);
  const SqLayItem *item = &g_array_index (task->items, SqLayItem, 0);
  const SqGrid expected[] = { { 0, 0 }, { 0, -300000 }, { 100000, -300000 }, { 100000, 0 } };

  g_assert_cmpuint (task->items->len, ==, 1);
  g_assert_cmpuint (item->rings[0].n, ==, 4);
  for (guint i = 0; i < 4; i++)
    {
      g_assert_cmpint (item->rings[0].points[i].x, ==, expected[i].x);
      g_assert_cmpint (item->rings[0].points[i].y, ==, expected[i].y);
    }
  g_assert_cmpint (item->phase.anchor.x, ==, 0);
  g_assert_cmpint (item->phase.anchor.y, ==, -10000);
  g_assert_cmpint (item->phase.across_nm, ==, 12500000);
  g_assert_cmpint (item->phase.repeat_across_nm, ==, 101600000);
  g_assert_cmpint (item->phase.repeat_along_nm, ==, 0);
  g_assert_cmpuint (item->demand, ==, 2);
  g_assert_cmpuint (item->tag, ==, 7);
}

static void
test_flattened (void)
{
  g_autoptr (SqLayTask) task = task_of (sq_path_new_circle (sq_point (0, 0), 250), 0, 1, 0);
  const SqGridRing *ring = &g_array_index (task->items, SqLayItem, 0).rings[0];

  g_assert_cmpuint (ring->n, >, 40);
  for (guint i = 0; i < ring->n; i++)
    {
      const SqGrid *a = &ring->points[i], *b = &ring->points[(i + 1) % ring->n];
      double middle = hypot ((a->x + b->x) / 2.0, (a->y + b->y) / 2.0);
      g_assert_cmpfloat (fabs (hypot (a->x, a->y) - 250000), <, 1);
      g_assert_cmpfloat (middle, >, 250000 - SQ_GRID_FLATTEN_MM * SQ_GRID_PER_MM - 1);
    }
}

static void
test_digest (void)
{
  g_autoptr (SqLayTask) a = task_of (sq_path_new_rectangle (0, 0, 300, 100), 0, 2, 0);
  g_autoptr (SqLayTask) same = task_of (sq_path_new_rectangle (0, 0, 300, 100), 0, 2, 0);
  g_autoptr (SqLayTask) wider = task_of (sq_path_new_rectangle (0, 0, 300.001, 100), 0, 2, 0);
  g_autoptr (SqLayTask) more = task_of (sq_path_new_rectangle (0, 0, 300, 100), 0, 3, 0);

  g_autoptr (SqLayTask) apart = task_of (sq_path_new_rectangle (0, 0, 300, 100), 0, 2, 3);

  g_assert_true (a->digest == same->digest);
  g_assert_true (a->digest != apart->digest);
  g_assert_true (a->digest != wider->digest);
  g_assert_true (a->digest != more->digest);
}

/* Half the gap on every side, and no more than flattening and rounding ask. */
static void
test_gap (void)
{
  g_autoptr (SqLayTask) task = task_of (sq_path_new_rectangle (0, 0, 300, 100), 0, 1, 6);
  const SqLayItem *item = sq_lay_task_item (task, 0);
  SqGridBox box = sq_grid_rings_box (item->keep, item->n_keep);

  g_assert_cmpint (box.min.x, <=, -3000);
  g_assert_cmpint (box.min.x, >, -3010);
  g_assert_cmpint (box.max.y, >=, 103000);
  g_assert_cmpint (box.max.y, <, 103010);
}

static void
test_strips (void)
{
  g_autoptr (SqLayTask) task = made_task (1000, 0);

  add_strip (task, SQ_STRIP_REMNANT, 400, 700, -1);
  add_strip (task, SQ_STRIP_ROLL, 900, 5000000, 0);
  g_assert_cmpint (sq_lay_task_strip (task, 0)->kind, ==, SQ_STRIP_REMNANT);
  g_assert_cmpint (sq_lay_task_strip (task, 1)->width, ==, 1000000);
  g_assert_cmpint (sq_lay_task_strip (task, 2)->width, ==, 900000);
  g_assert_cmpint (sq_lay_strip_end (sq_lay_task_strip (task, 0)), ==, 700000);
  g_assert_cmpint (sq_lay_strip_end (sq_lay_task_strip (task, 1)), ==, SQ_LAY_LONGEST);
}

static void
assert_rectangle (const SqGridRing *ring)
{
  SqGridBox box = sq_grid_rings_box (ring, 1);

  g_assert_cmpuint (ring->n, ==, 4);
  for (guint i = 0; i < ring->n; i++)
    {
      SqGrid p = ring->points[i];
      g_assert_true (p.x == box.min.x || p.x == box.max.x);
      g_assert_true (p.y == box.min.y || p.y == box.max.y);
    }
}

/* Rectangles stay rectangles: in sixteenths of an inch, too, with any gap and turned by quarters. */
static void
test_rectangles (void)
{
  const double inch = 25.4, gaps[] = { 0, 3.175, 4.769, 5 };
  const double turns_rad[] = { 0, G_PI / 2, G_PI, -G_PI / 2 };

  for (gint i = 0; i < 200; i++)
    for (guint k = 0; k < 16; k++)
      {
        double x = (7 * i - 500) * inch / 16, y = -13 * i * inch / 32, l = (i + 3) * inch / 16;
        g_autoptr (SqLayTask) task = task_of (
            sq_path_new_rectangle (x, y, x + l, y + 301 * inch / 16), turns_rad[k / 4], 1,
            gaps[k % 4]);
        const SqLayItem *item = sq_lay_task_item (task, 0);
        assert_rectangle (&item->rings[0]);
        assert_rectangle (&item->keep[0]);
        SqGridBox box = sq_grid_rings_box (item->rings, 1);
        g_assert_cmpmem (&box, sizeof box, &item->box, sizeof item->box);
      }
}

int
main (int argc, char *argv[])
{
  g_test_init (&argc, &argv, NULL);
  g_test_add_func ("/roll/lay-task/turned", test_turned);
  g_test_add_func ("/roll/lay-task/flattened", test_flattened);
  g_test_add_func ("/roll/lay-task/digest", test_digest);
  g_test_add_func ("/roll/lay-task/gap", test_gap);
  g_test_add_func ("/roll/lay-task/rectangles", test_rectangles);
  g_test_add_func ("/roll/lay-task/strips", test_strips);
  return g_test_run ();
}
