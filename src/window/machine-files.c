/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "window/machine-files.h"

#include "window/form.h"
#include "window/value-row.h"

#include <glib/gi18n.h>

#define N_LINES 5
#define LINES_COLUMNS 2

struct _SqMachineFiles
{
  GtkBox parent;
  SqMachineChoice choice;
  gboolean is_showing, is_ready;
  SqValueRow *format, *of, *layers;
  GtkWidget *lines[N_LINES], *apart[2]; /* of pieces, of cloths */
  GtkWidget *save;
};

G_DEFINE_TYPE (SqMachineFiles, sq_machine_files, GTK_TYPE_BOX)

static guint save_signal;

/* --- what it shows --------------------------------------------------------------------------- */

static void
show_format (SqMachineFiles *files)
{
  guint values[SQ_N_MACHINE_FORMATS];
  const char *names[SQ_N_MACHINE_FORMATS];
  for (guint i = 0; i < SQ_N_MACHINE_FORMATS; i++)
    {
      values[i] = i;
      names[i] = sq_machine_format_name ((SqMachineFormat) i);
    }
  sq_value_row_show_choice (files->format, files->choice.format, values, names,
                            SQ_N_MACHINE_FORMATS, TRUE);
}

static void
show_rows (SqMachineFiles *files)
{
  const guint ofs[] = { SQ_CUT_PIECES, SQ_CUT_CLOTHS, SQ_CUT_LAYS };
  const char *of_names[] = { _ ("Each piece once"), _ ("Pieces by cloth"), _ ("The lay") };
  const guint layers[] = { SQ_DXF_PLAIN, SQ_DXF_D6673 };
  const char *layers_names[] = { _ ("Plain names"), "ASTM D6673" };
  show_format (files);
  sq_value_row_show_choice (files->of, files->choice.of, ofs, of_names, G_N_ELEMENTS (ofs), TRUE);
  sq_value_row_show_choice (files->layers, files->choice.layers, layers, layers_names,
                            G_N_ELEMENTS (layers), TRUE);
  gtk_widget_set_visible (GTK_WIDGET (files->layers),
                          sq_machine_format_is_dxf (files->choice.format));
}

static void
show (SqMachineFiles *files)
{
  gboolean is_of_cloths = files->choice.of != SQ_CUT_PIECES;
  files->is_showing = TRUE;
  show_rows (files);
  for (guint i = 0; i < N_LINES; i++)
    gtk_check_button_set_active (GTK_CHECK_BUTTON (files->lines[i]), files->choice.lines & 1u << i);
  for (guint i = 0; i < G_N_ELEMENTS (files->apart); i++)
    {
      gtk_check_button_set_active (GTK_CHECK_BUTTON (files->apart[i]), files->choice.apart);
      gtk_widget_set_visible (files->apart[i], (i == 1) == is_of_cloths);
    }
  files->is_showing = FALSE;
  gtk_widget_set_sensitive (files->save, files->is_ready && files->choice.lines != 0);
}

/* --- what is chosen -------------------------------------------------------------------------- */

static void
choose (SqMachineFiles *files, SqMachineChoice choice)
{
  files->choice = choice;
  sq_machine_choice_remember (&choice);
  show (files);
}

static void
on_format (SqMachineFiles *files, guint value)
{
  SqMachineChoice choice = files->choice;
  choice.format = (SqMachineFormat) value;
  choose (files, choice);
}

static void
on_of (SqMachineFiles *files, guint value)
{
  SqMachineChoice choice = files->choice;
  choice.of = (SqCutOf) value;
  choose (files, choice);
}

static void
on_layers (SqMachineFiles *files, guint value)
{
  SqMachineChoice choice = files->choice;
  choice.layers = (SqDxfLayers) value;
  choose (files, choice);
}

static void
on_lines (SqMachineFiles *files)
{
  SqMachineChoice choice = files->choice;
  if (files->is_showing)
    return;
  choice.lines = 0;
  for (guint i = 0; i < N_LINES; i++)
    if (gtk_check_button_get_active (GTK_CHECK_BUTTON (files->lines[i])))
      choice.lines |= 1u << i;
  choose (files, choice);
}

static void
on_apart (GtkCheckButton *check, GParamSpec *spec, SqMachineFiles *files)
{
  SqMachineChoice choice = files->choice;
  (void) spec;
  choice.apart = gtk_check_button_get_active (check);
  if (!files->is_showing)
    choose (files, choice);
}

static void
on_save (SqMachineFiles *files)
{
  g_signal_emit (files, save_signal, 0);
}

SqMachineChoice
sq_machine_files_choice (SqMachineFiles *files)
{
  g_return_val_if_fail (SQ_IS_MACHINE_FILES (files), (SqMachineChoice){ 0 });
  return files->choice;
}

void
sq_machine_files_set_ready (SqMachineFiles *files, gboolean is_ready)
{
  g_return_if_fail (SQ_IS_MACHINE_FILES (files));
  files->is_ready = is_ready;
  show (files);
}

/* --- making ---------------------------------------------------------------------------------- */

static SqValueRow *
add_row (SqMachineFiles *files, const char *name, GCallback on_choice)
{
  GtkWidget *row = sq_value_row_new_choice (name);
  sq_value_row_set_no_usual (SQ_VALUE_ROW (row));
  g_signal_connect_swapped (row, "choice", on_choice, files);
  gtk_box_append (GTK_BOX (files), row);
  return SQ_VALUE_ROW (row);
}

static void
add_lines (SqMachineFiles *files)
{
  /* In the order of SqCutLines. */
  static const char *const names[N_LINES] = { N_ ("Cut lines"), N_ ("Sew lines"), N_ ("Notches"),
                                              N_ ("Marks"), N_ ("Texts") };
  GtkWidget *grid = gtk_grid_new ();
  gtk_grid_set_column_homogeneous (GTK_GRID (grid), TRUE);
  gtk_widget_add_css_class (grid, "lines");
  for (guint i = 0; i < N_LINES; i++)
    {
      files->lines[i] = sq_form_check (_ (names[i]));
      g_signal_connect_swapped (files->lines[i], "notify::active", G_CALLBACK (on_lines), files);
      gtk_grid_attach (GTK_GRID (grid), files->lines[i], (int) (i % LINES_COLUMNS),
                       (int) (i / LINES_COLUMNS), 1, 1);
    }
  gtk_box_append (GTK_BOX (files), grid);
}

static void
add_apart (SqMachineFiles *files)
{
  files->apart[0] = sq_form_check (_ ("One file for each piece"));
  files->apart[1] = sq_form_check (_ ("One file for each cloth"));
  for (guint i = 0; i < G_N_ELEMENTS (files->apart); i++)
    {
      g_signal_connect (files->apart[i], "notify::active", G_CALLBACK (on_apart), files);
      gtk_box_append (GTK_BOX (files), files->apart[i]);
    }
}

static void
add_save (SqMachineFiles *files)
{
  files->save = sq_form_button (_ ("Save _files…"));
  gtk_widget_add_css_class (files->save, "lone");
  g_signal_connect_swapped (files->save, "clicked", G_CALLBACK (on_save), files);
  gtk_box_append (GTK_BOX (files), files->save);
}

GtkWidget *
sq_machine_files_new (void)
{
  return g_object_new (SQ_TYPE_MACHINE_FILES, "orientation", GTK_ORIENTATION_VERTICAL, NULL);
}

static void
sq_machine_files_class_init (SqMachineFilesClass *class)
{
  save_signal = g_signal_new ("save", G_TYPE_FROM_CLASS (class), G_SIGNAL_RUN_LAST, 0, NULL, NULL,
                              NULL, G_TYPE_NONE, 0);
}

static void
sq_machine_files_init (SqMachineFiles *files)
{
  files->choice = sq_machine_choice_read ();
  files->format = add_row (files, _ ("Form_at"), G_CALLBACK (on_format));
  files->of = add_row (files, _ ("_What"), G_CALLBACK (on_of));
  files->layers = add_row (files, _ ("La_yers"), G_CALLBACK (on_layers));
  add_lines (files);
  add_apart (files);
  add_save (files);
  show (files);
}
