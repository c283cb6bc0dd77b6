/* SPDX-License-Identifier: GPL-3.0-or-later */
/* What is pinned lies where it is told to, if that can be; all else lies round it. */
#include "roll/made-task.h"

/* On 1 m with a flaw from 400 to 500 mm, copies of 200 × 300 mm on rows 50 mm apart. */
static SqLayTask *
rows (guint demand)
{
  SqLayTask *task = sq_lay_task_new (0);
  SqGridBox flaw = { { 400000, 300000 }, { 500000, 500000 } };
  const SqLayStrip strip = {
    .width = 1000000, .length = 2000000, .flaws = &flaw, .n_flaws = 1, .tag = 3
  };

  sq_lay_task_add_strip (task, &strip);
  add_path (task, sq_path_new_rectangle (0, 0, 200, 300),
            (SqLayItemSpec){
                .turns = SQ_LAY_UPRIGHT | SQ_LAY_HALF, .repeat_across_mm = 50, .demand = demand });
  return task;
}

static void
pin (SqLayTask *task, guint copy, gint32 x_mm, gint32 y_mm, gint32 turn)
{
  const SqLayPin pinned = { .copy = copy,
                            .at = { x_mm * 1000, y_mm * 1000 },
                            .pose = { turn, FALSE } };
  sq_lay_task_add_pin (task, &pinned);
}

static void
test_good (void)
{
  g_autoptr (SqLayTask) task = rows (5);

  pin (task, 3, 700, 150, 0);
  pin (task, 1, 1800, 700, 0);
  pin (task, 0, 500, 300, 0); /* it touches the flaw */
  g_autoptr (SqLay) lay = lay_of (task, 3);
  g_assert_cmpuint (task->pins->len, ==, 3);
  g_assert_cmpuint (task->bad_pins->len, ==, 0);
  g_assert_true (sq_lay_is_valid (task, lay));
  g_assert_cmpuint (lay->placed->len, ==, 5);
  g_assert_cmpint (sq_lay_placed (lay, 3)->at.x, ==, 700000);
  g_assert_cmpint (sq_lay_placed (lay, 3)->at.y, ==, 150000);
  g_assert_cmpint (sq_lay_placed (lay, 1)->at.x, ==, 1800000);
  g_assert_cmpint (sq_lay_placed (lay, 0)->at.x, ==, 500000);
  /* The others lie as if only these were there. */
  g_assert_cmpint (sq_lay_placed (lay, 2)->at.x, ==, 0);
  g_assert_cmpint (sq_lay_placed (lay, 4)->at.x, ==, 0);
  g_assert_cmpint (sq_lay_length (lay, 0), ==, 2000000);
}

static void
test_bad (void)
{
  g_autoptr (SqLayTask) task = rows (9);

  pin (task, 0, 700, 100, 0);
  pin (task, 0, 1400, 100, 0);                   /* this copy lies already */
  pin (task, 9, 1400, 100, 0);                   /* no such copy */
  pin (task, 1, 899, 100, 0);                    /* on the first */
  pin (task, 2, 0, 710, 0);                      /* off the stripes */
  pin (task, 3, 499, 300, 0);                    /* on the flaw */
  pin (task, 4, 1801, 100, 0);                   /* over the end */
  pin (task, 5, -1, 100, 0);                     /* before the cut end */
  pin (task, 6, 1000, 750, 0);                   /* over the edge */
  pin (task, 7, 1500, 500, SQ_GRID_QUARTER);     /* turned as it may not be */
  pin (task, 8, 1500, 500, 2 * SQ_GRID_QUARTER); /* the last that can be */
  g_autoptr (SqLay) lay = lay_of (task, 0);
  g_assert_cmpuint (task->pins->len, ==, 2);
  g_assert_cmpuint (task->bad_pins->len, ==, 9);
  for (guint i = 0; i < 9; i++)
    g_assert_cmpuint (g_array_index (task->bad_pins, SqLayPin, i).copy, ==,
                      ((const guint[]){ 0, 9, 1, 2, 3, 4, 5, 6, 7 })[i]);
  g_assert_true (sq_lay_is_valid (task, lay));
  g_assert_cmpuint (lay->placed->len, ==, 9);
  g_assert_cmpint (sq_lay_placed (lay, 8)->at.x, ==, 1500000);
}

/* The last copies are not laid, but those pinned are. */
static void
test_full (void)
{
  g_autoptr (SqLayTask) task = rows (40);

  pin (task, 39, 1800, 0, 0);
  g_autoptr (SqLay) lay = lay_of (task, 2);
  guint n = lay->placed->len;
  g_assert_true (sq_lay_is_valid (task, lay));
  g_assert_cmpuint (n, <, 34);
  g_assert_cmpuint (sq_lay_placed (lay, n - 2)->copy, ==, n - 2);
  g_assert_cmpuint (sq_lay_placed (lay, n - 1)->copy, ==, 39);
  g_assert_cmpuint (g_array_index (lay->unlaid, SqUnlaid, 0).count, ==, 40 - n);
}

/* Equal items, one of them pinned: each keeps its own. */
static void
test_equal (void)
{
  g_autoptr (SqLayTask) task = made_task (1000, 0);
  const SqLayPin pinned = { .item = 1, .copy = 1, .at = { 40000, 0 } };

  add_path (task, sq_path_new_rectangle (0, 0, 300, 500), (SqLayItemSpec){ .tag = 5, .demand = 2 });
  add_path (task, sq_path_new_rectangle (-40, 0, 260, 500),
            (SqLayItemSpec){ .tag = 6, .demand = 2 });
  sq_lay_task_add_pin (task, &pinned);
  g_autoptr (SqLay) lay = lay_of (task, 0);
  g_assert_true (sq_lay_is_valid (task, lay));
  g_assert_cmpuint (sq_lay_placed (lay, 3)->tag, ==, 6);
  g_assert_cmpint (sq_lay_placed (lay, 3)->at.x, ==, 40000);
  g_assert_cmpint (sq_lay_length (lay, 0), ==, 600000);
}

/* A pin that can't be is as if it were none. */
static void
test_digest (void)
{
  g_autoptr (SqLayTask) with = rows (2), without = rows (2), other = rows (2);

  pin (with, 0, 450, 300, 0);
  pin (other, 0, 500, 300, 0);
  sq_lay_task_seal (with);
  sq_lay_task_seal (without);
  sq_lay_task_seal (other);
  g_assert_true (with->digest == without->digest);
  g_assert_true (with->digest != other->digest);
}

int
main (int argc, char *argv[])
{
  g_test_init (&argc, &argv, NULL);
  g_test_add_func ("/roll/lay-pins/good", test_good);
  g_test_add_func ("/roll/lay-pins/bad", test_bad);
  g_test_add_func ("/roll/lay-pins/full", test_full);
  g_test_add_func ("/roll/lay-pins/equal", test_equal);
  g_test_add_func ("/roll/lay-pins/digest", test_digest);
  return g_test_run ();
}
