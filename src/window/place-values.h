/* SPDX-License-Identifier: GPL-3.0-or-later */
/* The values of the chosen edge or corner: how long, what stands there, how round. */
#pragma once

#include "window/document.h"
#include "window/selection.h"

#include <gtk/gtk.h>

#define SQ_TYPE_PLACE_VALUES (sq_place_values_get_type ())
G_DECLARE_FINAL_TYPE (SqPlaceValues, sq_place_values, SQ, PLACE_VALUES, GtkWidget)

GtkWidget *sq_place_values_new (void);
/* Shows what is chosen on @document from now on; NULL: nothing. Both are kept alive. */
void sq_place_values_set_document (SqPlaceValues *values, SqDocument *document,
                                   SqSelection *selection);
