/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "words/angles.h"

#include "words/lengths.h"

#include <math.h>
#include <string.h>

#define DEGREE "\xc2\xb0"

gboolean
sq_words_is_square (double rad)
{
  return fabs (rad - M_PI / 2) < SQ_SQUARE_RAD;
}

char *
sq_words_angle (double rad, const SqLengthStyle *style)
{
  double tenths = round (rad * SQ_DEG_PER_RAD * 10);
  g_autofree char *number = sq_words_number (tenths / 10, fmod (tenths, 10) != 0, style);
  return g_strconcat (number, DEGREE, NULL);
}

/* Units of length have letters, or marks of feet and inches. */
static gboolean
has_unit (const char *text)
{
  for (const char *c = text; *c != '\0'; c = g_utf8_next_char (c))
    {
      gunichar character = g_utf8_get_char (c);
      if (g_unichar_isalpha (character)
          || g_utf8_strchr ("'\"\u2032\u2033\u2019\u201d", -1, character) != NULL)
        return TRUE;
    }
  return FALSE;
}

SqLengthResult
sq_words_read_angle (const char *text, char decimal, double *rad)
{
  g_autofree char *figure = NULL;
  double degrees;
  SqLengthResult result;
  if (!g_utf8_validate (text, -1, NULL))
    return SQ_LENGTH_UNEXPECTED;
  figure = g_strchomp (g_strdup (text));
  if (g_str_has_suffix (figure, DEGREE))
    figure[strlen (figure) - strlen (DEGREE)] = '\0';
  if (has_unit (figure))
    return SQ_LENGTH_UNEXPECTED;
  result = sq_length_parse (figure, SQ_UNIT_MM, decimal, &degrees, NULL);
  if (result == SQ_LENGTH_OK)
    *rad = degrees * SQ_RAD_PER_DEG;
  return result;
}
