/* SPDX-License-Identifier: GPL-3.0-or-later */
/* Asks for the figures of a hole, and cuts it. */
#pragma once

#include <gtk/gtk.h>

#include "window/document.h"

/* A hole in the seat of @cushion, about @at (seat, mm), or (NULL) in its middle to begin with. */
void sq_hole_dialog (GtkWindow *parent, SqDocument *document, SqId cushion, const SqPoint *at);
