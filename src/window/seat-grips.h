/* SPDX-License-Identifier: GPL-3.0-or-later */
/* Where a seat is taken hold of: its corners and edges, and the handles that the chosen ones have.
 * Points are in seat coordinates where they are not said to be pixels. */
#pragma once

#include <gtk/gtk.h>

#include "job/cushion.h"

typedef struct
{
  enum
  {
    SQ_GRIP_NONE,
    SQ_GRIP_CORNER,
    SQ_GRIP_EDGE,          /* that starts at the corner */
    SQ_GRIP_BOW,           /* the middle of that edge, which is pulled into an arc */
    SQ_GRIP_RADIUS,        /* of the corner's rounding */
    SQ_GRIP_CONTROL_START, /* handles of a free curve */
    SQ_GRIP_CONTROL_END,
  } kind;
  SqId corner;
} SqGrip;

static inline gboolean
sq_grip_is_same (SqGrip a, SqGrip b)
{
  return a.kind == b.kind && a.corner == b.corner;
}

/* Whether it belongs to an edge. */
gboolean sq_grip_is_of_edge (SqGrip grip);

/* The place on the seat that follows the hand. FALSE where the outline has no such grip. */
gboolean sq_grip_place (const SqOutline *outline, SqGrip grip, SqPoint *at);

/* Unit, outward and square to the chord of the edge that starts at @edge; (0, 0) without one. */
SqVector sq_grip_outward (const SqOutline *outline, SqId edge);

/* What moving it is called on the undo list: "Move corner B". New text. */
char *sq_grip_words (const SqCushion *cushion, SqGrip grip);

typedef struct _SqSeatCanvas SqSeatCanvas;

/* What is at @at (pixels). */
SqGrip sq_seat_grip_at (SqSeatCanvas *canvas, SqPoint at);
/* The cursor that tells which way it goes; NULL: the usual one. Static. */
const char *sq_seat_grip_cursor (SqSeatCanvas *canvas, SqGrip grip);

/* Appends the handles; @layer and the next SQ_N_GRIP_LAYERS − 1 are their layers' numbers. */
#define SQ_N_GRIP_LAYERS 8
void sq_seat_grips_append (SqSeatCanvas *canvas, GtkSnapshot *snapshot, guint layer);
