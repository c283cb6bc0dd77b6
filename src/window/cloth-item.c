/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "window/cloth-item.h"

#include "window/cloth-picture.h"
#include "words/names.h"

struct _SqClothItem
{
  GObject parent;
  SqCloth *cloth;
  guint32 plain;
  char *words;
};

G_DEFINE_TYPE (SqClothItem, sq_cloth_item, G_TYPE_OBJECT)

#define CHIP_WIDTH 22
#define CHIP_HEIGHT 15

SqClothItem *
sq_cloth_item_new (const SqCloth *cloth, guint32 plain, const char *words)
{
  SqClothItem *item = g_object_new (SQ_TYPE_CLOTH_ITEM, NULL);
  item->cloth = cloth != NULL ? sq_cloth_ref (cloth) : NULL;
  item->plain = plain;
  item->words = words != NULL ? g_strdup (words) : sq_words_cloth (cloth);
  return item;
}

const SqCloth *
sq_cloth_item_cloth (SqClothItem *item)
{
  g_return_val_if_fail (SQ_IS_CLOTH_ITEM (item), NULL);
  return item->cloth;
}

const char *
sq_cloth_item_words (SqClothItem *item)
{
  g_return_val_if_fail (SQ_IS_CLOTH_ITEM (item), NULL);
  return item->words;
}

/* @most_chars of the name are shown, 0: all. */
static void
on_setup (GtkSignalListItemFactory *factory, GtkListItem *row, gpointer most_chars)
{
  GtkWidget *box = gtk_box_new (GTK_ORIENTATION_HORIZONTAL, 7);
  GtkWidget *chip = sq_cloth_picture_new (CHIP_WIDTH, CHIP_HEIGHT), *name = gtk_label_new (NULL);
  (void) factory;
  gtk_widget_set_valign (chip, GTK_ALIGN_CENTER);
  gtk_widget_add_css_class (chip, "chip");
  gtk_label_set_ellipsize (GTK_LABEL (name), PANGO_ELLIPSIZE_END);
  gtk_label_set_xalign (GTK_LABEL (name), 0);
  gtk_widget_set_hexpand (name, TRUE);
  if (GPOINTER_TO_INT (most_chars) > 0)
    gtk_label_set_max_width_chars (GTK_LABEL (name), GPOINTER_TO_INT (most_chars));
  gtk_box_append (GTK_BOX (box), chip);
  gtk_box_append (GTK_BOX (box), name);
  gtk_list_item_set_child (row, box);
}

static void
on_bind (GtkSignalListItemFactory *factory, GtkListItem *row)
{
  SqClothItem *item = gtk_list_item_get_item (row);
  GtkWidget *chip = gtk_widget_get_first_child (gtk_list_item_get_child (row));
  (void) factory;
  sq_cloth_picture_show (SQ_CLOTH_PICTURE (chip), item->cloth, item->plain,
                         sq_cloth_picture_span_mm (item->cloth));
  gtk_widget_set_visible (chip, item->cloth != NULL);
  gtk_label_set_text (GTK_LABEL (gtk_widget_get_next_sibling (chip)), item->words);
  gtk_accessible_update_property (
      GTK_ACCESSIBLE (gtk_widget_get_parent (gtk_list_item_get_child (row))),
      GTK_ACCESSIBLE_PROPERTY_LABEL, item->words, -1);
}

GtkListItemFactory *
sq_cloth_item_factory (int most_chars)
{
  GtkListItemFactory *factory = gtk_signal_list_item_factory_new ();
  g_signal_connect (factory, "setup", G_CALLBACK (on_setup), GINT_TO_POINTER (most_chars));
  g_signal_connect (factory, "bind", G_CALLBACK (on_bind), NULL);
  return factory;
}

static void
sq_cloth_item_finalize (GObject *object)
{
  SqClothItem *item = SQ_CLOTH_ITEM (object);
  g_clear_pointer (&item->cloth, sq_cloth_unref);
  g_free (item->words);
  G_OBJECT_CLASS (sq_cloth_item_parent_class)->finalize (object);
}

static void
sq_cloth_item_class_init (SqClothItemClass *class)
{
  G_OBJECT_CLASS (class)->finalize = sq_cloth_item_finalize;
}

static void
sq_cloth_item_init (SqClothItem *item)
{
  (void) item;
}
