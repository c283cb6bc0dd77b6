/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "window/way-row.h"

#include "window/cushion-picture.h"
#include "window/figures.h"
#include "window/look.h"
#include "words/lengths.h"
#include "words/ways.h"

#include <glib/gi18n.h>

#define PICTURE_WIDTH 96
#define PICTURE_HEIGHT 62
#define SPACING 12
#define WHY_CHARS 60
#define FAINT 0.45 /* what can't be built */

typedef enum
{
  COLUMN_PICTURE,
  COLUMN_NAME,
  COLUMN_PIECES,
  COLUMN_SEAM,
  COLUMN_CLOTH,
  COLUMN_FOAM,
  COLUMN_TIME,
  COLUMN_COST,
} Column;

struct _SqWayRow
{
  GtkListBoxRow parent;
  SqPlan *plan; /* that the picture is of */
  GtkWidget *box, *picture, *name, *in_use, *why;
  GtkWidget *figures[SQ_N_WAY_COLUMNS]; /* from COLUMN_PIECES on */
};

G_DEFINE_TYPE (SqWayRow, sq_way_row, GTK_TYPE_LIST_BOX_ROW)

/* Columns don't wrap: a row is as wide as it has to be, and scrolled where the window is not. */
static GtkWidget *
new_label (const char *text, float xalign)
{
  GtkWidget *label = gtk_label_new (text);
  gtk_label_set_xalign (GTK_LABEL (label), xalign);
  gtk_label_set_justify (GTK_LABEL (label), xalign > 0 ? GTK_JUSTIFY_RIGHT : GTK_JUSTIFY_LEFT);
  return label;
}

void
sq_way_row_show (SqWayRow *row, const SqWay *way, gboolean is_in_use)
{
  g_return_if_fail (SQ_IS_WAY_ROW (row));
  SqLengthStyle style = sq_words_length_style (way->plan->job, sq_figures_decimal ());
  g_autofree char *summary = sq_words_way_summary (way, is_in_use, &style);
  g_autofree char *why = sq_words_way_why (way, &style);
  style.set = TRUE;
  char *texts[SQ_N_WAY_COLUMNS] = {
    [COLUMN_PIECES] = g_strdup_printf ("%u", way->pieces),
    [COLUMN_SEAM] = sq_words_long_length (way->seam_mm, &style),
    [COLUMN_CLOTH] = sq_words_way_cloth (way, "\n", &style),
    [COLUMN_FOAM] = sq_words_way_foam (way, &style),
    [COLUMN_TIME] = sq_words_minutes (way->minutes),
    [COLUMN_COST] = sq_words_way_cost (way, "\n", &style),
  };

  if (row->plan != way->plan)
    sq_cushion_picture_show_made_up (SQ_CUSHION_PICTURE (row->picture), way->plan, 0);
  g_clear_pointer (&row->plan, sq_plan_unref);
  row->plan = sq_plan_ref (way->plan);
  gtk_label_set_text (GTK_LABEL (row->name), sq_words_way (way));
  gtk_widget_set_visible (row->in_use, is_in_use);
  for (Column column = COLUMN_PIECES; column <= COLUMN_COST; column++)
    {
      sq_look_set_label (GTK_LABEL (row->figures[column]), texts[column]);
      gtk_widget_set_visible (row->figures[column], way->possible);
      g_free (texts[column]);
    }
  gtk_label_set_text (GTK_LABEL (row->why), why);
  gtk_widget_set_visible (row->why, !way->possible);
  gtk_widget_set_opacity (row->picture, way->possible ? 1 : FAINT);
  gtk_list_box_row_set_activatable (GTK_LIST_BOX_ROW (row), way->possible);
  if (way->possible)
    gtk_widget_remove_css_class (row->box, "impossible");
  else
    gtk_widget_add_css_class (row->box, "impossible");
  gtk_accessible_update_property (GTK_ACCESSIBLE (row), GTK_ACCESSIBLE_PROPERTY_LABEL, summary, -1);
}

static void
add_name (SqWayRow *row, const SqWayColumns *columns)
{
  GtkWidget *box = gtk_box_new (GTK_ORIENTATION_VERTICAL, 2);
  row->name = new_label (NULL, 0);
  row->in_use = new_label (_ ("as it is built now"), 0);
  gtk_widget_add_css_class (row->name, "heading");
  gtk_widget_add_css_class (row->in_use, "in-use");
  gtk_widget_set_valign (box, GTK_ALIGN_CENTER);
  gtk_box_append (GTK_BOX (box), row->name);
  gtk_box_append (GTK_BOX (box), row->in_use);
  gtk_box_append (GTK_BOX (row->box), box);
  gtk_size_group_add_widget (columns->groups[COLUMN_NAME], box);
}

GtkWidget *
sq_way_row_new (const SqWayColumns *columns)
{
  SqWayRow *row = g_object_new (SQ_TYPE_WAY_ROW, NULL);
  row->box = gtk_box_new (GTK_ORIENTATION_HORIZONTAL, SPACING);
  row->picture = sq_cushion_picture_new (PICTURE_WIDTH, PICTURE_HEIGHT);
  gtk_widget_set_valign (row->picture, GTK_ALIGN_CENTER);
  gtk_box_append (GTK_BOX (row->box), row->picture);
  gtk_size_group_add_widget (columns->groups[COLUMN_PICTURE], row->picture);
  add_name (row, columns);
  for (Column column = COLUMN_PIECES; column <= COLUMN_COST; column++)
    {
      row->figures[column] = new_label (NULL, column == COLUMN_CLOTH ? 0 : 1);
      sq_look_set_figures (row->figures[column]);
      gtk_widget_set_hexpand (row->figures[column], column == COLUMN_CLOTH);
      gtk_box_append (GTK_BOX (row->box), row->figures[column]);
      gtk_size_group_add_widget (columns->groups[column], row->figures[column]);
    }
  row->why = new_label (NULL, 0);
  gtk_label_set_wrap (GTK_LABEL (row->why), TRUE);
  gtk_label_set_max_width_chars (GTK_LABEL (row->why), WHY_CHARS);
  gtk_widget_set_hexpand (row->why, TRUE);
  gtk_box_append (GTK_BOX (row->box), row->why);
  gtk_list_box_row_set_child (GTK_LIST_BOX_ROW (row), row->box);
  return GTK_WIDGET (row);
}

GtkWidget *
sq_way_row_new_heads (const SqWayColumns *columns)
{
  const char *const names[SQ_N_WAY_COLUMNS] = {
    [COLUMN_PICTURE] = "",      [COLUMN_NAME] = _ ("Way"),    [COLUMN_PIECES] = _ ("Pieces"),
    [COLUMN_SEAM] = _ ("Seam"), [COLUMN_CLOTH] = _ ("Cloth"), [COLUMN_FOAM] = _ ("Foam"),
    [COLUMN_TIME] = _ ("Time"), [COLUMN_COST] = _ ("Cost"),
  };
  GtkWidget *heads = gtk_box_new (GTK_ORIENTATION_HORIZONTAL, SPACING);

  for (Column column = COLUMN_PICTURE; column <= COLUMN_COST; column++)
    {
      GtkWidget *label = new_label (names[column],
                                    column <= COLUMN_NAME || column == COLUMN_CLOTH ? 0 : 1);
      gtk_widget_add_css_class (label, "dim");
      gtk_widget_set_hexpand (label, column == COLUMN_CLOTH);
      gtk_box_append (GTK_BOX (heads), label);
      gtk_size_group_add_widget (columns->groups[column], label);
    }
  gtk_widget_add_css_class (heads, "ways-heads");
  return heads;
}

static void
sq_way_row_finalize (GObject *object)
{
  SqWayRow *row = SQ_WAY_ROW (object);
  g_clear_pointer (&row->plan, sq_plan_unref);
  G_OBJECT_CLASS (sq_way_row_parent_class)->finalize (object);
}

static void
sq_way_row_class_init (SqWayRowClass *class)
{
  G_OBJECT_CLASS (class)->finalize = sq_way_row_finalize;
}

static void
sq_way_row_init (SqWayRow *row)
{
  (void) row;
}
