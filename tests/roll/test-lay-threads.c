/* SPDX-License-Identifier: GPL-3.0-or-later */
/* What is found does not depend on how many threads look for it. Also what the thread sanitizer
 * watches. */
#include "roll/made-task.h"

static void
assert_same (const SqLay *a, const SqLay *b)
{
  g_assert_cmpuint (a->placed->len, ==, b->placed->len);
  for (guint i = 0; i < a->placed->len; i++)
    {
      const SqPlaced *p = sq_lay_placed (a, i), *q = sq_lay_placed (b, i);
      g_assert_cmpuint (p->item, ==, q->item);
      g_assert_cmpuint (p->strip, ==, q->strip);
      g_assert_cmpint (p->at.x, ==, q->at.x);
      g_assert_cmpint (p->at.y, ==, q->at.y);
      g_assert_true (sq_grid_pose_equal (p->pose, q->pose));
    }
}

static void
hear (gpointer data, const SqLay *lay)
{
  guint *n = data;

  g_assert_cmpuint (lay->lengths->len, >, 0);
  (*n)++; /* one at a time */
}

static void
test_same (void)
{
  for (guint32 seed = 1; seed <= 5; seed++)
    {
      g_autoptr (SqLayTask) task = random_task (seed);
      guint n_better = 0;
      const SqLayWatch watch = { .task = { .data = &n_better }, .better = hear };
      SqLayBudget budget = { .seed = seed, .steps = 3, .threads = 1 };
      g_autoptr (SqLay) one = sq_lay_run (task, NULL, &budget, &watch);
      budget.threads = 2;
      g_autoptr (SqLay) two = sq_lay_run (task, NULL, &budget, &watch);
      budget.threads = 4;
      g_autoptr (SqLay) four = sq_lay_run (task, NULL, &budget, &watch);
      assert_same (one, two);
      assert_same (one, four);
      g_assert_cmpuint (n_better, >, 0);
    }
}

/* So many attempts that later ones begin from what earlier ones nearly did. */
static void
test_many (void)
{
  g_autoptr (SqLayTask) task = made_task (1000, 0);
  const SqPoint arrow[] = { { 0, 0 }, { 500, 150 }, { 350, 0 }, { 500, -150 } };
  g_autoptr (SqLay) one = NULL;

  add_path (task, sq_path_new_polygon (arrow, G_N_ELEMENTS (arrow)),
            (SqLayItemSpec){ .turns = 5, .demand = 7 });
  add_path (task, sq_path_new_rectangle (0, 0, 330, 270),
            (SqLayItemSpec){ .turns = 5, .demand = 4 });
  sq_lay_task_seal (task);
  for (guint threads = 1; threads <= 4; threads++)
    {
      SqLayBudget budget = { .seed = 2, .steps = 60, .threads = threads };
      g_autoptr (SqLay) lay = sq_lay_run (task, NULL, &budget, NULL);
      if (threads == 1)
        one = sq_lay_ref (lay);
      assert_same (one, lay);
      g_assert_cmpuint (lay->steps, ==, 60);
    }
}

int
main (int argc, char *argv[])
{
  g_test_init (&argc, &argv, NULL);
  g_test_add_func ("/roll/lay-threads/same", test_same);
  g_test_add_func ("/roll/lay-threads/many", test_many);
  return g_test_run ();
}
