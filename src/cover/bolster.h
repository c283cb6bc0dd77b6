/* SPDX-License-Identifier: GPL-3.0-or-later */
/* What a bolster is made of before it has pieces. Internal to the room. */
#pragma once

#include "cover/choices.h"

/* Completes the figures of a bolster, and its height, @choices->thickness_mm, which follows from
 * them. Those that can't be used, or are missing, are listed in @problems and replaced. FALSE if
 * nothing can be made of them. */
gboolean sq_bolster_measure (SqChoices *choices, GArray *problems);

/* The rectangle that it takes up from above, front at edge 1, corners 1 … 4; mirrored where the
 * choices are. New outline. */
SqOutline *sq_bolster_outline (const SqChoices *choices);

/* Its section, which is the sew line of its left end as that lies right side up: x from the back to
 * the front, y up. A ring that starts where the tube's long sides are joined, at the back and below.
 * Tag 0 a round one; else the sides in order of travel: flat and arc of a half-round one, arc and
 * flat back of a D. New path. */
SqPath *sq_bolster_section (const SqChoices *choices);
