/* SPDX-License-Identifier: GPL-3.0-or-later */
/* replay FOLDER: gives every file there to the reader, as one test each. */
#include "fuzz.h"

#include <string.h>

static void
replay (gconstpointer path)
{
  g_autofree char *text = NULL;
  g_autoptr (GError) error = NULL;
  gsize size = 0;

  g_file_get_contents (path, &text, &size, &error);
  g_assert_no_error (error);
  /* A copy without the 0 that GLib puts after it, so that reading past the end is seen; never
   * NULL, as an engine never gives NULL. */
  g_autofree guint8 *bytes = g_malloc (MAX (size, 1));
  memcpy (bytes, text, size);
  g_assert_cmpint (LLVMFuzzerTestOneInput (bytes, size), ==, 0);
}

int
main (int argc, char **argv)
{
  g_autoptr (GError) error = NULL;
  const char *name;
  guint files = 0;

  g_test_init (&argc, &argv, NULL);
  g_assert_cmpint (argc, ==, 2);
  g_autoptr (GDir) folder = g_dir_open (argv[1], 0, &error);
  g_assert_no_error (error);
  for (; (name = g_dir_read_name (folder)); files++)
    {
      g_autofree char *title = g_strdup_printf ("/fuzz/%s", name);
      g_test_add_data_func_full (title, g_build_filename (argv[1], name, NULL), replay, g_free);
    }
  g_assert_cmpuint (files, >, 0); /* an empty corpus proves nothing */
  return g_test_run ();
}
