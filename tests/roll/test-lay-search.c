/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "roll/lay-search.h"

#include "roll/made-task.h"

static const SqLayEffort effort = { .patience = 60, .strikes = 2 };

/* All pieces of @kinds in their first poses at (0, 0). */
static GArray *
heap_of (const SqLayKinds *kinds)
{
  GArray *spots = g_array_new (FALSE, FALSE, sizeof (SqLaySpot));

  for (guint i = 0; i < kinds->kinds->len; i++)
    for (guint k = 0; k < sq_lay_kind (kinds, i)->count; k++)
      {
        SqLaySpot spot = { .kind = i };
        g_array_append_val (spots, spot);
      }
  return spots;
}

static SqLay *
lay_at (const SqLayKinds *kinds, const GArray *spots)
{
  g_autofree SqUnlaidWhy *why = g_new0 (SqUnlaidWhy, kinds->kinds->len);
  return sq_lay_kinds_to_lay (kinds, spots, why);
}

/* Four rectangles that just fill a length, found from a heap; nothing fits into a hair less. */
static void
test_full (void)
{
  g_autoptr (SqLayTask) task = made_task (500, 0);
  add_rectangle (task, 300, 250, SQ_LAY_UPRIGHT, 4);
  sq_lay_task_seal (task);
  g_autoptr (SqLayKinds) kinds = sq_lay_kinds_new (task);
  g_autoptr (GArray) spots = heap_of (kinds);
  g_autoptr (SqLayWorld) world = sq_lay_world_new (kinds, spots);
  gint32 loose = 610000, less = 599999;
  double loss;

  g_assert_true (sq_lay_search_separate (world, spots, &loose, 1, effort, NULL, NULL, NULL));
  g_autoptr (SqLay) lay = lay_at (kinds, spots);
  g_assert_true (sq_lay_is_valid (task, lay));
  g_assert_cmpint (sq_lay_length (lay, 0), <=, loose);
  sq_lay_search_compact (world, spots, &loose);
  g_autoptr (SqLay) tight = lay_at (kinds, spots);
  g_assert_true (sq_lay_is_valid (task, tight));
  g_assert_cmpint (sq_lay_length (tight, 0), ==, 600000);
  g_assert_false (sq_lay_search_separate (world, spots, &less, 1, effort, NULL, NULL, &loss));
  g_assert_cmpfloat (loss, >, 0);
}

/* The same seed, the same places. */
static void
test_same (void)
{
  g_autoptr (SqLayTask) task = random_task (7);
  g_autoptr (SqLayKinds) kinds = sq_lay_kinds_new (task);
  g_autoptr (GArray) one = heap_of (kinds);
  g_autoptr (GArray) two = heap_of (kinds);
  g_autoptr (SqLayWorld) world = sq_lay_world_new (kinds, one);
  g_autofree gint32 *ends = g_new (gint32, task->strips->len);

  g_assert_nonnull (world);
  for (guint i = 0; i < task->strips->len; i++)
    ends[i] = 4000000;
  sq_lay_search_separate (world, one, ends, 5, effort, NULL, NULL, NULL);
  sq_lay_search_separate (world, two, ends, 5, effort, NULL, NULL, NULL);
  for (guint i = 0; i < one->len; i++)
    {
      const SqLaySpot *p = &g_array_index (one, SqLaySpot, i);
      const SqLaySpot *q = &g_array_index (two, SqLaySpot, i);
      g_assert_true (p->strip == q->strip && p->pose == q->pose && p->x == q->x && p->y == q->y);
    }
}

/* Around a flaw, and on the lines of the pattern. */
static void
test_bound (void)
{
  SqGridBox flaw = { { 200000, 100000 }, { 300000, 200000 } };
  g_autoptr (SqLayTask) task = sq_lay_task_new (0);
  SqLayStrip strip = { .kind = SQ_STRIP_ROLL, .width = 1000000, .flaws = &flaw, .n_flaws = 1 };
  sq_lay_task_add_strip (task, &strip);
  add_path (task, sq_path_new_rectangle (0, 0, 400, 300),
            (SqLayItemSpec){ .turns = 5, .repeat_across_mm = 110, .across_mm = 7, .demand = 5 });
  sq_lay_task_seal (task);
  g_autoptr (SqLayKinds) kinds = sq_lay_kinds_new (task);
  g_autoptr (GArray) spots = heap_of (kinds);
  g_autoptr (SqLayWorld) world = sq_lay_world_new (kinds, spots);
  gint32 end = 1300000;

  g_assert_true (sq_lay_search_separate (world, spots, &end, 3, effort, NULL, NULL, NULL));
  g_autoptr (SqLay) lay = lay_at (kinds, spots);
  g_assert_true (sq_lay_is_valid (task, lay));
  sq_lay_search_compact (world, spots, &end);
  g_autoptr (SqLay) drawn = lay_at (kinds, spots);
  g_assert_true (sq_lay_is_valid (task, drawn));
  g_assert_cmpint (sq_lay_length (drawn, 0), <=, sq_lay_length (lay, 0));
}

static gboolean
at_once (gpointer data)
{
  (*(guint *) data)++;
  return TRUE;
}

static void
test_cancelled (void)
{
  g_autoptr (SqLayTask) task = made_task (500, 0);
  add_rectangle (task, 300, 250, SQ_LAY_UPRIGHT, 8);
  sq_lay_task_seal (task);
  g_autoptr (SqLayKinds) kinds = sq_lay_kinds_new (task);
  g_autoptr (GArray) spots = heap_of (kinds);
  g_autoptr (SqLayWorld) world = sq_lay_world_new (kinds, spots);
  gint32 end = 1200000;
  guint asked = 0;

  g_assert_false (sq_lay_search_separate (world, spots, &end, 1, effort, at_once, &asked, NULL));
  g_assert_cmpuint (asked, ==, 1);
}

int
main (int argc, char *argv[])
{
  g_test_init (&argc, &argv, NULL);
  g_test_add_func ("/roll/lay-search/full", test_full);
  g_test_add_func ("/roll/lay-search/same", test_same);
  g_test_add_func ("/roll/lay-search/bound", test_bound);
  g_test_add_func ("/roll/lay-search/cancelled", test_cancelled);
  return g_test_run ();
}
