/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "geometry/path.h"

#include "base/units.h"
#include "geometry/geos.h"
#include "geometry/random-ring.h"

#define RANDOM_ROUNDS 300

#define assert_near(a, b, within) g_assert_cmpfloat_with_epsilon ((a), (b), (within))

static void
assert_points_near (SqPoint a, SqPoint b, double within)
{
  g_assert_cmpfloat (sq_distance (a, b), <=, within);
}

static SqPath *
random_path (void)
{
  guint n = (guint) g_test_rand_int_range (3, 20);

  return g_test_rand_bit () ? random_ring (n, 1000, 0.5)
                            : random_tangle (n, 1000, 0.5, g_test_rand_bit ());
}

static double
random_station (const SqPath *path)
{
  return g_test_rand_double () * sq_path_length_mm (path);
}

static void
assert_paths_near (const SqPath *a, const SqPath *b, double within)
{
  g_assert_cmpuint (sq_path_n_nodes (a), ==, sq_path_n_nodes (b));
  g_assert_cmpint (sq_path_is_ring (a), ==, sq_path_is_ring (b));
  for (guint i = 0; i < sq_path_n_nodes (a); i++)
    {
      const SqNode *m = &sq_path_nodes (a)[i], *n = &sq_path_nodes (b)[i];
      assert_points_near (m->at, n->at, within);
      g_assert_cmpfloat (fabs (m->bulge - n->bulge), <=, within);
      g_assert_cmpuint (m->tag, ==, n->tag);
    }
}

/* The originals of the offset checks: areas and perimeters by elementary geometry, the same from
 * GEOS. */
static void
test_polygons (void)
{
  const SqPoint triangle[] = { { 0, 0 }, { 4, 0 }, { 0, 3 } };
  const SqPoint trapezoid[] = { { 0, 0 }, { 24, 0 }, { 21, 20 }, { 3, 20 } };
  const SqPoint ell[] = { { 0, 0 }, { 60, 0 }, { 60, 20 }, { 20, 20 }, { 20, 50 }, { 0, 50 } };
  const struct
  {
    const SqPoint *points;
    guint n;
    double area, perimeter;
  } polygons[] = {
    { triangle, G_N_ELEMENTS (triangle), 6, 12 },
    { trapezoid, G_N_ELEMENTS (trapezoid), 420, 82.447497 },
    { ell, G_N_ELEMENTS (ell), 1800, 220 },
  };

  for (guint i = 0; i < G_N_ELEMENTS (polygons); i++)
    {
      g_autoptr (SqPath) path = sq_path_new_polygon (polygons[i].points, polygons[i].n);
      assert_near (sq_path_area_mm2 (path), polygons[i].area, 1e-9);
      assert_near (sq_path_length_mm (path), polygons[i].perimeter, 5e-7);
      assert_near (geos_area_mm2 (path, 1), polygons[i].area, 1e-9);
      g_assert_cmpuint (sq_path_n_tags (path), ==, polygons[i].n);
    }
  g_autoptr (SqPath) rectangle = sq_path_new_rectangle (24, 0, 0, 20);
  assert_near (sq_path_area_mm2 (rectangle), 480, 1e-12);
  assert_near (sq_path_length_mm (rectangle), 88, 1e-12);
  assert_points_near (sq_path_nodes (rectangle)[0].at, sq_point (0, 0), 0);
}

/* Area and circumradius of regular polygons of side 1. Common tables; the area by
 * r² n sin (2 π / n) / 2. */
static void
test_regular_polygons (void)
{
  static const struct
  {
    guint n;
    double area, apothem, circumradius;
  } polygons[] = {
    { 3, .4330127, .2886751, .5773503 },      { 4, 1, .5, .7071068 },
    { 5, 1.7204774, .6881910, .8506508 },     { 6, 2.5980762, .8660254, 1 },
    { 7, 3.6339124, 1.0382607, 1.1523824 },   { 8, 4.8284271, 1.2071068, 1.3065630 },
    { 9, 6.1818242, 1.3737387, 1.4619022 },   { 10, 7.6942088, 1.5388418, 1.6180340 },
    { 12, 11.1961524, 1.8660254, 1.9318517 },
  };

  for (guint i = 0; i < G_N_ELEMENTS (polygons); i++)
    {
      guint n = polygons[i].n;
      SqPoint points[12];
      for (guint k = 0; k < n; k++)
        points[k] = sq_turned (sq_point (polygons[i].circumradius, 0), 2 * G_PI * k / n);
      g_autoptr (SqPath) path = sq_path_new_polygon (points, n);
      assert_near (sq_path_length_mm (path), n, 1e-6);
      assert_near (sq_path_area_mm2 (path), polygons[i].area, 2e-6);
      assert_near (sq_path_nearest (path, sq_point (0, 0)).distance_mm, polygons[i].apothem, 1e-6);
    }
}

/* Triangles laid out from their three sides; areas by Heron. */
static void
test_triangles (void)
{
  static const struct
  {
    double a, b, c, area, angle_deg[3];
  } triangles[] = {
    { 11, 15, 21, 79.007515, { 30.1082, 43.1608, 106.7310 } },
    { 13, 14, 15, 84, { 53.130102, 59.489763, 67.380135 } },
    { 3, 4, 5, 6, { 36.869898, 53.130102, 90 } },
    { 10, 15, 7, 29.393877, { 0 } },
  };

  for (guint i = 0; i < G_N_ELEMENTS (triangles); i++)
    {
      double a = triangles[i].a, b = triangles[i].b, c = triangles[i].c;
      double x = (b * b + c * c - a * a) / (2 * c);
      SqPoint points[] = { { 0, 0 }, { c, 0 }, { x, sqrt (b * b - x * x) } };
      g_autoptr (SqPath) path = sq_path_new_polygon (points, 3);

      assert_near (sq_path_area_mm2 (path), triangles[i].area, 5e-7);
      assert_near (sq_path_length_mm (path), a + b + c, 1e-12);
      for (guint k = 0; k < 3 && triangles[i].angle_deg[0] > 0; k++)
        {
          SqVector out, in;
          sq_path_point_at (path, sq_path_station_mm (path, k), &out);
          sq_path_point_at (path, sq_path_station_mm (path, k) - 1e-9, &in);
          assert_near (180 - sq_angle_rad (in, out) * SQ_DEG_PER_RAD, triangles[i].angle_deg[k],
                       5e-5);
        }
    }
}

static SqPath *
rounded_rectangle (double width, double depth, double radius)
{
  double b = tan (G_PI / 8), r = radius;
  SqNode nodes[] = {
    { { r, 0 }, 0, 0 },
    { { width - r, 0 }, b, 4 },
    { { width, r }, 0, 1 },
    { { width, depth - r }, b, 5 },
    { { width - r, depth }, 0, 2 },
    { { r, depth }, b, 6 },
    { { 0, depth - r }, 0, 3 },
    { { 0, r }, b, 7 },
  };
  return sq_path_new (nodes, G_N_ELEMENTS (nodes), TRUE);
}

static void
test_round_shapes (void)
{
  g_autoptr (SqPath) rounded = rounded_rectangle (24, 20, 3);
  assert_near (sq_path_length_mm (rounded), 82.849556, 5e-7);
  assert_near (sq_path_area_mm2 (rounded), 472.274334, 5e-7);
  g_assert_cmpuint (sq_path_n_tags (rounded), ==, 8);

  g_autoptr (SqPath) circle = sq_path_new_circle (sq_point (100000, -100000), 9);
  assert_near (sq_path_length_mm (circle), 56.548668, 5e-7);
  assert_near (sq_path_area_mm2 (circle), 254.469005, 5e-7);
  SqBox box = sq_path_box (circle);
  assert_points_near (box.min, sq_point (99991, -100009), 1e-10);
  assert_points_near (box.max, sq_point (100009, -99991), 1e-10);
  g_assert_cmpint (sq_path_winding (circle, sq_point (100000, -100000)), ==, 1);
  g_assert_cmpint (sq_path_winding (circle, sq_point (100006, -99994)), ==, 1);
  g_assert_cmpint (sq_path_winding (circle, sq_point (100006.5, -99993.5)), ==, 0);
}

/* A major arc and a slight bow 100 m from the origin. */
static void
test_area_far_out (void)
{
  SqNode nodes[] = { { { 0, 0 }, 1e-8, 0 }, { { 1000, 0 }, 0, 0 }, { { 0, 10 }, 3, 0 } };
  g_autoptr (SqPath) near = sq_path_new (nodes, G_N_ELEMENTS (nodes), TRUE);
  g_autoptr (SqPath) far = sq_path_moved (near, 0, sq_point (1e5, -1e5));

  double theta = 4 * atan (3), radius = 10 * (1 + 9) / (4 * 3.0);
  double expected = 5000 + radius * radius / 2 * (theta - sin (theta)) + 1e6 * 1e-8 / 3;
  assert_near (sq_path_area_mm2 (near), expected, 1e-9);
  assert_near (sq_path_area_mm2 (far), expected, 1e-7);
}

static void
test_geos_measures (void)
{
  for (int i = 0; i < RANDOM_ROUNDS / 10; i++)
    {
      g_autoptr (SqPath) ring = random_ring ((guint) g_test_rand_int_range (3, 30), 1000, 0.6);
      double deviation = 1e-4, length = sq_path_length_mm (ring);

      assert_near (sq_path_area_mm2 (ring), geos_area_mm2 (ring, deviation), length * deviation);
      assert_near (length, geos_length_mm (ring, deviation), length * 1e-5);
    }
}

static void
test_moved (void)
{
  for (int i = 0; i < RANDOM_ROUNDS; i++)
    {
      g_autoptr (SqPath) path = random_path ();
      double turn = g_test_rand_double_range (-7, 7), station = random_station (path);
      SqVector by = random_point (100000), direction, turned;
      g_autoptr (SqPath) moved = sq_path_moved (path, turn, by);

      assert_near (sq_path_length_mm (moved), sq_path_length_mm (path), 1e-7);
      assert_near (sq_path_area_mm2 (moved), sq_path_area_mm2 (path), 1e-4);
      SqPoint at = sq_path_point_at (path, station, &direction);
      assert_points_near (sq_path_point_at (moved, station, &turned),
                          sq_add (sq_turned (at, turn), by), 1e-7);
      assert_points_near (turned, sq_turned (direction, turn), 1e-7);
    }
}

static void
test_reversed_and_mirrored (void)
{
  for (int i = 0; i < RANDOM_ROUNDS; i++)
    {
      g_autoptr (SqPath) path = random_path ();
      g_autoptr (SqPath) reversed = sq_path_reversed (path);
      g_autoptr (SqPath) again = sq_path_reversed (reversed);
      g_autoptr (SqPath) mirrored = sq_path_mirrored (path);
      g_autoptr (SqPath) back = sq_path_mirrored (mirrored);
      double station = random_station (path), length = sq_path_length_mm (path);
      SqVector along, against;

      assert_paths_near (again, path, 0);
      assert_paths_near (back, path, 0);
      assert_near (sq_path_area_mm2 (reversed), -sq_path_area_mm2 (path), 1e-6);
      assert_near (sq_path_area_mm2 (mirrored), sq_path_area_mm2 (path), 1e-6);
      SqPoint at = sq_path_point_at (path, station, &along);
      assert_points_near (sq_path_point_at (reversed, length - station, &against), at, 1e-8);
      assert_points_near (against, sq_scale (along, -1), 1e-8);
      assert_points_near (sq_path_point_at (mirrored, length - station, &against),
                          sq_point (-at.x, at.y), 1e-8);
      assert_points_near (against, sq_point (along.x, -along.y), 1e-8);
    }
}

static void
test_tags_turned_over (void)
{
  SqNode nodes[] = { { { 0, 0 }, 0.5, 7 }, { { 5, 0 }, 0, 8 }, { { 5, 5 }, -0.25, 9 } };
  g_autoptr (SqPath) ring = sq_path_new (nodes, 3, TRUE);
  g_autoptr (SqPath) mirrored = sq_path_mirrored (ring);
  SqNode ring_mirrored[] = { { { 0, 0 }, -0.25, 9 }, { { -5, 5 }, 0, 8 }, { { -5, 0 }, 0.5, 7 } };
  g_autoptr (SqPath) expected = sq_path_new (ring_mirrored, 3, TRUE);
  assert_paths_near (mirrored, expected, 0);

  g_autoptr (SqPath) open = sq_path_new (nodes, 3, FALSE);
  g_autoptr (SqPath) reversed = sq_path_reversed (open);
  SqNode open_reversed[] = { { { 5, 5 }, 0, 8 }, { { 5, 0 }, -0.5, 7 }, { { 0, 0 }, 0, 0 } };
  g_autoptr (SqPath) expected_open = sq_path_new (open_reversed, 3, FALSE);
  assert_paths_near (reversed, expected_open, 0);
  g_assert_cmpuint (sq_path_n_tags (open), ==, 9);
}

static void
test_nearest_finds_station (void)
{
  for (int i = 0; i < RANDOM_ROUNDS; i++)
    {
      g_autoptr (SqPath) ring = random_ring ((guint) g_test_rand_int_range (3, 20), 1000, 0.5);
      double station = random_station (ring);
      SqVector along;
      SqPoint at = sq_path_point_at (ring, station, &along);
      SqNearest nearest = sq_path_nearest (ring, at);

      g_assert_cmpfloat (nearest.distance_mm, <, 1e-9);
      assert_near (nearest.station_mm, station, 1e-7);
      SqPoint aside = sq_moved (at, sq_right (along), 1e-3);
      nearest = sq_path_nearest (ring, aside);
      g_assert_cmpfloat (nearest.distance_mm, <=, 1e-3 + 1e-9);
      assert_points_near (nearest.at, sq_path_point_at (ring, nearest.station_mm, NULL), 1e-8);
      SqSegment s = sq_path_segment (ring, nearest.segment);
      double t;
      assert_near (sq_segment_nearest_mm (&s, aside, &t), nearest.distance_mm, 1e-12);
      /* outward is to the right of travel */
      g_assert_cmpint (sq_path_winding (ring, aside), ==, 0);
      g_assert_cmpint (sq_path_winding (ring, sq_moved (at, sq_left (along), 1e-3)), ==, 1);
    }
}

static void
test_stations_go_round (void)
{
  g_autoptr (SqPath) ring = sq_path_new_rectangle (0, 0, 30, 20);
  g_autoptr (SqPath) open = sq_path_part (ring, 0, 80);
  SqVector direction;

  assert_points_near (sq_path_point_at (ring, 110, &direction), sq_point (10, 0), 1e-12);
  assert_points_near (sq_path_point_at (ring, -10, &direction), sq_point (0, 10), 1e-12);
  assert_points_near (direction, sq_point (0, -1), 0);
  assert_points_near (sq_path_point_at (ring, 30, &direction), sq_point (30, 0), 0);
  assert_points_near (direction, sq_point (0, 1), 0);
  assert_points_near (sq_path_point_at (ring, 100, &direction), sq_point (0, 0), 0);
  assert_points_near (direction, sq_point (1, 0), 0);
  assert_points_near (sq_path_point_at (open, -5, &direction), sq_point (0, 0), 0);
  assert_points_near (sq_path_point_at (open, 99, &direction), sq_point (0, 20), 0);
  assert_points_near (direction, sq_point (-1, 0), 0);
  g_assert_cmpfloat (sq_path_station_mm (ring, 4), ==, 100);

  /* nodes that lie on each other have no direction of their own */
  SqNode doubled[] = {
    { { 0, 0 }, 0, 0 }, { { 0, 0 }, 0, 0 }, { { 9, 0 }, 0, 0 }, { { 9, 0 }, 0, 0 }
  };
  g_autoptr (SqPath) path = sq_path_new (doubled, 4, FALSE);
  sq_path_point_at (path, 0, &direction);
  assert_points_near (direction, sq_point (1, 0), 0);
  sq_path_point_at (path, 9, &direction);
  assert_points_near (direction, sq_point (1, 0), 0);
}

static void
test_parts_join (void)
{
  for (int i = 0; i < RANDOM_ROUNDS; i++)
    {
      g_autoptr (SqPath) path = random_path ();
      double length = sq_path_length_mm (path), cut[3], sum = 0;

      for (guint k = 0; k < 3; k++)
        cut[k] = random_station (path);
      cut[0] = sq_path_is_ring (path) ? cut[0] : 0;
      cut[2] = sq_path_is_ring (path) ? cut[2] : length;
      if (cut[1] < cut[0])
        cut[1] = cut[0] + g_test_rand_double () * (length - cut[0]);
      g_autoptr (SqPath) a = sq_path_part (path, cut[0], cut[1]);
      g_autoptr (SqPath) b = sq_path_part (path, cut[1], cut[2]);
      sum = sq_path_length_mm (a) + sq_path_length_mm (b);
      if (sq_path_is_ring (path))
        {
          g_autoptr (SqPath) c = sq_path_part (path, cut[2], cut[0]);
          sum += sq_path_length_mm (c);
          /* round once or, where the cuts are passed in the other order, twice */
          assert_near (remainder (sum, length), 0, 1e-7);
        }
      else
        assert_near (sum, length, 1e-7);
      double on = g_test_rand_double () * sq_path_length_mm (a);
      assert_points_near (sq_path_point_at (a, on, NULL),
                          sq_path_point_at (path, cut[0] + on, NULL), 1e-7);
      assert_points_near (sq_path_nodes (b)[0].at, sq_path_nodes (a)[sq_path_n_nodes (a) - 1].at,
                          0);
    }
}

static void
test_part_ends (void)
{
  g_autoptr (SqPath) ring = sq_path_new_rectangle (0, 0, 30, 20);

  g_autoptr (SqPath) round = sq_path_part (ring, 10, 10);
  g_assert_cmpuint (sq_path_n_nodes (round), ==, 6);
  assert_near (sq_path_length_mm (round), 100, 1e-12);
  g_autoptr (SqPath) whole = sq_path_part (ring, 0, 100);
  g_assert_cmpuint (sq_path_n_nodes (whole), ==, 5);
  g_assert_false (sq_path_is_ring (whole));
  g_autoptr (SqPath) past = sq_path_part (ring, 90, 20);
  g_assert_cmpuint (sq_path_n_nodes (past), ==, 3);
  g_assert_cmpuint (sq_path_nodes (past)[0].tag, ==, 3);
  g_assert_cmpuint (sq_path_nodes (past)[1].tag, ==, 0);
  /* ends as good as at a node use it */
  g_autoptr (SqPath) side = sq_path_part (ring, 30 - 5e-8, 50 + 5e-8);
  g_assert_cmpuint (sq_path_n_nodes (side), ==, 2);
  assert_points_near (sq_path_nodes (side)[0].at, sq_point (30, 0), 0);
  assert_points_near (sq_path_nodes (side)[1].at, sq_point (30, 20), 0);
  g_assert_cmpuint (sq_path_nodes (side)[0].tag, ==, 1);
  g_autoptr (SqPath) last = sq_path_part (ring, 80 + 5e-8, 100 - 5e-8);
  g_assert_cmpuint (sq_path_n_nodes (last), ==, 2);
  assert_points_near (sq_path_nodes (last)[1].at, sq_point (0, 0), 0);
  g_autoptr (SqPath) point = sq_path_part (ring, 5, 5 + 1e-12);
  assert_near (sq_path_length_mm (point), 0, 1e-11);
}

static void
test_split (void)
{
  for (int i = 0; i < RANDOM_ROUNDS; i++)
    {
      g_autoptr (SqPath) path = random_path ();
      double stations[5], probe = random_station (path);

      for (guint k = 0; k < 3; k++)
        stations[k] = random_station (path);
      stations[3] = stations[0] + 5e-8;
      stations[4] = sq_path_station_mm (path, 1) - 5e-8;
      g_autoptr (SqPath) split = sq_path_split_at (path, stations, G_N_ELEMENTS (stations));
      g_assert_cmpuint (sq_path_n_nodes (split), ==, sq_path_n_nodes (path) + 3);
      assert_near (sq_path_length_mm (split), sq_path_length_mm (path), 1e-7);
      assert_near (sq_path_area_mm2 (split), sq_path_area_mm2 (path), 1e-4);
      assert_points_near (sq_path_point_at (split, probe, NULL),
                          sq_path_point_at (path, probe, NULL), 1e-7);
      for (guint k = 0; k < 3; k++)
        {
          double nearest = INFINITY;
          SqPoint at = sq_path_point_at (path, stations[k], NULL);
          for (guint n = 0; n < sq_path_n_nodes (split); n++)
            nearest = fmin (nearest, sq_distance (sq_path_nodes (split)[n].at, at));
          g_assert_cmpfloat (nearest, <, 1e-7);
        }
    }
}

/* Winding against the flattened path by the angle under which its chords are seen. */
static int
winding_by_angles (const SqPath *path, SqPoint p)
{
  g_autoptr (SqPath) flat = sq_path_flattened (path, 1e-3);
  double sum = 0;

  for (guint i = 0; i < sq_path_n_segments (flat); i++)
    {
      SqSegment s = sq_path_segment (flat, i);
      sum += sq_angle_rad (sq_sub (s.from, p), sq_sub (s.to, p));
    }
  return (int) round (sum / (2 * G_PI));
}

static void
test_winding (void)
{
  for (int i = 0; i < RANDOM_ROUNDS / 2; i++)
    {
      g_autoptr (SqPath) path = random_tangle ((guint) g_test_rand_int_range (2, 9), 1000, 0.6,
                                               TRUE);

      for (int k = 0; k < 5; k++)
        {
          SqPoint p = random_point (1500);
          if (sq_path_nearest (path, p).distance_mm > 2e-3)
            g_assert_cmpint (sq_path_winding (path, p), ==, winding_by_angles (path, p));
        }
    }
}

/* Whole numbers, so that rays pass through nodes and points lie on chords. */
static void
test_winding_at_nodes (void)
{
  static const double bulges[] = { 0, 0, 1, -1, 2, -0.5, 0.25 };

  for (int i = 0; i < RANDOM_ROUNDS; i++)
    {
      SqNode nodes[7];
      guint n = (guint) g_test_rand_int_range (2, 8);
      for (guint k = 0; k < n; k++)
        nodes[k] = (SqNode){ { g_test_rand_int_range (-3, 4), g_test_rand_int_range (-3, 4) },
                             bulges[g_test_rand_int_range (0, G_N_ELEMENTS (bulges))],
                             0 };
      g_autoptr (SqPath) path = sq_path_new (nodes, n, TRUE);
      for (int x = -4; x <= 4; x++)
        {
          SqPoint p = sq_point (x, g_test_rand_int_range (-4, 5));
          if (sq_path_nearest (path, p).distance_mm > 2e-3)
            g_assert_cmpint (sq_path_winding (path, p), ==, winding_by_angles (path, p));
        }
    }
}

static void
test_flattened (void)
{
  for (int i = 0; i < RANDOM_ROUNDS / 10; i++)
    {
      g_autoptr (SqPath) path = random_path ();
      double deviation = pow (10, g_test_rand_double_range (-3, 1));
      g_autoptr (SqPath) flat = sq_path_flattened (path, deviation);
      guint k = 0;

      for (guint n = 0; n < sq_path_n_segments (flat); n++)
        {
          SqSegment chord = sq_path_segment (flat, n), s = sq_path_segment (path, k);
          g_assert_false (sq_segment_is_arc (&chord));
          g_assert_cmpuint (sq_path_nodes (flat)[n].tag, ==, sq_path_nodes (path)[k].tag);
          double t0 = sq_segment_place (&s, chord.from), t1 = sq_segment_place (&s, chord.to), t;
          if (fabs (t1 - t0) < 1)
            g_assert_cmpfloat (
                sq_segment_nearest_mm (&chord, sq_segment_point (&s, (t0 + t1) / 2), &t), <=,
                deviation * (1 + 1e-6) + 1e-9);
          if (chord.to.x == s.to.x && chord.to.y == s.to.y)
            k++;
        }
      g_assert_cmpuint (k, ==, sq_path_n_segments (path));
    }
}

static gpointer
share (gpointer path)
{
  for (int i = 0; i < 10000; i++)
    sq_path_unref (sq_path_ref (path));
  return NULL;
}

static void
test_shared (void)
{
  g_autoptr (SqPath) path = sq_path_new_circle (sq_point (0, 0), 10);
  GThread *other = g_thread_new (NULL, share, path);

  share (path);
  g_thread_join (other);
  g_assert_cmpuint (sq_path_n_segments (path), ==, 2);
}

static void
test_builder (void)
{
  SqPathBuilder builder;

  sq_path_builder_init (&builder);
  sq_path_builder_add (&builder, sq_point (0, 0), 1, 3);
  g_assert_null (sq_path_builder_end (&builder, FALSE));
  sq_path_builder_init (&builder);
  sq_path_builder_add (&builder, sq_point (0, 0), 1, 3);
  sq_path_builder_add (&builder, sq_point (2, 0), 0.5, 4);
  g_autoptr (SqPath) path = sq_path_builder_end (&builder, FALSE);
  g_assert_cmpuint (sq_path_n_segments (path), ==, 1);
  g_assert_cmpuint (sq_path_n_tags (path), ==, 4);
  assert_near (sq_path_length_mm (path), G_PI, 1e-15);
  g_assert_cmpfloat (sq_path_area_mm2 (path), ==, 0);
}

static void
test_refused (void)
{
  SqNode nodes[] = { { { 0, 0 }, 0, 0 }, { { NAN, 0 }, 0, 0 } };

  g_test_expect_message (NULL, G_LOG_LEVEL_CRITICAL, "*n_nodes >= 2*");
  g_assert_null (sq_path_new (nodes, 1, TRUE));
  g_test_assert_expected_messages ();
  g_test_expect_message (NULL, G_LOG_LEVEL_CRITICAL, "*isfinite*");
  g_assert_null (sq_path_new (nodes, 2, TRUE));
  g_test_assert_expected_messages ();
}

/* What an edit asks of paths thousands of times. */
static void
test_speed (void)
{
  g_autoptr (SqPath) ring = random_ring (20, 1000, 0.5);
  double length = sq_path_length_mm (ring), sum = 0;
  int rounds = g_test_perf () ? 1000000 : 1000;

  g_test_timer_start ();
  for (int i = 0; i < rounds; i++)
    sum += sq_path_point_at (ring, length * i / rounds, NULL).x;
  g_test_minimized_result (g_test_timer_elapsed () / rounds * 1e9, "point at: %.0f ns",
                           g_test_timer_elapsed () / rounds * 1e9);
  g_test_timer_start ();
  for (int i = 0; i < rounds; i++)
    sum += sq_path_winding (ring, sq_point (i % 1000, 10));
  g_test_minimized_result (g_test_timer_elapsed () / rounds * 1e9, "winding: %.0f ns",
                           g_test_timer_elapsed () / rounds * 1e9);
  g_test_timer_start ();
  for (int i = 0; i < rounds; i++)
    sum += sq_path_nearest (ring, sq_point (i % 1000, 10)).distance_mm;
  g_test_minimized_result (g_test_timer_elapsed () / rounds * 1e9, "nearest: %.0f ns",
                           g_test_timer_elapsed () / rounds * 1e9);
  g_test_timer_start ();
  for (int i = 0; i < rounds; i++)
    {
      g_autoptr (SqPath) copy = sq_path_new (sq_path_nodes (ring), 20, TRUE);
      sum += sq_path_area_mm2 (copy);
    }
  g_test_minimized_result (g_test_timer_elapsed () / rounds * 1e9, "new, with area: %.0f ns",
                           g_test_timer_elapsed () / rounds * 1e9);
  g_assert_true (isfinite (sum));
}

int
main (int argc, char **argv)
{
  g_test_init (&argc, &argv, NULL);
  g_test_add_func ("/geometry/path/polygons", test_polygons);
  g_test_add_func ("/geometry/path/polygons/regular", test_regular_polygons);
  g_test_add_func ("/geometry/path/triangles", test_triangles);
  g_test_add_func ("/geometry/path/round-shapes", test_round_shapes);
  g_test_add_func ("/geometry/path/area/far-out", test_area_far_out);
  g_test_add_func ("/geometry/path/area/geos", test_geos_measures);
  g_test_add_func ("/geometry/path/moved", test_moved);
  g_test_add_func ("/geometry/path/turned-over", test_reversed_and_mirrored);
  g_test_add_func ("/geometry/path/turned-over/tags", test_tags_turned_over);
  g_test_add_func ("/geometry/path/nearest", test_nearest_finds_station);
  g_test_add_func ("/geometry/path/stations", test_stations_go_round);
  g_test_add_func ("/geometry/path/part", test_parts_join);
  g_test_add_func ("/geometry/path/part/ends", test_part_ends);
  g_test_add_func ("/geometry/path/split", test_split);
  g_test_add_func ("/geometry/path/winding", test_winding);
  g_test_add_func ("/geometry/path/winding/nodes", test_winding_at_nodes);
  g_test_add_func ("/geometry/path/flattened", test_flattened);
  g_test_add_func ("/geometry/path/shared", test_shared);
  g_test_add_func ("/geometry/path/builder", test_builder);
  g_test_add_func ("/geometry/path/refused", test_refused);
  g_test_add_func ("/geometry/path/speed", test_speed);
  return g_test_run ();
}
