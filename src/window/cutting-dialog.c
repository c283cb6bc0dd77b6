/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "window/cutting-dialog.h"

#include "plan/plies.h"
#include "window/edit-laying.h"
#include "window/figures.h"
#include "window/form.h"
#include "window/help.h"
#include "window/length-entry.h"
#include "words/cuts-words.h"

#include <glib/gi18n.h>

#define WRAP_CHARS 40

typedef struct
{
  SqDocument *document;
  GtkWidget *cuts, *layers, *table;
} Dialog;

static void
dialog_free (gpointer data)
{
  g_object_unref (((Dialog *) data)->document);
  g_free (data);
}

static gboolean
on_done (gpointer data)
{
  Dialog *dialog = data;
  guint layers = (guint) gtk_spin_button_get_value_as_int (GTK_SPIN_BUTTON (dialog->layers));
  double table_mm;
  if (!sq_length_entry_read (SQ_LENGTH_ENTRY (dialog->table), &table_mm) || table_mm < 0)
    {
      gtk_widget_grab_focus (dialog->table);
      return FALSE;
    }
  sq_edit_cutting (dialog->document,
                   (SqCuts) gtk_drop_down_get_selected (GTK_DROP_DOWN (dialog->cuts)),
                   layers > 1 ? layers : 0, table_mm);
  return TRUE;
}

/* What was typed is what is there from now on. */
static void
on_given (SqLengthEntry *entry, double mm, Dialog *dialog)
{
  SqLengthStyle style = sq_figures_style (sq_document_get_job (dialog->document));
  sq_length_entry_show (entry, mm, &style, FALSE);
}

static void
add (GtkWidget *grid, int row, const char *name, GtkWidget *control)
{
  GtkWidget *label = gtk_label_new_with_mnemonic (name);
  gtk_label_set_xalign (GTK_LABEL (label), 0);
  gtk_widget_set_hexpand (label, TRUE);
  gtk_widget_add_css_class (label, "dim");
  gtk_label_set_mnemonic_widget (GTK_LABEL (label), control);
  gtk_accessible_update_relation (GTK_ACCESSIBLE (control), GTK_ACCESSIBLE_RELATION_LABELLED_BY,
                                  label, NULL, -1);
  gtk_grid_attach (GTK_GRID (grid), label, 0, row, 1, 1);
  gtk_grid_attach (GTK_GRID (grid), control, 1, row, 1, 1);
}

static GtkWidget *
new_cuts (SqCuts now)
{
  const char *names[SQ_N_CUTS + 1] = { NULL };
  for (guint i = 0; i < SQ_N_CUTS; i++)
    names[i] = sq_words_cuts ((SqCuts) i);
  GtkWidget *cuts = gtk_drop_down_new_from_strings (names);
  gtk_drop_down_set_selected (GTK_DROP_DOWN (cuts), now);
  return cuts;
}

static GtkWidget *
new_content (Dialog *dialog, const SqJob *job)
{
  GtkWidget *grid = gtk_grid_new ();
  GtkWidget *words = gtk_label_new (_ ("A lot of like cushions can be cut several layers deep. All "
                                       "layers lie right side up, none longer than the table. No "
                                       "length: the table is as long as it need be."));
  gtk_label_set_wrap (GTK_LABEL (words), TRUE);
  gtk_label_set_xalign (GTK_LABEL (words), 0);
  gtk_label_set_width_chars (GTK_LABEL (words), WRAP_CHARS);
  gtk_label_set_max_width_chars (GTK_LABEL (words), WRAP_CHARS);
  gtk_widget_add_css_class (words, "dim");
  gtk_grid_set_row_spacing (GTK_GRID (grid), 8);
  gtk_grid_set_column_spacing (GTK_GRID (grid), 14);
  dialog->layers = gtk_spin_button_new_with_range (1, SQ_MOST_PLIES, 1);
  gtk_spin_button_set_value (GTK_SPIN_BUTTON (dialog->layers), MAX (job->laying.most_plies, 1));
  dialog->table = sq_length_entry_new ();
  on_given (SQ_LENGTH_ENTRY (dialog->table), job->laying.table_mm, dialog);
  g_signal_connect (dialog->table, "given", G_CALLBACK (on_given), dialog);
  gtk_entry_set_activates_default (GTK_ENTRY (dialog->table), TRUE);
  dialog->cuts = new_cuts (job->laying.cuts);
  add (grid, 0, _ ("_Cuts"), dialog->cuts);
  add (grid, 1, _ ("_Layers at most"), dialog->layers);
  add (grid, 2, _ ("Length of the _table"), dialog->table);
  gtk_grid_attach (GTK_GRID (grid), words, 0, 3, 2, 1);
  return grid;
}

void
sq_cutting_dialog (GtkWindow *parent, SqDocument *document)
{
  Dialog *dialog = g_new0 (Dialog, 1);
  dialog->document = g_object_ref (document);
  GtkWidget *content = new_content (dialog, sq_document_get_job (document));
  GtkWidget *window = sq_form_new (parent, _ ("How cloth is cut"), _ ("C_hange"), content, on_done,
                                   dialog, dialog_free);
  sq_help_on_f1 (window, "roll");
  gtk_window_present (GTK_WINDOW (window));
}
