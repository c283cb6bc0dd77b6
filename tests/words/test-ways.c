/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "words/ways.h"

#include "hand-made.h"

#include <math.h>
#include <string.h>

static void
assert_minutes (double minutes, const char *wanted)
{
  g_autofree char *text = sq_words_minutes (minutes);
  g_assert_cmpstr (text, ==, wanted);
}

static void
test_minutes (void)
{
  assert_minutes (0.2, "0 min");
  assert_minutes (59.4, "59 min");
  assert_minutes (59.6, "1 h");
  assert_minutes (85, "1 h 25 min");
  assert_minutes (6001, "100 h 1 min");
}

static void
test_money (void)
{
  SqLengthStyle style = sq_length_style_default (SQ_UNIT_MM);
  style.decimal = ',';
  g_autofree char *text = sq_words_money (1234.567, &style);
  g_assert_cmpstr (text, ==, "1234,57");
}

/* What is not known is said, never taken for nothing. */
static void
test_cost (void)
{
  static const struct
  {
    double cloth, foam;
    const char *wanted;
  } cases[] = {
    { 20, 5.5, "35.50" },
    { NAN, 5.5, "15.50 + cloth" },
    { 20, NAN, "30.00 + foam" },
    { NAN, NAN, "10.00 + cloth + foam" },
  };
  SqLengthStyle style = sq_length_style_default (SQ_UNIT_MM);

  for (guint i = 0; i < G_N_ELEMENTS (cases); i++)
    {
      const SqWay way = { .work_cost = 10,
                          .cloth_cost = cases[i].cloth,
                          .foam_cost = cases[i].foam };
      g_autofree char *text = sq_words_way_cost (&way, " ", &style);
      g_assert_cmpstr (text, ==, cases[i].wanted);
    }
}

/* The job of the worked plate, which is built with folded corners. */
static void
test_table (void)
{
  g_autoptr (SqPlan) plan = hand_made_plan ();
  g_autoptr (SqJob) job = sq_job_with_cushion (plan->job, sq_plan_cover (plan, 0)->cushion);
  SqLengthStyle style = sq_length_style_default (SQ_UNIT_IN);
  g_autofree char *text = sq_words_ways (job, &style);

  g_assert_nonnull (strstr (text, "WAYS OF BUILDING"));
  g_assert_nonnull (strstr (text, "•  "));
  g_assert_nonnull (strstr (text, "Boxed with a welt"));
  g_assert_nonnull (strstr (text, "Not possible. "));
  g_assert_nonnull (strstr (text, "Zip, cord,"));
  g_assert_nonnull (strstr (text, "Sample rates: put in your own.\n"));
}

static void
test_samples (void)
{
  g_autoptr (SqJob) none = sq_job_new (&(SqDefaults){ 0 });
  g_autoptr (SqJob) one = sq_job_with_rate (none, SQ_RATE_WAGE, 20);
  g_autoptr (SqJob) all = sq_job_ref (one);

  for (SqRate rate = 0; rate < SQ_N_RATES; rate++)
    {
      SqJob *next = sq_job_with_rate (all, rate, 2);
      sq_job_unref (all);
      all = next;
    }
  g_assert_cmpstr (sq_words_ways_samples (none), ==, "Sample rates: put in your own.");
  g_assert_cmpstr (sq_words_ways_samples (one), ==, "Some rates are samples: put in your own.");
  g_assert_cmpstr (sq_words_ways_samples (all), ==, "");
}

int
main (int argc, char **argv)
{
  g_test_init (&argc, &argv, NULL);
  g_test_add_func ("/words/ways/minutes", test_minutes);
  g_test_add_func ("/words/ways/money", test_money);
  g_test_add_func ("/words/ways/cost", test_cost);
  g_test_add_func ("/words/ways/table", test_table);
  g_test_add_func ("/words/ways/samples", test_samples);
  return g_test_run ();
}
