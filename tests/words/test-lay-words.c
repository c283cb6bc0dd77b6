/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "words/lay-words.h"

#include "base/units.h"

static void
assert_sold (double mm, SqUnit unit, gboolean is_set, const char *wanted)
{
  SqLengthStyle style = sq_length_style_default (unit);
  style.set = is_set;
  g_autofree char *text = sq_words_sold_length (mm, &style);
  g_assert_cmpstr (text, ==, wanted);
}

static void
test_sold (void)
{
  assert_sold (SQ_MM_PER_YARD * 2.125, SQ_UNIT_IN, FALSE, "2 1/8 yd");
  assert_sold (SQ_MM_PER_YARD * 2.125, SQ_UNIT_IN, TRUE, "2 1⁄8 yd");
  assert_sold (SQ_MM_PER_YARD * 0.75, SQ_UNIT_IN, FALSE, "3/4 yd");
  assert_sold (SQ_MM_PER_YARD * 3.5, SQ_UNIT_IN, FALSE, "3 1/2 yd");
  assert_sold (SQ_MM_PER_YARD * 4, SQ_UNIT_IN, FALSE, "4 yd");
  assert_sold (1800, SQ_UNIT_CM, FALSE, "1.8 m");
}

static void
test_purchase (void)
{
  const SqPurchase purchase = {
    .bolts = 1, .laid_mm = 1600, .squaring_mm = 50.8, .buy_mm = 1700, .waste = 0.314
  };
  SqLengthStyle style = sq_length_style_default (SQ_UNIT_MM);
  g_autoptr (SqJob) job = sq_job_new (&(SqDefaults){ 0 });
  job->units = SQ_UNIT_MM;
  g_autofree char *text = sq_words_purchase (&purchase, &style);
  g_autofree char *nothing = sq_words_purchase (&(SqPurchase){ 0 }, &style);
  g_autofree char *reckoned = sq_words_purchase_reckoned (job, &purchase, &style);

  g_assert_cmpstr (text, ==, "1.7 m to buy, 31 % waste");
  g_assert_cmpstr (nothing, ==, "nothing to buy");
  g_assert_cmpstr (reckoned, ==, "1.60 m laid, 51 mm to square the end, rounded up to 0.1 m");

  SqPurchase beside = purchase;
  beside.stock = 2;
  g_autofree char *both = sq_words_purchase (&beside, &style);
  g_autofree char *all = sq_words_purchase (&(SqPurchase){ .stock = 1 }, &style);
  g_assert_cmpstr (both, ==, "1.7 m to buy beside what is there, 31 % waste");
  g_assert_cmpstr (all, ==, "nothing to buy, all of it is there");
}

int
main (int argc, char **argv)
{
  g_test_init (&argc, &argv, NULL);
  g_test_add_func ("/words/lay-words/sold", test_sold);
  g_test_add_func ("/words/lay-words/purchase", test_purchase);
  return g_test_run ();
}
