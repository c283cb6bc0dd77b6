/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "job/edge.h"
#include "job/frame.h"
#include "job/snap.h"

/* Reasons hold to this (mm). */
#define HOLDS_MM 1e-9

/* --- the seats ----------------------------------------------------------------------------- */

static SqOutline *
seat_of (const SqPoint *points, guint n)
{
  g_autofree SqCorner *corners = g_new0 (SqCorner, n);

  for (guint i = 0; i < n; i++)
    corners[i] = (SqCorner){ .id = i + 1, .at = points[i], .front = i == 0 };
  return sq_outline_new (corners, &n, 1);
}

/* 600 wide, 400 deep. */
static SqOutline *
rectangle (void)
{
  const SqPoint points[] = { { 0, 0 }, { 600, 0 }, { 600, 400 }, { 0, 400 } };

  return seat_of (points, G_N_ELEMENTS (points));
}

static SqSnapQuestion
drag_of (const SqOutline *outline, SqDragKind drag, SqId id, double x, double y)
{
  return (SqSnapQuestion){ .before = outline,
                           .drag = drag,
                           .id = id,
                           .raw = { x, y },
                           .reach_mm = 8,
                           .kinds = SQ_SNAP_ALL,
                           .grid_mm = 5 };
}

static const SqSnapReason *
reason_of (const SqSnap *snap, SqSnapKind kind)
{
  for (guint i = 0; i < snap->n_reasons; i++)
    if (snap->reasons[i].kind == kind)
      return &snap->reasons[i];
  return NULL;
}

static void
assert_at (const SqSnap *snap, double x, double y)
{
  g_assert_cmpfloat_with_epsilon (snap->at.x, x, HOLDS_MM);
  g_assert_cmpfloat_with_epsilon (snap->at.y, y, HOLDS_MM);
}

/* --- worked cases -------------------------------------------------------------------------- */

/* A corner dragged out of a rectangle comes back square to both its neighbours' edges, to the last
 * bit. */
static void
test_square (void)
{
  g_autoptr (SqOutline) outline = rectangle ();
  SqSnapQuestion question = drag_of (outline, SQ_DRAG_CORNER, 3, 603, 396);
  SqSnap snap = sq_snap (&question);

  g_assert_cmpfloat (snap.at.x, ==, 600);
  g_assert_cmpfloat (snap.at.y, ==, 400);
  g_assert_cmpuint (snap.n_reasons, ==, 2);
  g_assert_nonnull (reason_of (&snap, SQ_SNAP_SQUARE));
  g_assert_cmpfloat (reason_of (&snap, SQ_SNAP_SQUARE)->figure, ==, G_PI_2);
}

/* One side stays square to the front, its length is a whole number of steps. */
static void
test_grid_along_guide (void)
{
  g_autoptr (SqOutline) outline = rectangle ();
  SqSnapQuestion question = drag_of (outline, SQ_DRAG_CORNER, 3, 603, 441);
  SqSnap snap = sq_snap (&question);

  g_assert_cmpfloat (snap.at.x, ==, 600);
  g_assert_cmpfloat (snap.at.y, ==, 440);
  g_assert_cmpuint (snap.n_reasons, ==, 2);
  g_assert_cmpint (snap.reasons[0].kind, ==, SQ_SNAP_SQUARE);
  g_assert_cmpuint (snap.reasons[0].edge, ==, 2);
  g_assert_cmpuint (snap.reasons[0].other, ==, 1);
  g_assert_cmpint (snap.reasons[1].kind, ==, SQ_SNAP_GRID);
  g_assert_cmpfloat (snap.reasons[1].figure, ==, 5);
}

static void
test_grid_alone (void)
{
  g_autoptr (SqOutline) outline = rectangle ();
  SqSnapQuestion question = drag_of (outline, SQ_DRAG_CORNER, 3, 651.5, 463.2);
  SqSnap snap;

  question.grid_at = sq_point (1, 2);
  question.kinds = SQ_SNAP_BIT (SQ_SNAP_GRID);
  snap = sq_snap (&question);
  assert_at (&snap, 651, 462);
  g_assert_cmpuint (snap.n_reasons, ==, 1);
  question.kinds = 0;
  snap = sq_snap (&question);
  g_assert_cmpuint (snap.n_reasons, ==, 0);
  g_assert_cmpfloat (snap.at.x, ==, 651.5);
  g_assert_cmpfloat (snap.at.y, ==, 463.2);
  question.kinds = SQ_SNAP_ALL;
  question.grid_mm = 0;
  snap = sq_snap (&question);
  g_assert_null (reason_of (&snap, SQ_SNAP_GRID));
}

/* A step wider than the reach catches only near its points. */
static void
test_wide_grid (void)
{
  g_autoptr (SqOutline) outline = rectangle ();
  SqSnapQuestion question = drag_of (outline, SQ_DRAG_CORNER, 3, 730, 530);
  SqSnap snap;

  question.kinds = SQ_SNAP_BIT (SQ_SNAP_GRID);
  question.grid_mm = 100;
  snap = sq_snap (&question);
  g_assert_cmpuint (snap.n_reasons, ==, 0);
  question.raw = sq_point (704, 504);
  snap = sq_snap (&question);
  assert_at (&snap, 700, 500);
}

/* The fifth corner of a bay: as long as the other slanting side, over the middle of the front. */
static void
test_bay (void)
{
  const SqPoint points[] = { { 0, 0 }, { 600, 0 }, { 600, 300 }, { 310, 460 }, { 0, 300 } };
  g_autoptr (SqOutline) outline = seat_of (points, G_N_ELEMENTS (points));
  SqSnapQuestion question = drag_of (outline, SQ_DRAG_CORNER, 4, 302, 452);
  const SqSnapReason *reason;
  SqSnap snap;

  question.kinds = SQ_SNAP_BIT (SQ_SNAP_EQUAL_LENGTH);
  snap = sq_snap (&question);
  reason = reason_of (&snap, SQ_SNAP_EQUAL_LENGTH);
  g_assert_nonnull (reason);
  g_assert_cmpfloat_with_epsilon (snap.at.x, 300, HOLDS_MM);
  g_assert_cmpuint (reason->edge, ==, 3);
  g_assert_cmpuint (reason->other, ==, 4);
  question.kinds = SQ_SNAP_BIT (SQ_SNAP_MIDDLE);
  snap = sq_snap (&question);
  assert_at (&snap, 300, 452);
  g_assert_cmpuint (snap.reasons[0].other, ==, 1);
  g_assert_cmpfloat_with_epsilon (snap.reasons[0].figure, 452, HOLDS_MM);
}

static void
test_symmetry (void)
{
  const SqPoint points[] = { { 0, 0 }, { 600, 0 }, { 560, 400 }, { 70, 390 } };
  g_autoptr (SqOutline) outline = seat_of (points, G_N_ELEMENTS (points));
  SqSnapQuestion question = drag_of (outline, SQ_DRAG_CORNER, 4, 43, 402);
  SqAxis axis;
  SqSnap snap;

  g_assert_true (sq_outline_front_axis (outline, &axis));
  question.axis = &axis;
  snap = sq_snap (&question);
  g_assert_cmpfloat (snap.at.x, ==, 40);
  g_assert_cmpfloat (snap.at.y, ==, 400);
  g_assert_cmpint (snap.reasons[0].kind, ==, SQ_SNAP_SYMMETRY);
  g_assert_cmpuint (snap.reasons[0].other, ==, 3);
  g_assert_cmpfloat (snap.reasons[0].figure, ==, 260);
  /* the image of corner 1 is corner 2 already */
  question.raw = sq_point (598, 1);
  snap = sq_snap (&question);
  g_assert_cmpfloat (sq_distance (snap.at, points[1]), >, 1e-3);
}

/* Three corners drawn, the fourth finds itself square over the first. */
static void
test_new_corner (void)
{
  const SqPoint points[] = { { 0, 0 }, { 500, 0 }, { 500, 420 } };
  g_autoptr (SqOutline) row = seat_of (points, G_N_ELEMENTS (points));
  SqSnapQuestion question = drag_of (row, SQ_DRAG_NEW_CORNER, 3, 4, 417);
  SqSnap snap = sq_snap (&question);

  g_assert_cmpfloat (snap.at.x, ==, 0);
  g_assert_cmpfloat (snap.at.y, ==, 420);
  g_assert_cmpint (snap.reasons[0].kind, ==, SQ_SNAP_SQUARE);
  g_assert_cmpuint (snap.reasons[0].edge, ==, 3);
  g_assert_cmpuint (snap.reasons[0].other, ==, 2);
  g_assert_cmpint (snap.reasons[1].kind, ==, SQ_SNAP_ALIGNED);
  g_assert_cmpuint (snap.reasons[1].other, ==, 1);
}

/* With nothing drawn there is the grid alone. */
static void
test_first_corner (void)
{
  g_autoptr (SqOutline) nothing = sq_outline_new (NULL, NULL, 0);
  SqSnapQuestion question = drag_of (nothing, SQ_DRAG_NEW_CORNER, 0, 11, 13.2);
  SqSnap snap = sq_snap (&question);

  assert_at (&snap, 10, 15);
  g_assert_cmpuint (snap.n_reasons, ==, 1);
}

/* The back of an L comes in line with its other back. */
static void
test_edge (void)
{
  const SqPoint points[] = { { 0, 0 },     { 800, 0 },   { 800, 300 },
                             { 400, 300 }, { 400, 602 }, { 0, 602 } };
  g_autoptr (SqOutline) outline = seat_of (points, G_N_ELEMENTS (points));
  SqSnapQuestion question = drag_of (outline, SQ_DRAG_EDGE, 3, 604, 597);
  const SqSnapReason *reason;
  SqSnap snap;

  question.grip = sq_point (600, 300);
  question.kinds = SQ_SNAP_BIT (SQ_SNAP_ALIGNED);
  snap = sq_snap (&question);
  g_assert_cmpuint (snap.n_reasons, ==, 0); /* a corner of it would land on corner 5 */
  question.kinds = SQ_SNAP_ALL;
  question.raw = sq_point (604, 403);
  snap = sq_snap (&question);
  reason = reason_of (&snap, SQ_SNAP_EQUAL_LENGTH);
  g_assert_nonnull (reason); /* the right side as long as the edge that is dragged stays */
  question.kinds = SQ_SNAP_BIT (SQ_SNAP_GRID);
  question.raw = sq_point (604, 336.4);
  question.grid_at = sq_point (0, 1);
  snap = sq_snap (&question);
  g_assert_cmpfloat_with_epsilon (snap.value, 36, HOLDS_MM);
  assert_at (&snap, 604, 336);
}

static void
test_bow (void)
{
  g_autoptr (SqOutline) plain = rectangle ();
  SqCorner corner = *sq_outline_corner (plain, 4, NULL, NULL);
  SqSnapQuestion question;
  SqSnap snap;

  corner.shape = SQ_SHAPE_BOW;
  corner.bow_mm = 33;
  g_autoptr (SqOutline) outline = sq_outline_with_corner (plain, &corner);
  question = drag_of (outline, SQ_DRAG_BOW, 2, 636, 200);
  snap = sq_snap (&question);
  g_assert_cmpfloat (snap.value, ==, 33);
  assert_at (&snap, 633, 200);
  g_assert_cmpint (snap.reasons[0].kind, ==, SQ_SNAP_EQUAL_RISE);
  g_assert_cmpuint (snap.reasons[0].other, ==, 4);
  question.raw = sq_point (567, 200);
  snap = sq_snap (&question);
  g_assert_cmpfloat (snap.value, ==, -33);
  question.raw = sq_point (803, 200);
  snap = sq_snap (&question);
  g_assert_cmpfloat (snap.value, ==, 200);
  g_assert_nonnull (reason_of (&snap, SQ_SNAP_HALF_CIRCLE));
  g_assert_nonnull (reason_of (&snap, SQ_SNAP_TANGENT)); /* to front and back */
  question.raw = sq_point (603, 150);
  snap = sq_snap (&question);
  g_assert_cmpfloat (snap.value, ==, 0);
  g_assert_cmpint (snap.reasons[0].kind, ==, SQ_SNAP_STRAIGHT);
  question.raw = sq_point (652, 200);
  snap = sq_snap (&question);
  g_assert_cmpfloat (snap.value, ==, 50);
  g_assert_cmpint (snap.reasons[0].kind, ==, SQ_SNAP_GRID);
}

/* The rounding of a square corner is 0.414 radii from it. */
static void
test_radius (void)
{
  g_autoptr (SqOutline) plain = rectangle ();
  SqCorner corner = *sq_outline_corner (plain, 1, NULL, NULL);
  double inward_mm = 62 * (1 - G_SQRT2 / 2);
  SqSnapQuestion question;
  SqSnap snap;

  corner.radius_mm = 61;
  g_autoptr (SqOutline) outline = sq_outline_with_corner (plain, &corner);
  question = drag_of (outline, SQ_DRAG_RADIUS, 3, 600 - inward_mm, 400 - inward_mm);
  snap = sq_snap (&question);
  g_assert_cmpfloat (snap.value, ==, 61);
  g_assert_cmpint (snap.reasons[0].kind, ==, SQ_SNAP_EQUAL_RADIUS);
  g_assert_cmpuint (snap.reasons[0].other, ==, 1);
  question.kinds = SQ_SNAP_BIT (SQ_SNAP_GRID);
  snap = sq_snap (&question);
  g_assert_cmpfloat (snap.value, ==, 60);
  question.kinds = 0;
  snap = sq_snap (&question);
  g_assert_cmpfloat_with_epsilon (snap.value, 62, 1e-9);
  question.kinds = SQ_SNAP_ALL;
  question.raw = sq_point (603, 401);
  snap = sq_snap (&question);
  g_assert_cmpfloat (snap.value, ==, 0);
  g_assert_cmpint (snap.reasons[0].kind, ==, SQ_SNAP_SHARP);
  assert_at (&snap, 600, 400);
}

/* --- laws ---------------------------------------------------------------------------------- */

/* What has been done once the hand lets go. */
static SqOutline *
dragged (const SqSnapQuestion *q, const SqSnap *snap, SqId *new_id)
{
  guint ring = 0, i = 0, n;
  const SqCorner *old = sq_outline_corner (q->before, q->id, &ring, &i);
  const SqCorner *corners = sq_outline_ring (q->before, ring, &n);
  SqVector along = sq_unit (sq_sub (corners[(i + 1) % n].at, old->at));
  SqCorner corner = *old;

  *new_id = q->id;
  switch (q->drag)
    {
    case SQ_DRAG_CORNER:
      return sq_outline_with_corner_moved (q->before, q->id, sq_sub (snap->at, old->at));
    case SQ_DRAG_EDGE:
      return sq_outline_with_edge_moved (q->before, q->id,
                                         sq_scale (sq_right (along), snap->value));
    case SQ_DRAG_NEW_CORNER:
      corner = (SqCorner){ .id = *new_id = sq_outline_new_corner_id (q->before), .at = snap->at };
      return sq_outline_with_corner_after (q->before, q->id, &corner);
    case SQ_DRAG_BOW:
      corner.shape = SQ_SHAPE_BOW;
      corner.bow_mm = snap->value;
      return sq_outline_with_corner (q->before, &corner);
    case SQ_DRAG_RADIUS:
    default:
      corner.radius_mm = snap->value;
      return sq_outline_with_corner (q->before, &corner);
    }
}

static const SqCorner *
edge_of (const SqOutline *outline, SqId id, const SqCorner **next)
{
  guint ring = 0, i = 0, n;
  const SqCorner *corner = sq_outline_corner (outline, id, &ring, &i);

  g_assert_nonnull (corner);
  const SqCorner *corners = sq_outline_ring (outline, ring, &n);
  *next = &corners[(i + 1) % n];
  return corner;
}

static SqVector
chord_of (const SqOutline *outline, SqId id)
{
  const SqCorner *next, *corner = edge_of (outline, id, &next);

  return sq_sub (next->at, corner->at);
}

static double
off_steps_mm (double mm, double step_mm)
{
  return fabs (mm - round (mm / step_mm) * step_mm);
}

static double
off_line_mm (SqPoint a, SqPoint b, SqPoint p)
{
  SqVector ab = sq_sub (b, a), ap = sq_sub (p, a), bp = sq_sub (p, b);
  double longest = fmax (fmax (sq_norm (ab), sq_norm (ap)), sq_norm (bp));

  return fabs (sq_cross (ab, ap)) / longest;
}

static double
off_grid_mm (const SqSnapQuestion *q, const SqSnap *snap, SqVector level)
{
  const SqSnapReason *reason = reason_of (snap, SQ_SNAP_GRID);
  SqVector x = sq_norm (q->grid_along) > 0 ? q->grid_along : level;
  SqVector v = sq_sub (reason->to, reason->from);

  if (q->drag == SQ_DRAG_BOW || q->drag == SQ_DRAG_RADIUS)
    return off_steps_mm (snap->value, q->grid_mm);
  if (q->drag == SQ_DRAG_EDGE)
    {
      SqVector outward = sq_right (sq_unit (chord_of (q->before, q->id)));
      return off_steps_mm (sq_dot (v, outward), q->grid_mm);
    }
  if (snap->n_reasons == 2)
    return off_steps_mm (sq_norm (v), q->grid_mm);
  return fmax (off_steps_mm (sq_dot (v, x), q->grid_mm),
               off_steps_mm (sq_cross (x, v), q->grid_mm));
}

static double
off_middle_mm (const SqOutline *after, const SqSnapQuestion *q, const SqSnapReason *reason)
{
  const SqCorner *next, *corner = edge_of (after, reason->other, &next);
  SqPoint middle = sq_between (corner->at, next->at, 0.5);

  if (q->drag == SQ_DRAG_EDGE)
    return fabs (sq_cross (sq_unit (chord_of (after, q->id)), sq_sub (middle, reason->to)));
  return fabs (sq_dot (sq_unit (chord_of (after, reason->other)), sq_sub (reason->to, middle)));
}

static double
off_symmetry_mm (const SqOutline *after, const SqSnapQuestion *q, const SqSnapReason *reason)
{
  const SqCorner *next, *corner;

  if (reason->other == 0)
    return fabs (sq_axis_left_mm (q->axis, reason->to));
  corner = edge_of (after, reason->other, &next);
  if (q->drag == SQ_DRAG_CORNER || q->drag == SQ_DRAG_NEW_CORNER)
    return sq_distance (sq_axis_mirrored (q->axis, corner->at), reason->to);
  SqVector along = sq_unit (chord_of (after, q->id));
  SqPoint images[] = { sq_axis_mirrored (q->axis, corner->at),
                       sq_axis_mirrored (q->axis, next->at) };
  return fmax (fabs (sq_cross (along, sq_sub (images[0], reason->to))),
               fabs (sq_cross (along, sq_sub (images[1], reason->to))));
}

/* How far two edges are from meeting without a corner, as far as the shorter is long. */
static double
off_tangent_mm (const SqOutline *after, const SqSnapReason *reason)
{
  const SqCorner *a_next, *a = edge_of (after, reason->edge, &a_next);
  const SqCorner *b_next, *b = edge_of (after, reason->other, &b_next);
  double best = INFINITY;

  if (a_next == b)
    best = sq_norm (
        sq_sub (sq_edge_direction (a, a_next, TRUE), sq_edge_direction (b, b_next, FALSE)));
  if (b_next == a)
    best = fmin (best, sq_norm (sq_sub (sq_edge_direction (b, b_next, TRUE),
                                        sq_edge_direction (a, a_next, FALSE))));
  return best;
}

/* By how much a reason fails on the seat as dragged. */
static double
off_reason_mm (const SqSnapQuestion *q, const SqSnap *snap, const SqSnapReason *reason,
               const SqOutline *after)
{
  SqFront front = { .along = { 1, 0 } };
  SqVector edge, other;
  const SqCorner *corner = sq_outline_corner (after, reason->other, NULL, NULL);

  g_assert_true (sq_outline_front (q->before, &front));
  switch (reason->kind)
    {
    case SQ_SNAP_GRID:
      return off_grid_mm (q, snap, front.along);
    case SQ_SNAP_SQUARE:
      return fabs (
          sq_dot (chord_of (after, reason->edge), sq_unit (chord_of (after, reason->other))));
    case SQ_SNAP_PARALLEL:
      return fabs (
          sq_cross (chord_of (after, reason->edge), sq_unit (chord_of (after, reason->other))));
    case SQ_SNAP_EQUAL_LENGTH:
      edge = chord_of (after, reason->edge);
      other = chord_of (after, reason->other);
      g_assert_cmpfloat_with_epsilon (reason->figure, sq_norm (edge), HOLDS_MM);
      return fabs (sq_norm (edge) - sq_norm (other));
    case SQ_SNAP_ALIGNED:
      edge = sq_sub (reason->to, corner->at);
      return fmin (fabs (sq_dot (edge, front.along)), fabs (sq_cross (edge, front.along)));
    case SQ_SNAP_STRAIGHT:
      return q->drag == SQ_DRAG_BOW ? fabs (snap->value)
                                    : off_line_mm (reason->from, reason->to, corner->at);
    case SQ_SNAP_SYMMETRY:
      return off_symmetry_mm (after, q, reason);
    case SQ_SNAP_MIDDLE:
      return off_middle_mm (after, q, reason);
    case SQ_SNAP_HALF_CIRCLE:
      return fabs (fabs (snap->value) - sq_norm (chord_of (after, q->id)) / 2);
    case SQ_SNAP_EQUAL_RISE:
      return fabs (fabs (snap->value) - fabs (corner->bow_mm));
    case SQ_SNAP_TANGENT:
      return off_tangent_mm (after, reason);
    case SQ_SNAP_EQUAL_RADIUS:
      return fabs (snap->value - corner->radius_mm);
    case SQ_SNAP_SHARP:
    default:
      return fabs (snap->value);
    }
}

static double
random_mm (double least, double most)
{
  return g_test_rand_double_range (least, most);
}

/* A seat of 3 to 12 corners on whole or odd places, so that there is much to be like. */
static SqOutline *
random_seat (void)
{
  guint n = (guint) g_test_rand_int_range (3, 13);
  gboolean is_even = g_test_rand_bit ();
  SqCorner corners[12] = { 0 };

  for (guint i = 0; i < n; i++)
    {
      double turn = 2 * G_PI * (i - 0.5 + random_mm (-0.3, 0.3)) / n - G_PI_2;
      double out_mm = random_mm (250, 500);
      SqPoint at = { out_mm * cos (turn), out_mm * sin (turn) };
      if (is_even)
        at = sq_point (round (at.x / 50) * 50 + i % 2, round (at.y / 50) * 50);
      corners[i] = (SqCorner){ .id = i + 1, .at = at, .front = i == 0 };
      if (g_test_rand_int_range (0, 4) == 0)
        {
          corners[i].shape = SQ_SHAPE_BOW;
          corners[i].bow_mm = random_mm (-20, 40);
        }
      if (g_test_rand_bit ())
        corners[i].radius_mm = random_mm (5, 60);
    }
  return sq_outline_new (corners, &n, 1);
}

static SqSnapQuestion
random_question (const SqOutline *outline, const SqAxis *axis)
{
  guint n, i;
  const SqCorner *ring = sq_outline_ring (outline, 0, &n);
  SqSnapQuestion q = { .before = outline, .drag = (SqDragKind) g_test_rand_int_range (0, 5) };

  i = (guint) g_test_rand_int_range (0, (gint) n);
  if (q.drag == SQ_DRAG_NEW_CORNER)
    i = n - 1;
  q.id = ring[i].id;
  q.grip = sq_edge_point (&ring[i], &ring[(i + 1) % n], random_mm (0.1, 0.9));
  q.raw = q.drag == SQ_DRAG_EDGE || q.drag == SQ_DRAG_BOW ? q.grip : ring[i].at;
  q.raw = sq_add (q.raw, sq_point (random_mm (-90, 90), random_mm (-90, 90)));
  if (g_test_rand_bit ())
    q.raw = q.drag == SQ_DRAG_BOW
                ? sq_edge_point (&ring[i], &ring[(i + 1) % n], random_mm (0.2, 0.8))
                : sq_point (random_mm (-400, 400), random_mm (-400, 400));
  q.reach_mm = random_mm (1, 25);
  q.kinds = g_test_rand_bit () ? SQ_SNAP_ALL : (guint32) g_test_rand_int () & SQ_SNAP_ALL;
  q.grid_mm = g_test_rand_int_range (0, 3) > 0 ? 6.35 : 0;
  q.grid_at = sq_point (random_mm (-9, 9), random_mm (-9, 9));
  if (g_test_rand_bit ())
    q.grid_along = sq_turned (sq_point (1, 0), random_mm (0, 6));
  q.axis = g_test_rand_bit () ? axis : NULL;
  return q;
}

/* Reasons hold, the landing is within reach, and every kind comes up. */
static void
test_reasons_hold (void)
{
  guint seen[SQ_N_SNAP_KINDS] = { 0 }, twos = 0;

  for (guint run = 0; run < 20000; run++)
    {
      g_autoptr (SqOutline) outline = random_seat ();
      SqAxis axis;
      g_assert_true (sq_outline_front_axis (outline, &axis));
      SqSnapQuestion q = random_question (outline, &axis);
      SqSnap snap = sq_snap (&q);
      SqId id;
      g_autoptr (SqOutline) after = dragged (&q, &snap, &id);

      g_assert_cmpfloat (sq_distance (snap.at, q.raw), <=, q.reach_mm + HOLDS_MM);
      g_assert_cmpuint (snap.n_reasons, <=, 2);
      twos += snap.n_reasons == 2;
      for (guint i = 0; i < snap.n_reasons; i++)
        {
          const SqSnapReason *reason = &snap.reasons[i];
          double off_mm = off_reason_mm (&q, &snap, reason, after);
          if (!(off_mm <= HOLDS_MM))
            g_test_message ("drag %d, reason %u is %d, n %u, edge %u, other %u", q.drag, i,
                            reason->kind, snap.n_reasons, reason->edge, reason->other);
          g_assert_cmpfloat (off_mm, <=, HOLDS_MM);
          g_assert_true ((q.kinds & SQ_SNAP_BIT (reason->kind)) != 0);
          if (q.drag == SQ_DRAG_CORNER || q.drag == SQ_DRAG_NEW_CORNER)
            g_assert_cmpfloat (sq_distance (reason->to, snap.at), ==, 0);
          seen[reason->kind]++;
        }
    }
  for (guint kind = 0; kind < SQ_N_SNAP_KINDS; kind++)
    g_assert_cmpuint (seen[kind], >, 0);
  g_assert_cmpuint (twos, >, 1000);
}

static SqPoint
turned_point (SqPoint p, double turn_rad, SqVector by)
{
  return sq_add (sq_turned (p, turn_rad), by);
}

/* The seat turned with hand, grid and axis lands turned, for the same reasons. */
static void
test_turning (void)
{
  for (guint run = 0; run < 10000; run++)
    {
      g_autoptr (SqOutline) outline = random_seat ();
      double turn = random_mm (-4, 4);
      SqVector by = { random_mm (-2000, 2000), random_mm (-2000, 2000) };
      g_autoptr (SqOutline) turned = sq_outline_moved (outline, turn, by);
      SqAxis axis, turned_axis;
      sq_outline_front_axis (outline, &axis);
      turned_axis = (SqAxis){ turned_point (axis.at, turn, by), sq_turned (axis.along, turn) };
      SqSnapQuestion q = random_question (outline, &axis), r = q;
      r.before = turned;
      r.grip = turned_point (q.grip, turn, by);
      r.raw = turned_point (q.raw, turn, by);
      r.grid_at = turned_point (q.grid_at, turn, by);
      r.grid_along = sq_turned (q.grid_along, turn);
      r.axis = q.axis != NULL ? &turned_axis : NULL;
      SqSnap one = sq_snap (&q), other = sq_snap (&r);

      g_assert_cmpfloat (sq_distance (turned_point (one.at, turn, by), other.at), <, 1e-7);
      /* the rounding of an all but straight corner goes up and down with a hair */
      g_assert_cmpfloat_with_epsilon (one.value, other.value, 1e-7 * (1 + fabs (one.value) / 100));
      g_assert_cmpuint (one.n_reasons, ==, other.n_reasons);
      for (guint i = 0; i < one.n_reasons; i++)
        {
          g_assert_cmpint (one.reasons[i].kind, ==, other.reasons[i].kind);
          g_assert_cmpuint (one.reasons[i].other, ==, other.reasons[i].other);
          g_assert_cmpfloat (
              sq_distance (turned_point (one.reasons[i].from, turn, by), other.reasons[i].from), <,
              1e-7);
        }
    }
}

/* Under 50 µs for 12 corners. */
static void
test_quick (void)
{
  SqPoint points[12];
  guint n = 20000;

  for (guint i = 0; i < G_N_ELEMENTS (points); i++)
    points[i] = sq_point (round (400 * cos (i * G_PI / 6)), round (400 * sin (i * G_PI / 6)));
  g_autoptr (SqOutline) outline = seat_of (points, G_N_ELEMENTS (points));
  SqAxis axis;
  sq_outline_front_axis (outline, &axis);
  gint64 start = g_get_monotonic_time ();
  for (guint i = 0; i < n; i++)
    {
      SqSnapQuestion q = drag_of (outline, SQ_DRAG_CORNER, 1 + i % 12, 0, 0);
      q.raw = sq_add (points[i % 12], sq_point (i % 41 - 20.0, i % 37 - 18.0));
      q.axis = &axis;
      sq_snap (&q);
    }
  double us = (double) (g_get_monotonic_time () - start) / n;
  g_test_minimized_result (us, "%.2f us a snap", us);
}

int
main (int argc, char *argv[])
{
  g_test_init (&argc, &argv, NULL);
  g_test_add_func ("/job/snap/square", test_square);
  g_test_add_func ("/job/snap/grid-along-guide", test_grid_along_guide);
  g_test_add_func ("/job/snap/grid-alone", test_grid_alone);
  g_test_add_func ("/job/snap/wide-grid", test_wide_grid);
  g_test_add_func ("/job/snap/bay", test_bay);
  g_test_add_func ("/job/snap/symmetry", test_symmetry);
  g_test_add_func ("/job/snap/new-corner", test_new_corner);
  g_test_add_func ("/job/snap/first-corner", test_first_corner);
  g_test_add_func ("/job/snap/edge", test_edge);
  g_test_add_func ("/job/snap/bow", test_bow);
  g_test_add_func ("/job/snap/radius", test_radius);
  g_test_add_func ("/job/snap/reasons-hold", test_reasons_hold);
  g_test_add_func ("/job/snap/turning", test_turning);
  if (g_test_perf ())
    g_test_add_func ("/job/snap/quick", test_quick);
  return g_test_run ();
}
