/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "job/outline.h"

#include "base/units.h"

/* A seat 400 × 300 with a bow of 20 on its right edge, a curve at the back and a note. */
static SqOutline *
seat (void)
{
  g_autoptr (GRefString) note = g_ref_string_new ("by the post");
  SqCorner corners[] = {
    { .id = 1, .at = { 0, 0 }, .front = TRUE },
    { .id = 2,
      .at = { 400, 0 },
      .shape = SQ_SHAPE_BOW,
      .bow_mm = 20,
      .kind = SQ_EDGE_WALL,
      .given = SQ_GIVEN_KIND },
    { .id = 3,
      .at = { 400, 300 },
      .radius_mm = 30,
      .shape = SQ_SHAPE_CURVE,
      .control = { { 300, 350 }, { 100, 340 } },
      .given = SQ_GIVEN_RADIUS },
    { .id = 4, .at = { 0, 300 }, .clearance_mm = 5, .given = SQ_GIVEN_CLEARANCE },
  };
  const guint sizes[] = { 4 };

  corners[1].note = note;
  corners[2].corner_note = note;
  return sq_outline_new (corners, sizes, 1);
}

/* A square of 1000 with a square hole of 100 at (300, 300), clockwise. */
static SqOutline *
square_with_hole (void)
{
  SqCorner corners[] = {
    { .id = 1, .at = { 0, 0 } },       { .id = 2, .at = { 1000, 0 } },
    { .id = 3, .at = { 1000, 1000 } }, { .id = 4, .at = { 0, 1000 } },
    { .id = 5, .at = { 300, 300 } },   { .id = 6, .at = { 300, 400 } },
    { .id = 7, .at = { 400, 400 } },   { .id = 8, .at = { 400, 300 } },
  };
  const guint sizes[] = { 4, 4 };

  return sq_outline_new (corners, sizes, 2);
}

static void
assert_corner (const SqOutline *outline, SqId id, double x, double y)
{
  const SqCorner *corner = sq_outline_corner (outline, id, NULL, NULL);

  g_assert_nonnull (corner);
  g_assert_cmpfloat_with_epsilon (corner->at.x, x, 1e-9);
  g_assert_cmpfloat_with_epsilon (corner->at.y, y, 1e-9);
}

static void
assert_same_corner (const SqCorner *a, const SqCorner *b)
{
  g_assert_cmpuint (a->id, ==, b->id);
  g_assert_cmpfloat (a->at.x, ==, b->at.x);
  g_assert_cmpfloat (a->at.y, ==, b->at.y);
  g_assert_cmpfloat (a->radius_mm, ==, b->radius_mm);
  g_assert_cmpint (a->shape, ==, b->shape);
  g_assert_cmpfloat (a->bow_mm, ==, b->bow_mm);
  for (guint k = 0; k < 2; k++)
    {
      g_assert_cmpfloat (a->control[k].x, ==, b->control[k].x);
      g_assert_cmpfloat (a->control[k].y, ==, b->control[k].y);
    }
  g_assert_cmpfloat (a->clearance_mm, ==, b->clearance_mm);
  g_assert_cmpint (a->kind, ==, b->kind);
  g_assert_cmpint (a->front, ==, b->front);
  g_assert_cmpuint (a->given, ==, b->given);
  g_assert_true (a->note == b->note && a->corner_note == b->corner_note);
  g_assert_true (a->unknown == b->unknown);
}

static void
assert_same_outline (const SqOutline *a, const SqOutline *b)
{
  g_assert_cmpuint (sq_outline_n_rings (a), ==, sq_outline_n_rings (b));
  for (guint r = 0; r < sq_outline_n_rings (a); r++)
    {
      guint n, m;
      const SqCorner *one = sq_outline_ring (a, r, &n), *other = sq_outline_ring (b, r, &m);

      g_assert_cmpuint (n, ==, m);
      for (guint i = 0; i < n; i++)
        assert_same_corner (&one[i], &other[i]);
    }
}

static double
area_mm2 (const SqOutline *outline, guint ring)
{
  g_autoptr (SqPath) path = sq_outline_path (outline, ring, NULL);

  g_assert_nonnull (path);
  return sq_path_area_mm2 (path);
}

static void
test_look_up (void)
{
  g_autoptr (SqOutline) outline = square_with_hole ();
  guint ring, index;

  g_assert_nonnull (sq_outline_corner (outline, 7, &ring, &index));
  g_assert_cmpuint (ring, ==, 1);
  g_assert_cmpuint (index, ==, 2);
  g_assert_null (sq_outline_corner (outline, 9, &ring, &index));
  g_assert_cmpuint (sq_outline_new_corner_id (outline), ==, 9);
}

static void
test_empty (void)
{
  const guint sizes[] = { 0 };
  g_autoptr (SqOutline) nothing = sq_outline_new (NULL, NULL, 0);
  g_autoptr (SqOutline) ring = sq_outline_new (NULL, sizes, 1);
  g_autoptr (SqOutline) turned = sq_outline_turned_right (ring);
  g_autoptr (SqOutline) mirrored = sq_outline_mirrored (ring);

  g_assert_cmpuint (sq_outline_n_rings (nothing), ==, 0);
  g_assert_cmpuint (sq_outline_new_corner_id (nothing), ==, 1);
  g_assert_true (turned == ring);
  g_assert_cmpuint (sq_outline_n_rings (mirrored), ==, 1);
  g_assert_null (sq_outline_path (ring, 0, NULL));
}

/* Bulge = 2 · rise / chord: the tangent of a quarter of the sweep (half the chord and the rise are
 * the legs of a right triangle with that angle). */
static void
test_path (void)
{
  g_autoptr (SqOutline) outline = seat ();
  g_autoptr (SqPath) path = sq_outline_path (outline, 0, NULL);
  const SqNode *nodes = sq_path_nodes (path);
  guint n = sq_path_n_nodes (path);

  g_assert_cmpuint (n, >, 4);
  g_assert_cmpfloat (nodes[0].bulge, ==, 0);
  g_assert_cmpfloat (nodes[1].bulge, ==, 2 * 20.0 / 300);
  for (guint i = 2; i + 1 < n; i++)
    g_assert_cmpuint (nodes[i].tag, ==, 2);
  g_assert_cmpuint (nodes[n - 1].tag, ==, 3);
  g_assert_cmpfloat (nodes[n - 1].at.y, ==, 300);
  /* The bow swells the seat to the right by its rise. */
  g_assert_cmpfloat_with_epsilon (sq_path_box (path).max.x, 420, 1e-9);
}

static void
test_path_that_cannot_be (void)
{
  SqCorner corners[] = {
    { .id = 1, .at = { 0, 0 } },
    { .id = 2, .at = { 5, 5 }, .shape = SQ_SHAPE_CURVE, .control = { { 5, 5 }, { 5, 5 } } },
    { .id = 3, .at = { 5, 5 } },
  };
  const guint sizes[] = { 3 };
  g_autoptr (SqOutline) outline = sq_outline_new (corners, sizes, 1);
  guint bad_edge = 99;

  g_assert_null (sq_outline_path (outline, 0, &bad_edge));
  g_assert_cmpuint (bad_edge, ==, 1);
}

static void
test_move_corner (void)
{
  g_autoptr (SqOutline) outline = seat ();
  g_autoptr (SqOutline) moved = sq_outline_with_corner_moved (outline, 4, sq_point (-10, 5));
  g_autoptr (SqOutline) edge = sq_outline_with_edge_moved (outline, 3, sq_point (0, 7));
  const SqCorner *third = sq_outline_corner (moved, 3, NULL, NULL);

  assert_corner (moved, 4, -10, 305);
  assert_corner (moved, 3, 400, 300);
  g_assert_cmpfloat (third->control[1].x, ==, 90);
  g_assert_cmpfloat (third->control[1].y, ==, 345);
  g_assert_cmpfloat (third->control[0].x, ==, 300);
  third = sq_outline_corner (edge, 3, NULL, NULL);
  assert_corner (edge, 3, 400, 307);
  assert_corner (edge, 4, 0, 307);
  assert_corner (edge, 1, 0, 0);
  g_assert_cmpfloat (third->control[0].y, ==, 357);
  g_assert_cmpfloat (third->control[1].y, ==, 347);
  assert_corner (outline, 4, 0, 300);
}

static void
test_insert_and_remove (void)
{
  g_autoptr (SqOutline) outline = square_with_hole ();
  SqCorner corner = { .id = 9, .at = { 1050, 500 }, .radius_mm = 3 };
  g_autoptr (SqOutline) more = sq_outline_with_corner_after (outline, 2, &corner);
  g_autoptr (SqOutline) last = sq_outline_with_corner_after (outline, 8, &corner);
  g_autoptr (SqOutline) back = sq_outline_without_corner (more, 9);
  g_autoptr (SqOutline) no_hole = sq_outline_without_ring (more, 1);
  g_autoptr (SqOutline) only_hole = sq_outline_without_ring (more, 0);
  guint ring, index, n;

  g_assert_cmpfloat (sq_outline_corner (more, 9, &ring, &index)->radius_mm, ==, 3);
  g_assert_cmpuint (ring, ==, 0);
  g_assert_cmpuint (index, ==, 2);
  sq_outline_corner (more, 5, &ring, &index);
  g_assert_true (ring == 1 && index == 0);
  sq_outline_corner (last, 9, &ring, &index);
  g_assert_true (ring == 1 && index == 4);
  assert_same_outline (back, outline);
  g_assert_cmpuint (sq_outline_n_rings (no_hole), ==, 1);
  sq_outline_ring (no_hole, 0, &n);
  g_assert_cmpuint (n, ==, 5);
  g_assert_cmpuint (sq_outline_ring (only_hole, 0, &n)->id, ==, 5);
  g_assert_cmpuint (n, ==, 4);
}

/* Where a corner goes, the edge before it runs on to the next: as front, if the lost one was. */
static void
test_remove_front (void)
{
  g_autoptr (SqOutline) outline = seat ();
  g_autoptr (SqOutline) fewer = sq_outline_without_corner (outline, 1);
  g_autoptr (SqOutline) without_end = sq_outline_without_corner (outline, 4);
  const SqCorner *curve = sq_outline_corner (without_end, 3, NULL, NULL);

  g_assert_true (sq_outline_corner (fewer, 4, NULL, NULL)->front);
  g_assert_cmpfloat (curve->control[1].x, ==, 100);
  g_assert_cmpfloat (curve->control[1].y, ==, 40);
  g_assert_cmpfloat (curve->control[0].y, ==, 350);
}

static void
test_change_corner (void)
{
  g_autoptr (SqOutline) outline = seat ();
  SqCorner corner = *sq_outline_corner (outline, 2, NULL, NULL);
  g_autoptr (SqOutline) changed = NULL;

  corner.bow_mm = -20;
  changed = sq_outline_with_corner (outline, &corner);
  g_assert_cmpfloat (sq_outline_corner (changed, 2, NULL, NULL)->bow_mm, ==, -20);
  g_assert_true (sq_outline_corner (changed, 2, NULL, NULL)->note == corner.note);
  g_assert_cmpfloat (area_mm2 (changed, 0), <, area_mm2 (outline, 0));
}

static void
test_moved (void)
{
  g_autoptr (SqOutline) outline = seat ();
  g_autoptr (SqOutline) turned = sq_outline_moved (outline, M_PI / 2, sq_point (1, 2));

  assert_corner (turned, 2, 1, 402);
  assert_corner (turned, 3, -299, 402);
  g_assert_cmpfloat_with_epsilon (area_mm2 (turned, 0), area_mm2 (outline, 0), 1e-3);
}

static void
test_mirrored (void)
{
  g_autoptr (SqOutline) outline = seat ();
  g_autoptr (SqOutline) mirrored = sq_outline_mirrored (outline);
  g_autoptr (SqOutline) back = sq_outline_mirrored (mirrored);
  guint n, index;
  const SqCorner *ring = sq_outline_ring (mirrored, 0, &n);
  const SqCorner *third;

  /* The ring still begins at corner 1 and now goes on to 4; the edge 1 – 2 starts at 2. */
  g_assert_cmpuint (ring[0].id, ==, 1);
  g_assert_cmpuint (ring[1].id, ==, 4);
  g_assert_false (ring[0].front);
  g_assert_true (sq_outline_corner (mirrored, 2, NULL, &index)->front);
  g_assert_cmpuint (index, ==, 3);
  third = sq_outline_corner (mirrored, 3, NULL, NULL);
  g_assert_cmpfloat (third->bow_mm, ==, 20);
  g_assert_cmpint (third->kind, ==, SQ_EDGE_WALL);
  g_assert_cmpuint (third->given, ==, SQ_GIVEN_KIND | SQ_GIVEN_RADIUS);
  g_assert_cmpfloat (third->radius_mm, ==, 30);
  g_assert_nonnull (third->note);
  g_assert_nonnull (third->corner_note);
  g_assert_cmpfloat (ring[1].control[0].x, ==, -100);
  g_assert_cmpfloat (ring[1].control[1].x, ==, -300);
  g_assert_cmpfloat (ring[0].clearance_mm, ==, 5);
  /* No minus zero: files don't keep it. */
  g_assert_false (signbit (ring[0].at.x));
  g_assert_cmpfloat_with_epsilon (area_mm2 (mirrored, 0), area_mm2 (outline, 0), 0.1);
  assert_same_outline (back, outline);
}

static void
test_turned_right_already (void)
{
  g_autoptr (SqOutline) outline = seat ();
  g_autoptr (SqOutline) same = sq_outline_turned_right (outline);

  g_assert_true (same == outline);
}

/* A ring as a file may have it: the other way round, edges at their other ends. */
static SqOutline *
other_way_round (const SqOutline *outline)
{
  g_autoptr (SqOutline) mirrored = sq_outline_mirrored (outline);
  g_autoptr (GArray) corners = g_array_new (FALSE, FALSE, sizeof (SqCorner));
  g_autofree guint *sizes = g_new (guint, sq_outline_n_rings (outline));

  for (guint r = 0; r < sq_outline_n_rings (outline); r++)
    {
      const SqCorner *ring = sq_outline_ring (mirrored, r, &sizes[r]);

      for (guint i = 0; i < sizes[r]; i++)
        {
          SqCorner corner = ring[i];

          corner.at.x = -corner.at.x;
          corner.control[0].x = -corner.control[0].x;
          corner.control[1].x = -corner.control[1].x;
          g_array_append_val (corners, corner);
        }
    }
  return sq_outline_new ((const SqCorner *) corners->data, sizes, sq_outline_n_rings (outline));
}

static void
test_turned_right (void)
{
  g_autoptr (SqOutline) outline = seat ();
  g_autoptr (SqOutline) clockwise = other_way_round (outline);
  g_autoptr (SqOutline) turned = sq_outline_turned_right (clockwise);

  g_assert_cmpfloat (area_mm2 (clockwise, 0), <, 0);
  assert_same_outline (turned, outline);
}

static void
test_turned_right_holes (void)
{
  g_autoptr (SqOutline) outline = square_with_hole ();
  g_autoptr (SqOutline) wrong = other_way_round (outline);
  g_autoptr (SqOutline) turned = sq_outline_turned_right (wrong);
  g_autoptr (SqOutline) same = sq_outline_turned_right (outline);

  g_assert_true (same == outline);
  g_assert_cmpfloat (area_mm2 (wrong, 1), >, 0);
  assert_same_outline (turned, outline);
}

/* A ring of bows alone: corners on a circle of radius 100, each edge an arc of it. */
static SqOutline *
circle (guint n, gboolean clockwise)
{
  g_autofree SqCorner *corners = g_new0 (SqCorner, n);

  for (guint i = 0; i < n; i++)
    {
      double turn = 2 * M_PI * i / n * (clockwise ? -1 : 1);

      corners[i].id = i + 1;
      corners[i].at = sq_turned (sq_point (100, 0), turn);
      corners[i].shape = SQ_SHAPE_BOW;
      corners[i].bow_mm = 100 * (1 - cos (M_PI / n));
    }
  return sq_outline_new (corners, &n, 1);
}

/* Bows are outward whichever way the ring runs, so a circle written clockwise is a circle. */
static void
test_turned_right_circles (void)
{
  for (guint n = 2; n <= 12; n++)
    for (guint clockwise = 0; clockwise <= 1; clockwise++)
      {
        g_autoptr (SqOutline) round = circle (n, clockwise == 1);
        g_autoptr (SqOutline) turned = sq_outline_turned_right (round);

        g_assert_cmpfloat_with_epsilon (area_mm2 (turned, 0), M_PI * 1e4, 1e-6);
        g_assert_cmpint (turned != round, ==, clockwise == 1 && n > 2);
      }
}

/* A disc of 100 with a mouth of a quarter cut to its middle: its chords alone run clockwise, but
 * the outline is right as it stands. */
static void
test_turned_right_mouth (void)
{
  double c = 100 * M_SQRT1_2;
  SqCorner corners[] = {
    { .id = 1, .at = { c, c }, .shape = SQ_SHAPE_BOW, .bow_mm = 100 + c },
    { .id = 2, .at = { c, -c } },
    { .id = 3, .at = { 0, 0 } },
  };
  const guint sizes[] = { 3 };
  g_autoptr (SqOutline) mouth = sq_outline_new (corners, sizes, 1);
  g_autoptr (SqOutline) turned = sq_outline_turned_right (mouth);

  g_assert_true (turned == mouth);
  g_assert_cmpfloat_with_epsilon (area_mm2 (mouth, 0), 0.75 * M_PI * 1e4, 1e-6);
}

/* Curves count: corners on one line, and a hump to one side or the other. */
static void
test_turned_right_curves (void)
{
  for (int side = -1; side <= 1; side += 2)
    {
      SqCorner corners[] = {
        { .id = 1, .at = { 0, 0 } },
        { .id = 2,
          .at = { 100, 0 },
          .shape = SQ_SHAPE_CURVE,
          .control = { { 100, side * 60 }, { 0, side * 60 } } },
      };
      const guint sizes[] = { 2 };
      g_autoptr (SqOutline) outline = sq_outline_new (corners, sizes, 1);
      g_autoptr (SqOutline) turned = sq_outline_turned_right (outline);

      g_assert_cmpint (turned == outline, ==, side == 1);
      /* The area under this cubic is 0.6 of the box of its four points: its y is 180 t (1 - t),
       * its dx 600 t (1 - t) dt, and the integral of t² (1 - t)² is 1/30 (own derivation). */
      g_assert_cmpfloat_with_epsilon (area_mm2 (turned, 0), 0.6 * 100 * 60, 1);
    }
}

/* Whatever ring: turning twice is turning once, and what is turned never turns back. */
static void
test_turned_right_settles (void)
{
  for (guint round = 0; round < 2000; round++)
    {
      SqCorner corners[8] = { 0 };
      guint n = (guint) g_test_rand_int_range (2, 9);
      double size = pow (10, g_test_rand_double_range (-6, 5));
      g_autoptr (SqOutline) outline = NULL;
      g_autoptr (SqOutline) once = NULL;
      g_autoptr (SqOutline) twice = NULL;

      for (guint i = 0; i < n; i++)
        {
          corners[i].id = i + 1;
          corners[i].at = sq_point (g_test_rand_int_range (-3, 4) * size,
                                    g_test_rand_int_range (-1, 2) * size / 3);
          corners[i].shape = g_test_rand_int_range (0, 3) ? SQ_SHAPE_STRAIGHT : SQ_SHAPE_BOW;
          corners[i].bow_mm = g_test_rand_double_range (-size, size);
        }
      outline = sq_outline_new (corners, &n, 1);
      once = sq_outline_turned_right (outline);
      twice = sq_outline_turned_right (once);
      g_assert_true (twice == once);
    }
}

int
main (int argc, char **argv)
{
  g_test_init (&argc, &argv, NULL);
  g_test_add_func ("/job/outline/look-up", test_look_up);
  g_test_add_func ("/job/outline/empty", test_empty);
  g_test_add_func ("/job/outline/path", test_path);
  g_test_add_func ("/job/outline/path/cannot-be", test_path_that_cannot_be);
  g_test_add_func ("/job/outline/move-corner", test_move_corner);
  g_test_add_func ("/job/outline/insert-and-remove", test_insert_and_remove);
  g_test_add_func ("/job/outline/remove-front", test_remove_front);
  g_test_add_func ("/job/outline/change-corner", test_change_corner);
  g_test_add_func ("/job/outline/moved", test_moved);
  g_test_add_func ("/job/outline/mirrored", test_mirrored);
  g_test_add_func ("/job/outline/turned-right/already", test_turned_right_already);
  g_test_add_func ("/job/outline/turned-right/clockwise", test_turned_right);
  g_test_add_func ("/job/outline/turned-right/holes", test_turned_right_holes);
  g_test_add_func ("/job/outline/turned-right/circles", test_turned_right_circles);
  g_test_add_func ("/job/outline/turned-right/mouth", test_turned_right_mouth);
  g_test_add_func ("/job/outline/turned-right/curves", test_turned_right_curves);
  g_test_add_func ("/job/outline/turned-right/settles", test_turned_right_settles);
  return g_test_run ();
}
