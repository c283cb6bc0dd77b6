/* SPDX-License-Identifier: GPL-3.0-or-later */
/* From the seat to the finished outline. Clearances are common practice, no source. */
#include "base/units.h"
#include "cover/hand-made.h"

static const SqFinishedEdge *
edge_of (const SqCover *cover, SqId id)
{
  for (guint i = 0; i < cover->finished->rings[0].n_edges; i++)
    if (cover->finished->rings[0].edges[i].id == id)
      return &cover->finished->rings[0].edges[i];
  g_assert_not_reached ();
}

/* Right edge of a seat 600 mm wide: how far it comes in. */
static double
clearance_at_right (const char *edge_keys, const char *cushion_keys)
{
  const char *keys[4] = { NULL, edge_keys, NULL, NULL };
  g_autofree char *outline = rectangle (600, 400, keys);
  g_autofree char *cushion = g_strconcat (outline, ",", cushion_keys, NULL);
  g_autoptr (SqCover) cover = cover_of (cushion);
  return 600 - sq_path_box (cover->finished->rings[0].path).max.x;
}

static void
test_clearances (void)
{
  const char *usual = "'thickness':76.2";

  assert_mm (clearance_at_right (NULL, usual), 0);
  assert_mm (clearance_at_right (",'kind':'wall'", usual), 3.175);
  assert_mm (clearance_at_right (",'kind':'well'", usual), 4.7625);
  assert_mm (clearance_at_right (",'kind':'hull-lining'", usual), 6.35);
  assert_mm (clearance_at_right (",'kind':'arm'", usual), -3.175);
  assert_mm (clearance_at_right (",'kind':'neighbour'", usual), 0);
  /* set back by H, so that the lid can swing up */
  assert_mm (clearance_at_right (",'kind':'lid-hinge'", usual), 76.2);
  assert_mm (clearance_at_right (",'kind':'wall','clearance':10", usual), 10);
  assert_mm (clearance_at_right (",'clearance':-20", usual), -20);
}

/* At a wall 1/4 in with batting or soft foam over 4 in. */
static void
test_soft_at_wall (void)
{
  const char *wall = ",'kind':'wall'";

  assert_mm (clearance_at_right (wall, "'thickness':101.6"), 3.175);
  assert_mm (clearance_at_right (wall, "'thickness':102"), 6.35);
  assert_mm (clearance_at_right (wall, "'thickness':102,'foam':{'material':'firm'}"), 3.175);
  assert_mm (clearance_at_right (wall, "'thickness':50,'foam':{'batting':10}"), 6.35);
}

static void
test_sides (void)
{
  g_autoptr (SqCover) cover = cover_of_rectangle (600, 400, "'thickness':76.2");

  g_assert_cmpuint (cover->finished->rings[0].edges[0].id, ==, 1);
  g_assert_cmpint (edge_of (cover, 1)->side, ==, SQ_SIDE_FRONT);
  g_assert_cmpint (edge_of (cover, 2)->side, ==, SQ_SIDE_RIGHT);
  g_assert_cmpint (edge_of (cover, 3)->side, ==, SQ_SIDE_BACK);
  g_assert_cmpint (edge_of (cover, 4)->side, ==, SQ_SIDE_LEFT);
  g_assert_cmpuint (cover->finished->rings[0].edges[cover->finished->back].id, ==, 3);
}

/* Normals at exactly 45° count as front or back: a square on its corner, with a front. */
static void
test_diagonals (void)
{
  g_autoptr (SqCover) cover = cover_of (
      "'outline':[{'id':1,'x':100,'y':0,'front':true},{'id':2,'x':300,'y':0},"
      "{'id':3,'x':400,'y':100},{'id':4,'x':300,'y':200},{'id':5,'x':100,'y':200},"
      "{'id':6,'x':0,'y':100}]");

  g_assert_cmpint (edge_of (cover, 2)->side, ==, SQ_SIDE_FRONT);
  g_assert_cmpint (edge_of (cover, 3)->side, ==, SQ_SIDE_BACK);
  g_assert_cmpint (edge_of (cover, 5)->side, ==, SQ_SIDE_BACK);
  g_assert_cmpint (edge_of (cover, 6)->side, ==, SQ_SIDE_FRONT);
}

/* The front is marked, or the edge whose normal is nearest to −y, of equal ones the lowest id. */
static void
test_front (void)
{
  const char *marks[4] = { NULL, ",'front':true", NULL, NULL };
  g_autofree char *outline = rectangle (600, 400, marks);
  g_autoptr (SqCover) marked = cover_of (outline);
  g_autoptr (SqCover) notched = cover_of (
      "'outline':[{'id':9,'x':0,'y':0},{'id':2,'x':200,'y':0},{'id':3,'x':200,'y':100},"
      "{'id':4,'x':400,'y':100},{'id':5,'x':400,'y':400},{'id':6,'x':0,'y':400}]");

  g_assert_cmpuint (marked->finished->rings[0].edges[0].id, ==, 2);
  g_assert_cmpint (edge_of (marked, 4)->side, ==, SQ_SIDE_BACK);
  g_assert_cmpint (edge_of (marked, 1)->side, ==, SQ_SIDE_LEFT);
  g_assert_cmpuint (notched->finished->rings[0].edges[0].id, ==, 3);
}

/* The back is the longest of the back's edges; of equal ones the farthest from the front. Without
 * any it is the edge whose middle is farthest away. */
static void
test_back (void)
{
  g_autoptr (SqCover) longest = cover_of (
      "'outline':[{'id':1,'x':0,'y':0},{'id':2,'x':600,'y':0},{'id':3,'x':600,'y':300},"
      "{'id':4,'x':200,'y':300},{'id':5,'x':200,'y':400},{'id':6,'x':0,'y':400}]");
  g_autoptr (SqCover) farthest = cover_of (
      "'outline':[{'id':1,'x':0,'y':0},{'id':2,'x':600,'y':0},{'id':3,'x':600,'y':300},"
      "{'id':4,'x':300,'y':300},{'id':5,'x':300,'y':400},{'id':6,'x':0,'y':400}]");
  g_autoptr (SqCover) pointed = cover_of (
      "'outline':[{'id':1,'x':0,'y':0},{'id':2,'x':200,'y':0},{'id':3,'x':150,'y':900}]");

  g_assert_cmpuint (longest->finished->rings[0].edges[longest->finished->back].id, ==, 3);
  g_assert_cmpuint (farthest->finished->rings[0].edges[farthest->finished->back].id, ==, 5);
  /* both middles are 450 from the front: the one farther right */
  g_assert_cmpuint (pointed->finished->rings[0].edges[pointed->finished->back].id, ==, 2);
}

/* A rounding belongs half to each neighbour. Radii are F's; between two edges in a well the radius
 * was measured on the well, and F's is less by the clearance. */
static void
test_rounding (void)
{
  const char *keys[4] = { NULL, NULL, ",'radius':50", NULL };
  const char *well[4] = { NULL, ",'kind':'well'", ",'kind':'well','radius':50", NULL };
  g_autofree char *outline = rectangle (600, 400, keys);
  g_autofree char *sunk = rectangle (600, 400, well);
  g_autoptr (SqCover) free = cover_of (outline);
  g_autoptr (SqCover) in_well = cover_of (sunk);
  const SqFinishedEdge *right = edge_of (free, 2), *back = edge_of (free, 3);
  double half = 50 * G_PI / 4;

  assert_mm (right->own_end_mm - right->own_start_mm, 350);
  assert_mm (right->end_mm - right->own_end_mm, half);
  assert_mm (back->own_start_mm - back->start_mm, half);
  assert_mm (back->radius_mm, 50);
  assert_mm (edge_of (in_well, 3)->radius_mm, 50 - 4.7625);
}

/* Extents are taken along the front and square to it, however the seat lies. */
static void
test_frame (void)
{
  g_autoptr (SqCover) cover = cover_of (
      "'outline':[{'id':1,'x':0,'y':0,'front':true},{'id':2,'x':300,'y':400},"
      "{'id':3,'x':60,'y':580},{'id':4,'x':-240,'y':180}]");
  SqBox box = cover->finished->extent;

  /* 500 along (0.6, 0.8), 300 square to it */
  assert_mm (box.max.x - box.min.x, 500);
  assert_mm (box.max.y - box.min.y, 300);
  SqPoint p = sq_finished_to_frame (cover->finished, sq_point (60, 580));
  assert_mm (p.x, 500);
  assert_mm (p.y, 300);
  p = sq_finished_from_frame (cover->finished, p);
  assert_mm (p.x, 60);
  assert_mm (p.y, 580);
}

/* Collinear edges with different clearances are joined by a step, which belongs to the edge with
 * the larger one. */
static void
test_step (void)
{
  g_autoptr (SqCover) cover = cover_of (
      "'outline':[{'id':1,'x':0,'y':0},{'id':2,'x':300,'y':0,'clearance':10},"
      "{'id':3,'x':600,'y':0},{'id':4,'x':600,'y':400},{'id':5,'x':0,'y':400}]");
  const SqPath *path = cover->finished->rings[0].path;

  assert_node (path, 300, 0);
  assert_node (path, 300, 10);
  assert_mm (edge_of (cover, 1)->own_end_mm - edge_of (cover, 1)->own_start_mm, 300);
  assert_mm (edge_of (cover, 2)->own_end_mm - edge_of (cover, 2)->own_start_mm, 310);
}

/* A corner that folds back on itself all but exactly would run out into a needle of many kilometres
 * where one of its sides is drawn in more than the other. */
static void
test_needle (void)
{
  g_autoptr (SqCover) cover = cover_of (
      "'outline':[{'id':14,'x':132.31394553140314,'y':914.6461459536827,'kind':'arm'},"
      "{'id':6,'x':113.38851260635988,'y':849.2113370341767},"
      "{'id':4,'x':228.84432326374463,'y':1248.4005120026688},{'id':20,'x':-330,'y':1310}]");
  const SqProblem *problem = find_problem (cover, SQ_PROBLEM_CLEARANCE_TOO_LARGE);

  g_assert_nonnull (problem);
  g_assert_null (cover->finished);
  g_assert_cmpint (problem->fixes[0].kind, ==, SQ_FIX_CLEARANCE);
}

int
main (int argc, char **argv)
{
  g_test_init (&argc, &argv, NULL);
  g_test_add_func ("/cover/finished/clearances", test_clearances);
  g_test_add_func ("/cover/finished/soft-at-wall", test_soft_at_wall);
  g_test_add_func ("/cover/finished/sides", test_sides);
  g_test_add_func ("/cover/finished/diagonals", test_diagonals);
  g_test_add_func ("/cover/finished/front", test_front);
  g_test_add_func ("/cover/finished/back", test_back);
  g_test_add_func ("/cover/finished/rounding", test_rounding);
  g_test_add_func ("/cover/finished/frame", test_frame);
  g_test_add_func ("/cover/finished/step", test_step);
  g_test_add_func ("/cover/finished/needle", test_needle);
  return g_test_run ();
}
