/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "roll/lay-shape.h"

#include "roll/made-task.h"

/* The shape of the only piece of a task, and what else must live as long. */
static SqLayShape *
shape_of (SqPath *path, guint quarters)
{
  g_autoptr (SqLayTask) task = made_task (1000, 0);
  add_path (task, path, (SqLayItemSpec){ .turns = 15 });
  return sq_lay_shape_new (sq_lay_task_item (task, 0),
                           (SqGridPose){ (gint32) quarters * SQ_GRID_QUARTER, FALSE });
}

static void
assert_bar (const SqLayShape *a, const SqLayShape *b, gint64 up, gint64 from, gint64 to)
{
  gint64 got_from, got_to;

  g_assert_true (sq_lay_shape_bar (a, b, up, &got_from, &got_to));
  g_assert_cmpint (got_from, ==, from);
  g_assert_cmpint (got_to, ==, to);
}

static void
test_box (void)
{
  SqLayShape *lying = shape_of (sq_path_new_rectangle (20, 30, 320, 130), 0);
  SqLayShape *standing = shape_of (sq_path_new_rectangle (20, 30, 320, 130), 1);
  gint64 from, to;

  g_assert_cmpmem (&lying->core, sizeof lying->core, &lying->keep, sizeof lying->keep);
  g_assert_cmpint (lying->length, ==, 300000);
  g_assert_cmpint (standing->length, ==, 100000);
  g_assert_cmpint (standing->width, ==, 300000);
  g_assert_cmpint (standing->at.x, ==, -130000);
  g_assert_cmpint (standing->at.y, ==, 20000);
  assert_bar (standing, lying, 0, -100000, 300000);
  assert_bar (standing, lying, 99999, -100000, 300000);
  g_assert_false (sq_lay_shape_bar (standing, lying, 100000, &from, &to));
  g_assert_false (sq_lay_shape_bar (standing, lying, -300000, &from, &to));
  sq_lay_shape_free (lying);
  sq_lay_shape_free (standing);
}

/* Slopes touch along their length, exactly: at every height there are 40 mm from the one's left to
 * the other's right, and 60 mm on the other side. */
static void
test_slopes (void)
{
  const SqPoint points[] = { { 0, 0 }, { 100, 0 }, { 40, 90 } };
  SqLayShape *up = shape_of (sq_path_new_polygon (points, 3), 0);
  SqLayShape *down = shape_of (sq_path_new_polygon (points, 3), 2);

  g_assert_cmpint (up->core.max.x, <, 100000);
  g_assert_cmpint (up->core.max.x, >, up->core.min.x);
  assert_bar (down, up, 0, -60000, 40000);
  sq_lay_shape_free (up);
  sq_lay_shape_free (down);
}

/* Into the pocket at its side another goes; one that opens upwards counts as full. */
static void
test_pocket (void)
{
  const SqPoint points[] = { { 0, 0 }, { 100, 0 }, { 100, 20 }, { 20, 20 }, { 20, 60 }, { 0, 60 } };
  SqLayShape *ear = shape_of (sq_path_new_polygon (points, 6), 0);
  SqLayShape *box = shape_of (sq_path_new_rectangle (0, 0, 30, 30), 0);

  assert_bar (box, ear, 0, -30000, 100000);
  assert_bar (box, ear, 20000, -30000, 20000);
  assert_bar (box, ear, 19999, -30000, 100000);
  sq_lay_shape_free (ear);
  sq_lay_shape_free (box);
}

/* An arc's many chords become few sides that hold them all and lie near. */
static void
test_round (void)
{
  SqLayShape *circle = shape_of (sq_path_new_circle (sq_point (7, 9), 250), 0);

  g_assert_cmpint (circle->length, ==, 500000);
  g_assert_cmpint (circle->width, ==, 500000);
  g_assert_cmpuint (circle->n_right, <, 100);
  g_assert_cmpint (circle->keep.max.x, >=, 500000);
  g_assert_cmpint (circle->keep.max.x, <=, 500300);
  for (gint64 up = -499000; up < 500000; up += 1000)
    {
      gint64 from, to;
      /* Chords are up to 4 µm inside the arcs, sides up to 300 µm outside those. */
      double least = sqrt (fmax (499991.0 * 499991.0 - (double) (up * up), 0));
      double most = sqrt (500600.0 * 500600.0 - (double) (up * up));
      if (!sq_lay_shape_bar (circle, circle, up, &from, &to))
        g_assert_not_reached ();
      g_assert_cmpfloat ((double) to, >=, least);
      g_assert_cmpfloat ((double) to, <=, most);
      g_assert_cmpint (from, ==, -to);
    }
  sq_lay_shape_free (circle);
}

int
main (int argc, char *argv[])
{
  g_test_init (&argc, &argv, NULL);
  g_test_add_func ("/roll/lay-shape/box", test_box);
  g_test_add_func ("/roll/lay-shape/slopes", test_slopes);
  g_test_add_func ("/roll/lay-shape/pocket", test_pocket);
  g_test_add_func ("/roll/lay-shape/round", test_round);
  return g_test_run ();
}
