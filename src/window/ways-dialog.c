/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "window/ways-dialog.h"

#include "window/edit-ways.h"
#include "window/help.h"
#include "window/rates-fields.h"
#include "window/way-row.h"
#include "window/ways-finder.h"
#include "words/names.h"
#include "words/ways.h"

#include <glib/gi18n.h>

#define FRAMES 4

struct _SqWaysDialog
{
  GtkWindow parent;
  SqDocument *document;
  SqWaysFinder *finder;
  SqWayColumns columns;
  GtkWidget *cushion, *samples, *samples_words, *table, *list, *reckoned, *rates, *scrolled;
  guint n_frames; /* until what is to be seen has its place */
};

G_DEFINE_TYPE (SqWaysDialog, sq_ways_dialog, GTK_TYPE_WINDOW)

/* --- showing --------------------------------------------------------------------------------- */

static void
show_cushion (SqWaysDialog *dialog, const SqWays *ways)
{
  const SqJob *job = sq_document_get_job (dialog->document);
  g_autofree char *name = ways != NULL ? sq_words_cushion (job, ways->cushion) : g_strdup ("");
  const char *samples = sq_words_ways_samples (job);
  gboolean is_pair = ways != NULL && (ways->cushion->given & SQ_GIVEN_HAND)
                     && ways->cushion->hand == SQ_HAND_PAIR;
  guint n = ways != NULL ? ways->cushion->count * (is_pair ? 2 : 1) : 1;
  /* TRANSLATORS: a cushion's name and how many are made of it. */
  g_autofree char *text = n > 1 ? g_strdup_printf (_ ("%s, %u in all"), name, n) : g_strdup (name);
  gtk_label_set_text (GTK_LABEL (dialog->cushion), text);
  gtk_label_set_text (GTK_LABEL (dialog->samples_words), samples);
  gtk_widget_set_visible (dialog->samples, samples[0] != '\0');
  gtk_accessible_update_property (GTK_ACCESSIBLE (dialog->samples), GTK_ACCESSIBLE_PROPERTY_LABEL,
                                  samples, -1);
}

static void
follow (SqWaysDialog *dialog)
{
  const SqWays *ways = sq_ways_finder_get_ways (dialog->finder);
  guint n = ways != NULL ? ways->ways->len : 0;
  GtkListBoxRow *row;
  show_cushion (dialog, ways);
  for (guint i = 0; i < n; i++)
    {
      row = gtk_list_box_get_row_at_index (GTK_LIST_BOX (dialog->list), (int) i);
      if (row == NULL)
        {
          row = GTK_LIST_BOX_ROW (sq_way_row_new (&dialog->columns));
          gtk_list_box_append (GTK_LIST_BOX (dialog->list), GTK_WIDGET (row));
        }
      sq_way_row_show (SQ_WAY_ROW (row), sq_ways_way (ways, i), i == ways->in_use);
    }
  while ((row = gtk_list_box_get_row_at_index (GTK_LIST_BOX (dialog->list), (int) n)) != NULL)
    gtk_list_box_remove (GTK_LIST_BOX (dialog->list), GTK_WIDGET (row));
}

static void
on_chosen (GtkListBox *list, GtkListBoxRow *row, SqWaysDialog *dialog)
{
  const SqWays *ways = sq_ways_finder_get_ways (dialog->finder);
  guint i = (guint) gtk_list_box_row_get_index (row);
  (void) list;
  if (ways != NULL && i < ways->ways->len && sq_ways_way (ways, i)->possible)
    sq_edit_way (dialog->document, sq_ways_way (ways, i));
}

/* The rates stand at the end, and get their room in the frames after they were unfolded. */
static gboolean
on_frame (GtkWidget *widget, GdkFrameClock *clock, gpointer data)
{
  SqWaysDialog *dialog = SQ_WAYS_DIALOG (widget);
  GtkAdjustment *adjustment = gtk_scrolled_window_get_vadjustment (
      GTK_SCROLLED_WINDOW (dialog->scrolled));
  (void) clock, (void) data;
  gtk_adjustment_set_value (adjustment, gtk_adjustment_get_upper (adjustment));
  return --dialog->n_frames > 0 ? G_SOURCE_CONTINUE : G_SOURCE_REMOVE;
}

static void
on_unfolded (SqWaysDialog *dialog)
{
  if (!gtk_expander_get_expanded (GTK_EXPANDER (dialog->rates)))
    return;
  if (dialog->n_frames == 0)
    gtk_widget_add_tick_callback (GTK_WIDGET (dialog), on_frame, NULL, NULL);
  dialog->n_frames = FRAMES;
}

/* To where they are put in. */
static void
on_samples (SqWaysDialog *dialog)
{
  gtk_expander_set_expanded (GTK_EXPANDER (dialog->rates), TRUE);
  gtk_widget_child_focus (gtk_expander_get_child (GTK_EXPANDER (dialog->rates)),
                          GTK_DIR_TAB_FORWARD);
}

/* --- making ---------------------------------------------------------------------------------- */

static gboolean
on_escape (GtkWidget *widget, GVariant *arguments, gpointer data)
{
  (void) arguments, (void) data;
  gtk_window_destroy (GTK_WINDOW (widget));
  return GDK_EVENT_STOP;
}

/* What was chosen here can be undone here, by the same keys. */
static void
take_actions (SqWaysDialog *dialog, GtkWindow *parent)
{
  static const char *const names[] = { "undo", "redo" };
  g_autoptr (GSimpleActionGroup) group = g_simple_action_group_new ();
  for (guint i = 0; i < G_N_ELEMENTS (names); i++)
    g_action_map_add_action (G_ACTION_MAP (group),
                             g_action_map_lookup_action (G_ACTION_MAP (parent), names[i]));
  gtk_widget_insert_action_group (GTK_WIDGET (dialog), "win", G_ACTION_GROUP (group));
}

/* To the way in use, once there is a place to scroll to. */
static gboolean
on_first_frame (GtkWidget *widget, GdkFrameClock *clock, gpointer data)
{
  SqWaysDialog *dialog = SQ_WAYS_DIALOG (widget);
  const SqWays *ways = sq_ways_finder_get_ways (dialog->finder);
  GtkAdjustment *sideways = gtk_scrolled_window_get_hadjustment (
      GTK_SCROLLED_WINDOW (dialog->scrolled));
  (void) clock, (void) data;
  if (--dialog->n_frames > 0)
    return G_SOURCE_CONTINUE;
  if (ways != NULL)
    gtk_widget_grab_focus (GTK_WIDGET (
        gtk_list_box_get_row_at_index (GTK_LIST_BOX (dialog->list), (int) ways->in_use)));
  /* Its names before its figures, where there is no room for both. */
  gtk_adjustment_set_value (sideways, gtk_widget_get_direction (widget) == GTK_TEXT_DIR_RTL
                                          ? gtk_adjustment_get_upper (sideways)
                                          : gtk_adjustment_get_lower (sideways));
  return G_SOURCE_REMOVE;
}

GtkWidget *
sq_ways_dialog (GtkWindow *parent, SqDocument *document, SqSelection *selection)
{
  SqWaysDialog *dialog = g_object_new (SQ_TYPE_WAYS_DIALOG, "transient-for", parent, NULL);
  dialog->document = g_object_ref (document);
  dialog->finder = sq_ways_finder_new (document, selection);
  g_signal_connect_object (dialog->finder, "changed", G_CALLBACK (follow), dialog,
                           G_CONNECT_SWAPPED);
  gtk_expander_set_child (GTK_EXPANDER (dialog->rates), sq_rates_fields_new (document));
  follow (dialog);
  take_actions (dialog, parent);
  sq_help_on_f1 (GTK_WIDGET (dialog), "which-way");
  gtk_window_present (GTK_WINDOW (dialog));
  dialog->n_frames = FRAMES;
  gtk_widget_add_tick_callback (GTK_WIDGET (dialog), on_first_frame, NULL, NULL);
  return GTK_WIDGET (dialog);
}

static void
sq_ways_dialog_dispose (GObject *object)
{
  SqWaysDialog *dialog = SQ_WAYS_DIALOG (object);
  for (guint i = 0; i < SQ_N_WAY_COLUMNS; i++)
    g_clear_object (&dialog->columns.groups[i]);
  g_clear_object (&dialog->finder);
  g_clear_object (&dialog->document);
  G_OBJECT_CLASS (sq_ways_dialog_parent_class)->dispose (object);
}

#define BIND(name) gtk_widget_class_bind_template_child (widget_class, SqWaysDialog, name)
#define CALL(name) gtk_widget_class_bind_template_callback (widget_class, name)

static void
sq_ways_dialog_class_init (SqWaysDialogClass *class)
{
  GtkWidgetClass *widget_class = GTK_WIDGET_CLASS (class);
  G_OBJECT_CLASS (class)->dispose = sq_ways_dialog_dispose;
  gtk_widget_class_set_template_from_resource (widget_class, "/org/squab/Squab/ways-dialog.ui");
  gtk_widget_class_add_binding (widget_class, GDK_KEY_Escape, 0, on_escape, NULL);
  gtk_widget_class_add_binding_action (widget_class, GDK_KEY_z, GDK_CONTROL_MASK, "win.undo", NULL);
  gtk_widget_class_add_binding_action (widget_class, GDK_KEY_z, GDK_CONTROL_MASK | GDK_SHIFT_MASK,
                                       "win.redo", NULL);
  gtk_widget_class_add_binding_action (widget_class, GDK_KEY_y, GDK_CONTROL_MASK, "win.redo", NULL);
  BIND (cushion);
  BIND (samples);
  BIND (samples_words);
  BIND (table);
  BIND (list);
  BIND (reckoned);
  BIND (rates);
  BIND (scrolled);
  CALL (on_chosen);
  CALL (on_samples);
}

static void
sq_ways_dialog_init (SqWaysDialog *dialog)
{
  gtk_widget_init_template (GTK_WIDGET (dialog));
  for (guint i = 0; i < SQ_N_WAY_COLUMNS; i++)
    dialog->columns.groups[i] = gtk_size_group_new (GTK_SIZE_GROUP_HORIZONTAL);
  gtk_box_prepend (GTK_BOX (dialog->table), sq_way_row_new_heads (&dialog->columns));
  gtk_label_set_text (GTK_LABEL (dialog->reckoned), sq_words_ways_reckoned ());
  g_signal_connect_swapped (dialog->rates, "notify::expanded", G_CALLBACK (on_unfolded), dialog);
}
