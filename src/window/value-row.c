/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "window/value-row.h"

#include "window/colour-button.h"
#include "window/length-entry.h"
#include "window/look.h"

#include <glib/gi18n.h>

struct _SqValueRow
{
  GtkWidget parent;
  GtkWidget *name, *control, *back, *note; /* back, note: NULL where it is only to be read */
  GArray *values;                          /* of guint, of a choice */
  guint value;                             /* the one shown */
  gboolean has_no_usual;
  gboolean is_showing; /* changes now are not the user's */
};

G_DEFINE_TYPE (SqValueRow, sq_value_row, GTK_TYPE_WIDGET)

static guint length_signal, choice_signal, text_signal, back_signal;

void
sq_value_row_say (SqValueRow *row, const char *mistake)
{
  g_return_if_fail (SQ_IS_VALUE_ROW (row));
  gtk_label_set_text (GTK_LABEL (row->note), mistake);
  gtk_widget_set_visible (row->note, mistake[0] != '\0');
}

static void
on_given (SqValueRow *row, double mm)
{
  sq_value_row_say (row, "");
  g_signal_emit (row, length_signal, 0, mm);
}

static void
on_text (SqValueRow *row, const char *text)
{
  g_signal_emit (row, text_signal, 0, text);
}

static void
on_colour (SqValueRow *row)
{
  g_signal_emit (row, choice_signal, 0, sq_colour_button_get (row->control));
}

static void
on_selected (SqValueRow *row)
{
  guint i = gtk_drop_down_get_selected (GTK_DROP_DOWN (row->control));
  /* GTK may tell of what was shown only after that is done. */
  if (!row->is_showing && i < row->values->len
      && g_array_index (row->values, guint, i) != row->value)
    g_signal_emit (row, choice_signal, 0, g_array_index (row->values, guint, i));
}

gboolean
sq_value_row_take (SqValueRow *row)
{
  double mm;
  gboolean is_fine = TRUE;
  g_return_val_if_fail (SQ_IS_VALUE_ROW (row), FALSE);
  if (SQ_IS_PLAIN_ENTRY (row->control))
    return sq_typed_entry_take (SQ_TYPED_ENTRY (row->control));
  if (SQ_IS_LENGTH_ENTRY (row->control))
    {
      is_fine = sq_length_entry_read (SQ_LENGTH_ENTRY (row->control), &mm);
      g_signal_emit_by_name (row->control, "activate");
    }
  return is_fine;
}

static void
on_back (SqValueRow *row)
{
  g_signal_emit (row, back_signal, 0);
}

/* --- showing ------------------------------------------------------------------------------- */

static void
show_given (SqValueRow *row, gboolean is_given)
{
  gboolean leads_back = is_given && !row->has_no_usual;
  gtk_widget_set_sensitive (row->back, leads_back);
  gtk_widget_set_opacity (row->back, leads_back ? 1 : 0);
  if (is_given || row->has_no_usual)
    gtk_widget_remove_css_class (row->control, "usual");
  else
    gtk_widget_add_css_class (row->control, "usual");
}

void
sq_value_row_show_length (SqValueRow *row, double mm, const SqLengthStyle *style, gboolean is_given)
{
  g_return_if_fail (SQ_IS_VALUE_ROW (row));
  sq_length_entry_show (SQ_LENGTH_ENTRY (row->control), mm, style, !is_given && !row->has_no_usual);
  show_given (row, is_given);
}

/* Whether the menu offers just these already. */
static gboolean
offers (SqValueRow *row, const guint *values, const char *const *names, guint n)
{
  GListModel *list = gtk_drop_down_get_model (GTK_DROP_DOWN (row->control));
  if (row->values->len != n || memcmp (row->values->data, values, n * sizeof *values) != 0)
    return FALSE;
  for (guint i = 0; i < n; i++)
    if (g_strcmp0 (gtk_string_list_get_string (GTK_STRING_LIST (list), i), names[i]) != 0)
      return FALSE;
  return TRUE;
}

static void
set_values (SqValueRow *row, const guint *values, guint n, GListModel *items)
{
  g_array_set_size (row->values, 0);
  g_array_append_vals (row->values, values, n);
  if (gtk_drop_down_get_model (GTK_DROP_DOWN (row->control)) != items)
    gtk_drop_down_set_model (GTK_DROP_DOWN (row->control), items);
}

static void
show_selected (SqValueRow *row, guint value, gboolean is_given)
{
  guint selected = GTK_INVALID_LIST_POSITION;
  row->value = value;
  for (guint i = 0; i < row->values->len; i++)
    if (g_array_index (row->values, guint, i) == value)
      selected = i;
  if (gtk_drop_down_get_selected (GTK_DROP_DOWN (row->control)) != selected)
    gtk_drop_down_set_selected (GTK_DROP_DOWN (row->control), selected);
  show_given (row, is_given);
}

void
sq_value_row_show_choice (SqValueRow *row, guint value, const guint *values,
                          const char *const *names, guint n, gboolean is_given)
{
  g_return_if_fail (SQ_IS_VALUE_ROW (row));
  row->is_showing = TRUE;
  if (!offers (row, values, names, n))
    {
      g_autoptr (GtkStringList) list = gtk_string_list_new (NULL);
      for (guint i = 0; i < n; i++)
        gtk_string_list_append (list, names[i]);
      set_values (row, values, n, G_LIST_MODEL (list));
    }
  show_selected (row, value, is_given);
  row->is_showing = FALSE;
}

void
sq_value_row_show_items (SqValueRow *row, guint value, const guint *values, GListModel *items,
                         gboolean is_given)
{
  g_return_if_fail (SQ_IS_VALUE_ROW (row));
  row->is_showing = TRUE;
  set_values (row, values, g_list_model_get_n_items (items), items);
  show_selected (row, value, is_given);
  row->is_showing = FALSE;
}

void
sq_value_row_show_colour (SqValueRow *row, guint32 rgb, gboolean is_given)
{
  g_return_if_fail (SQ_IS_VALUE_ROW (row));
  sq_colour_button_set (row->control, rgb);
  show_given (row, is_given);
}

void
sq_value_row_show_entry (SqValueRow *row, const char *text, const char *usual, gboolean is_given)
{
  g_return_if_fail (SQ_IS_VALUE_ROW (row));
  sq_plain_entry_show (SQ_PLAIN_ENTRY (row->control), text);
  gtk_entry_set_placeholder_text (GTK_ENTRY (row->control), usual);
  show_given (row, is_given);
}

void
sq_value_row_show_text (SqValueRow *row, const char *text)
{
  g_autoptr (PangoAttrList) attributes = NULL;
  g_return_if_fail (SQ_IS_VALUE_ROW (row));
  if (g_strcmp0 (gtk_inscription_get_text (GTK_INSCRIPTION (row->control)), text) == 0)
    return;
  attributes = sq_look_figures (row->control, text);
  gtk_inscription_set_text (GTK_INSCRIPTION (row->control), text);
  gtk_inscription_set_attributes (GTK_INSCRIPTION (row->control), attributes);
  gtk_accessible_update_property (GTK_ACCESSIBLE (row->control),
                                  GTK_ACCESSIBLE_PROPERTY_DESCRIPTION, text, -1);
}

void
sq_value_row_set_no_usual (SqValueRow *row)
{
  g_return_if_fail (SQ_IS_VALUE_ROW (row));
  row->has_no_usual = TRUE;
}

/* --- making -------------------------------------------------------------------------------- */

static void
add_back (SqValueRow *row, GtkWidget *line, const char *plain_name)
{
  /* Translators: %s is a value's name, "Thickness". */
  g_autofree char *label = g_strdup_printf (_ ("%s as usual"), plain_name);
  row->back = gtk_button_new_from_icon_name ("edit-undo-symbolic");
  gtk_widget_set_tooltip_text (row->back, label);
  gtk_accessible_update_property (GTK_ACCESSIBLE (row->back), GTK_ACCESSIBLE_PROPERTY_LABEL, label,
                                  -1);
  gtk_widget_add_css_class (row->back, "flat");
  gtk_widget_add_css_class (row->back, "back");
  /* As high as the row: Tab goes by middles, and this one's must not be above the control's. */
  g_signal_connect_swapped (row->back, "clicked", G_CALLBACK (on_back), row);
  gtk_box_append (GTK_BOX (line), row->back);
}

static void
add_note (SqValueRow *row)
{
  row->note = gtk_label_new (NULL);
  gtk_label_set_wrap (GTK_LABEL (row->note), TRUE);
  gtk_label_set_xalign (GTK_LABEL (row->note), 0);
  gtk_label_set_max_width_chars (GTK_LABEL (row->note), 24);
  gtk_widget_set_visible (row->note, FALSE);
  gtk_widget_add_css_class (row->note, "mistake");
  gtk_widget_set_parent (row->note, GTK_WIDGET (row));
}

/* A row with @control (taken) at its right. */
static SqValueRow *
new_row (const char *name, GtkWidget *control, gboolean is_edited)
{
  SqValueRow *row = g_object_new (SQ_TYPE_VALUE_ROW, NULL);
  GtkWidget *line = gtk_box_new (GTK_ORIENTATION_HORIZONTAL, 0);
  row->control = control;
  row->name = gtk_label_new_with_mnemonic (name);
  gtk_label_set_xalign (GTK_LABEL (row->name), 0);
  gtk_widget_set_hexpand (row->name, TRUE);
  gtk_widget_add_css_class (row->name, "name");
  gtk_widget_set_valign (control, GTK_ALIGN_CENTER);
  gtk_box_append (GTK_BOX (line), row->name);
  gtk_box_append (GTK_BOX (line), control);
  if (is_edited)
    add_back (row, line, gtk_label_get_text (GTK_LABEL (row->name)));
  gtk_widget_set_parent (line, GTK_WIDGET (row));
  if (is_edited)
    add_note (row);
  gtk_accessible_update_relation (GTK_ACCESSIBLE (control), GTK_ACCESSIBLE_RELATION_LABELLED_BY,
                                  row->name, NULL, -1);
  return row;
}

GtkWidget *
sq_value_row_new_length (const char *name)
{
  GtkWidget *entry = sq_length_entry_new ();
  SqValueRow *row = new_row (name, entry, TRUE);
  gtk_entry_set_alignment (GTK_ENTRY (entry), 1);
  gtk_label_set_mnemonic_widget (GTK_LABEL (row->name), entry);
  g_signal_connect_swapped (entry, "given", G_CALLBACK (on_given), row);
  g_signal_connect_swapped (entry, "mistake", G_CALLBACK (sq_value_row_say), row);
  return GTK_WIDGET (row);
}

GtkWidget *
sq_value_row_new_measure (const char *name)
{
  GtkWidget *row = sq_value_row_new_length (name);
  sq_value_row_set_no_usual (SQ_VALUE_ROW (row));
  return row;
}

/* Its key brings the keyboard there, no more: a menu would open before it has come into sight. */
static gboolean
on_mnemonic (GtkWidget *menu)
{
  gtk_widget_grab_focus (menu);
  return TRUE;
}

GtkWidget *
sq_value_row_new_choice (const char *name)
{
  GtkWidget *menu = gtk_drop_down_new (NULL, NULL);
  SqValueRow *row = new_row (name, menu, TRUE);
  gtk_label_set_mnemonic_widget (GTK_LABEL (row->name), menu);
  g_signal_connect (menu, "mnemonic-activate", G_CALLBACK (on_mnemonic), NULL);
  g_signal_connect_swapped (menu, "notify::selected", G_CALLBACK (on_selected), row);
  return GTK_WIDGET (row);
}

GtkWidget *
sq_value_row_new_items (const char *name, GtkListItemFactory *chosen, GtkListItemFactory *offered)
{
  GtkWidget *row = sq_value_row_new_choice (name);
  gtk_drop_down_set_factory (GTK_DROP_DOWN (SQ_VALUE_ROW (row)->control), chosen);
  gtk_drop_down_set_list_factory (GTK_DROP_DOWN (SQ_VALUE_ROW (row)->control), offered);
  g_object_unref (chosen);
  g_object_unref (offered);
  return row;
}

GtkWidget *
sq_value_row_new_entry (const char *name, SqTextCheck check)
{
  GtkWidget *entry = sq_plain_entry_new (check);
  SqValueRow *row = new_row (name, entry, TRUE);
  gtk_editable_set_max_width_chars (GTK_EDITABLE (entry), 8); /* the style sheet says more */
  gtk_widget_add_css_class (entry, "words");
  gtk_label_set_mnemonic_widget (GTK_LABEL (row->name), entry);
  g_signal_connect_swapped (entry, "given", G_CALLBACK (on_text), row);
  g_signal_connect_swapped (entry, "mistake", G_CALLBACK (sq_value_row_say), row);
  return GTK_WIDGET (row);
}

GtkWidget *
sq_value_row_new_number (const char *name, SqTextCheck check)
{
  GtkWidget *row = sq_value_row_new_entry (name, check);
  GtkWidget *entry = SQ_VALUE_ROW (row)->control;
  gtk_entry_set_alignment (GTK_ENTRY (entry), 1);
  gtk_widget_remove_css_class (entry, "words");
  return row;
}

GtkWidget *
sq_value_row_new_colour (const char *name)
{
  GtkWidget *button = sq_colour_button_new ();
  SqValueRow *row = new_row (name, button, TRUE);
  gtk_label_set_mnemonic_widget (GTK_LABEL (row->name), button);
  sq_colour_button_name (button, gtk_label_get_text (GTK_LABEL (row->name)));
  g_signal_connect_swapped (button, "color-set", G_CALLBACK (on_colour), row);
  return GTK_WIDGET (row);
}

GtkWidget *
sq_value_row_new_text (const char *name)
{
  GtkWidget *text = gtk_inscription_new (NULL);
  /* Figures read from left to right and stand where the fields' do, in any language. */
  sq_look_set_figures (text);
  gtk_inscription_set_xalign (GTK_INSCRIPTION (text),
                              gtk_widget_get_default_direction () == GTK_TEXT_DIR_RTL ? 0 : 1);
  gtk_inscription_set_min_chars (GTK_INSCRIPTION (text), 9);
  gtk_inscription_set_nat_chars (GTK_INSCRIPTION (text), 17);
  gtk_inscription_set_text_overflow (GTK_INSCRIPTION (text),
                                     GTK_INSCRIPTION_OVERFLOW_ELLIPSIZE_END);
  gtk_widget_add_css_class (text, "read");
  return GTK_WIDGET (new_row (name, text, FALSE));
}

static void
sq_value_row_dispose (GObject *object)
{
  GtkWidget *child;
  while ((child = gtk_widget_get_first_child (GTK_WIDGET (object))) != NULL)
    gtk_widget_unparent (child);
  G_OBJECT_CLASS (sq_value_row_parent_class)->dispose (object);
}

static void
sq_value_row_finalize (GObject *object)
{
  g_array_unref (SQ_VALUE_ROW (object)->values);
  G_OBJECT_CLASS (sq_value_row_parent_class)->finalize (object);
}

static void
sq_value_row_class_init (SqValueRowClass *class)
{
  GType type = G_TYPE_FROM_CLASS (class);
  GtkWidgetClass *widget_class = GTK_WIDGET_CLASS (class);
  G_OBJECT_CLASS (class)->dispose = sq_value_row_dispose;
  G_OBJECT_CLASS (class)->finalize = sq_value_row_finalize;
  length_signal = g_signal_new ("length", type, G_SIGNAL_RUN_LAST, 0, NULL, NULL, NULL, G_TYPE_NONE,
                                1, G_TYPE_DOUBLE);
  choice_signal = g_signal_new ("choice", type, G_SIGNAL_RUN_LAST, 0, NULL, NULL, NULL, G_TYPE_NONE,
                                1, G_TYPE_UINT);
  text_signal = g_signal_new ("text", type, G_SIGNAL_RUN_LAST, 0, NULL, NULL, NULL, G_TYPE_NONE, 1,
                              G_TYPE_STRING);
  back_signal = g_signal_new ("back", type, G_SIGNAL_RUN_LAST, 0, NULL, NULL, NULL, G_TYPE_NONE, 0);
  gtk_widget_class_set_css_name (widget_class, "valuerow");
  gtk_widget_class_set_layout_manager_type (widget_class, GTK_TYPE_BOX_LAYOUT);
}

static void
sq_value_row_init (SqValueRow *row)
{
  GtkLayoutManager *layout = gtk_widget_get_layout_manager (GTK_WIDGET (row));
  gtk_orientable_set_orientation (GTK_ORIENTABLE (layout), GTK_ORIENTATION_VERTICAL);
  row->values = g_array_new (FALSE, FALSE, sizeof (guint));
}
