/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "job/divide.h"

#include "base/units.h"

#define UP ((SqVector){ 0, 1 })
#define DOWN ((SqVector){ 0, -1 })

static double
area_mm2 (const SqOutline *outline)
{
  g_autoptr (SqPath) path = sq_outline_path (outline, 0, NULL);
  return sq_path_area_mm2 (path);
}

static SqOutline *
outline_of (const SqPoint *points, guint n)
{
  SqCorner corners[12] = { 0 };

  for (guint i = 0; i < n; i++)
    corners[i] = (SqCorner){ .id = i + 1, .at = points[i] };
  return sq_outline_new (corners, &n, 1);
}

/* 1000 × 400 at x = 300: the left part has the corners 4 and 1 and two new ones; its edge along the
 * line is a neighbour's. */
static void
test_rectangle (void)
{
  const SqPoint points[] = { { 0, 0 }, { 1000, 0 }, { 1000, 400 }, { 0, 400 } };
  g_autoptr (SqOutline) whole = outline_of (points, 4);
  g_autoptr (SqOutline) left = sq_outline_left_of (whole, sq_point (300, 0), UP);
  g_autoptr (SqOutline) right = sq_outline_left_of (whole, sq_point (300, 0), DOWN);
  guint n, n_neighbours = 0;

  g_assert_nonnull (left);
  g_assert_nonnull (right);
  g_assert_cmpfloat_with_epsilon (area_mm2 (left), 120000, 1e-6);
  g_assert_cmpfloat_with_epsilon (area_mm2 (right), 280000, 1e-6);
  const SqCorner *ring = sq_outline_ring (left, 0, &n);
  g_assert_cmpuint (n, ==, 4);
  for (guint i = 0; i < n; i++)
    if (ring[i].kind == SQ_EDGE_NEIGHBOUR)
      {
        n_neighbours++;
        g_assert_cmpfloat_with_epsilon (ring[i].at.x, 300, 1e-9);
        g_assert_cmpfloat_with_epsilon (ring[(i + 1) % n].at.x, 300, 1e-9);
      }
  g_assert_cmpuint (n_neighbours, ==, 1);
  g_assert_nonnull (sq_outline_corner (left, 1, NULL, NULL));
  g_assert_nonnull (sq_outline_corner (left, 4, NULL, NULL));
  g_assert_null (sq_outline_corner (left, 2, NULL, NULL));
}

/* A half round front of radius 300 and a free curve at the back: parts of both stay on them, so that
 * the areas add up. */
static void
test_curves (void)
{
  SqCorner corners[] = { { .id = 1, .at = { 0, 0 }, .shape = SQ_SHAPE_BOW, .bow_mm = 150 },
                         { .id = 2, .at = { 600, 0 } },
                         { .id = 3,
                           .at = { 600, 400 },
                           .shape = SQ_SHAPE_CURVE,
                           .control = { { 450, 480 }, { 150, 340 } } },
                         { .id = 4, .at = { 0, 400 } } };
  guint n = 4;
  g_autoptr (SqOutline) whole = sq_outline_new (corners, &n, 1);
  g_autoptr (SqOutline) left = sq_outline_left_of (whole, sq_point (220, 0), UP);
  g_autoptr (SqOutline) right = sq_outline_left_of (whole, sq_point (220, 0), DOWN);

  g_assert_cmpfloat_with_epsilon (area_mm2 (left) + area_mm2 (right), area_mm2 (whole), 5);
  g_assert_cmpfloat (area_mm2 (left), <, area_mm2 (right));
}

/* A line through the peak of a house: no new corner there. */
static void
test_through_a_corner (void)
{
  const SqPoint points[] = { { 0, 0 }, { 600, 0 }, { 600, 300 }, { 300, 400 }, { 0, 300 } };
  g_autoptr (SqOutline) whole = outline_of (points, 5);
  g_autoptr (SqOutline) left = sq_outline_left_of (whole, sq_point (300, 0), UP);
  guint n;

  g_assert_nonnull (left);
  sq_outline_ring (left, 0, &n);
  g_assert_cmpuint (n, ==, 4);
  g_assert_cmpfloat_with_epsilon (area_mm2 (left), 105000, 1e-6);
}

/* Not beside the seat, not over both arms of a U, not over a hole; a hole beside the line goes with
 * its part. */
static void
test_refused (void)
{
  const SqPoint u[] = { { 0, 0 },     { 600, 0 },   { 600, 400 }, { 450, 400 },
                        { 450, 150 }, { 150, 150 }, { 150, 400 }, { 0, 400 } };
  g_autoptr (SqOutline) arms = outline_of (u, 8);
  SqCorner corners[] = { { .id = 1, .at = { 0, 0 } },     { .id = 2, .at = { 600, 0 } },
                         { .id = 3, .at = { 600, 400 } }, { .id = 4, .at = { 0, 400 } },
                         { .id = 5, .at = { 400, 200 } }, { .id = 6, .at = { 450, 300 } },
                         { .id = 7, .at = { 500, 200 } } };
  const guint sizes[] = { 4, 3 };
  g_autoptr (SqOutline) holed = sq_outline_new (corners, sizes, 2);
  g_autoptr (SqOutline) left = sq_outline_left_of (holed, sq_point (300, 0), UP);
  g_autoptr (SqOutline) right = sq_outline_left_of (holed, sq_point (300, 0), DOWN);

  g_assert_null (sq_outline_left_of (arms, sq_point (-10, 0), UP));
  g_assert_null (sq_outline_left_of (arms, sq_point (0, 300), sq_point (1, 0)));
  g_assert_null (sq_outline_left_of (holed, sq_point (450, 0), UP));
  g_assert_cmpuint (sq_outline_n_rings (left), ==, 1);
  g_assert_cmpuint (sq_outline_n_rings (right), ==, 2);
}

int
main (int argc, char **argv)
{
  g_test_init (&argc, &argv, NULL);
  g_test_add_func ("/divide/rectangle", test_rectangle);
  g_test_add_func ("/divide/curves", test_curves);
  g_test_add_func ("/divide/through-a-corner", test_through_a_corner);
  g_test_add_func ("/divide/refused", test_refused);
  return g_test_run ();
}
