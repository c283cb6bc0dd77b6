/* SPDX-License-Identifier: GPL-3.0-or-later */
/* What may hold a corner: guides through its neighbours, other corners and other edges. */
#include "job/snap-guides.h"

#include "base/units.h"

/* Guides no farther apart than this (mm; rad) are one. */
#define SAME_MM 1e-7
#define SAME_RAD 1e-9

/* The dragged corner, and one of the neighbours it hangs on. */
typedef struct
{
  const SqSnapSeat *seat;
  SqGuides *guides;
  guint moved;
  guint at;     /* the neighbour */
  guint beyond; /* the neighbour's other edge, named by the corner that starts it */
  guint far;    /* that edge's other end */
  SqId own;     /* the edge between neighbour and dragged corner */
  gboolean is_straight;
} Anchor;

static double
away_mm (const SqGuide *guide, SqPoint raw)
{
  SqVector v = sq_sub (raw, guide->at);

  if (guide->locus == SQ_GUIDE_LINE)
    return fabs (sq_cross (guide->along, v));
  return fabs (sq_norm (v) - guide->radius_mm);
}

static gboolean
is_same (const SqGuide *a, const SqGuide *b)
{
  if (a->locus != b->locus)
    return FALSE;
  if (a->locus == SQ_GUIDE_LINE)
    return fabs (sq_cross (a->along, b->along)) <= SAME_RAD
           && fabs (sq_cross (a->along, sq_sub (b->at, a->at))) <= SAME_MM;
  return sq_distance (a->at, b->at) <= SAME_MM && fabs (a->radius_mm - b->radius_mm) <= SAME_MM;
}

/* Of two that are one the more telling, then the shorter is kept. */
static gboolean
is_better (const SqSnapSeat *seat, const SqGuide *a, const SqGuide *b)
{
  if (fabs (a->cost_mm - b->cost_mm) > SAME_MM)
    return a->cost_mm < b->cost_mm;
  return sq_distance (a->reason.from, seat->raw)
         < sq_distance (b->reason.from, seat->raw) - SAME_MM;
}

static void
add (const SqSnapSeat *seat, SqGuides *guides, SqGuide guide)
{
  guint worst = 0;

  guide.cost_mm = sq_snap_cost_mm (seat, guide.reason.kind, away_mm (&guide, seat->raw));
  if (!isfinite (guide.cost_mm))
    return;
  for (guint i = 0; i < guides->n; i++)
    {
      SqGuide *old = &guides->guides[i];
      if (is_same (old, &guide))
        {
          if (is_better (seat, &guide, old))
            *old = guide;
          return;
        }
      if (old->cost_mm > guides->guides[worst].cost_mm + SAME_MM)
        worst = i;
    }
  if (guides->n < SQ_MOST_GUIDES)
    guides->guides[guides->n++] = guide;
  else if (guide.cost_mm < guides->guides[worst].cost_mm - SAME_MM)
    guides->guides[worst] = guide;
}

/* A line through @at; the grid counts along it from there. */
static SqGuide
line (SqSnapKind kind, SqPoint at, SqVector along, SqId edge, SqId other)
{
  return (SqGuide){ .locus = SQ_GUIDE_LINE,
                    .at = at,
                    .along = along,
                    .count_from = at,
                    .reason = { .kind = kind, .from = at, .edge = edge, .other = other } };
}

static SqGuide
circle (SqSnapKind kind, SqPoint centre, double radius_mm, SqPoint from, SqId edge, SqId other)
{
  return (SqGuide){ .locus = SQ_GUIDE_CIRCLE,
                    .at = centre,
                    .radius_mm = radius_mm,
                    .reason = { .kind = kind, .from = from, .edge = edge, .other = other } };
}

/* A guide that no edge of the corner lies along: the grid counts where its own lines cross it. */
static SqGuide
counted_by_grid (const SqSnapSeat *seat, SqGuide guide)
{
  double along_mm = sq_dot (guide.along, sq_sub (seat->grid_at, guide.at));

  guide.count_from = sq_moved (guide.at, guide.along, along_mm);
  return guide;
}

static SqPoint
corner_at (const SqSnapSeat *seat, guint i)
{
  return seat->corners[i].at;
}

/* Whether the edge that starts at corner @i moves with the dragged corner. */
static gboolean
moves (const SqSnapSeat *seat, guint i, guint moved)
{
  return moved != SQ_SNAP_NONE && (i == moved || seat->corners[i].next == moved);
}

/* An edge that stays, and whose direction is the chord's. */
static gboolean
has_direction (const SqSnapSeat *seat, guint i, guint moved)
{
  return sq_snap_is_edge (seat, i) && !moves (seat, i, moved)
         && (seat->corners[i].is_straight || seat->corners[i].id == seat->front);
}

/* On from the neighbour's other edge, straight or square. */
static void
add_beyond (const Anchor *a)
{
  const SqSnapSeat *seat = a->seat;
  SqPoint at = corner_at (seat, a->at);

  if (a->beyond == SQ_SNAP_NONE || !has_direction (seat, a->beyond, a->moved))
    return;
  const SqSnapCorner *beyond = &seat->corners[a->beyond];
  SqVector along = sq_snap_edge_along (seat, a->beyond);
  add (seat, a->guides, line (SQ_SNAP_SQUARE, at, sq_left (along), a->own, beyond->id));
  add (seat, a->guides, line (SQ_SNAP_STRAIGHT, at, along, a->own, seat->corners[a->far].id));
}

/* As long as another edge, or parallel to it. */
static void
add_likenesses (const Anchor *a)
{
  const SqSnapSeat *seat = a->seat;
  SqPoint at = corner_at (seat, a->at);

  for (guint i = 0; i < seat->n; i++)
    {
      const SqSnapCorner *edge = &seat->corners[i];
      if (!has_direction (seat, i, a->moved))
        continue;
      if (i != a->beyond)
        {
          SqGuide guide = line (SQ_SNAP_PARALLEL, at, sq_snap_edge_along (seat, i), a->own,
                                edge->id);
          guide.reason.figure = fabs (sq_cross (guide.along, sq_sub (at, edge->at)));
          add (seat, a->guides, guide);
        }
      if (a->is_straight && edge->is_straight)
        add (seat, a->guides,
             circle (SQ_SNAP_EQUAL_LENGTH, at, sq_snap_edge_mm (seat, i), at, a->own, edge->id));
    }
}

static void
add_anchor (const Anchor *a)
{
  const SqSnapSeat *seat = a->seat;
  guint front = seat->front != 0 ? sq_snap_find (seat, seat->front) : SQ_SNAP_NONE;

  if (front != SQ_SNAP_NONE && !moves (seat, front, a->moved))
    add (seat, a->guides,
         line (SQ_SNAP_SQUARE, corner_at (seat, a->at), sq_point (0, 1), a->own, seat->front));
  add_beyond (a);
  add_likenesses (a);
}

/* What the two neighbours say together: in line between them, a square corner (all of them stand
 * on the circle over the chord), two edges of one length. */
static void
add_between (const Anchor *a, const Anchor *b)
{
  const SqSnapSeat *seat = a->seat;
  SqPoint from = corner_at (seat, a->at), to = corner_at (seat, b->at);
  SqVector along = sq_unit (sq_sub (to, from));
  SqPoint middle = sq_between (from, to, 0.5);

  if (sq_distance (from, to) <= SQ_COINCIDE_MM)
    return;
  add (seat, a->guides,
       circle (SQ_SNAP_SQUARE, middle, sq_distance (from, to) / 2, from, a->own, b->own));
  add (seat, a->guides, line (SQ_SNAP_STRAIGHT, from, along, 0, seat->corners[b->at].id));
  if (a->is_straight && b->is_straight)
    {
      SqGuide guide = line (SQ_SNAP_EQUAL_LENGTH, middle, sq_left (along), a->own, b->own);
      guide.reason.from = from;
      add (seat, a->guides, guide);
    }
}

static void
add_corners (const SqSnapSeat *seat, guint moved, SqGuides *guides)
{
  for (guint i = 0; i < seat->n; i++)
    {
      SqPoint at = corner_at (seat, i);
      SqId id = seat->corners[i].id;
      if (i == moved)
        continue;
      add (seat, guides,
           counted_by_grid (seat, line (SQ_SNAP_ALIGNED, at, sq_point (0, 1), 0, id)));
      add (seat, guides,
           counted_by_grid (seat, line (SQ_SNAP_ALIGNED, at, sq_point (1, 0), 0, id)));
    }
}

static void
add_middles (const SqSnapSeat *seat, guint moved, SqGuides *guides)
{
  for (guint i = 0; i < seat->n; i++)
    if (seat->corners[i].is_chord && sq_snap_is_edge (seat, i) && !moves (seat, i, moved))
      {
        SqPoint middle = sq_between (corner_at (seat, i), sq_snap_edge_end (seat, i), 0.5);
        add (seat, guides,
             counted_by_grid (seat,
                              line (SQ_SNAP_MIDDLE, middle, sq_left (sq_snap_edge_along (seat, i)),
                                    0, seat->corners[i].id)));
      }
}

/* On the axis, or the image of a corner that has none yet. */
static void
add_symmetry (const SqSnapSeat *seat, guint moved, SqGuides *guides)
{
  if (!sq_snap_takes (seat, SQ_SNAP_SYMMETRY))
    return;
  add (seat, guides,
       counted_by_grid (seat, line (SQ_SNAP_SYMMETRY, seat->axis.at, seat->axis.along, 0, 0)));
  for (guint i = 0; i < seat->n; i++)
    if (i != moved)
      {
        SqPoint from = corner_at (seat, i);
        SqGuide guide = circle (SQ_SNAP_SYMMETRY, sq_axis_mirrored (&seat->axis, from), 0, from, 0,
                                seat->corners[i].id);
        guide.locus = SQ_GUIDE_POINT;
        add (seat, guides, guide);
      }
}

static Anchor
anchor_before (const SqSnapSeat *seat, guint moved, guint at, SqGuides *guides)
{
  const SqSnapCorner *corner = &seat->corners[at];

  return (Anchor){ seat,           guides,         moved,      at,
                   corner->before, corner->before, corner->id, corner->is_straight };
}

static Anchor
anchor_after (const SqSnapSeat *seat, guint moved, guint at, SqGuides *guides)
{
  return (Anchor){ seat,
                   guides,
                   moved,
                   at,
                   at,
                   seat->corners[at].next,
                   seat->corners[moved].id,
                   seat->corners[moved].is_straight };
}

void
sq_snap_collect (const SqSnapSeat *seat, guint moved, guint after, SqGuides *guides)
{
  guint before = moved != SQ_SNAP_NONE ? seat->corners[moved].before : after;
  guint next = moved != SQ_SNAP_NONE ? seat->corners[moved].next : SQ_SNAP_NONE;

  add_symmetry (seat, moved, guides);
  if (before != SQ_SNAP_NONE && before != moved)
    {
      Anchor a = anchor_before (seat, moved, before, guides);
      add_anchor (&a);
      if (next != SQ_SNAP_NONE && next != before)
        {
          Anchor b = anchor_after (seat, moved, next, guides);
          add_anchor (&b);
          add_between (&a, &b);
        }
    }
  add_corners (seat, moved, guides);
  add_middles (seat, moved, guides);
}
