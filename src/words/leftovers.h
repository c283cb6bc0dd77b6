/* SPDX-License-Identifier: GPL-3.0-or-later */
/* What a lay leaves of its cloth, in words. All texts are new and yours to
 * free. */
#pragma once

#include "plan/leftovers.h"

/* "24 × 54 in": along the roll × across. */
char *sq_words_leftover (const SqLeftover *leftover, const SqLengthStyle *style);
/* "Leftovers worth keeping: 24 × 54 in, 18 × 13 in"; of many the largest, and "40 smaller"; "" where
 * there are none. */
char *sq_words_leftovers (const GArray *leftovers, const SqLengthStyle *style);
