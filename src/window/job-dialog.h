/* SPDX-License-Identifier: GPL-3.0-or-later */
/* What a job says of itself: title, customer, notes, and the unit its lengths are shown in. */
#pragma once

#include <gtk/gtk.h>

#include "window/document.h"

/* Asks for it; what is accepted becomes one step of @document. */
void sq_job_dialog (GtkWindow *parent, SqDocument *document);
