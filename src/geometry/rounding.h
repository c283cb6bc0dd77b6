/* SPDX-License-Identifier: GPL-3.0-or-later */
/* Rounding of corners between any two segments. */
#pragma once

#include "geometry/path.h"

/* One rounded corner: the arc, and where it takes over from its neighbours. */
typedef struct
{
  SqSegment arc;
  double t_in, t_out; /* places on the incoming and the outgoing segment of its ends */
} SqRounding;

/* The arc of @radius_mm tangent to @in (which ends at the corner) and to @out (which starts
 * there), nearest the corner. FALSE if there is none on the two segments; *@largest_mm (may be NULL) is
 * then the largest radius that fits (0 if none; within 0.01 mm). A corner of less turn than 1e-6 rad needs none: FALSE, largest
 * infinite. */
gboolean sq_corner_rounding (const SqSegment *in, const SqSegment *out, double radius_mm,
                             SqRounding *rounding, double *largest_mm);

/* What could not be rounded. */
typedef struct
{
  guint node;        /* of the ring */
  double largest_mm; /* what would fit there, its neighbours' roundings left as they are */
} SqRoundingTrouble;

/* @ring with node i rounded by radius_mm[i] (0: left sharp; roundings need room on both segments:
 * where two share a segment both must fit, or neither is made). The new arc carries arc_tag[i].
 * Corners that can't be rounded stay sharp and are appended to @troubles (of SqRoundingTrouble, may
 * be NULL). A segment that its roundings use up is left out. For a ring, node 0 included; if it is
 * rounded the result starts at the first node of the outgoing rest of its segment (the arc's end).
 * Returns a new ring. */
SqPath *sq_path_rounded (const SqPath *ring, const double *radius_mm, const guint32 *arc_tag,
                         GArray *troubles);
