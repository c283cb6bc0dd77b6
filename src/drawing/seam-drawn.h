/* SPDX-License-Identifier: GPL-3.0-or-later */
/* A seam where it is seen: on the two pieces it joins, and on the seat. */
#pragma once

#include "cover/cover.h"
#include "drawing/scene.h"

/* All runs of @side on its piece, in order of travel: an open path in the piece's coordinates; tags
 * are the runs. New. */
SqPath *sq_side_path (const SqCover *cover, const SqSide *side);

/* The seam of piece @piece nearest to @at (the piece's coordinates), no farther than @within_mm from
 * its sew line; −1: none. *@distance_mm (may be NULL) is how far it is. */
gint sq_seam_near (const SqCover *cover, guint piece, SqPoint at, double within_mm,
                   double *distance_mm);

/* Where seam @seam runs as seen from above, in the coordinates of the seat as drawn: an open path;
 * NULL where it is a point from there, as a join upright in a boxing is, which is then *@at. New. */
SqPath *sq_seam_on_seat (const SqCover *cover, guint seam, SqPoint *at);

/* Side a (@b: side b) of seam @seam lit up on its piece. The ends that meet have a ring each. @em_mm
 * is the size of ordinary text there. New scene, in the piece's coordinates. */
SqScene *sq_seam_side_scene (const SqCover *cover, guint seam, gboolean b, double em_mm);
/* The same on the seat as drawn. */
SqScene *sq_seam_seat_scene (const SqCover *cover, guint seam, double em_mm);

/* What seam @seam (piece @piece) of @before is in @now, another cover of the same cushion: by what
 * the pieces are and by the edges it runs along. −1: it is not there any more. */
gint sq_seam_again (const SqCover *before, guint seam, const SqCover *now);
gint sq_piece_again (const SqCover *before, guint piece, const SqCover *now);
