/* SPDX-License-Identifier: GPL-3.0-or-later */
/* Numbers in files: text that reads back to the same bits. */
#pragma once

#include <glib.h>

#define SQ_NUMBER_SIZE 32

/* Writes @value (finite) into @buffer with the fewest of 15, 16 or 17 significant digits that read
 * back bit-equal, as JSON wants it: no '+', no leading or trailing point, "-0" written "0", and
 * plain decimals without exponent for magnitudes from 1e-5 to 1e15. Returns @buffer. Any thread. */
const char *sq_number_write (double value, char buffer[SQ_NUMBER_SIZE]);
