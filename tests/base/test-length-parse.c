/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "base/length.h"

#include <math.h>
#include <string.h>

#define IN 25.4

/* Worked by hand from the rules in the header. */
typedef struct
{
  const char *text;
  SqUnit unit;
  double mm;
} Good;

static const Good good_with_point[] = {
  /* Figures */
  { "18", SQ_UNIT_IN, 18.0 * IN },
  { "470", SQ_UNIT_MM, 470.0 },
  { "47", SQ_UNIT_CM, 470.0 },
  { "47.3", SQ_UNIT_CM, 473.0 },
  { "0", SQ_UNIT_MM, 0.0 },
  { "-0", SQ_UNIT_MM, 0.0 },
  { "007", SQ_UNIT_MM, 7.0 },
  { ".5", SQ_UNIT_MM, 0.5 },
  { "-.5", SQ_UNIT_MM, -0.5 },
  { "+5", SQ_UNIT_MM, 5.0 },
  { "- 5", SQ_UNIT_MM, -5.0 },
  { "  18  ", SQ_UNIT_MM, 18.0 },
  { "\t18\n", SQ_UNIT_MM, 18.0 },
  { "0.00000000000000000000000000000000000001", SQ_UNIT_MM, 1e-38 },

  /* Fractions */
  { "1/2", SQ_UNIT_IN, 0.5 * IN },
  { "18 1/2", SQ_UNIT_IN, 18.5 * IN },
  { "18   1/2", SQ_UNIT_IN, 18.5 * IN },
  { "18 1/2\"", SQ_UNIT_MM, 18.5 * IN },
  { "18 15/16 in", SQ_UNIT_MM, 18.9375 * IN },
  { "1/2\"", SQ_UNIT_MM, 0.5 * IN },
  { "3/4 in", SQ_UNIT_CM, 0.75 * IN },
  { "5/4 in", SQ_UNIT_CM, 1.25 * IN },
  { "-18 1/2", SQ_UNIT_IN, -18.5 * IN },
  { "18\u00bd", SQ_UNIT_IN, 18.5 * IN },
  { "18 \u00bd\"", SQ_UNIT_MM, 18.5 * IN },
  { "\u00bd", SQ_UNIT_IN, 0.5 * IN },
  { "18-\u00bd", SQ_UNIT_IN, 18.5 * IN },
  { "18 1\u20442", SQ_UNIT_IN, 18.5 * IN },
  { "1\u20442\"", SQ_UNIT_MM, 0.5 * IN },
  { "18-1\u20442", SQ_UNIT_IN, 18.5 * IN },

  /* A hyphen that joins, and every other one */
  { "18-1/2", SQ_UNIT_IN, 18.5 * IN },
  { "18-1/2\"", SQ_UNIT_MM, 18.5 * IN },
  { "18-1/2 in", SQ_UNIT_MM, 18.5 * IN },
  { "18-1/2 \t", SQ_UNIT_MM, 18.5 },
  { "-18-1/2", SQ_UNIT_MM, -18.5 },
  { "18 - 1/2", SQ_UNIT_IN, 17.5 * IN },
  { "18 -1/2", SQ_UNIT_IN, 17.5 * IN },
  { "18- 1/2", SQ_UNIT_IN, 17.5 * IN },
  { "18-1/2*2", SQ_UNIT_IN, 17.0 * IN },
  { "18-1/2 + 3", SQ_UNIT_MM, 20.5 },
  { "(18-1/2)*2", SQ_UNIT_MM, 35.0 },
  { "18-1/2/2", SQ_UNIT_MM, 17.75 },
  { "18-1/2.5", SQ_UNIT_MM, 17.6 },
  { "3-5/4", SQ_UNIT_IN, 1.75 * IN },
  { "3-4/4", SQ_UNIT_IN, 2.0 * IN },
  { "18.0-1/2", SQ_UNIT_MM, 17.5 },
  { "18\u22121/2", SQ_UNIT_MM, 17.5 },
  { "18\"-1/2\"", SQ_UNIT_MM, 17.5 * IN },
  { "18-1", SQ_UNIT_MM, 17.0 },

  /* Feet */
  { "6'", SQ_UNIT_MM, 72.0 * IN },
  { "6 ft", SQ_UNIT_MM, 72.0 * IN },
  { "1' 6 1/2\"", SQ_UNIT_MM, 18.5 * IN },
  { "1'6-1/2\"", SQ_UNIT_MM, 18.5 * IN },
  { "1'6\u00bd\"", SQ_UNIT_MM, 18.5 * IN },
  { "1\u2032 6\u2033", SQ_UNIT_MM, 18.0 * IN },
  { "1' 6", SQ_UNIT_MM, 18.0 * IN },
  { "1' 6.5\"", SQ_UNIT_MM, 18.5 * IN },
  { "1' .5", SQ_UNIT_MM, 12.5 * IN },
  { "1' \u00bd\"", SQ_UNIT_MM, 12.5 * IN },
  { "1' 1/2", SQ_UNIT_MM, 12.5 * IN },
  { "1ft6in", SQ_UNIT_MM, 18.0 * IN },
  { "1 ft 6 in", SQ_UNIT_CM, 18.0 * IN },
  { "1.5'", SQ_UNIT_MM, 18.0 * IN },
  { "-1' 6\"", SQ_UNIT_MM, -18.0 * IN },
  { "1' - 6\"", SQ_UNIT_MM, 6.0 * IN },
  { "1'-6\"", SQ_UNIT_MM, 6.0 * IN },
  { "2*1' 6\"", SQ_UNIT_MM, 36.0 * IN },
  { "1' 6\" / 2", SQ_UNIT_MM, 9.0 * IN },
  { "1' 6/2", SQ_UNIT_MM, 9.0 * IN },

  /* Other units */
  { "47 cm", SQ_UNIT_IN, 470.0 },
  { "47cm", SQ_UNIT_IN, 470.0 },
  { "0.47 m", SQ_UNIT_IN, 470.0 },
  { "470 mm", SQ_UNIT_IN, 470.0 },
  { "47cm + 3 mm", SQ_UNIT_IN, 473.0 },
  { "1/2 m", SQ_UNIT_IN, 500.0 },

  /* Sums */
  { "36 - 2*1/2", SQ_UNIT_IN, 35.0 * IN },
  { "(36+1)/2", SQ_UNIT_IN, 18.5 * IN },
  { "1/2*3", SQ_UNIT_IN, 1.5 * IN },
  { "2+3*4", SQ_UNIT_MM, 14.0 },
  { "(2+3)*4", SQ_UNIT_MM, 20.0 },
  { "20-5-3", SQ_UNIT_MM, 12.0 },
  { "80/4/2", SQ_UNIT_MM, 10.0 },
  { "8 / 1/2", SQ_UNIT_MM, 4.0 },
  { "8/1/2", SQ_UNIT_MM, 4.0 },
  { "8 / \u00bd", SQ_UNIT_MM, 16.0 },
  { "9 / 1 1/2", SQ_UNIT_MM, 6.0 },
  { "2*-3", SQ_UNIT_MM, -6.0 },
  { "18 - -2", SQ_UNIT_MM, 20.0 },
  { "18--2", SQ_UNIT_MM, 20.0 },
  { "3 \u00d7 4", SQ_UNIT_MM, 12.0 },
  { "5 \u2212 \u22123", SQ_UNIT_MM, 8.0 },
  { "-(2+3)", SQ_UNIT_MM, -5.0 },
  { "((((7))))", SQ_UNIT_MM, 7.0 },
  { "1/(1/2)", SQ_UNIT_MM, 2.0 },

  /* Sums of lengths and bare figures */
  { "1 + 1 cm", SQ_UNIT_IN, 35.4 },
  { "1 cm + 1", SQ_UNIT_IN, 35.4 },
  { "1 cm - 1", SQ_UNIT_MM, 9.0 },
  { "2 * 3 cm", SQ_UNIT_IN, 60.0 },
  { "3 cm * 2", SQ_UNIT_IN, 60.0 },
  { "3 cm / 2", SQ_UNIT_IN, 15.0 },
  { "(1 + 1 cm) * 2", SQ_UNIT_IN, 70.8 },
  { "(36+1) cm", SQ_UNIT_IN, 370.0 },
  { "(1 + 2)\" / 2", SQ_UNIT_MM, 1.5 * IN },
  { "0 * 5 m", SQ_UNIT_MM, 0.0 },

  /* Spaces of all kinds: no-break, thin, narrow no-break */
  { "18\u00a01/2", SQ_UNIT_IN, 18.5 * IN },
  { "18\u20091/2\u202fin", SQ_UNIT_MM, 18.5 * IN },
  { "\u00a047\u00a0cm\u00a0", SQ_UNIT_MM, 470.0 },

  /* The largest */
  { "100 m", SQ_UNIT_MM, 100000.0 },
  { "-100000", SQ_UNIT_MM, -100000.0 },
  { "100000000000 / 1000000", SQ_UNIT_MM, 100000.0 },
};

static const Good good_with_comma[] = {
  { "0,47 m", SQ_UNIT_IN, 470.0 },    { ",5", SQ_UNIT_MM, 0.5 },
  { "47,3", SQ_UNIT_CM, 473.0 },      { "1' 6,5\"", SQ_UNIT_MM, 18.5 * IN },
  { "1' ,5", SQ_UNIT_MM, 12.5 * IN }, { "18-1/2", SQ_UNIT_IN, 18.5 * IN },
  { "18-1/2,5", SQ_UNIT_MM, 17.6 },   { "2*1,5", SQ_UNIT_MM, 3.0 },
};

static void
check_good (const Good *cases, gsize n, char decimal)
{
  for (gsize i = 0; i < n; i++)
    {
      double mm = NAN;
      gsize at = 77;
      const SqLengthResult result = sq_length_parse (cases[i].text, cases[i].unit, decimal, &mm,
                                                     &at);

      if (result != SQ_LENGTH_OK || !(fabs (mm - cases[i].mm) <= 1e-12 * fabs (cases[i].mm)))
        g_error ("`%s`: result %d at %" G_GSIZE_FORMAT ", %.17g mm", cases[i].text, result, at, mm);
      g_assert_false (signbit (mm) && mm == 0.0);
    }
}

static void
test_point (void)
{
  check_good (good_with_point, G_N_ELEMENTS (good_with_point), '.');
}

static void
test_comma (void)
{
  check_good (good_with_comma, G_N_ELEMENTS (good_with_comma), ',');
}

/* Feet and inches are the same bits as inches, so that nothing changes when a figure is shown. */
static void
test_bits (void)
{
  static const char *const texts[] = { "1' 6 1/2\"", "18.5",       "18 1/2",
                                       "18-1/2",     "18\u00bd\"", "1ft 6.5in" };

  for (gsize i = 0; i < G_N_ELEMENTS (texts); i++)
    {
      double mm = NAN;

      g_assert_cmpint (sq_length_parse (texts[i], SQ_UNIT_IN, '.', &mm, NULL), ==, SQ_LENGTH_OK);
      g_assert_cmpfloat (mm, ==, 18.5 * IN);
    }
}

static const struct
{
  const char *text;
  char decimal;
  SqLengthResult result;
  gsize at;
} bad[] = {
  { "", '.', SQ_LENGTH_EMPTY, 0 },
  { "  \u00a0 ", '.', SQ_LENGTH_EMPTY, 0 },

  /* The other decimal sign, and thousands of any kind */
  { "0,47", '.', SQ_LENGTH_UNEXPECTED, 1 },
  { "0.47", ',', SQ_LENGTH_UNEXPECTED, 1 },
  { "1,000", '.', SQ_LENGTH_UNEXPECTED, 1 },
  { "1.000,5", ',', SQ_LENGTH_UNEXPECTED, 1 },
  { "1,000.5", '.', SQ_LENGTH_UNEXPECTED, 1 },
  { "1 000", '.', SQ_LENGTH_UNEXPECTED, 2 },
  { "1\u00a0000", '.', SQ_LENGTH_UNEXPECTED, 3 },
  { "1'000", '.', SQ_LENGTH_UNEXPECTED, 2 },
  { "1.2.3", '.', SQ_LENGTH_UNEXPECTED, 3 },
  { "5.", '.', SQ_LENGTH_UNFINISHED, 2 },
  { "5. + 3", '.', SQ_LENGTH_UNEXPECTED, 2 },
  { "5. 5", '.', SQ_LENGTH_UNEXPECTED, 2 },
  { ".", '.', SQ_LENGTH_UNFINISHED, 1 },

  /* Words that other readers take for numbers */
  { "nan", '.', SQ_LENGTH_UNEXPECTED, 0 },
  { "inf", '.', SQ_LENGTH_UNEXPECTED, 0 },
  { "-infinity", '.', SQ_LENGTH_UNEXPECTED, 1 },
  { "1e5", '.', SQ_LENGTH_UNEXPECTED, 1 },
  { "1/2e5", '.', SQ_LENGTH_UNEXPECTED, 3 },
  { "0x10", '.', SQ_LENGTH_UNEXPECTED, 1 },
  { "1/0x10", '.', SQ_LENGTH_FRACTION, 2 },
  { "\u0661", '.', SQ_LENGTH_UNEXPECTED, 0 },

  /* Two figures beside each other */
  { "18 1/2 1/2", '.', SQ_LENGTH_UNEXPECTED, 7 },
  { "18.5 1/2", '.', SQ_LENGTH_UNEXPECTED, 5 },
  { "18.5\u00bd", '.', SQ_LENGTH_UNEXPECTED, 4 },
  { "18 5/4", '.', SQ_LENGTH_UNEXPECTED, 3 },
  { "18 1 / 2", '.', SQ_LENGTH_UNEXPECTED, 3 },
  { "\u00bd\u00bd", '.', SQ_LENGTH_UNEXPECTED, 2 },
  { "2(3)", '.', SQ_LENGTH_UNEXPECTED, 1 },
  { "(2)3", '.', SQ_LENGTH_UNEXPECTED, 3 },
  { "1 m 20", '.', SQ_LENGTH_UNEXPECTED, 4 },
  { "18\" 1/2\"", '.', SQ_LENGTH_UNEXPECTED, 4 },

  /* Units that are none, or not there */
  { "18 yd", '.', SQ_LENGTH_UNEXPECTED, 3 },
  { "18 inch", '.', SQ_LENGTH_UNEXPECTED, 3 },
  { "18 mmm", '.', SQ_LENGTH_UNEXPECTED, 3 },
  { "mm", '.', SQ_LENGTH_UNEXPECTED, 0 },
  { "18 in in", '.', SQ_LENGTH_UNEXPECTED, 6 },
  { "18''", '.', SQ_LENGTH_UNEXPECTED, 3 },
  { "6' 2'", '.', SQ_LENGTH_UNEXPECTED, 4 },
  { "6' 2 cm", '.', SQ_LENGTH_UNEXPECTED, 5 },
  { "18 \u20442", '.', SQ_LENGTH_UNEXPECTED, 3 },

  /* Signs */
  { "--2", '.', SQ_LENGTH_UNEXPECTED, 1 },
  { "*2", '.', SQ_LENGTH_UNEXPECTED, 0 },
  { "2**3", '.', SQ_LENGTH_UNEXPECTED, 2 },
  { "2 ^ 3", '.', SQ_LENGTH_UNEXPECTED, 2 },
  { "18;", '.', SQ_LENGTH_UNEXPECTED, 2 },
  { "-", '.', SQ_LENGTH_UNFINISHED, 1 },
  { "18 +", '.', SQ_LENGTH_UNFINISHED, 4 },
  { "18 + ", '.', SQ_LENGTH_UNFINISHED, 5 },
  { "18 /", '.', SQ_LENGTH_UNFINISHED, 4 },
  { "2*(", '.', SQ_LENGTH_UNFINISHED, 3 },

  /* Nothing below the line */
  { "1/0", '.', SQ_LENGTH_FRACTION, 2 },
  { "18 1/0", '.', SQ_LENGTH_FRACTION, 5 },
  { "18-1/0", '.', SQ_LENGTH_FRACTION, 5 },
  { "18 1/00\"", '.', SQ_LENGTH_FRACTION, 5 },
  { "1\u20440", '.', SQ_LENGTH_FRACTION, 4 },
  { "1 / 0", '.', SQ_LENGTH_DIVISION_BY_ZERO, 4 },
  { "1.5/0", '.', SQ_LENGTH_DIVISION_BY_ZERO, 4 },
  { "1.5/0.0", '.', SQ_LENGTH_DIVISION_BY_ZERO, 4 },
  { "6/(3-3)", '.', SQ_LENGTH_DIVISION_BY_ZERO, 2 },
  { "6/-0", '.', SQ_LENGTH_DIVISION_BY_ZERO, 2 },
  { "6/\u2189", '.', SQ_LENGTH_DIVISION_BY_ZERO, 2 },

  /* Areas and ratios */
  { "2 cm * 3 cm", '.', SQ_LENGTH_UNITS, 5 },
  { "6 cm / 2 cm", '.', SQ_LENGTH_UNITS, 5 },
  { "6 / 2 cm", '.', SQ_LENGTH_UNITS, 2 },
  { "6/(2 + 1 mm)", '.', SQ_LENGTH_UNITS, 1 },
  { "(2 cm) cm", '.', SQ_LENGTH_UNITS, 7 },
  { "(2 cm + 1)\"", '.', SQ_LENGTH_UNITS, 10 },

  /* Parentheses */
  { "(18", '.', SQ_LENGTH_PARENTHESIS, 0 },
  { "2*(3+(4-1) ", '.', SQ_LENGTH_PARENTHESIS, 2 },
  { "18)", '.', SQ_LENGTH_PARENTHESIS, 2 },
  { "(18))", '.', SQ_LENGTH_PARENTHESIS, 4 },
  { "()", '.', SQ_LENGTH_UNEXPECTED, 1 },
  { "(18 19)", '.', SQ_LENGTH_UNEXPECTED, 4 },
  { "[18]", '.', SQ_LENGTH_UNEXPECTED, 0 },

  /* Beyond 100 m */
  { "100.001 m", '.', SQ_LENGTH_TOO_LARGE, 0 },
  { "  -100001", '.', SQ_LENGTH_TOO_LARGE, 2 },
  { "1000*1000*1000", '.', SQ_LENGTH_TOO_LARGE, 0 },
  { "99999999999999999999999999999999999999999999", '.', SQ_LENGTH_TOO_LARGE, 0 },

  /* Not UTF-8: a lone byte, one cut short, a surrogate */
  { "18\xff", '.', SQ_LENGTH_UNEXPECTED, 2 },
  { "18 \xe2\x80", '.', SQ_LENGTH_UNEXPECTED, 3 },
  { "\xed\xa0\x80", '.', SQ_LENGTH_UNEXPECTED, 0 },
  { "18\x01", '.', SQ_LENGTH_UNEXPECTED, 2 },
};

static void
test_bad (void)
{
  for (gsize i = 0; i < G_N_ELEMENTS (bad); i++)
    {
      double mm = 12.5;
      gsize at = 77;
      const SqLengthResult result = sq_length_parse (bad[i].text, SQ_UNIT_MM, bad[i].decimal, &mm,
                                                     &at);

      if (result != bad[i].result || at != bad[i].at)
        g_error ("`%s`: result %d at %" G_GSIZE_FORMAT, bad[i].text, result, at);
      g_assert_cmpfloat (mm, ==, 12.5);
      g_assert_cmpint (sq_length_parse (bad[i].text, SQ_UNIT_MM, bad[i].decimal, &mm, NULL), ==,
                       bad[i].result);
    }
}

/* The characters' values are those of the Unicode Standard's data (Numeric_Value). */
static void
test_fraction_characters (void)
{
  static const struct
  {
    const char *text;
    double upper, lower;
  } fractions[] = {
    { "\u00bc", 1, 4 }, { "\u00bd", 1, 2 },  { "\u00be", 3, 4 }, { "\u2150", 1, 7 },
    { "\u2151", 1, 9 }, { "\u2152", 1, 10 }, { "\u2153", 1, 3 }, { "\u2154", 2, 3 },
    { "\u2155", 1, 5 }, { "\u2156", 2, 5 },  { "\u2157", 3, 5 }, { "\u2158", 4, 5 },
    { "\u2159", 1, 6 }, { "\u215a", 5, 6 },  { "\u215b", 1, 8 }, { "\u215c", 3, 8 },
    { "\u215d", 5, 8 }, { "\u215e", 7, 8 },  { "\u2189", 0, 3 },
  };

  for (gsize i = 0; i < G_N_ELEMENTS (fractions); i++)
    {
      const double part = fractions[i].upper / fractions[i].lower;
      g_autofree char *mixed = g_strconcat ("18", fractions[i].text, NULL);
      double mm = NAN;

      g_assert_cmpint (sq_length_parse (fractions[i].text, SQ_UNIT_MM, '.', &mm, NULL), ==,
                       SQ_LENGTH_OK);
      g_assert_cmpfloat (mm, ==, part);
      g_assert_cmpint (sq_length_parse (mixed, SQ_UNIT_MM, '.', &mm, NULL), ==, SQ_LENGTH_OK);
      g_assert_cmpfloat (mm, ==, 18.0 + part);
    }
}

static char *
nested (guint depth)
{
  g_autofree char *open = g_strnfill (depth, '(');
  g_autofree char *close = g_strnfill (depth, ')');

  return g_strconcat (open, "7", close, NULL);
}

static void
test_depth (void)
{
  g_autofree char *deep = nested (32);
  g_autofree char *too_deep = nested (33);
  double mm = NAN;
  gsize at;

  g_assert_cmpint (sq_length_parse (deep, SQ_UNIT_MM, '.', &mm, &at), ==, SQ_LENGTH_OK);
  g_assert_cmpfloat (mm, ==, 7.0);
  g_assert_cmpint (sq_length_parse (too_deep, SQ_UNIT_MM, '.', &mm, &at), ==, SQ_LENGTH_TOO_LONG);
  g_assert_cmpuint (at, ==, 32);
}

/* Beside each other parentheses are not deep. */
static void
test_groups (void)
{
  g_autoptr (GString) text = g_string_new ("(1)");
  double mm = NAN;

  for (guint i = 1; i < 40; i++)
    g_string_append (text, "+(1)");
  g_assert_cmpint (sq_length_parse (text->str, SQ_UNIT_MM, '.', &mm, NULL), ==, SQ_LENGTH_OK);
  g_assert_cmpfloat (mm, ==, 40.0);
}

static void
test_long (void)
{
  g_autofree char *zeros = g_strnfill (199, '0');
  g_autofree char *longest = g_strconcat (zeros, "7", NULL);
  g_autofree char *too_long = g_strconcat (longest, " ", NULL);
  double mm = NAN;
  gsize at;

  g_assert_cmpint (sq_length_parse (longest, SQ_UNIT_MM, '.', &mm, &at), ==, SQ_LENGTH_OK);
  g_assert_cmpfloat (mm, ==, 7.0);
  g_assert_cmpint (sq_length_parse (too_long, SQ_UNIT_MM, '.', &mm, &at), ==, SQ_LENGTH_TOO_LONG);
  g_assert_cmpuint (at, ==, 200);
}

/* What overflows must not come back as a small length by a division: .3-.1*3 is -5.6e-17 in
 * doubles, and nineteen divisions by it are beyond them. */
static void
test_overflow (void)
{
  g_autoptr (GString) text = g_string_new ("1/(1");
  double mm = 12.5;
  gsize at = 77;

  for (guint i = 0; i < 19; i++)
    g_string_append (text, "/(.3-.1*3)");
  g_string_append (text, ")");
  g_assert_cmpint (sq_length_parse (text->str, SQ_UNIT_MM, '.', &mm, &at), ==, SQ_LENGTH_TOO_LARGE);
  g_assert_cmpuint (at, ==, 1);
  g_assert_cmpfloat (mm, ==, 12.5);
}

int
main (int argc, char *argv[])
{
  g_test_init (&argc, &argv, NULL);
  g_test_add_func ("/base/length-parse/point", test_point);
  g_test_add_func ("/base/length-parse/comma", test_comma);
  g_test_add_func ("/base/length-parse/bits", test_bits);
  g_test_add_func ("/base/length-parse/bad", test_bad);
  g_test_add_func ("/base/length-parse/fraction-characters", test_fraction_characters);
  g_test_add_func ("/base/length-parse/depth", test_depth);
  g_test_add_func ("/base/length-parse/groups", test_groups);
  g_test_add_func ("/base/length-parse/long", test_long);
  g_test_add_func ("/base/length-parse/overflow", test_overflow);
  return g_test_run ();
}
