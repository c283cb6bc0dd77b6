/* SPDX-License-Identifier: GPL-3.0-or-later */
/* One row of the values: a name, what it is, and the way back to what is usual. */
#pragma once

#include <gtk/gtk.h>

#include "base/length.h"

#define SQ_TYPE_VALUE_ROW (sq_value_row_get_type ())
G_DECLARE_FINAL_TYPE (SqValueRow, sq_value_row, SQ, VALUE_ROW, GtkWidget)

/* Emit "length" (double: mm) or "choice" (uint) when the user gives one, "back" (nothing) for the
 * way back. @name is shown, with an underline for its key. */
GtkWidget *sq_value_row_new_length (const char *name);
GtkWidget *sq_value_row_new_choice (const char *name);
/* Only to be read. */
GtkWidget *sq_value_row_new_text (const char *name);

void sq_value_row_show_length (SqValueRow *row, double mm, const SqLengthStyle *style,
                               gboolean is_given);
/* @names (static) and @values, @n of both, are what can be chosen. */
void sq_value_row_show_choice (SqValueRow *row, guint value, const guint *values,
                               const char *const *names, guint n, gboolean is_given);
void sq_value_row_show_text (SqValueRow *row, const char *text);
