/* SPDX-License-Identifier: GPL-3.0-or-later */
/* Where a dragged thing lands, and why. A hand brings it near a place; the place is then made exact
 * by at most two reasons that can be drawn and said. Seat coordinates; level and upright are along
 * and square to the front's chord, so a turned seat lands the same way. */
#pragma once

#include "job/symmetry.h"

/* Reasons. Edges are compared by their chords; PARALLEL, EQUAL_LENGTH and SQUARE to a neighbour by
 * straight edges only. What the front's direction decides is taken from the outline before the
 * drag. */
typedef enum
{
  SQ_SNAP_GRID,         /* to minus from is whole steps: both ways, or along the other reason's
                           guide; figure: the step */
  SQ_SNAP_SQUARE,       /* edge is square to edge other; figure: a right angle (rad) */
  SQ_SNAP_PARALLEL,     /* edge is parallel to edge other; figure: mm between them */
  SQ_SNAP_EQUAL_LENGTH, /* edge is as long as edge other; figure: mm */
  SQ_SNAP_ALIGNED,      /* level with or upright over corner other; figure: mm between them */
  SQ_SNAP_STRAIGHT,    /* from, to and corner other are in line; a bow: it has no rise; figure: 0 */
  SQ_SNAP_SYMMETRY,    /* the image of corner (or edge) other, on the axis if 0; figure: mm from
                           the axis */
  SQ_SNAP_MIDDLE,      /* over the middle of edge other, square to it; a dragged edge: in line with
                           that middle; figure: mm between them */
  SQ_SNAP_HALF_CIRCLE, /* of a bow; figure: the rise */
  SQ_SNAP_EQUAL_RISE,  /* as edge other, inward or outward; figure: the rise */
  SQ_SNAP_TANGENT,     /* leaves without a corner where it meets edge other; figure: the rise */
  SQ_SNAP_EQUAL_RADIUS, /* as corner other; figure: the radius */
  SQ_SNAP_SHARP,        /* no radius; figure: 0 */
} SqSnapKind;
#define SQ_N_SNAP_KINDS 13

#define SQ_SNAP_BIT(kind) (1u << (kind))
#define SQ_SNAP_ALL (SQ_SNAP_BIT (SQ_N_SNAP_KINDS) - 1)

typedef enum
{
  SQ_DRAG_CORNER,     /* corner id */
  SQ_DRAG_NEW_CORNER, /* to be put after corner id, whose ring is not closed yet; 0: a first one */
  SQ_DRAG_EDGE,       /* the edge that starts at id, moved parallel with both its ends */
  SQ_DRAG_BOW,        /* an arc pulled out of the edge that starts at id, through raw */
  SQ_DRAG_RADIUS,     /* the rounding of corner id, through raw */
} SqDragKind;

typedef struct
{
  const SqOutline *before; /* the drag, not while it goes on; borrowed */
  SqDragKind drag;
  SqId id;
  SqPoint grip; /* for an edge: where it was taken hold of */
  SqPoint raw;  /* where the hand is */
  double reach_mm;
  guint32 kinds;       /* SQ_SNAP_BITs of what may be a reason */
  double grid_mm;      /* step; 0: no grid */
  SqPoint grid_at;     /* a point of it */
  SqVector grid_along; /* unit, one of its directions; (0, 0): the front's */
  const SqAxis *axis;  /* of symmetry; NULL: none */
} SqSnapQuestion;

typedef struct
{
  SqSnapKind kind;
  SqPoint from, to; /* the guide to draw */
  SqId edge;        /* the dragged thing's own edge that it is about; 0: a corner, or all of it */
  SqId other;       /* corner or edge, as the kind says; 0: none */
  double figure;
} SqSnapReason;

typedef struct
{
  SqPoint at;   /* never farther than reach_mm from raw */
  double value; /* edge: how far it moves outward; bow: its rise; radius: it (mm); else 0 */
  guint n_reasons;
  SqSnapReason reasons[2];
} SqSnap;

/* Lands the dragged thing. Without a reason within reach it stays where the hand is. Corners prefer
 * the meeting of two guides to one guide (with the grid along it, where within reach) and that to
 * the grid alone; of several the nearest, less telling kinds counting as farther away. Never onto
 * another corner. An open ring's front is only the marked one, else level is along x. */
SqSnap sq_snap (const SqSnapQuestion *question);
