/* SPDX-License-Identifier: GPL-3.0-or-later */
/* Where everything lies as a table that other programs read (RFC 4180). */
#pragma once

#include "plan/lays.h"

/* A line of names, then one for each copy of a piece that is laid, by cloth, strip, number and copy.
 * x, y and turn (degrees, counter-clockwise) place the piece as the plan has it: turned about (0, 0) of
 * its own, then moved. along and across are what it takes of the strip, from the cut end and from the near
 * edge. Lengths are millimetres, decimals with a point; mirrored is 0 or 1. New text, UTF-8, lines ending
 * in CR LF. */
char *sq_words_lays_csv (const SqLays *lays);
