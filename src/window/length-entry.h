/* SPDX-License-Identifier: GPL-3.0-or-later */
/* An entry for a length, typed as makers write them. */
#pragma once

#include "base/length.h"
#include "window/typed-entry.h"

#define SQ_TYPE_LENGTH_ENTRY (sq_length_entry_get_type ())
G_DECLARE_FINAL_TYPE (SqLengthEntry, sq_length_entry, SQ, LENGTH_ENTRY, SqTypedEntry)

/* A typed entry that emits "given" (double: mm) when another length than is shown is given. */
GtkWidget *sq_length_entry_new (void);

/* Shows @mm; @is_usual: the maker hasn't given it. What is being typed stays. */
void sq_length_entry_show (SqLengthEntry *entry, double mm, const SqLengthStyle *style,
                           gboolean is_usual);
/* What is typed now, if it can be read. */
gboolean sq_length_entry_read (SqLengthEntry *entry, double *mm);
