/* SPDX-License-Identifier: GPL-3.0-or-later */
/* The rise of a bow and the radius of a rounding: one freedom each, and the curve follows the
 * hand. */
#include "job/snap-guides.h"

#include "base/units.h"
#include "job/edge.h"

/* A corner that turns less is none to round (rad). */
#define LEAST_TURN_RAD 1e-6

/* --- bows ---------------------------------------------------------------------------------- */

typedef struct
{
  const SqSnapSeat *seat;
  SqPoint raw; /* all of this in seat coordinates */
  SqCorner corner, next;
  double meant_mm;
  SqSnapPick pick;
} Bow;

static SqSegment
arc_of (const Bow *bow, double rise_mm)
{
  double chord_mm = sq_distance (bow->corner.at, bow->next.at);

  return (SqSegment){ bow->corner.at, bow->next.at, 2 * rise_mm / chord_mm };
}

/* The guide is the rise, in the middle of the chord. */
static void
offer_rise (Bow *bow, double rise_mm, SqSnapKind kind, SqId other, double figure)
{
  SqSegment arc = arc_of (bow, rise_mm);
  double t;
  SqSnapChoice choice = {
    .value = rise_mm + 0.0,
    .off_mm = sq_segment_nearest_mm (&arc, bow->raw, &t),
    .reason = { .kind = kind,
                .from = sq_between (arc.from, arc.to, 0.5),
                .to = sq_segment_point (&arc, 0.5),
                .edge = bow->corner.id,
                .other = other,
                .figure = figure },
  };

  if (fabs (arc.bulge) <= SQ_MOST_BULGE)
    sq_snap_offer (bow->seat, &bow->pick, &choice);
}

/* An arc leaves its chord at half its sweep, whose tangent's half is the bulge. */
static void
offer_tangents (Bow *bow)
{
  const SqOutline *outline = bow->seat->question->before;
  guint ring = 0, i = 0, n;
  SqVector chord = sq_sub (bow->next.at, bow->corner.at);

  sq_outline_corner (outline, bow->corner.id, &ring, &i);
  const SqCorner *corners = sq_outline_ring (outline, ring, &n);
  const SqCorner *before = &corners[(i + n - 1) % n], *after = &corners[(i + 1) % n];
  if (n < 3)
    return;
  SqVector arriving = sq_edge_direction (before, &corners[i], TRUE);
  SqVector leaving = sq_edge_direction (after, &corners[(i + 2) % n], FALSE);
  const double half_sweeps[] = { sq_angle_rad (arriving, chord), sq_angle_rad (chord, leaving) };
  const SqVector directions[] = { arriving, leaving };
  const SqId others[] = { before->id, after->id };
  for (guint k = 0; k < 2; k++)
    {
      double rise_mm = tan (half_sweeps[k] / 2) * sq_norm (chord) / 2;
      if (sq_norm (directions[k]) > 0)
        offer_rise (bow, rise_mm, SQ_SNAP_TANGENT, others[k], rise_mm);
    }
}

static void
offer_equal_rises (Bow *bow)
{
  const SqOutline *outline = bow->seat->question->before;

  for (guint r = 0; r < sq_outline_n_rings (outline); r++)
    {
      guint n;
      const SqCorner *corners = sq_outline_ring (outline, r, &n);
      for (guint i = 0; i < n; i++)
        if (corners[i].id != bow->corner.id && !sq_edge_is_straight (&corners[i])
            && corners[i].shape == SQ_SHAPE_BOW)
          {
            double rise_mm = corners[i].bow_mm;
            offer_rise (bow, rise_mm, SQ_SNAP_EQUAL_RISE, corners[i].id, rise_mm);
            offer_rise (bow, -rise_mm, SQ_SNAP_EQUAL_RISE, corners[i].id, -rise_mm);
          }
    }
}

SqSnap
sq_snap_bow (const SqSnapSeat *seat)
{
  const SqSnapQuestion *q = seat->question;
  guint ring = 0, i = 0, n;
  SqSnap snap = { .at = seat->raw };
  const SqCorner *corner = sq_outline_corner (q->before, q->id, &ring, &i);
  const SqCorner *corners = sq_outline_ring (q->before, ring, &n), *next = &corners[(i + 1) % n];
  Bow bow = { .seat = seat, .raw = q->raw, .corner = *corner, .next = *next };
  double half_mm = sq_distance (corner->at, next->at) / 2, t;

  if (2 * half_mm <= SQ_COINCIDE_MM)
    return snap;
  bow.meant_mm = sq_bow_through (corner->at, next->at, q->raw);
  snap.value = bow.meant_mm;
  offer_rise (&bow, 0, SQ_SNAP_STRAIGHT, next->id, 0);
  offer_rise (&bow, half_mm, SQ_SNAP_HALF_CIRCLE, 0, half_mm);
  offer_rise (&bow, -half_mm, SQ_SNAP_HALF_CIRCLE, 0, -half_mm);
  offer_tangents (&bow);
  offer_equal_rises (&bow);
  if (sq_snap_takes (seat, SQ_SNAP_GRID))
    offer_rise (&bow, sq_snap_whole (seat, bow.meant_mm), SQ_SNAP_GRID, 0, q->grid_mm);
  if (!sq_snap_take (&bow.pick, &snap))
    return snap;
  SqSegment arc = arc_of (&bow, snap.value);
  sq_segment_nearest_mm (&arc, q->raw, &t);
  snap.at = sq_segment_point (&arc, t);
  return snap;
}

/* --- radii --------------------------------------------------------------------------------- */

/* A corner between its tangents. The arc of a rounding has its centre on the bisector, its radius
 * over the sine of the half angle away. */
typedef struct
{
  const SqSnapSeat *seat;
  SqPoint at, raw;
  SqVector inward; /* unit, along the bisector */
  double half_rad;
  SqSnapPick pick;
} Wedge;

/* The rounding from tangent to tangent; a point for no radius. */
static SqSegment
rounding_of (const Wedge *wedge, double radius_mm)
{
  double leg_mm = radius_mm / tan (wedge->half_rad);

  return (SqSegment){ sq_moved (wedge->at, sq_turned (wedge->inward, wedge->half_rad), leg_mm),
                      sq_moved (wedge->at, sq_turned (wedge->inward, -wedge->half_rad), leg_mm),
                      tan ((G_PI_2 - wedge->half_rad) / 2) };
}

/* The radius whose rounding passes through the hand: with it x along the bisector and y across,
 * (x − r / sin)² + y² = r², of whose solutions the greater has the hand on the near arc. A hand
 * outside the wedge counts as on its side. */
static double
radius_through_mm (const Wedge *wedge)
{
  double sine = sin (wedge->half_rad), cosine = cos (wedge->half_rad);
  SqVector v = sq_sub (wedge->raw, wedge->at);
  double x = sq_dot (wedge->inward, v), y = fabs (sq_cross (wedge->inward, v));

  if (x * sine < y * cosine)
    {
      double leg_mm = x * cosine + y * sine;
      return fmax (leg_mm, 0) * sine / cosine;
    }
  double root = sqrt (fmax ((x * sine - y * cosine) * (x * sine + y * cosine), 0));
  return (x + root) * sine / (cosine * cosine);
}

static void
offer_radius (Wedge *wedge, double radius_mm, SqSnapKind kind, SqId other)
{
  SqSegment arc = rounding_of (wedge, radius_mm);
  double t;
  SqSnapChoice choice = {
    .value = radius_mm,
    .off_mm = sq_segment_nearest_mm (&arc, wedge->raw, &t),
    .reason = { .kind = kind,
                .from = wedge->at,
                .to = sq_segment_point (&arc, 0.5),
                .other = other,
                .figure = kind == SQ_SNAP_GRID ? wedge->seat->question->grid_mm : radius_mm },
  };

  sq_snap_offer (wedge->seat, &wedge->pick, &choice);
}

static void
offer_equal_radii (Wedge *wedge)
{
  const SqSnapQuestion *q = wedge->seat->question;

  for (guint r = 0; r < sq_outline_n_rings (q->before); r++)
    {
      guint n;
      const SqCorner *corners = sq_outline_ring (q->before, r, &n);
      for (guint i = 0; i < n; i++)
        if (corners[i].id != q->id && corners[i].radius_mm > 0)
          offer_radius (wedge, corners[i].radius_mm, SQ_SNAP_EQUAL_RADIUS, corners[i].id);
    }
}

/* FALSE where there is nothing to round. */
static gboolean
wedge_init (Wedge *wedge, const SqSnapSeat *seat)
{
  const SqSnapQuestion *q = seat->question;
  guint ring = 0, i = 0, n;
  const SqCorner *corner = sq_outline_corner (q->before, q->id, &ring, &i);
  const SqCorner *corners = sq_outline_ring (q->before, ring, &n);
  SqVector back = sq_scale (sq_edge_direction (&corners[(i + n - 1) % n], corner, TRUE), -1);
  SqVector on = sq_edge_direction (corner, &corners[(i + 1) % n], FALSE);
  SqVector both = sq_add (back, on);

  *wedge = (Wedge){ .seat = seat, .at = corner->at, .raw = q->raw, .inward = sq_unit (both) };
  wedge->half_rad = fabs (sq_angle_rad (back, on)) / 2;
  return sq_norm (back) > 0 && sq_norm (on) > 0 && wedge->half_rad > LEAST_TURN_RAD
         && wedge->half_rad < G_PI_2 - LEAST_TURN_RAD;
}

SqSnap
sq_snap_radius (const SqSnapSeat *seat)
{
  SqSnap snap = { .at = seat->raw };
  Wedge wedge;
  double meant_mm, t;

  if (!wedge_init (&wedge, seat))
    return snap;
  meant_mm = fmin (radius_through_mm (&wedge), SQ_SEAT_MOST_MM);
  snap.value = meant_mm;
  offer_radius (&wedge, 0, SQ_SNAP_SHARP, 0);
  offer_equal_radii (&wedge);
  if (sq_snap_takes (seat, SQ_SNAP_GRID))
    offer_radius (&wedge, sq_snap_whole (seat, meant_mm), SQ_SNAP_GRID, 0);
  if (!sq_snap_take (&wedge.pick, &snap))
    return snap;
  SqSegment arc = rounding_of (&wedge, snap.value);
  sq_segment_nearest_mm (&arc, wedge.raw, &t);
  snap.at = sq_segment_point (&arc, t);
  return snap;
}
