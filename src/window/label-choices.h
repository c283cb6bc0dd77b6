/* SPDX-License-Identifier: GPL-3.0-or-later */
/* How labels lie on their sheets, of a job; and which is the first that is free, of this printing
 * alone. */
#pragma once

#include <gtk/gtk.h>

#include "window/document.h"

#define SQ_TYPE_LABEL_CHOICES (sq_label_choices_get_type ())
G_DECLARE_FINAL_TYPE (SqLabelChoices, sq_label_choices, SQ, LABEL_CHOICES, GtkBox)

/* Shows what the job of @document says, and changes it. Emits "skipped" (no parameters) when another
 * label is the first free one. */
GtkWidget *sq_label_choices_new (SqDocument *document);
/* How many places of the first sheet are used up. */
guint sq_label_choices_skipped (SqLabelChoices *choices);
