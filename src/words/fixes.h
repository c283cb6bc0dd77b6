/* SPDX-License-Identifier: GPL-3.0-or-later */
/* Ways out of problems as labels of buttons. */
#pragma once

#include "cover/problem.h"

/* What @fix does to @cushion, shortly: "Box the cushion", "Radius 1 1/2 in". New text; empty for
 * SQ_FIX_NONE. */
char *sq_words_fix (const SqFix *fix, const SqCushion *cushion, const SqLengthStyle *style);
