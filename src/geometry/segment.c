/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "geometry/segment.h"

#include "base/units.h"

/* A segment seen from its chord. With the origin in the chord's middle, x along it and y to its
 * left, the circle of an arc is b (x² + y² − half²) = half (1 − b²) y. That needs no centre, so it
 * stays exact however slight the bow; with b = 0 it is the line. */
typedef struct
{
  SqPoint middle;
  SqVector along; /* unit */
  double half, b;
} Chord;

static Chord
chord_of (const SqSegment *s)
{
  SqVector chord = sq_sub (s->to, s->from);
  double length = sq_norm (chord);

  return (Chord){ sq_between (s->from, s->to, 0.5),
                  length > 0 ? sq_scale (chord, 1 / length) : sq_point (1, 0), length / 2,
                  sq_segment_is_arc (s) ? s->bulge : 0 };
}

static SqVector
in_chord (const Chord *chord, SqPoint p)
{
  SqVector v = sq_sub (p, chord->middle);
  return sq_point (sq_dot (v, chord->along), sq_cross (chord->along, v));
}

/* How far @p lies to the right of the unbounded line or circle, against its travel < 0. It is
 * (ρ² − R²) / (ρ + R) about the centre, the difference of squares written out. */
static double
right_of (const Chord *chord, SqPoint p)
{
  SqVector v = in_chord (chord, p);
  double b = chord->b, half = chord->half;

  if (half <= 0)
    return sq_norm (v);
  if (b == 0)
    return -v.y;
  double rho = sq_norm (sq_point (2 * b * v.x, (1 - b * b) * half - 2 * b * v.y));
  return 2 * (b * ((v.x - half) * (v.x + half) + v.y * v.y) - half * (1 - b * b) * v.y)
         / (rho + (1 + b * b) * half);
}

double
sq_segment_sweep_rad (const SqSegment *s)
{
  return sq_segment_is_arc (s) ? 4 * atan (s->bulge) : 0;
}

double
sq_segment_radius_mm (const SqSegment *s)
{
  if (!sq_segment_is_arc (s))
    return INFINITY;
  return sq_distance (s->from, s->to) * (1 + s->bulge * s->bulge) / (4 * s->bulge);
}

SqPoint
sq_segment_centre (const SqSegment *s)
{
  double b = s->bulge;
  SqVector to_left = sq_left (sq_sub (s->to, s->from));

  return sq_moved (sq_between (s->from, s->to, 0.5), to_left, (1 - b * b) / (4 * b));
}

double
sq_segment_length_mm (const SqSegment *s)
{
  double chord = sq_distance (s->from, s->to), b = s->bulge;

  return sq_segment_is_arc (s) ? chord * (1 + b * b) * atan (b) / b : chord;
}

/* The chord of the first part of an arc is the whole chord, shortened by the ratio of the sines
 * and turned towards the start. */
SqPoint
sq_segment_point (const SqSegment *s, double t)
{
  SqVector chord = sq_sub (s->to, s->from);
  double b = s->bulge;

  if (t == 0 || t == 1)
    return t == 0 ? s->from : s->to;
  if (!sq_segment_is_arc (s))
    return sq_moved (s->from, chord, t);
  double half_sweep = 2 * atan (b);
  double ratio = sin (half_sweep * t) * (1 + b * b) / (2 * b);
  return sq_moved (s->from, sq_turned (chord, half_sweep * (t - 1)), ratio);
}

SqVector
sq_segment_direction (const SqSegment *s, double t)
{
  SqVector chord = sq_unit (sq_sub (s->to, s->from));
  double b = s->bulge;

  if (!sq_segment_is_arc (s))
    return chord;
  if (t == 0 || t == 1)
    {
      double c = (1 - b * b) / (1 + b * b), sine = (t == 0 ? -2 : 2) * b / (1 + b * b);
      return sq_point (chord.x * c - chord.y * sine, chord.x * sine + chord.y * c);
    }
  return sq_turned (chord, 4 * atan (b) * (t - 0.5));
}

SqSegment
sq_segment_part (const SqSegment *s, double t0, double t1)
{
  if (t0 == 0 && t1 == 1)
    return *s;
  return (SqSegment){ sq_segment_point (s, t0), sq_segment_point (s, t1),
                      sq_segment_is_arc (s) ? tan (atan (s->bulge) * (t1 - t0)) : 0 };
}

/* An arc is farthest along an axis where its direction is square to that axis. */
SqBox
sq_segment_box (const SqSegment *s)
{
  SqBox box = sq_box_with (sq_box_with (sq_box_empty (), s->from), s->to);

  if (!sq_segment_is_arc (s))
    return box;
  SqVector chord = sq_sub (s->to, s->from);
  double sweep = 4 * atan (s->bulge), start = atan2 (chord.y, chord.x) - sweep / 2;
  double least = fmin (start, start + sweep), most = fmax (start, start + sweep);
  for (double quarter = ceil (least / G_PI_2); quarter * G_PI_2 < most; quarter++)
    box = sq_box_with (box, sq_segment_point (s, (quarter * G_PI_2 - start) / sweep));
  return box;
}

/* Area between an arc and its chord of length 1: ((1 + b²)² atan b − b (1 − b²)) / 8 b²; for
 * slight bows, where that cancels, its series. */
static double
unit_bow_area (double b)
{
  double bb = b * b;

  if (bb > 0.02)
    return ((1 + bb) * (1 + bb) * atan (b) - b * (1 - bb)) / (8 * bb);
  double sum = 0, power = b;
  for (int k = 1; k <= 9; k++, power *= -bb)
    sum -= power / ((2 * k + 1) * (2 * k - 1) * (2 * k - 3));
  return sum;
}

double
sq_segment_area_mm2 (const SqSegment *s)
{
  SqVector chord = sq_sub (s->to, s->from);
  double area = sq_cross (s->from, chord) / 2;

  return sq_segment_is_arc (s) ? area + sq_dot (chord, chord) * unit_bow_area (s->bulge) : area;
}

static double
place_in_chord (const Chord *chord, SqPoint p)
{
  SqVector v = in_chord (chord, p);
  double b = chord->b, half = chord->half;

  if (half <= 0)
    return 0;
  if (b == 0)
    return 0.5 + v.x / (2 * half);
  return 0.5 + atan2 (2 * b * v.x, (1 - b * b) * half - 2 * b * v.y) / (4 * atan (b));
}

double
sq_segment_place (const SqSegment *s, SqPoint p)
{
  Chord chord = chord_of (s);
  return place_in_chord (&chord, p);
}

double
sq_segment_nearest_mm (const SqSegment *s, SqPoint p, double *t)
{
  Chord chord = chord_of (s);
  double place = place_in_chord (&chord, p);

  if (place > 0 && place < 1)
    {
      *t = place;
      return fabs (right_of (&chord, p));
    }
  double from = sq_distance (s->from, p), to = sq_distance (s->to, p);
  *t = from <= to ? 0 : 1;
  return fmin (from, to);
}

SqSegment
sq_segment_offset (const SqSegment *s, double by_mm, gboolean *inverted)
{
  SqVector out_from = sq_right (sq_segment_direction (s, 0));
  SqVector out_to = sq_right (sq_segment_direction (s, 1));

  if (inverted != NULL)
    *inverted = sq_segment_is_arc (s) && 1 + by_mm / sq_segment_radius_mm (s) <= 0;
  return (SqSegment){ sq_moved (s->from, out_from, by_mm), sq_moved (s->to, out_to, by_mm),
                      s->bulge };
}

/* Where the line through @p along the unit @d meets the circle of an arc: the two roots, or, if it
 * comes within SQ_COINCIDE_MM of touching, the one point of touch. *@turning is the point of the
 * line nearest to the circle's centre. */
static guint
line_meets_circle (SqPoint p, SqVector d, const Chord *arc, SqPoint out[2], SqPoint *turning)
{
  SqPoint foot = sq_moved (p, d, sq_dot (sq_sub (arc->middle, p), d));
  SqVector v = in_chord (arc, foot);
  double b = arc->b, half = arc->half, bow = half * (1 - b * b);
  double linear = -bow * sq_cross (arc->along, d) / 2;
  double constant = b * (sq_dot (v, v) - half * half) - bow * v.y;

  *turning = sq_moved (foot, d, -linear / b);
  if (fabs (right_of (arc, *turning)) <= SQ_COINCIDE_MM)
    {
      out[0] = *turning;
      return 1;
    }
  double discriminant = linear * linear - b * constant;
  if (discriminant <= 0)
    return 0;
  /* the sum without cancellation first, the other root from their product */
  double q = -(linear + copysign (sqrt (discriminant), linear));
  out[0] = sq_moved (foot, d, q / b);
  out[1] = sq_moved (foot, d, constant / q);
  return 2;
}

static guint
line_meets_line (const Chord *a, const Chord *b, SqPoint out[2])
{
  double cross = sq_cross (a->along, b->along);

  if (cross == 0)
    return 0;
  out[0] = sq_moved (a->middle, a->along,
                     sq_cross (sq_sub (b->middle, a->middle), b->along) / cross);
  return 1;
}

/* A circle as curvature / 2 |p|² + gradient · p + constant = 0 about @origin, scaled so that the
 * value grows as the distance does where it is 0. */
typedef struct
{
  double half_curvature, constant;
  SqVector gradient;
} Circle;

static Circle
circle_about (const Chord *arc, SqPoint origin)
{
  double b = arc->b, half = arc->half, scale = 1 / (half * (1 + b * b)), bow = half * (1 - b * b);
  SqVector m = sq_sub (arc->middle, origin), left = sq_left (arc->along);

  return (Circle){ b * scale, scale * (b * (sq_dot (m, m) - half * half) + bow * sq_dot (left, m)),
                   sq_scale (sq_add (sq_scale (m, 2 * b), sq_scale (left, bow)), -scale) };
}

/* Both circles' points lie on their radical line; the smaller circle is cut with it. */
static guint
circle_meets_circle (const SqSegment *a, const Chord *a_chord, const Chord *b_chord, SqPoint out[2])
{
  Circle a_circle = circle_about (a_chord, a_chord->middle);
  Circle b_circle = circle_about (b_chord, a_chord->middle);
  double ratio = b_circle.half_curvature / a_circle.half_curvature;
  SqVector normal = sq_sub (b_circle.gradient, sq_scale (a_circle.gradient, ratio));
  double constant = b_circle.constant - ratio * a_circle.constant, norm = sq_norm (normal);

  if (norm < 1e-14)
    return 0; /* concentric */
  SqPoint turning, on_line = sq_moved (a_chord->middle, normal, -constant / (norm * norm));
  SqVector along = sq_scale (sq_left (normal), 1 / norm);
  guint n = line_meets_circle (on_line, along, a_chord, out, &turning);
  /* touching is judged where the line of centres leaves the smaller circle */
  if (fabs (right_of (a_chord, turning)) < fabs (sq_segment_radius_mm (a)) / 2)
    {
      SqPoint touch = sq_segment_point (a, place_in_chord (a_chord, turning));
      if (fabs (right_of (b_chord, touch)) <= SQ_COINCIDE_MM)
        {
          out[0] = touch;
          return 1;
        }
    }
  return n;
}

static guint
carriers_meet (const SqSegment *a, const Chord *a_chord, const SqSegment *b, const Chord *b_chord,
               SqPoint out[2])
{
  SqPoint turning;

  if (a_chord->half <= 0 || b_chord->half <= 0)
    return 0;
  if (a_chord->b == 0 && b_chord->b == 0)
    return line_meets_line (a_chord, b_chord, out);
  if (a_chord->b == 0)
    return line_meets_circle (a_chord->middle, a_chord->along, b_chord, out, &turning);
  if (b_chord->b == 0)
    return line_meets_circle (b_chord->middle, b_chord->along, a_chord, out, &turning);
  if (fabs (sq_segment_radius_mm (a)) <= fabs (sq_segment_radius_mm (b)))
    return circle_meets_circle (a, a_chord, b_chord, out);
  return circle_meets_circle (b, b_chord, a_chord, out);
}

/* Whether all of @s lies on the line or circle of @other. Four places, so that three remain where
 * the ends of a nearly full circle are alike. */
static gboolean
lies_along (const SqSegment *s, const Chord *other)
{
  return fabs (right_of (other, s->from)) <= SQ_COINCIDE_MM
         && fabs (right_of (other, s->to)) <= SQ_COINCIDE_MM
         && (!(sq_segment_is_arc (s) || other->b != 0)
             || (fabs (right_of (other, sq_segment_point (s, 1.0 / 3))) <= SQ_COINCIDE_MM
                 && fabs (right_of (other, sq_segment_point (s, 2.0 / 3))) <= SQ_COINCIDE_MM));
}

guint
sq_segments_meet_extended (const SqSegment *a, const SqSegment *b, SqPoint out[2])
{
  Chord a_chord = chord_of (a), b_chord = chord_of (b);

  if (a_chord.b == 0 && b_chord.b == 0
      && fabs (sq_cross (a_chord.along, b_chord.along)) < SQ_STRAIGHT_RAD)
    return 0;
  if (lies_along (a, &b_chord) || lies_along (b, &a_chord))
    return 0;
  return carriers_meet (a, &a_chord, b, &b_chord, out);
}

/* Candidates for meetings, best first: ends, then crossings. */
typedef struct
{
  const SqSegment *a, *b;
  SqMeeting found[6];
  guint n;
} Meetings;

static gboolean
on_segment (const SqSegment *s, SqPoint p, double *t)
{
  if (sq_distance (p, s->from) <= SQ_COINCIDE_MM)
    *t = 0;
  else if (sq_distance (p, s->to) <= SQ_COINCIDE_MM)
    *t = 1;
  else
    return sq_segment_nearest_mm (s, p, t) <= SQ_COINCIDE_MM;
  return TRUE;
}

static void
consider (Meetings *meetings, SqPoint p)
{
  SqMeeting m = { .at = p };

  if (!on_segment (meetings->a, p, &m.ta) || !on_segment (meetings->b, p, &m.tb))
    return;
  for (guint i = 0; i < meetings->n; i++)
    if (sq_distance (meetings->found[i].at, p) <= SQ_COINCIDE_MM)
      return;
  meetings->found[meetings->n++] = m;
}

/* Whether the segments stay together all the way between two of their meetings. */
static gboolean
are_joined (const Meetings *meetings, const SqMeeting *m, const SqMeeting *n)
{
  double t;
  SqPoint between = sq_segment_point (meetings->a, (m->ta + n->ta) / 2);
  return sq_segment_nearest_mm (meetings->b, between, &t) <= SQ_COINCIDE_MM;
}

static void
sort_along_a (Meetings *meetings)
{
  for (guint i = 1; i < meetings->n; i++)
    for (guint j = i; j > 0 && meetings->found[j].ta < meetings->found[j - 1].ta; j--)
      {
        SqMeeting swap = meetings->found[j];
        meetings->found[j] = meetings->found[j - 1];
        meetings->found[j - 1] = swap;
      }
}

/* The longest stretch that both have in common, if it is longer than a point. */
static gboolean
find_overlap (Meetings *meetings, SqMeeting out[2])
{
  double longest = 0;

  for (guint i = 0; i + 1 < meetings->n; i++)
    {
      const SqMeeting *m = &meetings->found[i];
      if (m[1].ta - m->ta > longest && are_joined (meetings, m, m + 1))
        {
          longest = m[1].ta - m->ta;
          out[0] = m[0];
          out[1] = m[1];
        }
    }
  return longest > 0;
}

/* A touch may have given the end that lies in it beside the point itself: the first is kept. */
static guint
keep_apart (Meetings *meetings, SqMeeting out[2])
{
  Meetings kept = { meetings->a, meetings->b, { { { 0, 0 }, 0, 0 } }, 0 };

  for (guint i = 0; i < meetings->n; i++)
    {
      gboolean is_new = TRUE;
      for (guint j = 0; j < kept.n && is_new; j++)
        is_new = !are_joined (meetings, &kept.found[j], &meetings->found[i]);
      if (is_new)
        kept.found[kept.n++] = meetings->found[i];
    }
  kept.n = MIN (kept.n, 2);
  sort_along_a (&kept);
  for (guint i = 0; i < kept.n; i++)
    out[i] = kept.found[i];
  return kept.n;
}

/* Two lines that clearly cross or clearly miss each other: the usual case, at once. FALSE if it
 * needs a closer look. */
static gboolean
lines_clearly (const SqSegment *a, const SqSegment *b, SqMeeting *out, guint *n)
{
  SqVector r = sq_sub (a->to, a->from), s = sq_sub (b->to, b->from), d = sq_sub (b->from, a->from);
  double cross = sq_cross (r, s), rr = sq_dot (r, r), ss = sq_dot (s, s);

  if (cross * cross <= 1e-8 * rr * ss)
    return FALSE;
  double ta = sq_cross (d, s) / cross, tb = sq_cross (d, r) / cross;
  /* an end this much off along its line may still lie within the tolerance of the other */
  double slack_a = 2 * SQ_COINCIDE_MM * sqrt (ss) / fabs (cross);
  double slack_b = 2 * SQ_COINCIDE_MM * sqrt (rr) / fabs (cross);
  if (ta < -slack_a || ta > 1 + slack_a || tb < -slack_b || tb > 1 + slack_b)
    {
      *n = 0;
      return TRUE;
    }
  if (ta < slack_a || ta > 1 - slack_a || tb < slack_b || tb > 1 - slack_b)
    return FALSE;
  *out = (SqMeeting){ sq_moved (a->from, r, ta), ta, tb };
  *n = 1;
  return TRUE;
}

guint
sq_segments_meet (const SqSegment *a, const SqSegment *b, SqMeeting out[2], gboolean *overlap)
{
  Meetings meetings = { .a = a, .b = b };
  SqPoint crossings[2];
  guint n;

  if (overlap != NULL)
    *overlap = FALSE;
  if (!sq_segment_is_arc (a) && !sq_segment_is_arc (b) && lines_clearly (a, b, &out[0], &n))
    return n;

  Chord a_chord = chord_of (a), b_chord = chord_of (b);
  consider (&meetings, a->from);
  consider (&meetings, a->to);
  consider (&meetings, b->from);
  consider (&meetings, b->to);
  if (lies_along (a, &b_chord) || lies_along (b, &a_chord))
    {
      sort_along_a (&meetings);
      if (find_overlap (&meetings, out))
        {
          if (overlap != NULL)
            *overlap = TRUE;
          return 2;
        }
      return keep_apart (&meetings, out);
    }
  n = carriers_meet (a, &a_chord, b, &b_chord, crossings);
  for (guint i = 0; i < n; i++)
    consider (&meetings, crossings[i]);
  return keep_apart (&meetings, out);
}
