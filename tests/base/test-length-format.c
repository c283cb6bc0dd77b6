/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "base/length.h"

#include <math.h>
#include <string.h>

#define IN 25.4

/* Worked by hand. */
static const struct
{
  double mm;
  SqLengthStyle style;
  const char *text;
} cases[] = {
  { 0.0, { SQ_UNIT_IN, 1, 0, '.', FALSE, FALSE, FALSE }, "0" },
  { -0.0, { SQ_UNIT_IN, 1, 0, '.', FALSE, FALSE, FALSE }, "0" },
  { 18.0 * IN, { SQ_UNIT_IN, 1, 0, '.', FALSE, FALSE, FALSE }, "18" },
  { 18.5 * IN, { SQ_UNIT_IN, 1, 0, '.', FALSE, FALSE, FALSE }, "18 1/2" },
  { 18.5 * IN, { SQ_UNIT_IN, 1, 0, '.', FALSE, TRUE, FALSE }, "18 1/2 in" },
  { 18.5 * IN, { SQ_UNIT_IN, 1, 0, '.', TRUE, FALSE, FALSE }, "18 1\u20442" },
  { 18.5 * IN, { SQ_UNIT_IN, 1, 0, '.', TRUE, TRUE, FALSE }, "18 1\u20442 in" },
  { -18.5 * IN, { SQ_UNIT_IN, 1, 0, '.', FALSE, FALSE, FALSE }, "-18 1/2" },
  { 0.0625 * IN, { SQ_UNIT_IN, 1, 0, '.', FALSE, FALSE, FALSE }, "1/16" },
  { 0.125 * IN, { SQ_UNIT_IN, 1, 0, '.', FALSE, FALSE, FALSE }, "1/8" },
  { 0.25 * IN, { SQ_UNIT_IN, 1, 0, '.', TRUE, FALSE, FALSE }, "1\u20444" },
  { -0.5 * IN, { SQ_UNIT_IN, 1, 0, '.', FALSE, TRUE, FALSE }, "-1/2 in" },
  { 0.9375 * IN, { SQ_UNIT_IN, 1, 0, '.', FALSE, FALSE, FALSE }, "15/16" },
  { 11.9375 * IN, { SQ_UNIT_IN, 1, 0, '.', FALSE, FALSE, FALSE }, "11 15/16" },
  /* Over the half: the fraction carries into the whole inches. */
  { 11.98 * IN, { SQ_UNIT_IN, 1, 0, '.', FALSE, FALSE, FALSE }, "12" },
  { 11.9375 * IN, { SQ_UNIT_IN, 2, 0, '.', FALSE, FALSE, FALSE }, "12" },
  { -11.98 * IN, { SQ_UNIT_IN, 1, 0, '.', FALSE, FALSE, FALSE }, "-12" },
  /* Halves of a step go away from zero, though 25.4 is no binary fraction. */
  { 18.03125 * IN, { SQ_UNIT_IN, 1, 0, '.', FALSE, FALSE, FALSE }, "18 1/16" },
  { -18.03125 * IN, { SQ_UNIT_IN, 1, 0, '.', FALSE, FALSE, FALSE }, "-18 1/16" },
  { 18.0625 * IN, { SQ_UNIT_IN, 2, 0, '.', FALSE, FALSE, FALSE }, "18 1/8" },
  { 18.25 * IN, { SQ_UNIT_IN, 8, 0, '.', FALSE, FALSE, FALSE }, "18 1/2" },
  { 18.5 * IN, { SQ_UNIT_IN, 16, 0, '.', FALSE, FALSE, FALSE }, "19" },
  { 18.03 * IN, { SQ_UNIT_IN, 1, 0, '.', FALSE, FALSE, FALSE }, "18" },
  { 0.01 * IN, { SQ_UNIT_IN, 1, 0, '.', FALSE, FALSE, FALSE }, "0" },
  { -0.01 * IN, { SQ_UNIT_IN, 1, 0, '.', FALSE, TRUE, FALSE }, "0 in" },
  { 1.0 * IN, { SQ_UNIT_IN, 3, 0, '.', FALSE, FALSE, FALSE }, "15/16" },

  { 470.0, { SQ_UNIT_MM, 1, 0, '.', FALSE, FALSE, FALSE }, "470" },
  { 469.9, { SQ_UNIT_MM, 1, 0, '.', FALSE, TRUE, FALSE }, "470 mm" },
  { 469.9, { SQ_UNIT_MM, 1, 1, '.', FALSE, TRUE, FALSE }, "469.9 mm" },
  { 469.9, { SQ_UNIT_MM, 1, 3, ',', FALSE, TRUE, FALSE }, "469,900 mm" },
  { 0.5, { SQ_UNIT_MM, 1, 0, '.', FALSE, FALSE, FALSE }, "1" },
  { -0.5, { SQ_UNIT_MM, 1, 0, '.', FALSE, FALSE, FALSE }, "-1" },
  { 2.5, { SQ_UNIT_MM, 1, 0, '.', FALSE, FALSE, FALSE }, "3" },
  { 0.49, { SQ_UNIT_MM, 1, 0, '.', FALSE, FALSE, FALSE }, "0" },
  { -0.49, { SQ_UNIT_MM, 1, 0, '.', FALSE, FALSE, FALSE }, "0" },
  { -0.04, { SQ_UNIT_MM, 1, 1, '.', FALSE, FALSE, FALSE }, "0.0" },
  { 1.005, { SQ_UNIT_MM, 1, 2, '.', FALSE, FALSE, FALSE }, "1.01" },
  { 0.05, { SQ_UNIT_MM, 1, 2, '.', FALSE, FALSE, FALSE }, "0.05" },
  { 9.996, { SQ_UNIT_MM, 1, 2, '.', FALSE, FALSE, FALSE }, "10.00" },
  { 1.0000005, { SQ_UNIT_MM, 1, 6, '.', FALSE, FALSE, FALSE }, "1.000001" },
  { 100000.0, { SQ_UNIT_MM, 1, 6, '.', FALSE, FALSE, FALSE }, "100000.000000" },
  { 1e15, { SQ_UNIT_MM, 1, 0, '.', FALSE, FALSE, FALSE }, "1000000000000000" },

  { 470.0, { SQ_UNIT_CM, 1, 0, '.', FALSE, FALSE, FALSE }, "47" },
  { 470.0, { SQ_UNIT_CM, 1, 1, '.', FALSE, TRUE, FALSE }, "47.0 cm" },
  { 473.0, { SQ_UNIT_CM, 1, 1, ',', FALSE, TRUE, FALSE }, "47,3 cm" },
  { 2.5, { SQ_UNIT_CM, 1, 1, '.', FALSE, FALSE, FALSE }, "0.3" },
  { -2.5, { SQ_UNIT_CM, 1, 1, ',', FALSE, FALSE, FALSE }, "-0,3" },
  { 999.9, { SQ_UNIT_CM, 1, 1, '.', FALSE, FALSE, FALSE }, "100.0" },

  { 18.53125 * IN, { .decimal = '.', .sixteenths = 1, .halves = TRUE }, "18 17/32" },
  { 18.5 * IN, { .decimal = '.', .sixteenths = 1, .set = TRUE, .halves = TRUE }, "18 1\u20442" },
  { 470.3, { SQ_UNIT_MM, 1, 0, ',', .halves = TRUE }, "470,5" },
  { 470.2, { SQ_UNIT_MM, 1, 0, ',', .with_unit = TRUE, .halves = TRUE }, "470 mm" },
  { 122.6, { SQ_UNIT_CM, 1, 1, '.', .halves = TRUE }, "12.25" },
};

static void
test_cases (void)
{
  for (gsize i = 0; i < G_N_ELEMENTS (cases); i++)
    {
      g_autofree char *text = sq_length_format (cases[i].mm, &cases[i].style);

      g_assert_cmpstr (text, ==, cases[i].text);
    }
}

static void
test_defaults (void)
{
  static const char *const texts[] = { "18 1/2", "470", "47.0" };

  for (guint unit = SQ_UNIT_IN; unit <= SQ_UNIT_CM; unit++)
    {
      const SqLengthStyle style = sq_length_style_default (unit);
      g_autofree char *text = sq_length_format (469.9, &style);

      g_assert_cmpstr (text, ==, texts[unit]);
    }
}

static SqLengthStyle
random_style (void)
{
  return (SqLengthStyle){
    .unit = (SqUnit) g_test_rand_int_range (SQ_UNIT_IN, SQ_UNIT_CM + 1),
    .sixteenths = (guint) g_test_rand_int_range (1, 33),
    .decimals = (guint) g_test_rand_int_range (0, 7),
    .decimal = g_test_rand_bit () ? '.' : ',',
    .set = g_test_rand_bit (),
    .with_unit = g_test_rand_bit (),
    .halves = g_test_rand_bit (),
  };
}

static double
step_mm (const SqLengthStyle *style)
{
  double whole_mm = style->unit == SQ_UNIT_IN ? style->sixteenths * IN / 16.0
                                              : (style->unit == SQ_UNIT_CM ? 10.0 : 1.0)
                                                    * pow (10.0, -(double) style->decimals);
  return style->halves ? whole_mm / 2 : whole_mm;
}

/* What is shown is what the text means, to the bit, and no farther off than half a step. */
static void
test_read_back (void)
{
  for (guint i = 0; i < 50000; i++)
    {
      const SqLengthStyle style = random_style ();
      const double range = g_test_rand_bit () ? 5.0 : 99000.0;
      const double mm = g_test_rand_double_range (-range, range);
      const double rounded = sq_length_rounded_mm (mm, &style);
      g_autofree char *text = sq_length_format (mm, &style);
      double read = NAN;

      g_assert_cmpint (sq_length_parse (text, style.unit, style.decimal, &read, NULL), ==,
                       SQ_LENGTH_OK);
      g_assert_cmpfloat (read, ==, rounded);
      g_assert_false (signbit (rounded) && rounded == 0.0);
      g_assert_false (g_str_has_prefix (text, "-0") && rounded == 0.0);
      g_assert_cmpfloat (fabs (rounded - mm), <=, step_mm (&style) / 2.0 * (1.0 + 1e-6));
    }
}

static void
test_rounding_stays (void)
{
  for (guint i = 0; i < 20000; i++)
    {
      const SqLengthStyle style = random_style ();
      const double once = sq_length_rounded_mm (g_test_rand_double_range (-3000.0, 3000.0), &style);

      g_assert_cmpfloat (sq_length_rounded_mm (once, &style), ==, once);
    }
}

/* Every odd 1/32 in goes away from zero, as does every odd half millimetre. */
static void
test_halves (void)
{
  const SqLengthStyle inches = sq_length_style_default (SQ_UNIT_IN);
  const SqLengthStyle whole_mm = sq_length_style_default (SQ_UNIT_MM);

  for (int k = 1; k < 5000; k += 2)
    {
      g_assert_cmpfloat (sq_length_rounded_mm (k / 32.0 * IN, &inches), ==, (k + 1) / 32.0 * IN);
      g_assert_cmpfloat (sq_length_rounded_mm (-k / 32.0 * IN, &inches), ==, -(k + 1) / 32.0 * IN);
      g_assert_cmpfloat (sq_length_rounded_mm (k / 2.0, &whole_mm), ==, (k + 1) / 2);
      g_assert_cmpfloat (sq_length_rounded_mm (-k / 2.0, &whole_mm), ==, -(k + 1) / 2);
    }
}

int
main (int argc, char *argv[])
{
  g_test_init (&argc, &argv, NULL);
  g_test_add_func ("/base/length-format/cases", test_cases);
  g_test_add_func ("/base/length-format/defaults", test_defaults);
  g_test_add_func ("/base/length-format/read-back", test_read_back);
  g_test_add_func ("/base/length-format/rounding-stays", test_rounding_stays);
  g_test_add_func ("/base/length-format/halves", test_halves);
  return g_test_run ();
}
