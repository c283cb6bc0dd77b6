/* SPDX-License-Identifier: GPL-3.0-or-later */
/* Lengths as makers type and read them: `18 1/2`, `18-1/2"`, `1' 6 1/2"`, `47 cm`, `36 - 2*1/2`. */
#pragma once

#include <glib.h>

/* The unit a job shows its lengths in, and the one a bare figure is taken in. */
typedef enum
{
  SQ_UNIT_IN,
  SQ_UNIT_MM,
  SQ_UNIT_CM,
} SqUnit;

typedef enum
{
  SQ_LENGTH_OK,
  SQ_LENGTH_EMPTY,            /* nothing but space */
  SQ_LENGTH_UNEXPECTED,       /* a character that can't stand there */
  SQ_LENGTH_UNFINISHED,       /* the text ends where a figure should follow */
  SQ_LENGTH_FRACTION,         /* a fraction whose lower figure is 0 */
  SQ_LENGTH_DIVISION_BY_ZERO, /* x / 0 */
  SQ_LENGTH_UNITS,            /* mm times mm, or a length divided by a length */
  SQ_LENGTH_PARENTHESIS,      /* one is missing */
  SQ_LENGTH_TOO_LARGE,        /* beyond 100 m, or not finite */
  SQ_LENGTH_TOO_LONG,         /* more than 200 bytes, or nested too deep */
} SqLengthResult;

/* Reads @text, a length or a sum of lengths, into *@mm.
 *
 * A figure without a unit is in @unit; ', ", ft, in, mm, cm, m and the typographic primes are
 * known. + - * / and parentheses compute. "18-1/2" (whole number, hyphen, proper fraction, no
 * spaces, nothing after but a unit) is eighteen and a half; any other hyphen is minus. Fraction
 * characters (18½) count as "18 1/2". @decimal is '.' or ','; the other one is refused.
 * A single figure in a sum may carry no unit beside others that do: it is then in @unit; a plain
 * factor of * or / is a number.
 * Feet may be followed by inches without a mark (1' 6). After a division a fraction is read from
 * the left, as everywhere: 8 / 1/2 is 4.
 *
 * Returns SQ_LENGTH_OK, or what is wrong, with *@at the byte offset in @text it is wrong at
 * (@at may be NULL); *@mm is then untouched. @text must be valid UTF-8 or it is UNEXPECTED at the
 * bad byte. Never reads the locale. Any thread. */
SqLengthResult sq_length_parse (const char *text, SqUnit unit, char decimal, double *mm, gsize *at);

/* How a length is shown. */
typedef struct
{
  SqUnit unit;
  guint sixteenths; /* inches are rounded to so many sixteenths: 1 (1/16), 2 (1/8), … */
  guint decimals;   /* of mm or cm, 6 at most */
  char decimal;     /* '.' or ',' */
  gboolean set; /* fractions set as one figure: 18 1⁄2 with U+2044, as windows and papers do */
  gboolean with_unit; /* " in", " mm", " cm" after it */
  gboolean halves;    /* rounded to half of that step: 1/32 in, half millimetres */
} SqLengthStyle;

/* The usual style for @unit: 1/16 in, whole mm, one decimal of a cm, '.', plain text, no unit. */
SqLengthStyle sq_length_style_default (SqUnit unit);

/* Writes @mm (up to 1e15 either way) rounded half away from zero to the style's step. Returns new
 * text, yours to free. Never "-0". Any thread. */
char *sq_length_format (double mm, const SqLengthStyle *style);

/* @mm rounded to the style's step, in mm, as sq_length_format() would show it. */
double sq_length_rounded_mm (double mm, const SqLengthStyle *style);
