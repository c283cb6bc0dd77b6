/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "window/plain-entry.h"

struct _SqPlainEntry
{
  SqTypedEntry parent;
  SqTextCheck check;
};

G_DEFINE_TYPE (SqPlainEntry, sq_plain_entry, SQ_TYPE_TYPED_ENTRY)

static guint given_signal;

static const char *
sq_plain_entry_give (SqTypedEntry *typed)
{
  SqPlainEntry *entry = SQ_PLAIN_ENTRY (typed);
  g_autofree char *text = g_strdup (gtk_editable_get_text (GTK_EDITABLE (entry)));
  const char *mistake = entry->check != NULL ? entry->check (text) : NULL;
  if (mistake != NULL)
    return mistake;
  sq_typed_entry_set_shown (typed, text);
  g_signal_emit (entry, given_signal, 0, text);
  return NULL;
}

void
sq_plain_entry_show (SqPlainEntry *entry, const char *text)
{
  SqTypedEntry *typed = SQ_TYPED_ENTRY (entry);
  gboolean is_typing;
  g_return_if_fail (SQ_IS_PLAIN_ENTRY (entry) && text != NULL);
  is_typing = sq_typed_entry_is_touched (typed);
  if (strcmp (text, sq_typed_entry_get_shown (typed)) == 0)
    return;
  sq_typed_entry_set_shown (typed, text);
  if (!is_typing)
    gtk_editable_set_text (GTK_EDITABLE (entry), text);
}

GtkWidget *
sq_plain_entry_new (SqTextCheck check)
{
  SqPlainEntry *entry = g_object_new (SQ_TYPE_PLAIN_ENTRY, NULL);
  entry->check = check;
  return GTK_WIDGET (entry);
}

static void
sq_plain_entry_class_init (SqPlainEntryClass *class)
{
  SQ_TYPED_ENTRY_CLASS (class)->give = sq_plain_entry_give;
  given_signal = g_signal_new ("given", G_TYPE_FROM_CLASS (class), G_SIGNAL_RUN_LAST, 0, NULL, NULL,
                               NULL, G_TYPE_NONE, 1, G_TYPE_STRING);
}

static void
sq_plain_entry_init (SqPlainEntry *entry)
{
  sq_typed_entry_set_shown (SQ_TYPED_ENTRY (entry), "");
}
