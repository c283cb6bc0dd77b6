/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "window/shelf-dialog.h"

#include "exchange/cloth-shelf.h"
#include "window/cloth-item.h"
#include "window/dialogs.h"
#include "window/form.h"

#include <glib/gi18n.h>

typedef struct
{
  GtkWidget *window;
  SqDocument *document;
  SqId cushion;
  SqChoiceValue value;
  GListStore *cloths; /* of SqClothItem */
  GtkSingleSelection *chosen;
  GtkWidget *list, *none, *away;
} Dialog;

static void
dialog_free (gpointer data)
{
  Dialog *dialog = data;
  g_object_unref (dialog->document);
  g_object_unref (dialog->chosen);
  g_object_unref (dialog->cloths);
  g_free (dialog);
}

static const SqCloth *
chosen_cloth (Dialog *dialog)
{
  SqClothItem *item = gtk_single_selection_get_selected_item (dialog->chosen);
  return item != NULL ? sq_cloth_item_cloth (item) : NULL;
}

static gboolean
on_done (gpointer data)
{
  Dialog *dialog = data;
  const SqCloth *cloth = chosen_cloth (dialog);
  g_autoptr (SqCloth) own = cloth != NULL ? sq_cloth_dup (cloth) : NULL;
  if (own == NULL)
    return TRUE;
  own->id = 0; /* it gets one of the job's */
  sq_edit_cloth (dialog->document, own, dialog->cushion, &dialog->value);
  return TRUE;
}

static void
on_activate (Dialog *dialog)
{
  on_done (dialog);
  gtk_window_destroy (GTK_WINDOW (dialog->window));
}

static void
show_number (Dialog *dialog)
{
  gboolean has_cloths = g_list_model_get_n_items (G_LIST_MODEL (dialog->cloths)) > 0;
  gtk_widget_set_visible (dialog->list, has_cloths);
  gtk_widget_set_visible (dialog->none, !has_cloths);
  gtk_widget_set_sensitive (dialog->away, has_cloths);
  gtk_widget_set_sensitive (gtk_window_get_default_widget (GTK_WINDOW (dialog->window)),
                            has_cloths);
}

static void
on_away (Dialog *dialog)
{
  const SqCloth *cloth = chosen_cloth (dialog);
  g_autofree char *path = sq_cloth_shelf_path ();
  g_autoptr (GFile) file = g_file_new_for_path (path);
  g_autoptr (GError) error = NULL;
  if (cloth == NULL)
    return;
  if (sq_cloth_shelf_take_off (path, cloth->name, &error))
    g_list_store_remove (dialog->cloths, gtk_single_selection_get_selected (dialog->chosen));
  else
    sq_dialog_failed (GTK_WINDOW (dialog->window), file, TRUE, error);
  show_number (dialog);
}

static GtkWidget *
new_content (Dialog *dialog)
{
  GtkWidget *box = gtk_box_new (GTK_ORIENTATION_VERTICAL, 8);
  GtkSelectionModel *model = GTK_SELECTION_MODEL (g_object_ref (dialog->chosen));
  dialog->list = gtk_list_view_new (model, sq_cloth_item_factory (0));
  dialog->none = gtk_label_new (
      _ ("Nothing is on the shelf yet. A cloth comes here where “Keep it on the shelf” is "
         "ticked."));
  dialog->away = sq_form_button (_ ("Take _off the shelf"));
  gtk_label_set_wrap (GTK_LABEL (dialog->none), TRUE);
  gtk_label_set_max_width_chars (GTK_LABEL (dialog->none), 36);
  gtk_widget_set_size_request (dialog->list, 300, -1);
  gtk_widget_set_halign (dialog->away, GTK_ALIGN_START);
  gtk_accessible_update_property (GTK_ACCESSIBLE (dialog->list), GTK_ACCESSIBLE_PROPERTY_LABEL,
                                  _ ("Cloths on the shelf"), -1);
  g_signal_connect_swapped (dialog->list, "activate", G_CALLBACK (on_activate), dialog);
  g_signal_connect_swapped (dialog->away, "clicked", G_CALLBACK (on_away), dialog);
  gtk_box_append (GTK_BOX (box), dialog->list);
  gtk_box_append (GTK_BOX (box), dialog->none);
  gtk_box_append (GTK_BOX (box), dialog->away);
  return box;
}

void
sq_shelf_dialog (GtkWindow *parent, SqDocument *document, SqId cushion, SqChoiceValue value)
{
  Dialog *dialog;
  g_autofree char *path = sq_cloth_shelf_path ();
  g_autoptr (GFile) file = g_file_new_for_path (path);
  g_autoptr (GError) error = NULL;
  g_autoptr (GPtrArray) cloths = sq_cloth_shelf_load (path, &error);
  guint32 plain = sq_document_get_job (document)->defaults.cloth_colour;
  if (cloths == NULL)
    {
      sq_dialog_failed (parent, file, FALSE, error);
      return;
    }
  dialog = g_new0 (Dialog, 1);
  dialog->document = g_object_ref (document);
  dialog->cushion = cushion;
  dialog->value = value;
  dialog->cloths = g_list_store_new (SQ_TYPE_CLOTH_ITEM);
  for (guint i = 0; i < cloths->len; i++)
    {
      g_autoptr (SqClothItem) item = sq_cloth_item_new (g_ptr_array_index (cloths, i), plain, NULL);
      g_list_store_append (dialog->cloths, item);
    }
  dialog->chosen = gtk_single_selection_new (G_LIST_MODEL (g_object_ref (dialog->cloths)));
  dialog->window = sq_form_new (parent, _ ("Cloths on the shelf"), _ ("_Take"),
                                new_content (dialog), on_done, dialog, dialog_free);
  show_number (dialog);
  gtk_window_present (GTK_WINDOW (dialog->window));
}
