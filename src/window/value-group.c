/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "window/value-group.h"

#include "window/settings.h"

struct _SqValueGroup
{
  GtkWidget parent;
  const char *key;
  GtkWidget *heading, *arrow, *rows;
};

G_DEFINE_TYPE (SqValueGroup, sq_value_group, GTK_TYPE_WIDGET)

static void
show_fold (SqValueGroup *group)
{
  gboolean is_open = gtk_toggle_button_get_active (GTK_TOGGLE_BUTTON (group->heading));
  gtk_widget_set_visible (group->rows, is_open);
  gtk_image_set_from_icon_name (GTK_IMAGE (group->arrow),
                                is_open ? "pan-down-symbolic" : "pan-end-symbolic");
  gtk_accessible_update_state (GTK_ACCESSIBLE (group->heading), GTK_ACCESSIBLE_STATE_EXPANDED,
                               is_open, -1);
}

static void
on_toggled (SqValueGroup *group)
{
  g_autoptr (GKeyFile) settings = sq_settings_read ();
  g_key_file_set_boolean (settings, SQ_SETTINGS_FOLDED, group->key,
                          !gtk_toggle_button_get_active (GTK_TOGGLE_BUTTON (group->heading)));
  sq_settings_write (settings);
  show_fold (group);
}

void
sq_value_group_add (SqValueGroup *group, GtkWidget *row)
{
  g_return_if_fail (SQ_IS_VALUE_GROUP (group));
  gtk_box_append (GTK_BOX (group->rows), row);
}

static GtkWidget *
new_heading (SqValueGroup *group, const char *name)
{
  GtkWidget *line = gtk_box_new (GTK_ORIENTATION_HORIZONTAL, 0);
  GtkWidget *label = gtk_label_new (name), *heading = gtk_toggle_button_new ();
  group->arrow = gtk_image_new ();
  gtk_label_set_xalign (GTK_LABEL (label), 0);
  gtk_widget_set_hexpand (label, TRUE);
  gtk_widget_add_css_class (label, "heading");
  gtk_widget_add_css_class (group->arrow, "dim");
  gtk_box_append (GTK_BOX (line), label);
  gtk_box_append (GTK_BOX (line), group->arrow);
  gtk_button_set_child (GTK_BUTTON (heading), line);
  gtk_widget_add_css_class (heading, "flat");
  gtk_widget_add_css_class (heading, "fold");
  gtk_accessible_update_property (GTK_ACCESSIBLE (heading), GTK_ACCESSIBLE_PROPERTY_LABEL, name,
                                  -1);
  return heading;
}

GtkWidget *
sq_value_group_new (const char *name, const char *key, gboolean is_folded)
{
  SqValueGroup *group = g_object_new (SQ_TYPE_VALUE_GROUP, NULL);
  g_autoptr (GKeyFile) settings = sq_settings_read ();
  if (g_key_file_has_key (settings, SQ_SETTINGS_FOLDED, key, NULL))
    is_folded = g_key_file_get_boolean (settings, SQ_SETTINGS_FOLDED, key, NULL);
  group->key = key;
  group->heading = new_heading (group, name);
  group->rows = gtk_box_new (GTK_ORIENTATION_VERTICAL, 0);
  gtk_toggle_button_set_active (GTK_TOGGLE_BUTTON (group->heading), !is_folded);
  g_signal_connect_swapped (group->heading, "toggled", G_CALLBACK (on_toggled), group);
  gtk_widget_set_parent (group->heading, GTK_WIDGET (group));
  gtk_widget_set_parent (group->rows, GTK_WIDGET (group));
  gtk_widget_add_css_class (GTK_WIDGET (group), "group");
  show_fold (group);
  return GTK_WIDGET (group);
}

static void
sq_value_group_dispose (GObject *object)
{
  SqValueGroup *group = SQ_VALUE_GROUP (object);
  g_clear_pointer (&group->heading, gtk_widget_unparent);
  g_clear_pointer (&group->rows, gtk_widget_unparent);
  G_OBJECT_CLASS (sq_value_group_parent_class)->dispose (object);
}

static void
sq_value_group_class_init (SqValueGroupClass *class)
{
  GtkWidgetClass *widget_class = GTK_WIDGET_CLASS (class);
  G_OBJECT_CLASS (class)->dispose = sq_value_group_dispose;
  gtk_widget_class_set_css_name (widget_class, "valuegroup");
  gtk_widget_class_set_layout_manager_type (widget_class, GTK_TYPE_BOX_LAYOUT);
}

static void
sq_value_group_init (SqValueGroup *group)
{
  GtkLayoutManager *layout = gtk_widget_get_layout_manager (GTK_WIDGET (group));
  gtk_orientable_set_orientation (GTK_ORIENTABLE (layout), GTK_ORIENTATION_VERTICAL);
}
