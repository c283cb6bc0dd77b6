/* SPDX-License-Identifier: GPL-3.0-or-later */
/* Everything computed about a job, as JSON for other programs: mm, mm², mm³, g and degrees. */
#pragma once

#include "plan/lays.h"

/* The text of @lays and their plan, yours to free. Rings are [[x, y, bulge], …]; with @flatten_mm > 0 they are
 * lines only, no point of an arc farther than that from its chord, and node indexes are those of
 * the flattened rings. Texts of problems are in the user's language, lengths in them as @style
 * shows them. @with_ways: every cushion has "ways", the comparison of all ways of building,
 * and "rates" tells what times and costs in them follow from. The same lays give the same bytes. */
char *sq_plan_write (const SqLays *lays, double flatten_mm, gboolean with_ways,
                     const SqLengthStyle *style);
