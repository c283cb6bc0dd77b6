/* SPDX-License-Identifier: GPL-3.0-or-later */
/* The zip on the seat: a fine double line inside the edge it lies along, or across the underside. */
#pragma once

#include "window/seat-things.h"

/* Its scene, in seat coordinates as drawn; new. */
SqScene *sq_seat_zip_scene (const SqCover *cover, double px_mm);

/* What of it is at @at (seat coordinates), @px_mm being the size of a pixel: a kind of
 * SqSeatThings. */
guint sq_seat_zip_at (const SqCover *cover, SqPoint at, double px_mm);

/* A job as things->base with the zip moved as far as the hand went from @from to @to (seat
 * coordinates): to whole steps, to the ends of the edge within @reach_mm, to all of another edge,
 * and no longer or shorter than the ring allows. NULL where it can't be. New. */
SqJob *sq_seat_zip_moved (const SqSeatThings *things, SqPoint from, SqPoint to, double reach_mm);
