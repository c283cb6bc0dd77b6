/* SPDX-License-Identifier: GPL-3.0-or-later */
/* What the drawing and the hands of the seat's canvas share. */
#pragma once

#include "window/seat-canvas.h"
#include "window/seat-things.h"

/* What can be taken hold of. */
typedef struct
{
  enum
  {
    SQ_GRIP_NONE,
    SQ_GRIP_CORNER,
    SQ_GRIP_EDGE, /* that starts at the corner */
  } kind;
  SqId corner;
} SqGrip;

struct _SqSeatCanvas
{
  SqCanvas parent;
  SqDocument *document;
  SqSelection *selection;
  SqCover *cover; /* of the chosen cushion; NULL: none */

  SqGrip hovered;
  /* Of a drag: */
  SqGrip held;
  SqJob *base;       /* the job it began with */
  SqPoint pressed;   /* pixels */
  SqVector moved;    /* mm, so far */
  gint64 pressed_us; /* when */
  gboolean is_moving;
  SqSeatThings things;
};

/* What is at @at (pixels). */
SqGrip sq_seat_grip_at (SqSeatCanvas *canvas, SqPoint at);
/* The grip that the selection stands for. */
SqGrip sq_seat_chosen (SqSeatCanvas *canvas);

/* Of SqCanvasClass. */
gboolean sq_seat_press (SqCanvas *canvas, SqPoint at);
void sq_seat_drag (SqCanvas *canvas, SqPoint at);
void sq_seat_release (SqCanvas *canvas);
void sq_seat_hover (SqCanvas *canvas, const SqPoint *at);
gboolean sq_seat_key (SqCanvas *canvas, guint keyval, GdkModifierType state);
