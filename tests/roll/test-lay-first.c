/* SPDX-License-Identifier: GPL-3.0-or-later */
/* Where single pieces go. */
#include "roll/made-task.h"

static void
assert_placed (const SqLay *lay, guint i, guint strip, gint32 x_mm, gint32 y_mm)
{
  g_assert_cmpuint (sq_lay_placed (lay, i)->strip, ==, strip);
  g_assert_cmpint (sq_lay_placed (lay, i)->at.x, ==, x_mm * 1000);
  g_assert_cmpint (sq_lay_placed (lay, i)->at.y, ==, y_mm * 1000);
}

static void
assert_unlaid (const SqLay *lay, guint i, guint item, guint count, SqUnlaidWhy why)
{
  const SqUnlaid *unlaid = &g_array_index (lay->unlaid, SqUnlaid, i);

  g_assert_cmpuint (i, <, lay->unlaid->len);
  g_assert_cmpuint (unlaid->item, ==, item);
  g_assert_cmpuint (unlaid->count, ==, count);
  g_assert_cmpint (unlaid->why, ==, why);
}

/* The large one first, the small ones into what it leaves. */
static void
test_corner (void)
{
  g_autoptr (SqLayTask) task = made_task (1000, 0);

  add_rectangle (task, 300, 400, SQ_LAY_UPRIGHT, 2);
  add_rectangle (task, 900, 600, SQ_LAY_UPRIGHT, 1);
  g_autoptr (SqLay) lay = lay_of (task, 0);
  assert_placed (lay, 0, 0, 0, 600);
  assert_placed (lay, 1, 0, 300, 600);
  assert_placed (lay, 2, 0, 0, 0);
  g_assert_cmpint (sq_lay_length (lay, 0), ==, 900000);
}

/* A hole that is closed on all sides is filled, too. */
static void
test_hole (void)
{
  g_autoptr (SqLayTask) task = made_task (1000, 0);
  const SqPoint pocket[] = { { 0, 0 },     { 500, 0 },   { 500, 300 },  { 200, 300 },
                             { 200, 700 }, { 500, 700 }, { 500, 1000 }, { 0, 1000 } };

  add_path (task, sq_path_new_polygon (pocket, G_N_ELEMENTS (pocket)), (SqLayItemSpec){ 0 });
  add_rectangle (task, 400, 1000, SQ_LAY_UPRIGHT, 1);
  add_rectangle (task, 300, 400, SQ_LAY_UPRIGHT, 1);
  g_autoptr (SqLay) lay = lay_of (task, 0);
  assert_placed (lay, 0, 0, 0, 0);
  assert_placed (lay, 1, 0, 500, 0);
  assert_placed (lay, 2, 0, 200, 300);
}

/* Into a pocket that opens across the cloth, and into a hole. */
static void
test_pockets (void)
{
  g_autoptr (SqLayTask) task = made_task (1000, 0);
  g_autoptr (GPtrArray) rings = g_ptr_array_new_with_free_func ((GDestroyNotify) sq_path_unref);
  const SqPoint u[] = { { 0, 0 },     { 800, 0 },   { 800, 1000 }, { 600, 1000 },
                        { 600, 300 }, { 250, 300 }, { 250, 1000 }, { 0, 1000 } };

  add_path (task, sq_path_new_polygon (u, G_N_ELEMENTS (u)), (SqLayItemSpec){ 0 });
  g_ptr_array_add (rings, sq_path_new_rectangle (0, 0, 900, 1000));
  g_ptr_array_add (rings, sq_path_new_rectangle (300, 350, 600, 610));
  sq_lay_task_add (task, &(SqLayItemSpec){ .rings = rings, .turns = SQ_LAY_UPRIGHT, .demand = 1 });
  add_rectangle (task, 350, 600, SQ_LAY_UPRIGHT, 1);
  add_rectangle (task, 300, 260, SQ_LAY_UPRIGHT, 1);
  g_autoptr (SqLay) lay = lay_of (task, 0);
  g_assert_true (sq_lay_is_valid (task, lay));
  assert_placed (lay, 0, 0, 900, 0);
  assert_placed (lay, 1, 0, 0, 0);
  assert_placed (lay, 2, 0, 1150, 300);
  assert_placed (lay, 3, 0, 300, 350);
  g_assert_cmpint (sq_lay_length (lay, 0), ==, 1700000);
}

static void
test_width (void)
{
  g_autoptr (SqLayTask) task = made_task (1000, 0);

  add_rectangle (task, 300, 1000, SQ_LAY_UPRIGHT, 2);
  add_rectangle (task, 300, 1000.001, SQ_LAY_UPRIGHT | SQ_LAY_HALF, 3);
  add_rectangle (task, 300, 1500, SQ_LAY_UPRIGHT | SQ_LAY_QUARTER, 1);
  g_autoptr (SqLay) lay = lay_of (task, 0);
  g_assert_cmpuint (lay->placed->len, ==, 3);
  g_assert_cmpuint (lay->unlaid->len, ==, 1);
  assert_unlaid (lay, 0, 1, 3, SQ_UNLAID_TOO_WIDE);
  g_assert_cmpuint (sq_lay_placed (lay, 2)->pose.turn, ==, SQ_GRID_QUARTER);
  g_assert_cmpint (sq_lay_length (lay, 0), ==, 2100000);
}

/* Between two rows of stripes there is no place for what is just narrower than the cloth. */
static void
test_pattern (void)
{
  g_autoptr (SqLayTask) task = made_task (1000, 0);

  add_path (task, sq_path_new_rectangle (0, 0, 200, 100),
            (SqLayItemSpec){ .anchor = { 0, 50 },
                             .across_mm = 30,
                             .repeat_across_mm = 120,
                             .along_mm = 10,
                             .repeat_along_mm = 70,
                             .demand = 9 });
  add_path (task, sq_path_new_rectangle (0, 0, 200, 950),
            (SqLayItemSpec){ .across_mm = 60, .repeat_across_mm = 500 });
  g_autoptr (SqLay) lay = lay_of (task, 0);
  /* Seven rows, from 150 − 50 on every 120 mm; columns from 10 on, each 210 mm on. */
  assert_placed (lay, 0, 0, 10, 100);
  assert_placed (lay, 1, 0, 10, 220);
  assert_placed (lay, 6, 0, 10, 820);
  assert_placed (lay, 7, 0, 220, 100);
  assert_unlaid (lay, 0, 1, 1, SQ_UNLAID_PATTERN);
}

/* In every other column half a repeat on. */
static void
test_drop (void)
{
  g_autoptr (SqLayTask) task = made_task (250, 0);

  add_path (task, sq_path_new_rectangle (0, 0, 100, 90),
            (SqLayItemSpec){
                .repeat_across_mm = 100, .repeat_along_mm = 200, .drop_mm = 100, .demand = 4 });
  g_autoptr (SqLay) lay = lay_of (task, 0);
  assert_placed (lay, 0, 0, 0, 0);
  assert_placed (lay, 1, 0, 100, 100);
  assert_placed (lay, 2, 0, 200, 0);
  assert_placed (lay, 3, 0, 300, 100);
}

/* What is there is used up first; no piece lies on two. */
static void
test_strips (void)
{
  g_autoptr (SqLayTask) task = made_task (1000, 0);

  add_strip (task, SQ_STRIP_REMNANT, 450, 700, -1);
  add_rectangle (task, 500, 400, SQ_LAY_UPRIGHT, 3);
  add_rectangle (task, 100, 300, SQ_LAY_UPRIGHT, 2);
  g_autoptr (SqLay) lay = lay_of (task, 0);
  assert_placed (lay, 0, 0, 0, 0);
  assert_placed (lay, 1, 1, 0, 0);
  assert_placed (lay, 2, 1, 0, 400);
  assert_placed (lay, 3, 0, 500, 0);
  assert_placed (lay, 4, 0, 600, 0);
  g_assert_cmpint (sq_lay_length (lay, 0), ==, 700000);
  g_assert_cmpint (sq_lay_length (lay, 1), ==, 500000);
}

static void
test_no_room (void)
{
  g_autoptr (SqLayTask) task = sq_lay_task_new (0);
  g_autoptr (SqLayTask) bare = sq_lay_task_new (0);

  add_strip (task, SQ_STRIP_SHEET, 1000, 1000, 0);
  add_rectangle (task, 500, 500, SQ_LAY_UPRIGHT, 6);
  add_rectangle (task, 1200, 100, SQ_LAY_UPRIGHT, 1);
  g_autoptr (SqLay) lay = lay_of (task, 0);
  g_assert_cmpuint (lay->placed->len, ==, 4);
  assert_unlaid (lay, 0, 0, 2, SQ_UNLAID_NO_ROOM);
  assert_unlaid (lay, 1, 1, 1, SQ_UNLAID_TOO_WIDE);

  add_rectangle (bare, 500, 500, SQ_LAY_UPRIGHT, 1);
  g_autoptr (SqLay) nowhere = lay_of (bare, 0);
  assert_unlaid (nowhere, 0, 0, 1, SQ_UNLAID_TOO_WIDE);
}

/* More than anybody cuts ends in a word, not in memory. */
static void
test_too_many (void)
{
  g_autoptr (SqLayTask) task = made_task (100, 0);

  add_rectangle (task, 100000, 100, SQ_LAY_UPRIGHT, 4000000000);
  add_rectangle (task, 100000, 100, SQ_LAY_UPRIGHT, 4000000000);
  g_autoptr (SqLay) lay = lay_of (task, 0);
  g_assert_cmpuint (lay->placed->len, ==, 16);
  assert_unlaid (lay, 0, 0, 4000000000 - 16, SQ_UNLAID_NO_ROOM);
  assert_unlaid (lay, 1, 1, 4000000000, SQ_UNLAID_NO_ROOM);
  g_assert_true (sq_lay_is_valid (task, lay));
}

static void
test_gap (void)
{
  g_autoptr (SqLayTask) task = made_task (205, 5);

  add_rectangle (task, 100, 99.98, SQ_LAY_UPRIGHT, 3);
  g_autoptr (SqLay) lay = lay_of (task, 0);
  /* Not at the edges of the cloth, and by no more than rounding asks. */
  assert_placed (lay, 0, 0, 0, 0);
  g_assert_cmpint (sq_lay_placed (lay, 1)->at.x, ==, 0);
  g_assert_cmpint (sq_lay_length (lay, 0), >=, 205000);
  g_assert_cmpint (sq_lay_length (lay, 0), <, 205030);
}

/* Equal items are dealt with as one, each keeps its own coordinates and tag. */
static void
test_equal (void)
{
  g_autoptr (SqLayTask) task = made_task (1000, 0);

  add_path (task, sq_path_new_rectangle (0, 0, 300, 500), (SqLayItemSpec){ .tag = 5 });
  add_path (task, sq_path_new_rectangle (-70, 30, 230, 530),
            (SqLayItemSpec){ .tag = 6, .demand = 2 });
  g_autoptr (SqLay) lay = lay_of (task, 0);
  assert_placed (lay, 0, 0, 0, 0);
  assert_placed (lay, 1, 0, 70, 470);
  assert_placed (lay, 2, 0, 370, -30);
  g_assert_cmpuint (sq_lay_placed (lay, 2)->tag, ==, 6);
  g_assert_cmpuint (sq_lay_placed (lay, 2)->copy, ==, 1);
}

/* Beside a flaw, up to it. */
static void
test_flaws (void)
{
  g_autoptr (SqLayTask) task = sq_lay_task_new (0);
  SqGridBox flaws[] = { { { 300000, 400000 }, { 310000, 410000 } },
                        { { 900000, 0 }, { 901000, 1000000 } },
                        { { 1000000, 1000000 }, { 1100000, 1200000 } } };
  const SqLayStrip strip = { .width = 1000000, .flaws = flaws, .n_flaws = 3 };

  sq_lay_task_add_strip (task, &strip);
  add_rectangle (task, 500, 600, SQ_LAY_UPRIGHT, 1);
  add_rectangle (task, 400, 590, SQ_LAY_UPRIGHT, 1);
  add_rectangle (task, 300, 500, SQ_LAY_UPRIGHT, 1);
  g_autoptr (SqLay) lay = lay_of (task, 0);
  g_assert_cmpuint (sq_lay_task_strip (task, 0)->n_flaws, ==, 2);
  assert_placed (lay, 0, 0, 310, 0);
  assert_placed (lay, 1, 0, 901, 0);
  assert_placed (lay, 2, 0, 0, 0);
  g_assert_true (sq_lay_is_valid (task, lay));
}

/* Where there is not room for all, what is wanted most is laid, however small. */
static void
test_priority (void)
{
  g_autoptr (SqLayTask) task = sq_lay_task_new (0);

  add_strip (task, SQ_STRIP_SHEET, 1000, 1000, 0);
  add_path (task, sq_path_new_rectangle (0, 0, 1000, 600), (SqLayItemSpec){ .priority = 2 });
  add_path (task, sq_path_new_rectangle (0, 0, 400, 500), (SqLayItemSpec){ .demand = 2 });
  add_path (task, sq_path_new_rectangle (0, 0, 600, 600), (SqLayItemSpec){ .priority = 1 });
  for (guint64 steps = 0; steps < 3; steps++)
    {
      g_autoptr (SqLay) lay = lay_of (task, steps);
      g_assert_cmpuint (lay->placed->len, ==, 3);
      assert_unlaid (lay, 0, 0, 1, SQ_UNLAID_NO_ROOM);
    }
}

/* With room for all, it does not count. */
static void
test_priority_of_all (void)
{
  g_autoptr (SqLayTask) task = made_task (1000, 0);

  add_path (task, sq_path_new_rectangle (0, 0, 300, 400), (SqLayItemSpec){ .demand = 2 });
  add_path (task, sq_path_new_rectangle (0, 0, 900, 600), (SqLayItemSpec){ .priority = 1 });
  g_autoptr (SqLay) lay = lay_of (task, 0);
  g_assert_cmpint (sq_lay_length (lay, 0), ==, 900000);
}

static void
test_crossed (void)
{
  g_autoptr (SqLayTask) task = made_task (1000, 0);
  const SqPoint bow[] = { { 0, 0 }, { 300, 300 }, { 300, 0 }, { 0, 300 } };

  add_path (task, sq_path_new_polygon (bow, G_N_ELEMENTS (bow)), (SqLayItemSpec){ .demand = 3 });
  add_rectangle (task, 300, 400, SQ_LAY_UPRIGHT, 1);
  g_autoptr (SqLay) lay = lay_of (task, 3);
  g_assert_true (sq_lay_task_item (task, 0)->crosses);
  g_assert_false (sq_lay_task_item (task, 1)->crosses);
  g_assert_cmpuint (lay->placed->len, ==, 1);
  assert_unlaid (lay, 0, 0, 3, SQ_UNLAID_CROSSES);
  g_assert_true (sq_lay_is_valid (task, lay));
}

/* A pattern that falls nowhere on the cloth is told as that. */
static void
test_contradictions (void)
{
  g_autoptr (SqLayTask) task = sq_lay_task_new (0);

  add_strip (task, SQ_STRIP_ROLL, 1000, 5000, 0);
  /* It recurs beyond the end; only there, with a drop; all its rows are off the cloth. */
  add_path (task, sq_path_new_rectangle (0, 0, 200, 100),
            (SqLayItemSpec){ .along_mm = 4900, .repeat_along_mm = 9000 });
  add_path (task, sq_path_new_rectangle (0, 0, 200, 800),
            (SqLayItemSpec){ .along_mm = -100,
                             .repeat_along_mm = 6000,
                             .repeat_across_mm = 500,
                             .across_mm = 150,
                             .drop_mm = 3000,
                             .demand = 2 });
  add_path (task, sq_path_new_rectangle (0, 0, 200, 950),
            (SqLayItemSpec){ .across_mm = 60, .repeat_across_mm = 2000 });
  /* Somewhere is enough. */
  add_path (task, sq_path_new_rectangle (0, 0, 200, 100),
            (SqLayItemSpec){ .along_mm = 4800, .repeat_along_mm = 9000 });
  g_autoptr (SqLay) lay = lay_of (task, 3);
  assert_unlaid (lay, 0, 0, 1, SQ_UNLAID_PATTERN);
  assert_unlaid (lay, 1, 1, 2, SQ_UNLAID_PATTERN);
  assert_unlaid (lay, 2, 2, 1, SQ_UNLAID_PATTERN);
  g_assert_cmpuint (lay->unlaid->len, ==, 3);
  assert_placed (lay, 0, 0, 4800, 0);
}

/* A repeat of a nanometre binds nothing and takes no longer, on the longest strip there is. */
static void
test_least_repeat (void)
{
  g_autoptr (SqLayTask) task = made_task (1000, 0);

  add_path (task, sq_path_new_rectangle (0, 0, 200, 300),
            (SqLayItemSpec){ .along_mm = 0.3,
                             .repeat_along_mm = 1e-6,
                             .repeat_across_mm = 1e-6,
                             .drop_mm = 5e-7,
                             .turns = 15,
                             .demand = 20 });
  add_path (task, sq_path_new_rectangle (0, 0, 1599999, 100),
            (SqLayItemSpec){ .repeat_along_mm = 2e-6, .demand = 11 });
  g_autoptr (SqLay) lay = lay_of (task, 1);
  g_assert_true (sq_lay_is_valid (task, lay));
  g_assert_cmpuint (lay->placed->len, >=, 20);
}

static void
test_empty (void)
{
  g_autoptr (SqLayTask) task = made_task (1000, 0);
  g_autoptr (SqLay) lay = lay_of (task, 3);

  g_assert_cmpuint (lay->placed->len + lay->unlaid->len, ==, 0);
  g_assert_cmpint (sq_lay_length (lay, 0), ==, 0);
  g_assert_true (sq_lay_is_valid (task, lay));
}

int
main (int argc, char *argv[])
{
  g_test_init (&argc, &argv, NULL);
  g_test_add_func ("/roll/lay-first/corner", test_corner);
  g_test_add_func ("/roll/lay-first/hole", test_hole);
  g_test_add_func ("/roll/lay-first/pockets", test_pockets);
  g_test_add_func ("/roll/lay-first/width", test_width);
  g_test_add_func ("/roll/lay-first/pattern", test_pattern);
  g_test_add_func ("/roll/lay-first/drop", test_drop);
  g_test_add_func ("/roll/lay-first/strips", test_strips);
  g_test_add_func ("/roll/lay-first/no-room", test_no_room);
  g_test_add_func ("/roll/lay-first/too-many", test_too_many);
  g_test_add_func ("/roll/lay-first/gap", test_gap);
  g_test_add_func ("/roll/lay-first/equal", test_equal);
  g_test_add_func ("/roll/lay-first/flaws", test_flaws);
  g_test_add_func ("/roll/lay-first/priority", test_priority);
  g_test_add_func ("/roll/lay-first/priority-of-all", test_priority_of_all);
  g_test_add_func ("/roll/lay-first/crossed", test_crossed);
  g_test_add_func ("/roll/lay-first/contradictions", test_contradictions);
  g_test_add_func ("/roll/lay-first/least-repeat", test_least_repeat);
  g_test_add_func ("/roll/lay-first/empty", test_empty);
  return g_test_run ();
}
