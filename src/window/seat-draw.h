/* SPDX-License-Identifier: GPL-3.0-or-later */
/* Empty paper on which a seat is drawn corner by corner, by pointer or keyboard. */
#pragma once

#include "base/length.h"
#include "window/canvas.h"

#define SQ_TYPE_SEAT_DRAW (sq_seat_draw_get_type ())
G_DECLARE_FINAL_TYPE (SqSeatDraw, sq_seat_draw, SQ, SEAT_DRAW, SqCanvas)

/* Emits "drawn" (pointer to SqOutline, borrowed) when the ring is closed, and "given-up" (no
 * parameters). */
GtkWidget *sq_seat_draw_new (void);
/* Begins anew on empty paper, with lengths in @units and a grid of @step_mm. */
void sq_seat_draw_begin (SqSeatDraw *draw, SqUnit units, double step_mm);
/* Closes the ring, as a click on the first corner does; FALSE and a word where it can't be. */
gboolean sq_seat_draw_close (SqSeatDraw *draw);
