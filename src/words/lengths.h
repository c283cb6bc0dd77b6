/* SPDX-License-Identifier: GPL-3.0-or-later */
/* Figures as makers read them, in the units of their job. A style says which: inches bring square
 * feet, cubic feet, pounds and yards with them; mm and cm bring m², litres, kg and metres. All
 * texts are new and yours to free. */
#pragma once

#include "job/job.h"

/* How @job shows its lengths in plain text, its unit after them. @decimal is '.' or ','. */
SqLengthStyle sq_words_length_style (const SqJob *job, char decimal);

/* "18 1/2 in" */
char *sq_words_length (double mm, const SqLengthStyle *style);
/* The same for widths that matter to a fraction of a millimetre, as allowances do: a decimal more
 * in mm and cm where it says something. */
char *sq_words_fine_length (double mm, const SqLengthStyle *style);
/* The style it does that with. */
SqLengthStyle sq_words_fine_style (double mm, const SqLengthStyle *style);
/* "18 1/2": for columns whose head names the unit. */
char *sq_words_figure (double mm, const SqLengthStyle *style);
/* "2 – 18 1/2" */
char *sq_words_range (double from_mm, double to_mm, const SqLengthStyle *style);
/* "inches", "millimetres", "centimetres", to say it once for a page. Static. */
const char *sq_words_unit (SqUnit unit);

char *sq_words_area (double mm2, const SqLengthStyle *style);
char *sq_words_volume (double mm3, const SqLengthStyle *style);
char *sq_words_weight (double g, const SqLengthStyle *style);
/* What is bought by length: zip, cloth, thread. */
char *sq_words_long_length (double mm, const SqLengthStyle *style);

/* @value with so many decimals and the style's decimal sign. */
char *sq_words_number (double value, guint decimals, const SqLengthStyle *style);
/* Reads @text, a number not below 0 with @decimal ('.' or ',') before its decimals and nothing but
 * space around it. FALSE where it is not one; *@value is then untouched. */
gboolean sq_words_read_number (const char *text, char decimal, double *value);
/* The same for how many there are: 1 … 100,000. */
gboolean sq_words_read_count (const char *text, guint *count);
