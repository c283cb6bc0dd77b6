/* SPDX-License-Identifier: GPL-3.0-or-later */
/* A law for the whole room: turn and move a ring, and everything computed from it is turned and
 * moved, node by node, and otherwise the same. */
#include "base/units.h"
#include "geometry/fit.h"
#include "geometry/offset.h"
#include "geometry/random-ring.h"
#include "geometry/rounding.h"

#define WITHIN_MM 1e-7

enum
{
  RINGS = 400,
  MAX_NODES = 12,
};

typedef struct
{
  double turn_rad;
  SqVector by;
} Move;

static Move
random_move (void)
{
  return (Move){ g_test_rand_double_range (-G_PI, G_PI), random_point (1000) };
}

static SqPoint
moved_point (SqPoint p, const Move *move)
{
  return sq_add (sq_turned (p, move->turn_rad), move->by);
}

static SqPath *
moved (const SqPath *path, const Move *move)
{
  return sq_path_moved (path, move->turn_rad, move->by);
}

static void
assert_near (double a, double b, double within)
{
  if (!(fabs (a - b) <= within))
    g_error ("%.17g and %.17g differ by %g, more than %g", a, b, fabs (a - b), within);
}

static void
assert_same_path (const SqPath *a, const SqPath *b)
{
  g_assert_cmpuint (sq_path_n_nodes (a), ==, sq_path_n_nodes (b));
  g_assert_cmpint (sq_path_is_ring (a), ==, sq_path_is_ring (b));
  for (guint i = 0; i < sq_path_n_nodes (a); i++)
    {
      SqNode m = sq_path_nodes (a)[i], n = sq_path_nodes (b)[i];
      assert_near (sq_distance (m.at, n.at), 0, WITHIN_MM);
      g_assert_cmpuint (m.tag, ==, n.tag);
    }
  for (guint i = 0; i < sq_path_n_segments (a); i++)
    {
      SqSegment s = sq_path_segment (a, i), t = sq_path_segment (b, i);
      assert_near (sq_distance (sq_segment_point (&s, 0.5), sq_segment_point (&t, 0.5)), 0,
                   WITHIN_MM);
    }
}

/* What comes of @ring, moved, is @of_moved; both or neither may be missing. */
static void
assert_moves_along (const SqPath *of_plain, const SqPath *of_moved, const Move *move)
{
  g_assert_cmpint (of_plain == NULL, ==, of_moved == NULL);
  if (of_plain == NULL)
    return;
  g_autoptr (SqPath) expected = moved (of_plain, move);
  assert_same_path (expected, of_moved);
}

static SqPath *
some_ring (void)
{
  return random_ring ((guint) g_test_rand_int_range (3, MAX_NODES + 1), 600, 0.4);
}

static void
test_figures (void)
{
  for (int i = 0; i < RINGS; i++)
    {
      g_autoptr (SqPath) ring = some_ring ();
      Move move = random_move ();
      g_autoptr (SqPath) turned = moved (ring, &move);
      SqPoint p = random_point (600);
      SqPoint q = moved_point (p, &move);
      SqNearest here = sq_path_nearest (ring, p), there = sq_path_nearest (turned, q);

      assert_near (sq_path_length_mm (ring), sq_path_length_mm (turned), WITHIN_MM);
      assert_near (sq_path_area_mm2 (ring), sq_path_area_mm2 (turned), WITHIN_MM);
      assert_near (here.distance_mm, there.distance_mm, WITHIN_MM);
      g_assert_cmpint (sq_path_winding (ring, p), ==, sq_path_winding (turned, q));
      for (guint k = 0; k <= sq_path_n_nodes (ring); k++)
        assert_near (sq_path_station_mm (ring, k), sq_path_station_mm (turned, k), WITHIN_MM);
    }
}

static void
test_derived (void)
{
  for (int i = 0; i < RINGS; i++)
    {
      g_autoptr (SqPath) ring = some_ring ();
      Move move = random_move ();
      g_autoptr (SqPath) turned = moved (ring, &move);
      double length = sq_path_length_mm (ring);
      double from = length * g_test_rand_double (), to = length * g_test_rand_double ();
      g_autoptr (SqPath) part = sq_path_part (ring, from, to);
      g_autoptr (SqPath) turned_part = sq_path_part (turned, from, to);
      g_autoptr (SqPath) back = sq_path_reversed (ring);
      g_autoptr (SqPath) turned_back = sq_path_reversed (turned);
      g_autoptr (SqPath) flat = sq_path_flattened (ring, 0.1);
      g_autoptr (SqPath) turned_flat = sq_path_flattened (turned, 0.1);

      assert_moves_along (part, turned_part, &move);
      assert_moves_along (back, turned_back, &move);
      assert_moves_along (flat, turned_flat, &move);
    }
}

static void
assert_same_report (const SqOffsetReport *a, const SqOffsetReport *b)
{
  g_assert_cmpint (a->end, ==, b->end);
  g_assert_cmpuint (a->trims->len, ==, b->trims->len);
  for (guint i = 0; i < a->trims->len; i++)
    {
      SqOffsetTrim s = g_array_index (a->trims, SqOffsetTrim, i);
      SqOffsetTrim t = g_array_index (b->trims, SqOffsetTrim, i);
      g_assert_cmpint (s.kind, ==, t.kind);
      g_assert_cmpuint (s.tag_before, ==, t.tag_before);
      g_assert_cmpuint (s.tag_after, ==, t.tag_after);
      g_assert_cmpuint (s.first, ==, t.first);
      g_assert_cmpuint (s.last, ==, t.last);
    }
}

static void
check_offsets (const SqJoinRule *rule, double least_mm, double most_mm)
{
  for (int i = 0; i < RINGS; i++)
    {
      g_autoptr (SqPath) ring = some_ring ();
      Move move = random_move ();
      g_autoptr (SqPath) turned = moved (ring, &move);
      double by[MAX_NODES];
      SqOffsetReport report, turned_report;
      for (guint k = 0; k < MAX_NODES; k++)
        by[k] = g_test_rand_double_range (least_mm, most_mm);
      g_autoptr (SqPath) offset = sq_path_offset (ring, by, MAX_NODES, rule, &report);
      g_autoptr (SqPath) turned_offset = sq_path_offset (turned, by, MAX_NODES, rule,
                                                         &turned_report);

      assert_moves_along (offset, turned_offset, &move);
      assert_same_report (&report, &turned_report);
      sq_offset_report_clear (&report);
      sq_offset_report_clear (&turned_report);
    }
}

static void
test_offset_mitre (void)
{
  SqJoinRule rule = sq_join_rule_mitre ();

  check_offsets (&rule, 5, 30);
  check_offsets (&rule, -60, 60);
}

static void
test_offset_round (void)
{
  SqJoinRule rule = sq_join_rule_round ();

  check_offsets (&rule, 5, 30);
  check_offsets (&rule, -60, 60);
}

static void
test_rounding (void)
{
  guint troubled = 0;

  for (int i = 0; i < RINGS; i++)
    {
      g_autoptr (SqPath) ring = some_ring ();
      Move move = random_move ();
      g_autoptr (SqPath) turned = moved (ring, &move);
      double radius[MAX_NODES];
      guint32 tag[MAX_NODES];
      g_autoptr (GArray) troubles = g_array_new (FALSE, FALSE, sizeof (SqRoundingTrouble));
      g_autoptr (GArray) turned_troubles = g_array_new (FALSE, FALSE, sizeof (SqRoundingTrouble));
      for (guint k = 0; k < MAX_NODES; k++)
        {
          radius[k] = fmax (g_test_rand_double_range (-100, 300), 0);
          tag[k] = MAX_NODES + k;
        }
      g_autoptr (SqPath) rounded = sq_path_rounded (ring, radius, tag, troubles);
      g_autoptr (SqPath) turned_rounded = sq_path_rounded (turned, radius, tag, turned_troubles);

      assert_moves_along (rounded, turned_rounded, &move);
      g_assert_cmpuint (troubles->len, ==, turned_troubles->len);
      for (guint k = 0; k < troubles->len; k++)
        {
          SqRoundingTrouble a = g_array_index (troubles, SqRoundingTrouble, k);
          SqRoundingTrouble b = g_array_index (turned_troubles, SqRoundingTrouble, k);
          g_assert_cmpuint (a.node, ==, b.node);
          assert_near (a.largest_mm, b.largest_mm, WITHIN_MM);
        }
      troubled += troubles->len > 0;
    }
  g_test_message ("%u rings with trouble", troubled);
  g_assert_true (troubled > RINGS / 20 && troubled < RINGS * 19 / 20);
}

/* The way of a real outline: bowed sides and one a cubic, two corners rounded, a cut line. */
static SqPath *
cut_line (const SqPoint corner[4], const SqPoint control[2], const Move *move)
{
  SqPoint cubic[4] = { corner[1], control[0], control[1], corner[2] };
  SqJoinRule rule = sq_join_rule_mitre ();
  SqPathBuilder builder;

  for (guint i = 0; i < 4; i++)
    cubic[i] = moved_point (cubic[i], move);
  sq_path_builder_init (&builder);
  sq_path_builder_add (&builder, moved_point (corner[0], move), 0.1, 0);
  g_assert_true (sq_fit_cubic (cubic, SQ_FIT_MM, 1, builder.nodes));
  sq_path_builder_add (&builder, moved_point (corner[2], move), 0, 2);
  sq_path_builder_add (&builder, moved_point (corner[3], move), -0.1, 3);
  g_autoptr (SqPath) ring = sq_path_builder_end (&builder, TRUE);
  guint n = sq_path_n_nodes (ring);
  g_autofree double *radius = g_new0 (double, n);
  g_autofree guint32 *tag = g_new0 (guint32, n);
  radius[0] = 30;
  radius[n - 1] = 40;
  g_autoptr (GArray) troubles = g_array_new (FALSE, FALSE, sizeof (SqRoundingTrouble));
  g_autoptr (SqPath) rounded = sq_path_rounded (ring, radius, tag, troubles);
  g_assert_cmpuint (troubles->len, ==, 0);
  return sq_path_offset_evenly (rounded, 12.7, &rule, NULL);
}

static void
test_cut_line (void)
{
  const SqPoint corner[] = { { 0, 0 }, { 500, 20 }, { 480, 450 }, { -10, 430 } };
  const Move nowhere = { 0, { 0, 0 } };

  for (int i = 0; i < RINGS; i++)
    {
      Move move = random_move ();
      const SqPoint control[] = { sq_add (sq_point (560, 150), random_point (60)),
                                  sq_add (sq_point (540, 300), random_point (60)) };
      g_autoptr (SqPath) here = cut_line (corner, control, &nowhere);
      g_autoptr (SqPath) there = cut_line (corner, control, &move);
      assert_moves_along (here, there, &move);
    }
}

/* Of two halves that are as great the same one is kept, whichever way the ring lies. */
static void
test_equal_halves (void)
{
  SqJoinRule rule = sq_join_rule_mitre ();
  const SqPoint points[] = { { 0, 0 },    { 100, 0 },  { 100, 40 },  { 150, 40 },
                             { 150, 0 },  { 250, 0 },  { 250, 100 }, { 150, 100 },
                             { 150, 60 }, { 100, 60 }, { 100, 100 }, { 0, 100 } };

  for (int i = 0; i < RINGS; i++)
    {
      Move move = random_move ();
      g_autoptr (SqPath) ring = sq_path_new_polygon (points, G_N_ELEMENTS (points));
      g_autoptr (SqPath) turned = moved (ring, &move);
      g_autoptr (SqPath) half = sq_path_offset_evenly (ring, -15, &rule, NULL);
      g_autoptr (SqPath) other = sq_path_offset_evenly (turned, -15, &rule, NULL);
      g_autoptr (SqPath) expected = moved (half, &move);
      assert_same_path (expected, other);
    }
}

/* @ring, started at the node nearest to @at. */
static SqPath *
started_at (const SqPath *ring, SqPoint at)
{
  guint n = sq_path_n_nodes (ring), first = 0;
  const SqNode *nodes = sq_path_nodes (ring);
  SqPathBuilder builder;

  for (guint i = 1; i < n; i++)
    if (sq_distance (nodes[i].at, at) < sq_distance (nodes[first].at, at))
      first = i;
  sq_path_builder_init (&builder);
  for (guint i = 0; i < n; i++)
    {
      SqNode node = nodes[(first + i) % n];
      sq_path_builder_add (&builder, node.at, node.bulge, node.tag);
    }
  return sq_path_builder_end (&builder, TRUE);
}

/* Mirroring commutes with everything as well; only where a result starts is free. */
static void
assert_mirrors (const SqPath *of_plain, const SqPath *of_mirrored)
{
  g_assert_cmpint (of_plain == NULL, ==, of_mirrored == NULL);
  if (of_plain == NULL)
    return;
  g_autoptr (SqPath) mirrored = sq_path_mirrored (of_plain);
  g_autoptr (SqPath) expected = started_at (mirrored, sq_path_nodes (of_mirrored)[0].at);
  assert_same_path (expected, of_mirrored);
}

static SqPath *
without_tags (const SqPath *path)
{
  SqPathBuilder builder;

  if (path == NULL)
    return NULL;
  sq_path_builder_init (&builder);
  for (guint i = 0; i < sq_path_n_nodes (path); i++)
    sq_path_builder_add (&builder, sq_path_nodes (path)[i].at, sq_path_nodes (path)[i].bulge, 0);
  return sq_path_builder_end (&builder, sq_path_is_ring (path));
}

/* Trims carry the tag before them, which mirroring makes the one after; so tags are left out. */
static void
test_mirrored_offset (void)
{
  SqJoinRule rule = sq_join_rule_mitre ();

  for (int i = 0; i < RINGS; i++)
    {
      g_autoptr (SqPath) ring = some_ring ();
      g_autoptr (SqPath) mirrored = sq_path_mirrored (ring);
      double by[MAX_NODES];
      for (guint k = 0; k < MAX_NODES; k++)
        by[k] = g_test_rand_double_range (-40, 40);
      g_autoptr (SqPath) offset = sq_path_offset (ring, by, MAX_NODES, &rule, NULL);
      g_autoptr (SqPath) other = sq_path_offset (mirrored, by, MAX_NODES, &rule, NULL);
      g_autoptr (SqPath) bare = without_tags (offset);
      g_autoptr (SqPath) other_bare = without_tags (other);
      assert_mirrors (bare, other_bare);
    }
}

static void
test_mirrored_rounding (void)
{
  for (int i = 0; i < RINGS; i++)
    {
      g_autoptr (SqPath) ring = some_ring ();
      g_autoptr (SqPath) mirrored = sq_path_mirrored (ring);
      guint n = sq_path_n_nodes (ring);
      double radius[MAX_NODES], other_radius[MAX_NODES];
      guint32 tag[MAX_NODES], other_tag[MAX_NODES];
      for (guint k = 0; k < n; k++)
        {
          guint image = (n - k) % n;
          other_radius[image] = radius[k] = fmax (g_test_rand_double_range (-100, 300), 0);
          other_tag[image] = tag[k] = MAX_NODES + k;
        }
      g_autoptr (SqPath) rounded = sq_path_rounded (ring, radius, tag, NULL);
      g_autoptr (SqPath) other = sq_path_rounded (mirrored, other_radius, other_tag, NULL);
      assert_mirrors (rounded, other);
    }
}

int
main (int argc, char **argv)
{
  g_test_init (&argc, &argv, NULL);
  g_test_add_func ("/geometry/turning/figures", test_figures);
  g_test_add_func ("/geometry/turning/derived", test_derived);
  g_test_add_func ("/geometry/turning/rounding", test_rounding);
  g_test_add_func ("/geometry/turning/offset-mitre", test_offset_mitre);
  g_test_add_func ("/geometry/turning/offset-round", test_offset_round);
  g_test_add_func ("/geometry/turning/cut-line", test_cut_line);
  g_test_add_func ("/geometry/turning/equal-halves", test_equal_halves);
  g_test_add_func ("/geometry/turning/mirrored-offset", test_mirrored_offset);
  g_test_add_func ("/geometry/turning/mirrored-rounding", test_mirrored_rounding);
  return g_test_run ();
}
