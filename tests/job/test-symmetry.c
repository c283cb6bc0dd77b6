/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "job/symmetry.h"

#include "job/edge.h"
#include "job/safe-edit.h"

static const SqAxis upright = { { 300, 0 }, { 0, 1 } };

static SqOutline *
seat_of (const SqCorner *corners, guint n)
{
  return sq_outline_new (corners, &n, 1);
}

/* A front 600 wide, sides that lean out a little, a back with a peak. */
static SqOutline *
bay (void)
{
  const SqCorner corners[] = {
    { .id = 1, .at = { 0, 0 }, .front = TRUE },
    { .id = 2, .at = { 600, 0 }, .kind = SQ_EDGE_WALL, .given = SQ_GIVEN_KIND },
    { .id = 3, .at = { 640, 300 }, .radius_mm = 20, .given = SQ_GIVEN_RADIUS },
    { .id = 4, .at = { 300, 420 } },
    { .id = 5, .at = { -40, 300 }, .radius_mm = 20, .given = SQ_GIVEN_RADIUS },
  };

  return seat_of (corners, G_N_ELEMENTS (corners));
}

static const SqCorner *
corner_of (const SqOutline *outline, SqId id)
{
  const SqCorner *corner = sq_outline_corner (outline, id, NULL, NULL);

  g_assert_nonnull (corner);
  return corner;
}

static void
assert_at (const SqOutline *outline, SqId id, double x, double y)
{
  g_assert_cmpfloat_with_epsilon (corner_of (outline, id)->at.x, x, 1e-9);
  g_assert_cmpfloat_with_epsilon (corner_of (outline, id)->at.y, y, 1e-9);
}

static double
random_mm (double least, double most)
{
  return g_test_rand_double_range (least, most);
}

static void
test_axis (void)
{
  g_autoptr (SqOutline) outline = bay ();
  SqAxis axis, slanting = sq_axis_through (sq_point (10, 20), sq_point (40, 60));
  SqPoint p = { 123.4, 567.8 };

  g_assert_true (sq_outline_front_axis (outline, &axis));
  g_assert_cmpfloat (axis.at.x, ==, 300);
  g_assert_cmpfloat (axis.along.y, ==, 1);
  g_assert_cmpfloat (sq_axis_mirrored (&axis, p).y, ==, p.y);
  g_assert_cmpfloat_with_epsilon (sq_axis_mirrored (&axis, p).x, 600 - p.x, 1e-12);
  g_assert_cmpfloat_with_epsilon (sq_axis_left_mm (&axis, p), 300 - p.x, 1e-12);
  SqPoint image = sq_axis_mirrored (&slanting, p);
  g_assert_cmpfloat_with_epsilon (sq_axis_left_mm (&slanting, image),
                                  -sq_axis_left_mm (&slanting, p), 1e-9);
  g_assert_cmpfloat (sq_distance (sq_between (p, image, 0.5), sq_axis_foot (&slanting, p)), <,
                     1e-9);
}

static SqTwins
twins_of (const SqOutline *outline, const SqAxis *axis, SqId id)
{
  g_autoptr (GArray) twins = sq_outline_twins (outline, axis);

  for (guint i = 0; i < twins->len; i++)
    if (g_array_index (twins, SqTwins, i).corner == id)
      return g_array_index (twins, SqTwins, i);
  g_assert_not_reached ();
}

static void
assert_twins (const SqOutline *outline, SqId id, SqId twin, SqId edge_twin)
{
  SqTwins twins = twins_of (outline, &upright, id);

  g_assert_cmpuint (twins.twin, ==, twin);
  g_assert_cmpuint (twins.edge_twin, ==, edge_twin);
}

/* By their order, though nothing is quite in place. */
static void
test_twins (void)
{
  g_autoptr (SqOutline) outline = bay ();
  g_autoptr (SqOutline) one = sq_outline_with_corner_moved (outline, 3, sq_point (15, -20));
  g_autoptr (SqOutline) two = sq_outline_with_corner_moved (one, 4, sq_point (-12, 9));

  assert_twins (two, 1, 2, 1);
  assert_twins (two, 2, 1, 5);
  assert_twins (two, 3, 5, 4);
  assert_twins (two, 4, 4, 3);
  assert_twins (two, 5, 3, 2);
}

/* Of an L no corner has a twin that it deserves. */
static void
test_no_twins (void)
{
  const SqCorner corners[] = {
    { .id = 1, .at = { 0, 0 } },     { .id = 2, .at = { 600, 0 } },
    { .id = 3, .at = { 600, 200 } }, { .id = 4, .at = { 200, 200 } },
    { .id = 5, .at = { 200, 600 } }, { .id = 6, .at = { 0, 600 } },
  };
  g_autoptr (SqOutline) outline = seat_of (corners, G_N_ELEMENTS (corners));

  assert_twins (outline, 1, 0, 0);
  g_assert_false (sq_outline_is_symmetric (outline, &upright, 1));
}

static SqOutline *
with_holes (void)
{
  g_autoptr (SqOutline) outline = bay ();
  g_autoptr (SqOutline) one = sq_outline_with_rectangular_hole (outline, sq_point (150, 100), 60,
                                                                40, NULL);
  g_autoptr (SqOutline) two = sq_outline_with_round_hole (one, sq_point (300, 220), 50, NULL);

  return sq_outline_with_rectangular_hole (two, sq_point (450, 100), 60, 40, NULL);
}

/* Holes 6 … 9 and 12 … 15 are images, the round one, 10 and 11, is its own. */
static void
test_twin_holes (void)
{
  g_autoptr (SqOutline) outline = with_holes ();
  g_autoptr (SqOutline) without = sq_outline_without_ring (outline, 3);

  assert_twins (outline, 6, 15, 14);
  assert_twins (outline, 10, 11, 10);
  g_assert_true (sq_outline_is_symmetric (outline, &upright, 1e-9));
  g_assert_false (sq_outline_is_symmetric (without, &upright, 1));
  assert_twins (without, 6, 0, 0);
}

static void
test_is_symmetric (void)
{
  g_autoptr (SqOutline) outline = bay ();
  SqCorner corner = *corner_of (outline, 2);

  g_assert_true (sq_outline_is_symmetric (outline, &upright, 1e-9));
  g_autoptr (SqOutline) moved = sq_outline_with_corner_moved (outline, 3, sq_point (2, 0));
  g_assert_false (sq_outline_is_symmetric (moved, &upright, 1));
  g_assert_true (sq_outline_is_symmetric (moved, &upright, 2.1));
  corner.shape = SQ_SHAPE_BOW;
  corner.bow_mm = 3;
  g_autoptr (SqOutline) bowed = sq_outline_with_corner (outline, &corner);
  g_assert_false (sq_outline_is_symmetric (bowed, &upright, 2));
  corner = *corner_of (outline, 3);
  corner.radius_mm = 25;
  g_autoptr (SqOutline) rounded = sq_outline_with_corner (outline, &corner);
  g_assert_false (sq_outline_is_symmetric (rounded, &upright, 2));
}

/* --- editing ------------------------------------------------------------------------------- */

static void
test_edit_corners (void)
{
  g_autoptr (SqOutline) outline = bay ();
  g_autoptr (SqOutline) side = sq_outline_with_corner_moved (outline, 3, sq_point (10, -30));
  g_autoptr (SqOutline) both = sq_outline_symmetric_edit (outline, side, &upright, FALSE);
  g_autoptr (SqOutline) peak = sq_outline_with_corner_moved (outline, 4, sq_point (10, -30));
  g_autoptr (SqOutline) kept = sq_outline_symmetric_edit (outline, peak, &upright, FALSE);
  g_autoptr (SqOutline) front = sq_outline_with_edge_moved (outline, 1, sq_point (40, -30));
  g_autoptr (SqOutline) down = sq_outline_symmetric_edit (outline, front, &upright, FALSE);

  assert_at (both, 3, 650, 270);
  assert_at (both, 5, -50, 270);
  assert_at (kept, 4, 300, 390);
  assert_at (down, 1, 0, -30);
  assert_at (down, 2, 600, -30);
}

static void
test_edit_edges (void)
{
  g_autoptr (SqOutline) outline = bay ();
  SqCorner corner = *corner_of (outline, 5);

  corner.shape = SQ_SHAPE_BOW;
  corner.bow_mm = 17;
  corner.radius_mm = 33;
  corner.kind = SQ_EDGE_ARM;
  corner.given = SQ_GIVEN_KIND;
  g_autoptr (SqOutline) bowed = sq_outline_with_corner (outline, &corner);
  g_autoptr (SqOutline) both = sq_outline_symmetric_edit (outline, bowed, &upright, FALSE);
  g_autoptr (SqOutline) kinds = sq_outline_symmetric_edit (outline, bowed, &upright, TRUE);
  g_assert_cmpfloat (corner_of (both, 2)->bow_mm, ==, 17);
  g_assert_cmpint (corner_of (both, 2)->kind, ==, SQ_EDGE_WALL);
  g_assert_cmpfloat (corner_of (both, 3)->radius_mm, ==, 33);
  g_assert_cmpuint (corner_of (both, 3)->given, ==, 0);
  g_assert_cmpint (corner_of (kinds, 2)->kind, ==, SQ_EDGE_ARM);
  g_assert_true (sq_outline_is_symmetric (both, &upright, 1e-9));

  corner.shape = SQ_SHAPE_CURVE;
  corner.control[0] = sq_point (-60, 200);
  corner.control[1] = sq_point (20, 90);
  g_autoptr (SqOutline) curved = sq_outline_with_corner (outline, &corner);
  g_autoptr (SqOutline) curves = sq_outline_symmetric_edit (outline, curved, &upright, FALSE);
  g_assert_cmpint (corner_of (curves, 2)->shape, ==, SQ_SHAPE_CURVE);
  g_assert_cmpfloat_with_epsilon (corner_of (curves, 2)->control[0].x, 580, 1e-9);
  g_assert_cmpfloat_with_epsilon (corner_of (curves, 2)->control[1].x, 660, 1e-9);
  g_assert_true (sq_outline_is_symmetric (curves, &upright, 1e-9));

  /* the front crosses the axis: the handle that was pulled decides on the other */
  corner = *corner_of (outline, 1);
  corner.shape = SQ_SHAPE_CURVE;
  corner.control[0] = sq_point (150, -40);
  corner.control[1] = sq_point (450, -40);
  g_autoptr (SqOutline) front = sq_outline_with_corner (outline, &corner);
  corner.control[1] = sq_point (470, -70);
  g_autoptr (SqOutline) pulled = sq_outline_with_corner (outline, &corner);
  g_autoptr (SqOutline) even = sq_outline_symmetric_edit (front, pulled, &upright, FALSE);
  g_assert_cmpfloat_with_epsilon (corner_of (even, 1)->control[0].x, 130, 1e-9);
  g_assert_cmpfloat_with_epsilon (corner_of (even, 1)->control[0].y, -70, 1e-9);
}

/* A seat like itself about a random axis; its corners in order from one by the axis. */
static SqOutline *
random_seat (const SqAxis *axis)
{
  guint half = (guint) g_test_rand_int_range (1, 6), n = 2 * half;
  SqCorner corners[12] = { 0 };
  gboolean has_peak = g_test_rand_bit ();

  for (guint i = 0; i < half; i++)
    {
      double turn = G_PI * (i + 0.5 + random_mm (-0.3, 0.3)) / half - G_PI_2;
      SqPoint at = sq_moved (axis->at, sq_right (axis->along), cos (turn) * random_mm (200, 500));
      corners[i].at = sq_moved (at, axis->along, sin (turn) * random_mm (200, 500));
      corners[n - 1 - i].at = sq_axis_mirrored (axis, corners[i].at);
      corners[i].radius_mm = corners[n - 1 - i].radius_mm = random_mm (0, 30);
    }
  if (has_peak || n < 3)
    {
      for (guint i = n++; i > half; i--)
        corners[i] = corners[i - 1];
      corners[half] = (SqCorner){ .at = sq_moved (axis->at, axis->along, 600) };
    }
  for (guint i = 0; i < n; i++)
    corners[i].id = i + 1;
  return seat_of (corners, n);
}

static SqAxis
random_axis (void)
{
  return (SqAxis){ { random_mm (-300, 300), random_mm (-300, 300) },
                   sq_turned (sq_point (1, 0), random_mm (0, 6)) };
}

static SqOutline *
edited (const SqOutline *outline, SqId id)
{
  SqCorner corner = *corner_of (outline, id);
  SqVector by = { random_mm (-40, 40), random_mm (-40, 40) };

  switch (g_test_rand_int_range (0, 4))
    {
    case 0:
      return sq_outline_with_corner_moved (outline, id, by);
    case 1:
      return sq_outline_with_edge_moved (outline, id, by);
    case 2:
      corner.shape = SQ_SHAPE_BOW;
      corner.bow_mm = by.x;
      corner.radius_mm = 41;
      return sq_outline_with_corner (outline, &corner);
    default:
      {
        g_autoptr (SqOutline) curved = sq_outline_with_edge_as_curve (outline, id);
        corner = *corner_of (curved, id);
        corner.control[0] = sq_add (corner.control[0], by);
        return sq_outline_with_corner (curved, &corner);
      }
    }
}

/* Whatever is done to a symmetric seat, step after step: it stays symmetric. */
static void
test_edit_law (void)
{
  for (guint run = 0; run < 500; run++)
    {
      SqAxis axis = random_axis ();
      g_autoptr (SqOutline) outline = random_seat (&axis);
      g_assert_true (sq_outline_is_symmetric (outline, &axis, 1e-9));
      for (guint step = 0; step < 8; step++)
        {
          guint n;
          sq_outline_ring (outline, 0, &n);
          g_autoptr (SqOutline) after = edited (outline, (SqId) g_test_rand_int_range (1, n + 1));
          SqOutline *both = sq_outline_symmetric_edit (outline, after, &axis, FALSE);
          g_assert_true (sq_outline_is_symmetric (both, &axis, 1e-8));
          sq_outline_unref (outline);
          outline = both;
        }
    }
}

/* Outlines of other corners are left as they are. */
static void
test_edit_other (void)
{
  g_autoptr (SqOutline) outline = bay ();
  g_autoptr (SqOutline) fewer = sq_outline_without_corner (outline, 4);
  g_autoptr (SqOutline) result = sq_outline_symmetric_edit (outline, fewer, &upright, FALSE);

  g_assert_true (result == fewer);
}

static void
test_corners_on_both_sides (void)
{
  g_autoptr (SqOutline) outline = bay ();
  SqId ids[2];
  g_autoptr (SqOutline) sides = sq_outline_with_corners_on_edges (outline, 2, sq_point (620, 150),
                                                                  &upright, ids);
  g_autoptr (SqOutline) front = sq_outline_with_corners_on_edges (outline, 1, sq_point (100, 0),
                                                                  &upright, ids);
  g_autoptr (SqOutline) other = sq_outline_with_corners_on_edges (outline, 1, sq_point (500, 5),
                                                                  &upright, ids);
  assert_at (other, ids[0], 500, 0);
  assert_at (other, ids[1], 100, 0);
  g_autoptr (SqOutline) middle = sq_outline_with_corners_on_edges (outline, 1, sq_point (300.3, 0),
                                                                   &upright, ids);
  g_assert_cmpuint (ids[1], ==, 0);
  assert_at (middle, ids[0], 300, 0);
  g_autoptr (SqOutline) without = sq_outline_without_twins (sides, 3, &upright);
  g_autoptr (SqOutline) no_peak = sq_outline_without_twins (outline, 4, &upright);
  guint n;

  g_assert_true (sq_outline_is_symmetric (sides, &upright, 1e-9));
  g_assert_true (sq_outline_is_symmetric (front, &upright, 1e-9));
  g_assert_true (sq_outline_is_symmetric (without, &upright, 1e-9));
  sq_outline_ring (sides, 0, &n);
  g_assert_cmpuint (n, ==, 7);
  sq_outline_ring (without, 0, &n);
  g_assert_cmpuint (n, ==, 5);
  sq_outline_ring (no_peak, 0, &n);
  g_assert_cmpuint (n, ==, 4);
}

/* --- one side for both --------------------------------------------------------------------- */

static void
assert_ids_unique (const SqOutline *outline)
{
  g_autofree guint *sizes = NULL;
  g_autofree SqCorner *corners = sq_outline_dup_corners (outline, &sizes);
  guint n = 0;

  for (guint r = 0; r < sq_outline_n_rings (outline); r++)
    n += sizes[r];
  for (guint i = 0; i < n; i++)
    for (guint k = 0; k < i; k++)
      g_assert_cmpuint (corners[i].id, !=, corners[k].id);
}

static double
area_mm2 (const SqOutline *outline)
{
  g_autoptr (SqPath) path = sq_outline_path (outline, 0, NULL);

  g_assert_nonnull (path);
  return sq_path_area_mm2 (path);
}

/* A seat taped a little askew: twins keep who they are. */
static void
test_made_from_twins (void)
{
  g_autoptr (SqOutline) outline = bay ();
  g_autoptr (SqOutline) one = sq_outline_with_corner_moved (outline, 3, sq_point (15, -20));
  g_autoptr (SqOutline) askew = sq_outline_with_corner_moved (one, 4, sq_point (-12, 9));
  g_autoptr (SqOutline) left = sq_outline_made_symmetric (askew, &upright, TRUE);
  g_autoptr (SqOutline) right = sq_outline_made_symmetric (askew, &upright, FALSE);
  guint n;
  const SqCorner *ring = sq_outline_ring (left, 0, &n);

  g_assert_cmpuint (n, ==, 5);
  for (guint i = 0; i < n; i++)
    g_assert_cmpuint (ring[i].id, ==, i + 1);
  assert_at (left, 3, 640, 300);
  assert_at (left, 4, 300, 429);
  assert_at (right, 3, 655, 280);
  assert_at (right, 5, -55, 280);
  g_assert_true (sq_outline_is_symmetric (left, &upright, 1e-9));
  g_assert_true (sq_outline_is_symmetric (right, &upright, 1e-9));
  g_assert_cmpint (corner_of (left, 2)->kind, ==, SQ_EDGE_WALL);
  g_assert_true (corner_of (left, 1)->front);
}

/* The left of an L, whose corners have no twins: edges that cross the axis square stay one. The
 * same with an inner edge that slants: it gets a corner on the axis. */
static void
test_made_from_one_side (void)
{
  const SqCorner corners[] = {
    { .id = 1, .at = { 0, 0 }, .front = TRUE },
    { .id = 2, .at = { 600, 0 } },
    { .id = 3, .at = { 600, 200 } },
    { .id = 4, .at = { 200, 200 }, .radius_mm = 5, .kind = SQ_EDGE_ARM, .given = SQ_GIVEN_KIND },
    { .id = 5, .at = { 200, 600 } },
    { .id = 6, .at = { 0, 600 } },
  };
  g_autoptr (SqOutline) outline = seat_of (corners, G_N_ELEMENTS (corners));
  g_autoptr (SqOutline) left = sq_outline_made_symmetric (outline, &upright, TRUE);
  g_autoptr (SqOutline) right = sq_outline_made_symmetric (outline, &upright, FALSE);
  g_autoptr (SqOutline) slant = sq_outline_with_corner_moved (outline, 3, sq_point (0, 40));
  g_autoptr (SqOutline) peak = sq_outline_made_symmetric (slant, &upright, TRUE);
  SqAxis outside = { { -10, 0 }, { 0, 1 } };
  guint n;

  g_assert_true (sq_outline_is_symmetric (left, &upright, 1e-9));
  g_assert_cmpfloat_with_epsilon (area_mm2 (left), 2 * (300 * 200 + 200 * 400), 1e-6);
  assert_at (left, 2, 600, 0);
  assert_ids_unique (left);
  sq_outline_ring (left, 0, &n);
  g_assert_cmpuint (n, ==, 8);
  sq_outline_ring (peak, 0, &n);
  g_assert_cmpuint (n, ==, 9);
  assert_at (peak, 7, 300, 210); /* a quarter of the way from corner 4 to corner 3 */
  g_assert_true (sq_outline_is_symmetric (peak, &upright, 1e-9));
  g_assert_true (sq_outline_is_symmetric (right, &upright, 1e-9));
  g_assert_cmpfloat_with_epsilon (area_mm2 (right), 600 * 200, 1e-6);
  g_assert_null (sq_outline_made_symmetric (outline, &outside, TRUE));
  g_assert_null (sq_outline_made_symmetric (outline, &outside, FALSE));
}

static void
test_made_with_holes (void)
{
  g_autoptr (SqOutline) outline = with_holes ();
  g_autoptr (SqOutline) without = sq_outline_without_ring (outline, 3);
  g_autoptr (SqOutline) left = sq_outline_made_symmetric (without, &upright, TRUE);
  g_autoptr (SqOutline) right = sq_outline_made_symmetric (without, &upright, FALSE);

  g_assert_cmpuint (sq_outline_n_rings (left), ==, 4);
  g_assert_cmpuint (sq_outline_n_rings (right), ==, 2);
  g_assert_true (sq_outline_is_symmetric (left, &upright, 1e-9));
  g_assert_true (sq_outline_is_good (left, NULL));
  g_assert_true (sq_outline_is_good (right, NULL));
  assert_ids_unique (left);
}

/* Any seat made symmetric is, what it kept stands where it stood, and doing it again changes
 * nothing. */
static void
test_made_law (void)
{
  guint made = 0;

  for (guint run = 0; run < 2000; run++)
    {
      guint n = (guint) g_test_rand_int_range (3, 12);
      SqCorner corners[12] = { 0 };
      SqAxis axis = { { random_mm (-50, 50), random_mm (-50, 50) },
                      sq_turned (sq_point (1, 0), random_mm (0, 6)) };
      for (guint i = 0; i < n; i++)
        {
          double turn = 2 * G_PI * (i + random_mm (-0.3, 0.3)) / n, out_mm = random_mm (250, 400);
          corners[i] = (SqCorner){ .id = i + 1,
                                   .at = { out_mm * cos (turn), out_mm * sin (turn) },
                                   .shape = g_test_rand_bit () ? SQ_SHAPE_BOW : SQ_SHAPE_STRAIGHT,
                                   .bow_mm = random_mm (-5, 10) };
        }
      g_autoptr (SqOutline) outline = seat_of (corners, n);
      g_autoptr (SqOutline) result = sq_outline_made_symmetric (outline, &axis, TRUE);
      if (result == NULL)
        continue;
      made++;
      assert_ids_unique (result);
      g_assert_true (sq_outline_is_symmetric (result, &axis, 1e-6));
      for (guint i = 0; i < n; i++)
        if (sq_axis_left_mm (&axis, corners[i].at) > 75) /* nearer ones may come onto the axis */
          g_assert_cmpfloat (sq_distance (corner_of (result, corners[i].id)->at, corners[i].at), ==,
                             0);
      g_autoptr (SqOutline) again = sq_outline_made_symmetric (result, &axis, TRUE);
      g_assert_nonnull (again);
      g_assert_cmpfloat_with_epsilon (area_mm2 (again), area_mm2 (result), 1e-3);
    }
  g_assert_cmpuint (made, >, 1000);
}

int
main (int argc, char *argv[])
{
  g_test_init (&argc, &argv, NULL);
  g_test_add_func ("/job/symmetry/axis", test_axis);
  g_test_add_func ("/job/symmetry/twins", test_twins);
  g_test_add_func ("/job/symmetry/no-twins", test_no_twins);
  g_test_add_func ("/job/symmetry/twin-holes", test_twin_holes);
  g_test_add_func ("/job/symmetry/is-symmetric", test_is_symmetric);
  g_test_add_func ("/job/symmetry/edit-corners", test_edit_corners);
  g_test_add_func ("/job/symmetry/edit-edges", test_edit_edges);
  g_test_add_func ("/job/symmetry/edit-law", test_edit_law);
  g_test_add_func ("/job/symmetry/edit-other", test_edit_other);
  g_test_add_func ("/job/symmetry/corners-on-both-sides", test_corners_on_both_sides);
  g_test_add_func ("/job/symmetry/made-from-twins", test_made_from_twins);
  g_test_add_func ("/job/symmetry/made-from-one-side", test_made_from_one_side);
  g_test_add_func ("/job/symmetry/made-with-holes", test_made_with_holes);
  g_test_add_func ("/job/symmetry/made-law", test_made_law);
  return g_test_run ();
}
