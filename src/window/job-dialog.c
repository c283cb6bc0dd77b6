/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "window/job-dialog.h"

#include "job/names.h"
#include "window/form.h"
#include "words/lengths.h"

#include <glib/gi18n.h>

#define N_UNITS (SQ_UNIT_CM + 1)
#define MOST_LETTERS 3 /* of a revision */

typedef struct
{
  SqDocument *document;
  GtkWidget *title, *customer, *units, *revision, *notes;
} Dialog;

static void
dialog_free (gpointer data)
{
  g_object_unref (((Dialog *) data)->document);
  g_free (data);
}

static const char *
plain (const GRefString *text)
{
  return text != NULL ? text : "";
}

/* --- the end ------------------------------------------------------------------------------- */

/* Puts @text where *@old was; whether it is another one. */
static gboolean
set_text (GRefString **old, const char *text)
{
  if (strcmp (plain (*old), text) == 0)
    return FALSE;
  g_clear_pointer (old, g_ref_string_release);
  if (text[0] != '\0')
    *old = g_ref_string_new (text);
  return TRUE;
}

static char *
notes_text (Dialog *dialog)
{
  GtkTextBuffer *buffer = gtk_text_view_get_buffer (GTK_TEXT_VIEW (dialog->notes));
  GtkTextIter start, end;
  gtk_text_buffer_get_bounds (buffer, &start, &end);
  return gtk_text_buffer_get_text (buffer, &start, &end, FALSE);
}

/* What is left of nothing is the old one. */
static gboolean
set_revision (guint *old, const char *name)
{
  guint revision = sq_revision_of_name (name);
  if (revision == 0 || revision == *old)
    return FALSE;
  *old = revision;
  return TRUE;
}

static gboolean
on_done (gpointer data)
{
  Dialog *dialog = data;
  g_autoptr (SqJob) job = sq_job_dup (sq_document_get_job (dialog->document));
  g_autofree char *notes = notes_text (dialog);
  SqUnit units = (SqUnit) gtk_drop_down_get_selected (GTK_DROP_DOWN (dialog->units));
  gboolean is_changed = units != job->units;
  is_changed |= set_text (&job->title, gtk_editable_get_text (GTK_EDITABLE (dialog->title)));
  is_changed |= set_text (&job->customer, gtk_editable_get_text (GTK_EDITABLE (dialog->customer)));
  is_changed |= set_text (&job->notes, notes);
  is_changed |= set_revision (&job->revision,
                              gtk_editable_get_text (GTK_EDITABLE (dialog->revision)));
  if (units != job->units)
    job->given |= SQ_GIVEN_UNITS;
  job->units = units;
  if (is_changed)
    sq_document_edit (dialog->document, job, _ ("Job details"), NULL);
  return TRUE;
}

/* --- making -------------------------------------------------------------------------------- */

/* @control (taken) in a row of its own, with @name before it. */
static void
add (GtkGrid *grid, int row, const char *name, GtkWidget *control, GtkWidget *named)
{
  GtkWidget *label = gtk_label_new_with_mnemonic (name);
  gtk_label_set_xalign (GTK_LABEL (label), 0);
  gtk_widget_set_valign (label, control == named ? GTK_ALIGN_CENTER : GTK_ALIGN_START);
  gtk_widget_add_css_class (label, "dim");
  gtk_label_set_mnemonic_widget (GTK_LABEL (label), named);
  gtk_accessible_update_relation (GTK_ACCESSIBLE (named), GTK_ACCESSIBLE_RELATION_LABELLED_BY,
                                  label, NULL, -1);
  gtk_widget_set_hexpand (control, TRUE);
  gtk_grid_attach (grid, label, 0, row, 1, 1);
  gtk_grid_attach (grid, control, 1, row, 1, 1);
}

/* Enter in it accepts the dialog. */
static GtkWidget *
new_entry (const char *text)
{
  GtkWidget *entry = gtk_entry_new ();
  gtk_editable_set_text (GTK_EDITABLE (entry), plain (text));
  gtk_editable_set_width_chars (GTK_EDITABLE (entry), 28);
  gtk_entry_set_activates_default (GTK_ENTRY (entry), TRUE);
  return entry;
}

static GtkWidget *
new_units (SqUnit now)
{
  const char *names[N_UNITS + 1] = { NULL };
  for (guint i = 0; i < N_UNITS; i++)
    names[i] = sq_words_unit ((SqUnit) i);
  GtkWidget *units = gtk_drop_down_new_from_strings (names);
  gtk_drop_down_set_selected (GTK_DROP_DOWN (units), now);
  return units;
}

/* Only letters get in, as capitals. */
static void
on_insert (GtkEditable *text, const char *inserted, int length, int *position)
{
  g_autofree char *typed = g_strndup (inserted, length < 0 ? strlen (inserted) : (gsize) length);
  g_autoptr (GString) letters = g_string_new (NULL);
  for (const char *c = typed; *c != '\0'; c++)
    if (g_ascii_isalpha (*c))
      g_string_append_c (letters, g_ascii_toupper (*c));
  if (strcmp (letters->str, typed) == 0)
    return;
  g_signal_stop_emission_by_name (text, "insert-text");
  if (letters->len > 0)
    gtk_editable_insert_text (text, letters->str, (int) letters->len, position);
}

static GtkWidget *
new_revision (guint revision)
{
  g_autofree char *name = sq_revision_name (revision);
  GtkWidget *entry = new_entry (name);
  gtk_editable_set_width_chars (GTK_EDITABLE (entry), 4);
  gtk_editable_set_max_width_chars (GTK_EDITABLE (entry), 4);
  gtk_entry_set_max_length (GTK_ENTRY (entry), MOST_LETTERS);
  gtk_widget_set_halign (entry, GTK_ALIGN_START);
  gtk_widget_set_tooltip_text (
      entry, _ ("Stands on every sheet: the next letter when the job changes after printing"));
  g_signal_connect (gtk_editable_get_delegate (GTK_EDITABLE (entry)), "insert-text",
                    G_CALLBACK (on_insert), NULL);
  return entry;
}

/* Tab goes on from it, as from any other field. */
static GtkWidget *
new_notes (const GRefString *text)
{
  GtkWidget *notes = gtk_text_view_new ();
  gtk_text_buffer_set_text (gtk_text_view_get_buffer (GTK_TEXT_VIEW (notes)), plain (text), -1);
  gtk_text_view_set_wrap_mode (GTK_TEXT_VIEW (notes), GTK_WRAP_WORD_CHAR);
  gtk_text_view_set_accepts_tab (GTK_TEXT_VIEW (notes), FALSE);
  return notes;
}

static GtkWidget *
new_content (Dialog *dialog, const SqJob *job)
{
  GtkWidget *grid = gtk_grid_new (), *scrolled = gtk_scrolled_window_new ();
  gtk_grid_set_row_spacing (GTK_GRID (grid), 8);
  gtk_grid_set_column_spacing (GTK_GRID (grid), 14);
  dialog->title = new_entry (job->title);
  dialog->customer = new_entry (job->customer);
  dialog->units = new_units (job->units);
  dialog->revision = new_revision (job->revision);
  dialog->notes = new_notes (job->notes);
  gtk_scrolled_window_set_child (GTK_SCROLLED_WINDOW (scrolled), dialog->notes);
  gtk_scrolled_window_set_min_content_height (GTK_SCROLLED_WINDOW (scrolled), 110);
  gtk_widget_add_css_class (scrolled, "field");
  add (GTK_GRID (grid), 0, _ ("_Title"), dialog->title, dialog->title);
  add (GTK_GRID (grid), 1, _ ("C_ustomer"), dialog->customer, dialog->customer);
  add (GTK_GRID (grid), 2, _ ("_Lengths in"), dialog->units, dialog->units);
  add (GTK_GRID (grid), 3, _ ("_Revision"), dialog->revision, dialog->revision);
  add (GTK_GRID (grid), 4, _ ("_Notes"), scrolled, dialog->notes);
  return grid;
}

void
sq_job_dialog (GtkWindow *parent, SqDocument *document)
{
  Dialog *dialog = g_new0 (Dialog, 1);
  dialog->document = g_object_ref (document);
  GtkWidget *content = new_content (dialog, sq_document_get_job (document));
  GtkWidget *window = sq_form_new (parent, _ ("Job"), _ ("C_hange"), content, on_done, dialog,
                                   dialog_free);
  gtk_window_present (GTK_WINDOW (window));
}
