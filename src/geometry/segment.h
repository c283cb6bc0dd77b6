/* SPDX-License-Identifier: GPL-3.0-or-later */
/* One straight line or circular arc, and what can be asked of it in closed form. */
#pragma once

#include "geometry/point.h"

/* bulge = tan (sweep / 4): 0 is straight, > 0 turns counter-clockwise (the arc lies to the right
 * of its chord), 1 is half a circle, more is a major arc. The sweep is below a full turn. */
typedef struct
{
  SqPoint from, to;
  double bulge;
} SqSegment;

/* |bulge| below which a segment is straight: the rise of a 100 m chord is then under 0.1 µm. */
#define SQ_STRAIGHT_BULGE 1e-9

static inline gboolean
sq_segment_is_arc (const SqSegment *s)
{
  return fabs (s->bulge) > SQ_STRAIGHT_BULGE;
}

/* Angle that the direction turns by along it, −2π … 2π; 0 for a line. */
double sq_segment_sweep_rad (const SqSegment *s);

/* Radius, > 0 for a counter-clockwise arc, < 0 for a clockwise one, infinite for a line. */
double sq_segment_radius_mm (const SqSegment *s);

/* Centre of the circle; only for arcs. */
SqPoint sq_segment_centre (const SqSegment *s);

double sq_segment_length_mm (const SqSegment *s);

/* Point and unit direction of travel at @t, 0 … 1 of its length. Values outside go on along the
 * line or round the circle. */
SqPoint sq_segment_point (const SqSegment *s, double t);
SqVector sq_segment_direction (const SqSegment *s, double t);

/* The part from @t0 to @t1 of its length; t1 < t0 is travelled backwards. */
SqSegment sq_segment_part (const SqSegment *s, double t0, double t1);

static inline SqSegment
sq_segment_reversed (const SqSegment *s)
{
  return (SqSegment){ s->to, s->from, -s->bulge };
}

SqBox sq_segment_box (const SqSegment *s);

/* What it adds to the signed area of a ring it is a side of (shoelace term and circular
 * segment), mm². */
double sq_segment_area_mm2 (const SqSegment *s);

/* Nearest point of the segment to @p, as its place @t (0 … 1); returns the distance. */
double sq_segment_nearest_mm (const SqSegment *s, SqPoint p, double *t);

/* Place of @p along the segment's own line or circle, as a part of its length: 0 … 1 on it,
 * outside before or after it. For an arc the value nearest to the segment's middle is taken. */
double sq_segment_place (const SqSegment *s, SqPoint p);

/* The parallel segment at distance @by_mm to the right. Its ends move along the normals there;
 * the angle of an arc is kept. An arc whose radius the move uses up comes out on the far side of
 * its centre (*@inverted set, if given), which is what removing loops by winding number needs. */
SqSegment sq_segment_offset (const SqSegment *s, double by_mm, gboolean *inverted);

/* One meeting of two segments: a point, and its places on both. */
typedef struct
{
  SqPoint at;
  double ta, tb;
} SqMeeting;

/* Where @a and @b meet, ends included, within SQ_COINCIDE_MM: 0 … 2 meetings. Where they run over
 * each other (the same line or circle) the two ends of the common stretch are given and
 * *@overlap is set, if given. Tangent circles and lines give the one point. */
guint sq_segments_meet (const SqSegment *a, const SqSegment *b, SqMeeting out[2],
                        gboolean *overlap);

/* Where the unbounded line or circle of @a meets that of @b: 0 … 2 points. Nothing for the same
 * line or circle. */
guint sq_segments_meet_extended (const SqSegment *a, const SqSegment *b, SqPoint out[2]);
