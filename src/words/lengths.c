/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "words/lengths.h"

#include "base/units.h"

#include <glib/gi18n.h>
#include <math.h>
#include <string.h>

#define MOST_FIGURES 15 /* of a number that is typed: what a double holds */
#define MOST_COUNT 100000

SqLengthStyle
sq_words_length_style (const SqJob *job, char decimal)
{
  SqLengthStyle style = sq_length_style_default (job->units);

  style.decimal = decimal;
  style.with_unit = TRUE;
  return style;
}

char *
sq_words_length (double mm, const SqLengthStyle *style)
{
  SqLengthStyle with_unit = *style;

  with_unit.with_unit = TRUE;
  return sq_length_format (mm, &with_unit);
}

SqLengthStyle
sq_words_fine_style (double mm, const SqLengthStyle *style)
{
  SqLengthStyle finer = *style;

  finer.decimals++;
  if (style->unit != SQ_UNIT_IN
      && fabs (sq_length_rounded_mm (mm, style) - sq_length_rounded_mm (mm, &finer)) > 1e-6)
    return finer;
  return *style;
}

char *
sq_words_fine_length (double mm, const SqLengthStyle *style)
{
  SqLengthStyle fine = sq_words_fine_style (mm, style);

  return sq_words_length (mm, &fine);
}

char *
sq_words_figure (double mm, const SqLengthStyle *style)
{
  SqLengthStyle bare = *style;

  bare.with_unit = FALSE;
  return sq_length_format (mm, &bare);
}

char *
sq_words_range (double from_mm, double to_mm, const SqLengthStyle *style)
{
  g_autofree char *from = sq_words_figure (from_mm, style);
  g_autofree char *to = sq_words_figure (to_mm, style);

  /* TRANSLATORS: from one length to another. */
  return g_strdup_printf (_ ("%s – %s"), from, to);
}

const char *
sq_words_unit (SqUnit unit)
{
  switch (unit)
    {
    case SQ_UNIT_IN:
      return _ ("inches");
    case SQ_UNIT_MM:
      return _ ("millimetres");
    case SQ_UNIT_CM:
      return _ ("centimetres");
    }
  g_return_val_if_reached ("");
}

char *
sq_words_number (double value, guint decimals, const SqLengthStyle *style)
{
  char format[8], text[G_ASCII_DTOSTR_BUF_SIZE * 2];

  g_snprintf (format, sizeof format, "%%.%uf", MIN (decimals, 6));
  g_ascii_formatd (text, sizeof text, format, value);
  g_strdelimit (text, ".", style->decimal);
  return g_strdup (text);
}

gboolean
sq_words_read_number (const char *text, char decimal, double *value)
{
  g_autofree char *number = g_strstrip (g_strdup (text));
  gboolean has_point = FALSE, has_figure = FALSE;

  for (char *c = number; *c != '\0'; c++)
    {
      if (g_ascii_isdigit (*c))
        has_figure = TRUE;
      else if (*c == decimal && !has_point)
        {
          has_point = TRUE;
          *c = '.';
        }
      else
        return FALSE;
    }
  if (!has_figure || strlen (number) > MOST_FIGURES)
    return FALSE;
  *value = g_ascii_strtod (number, NULL);
  return TRUE;
}

gboolean
sq_words_read_count (const char *text, guint *count)
{
  double value;

  if (!sq_words_read_number (text, '\0', &value) || value < 1 || value > MOST_COUNT)
    return FALSE;
  *count = (guint) value;
  return TRUE;
}

/* @value in the unit that @with_unit ("%s kg") puts after it. */
static char *
measured (double value, guint decimals, const SqLengthStyle *style, const char *with_unit)
{
  g_autofree char *number = sq_words_number (value, decimals, style);

  return g_strdup_printf (with_unit, number);
}

char *
sq_words_area (double mm2, const SqLengthStyle *style)
{
  if (style->unit == SQ_UNIT_IN)
    return measured (mm2 / (SQ_MM_PER_FOOT * SQ_MM_PER_FOOT), 1, style, _ ("%s sq ft"));
  return measured (mm2 / (SQ_MM_PER_M * SQ_MM_PER_M), 2, style, _ ("%s m²"));
}

char *
sq_words_volume (double mm3, const SqLengthStyle *style)
{
  if (style->unit == SQ_UNIT_IN)
    return measured (mm3 / (SQ_MM_PER_FOOT * SQ_MM_PER_FOOT * SQ_MM_PER_FOOT), 2, style,
                     _ ("%s cu ft"));
  return measured (mm3 / SQ_MM3_PER_LITRE, 1, style, _ ("%s l"));
}

char *
sq_words_weight (double g, const SqLengthStyle *style)
{
  if (style->unit == SQ_UNIT_IN)
    return measured (g / SQ_G_PER_POUND, 1, style, _ ("%s lb"));
  return measured (g / SQ_G_PER_KG, 2, style, _ ("%s kg"));
}

char *
sq_words_long_length (double mm, const SqLengthStyle *style)
{
  if (style->unit == SQ_UNIT_IN)
    return measured (mm / SQ_MM_PER_YARD, 2, style, _ ("%s yd"));
  return measured (mm / SQ_MM_PER_M, 2, style, _ ("%s m"));
}
