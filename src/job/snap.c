/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "job/snap.h"

#include "base/units.h"
#include "job/edge.h"
#include "job/frame.h"
#include "job/snap-guides.h"

/* Reasons whose costs differ by less are equally good, and the first one is taken; values that
 * differ by less are the same value. */
#define TIE_MM 1e-7
#define SAME_MM 1e-10

/* By what part of the reach a kind counts as farther away: the less it tells a maker, the nearer it
 * has to be. */
static const double handicaps[SQ_N_SNAP_KINDS] = {
  [SQ_SNAP_PARALLEL] = 0.1,     [SQ_SNAP_ALIGNED] = 0.1, [SQ_SNAP_STRAIGHT] = 0.1,
  [SQ_SNAP_EQUAL_LENGTH] = 0.3, [SQ_SNAP_MIDDLE] = 0.4,  [SQ_SNAP_EQUAL_RISE] = 0.1,
  [SQ_SNAP_TANGENT] = 0.1,
};

gboolean
sq_snap_takes (const SqSnapSeat *seat, SqSnapKind kind)
{
  const SqSnapQuestion *q = seat->question;

  return (q->kinds & SQ_SNAP_BIT (kind)) != 0 && (kind != SQ_SNAP_GRID || q->grid_mm > 0)
         && (kind != SQ_SNAP_SYMMETRY || q->axis != NULL);
}

double
sq_snap_cost_mm (const SqSnapSeat *seat, SqSnapKind kind, double away_mm)
{
  double reach_mm = seat->question->reach_mm, cost_mm = away_mm + handicaps[kind] * reach_mm;

  if (!sq_snap_takes (seat, kind) || !(cost_mm <= reach_mm))
    return INFINITY;
  return kind == SQ_SNAP_GRID ? cost_mm + reach_mm : cost_mm;
}

guint
sq_snap_find (const SqSnapSeat *seat, SqId id)
{
  for (guint i = 0; i < seat->n; i++)
    if (seat->corners[i].id == id)
      return i;
  return SQ_SNAP_NONE;
}

gboolean
sq_snap_is_taken (const SqSnapSeat *seat, SqPoint p, guint but)
{
  for (guint i = 0; i < seat->n; i++)
    if (i != but && sq_distance (seat->corners[i].at, p) <= 10 * SQ_COINCIDE_MM)
      return TRUE;
  return FALSE;
}

gboolean
sq_snap_is_edge (const SqSnapSeat *seat, guint i)
{
  return seat->corners[i].next != SQ_SNAP_NONE && sq_snap_edge_mm (seat, i) > SQ_COINCIDE_MM;
}

SqVector
sq_snap_edge_along (const SqSnapSeat *seat, guint i)
{
  return sq_unit (sq_sub (sq_snap_edge_end (seat, i), seat->corners[i].at));
}

void
sq_snap_offer (const SqSnapSeat *seat, SqSnapPick *pick, const SqSnapChoice *choice)
{
  double cost_mm = sq_snap_cost_mm (seat, choice->reason.kind, choice->off_mm);
  gboolean is_same = pick->has_best && fabs (choice->value - pick->best.value) <= SAME_MM;

  if (!isfinite (cost_mm))
    return;
  if (!pick->has_best || cost_mm < pick->best_cost_mm - TIE_MM)
    {
      if (is_same)
        pick->also = pick->best;
      pick->has_also = is_same;
      pick->best = *choice;
      pick->best_cost_mm = cost_mm;
      pick->has_best = TRUE;
    }
  else if (is_same && !pick->has_also)
    {
      pick->also = *choice;
      pick->has_also = TRUE;
    }
}

gboolean
sq_snap_take (const SqSnapPick *pick, SqSnap *snap)
{
  if (!pick->has_best)
    return FALSE;
  snap->value = pick->best.value;
  snap->reasons[0] = pick->best.reason;
  snap->reasons[1] = pick->also.reason;
  snap->n_reasons = pick->has_also ? 2 : 1;
  return TRUE;
}

static void
add_ring (SqSnapSeat *seat, guint ring, guint first)
{
  const SqSnapQuestion *q = seat->question;
  guint n;
  const SqCorner *corners = sq_outline_ring (q->before, ring, &n);

  for (guint i = 0; i < n; i++)
    seat->corners[first + i] = (SqSnapCorner){
      .at = corners[i].at,
      .id = corners[i].id,
      .before = first + (i + n - 1) % n,
      .next = first + (i + 1) % n,
      .is_straight = sq_edge_is_straight (&corners[i]),
      .is_chord = corners[i].shape != SQ_SHAPE_CURVE,
    };
}

/* Takes the edge away that would close an open ring. */
static void
open_ring (SqSnapSeat *seat)
{
  guint last = sq_snap_find (seat, seat->question->id);

  if (seat->question->drag != SQ_DRAG_NEW_CORNER || last == SQ_SNAP_NONE)
    return;
  seat->corners[seat->corners[last].next].before = SQ_SNAP_NONE;
  seat->corners[last].next = SQ_SNAP_NONE;
}

static void
find_level (SqSnapSeat *seat)
{
  const SqSnapQuestion *q = seat->question;
  guint n, ring = 0;
  SqFront front;
  gboolean is_open = q->drag == SQ_DRAG_NEW_CORNER && seat->n > 0
                     && sq_outline_corner (q->before, q->id, &ring, NULL) != NULL && ring == 0;

  seat->level = sq_point (1, 0);
  if (!sq_outline_front (q->before, &front))
    return;
  const SqCorner *corner = &sq_outline_ring (q->before, 0, &n)[front.edge];
  if (is_open && (!corner->front || corner->id == q->id))
    return;
  seat->level = front.along;
  seat->front = corner->id;
}

static void
seat_init (SqSnapSeat *seat, const SqSnapQuestion *question)
{
  guint n_rings = sq_outline_n_rings (question->before), n = 0;

  *seat = (SqSnapSeat){ .question = question };
  for (guint r = 0, m = 0; r < n_rings; r++, seat->n += m)
    sq_outline_ring (question->before, r, &m);
  seat->corners = g_new (SqSnapCorner, seat->n);
  for (guint r = 0, m = 0; r < n_rings; r++, n += m)
    {
      add_ring (seat, r, n);
      sq_outline_ring (question->before, r, &m);
    }
  find_level (seat);
  open_ring (seat);
  for (guint i = 0; i < seat->n; i++)
    seat->corners[i].at = sq_snap_into (seat->level, seat->corners[i].at);
  seat->raw = sq_snap_into (seat->level, question->raw);
  seat->grid_at = sq_snap_into (seat->level, question->grid_at);
  seat->grid_along = sq_norm (question->grid_along) > 0
                         ? sq_snap_into (seat->level, question->grid_along)
                         : sq_point (1, 0);
  if (question->axis != NULL)
    seat->axis = (SqAxis){ sq_snap_into (seat->level, question->axis->at),
                           sq_snap_into (seat->level, question->axis->along) };
}

/* Turned back to where the seat is. */
static SqSnap
out_of_frame (const SqSnapSeat *seat, SqSnap snap)
{
  snap.at = sq_snap_out_of (seat->level, snap.at);
  for (guint i = 0; i < snap.n_reasons; i++)
    {
      snap.reasons[i].from = sq_snap_out_of (seat->level, snap.reasons[i].from);
      snap.reasons[i].to = sq_snap_out_of (seat->level, snap.reasons[i].to);
    }
  return snap;
}

static SqSnap
land (const SqSnapSeat *seat)
{
  switch (seat->question->drag)
    {
    case SQ_DRAG_EDGE:
      return out_of_frame (seat, sq_snap_edge (seat));
    case SQ_DRAG_BOW:
      return sq_snap_bow (seat);
    case SQ_DRAG_RADIUS:
      return sq_snap_radius (seat);
    case SQ_DRAG_CORNER:
    case SQ_DRAG_NEW_CORNER:
    default:
      return out_of_frame (seat, sq_snap_corner (seat));
    }
}

SqSnap
sq_snap (const SqSnapQuestion *question)
{
  SqSnap snap = { .at = question->raw };
  SqSnapSeat seat;

  g_return_val_if_fail (question->before != NULL, snap);
  g_return_val_if_fail (question->drag == SQ_DRAG_NEW_CORNER
                            || sq_outline_corner (question->before, question->id, NULL, NULL)
                                   != NULL,
                        snap);
  seat_init (&seat, question);
  snap = land (&seat);
  if (snap.n_reasons == 0)
    snap.at = question->raw;
  g_free (seat.corners);
  return snap;
}
