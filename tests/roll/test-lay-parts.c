/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "roll/lay-parts.h"

#include "roll/made-task.h"

static const SqGridPose upright = { 0, FALSE };

static void
assert_convex (const SqLayParts *all)
{
  for (guint i = 0; i < all->parts->len; i++)
    {
      const SqLayPart *part = sq_lay_part (all, i);
      g_assert_cmpuint (part->n, >=, 3);
      for (guint k = 0; k < part->n; k++)
        {
          SqGrid a = part->points[k], b = part->points[(k + 1) % part->n],
                 c = part->points[(k + 2) % part->n];
          gint64 turn = ((gint64) b.x - a.x) * ((gint64) c.y - a.y)
                        - ((gint64) b.y - a.y) * ((gint64) c.x - a.x);
          g_assert_cmpint (turn, >, 0);
        }
    }
}

static void
test_rectangle (void)
{
  g_autoptr (SqLayTask) task = made_task (1000, 0);
  add_path (task, sq_path_new_rectangle (100, 200, 400, 700), (SqLayItemSpec){ .turns = 15 });
  g_autoptr (SqLayParts) all = sq_lay_parts_new (sq_lay_task_item (task, 0), upright);

  g_assert_cmpuint (all->parts->len, ==, 1);
  g_assert_cmpuint (sq_lay_part (all, 0)->n, ==, 4);
  g_assert_cmpfloat (all->area, ==, 300e3 * 500e3);
  g_assert_cmpfloat (all->hull, ==, all->area);
  g_assert_cmpint (all->box.min.x, ==, 0);
  g_assert_cmpint (all->box.max.y, ==, 500000);
}

/* An L: two parts, and a hull that fills its corner by half. */
static void
test_hollow (void)
{
  const SqPoint corners[] = { { 0, 0 },     { 600, 0 },   { 600, 200 },
                              { 200, 200 }, { 200, 500 }, { 0, 500 } };
  g_autoptr (SqLayTask) task = made_task (1000, 0);
  add_path (task, sq_path_new_polygon (corners, G_N_ELEMENTS (corners)),
            (SqLayItemSpec){ .turns = 15 });
  g_autoptr (SqLayParts) all = sq_lay_parts_new (sq_lay_task_item (task, 0), upright);

  assert_convex (all);
  g_assert_cmpuint (all->parts->len, ==, 2);
  g_assert_cmpfloat (all->area, ==, (600.0 * 200 + 200.0 * 300) * 1e6);
  g_assert_cmpfloat (all->hull, ==, (600.0 * 200 + 200.0 * 300 + 400.0 * 300 / 2) * 1e6);
}

/* What is cut out stays out: a frame, turned and mirrored. */
static void
test_hole (void)
{
  g_autoptr (GPtrArray) rings = g_ptr_array_new_with_free_func ((GDestroyNotify) sq_path_unref);
  g_autoptr (SqLayTask) task = made_task (1000, 0);
  SqLayItemSpec spec = { .rings = rings, .turns = 15, .may_mirror = TRUE, .demand = 1 };

  g_ptr_array_add (rings, sq_path_new_rectangle (0, 0, 600, 400));
  g_ptr_array_add (rings, sq_path_new_rectangle (100, 100, 300, 300));
  g_ptr_array_add (rings, sq_path_new_rectangle (400, 50, 500, 350));
  sq_lay_task_add (task, &spec);
  const SqLayItem *item = sq_lay_task_item (task, 0);
  for (guint i = 0; i < item->n_poses; i++)
    {
      g_autoptr (SqLayParts) all = sq_lay_parts_new (item, item->poses[i]);
      assert_convex (all);
      g_assert_cmpfloat (all->area, ==, (600.0 * 400 - 200.0 * 200 - 100.0 * 300) * 1e6);
    }
}

/* Of arcs there is little more than they hold, and never less: r = 300, and a bite of r = 150. */
static void
test_arcs (void)
{
  const SqNode disc[] = { { { -300, 0 }, 1, 0 }, { { 300, 0 }, 1, 0 } };
  const SqNode bitten[] = { { { 0, 0 }, 0, 0 },      { { 600, 0 }, 0, 0 },   { { 600, 400 }, 0, 0 },
                            { { 450, 400 }, -1, 0 }, { { 150, 400 }, 0, 0 }, { { 0, 400 }, 0, 0 } };
  g_autoptr (SqLayTask) task = made_task (1000, 0);
  add_path (task, sq_path_new (disc, 2, TRUE), (SqLayItemSpec){ .turns = 1 });
  add_path (task, sq_path_new (bitten, 6, TRUE), (SqLayItemSpec){ .turns = 1 });

  for (guint i = 0; i < 2; i++)
    {
      const SqLayItem *item = sq_lay_task_item (task, i);
      g_autoptr (SqLayParts) all = sq_lay_parts_new (item, upright);
      double exact = sq_grid_rings_area_mm2 (item->rings, item->n_rings) * 1e6;
      assert_convex (all);
      g_assert_cmpfloat (all->area, >=, exact);
      g_assert_cmpfloat (all->area, <, exact * 1.005);
      g_assert_cmpuint (all->parts->len, <, 40);
    }
}

int
main (int argc, char *argv[])
{
  g_test_init (&argc, &argv, NULL);
  g_test_add_func ("/roll/lay-parts/rectangle", test_rectangle);
  g_test_add_func ("/roll/lay-parts/hollow", test_hollow);
  g_test_add_func ("/roll/lay-parts/hole", test_hole);
  g_test_add_func ("/roll/lay-parts/arcs", test_arcs);
  return g_test_run ();
}
