/* SPDX-License-Identifier: GPL-3.0-or-later */
/* The sides of the chosen seat as a table below it: for each the length, the rise, what stands
 * there, and angle and radius of the corner it starts at, in the order in which a tape goes round.
 * Cells are moved through and typed over as in a spreadsheet. The last side of the outer ring
 * closes it: what is typed there is compared with what follows from the others. */
#pragma once

#include "window/document.h"
#include "window/selection.h"

#include <gtk/gtk.h>

#define SQ_TYPE_SIDES_TABLE (sq_sides_table_get_type ())
G_DECLARE_FINAL_TYPE (SqSidesTable, sq_sides_table, SQ, SIDES_TABLE, GtkWidget)

/* Shows the cushion chosen on @document from now on; NULL: nothing. Both are kept alive. When it is
 * shown by the user the keyboard comes to it, and goes to @seat (borrowed) when it is left. */
void sq_sides_table_set_document (SqSidesTable *table, SqDocument *document, SqSelection *selection,
                                  GtkWidget *seat);
