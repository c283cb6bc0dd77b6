/* SPDX-License-Identifier: GPL-3.0-or-later */
/* The pieces of the chosen cushion on the cloth table, all at one true scale, right side up. */
#pragma once

#include "window/canvas.h"
#include "window/document.h"
#include "window/selection.h"

#define SQ_TYPE_PIECES_CANVAS (sq_pieces_canvas_get_type ())
G_DECLARE_FINAL_TYPE (SqPiecesCanvas, sq_pieces_canvas, SQ, PIECES_CANVAS, SqCanvas)

/* Shows the pieces of the chosen cushion of @document from now on. Both are kept alive; NULL: an
 * empty table. */
void sq_pieces_canvas_set_document (SqPiecesCanvas *canvas, SqDocument *document,
                                    SqSelection *selection);

/* Whether a card of @height over the canvas would hide less of the chosen seam at its upper end than
 * at its lower one. */
gboolean sq_pieces_canvas_hides_less_above (SqPiecesCanvas *canvas, int height);
