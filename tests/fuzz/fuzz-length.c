/* SPDX-License-Identifier: GPL-3.0-or-later */
/* Lengths as typed, in every unit and with either decimal sign: an error at a place inside the
 * text, or a length that can be shown and read again. */
#include "fuzz.h"

#include "base/length.h"
#include "base/units.h"

#include <math.h>
#include <string.h>

#define LIMIT_MM (100.0 * SQ_MM_PER_M)

/* What is shown reads back to the bit, in every style. */
static void
check_shown (double mm, const SqLengthStyle *style)
{
  const double rounded_mm = sq_length_rounded_mm (mm, style);
  g_autofree char *shown = sq_length_format (mm, style);
  double again_mm = NAN;

  if (fabs (rounded_mm) > LIMIT_MM)
    return; /* rounded up past what can be read */
  g_assert_cmpint (sq_length_parse (shown, style->unit, style->decimal, &again_mm, NULL), ==,
                   SQ_LENGTH_OK);
  g_assert_cmpfloat (again_mm, ==, rounded_mm);
}

static void
check_read (const char *text, SqUnit unit, char decimal)
{
  double mm = NAN;
  gsize at = 0;

  if (sq_length_parse (text, unit, decimal, &mm, &at) != SQ_LENGTH_OK)
    {
      g_assert_true (isnan (mm));
      g_assert_cmpuint (at, <=, strlen (text));
      return;
    }
  g_assert_true (fabs (mm) <= LIMIT_MM);
  for (SqUnit shown_in = SQ_UNIT_IN; shown_in <= SQ_UNIT_CM; shown_in++)
    {
      SqLengthStyle style = sq_length_style_default (shown_in);

      style.decimal = decimal;
      check_shown (mm, &style);
      style.set = style.with_unit = TRUE;
      style.sixteenths = 2;
      style.decimals = 6;
      check_shown (mm, &style);
    }
}

int
LLVMFuzzerTestOneInput (const guint8 *data, gsize size)
{
  g_autofree char *text = g_strndup ((const char *) data, size);

  for (SqUnit unit = SQ_UNIT_IN; unit <= SQ_UNIT_CM; unit++)
    {
      check_read (text, unit, '.');
      check_read (text, unit, ',');
    }
  return 0;
}
