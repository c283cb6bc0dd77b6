/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "plan/marked-ring.h"

#include "base/units.h"

#define IN SQ_MM_PER_INCH

static SqLengthStyle
style_of (SqUnit unit)
{
  return sq_length_style_default (unit);
}

/* How far two rings are apart at most, looked at every millimetre of either. */
static double
apart_mm (const SqPath *a, const SqPath *b)
{
  double apart = 0;

  for (guint way = 0; way < 2; way++)
    {
      const SqPath *of = way == 0 ? a : b, *to = way == 0 ? b : a;
      for (double mm = 0; mm < sq_path_length_mm (of); mm++)
        apart = fmax (apart, sq_path_nearest (to, sq_path_point_at (of, mm, NULL)).distance_mm);
    }
  return apart;
}

static void
assert_reads (const SqPath *ring, const GArray *points, const SqLengthStyle *style)
{
  g_autoptr (SqPath) read = sq_marked_ring_read (points, style);

  g_assert_cmpfloat (apart_mm (ring, read), <=, SQ_MARKED_MM);
}

static void
assert_point (const GArray *points, guint i, double along_mm, double across_mm)
{
  g_assert_cmpuint (i, <, points->len);
  g_assert_cmpfloat_with_epsilon (sq_mark_point (points, i)->at.x, along_mm, 1e-6);
  g_assert_cmpfloat_with_epsilon (sq_mark_point (points, i)->at.y, across_mm, 1e-6);
}

/* It begins at the corner nearest to the cut end and the near edge, and goes counter-clockwise, wherever
 * the ring does; nodes between its corners are none. */
static void
test_rectangle (void)
{
  const SqPoint nodes[] = { { 10 * IN, 9 * IN }, { 4 * IN, 9 * IN }, { 4 * IN, 2 * IN },
                            { 7 * IN, 2 * IN },  { 9 * IN, 2 * IN }, { 10 * IN, 2 * IN } };
  g_autoptr (SqPath) ring = sq_path_new_polygon (nodes, G_N_ELEMENTS (nodes));
  SqLengthStyle style = style_of (SQ_UNIT_IN);
  g_autoptr (GArray) points = sq_marked_ring (ring, &style);

  g_assert_cmpuint (points->len, ==, 4);
  assert_point (points, 0, 4 * IN, 2 * IN);
  assert_point (points, 1, 10 * IN, 2 * IN);
  assert_point (points, 2, 10 * IN, 9 * IN);
  assert_point (points, 3, 4 * IN, 9 * IN);
  for (guint i = 0; i < 4; i++)
    g_assert_false (sq_mark_point (points, i)->is_fine);
}

/* A corner half a sixteenth off both ways would be 1.12 mm off: it is read to 1/32 in, where it lies. Off
 * by half a sixteenth less 1/100 in in one direction alone, 0.54 mm, it is near enough. Half a
 * millimetre both ways is 0.71 mm: no corner needs halves of them. */
static void
test_fine (void)
{
  SqLengthStyle inches = style_of (SQ_UNIT_IN), mm = style_of (SQ_UNIT_MM);
  g_autoptr (SqPath) both = sq_path_new_rectangle (IN / 32, IN / 32, 10 * IN, 10 * IN);
  g_autoptr (SqPath) one = sq_path_new_rectangle (IN / 32 - IN / 100, 0, 10 * IN, 10 * IN);
  g_autoptr (SqPath) halves = sq_path_new_rectangle (0.5, 0.5, 100.5, 100.5);
  g_autoptr (GArray) fine = sq_marked_ring (both, &inches);
  g_autoptr (GArray) coarse = sq_marked_ring (one, &inches);
  g_autoptr (GArray) metric = sq_marked_ring (halves, &mm);

  g_assert_true (sq_mark_point (fine, 0)->is_fine);
  g_assert_false (sq_mark_point (fine, 2)->is_fine); /* on the step */
  for (guint i = 0; i < 4; i++)
    {
      g_assert_false (sq_mark_point (coarse, i)->is_fine);
      g_assert_false (sq_mark_point (metric, i)->is_fine);
    }
  g_autoptr (SqPath) read = sq_marked_ring_read (fine, &inches);
  g_assert_cmpfloat (apart_mm (both, read), <, 0.4);
}

/* A corner rounded with a radius of 2 in: its ends and its middle, that rises by r (1 − cos 45°). */
static void
test_rounding (void)
{
  const double r = 2 * IN;
  SqPathBuilder builder;
  SqLengthStyle style = style_of (SQ_UNIT_IN);

  sq_path_builder_init (&builder);
  sq_path_builder_add (&builder, sq_point (0, 0), 0, 0);
  sq_path_builder_add (&builder, sq_point (20 * IN, 0), 0, 1);
  sq_path_builder_add (&builder, sq_point (20 * IN, 10 * IN - r), tan (M_PI / 8), 2);
  sq_path_builder_add (&builder, sq_point (20 * IN - r, 10 * IN), 0, 3);
  sq_path_builder_add (&builder, sq_point (0, 10 * IN), 0, 4);
  g_autoptr (SqPath) ring = sq_path_builder_end (&builder, TRUE);
  g_autoptr (GArray) points = sq_marked_ring (ring, &style);

  g_assert_cmpuint (points->len, ==, 6);
  assert_point (points, 2, 20 * IN, 8 * IN);
  assert_point (points, 3, 18 * IN + r * M_SQRT1_2, 8 * IN + r * M_SQRT1_2);
  assert_point (points, 4, 18 * IN, 10 * IN);
  for (guint i = 0; i < points->len; i++)
    g_assert_cmpint (sq_mark_point (points, i)->is_middle, ==, i == 3);
  g_assert_cmpfloat_with_epsilon (sq_mark_point (points, 3)->radius_mm, r, 1e-6);
  g_assert_cmpfloat_with_epsilon (sq_mark_point (points, 3)->rise_mm, r * (1 - M_SQRT1_2), 1e-6);
  assert_reads (ring, points, &style);
}

/* A circle is eight points, each quarter with its middle; turned over, too, as a hole is. */
static void
test_circle (void)
{
  g_autoptr (SqPath) circle = sq_path_new_circle (sq_point (200.2, 150.4), 118.3);
  SqLengthStyle style = style_of (SQ_UNIT_MM);
  g_autoptr (GArray) points = sq_marked_ring (circle, &style);
  g_autoptr (SqPath) hole = sq_path_reversed (circle);
  g_autoptr (GArray) of_hole = sq_marked_ring (hole, &style);

  g_assert_cmpuint (points->len, ==, 8);
  g_assert_cmpuint (of_hole->len, ==, 8);
  assert_reads (circle, points, &style);
  assert_reads (hole, of_hole, &style);
  g_autoptr (SqPath) read = sq_marked_ring_read (of_hole, &style);
  g_assert_cmpfloat (sq_path_area_mm2 (read), >, 0);
}

/* A long bow, 1,500 mm with a rise of 60: no arc of three points is longer than 600 mm. */
static void
test_bow (void)
{
  SqPathBuilder builder;
  SqLengthStyle style = style_of (SQ_UNIT_MM);

  sq_path_builder_init (&builder);
  sq_path_builder_add (&builder, sq_point (0, 100), 2 * 60 / 1500.0, 0);
  sq_path_builder_add (&builder, sq_point (1500, 100), 0, 1);
  sq_path_builder_add (&builder, sq_point (1500, 500), 0, 2);
  sq_path_builder_add (&builder, sq_point (0, 500), 0, 3);
  g_autoptr (SqPath) ring = sq_path_builder_end (&builder, TRUE);
  g_autoptr (GArray) points = sq_marked_ring (ring, &style);

  g_assert_cmpuint (points->len, ==, 4 + 7); /* quarters of the bow, and the middles of these */
  assert_reads (ring, points, &style);
}

/* A curve in sixty arcs is marked by few points. */
static void
test_chain (void)
{
  SqPathBuilder builder;
  SqLengthStyle style = style_of (SQ_UNIT_IN);

  sq_path_builder_init (&builder);
  for (guint i = 0; i < 60; i++)
    {
      double turn = 2 * M_PI * i / 60;
      sq_path_builder_add (&builder, sq_point (400 + 300 * cos (turn), 300 + 200 * sin (turn)),
                           tan (2 * M_PI / 60 / 4), i);
    }
  g_autoptr (SqPath) ring = sq_path_builder_end (&builder, TRUE);
  g_autoptr (GArray) points = sq_marked_ring (ring, &style);

  g_assert_cmpuint (points->len, <, 40);
  assert_reads (ring, points, &style);
}

/* A polygon about a point, each side straight or bent, not too far. */
static SqPath *
random_ring (void)
{
  guint n = (guint) g_test_rand_int_range (3, 12);
  SqPathBuilder builder;

  sq_path_builder_init (&builder);
  for (guint i = 0; i < n; i++)
    {
      double turn = 2 * M_PI * (i + g_test_rand_double_range (0, 0.6)) / n;
      double mm = g_test_rand_double_range (150, 900);
      double bulge = g_test_rand_bit () ? g_test_rand_double_range (-0.25, 0.4) : 0;
      sq_path_builder_add (&builder, sq_point (1000 + mm * cos (turn), 1000 + mm * sin (turn)),
                           bulge, i);
    }
  return sq_path_builder_end (&builder, TRUE);
}

/* Whatever the ring and the unit, its figures give it back. */
static void
test_random (void)
{
  for (guint i = 0; i < 400; i++)
    {
      SqLengthStyle style = style_of ((SqUnit) (i % 3));
      g_autoptr (SqPath) ring = random_ring ();
      g_autoptr (GArray) points = sq_marked_ring (ring, &style);
      g_assert_false (sq_mark_point (points, 0)->is_middle);
      assert_reads (ring, points, &style);
    }
}

int
main (int argc, char **argv)
{
  g_test_init (&argc, &argv, NULL);
  g_test_add_func ("/plan/marked-ring/rectangle", test_rectangle);
  g_test_add_func ("/plan/marked-ring/fine", test_fine);
  g_test_add_func ("/plan/marked-ring/rounding", test_rounding);
  g_test_add_func ("/plan/marked-ring/circle", test_circle);
  g_test_add_func ("/plan/marked-ring/bow", test_bow);
  g_test_add_func ("/plan/marked-ring/chain", test_chain);
  g_test_add_func ("/plan/marked-ring/random", test_random);
  return g_test_run ();
}
