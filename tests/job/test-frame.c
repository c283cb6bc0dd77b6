/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "job/frame.h"

#include "base/units.h"
#include "job/shape.h"

static SqOutline *
make (SqShapeKind kind, const double *figures)
{
  guint n;

  sq_shape_figures (kind, &n);
  return sq_shape_outline (kind, figures, n, NULL);
}

static void
assert_size (const SqOutline *outline, double width_mm, double depth_mm)
{
  double width, depth;

  g_assert_nonnull (outline);
  g_assert_true (sq_outline_extents_mm (outline, &width, &depth));
  g_assert_cmpfloat_with_epsilon (width, width_mm, 2e-9);
  g_assert_cmpfloat_with_epsilon (depth, depth_mm, 2e-9);
}

/* A seat 500 wide and 400 deep without a marked front, lying turned by @turn_rad; its first corner
 * is @first of the front's start. */
static SqOutline *
unmarked (double turn_rad, guint first)
{
  const SqPoint points[] = { { 0, 0 }, { 500, 0 }, { 500, 400 }, { 0, 400 } };
  SqCorner corners[4] = { { .id = 0 } };
  guint n = 4;

  for (guint i = 0; i < n; i++)
    {
      corners[i].id = i + 1;
      corners[i].at = sq_turned (points[(i + first) % n], turn_rad);
    }
  return sq_outline_new (corners, &n, 1);
}

static void
test_front_found (void)
{
  for (guint first = 0; first < 4; first++)
    {
      g_autoptr (SqOutline) outline = unmarked (0.3, first);
      SqFront front;

      g_assert_true (sq_outline_front (outline, &front));
      g_assert_cmpuint (front.edge, ==, (4 - first) % 4);
      g_assert_cmpfloat_with_epsilon (front.along.x, cos (0.3), 1e-12);
      g_assert_cmpfloat_with_epsilon (front.along.y, sin (0.3), 1e-12);
    }
}

/* Of two edges equally far round the one with the lower id is the front, whichever comes first. */
static void
test_front_tie (void)
{
  for (guint first = 0; first < 4; first++)
    {
      g_autoptr (SqOutline) outline = unmarked (M_PI / 4, first);
      SqFront front;

      g_assert_true (sq_outline_front (outline, &front));
      g_assert_cmpuint (front.edge, ==, first == 0 ? 0 : 3 - first);
    }
}

static void
test_front_marked (void)
{
  g_autoptr (SqOutline) outline = unmarked (0, 0);
  SqCorner left = *sq_outline_corner (outline, 4, NULL, NULL);
  g_autoptr (SqOutline) marked = NULL;
  SqFront front;
  const SqTowards towards[] = { SQ_TOWARDS_RIGHT, SQ_TOWARDS_BACK, SQ_TOWARDS_LEFT,
                                SQ_TOWARDS_FRONT };

  left.front = TRUE;
  marked = sq_outline_with_corner (outline, &left);
  g_assert_true (sq_outline_front (marked, &front));
  g_assert_cmpuint (front.edge, ==, 3);
  g_assert_cmpfloat (front.at.y, ==, 400);
  for (guint i = 0; i < 4; i++)
    g_assert_cmpint (sq_outline_edge_towards (marked, &front, i), ==, towards[i]);
  assert_size (outline, 500, 400);
  assert_size (marked, 400, 500);
}

static void
test_no_front (void)
{
  const SqCorner corner = { .id = 1 };
  const guint sizes[] = { 1 };
  g_autoptr (SqOutline) nothing = sq_outline_new (NULL, NULL, 0);
  g_autoptr (SqOutline) point = sq_outline_new (&corner, sizes, 1);
  g_autoptr (SqOutline) same = sq_outline_with_kinds_towards (nothing,
                                                              (SqEdgeKind[4]){ SQ_EDGE_WALL });
  SqFront front;
  double width, depth;

  g_assert_false (sq_outline_front (nothing, &front));
  g_assert_false (sq_outline_front (point, &front));
  g_assert_false (sq_outline_extents_mm (point, &width, &depth));
  g_assert_null (sq_outline_scaled_to (point, 100, 100));
  g_assert_true (same == nothing);
}

/* An octagon: the slants, 45° to the front, count as front and back. */
static void
test_kinds (void)
{
  const SqEdgeKind kinds[] = { SQ_EDGE_FREE, SQ_EDGE_WALL, SQ_EDGE_WELL, SQ_EDGE_ARM };
  const SqEdgeKind expected[] = { SQ_EDGE_FREE, SQ_EDGE_FREE, SQ_EDGE_WALL, SQ_EDGE_WELL,
                                  SQ_EDGE_WELL, SQ_EDGE_WELL, SQ_EDGE_ARM,  SQ_EDGE_FREE };
  g_autoptr (SqOutline) outline = make (SQ_OUTLINE_POLYGON, (double[]){ 8, 200 });

  for (guint turn = 0; turn < 5; turn++)
    {
      g_autoptr (SqOutline) turned = sq_outline_moved (outline, turn, sq_point (3, 4));
      g_autoptr (SqOutline) placed = sq_outline_with_kinds_towards (turned, kinds);
      guint n;
      const SqCorner *ring = sq_outline_ring (placed, 0, &n);

      for (guint i = 0; i < n; i++)
        {
          g_assert_cmpint (ring[i].kind, ==, expected[i]);
          g_assert_cmpuint (ring[i].given, ==, SQ_GIVEN_KIND);
        }
    }
}

/* A T stays a T, wherever it lies; its hole goes with it. */
static void
test_scaled_t (void)
{
  g_autoptr (SqOutline) plain = make (SQ_OUTLINE_T, (double[]){ 700, 600, 100, 150 });
  g_autoptr (SqOutline) outline = sq_outline_moved (plain, 0.7, sq_point (30, -20));
  g_autoptr (SqOutline) scaled = sq_outline_scaled_to (outline, 1050, 300);
  g_autoptr (SqOutline) expected = make (SQ_OUTLINE_T, (double[]){ 1050, 300, 150, 75 });
  g_autoptr (SqOutline) there = sq_outline_moved (expected, 0.7, sq_point (30, -20));
  guint n, m;
  const SqCorner *ring = sq_outline_ring (scaled, 0, &n), *other = sq_outline_ring (there, 0, &m);

  g_assert_cmpuint (n, ==, m);
  for (guint i = 0; i < n; i++)
    g_assert_cmpfloat (sq_distance (ring[i].at, other[i].at), <, 1e-9);
  assert_size (scaled, 1050, 300);
}

static void
test_scaled_ring_with_hole (void)
{
  SqCorner corners[] = {
    { .id = 1, .at = { -100, 0 }, .shape = SQ_SHAPE_BOW, .bow_mm = 100, .front = TRUE },
    { .id = 2, .at = { 100, 0 }, .shape = SQ_SHAPE_BOW, .bow_mm = 100, .radius_mm = 5 },
    { .id = 3, .at = { -30, 0 }, .shape = SQ_SHAPE_BOW, .bow_mm = -30 },
    { .id = 4, .at = { 30, 0 }, .shape = SQ_SHAPE_BOW, .bow_mm = -30 },
  };
  const guint sizes[] = { 2, 2 };
  g_autoptr (SqOutline) outline = sq_outline_new (corners, sizes, 2);
  g_autoptr (SqOutline) twice = sq_outline_scaled_to (outline, 400, 400);
  g_autoptr (SqOutline) oval = sq_outline_scaled_to (outline, 400, 100);
  g_autoptr (SqOutline) tall = sq_outline_scaled_to (outline, 200, 250);

  assert_size (twice, 400, 400);
  g_assert_cmpfloat_with_epsilon (sq_outline_corner (twice, 1, NULL, NULL)->bow_mm, 200, 1e-9);
  g_assert_cmpfloat_with_epsilon (sq_outline_corner (twice, 3, NULL, NULL)->bow_mm, -60, 1e-9);
  g_assert_cmpfloat_with_epsilon (sq_outline_corner (twice, 4, NULL, NULL)->at.x, 160, 1e-9);
  g_assert_cmpfloat (sq_outline_corner (twice, 2, NULL, NULL)->radius_mm, ==, 5);
  assert_size (oval, 400, 100);
  /* arcs of more than half a circle are wider than their chord */
  assert_size (tall, 200, 250);
}

/* Any outline can be brought to any size, and back. */
static void
test_scaled_random (void)
{
  for (guint round = 0; round < 200; round++)
    {
      SqCorner corners[7] = { { .front = TRUE } };
      guint n = (guint) g_test_rand_int_range (3, 8);
      double width, depth, w = g_test_rand_double_range (200, 900),
                           d = g_test_rand_double_range (200, 900);

      for (guint i = 0; i < n; i++)
        {
          double turn = 2 * M_PI * (i + g_test_rand_double_range (-0.3, 0.3)) / n;
          double far = g_test_rand_double_range (300, 500);

          corners[i].id = i + 1;
          corners[i].at = sq_turned (sq_point (0, -far), turn);
          corners[i].shape = g_test_rand_bit () ? SQ_SHAPE_BOW : SQ_SHAPE_STRAIGHT;
          corners[i].bow_mm = g_test_rand_double_range (-20, 40);
        }
      g_autoptr (SqOutline) outline = sq_outline_new (corners, &n, 1);
      g_assert_true (sq_outline_extents_mm (outline, &width, &depth));
      g_autoptr (SqOutline) scaled = sq_outline_scaled_to (outline, w, d);
      assert_size (scaled, w, d);
      g_autoptr (SqOutline) back = sq_outline_scaled_to (scaled, width, depth);
      const SqCorner *ring = sq_outline_ring (back, 0, &n);
      for (guint i = 0; i < n; i++)
        g_assert_cmpfloat (sq_distance (ring[i].at, corners[i].at), <, 1e-6);
    }
}

/* Handles of a free curve are stretched like corners; its extents are those of its arcs. */
static void
test_scaled_curve (void)
{
  SqCorner corners[] = {
    { .id = 1, .at = { 0, 0 }, .front = TRUE },
    { .id = 2, .at = { 400, 0 } },
    { .id = 3,
      .at = { 400, 300 },
      .shape = SQ_SHAPE_CURVE,
      .control = { { 300, 350 }, { 100, 340 } } },
    { .id = 4, .at = { 0, 300 } },
  };
  guint n = 4;
  g_autoptr (SqOutline) outline = sq_outline_new (corners, &n, 1);
  g_autoptr (SqOutline) scaled = sq_outline_scaled_to (outline, 800, 400);
  double width, depth;

  g_assert_nonnull (scaled);
  g_assert_true (sq_outline_extents_mm (scaled, &width, &depth));
  g_assert_cmpfloat_with_epsilon (width, 800, SQ_FIT_MM);
  g_assert_cmpfloat_with_epsilon (depth, 400, SQ_FIT_MM);
  g_assert_cmpfloat_with_epsilon (sq_outline_corner (scaled, 3, NULL, NULL)->control[1].x, 200,
                                  1e-6);
}

static void
test_scaled_bad (void)
{
  g_autoptr (SqOutline) outline = make (SQ_OUTLINE_RECTANGLE, (double[]){ 500, 400 });

  g_assert_null (sq_outline_scaled_to (outline, 0, 400));
  g_assert_null (sq_outline_scaled_to (outline, 500, -3));
  g_assert_null (sq_outline_scaled_to (outline, NAN, 400));
  g_assert_null (sq_outline_scaled_to (outline, 500, 2 * SQ_SEAT_MOST_MM));
}

int
main (int argc, char **argv)
{
  g_test_init (&argc, &argv, NULL);
  g_test_add_func ("/job/frame/front/found", test_front_found);
  g_test_add_func ("/job/frame/front/tie", test_front_tie);
  g_test_add_func ("/job/frame/front/marked", test_front_marked);
  g_test_add_func ("/job/frame/front/none", test_no_front);
  g_test_add_func ("/job/frame/kinds", test_kinds);
  g_test_add_func ("/job/frame/scaled/t", test_scaled_t);
  g_test_add_func ("/job/frame/scaled/hole", test_scaled_ring_with_hole);
  g_test_add_func ("/job/frame/scaled/random", test_scaled_random);
  g_test_add_func ("/job/frame/scaled/curve", test_scaled_curve);
  g_test_add_func ("/job/frame/scaled/bad", test_scaled_bad);
  return g_test_run ();
}
