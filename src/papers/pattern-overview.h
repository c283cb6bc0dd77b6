/* SPDX-License-Identifier: GPL-3.0-or-later */
/* The first pages of a pattern: what to measure, how to put sheets together, and which piece is on
 * which sheets. Internal to the room. */
#pragma once

#include "papers/pattern.h"

/* Adds them to @out (of SqPage), on paper of @spec->pattern; as many as they are become
 * @pattern->n_before. */
void sq_pattern_overview (SqPattern *pattern, const SqPaperSpec *spec, GArray *out);
