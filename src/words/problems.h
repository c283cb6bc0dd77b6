/* SPDX-License-Identifier: GPL-3.0-or-later */
/* Problems as sentences: what it is, where, and what to do about it. */
#pragma once

#include "cover/cover.h"

/* One sentence or two about @problem of @cover, with its figures as @style shows them. Does not
 * name the cushion: see sq_words_cushion(). New text. */
char *sq_words_problem (const SqProblem *problem, const SqCover *cover, const SqLengthStyle *style);
