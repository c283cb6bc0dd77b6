/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "job/lay-edits.h"

/* A job of cloths 7 and 8; 7 has a remnant, 1, with a flaw, 4, that is known to a newer program. */
static SqJob *
made_job (void)
{
  SqDefaults defaults = { 0 };
  SqJob *job = sq_job_new (&defaults);
  SqCloth *cloth = sq_cloth_new (7);
  SqStock stock = { 1, SQ_STOCK_REMNANT, 1219.2, 762, g_ref_string_new ("{\"a\": 1}") };
  SqFlaw flaw = { 4, 1, 100, 200, 10, 20, g_ref_string_new ("{\"b\": 2}") };

  g_array_append_val (cloth->stock, stock);
  g_array_append_val (cloth->flaws, flaw);
  g_ptr_array_add (job->cloths, cloth);
  g_ptr_array_add (job->cloths, sq_cloth_new (8));
  return job;
}

static void
test_stock (void)
{
  g_autoptr (SqJob) job = made_job ();
  SqStock bolt = { sq_job_new_stock_id (job, 7), SQ_STOCK_BOLT, 9144, 0, NULL };
  SqStock longer = { 1, SQ_STOCK_REMNANT, 1500, 700, NULL };
  g_autoptr (SqJob) more = sq_job_with_stock (job, 7, &bolt);
  g_autoptr (SqJob) changed = sq_job_with_stock (more, 7, &longer);
  g_autoptr (SqJob) fewer = sq_job_without_stock (changed, 7, 1);
  g_autoptr (SqJob) same = sq_job_without_stock (fewer, 7, 99);
  g_autoptr (SqJob) nowhere = sq_job_with_stock (job, 99, &bolt);
  const SqCloth *cloth = sq_job_cloth (changed, 7);

  g_assert_cmpuint (bolt.id, ==, 2);
  g_assert_cmpuint (sq_job_cloth (job, 7)->stock->len, ==, 1);
  g_assert_true (sq_job_cloth (more, 8) == sq_job_cloth (job, 8));
  g_assert_cmpuint (cloth->stock->len, ==, 2);
  g_assert_cmpfloat (sq_cloth_stock (cloth, 0)->length_mm, ==, 1500);
  g_assert_cmpstr (sq_cloth_stock (cloth, 0)->unknown, ==, "{\"a\": 1}");
  g_assert_cmpint (sq_cloth_find_stock (cloth, 2)->kind, ==, SQ_STOCK_BOLT);
  g_assert_null (sq_cloth_find_stock (sq_job_cloth (fewer, 7), 1));
  g_assert_cmpuint (sq_job_cloth (same, 7)->stock->len, ==, 1);
  g_assert_cmpuint (nowhere->cloths->len, ==, 2);
}

/* What lay on a piece that is gone must not lie on the next one. */
static void
test_no_id_again (void)
{
  g_autoptr (SqJob) job = made_job ();
  SqPin pin = { .of = { .cloth = 7, .cushion = 1 }, .stock = 5 };
  g_autoptr (SqJob) empty = sq_job_without_stock (job, 7, 1);
  g_autoptr (SqJob) pinned = sq_job_with_pin (empty, &pin);
  SqStock last = { .id = G_MAXUINT32 };
  g_autoptr (SqJob) full = sq_job_with_stock (pinned, 8, &last);

  g_assert_cmpuint (sq_job_cloth (empty, 7)->flaws->len, ==, 1);
  g_assert_cmpuint (sq_job_new_stock_id (empty, 7), ==, 2);
  g_assert_cmpuint (sq_job_new_stock_id (pinned, 7), ==, 6);
  g_assert_cmpuint (sq_job_new_stock_id (pinned, 8), ==, 1);
  g_assert_cmpuint (sq_job_new_stock_id (full, 8), ==, 1);
}

static void
test_flaws (void)
{
  g_autoptr (SqJob) job = made_job ();
  SqFlaw fresh = { sq_job_new_flaw_id (job, 7), 0, 2500, 0, 5, 1000, NULL };
  SqFlaw moved = { 4, 1, 300, 200, 10, 20, NULL };
  g_autoptr (SqJob) more = sq_job_with_flaw (job, 7, &fresh);
  g_autoptr (SqJob) changed = sq_job_with_flaw (more, 7, &moved);
  g_autoptr (SqJob) fewer = sq_job_without_flaw (changed, 7, 5);

  g_assert_cmpuint (fresh.id, ==, 5);
  g_assert_cmpuint (sq_job_cloth (changed, 7)->flaws->len, ==, 2);
  g_assert_cmpfloat (sq_cloth_find_flaw (sq_job_cloth (changed, 7), 4)->x_mm, ==, 300);
  g_assert_cmpstr (sq_cloth_find_flaw (sq_job_cloth (changed, 7), 4)->unknown, ==, "{\"b\": 2}");
  g_assert_cmpfloat (sq_cloth_find_flaw (sq_job_cloth (job, 7), 4)->x_mm, ==, 100);
  g_assert_null (sq_cloth_find_flaw (sq_job_cloth (fewer, 7), 5));
}

static void
test_pins (void)
{
  g_autoptr (SqJob) job = made_job ();
  SqPin pin = { { 7, 3, TRUE, 2, 1, 4 }, 1, { 10, 20 }, 90, NULL };
  SqPin other = { { 8, 3, TRUE, 2, 1, 4 }, 0, { 1, 2 }, 0, NULL };
  g_autoptr (SqJob) one = sq_job_with_pin (job, &pin);
  g_autoptr (SqJob) two = sq_job_with_pin (one, &other);

  pin.at.x = 15;
  g_autoptr (SqJob) moved = sq_job_with_pin (two, &pin);
  g_autoptr (SqJob) fewer = sq_job_without_pin (moved, &pin.of);
  g_autoptr (SqJob) without = sq_job_without_pins (moved, 8);
  g_assert_cmpuint (job->pins->len, ==, 0);
  g_assert_cmpuint (moved->pins->len, ==, 2);
  g_assert_cmpfloat (sq_job_find_pin (moved, &pin.of)->at.x, ==, 15);
  g_assert_cmpfloat (sq_job_find_pin (two, &pin.of)->at.x, ==, 10);
  g_assert_null (sq_job_find_pin (fewer, &pin.of));
  g_assert_nonnull (sq_job_find_pin (fewer, &other.of));
  g_assert_null (sq_job_find_pin (without, &other.of));
  g_assert_nonnull (sq_job_find_pin (without, &pin.of));
}

/* Each part of the name counts. */
static void
test_pinned_equal (void)
{
  const SqPinned of = { 7, 3, TRUE, 2, 1, 4 };
  const SqPinned others[] = { { 8, 3, TRUE, 2, 1, 4 },  { 7, 4, TRUE, 2, 1, 4 },
                              { 7, 3, FALSE, 2, 1, 4 }, { 7, 3, TRUE, 3, 1, 4 },
                              { 7, 3, TRUE, 2, 2, 4 },  { 7, 3, TRUE, 2, 1, 5 } };

  g_assert_true (sq_pinned_equal (&of, &of));
  for (guint i = 0; i < G_N_ELEMENTS (others); i++)
    g_assert_false (sq_pinned_equal (&of, &others[i]));
}

static void
test_gone_with_it (void)
{
  g_autoptr (SqJob) job = made_job ();
  SqPin pin = { .of = { .cloth = 7, .cushion = 3 } },
        other = { .of = { .cloth = 8, .cushion = 4 } };
  g_autoptr (SqJob) one = sq_job_with_pin (job, &pin);
  g_autoptr (SqJob) two = sq_job_with_pin (one, &other);
  g_autoptr (SqKeptLay) kept = sq_kept_lay_new (7);
  g_autoptr (SqJob) all = sq_job_with_kept_lay (two, kept);
  g_autoptr (SqJob) no_cloth = sq_job_without_cloth (all, 7);
  g_autoptr (SqJob) no_cushion = sq_job_without_cushion (all, 4);

  g_assert_null (sq_job_cloth (no_cloth, 7));
  g_assert_nonnull (sq_job_cloth (no_cloth, 8));
  g_assert_null (sq_job_kept_lay (no_cloth, 7));
  g_assert_null (sq_job_find_pin (no_cloth, &pin.of));
  g_assert_nonnull (sq_job_find_pin (no_cloth, &other.of));
  g_assert_nonnull (sq_job_find_pin (no_cushion, &pin.of));
  g_assert_null (sq_job_find_pin (no_cushion, &other.of));
}

static void
test_laying (void)
{
  g_autoptr (SqJob) job = made_job ();
  g_autoptr (SqJob) straight = sq_job_with_cuts (job, SQ_CUTS_STRAIGHT);
  g_autoptr (SqJob) deep = sq_job_with_plies (straight, 12, 7315.2);
  g_autoptr (SqJob) copy = sq_job_dup (deep);

  g_assert_cmpint (job->laying.cuts, ==, SQ_CUTS_BY_RULE);
  g_assert_cmpint (copy->laying.cuts, ==, SQ_CUTS_STRAIGHT);
  g_assert_cmpuint (copy->laying.most_plies, ==, 12);
  g_assert_cmpfloat (copy->laying.table_mm, ==, 7315.2);
}

int
main (int argc, char **argv)
{
  g_test_init (&argc, &argv, NULL);
  g_test_add_func ("/job/lay-edits/stock", test_stock);
  g_test_add_func ("/job/lay-edits/no-id-again", test_no_id_again);
  g_test_add_func ("/job/lay-edits/flaws", test_flaws);
  g_test_add_func ("/job/lay-edits/pins", test_pins);
  g_test_add_func ("/job/lay-edits/pinned-equal", test_pinned_equal);
  g_test_add_func ("/job/lay-edits/gone-with-it", test_gone_with_it);
  g_test_add_func ("/job/lay-edits/laying", test_laying);
  return g_test_run ();
}
