/* SPDX-License-Identifier: GPL-3.0-or-later */
/* One row of the values: a name, what it is, and the way back to what is usual. */
#pragma once

#include <gtk/gtk.h>

#include "base/length.h"
#include "window/plain-entry.h"

#define SQ_TYPE_VALUE_ROW (sq_value_row_get_type ())
G_DECLARE_FINAL_TYPE (SqValueRow, sq_value_row, SQ, VALUE_ROW, GtkWidget)

/* Emit "length" (double: mm), "choice" (uint) or "text" (text) when the user gives one, "back"
 * (nothing) for the way back. @name is shown, with an underline for its key. */
GtkWidget *sq_value_row_new_length (const char *name);
/* A length that nothing but the maker tells: no value is usual. */
GtkWidget *sq_value_row_new_measure (const char *name);
GtkWidget *sq_value_row_new_choice (const char *name);
/* The choice is shown by @chosen, what there is to choose by @offered; both are taken. See
 * sq_value_row_show_items(). */
GtkWidget *sq_value_row_new_items (const char *name, GtkListItemFactory *chosen,
                                   GtkListItemFactory *offered);
/* A colour is a choice: 0xrrggbb. */
GtkWidget *sq_value_row_new_colour (const char *name);
/* @check as for sq_plain_entry_new(). */
GtkWidget *sq_value_row_new_entry (const char *name, SqTextCheck check);
/* The same for a number, as wide as a length. */
GtkWidget *sq_value_row_new_number (const char *name, SqTextCheck check);
/* No value is usual for it: nothing leads back to one. */
void sq_value_row_set_no_usual (SqValueRow *row);
/* Only to be read. */
GtkWidget *sq_value_row_new_text (const char *name);

void sq_value_row_show_length (SqValueRow *row, double mm, const SqLengthStyle *style,
                               gboolean is_given);
/* @names (static) and @values, @n of both, are what can be chosen. */
void sq_value_row_show_choice (SqValueRow *row, guint value, const guint *values,
                               const char *const *names, guint n, gboolean is_given);
/* The same with things of any kind; @items stays the caller's to change, and is compared by its
 * pointer. */
void sq_value_row_show_items (SqValueRow *row, guint value, const guint *values, GListModel *items,
                              gboolean is_given);
void sq_value_row_show_colour (SqValueRow *row, guint32 rgb, gboolean is_given);
/* @usual stands there dimly where nothing was given. */
void sq_value_row_show_entry (SqValueRow *row, const char *text, const char *usual,
                              gboolean is_given);
void sq_value_row_show_text (SqValueRow *row, const char *text);

/* Says below the row why what was given can't be; "": no more. A length that is given anew takes it
 * away. */
void sq_value_row_say (SqValueRow *row, const char *mistake);
/* Whether nothing that can't be read stands in it now; what can be is taken. */
gboolean sq_value_row_take (SqValueRow *row);
