/* SPDX-License-Identifier: GPL-3.0-or-later */
/* The shelf of cloths, to take one from. */
#pragma once

#include <gtk/gtk.h>

#include "window/edits.h"

/* Shows the user's shelf; what is taken comes into @document and is used for @value of
 * @cushion. */
void sq_shelf_dialog (GtkWindow *parent, SqDocument *document, SqId cushion, SqChoiceValue value);
