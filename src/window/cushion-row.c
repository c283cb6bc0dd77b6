/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "window/cushion-row.h"

#include "window/cushion-picture.h"
#include "window/look.h"
#include "window/plain-entry.h"

#include <glib/gi18n.h>

struct _SqCushionRow
{
  GtkWidget parent;
  SqCushionItem *item;
  GtkWidget *picture, *name, *entry, *words;
};

G_DEFINE_TYPE (SqCushionRow, sq_cushion_row, GTK_TYPE_WIDGET)

#define PICTURE_WIDTH 112
#define PICTURE_HEIGHT 58

static guint named_signal, dropped_signal;

/* --- showing ------------------------------------------------------------------------------- */

static void
follow (SqCushionRow *row)
{
  GtkWidget *list_row = gtk_widget_get_parent (GTK_WIDGET (row));
  guint i;
  const SqPlan *plan = sq_cushion_item_plan (row->item, &i);
  const char *name = sq_cushion_item_name (row->item);
  sq_cushion_picture_show (SQ_CUSHION_PICTURE (row->picture), plan, i);
  gtk_label_set_text (GTK_LABEL (row->name), name);
  sq_look_set_label (GTK_LABEL (row->words), sq_cushion_item_words (row->item));
  sq_plain_entry_show (SQ_PLAIN_ENTRY (row->entry), sq_plan_cover (plan, i)->cushion->name);
  if (list_row != NULL)
    gtk_accessible_update_property (GTK_ACCESSIBLE (list_row), GTK_ACCESSIBLE_PROPERTY_LABEL, name,
                                    GTK_ACCESSIBLE_PROPERTY_DESCRIPTION,
                                    sq_cushion_item_words (row->item), -1);
}

/* --- its name ------------------------------------------------------------------------------ */

static void
show_entry (SqCushionRow *row, gboolean is_typing)
{
  gtk_widget_set_visible (row->name, !is_typing);
  gtk_widget_set_visible (row->entry, is_typing);
}

static void
on_rename (SqCushionRow *row)
{
  show_entry (row, TRUE);
  gtk_widget_grab_focus (row->entry);
}

/* The keyboard stays on the row. */
static void
end_typing (SqCushionRow *row)
{
  GtkWidget *list_row = gtk_widget_get_parent (GTK_WIDGET (row));
  if (!gtk_widget_get_visible (row->entry))
    return;
  if (list_row != NULL)
    gtk_widget_grab_focus (list_row);
  show_entry (row, FALSE);
}

static void
on_given (SqCushionRow *row, const char *name)
{
  g_signal_emit (row, named_signal, 0, name);
}

static gboolean
on_key (SqCushionRow *row, guint keyval)
{
  if (keyval != GDK_KEY_Escape)
    return GDK_EVENT_PROPAGATE;
  end_typing (row);
  return GDK_EVENT_STOP;
}

static void
on_leave (SqCushionRow *row)
{
  show_entry (row, FALSE);
}

void
sq_cushion_row_set_item (SqCushionRow *row, SqCushionItem *item)
{
  g_return_if_fail (SQ_IS_CUSHION_ROW (row));
  if (row->item != NULL)
    g_signal_handlers_disconnect_by_data (row->item, row);
  g_set_object (&row->item, item);
  show_entry (row, FALSE);
  if (item == NULL)
    return;
  g_signal_connect_object (item, "changed", G_CALLBACK (follow), row, G_CONNECT_SWAPPED);
  g_signal_connect_object (item, "rename", G_CALLBACK (on_rename), row, G_CONNECT_SWAPPED);
  follow (row);
}

SqCushionItem *
sq_cushion_row_item (SqCushionRow *row)
{
  g_return_val_if_fail (SQ_IS_CUSHION_ROW (row), NULL);
  return row->item;
}

/* --- dragging ------------------------------------------------------------------------------ */

static GdkContentProvider *
on_prepare (GtkDragSource *source, double x, double y, SqCushionRow *row)
{
  (void) source, (void) x, (void) y;
  if (row->item == NULL || gtk_widget_get_visible (row->entry))
    return NULL;
  return gdk_content_provider_new_typed (SQ_TYPE_CUSHION_ITEM, row->item);
}

static void
on_drag_begin (GtkDragSource *source, GdkDrag *drag, SqCushionRow *row)
{
  g_autoptr (GdkPaintable) shown = gtk_widget_paintable_new (row->picture);
  (void) drag;
  gtk_drag_source_set_icon (source, shown, 0, 0);
}

static gboolean
on_drop (GtkDropTarget *target, const GValue *value, double x, double y, SqCushionRow *row)
{
  SqCushionItem *dropped = g_value_get_object (value);
  (void) target, (void) x, (void) y;
  if (row->item == NULL || dropped == row->item)
    return FALSE;
  g_signal_emit (row, dropped_signal, 0, dropped);
  return TRUE;
}

static void
add_dragging (SqCushionRow *row)
{
  GtkDragSource *source = gtk_drag_source_new ();
  GtkDropTarget *target = gtk_drop_target_new (SQ_TYPE_CUSHION_ITEM, GDK_ACTION_MOVE);
  gtk_drag_source_set_actions (source, GDK_ACTION_MOVE);
  g_signal_connect (source, "prepare", G_CALLBACK (on_prepare), row);
  g_signal_connect (source, "drag-begin", G_CALLBACK (on_drag_begin), row);
  g_signal_connect (target, "drop", G_CALLBACK (on_drop), row);
  gtk_widget_add_controller (GTK_WIDGET (row), GTK_EVENT_CONTROLLER (source));
  gtk_widget_add_controller (GTK_WIDGET (row), GTK_EVENT_CONTROLLER (target));
}

/* --- making -------------------------------------------------------------------------------- */

static GtkWidget *
new_label (SqCushionRow *row, const char *class, int lines)
{
  GtkWidget *label = gtk_label_new (NULL);
  gtk_label_set_ellipsize (GTK_LABEL (label), PANGO_ELLIPSIZE_END);
  gtk_label_set_wrap (GTK_LABEL (label), TRUE);
  gtk_label_set_lines (GTK_LABEL (label), lines);
  gtk_label_set_justify (GTK_LABEL (label), GTK_JUSTIFY_CENTER);
  gtk_label_set_max_width_chars (GTK_LABEL (label), 14);
  gtk_widget_add_css_class (label, class);
  gtk_widget_set_parent (label, GTK_WIDGET (row));
  return label;
}

static void
add_entry (SqCushionRow *row)
{
  GtkEventController *focus = gtk_event_controller_focus_new ();
  GtkEventController *key = gtk_event_controller_key_new ();
  row->entry = sq_plain_entry_new (NULL);
  gtk_editable_set_max_width_chars (GTK_EDITABLE (row->entry), 14);
  gtk_accessible_update_property (GTK_ACCESSIBLE (row->entry), GTK_ACCESSIBLE_PROPERTY_LABEL,
                                  _ ("Name of the cushion"), -1);
  g_signal_connect_swapped (row->entry, "given", G_CALLBACK (on_given), row);
  /* After the entry has taken what was typed, or put it back. */
  g_signal_connect_data (row->entry, "activate", G_CALLBACK (end_typing), row, NULL,
                         G_CONNECT_SWAPPED | G_CONNECT_AFTER);
  g_signal_connect_swapped (focus, "leave", G_CALLBACK (on_leave), row);
  g_signal_connect_swapped (key, "key-pressed", G_CALLBACK (on_key), row);
  gtk_widget_add_controller (row->entry, focus);
  gtk_widget_add_controller (row->entry, key);
  gtk_widget_set_parent (row->entry, GTK_WIDGET (row));
}

GtkWidget *
sq_cushion_row_new (void)
{
  return g_object_new (SQ_TYPE_CUSHION_ROW, NULL);
}

static void
sq_cushion_row_dispose (GObject *object)
{
  GtkWidget *child;
  g_clear_object (&SQ_CUSHION_ROW (object)->item);
  while ((child = gtk_widget_get_first_child (GTK_WIDGET (object))) != NULL)
    gtk_widget_unparent (child);
  G_OBJECT_CLASS (sq_cushion_row_parent_class)->dispose (object);
}

static void
sq_cushion_row_class_init (SqCushionRowClass *class)
{
  GType type = G_TYPE_FROM_CLASS (class);
  G_OBJECT_CLASS (class)->dispose = sq_cushion_row_dispose;
  named_signal = g_signal_new ("named", type, G_SIGNAL_RUN_LAST, 0, NULL, NULL, NULL, G_TYPE_NONE,
                               1, G_TYPE_STRING);
  dropped_signal = g_signal_new ("dropped", type, G_SIGNAL_RUN_LAST, 0, NULL, NULL, NULL,
                                 G_TYPE_NONE, 1, SQ_TYPE_CUSHION_ITEM);
  gtk_widget_class_set_css_name (GTK_WIDGET_CLASS (class), "cushionrow");
  gtk_widget_class_set_layout_manager_type (GTK_WIDGET_CLASS (class), GTK_TYPE_BOX_LAYOUT);
}

static void
sq_cushion_row_init (SqCushionRow *row)
{
  GtkLayoutManager *layout = gtk_widget_get_layout_manager (GTK_WIDGET (row));
  gtk_orientable_set_orientation (GTK_ORIENTABLE (layout), GTK_ORIENTATION_VERTICAL);
  row->picture = sq_cushion_picture_new (PICTURE_WIDTH, PICTURE_HEIGHT);
  gtk_widget_set_parent (row->picture, GTK_WIDGET (row));
  row->name = new_label (row, "cushion-name", 2);
  add_entry (row);
  row->words = new_label (row, "cushion-words", 3);
  show_entry (row, FALSE);
  add_dragging (row);
}
