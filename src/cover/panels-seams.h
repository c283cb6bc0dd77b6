/* SPDX-License-Identifier: GPL-3.0-or-later */
/* Runs and seams of a cover in the making cut in two. Internal to the room. */
#pragma once

#include "cover/making.h"

/* Makes a run of piece @i begin on its ring 0 at the point @at, which lies on it, and, where a seam
 * goes on over it, one of that seam's other side at the point that is sewn to it. */
void sq_seams_break_at (SqMaking *making, guint i, SqPoint at);

/* Where a run of the divided piece went. */
typedef struct
{
  guint panel; /* 0 or 1 */
  guint run;   /* there */
} SqRunMoved;

/* Piece @i becomes the pieces @i and @i + 1, its run r the run @moved[r] of one of them: seams that
 * go on from one to the other become two, on the other side, too, and seams, marks and problems
 * name what they mean by its new number. The piece itself must still be there. Returns, for each
 * of its marks, the panel it belongs to by its seam: new array of gint, −1 where it has none. */
GArray *sq_seams_divide (SqMaking *making, guint i, const SqRunMoved *moved);
