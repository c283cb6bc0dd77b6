/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "job/frame.h"
#include "job/shape.h"

static SqOutline *
an_l (void)
{
  const SqCorner corners[] = {
    { .id = 1, .at = { 10, 20 }, .front = TRUE },
    { .id = 2, .at = { 610, 20 } },
    { .id = 3, .at = { 610, 220 } },
    { .id = 4, .at = { 210, 220 } },
    { .id = 5, .at = { 210, 520 }, .radius_mm = 30, .given = SQ_GIVEN_RADIUS },
    { .id = 6, .at = { 10, 520 } },
  };
  const guint n = G_N_ELEMENTS (corners);
  return sq_outline_new (corners, &n, 1);
}

static void
test_front (void)
{
  g_autoptr (SqOutline) outline = an_l ();
  g_autoptr (SqOutline) turned = sq_outline_moved (outline, 1, sq_point (300, -50));
  SqFront front;

  g_assert_true (sq_outline_front (turned, &front));
  g_assert_cmpuint (front.edge, ==, 0);
  g_assert_cmpfloat (fabs (front.along.x - cos (1)), <, 1e-12);
  g_assert_cmpfloat (fabs (front.along.y - sin (1)), <, 1e-12);
}

static void
test_kinds (void)
{
  const SqEdgeKind kinds[] = { SQ_EDGE_FREE, SQ_EDGE_ARM, SQ_EDGE_WALL, SQ_EDGE_WELL };
  /* by hand: front, right, back (the step), right (the step), back, left */
  const SqEdgeKind expected[] = { SQ_EDGE_FREE, SQ_EDGE_ARM,  SQ_EDGE_WALL,
                                  SQ_EDGE_ARM,  SQ_EDGE_WALL, SQ_EDGE_WELL };
  g_autoptr (SqOutline) outline = an_l ();
  g_autoptr (SqOutline) turned = sq_outline_moved (outline, 2.5, sq_point (0, 0));
  g_autoptr (SqOutline) stood = sq_outline_with_kinds_towards (turned, kinds);
  guint n;
  const SqCorner *corners = sq_outline_ring (stood, 0, &n);

  g_assert_cmpuint (n, ==, 6);
  for (guint i = 0; i < n; i++)
    {
      g_assert_cmpint (corners[i].kind, ==, expected[i]);
      g_assert_true (corners[i].given & SQ_GIVEN_KIND);
    }
}

static void
test_extents (void)
{
  g_autoptr (SqOutline) outline = an_l ();
  g_autoptr (SqOutline) turned = sq_outline_moved (outline, -0.7, sq_point (5, 5));
  double width, depth;

  g_assert_true (sq_outline_extents_mm (turned, &width, &depth));
  g_assert_cmpfloat (fabs (width - 600), <, 1e-9);
  g_assert_cmpfloat (fabs (depth - 500), <, 1e-9);
}

/* A seat with square corners keeps them, wherever it lies. */
static void
test_scaled (void)
{
  g_autoptr (SqOutline) outline = an_l ();
  g_autoptr (SqOutline) turned = sq_outline_moved (outline, 0.4, sq_point (5, 5));
  g_autoptr (SqOutline) scaled = sq_outline_scaled_to (turned, 900, 400);
  double width, depth;
  guint n;

  g_assert_true (sq_outline_extents_mm (scaled, &width, &depth));
  g_assert_cmpfloat (fabs (width - 900), <, 1e-9);
  g_assert_cmpfloat (fabs (depth - 400), <, 1e-9);
  const SqCorner *corners = sq_outline_ring (scaled, 0, &n);
  for (guint i = 0; i < n; i++)
    {
      SqVector a = sq_unit (sq_sub (corners[(i + 1) % n].at, corners[i].at));
      SqVector b = sq_unit (sq_sub (corners[(i + 2) % n].at, corners[(i + 1) % n].at));
      g_assert_cmpfloat (fabs (sq_dot (a, b)), <, 1e-12);
    }
  g_assert_cmpfloat (corners[4].radius_mm, ==, 30);
  g_assert_null (sq_outline_scaled_to (turned, 0, 400));
  g_assert_null (sq_outline_scaled_to (turned, 900, SQ_SEAT_MOST_MM * 2));
}

/* A bowed back has its rise in the depth. */
static void
test_bow_counts (void)
{
  const double figures[] = { 400 };
  g_autoptr (SqOutline) circle = sq_shape_outline (SQ_OUTLINE_CIRCLE, figures, 1, NULL);
  double width, depth;

  g_assert_true (sq_outline_extents_mm (circle, &width, &depth));
  g_assert_cmpfloat (fabs (width - 400), <, 1e-9);
  g_assert_cmpfloat (fabs (depth - 400), <, 1e-9);
}

int
main (int argc, char *argv[])
{
  g_test_init (&argc, &argv, NULL);
  g_test_add_func ("/job/frame/front", test_front);
  g_test_add_func ("/job/frame/kinds", test_kinds);
  g_test_add_func ("/job/frame/extents", test_extents);
  g_test_add_func ("/job/frame/scaled", test_scaled);
  g_test_add_func ("/job/frame/bow-counts", test_bow_counts);
  return g_test_run ();
}
