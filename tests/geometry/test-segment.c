/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "geometry/segment.h"

#include "base/units.h"

#define RANDOM_ROUNDS 2000

#define assert_near(a, b, within) g_assert_cmpfloat_with_epsilon ((a), (b), (within))

static void
assert_points_near (SqPoint a, SqPoint b, double within)
{
  assert_near (a.x, b.x, within);
  assert_near (a.y, b.y, within);
}

static SqPoint
random_point (double reach)
{
  return sq_point (g_test_rand_double_range (-reach, reach),
                   g_test_rand_double_range (-reach, reach));
}

/* A line or an arc of either turn, from nearly straight to nearly a full circle. */
static SqSegment
random_segment (double reach)
{
  SqSegment s = { random_point (reach), random_point (reach), 0 };
  int kind = g_test_rand_int_range (0, 5);

  if (kind > 0)
    s.bulge = pow (10, g_test_rand_double_range (-8, 1)) * (kind % 2 == 0 ? 1 : -1);
  return s;
}

/* R = c² / 8s + s / 2, sweep = 4 atan (2 s / c), bulge = 2 s / c, segment = R² / 2 (sweep − sin);
 * the figures are computed from these formulas apart from this program. */
static void
test_arcs (void)
{
  static const struct
  {
    double chord, sagitta, radius, degrees, length, area;
  } arcs[] = {
    { 24, 3, 25.5, 56.144974, 24.987824, 48.594751 },
    { 48, 2, 145, 19.054567, 48.221914, 64.088801 },
    { 100, 10, 130, 45.239730, 102.645691, 671.969923 },
    { 8, 4, 4, 180, 12.566371, 25.132741 },
  };

  for (guint i = 0; i < G_N_ELEMENTS (arcs); i++)
    {
      SqSegment s = { { 0, 0 }, { arcs[i].chord, 0 }, 2 * arcs[i].sagitta / arcs[i].chord };
      assert_near (sq_segment_radius_mm (&s), arcs[i].radius, 1e-12);
      assert_near (sq_segment_sweep_rad (&s) * SQ_DEG_PER_RAD, arcs[i].degrees, 5e-7);
      assert_near (sq_segment_length_mm (&s), arcs[i].length, 5e-7);
      assert_near (sq_segment_area_mm2 (&s), arcs[i].area, 5e-7);
      assert_points_near (sq_segment_point (&s, 0.5),
                          sq_point (arcs[i].chord / 2, -arcs[i].sagitta), 1e-12);
      s = sq_segment_reversed (&s);
      assert_near (sq_segment_radius_mm (&s), -arcs[i].radius, 1e-12);
      assert_near (sq_segment_area_mm2 (&s), -arcs[i].area, 5e-7);
    }
}

/* Centre and the sign of the bulge as the DXF library ezdxf gives them for this arc. */
static void
test_centre (void)
{
  SqSegment s = { { 0, 0 }, { 24, 0 }, 0.25 };

  assert_points_near (sq_segment_centre (&s), sq_point (12, 22.5), 1e-12);
  assert_points_near (sq_segment_direction (&s, 0.5), sq_point (1, 0), 1e-15);
  s.bulge = -0.25;
  assert_points_near (sq_segment_centre (&s), sq_point (12, -22.5), 1e-12);
}

/* A one-degree curve has a radius of 5729.578 ft by arc definition: US Army FM 5-430-00-1,
 * appendix F, "Curve tables". */
static void
test_one_degree_curve (void)
{
  double radius = 5729.578, sweep = SQ_RAD_PER_DEG;
  SqSegment s = { { 0, -radius },
                  { radius * sin (sweep), -radius * cos (sweep) },
                  tan (sweep / 4) };

  assert_near (sq_segment_length_mm (&s), 100, 5e-6);
  assert_near (sq_segment_radius_mm (&s), radius, 1e-6);
}

/* Slight bows: the sagitta is the bulge times half the chord, whatever the radius. */
static void
test_slight_bows (void)
{
  for (double bulge = 1.1e-9; bulge < 1e-3; bulge *= 10)
    {
      SqSegment s = { { 99000, 50000 }, { 99000, 50100 }, bulge };
      SqPoint middle = sq_segment_point (&s, 0.5);
      double t;

      assert_near (middle.x, 99000 + 50 * bulge, 2e-11);
      assert_near (sq_segment_length_mm (&s), 100 * (1 + 2.0 / 3 * bulge * bulge), 1e-10);
      assert_near (sq_segment_nearest_mm (&s, sq_point (98999, 50050), &t), 1 + 50 * bulge, 2e-11);
      assert_near (t, 0.5, 1e-12);
      assert_near (sq_segment_area_mm2 (&s) - sq_cross (s.from, s.to) / 2, 10000 * bulge / 3, 1e-6);
      assert_near (sq_segment_box (&s).max.x, 99000 + 50 * bulge, 2e-11);
    }
}

/* Point, place, nearest, direction and box against each other. */
static void
test_random_places (void)
{
  for (int i = 0; i < RANDOM_ROUNDS; i++)
    {
      SqSegment s = random_segment (1000);
      double t = g_test_rand_double (), found;
      SqPoint at = sq_segment_point (&s, t);
      SqVector along = sq_segment_direction (&s, t);
      double length = sq_segment_length_mm (&s), aside = fmin (10, length / 100);

      assert_near (sq_segment_place (&s, at), t, 1e-8);
      g_assert_cmpfloat (sq_segment_nearest_mm (&s, at, &found), <, 1e-9);
      if (t * length > aside && (1 - t) * length > aside)
        {
          assert_near (sq_segment_nearest_mm (&s, sq_moved (at, sq_right (along), aside), &found),
                       aside, 1e-9);
          assert_near (found, t, 1e-8);
        }
      assert_near (sq_norm (along), 1, 1e-12);
      double step = 1e-6;
      SqVector chord = sq_sub (sq_segment_point (&s, t + step), sq_segment_point (&s, t - step));
      assert_points_near (sq_scale (chord, 1 / (2 * step * length)), along, 1e-6);
      SqBox box = sq_segment_box (&s);
      g_assert_true (sq_box_meets (box, (SqBox){ at, at }, 1e-9));
    }
}

/* Every side of a box is reached by the arc. */
static void
test_box_is_tight (void)
{
  for (int i = 0; i < RANDOM_ROUNDS / 10; i++)
    {
      SqSegment s = random_segment (100);
      SqBox box = sq_segment_box (&s), sampled = sq_box_empty ();

      for (int k = 0; k <= 2000; k++)
        sampled = sq_box_with (sampled, sq_segment_point (&s, k / 2000.0));
      double within = sq_segment_length_mm (&s) * 1e-3;
      assert_points_near (box.min, sampled.min, within);
      assert_points_near (box.max, sampled.max, within);
    }
}

static void
test_random_nearest (void)
{
  for (int i = 0; i < RANDOM_ROUNDS / 10; i++)
    {
      SqSegment s = random_segment (100);
      SqPoint p = random_point (200);
      double t, distance = sq_segment_nearest_mm (&s, p, &t), best = INFINITY;

      assert_near (sq_distance (sq_segment_point (&s, t), p), distance, 1e-9);
      for (int k = 0; k <= 1000; k++)
        best = fmin (best, sq_distance (sq_segment_point (&s, k / 1000.0), p));
      g_assert_cmpfloat (distance, <=, best + 1e-9);
    }
}

static void
test_part (void)
{
  for (int i = 0; i < RANDOM_ROUNDS; i++)
    {
      SqSegment s = random_segment (1000);
      double t0 = g_test_rand_double (), t1 = g_test_rand_double ();
      SqSegment part = sq_segment_part (&s, t0, t1);
      double length = sq_segment_length_mm (&s);

      assert_near (sq_segment_length_mm (&part), fabs (t1 - t0) * length, 1e-8 * length);
      assert_points_near (sq_segment_point (&part, 0.5), sq_segment_point (&s, (t0 + t1) / 2),
                          1e-8 * length);
    }
  SqSegment s = random_segment (1000), whole = sq_segment_part (&s, 0, 1);
  g_assert_cmpmem (&whole.from, sizeof whole.from, &s.from, sizeof s.from);
  g_assert_cmpmem (&whole.to, sizeof whole.to, &s.to, sizeof s.to);
}

/* A corner of radius 3 and 90°, offset by 0.5: 4.712389 becomes 5.497787, longer by distance times
 * angle. */
static void
test_offset (void)
{
  SqSegment s = { { 3, 0 }, { 0, 3 }, tan (G_PI / 8) };
  gboolean inverted;
  SqSegment out = sq_segment_offset (&s, 0.5, &inverted);

  assert_near (sq_segment_length_mm (&s), 4.712389, 5e-7);
  assert_near (sq_segment_length_mm (&out), 5.497787, 5e-7);
  assert_points_near (sq_segment_centre (&out), sq_point (0, 0), 1e-14);
  g_assert_false (inverted);
  out = sq_segment_offset (&s, -4, &inverted);
  g_assert_true (inverted);
  assert_points_near (out.from, sq_point (-1, 0), 1e-14);
  assert_points_near (out.to, sq_point (0, -1), 1e-14);
  assert_points_near (sq_segment_centre (&out), sq_point (0, 0), 1e-14);
  s = sq_segment_reversed (&s);
  out = sq_segment_offset (&s, 0.5, &inverted);
  g_assert_false (inverted);
  assert_near (sq_segment_radius_mm (&out), -2.5, 1e-14);
}

static void
test_random_offset (void)
{
  for (int i = 0; i < RANDOM_ROUNDS; i++)
    {
      SqSegment s = random_segment (100);
      double by = g_test_rand_double_range (-20, 20), t = g_test_rand_double ();
      gboolean inverted;
      SqSegment out = sq_segment_offset (&s, by, &inverted);
      SqPoint on = sq_moved (sq_segment_point (&s, t), sq_right (sq_segment_direction (&s, t)), by);

      assert_points_near (sq_segment_point (&out, t), on, 1e-8);
      if (sq_segment_is_arc (&s))
        g_assert_cmpint (inverted, ==,
                         sq_segment_radius_mm (&s) * (sq_segment_radius_mm (&s) + by) <= 0);
      else
        g_assert_false (inverted);
    }
}

static guint
meet (SqSegment a, SqSegment b, SqMeeting out[2], gboolean *overlap)
{
  guint n = sq_segments_meet (&a, &b, out, overlap);

  for (guint i = 0; i < n; i++)
    {
      double t;
      g_assert_cmpfloat (sq_segment_nearest_mm (&a, out[i].at, &t), <=, SQ_COINCIDE_MM);
      g_assert_cmpfloat (sq_segment_nearest_mm (&b, out[i].at, &t), <=, SQ_COINCIDE_MM);
      g_assert_cmpfloat (sq_distance (sq_segment_point (&a, out[i].ta), out[i].at), <=,
                         1.01 * SQ_COINCIDE_MM);
      g_assert_cmpfloat (sq_distance (sq_segment_point (&b, out[i].tb), out[i].at), <=,
                         1.01 * SQ_COINCIDE_MM);
    }
  if (n == 2)
    g_assert_cmpfloat (out[0].ta, <=, out[1].ta);
  return n;
}

static void
test_lines_meet (void)
{
  SqSegment a = { { 0, 0 }, { 10, 0 }, 0 };
  SqMeeting at[2];
  gboolean overlap;

  g_assert_cmpuint (meet (a, (SqSegment){ { 4, -3 }, { 4, 1 }, 0 }, at, &overlap), ==, 1);
  assert_points_near (at[0].at, sq_point (4, 0), 1e-15);
  assert_near (at[0].ta, 0.4, 1e-15);
  assert_near (at[0].tb, 0.75, 1e-15);
  g_assert_false (overlap);
  g_assert_cmpuint (meet (a, (SqSegment){ { 4, 3 }, { 4, 1e-6 }, 0 }, at, NULL), ==, 0);
  /* ends that touch */
  g_assert_cmpuint (meet (a, (SqSegment){ { 10, 0 }, { 14, 1 }, 0 }, at, NULL), ==, 1);
  g_assert_true (at[0].ta == 1 && at[0].tb == 0);
  g_assert_cmpuint (meet (a, (SqSegment){ { 4, 3 }, { 4, 5e-8 }, 0 }, at, NULL), ==, 1);
  g_assert_true (at[0].tb == 1);
  g_assert_cmpuint (meet (a, (SqSegment){ { 10, 0 }, { 14, 0 }, 0 }, at, &overlap), ==, 1);
  g_assert_false (overlap);
  /* over each other, along and against, within and beyond */
  g_assert_cmpuint (meet (a, (SqSegment){ { 6, 0 }, { 14, 0 }, 0 }, at, &overlap), ==, 2);
  g_assert_true (overlap && at[0].ta == 0.6 && at[0].tb == 0 && at[1].ta == 1);
  g_assert_cmpuint (meet (a, (SqSegment){ { 8, 0 }, { -2, 0 }, 0 }, at, &overlap), ==, 2);
  g_assert_true (overlap && at[0].ta == 0 && at[0].tb == 0.8 && at[1].tb == 0);
  g_assert_cmpuint (meet (a, (SqSegment){ { 11, 0 }, { 14, 0 }, 0 }, at, &overlap), ==, 0);
  g_assert_cmpuint (meet (a, (SqSegment){ { 0, 1 }, { 10, 1 }, 0 }, at, &overlap), ==, 0);
  /* a crossing at a tiny angle far out */
  SqSegment far_a = { { 0, 100000 }, { 100000, 100000 }, 0 };
  SqSegment far_b = { { 0, 99999.99 }, { 100000, 100000.01 }, 0 };
  g_assert_cmpuint (meet (far_a, far_b, at, &overlap), ==, 1);
  assert_near (at[0].at.x, 50000, 1e-3);
}

static void
test_line_and_arc_meet (void)
{
  SqSegment half = { { -5, 0 }, { 5, 0 }, 1 }; /* lower half of a circle of radius 5 */
  SqMeeting at[2];
  gboolean overlap;

  g_assert_cmpuint (meet ((SqSegment){ { -10, -3 }, { 10, -3 }, 0 }, half, at, &overlap), ==, 2);
  assert_points_near (at[0].at, sq_point (-4, -3), 1e-14);
  assert_points_near (at[1].at, sq_point (4, -3), 1e-14);
  g_assert_cmpuint (meet ((SqSegment){ { -10, 3 }, { 10, 3 }, 0 }, half, at, &overlap), ==, 0);
  /* touching, and missing by more and by less than the tolerance */
  g_assert_cmpuint (meet ((SqSegment){ { -10, -5 }, { 10, -5 }, 0 }, half, at, &overlap), ==, 1);
  assert_points_near (at[0].at, sq_point (0, -5), 1e-14);
  g_assert_false (overlap);
  g_assert_cmpuint (
      meet ((SqSegment){ { -10, -5.00000009 }, { 10, -5.00000009 }, 0 }, half, at, NULL), ==, 1);
  g_assert_cmpuint (
      meet ((SqSegment){ { -10, -4.99999991 }, { 10, -4.99999991 }, 0 }, half, at, NULL), ==, 1);
  g_assert_cmpuint (
      meet ((SqSegment){ { -10, -5.0000002 }, { 10, -5.0000002 }, 0 }, half, at, NULL), ==, 0);
  /* a rounding and its side: they share the node where they touch and nothing else */
  SqSegment rounding = { { 90, 0 }, { 100, 10 }, tan (G_PI / 8) };
  g_assert_cmpuint (meet ((SqSegment){ { 0, 0 }, { 90, 0 }, 0 }, rounding, at, &overlap), ==, 1);
  g_assert_true (at[0].ta == 1 && at[0].tb == 0 && !overlap);
  /* a side that ends a little inside its touch gives one point all the same */
  g_assert_cmpuint (meet ((SqSegment){ { 0, 0 }, { 90.00001, 0 }, 0 }, rounding, at, &overlap), ==,
                    1);
  g_assert_false (overlap);
  /* an arc too slight to tell from its chord lies over it */
  g_assert_cmpuint (meet ((SqSegment){ { 0, 0 }, { 100, 0 }, 0 },
                          (SqSegment){ { 0, 0 }, { 100, 0 }, 1.5e-9 }, at, &overlap),
                    ==, 2);
  g_assert_true (overlap);
  g_assert_cmpuint (meet ((SqSegment){ { 0, 0 }, { 100, 0 }, 0 },
                          (SqSegment){ { 0, 0 }, { 100, 0 }, 1e-6 }, at, &overlap),
                    ==, 2);
  g_assert_false (overlap);
}

static void
test_arcs_meet (void)
{
  SqSegment low = { { -5, 0 }, { 5, 0 }, 1 }, high = { { 5, 0 }, { -5, 0 }, 1 };
  SqMeeting at[2];
  gboolean overlap;

  /* the two halves of a circle share their ends and nothing else */
  g_assert_cmpuint (meet (low, high, at, &overlap), ==, 2);
  g_assert_true (!overlap && at[0].ta == 0 && at[0].tb == 1 && at[1].ta == 1 && at[1].tb == 0);
  /* circles of radius 5 whose centres are 8 apart cross 3 to either side */
  SqSegment right = { { 8, 5 }, { 8, -5 }, 1 };
  g_assert_cmpuint (meet (low, right, at, &overlap), ==, 1);
  assert_points_near (at[0].at, sq_point (4, -3), 1e-14);
  /* touching from outside and from inside */
  g_assert_cmpuint (meet (low, (SqSegment){ { 2, -7.000001 }, { -2, -7.000001 }, 1 }, at, NULL), ==,
                    0);
  g_assert_cmpuint (meet (low, (SqSegment){ { 2, -7 }, { -2, -7 }, 1 }, at, &overlap), ==, 1);
  assert_points_near (at[0].at, sq_point (0, -5), 1e-14);
  g_assert_cmpuint (meet (low, (SqSegment){ { -2, -3 }, { 2, -3 }, 1 }, at, &overlap), ==, 1);
  assert_points_near (at[0].at, sq_point (0, -5), 1e-14);
  g_assert_false (overlap);
  /* concentric */
  g_assert_cmpuint (meet (low, (SqSegment){ { -4, 0 }, { 4, 0 }, 1 }, at, &overlap), ==, 0);
  /* over each other: a quarter of the circle within, one against, one that begins at the end */
  SqSegment quarter = { { -3, -4 }, { 4, -3 }, tan (G_PI / 8) };
  g_assert_cmpuint (meet (low, quarter, at, &overlap), ==, 2);
  g_assert_true (overlap && at[0].tb == 0 && at[1].tb == 1);
  quarter = sq_segment_reversed (&quarter);
  g_assert_cmpuint (meet (low, quarter, at, &overlap), ==, 2);
  g_assert_true (overlap && at[0].tb == 1 && at[1].tb == 0);
  SqSegment next = { { 5, 0 }, { 0, 5 }, tan (G_PI / 8) };
  g_assert_cmpuint (meet (low, next, at, &overlap), ==, 1);
  g_assert_false (overlap);
  /* major arcs that overlap at both their ends: the longer stretch */
  SqSegment left_open = { { -3, 4 }, { -3, -4 }, -tan (atan2 (4, -3) / 2) };
  SqSegment right_open = { { 3, -4 }, { 3, 4 }, -tan (atan2 (4, -3) / 2) };
  g_assert_cmpfloat (fabs (left_open.bulge), >, 1);
  g_assert_cmpuint (meet (left_open, right_open, at, &overlap), ==, 2);
  g_assert_true (overlap);
}

/* Pairs built to cross at a known point are found there. */
static void
test_random_meetings (void)
{
  for (int i = 0; i < RANDOM_ROUNDS; i++)
    {
      SqSegment a = random_segment (1000), b = random_segment (1000);
      double ta = g_test_rand_double_range (0.01, 0.99), tb = g_test_rand_double_range (0.01, 0.99);
      SqPoint at = sq_segment_point (&a, ta);
      SqVector move = sq_sub (at, sq_segment_point (&b, tb));
      SqMeeting found[2];

      b.from = sq_add (b.from, move);
      b.to = sq_add (b.to, move);
      guint n = meet (a, b, found, NULL);
      g_assert_cmpuint (n, >=, 1);
      double angle = fabs (sq_cross (sq_segment_direction (&a, ta), sq_segment_direction (&b, tb)));
      double miss = sq_distance (found[0].at, at);
      if (n == 2)
        miss = fmin (miss, sq_distance (found[1].at, at));
      if (angle > 1e-3)
        g_assert_cmpfloat (miss, <, 1e-9 / angle + SQ_COINCIDE_MM);
      /* in the other order the same */
      SqMeeting back[2];
      g_assert_cmpuint (meet (b, a, back, NULL), ==, n);
    }
}

static void
test_extended (void)
{
  SqSegment a = { { 0, 0 }, { 1, 0 }, 0 }, b = { { 5, 5 }, { 5, 4 }, 0 };
  SqSegment arc = { { 3, 0 }, { 0, 3 }, tan (G_PI / 8) };
  SqPoint at[2];

  g_assert_cmpuint (sq_segments_meet_extended (&a, &b, at), ==, 1);
  assert_points_near (at[0], sq_point (5, 0), 1e-15);
  g_assert_cmpuint (sq_segments_meet_extended (&a, &arc, at), ==, 2);
  g_assert_cmpuint (sq_segments_meet_extended (&a, &a, at), ==, 0);
  g_assert_cmpuint (sq_segments_meet_extended (&arc, &arc, at), ==, 0);
  b = (SqSegment){ { 0, 3 }, { 1, 3 }, 0 };
  g_assert_cmpuint (sq_segments_meet_extended (&a, &b, at), ==, 0);
  g_assert_cmpuint (sq_segments_meet_extended (&b, &arc, at), ==, 1);
  assert_points_near (at[0], sq_point (0, 3), 1e-14);
}

int
main (int argc, char **argv)
{
  g_test_init (&argc, &argv, NULL);
  g_test_add_func ("/geometry/segment/arcs", test_arcs);
  g_test_add_func ("/geometry/segment/centre", test_centre);
  g_test_add_func ("/geometry/segment/one-degree-curve", test_one_degree_curve);
  g_test_add_func ("/geometry/segment/slight-bows", test_slight_bows);
  g_test_add_func ("/geometry/segment/places/random", test_random_places);
  g_test_add_func ("/geometry/segment/box/tight", test_box_is_tight);
  g_test_add_func ("/geometry/segment/nearest/random", test_random_nearest);
  g_test_add_func ("/geometry/segment/part", test_part);
  g_test_add_func ("/geometry/segment/offset", test_offset);
  g_test_add_func ("/geometry/segment/offset/random", test_random_offset);
  g_test_add_func ("/geometry/segment/meet/lines", test_lines_meet);
  g_test_add_func ("/geometry/segment/meet/line-and-arc", test_line_and_arc_meet);
  g_test_add_func ("/geometry/segment/meet/arcs", test_arcs_meet);
  g_test_add_func ("/geometry/segment/meet/random", test_random_meetings);
  g_test_add_func ("/geometry/segment/extended", test_extended);
  return g_test_run ();
}
