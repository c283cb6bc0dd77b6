/* SPDX-License-Identifier: GPL-3.0-or-later */
/* One cloth's roll at a true scale, with its pattern and the pieces that are laid on it. */
#pragma once

#include "window/canvas.h"
#include "window/lay-finder.h"
#include "window/selection.h"

#define SQ_TYPE_ROLL_CANVAS (sq_roll_canvas_get_type ())
G_DECLARE_FINAL_TYPE (SqRollCanvas, sq_roll_canvas, SQ, ROLL_CANVAS, SqCanvas)

/* Shows the lays that @finder finds for @document from now on, and changes @document where a hand
 * changes them; what is chosen in @selection is marked. All are kept alive; NULL: an empty table. */
void sq_roll_canvas_set_document (SqRollCanvas *canvas, SqDocument *document, SqLayFinder *finder,
                                  SqSelection *selection);

/* What can be done with what is chosen, as actions: turn, pin, unpin-all, mark-flaw. Borrowed. */
GActionGroup *sq_roll_canvas_get_actions (SqRollCanvas *canvas);

/* Which of the lays' cloths is shown. */
void sq_roll_canvas_set_cloth (SqRollCanvas *canvas, guint cloth);

/* Shows @kept, a lay of this cloth that does not fit any more, in place of the lay; NULL: the lay
 * again. A reference is taken. */
void sq_roll_canvas_show_kept (SqRollCanvas *canvas, const SqKeptLay *kept);
