/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "window/save-machine-files.h"

#include "base/error.h"
#include "exchange/file-names.h"
#include "exchange/save-file.h"
#include "window/dialogs.h"

#include <glib/gi18n.h>
#include <string.h>

/* How much of the work is making files, not writing them. */
#define SHARE_OF_MAKING 0.8

typedef struct
{
  char *name, *text;
} Made;

/* What is to be saved; an atomic reference count, as questions and threads hold it in turn. */
typedef struct
{
  SqMachineChoice choice;
  SqLays *lays;
  gboolean wrong_side;
  GArray *entries; /* NULL: all */
  char *folder, *name;
  GPtrArray *made; /* of Made; NULL: not yet */
  gboolean is_large;
  const char *failed; /* name in made of the file that could not be written; NULL: none */
  GWeakRef saving;    /* SqSaving */
  SqMachineFilesSaved saved;
} Files;

static void
made_free (gpointer data)
{
  Made *made = data;
  g_free (made->name);
  g_free (made->text);
  g_free (made);
}

static void
clear (gpointer data)
{
  Files *files = data;
  sq_lays_unref (files->lays);
  g_clear_pointer (&files->entries, g_array_unref);
  g_clear_pointer (&files->made, g_ptr_array_unref);
  g_weak_ref_clear (&files->saving);
  g_free (files->folder);
  g_free (files->name);
}

static void
files_unref (gpointer files)
{
  g_atomic_rc_box_release_full (files, clear);
}

/* --- on the thread --------------------------------------------------------------------------- */

static GPtrArray *
drawings_of (const Files *files)
{
  const SqCutChoice choice = { .of = files->choice.of,
                               .lines = files->choice.lines,
                               .wrong_side = files->wrong_side,
                               .entries = files->entries };
  if (files->choice.apart)
    return sq_cut_drawings_new (files->lays, &choice);
  GPtrArray *drawings = g_ptr_array_new_with_free_func ((GDestroyNotify) sq_cut_drawing_free);
  g_ptr_array_add (drawings, sq_cut_drawing_new (files->lays, &choice));
  return drawings;
}

static char *
file_name (const Files *files, const SqCutDrawing *drawing)
{
  if (!files->choice.apart)
    return g_strdup (files->name);
  g_autofree char *safe = sq_file_name (drawing->name, _ ("piece"));
  return g_strconcat (safe, sq_machine_format_suffix (files->choice.format), NULL);
}

static gboolean
make (gpointer data, const SqTask *watch, GError **error)
{
  Files *files = data;
  g_autoptr (GPtrArray) drawings = drawings_of (files);
  g_autoptr (GPtrArray) all = g_ptr_array_new_with_free_func (made_free);
  for (guint i = 0; i < drawings->len; i++)
    {
      const SqCutDrawing *drawing = g_ptr_array_index (drawings, i);
      Made *made = g_new (Made, 1);
      made->name = file_name (files, drawing);
      made->text = sq_machine_choice_write (&files->choice, drawing, &files->is_large);
      g_ptr_array_add (all, made);
      if (!sq_task_step (watch, SHARE_OF_MAKING * (i + 1) / drawings->len))
        {
          g_set_error_literal (error, SQ_ERROR, SQ_ERROR_CANCELLED, "");
          return FALSE;
        }
    }
  files->made = g_steal_pointer (&all);
  return TRUE;
}

static gboolean
write_all (gpointer data, const SqTask *watch, GError **error)
{
  Files *files = data;
  guint n = files->made->len;
  for (guint i = 0; i < n; i++)
    {
      const Made *made = g_ptr_array_index (files->made, i);
      g_autofree char *path = g_build_filename (files->folder, made->name, NULL);
      if (!sq_file_save (path, made->text, strlen (made->text), error))
        {
          files->failed = made->name;
          return FALSE;
        }
      if (!sq_task_step (watch, SHARE_OF_MAKING + (1 - SHARE_OF_MAKING) * (i + 1) / n) && i + 1 < n)
        {
          g_set_error_literal (error, SQ_ERROR, SQ_ERROR_CANCELLED, "");
          return FALSE;
        }
    }
  return TRUE;
}

/* --- here ------------------------------------------------------------------------------------ */

static void
on_written (gpointer owner, gpointer data, const GError *error)
{
  const Files *files = data;
  const Made *first = g_ptr_array_index (files->made, 0);
  if (error == NULL)
    files->saved (owner, files->made->len, first->name, files->folder, files->is_large);
  else if (files->failed != NULL)
    {
      g_autoptr (GFile) folder = g_file_new_for_path (files->folder);
      g_autoptr (GFile) file = g_file_get_child (folder, files->failed);
      sq_dialog_failed (owner, file, TRUE, error);
    }
}

/* Unless the window has gone meanwhile, or saves something else. */
static void
begin (GtkWindow *parent, Files *files, SqSavingWork work, SqSavingDone done)
{
  g_autoptr (GObject) saving = g_weak_ref_get (&files->saving);
  if (saving != NULL && !sq_saving_is_busy (SQ_SAVING (saving)))
    sq_saving_begin (SQ_SAVING (saving), work, g_atomic_rc_box_acquire (files), files_unref, done,
                     G_OBJECT (parent));
}

static guint
n_there (const Files *files)
{
  guint n = 0;
  for (guint i = 0; i < files->made->len; i++)
    {
      const Made *made = g_ptr_array_index (files->made, i);
      g_autofree char *path = g_build_filename (files->folder, made->name, NULL);
      n += g_file_test (path, G_FILE_TEST_EXISTS);
    }
  return n;
}

#define ASKED "sq-machine-files" /* what a question is about, with the window that asks it */

static void
on_answer (GtkWindow *parent, SqAnswer answer, gpointer data)
{
  Files *files = g_object_steal_data (G_OBJECT (parent), ASKED);
  (void) data;
  if (answer == SQ_ANSWER_SAVE)
    begin (parent, files, write_all, on_written);
  files_unref (files);
}

static void
on_made (gpointer owner, gpointer data, const GError *error)
{
  Files *files = data;
  if (error != NULL)
    return; /* stopped */
  /* The dialog for one file has asked already. */
  guint n = files->choice.apart ? n_there (files) : 0;
  if (n == 0)
    {
      begin (owner, files, write_all, on_written);
      return;
    }
  g_object_set_data_full (owner, ASKED, g_atomic_rc_box_acquire (files), files_unref);
  sq_dialog_replace (owner, n, files->made->len, files->folder, on_answer, NULL);
}

static void
on_place (GtkWindow *parent, GFile *place, gpointer data)
{
  Files *files = data;
  g_autoptr (GFile) folder = NULL;
  if (place != NULL)
    folder = files->choice.apart ? g_object_ref (place) : g_file_get_parent (place);
  files->folder = folder != NULL ? g_file_get_path (folder) : NULL;
  files->name = folder != NULL ? g_file_get_basename (place) : NULL;
  if (files->folder != NULL)
    begin (parent, files, make, on_made);
  files_unref (files);
}

void
sq_save_machine_files (GtkWindow *parent, SqSaving *saving, const SqMachineChoice *choice,
                       const SqLays *lays, gboolean wrong_side, const GArray *entries,
                       const char *title, SqMachineFilesSaved saved)
{
  const char *suffix = sq_machine_format_suffix (choice->format);
  Files *files = g_atomic_rc_box_new0 (Files);
  files->choice = *choice;
  files->lays = sq_lays_ref (lays);
  files->wrong_side = wrong_side;
  files->entries = entries != NULL ? g_array_copy ((GArray *) entries) : NULL;
  g_weak_ref_init (&files->saving, saving);
  files->saved = saved;
  if (choice->apart)
    {
      sq_dialog_folder (parent, _ ("Save files into a folder"), on_place, files);
      return;
    }
  g_autofree char *safe = sq_file_name (title, _ ("Cushions"));
  g_autofree char *name = g_strconcat (safe, suffix, NULL);
  sq_dialog_export (parent, _ ("Save for plotters and cutting tables"),
                    sq_machine_format_sort (choice->format), suffix, name, on_place, files);
}
