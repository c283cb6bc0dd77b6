/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "job/shape.h"

#include "geometry/crossing.h"
#include "job/frame.h"

static SqOutline *
make (SqShapeKind kind, const double *figures)
{
  guint n;
  gint bad = 99;
  SqOutline *outline;

  sq_shape_figures (kind, &n);
  outline = sq_shape_outline (kind, figures, n, &bad);
  g_assert_cmpint (bad, ==, -1);
  g_assert_nonnull (outline);
  return outline;
}

static double
area_mm2 (const SqOutline *outline)
{
  g_autoptr (SqPath) path = sq_outline_path (outline, 0, NULL);

  return sq_path_area_mm2 (path);
}

static double
length_mm (const SqOutline *outline)
{
  g_autoptr (SqPath) path = sq_outline_path (outline, 0, NULL);

  return sq_path_length_mm (path);
}

static void
assert_corners (const SqOutline *outline, const SqPoint *points, guint n_points)
{
  guint n;
  const SqCorner *ring = sq_outline_ring (outline, 0, &n);

  g_assert_cmpuint (n, ==, n_points);
  for (guint i = 0; i < n; i++)
    {
      g_assert_cmpfloat (ring[i].at.x, ==, points[i].x);
      g_assert_cmpfloat (ring[i].at.y, ==, points[i].y);
    }
}

static void
assert_size (const SqOutline *outline, double width_mm, double depth_mm)
{
  double width, depth;

  g_assert_true (sq_outline_extents_mm (outline, &width, &depth));
  g_assert_cmpfloat_with_epsilon (width, width_mm, 1e-9);
  g_assert_cmpfloat_with_epsilon (depth, depth_mm, 1e-9);
}

/* What all shapes keep to, as they first stand there. */
static void
test_usual (void)
{
  for (SqShapeKind kind = 0; kind < SQ_N_SHAPE_KINDS; kind++)
    {
      guint n, n_corners;
      const SqFigure *asked = sq_shape_figures (kind, &n);
      double figures[SQ_MOST_FIGURES];

      g_assert_cmpuint (n, <=, SQ_MOST_FIGURES);
      for (guint i = 0; i < n; i++)
        {
          g_assert_cmpfloat (asked[i].usual, >=, asked[i].least);
          g_assert_cmpfloat (asked[i].usual, <=, asked[i].most);
          figures[i] = asked[i].usual;
        }
      g_autoptr (SqOutline) outline = make (kind, figures);
      g_autoptr (SqOutline) turned = sq_outline_turned_right (outline);
      g_autoptr (SqPath) path = sq_outline_path (outline, 0, NULL);
      const SqCorner *ring = sq_outline_ring (outline, 0, &n_corners);
      g_assert_true (turned == outline);
      g_assert_true (sq_path_is_simple (path, NULL));
      g_assert_true (ring[0].at.x == 0 && ring[0].at.y == 0);
      g_assert_true (ring[1].at.x > 0 && ring[1].at.y == 0);
      for (guint i = 0; i < n_corners; i++)
        {
          g_assert_cmpuint (ring[i].id, ==, i + 1);
          g_assert_cmpint (ring[i].front, ==, i == 0);
          g_assert_cmpuint (ring[i].given, ==, 0);
        }
    }
}

static void
test_straight_shapes (void)
{
  const SqPoint rectangle[] = { { 0, 0 }, { 500, 0 }, { 500, 400 }, { 0, 400 } };
  const SqPoint trapezoid[] = { { 0, 0 }, { 500, 0 }, { 450, 400 }, { 50, 400 } };
  const SqPoint l[] = {
    { 0, 0 }, { 500, 0 }, { 500, 120 }, { 420, 120 }, { 420, 400 }, { 0, 400 }
  };
  const SqPoint t[] = { { 0, 0 },     { 500, 0 },  { 500, 120 }, { 420, 120 },
                        { 420, 400 }, { 80, 400 }, { 80, 120 },  { 0, 120 } };
  g_autoptr (SqOutline) one = make (SQ_OUTLINE_RECTANGLE, (double[]){ 500, 400 });
  g_autoptr (SqOutline) two = make (SQ_OUTLINE_TRAPEZOID, (double[]){ 500, 400, 400 });
  g_autoptr (SqOutline) three = make (SQ_OUTLINE_L, (double[]){ 500, 400, 80, 120 });
  g_autoptr (SqOutline) four = make (SQ_OUTLINE_T, (double[]){ 500, 400, 80, 120 });

  assert_corners (one, rectangle, G_N_ELEMENTS (rectangle));
  assert_corners (two, trapezoid, G_N_ELEMENTS (trapezoid));
  assert_corners (three, l, G_N_ELEMENTS (l));
  assert_corners (four, t, G_N_ELEMENTS (t));
  g_assert_cmpfloat (area_mm2 (three), ==, 500 * 400 - 80 * 280);
  g_assert_cmpfloat (area_mm2 (four), ==, 500 * 400 - 2 * 80 * 280);
}

static void
test_bay (void)
{
  const SqPoint bay[] = { { 0, 0 },      { 1200, 0 },  { 1200, 150 },
                          { 1000, 450 }, { 200, 450 }, { 0, 150 } };
  const SqPoint without_sides[] = { { 0, 0 }, { 1200, 0 }, { 1000, 450 }, { 200, 450 } };
  g_autoptr (SqOutline) outline = make (SQ_OUTLINE_BAY, (double[]){ 1200, 450, 150, 800 });
  g_autoptr (SqOutline) slanted = make (SQ_OUTLINE_BAY, (double[]){ 1200, 450, 0, 800 });

  assert_corners (outline, bay, G_N_ELEMENTS (bay));
  assert_corners (slanted, without_sides, G_N_ELEMENTS (without_sides));
}

/* Area, apothem and circumradius of regular polygons of side 1, as tables of elementary geometry
 * print them. */
static void
test_polygons (void)
{
  static const struct
  {
    guint n;
    double area, apothem, radius;
  } rows[] = {
    { 3, .4330127, .2886751, .5773503 },      { 4, 1, .5, .7071068 },
    { 5, 1.7204774, .6881910, .8506508 },     { 6, 2.5980762, .8660254, 1 },
    { 7, 3.6339124, 1.0382607, 1.1523824 },   { 8, 4.8284271, 1.2071068, 1.3065630 },
    { 9, 6.1818242, 1.3737387, 1.4619022 },   { 10, 7.6942088, 1.5388418, 1.6180340 },
    { 12, 11.1961524, 1.8660254, 1.9318517 },
  };

  for (guint i = 0; i < G_N_ELEMENTS (rows); i++)
    {
      guint n;
      g_autoptr (SqOutline) outline = make (SQ_OUTLINE_POLYGON, (double[]){ rows[i].n, 100 });
      const SqCorner *ring = sq_outline_ring (outline, 0, &n);
      SqPoint centre = { 50, 100 * rows[i].apothem };

      g_assert_cmpuint (n, ==, rows[i].n);
      g_assert_cmpfloat_with_epsilon (area_mm2 (outline), 1e4 * rows[i].area, 1e-3);
      for (guint k = 0; k < n; k++)
        {
          g_assert_cmpfloat_with_epsilon (sq_distance (ring[k].at, ring[(k + 1) % n].at), 100,
                                          1e-9);
          g_assert_cmpfloat_with_epsilon (sq_distance (ring[k].at, centre), 100 * rows[i].radius,
                                          2e-5);
        }
    }
}

/* A circle of diameter 18: circumference 56.548668, area 254.469005, by formula. */
static void
test_circle (void)
{
  g_autoptr (SqOutline) outline = make (SQ_OUTLINE_CIRCLE, (double[]){ 18 });
  guint n;

  sq_outline_ring (outline, 0, &n);
  g_assert_cmpuint (n, ==, 2);
  g_assert_cmpfloat_with_epsilon (area_mm2 (outline), 254.469005, 1e-6);
  g_assert_cmpfloat_with_epsilon (length_mm (outline), 56.548668, 1e-6);
  assert_size (outline, 18, 18);
}

static void
test_half_round (void)
{
  g_autoptr (SqOutline) bare = make (SQ_OUTLINE_HALF_ROUND, (double[]){ 900, 0 });
  g_autoptr (SqOutline) deep = make (SQ_OUTLINE_HALF_ROUND, (double[]){ 900, 200 });
  guint n;

  sq_outline_ring (bare, 0, &n);
  g_assert_cmpuint (n, ==, 2);
  sq_outline_ring (deep, 0, &n);
  g_assert_cmpuint (n, ==, 4);
  g_assert_cmpfloat_with_epsilon (area_mm2 (bare), M_PI * 450 * 450 / 2, 1e-6);
  g_assert_cmpfloat_with_epsilon (area_mm2 (deep), M_PI * 450 * 450 / 2 + 900 * 200, 1e-6);
  g_assert_cmpfloat_with_epsilon (length_mm (deep), M_PI * 450 + 900 + 400, 1e-9);
  assert_size (bare, 900, 450);
  assert_size (deep, 900, 650);
}

static void
test_bad (void)
{
  static const struct
  {
    SqShapeKind kind;
    double figures[SQ_MOST_FIGURES];
    gint bad;
  } rows[] = {
    { SQ_OUTLINE_RECTANGLE, { 0, 400 }, 0 },      { SQ_OUTLINE_RECTANGLE, { 500, -1 }, 1 },
    { SQ_OUTLINE_RECTANGLE, { 500, NAN }, 1 },    { SQ_OUTLINE_RECTANGLE, { INFINITY, 400 }, 0 },
    { SQ_OUTLINE_TRAPEZOID, { 500, 400, 0 }, 2 }, { SQ_OUTLINE_L, { 500, 400, 500, 120 }, 2 },
    { SQ_OUTLINE_L, { 500, 400, 80, 400 }, 3 },   { SQ_OUTLINE_T, { 500, 400, 250, 120 }, 2 },
    { SQ_OUTLINE_T, { 500, 400, 80, 401 }, 3 },   { SQ_OUTLINE_POLYGON, { 2, 100 }, 0 },
    { SQ_OUTLINE_POLYGON, { 5.5, 100 }, 0 },      { SQ_OUTLINE_POLYGON, { 37, 100 }, 0 },
    { SQ_OUTLINE_POLYGON, { 36, 90000 }, 1 },     { SQ_OUTLINE_CIRCLE, { 0 }, 0 },
    { SQ_OUTLINE_HALF_ROUND, { 900, -1 }, 1 },    { SQ_OUTLINE_BAY, { 1200, 450, 450, 800 }, 2 },
  };

  for (guint i = 0; i < G_N_ELEMENTS (rows); i++)
    {
      guint n;
      gint bad = 99;

      sq_shape_figures (rows[i].kind, &n);
      g_assert_null (sq_shape_outline (rows[i].kind, rows[i].figures, n, &bad));
      g_assert_cmpint (bad, ==, rows[i].bad);
      g_assert_null (sq_shape_outline (rows[i].kind, rows[i].figures, n, NULL));
    }
}

int
main (int argc, char **argv)
{
  g_test_init (&argc, &argv, NULL);
  g_test_add_func ("/job/shape/usual", test_usual);
  g_test_add_func ("/job/shape/straight", test_straight_shapes);
  g_test_add_func ("/job/shape/bay", test_bay);
  g_test_add_func ("/job/shape/polygons", test_polygons);
  g_test_add_func ("/job/shape/circle", test_circle);
  g_test_add_func ("/job/shape/half-round", test_half_round);
  g_test_add_func ("/job/shape/bad", test_bad);
  return g_test_run ();
}
