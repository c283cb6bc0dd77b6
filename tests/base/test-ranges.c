/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "base/ranges.h"

static void
test_reads (void)
{
  static const struct
  {
    const char *text, *numbers; /* NULL: refused */
  } cases[] = {
    { "1", "1 " },
    { "3,1", "1 3 " },
    { "1, 3-5", "1 3 4 5 " },
    { " 2 – 4 , 3", "2 3 4 " },
    { "8-", "8 9 10 " },
    { "-3", "1 2 3 " },
    { "9-99999999999", "9 10 " },
    { "1,", "1 " },
    { "", NULL },
    { " ", NULL },
    { "-", NULL },
    { "0", NULL },
    { "0-3", NULL },
    { "11", NULL },
    { "11-12", NULL },
    { "5-3", NULL },
    { ",1", NULL },
    { "1,,2", NULL },
    { "1 2", NULL },
    { "1 -2x", NULL },
    { "a", NULL },
    { "1-2-3", NULL },
  };

  for (guint i = 0; i < G_N_ELEMENTS (cases); i++)
    {
      g_autoptr (GArray) numbers = sq_ranges_read (cases[i].text, 10);
      g_autoptr (GString) text = g_string_new (NULL);
      g_test_message ("“%s”", cases[i].text);
      g_assert_true ((numbers == NULL) == (cases[i].numbers == NULL));
      for (guint k = 0; numbers != NULL && k < numbers->len; k++)
        g_string_append_printf (text, "%u ", g_array_index (numbers, guint, k));
      if (numbers != NULL)
        g_assert_cmpstr (text->str, ==, cases[i].numbers);
    }
}

static void
test_nothing_to_choose_from (void)
{
  g_assert_null (sq_ranges_read ("1", 0));
  g_assert_null (sq_ranges_read ("1-", 0));
}

int
main (int argc, char **argv)
{
  g_test_init (&argc, &argv, NULL);
  g_test_add_func ("/ranges/reads", test_reads);
  g_test_add_func ("/ranges/nothing to choose from", test_nothing_to_choose_from);
  return g_test_run ();
}
