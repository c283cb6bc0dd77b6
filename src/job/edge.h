/* SPDX-License-Identifier: GPL-3.0-or-later */
/* One edge of a ring as it runs from its corner to the next: line, arc or cubic. Places on it are
 * 0 at its start and 1 at its end, by length on lines and arcs, by parameter on free curves. */
#pragma once

#include "job/outline.h"

/* Rises are kept to arcs of no more than this bulge, all but a full circle (337°). */
#define SQ_MOST_BULGE 10.0

static inline gboolean
sq_edge_is_straight (const SqCorner *corner)
{
  return corner->shape == SQ_SHAPE_STRAIGHT
         || (corner->shape == SQ_SHAPE_BOW && corner->bow_mm == 0);
}

/* Unit direction of travel where it starts, or where it ends. (0, 0) for an edge of no length. */
SqVector sq_edge_direction (const SqCorner *corner, const SqCorner *next, gboolean at_end);

SqPoint sq_edge_point (const SqCorner *corner, const SqCorner *next, double t);

/* The distance of @p from the edge, and its nearest place *@t. */
double sq_edge_nearest_mm (const SqCorner *corner, const SqCorner *next, SqPoint p, double *t);

/* The rise (outward positive) of the arc from @from to @to that passes through @p. Beyond the
 * chord's ends it is held to what SQ_MOST_BULGE allows; 0 where the ends are one point. */
double sq_bow_through (SqPoint from, SqPoint to, SqPoint p);

/* A new outline with a corner of its own, *@new_id (may be NULL), where @p is nearest on the edge
 * that starts at @edge. The seat stays as it is: the parts of an arc lie on it, those of a free
 * curve too, and both have what the edge had. NULL where the edge isn't there or @p is nearest to one of its ends. */
SqOutline *sq_outline_with_corner_on_edge (const SqOutline *outline, SqId edge, SqPoint p,
                                           SqId *new_id);
