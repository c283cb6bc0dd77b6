/* SPDX-License-Identifier: GPL-3.0-or-later */
/* The finished outline: the seat's corners, less what stays free at each edge, with rounded
 * corners; and what each edge is: front, right, back or left. */
#pragma once

#include "cover/piece.h"

/* One edge of the finished outline. Stations are along its ring, from the ring's start; an edge
 * that has a rounded corner reaches to the middle of the rounding. */
typedef struct
{
  SqId id;       /* of the edge: of the corner that starts it in the seat as drawn */
  SqId corner;   /* of the corner that starts it here; in a mirrored cushion the other end */
  SqSideOf side; /* one bit; holes: by the same rule, of their own outward normal */
  SqEdgeKind kind;
  gboolean seen;
  SqEdgeBuild build;       /* of the side below it: as given, or as the way of building has it */
  double start_mm, end_mm; /* end > start; may pass the ring's length for the last edge */
  double own_start_mm, own_end_mm; /* the same without the roundings */
  double turn_rad;                 /* of direction at the corner that starts it, > 0 convex */
  double radius_mm;                /* of the rounding there; 0 sharp */
  gboolean is_straight;
} SqFinishedEdge;

typedef struct
{
  SqPath *path; /* tag i: edge i; tag n_edges + i: the rounding of the corner that starts edge i,
                   with a node in its middle. Outer ring: starts where the front edge starts. */
  SqFinishedEdge *edges; /* in order of travel; outer ring: the front edge first */
  guint n_edges;
} SqFinishedRing;

typedef struct
{
  gint ref_count;
  SqFinishedRing *rings; /* 0: the outer one */
  guint n_rings;
  SqPoint front_at;   /* seat frame: start of the front edge's chord … */
  SqVector front_dir; /* … and its direction, unit */
  guint back;         /* the back edge of ring 0 */
  SqBox extent;       /* of ring 0 in the seat frame, (0, 0) at front_at */
} SqFinished;

/* @p, in seat coordinates, in the seat frame; and back. */
SqPoint sq_finished_to_frame (const SqFinished *finished, SqPoint p);
SqPoint sq_finished_from_frame (const SqFinished *finished, SqPoint p);

SqFinished *sq_finished_ref (const SqFinished *finished);
void sq_finished_unref (SqFinished *finished);
G_DEFINE_AUTOPTR_CLEANUP_FUNC (SqFinished, sq_finished_unref)
