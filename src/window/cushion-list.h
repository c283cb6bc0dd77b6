/* SPDX-License-Identifier: GPL-3.0-or-later */
/* The job's cushions as small drawings with their names and counts; one is chosen. */
#pragma once

#include <gtk/gtk.h>

#include "window/document.h"
#include "window/selection.h"

#define SQ_TYPE_CUSHION_LIST (sq_cushion_list_get_type ())
G_DECLARE_FINAL_TYPE (SqCushionList, sq_cushion_list, SQ, CUSHION_LIST, GtkWidget)

/* Shows the cushions of @document from now on, and sees to it that one of them is chosen. NULL:
 * none. Both are kept alive. */
void sq_cushion_list_set_document (SqCushionList *list, SqDocument *document,
                                   SqSelection *selection);
/* Lets the user type another name for the chosen cushion, in its place. */
void sq_cushion_list_rename (SqCushionList *list);
