/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "window/length-entry.h"

#include "window/figures.h"
#include "window/look.h"

struct _SqLengthEntry
{
  SqTypedEntry parent;
  SqLengthStyle style;
  double mm; /* the length as it is; its text may be rounded */
};

G_DEFINE_TYPE (SqLengthEntry, sq_length_entry, SQ_TYPE_TYPED_ENTRY)

static guint given_signal;

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

gboolean
sq_length_entry_read (SqLengthEntry *entry, double *mm)
{
  if (!sq_typed_entry_is_touched (SQ_TYPED_ENTRY (entry)))
    {
      *mm = entry->mm;
      return TRUE;
    }
  return parse (entry, mm) == SQ_LENGTH_OK;
}

static const char *
sq_length_entry_give (SqTypedEntry *typed)
{
  double mm = 0;
  SqLengthResult result = parse (SQ_LENGTH_ENTRY (typed), &mm);
  if (result != SQ_LENGTH_OK)
    return sq_figures_mistake (result);
  g_signal_emit (typed, given_signal, 0, mm);
  return NULL;
}

void
sq_length_entry_show (SqLengthEntry *entry, double mm, const SqLengthStyle *style,
                      gboolean is_usual)
{
  SqTypedEntry *typed = SQ_TYPED_ENTRY (entry);
  g_autofree char *text = sq_length_format (mm, style);
  const char *shown = sq_typed_entry_get_shown (typed);
  gboolean is_typing = sq_typed_entry_is_touched (typed) && shown != NULL;
  g_return_if_fail (SQ_IS_LENGTH_ENTRY (entry));
  entry->style = *style;
  entry->mm = mm;
  if (is_usual)
    gtk_widget_add_css_class (GTK_WIDGET (entry), "usual");
  else
    gtk_widget_remove_css_class (GTK_WIDGET (entry), "usual");
  if (g_strcmp0 (text, shown) == 0)
    return;
  sq_typed_entry_set_shown (typed, text);
  if (!is_typing || sq_length_entry_read (entry, &mm))
    set_text (entry, text);
}

GtkWidget *
sq_length_entry_new (void)
{
  return g_object_new (SQ_TYPE_LENGTH_ENTRY, NULL);
}

static void
sq_length_entry_class_init (SqLengthEntryClass *class)
{
  SQ_TYPED_ENTRY_CLASS (class)->give = sq_length_entry_give;
  given_signal = g_signal_new ("given", G_TYPE_FROM_CLASS (class), G_SIGNAL_RUN_LAST, 0, NULL, NULL,
                               NULL, G_TYPE_NONE, 1, G_TYPE_DOUBLE);
}

static void
sq_length_entry_init (SqLengthEntry *entry)
{
  entry->style = sq_length_style_default (SQ_UNIT_MM);
  sq_look_set_figures (GTK_WIDGET (entry));
  gtk_editable_set_max_width_chars (GTK_EDITABLE (entry), 8);
  g_signal_connect (entry, "changed", G_CALLBACK (on_changed), NULL);
}
