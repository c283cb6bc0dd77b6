/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "roll/lay-order.h"

#include "roll/made-task.h"

static const SqLayRun *
run_at (const GArray *order, guint i)
{
  return &g_array_index (order, SqLayRun, i);
}

/* How many pieces of each kind there are in the batch that begins at *i, which moves on; returns
 * the whole number. */
static guint
count_batch (const GArray *order, guint *i, guint *counts)
{
  guint n = 0;

  g_assert_true (run_at (order, *i)->starts_batch);
  do
    {
      g_assert_cmpuint (run_at (order, *i)->count, >, 0);
      counts[run_at (order, *i)->kind] += run_at (order, *i)->count;
      n += run_at (order, *i)->count;
      (*i)++;
    }
  while (*i < order->len && !run_at (order, *i)->starts_batch);
  return n;
}

static SqLayTask *
sizes (guint n, guint demand)
{
  SqLayTask *task = made_task (1000, 0);

  for (guint i = 0; i < n; i++)
    add_path (task, sq_path_new_rectangle (0, 0, 100 + 10 * i, 700 - 10 * i),
              (SqLayItemSpec){ .demand = demand, .tag = i });
  sq_lay_task_seal (task);
  return task;
}

static void
test_sorts (void)
{
  g_autoptr (SqLayTask) task = sizes (5, 2);
  g_autoptr (SqLayKinds) kinds = sq_lay_kinds_new (task);
  static const struct
  {
    SqLaySort sort;
    guint first, last;
  } expected[] = { { SQ_LAY_BY_AREA, 4, 0 },
                   { SQ_LAY_BY_WIDTH, 0, 4 },
                   { SQ_LAY_BY_LENGTH, 4, 0 },
                   { SQ_LAY_BY_GIRTH, 4, 0 } };

  for (guint i = 0; i < G_N_ELEMENTS (expected); i++)
    {
      g_autoptr (GArray) order = sq_lay_order_new (kinds, expected[i].sort);
      g_assert_cmpuint (order->len, ==, 5);
      g_assert_cmpuint (run_at (order, 0)->kind, ==, expected[i].first);
      g_assert_cmpuint (run_at (order, 4)->kind, ==, expected[i].last);
      g_assert_cmpuint (run_at (order, 2)->count, ==, 2);
      g_assert_true (run_at (order, 0)->starts_batch);
      g_assert_false (run_at (order, 1)->starts_batch);
    }
}

/* 65 kinds of 20: fourteen batches, each with 92 or 93 pieces, one or two of every kind. */
static void
test_dealt (void)
{
  g_autoptr (SqLayTask) task = sizes (65, 20);
  g_autoptr (SqLayKinds) kinds = sq_lay_kinds_new (task);
  g_autoptr (GArray) order = sq_lay_order_new (kinds, SQ_LAY_BY_AREA);
  guint all[65] = { 0 }, n_batches = 0;

  for (guint i = 0; i < order->len; n_batches++)
    {
      guint counts[65] = { 0 }, n = count_batch (order, &i, counts);
      g_assert_cmpuint (n, >=, 92);
      g_assert_cmpuint (n, <=, 93);
      for (guint k = 0; k < 65; k++)
        {
          g_assert_cmpuint (counts[k], >=, 1);
          g_assert_cmpuint (counts[k], <=, 2);
          all[k] += counts[k];
        }
    }
  g_assert_cmpuint (n_batches, ==, 14);
  for (guint k = 0; k < 65; k++)
    g_assert_cmpuint (all[k], ==, 20);
}

/* Where there is time for it, batches are larger: few pieces, or few kinds. */
static void
test_large_batches (void)
{
  static const guint numbers[][3] = { { 65, 2, 1 }, { 65, 15, 6 }, { 10, 200, 11 } };

  for (guint i = 0; i < G_N_ELEMENTS (numbers); i++)
    {
      g_autoptr (SqLayTask) task = sizes (numbers[i][0], numbers[i][1]);
      g_autoptr (SqLayKinds) kinds = sq_lay_kinds_new (task);
      g_autoptr (GArray) order = sq_lay_order_new (kinds, SQ_LAY_BY_AREA);
      guint n_batches = 0;
      for (guint k = 0; k < order->len; k++)
        n_batches += run_at (order, k)->starts_batch;
      g_assert_cmpuint (n_batches, ==, numbers[i][2]);
    }
}

static void
test_shuffled (void)
{
  g_autoptr (SqLayTask) task = sizes (60, 20);
  g_autoptr (SqLayKinds) kinds = sq_lay_kinds_new (task);
  g_autoptr (GArray) order = sq_lay_order_new (kinds, SQ_LAY_BY_AREA);
  guint64 chance = 3, same = 3;
  guint n_other = 0;

  for (guint round = 0; round < 200; round++)
    {
      g_autoptr (GArray) shuffled = sq_lay_order_shuffled (order, &chance);
      g_autoptr (GArray) again = sq_lay_order_shuffled (order, &same);
      g_assert_cmpmem (shuffled->data, shuffled->len * sizeof (SqLayRun), again->data,
                       again->len * sizeof (SqLayRun));
      for (guint i = 0, k = 0; i < order->len;)
        {
          guint before[60] = { 0 }, after[60] = { 0 };
          count_batch (order, &i, before);
          count_batch (shuffled, &k, after);
          g_assert_cmpmem (before, sizeof before, after, sizeof after);
        }
      for (guint i = 0; i < order->len; i++)
        if (run_at (order, i)->kind != run_at (shuffled, i)->kind)
          {
            n_other++;
            break;
          }
    }
  g_assert_cmpuint (n_other, >, 150);
}

/* In the order they lie in; what is new at the end, what is gone left out. */
static void
test_as_before (void)
{
  g_autoptr (SqLayTask) before = sizes (6, 1);
  g_autoptr (SqLay) lay = lay_of (before, 0);
  g_autoptr (SqLayTask) task = made_task (1000, 0);

  add_path (task, sq_path_new_rectangle (0, 0, 120, 680), (SqLayItemSpec){ .tag = 2, .demand = 3 });
  add_path (task, sq_path_new_rectangle (0, 0, 900, 900), (SqLayItemSpec){ .tag = 9 });
  add_path (task, sq_path_new_rectangle (0, 0, 150, 650), (SqLayItemSpec){ .tag = 5 });
  sq_lay_task_seal (task);
  g_autoptr (SqLayKinds) kinds = sq_lay_kinds_new (task);
  g_autoptr (GArray) order = sq_lay_order_new_as (kinds, lay);
  const guint expected[][2] = { { 2, 1 }, { 0, 1 }, { 1, 1 }, { 0, 2 } };

  /* The greatest, tag 5, lies nearest the cut end. */
  g_assert_cmpuint (order->len, ==, G_N_ELEMENTS (expected));
  for (guint i = 0; i < order->len; i++)
    {
      g_assert_cmpuint (run_at (order, i)->kind, ==, expected[i][0]);
      g_assert_cmpuint (run_at (order, i)->count, ==, expected[i][1]);
      g_assert_cmpint (run_at (order, i)->starts_batch, ==, i == 0);
    }
}

static void
test_batches_as_before (void)
{
  g_autoptr (SqLayTask) task = sizes (50, 9);
  g_autoptr (SqLay) lay = lay_of (task, 0);
  g_autoptr (SqLayKinds) kinds = sq_lay_kinds_new (task);
  g_autoptr (GArray) order = sq_lay_order_new_as (kinds, lay);
  guint counts[50] = { 0 };

  for (guint i = 0; i < order->len;)
    g_assert_cmpuint (count_batch (order, &i, counts), <=, 192);
  for (guint k = 0; k < 50; k++)
    g_assert_cmpuint (counts[k], ==, 9);
}

int
main (int argc, char *argv[])
{
  g_test_init (&argc, &argv, NULL);
  g_test_add_func ("/roll/lay-order/sorts", test_sorts);
  g_test_add_func ("/roll/lay-order/dealt", test_dealt);
  g_test_add_func ("/roll/lay-order/large-batches", test_large_batches);
  g_test_add_func ("/roll/lay-order/shuffled", test_shuffled);
  g_test_add_func ("/roll/lay-order/as-before", test_as_before);
  g_test_add_func ("/roll/lay-order/batches-as-before", test_batches_as_before);
  return g_test_run ();
}
