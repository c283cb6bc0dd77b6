/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "base/task.h"

typedef struct
{
  gboolean cancelled;
  guint asked, told;
  double fraction;
} Listener;

static gboolean
is_cancelled (gpointer data)
{
  Listener *listener = data;

  listener->asked++;
  return listener->cancelled;
}

static void
progress (gpointer data, double fraction)
{
  Listener *listener = data;

  listener->told++;
  listener->fraction = fraction;
}

static void
test_none (void)
{
  const SqTask deaf = { 0 };

  g_assert_true (sq_task_step (NULL, 0.5));
  g_assert_true (sq_task_step (&deaf, 0.5));
}

static void
test_goes_on (void)
{
  Listener listener = { 0 };
  const SqTask task = { is_cancelled, progress, &listener };

  g_assert_true (sq_task_step (&task, 0.0));
  g_assert_true (sq_task_step (&task, 0.25));
  g_assert_cmpuint (listener.asked, ==, 2);
  g_assert_cmpuint (listener.told, ==, 2);
  g_assert_cmpfloat (listener.fraction, ==, 0.25);
}

static void
test_cancelled (void)
{
  Listener listener = { .cancelled = TRUE };
  const SqTask task = { is_cancelled, progress, &listener };

  g_assert_false (sq_task_step (&task, 0.5));
  g_assert_cmpuint (listener.told, ==, 0);
}

static void
test_half_deaf (void)
{
  Listener listener = { .cancelled = TRUE };
  const SqTask asks = { is_cancelled, NULL, &listener };
  const SqTask tells = { NULL, progress, &listener };

  g_assert_false (sq_task_step (&asks, 0.5));
  g_assert_true (sq_task_step (&tells, 1.0));
  g_assert_cmpfloat (listener.fraction, ==, 1.0);
}

int
main (int argc, char *argv[])
{
  g_test_init (&argc, &argv, NULL);
  g_test_add_func ("/base/task/none", test_none);
  g_test_add_func ("/base/task/goes-on", test_goes_on);
  g_test_add_func ("/base/task/cancelled", test_cancelled);
  g_test_add_func ("/base/task/half-deaf", test_half_deaf);
  return g_test_run ();
}
