/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "base/length.h"

#include <math.h>

#include "base/units.h"

#define SIXTEENTHS_PER_INCH 16

/* More decimals of a millimetre mean nothing, and their powers of ten are exact. */
#define MOST_DECIMALS 6

/* Far beyond every seam of every job; a double still counts whole millimetres there. */
#define MOST_MM 1e15

/* A half that lost its last bits on the way through millimetres still counts as a half: this much
 * of a step is far above what doubles lose and far below what anybody measures. */
#define HALF_SLACK 1e-9

SqLengthStyle
sq_length_style_default (SqUnit unit)
{
  return (SqLengthStyle){
    .unit = unit,
    .sixteenths = 1,
    .decimals = unit == SQ_UNIT_CM ? 1 : 0,
    .decimal = '.',
  };
}

static gboolean
is_style (const SqLengthStyle *style)
{
  return style != NULL && style->unit <= SQ_UNIT_CM
         && (style->decimal == '.' || style->decimal == ',')
         && (style->unit != SQ_UNIT_IN || style->sixteenths > 0)
         && style->decimals <= MOST_DECIMALS;
}

static double
mm_per_unit (SqUnit unit)
{
  return unit == SQ_UNIT_IN ? SQ_MM_PER_INCH : unit == SQ_UNIT_CM ? SQ_MM_PER_CM : 1.0;
}

static double
power_of_ten (guint exponent)
{
  double power = 1.0;

  while (exponent-- > 0)
    power *= 10.0;
  return power;
}

/* What lengths are counted in: sixteenths or tens of a unit, or half of them. */
static double
parts_per_unit (const SqLengthStyle *style)
{
  const double parts = style->unit == SQ_UNIT_IN ? SIXTEENTHS_PER_INCH
                                                 : power_of_ten (style->decimals);
  return style->halves ? 2 * parts : parts;
}

/* The parts that @mm is rounded to, in the style's steps of them, half away from zero. A whole
 * number, never -0. */
static double
count_parts (double mm, const SqLengthStyle *style)
{
  const double parts_a_step = style->unit == SQ_UNIT_IN ? style->sixteenths : 1;
  const double units = mm / mm_per_unit (style->unit);
  const double steps = units * parts_per_unit (style) / parts_a_step;
  const double whole = round (steps + copysign (HALF_SLACK, steps));

  return whole * parts_a_step + 0.0;
}

double
sq_length_rounded_mm (double mm, const SqLengthStyle *style)
{
  g_return_val_if_fail (fabs (mm) <= MOST_MM, mm);
  g_return_val_if_fail (is_style (style), mm);

  /* One division and one product, as a reader does it: the same bits as the text read back. */
  return count_parts (mm, style) / parts_per_unit (style) * mm_per_unit (style->unit);
}

static char *
format_inches (double parts, const SqLengthStyle *style)
{
  const double rest = fmod (parts, parts_per_unit (style));
  const double whole = (parts - rest) / parts_per_unit (style);
  int upper = (int) rest;
  int lower = (int) parts_per_unit (style);

  if (upper == 0)
    return g_strdup_printf ("%.0f", whole);
  for (; upper % 2 == 0; upper /= 2)
    lower /= 2;

  g_autofree char *fraction = g_strdup_printf (style->set ? "%d\u2044%d" : "%d/%d", upper, lower);
  return whole > 0.0 ? g_strdup_printf ("%.0f %s", whole, fraction) : g_steal_pointer (&fraction);
}

/* "%.0f" writes no decimal sign: the locale has no say. */
static char *
format_decimal (double parts, guint decimals, char decimal)
{
  const double scale = power_of_ten (decimals);
  const double rest = fmod (parts, scale);
  const double whole = (parts - rest) / scale;

  return decimals == 0 ? g_strdup_printf ("%.0f", whole)
                       : g_strdup_printf ("%.0f%c%0*.0f", whole, decimal, (int) decimals, rest);
}

/* Half a step takes a decimal more, a whole one none. */
static char *
format_metric (double parts, const SqLengthStyle *style)
{
  if (!style->halves)
    return format_decimal (parts, style->decimals, style->decimal);
  if (fmod (parts, 2) > 0)
    return format_decimal (5 * parts, style->decimals + 1, style->decimal);
  return format_decimal (parts / 2, style->decimals, style->decimal);
}

char *
sq_length_format (double mm, const SqLengthStyle *style)
{
  static const char *const units[] = {
    [SQ_UNIT_IN] = " in",
    [SQ_UNIT_MM] = " mm",
    [SQ_UNIT_CM] = " cm",
  };

  g_return_val_if_fail (fabs (mm) <= MOST_MM, NULL);
  g_return_val_if_fail (is_style (style), NULL);

  const double parts = count_parts (mm, style);
  g_autofree char *figure = style->unit == SQ_UNIT_IN ? format_inches (fabs (parts), style)
                                                      : format_metric (fabs (parts), style);

  return g_strconcat (parts < 0.0 ? "-" : "", figure, style->with_unit ? units[style->unit] : "",
                      NULL);
}
