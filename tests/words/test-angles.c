/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "words/angles.h"

#include <math.h>

static void
assert_shown (double degrees, char decimal, const char *wanted)
{
  SqLengthStyle style = sq_length_style_default (SQ_UNIT_IN);
  style.decimal = decimal;
  g_autofree char *text = sq_words_angle (degrees * SQ_RAD_PER_DEG, &style);
  g_assert_cmpstr (text, ==, wanted);
}

static void
test_shown (void)
{
  assert_shown (90, '.', "90°");
  assert_shown (89.96, '.', "90°");
  assert_shown (89.94, '.', "89.9°");
  assert_shown (101.31, '.', "101.3°");
  assert_shown (101.31, ',', "101,3°");
  assert_shown (270, '.', "270°");
  assert_shown (0, '.', "0°");
}

static void
test_square (void)
{
  g_assert_true (sq_words_is_square (M_PI / 2));
  g_assert_true (sq_words_is_square (90.04 * SQ_RAD_PER_DEG));
  g_assert_false (sq_words_is_square (90.06 * SQ_RAD_PER_DEG));
  g_assert_false (sq_words_is_square (1.5 * M_PI));
}

static void
assert_read (const char *text, char decimal, double wanted)
{
  double rad = 0;
  g_assert_cmpint (sq_words_read_angle (text, decimal, &rad), ==, SQ_LENGTH_OK);
  g_assert_cmpfloat_with_epsilon (rad, wanted * SQ_RAD_PER_DEG, 1e-12);
}

static void
test_read (void)
{
  assert_read ("90", '.', 90);
  assert_read (" 88.2° ", '.', 88.2);
  assert_read ("88,2", ',', 88.2);
  assert_read ("180 - 2*30", '.', 120);
  assert_read ("22 1/2", '.', 22.5);
  assert_read ("22½°", '.', 22.5);
}

static void
test_not_read (void)
{
  const char *const texts[] = { "90 mm", "90'", "90\"", "90″", "steep", "9°0", "90°°" };
  double rad = 7;
  for (guint i = 0; i < G_N_ELEMENTS (texts); i++)
    g_assert_cmpint (sq_words_read_angle (texts[i], '.', &rad), ==, SQ_LENGTH_UNEXPECTED);
  g_assert_cmpint (sq_words_read_angle ("", '.', &rad), ==, SQ_LENGTH_EMPTY);
  g_assert_cmpint (sq_words_read_angle (" ° ", '.', &rad), ==, SQ_LENGTH_EMPTY);
  g_assert_cmpint (sq_words_read_angle ("90-", '.', &rad), ==, SQ_LENGTH_UNFINISHED);
  g_assert_cmpfloat (rad, ==, 7);
}

int
main (int argc, char **argv)
{
  g_test_init (&argc, &argv, NULL);
  g_test_add_func ("/words/angles/shown", test_shown);
  g_test_add_func ("/words/angles/square", test_square);
  g_test_add_func ("/words/angles/read", test_read);
  g_test_add_func ("/words/angles/not-read", test_not_read);
  return g_test_run ();
}
