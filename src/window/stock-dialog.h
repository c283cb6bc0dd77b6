/* SPDX-License-Identifier: GPL-3.0-or-later */
/* What is there of a cloth already: remnants and bolts, typed. */
#pragma once

#include <gtk/gtk.h>

#include "window/document.h"

/* For @cloth of the job. One step of the history. */
void sq_stock_dialog (GtkWindow *parent, SqDocument *document, SqId cloth);
