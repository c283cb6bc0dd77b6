/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "geometry/crossing.h"

#include "base/units.h"
#include "geometry/geos.h"
#include "geometry/random-ring.h"

#define RANDOM_ROUNDS 200

#define assert_near(a, b, within) g_assert_cmpfloat_with_epsilon ((a), (b), (within))
#define crossing_at(array, i) (&g_array_index (array, SqCrossing, i))

static void
assert_points_near (SqPoint a, SqPoint b, double within)
{
  g_assert_cmpfloat (sq_distance (a, b), <=, within);
}

static guint
random_count (guint least, guint most)
{
  return (guint) g_test_rand_int_range ((gint32) least, (gint32) most + 1);
}

/* The crossings of two paths that must have @n of them, stations checked against points. */
static GArray *
crossings (const SqPath *a, const SqPath *b, guint n)
{
  GArray *found = sq_paths_crossings (a, b);

  g_assert_cmpuint (found->len, ==, n);
  for (guint i = 0; i < found->len; i++)
    {
      const SqCrossing *c = crossing_at (found, i);
      assert_points_near (sq_path_point_at (a, c->station_a_mm, NULL), c->at, 2e-7);
      assert_points_near (sq_path_point_at (b, c->station_b_mm, NULL), c->at, 2e-7);
      g_assert_cmpfloat (sq_path_station_mm (a, c->segment_a), <=, c->station_a_mm);
      g_assert_cmpfloat (sq_path_station_mm (b, c->segment_b), <=, c->station_b_mm);
      if (i > 0)
        g_assert_cmpfloat (c[-1].station_a_mm, <=, c->station_a_mm);
    }
  return found;
}

static void
test_crossings (void)
{
  g_autoptr (SqPath) a = sq_path_new_rectangle (0, 0, 30, 20);
  g_autoptr (SqPath) b = sq_path_new_rectangle (10, 10, 40, 50);
  g_autoptr (SqPath) circle = sq_path_new_circle (sq_point (0, 0), 5);
  g_autoptr (SqPath) far = sq_path_new_rectangle (31, 0, 40, 20);

  g_autoptr (GArray) two = crossings (a, b, 2);
  assert_points_near (crossing_at (two, 0)->at, sq_point (30, 10), 1e-12);
  assert_points_near (crossing_at (two, 1)->at, sq_point (10, 20), 1e-12);
  g_assert_cmpuint (crossing_at (two, 1)->segment_a, ==, 2);
  g_assert_cmpuint (crossing_at (two, 1)->segment_b, ==, 3);
  g_autoptr (GArray) round = crossings (a, circle, 2);
  assert_points_near (crossing_at (round, 0)->at, sq_point (5, 0), 1e-12);
  g_autoptr (GArray) none = crossings (a, far, 0);
}

/* A node on a node is one crossing, whatever four segments meet there. */
static void
test_crossings_at_nodes (void)
{
  g_autoptr (SqPath) a = sq_path_new_rectangle (0, 0, 30, 20);
  const SqPoint diamond[] = { { 15, 0 }, { 30, 10 }, { 15, 20 }, { 0, 10 } };
  const SqPoint corner[] = { { 0, 0 }, { -5, 3 }, { -9, -3 } };
  g_autoptr (SqPath) b = sq_path_new_polygon (diamond, 4);
  g_autoptr (SqPath) c = sq_path_new_polygon (corner, 3);

  g_autoptr (GArray) four = crossings (a, b, 4);
  assert_points_near (crossing_at (four, 0)->at, sq_point (15, 0), 0);
  g_autoptr (GArray) back = crossings (b, a, 4);
  g_autoptr (GArray) one = crossings (c, a, 1);
  g_assert_cmpfloat (crossing_at (one, 0)->station_a_mm, ==, 0);
  g_assert_cmpuint (crossing_at (one, 0)->segment_a, ==, 0);
  g_assert_cmpuint (crossing_at (one, 0)->segment_b, ==, 0);
}

static void
test_common_stretches (void)
{
  g_autoptr (SqPath) a = sq_path_new_rectangle (0, 0, 30, 20);
  g_autoptr (SqPath) beside = sq_path_new_rectangle (30, 5, 40, 35);
  g_autoptr (SqPath) part = sq_path_part (a, 20, 60);
  double cuts[] = { 25, 40, 45, 77 };
  g_autoptr (SqPath) split = sq_path_split_at (a, cuts, 4);
  g_autoptr (SqPath) moved = sq_path_part (split, 70, 10);

  g_autoptr (GArray) ends = crossings (a, beside, 2);
  assert_points_near (crossing_at (ends, 0)->at, sq_point (30, 5), 1e-12);
  assert_points_near (crossing_at (ends, 1)->at, sq_point (30, 20), 1e-12);
  /* over corners and nodes of either path, and past the start */
  g_autoptr (GArray) over = crossings (a, part, 2);
  assert_near (crossing_at (over, 0)->station_a_mm, 20, 1e-9);
  assert_near (crossing_at (over, 1)->station_a_mm, 60, 1e-9);
  g_autoptr (GArray) past = crossings (a, moved, 2);
  assert_near (crossing_at (past, 0)->station_a_mm, 10, 1e-9);
  assert_near (crossing_at (past, 1)->station_a_mm, 70, 1e-9);
  /* alike all round: one place stands for it */
  g_autoptr (GArray) alike = crossings (a, split, 1);
  g_autoptr (GArray) same = crossings (a, a, 1);
}

static double
angle_there (const SqPath *a, const SqPath *b, SqPoint at)
{
  SqVector u, v;

  sq_path_point_at (a, sq_path_nearest (a, at).station_mm, &u);
  sq_path_point_at (b, sq_path_nearest (b, at).station_mm, &v);
  return fabs (sq_cross (u, v));
}

static double
distance_to_nearest (GArray *found, SqPoint at)
{
  double nearest = INFINITY;

  for (guint i = 0; i < found->len; i++)
    nearest = fmin (nearest, sq_distance (crossing_at (found, i)->at, at));
  return nearest;
}

/* GEOS finds the same crossings of the flattened paths, but where they nearly touch. */
static void
test_crossings_geos (void)
{
  for (int i = 0; i < RANDOM_ROUNDS / 4; i++)
    {
      g_autoptr (SqPath) a = random_tangle (random_count (2, 8), 100, 0.5, g_test_rand_bit ());
      g_autoptr (SqPath) b = random_ring (random_count (3, 9), 100, 0.5);
      g_autoptr (GArray) found = sq_paths_crossings (a, b);
      GEOSGeometry *line_a = geos_line (a, 1e-4), *line_b = geos_line (b, 1e-4);
      GEOSGeometry *points = GEOSIntersection_r (geos_context (), line_a, line_b);
      int n = GEOSisEmpty_r (geos_context (), points) == 1
                  ? 0
                  : GEOSGetNumGeometries_r (geos_context (), points);

      for (guint k = 0; k < found->len; k++)
        {
          SqPoint at = crossing_at (found, k)->at;
          if (angle_there (a, b, at) < 0.1)
            continue;
          GEOSGeometry *point = GEOSGeom_createPointFromXY_r (geos_context (), at.x, at.y);
          double distance = INFINITY;
          g_assert_cmpint (GEOSDistance_r (geos_context (), points, point, &distance), ==, 1);
          g_assert_cmpfloat (distance, <, 5e-3);
          GEOSGeom_destroy_r (geos_context (), point);
        }
      for (int k = 0; k < n; k++)
        {
          const GEOSGeometry *point = GEOSGetGeometryN_r (geos_context (), points, k);
          SqPoint at;
          GEOSGeomGetX_r (geos_context (), point, &at.x);
          GEOSGeomGetY_r (geos_context (), point, &at.y);
          if (angle_there (a, b, at) >= 0.1)
            g_assert_cmpfloat (distance_to_nearest (found, at), <, 5e-3);
        }
      GEOSGeom_destroy_r (geos_context (), points);
      GEOSGeom_destroy_r (geos_context (), line_a);
      GEOSGeom_destroy_r (geos_context (), line_b);
    }
}

static gboolean
is_simple (const SqNode *nodes, guint n, gboolean is_ring, SqPoint *where)
{
  g_autoptr (SqPath) path = sq_path_new (nodes, n, is_ring);
  g_autoptr (SqPath) back = sq_path_reversed (path);
  gboolean simple = sq_path_is_simple (path, where);

  g_assert_cmpint (sq_path_is_simple (back, NULL), ==, simple);
  return simple;
}

static void
test_simple (void)
{
  SqPoint where;
  g_autoptr (SqPath) circle = sq_path_new_circle (sq_point (7, 8), 9);
  g_assert_true (sq_path_is_simple (circle, NULL));
  /* a circle but for a slit, closed by a line */
  SqNode slit[] = { { { 0, 0 }, 0, 0 }, { { 0.01, 0 }, -1e4, 0 } };
  g_assert_true (is_simple (slit, 2, TRUE, NULL));

  SqNode eight[] = {
    { { 0, 0 }, 0, 0 }, { { 10, 10 }, 0, 0 }, { { 10, 0 }, 0, 0 }, { { 0, 10 }, 0, 0 }
  };
  g_assert_false (is_simple (eight, 4, TRUE, &where));
  assert_points_near (where, sq_point (5, 5), 1e-12);
  g_assert_false (is_simple (eight, 4, FALSE, NULL));
  g_assert_true (is_simple (eight, 3, FALSE, NULL));

  /* a bow that reaches the other side */
  SqNode bow[] = {
    { { 0, 0 }, 0, 0 }, { { 20, 0 }, 0, 0 }, { { 20, 5 }, 0.49, 0 }, { { 0, 5 }, 0, 0 }
  };
  g_assert_true (is_simple (bow, 4, TRUE, NULL));
  bow[2].bulge = -0.49;
  g_assert_true (is_simple (bow, 4, TRUE, NULL));
  bow[2].bulge = -0.5;
  g_assert_true (is_simple (bow, 4, TRUE, NULL) == FALSE);
  bow[2].bulge = -0.6;
  g_assert_false (is_simple (bow, 4, TRUE, &where));
  assert_near (where.y, 0, 1e-9);
}

static void
test_not_simple_at_nodes (void)
{
  SqPoint where;
  /* a spike, straight and along an arc */
  SqNode spike[] = { { { 0, 0 }, 0, 0 },
                     { { 10, 0 }, 0, 0 },
                     { { 10, 8 }, 0, 0 },
                     { { 10, 3 }, 0, 0 },
                     { { 0, 3 }, 0, 0 } };
  g_assert_false (is_simple (spike, 5, TRUE, &where));
  SqNode arcs[] = { { { 10, 0 }, tan (G_PI / 8), 0 },
                    { { 0, 10 }, -tan (G_PI / 24), 0 },
                    { { 5, 10 * sqrt (0.75) }, 0, 0 } };
  g_assert_false (is_simple (arcs, 3, FALSE, NULL));
  /* a node twice */
  SqNode twice[] = { { { 0, 0 }, 0, 0 },   { { 10, 0 }, 0, 0 }, { { 5, 5 }, 0, 0 },
                     { { 10, 10 }, 0, 0 }, { { 0, 10 }, 0, 0 }, { { 5, 5 }, 0, 0 } };
  g_assert_false (is_simple (twice, 6, TRUE, &where));
  assert_points_near (where, sq_point (5, 5), 1e-7);
  /* there and back between two nodes */
  SqNode there[] = {
    { { 0, 0 }, 0, 0 }, { { 10, 0 }, 0.1, 0 }, { { 0, 0 }, 0, 0 }, { { 0, 5 }, 0, 0 }
  };
  g_assert_false (is_simple (there, 4, FALSE, &where));
  assert_points_near (where, sq_point (0, 0), 1e-7);
  SqNode flat[] = { { { 0, 0 }, 0, 0 }, { { 10, 0 }, 0, 0 } };
  g_assert_false (is_simple (flat, 2, TRUE, NULL));
  /* a segment shorter than a point */
  SqNode dot[] = {
    { { 0, 0 }, 0, 0 }, { { 10, 0 }, 0, 0 }, { { 10, 5e-8 }, 0, 0 }, { { 0, 10 }, 0, 0 }
  };
  g_assert_false (is_simple (dot, 4, TRUE, &where));
  assert_points_near (where, sq_point (10, 0), 1e-7);
  dot[2].at.y = 2e-7;
  g_assert_true (is_simple (dot, 4, TRUE, NULL));
  /* straight on is no fold */
  SqNode straight[] = {
    { { 0, 0 }, 0, 0 }, { { 5, 0 }, 0, 0 }, { { 10, 0 }, 0, 0 }, { { 5, 5 }, 0, 0 }
  };
  g_assert_true (is_simple (straight, 4, TRUE, NULL));
}

/* Rounded corners of every size: each touches its sides in a node and nowhere else. */
static void
test_simple_roundings (void)
{
  for (double radius = 1e-3; radius < 5e4; radius *= 3)
    for (double turn = 0; turn < 6; turn += 0.7)
      {
        double r = radius, b = tan (G_PI / 8), w = 1e5, h = 1.1e5;
        SqNode nodes[] = {
          { { r, 0 }, 0, 0 },     { { w - r, 0 }, b, 0 }, { { w, r }, 0, 0 },
          { { w, h - r }, b, 0 }, { { w - r, h }, 0, 0 }, { { r, h }, b, 0 },
          { { 0, h - r }, 0, 0 }, { { 0, r }, b, 0 },
        };
        g_autoptr (SqPath) flat = sq_path_new (nodes, G_N_ELEMENTS (nodes), TRUE);
        g_autoptr (SqPath) turned = sq_path_moved (flat, turn, sq_point (-3e4, 4e4));
        g_assert_true (sq_path_is_simple (turned, NULL));
      }
}

/* Two segments pass there. */
static void
assert_met_at (const SqPath *path, SqPoint where)
{
  guint n = 0;

  for (guint i = 0; i < sq_path_n_segments (path); i++)
    {
      SqSegment s = sq_path_segment (path, i);
      double t;
      n += sq_segment_nearest_mm (&s, where, &t) <= 2e-7;
    }
  g_assert_cmpuint (n, >=, 2);
}

static double
distance_to_nodes (const SqPath *path, SqPoint p)
{
  double nearest = INFINITY;

  for (guint i = 0; i < sq_path_n_nodes (path); i++)
    nearest = fmin (nearest, sq_distance (sq_path_nodes (path)[i].at, p));
  return nearest;
}

/* The same answer as GEOS on the flattened path, a near touch looked at more closely. Two
 * neighbours that set off close beside each other may cross within their first chords: then the
 * place itself is the proof. */
static gboolean
is_simple_as_geos (const SqPath *path)
{
  SqPoint where;
  gboolean simple = sq_path_is_simple (path, &where);

  if (!simple)
    assert_met_at (path, where);
  if (simple != geos_is_simple (path, 1e-2) && simple != geos_is_simple (path, 1e-5))
    {
      g_assert_false (simple);
      g_assert_cmpfloat (distance_to_nodes (path, where), >, 1e-6);
      g_assert_cmpfloat (distance_to_nodes (path, where), <, 2);
    }
  return simple;
}

static void
test_simple_geos (void)
{
  guint n_simple = 0;

  for (int i = 0; i < RANDOM_ROUNDS; i++)
    {
      g_autoptr (SqPath) path = random_tangle (random_count (3, 6), 1000, 0.5, g_test_rand_bit ());
      n_simple += is_simple_as_geos (path);
    }
  g_assert_cmpuint (n_simple, >, RANDOM_ROUNDS / 20);
}

/* Rings simple by the way they are made, few and many sides; one node carried to the other side
 * spoils most of them. */
static void
test_random_rings (void)
{
  for (int i = 0; i < RANDOM_ROUNDS; i++)
    {
      guint n = random_count (3, i % 10 == 0 ? 200 : 30);
      g_autoptr (SqPath) ring = random_ring (n, 1000, 0.5);
      g_assert_true (sq_path_is_simple (ring, NULL));

      g_autofree SqNode *nodes = g_memdup2 (sq_path_nodes (ring), n * sizeof (SqNode));
      guint moved = random_count (0, n - 1);
      nodes[moved].at = sq_scale (nodes[moved].at, -1);
      g_autoptr (SqPath) spoilt = sq_path_new (nodes, n, TRUE);
      is_simple_as_geos (spoilt);
    }
}

static void
test_contains (void)
{
  g_autoptr (SqPath) outer = sq_path_new_rectangle (0, 0, 100, 80);
  g_autoptr (SqPath) hole = sq_path_new_circle (sq_point (50, 40), 20);
  g_autoptr (SqPath) clockwise = sq_path_reversed (hole);
  g_autoptr (SqPath) touching = sq_path_new_circle (sq_point (20, 40), 20);
  g_autoptr (SqPath) outside = sq_path_new_circle (sq_point (150, 40), 20);
  g_autoptr (SqPath) across = sq_path_new_circle (sq_point (95, 40), 20);
  SqPoint where;

  g_assert_true (sq_ring_contains (outer, hole, 0, NULL));
  g_assert_true (sq_ring_contains (outer, clockwise, 20, NULL));
  g_assert_false (sq_ring_contains (outer, hole, 20.001, &where));
  assert_near (fabs (where.y - 40), 20, 1e-6);
  g_assert_false (sq_ring_contains (hole, outer, 0, NULL));
  g_assert_false (sq_ring_contains (outer, touching, 0, &where));
  assert_points_near (where, sq_point (0, 40), 1e-6);
  g_assert_false (sq_ring_contains (outer, outside, 0, &where));
  g_assert_cmpfloat (where.x, >=, 130);
  g_assert_false (sq_ring_contains (outer, across, 0, &where));
  assert_near (where.x, 100, 1e-6);
  g_assert_false (sq_ring_contains (outer, outer, 0, NULL));
}

static double
geos_distance (const SqPath *a, const SqPath *b, double deviation_mm)
{
  GEOSGeometry *line_a = geos_line (a, deviation_mm), *line_b = geos_line (b, deviation_mm);
  double distance = -1;

  GEOSDistance_r (geos_context (), line_a, line_b, &distance);
  GEOSGeom_destroy_r (geos_context (), line_a);
  GEOSGeom_destroy_r (geos_context (), line_b);
  return distance;
}

static void
test_distance_geos (void)
{
  for (int i = 0; i < RANDOM_ROUNDS; i++)
    {
      gboolean is_ring = g_test_rand_bit ();
      g_autoptr (SqPath) a = random_tangle (random_count (2, 4), 100, 0.7, is_ring);
      g_autoptr (SqPath) placed = random_tangle (random_count (2, 4), 100, 0.7, TRUE);
      g_autoptr (SqPath) b = sq_path_moved (placed, 0, random_point (500));
      double distance = sq_paths_distance_mm (a, b);

      assert_near (distance, geos_distance (a, b, 1e-3), 3e-3);
      assert_near (distance, sq_paths_distance_mm (b, a), 1e-9);
    }
}

static void
test_distances (void)
{
  g_autoptr (SqPath) a = sq_path_new_circle (sq_point (0, 0), 10);
  g_autoptr (SqPath) b = sq_path_new_circle (sq_point (30, 40), 15);
  g_autoptr (SqPath) inside = sq_path_new_circle (sq_point (1, 2), 5);
  g_autoptr (SqPath) middle = sq_path_new_circle (sq_point (0, 0), 7);
  g_autoptr (SqPath) square = sq_path_new_rectangle (12, -50, 60, 50);

  assert_near (sq_paths_distance_mm (a, b), 25, 1e-12);
  assert_near (sq_paths_distance_mm (a, inside), 5 - sqrt (5), 1e-12);
  assert_near (sq_paths_distance_mm (a, middle), 3, 1e-12);
  assert_near (sq_paths_distance_mm (a, square), 2, 1e-12);
  g_assert_cmpfloat (sq_paths_distance_mm (b, square), ==, 0);
}

static GArray *
chords (const SqPath *ring, SqPoint at, SqVector direction, guint n)
{
  GArray *found = sq_ring_chords (ring, at, direction);

  g_assert_cmpuint (found->len, ==, 2 * n);
  return found;
}

static void
test_chords (void)
{
  const SqPoint vee[] = { { 0, 0 }, { 30, 0 }, { 30, 20 }, { 15, 10 }, { 0, 20 } };
  g_autoptr (SqPath) ring = sq_path_new_polygon (vee, 5);
  g_autoptr (SqPath) circle = sq_path_new_circle (sq_point (0, 0), 5);
  SqVector right = sq_point (1, 0), up = sq_point (0, 1);

  g_autoptr (GArray) low = chords (ring, sq_point (10, 5), right, 1);
  assert_near (g_array_index (low, double, 0), -10, 1e-12);
  assert_near (g_array_index (low, double, 1), 20, 1e-12);
  g_autoptr (GArray) high = chords (ring, sq_point (0, 15), right, 2);
  assert_near (g_array_index (high, double, 1), 7.5, 1e-12);
  assert_near (g_array_index (high, double, 2), 22.5, 1e-12);
  /* through the reflex corner it is one chord; through the tips there is none */
  g_autoptr (GArray) reflex = chords (ring, sq_point (0, 10), right, 1);
  assert_near (g_array_index (reflex, double, 1), 30, 1e-12);
  g_autoptr (GArray) tips = chords (ring, sq_point (0, 20), right, 0);
  g_autoptr (GArray) above = chords (ring, sq_point (0, 21), right, 0);
  g_autoptr (GArray) upwards = chords (ring, sq_point (15, 0), up, 1);
  assert_near (g_array_index (upwards, double, 1), 10, 1e-12);
  g_autoptr (GArray) round = chords (circle, sq_point (3, 100), up, 1);
  assert_near (g_array_index (round, double, 0), -104, 1e-11);
  assert_near (g_array_index (round, double, 1), -96, 1e-11);
  g_autoptr (GArray) touch = chords (circle, sq_point (0, 5), right, 0);
  g_autoptr (GArray) across = chords (circle, sq_point (0, 0), right, 1);
  assert_near (g_array_index (across, double, 1), 5, 1e-12);
}

/* An arc that ends on the line just before it would turn back: the line touches its circle, but
 * beyond its end. */
static void
test_chords_end_at_touch (void)
{
  double short_of_top = 2e-5;
  SqPoint end = sq_point (100 * sin (short_of_top), 100 * cos (short_of_top));
  SqNode nodes[] = { { { 100, 0 }, tan ((G_PI_2 - short_of_top) / 4), 0 },
                     { end, 0, 0 },
                     { { 0, 0 }, 0, 0 } };
  g_autoptr (SqPath) sector = sq_path_new (nodes, G_N_ELEMENTS (nodes), TRUE);
  g_autoptr (GArray) none = chords (sector, end, sq_point (1, 0), 0);
}

/* Along the line the ring winds once in the chords and nowhere else. */
static void
test_chords_random (void)
{
  for (int i = 0; i < RANDOM_ROUNDS; i++)
    {
      g_autoptr (SqPath) ring = random_ring (random_count (3, 20), 1000, 0.6);
      SqPoint at = g_test_rand_bit () ? random_point (1000) : sq_path_nodes (ring)[0].at;
      SqVector direction = sq_turned (sq_point (1, 0), g_test_rand_double_range (0, 7));
      g_autoptr (GArray) found = sq_ring_chords (ring, at, direction);

      g_assert_cmpuint (found->len % 2, ==, 0);
      for (guint k = 0; k < found->len; k++)
        {
          double t = g_array_index (found, double, k);
          g_assert_cmpfloat (sq_path_nearest (ring, sq_moved (at, direction, t)).distance_mm, <,
                             1e-6);
          if (k > 0)
            g_assert_cmpfloat (t, >, g_array_index (found, double, k - 1));
        }
      for (int k = 0; k < 20; k++)
        {
          double t = g_test_rand_double_range (-2000, 2000);
          SqPoint p = sq_moved (at, direction, t);
          guint before = 0;
          while (before < found->len && g_array_index (found, double, before) < t)
            before++;
          if (sq_path_nearest (ring, p).distance_mm > 1e-6)
            g_assert_cmpint (sq_path_winding (ring, p), ==, before % 2);
        }
    }
}

/* A round seat with a wavy edge. */
static SqPath *
wavy_ring (guint n)
{
  g_autofree SqNode *nodes = g_new (SqNode, n);

  for (guint i = 0; i < n; i++)
    {
      double angle = 2 * G_PI * i / n, radius = 1000 + 200 * sin (7 * angle);
      nodes[i] = (SqNode){ { radius * cos (angle), radius * sin (angle) },
                           i % 3 == 0 ? 0.05 : 0,
                           0 };
    }
  return sq_path_new (nodes, n, TRUE);
}

static void
test_speed (void)
{
  guint sizes[] = { 20, 5000 };

  for (guint i = 0; i < G_N_ELEMENTS (sizes); i++)
    {
      g_autoptr (SqPath) ring = wavy_ring (sizes[i]);
      int rounds = g_test_perf () ? 2000000 / (int) sizes[i] : 1;
      g_test_timer_start ();
      for (int k = 0; k < rounds; k++)
        g_assert_true (sq_path_is_simple (ring, NULL));
      double each = g_test_timer_elapsed () / rounds * 1e9;
      g_test_minimized_result (each, "is simple, %u segments: %.0f ns", sizes[i], each);
    }
}

int
main (int argc, char **argv)
{
  g_test_init (&argc, &argv, NULL);
  g_test_add_func ("/geometry/crossing/crossings", test_crossings);
  g_test_add_func ("/geometry/crossing/crossings/nodes", test_crossings_at_nodes);
  g_test_add_func ("/geometry/crossing/crossings/stretches", test_common_stretches);
  g_test_add_func ("/geometry/crossing/crossings/geos", test_crossings_geos);
  g_test_add_func ("/geometry/crossing/simple", test_simple);
  g_test_add_func ("/geometry/crossing/simple/nodes", test_not_simple_at_nodes);
  g_test_add_func ("/geometry/crossing/simple/roundings", test_simple_roundings);
  g_test_add_func ("/geometry/crossing/simple/geos", test_simple_geos);
  g_test_add_func ("/geometry/crossing/simple/rings", test_random_rings);
  g_test_add_func ("/geometry/crossing/contains", test_contains);
  g_test_add_func ("/geometry/crossing/distance", test_distances);
  g_test_add_func ("/geometry/crossing/distance/geos", test_distance_geos);
  g_test_add_func ("/geometry/crossing/chords", test_chords);
  g_test_add_func ("/geometry/crossing/chords/touch", test_chords_end_at_touch);
  g_test_add_func ("/geometry/crossing/chords/random", test_chords_random);
  g_test_add_func ("/geometry/crossing/speed", test_speed);
  return g_test_run ();
}
