/* SPDX-License-Identifier: GPL-3.0-or-later */
/* What can be taken hold of on the seat besides its corners and edges: the zip, the stripes, and
 * the marks of problems. The seat's hands ask here first. */
#pragma once

#include "window/seat-canvas.h"

/* Of a drag. */
typedef struct
{
  enum
  {
    SQ_THING_NONE,
    SQ_THING_ZIP,       /* all of it, along the seat */
    SQ_THING_ZIP_START, /* one end */
    SQ_THING_ZIP_END,
    SQ_THING_ZIP_ACROSS, /* on an underside */
    SQ_THING_STRIPES,
  } kind;
  SqJob *base;     /* the job it began with; NULL: nothing is held */
  SqCover *cover;  /* the cover it began with */
  SqPoint pressed; /* pixels */
  gboolean is_moving;
} SqSeatThings;

/* Appends them; @layer and the next SQ_N_THING_LAYERS − 1 are their layers' numbers. */
#define SQ_N_THING_LAYERS 8
void sq_seat_things_append (SqSeatCanvas *canvas, GtkSnapshot *snapshot, guint layer);

/* A press at @at (pixels): TRUE if it was for one of them; *@is_held then says whether it is
 * dragged from now on. */
gboolean sq_seat_things_press (SqSeatCanvas *canvas, SqPoint at, gboolean *is_held);
/* TRUE: one of them is held, and has followed, was let go, was put back. */
gboolean sq_seat_things_drag (SqSeatCanvas *canvas, SqPoint at);
gboolean sq_seat_things_release (SqSeatCanvas *canvas);
gboolean sq_seat_things_put_back (SqSeatCanvas *canvas);

/* The pointer for what is at @at; NULL: none of them is. */
const char *sq_seat_things_cursor (SqSeatCanvas *canvas, SqPoint at);

/* Of GtkWidgetClass: what a mark of a problem stands for. */
gboolean sq_seat_things_query_tooltip (GtkWidget *widget, int x, int y, gboolean by_keyboard,
                                       GtkTooltip *tooltip);
