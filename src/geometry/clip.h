/* SPDX-License-Identifier: GPL-3.0-or-later */
/* What of a path lies to the left of a line. */
#pragma once

#include "geometry/path.h"

/* The parts of the counter-clockwise simple @ring to the left of the unbounded line through @at
 * along unit @direction: new array of SqPath, counter-clockwise rings. Each starts where the ring
 * leaves the line and ends with the straight segment along it, or several, which carry @tag; the
 * other segments keep their tags. Slivers of no width are left out. */
GPtrArray *sq_ring_clipped (const SqPath *ring, SqPoint at, SqVector direction, guint32 tag);

/* The same of an open path, as open paths in order of travel; what runs along the line itself
 * counts as left of it. */
GPtrArray *sq_path_clipped (const SqPath *path, SqPoint at, SqVector direction);
