/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "window/stock-dialog.h"

#include "window/edit-laying.h"
#include "window/figures.h"
#include "window/form.h"
#include "window/help.h"
#include "window/length-entry.h"
#include "words/names.h"

#include <glib/gi18n.h>

#define WRAP_CHARS 48

/* Room for some pieces; more are scrolled to (pixels). */
#define ROWS_HEIGHT 120

/* One piece of cloth. */
typedef struct
{
  SqStock stock;
  GtkWidget *box, *kind, *length, *width;
} Row;

typedef struct
{
  SqDocument *document;
  SqId cloth;
  GPtrArray *rows; /* of Row */
  GtkWidget *list, *mistake;
} Dialog;

static void
dialog_free (gpointer data)
{
  Dialog *dialog = data;
  g_object_unref (dialog->document);
  g_ptr_array_unref (dialog->rows);
  g_free (dialog);
}

static const SqCloth *
cloth_of (Dialog *dialog)
{
  return sq_job_cloth (sq_document_get_job (dialog->document), dialog->cloth);
}

/* --- the end --------------------------------------------------------------------------------- */

/* What is typed in @row; FALSE where that is no size. */
static gboolean
read_row (Dialog *dialog, Row *row, SqStock *stock)
{
  *stock = row->stock;
  stock->kind = (SqStockKind) gtk_drop_down_get_selected (GTK_DROP_DOWN (row->kind));
  if (!sq_length_entry_read (SQ_LENGTH_ENTRY (row->length), &stock->length_mm)
      || !sq_length_entry_read (SQ_LENGTH_ENTRY (row->width), &stock->width_mm))
    return FALSE;
  if (stock->width_mm == cloth_of (dialog)->width_mm)
    stock->width_mm = 0;
  return stock->length_mm > 0 && stock->width_mm >= 0;
}

static gboolean
on_done (gpointer data)
{
  Dialog *dialog = data;
  g_autoptr (GArray) stock = g_array_new (FALSE, FALSE, sizeof (SqStock));
  if (cloth_of (dialog) == NULL)
    return TRUE;
  for (guint i = 0; i < dialog->rows->len; i++)
    {
      Row *row = g_ptr_array_index (dialog->rows, i);
      SqStock own;
      if (!read_row (dialog, row, &own))
        {
          gtk_label_set_text (GTK_LABEL (dialog->mistake),
                              _ ("Each piece needs a length: type one, or remove the piece."));
          gtk_widget_set_visible (dialog->mistake, TRUE);
          gtk_widget_grab_focus (row->length);
          return FALSE;
        }
      g_array_append_val (stock, own);
    }
  sq_edit_stock (dialog->document, dialog->cloth, stock);
  return TRUE;
}

/* --- rows ------------------------------------------------------------------------------------ */

static void
on_remove (GtkButton *button, Dialog *dialog)
{
  Row *row = g_object_get_data (G_OBJECT (button), "row");
  gtk_box_remove (GTK_BOX (dialog->list), row->box);
  g_ptr_array_remove (dialog->rows, row);
}

/* What was typed is what is there from now on. */
static void
on_given (SqLengthEntry *entry, double mm, Dialog *dialog)
{
  SqLengthStyle style = sq_figures_style (sq_document_get_job (dialog->document));
  sq_length_entry_show (entry, mm, &style, FALSE);
}

static GtkWidget *
new_length (Dialog *dialog, double mm, const char *name)
{
  GtkWidget *entry = sq_length_entry_new ();
  on_given (SQ_LENGTH_ENTRY (entry), mm, dialog);
  g_signal_connect (entry, "given", G_CALLBACK (on_given), dialog);
  gtk_editable_set_width_chars (GTK_EDITABLE (entry), 8);
  gtk_entry_set_activates_default (GTK_ENTRY (entry), TRUE);
  gtk_entry_set_placeholder_text (GTK_ENTRY (entry), name);
  gtk_accessible_update_property (GTK_ACCESSIBLE (entry), GTK_ACCESSIBLE_PROPERTY_LABEL, name, -1);
  return entry;
}

static Row *
add_row (Dialog *dialog, const SqStock *stock)
{
  const char *kinds[] = { _ ("Bolt"), _ ("Remnant"), NULL };
  double width_mm = stock->width_mm > 0 ? stock->width_mm : cloth_of (dialog)->width_mm;
  Row *row = g_new0 (Row, 1);
  GtkWidget *remove = gtk_button_new_from_icon_name ("list-remove-symbolic");
  row->stock = *stock;
  row->box = gtk_box_new (GTK_ORIENTATION_HORIZONTAL, 8);
  row->kind = gtk_drop_down_new_from_strings (kinds);
  gtk_drop_down_set_selected (GTK_DROP_DOWN (row->kind), stock->kind);
  gtk_accessible_update_property (GTK_ACCESSIBLE (row->kind), GTK_ACCESSIBLE_PROPERTY_LABEL,
                                  _ ("What it is"), -1);
  row->length = new_length (dialog, stock->length_mm, _ ("Length along the roll"));
  row->width = new_length (dialog, width_mm, _ ("Width across"));
  gtk_widget_set_tooltip_text (remove, _ ("Remove this piece"));
  gtk_accessible_update_property (GTK_ACCESSIBLE (remove), GTK_ACCESSIBLE_PROPERTY_LABEL,
                                  _ ("Remove this piece"), -1);
  gtk_widget_add_css_class (remove, "flat");
  g_object_set_data (G_OBJECT (remove), "row", row);
  g_signal_connect (remove, "clicked", G_CALLBACK (on_remove), dialog);
  gtk_widget_set_hexpand (row->kind, TRUE);
  gtk_box_append (GTK_BOX (row->box), row->kind);
  gtk_box_append (GTK_BOX (row->box), row->length);
  gtk_box_append (GTK_BOX (row->box), gtk_label_new ("×"));
  gtk_box_append (GTK_BOX (row->box), row->width);
  gtk_box_append (GTK_BOX (row->box), remove);
  gtk_box_append (GTK_BOX (dialog->list), row->box);
  g_ptr_array_add (dialog->rows, row);
  return row;
}

static void
on_add (Dialog *dialog)
{
  Row *row = add_row (dialog, &(SqStock){ .kind = SQ_STOCK_REMNANT });
  sq_typed_entry_set_shown (SQ_TYPED_ENTRY (row->length), "");
  gtk_editable_set_text (GTK_EDITABLE (row->length), "");
  gtk_widget_grab_focus (row->length);
}

/* --- making ---------------------------------------------------------------------------------- */

static GtkWidget *
new_words (const char *text)
{
  GtkWidget *words = gtk_label_new (text);
  gtk_label_set_wrap (GTK_LABEL (words), TRUE);
  gtk_label_set_xalign (GTK_LABEL (words), 0);
  gtk_label_set_width_chars (GTK_LABEL (words), WRAP_CHARS);
  gtk_label_set_max_width_chars (GTK_LABEL (words), WRAP_CHARS);
  return words;
}

static GtkWidget *
new_content (Dialog *dialog)
{
  GtkWidget *box = gtk_box_new (GTK_ORIENTATION_VERTICAL, 10);
  GtkWidget *add = sq_form_button (_ ("_Add a piece"));
  GtkWidget *words = new_words (_ ("What is there is used up before cloth is bought: remnants "
                                   "first, then bolts, in this order. Square the near corner of a "
                                   "patterned piece so that a repeat begins there."));
  const SqCloth *cloth = cloth_of (dialog);
  dialog->list = gtk_box_new (GTK_ORIENTATION_VERTICAL, 6);
  gtk_widget_set_size_request (dialog->list, -1, ROWS_HEIGHT);
  dialog->mistake = new_words ("");
  gtk_widget_add_css_class (words, "dim");
  gtk_widget_add_css_class (dialog->mistake, "error");
  gtk_widget_set_visible (dialog->mistake, FALSE);
  gtk_widget_set_halign (add, GTK_ALIGN_START);
  g_signal_connect_swapped (add, "clicked", G_CALLBACK (on_add), dialog);
  gtk_box_append (GTK_BOX (box), words);
  gtk_box_append (GTK_BOX (box), dialog->list);
  gtk_box_append (GTK_BOX (box), add);
  gtk_box_append (GTK_BOX (box), dialog->mistake);
  for (guint i = 0; i < cloth->stock->len; i++)
    add_row (dialog, sq_cloth_stock (cloth, i));
  return box;
}

void
sq_stock_dialog (GtkWindow *parent, SqDocument *document, SqId cloth)
{
  const SqCloth *own = sq_job_cloth (sq_document_get_job (document), cloth);
  g_return_if_fail (own != NULL);
  Dialog *dialog = g_new0 (Dialog, 1);
  g_autofree char *name = sq_words_cloth (own);
  g_autofree char *title = g_strdup_printf (_ ("%s at hand"), name);
  dialog->document = g_object_ref (document);
  dialog->cloth = cloth;
  dialog->rows = g_ptr_array_new_with_free_func (g_free);
  GtkWidget *content = new_content (dialog);
  GtkWidget *window = sq_form_new (parent, title, _ ("C_hange"), content, on_done, dialog,
                                   dialog_free);
  sq_help_on_f1 (window, "roll");
  if (dialog->rows->len == 0)
    on_add (dialog);
  gtk_window_present (GTK_WINDOW (window));
}
