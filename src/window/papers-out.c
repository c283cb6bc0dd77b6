/* SPDX-License-Identifier: GPL-3.0-or-later */
/* What is taken away from the dialog of papers: files and prints. */
#include "window/papers-dialog-private.h"

#include "base/error.h"
#include "exchange/file-names.h"
#include "window/dialogs.h"
#include "window/edit-kept.h"
#include "window/figures.h"
#include "window/paper-files.h"
#include "window/print-papers.h"
#include "window/save-machine-files.h"

#include <glib/gi18n.h>

/* Papers that a lay goes out of the house with. */
#define KINDS_OF_LAYS (1u << SQ_PAPER_LAYOUT | 1u << SQ_PAPER_MARKING | 1u << SQ_PAPER_TICKETS)

/* --- files ------------------------------------------------------------------------------------ */

/* A lay that is out of the house stays with the job. */
static void
keep_lays (SqPapersDialog *dialog, const GPtrArray *papers, const SqLays *lays)
{
  guint kinds = 0;
  for (guint i = 0; i < papers->len; i++)
    kinds |= 1u << ((const SqPaper *) g_ptr_array_index (papers, i))->kind;
  if (kinds & KINDS_OF_LAYS)
    sq_edit_keep_lays (dialog->document, lays);
}

static void
on_saved (gpointer owner, gpointer data, const GError *error)
{
  SqPapersDialog *dialog = owner;
  const SqPaperFile *file = data;
  g_autofree char *shown = g_filename_display_basename (file->path);
  g_autoptr (GFile) place = g_file_new_for_path (file->path);
  if (g_error_matches (error, SQ_ERROR, SQ_ERROR_CANCELLED))
    sq_papers_dialog_say (dialog, _ ("Stopped. Nothing was saved."), NULL);
  else if (error != NULL)
    sq_dialog_failed (GTK_WINDOW (dialog), place, TRUE, error);
  else
    {
      /* Translators: a file's name. */
      g_autofree char *text = g_strdup_printf (_ ("“%s” is saved."), shown);
      sq_papers_dialog_say (dialog, text, NULL);
      if (file->papers != NULL)
        keep_lays (dialog, file->papers, file->kept->lays);
    }
}

static SqKeptSpec *
new_spec_of_all (SqPapersDialog *dialog)
{
  SqPaperSpec spec = sq_paper_spec (dialog->lays, sq_figures_decimal (), dialog->today);
  return sq_kept_spec_new (&spec);
}

static void
on_file (GtkWindow *window, GFile *place, gpointer data)
{
  SqPapersDialog *dialog = SQ_PAPERS_DIALOG (window);
  SqPaperFileKind kind = (SqPaperFileKind) GPOINTER_TO_INT (data);
  g_autoptr (GError) error = NULL;
  if (place == NULL || dialog->lays == NULL || sq_saving_is_busy (dialog->saving)
      || (kind == SQ_FILE_PDF && !sq_papers_dialog_is_ready (dialog)))
    return;
  /* A table tells of the whole job, papers as they were chosen. */
  SqKeptSpec *kept = kind == SQ_FILE_PDF ? g_atomic_rc_box_acquire (dialog->kept)
                                         : new_spec_of_all (dialog);
  SqPaperFile *file = sq_paper_file_new (kind, place, kind == SQ_FILE_PDF ? dialog->papers : NULL,
                                         kept, &error);
  sq_kept_spec_unref (kept);
  sq_papers_dialog_say (dialog, "", NULL);
  if (file != NULL)
    sq_saving_begin (dialog->saving, sq_paper_file_write, file, (GDestroyNotify) sq_paper_file_free,
                     on_saved, G_OBJECT (dialog));
  else
    sq_dialog_failed (window, place, TRUE, error);
}

static void
ask_file (SqPapersDialog *dialog, SqPaperFileKind kind)
{
  const char *suffix = sq_paper_file_suffix (kind);
  g_autofree char *safe = sq_file_name (sq_document_get_title (dialog->document), _ ("Cushions"));
  g_autofree char *name = g_strconcat (safe, suffix, NULL);
  sq_dialog_export (GTK_WINDOW (dialog), sq_paper_file_title (kind), sq_paper_file_sort (kind),
                    suffix, name, on_file, GINT_TO_POINTER (kind));
}

static void
on_many_to_save (GtkWindow *window, SqAnswer answer, gpointer data)
{
  (void) data;
  if (answer == SQ_ANSWER_SAVE)
    ask_file (SQ_PAPERS_DIALOG (window), SQ_FILE_PDF);
}

void
sq_papers_dialog_save_pdf (SqPapersDialog *dialog)
{
  guint n = sq_papers_n_pages (dialog->papers);
  if (n > SQ_PAPERS_MANY)
    sq_dialog_many_pages (GTK_WINDOW (dialog), n, _ ("_Save them all"), on_many_to_save, NULL);
  else
    ask_file (dialog, SQ_FILE_PDF);
}

void
sq_papers_dialog_save_table (SqPapersDialog *dialog)
{
  ask_file (dialog, SQ_FILE_TABLE);
}

void
sq_papers_dialog_save_text (SqPapersDialog *dialog)
{
  ask_file (dialog, SQ_FILE_TEXT);
}

void
sq_papers_dialog_save_positions (SqPapersDialog *dialog)
{
  ask_file (dialog, SQ_FILE_POSITIONS);
}

void
sq_papers_dialog_save_json (SqPapersDialog *dialog)
{
  ask_file (dialog, SQ_FILE_JSON);
}

/* --- files for machines ----------------------------------------------------------------------- */

static void
on_machine_files_saved (GtkWindow *window, guint n, const char *first, const char *folder,
                        gboolean is_large)
{
  SqPapersDialog *dialog = SQ_PAPERS_DIALOG (window);
  SqMachineChoice choice = sq_machine_files_choice (dialog->machines);
  g_autofree char *shown = g_filename_display_name (first);
  g_autofree char *where = g_filename_display_basename (folder);
  /* Translators: how many files, and a folder's name. */
  g_autofree char *text = choice.apart
                              ? g_strdup_printf (ngettext ("%u file is saved in “%s”.",
                                                           "%u files are saved in “%s”.", n),
                                                 n, where)
                              : g_strdup_printf (_ ("“%s” is saved."), shown);
  sq_papers_dialog_say (
      dialog, text,
      is_large ? _ ("It goes beyond 32,767 plotter units (819 mm, 32 1/4 in), which older plotters "
                    "can’t draw. If yours stops there, save the pieces one by "
                    "one.")
               : NULL);
  if (choice.of == SQ_CUT_LAYS)
    sq_edit_keep_lays (dialog->document, dialog->lays);
}

void
sq_papers_dialog_save_machine_files (SqPapersDialog *dialog)
{
  const SqJob *job = sq_document_get_job (dialog->document);
  SqMachineChoice choice = sq_machine_files_choice (dialog->machines);
  g_autoptr (GArray) entries = NULL;
  g_autoptr (GError) error = NULL;
  sq_papers_dialog_say (dialog, "", NULL);
  if (sq_paper_choices_entries (dialog->choices, dialog->lays->plan, &entries, &error))
    sq_save_machine_files (GTK_WINDOW (dialog), dialog->saving, &choice, dialog->lays,
                           job->papers.wrong_side, entries,
                           sq_document_get_title (dialog->document), on_machine_files_saved);
  else
    sq_papers_dialog_say (dialog, "", error->message);
}

/* --- printing --------------------------------------------------------------------------------- */

/* What is being printed, and who wanted it. */
typedef struct
{
  SqPapersDialog *dialog;
  GPtrArray *papers;
  SqLays *lays;
} Printing;

static void
printing_free (gpointer data)
{
  Printing *printing = data;
  g_object_unref (printing->dialog);
  g_ptr_array_unref (printing->papers);
  sq_lays_unref (printing->lays);
  g_free (printing);
}

static void
on_printed (gboolean is_printed, const GError *error, gpointer data)
{
  const Printing *printing = data;
  SqPapersDialog *dialog = printing->dialog;
  g_autofree char *text = NULL;
  if (dialog->document == NULL)
    return;
  if (error != NULL)
    text = g_strdup_printf (_ ("Nothing was printed: %s"), error->message);
  else if (is_printed)
    {
      keep_lays (dialog, printing->papers, printing->lays);
      text = g_strdup (_ ("Handed to the printer."));
    }
  sq_papers_dialog_say (dialog, text != NULL ? text : "", NULL);
}

static void
print (SqPapersDialog *dialog, GPtrArray *papers)
{
  Printing *printing = g_new (Printing, 1);
  *printing = (Printing){ g_object_ref (dialog), g_ptr_array_ref (papers),
                          sq_lays_ref (dialog->lays) };
  sq_print_papers (GTK_WINDOW (dialog), papers, sq_document_get_title (dialog->document),
                   on_printed, printing, printing_free);
}

static void
on_many_to_print (GtkWindow *window, SqAnswer answer, gpointer data)
{
  SqPapersDialog *dialog = SQ_PAPERS_DIALOG (window);
  (void) data;
  if (answer == SQ_ANSWER_SAVE && sq_papers_dialog_is_ready (dialog))
    print (dialog, dialog->papers);
}

void
sq_papers_dialog_print (SqPapersDialog *dialog)
{
  guint n = sq_papers_n_pages (dialog->papers);
  if (n > SQ_PAPERS_MANY)
    sq_dialog_many_pages (GTK_WINDOW (dialog), n, _ ("_Print them all"), on_many_to_print, NULL);
  else
    print (dialog, dialog->papers);
}

void
sq_papers_dialog_print_test_page (SqPapersDialog *dialog)
{
  if (dialog->kept == NULL || !sq_lay_finder_is_current (dialog->finder))
    return;
  g_autoptr (GPtrArray) papers = g_ptr_array_new_with_free_func ((GDestroyNotify) sq_paper_unref);
  g_ptr_array_add (papers, sq_test_page_new (&dialog->kept->spec));
  print (dialog, papers);
}
