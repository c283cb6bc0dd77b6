/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "exchange/today.h"

#include <stdlib.h>
#include <string.h>

#define FORM "%Y-%m-%d"

/* The moment the environment sets, or NULL. */
static GDateTime *
set_moment (void)
{
  const char *text = g_getenv ("SOURCE_DATE_EPOCH");
  gint64 seconds;

  if (text == NULL || !g_ascii_string_to_signed (text, 10, 0, G_MAXINT64, &seconds, NULL))
    return NULL;
  return g_date_time_new_from_unix_utc (seconds);
}

char *
sq_today (void)
{
  g_autoptr (GDateTime) moment = set_moment ();

  if (moment == NULL)
    moment = g_date_time_new_now_local ();
  return g_date_time_format (moment, FORM);
}

gboolean
sq_is_date (const char *text)
{
  guint figures[3];

  if (strlen (text) != strlen ("2026-03-01") || text[4] != '-' || text[7] != '-')
    return FALSE;
  for (guint i = 0; i < strlen (text); i++)
    if (i != 4 && i != 7 && !g_ascii_isdigit (text[i]))
      return FALSE;
  figures[0] = (guint) atoi (text);
  figures[1] = (guint) atoi (text + 5);
  figures[2] = (guint) atoi (text + 8);
  return figures[0] > 0
         && g_date_valid_dmy ((GDateDay) figures[2], (GDateMonth) figures[1],
                              (GDateYear) figures[0]);
}
