/* SPDX-License-Identifier: GPL-3.0-or-later */
/* What entries that read something have in common: what is typed counts when Enter is pressed or
 * the entry is left, Escape brings the old text back, and a mistake is said. */
#pragma once

#include <gtk/gtk.h>

#define SQ_TYPE_TYPED_ENTRY (sq_typed_entry_get_type ())
G_DECLARE_DERIVABLE_TYPE (SqTypedEntry, sq_typed_entry, SQ, TYPED_ENTRY, GtkEntry)

/* Emits "mistake" (text: what is wrong; empty: nothing any more). What is wrong is kept until the
 * entry is left, and the old text comes back. */
struct _SqTypedEntryClass
{
  GtkEntryClass parent_class;

  /* Reads what is typed and gives it to whom it may concern. What is wrong with it, as a static
   * sentence; NULL: nothing. */
  const char *(*give) (SqTypedEntry *entry);
};

/* Takes what is typed now, if anything is; whether nothing is wrong with it. */
gboolean sq_typed_entry_take (SqTypedEntry *entry);
/* Whether the text is another than was shown. */
gboolean sq_typed_entry_is_touched (SqTypedEntry *entry);
/* The text as it was shown; NULL: none was yet. */
const char *sq_typed_entry_get_shown (SqTypedEntry *entry);
/* @text is what is there, from now on; the entry goes on showing what is being typed. */
void sq_typed_entry_set_shown (SqTypedEntry *entry, const char *text);
