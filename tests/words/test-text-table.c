/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "words/text-table.h"

static void
test_width (void)
{
  g_assert_cmpuint (sq_text_width ("Plate"), ==, 5);
  g_assert_cmpuint (sq_text_width ("座布団"), ==, 6);
  g_assert_cmpuint (sq_text_width ("é"), ==, 1);
  g_assert_cmpuint (sq_text_width ("e\xcc\x81"), ==, 1);
  g_assert_cmpuint (sq_text_width (""), ==, 0);
}

static void
test_clean (void)
{
  g_autofree char *lines = sq_text_clean ("\x1b[31mred\nbench\t");
  g_autofree char *broken = sq_text_clean ("a\xff"
                                           "b");

  g_assert_cmpstr (lines, ==, "[31mred bench");
  g_assert_cmpstr (broken, ==,
                   "a\xef\xbf\xbd"
                   "b");
}

static char *
wrapped (const char *text, guint indent, guint most)
{
  GString *out = g_string_new (NULL);
  sq_text_append_wrapped (out, text, indent, most);
  return g_string_free (out, FALSE);
}

static void
test_wrapped (void)
{
  const struct
  {
    const char *text;
    guint indent, most;
    const char *lines;
  } cases[] = {
    { "one two three", 0, 80, "one two three\n" },
    { "", 0, 80, "\n" },
    { "one two three four", 2, 16, "one two three\n  four\n" },
    { "a notch of 18 1/2 in", 0, 12, "a notch of\n18 1/2 in\n" },
    { "in a plate 20 × 20", 0, 14, "in a plate\n20 × 20\n" },
    { "座布団座布団座布団", 0, 12, "座布団座布団\n座布団\n" },
    { "abcdefghijklmnop", 0, 10, "abcdefghij\nklmnop\n" },
  };

  for (guint i = 0; i < G_N_ELEMENTS (cases); i++)
    {
      g_autofree char *lines = wrapped (cases[i].text, cases[i].indent, cases[i].most);
      g_assert_cmpstr (lines, ==, cases[i].lines);
    }
}

static void
add_row (SqTextTable *table, const char *a, const char *b, const char *c)
{
  char *cells[] = { g_strdup (a), g_strdup (b), g_strdup (c) };
  sq_text_table_add_row (table, cells);
}

static void
test_table (void)
{
  g_autoptr (SqTextTable) table = sq_text_table_new ("rll");
  g_autoptr (GString) out = g_string_new (NULL);

  add_row (table, "No", "Piece", "Place");
  add_row (table, "1", "座布団", "in the boxing of the back");
  sq_text_table_add_remark (table, 1, g_strdup ("cut out 2 3/4 in"));
  add_row (table, "12", "Top", "");
  sq_text_table_append (table, out, 1, 30);
  g_assert_cmpstr (out->str, ==,
                   " No  Piece   Place\n"
                   "  1  座布団  in the boxing of\n"
                   "             the back\n"
                   "     cut out 2 3/4 in\n"
                   " 12  Top\n");
}

static void
test_empty_column (void)
{
  g_autoptr (SqTextTable) table = sq_text_table_new ("llr");
  g_autoptr (GString) out = g_string_new (NULL);

  add_row (table, "Plate", "", "2");
  add_row (table, "Top", "", "14");
  sq_text_table_append (table, out, 0, 30);
  g_assert_cmpstr (out->str, ==, "Plate   2\nTop    14\n");
}

int
main (int argc, char **argv)
{
  g_test_init (&argc, &argv, NULL);
  g_test_add_func ("/words/text-table/width", test_width);
  g_test_add_func ("/words/text-table/clean", test_clean);
  g_test_add_func ("/words/text-table/wrapped", test_wrapped);
  g_test_add_func ("/words/text-table/table", test_table);
  g_test_add_func ("/words/text-table/empty-column", test_empty_column);
  return g_test_run ();
}
