/* SPDX-License-Identifier: GPL-3.0-or-later */
/* The cut list as plain text, for a terminal or a sheet of paper on the bench. */
#pragma once

#include "plan/lays.h"

/* What is to be cut from each cloth and, with @lays (NULL: without), what to buy; zip, foam, totals, and what to know before: at most about 100 columns wide,
 * lengths as @style shows them. New text that ends with a line end. */
char *sq_words_cut_list (const SqPlan *plan, const SqLays *lays, const SqLengthStyle *style);
