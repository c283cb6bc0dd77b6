/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "window/seat-maker.h"

#include "exchange/defaults-file.h"
#include "job/shape.h"
#include "window/cushion-picture.h"
#include "window/first-job.h"
#include "window/length-entry.h"
#include "window/side-taps.h"
#include "words/names.h"

#include <glib/gi18n.h>

struct _SqSeatMaker
{
  GtkWidget parent;
  GtkWidget *content;
  GtkWidget *shapes[SQ_N_SHAPE_KINDS];
  GtkWidget *fields, *thickness, *taps, *picture, *make, *note;
  GtkWidget *figures[SQ_MOST_FIGURES]; /* an entry, or a spin button for a count */
  SqShapeKind shape;
  SqUnit units;
  SqDefaults defaults;
};

G_DEFINE_TYPE (SqSeatMaker, sq_seat_maker, GTK_TYPE_WIDGET)

static guint made_signal;

static gboolean
is_count (const SqFigure *figure)
{
  return figure->kind == SQ_FIGURE_SIDE_COUNT;
}

/* --- what it makes ------------------------------------------------------------------------- */

/* The outline the figures make; NULL if one can't be read or can't be, and *@bad which. */
static SqOutline *
read_outline (SqSeatMaker *maker, gint *bad)
{
  guint n;
  const SqFigure *figures = sq_shape_figures (maker->shape, &n);
  double values[SQ_MOST_FIGURES];
  *bad = -1;
  for (guint i = 0; i < n; i++)
    if (is_count (&figures[i]))
      values[i] = gtk_spin_button_get_value (GTK_SPIN_BUTTON (maker->figures[i]));
    else if (!sq_length_entry_read (SQ_LENGTH_ENTRY (maker->figures[i]), &values[i]))
      return NULL;
  g_autoptr (SqOutline) bare = sq_shape_outline (maker->shape, values, n, bad);
  if (bare == NULL)
    return NULL;
  return sq_first_job_outline (bare, sq_side_taps_kinds (SQ_SIDE_TAPS (maker->taps)), maker->units,
                               &maker->defaults);
}

static SqJob *
read_job (SqSeatMaker *maker, gint *bad)
{
  g_autoptr (SqOutline) outline = read_outline (maker, bad);
  double thickness;
  if (outline == NULL || !sq_length_entry_read (SQ_LENGTH_ENTRY (maker->thickness), &thickness)
      || !(thickness > 0))
    return NULL;
  return sq_first_job_new (outline, thickness, maker->units, &maker->defaults);
}

static void
show (SqSeatMaker *maker)
{
  guint n;
  const SqFigure *figures = sq_shape_figures (maker->shape, &n);
  gint bad;
  g_autoptr (SqJob) job = read_job (maker, &bad);
  g_autoptr (SqPlan) plan = job != NULL ? sq_plan_new (job, NULL) : NULL;
  g_autofree char *note = NULL;
  gtk_widget_set_sensitive (maker->make, job != NULL);
  if (plan != NULL)
    sq_cushion_picture_show (SQ_CUSHION_PICTURE (maker->picture), plan, 0);
  else if (bad >= 0)
    /* Translators: %s names a length of the seat, such as "Ear width". */
    note = g_strdup_printf (_ ("%s doesn't go with the other figures."),
                            sq_words_shape_figure (figures[bad].kind));
  gtk_label_set_text (GTK_LABEL (maker->note), note != NULL ? note : "");
}

static void
on_make (SqSeatMaker *maker)
{
  gint bad;
  g_autoptr (SqJob) job = read_job (maker, &bad);
  if (job != NULL)
    g_signal_emit (maker, made_signal, 0, job);
}

static void
on_mistake (SqSeatMaker *maker, const char *text)
{
  gtk_label_set_text (GTK_LABEL (maker->note), text);
}

/* --- fields -------------------------------------------------------------------------------- */

static void
on_given (SqLengthEntry *entry, double mm, SqSeatMaker *maker)
{
  SqLengthStyle style = sq_first_job_style (maker->units);
  sq_length_entry_show (entry, mm, &style, FALSE);
}

static GtkWidget *
new_length (SqSeatMaker *maker, double usual_mm)
{
  GtkWidget *entry = sq_length_entry_new ();
  SqLengthStyle style = sq_first_job_style (maker->units);
  sq_length_entry_show (SQ_LENGTH_ENTRY (entry), sq_first_job_rounded_mm (maker->units, usual_mm),
                        &style, TRUE);
  gtk_entry_set_alignment (GTK_ENTRY (entry), 1);
  g_signal_connect (entry, "given", G_CALLBACK (on_given), maker);
  g_signal_connect_swapped (entry, "changed", G_CALLBACK (show), maker);
  g_signal_connect_swapped (entry, "activate", G_CALLBACK (on_make), maker);
  g_signal_connect_swapped (entry, "mistake", G_CALLBACK (on_mistake), maker);
  return entry;
}

static GtkWidget *
new_count (SqSeatMaker *maker, const SqFigure *figure)
{
  GtkWidget *spin = gtk_spin_button_new_with_range (figure->least, MIN (figure->most, 24), 1);
  gtk_spin_button_set_value (GTK_SPIN_BUTTON (spin), figure->usual);
  g_signal_connect_swapped (spin, "value-changed", G_CALLBACK (show), maker);
  return spin;
}

static void
attach (SqSeatMaker *maker, GtkWidget *field, const char *name, int row)
{
  GtkWidget *label = gtk_label_new_with_mnemonic (name);
  gtk_label_set_mnemonic_widget (GTK_LABEL (label), field);
  gtk_label_set_xalign (GTK_LABEL (label), 0);
  gtk_accessible_update_relation (GTK_ACCESSIBLE (field), GTK_ACCESSIBLE_RELATION_LABELLED_BY,
                                  label, NULL, -1);
  gtk_grid_attach (GTK_GRID (maker->fields), label, 0, row, 1, 1);
  gtk_grid_attach (GTK_GRID (maker->fields), field, 1, row, 1, 1);
}

/* The fields of the shape, above the thickness, which stays as it is. */
static void
fill_fields (SqSeatMaker *maker)
{
  guint n;
  const SqFigure *figures = sq_shape_figures (maker->shape, &n);
  while (gtk_grid_get_child_at (GTK_GRID (maker->fields), 0, 1) != NULL)
    gtk_grid_remove_row (GTK_GRID (maker->fields), 0);
  for (guint i = 0; i < n; i++)
    {
      gtk_grid_insert_row (GTK_GRID (maker->fields), (int) i);
      maker->figures[i] = is_count (&figures[i]) ? new_count (maker, &figures[i])
                                                 : new_length (maker, figures[i].usual);
      attach (maker, maker->figures[i], sq_words_shape_figure (figures[i].kind), (int) i);
    }
}

static void
on_shape (GtkToggleButton *button, SqSeatMaker *maker)
{
  if (!gtk_toggle_button_get_active (button))
    return;
  for (guint i = 0; i < SQ_N_SHAPE_KINDS; i++)
    if (maker->shapes[i] == GTK_WIDGET (button))
      maker->shape = (SqShapeKind) i;
  fill_fields (maker);
  show (maker);
}

static GtkWidget *
new_shapes (SqSeatMaker *maker)
{
  GtkWidget *box = gtk_box_new (GTK_ORIENTATION_HORIZONTAL, 0);
  gtk_widget_add_css_class (box, "linked");
  gtk_widget_set_halign (box, GTK_ALIGN_CENTER);
  for (guint i = 0; i < SQ_N_SHAPE_KINDS; i++)
    {
      maker->shapes[i] = gtk_toggle_button_new_with_label (sq_words_shape ((SqShapeKind) i));
      if (i > 0)
        gtk_toggle_button_set_group (GTK_TOGGLE_BUTTON (maker->shapes[i]),
                                     GTK_TOGGLE_BUTTON (maker->shapes[0]));
      gtk_box_append (GTK_BOX (box), maker->shapes[i]);
    }
  gtk_toggle_button_set_active (GTK_TOGGLE_BUTTON (maker->shapes[0]), TRUE);
  for (guint i = 0; i < SQ_N_SHAPE_KINDS; i++)
    g_signal_connect (maker->shapes[i], "toggled", G_CALLBACK (on_shape), maker);
  return box;
}

/* --- the widget ---------------------------------------------------------------------------- */

static GtkWidget *
new_figures (SqSeatMaker *maker)
{
  GtkWidget *box = gtk_box_new (GTK_ORIENTATION_VERTICAL, 14);
  maker->fields = gtk_grid_new ();
  maker->thickness = new_length (maker, maker->defaults.thickness_mm);
  maker->make = gtk_button_new_with_mnemonic (_ ("_Make the cushion"));
  maker->note = gtk_label_new (NULL);
  gtk_grid_set_row_spacing (GTK_GRID (maker->fields), 8);
  gtk_grid_set_column_spacing (GTK_GRID (maker->fields), 18);
  attach (maker, maker->thickness, _ ("_Thickness"), 0);
  gtk_accessible_update_property (GTK_ACCESSIBLE (maker->make), GTK_ACCESSIBLE_PROPERTY_LABEL,
                                  _ ("Make the cushion"), -1);
  gtk_widget_add_css_class (maker->make, "suggested-action");
  gtk_widget_add_css_class (maker->note, "mistake");
  gtk_label_set_wrap (GTK_LABEL (maker->note), TRUE);
  gtk_label_set_max_width_chars (GTK_LABEL (maker->note), 28);
  gtk_label_set_xalign (GTK_LABEL (maker->note), 0);
  g_signal_connect_swapped (maker->make, "clicked", G_CALLBACK (on_make), maker);
  gtk_box_append (GTK_BOX (box), maker->fields);
  gtk_box_append (GTK_BOX (box), maker->make);
  gtk_box_append (GTK_BOX (box), maker->note);
  gtk_widget_set_valign (box, GTK_ALIGN_CENTER);
  return box;
}

/* Tab comes to all that is in it; its first figure is only where it begins. */
static gboolean
sq_seat_maker_focus (GtkWidget *widget, GtkDirectionType direction)
{
  return gtk_widget_child_focus (gtk_widget_get_first_child (widget), direction);
}

static gboolean
sq_seat_maker_grab_focus (GtkWidget *widget)
{
  return gtk_widget_grab_focus (SQ_SEAT_MAKER (widget)->figures[0]);
}

static void
sq_seat_maker_dispose (GObject *object)
{
  g_clear_pointer (&SQ_SEAT_MAKER (object)->content, gtk_widget_unparent);
  G_OBJECT_CLASS (sq_seat_maker_parent_class)->dispose (object);
}

static void
sq_seat_maker_class_init (SqSeatMakerClass *class)
{
  GtkWidgetClass *widget_class = GTK_WIDGET_CLASS (class);
  G_OBJECT_CLASS (class)->dispose = sq_seat_maker_dispose;
  widget_class->focus = sq_seat_maker_focus;
  widget_class->grab_focus = sq_seat_maker_grab_focus;
  made_signal = g_signal_new ("made", G_TYPE_FROM_CLASS (class), G_SIGNAL_RUN_LAST, 0, NULL, NULL,
                              NULL, G_TYPE_NONE, 1, G_TYPE_POINTER);
  gtk_widget_class_set_layout_manager_type (widget_class, GTK_TYPE_BIN_LAYOUT);
}

static void
sq_seat_maker_init (SqSeatMaker *maker)
{
  GtkWidget *row = gtk_box_new (GTK_ORIENTATION_HORIZONTAL, 36);
  maker->units = sq_first_job_units ();
  sq_defaults_builtin (&maker->defaults);
  maker->content = gtk_box_new (GTK_ORIENTATION_VERTICAL, 18);
  gtk_box_append (GTK_BOX (maker->content), new_shapes (maker));
  maker->picture = sq_cushion_picture_new (240, 180);
  maker->taps = sq_side_taps_new (maker->picture);
  g_signal_connect_swapped (maker->taps, "changed", G_CALLBACK (show), maker);
  gtk_box_append (GTK_BOX (row), maker->taps);
  gtk_box_append (GTK_BOX (row), new_figures (maker));
  gtk_widget_set_halign (row, GTK_ALIGN_CENTER);
  gtk_box_append (GTK_BOX (maker->content), row);
  gtk_widget_set_parent (maker->content, GTK_WIDGET (maker));
  fill_fields (maker);
  show (maker);
}

GtkWidget *
sq_seat_maker_new (void)
{
  return g_object_new (SQ_TYPE_SEAT_MAKER, NULL);
}
