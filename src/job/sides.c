/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "job/sides.h"

#include "base/units.h"
#include "geometry/crossing.h"
#include "geometry/fit.h"

/* Sides nearer to parallel than this are parallel: at 1 m it is a thousandth of a mm aside. */
#define PARALLEL_RAD 1e-6

/* --- what a ring is now --------------------------------------------------------------------- */

/* One edge alone, as an open path; the chord where a curve can't be fitted. */
static SqPath *
edge_path (const SqCorner *corner, const SqCorner *next)
{
  g_autoptr (GArray) nodes = g_array_new (FALSE, FALSE, sizeof (SqNode));
  const SqPoint control[4] = { corner->at, corner->control[0], corner->control[1], next->at };
  const SqNode start = { corner->at, sq_edge_segment (corner, next).bulge, 0 };
  const SqNode end = { next->at, 0, 0 };

  if (corner->shape != SQ_SHAPE_CURVE || !sq_fit_cubic (control, SQ_FIT_MM, 0, nodes))
    g_array_append_val (nodes, start);
  g_array_append_val (nodes, end);
  return sq_path_new ((const SqNode *) nodes->data, nodes->len, FALSE);
}

/* Where a cubic is farthest from its chord. Its distance at t is
 * 3 t (1 − t) (a (1 − t) + b t), a and b being those of the control points; there its derivative
 * a (1 − 4 t + 3 t²) + b (2 t − 3 t²) is 0. */
static double
curve_rise_mm (const SqCorner *corner, const SqCorner *next)
{
  SqVector outward = sq_right (sq_unit (sq_sub (next->at, corner->at)));
  double a = sq_dot (outward, sq_sub (corner->control[0], corner->at));
  double b = sq_dot (outward, sq_sub (corner->control[1], corner->at));
  double square = 3 * (a - b), half = b - 2 * a;
  double root = sqrt (fmax (half * half - square * a, 0));
  double q = half >= 0 ? -half - root : root - half;
  const double places[] = { square != 0 ? q / square : -1, q != 0 ? a / q : -1 };
  double rise = 0;

  for (guint i = 0; i < G_N_ELEMENTS (places); i++)
    {
      double t = places[i], u = 1 - t;
      double here = t > 0 && t < 1 ? 3 * t * u * (a * u + b * t) : 0;

      if (fabs (here) > fabs (rise))
        rise = here;
    }
  return rise;
}

static double
rise_mm (const SqCorner *corner, const SqCorner *next)
{
  if (corner->shape == SQ_SHAPE_CURVE)
    return curve_rise_mm (corner, next);
  return corner->shape == SQ_SHAPE_BOW ? corner->bow_mm : 0;
}

/* 1 for a ring that runs counter-clockwise, −1 for one that runs clockwise. */
static double
sense_of (guint ring, const SqPath *path)
{
  double area = path != NULL ? sq_path_area_mm2 (path) : 0;

  if (area == 0)
    area = ring == 0 ? 1 : -1;
  return area > 0 ? 1 : -1;
}

/* The angle inside a ring of @sense between the side that comes in along @in and the one that goes
 * out along @out, 0 … 2π; 0 where one of them is nothing. */
static double
inside_angle_rad (SqVector in, SqVector out, double sense)
{
  double angle = sense * sq_angle_rad (out, sq_scale (in, -1));

  if (sq_norm (in) <= SQ_COINCIDE_MM || sq_norm (out) <= SQ_COINCIDE_MM)
    return 0;
  return angle < 0 ? angle + 2 * M_PI : angle;
}

static SqVector
chord_of (const SqCorner *ring, guint n, guint i)
{
  return sq_sub (ring[(i + 1) % n].at, ring[i].at);
}

static double
angle_at (const SqCorner *ring, guint n, guint i, double sense)
{
  return inside_angle_rad (chord_of (ring, n, (i + n - 1) % n), chord_of (ring, n, i), sense);
}

static SqSideReading
read_side (const SqCorner *ring, guint n, guint i, double sense)
{
  const SqCorner *before = &ring[(i + n - 1) % n], *corner = &ring[i], *next = &ring[(i + 1) % n];
  g_autoptr (SqPath) in = edge_path (before, corner);
  g_autoptr (SqPath) out = edge_path (corner, next);
  SqSegment last = sq_path_segment (in, sq_path_n_segments (in) - 1);
  SqSegment first = sq_path_segment (out, 0);
  gboolean is_bow = corner->shape == SQ_SHAPE_BOW;

  return (SqSideReading){
    .edge = corner->id,
    .chord_mm = sq_distance (corner->at, next->at),
    .length_mm = sq_path_length_mm (out),
    .rise_mm = rise_mm (corner, next),
    .bend_radius_mm = is_bow ? fabs (sq_segment_radius_mm (&first)) : INFINITY,
    .rounding_mm = corner->radius_mm,
    .angle_rad = angle_at (ring, n, i, sense),
    .true_angle_rad = inside_angle_rad (sq_segment_direction (&last, 1),
                                        sq_segment_direction (&first, 0), sense),
  };
}

SqSideReading *
sq_outline_side_readings (const SqOutline *outline, guint ring, guint *n)
{
  const SqCorner *corners = sq_outline_ring (outline, ring, n);
  SqSideReading *readings = g_new (SqSideReading, *n);
  g_autoptr (SqPath) path = sq_outline_path (outline, ring, NULL);
  double sense = sense_of (ring, path);

  for (guint i = 0; i < *n; i++)
    readings[i] = read_side (corners, *n, i, sense);
  return readings;
}

/* --- edits by a figure ---------------------------------------------------------------------- */

/* The corners of an outline while one of its rings is changed. */
typedef struct
{
  const SqOutline *outline;
  SqCorner *all;
  guint *sizes;
  SqCorner *ring; /* the one that changes, of n corners */
  guint n, ring_index, at;
  double sense;
  gboolean was_simple;
} Draft;

static gboolean
is_simple (const SqPath *path)
{
  return path != NULL && sq_path_is_simple (path, NULL);
}

/* Begins a change about the corner @id, which is there. */
static void
draft_init (Draft *draft, const SqOutline *outline, SqId id)
{
  g_autoptr (SqPath) path = NULL;

  draft->outline = outline;
  sq_outline_corner (outline, id, &draft->ring_index, &draft->at);
  draft->all = draft->ring = sq_outline_dup_corners (outline, &draft->sizes);
  for (guint r = 0; r < draft->ring_index; r++)
    draft->ring += draft->sizes[r];
  draft->n = draft->sizes[draft->ring_index];
  path = sq_outline_path (outline, draft->ring_index, NULL);
  draft->sense = sense_of (draft->ring_index, path);
  draft->was_simple = is_simple (path);
}

static gboolean
is_too_far (const Draft *draft)
{
  for (guint i = 0; i < draft->n; i++)
    if (fabs (draft->ring[i].at.x) > SQ_SEAT_MOST_MM
        || fabs (draft->ring[i].at.y) > SQ_SEAT_MOST_MM)
      return TRUE;
  return FALSE;
}

/* Ends the change: the new outline, or NULL where @result is not fine, or the ring now crosses
 * itself or runs the other way and did not before. */
static SqOutline *
draft_end (Draft *draft, SqSidesResult result, SqSidesResult *told)
{
  g_autoptr (SqOutline) outline = NULL;

  if (result == SQ_SIDES_FINE && is_too_far (draft))
    result = SQ_SIDES_TOO_LONG;
  if (result == SQ_SIDES_FINE)
    {
      g_autoptr (SqPath) path = NULL;

      outline = sq_outline_new (draft->all, draft->sizes, sq_outline_n_rings (draft->outline));
      path = sq_outline_path (outline, draft->ring_index, NULL);
      if (draft->was_simple
          && (!is_simple (path) || sense_of (draft->ring_index, path) != draft->sense))
        result = SQ_SIDES_CROSS;
    }
  g_free (draft->all);
  g_free (draft->sizes);
  if (told != NULL)
    *told = result;
  return result == SQ_SIDES_FINE ? g_steal_pointer (&outline) : NULL;
}

/* A turn about a point, then a move. */
typedef struct
{
  SqPoint about;
  double turn_rad;
  SqVector by;
} Motion;

static SqPoint
moved_point (const Motion *motion, SqPoint p)
{
  if (motion->turn_rad != 0)
    p = sq_add (motion->about, sq_turned (sq_sub (p, motion->about), motion->turn_rad));
  return sq_add (p, motion->by);
}

/* Moves @count corners from @first on, and the handles that hang on them. */
static void
move_corners (Draft *draft, guint first, guint count, const Motion *motion)
{
  for (guint k = 0; k < count; k++)
    {
      SqCorner *corner = &draft->ring[(first + k) % draft->n];
      SqCorner *before = &draft->ring[(first + k + draft->n - 1) % draft->n];

      corner->at = moved_point (motion, corner->at);
      corner->control[0] = moved_point (motion, corner->control[0]);
      before->control[1] = moved_point (motion, before->control[1]);
    }
}

static gboolean
are_parallel (SqVector a, SqVector b)
{
  return sq_norm (b) > SQ_COINCIDE_MM && fabs (sq_cross (sq_unit (a), sq_unit (b))) < PARALLEL_RAD;
}

/* How many sides on from the changed one, seen from the end that moves, the one lies that takes up
 * the change; as many corners move. */
static guint
steps_to_taker (const Draft *draft, SqStays stays)
{
  guint n = draft->n;
  SqVector changed = chord_of (draft->ring, n, draft->at);

  for (guint step = 1; step < n - 1; step++)
    {
      guint other = stays == SQ_STAYS_START ? draft->at + step : draft->at + n - step;

      if (are_parallel (changed, chord_of (draft->ring, n, other % n)))
        return step;
    }
  return n - 1;
}

/* Whether a side that was @before and is @after has lost its length, or turned over where it was
 * @is_parallel to the one that changed. */
static gboolean
is_used_up (SqVector before, SqVector after, gboolean is_parallel)
{
  return sq_norm (after) <= SQ_COINCIDE_MM || (is_parallel && sq_dot (before, after) <= 0);
}

static SqSidesResult
set_side_length (Draft *draft, double length_mm, SqStays stays)
{
  guint n = draft->n, at = draft->at, steps, taker;
  SqVector side = chord_of (draft->ring, n, at), before;
  double longer_mm = length_mm - sq_norm (side);
  Motion motion = { .turn_rad = 0 };

  if (!(length_mm > 0))
    return SQ_SIDES_NOT_POSITIVE;
  if (length_mm > SQ_SEAT_MOST_MM)
    return SQ_SIDES_TOO_LONG;
  if (n < 2 || sq_norm (side) <= SQ_COINCIDE_MM)
    return SQ_SIDES_NO_DIRECTION;
  steps = steps_to_taker (draft, stays);
  taker = (stays == SQ_STAYS_START ? at + steps : at + n - steps) % n;
  before = chord_of (draft->ring, n, taker);
  motion.by = sq_scale (sq_unit (side), stays == SQ_STAYS_START ? longer_mm : -longer_mm);
  move_corners (draft, stays == SQ_STAYS_START ? at + 1 : taker + 1, steps, &motion);
  if (is_used_up (before, chord_of (draft->ring, n, taker), are_parallel (side, before)))
    return longer_mm > 0 ? SQ_SIDES_TOO_LONG : SQ_SIDES_TOO_SHORT;
  return SQ_SIDES_FINE;
}

SqOutline *
sq_outline_with_side_length (const SqOutline *outline, SqId edge, double length_mm, SqStays stays,
                             SqSidesResult *result)
{
  Draft draft;

  g_return_val_if_fail (sq_outline_corner (outline, edge, NULL, NULL) != NULL, NULL);
  draft_init (&draft, outline, edge);
  return draft_end (&draft, set_side_length (&draft, length_mm, stays), result);
}

static SqSidesResult
set_angle (Draft *draft, double angle_rad, SqStays stays)
{
  guint n = draft->n, at = draft->at;
  double now, more;

  if (!(angle_rad > 0 && angle_rad < 2 * M_PI))
    return SQ_SIDES_NOT_POSITIVE;
  now = angle_at (draft->ring, n, at, draft->sense);
  if (n < 3 || sq_norm (chord_of (draft->ring, n, at)) <= SQ_COINCIDE_MM
      || sq_norm (chord_of (draft->ring, n, (at + n - 1) % n)) <= SQ_COINCIDE_MM)
    return SQ_SIDES_NO_DIRECTION;
  /* Counter-clockwise inside the ring: from the side that goes out to the one that came in. */
  more = draft->sense * (angle_rad - now);
  if (stays == SQ_STAYS_START)
    move_corners (draft, at + 1, n - 2, &(Motion){ draft->ring[at].at, -more, { 0, 0 } });
  else
    move_corners (draft, at + 2, n - 2, &(Motion){ draft->ring[at].at, more, { 0, 0 } });
  return SQ_SIDES_FINE;
}

SqOutline *
sq_outline_with_angle (const SqOutline *outline, SqId corner, double angle_rad, SqStays stays,
                       SqSidesResult *result)
{
  Draft draft;

  g_return_val_if_fail (sq_outline_corner (outline, corner, NULL, NULL) != NULL, NULL);
  draft_init (&draft, outline, corner);
  return draft_end (&draft, set_angle (&draft, angle_rad, stays), result);
}

/* --- a seat taped side by side -------------------------------------------------------------- */

void
sq_sides_walk (const double *sides_mm, const double *angles_rad, guint n_sides, SqPoint *corners)
{
  double heading = 0;

  corners[0] = sq_point (0, 0);
  for (guint i = 0; i < n_sides; i++)
    {
      corners[i + 1] = sq_moved (corners[i], sq_point (cos (heading), sin (heading)), sides_mm[i]);
      if (i + 1 < n_sides)
        heading += M_PI - angles_rad[i];
    }
}

/* The first figure that can't be, in the order in which they are taped; −1: none. */
static gint
first_bad (const double *sides_mm, const double *angles_rad, guint n_sides, SqSidesResult *result)
{
  *result = SQ_SIDES_NOT_POSITIVE;
  for (guint i = 0; i < n_sides; i++)
    {
      if (!(sides_mm[i] > 0))
        return 2 * (gint) i;
      if (sides_mm[i] > SQ_SEAT_MOST_MM)
        {
          *result = SQ_SIDES_TOO_LONG;
          return 2 * (gint) i;
        }
      if (i + 1 < n_sides && !(angles_rad[i] > 0 && angles_rad[i] < 2 * M_PI))
        return 2 * (gint) i + 1;
    }
  *result = SQ_SIDES_FINE;
  return -1;
}

static SqClosing
closing_of (const SqPoint *corners, guint n)
{
  SqVector closing = sq_sub (corners[0], corners[n - 1]);

  return (SqClosing){
    sq_norm (closing),
    inside_angle_rad (sq_sub (corners[n - 1], corners[n - 2]), closing, 1),
    inside_angle_rad (closing, sq_sub (corners[1], corners[0]), 1),
  };
}

static SqOutline *
outline_through (const SqPoint *points, guint n)
{
  g_autofree SqCorner *corners = g_new0 (SqCorner, n);

  for (guint i = 0; i < n; i++)
    {
      corners[i].id = i + 1;
      corners[i].at = points[i];
    }
  corners[0].front = TRUE;
  return sq_outline_new (corners, &n, 1);
}

SqOutline *
sq_outline_from_sides (const double *sides_mm, const double *angles_rad, guint n_sides,
                       SqClosing *closing, SqSidesResult *result, gint *bad)
{
  g_autofree SqPoint *corners = g_new (SqPoint, n_sides + 1);
  g_autoptr (SqPath) path = NULL;
  SqSidesResult outcome;
  gint worst;

  g_return_val_if_fail (n_sides >= 2, NULL);
  worst = first_bad (sides_mm, angles_rad, n_sides, &outcome);
  if (closing != NULL)
    *closing = (SqClosing){ 0, 0, 0 };
  if (outcome == SQ_SIDES_FINE)
    {
      sq_sides_walk (sides_mm, angles_rad, n_sides, corners);
      if (closing != NULL)
        *closing = closing_of (corners, n_sides + 1);
      path = sq_path_new_polygon (corners, n_sides + 1);
      if (!sq_path_is_simple (path, NULL) || sq_path_area_mm2 (path) < 0)
        outcome = SQ_SIDES_CROSS;
    }
  if (result != NULL)
    *result = outcome;
  if (bad != NULL)
    *bad = worst;
  return outcome == SQ_SIDES_FINE ? outline_through (corners, n_sides + 1) : NULL;
}

double
sq_sides_misclosure_mm (const double *sides_mm, const double *angles_rad, guint n_sides)
{
  g_autofree SqPoint *corners = g_new (SqPoint, n_sides);

  g_return_val_if_fail (n_sides >= 3, 0);
  sq_sides_walk (sides_mm, angles_rad, n_sides - 1, corners);
  return sides_mm[n_sides - 1] - sq_distance (corners[0], corners[n_sides - 1]);
}
