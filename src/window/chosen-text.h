/* SPDX-License-Identifier: GPL-3.0-or-later */
/* Figures that are typed over: all of such a text is chosen, so that typing begins anew. */
#pragma once

#include <gtk/gtk.h>

/* Sets the text of @entry. Where all of it was chosen all of the new one is, else the cursor is at
 * its end. */
void sq_chosen_text_set (GtkEditable *entry, const char *text);
