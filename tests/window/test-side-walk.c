/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "window/side-walk.h"

#define DEGREE (G_PI / 180)

/* 600 × 400, from corner A (id 1) counter-clockwise, its front A–B. */
static SqOutline *
rectangle (void)
{
  const double sides[] = { 600, 400, 600 };
  const double angles[] = { 90 * DEGREE, 90 * DEGREE };
  return sq_outline_from_sides (sides, angles, 3, NULL, NULL, NULL);
}

static void
test_figures (void)
{
  g_autoptr (SqOutline) outline = rectangle ();
  g_autoptr (GArray) walk = sq_walk_figures (outline);
  const SqId corners[] = { 1, 2, 2, 3, 3, 4, 4, 1 };
  g_assert_cmpuint (walk->len, ==, 8);
  for (guint i = 0; i < walk->len; i++)
    {
      const SqSideFigure *figure = &g_array_index (walk, SqSideFigure, i);
      g_assert_cmpint (figure->measure, ==, i % 2 == 0 ? SQ_MEASURE_LENGTH : SQ_MEASURE_ANGLE);
      g_assert_cmpuint (figure->corner, ==, corners[i]);
    }
}

static void
test_stays (void)
{
  g_autoptr (SqOutline) outline = rectangle ();
  const struct
  {
    SqSideFigure figure;
    SqStays stays;
  } cases[] = { { { SQ_MEASURE_LENGTH, 1 }, SQ_STAYS_START },
                { { SQ_MEASURE_LENGTH, 3 }, SQ_STAYS_START },
                { { SQ_MEASURE_LENGTH, 4 }, SQ_STAYS_END },
                { { SQ_MEASURE_ANGLE, 2 }, SQ_STAYS_START },
                { { SQ_MEASURE_ANGLE, 1 }, SQ_STAYS_END } };
  for (guint i = 0; i < G_N_ELEMENTS (cases); i++)
    g_assert_cmpint (sq_walk_usual_stays (outline, &cases[i].figure), ==, cases[i].stays);
}

static void
test_misclosure (void)
{
  g_autoptr (SqOutline) outline = rectangle ();
  double closes_mm = 0;
  g_assert_cmpfloat_with_epsilon (sq_walk_misclosure_mm (outline, 0, 406, &closes_mm), 6, 1e-9);
  g_assert_cmpfloat_with_epsilon (closes_mm, 400, 1e-9);
  g_assert_cmpfloat_with_epsilon (sq_walk_misclosure_mm (outline, 0, 395, &closes_mm), -5, 1e-9);
}

int
main (int argc, char **argv)
{
  g_test_init (&argc, &argv, NULL);
  g_test_add_func ("/window/side-walk/figures", test_figures);
  g_test_add_func ("/window/side-walk/stays", test_stays);
  g_test_add_func ("/window/side-walk/misclosure", test_misclosure);
  return g_test_run ();
}
