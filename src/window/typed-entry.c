/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "window/typed-entry.h"

typedef struct
{
  char *shown;
} SqTypedEntryPrivate;

G_DEFINE_ABSTRACT_TYPE_WITH_PRIVATE (SqTypedEntry, sq_typed_entry, GTK_TYPE_ENTRY)

static guint mistake_signal;

static SqTypedEntryPrivate *
get (SqTypedEntry *entry)
{
  return sq_typed_entry_get_instance_private (entry);
}

static void
say_mistake (SqTypedEntry *entry, const char *mistake)
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

gboolean
sq_typed_entry_is_touched (SqTypedEntry *entry)
{
  return g_strcmp0 (gtk_editable_get_text (GTK_EDITABLE (entry)), get (entry)->shown) != 0;
}

const char *
sq_typed_entry_get_shown (SqTypedEntry *entry)
{
  return get (entry)->shown;
}

void
sq_typed_entry_set_shown (SqTypedEntry *entry, const char *text)
{
  SqTypedEntryPrivate *p = get (entry);
  char *old = p->shown;
  p->shown = g_strdup (text);
  g_free (old);
}

gboolean
sq_typed_entry_take (SqTypedEntry *entry)
{
  const char *mistake;
  g_return_val_if_fail (SQ_IS_TYPED_ENTRY (entry), FALSE);
  if (!sq_typed_entry_is_touched (entry))
    return TRUE;
  mistake = SQ_TYPED_ENTRY_GET_CLASS (entry)->give (entry);
  say_mistake (entry, mistake);
  return mistake == NULL;
}

static void
put_back (SqTypedEntry *entry)
{
  const char *shown = get (entry)->shown;
  say_mistake (entry, NULL);
  if (!sq_typed_entry_is_touched (entry))
    return;
  gtk_editable_set_text (GTK_EDITABLE (entry), shown != NULL ? shown : "");
  gtk_editable_set_position (GTK_EDITABLE (entry), -1);
}

static void
on_activate (SqTypedEntry *entry)
{
  sq_typed_entry_take (entry);
}

static void
on_leave (SqTypedEntry *entry)
{
  sq_typed_entry_take (entry);
  put_back (entry);
}

static gboolean
on_key (GtkEventControllerKey *controller, guint keyval, guint code, GdkModifierType state,
        SqTypedEntry *entry)
{
  (void) controller, (void) code, (void) state;
  if (keyval != GDK_KEY_Escape || !sq_typed_entry_is_touched (entry))
    return GDK_EVENT_PROPAGATE;
  put_back (entry);
  return GDK_EVENT_STOP;
}

static void
sq_typed_entry_finalize (GObject *object)
{
  g_free (get (SQ_TYPED_ENTRY (object))->shown);
  G_OBJECT_CLASS (sq_typed_entry_parent_class)->finalize (object);
}

static void
sq_typed_entry_class_init (SqTypedEntryClass *class)
{
  G_OBJECT_CLASS (class)->finalize = sq_typed_entry_finalize;
  mistake_signal = g_signal_new ("mistake", G_TYPE_FROM_CLASS (class), G_SIGNAL_RUN_LAST, 0, NULL,
                                 NULL, NULL, G_TYPE_NONE, 1, G_TYPE_STRING);
}

static void
sq_typed_entry_init (SqTypedEntry *entry)
{
  GtkEventController *focus = gtk_event_controller_focus_new ();
  GtkEventController *key = gtk_event_controller_key_new ();
  gtk_editable_set_width_chars (GTK_EDITABLE (entry), 8);
  g_signal_connect (entry, "activate", G_CALLBACK (on_activate), NULL);
  g_signal_connect_swapped (focus, "leave", G_CALLBACK (on_leave), entry);
  gtk_event_controller_set_propagation_phase (key, GTK_PHASE_CAPTURE);
  g_signal_connect (key, "key-pressed", G_CALLBACK (on_key), entry);
  gtk_widget_add_controller (GTK_WIDGET (entry), focus);
  gtk_widget_add_controller (GTK_WIDGET (entry), key);
}
