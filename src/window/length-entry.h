/* SPDX-License-Identifier: GPL-3.0-or-later */
/* An entry for a length, typed as makers write them. */
#pragma once

#include <gtk/gtk.h>

#include "base/length.h"

#define SQ_TYPE_LENGTH_ENTRY (sq_length_entry_get_type ())
G_DECLARE_FINAL_TYPE (SqLengthEntry, sq_length_entry, SQ, LENGTH_ENTRY, GtkEntry)

/* Emits "given" (double: mm) when Enter, or going elsewhere, gives another length than is shown;
 * and "mistake" (text: what is wrong; empty: nothing any more). What can't be read is kept until
 * the entry is left, and the old figure comes back. */
GtkWidget *sq_length_entry_new (void);

/* Shows @mm; @is_usual: the maker hasn't given it. What is being typed stays. */
void sq_length_entry_show (SqLengthEntry *entry, double mm, const SqLengthStyle *style,
                           gboolean is_usual);
/* What is typed now, if it can be read. */
gboolean sq_length_entry_read (SqLengthEntry *entry, double *mm);
