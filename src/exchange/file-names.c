/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "exchange/file-names.h"

#include <string.h>

#define MOST_BYTES 100

static gboolean
is_refused (gunichar c)
{
  return g_unichar_iscntrl (c) || (c < 128 && strchr ("/\\:*?\"<>|", (int) c) != NULL);
}

/* Cuts @name off before a character that would pass MOST_BYTES. */
static void
shorten (GString *name)
{
  gsize end = MIN (name->len, MOST_BYTES);

  while (end < name->len && ((guchar) name->str[end] & 0xc0) == 0x80)
    end--;
  g_string_truncate (name, end);
}

char *
sq_file_name (const char *name, const char *otherwise)
{
  g_autofree char *valid = g_utf8_make_valid (name, -1);
  GString *clean = g_string_new (NULL);

  for (const char *at = valid; *at != '\0'; at = g_utf8_next_char (at))
    g_string_append_unichar (clean, is_refused (g_utf8_get_char (at)) ? '-' : g_utf8_get_char (at));
  while (clean->len > 0 && strchr (". ", clean->str[0]) != NULL)
    g_string_erase (clean, 0, 1);
  shorten (clean);
  while (clean->len > 0 && strchr (". ", clean->str[clean->len - 1]) != NULL)
    g_string_truncate (clean, clean->len - 1);
  if (clean->len == 0)
    g_string_assign (clean, otherwise);
  return g_string_free (clean, FALSE);
}
