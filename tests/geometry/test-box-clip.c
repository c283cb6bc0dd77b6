/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "geometry/box-clip.h"

#include "base/units.h"
#include "geometry/geos.h"
#include "geometry/random-ring.h"

#define RANDOM_ROUNDS 300
#define FLAT_MM 0.0005

#define part_of(parts, i) (&g_array_index ((parts), SqPathPart, (i)))

static void
test_line (void)
{
  const SqSegment through = { { -10, 5 }, { 30, 5 }, 0 }, along = { { 0, 10 }, { 20, 10 }, 0 };
  const SqSegment beside = { { -5, -5 }, { -5, 25 }, 0 };
  const SqBox box = { { 0, 0 }, { 20, 10 } };
  SqStretch out[SQ_MOST_STRETCHES];

  g_assert_cmpuint (sq_segment_in_box (&through, box, out), ==, 1);
  g_assert_cmpfloat_with_epsilon (out[0].from, 0.25, 1e-12);
  g_assert_cmpfloat_with_epsilon (out[0].to, 0.75, 1e-12);
  g_assert_cmpuint (sq_segment_in_box (&along, box, out), ==, 1);
  g_assert_cmpfloat (out[0].from, ==, 0);
  g_assert_cmpfloat (out[0].to, ==, 1);
  g_assert_cmpuint (sq_segment_in_box (&beside, box, out), ==, 0);
}

/* A circle of radius 5 about the middle of a square of side 8 leaves it 3 from the middle of each side
 * (3, 4, 5): what remains are four arcs, at its corners. */
static void
test_circle (void)
{
  g_autoptr (SqPath) circle = sq_path_new_circle (sq_point (0, 0), 5);
  g_autoptr (GArray) parts = sq_path_in_box (circle, (SqBox){ { -4, -4 }, { 4, 4 } });
  /* from (4, 3) to (3, 4) */
  double arc_mm = 5 * (atan2 (4, 3) - atan2 (3, 4));

  g_assert_cmpuint (parts->len, ==, 4);
  for (guint i = 0; i < parts->len; i++)
    g_assert_cmpfloat_with_epsilon (sq_path_length_mm (part_of (parts, i)->path), arc_mm, 1e-9);
}

/* A ring that begins inside goes on over its start as one part; one that is inside stays a ring. */
static void
test_round_the_start (void)
{
  g_autoptr (SqPath) ring = sq_path_new_rectangle (0, 0, 100, 40);
  g_autoptr (GArray) corner = sq_path_in_box (ring, (SqBox){ { -10, -10 }, { 30, 15 } });
  g_autoptr (GArray) whole = sq_path_in_box (ring, (SqBox){ { 0, 0 }, { 100, 40 } });
  g_autoptr (GArray) none = sq_path_in_box (ring, (SqBox){ { 10, 10 }, { 30, 30 } });

  g_assert_cmpuint (corner->len, ==, 1);
  g_assert_cmpuint (sq_path_n_nodes (part_of (corner, 0)->path), ==, 3);
  g_assert_cmpfloat_with_epsilon (sq_path_length_mm (part_of (corner, 0)->path), 45, 1e-9);
  g_assert_cmpfloat_with_epsilon (part_of (corner, 0)->from_mm, 280 - 15, 1e-9);
  g_assert_cmpuint (sq_path_nodes (part_of (corner, 0)->path)[0].tag, ==, 3);
  g_assert_cmpuint (sq_path_nodes (part_of (corner, 0)->path)[1].tag, ==, 0);
  g_assert_cmpuint (whole->len, ==, 1);
  g_assert_true (sq_path_is_ring (part_of (whole, 0)->path));
  g_assert_cmpuint (none->len, ==, 0);
}

static double
geos_length_in_mm (const SqPath *ring, SqBox box)
{
  g_autoptr (SqPath) frame = sq_path_new_rectangle (box.min.x, box.min.y, box.max.x, box.max.y);
  GEOSGeometry *window = geos_polygon (frame, FLAT_MM), *area = geos_polygon (ring, FLAT_MM);
  GEOSGeometry *line = GEOSBoundary_r (geos_context (), area);
  GEOSGeometry *both = GEOSIntersection_r (geos_context (), window, line);
  double length_mm;

  GEOSLength_r (geos_context (), both, &length_mm);
  GEOSGeom_destroy_r (geos_context (), both);
  GEOSGeom_destroy_r (geos_context (), line);
  GEOSGeom_destroy_r (geos_context (), area);
  GEOSGeom_destroy_r (geos_context (), window);
  return length_mm;
}

/* Lengths as GEOS has them; every part begins at its station, and all lies in the box. */
static void
test_random (void)
{
  for (guint round = 0; round < RANDOM_ROUNDS; round++)
    {
      g_autoptr (SqPath) ring = random_ring (3 + round % 12, 400, (round % 2) * 0.5);
      SqPoint low = { g_test_rand_double_range (-250, 100), g_test_rand_double_range (-250, 100) };
      SqBox box = { low, sq_add (low, sq_point (g_test_rand_double_range (20, 300),
                                                g_test_rand_double_range (20, 300))) };
      g_autoptr (GArray) parts = sq_path_in_box (ring, box);
      double length_mm = 0;

      g_assert_true (sq_path_meets_box (ring, box) == (parts->len > 0));
      for (guint i = 0; i < parts->len; i++)
        {
          const SqPathPart *part = part_of (parts, i);
          SqBox own = sq_path_box (part->path);
          SqPoint start = sq_path_point_at (ring, part->from_mm, NULL);
          length_mm += sq_path_length_mm (part->path);
          g_assert_cmpfloat (sq_distance (start, sq_path_nodes (part->path)[0].at), <, 1e-6);
          g_assert_true (own.min.x > box.min.x - 1e-6 && own.max.x < box.max.x + 1e-6);
          g_assert_true (own.min.y > box.min.y - 1e-6 && own.max.y < box.max.y + 1e-6);
        }
      g_assert_cmpfloat_with_epsilon (length_mm, geos_length_in_mm (ring, box),
                                      1e-4 * sq_path_length_mm (ring));
    }
}

int
main (int argc, char **argv)
{
  g_test_init (&argc, &argv, NULL);
  g_test_add_func ("/box-clip/line", test_line);
  g_test_add_func ("/box-clip/circle", test_circle);
  g_test_add_func ("/box-clip/round-the-start", test_round_the_start);
  g_test_add_func ("/box-clip/random", test_random);
  return g_test_run ();
}
