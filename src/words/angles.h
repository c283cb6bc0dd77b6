/* SPDX-License-Identifier: GPL-3.0-or-later */
/* Angles as makers read and type them, in degrees. */
#pragma once

#include "base/length.h"
#include "base/units.h"

/* Nearer to square than this counts as square: it is what a figure with one decimal shows. */
#define SQ_SQUARE_RAD (0.05 * SQ_RAD_PER_DEG)

gboolean sq_words_is_square (double rad);

/* "101.3°", "90°": one decimal where it says something, with the style's decimal sign. New text. */
char *sq_words_angle (double rad, const SqLengthStyle *style);

/* Reads @text, an angle in degrees: a figure or a sum, as lengths are typed, with or without a
 * degree sign after it. *@rad is untouched where it can't be read, and the result says why. */
SqLengthResult sq_words_read_angle (const char *text, char decimal, double *rad);
