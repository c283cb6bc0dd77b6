/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "geometry/fit.h"

#include "base/units.h"

/* Everything here is built from lengths, angles and halves of the parameter, and treats both ends
 * alike: a turned, mirrored or reversed curve gets the turned, mirrored or reversed chain. */

enum
{
  MAX_PIECES = 512,
  MAX_HALVINGS = 24,
  SAMPLES = 16, /* parts that a stretch is looked at in */
};

/* The peak of the deviation may lie between two samples. */
#define SAMPLED_PART 0.95
/* Slower than this part of its greatest speed, a curve stands still: its direction is noise. */
#define STILL_PART 1e-9
/* Half-angles whose tangents differ by less are the same: one arc will do for two. */
#define SAME_BULGE 5e-11
/* Cosine of half an arc's sweep: an arc turns by 200° at most. No angle that occurs by itself, so
 * that rounding decides nothing. */
#define LEAST_COSINE -0.17
/* Two directions whose sum is shorter than this are too nearly opposite to have a mean. */
#define LEAST_MEAN 0.1
/* Cosine of the angle between the curve and its arc, and between one sample and the next: anything
 * more is a loop or a cusp that the distance alone would not show. */
#define LEAST_ALONG 0.5

typedef struct
{
  double t;
  SqPoint at;
  SqVector direction; /* of length 1 */
} Station;

typedef struct
{
  SqCurve curve;
  gconstpointer data;
  double within_mm;
  double still; /* speed at which the curve stands */
  guint32 tag;
  GArray *nodes;
  guint n_before;
} Fit;

/* A circle (or a line: no curvature) that passes through @at, its centre on the @left if the
 * curvature is > 0. */
typedef struct
{
  SqPoint at;
  SqVector left;
  double curvature;
} Circle;

/* How far @p lies outside the circle (to the right of it), and the left normal at its foot. With
 * q = p − at and f = k q²/2 − n·q the distance is (√(1 + 2 k f) − 1) / k; this form of it holds
 * for k = 0 as well. */
static double
circle_distance (const Circle *circle, SqPoint p, SqVector *normal)
{
  SqVector q = sq_sub (p, circle->at);
  SqVector towards = sq_moved (circle->left, q, -circle->curvature);
  double f = circle->curvature * sq_dot (q, q) / 2 - sq_dot (circle->left, q);
  double w = sq_norm (towards); /* = √(1 + 2 k f) */

  *normal = w > 0 ? sq_scale (towards, 1 / w) : towards;
  return 2 * f / (1 + w);
}

/* Tangent of half the angle from @a to @b, both of length 1: the bulge of an arc that starts
 * along @a and whose chord runs along @b. */
static double
half_tangent (SqVector a, SqVector b)
{
  return sq_cross (a, b) / (1 + sq_dot (a, b));
}

/* @unit, a direction at one end of an arc, becomes that at the other end of its chord along
 * @chord. */
static SqVector
reflected (SqVector unit, SqVector chord)
{
  return sq_sub (sq_scale (chord, 2 * sq_dot (unit, chord)), unit);
}

static gboolean
station_at (const Fit *fit, double t, Station *station)
{
  SqVector derivative;

  station->t = t;
  fit->curve (t, &station->at, &derivative, fit->data);
  double speed = sq_norm (derivative);
  if (!(isfinite (speed) && isfinite (station->at.x) && isfinite (station->at.y)
        && speed > fit->still))
    return FALSE;
  station->direction = sq_scale (derivative, 1 / speed);
  return TRUE;
}

/* Two arcs from one station to another, tangent to each other at a joint. */
typedef struct
{
  Circle circles[2]; /* through the first and through the last station */
  SqPoint joint;
  SqVector direction; /* at the joint */
  double bulges[2];
} Biarc;

/* All joints that make two tangent arcs lie on one circle through both ends: its angle with the
 * chord is the mean of the curve's angles there. The joint nearest to the curve's own middle is
 * taken: it belongs to the two directions of travel alike. FALSE if there is no sensible one. */
static gboolean
biarc_through (const Station *from, const Station *to, SqPoint middle, Biarc *biarc)
{
  SqVector chord = sq_sub (to->at, from->at);
  double length = sq_norm (chord);
  if (!(length > 0))
    return FALSE;
  chord = sq_scale (chord, 1 / length);
  SqVector along = sq_add (from->direction, reflected (to->direction, chord));
  if (sq_norm (along) < LEAST_MEAN)
    return FALSE;
  along = sq_unit (along);
  const Circle joints = {
    .at = from->at,
    .left = sq_left (along),
    .curvature = 2 * sq_cross (along, chord) / length,
  };
  SqVector normal;
  double aside = circle_distance (&joints, middle, &normal);
  biarc->joint = sq_moved (middle, normal, aside);

  SqVector to_joint = sq_sub (biarc->joint, from->at), from_joint = sq_sub (to->at, biarc->joint);
  double l0 = sq_norm (to_joint), l1 = sq_norm (from_joint);
  if (!(l0 > 0 && l1 > 0))
    return FALSE;
  to_joint = sq_scale (to_joint, 1 / l0);
  from_joint = sq_scale (from_joint, 1 / l1);
  biarc->direction = reflected (from->direction, to_joint);
  biarc->circles[0] = (Circle){ from->at, sq_left (from->direction),
                                2 * sq_cross (from->direction, to_joint) / l0 };
  biarc->circles[1] = (Circle){ to->at, sq_left (to->direction),
                                2 * sq_cross (from_joint, to->direction) / l1 };
  biarc->bulges[0] = half_tangent (from->direction, to_joint);
  biarc->bulges[1] = half_tangent (from_joint, to->direction);
  return sq_dot (from->direction, to_joint) > LEAST_COSINE
         && sq_dot (from_joint, to->direction) > LEAST_COSINE
         && sq_dot (biarc->direction, reflected (to->direction, from_joint)) > 0;
}

static gboolean
biarc_is_near (const Fit *fit, const Biarc *biarc, const Station *station)
{
  gboolean second = sq_dot (sq_sub (station->at, biarc->joint), biarc->direction) > 0;
  SqVector normal;
  double aside = circle_distance (&biarc->circles[second], station->at, &normal);

  return fabs (aside) <= fit->within_mm * SAMPLED_PART
         && sq_cross (station->direction, normal) >= LEAST_ALONG;
}

/* The curve stays near the arcs at every sample and runs along them, and both start and end
 * together; so the arcs stay near the curve as well. From sample to sample it turns little: at a
 * cusp it never does, however close they are. */
static gboolean
biarc_fits (const Fit *fit, const Biarc *biarc, const Station *from, const Station *to)
{
  double step = (to->t - from->t) / SAMPLES;
  SqVector before = from->direction;

  for (int i = 1; i < SAMPLES; i++)
    {
      Station station;
      if (!station_at (fit, from->t + step * i, &station) || !biarc_is_near (fit, biarc, &station)
          || sq_dot (before, station.direction) < LEAST_ALONG)
        return FALSE;
      before = station.direction;
    }
  return sq_dot (before, to->direction) >= LEAST_ALONG;
}

static void
append_node (Fit *fit, SqPoint at, double bulge)
{
  SqNode node = { at, fabs (bulge) > SQ_STRAIGHT_BULGE ? bulge : 0, fit->tag };
  g_array_append_val (fit->nodes, node);
}

/* Both arcs are of one circle when they leave and meet the chord at the same angle. */
static void
append_biarc (Fit *fit, const Biarc *biarc, const Station *from, const Station *to)
{
  SqVector chord = sq_unit (sq_sub (to->at, from->at));
  double b0 = half_tangent (from->direction, chord), b1 = half_tangent (chord, to->direction);

  if (fabs (b0 - b1) < SAME_BULGE && sq_dot (from->direction, chord) > LEAST_COSINE)
    append_node (fit, from->at, (b0 + b1) / 2);
  else
    {
      append_node (fit, from->at, biarc->bulges[0]);
      append_node (fit, biarc->joint, biarc->bulges[1]);
    }
}

static gboolean
fit_between (Fit *fit, const Station *from, const Station *to, int halvings)
{
  Station middle;
  Biarc biarc;

  if (!station_at (fit, (from->t + to->t) / 2, &middle))
    return FALSE;
  if (biarc_through (from, to, middle.at, &biarc) && biarc_fits (fit, &biarc, from, to))
    {
      append_biarc (fit, &biarc, from, to);
      return fit->nodes->len - fit->n_before <= MAX_PIECES;
    }
  return halvings > 0 && fit_between (fit, from, &middle, halvings - 1)
         && fit_between (fit, &middle, to, halvings - 1);
}

static double
greatest_speed (SqCurve curve, gconstpointer data)
{
  double greatest = 0;

  for (int i = 0; i <= SAMPLES; i++)
    {
      SqPoint at;
      SqVector derivative;
      curve ((double) i / SAMPLES, &at, &derivative, data);
      greatest = fmax (greatest, sq_norm (derivative));
    }
  return greatest;
}

gboolean
sq_fit_curve (SqCurve curve, gconstpointer data, double within_mm, guint32 tag, GArray *nodes)
{
  g_return_val_if_fail (curve != NULL && nodes != NULL, FALSE);
  g_return_val_if_fail (within_mm > 0, FALSE);

  Fit fit = {
    .curve = curve,
    .data = data,
    .within_mm = within_mm,
    .still = greatest_speed (curve, data) * STILL_PART,
    .tag = tag,
    .nodes = nodes,
    .n_before = nodes->len,
  };
  Station from, to;
  if (station_at (&fit, 0, &from) && station_at (&fit, 1, &to)
      && fit_between (&fit, &from, &to, MAX_HALVINGS))
    return TRUE;
  g_array_set_size (nodes, fit.n_before);
  return FALSE;
}

/* Bernstein's form about the nearer end: exact at both ends, and the reversed cubic gives the same
 * points. */
typedef struct
{
  SqPoint control[4];
  SqVector ends[2]; /* directions at the ends */
} Cubic;

static void
cubic_at (double t, SqPoint *at, SqVector *derivative, gconstpointer data)
{
  const Cubic *cubic = data;
  const SqPoint *p = cubic->control;
  double u = 1 - t;

  *at = sq_add (sq_add (sq_scale (p[0], u * u * u), sq_scale (p[3], t * t * t)),
                sq_add (sq_scale (p[1], 3 * u * u * t), sq_scale (p[2], 3 * u * t * t)));
  if (t <= 0 || u <= 0)
    *derivative = cubic->ends[t > 0];
  else
    *derivative = sq_add (sq_add (sq_scale (sq_sub (p[1], p[0]), 3 * u * u),
                                  sq_scale (sq_sub (p[3], p[2]), 3 * t * t)),
                          sq_scale (sq_sub (p[2], p[1]), 6 * u * t));
}

/* The direction in which the cubic leaves a: towards the first control point that does not lie on
 * it, which is the limit of the directions where the derivative is 0. */
static SqVector
leaving (SqPoint a, SqPoint b, SqPoint c, SqPoint d)
{
  if (sq_distance (a, b) > SQ_COINCIDE_MM)
    return sq_scale (sq_sub (b, a), 3);
  if (sq_distance (a, c) > SQ_COINCIDE_MM)
    return sq_scale (sq_sub (c, a), 3);
  return sq_scale (sq_sub (d, a), 3);
}

/* Whether all control points lie on the chord's line and the cubic never goes back on it. With a
 * and b the places of the inner two (the chord is 1 long) its speed is
 * 3 (a (1 − t)² + 2 (b − a) t (1 − t) + (1 − b) t²). */
static gboolean
cubic_is_straight (const SqPoint p[4])
{
  SqVector chord = sq_sub (p[3], p[0]);
  double length = sq_norm (chord);
  if (length <= SQ_COINCIDE_MM)
    return FALSE;
  SqVector along = sq_scale (chord, 1 / length);
  SqVector one = sq_sub (p[1], p[0]), two = sq_sub (p[2], p[0]);
  if (fabs (sq_cross (along, one)) > SQ_COINCIDE_MM
      || fabs (sq_cross (along, two)) > SQ_COINCIDE_MM)
    return FALSE;
  double room = SQ_COINCIDE_MM / length;
  double a = sq_dot (along, one) / length, b = sq_dot (along, two) / length;
  return a >= -room && b <= 1 + room && b - a + sqrt (fmax (a * (1 - b), 0)) >= -room;
}

gboolean
sq_fit_cubic (const SqPoint control[4], double within_mm, guint32 tag, GArray *nodes)
{
  g_return_val_if_fail (control != NULL && nodes != NULL, FALSE);

  if (cubic_is_straight (control))
    {
      SqNode node = { control[0], 0, tag };
      g_array_append_val (nodes, node);
      return TRUE;
    }
  const Cubic cubic = {
    .control = { control[0], control[1], control[2], control[3] },
    .ends = { leaving (control[0], control[1], control[2], control[3]),
              sq_scale (leaving (control[3], control[2], control[1], control[0]), -1) },
  };
  return sq_fit_curve (cubic_at, &cubic, within_mm, tag, nodes);
}
