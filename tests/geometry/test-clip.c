/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "geometry/clip.h"

#include "base/units.h"
#include "geometry/crossing.h"
#include "geometry/geos.h"
#include "geometry/random-ring.h"

#define RANDOM_ROUNDS 300
#define FLAT_MM 0.001

#define part_of(parts, i) ((const SqPath *) (parts)->pdata[i])

static void
test_rectangle (void)
{
  g_autoptr (SqPath) ring = sq_path_new_rectangle (0, 0, 100, 40);
  g_autoptr (GPtrArray) left = sq_ring_clipped (ring, sq_point (30, -5), sq_point (0, 1), 7);
  g_autoptr (GPtrArray) right = sq_ring_clipped (ring, sq_point (30, -5), sq_point (0, -1), 7);

  g_assert_cmpuint (left->len, ==, 1);
  g_assert_cmpuint (right->len, ==, 1);
  g_assert_cmpfloat_with_epsilon (sq_path_area_mm2 (part_of (left, 0)), 1200, 1e-9);
  g_assert_cmpfloat_with_epsilon (sq_path_area_mm2 (part_of (right, 0)), 2800, 1e-9);
  /* from where the ring leaves the line: upper side, left side, lower side, the line */
  static const guint32 tags[] = { 2, 3, 0, 7 };
  g_assert_cmpuint (sq_path_n_nodes (part_of (left, 0)), ==, 4);
  for (guint i = 0; i < 4; i++)
    g_assert_cmpuint (sq_path_nodes (part_of (left, 0))[i].tag, ==, tags[i]);
}

/* A U with legs 30 wide and a floor 20 high: a line across the legs leaves their two tops on one
 * side and the rest on the other. */
static void
test_two_parts (void)
{
  const SqPoint u[] = { { 0, 0 },   { 100, 0 }, { 100, 80 }, { 70, 80 },
                        { 70, 20 }, { 30, 20 }, { 30, 80 },  { 0, 80 } };
  g_autoptr (SqPath) ring = sq_path_new_polygon (u, G_N_ELEMENTS (u));
  g_autoptr (GPtrArray) tops = sq_ring_clipped (ring, sq_point (0, 50), sq_point (1, 0), 8);
  g_autoptr (GPtrArray) rest = sq_ring_clipped (ring, sq_point (0, 50), sq_point (-1, 0), 8);

  g_assert_cmpuint (tops->len, ==, 2);
  for (guint i = 0; i < 2; i++)
    g_assert_cmpfloat_with_epsilon (sq_path_area_mm2 (part_of (tops, i)), 900, 1e-9);
  g_assert_cmpuint (rest->len, ==, 1);
  g_assert_cmpfloat_with_epsilon (sq_path_area_mm2 (part_of (rest, 0)), 2000 + 2 * 900, 1e-9);
}

/* A line beside the ring leaves all or nothing; so does one along its side. */
static void
test_beside (void)
{
  g_autoptr (SqPath) ring = sq_path_new_rectangle (0, 0, 100, 40);

  for (int x = 0; x < 2; x++)
    {
      g_autoptr (GPtrArray) all = sq_ring_clipped (ring, sq_point (-x, 0), sq_point (0, -1), 9);
      g_autoptr (GPtrArray) none = sq_ring_clipped (ring, sq_point (-x, 0), sq_point (0, 1), 9);
      g_assert_cmpuint (none->len, ==, 0);
      g_assert_cmpuint (all->len, ==, 1);
      g_assert_cmpfloat_with_epsilon (sq_path_area_mm2 (part_of (all, 0)), 4000, 1e-9);
    }
}

static double
area_of (const GPtrArray *parts)
{
  double area = 0;

  for (guint i = 0; i < parts->len; i++)
    area += sq_path_area_mm2 (part_of (parts, i));
  return area;
}

/* What GEOS has of @ring left of the line. */
static double
geos_area_left_mm2 (const SqPath *ring, SqPoint at, SqVector dir)
{
  double reach = 1e4, area;
  SqPoint a = sq_moved (at, dir, -reach), b = sq_moved (at, dir, reach);
  SqPoint corners[] = { a, b, sq_moved (b, sq_left (dir), reach),
                        sq_moved (a, sq_left (dir), reach) };
  g_autoptr (SqPath) half = sq_path_new_polygon (corners, 4);
  GEOSGeometry *plane = geos_polygon (half, FLAT_MM), *cloth = geos_polygon (ring, FLAT_MM);
  GEOSGeometry *both = GEOSIntersection_r (geos_context (), plane, cloth);

  GEOSArea_r (geos_context (), both, &area);
  GEOSGeom_destroy_r (geos_context (), both);
  GEOSGeom_destroy_r (geos_context (), plane);
  GEOSGeom_destroy_r (geos_context (), cloth);
  return area;
}

static void
test_random (void)
{
  for (guint round = 0; round < RANDOM_ROUNDS; round++)
    {
      g_autoptr (SqPath) ring = random_ring (3 + round % 12, 400, (round % 2) * 0.5);
      double angle = g_test_rand_double_range (0, 2 * G_PI);
      SqVector dir = { cos (angle), sin (angle) };
      SqPoint at = { g_test_rand_double_range (-150, 150), g_test_rand_double_range (-150, 150) };
      g_autoptr (GPtrArray) left = sq_ring_clipped (ring, at, dir, 99);
      g_autoptr (GPtrArray) right = sq_ring_clipped (ring, at, sq_scale (dir, -1), 99);
      double within = FLAT_MM * sq_path_length_mm (ring);

      g_assert_cmpfloat_with_epsilon (area_of (left) + area_of (right), sq_path_area_mm2 (ring),
                                      1e-6);
      g_assert_cmpfloat_with_epsilon (area_of (left), geos_area_left_mm2 (ring, at, dir), within);
      for (guint i = 0; i < left->len; i++)
        g_assert_true (sq_path_is_simple (part_of (left, i), NULL));
    }
}

static void
test_open (void)
{
  const SqNode zigzag[] = {
    { { 0, -10 }, 0, 0 }, { { 20, 10 }, 0, 1 }, { { 40, -10 }, 0, 2 }, { { 60, 10 }, 0, 3 }
  };
  g_autoptr (SqPath) path = sq_path_new (zigzag, 4, FALSE);
  g_autoptr (GPtrArray) above = sq_path_clipped (path, sq_point (0, 0), sq_point (1, 0));
  g_autoptr (GPtrArray) below = sq_path_clipped (path, sq_point (0, 0), sq_point (-1, 0));
  g_autoptr (GPtrArray) far = sq_path_clipped (path, sq_point (0, 50), sq_point (1, 0));

  g_assert_cmpuint (above->len, ==, 2);
  g_assert_cmpuint (below->len, ==, 2);
  g_assert_cmpuint (far->len, ==, 0);
  g_assert_cmpfloat_with_epsilon (sq_path_length_mm (part_of (above, 0)), 20 * G_SQRT2, 1e-9);
  g_assert_cmpfloat_with_epsilon (sq_path_nodes (part_of (above, 0))[0].at.x, 10, 1e-9);
  g_assert_cmpfloat_with_epsilon (sq_path_length_mm (part_of (above, 1)), 10 * G_SQRT2, 1e-9);
}

int
main (int argc, char **argv)
{
  g_test_init (&argc, &argv, NULL);
  g_test_add_func ("/clip/rectangle", test_rectangle);
  g_test_add_func ("/clip/two-parts", test_two_parts);
  g_test_add_func ("/clip/beside", test_beside);
  g_test_add_func ("/clip/random", test_random);
  g_test_add_func ("/clip/open", test_open);
  return g_test_run ();
}
