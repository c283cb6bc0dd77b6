/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "window/plain-entry.h"

struct _SqPlainEntry
{
  GtkEntry parent;
  SqTextCheck check;
  char *shown;
};

G_DEFINE_TYPE (SqPlainEntry, sq_plain_entry, GTK_TYPE_ENTRY)

static guint given_signal, mistake_signal;

static void
say_mistake (SqPlainEntry *entry, const char *mistake)
{
  gboolean is_wrong = mistake != NULL;
  if (is_wrong == gtk_widget_has_css_class (GTK_WIDGET (entry), "error"))
    return;
  if (is_wrong)
    gtk_widget_add_css_class (GTK_WIDGET (entry), "error");
  else
    gtk_widget_remove_css_class (GTK_WIDGET (entry), "error");
  gtk_accessible_update_state (
      GTK_ACCESSIBLE (entry), GTK_ACCESSIBLE_STATE_INVALID,
      is_wrong ? GTK_ACCESSIBLE_INVALID_TRUE : GTK_ACCESSIBLE_INVALID_FALSE, -1);
  gtk_accessible_update_property (GTK_ACCESSIBLE (entry), GTK_ACCESSIBLE_PROPERTY_DESCRIPTION,
                                  is_wrong ? mistake : "", -1);
  g_signal_emit (entry, mistake_signal, 0, is_wrong ? mistake : "");
}

static gboolean
is_touched (SqPlainEntry *entry)
{
  return g_strcmp0 (gtk_editable_get_text (GTK_EDITABLE (entry)), entry->shown) != 0;
}

gboolean
sq_plain_entry_take (SqPlainEntry *entry)
{
  const char *mistake = NULL;
  g_autofree char *text = NULL;
  g_return_val_if_fail (SQ_IS_PLAIN_ENTRY (entry), FALSE);
  if (!is_touched (entry))
    return TRUE;
  text = g_strdup (gtk_editable_get_text (GTK_EDITABLE (entry)));
  if (entry->check != NULL)
    mistake = entry->check (text);
  say_mistake (entry, mistake);
  if (mistake != NULL)
    return FALSE;
  g_free (entry->shown);
  entry->shown = g_strdup (text);
  g_signal_emit (entry, given_signal, 0, text);
  return TRUE;
}

static void
put_back (SqPlainEntry *entry)
{
  say_mistake (entry, NULL);
  if (is_touched (entry))
    gtk_editable_set_text (GTK_EDITABLE (entry), entry->shown);
}

static void
on_activate (SqPlainEntry *entry)
{
  sq_plain_entry_take (entry);
}

static void
on_leave (SqPlainEntry *entry)
{
  sq_plain_entry_take (entry);
  put_back (entry);
}

static gboolean
on_key (GtkEventControllerKey *controller, guint keyval, guint code, GdkModifierType state,
        SqPlainEntry *entry)
{
  (void) controller, (void) code, (void) state;
  if (keyval != GDK_KEY_Escape || !is_touched (entry))
    return GDK_EVENT_PROPAGATE;
  put_back (entry);
  return GDK_EVENT_STOP;
}

void
sq_plain_entry_show (SqPlainEntry *entry, const char *text)
{
  gboolean is_typing;
  g_return_if_fail (SQ_IS_PLAIN_ENTRY (entry) && text != NULL);
  is_typing = is_touched (entry);
  if (strcmp (text, entry->shown) == 0)
    return;
  g_free (entry->shown);
  entry->shown = g_strdup (text);
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
sq_plain_entry_finalize (GObject *object)
{
  g_free (SQ_PLAIN_ENTRY (object)->shown);
  G_OBJECT_CLASS (sq_plain_entry_parent_class)->finalize (object);
}

static void
sq_plain_entry_class_init (SqPlainEntryClass *class)
{
  GType type = G_TYPE_FROM_CLASS (class);
  G_OBJECT_CLASS (class)->finalize = sq_plain_entry_finalize;
  given_signal = g_signal_new ("given", type, G_SIGNAL_RUN_LAST, 0, NULL, NULL, NULL, G_TYPE_NONE,
                               1, G_TYPE_STRING);
  mistake_signal = g_signal_new ("mistake", type, G_SIGNAL_RUN_LAST, 0, NULL, NULL, NULL,
                                 G_TYPE_NONE, 1, G_TYPE_STRING);
}

static void
sq_plain_entry_init (SqPlainEntry *entry)
{
  GtkEventController *focus = gtk_event_controller_focus_new ();
  GtkEventController *key = gtk_event_controller_key_new ();
  entry->shown = g_strdup ("");
  gtk_editable_set_width_chars (GTK_EDITABLE (entry), 8);
  g_signal_connect (entry, "activate", G_CALLBACK (on_activate), NULL);
  g_signal_connect_swapped (focus, "leave", G_CALLBACK (on_leave), entry);
  gtk_event_controller_set_propagation_phase (key, GTK_PHASE_CAPTURE);
  g_signal_connect (key, "key-pressed", G_CALLBACK (on_key), entry);
  gtk_widget_add_controller (GTK_WIDGET (entry), focus);
  gtk_widget_add_controller (GTK_WIDGET (entry), key);
}
