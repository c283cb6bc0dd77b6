/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "window/page-menu.h"

#include "window/text-row.h"
#include "words/paper-words.h"

#include <glib/gi18n.h>

#define MOST_HEIGHT 340
/* Before what begins in a paper (pixels). */
#define INDENT 16

/* What a row leads to. */
typedef struct
{
  guint page; /* of all */
  gboolean is_paper;
} Lead;

struct _SqPageMenu
{
  GtkPopover parent;
  SqPaperPreview *preview; /* not owned */
  GtkStringList *words;
  GArray *leads; /* of Lead, for each of words */
  GtkSingleSelection *chosen;
  GtkWidget *list;
};

G_DEFINE_TYPE (SqPageMenu, sq_page_menu, GTK_TYPE_POPOVER)

/* --- what it lists --------------------------------------------------------------------------- */

static void
add (SqPageMenu *menu, GPtrArray *words, const char *text, guint page, gboolean is_paper)
{
  Lead lead = { page, is_paper };
  g_ptr_array_add (words, g_strdup (text));
  g_array_append_val (menu->leads, lead);
}

static void
add_paper (SqPageMenu *menu, GPtrArray *words, const SqPaper *paper, guint first)
{
  add (menu, words, sq_words_paper_kind (paper->kind), first, TRUE);
  for (guint i = 0; i < paper->pages->len; i++)
    {
      const char *bookmark = sq_paper_page (paper, i)->bookmark;
      g_auto (GStrv) lines = g_strsplit (bookmark != NULL ? bookmark : "", "\n", -1);
      for (guint k = 0; lines[k] != NULL; k++)
        add (menu, words, lines[k], first + i, FALSE);
    }
}

static void
fill (SqPageMenu *menu)
{
  const GPtrArray *papers = sq_paper_preview_get_papers (menu->preview);
  g_autoptr (GPtrArray) words = g_ptr_array_new_with_free_func (g_free);
  guint first = 0, now = 0, page = sq_paper_preview_page (menu->preview);
  g_array_set_size (menu->leads, 0);
  for (guint i = 0; papers != NULL && i < papers->len; i++)
    {
      const SqPaper *paper = g_ptr_array_index (papers, i);
      add_paper (menu, words, paper, first);
      first += paper->pages->len;
    }
  g_ptr_array_add (words, NULL);
  gtk_string_list_splice (menu->words, 0, g_list_model_get_n_items (G_LIST_MODEL (menu->words)),
                          (const char *const *) words->pdata);
  while (now + 1 < menu->leads->len && g_array_index (menu->leads, Lead, now + 1).page <= page)
    now++;
  gtk_single_selection_set_selected (menu->chosen, now);
  gtk_widget_activate_action (menu->list, "list.scroll-to-item", "u", now);
}

static void
on_activate (SqPageMenu *menu, guint row)
{
  gtk_popover_popdown (GTK_POPOVER (menu));
  sq_paper_preview_turn (menu->preview, (int) g_array_index (menu->leads, Lead, row).page
                                            - (int) sq_paper_preview_page (menu->preview));
  gtk_widget_grab_focus (GTK_WIDGET (menu->preview));
}

static void
on_show (SqPageMenu *menu)
{
  fill (menu);
  gtk_widget_grab_focus (menu->list);
}

/* --- rows ------------------------------------------------------------------------------------ */

static void
on_bind (GtkSignalListItemFactory *factory, GtkListItem *row, SqPageMenu *menu)
{
  GtkWidget *label = gtk_list_item_get_child (row);
  const Lead *lead = &g_array_index (menu->leads, Lead, gtk_list_item_get_position (row));
  const char *words = gtk_string_object_get_string (gtk_list_item_get_item (row));
  (void) factory;
  gtk_label_set_text (GTK_LABEL (label), words);
  gtk_widget_set_margin_start (label, lead->is_paper ? 0 : INDENT);
  gtk_accessible_update_property (GTK_ACCESSIBLE (gtk_widget_get_parent (label)),
                                  GTK_ACCESSIBLE_PROPERTY_LABEL, words, -1);
  if (lead->is_paper)
    gtk_widget_add_css_class (label, "heading");
  else
    gtk_widget_remove_css_class (label, "heading");
}

/* --- making ---------------------------------------------------------------------------------- */

GtkWidget *
sq_page_menu_new (SqPaperPreview *preview)
{
  SqPageMenu *menu = g_object_new (SQ_TYPE_PAGE_MENU, NULL);
  menu->preview = preview;
  return GTK_WIDGET (menu);
}

static void
sq_page_menu_dispose (GObject *object)
{
  g_clear_object (&SQ_PAGE_MENU (object)->chosen);
  G_OBJECT_CLASS (sq_page_menu_parent_class)->dispose (object);
}

static void
sq_page_menu_finalize (GObject *object)
{
  g_array_unref (SQ_PAGE_MENU (object)->leads);
  G_OBJECT_CLASS (sq_page_menu_parent_class)->finalize (object);
}

static void
sq_page_menu_class_init (SqPageMenuClass *class)
{
  G_OBJECT_CLASS (class)->dispose = sq_page_menu_dispose;
  G_OBJECT_CLASS (class)->finalize = sq_page_menu_finalize;
}

static void
sq_page_menu_init (SqPageMenu *menu)
{
  GtkListItemFactory *factory = gtk_signal_list_item_factory_new ();
  GtkWidget *scrolled = gtk_scrolled_window_new ();
  menu->leads = g_array_new (FALSE, FALSE, sizeof (Lead));
  menu->words = gtk_string_list_new (NULL);
  menu->chosen = gtk_single_selection_new (G_LIST_MODEL (menu->words));
  g_signal_connect (factory, "setup", G_CALLBACK (sq_text_row_setup), NULL);
  g_signal_connect_object (factory, "bind", G_CALLBACK (on_bind), menu, 0);
  menu->list = gtk_list_view_new (GTK_SELECTION_MODEL (g_object_ref (menu->chosen)), factory);
  gtk_list_view_set_single_click_activate (GTK_LIST_VIEW (menu->list), TRUE);
  gtk_accessible_update_property (GTK_ACCESSIBLE (menu->list), GTK_ACCESSIBLE_PROPERTY_LABEL,
                                  _ ("Contents"), -1);
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
