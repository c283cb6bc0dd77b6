/* SPDX-License-Identifier: GPL-3.0-or-later */
/* Dialogs that are filled in. */
#pragma once

#include <gtk/gtk.h>

/* Whether the dialog may close: FALSE where something in it can't be. */
typedef gboolean (*SqFormDone) (gpointer data);

/* A modal dialog with @content, which scrolls where there is no room for it. @done is asked by the
 * button @label and by Ctrl+Enter; Escape closes it without. @data is freed with the dialog. */
GtkWidget *sq_form_new (GtkWindow *parent, const char *title, const char *label, GtkWidget *content,
                        SqFormDone done, gpointer data, GDestroyNotify data_free);
/* A button within it, and a box to tick; @label has an underline for its key. */
GtkWidget *sq_form_button (const char *label);
GtkWidget *sq_form_check (const char *label);
/* A heading within it. */
GtkWidget *sq_form_heading (const char *text);
