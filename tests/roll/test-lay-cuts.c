/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "roll/lay-cuts.h"

#include "roll/made-task.h"

static GArray *
rects_of (const SqLayRect *rects, guint n)
{
  GArray *array = g_array_new (FALSE, FALSE, sizeof (SqLayRect));
  g_array_append_vals (array, rects, n);
  return array;
}

/* ---- by trying everything ------------------------------------------------------------------ */

/* Whether single cuts, anywhere and in any order, part those of @rects whose bit is in @which. */
static gboolean
brute_parts (const SqLayRect *rects, guint n, guint which)
{
  if ((which & (which - 1)) == 0)
    return TRUE;
  for (gint64 at = 0; at <= 20; at++)
    for (guint along = 0; along < 2; along++)
      {
        guint before = 0, behind = 0;
        for (guint i = 0; i < n; i++)
          if (which & (1u << i))
            {
              before |= (along ? rects[i].y1 : rects[i].x1) <= at ? 1u << i : 0;
              behind |= (along ? rects[i].y0 : rects[i].x0) >= at ? 1u << i : 0;
            }
        if (before != 0 && behind != 0 && (before | behind) == which
            && brute_parts (rects, n, before) && brute_parts (rects, n, behind))
          return TRUE;
      }
  return FALSE;
}

static double
area (const SqLayRect *rect)
{
  return (double) (rect->x1 - rect->x0) * (double) (rect->y1 - rect->y0);
}

/* Sets of up to seven, those that overlap included: the same answer; where they part, they and what
 * falls off fill the cloth just once. */
static void
test_brute_force (void)
{
  const SqLayRect within = { 0, 0, 20, 20 };
  GRand *chance = g_rand_new_with_seed (4);
  guint n_parted = 0;

  for (guint round = 0; round < 20000; round++)
    {
      SqLayRect rects[7];
      guint n = (guint) g_rand_int_range (chance, 1, 8);
      for (guint i = 0; i < n; i++)
        {
          gint64 x = g_rand_int_range (chance, 0, 19), y = g_rand_int_range (chance, 0, 19);
          rects[i] = (SqLayRect){ x, y, x + g_rand_int_range (chance, 1, 9),
                                  y + g_rand_int_range (chance, 1, 9) };
          rects[i].x1 = MIN (rects[i].x1, 20);
          rects[i].y1 = MIN (rects[i].y1, 20);
        }
      g_autoptr (GArray) array = rects_of (rects, n);
      g_autoptr (GArray) rest = g_array_new (FALSE, FALSE, sizeof (SqLayRect));
      gboolean parts = sq_lay_rects_part (array, &within, NULL, rest);
      double all = 0;
      g_assert_cmpint (parts, ==, brute_parts (rects, n, (1u << n) - 1));
      n_parted += parts;
      for (guint i = 0; i < n && parts; i++)
        all += area (&rects[i]);
      for (guint i = 0; i < rest->len && parts; i++)
        all += area (&g_array_index (rest, SqLayRect, i));
      if (parts)
        g_assert_cmpfloat (all, ==, 400);
    }
  g_assert_cmpuint (n_parted, >, 4000);
  g_assert_cmpuint (n_parted, <, 16000);
  g_rand_free (chance);
}

/* ---- how many ------------------------------------------------------------------------------ */

static void
test_count (void)
{
  /* Two lengths are cut off; the first is cut in two, and one of those is trimmed. */
  const SqLayRect rects[] = { { 0, 0, 900000, 600000 },
                              { 0, 600000, 800000, 1400000 },
                              { 900000, 0, 1500000, 1400000 } };
  const SqLayRect within = { 0, 0, 5000000, 1400000 };
  g_autoptr (GArray) array = rects_of (rects, G_N_ELEMENTS (rects));
  SqLayCuts cuts = { 0, 0 };

  g_assert_true (sq_lay_rects_part (array, &within, &cuts, NULL));
  g_assert_cmpuint (cuts.n, ==, 4);
  g_assert_cmpfloat_with_epsilon (cuts.mm, 1400 + 1400 + 900 + 800, 1e-6);
}

/* One that fills the cloth takes none. */
static void
test_no_cuts (void)
{
  const SqLayRect within = { 0, 0, 100, 100 };
  g_autoptr (GArray) array = rects_of (&within, 1);
  g_autoptr (GArray) none = rects_of (NULL, 0);
  SqLayCuts cuts = { 0, 0 };

  g_assert_true (sq_lay_rects_part (array, &within, &cuts, NULL));
  g_assert_true (sq_lay_rects_part (none, &within, &cuts, NULL));
  g_assert_cmpuint (cuts.n, ==, 0);
}

/* ---- a lay --------------------------------------------------------------------------------- */

/* Five that turn about a middle, as lying in a lay: each cut crosses one. */
static void
test_wheel (void)
{
  const struct
  {
    double length, width, x, y;
  } pieces[] = { { 200, 100, 0, 0 },
                 { 100, 200, 200, 0 },
                 { 200, 100, 100, 200 },
                 { 100, 200, 0, 100 },
                 { 100, 100, 100, 100 } };

  for (guint straight = 0; straight < 2; straight++)
    {
      g_autoptr (SqLayTask) task = made_task (300, 0);
      for (guint i = 0; i < G_N_ELEMENTS (pieces); i++)
        add_rectangle (task, pieces[i].length, pieces[i].width, SQ_LAY_UPRIGHT, 1);
      if (straight)
        sq_lay_task_set_straight (task);
      sq_lay_task_seal (task);
      g_autoptr (SqLay) lay = sq_lay_new (task);
      for (guint i = 0; i < G_N_ELEMENTS (pieces); i++)
        {
          SqPlaced placed = { .item = i };
          placed.at.x = sq_grid_from_mm (pieces[i].x);
          placed.at.y = sq_grid_from_mm (pieces[i].y);
          g_array_append_val (lay->placed, placed);
        }
      sq_lay_length (lay, 0) = 300000;
      g_assert_false (sq_lay_is_straight (task, lay, NULL, NULL));
      g_assert_cmpint (sq_lay_fault (task, lay, NULL), ==, straight ? SQ_LAY_CUTS : SQ_LAY_RIGHT);
    }
}

/* Of five pins that turn about a middle the fourth can't be kept to. */
static void
test_pins (void)
{
  g_autoptr (SqLayTask) task = made_task (300, 0);
  const double at[][2] = { { 0, 0 }, { 200, 0 }, { 100, 200 }, { 0, 100 } };

  for (guint i = 0; i < 4; i++)
    add_rectangle (task, i % 2 == 0 ? 200 : 100, i % 2 == 0 ? 100 : 200, SQ_LAY_UPRIGHT, 1);
  for (guint i = 0; i < 4; i++)
    {
      SqLayPin pin = { .item = i };
      pin.at.x = sq_grid_from_mm (at[i][0]);
      pin.at.y = sq_grid_from_mm (at[i][1]);
      sq_lay_task_add_pin (task, &pin);
    }
  sq_lay_task_set_straight (task);
  g_autoptr (SqLay) lay = lay_of (task, 3);
  g_assert_cmpuint (task->pins->len, ==, 3);
  g_assert_cmpuint (task->bad_pins->len, ==, 1);
  g_assert_cmpint (sq_lay_fault (task, lay, NULL), ==, SQ_LAY_RIGHT);
}

/* Boxes count, grown by half the gap, and as turned. */
static void
test_box (void)
{
  g_autoptr (SqLayTask) task = made_task (1000, 10);

  add_path (task, sq_path_new_circle (sq_point (0, 0), 50), (SqLayItemSpec){ 0 });
  add_path (task, sq_path_new_rectangle (0, 0, 200, 100), (SqLayItemSpec){ .turns = 15 });
  SqGridBox circle = sq_lay_cut_box (sq_lay_task_item (task, 0), (SqGridPose){ 0, FALSE });
  SqGridBox turned = sq_lay_cut_box (sq_lay_task_item (task, 1),
                                     (SqGridPose){ SQ_GRID_QUARTER, FALSE });
  g_assert_cmpint (ABS (circle.min.x + 55000), <=, 10);
  g_assert_cmpint (ABS (circle.max.y - 55000), <=, 10);
  g_assert_cmpint (ABS (turned.min.x + 105000), <=, 10);
  g_assert_cmpint (ABS (turned.max.x - 5000), <=, 10);
  g_assert_cmpint (ABS (turned.max.y - 205000), <=, 10);
}

int
main (int argc, char *argv[])
{
  g_test_init (&argc, &argv, NULL);
  g_test_add_func ("/roll/lay-cuts/brute-force", test_brute_force);
  g_test_add_func ("/roll/lay-cuts/count", test_count);
  g_test_add_func ("/roll/lay-cuts/no-cuts", test_no_cuts);
  g_test_add_func ("/roll/lay-cuts/wheel", test_wheel);
  g_test_add_func ("/roll/lay-cuts/pins", test_pins);
  g_test_add_func ("/roll/lay-cuts/box", test_box);
  return g_test_run ();
}
