/* SPDX-License-Identifier: GPL-3.0-or-later */
/* An entry for words, or for what a function of its own can read. */
#pragma once

#include "window/typed-entry.h"

#define SQ_TYPE_PLAIN_ENTRY (sq_plain_entry_get_type ())
G_DECLARE_FINAL_TYPE (SqPlainEntry, sq_plain_entry, SQ, PLAIN_ENTRY, SqTypedEntry)

/* What is wrong with @text, as a sentence; NULL: nothing. Static. */
typedef const char *(*SqTextCheck) (const char *text);

/* A typed entry that emits "given" (text) when another text than is shown is given, if @check (NULL:
 * anything is fine) has nothing against it. */
GtkWidget *sq_plain_entry_new (SqTextCheck check);
/* What is being typed stays. */
void sq_plain_entry_show (SqPlainEntry *entry, const char *text);
