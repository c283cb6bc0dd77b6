/* SPDX-License-Identifier: GPL-3.0-or-later */
/* The roll below seat and pieces: a caption with what to buy, and the roll itself, which can be
 * folded away. */
#pragma once

#include <gtk/gtk.h>

#include "window/lay-finder.h"
#include "window/selection.h"

#define SQ_TYPE_ROLL_PANE (sq_roll_pane_get_type ())
G_DECLARE_FINAL_TYPE (SqRollPane, sq_roll_pane, SQ, ROLL_PANE, GtkBox)

/* Shows the lays that @finder finds for @document from now on. All are kept alive; NULL: none. */
void sq_roll_pane_set_document (SqRollPane *pane, SqDocument *document, SqLayFinder *finder,
                                SqSelection *selection);

/* The roll's own drawing: visible where the pane is not folded. */
GtkWidget *sq_roll_pane_get_canvas (SqRollPane *pane);
