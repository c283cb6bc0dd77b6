/* SPDX-License-Identifier: GPL-3.0-or-later */
/* A table of two shapes against the exact answer of their trapezoids. */
#include "roll/lay-nofit.h"

#include "roll/made-task.h"
#include "roll/trapezoids.h"

#include <math.h>

#define PLACES 4000

typedef struct
{
  SqLayParts *parts;
  GArray *trapezoids;
  SqGrid corner;
} Shape;

static Shape
shape_of (const SqLayItem *item)
{
  const SqGridPose upright = { 0, FALSE };

  return (Shape){ sq_lay_parts_new (item, upright), sq_trapezoids_new (item->keep, item->n_keep),
                  item->box.min };
}

static gboolean
overlap (const Shape *a, const Shape *b, gint32 dx, gint32 dy)
{
  SqGrid at_a = { dx - a->corner.x, dy - a->corner.y }, at_b = { -b->corner.x, -b->corner.y };

  return sq_trapezoids_overlap (a->trapezoids, at_a, b->trapezoids, at_b);
}

/* A star of straight edges about the middle of a square of @size_mm. */
static SqPath *
random_star (GRand *chance, double size_mm)
{
  SqPoint corners[16];
  guint n = (guint) g_rand_int_range (chance, 3, 17);

  for (guint i = 0; i < n; i++)
    {
      double angle = 2 * G_PI * (i + g_rand_double_range (chance, 0.1, 0.9)) / n;
      double far = size_mm / 2 * g_rand_double_range (chance, 0.25, 1);
      corners[i] = sq_point (far * cos (angle), far * sin (angle));
    }
  return sq_path_new_polygon (corners, n);
}

/* The distance from (dx, dy) to where nothing overlaps, looked for in 32 directions; never too
 * little. */
static double
distance_out (const Shape *a, const Shape *b, gint32 dx, gint32 dy, double step)
{
  for (double away = step;; away += step)
    for (guint i = 0; i < 32; i++)
      if (!overlap (a, b, dx + (gint32) (away * cos (i * G_PI / 16)),
                    dy + (gint32) (away * sin (i * G_PI / 16))))
        return away;
}

static void
check_pair (const Shape *a, const Shape *b, gboolean is_straight, GRand *chance)
{
  SqLayNofit *nofit = sq_lay_nofit_new (a->parts, b->parts);
  SqGridBox box = sq_lay_nofit_box (nofit);
  double cell = sqrt (((double) box.max.x - box.min.x) * ((double) box.max.y - box.min.y) / 2048);

  for (guint i = 0; i < PLACES; i++)
    {
      gint32 dx = g_rand_int_range (chance, box.min.x - 5, box.max.x + 5);
      gint32 dy = g_rand_int_range (chance, box.min.y - 5, box.max.y + 5);
      float depth = sq_lay_nofit_depth (nofit, dx, dy);
      gboolean overlaps = overlap (a, b, dx, dy);
      if (depth == 0)
        g_assert_false (overlaps);
      else if (is_straight)
        g_assert_true (overlaps);
      if (overlaps && i % 100 == 0)
        {
          double out = distance_out (a, b, dx, dy, cell / 2);
          g_assert_cmpfloat (depth, <, out + 2 * cell);
          g_assert_cmpfloat (depth, >, out / 2 - 3 * cell);
        }
    }
  sq_lay_nofit_free (nofit);
}

static void
clear_shape (Shape *shape)
{
  sq_lay_parts_free (shape->parts);
  g_array_unref (shape->trapezoids);
}

static void
test_random (void)
{
  GRand *chance = g_rand_new_with_seed (11);

  for (guint round = 0; round < 30; round++)
    {
      gboolean is_straight = round % 3 != 0;
      g_autoptr (SqLayTask) task = made_task (2000, 0);
      const SqNode drop[] = { { { 0, 0 }, 0.3, 0 },
                              { { 500, 100 }, -0.2, 0 },
                              { { 200, 400 }, 0, 0 } };
      add_path (task, random_star (chance, 700), (SqLayItemSpec){ .turns = 1 });
      add_path (task, is_straight ? random_star (chance, 300) : sq_path_new (drop, 3, TRUE),
                (SqLayItemSpec){ .turns = 1 });
      Shape a = shape_of (sq_lay_task_item (task, 0)), b = shape_of (sq_lay_task_item (task, 1));
      check_pair (&a, &b, is_straight, chance);
      check_pair (&b, &a, is_straight, chance);
      clear_shape (&a);
      clear_shape (&b);
    }
  g_rand_free (chance);
}

/* Two rectangles: to the micrometre, and into a slot that is just as wide. */
static void
test_touching (void)
{
  const SqPoint slot[] = { { 0, 0 },     { 900, 0 },   { 900, 300 }, { 500, 300 },
                           { 500, 100 }, { 400, 100 }, { 400, 300 }, { 0, 300 } };
  g_autoptr (SqLayTask) task = made_task (2000, 0);
  add_path (task, sq_path_new_rectangle (0, 0, 100, 200), (SqLayItemSpec){ .turns = 1 });
  add_path (task, sq_path_new_polygon (slot, G_N_ELEMENTS (slot)), (SqLayItemSpec){ .turns = 1 });
  Shape tooth = shape_of (sq_lay_task_item (task, 0)), comb = shape_of (sq_lay_task_item (task, 1));
  SqLayNofit *nofit = sq_lay_nofit_new (tooth.parts, comb.parts);

  g_assert_cmpfloat (sq_lay_nofit_depth (nofit, 400000, 100000), ==, 0);
  g_assert_cmpfloat (sq_lay_nofit_depth (nofit, 400001, 100000), >, 0);
  g_assert_cmpfloat (sq_lay_nofit_depth (nofit, 399999, 150000), >, 0);
  g_assert_cmpfloat (sq_lay_nofit_depth (nofit, 400000, 99999), >, 0);
  g_assert_cmpfloat (sq_lay_nofit_depth (nofit, -100000, 50000), ==, 0);
  g_assert_cmpfloat (sq_lay_nofit_depth (nofit, -99999, 50000), >, 0);
  g_assert_cmpfloat (sq_lay_nofit_depth (nofit, 0, 300000), ==, 0);
  sq_lay_nofit_free (nofit);
  clear_shape (&tooth);
  clear_shape (&comb);
}

int
main (int argc, char *argv[])
{
  g_test_init (&argc, &argv, NULL);
  g_test_add_func ("/roll/lay-nofit/random", test_random);
  g_test_add_func ("/roll/lay-nofit/touching", test_touching);
  return g_test_run ();
}
