/* SPDX-License-Identifier: GPL-3.0-or-later */
/* How patterns are printed, of a job: on what paper, which lines. */
#pragma once

#include <gtk/gtk.h>

#include "window/document.h"

#define SQ_TYPE_PATTERN_CHOICES (sq_pattern_choices_get_type ())
G_DECLARE_FINAL_TYPE (SqPatternChoices, sq_pattern_choices, SQ, PATTERN_CHOICES, GtkBox)

/* Shows what the job of @document says, and changes it. Emits "test-page" (no parameters) when one is
 * to be printed. */
GtkWidget *sq_pattern_choices_new (SqDocument *document);
