/* SPDX-License-Identifier: GPL-3.0-or-later */
/* The values of the chosen cushion, in the order a maker decides them. What was not given is shown
 * as the usual value, what was has a way back to it. */
#pragma once

#include <gtk/gtk.h>

#include "window/document.h"
#include "window/selection.h"

#define SQ_TYPE_VALUES (sq_values_get_type ())
G_DECLARE_FINAL_TYPE (SqValues, sq_values, SQ, VALUES, GtkWidget)

/* Shows the chosen cushion of @document from now on; NULL: nothing. Both are kept alive. */
void sq_values_set_document (SqValues *values, SqDocument *document, SqSelection *selection);
