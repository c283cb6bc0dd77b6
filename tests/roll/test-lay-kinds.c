/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "roll/lay-kinds.h"

#include "roll/made-task.h"

static SqPath *
l_shape (double x, double y)
{
  const SqPoint p[] = { { x, y },           { x + 300, y },      { x + 300, y + 80 },
                        { x + 80, y + 80 }, { x + 80, y + 200 }, { x, y + 200 } };
  return sq_path_new_polygon (p, G_N_ELEMENTS (p));
}

/* The same but for place and tag are one kind; any other difference makes another. */
static void
test_equal (void)
{
  g_autoptr (SqLayTask) task = made_task (1000, 0);
  const SqLayItemSpec striped = { .anchor = { 30, 0 }, .across_mm = 5, .repeat_across_mm = 70 };
  g_autoptr (SqPath) drawn = l_shape (0, 0);
  SqLayItemSpec moved = striped, shifted = striped, turned = striped;
  moved.anchor.x += 40;
  moved.anchor.y += 12;
  moved.tag = 4;
  moved.demand = 3;
  shifted.across_mm = 6;
  turned.turns = SQ_LAY_UPRIGHT | SQ_LAY_HALF;

  add_path (task, l_shape (0, 0), striped);
  add_path (task, l_shape (40, 12), moved);
  add_path (task, l_shape (0, 0), shifted);
  add_path (task, l_shape (0, 0), turned);
  add_path (task, l_shape (0, 0), (SqLayItemSpec){ 0 });
  add_path (task, sq_path_mirrored (drawn), (SqLayItemSpec){ 0 });
  sq_lay_task_seal (task);
  g_autoptr (SqLayKinds) kinds = sq_lay_kinds_new (task);
  const guint expected[] = { 0, 0, 1, 2, 3, 4 };

  for (guint i = 0; i < G_N_ELEMENTS (expected); i++)
    g_assert_cmpuint (kinds->kind_of[i], ==, expected[i]);
  g_assert_cmpuint (sq_lay_kind (kinds, 0)->count, ==, 4);
  g_assert_cmpuint (sq_lay_kind (kinds, 2)->n_shapes, ==, 2);
  g_assert_cmpint (sq_lay_kind (kinds, 2)->shapes[1]->pose.turn, ==, 2 * SQ_GRID_QUARTER);
}

/* Copies go to equal items in turn, in the order of laying; the rest is told. */
static void
test_lay (void)
{
  g_autoptr (SqLayTask) task = made_task (1000, 0);

  add_path (task, l_shape (0, 0), (SqLayItemSpec){ .tag = 1, .demand = 2 });
  add_path (task, l_shape (-50, 9), (SqLayItemSpec){ .tag = 2, .demand = 2 });
  sq_lay_task_seal (task);
  g_autoptr (SqLayKinds) kinds = sq_lay_kinds_new (task);
  g_autoptr (GArray) spots = g_array_new (FALSE, FALSE, sizeof (SqLaySpot));
  const SqLaySpot three[] = { { .x = 0 }, { .x = 300000, .y = 7 }, { .x = 600000, .y = 8 } };
  const SqUnlaidWhy why = SQ_UNLAID_NO_ROOM;
  g_array_append_vals (spots, three, 3);
  g_autoptr (SqLay) lay = sq_lay_kinds_to_lay (kinds, spots, &why);

  g_assert_cmpuint (lay->placed->len, ==, 3);
  g_assert_cmpuint (sq_lay_placed (lay, 1)->copy, ==, 1);
  g_assert_cmpuint (sq_lay_placed (lay, 2)->item, ==, 1);
  g_assert_cmpuint (sq_lay_placed (lay, 2)->tag, ==, 2);
  g_assert_cmpint (sq_lay_placed (lay, 2)->at.x, ==, 650000);
  g_assert_cmpint (sq_lay_placed (lay, 2)->at.y, ==, 8 - 9000);
  g_assert_cmpint (sq_lay_length (lay, 0), ==, 900000);
  g_assert_cmpuint (lay->unlaid->len, ==, 1);
  g_assert_cmpuint (g_array_index (lay->unlaid, SqUnlaid, 0).item, ==, 1);
  g_assert_cmpuint (g_array_index (lay->unlaid, SqUnlaid, 0).count, ==, 1);
  g_assert_true (sq_lay_is_valid (task, lay));
}

int
main (int argc, char *argv[])
{
  g_test_init (&argc, &argv, NULL);
  g_test_add_func ("/roll/lay-kinds/equal", test_equal);
  g_test_add_func ("/roll/lay-kinds/lay", test_lay);
  return g_test_run ();
}
