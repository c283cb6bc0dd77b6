/* SPDX-License-Identifier: GPL-3.0-or-later */
/* Papers to a printer, by the system's own dialog. */
#pragma once

#include <gtk/gtk.h>

#include "papers/paper.h"

/* @error NULL and @is_printed FALSE: the user thought better of it. @data is that of the call. */
typedef void (*SqPrinted) (gboolean is_printed, const GError *error, gpointer data);

/* Prints @papers (of SqPaper, with one page at least; a reference is taken) in true size, each page on
 * paper of its own size; @name is what the printer's queue shows. @printed is told once, at the end;
 * @data is then freed with @data_free. */
void sq_print_papers (GtkWindow *parent, GPtrArray *papers, const char *name, SqPrinted printed,
                      gpointer data, GDestroyNotify data_free);
