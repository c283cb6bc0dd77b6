/* SPDX-License-Identifier: GPL-3.0-or-later */
/* Where the zip lies, and whether the foam goes in through it. Internal to the room. */
#pragma once

#include "cover/boxing.h"
#include "cover/making.h"

/* The zip of a boxing: the whole back edge, with returns round the back corners where that is too
 * short for the foam; else the longest edge that is not seen; or where the maker put it. Fills the
 * cover's zip and says what is wrong. */
SqZipRun sq_zip_in_boxing (SqMaking *making);

/* The same in a seam that goes round the cushion, at the underside or the middle of its side: it stops
 * short of the edge's ends, and does without returns. */
SqZipRun sq_zip_in_seam (SqMaking *making);

/* The zip across an underside whose sew line (outer ring, then holes) is @rings in seat
 * coordinates. Fills the cover's zip; the line from sew line to sew line in *@from and *@to, seat
 * coordinates. FALSE: there is none, and the problem is listed. */
gboolean sq_zip_across (SqMaking *making, const SqPath *const *rings, guint n_rings, SqPoint *from,
                        SqPoint *to);

/* The same, its line marked on the piece @underside. */
void sq_zip_mark_across (SqMaking *making, guint underside, const SqPath *const *rings,
                         guint n_rings);

/* The zip in the strip, or in the seam, that is all the back of a cover, from station to station of
 * the outer ring; @back is its edge. All of the strip, a seam but for its ends, or the part that the
 * maker asked for. Fills the cover's zip. */
SqZipRun sq_zip_along_back (SqMaking *making, guint back, double from_mm, double to_mm);

/* Where a zip of two parts lies across the underside, divides that along its line, after the way of
 * building has drawn it and marked the line. Where the line does not part it in two the zip is slit
 * in, and the cover says so. */
void sq_zip_part_underside (SqMaking *making);

/* The zip in the join along the back of a bolster's tube: all of it but its ends, or as asked for.
 * Fills the cover's zip; where it lies along the tube, from its left end, in *@from_mm and *@to_mm. */
void sq_zip_along_tube (SqMaking *making, double *from_mm, double *to_mm);
