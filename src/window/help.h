/* SPDX-License-Identifier: GPL-3.0-or-later */
/* The help pages, in whatever the desktop shows such pages with. */
#pragma once

#include <gtk/gtk.h>

/* Shows help @page ("index", "cut-list", …) from @parent: in the desktop's viewer of help, else in
 * its browser, else a notice that says where the pages lie. With $SQUAB_HELPDIR (a build not
 * installed) the browser shows what lies there. */
void sq_help_show (GtkWindow *parent, const char *page);

/* F1 in @widget, a dialog or a part of one that the keyboard is in, asks for help @page, a static text.
 * (In windows of the application it asks for the index.) */
void sq_help_on_f1 (GtkWidget *widget, const char *page);
