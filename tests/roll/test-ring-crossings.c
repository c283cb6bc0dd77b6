/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "roll/ring-crossings.h"

static gboolean
crosses (const SqGrid *points, guint n)
{
  const SqGridRing ring = { (SqGrid *) points, n };
  return sq_grid_rings_cross (&ring, 1);
}

static void
assert_crosses (const SqGrid *points, guint n, gboolean expected)
{
  SqGrid turned[16], back[16];

  for (guint i = 0; i < n; i++)
    {
      turned[i] = sq_grid_posed (points[i], (SqGridPose){ 37123, FALSE });
      back[i] = points[n - 1 - i];
    }
  g_assert_cmpint (crosses (points, n), ==, expected);
  g_assert_cmpint (crosses (turned, n), ==, expected);
  g_assert_cmpint (crosses (back, n), ==, expected);
}

static void
test_simple (void)
{
  const SqGrid notched[] = { { 0, 0 },         { 500000, 0 },    { 500000, 300000 },
                             { 200000, 5000 }, { 100000, 5000 }, { 0, 300000 } };

  assert_crosses (notched, G_N_ELEMENTS (notched), FALSE);
}

static void
test_crossed (void)
{
  const SqGrid bow[] = { { 0, 0 }, { 500000, 300000 }, { 500000, 0 }, { 0, 300000 } };
  const SqGrid loop[] = { { 0, 0 },           { 500000, 0 },      { 500000, 300000 },
                          { 200000, 300000 }, { 200000, -90000 }, { 100000, -90000 },
                          { 100000, 300000 }, { 0, 300000 } };
  /* The two halves cross in a corner of both. */
  const SqGrid eight[] = { { 0, 0 },           { 250000, 150000 }, { 500000, 0 },
                           { 500000, 300000 }, { 250000, 150000 }, { 0, 300000 } };
  const SqGrid crossed_eight[] = { { 0, 0 },      { 250000, 150000 }, { 500000, 300000 },
                                   { 500000, 0 }, { 250000, 150000 }, { 0, 300000 } };
  /* Twice round. */
  const SqGrid twice[] = { { 0, 0 },   { 900, 0 },   { 900, 900 }, { 0, 900 },
                           { 0, 100 }, { 800, 100 }, { 800, 800 }, { 0, 800 } };

  assert_crosses (bow, G_N_ELEMENTS (bow), TRUE);
  assert_crosses (loop, G_N_ELEMENTS (loop), TRUE);
  assert_crosses (eight, G_N_ELEMENTS (eight), FALSE);
  assert_crosses (crossed_eight, G_N_ELEMENTS (crossed_eight), TRUE);
  assert_crosses (twice, G_N_ELEMENTS (twice), TRUE);
}

/* A slit with no width; and one that rounding has closed too far. */
static void
test_touching (void)
{
  const SqGrid slit[] = { { 0, 0 },           { 500000, 0 },      { 500000, 300000 },
                          { 250000, 300000 }, { 150000, 100000 }, { 250000, 300000 },
                          { 0, 300000 } };
  const SqGrid rounded[] = { { 0, 0 },           { 500000, 0 },      { 500000, 300000 },
                             { 250000, 300000 }, { 150001, 100000 }, { 149999, 100000 },
                             { 199999, 200001 }, { 250001, 300000 }, { 0, 300000 } };

  assert_crosses (slit, G_N_ELEMENTS (slit), FALSE);
  assert_crosses (rounded, G_N_ELEMENTS (rounded), FALSE);
}

/* A hole may touch the outline from within, not reach out of it. */
static void
test_holes (void)
{
  SqGrid outer[] = { { 0, 0 }, { 500000, 0 }, { 500000, 300000 }, { 0, 300000 } };
  SqGrid hole[] = { { 100000, 100000 }, { 400000, 100000 }, { 500000, 200000 } };
  const SqGridRing rings[] = { { outer, G_N_ELEMENTS (outer) }, { hole, G_N_ELEMENTS (hole) } };

  g_assert_false (sq_grid_rings_cross (rings, 2));
  hole[2].x += 10;
  g_assert_true (sq_grid_rings_cross (rings, 2));
}

int
main (int argc, char *argv[])
{
  g_test_init (&argc, &argv, NULL);
  g_test_add_func ("/roll/ring-crossings/simple", test_simple);
  g_test_add_func ("/roll/ring-crossings/crossed", test_crossed);
  g_test_add_func ("/roll/ring-crossings/touching", test_touching);
  g_test_add_func ("/roll/ring-crossings/holes", test_holes);
  return g_test_run ();
}
