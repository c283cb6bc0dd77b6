/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "window/text-row.h"

#define MOST_CHARS 44

void
sq_text_row_setup (GtkSignalListItemFactory *factory, GtkListItem *row)
{
  GtkWidget *label = gtk_label_new (NULL);
  (void) factory;
  gtk_label_set_xalign (GTK_LABEL (label), 0);
  gtk_label_set_ellipsize (GTK_LABEL (label), PANGO_ELLIPSIZE_END);
  gtk_label_set_max_width_chars (GTK_LABEL (label), MOST_CHARS);
  gtk_list_item_set_child (row, label);
}
