/* SPDX-License-Identifier: GPL-3.0-or-later */
/* What is written at the corners of a piece of which only these are drawn: their letters, and on the
 * broken sides how long these are. Internal to the room. */
#pragma once

#include "papers/pattern.h"

void sq_pattern_add_patch (const SqPattern *pattern, const SqPatternPart *part, SqSceneBuilder *to);
