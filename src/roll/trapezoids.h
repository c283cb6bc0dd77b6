/* SPDX-License-Identifier: GPL-3.0-or-later */
/* Polygons with holes cut into trapezoids between the heights of their corners: what decides,
 * exactly, whether two of them overlap. */
#pragma once

#include "roll/grid.h"

/* A straight edge from its lower to its upper end: from.y < to.y. */
typedef struct
{
  SqGrid from, to;
} SqGridEdge;

/* What lies between the edges left and right from height y0 up to y1. */
typedef struct
{
  gint32 y0, y1;
  SqGridEdge left, right;
} SqTrapezoid;

/* The inside of @rings (inside an odd number of them): an array of SqTrapezoid, those of a band
 * together and from left to right, bands from below. Edges may touch; where they cross, which can
 * be by no more than rounding, left and right are by the middle of the band. */
GArray *sq_trapezoids_new (const SqGridRing *rings, guint n_rings);

/* The same with all of a band filled from its outermost left edge to its outermost right one: one
 * trapezoid a band. */
GArray *sq_trapezoids_new_filled (const SqGridRing *rings, guint n_rings);

/* Whether the insides of two, moved by @at_a and @at_b, have a point in common. Exact. */
gboolean sq_trapezoids_overlap (const GArray *a, SqGrid at_a, const GArray *b, SqGrid at_b);
