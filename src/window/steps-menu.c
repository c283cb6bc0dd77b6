/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "window/steps-menu.h"

#include "window/look.h"
#include "window/text-row.h"

#include <glib/gi18n.h>

struct _SqStepsMenu
{
  GtkPopover parent;
  SqDocument *document;
  GtkStringList *words; /* the newest step first; last, how it was opened */
  GtkSingleSelection *chosen;
  GtkWidget *list;
  guint now; /* the row that holds now */
};

G_DEFINE_TYPE (SqStepsMenu, sq_steps_menu, GTK_TYPE_POPOVER)

#define MOST_HEIGHT 340

static void
fill (SqStepsMenu *menu)
{
  gboolean exists;
  g_autoptr (GPtrArray) rows = g_ptr_array_new ();
  int by = 0;
  while (sq_document_words (menu->document, by + 1, &exists), exists)
    by++;
  menu->now = (guint) by; /* the rows ask for it */
  for (const char *words; words = sq_document_words (menu->document, by, &exists), exists; by--)
    g_ptr_array_add (rows, (gpointer) (words != NULL ? words : _ ("As it was at first")));
  g_ptr_array_add (rows, NULL);
  gtk_string_list_splice (menu->words, 0, g_list_model_get_n_items (G_LIST_MODEL (menu->words)),
                          (const char *const *) rows->pdata);
  gtk_single_selection_set_selected (menu->chosen, menu->now);
}

static void
on_activate (SqStepsMenu *menu, guint row)
{
  gtk_popover_popdown (GTK_POPOVER (menu));
  if (row != menu->now)
    sq_document_go (menu->document, (int) menu->now - (int) row);
}

static void
on_show (SqStepsMenu *menu)
{
  if (menu->document == NULL)
    return;
  fill (menu);
  gtk_widget_activate_action (menu->list, "list.scroll-to-item", "u", menu->now);
  gtk_widget_grab_focus (menu->list);
}

/* --- rows ---------------------------------------------------------------------------------- */

/* Steps that were undone are there to be done again, dimly. */
static void
on_bind (GtkSignalListItemFactory *factory, GtkListItem *row, SqStepsMenu *menu)
{
  GtkWidget *label = gtk_list_item_get_child (row);
  guint i = gtk_list_item_get_position (row);
  const char *words = gtk_string_object_get_string (gtk_list_item_get_item (row));
  g_autofree char *name = i == menu->now ? g_strdup_printf (_ ("%s (now)"), words)
                                         : g_strdup (words);
  (void) factory;
  sq_look_set_label (GTK_LABEL (label), name);
  gtk_accessible_update_property (GTK_ACCESSIBLE (gtk_widget_get_parent (label)),
                                  GTK_ACCESSIBLE_PROPERTY_LABEL, name, -1);
  if (i < menu->now)
    gtk_widget_add_css_class (label, "dim");
  else
    gtk_widget_remove_css_class (label, "dim");
}

/* --- making -------------------------------------------------------------------------------- */

void
sq_steps_menu_set_document (SqStepsMenu *menu, SqDocument *document)
{
  g_return_if_fail (SQ_IS_STEPS_MENU (menu));
  g_set_object (&menu->document, document);
}

static void
sq_steps_menu_dispose (GObject *object)
{
  SqStepsMenu *menu = SQ_STEPS_MENU (object);
  g_clear_object (&menu->document);
  g_clear_object (&menu->chosen);
  G_OBJECT_CLASS (sq_steps_menu_parent_class)->dispose (object);
}

static void
sq_steps_menu_class_init (SqStepsMenuClass *class)
{
  G_OBJECT_CLASS (class)->dispose = sq_steps_menu_dispose;
}

static void
sq_steps_menu_init (SqStepsMenu *menu)
{
  GtkListItemFactory *factory = gtk_signal_list_item_factory_new ();
  GtkWidget *scrolled = gtk_scrolled_window_new ();
  menu->words = gtk_string_list_new (NULL);
  menu->chosen = gtk_single_selection_new (G_LIST_MODEL (menu->words));
  g_signal_connect (factory, "setup", G_CALLBACK (sq_text_row_setup), NULL);
  g_signal_connect_object (factory, "bind", G_CALLBACK (on_bind), menu, 0);
  menu->list = gtk_list_view_new (GTK_SELECTION_MODEL (g_object_ref (menu->chosen)), factory);
  gtk_list_view_set_single_click_activate (GTK_LIST_VIEW (menu->list), TRUE);
  gtk_accessible_update_property (GTK_ACCESSIBLE (menu->list), GTK_ACCESSIBLE_PROPERTY_LABEL,
                                  _ ("Steps"), -1);
  g_signal_connect_swapped (menu->list, "activate", G_CALLBACK (on_activate), menu);
  gtk_scrolled_window_set_child (GTK_SCROLLED_WINDOW (scrolled), menu->list);
  gtk_scrolled_window_set_policy (GTK_SCROLLED_WINDOW (scrolled), GTK_POLICY_NEVER,
                                  GTK_POLICY_AUTOMATIC);
  gtk_scrolled_window_set_propagate_natural_height (GTK_SCROLLED_WINDOW (scrolled), TRUE);
  gtk_scrolled_window_set_propagate_natural_width (GTK_SCROLLED_WINDOW (scrolled), TRUE);
  gtk_scrolled_window_set_max_content_height (GTK_SCROLLED_WINDOW (scrolled), MOST_HEIGHT);
  gtk_popover_set_child (GTK_POPOVER (menu), scrolled);
  gtk_widget_add_css_class (GTK_WIDGET (menu), "steps");
  g_signal_connect (menu, "show", G_CALLBACK (on_show), NULL);
}
