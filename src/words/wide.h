/* SPDX-License-Identifier: GPL-3.0-or-later */
/* The ways out for a face wider than its cloth, in words. All texts are new and yours to free. */
#pragma once

#include "plan/wide.h"

/* "Two joins", "3 cushions side by side", "Cloth from side to side", "Cloth 72 in wide". */
char *sq_words_wide_way (const SqWideWay *way, const SqLengthStyle *style);
/* As a button says it: "Two joins: 2 5/8 yd", of several cloths each by its name; without the cloth as
 * long as it is not laid; and that it is not possible where it is not. */
char *sq_words_wide_offer (const SqWideWay *way, const SqLengthStyle *style);
/* All of it in a sentence or two: figures and cost, or why it is not possible. */
char *sq_words_wide_summary (const SqWideWay *way, const SqLengthStyle *style);
