/* SPDX-License-Identifier: GPL-3.0-or-later */
/* What of a path lies in a box. */
#pragma once

#include "geometry/path.h"

/* A stretch of a segment, as places on it, 0 … 1 of its length. */
typedef struct
{
  double from, to;
} SqStretch;

/* What a segment has in a box at most. */
#define SQ_MOST_STRETCHES 5

/* The stretches of @s in @box, its border included, into @out in order of travel. How many there are.
 * A single point is none. Exact: each end lies on the border or is the segment's own. */
guint sq_segment_in_box (const SqSegment *s, SqBox box, SqStretch out[SQ_MOST_STRETCHES]);

/* A part of a path. */
typedef struct
{
  SqPath *path;
  double from_mm; /* station on the whole where it begins */
} SqPathPart;

/* The parts of @path in @box, its border included, as open paths in order of travel, segments with
 * their tags; a ring that lies there whole is its one part. New array of SqPathPart, the paths its
 * own. */
GArray *sq_path_in_box (const SqPath *path, SqBox box);
/* Whether there are any. */
gboolean sq_path_meets_box (const SqPath *path, SqBox box);
