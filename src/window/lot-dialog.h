/* SPDX-License-Identifier: GPL-3.0-or-later */
/* Lots cut several layers deep: how many layers, on what table. */
#pragma once

#include <gtk/gtk.h>

#include "window/document.h"

/* One step of the history. */
void sq_lot_dialog (GtkWindow *parent, SqDocument *document);
