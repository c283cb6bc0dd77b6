/* SPDX-License-Identifier: GPL-3.0-or-later */
/* Rows of a list, each one line of text. */
#pragma once

#include <gtk/gtk.h>

/* Handler of a factory's "setup": the row's child is a label, as wide as menus have them. */
void sq_text_row_setup (GtkSignalListItemFactory *factory, GtkListItem *row);
