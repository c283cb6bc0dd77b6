/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "base/number.h"

#include <float.h>
#include <locale.h>
#include <math.h>
#include <string.h>

/* Worked by hand from the rule in the header; the doubles' exact values are IEEE 754's. */
static const struct
{
  double value;
  const char *text;
} cases[] = {
  { 0.0, "0" },
  { -0.0, "0" },
  { 1.0, "1" },
  { -1.0, "-1" },
  { 10.0, "10" },
  { 457.2, "457.2" },
  { 63.5, "63.5" },
  { 0.1, "0.1" },
  { -0.1, "-0.1" },
  { 0.1 + 0.2, "0.30000000000000004" },
  { 1.0 / 3.0, "0.333333333333333"
               "3" },
  { 100000.0, "100000" },
  { 123456789012345.0, "123456789012345" },
  { 1e15, "1000000000000000" },
  { -1e15, "-1000000000000000" },
  { 999999999999999.9, "999999999999999.9" },
  { 1.5e15, "1.5e15" },
  { 1e16, "1e16" },
  { 1e21, "1e21" },
  { 9007199254740993.0, "9.007199254740992e15" },
  { 1e-5, "0.00001" },
  { 1.2345e-5, "0.000012345" },
  { -1.2345678901234567e-5, "-0.000012345678901234568" },
  { 9e-6, "9e-6" },
  { 1e-7, "1e-7" },
  { -2.5e-10, "-2.5e-10" },
  { DBL_MAX, "1.7976931348623157e308" },
  { -DBL_MAX, "-1.7976931348623157e308" },
  { DBL_MIN, "2.2250738585072014e-308" },
  { DBL_TRUE_MIN, "4.94065645841247e-324" },
};

static void
test_cases (void)
{
  for (gsize i = 0; i < G_N_ELEMENTS (cases); i++)
    {
      char buffer[SQ_NUMBER_SIZE];

      g_assert_true (sq_number_write (cases[i].value, buffer) == buffer);
      g_assert_cmpstr (buffer, ==, cases[i].text);
      g_assert_cmpfloat (g_ascii_strtod (buffer, NULL), ==, cases[i].value);
    }
}

static guint64
bits_of (double value)
{
  guint64 bits;

  memcpy (&bits, &value, sizeof bits);
  return bits;
}

static double
random_double (void)
{
  double value;

  do
    {
      const guint64 bits = ((guint64) (guint32) g_test_rand_int () << 32)
                           | (guint32) g_test_rand_int ();

      memcpy (&value, &bits, sizeof value);
    }
  while (!isfinite (value) || value == 0.0);
  return value;
}

/* The digits of a number without sign, point, exponent and zeros at either end. */
static guint
count_digits (const char *text)
{
  guint digits = 0, zeros = 0;

  for (; *text != '\0' && *text != 'e'; text++)
    if (*text == '0')
      zeros += digits > 0 ? 1 : 0;
    else if (g_ascii_isdigit (*text))
      {
        digits += zeros + 1;
        zeros = 0;
      }
  return digits;
}

/* What RFC 8259 calls a number: -? (0 | 1-9 digits) (. digits)? (e -? digits)? */
static gboolean
is_json_number (const char *text)
{
  return g_regex_match_simple ("^-?(0|[1-9][0-9]*)(\\.[0-9]+)?(e-?[1-9][0-9]*)?$", text, 0, 0);
}

static void
check_value (double value)
{
  char buffer[SQ_NUMBER_SIZE], shorter[SQ_NUMBER_SIZE];
  guint digits;

  sq_number_write (value, buffer);
  g_assert_cmpuint (bits_of (g_ascii_strtod (buffer, NULL)), ==, bits_of (value));
  g_assert_true (is_json_number (buffer));
  g_assert_cmpint (strchr (buffer, 'e') == NULL, ==, fabs (value) >= 1e-5 && fabs (value) <= 1e15);

  digits = count_digits (buffer);
  g_assert_cmpuint (digits, <=, 17);
  if (digits > 15) /* one digit fewer must not do */
    {
      g_autofree char *format = g_strdup_printf ("%%.%uE", digits - 2);

      g_ascii_formatd (shorter, sizeof shorter, format, value);
      g_assert_cmpuint (bits_of (g_ascii_strtod (shorter, NULL)), !=, bits_of (value));
    }
}

static void
test_random_bits (void)
{
  for (guint i = 0; i < 20000; i++)
    check_value (random_double ());
}

static void
test_random_lengths (void)
{
  for (guint i = 0; i < 20000; i++)
    {
      check_value (g_test_rand_double_range (1e-4, 1e5));
      check_value (-(double) g_test_rand_int_range (1, 1000000) / 1000.0);
    }
}

static void
test_subnormals (void)
{
  for (guint i = 0; i < 5000; i++)
    check_value (DBL_TRUE_MIN * g_test_rand_int_range (1, G_MAXINT32));
}

/* Where no locale with a decimal comma is installed this checks the C locale once more. */
static void
test_comma_locale (void)
{
  static const char *const names[] = { "de_DE.UTF-8", "fr_FR.UTF-8", "nl_NL.UTF-8", "it_IT.UTF-8" };

  for (gsize i = 0; i < G_N_ELEMENTS (names); i++)
    if (setlocale (LC_ALL, names[i]) != NULL)
      break;
  test_cases ();
  setlocale (LC_ALL, "C");
}

int
main (int argc, char *argv[])
{
  g_test_init (&argc, &argv, NULL);
  g_test_add_func ("/base/number/cases", test_cases);
  g_test_add_func ("/base/number/random-bits", test_random_bits);
  g_test_add_func ("/base/number/random-lengths", test_random_lengths);
  g_test_add_func ("/base/number/subnormals", test_subnormals);
  g_test_add_func ("/base/number/comma-locale", test_comma_locale);
  return g_test_run ();
}
