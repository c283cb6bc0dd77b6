/* SPDX-License-Identifier: GPL-3.0-or-later */
/* Inside of snapping. All coordinates are turned so that x runs along the front, but for bows and
 * radii, which the front does not concern. Nobody but snap*.c includes this. */
#pragma once

#include "job/snap.h"

#define SQ_SNAP_NONE G_MAXUINT

typedef struct
{
  SqPoint at;
  SqId id;
  guint before, next;   /* its neighbours in the seat's corners; SQ_SNAP_NONE at the open end */
  gboolean is_straight; /* the edge that starts here */
  gboolean is_chord;    /* that edge is straight or a bow: symmetric about its middle */
} SqSnapCorner;

typedef struct
{
  const SqSnapQuestion *question;
  SqVector level; /* the front's direction, seat coordinates */
  SqId front;     /* its edge; 0: none */
  SqPoint raw, grid_at;
  SqVector grid_along;
  SqAxis axis;
  SqSnapCorner *corners;
  guint n;
} SqSnapSeat;

/* Where a corner may stand for one reason: a line, a circle, a point. */
typedef struct
{
  enum
  {
    SQ_GUIDE_LINE,
    SQ_GUIDE_CIRCLE,
    SQ_GUIDE_POINT,
  } locus;
  SqPoint at;          /* on the line; the centre; the point */
  SqVector along;      /* the line's, unit */
  double radius_mm;    /* the circle's */
  SqPoint count_from;  /* on the line, where the grid's steps along it begin */
  SqSnapReason reason; /* to and figure, where they depend on the landing, come last */
  double cost_mm;      /* how far it is, and less telling kinds farther */
} SqGuide;

#define SQ_MOST_GUIDES 24

/* The nearest guides. */
typedef struct
{
  SqGuide guides[SQ_MOST_GUIDES];
  guint n;
} SqGuides;

/* One of the values that a thing with a single freedom may take. */
typedef struct
{
  double value;
  double off_mm; /* how far it brings the thing from the hand */
  SqSnapReason reason;
} SqSnapChoice;

static inline SqPoint
sq_snap_into (SqVector level, SqPoint p)
{
  return sq_point (sq_dot (p, level), sq_cross (level, p));
}

static inline SqPoint
sq_snap_out_of (SqVector level, SqPoint p)
{
  return sq_point (p.x * level.x - p.y * level.y, p.x * level.y + p.y * level.x);
}

gboolean sq_snap_takes (const SqSnapSeat *seat, SqSnapKind kind);

/* What a thing away_mm off the hand counts as; infinite if that is out of reach. */
double sq_snap_cost_mm (const SqSnapSeat *seat, SqSnapKind kind, double away_mm);

/* The corner with @id, or SQ_SNAP_NONE. */
guint sq_snap_find (const SqSnapSeat *seat, SqId id);

/* Whether a corner other than @but stands at @p. */
gboolean sq_snap_is_taken (const SqSnapSeat *seat, SqPoint p, guint but);

/* Whether the edge that starts at corner @i ends anywhere, and has length. */
gboolean sq_snap_is_edge (const SqSnapSeat *seat, guint i);
/* Unit direction of the chord of the edge that starts at corner @i. */
SqVector sq_snap_edge_along (const SqSnapSeat *seat, guint i);

static inline SqPoint
sq_snap_edge_end (const SqSnapSeat *seat, guint i)
{
  return seat->corners[seat->corners[i].next].at;
}

static inline double
sq_snap_edge_mm (const SqSnapSeat *seat, guint i)
{
  return sq_distance (seat->corners[i].at, sq_snap_edge_end (seat, i));
}

/* @mm to a whole number of grid steps. */
static inline double
sq_snap_whole (const SqSnapSeat *seat, double mm)
{
  return floor (mm / seat->question->grid_mm + 0.5) * seat->question->grid_mm;
}

/* Collects what may hold corner @moved (SQ_SNAP_NONE: a new one after corner @after). */
void sq_snap_collect (const SqSnapSeat *seat, guint moved, guint after, SqGuides *guides);

SqSnap sq_snap_corner (const SqSnapSeat *seat);
SqSnap sq_snap_edge (const SqSnapSeat *seat);
SqSnap sq_snap_bow (const SqSnapSeat *seat);
SqSnap sq_snap_radius (const SqSnapSeat *seat);

/* The best of the values, with the second reason if another gives the same; offered one by one. */
typedef struct
{
  SqSnapChoice best, also;
  double best_cost_mm;
  gboolean has_best, has_also;
} SqSnapPick;

void sq_snap_offer (const SqSnapSeat *seat, SqSnapPick *pick, const SqSnapChoice *choice);
/* Writes the pick's reasons to @snap; FALSE if there is none. */
gboolean sq_snap_take (const SqSnapPick *pick, SqSnap *snap);
