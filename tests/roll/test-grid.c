/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "roll/grid.h"

static void
test_turned (void)
{
  const SqGrid p = { 3, 1 }, expected[] = { { 3, 1 }, { -1, 3 }, { -3, -1 }, { 1, -3 } };
  const SqGridBox box = { { -2, 1 }, { 5, 4 } };

  for (guint i = 0; i < 8; i++)
    {
      g_assert_cmpint (sq_grid_turned (p, i).x, ==, expected[i % 4].x);
      g_assert_cmpint (sq_grid_turned (p, i).y, ==, expected[i % 4].y);
    }
  g_assert_cmpint (sq_grid_box_turned (box, 1).min.x, ==, -4);
  g_assert_cmpint (sq_grid_box_turned (box, 1).max.y, ==, 5);
  g_assert_cmpint (sq_grid_box_turned (box, 2).min.x, ==, -5);
}

static void
test_from_mm (void)
{
  g_assert_cmpint (sq_grid_from_mm (12.3456), ==, 12346);
  g_assert_cmpint (sq_grid_from_mm (-0.0005), ==, -1);
  g_assert_cmpint (sq_grid_from_mm (1e9), ==, 500000000);
}

static void
test_area (void)
{
  SqGrid outer[] = { { -500000000, -500000000 },
                     { 500000000, -500000000 },
                     { 500000000, 500000000 },
                     { -500000000, 500000000 } };
  SqGrid hole[] = { { 0, 0 }, { 0, 2000 }, { 3000, 2000 }, { 3000, 0 } };
  SqGridRing rings[] = { { outer, 4 }, { hole, 4 } };
  SqGridRing *turned = sq_grid_rings_turned (rings, 2, 1);

  g_assert_cmpfloat (sq_grid_rings_area_mm2 (rings, 2), ==, 1e12 - 6);
  g_assert_cmpfloat (sq_grid_rings_area_mm2 (turned, 2), ==, 1e12 - 6);
  g_assert_cmpint (sq_grid_rings_box (turned + 1, 1).min.x, ==, -2000);
  sq_grid_rings_free (turned, 2);
}

int
main (int argc, char *argv[])
{
  g_test_init (&argc, &argv, NULL);
  g_test_add_func ("/roll/grid/turned", test_turned);
  g_test_add_func ("/roll/grid/from-mm", test_from_mm);
  g_test_add_func ("/roll/grid/area", test_area);
  return g_test_run ();
}
