/* SPDX-License-Identifier: GPL-3.0-or-later */
/* What is said of the side that closes a seat. */
#pragma once

#include "job/job.h"

/* "Side E–A closes the seat at 19.", and where it was taped as @taped_mm (0: it wasn't) by how much
 * that is off; *@is_off says whether it is more than the job's figures tell apart. New text. */
char *sq_closing_words (const SqJob *job, const SqCushion *cushion, SqId edge, double taped_mm,
                        gboolean *is_off);
