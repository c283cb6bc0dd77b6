/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "window/length-entry.h"

#include "window/figures.h"
#include "window/look.h"

struct _SqLengthEntry
{
  GtkEntry parent;
  SqLengthStyle style;
  double mm;   /* the length as it is … */
  char *shown; /* … and its text, which may be rounded */
};

G_DEFINE_TYPE (SqLengthEntry, sq_length_entry, GTK_TYPE_ENTRY)

static guint given_signal, mistake_signal;

static void
say_mistake (SqLengthEntry *entry, SqLengthResult result)
{
  gboolean is_wrong = result != SQ_LENGTH_OK;
  const char *text = sq_figures_mistake (result);
  if (is_wrong == gtk_widget_has_css_class (GTK_WIDGET (entry), "error"))
    return;
  if (is_wrong)
    gtk_widget_add_css_class (GTK_WIDGET (entry), "error");
  else
    gtk_widget_remove_css_class (GTK_WIDGET (entry), "error");
  gtk_accessible_update_state (
      GTK_ACCESSIBLE (entry), GTK_ACCESSIBLE_STATE_INVALID,
      is_wrong ? GTK_ACCESSIBLE_INVALID_TRUE : GTK_ACCESSIBLE_INVALID_FALSE, -1);
  gtk_accessible_update_property (GTK_ACCESSIBLE (entry), GTK_ACCESSIBLE_PROPERTY_DESCRIPTION, text,
                                  -1);
  g_signal_emit (entry, mistake_signal, 0, text);
}

static void
set_text (SqLengthEntry *entry, const char *text)
{
  gtk_editable_set_text (GTK_EDITABLE (entry), text);
  gtk_editable_set_position (GTK_EDITABLE (entry), -1);
}

static void
on_changed (SqLengthEntry *entry)
{
  const char *text = gtk_editable_get_text (GTK_EDITABLE (entry));
  g_autoptr (PangoAttrList) list = sq_look_figures (GTK_WIDGET (entry), text);
  gtk_entry_set_attributes (GTK_ENTRY (entry), list);
}

static SqLengthResult
parse (SqLengthEntry *entry, double *mm)
{
  return sq_length_parse (gtk_editable_get_text (GTK_EDITABLE (entry)), entry->style.unit,
                          entry->style.decimal, mm, NULL);
}

static gboolean
is_touched (SqLengthEntry *entry)
{
  return g_strcmp0 (gtk_editable_get_text (GTK_EDITABLE (entry)), entry->shown) != 0;
}

gboolean
sq_length_entry_read (SqLengthEntry *entry, double *mm)
{
  if (entry->shown != NULL && !is_touched (entry))
    {
      *mm = entry->mm;
      return TRUE;
    }
  return parse (entry, mm) == SQ_LENGTH_OK;
}

static void
take (SqLengthEntry *entry)
{
  double mm = 0;
  SqLengthResult result;
  if (!is_touched (entry))
    return;
  result = parse (entry, &mm);
  say_mistake (entry, result);
  if (result == SQ_LENGTH_OK)
    g_signal_emit (entry, given_signal, 0, mm);
}

static void
put_back (SqLengthEntry *entry)
{
  say_mistake (entry, SQ_LENGTH_OK);
  if (is_touched (entry))
    set_text (entry, entry->shown != NULL ? entry->shown : "");
}

static void
on_leave (SqLengthEntry *entry)
{
  take (entry);
  put_back (entry);
}

static gboolean
on_key (GtkEventControllerKey *controller, guint keyval, guint code, GdkModifierType state,
        SqLengthEntry *entry)
{
  (void) controller, (void) code, (void) state;
  if (keyval != GDK_KEY_Escape || !is_touched (entry))
    return GDK_EVENT_PROPAGATE;
  put_back (entry);
  return GDK_EVENT_STOP;
}

void
sq_length_entry_show (SqLengthEntry *entry, double mm, const SqLengthStyle *style,
                      gboolean is_usual)
{
  g_autofree char *text = sq_length_format (mm, style);
  gboolean is_typing = is_touched (entry) && entry->shown != NULL;
  g_return_if_fail (SQ_IS_LENGTH_ENTRY (entry));
  entry->style = *style;
  entry->mm = mm;
  if (is_usual)
    gtk_widget_add_css_class (GTK_WIDGET (entry), "usual");
  else
    gtk_widget_remove_css_class (GTK_WIDGET (entry), "usual");
  if (g_strcmp0 (text, entry->shown) == 0)
    return;
  g_free (entry->shown);
  entry->shown = g_steal_pointer (&text);
  if (!is_typing || sq_length_entry_read (entry, &mm))
    set_text (entry, entry->shown);
}

GtkWidget *
sq_length_entry_new (void)
{
  return g_object_new (SQ_TYPE_LENGTH_ENTRY, NULL);
}

static void
sq_length_entry_finalize (GObject *object)
{
  g_free (SQ_LENGTH_ENTRY (object)->shown);
  G_OBJECT_CLASS (sq_length_entry_parent_class)->finalize (object);
}

static void
sq_length_entry_class_init (SqLengthEntryClass *class)
{
  GType type = G_TYPE_FROM_CLASS (class);
  G_OBJECT_CLASS (class)->finalize = sq_length_entry_finalize;
  given_signal = g_signal_new ("given", type, G_SIGNAL_RUN_LAST, 0, NULL, NULL, NULL, G_TYPE_NONE,
                               1, G_TYPE_DOUBLE);
  mistake_signal = g_signal_new ("mistake", type, G_SIGNAL_RUN_LAST, 0, NULL, NULL, NULL,
                                 G_TYPE_NONE, 1, G_TYPE_STRING);
}

static void
sq_length_entry_init (SqLengthEntry *entry)
{
  GtkEventController *focus = gtk_event_controller_focus_new ();
  GtkEventController *key = gtk_event_controller_key_new ();
  entry->style = sq_length_style_default (SQ_UNIT_MM);
  sq_look_set_figures (GTK_WIDGET (entry));
  gtk_editable_set_width_chars (GTK_EDITABLE (entry), 8);
  gtk_editable_set_max_width_chars (GTK_EDITABLE (entry), 8);
  g_signal_connect (entry, "changed", G_CALLBACK (on_changed), NULL);
  g_signal_connect (entry, "activate", G_CALLBACK (take), NULL);
  g_signal_connect_swapped (focus, "leave", G_CALLBACK (on_leave), entry);
  gtk_event_controller_set_propagation_phase (key, GTK_PHASE_CAPTURE);
  g_signal_connect (key, "key-pressed", G_CALLBACK (on_key), entry);
  gtk_widget_add_controller (GTK_WIDGET (entry), focus);
  gtk_widget_add_controller (GTK_WIDGET (entry), key);
}
