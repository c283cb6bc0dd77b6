/* SPDX-License-Identifier: GPL-3.0-or-later */
/* What is marked on a piece's edge and inside it, in words and figures. */
#pragma once

#include "plan/marking.h"

/* Of piece @i: circles by their centres, its diagonals to check, notches side by side,
 * lines; figures each rounded once. Lists of
 * places begin at the cut end or the near edge. Where it is
 * all the same as on the straight rectangle before, that is said instead. New array of texts, its own. */
GPtrArray *sq_words_marks_inside (const SqMarking *marking, guint i, const SqLengthStyle *style);
