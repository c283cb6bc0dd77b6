/* SPDX-License-Identifier: GPL-3.0-or-later */
/* An entry for words, or for what a function of its own can read. */
#pragma once

#include <gtk/gtk.h>

#define SQ_TYPE_PLAIN_ENTRY (sq_plain_entry_get_type ())
G_DECLARE_FINAL_TYPE (SqPlainEntry, sq_plain_entry, SQ, PLAIN_ENTRY, GtkEntry)

/* What is wrong with @text, as a sentence; NULL: nothing. Static. */
typedef const char *(*SqTextCheck) (const char *text);

/* Emits "given" (text) when Enter, or going elsewhere, gives another text than is shown, if @check
 * (NULL: anything is fine) has nothing against it; and "mistake" (text: what is wrong; empty:
 * nothing any more). A wrong text is kept until the entry is left, and the old one comes back. */
GtkWidget *sq_plain_entry_new (SqTextCheck check);
/* What is being typed stays. */
void sq_plain_entry_show (SqPlainEntry *entry, const char *text);
/* Takes what is typed now; whether nothing is wrong with it. */
gboolean sq_plain_entry_take (SqPlainEntry *entry);
