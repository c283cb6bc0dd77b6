/* SPDX-License-Identifier: GPL-3.0-or-later */
/* Where paths cross each other or themselves. */
#pragma once

#include "geometry/path.h"

typedef struct
{
  SqPoint at;
  guint segment_a, segment_b;
  double station_a_mm, station_b_mm;
} SqCrossing;

/* All points where @a and @b meet (touching counts), in the order of travel of @a, each once. Where they run over
 * each other, both ends of the common stretch. Returns a new array of SqCrossing. */
GArray *sq_paths_crossings (const SqPath *a, const SqPath *b);

/* Whether @path is simple: no two of its segments meet but neighbours at their common node, no
 * segment shorter than SQ_COINCIDE_MM, no two nodes alike, no neighbour folded back over another. If not, *@where
 * (may be NULL) is one such place. */
gboolean sq_path_is_simple (const SqPath *path, SqPoint *where);

/* Whether the ring @inner lies wholly inside the ring @outer, not touching it nearer than
 * @gap_mm; both simple. If not, *@where (may be NULL) is a place that does not. */
gboolean sq_ring_contains (const SqPath *outer, const SqPath *inner, double gap_mm, SqPoint *where);

/* The least distance between two paths; 0 where they meet. */
double sq_paths_distance_mm (const SqPath *a, const SqPath *b);

/* The chords in which the unbounded line through @at along @direction lies inside @ring, as pairs
 * of distances from @at along it (unit @direction), increasing: t0, t1, t2, t3 … New array of
 * double, always of even length. */
GArray *sq_ring_chords (const SqPath *ring, SqPoint at, SqVector direction);
