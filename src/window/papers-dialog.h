/* SPDX-License-Identifier: GPL-3.0-or-later */
/* Print and export: which papers, on what, as they will come out; to a printer or a file. */
#pragma once

#include <gtk/gtk.h>

#include "window/lay-finder.h"

#define SQ_TYPE_PAPERS_DIALOG (sq_papers_dialog_get_type ())
G_DECLARE_FINAL_TYPE (SqPapersDialog, sq_papers_dialog, SQ, PAPERS_DIALOG, GtkWindow)

/* Opens it over @parent, for @document with the lays of @finder. It follows both. */
void sq_papers_dialog (GtkWindow *parent, SqDocument *document, SqLayFinder *finder);
