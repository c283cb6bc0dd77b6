/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "geometry/geos.h"
#include "roll/trapezoids.h"

#define N_RANDOM 3000

/* A ring of points that lives in its test. */
#define RING(...)                                                                                  \
  {                                                                                                \
    (SqGrid[]){ __VA_ARGS__ }, sizeof ((SqGrid[]){ __VA_ARGS__ }) / sizeof (SqGrid)                \
  }

static gboolean
meet (SqGridRing a, SqGrid at_a, SqGridRing b, SqGrid at_b)
{
  g_autoptr (GArray) ta = sq_trapezoids_new (&a, 1);
  g_autoptr (GArray) tb = sq_trapezoids_new (&b, 1);
  gboolean result = sq_trapezoids_overlap (ta, at_a, tb, at_b);

  g_assert_cmpint (sq_trapezoids_overlap (tb, at_b, ta, at_a), ==, result);
  return result;
}

static void
test_cut (void)
{
  /* A square with a square hole, a point in line on one side. */
  SqGridRing rings[] = { RING ({ 0, 0 }, { 50, 0 }, { 100, 0 }, { 100, 100 }, { 0, 100 }),
                         RING ({ 30, 30 }, { 30, 70 }, { 70, 70 }, { 70, 30 }) };
  g_autoptr (GArray) all = sq_trapezoids_new (rings, 2);
  static const gint32 heights[][2] = { { 0, 30 }, { 30, 70 }, { 30, 70 }, { 70, 100 } };

  g_assert_cmpuint (all->len, ==, 4);
  for (guint i = 0; i < all->len; i++)
    {
      g_assert_cmpint (g_array_index (all, SqTrapezoid, i).y0, ==, heights[i][0]);
      g_assert_cmpint (g_array_index (all, SqTrapezoid, i).y1, ==, heights[i][1]);
    }
  g_assert_cmpint (g_array_index (all, SqTrapezoid, 1).right.from.x, ==, 30);
  g_assert_cmpint (g_array_index (all, SqTrapezoid, 2).left.from.x, ==, 70);
}

/* From the leftmost edge to the rightmost, over pockets and holes. */
static void
test_filled (void)
{
  SqGridRing rings[] = { RING ({ 0, 0 }, { 100, 0 }, { 100, 100 }, { 50, 20 }, { 0, 100 }),
                         RING ({ 30, 10 }, { 30, 15 }, { 70, 15 }, { 70, 10 }) };
  g_autoptr (GArray) all = sq_trapezoids_new_filled (rings, 2);

  g_assert_cmpuint (all->len, ==, 4);
  for (guint i = 0; i < all->len; i++)
    {
      const SqTrapezoid *t = &g_array_index (all, SqTrapezoid, i);
      g_assert_cmpint (t->left.from.x + t->left.to.x, ==, 0);
      g_assert_cmpint (t->right.from.x + t->right.to.x, ==, 200);
    }
}

static void
test_touch (void)
{
  SqGridRing square = RING ({ 0, 0 }, { 10, 0 }, { 10, 10 }, { 0, 10 });
  SqGridRing slope = RING ({ 0, 0 }, { 7, 0 }, { 0, 3 });
  SqGridRing other = RING ({ 7, 3 }, { 0, 3 }, { 7, 0 });
  SqGridRing sliver = RING ({ 0, 0 }, { 100, 1 }, { 50, 1 });
  const SqGrid o = { 0, 0 };

  g_assert_true (meet (square, o, square, o));
  g_assert_true (meet (square, o, square, (SqGrid){ 9, -9 }));
  g_assert_false (meet (square, o, square, (SqGrid){ 10, 0 }));
  g_assert_false (meet (square, o, square, (SqGrid){ 3, 10 }));
  g_assert_false (meet (square, o, square, (SqGrid){ 10, 10 }));
  /* Along a common slope, which passes through no whole point between its ends. */
  g_assert_false (meet (slope, o, other, o));
  g_assert_true (meet (slope, o, other, (SqGrid){ -1, 0 }));
  g_assert_false (meet (slope, o, other, (SqGrid){ 0, 1 }));
  g_assert_true (meet (sliver, o, square, (SqGrid){ 45, 0 }));
  g_assert_false (meet (sliver, o, square, (SqGrid){ 45, 1 }));
}

/* At the far end of the longest strip, a micrometre decides. */
static void
test_far (void)
{
  SqGridRing long_slope = RING ({ 0, 0 }, { 400000000, 0 }, { 400000000, 399999999 });
  SqGridRing dot = RING ({ 0, 0 }, { 1, 0 }, { 1, 1 }, { 0, 1 });
  const SqGrid far = { 1600000000, 1000000000 };

  g_assert_true (meet (long_slope, far, dot, (SqGrid){ far.x + 300000000, far.y + 299999998 }));
  g_assert_false (meet (long_slope, far, dot, (SqGrid){ far.x + 299999998, far.y + 299999999 }));
}

static void
test_holes (void)
{
  SqGridRing rings[] = { RING ({ 0, 0 }, { 100, 0 }, { 100, 100 }, { 0, 100 }),
                         RING ({ 30, 30 }, { 30, 70 }, { 70, 70 }, { 70, 30 }) };
  SqGridRing square = RING ({ 0, 0 }, { 40, 0 }, { 40, 40 }, { 0, 40 });
  g_autoptr (GArray) holed = sq_trapezoids_new (rings, 2);
  g_autoptr (GArray) plain = sq_trapezoids_new (&square, 1);
  const SqGrid o = { 0, 0 };

  g_assert_false (sq_trapezoids_overlap (holed, o, plain, (SqGrid){ 30, 30 }));
  g_assert_true (sq_trapezoids_overlap (holed, o, plain, (SqGrid){ 31, 30 }));
  g_assert_true (sq_trapezoids_overlap (plain, (SqGrid){ 30, 29 }, holed, o));
}

static void
test_flat (void)
{
  SqGridRing line = RING ({ 0, 5 }, { 10, 5 }), thin = RING ({ 5, 0 }, { 5, 10 }, { 5, 4 });
  SqGridRing square = RING ({ 0, 0 }, { 10, 0 }, { 10, 10 }, { 0, 10 });
  const SqGrid o = { 0, 0 };

  g_assert_false (meet (line, o, square, o));
  g_assert_false (meet (thin, o, square, o));
}

/* ---- by chance ----------------------------------------------------------------------------- */

/* Round a middle in order of angle: star-shaped, so simple. */
static void
random_star (SqGrid *points, guint n, double reach)
{
  for (guint i = 0; i < n; i++)
    {
      double angle = 2 * G_PI * (i + g_test_rand_double_range (0, 0.9)) / n;
      double radius = g_test_rand_double_range (0.3, 1) * reach;
      points[i] = (SqGrid){ (gint32) lround (radius * cos (angle)),
                            (gint32) lround (radius * sin (angle)) };
    }
}

static GEOSGeometry *
polygon (const SqGrid *points, guint n, SqGrid at)
{
  SqPoint moved[16];

  for (guint i = 0; i < n; i++)
    moved[i] = sq_point (points[i].x + at.x, points[i].y + at.y);
  g_autoptr (SqPath) path = sq_path_new_polygon (moved, n);
  return geos_polygon (path, 1);
}

/* GEOS says the same of whole coordinates small enough for it to be exact. */
static void
test_random (void)
{
  guint n_met = 0;

  for (guint round = 0; round < N_RANDOM; round++)
    {
      SqGrid a[12], b[12];
      SqGrid at = { g_test_rand_int_range (-40, 41), g_test_rand_int_range (-40, 41) };
      guint n = (guint) g_test_rand_int_range (4, 12), m = (guint) g_test_rand_int_range (4, 12);
      random_star (a, n, 25);
      random_star (b, m, 25);
      GEOSGeometry *p = polygon (a, n, (SqGrid){ 0, 0 }), *q = polygon (b, m, at);
      if (GEOSisValid_r (geos_context (), p) == 1 && GEOSisValid_r (geos_context (), q) == 1)
        {
          gboolean expected = GEOSRelatePattern_r (geos_context (), p, q, "T********") == 1;
          gboolean got = meet ((SqGridRing){ a, n }, (SqGrid){ 0, 0 }, (SqGridRing){ b, m }, at);
          g_assert_cmpint (got, ==, expected);
          n_met += expected;
        }
      GEOSGeom_destroy_r (geos_context (), p);
      GEOSGeom_destroy_r (geos_context (), q);
    }
  g_assert_cmpuint (n_met, >, N_RANDOM / 8);
  g_assert_cmpuint (n_met, <, N_RANDOM * 7 / 8);
}

int
main (int argc, char *argv[])
{
  g_test_init (&argc, &argv, NULL);
  g_test_add_func ("/roll/trapezoids/cut", test_cut);
  g_test_add_func ("/roll/trapezoids/filled", test_filled);
  g_test_add_func ("/roll/trapezoids/touch", test_touch);
  g_test_add_func ("/roll/trapezoids/far", test_far);
  g_test_add_func ("/roll/trapezoids/holes", test_holes);
  g_test_add_func ("/roll/trapezoids/flat", test_flat);
  g_test_add_func ("/roll/trapezoids/random", test_random);
  return g_test_run ();
}
