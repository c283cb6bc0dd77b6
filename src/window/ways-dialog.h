/* SPDX-License-Identifier: GPL-3.0-or-later */
/* Ways of building: all that the chosen cushion could be built in, side by side; one is chosen by a
 * click or Enter. */
#pragma once

#include <gtk/gtk.h>

#include "window/document.h"
#include "window/selection.h"

#define SQ_TYPE_WAYS_DIALOG (sq_ways_dialog_get_type ())
G_DECLARE_FINAL_TYPE (SqWaysDialog, sq_ways_dialog, SQ, WAYS_DIALOG, GtkWindow)

/* Opens it over @parent, for the chosen cushion of @document; it follows both, and the seat can be
 * worked on meanwhile. */
GtkWidget *sq_ways_dialog (GtkWindow *parent, SqDocument *document, SqSelection *selection);
