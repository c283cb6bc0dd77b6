/* SPDX-License-Identifier: GPL-3.0-or-later */
/* An edge moved parallel has one freedom: how far outward. */
#include "job/snap-guides.h"

#include "base/units.h"

/* A neighbour that lies more across the way than this hardly turns with it. */
#define LEAST_SINE 0.1

/* Directions nearer than this are one (rad). */
#define SAME_RAD 1e-9

typedef struct
{
  const SqSnapSeat *seat;
  guint from, to;   /* the edge's corners */
  SqVector along;   /* its direction */
  SqVector outward; /* the way it moves */
  double meant_mm;  /* how far the hand brings it */
  SqSnapPick pick;
} Drag;

/* An end of the edge, and the neighbour edge that turns with it about its far end. */
typedef struct
{
  guint at, far;
  guint edge;   /* the neighbour edge, by the corner that starts it */
  guint beyond; /* the edge on the other side of its far end */
  guint last;   /* that edge's other end */
} End;

static SqPoint
corner_at (const Drag *drag, guint i)
{
  return drag->seat->corners[i].at;
}

static gboolean
moves (const Drag *drag, guint edge)
{
  const SqSnapCorner *corner = &drag->seat->corners[edge];

  return edge == drag->from || edge == drag->to || corner->next == drag->from;
}

/* Whether a corner that stays stands where an end would come to. */
static gboolean
is_blocked (const Drag *drag, double by_mm)
{
  const SqSnapSeat *seat = drag->seat;

  return sq_snap_is_taken (seat, sq_moved (corner_at (drag, drag->from), drag->outward, by_mm),
                           drag->to)
         || sq_snap_is_taken (seat, sq_moved (corner_at (drag, drag->to), drag->outward, by_mm),
                              drag->from);
}

/* The edge moved by @by_mm, its corner @at then being where the guide from @from ends. */
static void
offer (Drag *drag, double by_mm, guint at, SqSnapReason reason)
{
  SqSnapChoice choice = { .value = by_mm, .off_mm = fabs (by_mm - drag->meant_mm) };

  if (!isfinite (sq_snap_cost_mm (drag->seat, reason.kind, choice.off_mm))
      || is_blocked (drag, by_mm))
    return;
  reason.to = sq_moved (corner_at (drag, at), drag->outward, by_mm);
  choice.reason = reason;
  if (reason.kind == SQ_SNAP_ALIGNED || reason.kind == SQ_SNAP_MIDDLE)
    choice.reason.figure = sq_distance (reason.from, reason.to);
  else if (reason.kind == SQ_SNAP_SYMMETRY)
    choice.reason.figure = fabs (sq_axis_left_mm (&drag->seat->axis, reason.to));
  sq_snap_offer (drag->seat, &drag->pick, &choice);
}

/* How far @p lies outward of the edge now. */
static double
outward_mm (const Drag *drag, SqPoint p)
{
  return sq_dot (drag->outward, sq_sub (p, corner_at (drag, drag->from)));
}

static gboolean
is_level_or_upright (const Drag *drag)
{
  return fmin (fabs (drag->outward.x), fabs (drag->outward.y)) <= SAME_RAD;
}

/* In line with corners that stay: for an edge along the front's frame aligned with them. */
static void
offer_corners (Drag *drag)
{
  const SqSnapSeat *seat = drag->seat;
  gboolean is_aligned = is_level_or_upright (drag);

  for (guint i = 0; i < seat->n; i++)
    {
      SqPoint at = corner_at (drag, i);
      double by_mm = outward_mm (drag, at);
      SqPoint end = sq_moved (corner_at (drag, drag->to), drag->outward, by_mm);
      if (i != drag->from && i != drag->to)
        offer (drag, by_mm, drag->from,
               (SqSnapReason){ .kind = is_aligned ? SQ_SNAP_ALIGNED : SQ_SNAP_STRAIGHT,
                               .from = is_aligned ? at : end,
                               .edge = seat->corners[drag->from].id,
                               .other = seat->corners[i].id });
    }
}

/* In line with the middles of edges that stay. */
static void
offer_middles (Drag *drag)
{
  const SqSnapSeat *seat = drag->seat;

  for (guint i = 0; i < seat->n; i++)
    if (seat->corners[i].is_chord && sq_snap_is_edge (seat, i) && !moves (drag, i))
      {
        SqPoint middle = sq_between (corner_at (drag, i), sq_snap_edge_end (seat, i), 0.5);
        offer (drag, outward_mm (drag, middle), drag->from,
               (SqSnapReason){ .kind = SQ_SNAP_MIDDLE,
                               .from = middle,
                               .edge = seat->corners[drag->from].id,
                               .other = seat->corners[i].id });
      }
}

/* On the image of another edge. */
static void
offer_images (Drag *drag)
{
  const SqSnapSeat *seat = drag->seat;

  if (!sq_snap_takes (seat, SQ_SNAP_SYMMETRY))
    return;
  for (guint i = 0; i < seat->n; i++)
    if (sq_snap_is_edge (seat, i) && i != drag->from)
      {
        SqPoint from = sq_axis_mirrored (&seat->axis, corner_at (drag, i));
        SqPoint to = sq_axis_mirrored (&seat->axis, sq_snap_edge_end (seat, i));
        if (!moves (drag, i)
            && fabs (sq_cross (sq_unit (sq_sub (to, from)), drag->along)) <= SAME_RAD)
          offer (drag, outward_mm (drag, from), drag->from,
                 (SqSnapReason){ .kind = SQ_SNAP_SYMMETRY,
                                 .from = corner_at (drag, i),
                                 .edge = seat->corners[drag->from].id,
                                 .other = seat->corners[i].id });
      }
}

/* Where the neighbour lies along @direction: the end's way there and the direction cross. */
static void
offer_direction (Drag *drag, const End *end, SqVector direction, SqSnapReason reason)
{
  double sine = sq_cross (drag->outward, direction);
  SqVector v = sq_sub (corner_at (drag, end->far), corner_at (drag, end->at));

  if (fabs (sine) < LEAST_SINE)
    return;
  reason.from = corner_at (drag, end->far);
  reason.edge = drag->seat->corners[end->edge].id;
  offer (drag, sq_cross (v, direction) / sine, end->at, reason);
}

/* Where the neighbour is @length_mm long: the end's way cuts the circle about its far end twice. */
static void
offer_length (Drag *drag, const End *end, double length_mm, SqId other)
{
  SqVector v = sq_sub (corner_at (drag, end->at), corner_at (drag, end->far));
  double across = sq_dot (v, drag->along), along = sq_dot (v, drag->outward);
  double half = sqrt (fmax ((length_mm - across) * (length_mm + across), 0));

  if (half <= LEAST_SINE * length_mm)
    return;
  for (int sign = -1; sign <= 1; sign += 2)
    offer (drag, sign * half - along, end->at,
           (SqSnapReason){ .kind = SQ_SNAP_EQUAL_LENGTH,
                           .from = corner_at (drag, end->far),
                           .edge = drag->seat->corners[end->edge].id,
                           .other = other,
                           .figure = length_mm });
}

/* Edges that stay and go straight, or are the front, and what they say to the neighbour. */
static void
offer_likenesses (Drag *drag, const End *end)
{
  const SqSnapSeat *seat = drag->seat;

  for (guint i = 0; i < seat->n; i++)
    {
      const SqSnapCorner *corner = &seat->corners[i];
      if (!sq_snap_is_edge (seat, i) || moves (drag, i)
          || !(corner->is_straight || corner->id == seat->front))
        continue;
      SqVector along = sq_snap_edge_along (seat, i);
      SqVector v = sq_sub (corner_at (drag, end->far), corner->at);
      gboolean is_beyond = i == end->beyond;
      if (is_beyond || corner->id == seat->front)
        offer_direction (
            drag, end, sq_left (along),
            (SqSnapReason){ .kind = SQ_SNAP_SQUARE, .other = corner->id, .figure = G_PI_2 });
      offer_direction (
          drag, end, along,
          (SqSnapReason){ .kind = is_beyond ? SQ_SNAP_STRAIGHT : SQ_SNAP_PARALLEL,
                          .other = is_beyond ? seat->corners[end->last].id : corner->id,
                          .figure = is_beyond ? 0 : fabs (sq_cross (along, v)) });
      if (seat->corners[end->edge].is_straight && corner->is_straight)
        offer_length (drag, end, sq_snap_edge_mm (seat, i), corner->id);
    }
}

static void
offer_neighbours (Drag *drag)
{
  const SqSnapCorner *corners = drag->seat->corners;
  guint before = corners[drag->from].before, after = corners[drag->to].next;
  const End ends[] = {
    { drag->from, before, before, corners[before].before, corners[before].before },
    { drag->to, after, drag->to, after, corners[after].next },
  };

  if (before == drag->to) /* a ring of two */
    return;
  for (guint k = 0; k < 2; k++)
    if (sq_snap_is_edge (drag->seat, ends[k].edge))
      offer_likenesses (drag, &ends[k]);
}

/* Whole steps from the grid's origin for an edge along the grid, else from where it is now. */
static void
offer_grid (Drag *drag)
{
  const SqSnapSeat *seat = drag->seat;
  SqVector x = seat->grid_along;
  gboolean is_along = fmin (fabs (sq_dot (x, drag->outward)), fabs (sq_cross (x, drag->outward)))
                      <= SAME_RAD;
  double origin_mm = is_along ? outward_mm (drag, seat->grid_at) : 0;

  if (!sq_snap_takes (seat, SQ_SNAP_GRID))
    return;
  offer (drag, origin_mm + sq_snap_whole (seat, drag->meant_mm - origin_mm), drag->from,
         (SqSnapReason){ .kind = SQ_SNAP_GRID,
                         .from = sq_moved (corner_at (drag, drag->from), drag->outward, origin_mm),
                         .edge = seat->corners[drag->from].id,
                         .figure = seat->question->grid_mm });
}

SqSnap
sq_snap_edge (const SqSnapSeat *seat)
{
  guint from = sq_snap_find (seat, seat->question->id);
  SqPoint grip = sq_snap_into (seat->level, seat->question->grip);
  Drag drag = { .seat = seat, .from = from, .to = seat->corners[from].next };
  SqSnap snap = { .at = seat->raw };

  if (!sq_snap_is_edge (seat, from))
    return snap;
  drag.along = sq_snap_edge_along (seat, from);
  drag.outward = sq_right (drag.along);
  drag.meant_mm = sq_dot (drag.outward, sq_sub (seat->raw, grip));
  snap.value = drag.meant_mm;
  offer_images (&drag);
  offer_neighbours (&drag);
  offer_corners (&drag);
  offer_middles (&drag);
  offer_grid (&drag);
  if (sq_snap_take (&drag.pick, &snap))
    snap.at = sq_moved (seat->raw, drag.outward, snap.value - drag.meant_mm);
  return snap;
}
