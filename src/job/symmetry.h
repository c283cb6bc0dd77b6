/* SPDX-License-Identifier: GPL-3.0-or-later */
/* Seats alike on both sides of an axis. */
#pragma once

#include "job/outline.h"

typedef struct
{
  SqPoint at;
  SqVector along; /* unit; an axis square to the front points to the back */
} SqAxis;

/* The axis from @from to @to; along y if they are one point. */
SqAxis sq_axis_through (SqPoint from, SqPoint to);
/* Through the middle of the front edge's chord and square to it. FALSE without a front. */
gboolean sq_outline_front_axis (const SqOutline *outline, SqAxis *axis);

/* How far @p lies to the left of the axis (mm). */
static inline double
sq_axis_left_mm (const SqAxis *axis, SqPoint p)
{
  return sq_cross (axis->along, sq_sub (p, axis->at));
}

/* The point of the axis next to @p. */
static inline SqPoint
sq_axis_foot (const SqAxis *axis, SqPoint p)
{
  return sq_moved (axis->at, axis->along, sq_dot (axis->along, sq_sub (p, axis->at)));
}

/* The mirror image of @p. An upright axis leaves y as it is, a level one x, to the last bit. */
static inline SqPoint
sq_axis_mirrored (const SqAxis *axis, SqPoint p)
{
  return sq_moved (p, sq_left (axis->along), -2 * sq_axis_left_mm (axis, p));
}

/* A corner with the one that stands where its mirror image should be, and their edges. */
typedef struct
{
  SqId corner;
  SqId twin;      /* itself if it stands on the axis; 0: none */
  SqId edge_twin; /* whose edge is the image of the edge that starts at corner; itself where that
                     edge crosses the axis; 0: none */
} SqTwins;

/* The twins of all corners, ring after ring, by their order on the rings: mirroring turns the order
 * round, so one pair gives all others. Of all orders the one is taken whose corners stand nearest to
 * their images (sum of squares); holes are twins of themselves or of other holes. A ring some corner
 * of which is farther from its image than an eighth of the ring's extent has no twins. New array of
 * SqTwins. */
GArray *sq_outline_twins (const SqOutline *outline, const SqAxis *axis);

/* Whether every corner and handle stands within @within_mm of its image, and radii and rises
 * differ by no more. What kind an edge is does not matter. */
gboolean sq_outline_is_symmetric (const SqOutline *outline, const SqAxis *axis, double within_mm);

/* @after, in which what was changed since @before on one side of the axis is done on the other as
 * well: places, radii, bows, curves; with @kinds also what edges are (kind, clearance, seen).
 * Corners on the axis stay on it. Where both twins were changed, each takes half of what both want
 * (so an edge across the axis moves along the axis only), and the one that comes first decides on
 * radius and edge. Both outlines have the same corners in the same order, else @after comes back as
 * it is; so do rings without twins. New outline. */
SqOutline *sq_outline_symmetric_edit (const SqOutline *before, const SqOutline *after,
                                      const SqAxis *axis, gboolean kinds);

/* A new outline with a corner where @p is nearest on the edge that starts at @edge, and one on its
 * twin; one alone on an edge without a twin, or where @p is over the middle (within SQ_TIE_MM) of
 * an edge that crosses the axis. @new_ids are theirs, 0 for none. NULL as from
 * sq_outline_with_corner_on_edge. */
SqOutline *sq_outline_with_corners_on_edges (const SqOutline *outline, SqId edge, SqPoint p,
                                             const SqAxis *axis, SqId new_ids[2]);

/* A new outline without the corner @id and its twin. */
SqOutline *sq_outline_without_twins (const SqOutline *outline, SqId id, const SqAxis *axis);

/* A new outline: what lies on one side of the axis (left of it, or right), and its mirror image. An
 * edge whose ends are images of each other (twins, or within SQ_TIE_MM), or that is straight and
 * square to the axis, stays one edge; any other that crosses the axis gets a corner there. Corners
 * that stood where an image comes (likewise) keep their ids, notes and kinds; other images get new
 * ids, and the kinds of what they are images of. Corners that are their own twins come onto the
 * axis. Holes on the other side are left out. NULL where that side has no corners of the outer
 * ring, or a ring changes sides more than twice. */
SqOutline *sq_outline_made_symmetric (const SqOutline *outline, const SqAxis *axis,
                                      gboolean from_left);
