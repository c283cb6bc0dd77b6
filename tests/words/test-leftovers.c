/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "words/leftovers.h"

static void
assert_text (char *text, const char *wanted)
{
  g_assert_cmpstr (text, ==, wanted);
  g_free (text);
}

static void
test_leftovers (void)
{
  SqLengthStyle in = sq_length_style_default (SQ_UNIT_IN);
  const SqLeftover two[] = { { .along_mm = 24 * 25.4, .across_mm = 53.5 * 25.4 },
                             { .along_mm = 18 * 25.4, .across_mm = 13 * 25.4 } };
  g_autoptr (GArray) leftovers = g_array_new (FALSE, FALSE, sizeof (SqLeftover));

  assert_text (sq_words_leftovers (leftovers, &in), "");
  g_array_append_vals (leftovers, two, 2);
  assert_text (sq_words_leftovers (leftovers, &in),
               "Leftovers worth keeping: 24 × 53 1/2 in, 18 × 13 in");
  for (guint i = 0; i < 3; i++)
    g_array_append_vals (leftovers, two, 2);
  g_autofree char *eight = sq_words_leftovers (leftovers, &in);
  g_assert_null (strstr (eight, "smaller"));
  g_array_append_vals (leftovers, two, 2);
  g_autofree char *ten = sq_words_leftovers (leftovers, &in);
  g_assert_true (g_str_has_suffix (ten, "24 × 53 1/2 in, 3 smaller"));
}

int
main (int argc, char **argv)
{
  g_test_init (&argc, &argv, NULL);
  g_test_add_func ("/words/leftovers/list", test_leftovers);
  return g_test_run ();
}
