/* SPDX-License-Identifier: GPL-3.0-or-later */
/* Edits that leave a seat whole: a drag stops before the outline crosses itself, edges become
 * curves as they lie, holes are cut the right way round. */
#pragma once

#include "job/outline.h"

/* Whether an outline is good: rings are simple and run the right way round, holes lie inside the
 * outline and apart by SQ_TIE_MM. As drawn: corners sharp, nothing kept free. If not, *@where (may
 * be NULL) is one place that is wrong. */
gboolean sq_outline_is_good (const SqOutline *outline, SqPoint *where);

/* How far a drag from @before can go towards @after: @after itself where that is good, or where
 * @before was not (nothing holds a hand that puts things right). Else the last good outline on the
 * straight way between them, on which places, handles, rises and radii go in proportion: found to
 * a hundred thousandth of a millimetre. *@share (may be NULL) is how much of the way that is, 1
 * for @after, and *@crossing (may be NULL) the place where it would cross or touch next, untouched
 * where nothing stops the drag. Outlines of other corners have no way between them: @before, share
 * 0. New reference. */
SqOutline *sq_outline_last_good (const SqOutline *before, const SqOutline *after, double *share,
                                 SqPoint *crossing);

/* A new outline in which the edge that starts at @edge is a free curve as it lies: a line exactly,
 * an arc in its ends, their directions and its middle (a half circle within 2 % of its radius).
 * NULL where the edge isn't there. */
SqOutline *sq_outline_with_edge_as_curve (const SqOutline *outline, SqId edge);

/* A new outline with the ring of @corners, @n of them, as one more hole: turned clockwise, with new
 * ids, the first being *@first_id (may be NULL). NULL for an outline without an outer ring. */
SqOutline *sq_outline_with_hole (const SqOutline *outline, const SqCorner *corners, guint n,
                                 SqId *first_id);

/* The same for a rectangle about @centre, its width along the front; and for a circle of two bows,
 * whose ends lie along the front. */
SqOutline *sq_outline_with_rectangular_hole (const SqOutline *outline, SqPoint centre,
                                             double width_mm, double depth_mm, SqId *first_id);
SqOutline *sq_outline_with_round_hole (const SqOutline *outline, SqPoint centre, double diameter_mm,
                                       SqId *first_id);
