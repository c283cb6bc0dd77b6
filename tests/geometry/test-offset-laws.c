/* SPDX-License-Identifier: GPL-3.0-or-later */
/* What holds for the offset of any ring: every segment lies at exactly its distance, nothing comes
 * too near, GEOS finds the same area, and loops are the same however they are found. */
#include "geometry/crossing.h"
#include "geometry/geos.h"
#include "geometry/offset.h"
#include "geometry/random-ring.h"

enum
{
  RINGS = 1000,
  MAX_NODES = 16,
};

static void
assert_near (double a, double b, double within)
{
  if (!(fabs (a - b) <= within))
    g_error ("%.17g and %.17g differ by %g, more than %g", a, b, fabs (a - b), within);
}

/* A ring on a coarse grid: parallels at round distances then meet in nodes, run over each other and
 * touch. It climbs and falls like a row of houses. */
static SqPath *
random_row (void)
{
  SqPoint points[16];
  int n_columns = g_test_rand_int_range (2, 7), n = 0, heights[7], ends[8] = { 0 };

  for (int i = 0; i < n_columns; i++)
    {
      ends[i + 1] = ends[i] + 10 * g_test_rand_int_range (1, 4);
      heights[i] = 10 * g_test_rand_int_range (1, 8);
      if (i > 0 && heights[i] == heights[i - 1])
        heights[i] += 10;
    }
  points[n++] = sq_point (0, 0);
  points[n++] = sq_point (ends[n_columns], 0);
  for (int i = n_columns; i-- > 0;)
    {
      points[n++] = sq_point (ends[i + 1], heights[i]);
      points[n++] = sq_point (ends[i], heights[i]);
    }
  return sq_path_new_polygon (points, (guint) n);
}

static SqPath *
random_seat (guint i)
{
  guint n_nodes = (guint) g_test_rand_int_range (3, MAX_NODES);

  return i % 4 == 0 ? random_row () : random_ring (n_nodes, 100, (i % 4 - 1) / 2.0);
}

static double
random_distance (guint i)
{
  double by = i % 4 == 0 ? 2.5 * g_test_rand_int_range (1, 8)
                         : pow (10, g_test_rand_double_range (-1, 1.8));
  return g_test_rand_bit () ? by : -by;
}

static double
distance_from_carrier (const SqSegment *s, SqPoint p)
{
  if (!sq_segment_is_arc (s))
    return sq_dot (sq_sub (p, s->from), sq_right (sq_segment_direction (s, 0)));
  double radius = sq_segment_radius_mm (s), away = sq_distance (sq_segment_centre (s), p);
  return radius > 0 ? away - radius : -radius - away;
}

static gboolean *
trimmed (const SqPath *result, const SqOffsetReport *report)
{
  guint n = sq_path_n_nodes (result);
  gboolean *is_trim = g_new0 (gboolean, n);

  for (guint i = 0; i < report->trims->len; i++)
    {
      const SqOffsetTrim *trim = &g_array_index (report->trims, SqOffsetTrim, i);
      g_assert_cmpuint (trim->first, <, n);
      g_assert_cmpuint (trim->last, <, n);
      for (guint k = trim->first; k != trim->last; k = (k + 1) % n)
        is_trim[k] = TRUE;
    }
  return is_trim;
}

/* All but the trims lies at its distance; every trim segment carries the tag before it. */
static void
assert_at_distance (const SqPath *ring, const double *by, const SqPath *result,
                    const SqOffsetReport *report)
{
  g_autofree gboolean *is_trim = trimmed (result, report);

  for (guint i = 0; i < sq_path_n_nodes (result); i++)
    {
      guint32 tag = sq_path_nodes (result)[i].tag;
      SqSegment source = sq_path_segment (ring, tag), s = sq_path_segment (result, i);
      for (double t = 0; t <= 1 && !is_trim[i]; t += 0.25)
        assert_near (distance_from_carrier (&source, sq_segment_point (&s, t)), by[tag], 1e-9);
    }
}

static void
assert_keeps_off (const SqPath *ring, const SqPath *result, double least)
{
  for (guint i = 0; i < sq_path_n_nodes (result); i++)
    {
      SqSegment s = sq_path_segment (result, i);
      for (double t = 0; t < 1; t += 0.125)
        g_assert_cmpfloat (sq_path_nearest (ring, sq_segment_point (&s, t)).distance_mm, >,
                           least - 1e-6);
    }
}

/* The greatest of the polygons that are left, without its holes. */
static double
greatest_area (GEOSGeometry *polygons)
{
  GEOSContextHandle_t geos = geos_context ();
  double greatest = 0;

  for (int i = 0; i < GEOSGetNumGeometries_r (geos, polygons); i++)
    {
      const GEOSGeometry *part = GEOSGetGeometryN_r (geos, polygons, i);
      double area;
      if (GEOSisEmpty_r (geos, part))
        continue;
      GEOSGeometry *shell = GEOSGeom_createPolygon_r (
          geos, GEOSGeom_clone_r (geos, GEOSGetExteriorRing_r (geos, part)), NULL, 0);
      GEOSArea_r (geos, shell, &area);
      greatest = fmax (greatest, area);
      GEOSGeom_destroy_r (geos, shell);
    }
  return greatest;
}

/* The ring with everything added or taken away that lies within |by| of it. A buffer of the whole
 * ring would not do: GEOS simplifies what it buffers by up to 1/100 of the distance. */
static double
geos_offset_area (const SqPath *ring, double by, double deviation_mm)
{
  GEOSContextHandle_t geos = geos_context ();
  g_autoptr (SqPath) flat = sq_path_flattened (ring, deviation_mm);
  guint n = sq_path_n_segments (flat);
  g_autofree GEOSGeometry **near = g_new (GEOSGeometry *, n);

  for (guint i = 0; i < n; i++)
    {
      SqSegment s = sq_path_segment (flat, i);
      SqNode nodes[] = { { s.from, 0, 0 }, { s.to, 0, 0 } };
      g_autoptr (SqPath) one = sq_path_new (nodes, 2, FALSE);
      GEOSGeometry *line = geos_line (one, 1);
      near[i] = GEOSBuffer_r (geos, line, fabs (by), 64);
      GEOSGeom_destroy_r (geos, line);
    }
  GEOSGeometry *all_near = GEOSGeom_createCollection_r (geos, GEOS_GEOMETRYCOLLECTION, near, n);
  GEOSGeometry *band = GEOSUnaryUnion_r (geos, all_near), *polygon = geos_polygon (flat, 1);
  GEOSGeometry *result = by > 0 ? GEOSUnion_r (geos, polygon, band)
                                : GEOSDifference_r (geos, polygon, band);
  double area = greatest_area (result);

  GEOSGeom_destroy_r (geos, result);
  GEOSGeom_destroy_r (geos, polygon);
  GEOSGeom_destroy_r (geos, band);
  GEOSGeom_destroy_r (geos, all_near);
  return area;
}

static void
test_round_joins (void)
{
  SqJoinRule rule = sq_join_rule_round ();

  for (guint i = 0; i < RINGS; i++)
    {
      g_autoptr (SqPath) ring = random_seat (i);
      /* just off the grid: where a passage is exactly twice as wide, rounding decides what closes */
      double by = random_distance (i) * 1.001, bys[2 * MAX_NODES], area = 0;
      SqOffsetReport report;
      g_autoptr (SqPath) result = sq_path_offset_evenly (ring, by, &rule, &report);

      for (guint k = 0; k < G_N_ELEMENTS (bys); k++)
        bys[k] = by;
      if (result != NULL)
        {
          g_assert_true (sq_path_is_simple (result, NULL));
          assert_at_distance (ring, bys, result, &report);
          assert_keeps_off (ring, result, fabs (by));
          area = sq_path_area_mm2 (result);
        }
      if (i % 9 == 0)
        {
          double slack = 0.02 * sq_path_length_mm (ring) + 1e-3 * by * by;
          assert_near (area, geos_offset_area (ring, by, 0.01), slack);
        }
      sq_offset_report_clear (&report);
    }
}

static void
test_mitred_joins (void)
{
  SqJoinRule rule = sq_join_rule_mitre ();

  for (guint i = 0; i < RINGS; i++)
    {
      g_autoptr (SqPath) ring = random_seat (i);
      double by = random_distance (i), bys[2 * MAX_NODES];
      SqOffsetReport report;
      g_autoptr (SqPath) result = sq_path_offset_evenly (ring, by, &rule, &report);

      for (guint k = 0; k < G_N_ELEMENTS (bys); k++)
        bys[k] = by;
      if (result != NULL)
        {
          g_assert_true (sq_path_is_simple (result, NULL));
          g_assert_cmpfloat (sq_path_area_mm2 (result), >, 0);
          assert_at_distance (ring, bys, result, &report);
          assert_keeps_off (ring, result, fabs (by));
        }
      sq_offset_report_clear (&report);
    }
}

/* Every segment at a distance of its own, or 0, mitred and round. */
static void
test_distances_of_their_own (void)
{
  SqJoinRule rules[] = { sq_join_rule_mitre (), sq_join_rule_round () };

  for (guint i = 0; i < RINGS; i++)
    {
      g_autoptr (SqPath) ring = random_seat (i);
      guint n = sq_path_n_nodes (ring);
      double by = random_distance (i), bys[2 * MAX_NODES];
      SqOffsetReport report;

      for (guint k = 0; k < n; k++)
        bys[k] = by * g_test_rand_int_range (0, 5) / 4;
      g_autoptr (SqPath) result = sq_path_offset (ring, bys, n, &rules[i % 8 / 4], &report);
      if (result != NULL)
        {
          g_assert_true (sq_path_is_simple (result, NULL));
          g_assert_cmpfloat (sq_path_area_mm2 (result), >, 0);
          assert_at_distance (ring, bys, result, &report);
        }
      sq_offset_report_clear (&report);
    }
}

/* Holes run clockwise; their offsets are those of the same ring the other way round, also where
 * every segment goes its own way. */
static void
test_holes (void)
{
  SqJoinRule rules[] = { sq_join_rule_mitre (), sq_join_rule_round () };

  for (guint i = 0; i < RINGS; i++)
    {
      g_autoptr (SqPath) ring = random_seat (i);
      g_autoptr (SqPath) hole = sq_path_reversed (ring);
      double by[2 * MAX_NODES], against[2 * MAX_NODES], most = random_distance (i);

      for (guint k = 0; k < G_N_ELEMENTS (by); k++)
        {
          by[k] = i % 2 == 0 ? most * 1.001 : g_test_rand_double_range (-60, 60);
          against[k] = -by[k];
        }
      const SqJoinRule *rule = &rules[i % 8 / 4];
      g_autoptr (SqPath) one = sq_path_offset (ring, by, 2 * MAX_NODES, rule, NULL);
      g_autoptr (SqPath) other = sq_path_offset (hole, against, 2 * MAX_NODES, rule, NULL);
      g_assert_true ((one == NULL) == (other == NULL));
      if (one != NULL)
        assert_near (sq_path_area_mm2 (one), -sq_path_area_mm2 (other), 1e-6);
    }
}

/* Out and back in again is where it was, for convex rings: nothing rounds off a mitre. */
static void
test_out_and_in (void)
{
  SqJoinRule rule = sq_join_rule_mitre ();

  for (guint i = 0; i < RINGS; i++)
    {
      SqPoint points[MAX_NODES];
      guint n = (guint) g_test_rand_int_range (4, MAX_NODES);
      for (guint k = 0; k < n; k++)
        {
          double angle = 2 * G_PI * (k + g_test_rand_double_range (-0.2, 0.2)) / n;
          points[k] = sq_point (300 * cos (angle), 200 * sin (angle));
        }
      double by = g_test_rand_double_range (0.1, 50);
      g_autoptr (SqPath) ring = sq_path_new_polygon (points, n);
      rule.mitre_limit = 100;
      g_autoptr (SqPath) out = sq_path_offset_evenly (ring, by, &rule, NULL);
      g_autoptr (SqPath) back = sq_path_offset_evenly (out, -by, &rule, NULL);
      g_assert_cmpuint (sq_path_n_nodes (back), ==, n);
      for (guint k = 0; k < n; k++)
        assert_near (sq_distance (sq_path_nodes (back)[k].at, points[k]), 0, 1e-9);
    }
}

int
main (int argc, char **argv)
{
  g_test_init (&argc, &argv, NULL);
  g_test_add_func ("/geometry/offset/laws/round-joins", test_round_joins);
  g_test_add_func ("/geometry/offset/laws/mitred-joins", test_mitred_joins);
  g_test_add_func ("/geometry/offset/laws/distances-of-their-own", test_distances_of_their_own);
  g_test_add_func ("/geometry/offset/laws/holes", test_holes);
  g_test_add_func ("/geometry/offset/laws/out-and-in", test_out_and_in);
  return g_test_run ();
}
