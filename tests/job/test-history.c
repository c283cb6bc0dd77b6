/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "job/history.h"

static SqJob *
job_with_count (const SqJob *job, guint count)
{
  g_autoptr (SqOutline) outline = sq_outline_new (NULL, NULL, 0);
  g_autoptr (SqCushion) cushion = sq_cushion_new (1, outline);

  cushion->count = count;
  return sq_job_with_cushion (job, cushion);
}

static SqJob *
empty_job (void)
{
  SqDefaults defaults = { 0 };
  return sq_job_new (&defaults);
}

/* Pushes a new job and returns it, borrowed. */
static const SqJob *
push (SqHistory *history, guint count, const char *words, const char *key)
{
  g_autoptr (SqJob) next = job_with_count (sq_history_now (history), count);

  sq_history_push (history, next, words, key);
  return sq_history_now (history);
}

static void
test_same_pointer (void)
{
  g_autoptr (SqJob) start = empty_job ();
  g_autoptr (SqHistory) history = sq_history_new (start);
  const SqJob *first = push (history, 1, "Add cushion", NULL);
  const SqJob *second = push (history, 2, "Change count", NULL);

  g_assert_true (sq_history_undo (history));
  g_assert_true (sq_history_now (history) == first);
  g_assert_cmpstr (sq_history_undo_words (history), ==, "Add cushion");
  g_assert_cmpstr (sq_history_redo_words (history), ==, "Change count");
  g_assert_true (sq_history_undo (history));
  g_assert_true (sq_history_now (history) == start);
  g_assert_null (sq_history_undo_words (history));
  g_assert_false (sq_history_undo (history));
  g_assert_true (sq_history_redo (history));
  g_assert_true (sq_history_redo (history));
  g_assert_true (sq_history_now (history) == second);
  g_assert_null (sq_history_redo_words (history));
  g_assert_false (sq_history_redo (history));
}

static void
test_drag (void)
{
  g_autoptr (SqJob) start = empty_job ();
  g_autoptr (SqHistory) history = sq_history_new (start);

  for (guint i = 1; i <= 40; i++)
    push (history, i, "Move corner", "corner:3");
  sq_history_seal (history);
  push (history, 41, "Move corner", "corner:3");
  g_assert_true (sq_history_undo (history));
  g_assert_cmpuint (sq_job_cushion (sq_history_now (history), 1)->count, ==, 40);
  g_assert_true (sq_history_undo (history));
  g_assert_true (sq_history_now (history) == start);
}

static void
test_keys (void)
{
  g_autoptr (SqJob) start = empty_job ();
  g_autoptr (SqHistory) history = sq_history_new (start);

  push (history, 1, "a", "x");
  push (history, 2, "b", "y");
  push (history, 3, "c", NULL);
  push (history, 4, "d", NULL);
  for (guint count = 3; count >= 1; count--)
    {
      g_assert_true (sq_history_undo (history));
      g_assert_cmpuint (sq_job_cushion (sq_history_now (history), 1)->count, ==, count);
    }
  /* After an undo the same key starts a step of its own. */
  push (history, 5, "e", "x");
  g_assert_true (sq_history_undo (history));
  g_assert_cmpuint (sq_job_cushion (sq_history_now (history), 1)->count, ==, 1);
}

static void
test_push_drops_redo (void)
{
  g_autoptr (SqJob) start = empty_job ();
  g_autoptr (SqHistory) history = sq_history_new (start);

  push (history, 1, "a", NULL);
  push (history, 2, "b", NULL);
  sq_history_undo (history);
  sq_history_undo (history);
  push (history, 3, "c", NULL);
  g_assert_false (sq_history_redo (history));
  g_assert_cmpstr (sq_history_undo_words (history), ==, "c");
}

static void
test_same_job (void)
{
  g_autoptr (SqJob) start = empty_job ();
  g_autoptr (SqHistory) history = sq_history_new (start);

  push (history, 1, "a", NULL);
  sq_history_undo (history);
  sq_history_push (history, start, "nothing", NULL);
  g_assert_null (sq_history_undo_words (history));
  g_assert_cmpstr (sq_history_redo_words (history), ==, "a");
}

static void
test_saved (void)
{
  g_autoptr (SqJob) start = empty_job ();
  g_autoptr (SqHistory) history = sq_history_new (start);

  g_assert_true (sq_history_is_saved (history));
  push (history, 1, "a", "drag");
  g_assert_false (sq_history_is_saved (history));
  sq_history_set_saved (history);
  g_assert_true (sq_history_is_saved (history));
  sq_history_set_unsaved (history);
  g_assert_false (sq_history_is_saved (history));
  sq_history_set_saved (history);
  /* What was saved stays a step to come back to, even within a drag. */
  push (history, 2, "a", "drag");
  g_assert_false (sq_history_is_saved (history));
  sq_history_undo (history);
  g_assert_true (sq_history_is_saved (history));
  sq_history_undo (history);
  g_assert_false (sq_history_is_saved (history));
}

/* Any step can be gone to, and told. */
static void
test_go (void)
{
  g_autoptr (SqJob) start = empty_job ();
  g_autoptr (SqHistory) history = sq_history_new (start);
  gboolean exists = FALSE;

  push (history, 1, "one", NULL);
  push (history, 2, "two", NULL);
  push (history, 3, "three", NULL);
  g_assert_cmpstr (sq_history_words (history, 0, &exists), ==, "three");
  g_assert_true (exists);
  g_assert_cmpstr (sq_history_words (history, -2, NULL), ==, "one");
  g_assert_null (sq_history_words (history, -3, &exists));
  g_assert_true (exists);
  g_assert_null (sq_history_words (history, -4, &exists));
  g_assert_false (exists);
  g_assert_null (sq_history_words (history, 1, &exists));
  g_assert_false (exists);

  g_assert_false (sq_history_go (history, -4));
  g_assert_false (sq_history_go (history, G_MAXINT));
  g_assert_true (sq_history_go (history, -3));
  g_assert_true (sq_history_now (history) == start);
  g_assert_cmpstr (sq_history_words (history, 2, NULL), ==, "two");
  g_assert_true (sq_history_go (history, 2));
  g_assert_cmpstr (sq_history_undo_words (history), ==, "two");
  g_assert_cmpstr (sq_history_redo_words (history), ==, "three");
}

static void
test_no_limit (void)
{
  g_autoptr (SqJob) start = empty_job ();
  g_autoptr (SqHistory) history = sq_history_new (start);
  guint steps = 0;

  for (guint i = 1; i <= 5000; i++)
    push (history, i, "a", NULL);
  while (sq_history_undo (history))
    steps++;
  g_assert_cmpuint (steps, ==, 5000);
  g_assert_true (sq_history_now (history) == start);
}

int
main (int argc, char **argv)
{
  g_test_init (&argc, &argv, NULL);
  g_test_add_func ("/job/history/same-pointer", test_same_pointer);
  g_test_add_func ("/job/history/drag", test_drag);
  g_test_add_func ("/job/history/keys", test_keys);
  g_test_add_func ("/job/history/push-drops-redo", test_push_drops_redo);
  g_test_add_func ("/job/history/same-job", test_same_job);
  g_test_add_func ("/job/history/saved", test_saved);
  g_test_add_func ("/job/history/go", test_go);
  g_test_add_func ("/job/history/no-limit", test_no_limit);
  return g_test_run ();
}
