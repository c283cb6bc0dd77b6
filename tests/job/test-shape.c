/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "job/shape.h"

#include "geometry/crossing.h"

static double
area_of (SqShapeKind kind, const double *figures, guint n)
{
  gint bad;
  g_autoptr (SqOutline) outline = sq_shape_outline (kind, figures, n, &bad);
  g_assert_nonnull (outline);
  g_assert_cmpint (bad, ==, -1);
  g_autoptr (SqPath) path = sq_outline_path (outline, 0, NULL);
  g_assert_true (sq_path_is_simple (path, NULL));
  return sq_path_area_mm2 (path);
}

static void
assert_area (SqShapeKind kind, const double *figures, guint n, double expected)
{
  double area = area_of (kind, figures, n);
  g_assert_cmpfloat (fabs (area - expected), <, 1e-9 * expected);
}

/* Areas by hand: a rectangle, less what the shape leaves out. */
static void
test_areas (void)
{
  assert_area (SQ_OUTLINE_RECTANGLE, (const double[]){ 600, 400 }, 2, 600 * 400);
  assert_area (SQ_OUTLINE_TRAPEZOID, (const double[]){ 600, 400, 500 }, 3, 550 * 400);
  assert_area (SQ_OUTLINE_CIRCLE, (const double[]){ 400 }, 1, G_PI * 200 * 200);
  /* (600 + 300) / 2 × 200 above 600 × 300 */
  assert_area (SQ_OUTLINE_BAY, (const double[]){ 600, 500, 300, 300 }, 4, 600 * 300 + 450 * 200);
}

/* Regular polygons: n s² / (4 tan (π / n)). */
static void
test_polygons (void)
{
  for (int n = 3; n <= 12; n++)
    assert_area (SQ_OUTLINE_POLYGON, (const double[]){ n, 250 }, 2,
                 n * 250.0 * 250.0 / (4 * tan (G_PI / n)));
}

/* Every shape as it first stands: simple, counter-clockwise, ids from 1, one front from (0, 0). */
static void
test_usual (void)
{
  for (guint kind = 0; kind < SQ_N_SHAPE_KINDS; kind++)
    {
      guint n, n_corners, n_fronts = 0;
      const SqFigure *figures = sq_shape_figures ((SqShapeKind) kind, &n);
      double usual[SQ_MOST_FIGURES];
      for (guint i = 0; i < n; i++)
        usual[i] = figures[i].usual;
      g_assert_cmpfloat (area_of ((SqShapeKind) kind, usual, n), >, 0);
      g_autoptr (SqOutline) outline = sq_shape_outline ((SqShapeKind) kind, usual, n, NULL);
      const SqCorner *corners = sq_outline_ring (outline, 0, &n_corners);
      for (guint i = 0; i < n_corners; i++)
        {
          g_assert_cmpuint (corners[i].id, ==, i + 1);
          n_fronts += corners[i].front ? 1 : 0;
        }
      g_assert_cmpuint (n_fronts, ==, 1);
      g_assert_true (corners[0].front);
      g_assert_cmpfloat (corners[0].at.x, ==, 0);
      g_assert_cmpfloat (corners[0].at.y, ==, 0);
    }
}

static void
test_refused (void)
{
  static const struct
  {
    SqShapeKind kind;
    double figures[SQ_MOST_FIGURES];
    guint n;
    gint bad;
  } cases[] = {
    { SQ_OUTLINE_RECTANGLE, { 0, 400 }, 2, 0 },   { SQ_OUTLINE_RECTANGLE, { 600, -1 }, 2, 1 },
    { SQ_OUTLINE_RECTANGLE, { 600, NAN }, 2, 1 }, { SQ_OUTLINE_POLYGON, { 4.5, 250 }, 2, 0 },
    { SQ_OUTLINE_POLYGON, { 2, 250 }, 2, 0 },     { SQ_OUTLINE_CIRCLE, { 1e9 }, 1, 0 },
  };

  for (guint i = 0; i < G_N_ELEMENTS (cases); i++)
    {
      gint bad = -2;
      g_assert_null (sq_shape_outline (cases[i].kind, cases[i].figures, cases[i].n, &bad));
      g_assert_cmpint (bad, ==, cases[i].bad);
    }
}

/* Ears as wide as the seat leave no seat. */
static void
test_ears (void)
{
  const SqShapeKind kinds[] = { SQ_OUTLINE_L, SQ_OUTLINE_T };

  for (guint k = 0; k < G_N_ELEMENTS (kinds); k++)
    {
      guint n;
      const SqFigure *figures = sq_shape_figures (kinds[k], &n);
      double values[SQ_MOST_FIGURES];
      gint bad = -2;
      for (guint i = 0; i < n; i++)
        values[i] = figures[i].kind == SQ_FIGURE_EAR_WIDTH ? 5000 : figures[i].usual;
      g_assert_null (sq_shape_outline (kinds[k], values, n, &bad));
      g_assert_cmpint (bad, >=, 0);
    }
}

int
main (int argc, char *argv[])
{
  g_test_init (&argc, &argv, NULL);
  g_test_add_func ("/job/shape/areas", test_areas);
  g_test_add_func ("/job/shape/polygons", test_polygons);
  g_test_add_func ("/job/shape/usual", test_usual);
  g_test_add_func ("/job/shape/refused", test_refused);
  g_test_add_func ("/job/shape/ears", test_ears);
  return g_test_run ();
}
