/* SPDX-License-Identifier: GPL-3.0-or-later */
/* The corners of a seat that is being drawn, in the order in which they were put: a ring that is
 * still open. */
#pragma once

#include "job/outline.h"

typedef struct
{
  GArray *corners; /* of SqPoint, mm */
} SqDrawnRing;

void sq_drawn_ring_init (SqDrawnRing *ring);
void sq_drawn_ring_clear (SqDrawnRing *ring);

/* As an outline whose corners have the ids 1, 2, 3 …; without any, one without rings. New. */
SqOutline *sq_drawn_ring_outline (const SqDrawnRing *ring);
/* Whether a next corner can stand at @at: its side neither crosses nor touches another one. If not,
 * *@where is such a place. */
gboolean sq_drawn_ring_takes (const SqDrawnRing *ring, SqPoint at, SqPoint *where);
/* Whether the ring can be closed now. If not, *@where is where sides would cross; untouched where
 * there are too few. */
gboolean sq_drawn_ring_closes (const SqDrawnRing *ring, SqPoint *where);
/* The seat that the ring encloses: counter-clockwise, beginning with its front, which starts at
 * (0, 0). New; NULL where it can't be closed. */
SqOutline *sq_drawn_ring_seat (const SqDrawnRing *ring);
