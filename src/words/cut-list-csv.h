/* SPDX-License-Identifier: GPL-3.0-or-later */
/* The pieces to cut as a table that other programs read (RFC 4180). */
#pragma once

#include "plan/plan.h"

/* A line of names, then one for each line of the cut list; lengths as decimals with a point, in the
 * job's unit, which each line names. A cell that a spreadsheet would take for a formula begins with
 * an apostrophe. New text, UTF-8, lines ending in CR LF. */
char *sq_words_cut_list_csv (const SqPlan *plan);
