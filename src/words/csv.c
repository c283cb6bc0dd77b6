/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "words/csv.h"

#include <string.h>

void
sq_csv_add (GString *out, const char *text)
{
  g_autoptr (GString) cell = g_string_new (text);

  if (text[0] != '\0' && strchr ("=+-@\t", text[0]) != NULL)
    g_string_prepend_c (cell, '\'');
  if (strpbrk (cell->str, ",\"\r\n") != NULL)
    {
      g_string_replace (cell, "\"", "\"\"", 0);
      g_string_prepend_c (cell, '"');
      g_string_append_c (cell, '"');
    }
  g_string_append (out, cell->str);
  g_string_append_c (out, ',');
}
