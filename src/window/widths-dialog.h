/* SPDX-License-Identifier: GPL-3.0-or-later */
/* What the job takes of a cloth in other widths, and what matching its pattern costs. */
#pragma once

#include <gtk/gtk.h>

#include "window/document.h"

/* For @cloth of the job as it is now; it is laid on a thread, and told as soon as that is done. */
void sq_widths_dialog (GtkWindow *parent, SqDocument *document, SqId cloth);
