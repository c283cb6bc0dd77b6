/* SPDX-License-Identifier: GPL-3.0-or-later */
/* Offsets that lose something: what vanishes, what closes, what falls apart. */
#include "geometry/crossing.h"
#include "geometry/offset.h"

static void
assert_near (double a, double b, double within)
{
  if (!(fabs (a - b) <= within))
    g_error ("%.17g and %.17g differ by %g, more than %g", a, b, fabs (a - b), within);
}

static SqPoint
node (const SqPath *path, guint i)
{
  return sq_path_nodes (path)[i % sq_path_n_nodes (path)].at;
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

#define POLYGON(...)                                                                               \
  sq_path_new_polygon ((const SqPoint[]){ __VA_ARGS__ },                                           \
                       G_N_ELEMENTS (((const SqPoint[]){ __VA_ARGS__ })))

static void
test_collapsing (void)
{
  g_autoptr (SqPath) triangle = POLYGON ({ 0, 0 }, { 40, 0 }, { 0, 30 }); /* inscribed circle 10 */
  g_autoptr (SqPath) left = offset_evenly (triangle, -9.9, sq_join_rule_mitre (), SQ_OFFSET_CLEAN);
  g_autoptr (SqPath) ell = POLYGON ({ 0, 0 }, { 60, 0 }, { 60, 20 }, { 20, 20 }, { 20, 50 },
                                    { 0, 50 });
  g_autoptr (SqPath) cup = POLYGON ({ 0, 0 }, { 100, 0 }, { 100, 80 }, { 80, 80 }, { 80, 40 },
                                    { 20, 40 }, { 20, 80 }, { 0, 80 });

  assert_near (sq_path_area_mm2 (left), 600 * 0.01 * 0.01, 1e-9);
  for (double by = -10.1; by > -100; by *= 1.5)
    {
      offset_evenly (triangle, by, sq_join_rule_mitre (), SQ_OFFSET_VANISHED);
      offset_evenly (ell, by - 0.5, sq_join_rule_mitre (), SQ_OFFSET_VANISHED);
    }
  /* both prongs of the U go, its bar stays */
  g_autoptr (SqPath) bar = offset_evenly (cup, -12, sq_join_rule_mitre (), SQ_OFFSET_TRIMMED);
  assert_near (sq_path_area_mm2 (bar), 76 * 16, 1e-9);
}

static void
test_closing_notches (void)
{
  /* a slot narrower than twice the distance closes all the way */
  g_autoptr (SqPath) slot = POLYGON ({ 0, 0 }, { 300, 0 }, { 300, 300 }, { 160, 300 }, { 160, 100 },
                                     { 140, 100 }, { 140, 300 }, { 0, 300 });
  g_autoptr (SqPath) closed = offset_evenly (slot, 12.7, sq_join_rule_mitre (), SQ_OFFSET_TRIMMED);
  assert_near (sq_path_area_mm2 (closed), 325.4 * 325.4, 1e-6);

  /* a keyhole closes its mouth and leaves a pocket */
  g_autoptr (SqPath) keyhole = POLYGON ({ 0, 0 }, { 300, 0 }, { 300, 300 }, { 155, 300 },
                                        { 155, 200 }, { 200, 200 }, { 200, 100 }, { 100, 100 },
                                        { 100, 200 }, { 145, 200 }, { 145, 300 }, { 0, 300 });
  double by[12] = { 10, 10, 10, 10, 10, 10, 10, 10, 10, 10, 10, 10 };
  SqOffsetReport report;
  g_autoptr (SqPath) outer = offset (keyhole, by, SQ_OFFSET_SPLIT, &report);
  assert_near (sq_path_area_mm2 (outer), 320 * 320, 1e-6);
  g_assert_cmpfloat (report.where.x, >, 100);
  g_assert_cmpfloat (report.where.x, <, 200);
  g_assert_cmpfloat (report.where.y, >, 100);
  g_assert_cmpfloat (report.where.y, <, 200);
  sq_offset_report_clear (&report);

  /* a neck breaks: the greater part is kept */
  g_autoptr (SqPath) neck = POLYGON ({ 0, 0 }, { 100, 0 }, { 100, 40 }, { 150, 40 }, { 150, 0 },
                                     { 230, 0 }, { 230, 100 }, { 150, 100 }, { 150, 60 },
                                     { 100, 60 }, { 100, 100 }, { 0, 100 });
  for (guint i = 0; i < 12; i++)
    by[i] = -11;
  g_autoptr (SqPath) part = offset (neck, by, SQ_OFFSET_SPLIT, &report);
  assert_near (sq_path_area_mm2 (part), 78 * 78, 1e-6);
  sq_offset_report_clear (&report);
}

/* Rings whose greatest part hides behind sides that leave nothing of each other. The areas were
 * counted on a grid of points that keep their distance. */
static void
test_hidden_parts (void)
{
  g_autoptr (SqPath) behind_two = POLYGON ({ 10, 10 }, { 20, 0 }, { 30, 10 }, { 70, 0 }, { 30, 70 },
                                           { 30, 50 }, { 20, 30 }, { 10, 30 });
  g_autoptr (SqPath) two = offset_evenly (behind_two, -15, sq_join_rule_round (),
                                          SQ_OFFSET_TRIMMED);
  assert_near (sq_path_area_mm2 (two), 13.75, 0.1);

  g_autoptr (SqPath) behind_ten = POLYGON (
      { 95.8, 14.6 }, { 72.5, 39 }, { 25.2, 28.6 }, { 20.9, 78.2 }, { -8.9, 48.7 }, { -33.7, 59 },
      { -47.5, 33.8 }, { -88.1, 16.6 }, { -50.3, -19.4 }, { -63.9, -55.6 }, { -27.4, -55.9 },
      { -8.4, -98.3 }, { 16.2, -36.4 }, { 43.3, -43.9 }, { 82.9, -32.6 });
  g_autoptr (SqPath) ten = offset_evenly (behind_ten, -36.4384, sq_join_rule_round (),
                                          SQ_OFFSET_SPLIT);
  assert_near (sq_path_area_mm2 (ten), 392, 4);
}

/* A line and an arc of the raw parallel between the same two crossings: what lies between them is
 * told from both sides. */
static void
test_line_and_arc_between_two_points (void)
{
  SqNode nodes[] = { { { 9.4363680621705619, 93.665414985439298 }, 0, 0 },
                     { { -13.828565713776635, 34.210465280358449 }, -0.037722620732734448, 1 },
                     { { -59.227435556882646, 53.027224444216785 }, 0, 2 },
                     { { -31.599336643358729, 12.18795020791709 }, 0, 3 },
                     { { -74.443322604351593, -1.7125657109584864 }, 0.073975246200786896, 4 },
                     { { -88.214632311167932, -37.995080656110922 }, 0.49354279075305261, 5 },
                     { { -46.094377261596314, -51.503144797078619 }, 0, 6 },
                     { { -6.9668016186041912, -32.815725209582141 }, 0, 7 },
                     { { 9.6261956730329228, -79.504604051947837 }, 0, 8 },
                     { { 18.055920033639907, -34.068526807884922 }, 0, 9 },
                     { { 77.413048952205997, -48.180073387671989 }, 0, 10 },
                     { { 57.361508739979378, -12.072041201003772 }, 0, 11 },
                     { { 88.209054389478311, 13.896580034085867 }, 0, 12 },
                     { { 53.474417053408509, 42.694508758250358 }, 0, 13 },
                     { { 40.531142212020455, 77.243552232404511 }, 0.026842500309017473, 14 } };
  g_autoptr (SqPath) ring = sq_path_new (nodes, G_N_ELEMENTS (nodes), TRUE);
  g_autoptr (SqPath) hole = sq_path_reversed (ring);
  const double by = 25.673256797103623;
  g_autoptr (SqPath) inset = offset_evenly (ring, -by, sq_join_rule_round (), SQ_OFFSET_SPLIT);
  g_autoptr (SqPath) grown = offset_evenly (hole, by, sq_join_rule_round (), SQ_OFFSET_SPLIT);

  assert_near (sq_path_area_mm2 (inset), 1759.50571, 1e-4);
  assert_near (sq_path_area_mm2 (grown), -sq_path_area_mm2 (inset), 1e-6);
}

/* Trims count nodes of what came out, also when loops were removed before them. */
static void
test_trims_after_loops (void)
{
  g_autoptr (SqPath) ring = POLYGON ({ 0, 0 }, { 140, 0 }, { 140, 20 }, { 45, 25 }, { 45, 30 },
                                     { 140, 35 }, { 140, 60 }, { -60, 30 });
  double by[8] = { 10, 10, 10, 10, 10, 10, 10, 10 };
  SqOffsetReport report;
  g_autoptr (SqPath) cut = offset (ring, by, SQ_OFFSET_TRIMMED, &report);

  const SqOffsetTrim *squared = trim (&report, report.trims->len - 1);
  g_assert_cmpuint (report.trims->len, ==, 1);
  g_assert_cmpint (squared->kind, ==, SQ_TRIM_MITRE);
  g_assert_cmpuint (squared->tag_before, ==, 6);
  g_assert_cmpuint (squared->tag_after, ==, 7);
  SqPoint middle = sq_between (node (cut, squared->first), node (cut, squared->last), 0.5);
  assert_near (sq_distance (middle, sq_point (-60, 30)), 20, 0.5);
  sq_offset_report_clear (&report);
}

static void
test_many_segments (void)
{
  const guint n = 5000;
  g_autofree SqNode *nodes = g_new (SqNode, n);

  for (guint i = 0; i < n; i++)
    {
      double angle = i * 2 * G_PI / n,
             radius = 2000 + 300 * sin (5 * angle) + 3 * sin (400 * angle);
      nodes[i] = (SqNode){ sq_turned (sq_point (radius, 0), angle), 0, i };
    }
  g_autoptr (SqPath) ring = sq_path_new (nodes, n, TRUE);
  g_autoptr (SqPath) near = offset_evenly (ring, 1, sq_join_rule_mitre (), SQ_OFFSET_CLEAN);
  g_autoptr (SqPath) far = offset_evenly (ring, 40, sq_join_rule_mitre (), SQ_OFFSET_TRIMMED);
  g_autoptr (SqPath) in = offset_evenly (ring, -40, sq_join_rule_mitre (), SQ_OFFSET_TRIMMED);

  g_assert_cmpuint (sq_path_n_nodes (near), ==, n);
  for (guint i = 0; i < sq_path_n_nodes (far); i++)
    g_assert_cmpfloat (sq_path_nearest (ring, node (far, i)).distance_mm, >, 40 - 1e-6);
  for (guint i = 0; i < sq_path_n_nodes (in); i++)
    g_assert_cmpfloat (sq_path_nearest (ring, node (in, i)).distance_mm, >, 40 - 1e-6);
}

int
main (int argc, char **argv)
{
  g_test_init (&argc, &argv, NULL);
  g_test_add_func ("/geometry/offset/loops/collapsing", test_collapsing);
  g_test_add_func ("/geometry/offset/loops/closing-notches", test_closing_notches);
  g_test_add_func ("/geometry/offset/loops/hidden-parts", test_hidden_parts);
  g_test_add_func ("/geometry/offset/loops/line-and-arc-between-two-points",
                   test_line_and_arc_between_two_points);
  g_test_add_func ("/geometry/offset/loops/trims-after-loops", test_trims_after_loops);
  g_test_add_func ("/geometry/offset/loops/many-segments", test_many_segments);
  return g_test_run ();
}
