/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "job/sides.h"

#include "base/units.h"
#include "job/shape.h"

static SqOutline *
of_points (const SqPoint *points, guint n)
{
  g_autofree SqCorner *corners = g_new0 (SqCorner, n);
  for (guint i = 0; i < n; i++)
    corners[i] = (SqCorner){ .id = i + 1, .at = points[i], .front = i == 0 };
  return sq_outline_new (corners, &n, 1);
}

static void
assert_at (const SqOutline *outline, SqId id, double x, double y)
{
  SqPoint at = sq_outline_corner (outline, id, NULL, NULL)->at;
  g_assert_cmpfloat (sq_distance (at, sq_point (x, y)), <, 1e-9);
}

/* A rectangle typed wider stays one: the far side takes it up. */
static void
test_rectangle (void)
{
  const double figures[] = { 600, 400 };
  g_autoptr (SqOutline) seat = sq_shape_outline (SQ_OUTLINE_RECTANGLE, figures, 2, NULL);
  g_autoptr (SqOutline) wider = sq_outline_with_side_length (seat, 1, 700, SQ_STAYS_START, NULL);
  g_autoptr (SqOutline) other = sq_outline_with_side_length (seat, 1, 700, SQ_STAYS_END, NULL);

  assert_at (wider, 1, 0, 0);
  assert_at (wider, 2, 700, 0);
  assert_at (wider, 3, 700, 400);
  assert_at (wider, 4, 0, 400);
  assert_at (other, 1, -100, 0);
  assert_at (other, 2, 600, 0);
  assert_at (other, 4, -100, 400);
}

/* Without a parallel side the closing one takes it up: a triangle by hand. */
static void
test_triangle (void)
{
  const SqPoint points[] = { { 0, 0 }, { 300, 0 }, { 0, 400 } };
  g_autoptr (SqOutline) seat = of_points (points, 3);
  g_autoptr (SqOutline) longer = sq_outline_with_side_length (seat, 1, 400, SQ_STAYS_START, NULL);

  assert_at (longer, 1, 0, 0);
  assert_at (longer, 2, 400, 0);
  assert_at (longer, 3, 100, 400);
}

static void
test_refused (void)
{
  const double figures[] = { 600, 400 };
  g_autoptr (SqOutline) seat = sq_shape_outline (SQ_OUTLINE_RECTANGLE, figures, 2, NULL);
  SqSidesResult result;

  g_assert_null (sq_outline_with_side_length (seat, 1, 0, SQ_STAYS_START, &result));
  g_assert_cmpint (result, ==, SQ_SIDES_NOT_POSITIVE);
  g_assert_null (sq_outline_with_side_length (seat, 1, 1e9, SQ_STAYS_START, &result));
  g_assert_cmpint (result, ==, SQ_SIDES_TOO_LONG);
  g_assert_null (sq_outline_with_angle (seat, 2, 0, SQ_STAYS_START, &result));
  g_assert_cmpint (result, ==, SQ_SIDES_NOT_POSITIVE);
}

/* The angle typed is the angle read, and what isn't at its corner or the closing side stays. */
static void
test_angle (void)
{
  const SqPoint points[] = { { 0, 0 }, { 900, 0 }, { 1100, 250 }, { 950, 500 }, { 0, 480 } };
  g_autoptr (SqOutline) seat = of_points (points, 5);
  g_autoptr (SqOutline) turned = sq_outline_with_angle (seat, 2, 120 * SQ_RAD_PER_DEG,
                                                        SQ_STAYS_START, NULL);
  guint n;
  g_autofree SqSideReading *before = sq_outline_side_readings (seat, 0, &n);
  g_autofree SqSideReading *after = sq_outline_side_readings (turned, 0, &n);

  g_assert_cmpuint (n, ==, 5);
  g_assert_cmpfloat (fabs (after[1].angle_rad - 120 * SQ_RAD_PER_DEG), <, 1e-12);
  for (guint i = 0; i < 4; i++)
    g_assert_cmpfloat (fabs (after[i].chord_mm - before[i].chord_mm), <, 1e-9);
  g_assert_cmpfloat (fabs (after[2].angle_rad - before[2].angle_rad), <, 1e-12);
  g_assert_cmpfloat (fabs (after[3].angle_rad - before[3].angle_rad), <, 1e-12);
}

static SqOutline *
random_seat (void)
{
  SqPoint points[9];
  guint n = (guint) g_test_rand_int_range (3, 9);
  for (guint i = 0; i < n; i++)
    {
      double turn = (i + g_test_rand_double_range (0.1, 0.9)) * 2 * G_PI / n;
      double out = g_test_rand_double_range (300, 900);
      points[i] = sq_point (out * cos (turn), out * sin (turn));
    }
  return of_points (points, n);
}

/* Any side of any seat: it gets the length, and with the old length the old seat is back. */
static void
test_there_and_back (void)
{
  guint n_done = 0;
  for (int round = 0; round < 500; round++)
    {
      g_autoptr (SqOutline) seat = random_seat ();
      guint n;
      g_autofree SqSideReading *sides = sq_outline_side_readings (seat, 0, &n);
      guint i = (guint) g_test_rand_int_range (0, (gint) n);
      SqStays stays = g_test_rand_bit () ? SQ_STAYS_START : SQ_STAYS_END;
      double length = sides[i].chord_mm * g_test_rand_double_range (0.9, 1.1);
      g_autoptr (SqOutline) there = sq_outline_with_side_length (seat, sides[i].edge, length, stays,
                                                                 NULL);
      if (there == NULL)
        continue;
      g_autofree SqSideReading *now = sq_outline_side_readings (there, 0, &n);
      g_assert_cmpfloat (fabs (now[i].chord_mm - length), <, 1e-9);
      g_autoptr (SqOutline) back = sq_outline_with_side_length (there, sides[i].edge,
                                                                sides[i].chord_mm, stays, NULL);
      if (back == NULL)
        continue;
      n_done++;
      for (guint k = 0; k < n; k++)
        g_assert_cmpfloat (sq_distance (sq_outline_corner (back, k + 1, NULL, NULL)->at,
                                        sq_outline_corner (seat, k + 1, NULL, NULL)->at),
                           <, 1e-8);
    }
  g_assert_cmpuint (n_done, >, 400);
}

/* A seat taped side by side is the seat. */
static void
test_taped (void)
{
  for (int round = 0; round < 300; round++)
    {
      g_autoptr (SqOutline) seat = random_seat ();
      guint n;
      g_autofree SqSideReading *read = sq_outline_side_readings (seat, 0, &n);
      double sides[9], angles[9];
      SqClosing closing;
      for (guint i = 0; i < n; i++)
        {
          sides[i] = read[i].chord_mm;
          angles[i] = read[(i + 1) % n].angle_rad;
        }
      g_autoptr (SqOutline) taped = sq_outline_from_sides (sides, angles, n - 1, &closing, NULL,
                                                           NULL);
      g_assert_nonnull (taped);
      g_assert_cmpfloat (fabs (closing.side_mm - read[n - 1].chord_mm), <, 1e-9);
      g_assert_cmpfloat (fabs (closing.last_angle_rad - read[n - 1].angle_rad), <, 1e-9);
      g_assert_cmpfloat (fabs (closing.first_angle_rad - read[0].angle_rad), <, 1e-9);
      g_assert_cmpfloat (fabs (sq_sides_misclosure_mm (sides, angles, n)), <, 1e-9);
      sides[n - 1] += 7;
      g_assert_cmpfloat (fabs (sq_sides_misclosure_mm (sides, angles, n) - 7), <, 1e-9);
    }
}

/* The length along a bow: by the segment formulas R = c²/8s + s/2, t = 4 atan (2s/c). */
static void
test_bow (void)
{
  const double figures[] = { 609.6, 400 };
  g_autoptr (SqOutline) plain = sq_shape_outline (SQ_OUTLINE_RECTANGLE, figures, 2, NULL);
  SqCorner bowed = *sq_outline_corner (plain, 1, NULL, NULL);
  bowed.shape = SQ_SHAPE_BOW;
  bowed.bow_mm = 76.2;
  g_autoptr (SqOutline) seat = sq_outline_with_corner (plain, &bowed);
  guint n;
  g_autofree SqSideReading *read = sq_outline_side_readings (seat, 0, &n);

  /* 24 in chord, 3 in rise: R 25.5 in, 24.987824 in along it */
  g_assert_cmpfloat (fabs (read[0].bend_radius_mm - 25.5 * SQ_MM_PER_INCH), <, 1e-6);
  g_assert_cmpfloat (fabs (read[0].length_mm - 24.987824 * SQ_MM_PER_INCH), <, 1e-4);
}

int
main (int argc, char *argv[])
{
  g_test_init (&argc, &argv, NULL);
  g_test_add_func ("/job/sides/rectangle", test_rectangle);
  g_test_add_func ("/job/sides/triangle", test_triangle);
  g_test_add_func ("/job/sides/refused", test_refused);
  g_test_add_func ("/job/sides/angle", test_angle);
  g_test_add_func ("/job/sides/there-and-back", test_there_and_back);
  g_test_add_func ("/job/sides/taped", test_taped);
  g_test_add_func ("/job/sides/bow", test_bow);
  return g_test_run ();
}
