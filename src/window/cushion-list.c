/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "window/cushion-list.h"

#include "window/cushion-item.h"
#include "window/cushion-picture.h"
#include "window/cushion-row.h"
#include "window/edits.h"

#include <glib/gi18n.h>

struct _SqCushionList
{
  GtkWidget parent;
  SqDocument *document;
  SqSelection *selection;
  GListStore *items; /* of SqCushionItem */
  GtkSingleSelection *chosen;
  GtkWidget *view;
  gboolean is_following; /* what the rows do to the choice meanwhile is not the user's */
};

G_DEFINE_TYPE (SqCushionList, sq_cushion_list, GTK_TYPE_WIDGET)

/* --- rows ---------------------------------------------------------------------------------- */

static void
on_named (SqCushionRow *row, const char *name, SqCushionList *list)
{
  sq_edit_name (list->document, sq_cushion_item_id (sq_cushion_row_item (row)), name);
}

/* @dropped comes to where @row is. */
static void
on_dropped (SqCushionRow *row, SqCushionItem *dropped, SqCushionList *list)
{
  guint from, to;
  if (g_list_store_find (list->items, dropped, &from)
      && g_list_store_find (list->items, sq_cushion_row_item (row), &to))
    sq_edit_order (list->document, sq_cushion_item_id (dropped), (int) to - (int) from);
}

static void
on_setup (GtkSignalListItemFactory *factory, GtkListItem *item, SqCushionList *list)
{
  GtkWidget *row = sq_cushion_row_new ();
  (void) factory;
  g_signal_connect_object (row, "named", G_CALLBACK (on_named), list, 0);
  g_signal_connect_object (row, "dropped", G_CALLBACK (on_dropped), list, 0);
  gtk_list_item_set_child (item, row);
}

static void
on_bind (GtkSignalListItemFactory *factory, GtkListItem *item)
{
  (void) factory;
  sq_cushion_row_set_item (SQ_CUSHION_ROW (gtk_list_item_get_child (item)),
                           gtk_list_item_get_item (item));
}

static void
on_unbind (GtkSignalListItemFactory *factory, GtkListItem *item)
{
  (void) factory;
  sq_cushion_row_set_item (SQ_CUSHION_ROW (gtk_list_item_get_child (item)), NULL);
}

/* --- the list ------------------------------------------------------------------------------ */

static SqCushionItem *
item_at (SqCushionList *list, guint i)
{
  SqCushionItem *item = g_list_model_get_item (G_LIST_MODEL (list->items), i);
  g_object_unref (item); /* the store has it */
  return item;
}

/* One splice: the cushions that stand at the same place before and behind it stay. */
static void
sync_items (SqCushionList *list, const SqPlan *plan)
{
  guint had = g_list_model_get_n_items (G_LIST_MODEL (list->items)), has = plan->job->cushions->len;
  guint head = 0, tail = 0;
  g_autoptr (GPtrArray) fresh = g_ptr_array_new_with_free_func (g_object_unref);
  while (head < had && head < has
         && sq_cushion_item_id (item_at (list, head)) == sq_plan_cover (plan, head)->cushion->id)
    head++;
  while (tail < had - head && tail < has - head
         && sq_cushion_item_id (item_at (list, had - 1 - tail))
                == sq_plan_cover (plan, has - 1 - tail)->cushion->id)
    tail++;
  for (guint i = 0; i < head; i++)
    sq_cushion_item_follow (item_at (list, i), plan, i);
  for (guint i = 1; i <= tail; i++)
    sq_cushion_item_follow (item_at (list, had - i), plan, has - i);
  for (guint i = head; i < has - tail; i++)
    g_ptr_array_add (fresh, sq_cushion_item_new (plan, i));
  if (fresh->len > 0 || had > head + tail)
    g_list_store_splice (list->items, head, had - head - tail, fresh->pdata, fresh->len);
}

/* Something is chosen as long as there is something. */
static void
show_choice (SqCushionList *list)
{
  guint n = g_list_model_get_n_items (G_LIST_MODEL (list->items)), i;
  if (n == 0)
    {
      sq_selection_choose_cushion (list->selection, 0);
      return;
    }
  if (sq_document_get_cover (list->document, sq_selection_cushion (list->selection), &i) == NULL)
    {
      i = MIN (gtk_single_selection_get_selected (list->chosen), n - 1);
      sq_selection_choose_cushion (list->selection, sq_cushion_item_id (item_at (list, i)));
    }
  gtk_single_selection_set_selected (list->chosen, i);
}

static void
follow (SqCushionList *list)
{
  list->is_following = TRUE;
  sync_items (list, sq_document_get_plan (list->document));
  list->is_following = FALSE;
  show_choice (list);
}

static void
on_selected (SqCushionList *list)
{
  SqCushionItem *item = gtk_single_selection_get_selected_item (list->chosen);
  if (item != NULL && list->selection != NULL && !list->is_following)
    sq_selection_choose_cushion (list->selection, sq_cushion_item_id (item));
}

void
sq_cushion_list_set_document (SqCushionList *list, SqDocument *document, SqSelection *selection)
{
  g_return_if_fail (SQ_IS_CUSHION_LIST (list));
  if (list->document != NULL)
    g_signal_handlers_disconnect_by_data (list->document, list);
  if (list->selection != NULL)
    g_signal_handlers_disconnect_by_data (list->selection, list);
  g_clear_object (&list->selection);
  g_set_object (&list->document, document);
  g_list_store_remove_all (list->items);
  g_set_object (&list->selection, selection);
  if (document == NULL)
    return;
  g_signal_connect_swapped (document, "changed", G_CALLBACK (follow), list);
  g_signal_connect_swapped (selection, "changed", G_CALLBACK (show_choice), list);
  follow (list);
}

void
sq_cushion_list_rename (SqCushionList *list)
{
  SqCushionItem *item;
  g_return_if_fail (SQ_IS_CUSHION_LIST (list));
  item = gtk_single_selection_get_selected_item (list->chosen);
  if (item != NULL)
    sq_cushion_item_rename (item);
}

static gboolean
rename_now (gpointer list)
{
  sq_cushion_list_rename (list);
  return G_SOURCE_REMOVE;
}

/* A double click, or Enter: once GTK has put the keyboard on the row. */
static void
on_activate (SqCushionList *list)
{
  g_idle_add_full (G_PRIORITY_DEFAULT, rename_now, g_object_ref (list), g_object_unref);
}

static void
sq_cushion_list_dispose (GObject *object)
{
  SqCushionList *list = SQ_CUSHION_LIST (object);
  sq_cushion_list_set_document (list, NULL, NULL);
  g_clear_pointer (&list->view, gtk_widget_unparent);
  G_OBJECT_CLASS (sq_cushion_list_parent_class)->dispose (object);
}

static void
sq_cushion_list_finalize (GObject *object)
{
  SqCushionList *list = SQ_CUSHION_LIST (object);
  g_object_unref (list->items);
  g_object_unref (list->chosen);
  G_OBJECT_CLASS (sq_cushion_list_parent_class)->finalize (object);
}

static void
sq_cushion_list_class_init (SqCushionListClass *class)
{
  GtkWidgetClass *widget_class = GTK_WIDGET_CLASS (class);
  G_OBJECT_CLASS (class)->dispose = sq_cushion_list_dispose;
  G_OBJECT_CLASS (class)->finalize = sq_cushion_list_finalize;
  gtk_widget_class_set_css_name (widget_class, "cushions");
  gtk_widget_class_set_layout_manager_type (widget_class, GTK_TYPE_BIN_LAYOUT);
}

static void
sq_cushion_list_init (SqCushionList *list)
{
  GtkListItemFactory *factory = gtk_signal_list_item_factory_new ();
  GtkWidget *scrolled = gtk_scrolled_window_new ();
  list->items = g_list_store_new (SQ_TYPE_CUSHION_ITEM);
  list->chosen = gtk_single_selection_new (G_LIST_MODEL (g_object_ref (list->items)));
  g_signal_connect_object (factory, "setup", G_CALLBACK (on_setup), list, 0);
  g_signal_connect (factory, "bind", G_CALLBACK (on_bind), NULL);
  g_signal_connect (factory, "unbind", G_CALLBACK (on_unbind), NULL);
  g_signal_connect_swapped (list->chosen, "notify::selected-item", G_CALLBACK (on_selected), list);
  GtkWidget *view = gtk_list_view_new (GTK_SELECTION_MODEL (g_object_ref (list->chosen)), factory);
  g_signal_connect_swapped (view, "activate", G_CALLBACK (on_activate), list);
  gtk_accessible_update_property (GTK_ACCESSIBLE (view), GTK_ACCESSIBLE_PROPERTY_LABEL,
                                  _ ("Cushions"), -1);
  gtk_scrolled_window_set_child (GTK_SCROLLED_WINDOW (scrolled), view);
  gtk_scrolled_window_set_policy (GTK_SCROLLED_WINDOW (scrolled), GTK_POLICY_NEVER,
                                  GTK_POLICY_AUTOMATIC);
  list->view = scrolled;
  gtk_widget_set_parent (scrolled, GTK_WIDGET (list));
}
