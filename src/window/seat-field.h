/* SPDX-License-Identifier: GPL-3.0-or-later */
/* A figure on the seat's sheet as a field: an entry that stands where the figure stood, with a
 * button that says which end stays and lets the other one. Enter takes what is typed, Escape puts
 * it back, Tab takes it and goes on in the walk round the seat. */
#pragma once

#include <gtk/gtk.h>

#include "geometry/point.h"

typedef struct _SqSeatCanvas SqSeatCanvas;

#define SQ_TYPE_SEAT_FIELD (sq_seat_field_get_type ())
G_DECLARE_FINAL_TYPE (SqSeatField, sq_seat_field, SQ, SEAT_FIELD, GtkWidget)

/* A child of @canvas, closed until a figure is chosen. */
SqSeatField *sq_seat_field_new (SqSeatCanvas *canvas);

/* A press at @at (pixels): TRUE if it was on a figure, whose field is open now. */
gboolean sq_seat_field_press (SqSeatCanvas *canvas, SqPoint at);
/* Enter, or the first digit of a figure, opens the field of what is chosen. */
gboolean sq_seat_field_key (SqSeatCanvas *canvas, guint keyval, GdkModifierType state);

/* Appends the pins of what stays while it is open. */
void sq_seat_field_append (SqSeatCanvas *canvas, GtkSnapshot *snapshot);
/* Stands the field in its place. */
void sq_seat_field_allocate (SqSeatCanvas *canvas);
/* Seat or selection are others now. */
void sq_seat_field_follow (SqSeatCanvas *canvas);
