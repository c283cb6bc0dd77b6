/* SPDX-License-Identifier: GPL-3.0-or-later */
/* What is wrong with the job, in words, each with its ways out as buttons. */
#pragma once

#include <gtk/gtk.h>

#include "window/document.h"
#include "window/selection.h"

#define SQ_TYPE_PROBLEMS (sq_problems_get_type ())
G_DECLARE_FINAL_TYPE (SqProblems, sq_problems, SQ, PROBLEMS, GtkWidget)

/* Lists the problems of @document from now on; NULL: none. Both are kept alive. */
void sq_problems_set_document (SqProblems *problems, SqDocument *document, SqSelection *selection);

/* Puts the keyboard on the first row about @place, scrolled into sight. */
void sq_problems_show (SqProblems *problems, const SqPlace *place);

/* "2 errors, 1 note", "No problems"; new text. *@worst (may be NULL) is the worst severity, −1
 * where there is nothing. */
char *sq_problems_count_words (const SqPlan *plan, int *worst);
