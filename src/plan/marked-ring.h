/* SPDX-License-Identifier: GPL-3.0-or-later */
/* The points by which a cut line is chalked onto cloth: so few that a hand likes to set them, and so
 * many that what is drawn through them, read off as figures, is the cut line to a blade's width. */
#pragma once

#include "base/length.h"
#include "geometry/path.h"

/* How far what is drawn from the figures may be from the cut line, 1/32 in. */
#define SQ_MARKED_MM 0.79375

typedef struct
{
  SqPoint at;         /* exact */
  gboolean is_fine;   /* its figures are read to half the step: a whole one would be too coarse */
  gboolean is_middle; /* on the arc from the point before it to the one after; else the line comes
                       * straight from the point before, if that is none either */
  double radius_mm, rise_mm; /* of that arc; both > 0, 0 for other points */
} SqMarkPoint;

#define sq_mark_point(points, i) (&g_array_index ((points), SqMarkPoint, (i)))

/* The points of @ring, on cloth, counter-clockwise, from the one nearest to the cut end and the near
 * edge; figures are read in @style's step. What no hand could see is left out: corners that none
 * are, arcs of many parts. New array of SqMarkPoint, the first no middle. */
GArray *sq_marked_ring (const SqPath *ring, const SqLengthStyle *style);

/* The style that figures of a point, or others that are as fine, are shown in. */
SqLengthStyle sq_mark_style (gboolean is_fine, const SqLengthStyle *style);

/* What a hand draws from the figures of @points: each rounded as it is shown. A segment begins at
 * every point that is no middle. New. */
SqPath *sq_marked_ring_read (const GArray *points, const SqLengthStyle *style);
