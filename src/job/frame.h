/* SPDX-License-Identifier: GPL-3.0-or-later */
/* The seat in its front's frame: x along the chord of the front edge, y away from it to the back,
 * (0, 0) where the front edge starts. */
#pragma once

#include "job/outline.h"

typedef struct
{
  guint edge;     /* its index in the outer ring */
  SqPoint at;     /* where it starts, seat coordinates */
  SqVector along; /* unit, its chord */
} SqFront;

/* What an edge of the outer ring looks to. */
typedef enum
{
  SQ_TOWARDS_FRONT,
  SQ_TOWARDS_RIGHT,
  SQ_TOWARDS_BACK,
  SQ_TOWARDS_LEFT,
} SqTowards;
#define SQ_N_TOWARDS 4

/* The front edge: the marked one, else the one whose chord's outward normal is nearest −y (of
 * equals the one of the lowest id). FALSE for an outline without an outer ring of 2 corners. */
gboolean sq_outline_front (const SqOutline *outline, SqFront *front);

/* What edge @index of the outer ring looks to by its chord's outward normal, ±45°, 45° itself
 * being front or back. */
SqTowards sq_outline_edge_towards (const SqOutline *outline, const SqFront *front, guint index);

/* A new outline in which each edge of the outer ring is of the kind given for what it looks to;
 * @kinds are those of the front, right, back and left. Clearances stay as they are. */
SqOutline *sq_outline_with_kinds_towards (const SqOutline *outline,
                                          const SqEdgeKind kinds[SQ_N_TOWARDS]);

/* How wide and deep the outer ring is in the front's frame: its true edges, corners sharp. FALSE
 * where there is no front, or a curve can't be fitted. */
gboolean sq_outline_extents_mm (const SqOutline *outline, double *width_mm, double *depth_mm);

/* A new outline of that width and depth (as sq_outline_extents_mm measures them): all rings are
 * stretched along the front's frame, the start of the front edge stays where it is. Edges parallel
 * to the frame stay so, with all angles between them. Bows rise as the stretch lifts them off
 * their chord, so a bowed edge parallel to the frame keeps its share; radii and clearances stay.
 * NULL where a figure is not above 0 or is above SQ_SEAT_MOST_MM, or no stretch leads there. */
SqOutline *sq_outline_scaled_to (const SqOutline *outline, double width_mm, double depth_mm);
