/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "geometry/rounding.h"

#include "base/units.h"

/* Less turn than this needs no rounding, and so much less than half a turn is a path that comes
 * straight back, which no arc can round (rad). */
#define LEAST_TURN_RAD 1e-6
/* How finely the largest radius is found (mm); a tenth of what is promised. */
#define LARGEST_STEP_MM 1e-3

/* A corner seen from itself: its point is (0, 0). */
typedef struct
{
  SqVector middle;     /* left of travel, half-way between the two sides' left normals */
  SqVector left[2];    /* left normals of the incoming and the outgoing side at the corner */
  double curvature[2]; /* > 0: bends to the left; 0 for a line */
  double length_mm[2];
  double turn_rad, sign; /* sign: 1 for a left turn, −1 for a right one */
} Corner;

/* A tangent arc, as far as the corner sees it. */
typedef struct
{
  SqVector tangent[2]; /* its ends */
  double taken_mm[2];  /* lengths of the two sides that it takes over from, up to the corner */
  double sweep_rad;
} Fillet;

static double
curvature_of (const SqSegment *s)
{
  return sq_segment_is_arc (s) ? 1 / sq_segment_radius_mm (s) : 0;
}

static Corner
corner_between (const SqSegment *in, const SqSegment *out)
{
  SqVector arriving = sq_segment_direction (in, 1), leaving = sq_segment_direction (out, 0);
  double turn = sq_angle_rad (arriving, leaving);

  return (Corner){
    .middle = sq_left (sq_turned (arriving, turn / 2)),
    .left = { sq_left (arriving), sq_left (leaving) },
    .curvature = { curvature_of (in), curvature_of (out) },
    .length_mm = { sq_segment_length_mm (in), sq_segment_length_mm (out) },
    .turn_rad = turn,
    .sign = turn < 0 ? -1 : 1,
  };
}

/* The nearest centre from which an arc of @radius_mm touches both sides' lines or circles on the
 * corner's inner side.
 *
 * With s = ±radius, to the left, a centre c is as far from a side of left normal n and curvature k
 * where k q / 2 = n·c − s, q = c² − s²: that is the parallel line for k = 0 and the parallel circle
 * otherwise. Two sides give c = a + b q, linear in q, and q = c² − s² a quadratic equation. The
 * root that is 0 for a radius of 0 is the one that grows out of the corner; where it ends, so do
 * the arcs that round this corner. */
static gboolean
nearest_centre (const Corner *corner, double s, SqVector *centre)
{
  double half = corner->turn_rad / 2, k0 = corner->curvature[0], k1 = corner->curvature[1];
  SqVector a = sq_scale (corner->middle, s / cos (half));
  SqVector b = sq_moved (sq_scale (corner->middle, (k0 + k1) / (4 * cos (half))),
                         sq_right (corner->middle), (k0 - k1) / (4 * sin (half)));
  double ends = s * tan (half);
  double constant = ends * ends; /* a² − s² */
  double linear = 1 - 2 * sq_dot (a, b);
  double root = linear * linear - 4 * sq_dot (b, b) * constant;
  if (!(linear > 0 && root >= 0))
    return FALSE;
  *centre = sq_moved (a, b, 2 * constant / (linear + sqrt (root)));
  return TRUE;
}

/* Length of side @i between the corner and the point nearest to @centre, at @tangent. Negative or
 * too long where the side does not reach it; infinite where the side bends more than the arc. */
static double
length_taken_mm (const Corner *corner, guint i, double s, SqVector centre, SqVector *tangent)
{
  SqVector left = corner->left[i];
  double k = corner->curvature[i];
  double rest = 1 - k * s;
  if (!(rest > 0))
    return INFINITY;
  SqVector normal = sq_scale (sq_moved (left, centre, -k), 1 / rest);
  *tangent = sq_moved (centre, normal, -s);
  double along = sq_dot (sq_right (left), centre) * (i == 0 ? -1 : 1) / rest;
  if (k == 0)
    return along;
  double length = atan2 (k * along, sq_dot (left, normal)) / k;
  return length < -SQ_COINCIDE_MM ? length + 2 * M_PI / fabs (k) : length;
}

/* Whether an arc of @radius_mm fits on @room_mm[0] of the incoming and @room_mm[1] of the outgoing
 * side. */
static gboolean
corner_fillet (const Corner *corner, double radius_mm, const double room_mm[2], Fillet *fillet)
{
  double s = radius_mm * corner->sign;
  SqVector centre;

  if (!nearest_centre (corner, s, &centre))
    return FALSE;
  fillet->sweep_rad = corner->turn_rad;
  for (guint i = 0; i < 2; i++)
    {
      double taken = length_taken_mm (corner, i, s, centre, &fillet->tangent[i]);
      if (!(taken >= -SQ_COINCIDE_MM && taken <= room_mm[i] + SQ_COINCIDE_MM))
        return FALSE;
      fillet->taken_mm[i] = CLAMP (taken, 0, room_mm[i]);
      fillet->sweep_rad += corner->curvature[i] * fillet->taken_mm[i];
    }
  return fillet->sweep_rad * corner->sign > 0 && fabs (fillet->sweep_rad) < 2 * M_PI;
}

/* The largest radius up to @upper_mm, which does not fit, that does. */
static double
largest_radius_mm (const Corner *corner, double upper_mm, const double room_mm[2])
{
  double lower_mm = 0;
  Fillet fillet;

  while (upper_mm - lower_mm > LARGEST_STEP_MM)
    {
      double middle_mm = (lower_mm + upper_mm) / 2;
      if (corner_fillet (corner, middle_mm, room_mm, &fillet))
        lower_mm = middle_mm;
      else
        upper_mm = middle_mm;
    }
  return lower_mm;
}

static gboolean
corner_needs_none (const Corner *corner)
{
  return fabs (corner->turn_rad) < LEAST_TURN_RAD;
}

static gboolean
corner_comes_back (const Corner *corner)
{
  return fabs (corner->turn_rad) > M_PI - LEAST_TURN_RAD;
}

static SqSegment
fillet_arc (const Fillet *fillet, SqPoint corner)
{
  return (SqSegment){ sq_add (corner, fillet->tangent[0]), sq_add (corner, fillet->tangent[1]),
                      tan (fillet->sweep_rad / 4) };
}

gboolean
sq_corner_rounding (const SqSegment *in, const SqSegment *out, double radius_mm,
                    SqRounding *rounding, double *largest_mm)
{
  g_return_val_if_fail (in != NULL && out != NULL && rounding != NULL, FALSE);
  g_return_val_if_fail (radius_mm > 0 && isfinite (radius_mm), FALSE);

  Corner corner = corner_between (in, out);
  Fillet fillet;
  double largest = INFINITY;
  gboolean fits = FALSE;

  if (corner_comes_back (&corner))
    largest = 0;
  else if (!corner_needs_none (&corner))
    {
      fits = corner_fillet (&corner, radius_mm, corner.length_mm, &fillet);
      if (!fits && largest_mm != NULL)
        largest = largest_radius_mm (&corner, radius_mm, corner.length_mm);
    }
  if (fits)
    *rounding = (SqRounding){ fillet_arc (&fillet, in->to),
                              1 - fillet.taken_mm[0] / corner.length_mm[0],
                              fillet.taken_mm[1] / corner.length_mm[1] };
  else if (largest_mm != NULL)
    *largest_mm = largest;
  return fits;
}

typedef enum
{
  SHARP,   /* no rounding asked for, or none needed */
  ROUND,   /* fits, the two sides taken for themselves */
  CROWDED, /* would fit, but a neighbour's rounding is in the way */
  TOO_LARGE,
} Fate;

/* What becomes of the corner at a node. */
typedef struct
{
  Fate fate;
  Corner corner;
  Fillet fillet;
} Turning;

static Turning
turning_at (const SqPath *ring, guint i, double radius_mm)
{
  guint n = sq_path_n_nodes (ring);
  SqSegment in = sq_path_segment (ring, (i + n - 1) % n), out = sq_path_segment (ring, i);
  Turning turning = { .fate = SHARP, .corner = corner_between (&in, &out) };
  const Corner *corner = &turning.corner;

  /* An arc that is shorter than what coincides would only make a segment of no length. */
  if (!(radius_mm * fabs (corner->turn_rad) > SQ_COINCIDE_MM) || corner_needs_none (corner))
    return turning;
  turning.fate = !corner_comes_back (corner)
                         && corner_fillet (corner, radius_mm, corner->length_mm, &turning.fillet)
                     ? ROUND
                     : TOO_LARGE;
  return turning;
}

static double
taken_mm (const Turning *turning, guint side)
{
  return turning->fate == ROUND || turning->fate == CROWDED ? turning->fillet.taken_mm[side] : 0;
}

/* Two roundings that meet on a segment which is too short for both are both refused: neither goes
 * before the other. */
static void
find_crowded (Turning *turnings, guint n)
{
  for (guint i = 0; i < n; i++)
    {
      Turning *a = &turnings[i], *b = &turnings[(i + 1) % n];
      double wanted_a = taken_mm (a, 1), wanted_b = taken_mm (b, 0);
      if (wanted_a > 0 && wanted_b > 0
          && wanted_a + wanted_b > a->corner.length_mm[1] + SQ_COINCIDE_MM)
        a->fate = b->fate = CROWDED;
    }
}

static void
report_troubles (const Turning *turnings, guint n, const double *radius_mm, GArray *troubles)
{
  for (guint i = 0; i < n; i++)
    {
      const Turning *before = &turnings[(i + n - 1) % n], *here = &turnings[i];
      const Turning *after = &turnings[(i + 1) % n];
      if (here->fate != CROWDED && here->fate != TOO_LARGE)
        continue;
      const double room[2] = { here->corner.length_mm[0] - taken_mm (before, 1),
                               here->corner.length_mm[1] - taken_mm (after, 0) };
      SqRoundingTrouble trouble = { .node = i };
      if (!corner_comes_back (&here->corner))
        trouble.largest_mm = largest_radius_mm (&here->corner, radius_mm[i], room);
      g_array_append_val (troubles, trouble);
    }
}

/* What the roundings at its ends leave of a segment. */
typedef struct
{
  SqSegment segment;
  gboolean used_up; /* nothing: the roundings meet each other, or the next corner */
} Rest;

static Rest
rest_between (const SqSegment *whole, const Turning *start, const Turning *end)
{
  double length = start->corner.length_mm[1], taken = 0;
  Rest rest = { .segment = *whole };

  if (start->fate == ROUND)
    {
      rest.segment.from = sq_add (whole->from, start->fillet.tangent[1]);
      taken += start->fillet.taken_mm[1];
    }
  if (end->fate == ROUND)
    {
      rest.segment.to = sq_add (whole->to, end->fillet.tangent[0]);
      taken += end->fillet.taken_mm[0];
    }
  if (taken > 0)
    {
      rest.segment.bulge = tan (atan (whole->bulge) * (1 - taken / length));
      rest.used_up = taken >= length - SQ_COINCIDE_MM;
    }
  if (rest.used_up && start->fate == ROUND)
    rest.segment.to = sq_between (rest.segment.from, rest.segment.to, 0.5);
  else if (rest.used_up)
    rest.segment.to = whole->from;
  return rest;
}

SqPath *
sq_path_rounded (const SqPath *ring, const double *radius_mm, const guint32 *arc_tag,
                 GArray *troubles)
{
  g_return_val_if_fail (ring != NULL && sq_path_is_ring (ring), NULL);
  g_return_val_if_fail (radius_mm != NULL && arc_tag != NULL, NULL);

  guint n = sq_path_n_nodes (ring);
  g_autofree Turning *turnings = g_new (Turning, n);
  for (guint i = 0; i < n; i++)
    {
      g_return_val_if_fail (isfinite (radius_mm[i]), NULL);
      turnings[i] = turning_at (ring, i, radius_mm[i]);
    }
  find_crowded (turnings, n);
  if (troubles != NULL)
    report_troubles (turnings, n, radius_mm, troubles);

  SqPathBuilder builder;
  sq_path_builder_init (&builder);
  for (guint i = 0; i < n; i++)
    {
      guint next = (i + 1) % n;
      SqSegment whole = sq_path_segment (ring, i);
      Rest rest = rest_between (&whole, &turnings[i], &turnings[next]);
      if (!rest.used_up)
        sq_path_builder_add (&builder, rest.segment.from, rest.segment.bulge,
                             sq_path_nodes (ring)[i].tag);
      if (turnings[next].fate == ROUND)
        sq_path_builder_add (&builder, rest.segment.to, tan (turnings[next].fillet.sweep_rad / 4),
                             arc_tag[next]);
    }
  return sq_path_builder_end (&builder, TRUE);
}
