/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "base/units.h"
#include "geometry/rounding.h"

static void
assert_near (double a, double b, double within)
{
  if (!(fabs (a - b) <= within))
    g_error ("%.17g and %.17g differ by %g, more than %g", a, b, fabs (a - b), within);
}

static void
assert_points_near (SqPoint a, SqPoint b, double within)
{
  assert_near (a.x, b.x, within);
  assert_near (a.y, b.y, within);
}

static double
random_between (double from, double to)
{
  return g_test_rand_double_range (from, to);
}

/* @rounding is an arc of @radius_mm that takes over from @in and hands over to @out without a
 * kink. */
static void
assert_rounds (const SqRounding *rounding, const SqSegment *in, const SqSegment *out,
               double radius_mm)
{
  const SqSegment *arc = &rounding->arc;
  double turn = sq_angle_rad (sq_segment_direction (in, 1), sq_segment_direction (out, 0));

  g_assert_true (rounding->t_in >= 0 && rounding->t_in <= 1);
  g_assert_true (rounding->t_out >= 0 && rounding->t_out <= 1);
  g_assert_true (arc->bulge * turn > 0);
  assert_near (fabs (sq_segment_radius_mm (arc)) / radius_mm, 1, 1e-9);
  assert_points_near (arc->from, sq_segment_point (in, rounding->t_in), 1e-9);
  assert_points_near (arc->to, sq_segment_point (out, rounding->t_out), 1e-9);
  assert_near (
      sq_angle_rad (sq_segment_direction (in, rounding->t_in), sq_segment_direction (arc, 0)), 0,
      1e-9);
  assert_near (
      sq_angle_rad (sq_segment_direction (arc, 1), sq_segment_direction (out, rounding->t_out)), 0,
      1e-9);
}

/* A segment that ends in @corner along @direction (or starts there, @starts), an arc or a line. */
static SqSegment
random_side (SqPoint corner, SqVector direction, gboolean starts, gboolean is_arc)
{
  double length = random_between (50, 400);
  double bulge = is_arc ? random_between (-2, 2) : 0;
  SqVector chord = sq_turned (direction, (starts ? 2 : -2) * atan (bulge));

  return starts ? (SqSegment){ corner, sq_moved (corner, chord, length), bulge }
                : (SqSegment){ sq_moved (corner, chord, -length), corner, bulge };
}

typedef struct
{
  SqSegment in, out;
} Sides;

static Sides
random_sides (gboolean in_is_arc, gboolean out_is_arc)
{
  SqPoint corner = { random_between (-500, 500), random_between (-500, 500) };
  SqVector arriving = sq_turned (sq_point (1, 0), random_between (-G_PI, G_PI));
  double turn = random_between (0.05, 3.0) * (g_test_rand_bit () ? 1 : -1);

  return (Sides){ random_side (corner, arriving, FALSE, in_is_arc),
                  random_side (corner, sq_turned (arriving, turn), TRUE, out_is_arc) };
}

/* Tangent length r tan (φ / 2), arc length r φ: elementary geometry. */
static void
test_two_lines (void)
{
  for (int i = 0; i < 2000; i++)
    {
      Sides sides = random_sides (FALSE, FALSE);
      double turn = sq_angle_rad (sq_segment_direction (&sides.in, 1),
                                  sq_segment_direction (&sides.out, 0));
      double in = sq_segment_length_mm (&sides.in), out = sq_segment_length_mm (&sides.out);
      double largest = fmin (in, out) / tan (fabs (turn) / 2);
      double radius = largest * random_between (0.01, 1.5), told;
      SqRounding rounding;

      gboolean fits = sq_corner_rounding (&sides.in, &sides.out, radius, &rounding, &told);
      g_assert_cmpint (fits, ==, radius < largest);
      if (!fits)
        {
          g_assert_true (told <= largest + 1e-4 && told >= largest - 0.01);
          continue;
        }
      assert_rounds (&rounding, &sides.in, &sides.out, radius);
      assert_near (sq_segment_length_mm (&rounding.arc), radius * fabs (turn), 1e-9 * radius);
      assert_near ((1 - rounding.t_in) * in, radius * tan (fabs (turn) / 2), 1e-9);
      assert_near (rounding.t_out * out, radius * tan (fabs (turn) / 2), 1e-9);
    }
}

/* The same by another way: the parallels on the inner side, prolonged; of the centres where they
 * meet and whose feet lie on both segments, the one that takes least from them. Doubtful within a
 * thousandth of the segments' ends. */
typedef enum
{
  NONE,
  ONE,
  DOUBTFUL,
} Oracle;

static Oracle
oracle (const Sides *sides, double radius_mm, SqPoint *centre)
{
  double turn = sq_angle_rad (sq_segment_direction (&sides->in, 1),
                              sq_segment_direction (&sides->out, 0));
  double by = turn > 0 ? -radius_mm : radius_mm, least = INFINITY;
  gboolean inverted_in, inverted_out, doubtful = FALSE;
  SqSegment in = sq_segment_offset (&sides->in, by, &inverted_in);
  SqSegment out = sq_segment_offset (&sides->out, by, &inverted_out);
  SqPoint meets[2];

  if (inverted_in || inverted_out)
    return NONE;
  guint n = sq_segments_meet_extended (&in, &out, meets);
  for (guint i = 0; i < n; i++)
    {
      double t = sq_segment_place (&sides->in, meets[i]);
      double u = sq_segment_place (&sides->out, meets[i]);
      double taken = (1 - t) * sq_segment_length_mm (&sides->in)
                     + u * sq_segment_length_mm (&sides->out);
      doubtful |= fabs (t) < 1e-3 || fabs (t - 1) < 1e-3 || fabs (u) < 1e-3 || fabs (u - 1) < 1e-3;
      if (t >= 0 && t <= 1 && u >= 0 && u <= 1 && taken < least)
        {
          least = taken;
          *centre = meets[i];
        }
    }
  doubtful |= n == 2 && sq_distance (meets[0], meets[1]) < 0.1;
  return doubtful ? DOUBTFUL : isfinite (least) ? ONE : NONE;
}

static void
check_random_sides (gboolean in_is_arc, gboolean out_is_arc)
{
  guint fitted = 0;

  for (int i = 0; i < 5000; i++)
    {
      Sides sides = random_sides (in_is_arc, out_is_arc);
      double radius = random_between (1, 150), largest = NAN;
      SqRounding rounding;
      SqPoint centre = { NAN, NAN };
      gboolean fits = sq_corner_rounding (&sides.in, &sides.out, radius, &rounding, &largest);
      Oracle expected = oracle (&sides, radius, &centre);

      if (fits)
        {
          assert_rounds (&rounding, &sides.in, &sides.out, radius);
          fitted++;
        }
      if (expected == ONE)
        g_assert_true (fits);
      if (expected == ONE && fits)
        assert_points_near (sq_segment_centre (&rounding.arc), centre, 1e-6);
      if (expected == NONE)
        g_assert_false (fits);
      if (fits)
        continue;
      g_assert_true (largest >= 0 && largest < radius);
      for (double part = 0.1; part <= 1; part += 0.1)
        if (largest * part > 0)
          g_assert_true (
              sq_corner_rounding (&sides.in, &sides.out, largest * part, &rounding, NULL));
      g_assert_false (sq_corner_rounding (&sides.in, &sides.out, largest + 0.01, &rounding, NULL));
    }
  g_test_message ("%u of 5000 fit", fitted);
  g_assert_cmpuint (fitted, >, 500);
}

static void
test_line_and_arc (void)
{
  check_random_sides (FALSE, TRUE);
}

static void
test_arc_and_line (void)
{
  check_random_sides (TRUE, FALSE);
}

static void
test_two_arcs (void)
{
  check_random_sides (TRUE, TRUE);
}

/* Half a disc of radius 100 on its diameter: an arc of radius r touches the diameter √(100² − 200 r)
 * from the middle, so 50 is the largest, and 32 gives 60. */
static void
test_half_disc (void)
{
  const SqSegment in = { { -100, 0 }, { 100, 0 }, 0 }, out = { { 100, 0 }, { -100, 0 }, 1 };
  SqRounding rounding;
  double largest;

  g_assert_true (sq_corner_rounding (&in, &out, 32, &rounding, &largest));
  assert_rounds (&rounding, &in, &out, 32);
  assert_points_near (rounding.arc.from, sq_point (60, 0), 1e-9);
  assert_points_near (sq_segment_centre (&rounding.arc), sq_point (60, 32), 1e-9);
  assert_points_near (rounding.arc.to, sq_point (6000 / 68.0, 3200 / 68.0), 1e-9);
  g_assert_false (sq_corner_rounding (&in, &out, 60, &rounding, &largest));
  g_assert_true (largest <= 50 && largest > 49.99);
}

/* The lens of two circles of radius 100 whose centres are 120 apart: in it fits a radius of
 * 100 − 60, and not more. */
static void
test_lens (void)
{
  const double bulge = tan (asin (0.8) / 2); /* half a chord of 80 */
  const SqSegment in = { { 0, -80 }, { 0, 80 }, bulge }, out = { { 0, 80 }, { 0, -80 }, bulge };
  SqRounding rounding;
  double largest;

  g_assert_true (sq_corner_rounding (&in, &out, 39.99, &rounding, NULL));
  assert_rounds (&rounding, &in, &out, 39.99);
  g_assert_false (sq_corner_rounding (&in, &out, 40.01, &rounding, &largest));
  g_assert_true (largest <= 40 && largest > 39.99);
}

/* The tip of a drop between two bulging arcs: they turn as well, so the rounding turns by more than
 * the corner, and more the larger it is. */
static void
test_drop (void)
{
  const SqSegment in = { { -200, -20 }, { 0, 0 }, 0.6 }, out = { { 0, 0 }, { -200, 20 }, 0.6 };
  double turn = sq_angle_rad (sq_segment_direction (&in, 1), sq_segment_direction (&out, 0));
  double before = turn;
  SqRounding rounding;

  for (double radius = 10; radius <= 70; radius += 10)
    {
      g_assert_true (sq_corner_rounding (&in, &out, radius, &rounding, NULL));
      assert_rounds (&rounding, &in, &out, radius);
      g_assert_cmpfloat (sq_segment_sweep_rad (&rounding.arc), >, before);
      before = sq_segment_sweep_rad (&rounding.arc);
    }
  g_assert_cmpfloat (before, >, 2.5 * turn);
}

static void
test_no_corner (void)
{
  const SqSegment line = { { 0, 0 }, { 100, 0 }, 0 }, on = { { 100, 0 }, { 200, 0 }, 0 };
  const SqSegment tangent = { { 100, 0 }, { 200, 100 }, tan (G_PI / 8) };
  const SqSegment back = { { 100, 0 }, { 20, 0 }, 0 };
  SqRounding rounding;
  double largest = 1;

  g_assert_false (sq_corner_rounding (&line, &on, 10, &rounding, &largest));
  g_assert_true (isinf (largest));
  g_assert_false (sq_corner_rounding (&line, &tangent, 10, &rounding, &largest));
  g_assert_true (isinf (largest));
  g_assert_false (sq_corner_rounding (&line, &back, 10, &rounding, &largest));
  g_assert_cmpfloat (largest, ==, 0);
}

static GArray *
new_troubles (void)
{
  return g_array_new (FALSE, FALSE, sizeof (SqRoundingTrouble));
}

static void
assert_trouble (const GArray *troubles, guint i, guint node, double largest_mm)
{
  SqRoundingTrouble trouble = g_array_index (troubles, SqRoundingTrouble, i);

  g_assert_cmpuint (trouble.node, ==, node);
  g_assert_true (trouble.largest_mm <= largest_mm + 1e-6
                 && trouble.largest_mm >= largest_mm - 0.01);
}

/* Derived by hand: perimeter 2 (24 + 20) - 8 × 3 + 2 π 3, area 24 × 20 - (4 - π) 3². */
static void
test_rectangle (void)
{
  g_autoptr (SqPath) ring = sq_path_new_rectangle (0, 0, 24, 20);
  const double radius[] = { 3, 3, 3, 3 };
  const guint32 tag[] = { 10, 11, 12, 13 };
  g_autoptr (GArray) troubles = new_troubles ();
  g_autoptr (SqPath) rounded = sq_path_rounded (ring, radius, tag, troubles);
  static const guint32 tags[] = { 0, 11, 1, 12, 2, 13, 3, 10 };

  g_assert_cmpuint (troubles->len, ==, 0);
  g_assert_true (sq_path_is_ring (rounded));
  assert_near (sq_path_length_mm (rounded), 82.849556, 5e-7);
  assert_near (sq_path_area_mm2 (rounded), 472.274334, 5e-7);
  assert_near (sq_path_length_mm (rounded), 88 - 24 + 6 * G_PI, 1e-11);
  assert_near (sq_path_area_mm2 (rounded), 480 - 9 * (4 - G_PI), 1e-10);
  g_assert_cmpuint (sq_path_n_nodes (rounded), ==, 8);
  for (guint i = 0; i < 8; i++)
    {
      g_assert_cmpuint (sq_path_nodes (rounded)[i].tag, ==, tags[i]);
      assert_near (sq_path_nodes (rounded)[i].bulge, i % 2 == 1 ? tan (G_PI / 8) : 0, 1e-12);
    }
  assert_points_near (sq_path_nodes (rounded)[0].at, sq_point (3, 0), 1e-12);
}

/* Only what is asked for changes. */
static void
test_some_corners (void)
{
  g_autoptr (SqPath) ring = sq_path_new_rectangle (0, 0, 100, 60);
  const double none[4] = { 0 }, one[] = { 0, 0, 20, 0 };
  const guint32 tag[] = { 4, 5, 6, 7 };
  g_autoptr (SqPath) same = sq_path_rounded (ring, none, tag, NULL);
  g_autoptr (SqPath) rounded = sq_path_rounded (ring, one, tag, NULL);

  g_assert_cmpuint (sq_path_n_nodes (same), ==, 4);
  for (guint i = 0; i < 4; i++)
    assert_points_near (sq_path_nodes (same)[i].at, sq_path_nodes (ring)[i].at, 0);
  g_assert_cmpuint (sq_path_n_nodes (rounded), ==, 5);
  assert_points_near (sq_path_nodes (rounded)[0].at, sq_point (0, 0), 0);
  assert_points_near (sq_path_nodes (rounded)[2].at, sq_point (100, 40), 1e-12);
  g_assert_cmpuint (sq_path_nodes (rounded)[2].tag, ==, 6);
  assert_near (sq_path_area_mm2 (rounded), 6000 - 400 * (1 - G_PI / 4), 1e-9);
}

/* A reflex corner is filled: the arc turns the other way and the area grows. */
static void
test_reflex (void)
{
  const SqPoint points[] = { { 0, 0 }, { 60, 0 }, { 60, 20 }, { 20, 20 }, { 20, 50 }, { 0, 50 } };
  const double radius[] = { 0, 0, 0, 12, 0, 0 };
  const guint32 tag[6] = { 9, 9, 9, 9, 9, 9 };
  g_autoptr (SqPath) ring = sq_path_new_polygon (points, 6);
  g_autoptr (SqPath) rounded = sq_path_rounded (ring, radius, tag, NULL);

  g_assert_cmpuint (sq_path_nodes (rounded)[3].tag, ==, 9);
  assert_near (sq_path_nodes (rounded)[3].bulge, -tan (G_PI / 8), 1e-12);
  assert_points_near (sq_path_nodes (rounded)[3].at, sq_point (32, 20), 1e-12);
  assert_near (sq_path_area_mm2 (rounded), 1800 + 144 * (1 - G_PI / 4), 1e-9);
}

/* Roundings that use up a side leave nothing of it. */
static void
test_used_up (void)
{
  g_autoptr (SqPath) oblong = sq_path_new_rectangle (0, 0, 100, 50);
  g_autoptr (SqPath) square = sq_path_new_rectangle (0, 0, 100, 100);
  const double r25[] = { 25, 25, 25, 25 }, r50[] = { 50, 50, 50, 50 }, r100[] = { 0, 100, 0, 0 };
  const guint32 tag[] = { 4, 5, 6, 7 };
  g_autoptr (GArray) troubles = new_troubles ();
  g_autoptr (SqPath) stadium = sq_path_rounded (oblong, r25, tag, troubles);
  g_autoptr (SqPath) circle = sq_path_rounded (square, r50, tag, troubles);
  g_autoptr (SqPath) quarter = sq_path_rounded (square, r100, tag, troubles);

  g_assert_cmpuint (troubles->len, ==, 0);
  g_assert_cmpuint (sq_path_n_nodes (stadium), ==, 6);
  assert_near (sq_path_length_mm (stadium), 100 + 50 * G_PI, 1e-9);
  g_assert_cmpuint (sq_path_n_nodes (circle), ==, 4);
  assert_near (sq_path_area_mm2 (circle), 2500 * G_PI, 1e-9);
  g_assert_cmpuint (sq_path_n_nodes (quarter), ==, 3);
  assert_near (sq_path_area_mm2 (quarter), 2500 * G_PI, 1e-9);
}

/* Two neighbours of 60 on a side of 100: each may have 40 while the other keeps its 60. Both stay
 * sharp; the third, which shares no crowded side, is made. */
static void
test_crowded (void)
{
  g_autoptr (SqPath) ring = sq_path_new_rectangle (0, 0, 100, 100);
  const double radius[] = { 60, 60, 30, 0 };
  const guint32 tag[] = { 4, 5, 6, 7 };
  g_autoptr (GArray) troubles = new_troubles ();
  g_autoptr (SqPath) rounded = sq_path_rounded (ring, radius, tag, troubles);

  g_assert_cmpuint (troubles->len, ==, 2);
  assert_trouble (troubles, 0, 0, 40);
  assert_trouble (troubles, 1, 1, 40);
  g_assert_cmpuint (sq_path_n_nodes (rounded), ==, 5);
  assert_near (sq_path_area_mm2 (rounded), 10000 - 900 * (1 - G_PI / 4), 1e-9);

  const double mended[] = { 60, 40, 30, 0 };
  g_array_set_size (troubles, 0);
  g_autoptr (SqPath) good = sq_path_rounded (ring, mended, tag, troubles);
  g_assert_cmpuint (troubles->len, ==, 0);
  assert_near (sq_path_area_mm2 (good), 10000 - (3600 + 1600 + 900) * (1 - G_PI / 4), 1e-9);
}

/* One that fits nowhere takes no room from its neighbours, but they take room from it. */
static void
test_too_large (void)
{
  g_autoptr (SqPath) ring = sq_path_new_rectangle (0, 0, 100, 100);
  const double radius[] = { 30, 500, 20, 0 };
  const guint32 tag[] = { 4, 5, 6, 7 };
  g_autoptr (GArray) troubles = new_troubles ();
  g_autoptr (SqPath) rounded = sq_path_rounded (ring, radius, tag, troubles);

  g_assert_cmpuint (troubles->len, ==, 1);
  assert_trouble (troubles, 0, 1, 70);
  assert_near (sq_path_area_mm2 (rounded), 10000 - (900 + 400) * (1 - G_PI / 4), 1e-9);
}

/* Corners that need none, or so little that nothing would be seen, are no trouble. */
static void
test_straight_corner (void)
{
  const SqPoint points[] = { { 0, 0 }, { 50, 0 }, { 100, 0 }, { 100, 100 }, { 0, 100 } };
  const double radius[] = { 0, 40, 1e-9, 0, 0 };
  const guint32 tag[5] = { 9, 9, 9, 9, 9 };
  g_autoptr (SqPath) ring = sq_path_new_polygon (points, 5);
  g_autoptr (GArray) troubles = new_troubles ();
  g_autoptr (SqPath) rounded = sq_path_rounded (ring, radius, tag, troubles);

  g_assert_cmpuint (troubles->len, ==, 0);
  g_assert_cmpuint (sq_path_n_nodes (rounded), ==, 5);
}

/* A seat with a bowed side and a hollow one: smooth where rounded, and the same after the ring is
 * reversed or its start moved. */
static void
test_bowed_ring (void)
{
  const SqNode nodes[] = {
    { { 0, 0 }, 0.2, 0 }, { { 400, 0 }, -0.15, 1 }, { { 450, 380 }, 0, 2 }, { { 60, 420 }, 0.3, 3 }
  };
  const double radius[] = { 30, 50, 70, 40 };
  const guint32 tag[] = { 4, 5, 6, 7 };
  g_autoptr (SqPath) ring = sq_path_new (nodes, 4, TRUE);
  g_autoptr (SqPath) back = sq_path_reversed (ring);
  g_autoptr (GArray) troubles = new_troubles ();
  g_autoptr (SqPath) rounded = sq_path_rounded (ring, radius, tag, troubles);

  g_assert_cmpuint (troubles->len, ==, 0);
  g_assert_cmpuint (sq_path_n_segments (rounded), ==, 8);
  for (guint i = 0; i < 8; i++)
    {
      SqSegment a = sq_path_segment (rounded, i), b = sq_path_segment (rounded, (i + 1) % 8);
      assert_near (sq_angle_rad (sq_segment_direction (&a, 1), sq_segment_direction (&b, 0)), 0,
                   1e-10);
      if (i % 2 == 1)
        assert_near (sq_segment_radius_mm (&a), radius[(i + 1) / 2 % 4], 1e-9);
      else
        {
          SqSegment whole = sq_path_segment (ring, i / 2);
          assert_near (1 / sq_segment_radius_mm (&a), 1 / sq_segment_radius_mm (&whole), 1e-12);
        }
    }

  /* The reversed ring starts at some node; find the radii by place. */
  double at_node[4];
  for (guint i = 0; i < 4; i++)
    for (guint k = 0; k < 4; k++)
      if (sq_distance (sq_path_nodes (back)[i].at, nodes[k].at) < 1e-9)
        at_node[i] = radius[k];
  g_autoptr (SqPath) back_rounded = sq_path_rounded (back, at_node, tag, NULL);
  assert_near (sq_path_length_mm (back_rounded), sq_path_length_mm (rounded), 1e-9);
  assert_near (sq_path_area_mm2 (back_rounded), -sq_path_area_mm2 (rounded), 1e-6);
}

int
main (int argc, char **argv)
{
  g_test_init (&argc, &argv, NULL);
  g_test_add_func ("/geometry/rounding/two-lines", test_two_lines);
  g_test_add_func ("/geometry/rounding/line-and-arc", test_line_and_arc);
  g_test_add_func ("/geometry/rounding/arc-and-line", test_arc_and_line);
  g_test_add_func ("/geometry/rounding/two-arcs", test_two_arcs);
  g_test_add_func ("/geometry/rounding/half-disc", test_half_disc);
  g_test_add_func ("/geometry/rounding/lens", test_lens);
  g_test_add_func ("/geometry/rounding/drop", test_drop);
  g_test_add_func ("/geometry/rounding/no-corner", test_no_corner);
  g_test_add_func ("/geometry/rounding/rectangle", test_rectangle);
  g_test_add_func ("/geometry/rounding/some-corners", test_some_corners);
  g_test_add_func ("/geometry/rounding/reflex", test_reflex);
  g_test_add_func ("/geometry/rounding/used-up", test_used_up);
  g_test_add_func ("/geometry/rounding/crowded", test_crowded);
  g_test_add_func ("/geometry/rounding/too-large", test_too_large);
  g_test_add_func ("/geometry/rounding/straight-corner", test_straight_corner);
  g_test_add_func ("/geometry/rounding/bowed-ring", test_bowed_ring);
  return g_test_run ();
}
