/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "job/safe-edit.h"

#include "job/edge.h"

static double
random_mm (double least, double most)
{
  return g_test_rand_double_range (least, most);
}

static SqOutline *
rectangle (void)
{
  const SqCorner corners[] = {
    { .id = 1, .at = { 0, 0 }, .front = TRUE },
    { .id = 2, .at = { 600, 0 } },
    { .id = 3, .at = { 600, 400 } },
    { .id = 4, .at = { 0, 400 } },
  };
  const guint n = G_N_ELEMENTS (corners);

  return sq_outline_new (corners, &n, 1);
}

static SqOutline *
moved (const SqOutline *outline, SqId id, double x, double y)
{
  return sq_outline_with_corner_moved (outline, id, sq_point (x, y));
}

static SqPoint
corner_at (const SqOutline *outline, SqId id)
{
  return sq_outline_corner (outline, id, NULL, NULL)->at;
}

static double
area_mm2 (const SqOutline *outline, guint ring)
{
  g_autoptr (SqPath) path = sq_outline_path (outline, ring, NULL);

  g_assert_nonnull (path);
  return sq_path_area_mm2 (path);
}

/* --- the stop ------------------------------------------------------------------------------ */

static void
test_good (void)
{
  g_autoptr (SqOutline) outline = rectangle ();
  g_autoptr (SqOutline) crossed = moved (outline, 3, -700, -100);
  g_autoptr (SqOutline) inside_out = sq_outline_mirrored (outline);
  g_autoptr (SqOutline) nothing = sq_outline_new (NULL, NULL, 0);
  g_autoptr (SqOutline) hole = sq_outline_with_round_hole (outline, sq_point (300, 200), 100, NULL);
  g_autoptr (SqOutline) leaving = sq_outline_with_round_hole (outline, sq_point (40, 200), 100,
                                                              NULL);
  g_autoptr (SqOutline) second = sq_outline_with_rectangular_hole (hole, sq_point (360, 200), 100,
                                                                   50, NULL);
  g_autoptr (SqOutline) nested = sq_outline_with_round_hole (hole, sq_point (300, 200), 50, NULL);
  g_autoptr (SqOutline) apart = sq_outline_with_round_hole (hole, sq_point (500, 200), 100, NULL);
  SqPoint where;

  g_assert_true (sq_outline_is_good (outline, NULL));
  g_assert_true (sq_outline_is_good (inside_out, NULL)); /* mirroring keeps the sense */
  g_assert_true (sq_outline_is_good (hole, NULL));
  g_assert_true (sq_outline_is_good (apart, NULL));
  g_assert_false (sq_outline_is_good (nothing, NULL));
  g_assert_false (sq_outline_is_good (nested, NULL));
  g_assert_false (sq_outline_is_good (leaving, NULL));
  g_assert_false (sq_outline_is_good (second, &where));
  g_assert_cmpfloat (fabs (where.y - 200), <=, 25 + 1e-9);
  g_assert_false (sq_outline_is_good (crossed, &where));
  g_assert_cmpfloat_with_epsilon (where.x, 0, 1e-9); /* on the left edge */
}

/* A corner taken down through the front stops there. */
static void
test_stop_at_edge (void)
{
  g_autoptr (SqOutline) before = rectangle ();
  g_autoptr (SqOutline) after = moved (before, 3, -200, -600);
  SqPoint crossing;
  double share;
  g_autoptr (SqOutline) stop = sq_outline_last_good (before, after, &share, &crossing);

  g_assert_cmpfloat_with_epsilon (share, 400.0 / 600, 1e-7);
  g_assert_cmpfloat_with_epsilon (corner_at (stop, 3).y, 0, 1e-4);
  g_assert_cmpfloat (corner_at (stop, 3).y, >, 0);
  g_assert_cmpfloat (sq_distance (crossing, corner_at (stop, 3)), <, 1e-3);
}

/* Nothing stops what is good, or what puts right; and outlines of other corners have no way. */
static void
test_no_stop (void)
{
  g_autoptr (SqOutline) before = rectangle ();
  g_autoptr (SqOutline) good = moved (before, 3, 50, 60);
  g_autoptr (SqOutline) crossed = moved (before, 3, -700, -100);
  g_autoptr (SqOutline) worse = moved (before, 3, -800, -100);
  g_autoptr (SqOutline) fewer = sq_outline_without_corner (crossed, 2);
  SqPoint crossing = { 1, 2 };
  double share;
  g_autoptr (SqOutline) one = sq_outline_last_good (before, good, &share, &crossing);

  g_assert_true (one == good);
  g_assert_cmpfloat (share, ==, 1);
  g_assert_cmpfloat (crossing.x, ==, 1);
  g_autoptr (SqOutline) other = sq_outline_last_good (crossed, worse, &share, &crossing);
  g_assert_true (other == worse);
  g_assert_cmpfloat (share, ==, 1);
  g_autoptr (SqOutline) third = sq_outline_last_good (before, fewer, &share, &crossing);
  g_assert_true (sq_outline_is_good (third, NULL));
}

/* A bow pulled in through the other side; the same edge bent as a curve. */
static void
test_stop_of_bends (void)
{
  g_autoptr (SqOutline) before = rectangle ();
  SqCorner corner = *sq_outline_corner (before, 1, NULL, NULL);
  double share;

  corner.shape = SQ_SHAPE_BOW;
  corner.bow_mm = -500;
  g_autoptr (SqOutline) bowed = sq_outline_with_corner (before, &corner);
  g_autoptr (SqOutline) stop = sq_outline_last_good (before, bowed, &share, NULL);
  /* a half circle leaves along the sides, so it goes away from them but slowly */
  g_assert_cmpfloat_with_epsilon (sq_outline_corner (stop, 1, NULL, NULL)->bow_mm, -300, 0.05);

  corner.shape = SQ_SHAPE_CURVE;
  corner.control[0] = sq_point (200, 800);
  corner.control[1] = sq_point (400, 800);
  g_autoptr (SqOutline) curved = sq_outline_with_corner (before, &corner);
  g_autoptr (SqOutline) curve_stop = sq_outline_last_good (before, curved, &share, NULL);
  /* a cubic with handles at h rises to 3/4 h: to the back at 533 of 800 */
  g_assert_cmpfloat_with_epsilon (share, 2.0 / 3, 1e-4);
  g_assert_true (sq_outline_is_good (curve_stop, NULL));
}

/* An edge dragged over a hole stops before it. */
static void
test_stop_at_hole (void)
{
  g_autoptr (SqOutline) plain = rectangle ();
  g_autoptr (SqOutline) before = sq_outline_with_round_hole (plain, sq_point (300, 200), 100, NULL);
  g_autoptr (SqOutline) after = sq_outline_with_edge_moved (before, 2, sq_point (-500, 0));
  SqPoint crossing;
  double share;
  g_autoptr (SqOutline) stop = sq_outline_last_good (before, after, &share, &crossing);

  g_assert_cmpfloat (corner_at (stop, 2).x, >, 350);
  g_assert_cmpfloat (corner_at (stop, 2).x, <, 351);
  g_assert_cmpfloat (sq_distance (crossing, sq_point (350, 200)), <, 1);
}

static SqOutline *
random_seat (void)
{
  guint n = (guint) g_test_rand_int_range (3, 13);
  SqCorner corners[12] = { 0 };

  for (guint i = 0; i < n; i++)
    {
      double turn = 2 * G_PI * (i + random_mm (-0.3, 0.3)) / n, out_mm = random_mm (250, 500);
      corners[i] = (SqCorner){ .id = i + 1, .at = { out_mm * cos (turn), out_mm * sin (turn) } };
      if (g_test_rand_int_range (0, 3) == 0)
        {
          corners[i].shape = SQ_SHAPE_BOW;
          corners[i].bow_mm = random_mm (-10, 30);
        }
    }
  return sq_outline_new (corners, &n, 1);
}

/* The stop is good; a hair farther it is not; and it touches where it says. */
static void
test_stop_law (void)
{
  guint stops = 0;

  for (guint run = 0; run < 1000; run++)
    {
      g_autoptr (SqOutline) before = random_seat ();
      SqVector by = { random_mm (-900, 900), random_mm (-900, 900) };
      g_autoptr (SqOutline) after = moved (before, 1, by.x, by.y);
      SqPoint crossing;
      double share, hair = 3e-5 / sq_norm (by);
      g_autoptr (SqOutline) stop = sq_outline_last_good (before, after, &share, &crossing);
      if (!sq_outline_is_good (before, NULL) || share == 1)
        continue;
      g_autoptr (SqOutline) farther = moved (before, 1, by.x * (share + hair),
                                             by.y * (share + hair));
      g_autoptr (SqPath) path = sq_outline_path (stop, 0, NULL);

      stops++;
      g_assert_true (sq_outline_is_good (stop, NULL));
      g_assert_false (sq_outline_is_good (farther, NULL));
      g_assert_cmpfloat (sq_path_nearest (path, crossing).distance_mm, <, 0.01);
      g_assert_cmpfloat (
          sq_distance (corner_at (stop, 1), sq_moved (corner_at (before, 1), by, share)), <, 1e-9);
    }
  g_assert_cmpuint (stops, >, 100);
}

/* --- edges as curves ----------------------------------------------------------------------- */

static void
test_edge_as_curve (void)
{
  static const double bows_mm[] = { 0, 40, -70, 300 };

  for (guint k = 0; k < G_N_ELEMENTS (bows_mm); k++)
    {
      g_autoptr (SqOutline) plain = rectangle ();
      SqCorner corner = *sq_outline_corner (plain, 1, NULL, NULL);
      corner.shape = bows_mm[k] != 0 ? SQ_SHAPE_BOW : SQ_SHAPE_STRAIGHT;
      corner.bow_mm = bows_mm[k];
      g_autoptr (SqOutline) bowed = sq_outline_with_corner (plain, &corner);
      g_autoptr (SqOutline) curved = sq_outline_with_edge_as_curve (bowed, 1);
      const SqCorner *curve = sq_outline_corner (curved, 1, NULL, NULL);
      const SqCorner *next = sq_outline_corner (curved, 2, NULL, NULL);
      /* the flatter the arc, the better; a half circle of 300 is off by 2 % of that */
      double within_mm = fabs (bows_mm[k]) == 300 ? 6 : 0.05;

      g_assert_cmpint (curve->shape, ==, SQ_SHAPE_CURVE);
      for (double t = 0; t <= 1; t += 0.05)
        {
          double place;
          SqPoint p = sq_edge_point (curve, next, t);
          g_assert_cmpfloat (sq_edge_nearest_mm (&corner, next, p, &place), <, within_mm);
        }
      g_assert_cmpfloat_with_epsilon (sq_edge_point (curve, next, 0.5).y, -bows_mm[k], 1e-9);
      SqVector leaves = sq_edge_direction (&corner, next, FALSE);
      g_assert_cmpfloat (sq_distance (sq_edge_direction (curve, next, FALSE), leaves), <, 1e-9);
    }
  g_autoptr (SqOutline) plain = rectangle ();
  g_assert_null (sq_outline_with_edge_as_curve (plain, 99));
}

/* --- holes --------------------------------------------------------------------------------- */

static void
test_holes (void)
{
  g_autoptr (SqOutline) plain = rectangle ();
  g_autoptr (SqOutline) turned = sq_outline_moved (plain, 0.5, sq_point (10, 20));
  SqPoint centre = sq_add (sq_turned (sq_point (200, 150), 0.5), sq_point (10, 20));
  SqId first, second;
  g_autoptr (SqOutline) one = sq_outline_with_rectangular_hole (turned, centre, 120, 80, &first);
  g_autoptr (SqOutline) two = sq_outline_with_round_hole (one, sq_add (centre, sq_point (100, 100)),
                                                          60, &second);
  guint ring, index;

  g_assert_cmpuint (first, ==, 5);
  g_assert_cmpuint (second, ==, 9);
  g_assert_nonnull (sq_outline_corner (two, second, &ring, &index));
  g_assert_cmpuint (ring, ==, 2);
  g_assert_cmpuint (index, ==, 0);
  g_assert_cmpfloat_with_epsilon (area_mm2 (two, 1), -120 * 80, 1e-6);
  g_assert_cmpfloat_with_epsilon (area_mm2 (two, 2), -G_PI * 900, 1e-6);
  g_assert_true (sq_outline_is_good (two, NULL));
  /* along the front */
  SqPoint corner = sq_add (sq_turned (sq_point (140, 110), 0.5), sq_point (10, 20));
  g_assert_cmpfloat (sq_distance (corner_at (two, first), corner), <, 1e-9);

  const SqCorner anticlockwise[] = { { .at = { 100, 100 } },
                                     { .at = { 200, 100 } },
                                     { .at = { 150, 200 } } };
  g_autoptr (SqOutline) drawn = sq_outline_with_hole (plain, anticlockwise, 3, NULL);
  g_assert_cmpfloat_with_epsilon (area_mm2 (drawn, 1), -5000, 1e-9);
  g_autoptr (SqOutline) nothing = sq_outline_new (NULL, NULL, 0);
  g_assert_null (sq_outline_with_hole (nothing, anticlockwise, 3, NULL));
}

static void
test_quick (void)
{
  guint n = 300, rounds = 0;
  double us = 0;

  while (rounds < n)
    {
      g_autoptr (SqOutline) before = random_seat ();
      g_autoptr (SqOutline) after = moved (before, 1, -900, 100);
      double share;
      gint64 start = g_get_monotonic_time ();
      g_autoptr (SqOutline) stop = sq_outline_last_good (before, after, &share, NULL);
      if (share == 1)
        continue;
      us += (double) (g_get_monotonic_time () - start) / n;
      rounds++;
    }
  g_test_minimized_result (us, "%.1f us a stop", us);
}

int
main (int argc, char *argv[])
{
  g_test_init (&argc, &argv, NULL);
  g_test_add_func ("/job/safe-edit/good", test_good);
  g_test_add_func ("/job/safe-edit/stop-at-edge", test_stop_at_edge);
  g_test_add_func ("/job/safe-edit/no-stop", test_no_stop);
  g_test_add_func ("/job/safe-edit/stop-of-bends", test_stop_of_bends);
  g_test_add_func ("/job/safe-edit/stop-at-hole", test_stop_at_hole);
  g_test_add_func ("/job/safe-edit/stop-law", test_stop_law);
  g_test_add_func ("/job/safe-edit/edge-as-curve", test_edge_as_curve);
  g_test_add_func ("/job/safe-edit/holes", test_holes);
  if (g_test_perf ())
    g_test_add_func ("/job/safe-edit/quick", test_quick);
  return g_test_run ();
}
