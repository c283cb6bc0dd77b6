/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "base/ranges.h"

#include <string.h>

static void
skip_blanks (const char **at)
{
  while (g_ascii_isspace (**at))
    ++*at;
}

/* A number at *@at, which moves behind it; @otherwise where there is none. */
static guint64
read_number (const char **at, guint64 otherwise)
{
  if (!g_ascii_isdigit (**at))
    return otherwise;
  char *end;
  guint64 number = g_ascii_strtoull (*at, &end, 10);

  *at = end;
  skip_blanks (at);
  return number;
}

static gboolean
take_dash (const char **at)
{
  static const char *const dashes[] = { "-", "\xe2\x80\x93" }; /* as an en dash, too */

  for (guint i = 0; i < G_N_ELEMENTS (dashes); i++)
    if (g_str_has_prefix (*at, dashes[i]))
      {
        *at += strlen (dashes[i]);
        skip_blanks (at);
        return TRUE;
      }
  return FALSE;
}

/* "4" or "3-5" at *@at, as marks in @wanted; FALSE: it is neither. */
static gboolean
read_range (const char **at, guint most, gboolean *wanted)
{
  skip_blanks (at);
  gboolean has_first = g_ascii_isdigit (**at);
  guint64 first = read_number (at, 1), last = first;

  if (take_dash (at))
    {
      gboolean has_last = g_ascii_isdigit (**at);
      last = read_number (at, most);
      if (!has_first && !has_last)
        return FALSE;
    }
  else if (!has_first)
    return FALSE;
  if (first < 1 || first > most || last < first)
    return FALSE;
  for (guint64 i = first; i <= MIN (last, most); i++)
    wanted[i] = TRUE;
  return TRUE;
}

GArray *
sq_ranges_read (const char *text, guint most)
{
  g_autofree gboolean *wanted = g_new0 (gboolean, (gsize) most + 1);
  const char *at = text;
  GArray *numbers;

  do
    if (!read_range (&at, most, wanted))
      return NULL;
  while (*at == ',' && *++at != '\0');
  if (*at != '\0')
    return NULL;
  numbers = g_array_new (FALSE, FALSE, sizeof (guint));
  for (guint i = 1; i <= most; i++)
    if (wanted[i])
      g_array_append_val (numbers, i);
  return numbers;
}
