/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "window/hole-dialog.h"

#include "base/units.h"
#include "job/frame.h"
#include "window/edit-hole.h"
#include "window/figures.h"
#include "window/first-job.h"
#include "window/form.h"
#include "window/length-entry.h"
#include "words/piece-names.h"

#include <glib/gi18n.h>

/* A new hole is as wide as a hand, or this part of a small seat. */
#define USUAL_IN 4
#define USUAL_CM 10
#define SHARE 0.25

typedef enum
{
  FIGURE_WIDTH, /* or diameter */
  FIGURE_DEPTH,
  FIGURE_RIGHT,  /* its middle, from where the front starts, along the front … */
  FIGURE_BEHIND, /* … and away from it */
  N_FIGURES,
} Figure;

typedef struct
{
  GtkWidget *window;
  SqDocument *document;
  SqId cushion;
  SqFront front;
  GtkWidget *shape, *names[N_FIGURES], *entries[N_FIGURES], *mistake;
} Dialog;

static void
dialog_free (gpointer data)
{
  Dialog *dialog = data;
  g_object_unref (dialog->document);
  g_free (dialog);
}

static SqHoleShape
shape_of (Dialog *dialog)
{
  return (SqHoleShape) gtk_drop_down_get_selected (GTK_DROP_DOWN (dialog->shape));
}

static void
say (Dialog *dialog, const char *text)
{
  gtk_label_set_text (GTK_LABEL (dialog->mistake), text);
}

static gboolean
on_cut (gpointer data)
{
  Dialog *dialog = data;
  double mm[N_FIGURES];
  SqPoint middle;
  for (guint i = 0; i < N_FIGURES; i++)
    if (!sq_length_entry_read (SQ_LENGTH_ENTRY (dialog->entries[i]), &mm[i]))
      {
        gtk_widget_grab_focus (dialog->entries[i]);
        return FALSE;
      }
  middle = sq_moved (dialog->front.at, dialog->front.along, mm[FIGURE_RIGHT]);
  middle = sq_moved (middle, sq_left (dialog->front.along), mm[FIGURE_BEHIND]);
  if (sq_edit_cut_hole (dialog->document, dialog->cushion, shape_of (dialog), middle,
                        mm[FIGURE_WIDTH], mm[FIGURE_DEPTH])
      != 0)
    return TRUE;
  say (dialog, mm[FIGURE_WIDTH] > 0 && mm[FIGURE_DEPTH] > 0
                   ? _ ("It would reach the edge of the seat, or another hole.")
                   : _ ("A hole has to be more than nothing."));
  return FALSE;
}

static void
on_enter (Dialog *dialog)
{
  if (on_cut (dialog))
    gtk_window_destroy (GTK_WINDOW (dialog->window));
}

static void
on_given (SqLengthEntry *entry, double mm, Dialog *dialog)
{
  SqLengthStyle style = sq_first_job_style (sq_document_get_job (dialog->document)->units);
  sq_length_entry_show (entry, mm, &style, FALSE);
  say (dialog, "");
}

static void
on_mistake (Dialog *dialog, const char *text)
{
  say (dialog, text);
}

static void
set_name (Dialog *dialog, Figure figure, const char *text)
{
  gtk_label_set_text (GTK_LABEL (dialog->names[figure]), text);
  gtk_accessible_update_property (GTK_ACCESSIBLE (dialog->entries[figure]),
                                  GTK_ACCESSIBLE_PROPERTY_LABEL, text, -1);
}

static void
show_shape (Dialog *dialog)
{
  gboolean is_round = shape_of (dialog) == SQ_HOLE_ROUND;
  set_name (dialog, FIGURE_WIDTH, is_round ? _ ("Diameter") : _ ("Width"));
  gtk_widget_set_visible (dialog->names[FIGURE_DEPTH], !is_round);
  gtk_widget_set_visible (dialog->entries[FIGURE_DEPTH], !is_round);
}

/* --- what stands there at first ------------------------------------------------------------- */

static void
fill (Dialog *dialog, const SqOutline *outline, const SqPoint *at)
{
  const SqJob *job = sq_document_get_job (dialog->document);
  double usual = job->units == SQ_UNIT_IN ? USUAL_IN * SQ_MM_PER_INCH : USUAL_CM * SQ_MM_PER_CM;
  SqLengthStyle style = sq_first_job_style (job->units);
  SqBox box = sq_box_empty ();
  SqPoint middle;
  guint n;
  const SqCorner *corners = sq_outline_ring (outline, 0, &n);
  for (guint i = 0; i < n; i++)
    {
      SqVector from = sq_sub (corners[i].at, dialog->front.at);
      box = sq_box_with (box, sq_point (sq_dot (dialog->front.along, from),
                                        sq_dot (sq_left (dialog->front.along), from)));
    }
  middle = sq_scale (sq_add (box.min, box.max), 0.5);
  if (at != NULL)
    {
      SqVector from = sq_sub (*at, dialog->front.at);
      middle = sq_point (sq_dot (dialog->front.along, from),
                         sq_dot (sq_left (dialog->front.along), from));
    }
  usual = fmin (usual, SHARE * fmin (box.max.x - box.min.x, box.max.y - box.min.y));
  const double mm[N_FIGURES] = { usual, usual, middle.x, middle.y };
  for (guint i = 0; i < N_FIGURES; i++)
    sq_length_entry_show (SQ_LENGTH_ENTRY (dialog->entries[i]),
                          sq_length_rounded_mm (mm[i], &style), &style, TRUE);
}

static GtkWidget *
new_content (Dialog *dialog)
{
  const char *const shapes[] = { _ ("Round"), _ ("Rectangular"), NULL };
  GtkWidget *grid = gtk_grid_new (), *name = gtk_label_new (_ ("Shape"));
  gtk_grid_set_row_spacing (GTK_GRID (grid), 8);
  gtk_grid_set_column_spacing (GTK_GRID (grid), 18);
  dialog->shape = gtk_drop_down_new_from_strings (shapes);
  gtk_label_set_xalign (GTK_LABEL (name), 0);
  gtk_accessible_update_relation (GTK_ACCESSIBLE (dialog->shape),
                                  GTK_ACCESSIBLE_RELATION_LABELLED_BY, name, NULL, -1);
  g_signal_connect_swapped (dialog->shape, "notify::selected", G_CALLBACK (show_shape), dialog);
  gtk_grid_attach (GTK_GRID (grid), name, 0, 0, 1, 1);
  gtk_grid_attach (GTK_GRID (grid), dialog->shape, 1, 0, 1, 1);
  for (int i = 0; i < N_FIGURES; i++)
    {
      GtkWidget *entry = dialog->entries[i] = sq_length_entry_new ();
      dialog->names[i] = gtk_label_new (NULL);
      gtk_label_set_xalign (GTK_LABEL (dialog->names[i]), 0);
      gtk_entry_set_alignment (GTK_ENTRY (entry), 1);
      g_signal_connect (entry, "given", G_CALLBACK (on_given), dialog);
      g_signal_connect_swapped (entry, "mistake", G_CALLBACK (on_mistake), dialog);
      g_signal_connect_swapped (entry, "activate", G_CALLBACK (on_enter), dialog);
      gtk_grid_attach (GTK_GRID (grid), dialog->names[i], 0, i + 1, 1, 1);
      gtk_grid_attach (GTK_GRID (grid), entry, 1, i + 1, 1, 1);
    }
  dialog->mistake = gtk_label_new (NULL);
  gtk_label_set_wrap (GTK_LABEL (dialog->mistake), TRUE);
  gtk_label_set_width_chars (GTK_LABEL (dialog->mistake), 34);
  gtk_label_set_max_width_chars (GTK_LABEL (dialog->mistake), 34);
  gtk_label_set_xalign (GTK_LABEL (dialog->mistake), 0);
  gtk_widget_add_css_class (dialog->mistake, "mistake");
  gtk_grid_attach (GTK_GRID (grid), dialog->mistake, 0, N_FIGURES + 1, 2, 1);
  return grid;
}

/* Places are told from the corner where the front starts. */
static void
name_places (Dialog *dialog, const SqCushion *cushion)
{
  guint n;
  SqId id = sq_outline_ring (cushion->outline, 0, &n)[dialog->front.edge].id;
  g_autofree char *corner = sq_words_corner (cushion, id);
  /* Translators: how far the middle of a hole is to the right of a corner, by its letter. */
  g_autofree char *right = g_strdup_printf (_ ("Middle, right of %s"), corner);
  /* Translators: how far the middle of a hole is behind a corner, by its letter. */
  g_autofree char *behind = g_strdup_printf (_ ("Middle, behind %s"), corner);
  set_name (dialog, FIGURE_DEPTH, _ ("Depth"));
  set_name (dialog, FIGURE_RIGHT, right);
  set_name (dialog, FIGURE_BEHIND, behind);
}

void
sq_hole_dialog (GtkWindow *parent, SqDocument *document, SqId id, const SqPoint *at)
{
  const SqCushion *cushion = sq_job_cushion (sq_document_get_job (document), id);
  SqFront front;
  GtkWidget *content;
  Dialog *dialog;
  if (cushion == NULL || !sq_outline_front (cushion->outline, &front))
    return;
  dialog = g_new0 (Dialog, 1);
  dialog->document = g_object_ref (document);
  dialog->cushion = id;
  dialog->front = front;
  content = new_content (dialog);
  name_places (dialog, cushion);
  fill (dialog, cushion->outline, at);
  show_shape (dialog);
  dialog->window = sq_form_new (parent, _ ("A hole in the seat"), _ ("_Cut"), content, on_cut,
                                dialog, dialog_free);
  gtk_window_present (GTK_WINDOW (dialog->window));
  gtk_widget_grab_focus (dialog->entries[FIGURE_WIDTH]);
}
