/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "roll/grid.h"

static void
test_posed (void)
{
  const SqGrid p = { 3, 1 }, expected[] = { { 3, 1 }, { -1, 3 }, { -3, -1 }, { 1, -3 } };

  for (gint32 i = 0; i < 4; i++)
    {
      SqGrid turned = sq_grid_posed (p, (SqGridPose){ i * SQ_GRID_QUARTER, FALSE });
      SqGrid mirrored = sq_grid_posed ((SqGrid){ -p.x, p.y },
                                       (SqGridPose){ i * SQ_GRID_QUARTER, TRUE });
      g_assert_cmpint (turned.x, ==, expected[i].x);
      g_assert_cmpint (turned.y, ==, expected[i].y);
      g_assert_cmpint (mirrored.x, ==, expected[i].x);
      g_assert_cmpint (mirrored.y, ==, expected[i].y);
    }
  /* 5 (cos 36.87°, sin 36.87°) = (4, 3), the angle rounded to a thousandth of a degree */
  SqGrid free = sq_grid_posed ((SqGrid){ 5000, 0 }, (SqGridPose){ 36870, FALSE });
  g_assert_cmpint (free.x, ==, 4000);
  g_assert_cmpint (free.y, ==, 3000);
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
  SqGridRing *turned = sq_grid_rings_posed (rings, 2, (SqGridPose){ SQ_GRID_QUARTER, FALSE });

  g_assert_cmpfloat (sq_grid_rings_area_mm2 (rings, 2), ==, 1e12 - 6);
  g_assert_cmpfloat (sq_grid_rings_area_mm2 (turned, 2), ==, 1e12 - 6);
  g_assert_cmpint (sq_grid_rings_box (turned + 1, 1).min.x, ==, -2000);
  sq_grid_rings_free (turned, 2);
}

int
main (int argc, char *argv[])
{
  g_test_init (&argc, &argv, NULL);
  g_test_add_func ("/roll/grid/posed", test_posed);
  g_test_add_func ("/roll/grid/from-mm", test_from_mm);
  g_test_add_func ("/roll/grid/area", test_area);
  return g_test_run ();
}
