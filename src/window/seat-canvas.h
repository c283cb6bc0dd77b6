/* SPDX-License-Identifier: GPL-3.0-or-later */
/* The seat on brown paper: its corners and edges are taken hold of here. */
#pragma once

#include "window/canvas.h"
#include "window/document.h"
#include "window/selection.h"

#define SQ_TYPE_SEAT_CANVAS (sq_seat_canvas_get_type ())
G_DECLARE_FINAL_TYPE (SqSeatCanvas, sq_seat_canvas, SQ, SEAT_CANVAS, SqCanvas)

/* Shows the chosen cushion of @document from now on. Both are kept alive; NULL: an empty sheet. */
void sq_seat_canvas_set_document (SqSeatCanvas *canvas, SqDocument *document,
                                  SqSelection *selection);

/* Where a corner stands on the canvas (pixels); FALSE if the cushion has no such corner. */
gboolean sq_seat_canvas_corner_at (SqSeatCanvas *canvas, SqId corner, SqPoint *at);
