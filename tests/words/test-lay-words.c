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

/* What matching costs, and what another width takes. */
static void
test_options (void)
{
  g_autoptr (GArray) options = g_array_new (FALSE, FALSE, sizeof (SqLayOption));
  SqLayOption matched = { .width_mm = 1346.2,
                          .is_own = TRUE,
                          .is_matched = TRUE,
                          .purchase = { .bolts = 1, .buy_mm = 2300, .waste = 0.4 } };
  SqLayOption free = { .width_mm = 1346.2,
                       .is_own = TRUE,
                       .purchase = { .bolts = 1, .buy_mm = 1700, .waste = 0.2 } };
  SqLengthStyle style = sq_length_style_default (SQ_UNIT_CM);

  g_array_append_val (options, matched);
  g_assert_null (sq_words_matching_costs (options, &style));
  g_array_append_val (options, free);
  g_autofree char *costs = sq_words_matching_costs (options, &style);
  g_autofree char *one = sq_words_lay_option (&free, TRUE, &style);
  g_autofree char *other = sq_words_lay_option (&matched, FALSE, &style);
  g_assert_cmpstr (costs, ==, "Matching costs 0.6 m.");
  g_assert_cmpstr (one, ==, "134.6 cm wide, not matched: 1.7 m to buy, 20 % waste");
  g_assert_cmpstr (other, ==, "134.6 cm wide: 2.3 m to buy, 40 % waste");
  sq_lay_option (options, 0)->purchase.buy_mm = 1700;
  g_autofree char *nothing = sq_words_matching_costs (options, &style);
  g_assert_cmpstr (nothing, ==, "Matching costs no cloth.");
  sq_lay_option (options, 0)->purchase.unlaid = 1;
  g_assert_null (sq_words_matching_costs (options, &style));
  g_autofree char *not_all = sq_words_lay_option (sq_lay_option (options, 0), TRUE, &style);
  g_assert_cmpstr (not_all, ==, "134.6 cm wide, matched: not everything goes on it");
}

int
main (int argc, char **argv)
{
  g_test_init (&argc, &argv, NULL);
  g_test_add_func ("/words/lay-words/sold", test_sold);
  g_test_add_func ("/words/lay-words/purchase", test_purchase);
  g_test_add_func ("/words/lay-words/options", test_options);
  return g_test_run ();
}
