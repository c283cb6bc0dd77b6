/* SPDX-License-Identifier: GPL-3.0-or-later */
/* How cloth is cut: by straight cuts only; lots in how many layers, on what table. */
#pragma once

#include <gtk/gtk.h>

#include "window/document.h"

/* One step of the history. */
void sq_cutting_dialog (GtkWindow *parent, SqDocument *document);
