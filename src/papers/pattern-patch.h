/* SPDX-License-Identifier: GPL-3.0-or-later */
/* What is written at the corners of a piece of which only these are drawn: their letters, and on the
 * broken sides how long these are. Internal to the room. */
#pragma once

#include "papers/pattern.h"

/* Those of @part, clear of what is @drawn there (of SqPath, on the page), to @to. New array of SqBox: where
 * they stand. */
GArray *sq_pattern_add_patch (const SqPattern *pattern, const SqPatternPart *part,
                              const GPtrArray *drawn, SqSceneBuilder *to);
