/* SPDX-License-Identifier: GPL-3.0-or-later */
/* Offsets whose results are known: tables, corners of every angle, plates. What closes or vanishes
 * is in test-offset-loops.c, what holds for any ring in test-offset-laws.c. */
#include "base/units.h"
#include "geometry/crossing.h"
#include "geometry/offset.h"

static void
assert_near (double a, double b, double within)
{
  if (!(fabs (a - b) <= within))
    g_error ("%.17g and %.17g differ by %g, more than %g", a, b, fabs (a - b), within);
}

static void
assert_points_near (SqPoint a, SqPoint b, double within)
{
  assert_near (a.x, b.x, within);
  assert_near (a.y, b.y, within);
}

static SqPoint
node (const SqPath *path, guint i)
{
  return sq_path_nodes (path)[i % sq_path_n_nodes (path)].at;
}

static guint32
tag (const SqPath *path, guint i)
{
  return sq_path_nodes (path)[i % sq_path_n_nodes (path)].tag;
}

/* The node at which a segment of tag @before ends and one of @after starts. */
static SqPoint
node_between (const SqPath *path, guint32 before, guint32 after)
{
  guint n = sq_path_n_nodes (path);

  for (guint i = 0; i < n; i++)
    if (tag (path, i + n - 1) == before && tag (path, i) == after)
      return node (path, i);
  g_error ("tags %u and %u are no neighbours", before, after);
}

static gboolean
has_tag (const SqPath *path, guint32 wanted)
{
  for (guint i = 0; i < sq_path_n_nodes (path); i++)
    if (tag (path, i) == wanted)
      return TRUE;
  return FALSE;
}

static const SqOffsetTrim *
trim (const SqOffsetReport *report, guint i)
{
  g_assert_cmpuint (i, <, report->trims->len);
  return &g_array_index (report->trims, SqOffsetTrim, i);
}

/* The offset by distances of each tag with the rule of cut lines, which must come out like @end. */
static SqPath *
offset (const SqPath *ring, const double *by, SqOffsetEnd end, SqOffsetReport *report)
{
  SqJoinRule rule = sq_join_rule_mitre ();
  SqPath *result = sq_path_offset (ring, by, sq_path_n_tags (ring), &rule, report);

  g_assert_cmpint (report->end, ==, end);
  g_assert_true ((result == NULL) == (end == SQ_OFFSET_VANISHED));
  if (result != NULL)
    g_assert_true (sq_path_is_simple (result, NULL));
  return result;
}

static SqPath *
offset_evenly (const SqPath *ring, double by, SqJoinRule rule, SqOffsetEnd end)
{
  SqOffsetReport report;
  SqPath *result = sq_path_offset_evenly (ring, by, &rule, &report);

  g_assert_cmpint (report.end, ==, end);
  g_assert_true ((result == NULL) == (end == SQ_OFFSET_VANISHED));
  if (result != NULL)
    g_assert_true (sq_path_is_simple (result, NULL));
  sq_offset_report_clear (&report);
  return result;
}

static SqPath *
regular (guint n, double side)
{
  g_autofree SqPoint *points = g_new (SqPoint, n);
  double radius = side / 2 / sin (G_PI / n);

  for (guint i = 0; i < n; i++)
    points[i] = sq_turned (sq_point (radius, 0), 2 * G_PI * i / n);
  return sq_path_new_polygon (points, n);
}

#define POLYGON(...)                                                                               \
  sq_path_new_polygon ((const SqPoint[]){ __VA_ARGS__ },                                           \
                       G_N_ELEMENTS (((const SqPoint[]){ __VA_ARGS__ })))

/* Areas and perimeters, grown by 0.5 with round and mitred joins and drawn in by 0.5. Computed
 * from Steiner's formula and A + P d + S d², S = Σ tan (turn / 2); GEOS 3.11 buffers agree to
 * 1e-6. The L is where Steiner's formula does not hold. */
static void
test_table (void)
{
  const struct
  {
    SqPath *ring;
    double round[2], mitre[2], inset[2];
  } rows[] = {
    { sq_path_new_rectangle (0, 0, 24, 20), { 524.785398, 91.141593 }, { 525, 92 }, { 437, 84 } },
    { POLYGON ({ 0, 0 }, { 4, 0 }, { 0, 3 }), { 12.785398, 15.141593 }, { 13.5, 18 }, { 1.5, 6 } },
    { POLYGON ({ 0, 0 }, { 24, 0 }, { 21, 20 }, { 3, 20 }),
      { 462.009147, 85.589089 },
      { 462.234936, 86.492247 },
      { 379.787439, 78.402747 } },
    { POLYGON ({ 0, 0 }, { 60, 0 }, { 60, 20 }, { 20, 20 }, { 20, 50 }, { 0, 50 }),
      { 1910.731748, 222.926991 },
      { 1911, 224 },
      { 1691, 216 } },
    { regular (6, 10),
      { 290.593019, 63.141593 },
      { 290.673647, 63.464102 },
      { 230.673647, 56.535898 } },
    { regular (8, 10),
      { 523.628111, 83.141593 },
      { 523.671140, 83.313708 },
      { 443.671140, 76.686292 } },
  };

  SqJoinRule sharp_rule = sq_join_rule_mitre ();
  sharp_rule.mitre_limit = 100;

  for (guint i = 0; i < G_N_ELEMENTS (rows); i++)
    {
      g_autoptr (SqPath) ring = rows[i].ring;
      g_autoptr (SqPath) round = offset_evenly (ring, 0.5, sq_join_rule_round (), SQ_OFFSET_CLEAN);
      g_autoptr (SqPath) mitre = offset_evenly (ring, 0.5, sharp_rule, SQ_OFFSET_CLEAN);
      g_autoptr (SqPath) inset = offset_evenly (ring, -0.5, sq_join_rule_round (), SQ_OFFSET_CLEAN);
      assert_near (sq_path_area_mm2 (round), rows[i].round[0], 1e-6);
      assert_near (sq_path_length_mm (round), rows[i].round[1], 1e-6);
      assert_near (sq_path_area_mm2 (mitre), rows[i].mitre[0], 1e-6);
      assert_near (sq_path_length_mm (mitre), rows[i].mitre[1], 1e-6);
      /* about the L's reflex corner a round join leaves (1 − π/4) d² more than a mitre */
      double rounding = i == 3 ? 0.25 * (1 - G_PI / 4) : 0;
      assert_near (sq_path_area_mm2 (inset), rows[i].inset[0] + rounding, 1e-6);
      if (i != 3)
        assert_near (sq_path_length_mm (inset), rows[i].inset[1], 1e-6);
      g_autoptr (SqPath) sharp = offset_evenly (ring, -0.5, sharp_rule, SQ_OFFSET_CLEAN);
      assert_near (sq_path_area_mm2 (sharp), rows[i].inset[0], 1e-6);
      assert_near (sq_path_length_mm (sharp), rows[i].inset[1], 1e-6);
    }
}

/* An arc keeps its angle: radius 3, 90°, 0.5 outward grows by 0.5 · π / 2. */
static void
test_arcs_keep_their_angle (void)
{
  double quarter = tan (G_PI / 8);
  SqNode nodes[] = { { { 3, 0 }, 0, 0 },   { { 21, 0 }, quarter, 1 },
                     { { 24, 3 }, 0, 2 },  { { 24, 17 }, quarter, 3 },
                     { { 21, 20 }, 0, 4 }, { { 3, 20 }, quarter, 5 },
                     { { 0, 17 }, 0, 6 },  { { 0, 3 }, quarter, 7 } };
  g_autoptr (SqPath) ring = sq_path_new (nodes, 8, TRUE);
  g_autoptr (SqPath) cut = offset_evenly (ring, 0.5, sq_join_rule_mitre (), SQ_OFFSET_CLEAN);

  g_assert_cmpuint (sq_path_n_nodes (cut), ==, 8);
  for (guint i = 0; i < 8; i++)
    {
      SqSegment s = sq_path_segment (cut, i);
      g_assert_cmpuint (tag (cut, i), ==, i);
      if (i % 2 == 1)
        assert_near (sq_segment_length_mm (&s), 5.497787, 1e-6);
      /* tangent neighbours stay tangent */
      SqSegment next = sq_path_segment (cut, (i + 1) % 8);
      assert_near (sq_angle_rad (sq_segment_direction (&s, 1), sq_segment_direction (&next, 0)), 0,
                   1e-9);
    }
  /* more than the radius: the corners come out sharp */
  g_autoptr (SqPath) inset = offset_evenly (ring, -4, sq_join_rule_mitre (), SQ_OFFSET_TRIMMED);
  g_assert_cmpuint (sq_path_n_nodes (inset), ==, 4);
  assert_near (sq_path_area_mm2 (inset), 16 * 12, 1e-9);
  /* just the radius */
  g_autoptr (SqPath) exact = offset_evenly (ring, -3, sq_join_rule_mitre (), SQ_OFFSET_TRIMMED);
  g_assert_cmpuint (sq_path_n_nodes (exact), ==, 4);
  assert_near (sq_path_area_mm2 (exact), 18 * 14, 1e-9);
}

static void
test_circle (void)
{
  g_autoptr (SqPath) circle = sq_path_new_circle (sq_point (5, 7), 100);
  g_autoptr (SqPath) more = offset_evenly (circle, 12.7, sq_join_rule_mitre (), SQ_OFFSET_CLEAN);
  g_autoptr (SqPath) less = offset_evenly (circle, -99, sq_join_rule_mitre (), SQ_OFFSET_CLEAN);

  assert_near (sq_path_area_mm2 (more), G_PI * 112.7 * 112.7, 1e-8);
  assert_near (sq_path_area_mm2 (less), G_PI, 1e-9);
  offset_evenly (circle, -100, sq_join_rule_mitre (), SQ_OFFSET_VANISHED);
  offset_evenly (circle, -130, sq_join_rule_mitre (), SQ_OFFSET_VANISHED);
}

/* A corner of any angle: a mitre d / sin (θ/2) away, or where that is more than 2.5 d, a cut square
 * to the bisector 2 d away. */
static void
test_mitre_rule (void)
{
  const double d = 12.7;

  for (int degrees = 10; degrees <= 170; degrees += 5)
    {
      double theta = degrees * SQ_RAD_PER_DEG;
      SqVector half = sq_point (500 * cos (theta / 2), 500 * sin (theta / 2));
      SqPoint points[] = { { 0, 0 }, { half.x, -half.y }, { half.x, half.y } };
      g_autoptr (SqPath) ring = sq_path_new_polygon (points, 3);
      double by[] = { d, d, d };
      SqOffsetReport report;
      g_autoptr (SqPath) cut = offset (ring, by, SQ_OFFSET_CLEAN, &report);

      if (1 / sin (theta / 2) <= 2.5)
        assert_points_near (node_between (cut, 2, 0), sq_point (-d / sin (theta / 2), 0), 1e-9);
      else
        {
          const SqOffsetTrim *squared = trim (&report, report.trims->len - 1);
          g_assert_cmpint (squared->kind, ==, SQ_TRIM_MITRE);
          g_assert_cmpuint (squared->tag_before, ==, 2);
          g_assert_cmpuint (squared->tag_after, ==, 0);
          SqPoint from = node (cut, squared->first), to = node (cut, squared->last);
          g_assert_cmpuint ((squared->first + 1) % sq_path_n_nodes (cut), ==, squared->last);
          assert_near (from.x, -2 * d, 1e-9);
          assert_near (to.x, -2 * d, 1e-9);
          assert_near (from.y, -to.y, 1e-9);
          assert_near (sq_distance (from, to), 2 * d * (1 - 2 * sin (theta / 2)) / cos (theta / 2),
                       1e-9);
        }
      sq_offset_report_clear (&report);
    }
}

/* An arc that comes back along the next line all but exactly, a hair to its wrong side: still a corner
 * that turns to the left all the way, and so cut square. */
static void
test_needle (void)
{
  const double d = 12.7;
  const SqNode nodes[] = {
    { { -1434.2132019718997, -258.37728785746344 }, 0, 0 },
    { { -463.4355704223152, -194.04697397875543 }, 0, 1 },
    { { -1307.5181159935537, -198.36621152416797 }, -0.1903612361372177, 2 },
  };
  g_autoptr (SqPath) ring = sq_path_new (nodes, G_N_ELEMENTS (nodes), TRUE);
  const double by[] = { d, d, d };
  SqOffsetReport report;
  g_autoptr (SqPath) cut = offset (ring, by, SQ_OFFSET_CLEAN, &report);

  g_assert_cmpuint (report.trims->len, ==, 2);
  for (guint i = 0; i < 2; i++)
    g_assert_cmpint (trim (&report, i)->kind, ==, SQ_TRIM_MITRE);
  assert_near (sq_paths_distance_mm (ring, cut), d, 1e-6);
  sq_offset_report_clear (&report);
}

static void
test_mitre_of_two_distances (void)
{
  g_autoptr (SqPath) ring = sq_path_new_rectangle (0, 0, 100, 50);
  double by[] = { 12.7, 9.525, 0, -5 };
  SqOffsetReport report;
  g_autoptr (SqPath) cut = offset (ring, by, SQ_OFFSET_CLEAN, &report);

  g_assert_cmpuint (report.trims->len, ==, 0);
  g_assert_cmpuint (sq_path_n_nodes (cut), ==, 4);
  assert_points_near (node (cut, 0), sq_point (5, -12.7), 1e-9);
  assert_points_near (node (cut, 1), sq_point (109.525, -12.7), 1e-9);
  assert_points_near (node (cut, 2), sq_point (109.525, 50), 1e-9);
  assert_points_near (node (cut, 3), sq_point (5, 50), 1e-9);
  sq_offset_report_clear (&report);
}

/* Two distances along one line, or nearly: a step square to it. */
static void
test_step (void)
{
  for (int degrees = -4; degrees <= 4; degrees++)
    {
      SqVector on = sq_turned (sq_point (100, 0), degrees * SQ_RAD_PER_DEG);
      SqPoint points[] = { { -100, 0 }, { 0, 0 }, { on.x, on.y }, { on.x, 200 }, { -100, 200 } };
      g_autoptr (SqPath) ring = sq_path_new_polygon (points, 5);
      double by[] = { 9.525, 12.7, 9.525, 9.525, 9.525 };
      SqOffsetReport report;
      g_autoptr (SqPath) cut = offset (ring, by, SQ_OFFSET_CLEAN, &report);

      const SqOffsetTrim *step = trim (&report, 0);
      g_assert_cmpint (step->kind, ==, SQ_TRIM_STEP);
      g_assert_cmpuint (step->tag_before, ==, 0);
      g_assert_cmpuint (step->tag_after, ==, 1);
      g_assert_cmpuint (step->first + 1, ==, step->last);
      SqPoint from = node (cut, step->first), to = node (cut, step->last);
      /* on one line with the corner, square to the path to within its turn */
      assert_near (sq_cross (sq_unit (from), sq_unit (to)), 0, 1e-12);
      assert_near (sq_angle_rad (sq_point (0, -1), from), 0,
                   fabs (degrees * SQ_RAD_PER_DEG) + 1e-12);
      assert_near (from.y, -9.525, 1e-9);
      g_assert_cmpfloat (sq_distance (from, to), >, 3.1);
      sq_offset_report_clear (&report);
    }
}

/* Where the turn is too slight for a corner there is one node, no sliver. */
static void
test_no_slivers (void)
{
  for (double turn = 1e-12; turn < 0.01; turn *= 10)
    {
      SqVector on = sq_turned (sq_point (100, 0), turn);
      SqPoint points[] = { { -100, 0 }, { 0, 0 }, { on.x, on.y }, { 0, 200 } };
      g_autoptr (SqPath) ring = sq_path_new_polygon (points, 4);
      g_autoptr (SqPath) cut = offset_evenly (ring, 10, sq_join_rule_mitre (), SQ_OFFSET_CLEAN);
      g_assert_cmpuint (sq_path_n_nodes (cut), ==, 4);
      assert_points_near (node (cut, 1), sq_point (10 * tan (turn / 2), -10), 1e-9);
    }
}

static void
test_collinear_nodes_stay (void)
{
  g_autoptr (SqPath) ring = POLYGON ({ 0, 0 }, { 30, 0 }, { 100, 0 }, { 100, 50 }, { 40, 50 },
                                     { 0, 50 });
  g_autoptr (SqPath) cut = offset_evenly (ring, 10, sq_join_rule_mitre (), SQ_OFFSET_CLEAN);

  g_assert_cmpuint (sq_path_n_nodes (cut), ==, 6);
  assert_points_near (node (cut, 1), sq_point (30, -10), 1e-12);
  assert_points_near (node (cut, 4), sq_point (40, 60), 1e-12);
  g_autoptr (SqPath) same = offset_evenly (ring, 0, sq_join_rule_mitre (), SQ_OFFSET_CLEAN);
  for (guint i = 0; i < 6; i++)
    assert_points_near (node (same, i), node (ring, i), 0);
}

/* Round joins where distances differ: the nearer parallel steps out to the farther one's arc. */
static void
test_round_of_two_distances (void)
{
  g_autoptr (SqPath) ring = sq_path_new_rectangle (0, 0, 100, 50);
  double by[] = { 10, 20, 20, 20 };
  SqJoinRule rule = sq_join_rule_round ();
  SqOffsetReport report;
  g_autoptr (SqPath) cut = sq_path_offset (ring, by, 4, &rule, &report);

  g_assert_true (sq_path_is_simple (cut, NULL));
  assert_near (sq_path_area_mm2 (cut), 5000 + 1000 + 2000 + 2 * 1000 + G_PI * 400, 1e-9);
  const SqOffsetTrim *first = trim (&report, 0);
  g_assert_cmpint (first->kind, ==, SQ_TRIM_ROUND);
  g_assert_cmpuint (first->last - first->first, ==, 2);
  assert_points_near (node (cut, first->first), sq_point (100, -10), 1e-12);
  assert_points_near (node (cut, first->first + 1), sq_point (100, -20), 1e-12);
  assert_points_near (node (cut, first->last), sq_point (120, 0), 1e-12);
  sq_offset_report_clear (&report);
}

/* A hollow edge whose cut line's circle is too small to reach the next one: along the tangents. */
static void
test_bevel (void)
{
  double by[] = { 9.5, 9.5, 9.5, 9.5 };
  SqNode nodes[] = {
    { { 0, 0 }, 0, 0 }, { { 20, 0 }, -0.9, 1 }, { { 20, 20 }, 0, 2 }, { { 0, 20 }, 0, 3 }
  };
  g_autoptr (SqPath) ring = sq_path_new (nodes, 4, TRUE);
  SqOffsetReport report;
  g_autoptr (SqPath) cut = offset (ring, by, SQ_OFFSET_CLEAN, &report);

  g_assert_cmpuint (report.trims->len, >, 0);
  for (guint i = 0; i < sq_path_n_nodes (cut); i++)
    g_assert_cmpfloat (sq_path_nearest (ring, node (cut, i)).distance_mm, >, 9.5 - 1e-9);
  sq_offset_report_clear (&report);
}

/* The worked plate: a 25 in square plate of an 18 1/2 in seat, skirts 2 7/8 in deep, allowances
 * 1/2 in at the corners and 3/8 in below: notches of 2 3/4 in. */
static void
test_plate (void)
{
  const double side = 469.9, deep = 73.025, corner = 12.7, edge = 9.525;
  g_autoptr (SqPath) sew = POLYGON ({ 0, 0 }, { 0, -deep }, { side, -deep }, { side, 0 },
                                    { side + deep, 0 }, { side + deep, side }, { side, side },
                                    { side, side + deep }, { 0, side + deep }, { 0, side },
                                    { -deep, side }, { -deep, 0 });
  double by[12];
  SqOffsetReport report;

  for (guint i = 0; i < 12; i++)
    by[i] = i % 3 == 1 ? edge : corner;
  g_autoptr (SqPath) cut = offset (sew, by, SQ_OFFSET_CLEAN, &report);
  SqBox box = sq_path_box (cut);

  g_assert_cmpuint (report.trims->len, ==, 0);
  g_assert_cmpuint (sq_path_n_nodes (cut), ==, 12);
  assert_near (box.max.x - box.min.x, 635, 1e-9);
  assert_near (box.max.y - box.min.y, 635, 1e-9);
  for (guint i = 0; i < 12; i += 3)
    {
      assert_near (sq_distance (node (cut, i), node (cut, i + 1)), 69.85, 1e-9);
      assert_near (sq_distance (node (cut, i + 2), node (cut, i + 3)), 69.85, 1e-9);
    }
  sq_offset_report_clear (&report);
}

/* One corner of a plate, turned by @phi there: the skirts' lower edges are tags 0 and 3, their end
 * lines 1 and 2, which meet in the origin. */
static SqPath *
plate_corner (double phi, double deep)
{
  SqVector along = sq_turned (sq_point (1, 0), phi), out = sq_right (along);
  SqPoint far_b = sq_scale (along, 1000), low_b = sq_scale (out, deep);

  return POLYGON ({ -1000, -deep }, { 0, -deep }, { 0, 0 }, low_b, sq_add (low_b, far_b), far_b,
                  { -1000, 0 });
}

/* The notch between two end lines with the gap φ: its apex a_c / sin (φ/2) from the corner on the
 * bisector, its legs D + a_p − a_c tan (θ/2), θ = π − φ; and where that leaves nothing, the plain
 * mitre at (D + a_p) / cos (φ/2). */
static void
test_dart (void)
{
  const double deep = 73.025, edge = 9.525;
  const double share[] = { 0.2, 0.9, 1 - 1e-6, 1, 1 + 1e-9, 1 + 1e-6, 1.1, 2 };

  for (int degrees = 30; degrees <= 150; degrees += 15)
    for (guint i = 0; i < G_N_ELEMENTS (share); i++)
      {
        double phi = degrees * SQ_RAD_PER_DEG, half = tan ((G_PI - phi) / 2);
        double corner = share[i] * (deep + edge) / half;
        SqVector out = sq_unit (sq_add (sq_point (0, -1), sq_point (sin (phi), -cos (phi))));
        double by[] = { edge, corner, corner, edge, edge, edge, edge };
        g_autoptr (SqPath) sew = plate_corner (phi, deep);
        SqJoinRule rule = sq_join_rule_mitre ();
        SqOffsetReport report;
        g_autoptr (SqPath) cut = sq_path_offset (sew, by, 7, &rule, &report);

        g_assert_true (sq_path_is_simple (cut, NULL));
        if (share[i] < 1)
          {
            SqPoint apex = node_between (cut, 1, 2);
            g_assert_cmpint (report.end, ==, SQ_OFFSET_CLEAN);
            assert_points_near (apex, sq_scale (out, corner / sin (phi / 2)), 1e-9);
            double leg = deep + edge - corner * half;
            SqPoint low = node_between (cut, 0, 1), low_b = node_between (cut, 2, 3);
            assert_near (sq_distance (low, apex), leg, 1e-9);
            assert_near (sq_distance (low_b, apex), leg, 1e-9);
          }
        else
          {
            g_assert_cmpint (report.end, ==, SQ_OFFSET_TRIMMED);
            g_assert_false (has_tag (cut, 1) || has_tag (cut, 2));
            SqPoint tip = node_between (cut, 0, 3);
            assert_points_near (tip, sq_scale (out, (deep + edge) / cos (phi / 2)), 1e-9);
            assert_points_near (report.where, sq_point (0, -deep), 1e-9);
          }
        sq_offset_report_clear (&report);
      }
}

/* A hole is a ring the other way round, and outward is into it. */
static void
test_holes (void)
{
  g_autoptr (SqPath) ring = POLYGON ({ 0, 0 }, { 60, 0 }, { 60, 20 }, { 20, 20 }, { 20, 50 },
                                     { 0, 50 });
  g_autoptr (SqPath) hole = sq_path_reversed (ring);

  for (double by = -15; by < 15; by += 4)
    {
      SqJoinRule rule = sq_join_rule_mitre ();
      g_autoptr (SqPath) grown = sq_path_offset_evenly (ring, by, &rule, NULL);
      g_autoptr (SqPath) shrunk = sq_path_offset_evenly (hole, -by, &rule, NULL);
      g_assert_true ((grown == NULL) == (shrunk == NULL));
      if (grown != NULL)
        assert_near (sq_path_area_mm2 (grown), -sq_path_area_mm2 (shrunk), 1e-9);
    }
}

int
main (int argc, char **argv)
{
  g_test_init (&argc, &argv, NULL);
  g_test_add_func ("/geometry/offset/table", test_table);
  g_test_add_func ("/geometry/offset/arcs-keep-their-angle", test_arcs_keep_their_angle);
  g_test_add_func ("/geometry/offset/circle", test_circle);
  g_test_add_func ("/geometry/offset/mitre-rule", test_mitre_rule);
  g_test_add_func ("/geometry/offset/needle", test_needle);
  g_test_add_func ("/geometry/offset/mitre-of-two-distances", test_mitre_of_two_distances);
  g_test_add_func ("/geometry/offset/step", test_step);
  g_test_add_func ("/geometry/offset/no-slivers", test_no_slivers);
  g_test_add_func ("/geometry/offset/collinear-nodes-stay", test_collinear_nodes_stay);
  g_test_add_func ("/geometry/offset/round-of-two-distances", test_round_of_two_distances);
  g_test_add_func ("/geometry/offset/bevel", test_bevel);
  g_test_add_func ("/geometry/offset/plate", test_plate);
  g_test_add_func ("/geometry/offset/dart", test_dart);
  g_test_add_func ("/geometry/offset/holes", test_holes);
  return g_test_run ();
}
