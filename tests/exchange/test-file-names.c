/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "exchange/file-names.h"

#include <string.h>

static void
test_names (void)
{
  static const struct
  {
    const char *name, *file;
  } cases[] = {
    { "3 Front boxing", "3 Front boxing" },
    { "Stern/port\\starboard", "Stern-port-starboard" },
    { "a:b*c?d\"e<f>g|h", "a-b-c-d-e-f-g-h" },
    { "two\nlines\ttab", "two-lines-tab" },
    { "..", "piece" },
    { ". hidden .", "hidden" },
    { "", "piece" },
    { "窓辺の座布団", "窓辺の座布団" },
    { "caf\xe9", "caf\xef\xbf\xbd" },
  };

  for (guint i = 0; i < G_N_ELEMENTS (cases); i++)
    {
      g_autofree char *file = sq_file_name (cases[i].name, "piece");
      g_assert_cmpstr (file, ==, cases[i].file);
    }
}

/* No character is cut in two. */
static void
test_long (void)
{
  for (guint before = 0; before < 4; before++)
    {
      g_autoptr (GString) name = g_string_new (NULL);
      for (guint i = 0; i < before; i++)
        g_string_append_c (name, 'a');
      for (guint i = 0; i < 200; i++)
        g_string_append (name, "座");
      g_autofree char *file = sq_file_name (name->str, "piece");
      g_assert_true (g_utf8_validate (file, -1, NULL));
      g_assert_cmpuint (strlen (file), <=, 100);
      g_assert_cmpuint (strlen (file), >, 96);
    }
}

int
main (int argc, char **argv)
{
  g_test_init (&argc, &argv, NULL);
  g_test_add_func ("/file names/names", test_names);
  g_test_add_func ("/file names/long", test_long);
  return g_test_run ();
}
