/* SPDX-License-Identifier: GPL-3.0-or-later */
/* What the drawing and the hands of the seat's canvas share. */
#pragma once

#include "window/seat-canvas.h"
#include "window/seat-field.h"
#include "window/seat-figures.h"
#include "window/seat-hold.h"
#include "window/seat-things.h"

struct _SqSeatCanvas
{
  SqCanvas parent;
  SqDocument *document;
  SqSelection *selection;
  SqCover *cover; /* of the chosen cushion; NULL: none */

  SqGrip hovered;
  SqSeatHold hold;
  SqPoint pressed;   /* the last press: where (pixels) … */
  gint64 pressed_us; /* … and when */
  SqSeatThings things;
  GtkWidget *menu;
  GSimpleActionGroup *actions; /* of the menu */
  SqSeatFigures figures;
  SqSeatField *field;
};

/* The corner or edge that the selection stands for. */
SqGrip sq_seat_chosen (SqSeatCanvas *canvas);
void sq_seat_choose (SqSeatCanvas *canvas, SqGrip grip);
/* A corner in the middle of the chosen edge; the chosen corner away. FALSE where that can't be. */
gboolean sq_seat_add_corner (SqSeatCanvas *canvas);
gboolean sq_seat_remove_corner (SqSeatCanvas *canvas);
/* The menu, and opening it at @at (pixels); NULL: at what is chosen. */
void sq_seat_add_menu (SqSeatCanvas *canvas);
void sq_seat_open_menu (SqSeatCanvas *canvas, const SqPoint *at);
/* What is shown has changed: draws it, and says it to screen readers. */
void sq_seat_canvas_tell (SqSeatCanvas *canvas);
/* How the seat is shown now. */
SqSeatLook sq_seat_canvas_look (SqSeatCanvas *canvas);
/* What is in sight, seat coordinates. */
SqBox sq_seat_canvas_room (SqSeatCanvas *canvas);

/* Of SqCanvasClass. */
gboolean sq_seat_press (SqCanvas *canvas, SqPoint at);
void sq_seat_drag (SqCanvas *canvas, SqPoint at);
void sq_seat_release (SqCanvas *canvas);
void sq_seat_hover (SqCanvas *canvas, const SqPoint *at);
gboolean sq_seat_key (SqCanvas *canvas, guint keyval, GdkModifierType state);
