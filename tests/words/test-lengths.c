/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "words/lengths.h"

typedef char *(*Write) (double value, const SqLengthStyle *style);

static SqLengthStyle
style_of (SqUnit unit, char decimal)
{
  static const SqDefaults defaults = { 0 };
  g_autoptr (SqJob) job = sq_job_new (&defaults);

  job->units = unit;
  return sq_words_length_style (job, decimal);
}

static void
test_written (void)
{
  const struct
  {
    Write write;
    double value;
    SqUnit unit;
    char decimal;
    const char *text;
  } cases[] = {
    { sq_words_length, 469.9, SQ_UNIT_IN, '.', "18 1/2 in" },
    { sq_words_length, 469.9, SQ_UNIT_MM, '.', "470 mm" },
    { sq_words_length, 469.9, SQ_UNIT_CM, ',', "47,0 cm" },
    { sq_words_fine_length, 12.7, SQ_UNIT_IN, '.', "1/2 in" },
    { sq_words_fine_length, 12.7, SQ_UNIT_MM, ',', "12,7 mm" },
    { sq_words_fine_length, 12.0, SQ_UNIT_MM, '.', "12 mm" },
    { sq_words_fine_length, 12.7, SQ_UNIT_CM, '.', "1.27 cm" },
    { sq_words_figure, 469.9, SQ_UNIT_IN, '.', "18 1/2" },
    { sq_words_figure, 69.85, SQ_UNIT_IN, '.', "2 3/4" },
    /* a square yard is 9 sq ft; 1 ft = 304.8 mm exactly (BIPM SI brochure, table of units) */
    { sq_words_area, 914.4 * 914.4, SQ_UNIT_IN, '.', "9.0 sq ft" },
    { sq_words_area, 1.5e6, SQ_UNIT_MM, '.', "1.50 m²" },
    { sq_words_area, 1.5e6, SQ_UNIT_CM, ',', "1,50 m²" },
    { sq_words_volume, 304.8 * 304.8 * 304.8, SQ_UNIT_IN, '.', "1.00 cu ft" },
    { sq_words_volume, 2e6, SQ_UNIT_CM, '.', "2.0 l" },
    /* 1 lb = 453.59237 g exactly (International Yard and Pound agreement, 1959) */
    { sq_words_weight, 1000, SQ_UNIT_IN, '.', "2.2 lb" },
    { sq_words_weight, 1000, SQ_UNIT_MM, ',', "1,00 kg" },
    { sq_words_long_length, 914.4 * 3, SQ_UNIT_IN, '.', "3.00 yd" },
    { sq_words_long_length, 2500, SQ_UNIT_CM, '.', "2.50 m" },
  };

  for (guint i = 0; i < G_N_ELEMENTS (cases); i++)
    {
      SqLengthStyle style = style_of (cases[i].unit, cases[i].decimal);
      g_autofree char *text = cases[i].write (cases[i].value, &style);
      g_assert_cmpstr (text, ==, cases[i].text);
    }
}

static void
test_number (void)
{
  SqLengthStyle style = style_of (SQ_UNIT_MM, ',');
  g_autofree char *whole = sq_words_number (41, 0, &style);
  g_autofree char *parts = sq_words_number (-1234.567, 2, &style);

  g_assert_cmpstr (whole, ==, "41");
  g_assert_cmpstr (parts, ==, "-1234,57");
}

static void
test_read_number (void)
{
  const struct
  {
    const char *text;
    char decimal;
    double value; /* −1: none */
  } cases[] = {
    { "24.5", '.', 24.5 },
    { " 24,5 ", ',', 24.5 },
    { "7", '.', 7 },
    { ".5", '.', 0.5 },
    { "3.", '.', 3 },
    { "0", '.', 0 },
    { "24,5", '.', -1 },
    { "", '.', -1 },
    { ".", '.', -1 },
    { "1.2.3", '.', -1 },
    { "-4", '.', -1 },
    { "1e3", '.', -1 },
    { "nan", '.', -1 },
    { "0x10", '.', -1 },
    { "12 m", '.', -1 },
    { "1 2", '.', -1 },
    { "1234567890123456", '.', -1 },
  };

  for (guint i = 0; i < G_N_ELEMENTS (cases); i++)
    {
      double value = -1;
      gboolean is_number = sq_words_read_number (cases[i].text, cases[i].decimal, &value);
      g_assert_cmpint (is_number, ==, cases[i].value >= 0);
      g_assert_cmpfloat (value, ==, cases[i].value);
    }
}

static void
test_read_count (void)
{
  const char *const wrong[] = { "0", "100001", "1.5", "1,5", "two", "", "-1", "99999999999999999" };
  guint count = 7;

  for (guint i = 0; i < G_N_ELEMENTS (wrong); i++)
    g_assert_false (sq_words_read_count (wrong[i], &count));
  g_assert_cmpuint (count, ==, 7);
  g_assert_true (sq_words_read_count (" 12 ", &count));
  g_assert_cmpuint (count, ==, 12);
  g_assert_true (sq_words_read_count ("100000", &count));
  g_assert_cmpuint (count, ==, 100000);
}

/* A decimal more only where it says something. */
static void
test_fine_style (void)
{
  SqLengthStyle mm = style_of (SQ_UNIT_MM, '.'), in = style_of (SQ_UNIT_IN, '.');

  g_assert_cmpuint (sq_words_fine_style (9.525, &mm).decimals, ==, mm.decimals + 1);
  g_assert_cmpuint (sq_words_fine_style (10, &mm).decimals, ==, mm.decimals);
  g_assert_cmpuint (sq_words_fine_style (9.525, &in).decimals, ==, in.decimals);
}

int
main (int argc, char **argv)
{
  g_test_init (&argc, &argv, NULL);
  g_test_add_func ("/words/lengths/written", test_written);
  g_test_add_func ("/words/lengths/number", test_number);
  g_test_add_func ("/words/lengths/read-number", test_read_number);
  g_test_add_func ("/words/lengths/read-count", test_read_count);
  g_test_add_func ("/words/lengths/fine-style", test_fine_style);
  return g_test_run ();
}
