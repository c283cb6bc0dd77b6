/* SPDX-License-Identifier: GPL-3.0-or-later */
/* A recursive-descent reader, one function per line of this grammar (spaces may stand between any
 * two parts but where it says "close"):
 *
 *   text    = sum end
 *   sum     = product { ("+" | "-") product }
 *   product = factor { ("*" | "/") factor }
 *   factor  = [ "+" | "-" ] ( group | measure )
 *   group   = "(" sum ")" [ unit ]
 *   measure = figure [ unit ] | figure foot figure [ inch ]
 *   figure  = fraction | decimal | whole fraction | whole "-" fraction (close, see ends_text ())
 */
#include "base/length.h"

#include <math.h>
#include <string.h>

#include "base/units.h"

#define MOST_BYTES 200
#define MOST_NESTED 32
#define MOST_MM (100.0 * SQ_MM_PER_M)

#define INCHES_PER_FOOT 12.0

#define MINUS_SIGN 0x2212
#define TIMES_SIGN 0x00d7
#define FRACTION_SLASH 0x2044

typedef struct
{
  const char *at; /* the next character */
  char decimal;
  double bare_mm; /* what a figure without unit is counted in */
  guint nested;   /* open parentheses */

  SqLengthResult result; /* what was wrong, and where */
  const char *wrong;
} Reader;

/* A length in mm, or a number that may still become a length or stay a factor. */
typedef struct
{
  double size;
  gboolean is_mm;
} Value;

typedef struct
{
  double upper, lower;
  const char *lower_at;
} Fraction;

/* Which fractions without a whole number before them are one figure. After a division none is
 * (8 / 1/2 is 4, as everywhere), after feet only proper ones (1' 6/2 is half of 1' 6). */
typedef enum
{
  FRACTIONS_ALL,
  FRACTIONS_PROPER,
  FRACTIONS_NONE,
} Fractions;

typedef struct
{
  char name[4];
  double mm;
} Unit;

static const Unit units[] = {
  { "'", SQ_MM_PER_FOOT },
  { "\u2032", SQ_MM_PER_FOOT },
  { "ft", SQ_MM_PER_FOOT },
  { "\"", SQ_MM_PER_INCH },
  { "\u2033", SQ_MM_PER_INCH },
  { "in", SQ_MM_PER_INCH },
  { "mm", 1.0 },
  { "cm", SQ_MM_PER_CM },
  { "m", SQ_MM_PER_M },
};

static const struct
{
  gunichar character;
  guint8 upper, lower;
} fraction_characters[] = {
  { 0x00bc, 1, 4 },  { 0x00bd, 1, 2 }, { 0x00be, 3, 4 }, { 0x2150, 1, 7 }, { 0x2151, 1, 9 },
  { 0x2152, 1, 10 }, { 0x2153, 1, 3 }, { 0x2154, 2, 3 }, { 0x2155, 1, 5 }, { 0x2156, 2, 5 },
  { 0x2157, 3, 5 },  { 0x2158, 4, 5 }, { 0x2159, 1, 6 }, { 0x215a, 5, 6 }, { 0x215b, 1, 8 },
  { 0x215c, 3, 8 },  { 0x215d, 5, 8 }, { 0x215e, 7, 8 }, { 0x2189, 0, 3 },
};

static gboolean read_sum (Reader *reader, Value *value);

static gboolean
fail (Reader *reader, SqLengthResult result, const char *wrong)
{
  reader->result = result;
  reader->wrong = wrong;
  return FALSE;
}

/* Where something else should stand. */
static gboolean
fail_here (Reader *reader)
{
  return fail (reader, *reader->at == '\0' ? SQ_LENGTH_UNFINISHED : SQ_LENGTH_UNEXPECTED,
               reader->at);
}

/* The scanners look ahead: they take text and give back where it goes on. */

static const char *
scan_space (const char *text)
{
  while (g_unichar_isspace (g_utf8_get_char (text)))
    text = g_utf8_next_char (text);
  return text;
}

static const char *
scan_digits (const char *text)
{
  while (g_ascii_isdigit (*text))
    text++;
  return text;
}

/* The value of the digits from @start to @end, with a decimal sign at @sign (@end: none). Copied
 * out, or "2e5" and "0x1" would be read beyond their digits. */
static double
figure_value (const char *start, const char *sign, const char *end)
{
  char plain[MOST_BYTES + 1];

  memcpy (plain, start, (gsize) (end - start));
  plain[end - start] = '\0';
  if (sign < end)
    plain[sign - start] = '.';
  return g_ascii_strtod (plain, NULL);
}

/* The unit at @text, if one is there; *@end is then behind it. */
static const Unit *
scan_unit (const char *text, const char **end)
{
  for (gsize i = 0; i < G_N_ELEMENTS (units); i++)
    {
      const char *after = text + strlen (units[i].name);

      if (!g_str_has_prefix (text, units[i].name))
        continue;
      if (g_ascii_isalpha (*text) && g_ascii_isalpha (*after))
        continue; /* the beginning of another word */
      *end = after;
      return &units[i];
    }
  return NULL;
}

static gboolean
scan_fraction_character (const char *text, Fraction *fraction, const char **end)
{
  const gunichar character = g_utf8_get_char (text);

  for (gsize i = 0; i < G_N_ELEMENTS (fraction_characters); i++)
    if (fraction_characters[i].character == character)
      {
        *fraction = (Fraction){ fraction_characters[i].upper, fraction_characters[i].lower, text };
        *end = g_utf8_next_char (text);
        return TRUE;
      }
  return FALSE;
}

/* The fraction at @text, if one is there: two whole numbers with only a slash between them, or one
 * character. *@end is then behind it. */
static gboolean
scan_fraction (const Reader *reader, const char *text, Fraction *fraction, const char **end)
{
  const char *slash = scan_digits (text);
  const char *lower, *after;

  if (slash == text)
    return scan_fraction_character (text, fraction, end);
  if (*slash != '/' && g_utf8_get_char (slash) != FRACTION_SLASH)
    return FALSE;
  lower = g_utf8_next_char (slash);
  after = scan_digits (lower);
  if (after == lower || *after == reader->decimal)
    return FALSE;

  *fraction = (Fraction){ figure_value (text, slash, slash), figure_value (lower, after, after),
                          lower };
  *end = after;
  return TRUE;
}

static gboolean
is_proper (const Fraction *fraction)
{
  return fraction->upper < fraction->lower;
}

/* Whether nothing but a unit stands at @text. Only then does a close hyphen join a whole number and
 * a fraction: where anything is computed it is a minus. */
static gboolean
ends_text (const char *text)
{
  const char *end = scan_space (text);

  scan_unit (end, &end);
  return *scan_space (end) == '\0';
}

static void
skip_space (Reader *reader)
{
  reader->at = scan_space (reader->at);
}

static gboolean
skip_character (Reader *reader, gunichar character)
{
  if (g_utf8_get_char (reader->at) != character)
    return FALSE;
  reader->at = g_utf8_next_char (reader->at);
  return TRUE;
}

static gboolean
skip_minus (Reader *reader)
{
  return skip_character (reader, '-') || skip_character (reader, MINUS_SIGN);
}

static gboolean
skip_times (Reader *reader)
{
  return skip_character (reader, '*') || skip_character (reader, TIMES_SIGN);
}

/* The unit that stands next, after spaces; NULL and nothing skipped where there is none. */
static const Unit *
read_unit (Reader *reader)
{
  return scan_unit (scan_space (reader->at), &reader->at);
}

static gboolean
take_fraction (Reader *reader, double whole, const Fraction *fraction, const char *end,
               double *figure)
{
  if (fraction->lower == 0.0)
    return fail (reader, SQ_LENGTH_FRACTION, fraction->lower_at);
  *figure = whole + fraction->upper / fraction->lower;
  reader->at = end;
  return TRUE;
}

/* Digits with or without a decimal sign, which must have digits behind it: `5.` is a slip. */
static gboolean
read_decimal (Reader *reader, double *figure)
{
  const char *start = reader->at;
  const char *sign = scan_digits (start);
  const char *end = sign;

  if (*sign == reader->decimal)
    end = scan_digits (sign + 1);
  if (end == start || end == sign + 1)
    {
      reader->at = end;
      return fail_here (reader);
    }

  *figure = figure_value (start, sign, end);
  reader->at = end;
  return TRUE;
}

static gboolean
read_figure (Reader *reader, Fractions fractions, double *figure)
{
  const char *start = reader->at;
  const char *end;
  Fraction fraction;

  if (fractions != FRACTIONS_NONE || !g_ascii_isdigit (*start))
    if (scan_fraction (reader, start, &fraction, &end)
        && (fractions == FRACTIONS_ALL || is_proper (&fraction)))
      return take_fraction (reader, 0.0, &fraction, end, figure);

  if (!read_decimal (reader, figure))
    return FALSE;
  if (reader->at != scan_digits (start))
    return TRUE; /* it had a decimal sign */

  if (scan_fraction (reader, scan_space (reader->at), &fraction, &end)
      && (is_proper (&fraction) || fraction.lower == 0.0))
    return take_fraction (reader, *figure, &fraction, end, figure);
  if (*reader->at == '-' && scan_fraction (reader, reader->at + 1, &fraction, &end)
      && is_proper (&fraction) && ends_text (end))
    return take_fraction (reader, *figure, &fraction, end, figure);
  return TRUE;
}

/* What follows feet: inches with or without their mark, or nothing. */
static gboolean
read_inches (Reader *reader, double *inches)
{
  const char *start = scan_space (reader->at);
  const char *mark, *end;
  const Unit *unit;
  Fraction fraction;

  *inches = 0.0;
  if (!g_ascii_isdigit (*start) && *start != reader->decimal
      && !scan_fraction_character (start, &fraction, &end))
    return TRUE;
  if (scan_digits (start) - start > 2)
    return fail (reader, SQ_LENGTH_UNEXPECTED, start); /* 1'000 is not one foot */

  reader->at = start;
  if (!read_figure (reader, FRACTIONS_PROPER, inches))
    return FALSE;
  mark = scan_space (reader->at);
  unit = read_unit (reader);
  if (unit != NULL && unit->mm != SQ_MM_PER_INCH)
    return fail (reader, SQ_LENGTH_UNEXPECTED, mark);
  return TRUE;
}

static gboolean
read_measure (Reader *reader, Fractions fractions, Value *value)
{
  const Unit *unit;
  double figure;

  if (!read_figure (reader, fractions, &figure))
    return FALSE;
  unit = read_unit (reader);
  if (unit != NULL && unit->mm == SQ_MM_PER_FOOT)
    {
      double inches;

      if (!read_inches (reader, &inches))
        return FALSE;
      /* Through inches, so that 1' 6 1/2" has the bits of 18 1/2". */
      *value = (Value){ (figure * INCHES_PER_FOOT + inches) * SQ_MM_PER_INCH, TRUE };
    }
  else
    *value = (Value){ unit != NULL ? figure * unit->mm : figure, unit != NULL };
  return TRUE;
}

static gboolean
read_group (Reader *reader, Value *value)
{
  const char *open = reader->at;
  const char *mark;
  const Unit *unit;

  if (++reader->nested > MOST_NESTED)
    return fail (reader, SQ_LENGTH_TOO_LONG, open);
  reader->at++;
  if (!read_sum (reader, value))
    return FALSE;
  skip_space (reader);
  if (!skip_character (reader, ')'))
    return *reader->at == '\0' ? fail (reader, SQ_LENGTH_PARENTHESIS, open) : fail_here (reader);
  reader->nested--;

  mark = scan_space (reader->at);
  unit = read_unit (reader);
  if (unit != NULL && value->is_mm)
    return fail (reader, SQ_LENGTH_UNITS, mark);
  if (unit != NULL)
    *value = (Value){ value->size * unit->mm, TRUE };
  return TRUE;
}

static gboolean
read_factor (Reader *reader, Fractions fractions, Value *value)
{
  gboolean minus;

  skip_space (reader);
  minus = skip_minus (reader);
  if (!minus)
    skip_character (reader, '+');
  skip_space (reader);

  if (*reader->at == '(' ? !read_group (reader, value) : !read_measure (reader, fractions, value))
    return FALSE;
  if (minus)
    value->size = -value->size;
  return TRUE;
}

static gboolean
multiply (Reader *reader, Value *product, const Value *factor, const char *sign)
{
  if (product->is_mm && factor->is_mm)
    return fail (reader, SQ_LENGTH_UNITS, sign);
  product->size *= factor->size;
  product->is_mm |= factor->is_mm;
  return TRUE;
}

static gboolean
divide (Reader *reader, Value *product, const Value *factor, const char *sign)
{
  if (factor->is_mm)
    return fail (reader, SQ_LENGTH_UNITS, sign);
  if (factor->size == 0.0)
    return fail (reader, SQ_LENGTH_DIVISION_BY_ZERO, scan_space (sign + 1));
  product->size /= factor->size;
  return TRUE;
}

static gboolean
read_product (Reader *reader, Value *product)
{
  if (!read_factor (reader, FRACTIONS_ALL, product))
    return FALSE;
  for (;;)
    {
      Value factor;

      skip_space (reader);
      const char *sign = reader->at;
      const gboolean times = skip_times (reader);
      if (!times && !skip_character (reader, '/'))
        return TRUE;
      if (!read_factor (reader, times ? FRACTIONS_ALL : FRACTIONS_NONE, &factor))
        return FALSE;
      if (!isfinite (factor.size)) /* or 1 / infinity would be a length */
        return fail (reader, SQ_LENGTH_TOO_LARGE, sign);
      if (times ? !multiply (reader, product, &factor, sign)
                : !divide (reader, product, &factor, sign))
        return FALSE;
    }
}

static double
in_mm (const Reader *reader, const Value *value)
{
  return value->is_mm ? value->size : value->size * reader->bare_mm;
}

static void
add (const Reader *reader, Value *sum, const Value *term)
{
  if (sum->is_mm == term->is_mm)
    sum->size += term->size;
  else
    *sum = (Value){ in_mm (reader, sum) + in_mm (reader, term), TRUE };
}

static gboolean
read_sum (Reader *reader, Value *sum)
{
  if (!read_product (reader, sum))
    return FALSE;
  for (;;)
    {
      Value term;

      skip_space (reader);
      const gboolean minus = skip_minus (reader);
      if (!minus && !skip_character (reader, '+'))
        return TRUE;
      if (!read_product (reader, &term))
        return FALSE;
      if (minus)
        term.size = -term.size;
      add (reader, sum, &term);
    }
}

static gboolean
read_text (Reader *reader, double *mm)
{
  const char *start, *bad;
  Value value;

  if (strlen (reader->at) > MOST_BYTES)
    return fail (reader, SQ_LENGTH_TOO_LONG, reader->at + MOST_BYTES);
  if (!g_utf8_validate (reader->at, -1, &bad))
    return fail (reader, SQ_LENGTH_UNEXPECTED, bad);
  start = scan_space (reader->at);
  if (*start == '\0')
    return fail (reader, SQ_LENGTH_EMPTY, reader->at);
  if (!read_sum (reader, &value))
    return FALSE;
  skip_space (reader);
  if (*reader->at == ')')
    return fail (reader, SQ_LENGTH_PARENTHESIS, reader->at);
  if (*reader->at != '\0')
    return fail_here (reader);

  *mm = in_mm (reader, &value) + 0.0; /* -0 becomes 0 */
  if (!(fabs (*mm) <= MOST_MM))
    return fail (reader, SQ_LENGTH_TOO_LARGE, start);
  return TRUE;
}

SqLengthResult
sq_length_parse (const char *text, SqUnit unit, char decimal, double *mm, gsize *at)
{
  static const double bare_mm[] = {
    [SQ_UNIT_IN] = SQ_MM_PER_INCH,
    [SQ_UNIT_MM] = 1.0,
    [SQ_UNIT_CM] = SQ_MM_PER_CM,
  };
  double length_mm;

  g_return_val_if_fail (text != NULL && mm != NULL, SQ_LENGTH_EMPTY);
  g_return_val_if_fail (unit <= SQ_UNIT_CM, SQ_LENGTH_EMPTY);
  g_return_val_if_fail (decimal == '.' || decimal == ',', SQ_LENGTH_EMPTY);

  Reader reader = { .at = text, .decimal = decimal, .bare_mm = bare_mm[unit] };
  if (read_text (&reader, &length_mm))
    *mm = length_mm;
  else if (at != NULL)
    *at = (gsize) (reader.wrong - text);
  return reader.result;
}
