/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "job/symmetry-sides.h"

#include "base/units.h"

/* Two slanting sides between a front and a narrower back: A, B, C, D. */
static SqOutline *
new_trapezoid (void)
{
  const SqCorner corners[] = { { .id = 1, .at = { 0, 0 }, .front = TRUE },
                               { .id = 2, .at = { 600, 0 } },
                               { .id = 3, .at = { 500, 400 } },
                               { .id = 4, .at = { 100, 400 } } };
  const guint n = G_N_ELEMENTS (corners);
  return sq_outline_new (corners, &n, 1);
}

/* A peak at the back, on the axis: A, B, C, D, E. */
static SqOutline *
new_peaked (void)
{
  const SqCorner corners[] = { { .id = 1, .at = { 0, 0 }, .front = TRUE },
                               { .id = 2, .at = { 600, 0 } },
                               { .id = 3, .at = { 640, 300 } },
                               { .id = 4, .at = { 300, 420 } },
                               { .id = 5, .at = { -40, 300 } } };
  const guint n = G_N_ELEMENTS (corners);
  return sq_outline_new (corners, &n, 1);
}

static double
length_mm (const SqOutline *outline, SqId edge)
{
  guint n;
  g_autofree SqSideReading *readings = sq_outline_side_readings (outline, 0, &n);
  return readings[edge - 1].chord_mm;
}

static double
angle_rad (const SqOutline *outline, SqId corner)
{
  guint n;
  g_autofree SqSideReading *readings = sq_outline_side_readings (outline, 0, &n);
  return readings[corner - 1].angle_rad;
}

static void
assert_alike (const SqOutline *outline)
{
  SqAxis axis;
  g_assert_true (sq_outline_front_axis (outline, &axis));
  g_assert_true (sq_outline_is_symmetric (outline, &axis, 1e-6));
}

/* Each side gets what was typed, whichever end stays, and both halves stay alike. */
static void
assert_lengths (const SqOutline *outline)
{
  SqAxis axis;
  guint n;
  sq_outline_ring (outline, 0, &n);
  g_assert_true (sq_outline_front_axis (outline, &axis));
  for (SqId edge = 1; edge <= n; edge++)
    for (guint stays = SQ_STAYS_START; stays <= SQ_STAYS_END; stays++)
      for (double more = -20; more <= 20; more += 40)
        {
          double wanted = length_mm (outline, edge) + more;
          SqSidesResult result = SQ_SIDES_CROSS;
          g_autoptr (SqOutline) after = sq_outline_with_side_length_symmetric (
              outline, edge, wanted, (SqStays) stays, &axis, &result);
          g_assert_nonnull (after);
          g_assert_cmpint (result, ==, SQ_SIDES_FINE);
          g_assert_cmpfloat_with_epsilon (length_mm (after, edge), wanted, 1e-6);
          assert_alike (after);
        }
}

static void
test_lengths (void)
{
  g_autoptr (SqOutline) trapezoid = new_trapezoid ();
  g_autoptr (SqOutline) peaked = new_peaked ();
  assert_lengths (trapezoid);
  assert_lengths (peaked);
}

/* The front changes from both its ends; the axis stays where it is. */
static void
test_front (void)
{
  g_autoptr (SqOutline) outline = new_trapezoid ();
  SqAxis axis;
  g_assert_true (sq_outline_front_axis (outline, &axis));
  g_autoptr (SqOutline) after = sq_outline_with_side_length_symmetric (outline, 1, 640,
                                                                       SQ_STAYS_START, &axis, NULL);
  g_assert_nonnull (after);
  g_assert_cmpfloat_with_epsilon (sq_outline_corner (after, 1, NULL, NULL)->at.x, -20, 1e-6);
  g_assert_cmpfloat_with_epsilon (sq_outline_corner (after, 2, NULL, NULL)->at.x, 620, 1e-6);
  g_assert_cmpfloat_with_epsilon (sq_outline_corner (after, 1, NULL, NULL)->at.y, 0, 1e-6);
}

static void
assert_angles (const SqOutline *outline)
{
  SqAxis axis;
  guint n;
  sq_outline_ring (outline, 0, &n);
  g_assert_true (sq_outline_front_axis (outline, &axis));
  for (SqId corner = 1; corner <= n; corner++)
    for (guint stays = SQ_STAYS_START; stays <= SQ_STAYS_END; stays++)
      {
        double wanted = angle_rad (outline, corner) + 3 * SQ_RAD_PER_DEG;
        g_autoptr (SqOutline) after = sq_outline_with_angle_symmetric (
            outline, corner, wanted, (SqStays) stays, &axis, NULL);
        g_assert_nonnull (after);
        g_assert_cmpfloat_with_epsilon (angle_rad (after, corner), wanted, 1e-6);
        assert_alike (after);
      }
}

static void
test_angles (void)
{
  g_autoptr (SqOutline) trapezoid = new_trapezoid ();
  g_autoptr (SqOutline) peaked = new_peaked ();
  assert_angles (trapezoid);
  assert_angles (peaked);
}

static void
test_what_cant_be (void)
{
  g_autoptr (SqOutline) outline = new_trapezoid ();
  SqAxis axis;
  SqSidesResult result = SQ_SIDES_FINE;
  g_assert_true (sq_outline_front_axis (outline, &axis));
  g_assert_null (
      sq_outline_with_side_length_symmetric (outline, 1, 0, SQ_STAYS_START, &axis, &result));
  g_assert_cmpint (result, ==, SQ_SIDES_NOT_POSITIVE);
  result = SQ_SIDES_FINE;
  g_assert_null (sq_outline_with_side_length_symmetric (outline, 1, 2 * SQ_SEAT_MOST_MM,
                                                        SQ_STAYS_START, &axis, &result));
  g_assert_cmpint (result, !=, SQ_SIDES_FINE);
}

int
main (int argc, char **argv)
{
  g_test_init (&argc, &argv, NULL);
  g_test_add_func ("/job/symmetry-sides/lengths", test_lengths);
  g_test_add_func ("/job/symmetry-sides/front", test_front);
  g_test_add_func ("/job/symmetry-sides/angles", test_angles);
  g_test_add_func ("/job/symmetry-sides/what-cant-be", test_what_cant_be);
  return g_test_run ();
}
