/* SPDX-License-Identifier: GPL-3.0-or-later */
/* The desktop's button for a colour, with colours as 0xrrggbb. It emits "color-set". */
#pragma once

#include <gtk/gtk.h>

GtkWidget *sq_colour_button_new (void);
/* Says what the colour is of: its tooltip, its dialog's title, and for screen readers. */
void sq_colour_button_name (GtkWidget *button, const char *name);
guint32 sq_colour_button_get (GtkWidget *button);
void sq_colour_button_set (GtkWidget *button, guint32 rgb);
