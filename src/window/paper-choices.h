/* SPDX-License-Identifier: GPL-3.0-or-later */
/* Which papers a job wants, and how they are to be. */
#pragma once

#include <gtk/gtk.h>

#include "papers/paper.h"
#include "window/document.h"

#define SQ_TYPE_PAPER_CHOICES (sq_paper_choices_get_type ())
G_DECLARE_FINAL_TYPE (SqPaperChoices, sq_paper_choices, SQ, PAPER_CHOICES, GtkBox)

/* Shows what the job of @document says, and changes it; papers are of the day @today (copied). Emits
 * "changed" (no parameters) when what the job does not keep is another: which pieces, which label;
 * "test-page" when one is to be printed. */
GtkWidget *sq_paper_choices_new (SqDocument *document, const char *today);

/* The pieces of @plan that patterns, labels and files are wanted of, as SqPaperSpec has them: *@entries
 * is new, NULL: all. FALSE with SQ_ERROR_VALUE and a sentence where what was typed names none. */
gboolean sq_paper_choices_entries (SqPaperChoices *choices, const SqPlan *plan, GArray **entries,
                                   GError **error);
/* How many labels of the first sheet are used up. */
guint sq_paper_choices_skipped (SqPaperChoices *choices);
/* Whether pieces have changed since papers went out: it then offers the next revision. */
void sq_paper_choices_show_revised (SqPaperChoices *choices, gboolean is_revised);
