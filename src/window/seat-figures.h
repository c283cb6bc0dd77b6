/* SPDX-License-Identifier: GPL-3.0-or-later */
/* The figures as they stand on the seat's sheet: which one is where, and the one the pointer is
 * on. */
#pragma once

#include <gtk/gtk.h>

#include "window/side-figures.h"

typedef struct _SqSeatCanvas SqSeatCanvas;

typedef struct
{
  GArray *dimensions; /* as they stand for … */
  SqCover *cover;     /* … this one … */
  SqSeatLook look;    /* … with this look */
  gboolean is_pointed;
  SqSideFigure pointed; /* by the pointer */
} SqSeatFigures;

void sq_seat_figures_clear (SqSeatFigures *figures);

/* The figure that a press at @at (pixels) means, which a handle there does not; or NULL. Borrowed
 * until the seat or its view changes. */
const SqDimension *sq_seat_figures_at (SqSeatCanvas *canvas, SqPoint at);
/* Where @figure stands; NULL: nowhere. Borrowed likewise. */
const SqDimension *sq_seat_figures_find (SqSeatCanvas *canvas, const SqSideFigure *figure);
/* Outward from the seat at the corner, or the edge, that @figure belongs to, a unit vector; its
 * place in *@foot. Seat coordinates. */
SqVector sq_seat_figures_outward (const SqOutline *outline, const SqSideFigure *figure,
                                  SqPoint *foot);

/* The pointer is at @at; NULL: away. The cursor for it; NULL: there is no figure. Static. */
const char *sq_seat_figures_hover (SqSeatCanvas *canvas, const SqPoint *at);
/* Appends a light behind the figure the pointer is on. */
void sq_seat_figures_append (SqSeatCanvas *canvas, GtkSnapshot *snapshot);
