/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "base/number.h"

#include <math.h>
#include <stdlib.h>
#include <string.h>

/* 15 digits survive the way from text to double and back, 17 the other way round. */
#define FEWEST_DIGITS 15
#define MOST_DIGITS 17

#define PLAIN_FROM 1e-5
#define PLAIN_TO 1e15

/* Writes @size (positive) as d.ddde±xx with the fewest digits that read back the same. */
static void
write_scientific (double size, char buffer[SQ_NUMBER_SIZE])
{
  for (int digits = FEWEST_DIGITS; digits <= MOST_DIGITS; digits++)
    {
      const char format[] = { '%', '.', '1', (char) ('0' + digits - 11), 'e', '\0' };

      g_ascii_formatd (buffer, SQ_NUMBER_SIZE, format, size);
      if (g_ascii_strtod (buffer, NULL) == size)
        return;
    }
}

/* Takes d.ddde±xx apart: @digits without point and without zeros at the end. Returns the power of
 * ten of the first one. */
static int
take_apart (const char *scientific, char digits[MOST_DIGITS + 1])
{
  const char *e = strchr (scientific, 'e');
  gsize n = 0;

  for (const char *c = scientific; c < e; c++)
    if (*c != '.')
      digits[n++] = *c;
  while (n > 1 && digits[n - 1] == '0')
    n--;
  digits[n] = '\0';
  return atoi (e + 1);
}

static void
write_plain (const char *digits, int power, char *out, gsize size)
{
  const int n = (int) strlen (digits);
  const int whole = power + 1; /* digits before the point */

  if (whole <= 0)
    g_snprintf (out, size, "0.%.*s%s", -whole, "0000", digits);
  else if (whole < n)
    g_snprintf (out, size, "%.*s.%s", whole, digits, digits + whole);
  else
    g_snprintf (out, size, "%s%.*s", digits, whole - n, "000000000000000");
}

const char *
sq_number_write (double value, char buffer[SQ_NUMBER_SIZE])
{
  const double size = fabs (value);
  const gsize sign = value < 0.0 ? 1 : 0;
  char digits[MOST_DIGITS + 1];
  int power;

  g_return_val_if_fail (isfinite (value), NULL);

  write_scientific (size, buffer);
  power = take_apart (buffer, digits);
  if (sign != 0)
    buffer[0] = '-';
  if (size == 0.0 || (size >= PLAIN_FROM && size <= PLAIN_TO))
    write_plain (digits, power, buffer + sign, SQ_NUMBER_SIZE - sign);
  else
    g_snprintf (buffer + sign, SQ_NUMBER_SIZE - sign, "%c%s%se%d", digits[0],
                digits[1] != '\0' ? "." : "", digits + 1, power);
  return buffer;
}
