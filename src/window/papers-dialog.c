/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "window/papers-dialog.h"

#include "exchange/save-file.h"
#include "exchange/today.h"
#include "job/names.h"
#include "window/dialogs.h"
#include "window/edit-kept.h"
#include "window/edit-papers.h"
#include "window/figures.h"
#include "window/help.h"
#include "window/paper-preview.h"
#include "window/print-papers.h"
#include "words/cut-list-csv.h"
#include "words/cut-list.h"
#include "words/lengths.h"
#include "words/paper-words.h"

#include <glib/gi18n.h>
#include <string.h>

/* What is written to a file. */
typedef enum
{
  OUT_PDF,
  OUT_CSV,
  OUT_TEXT,
} Out;

struct _SqPapersDialog
{
  GtkWindow parent;
  SqDocument *document;
  SqLayFinder *finder;
  char *today;
  SqLays *lays;      /* what the papers were made of … */
  GPtrArray *papers; /* … NULL: none yet */
  gboolean is_showing;
  GtkWidget *kinds[SQ_N_PAPER_KINDS];
  GtkWidget *cut_list, *layout, *sheet, *state, *revision_box, *revision;
  GtkWidget *page, *back, *forth, *message, *print, *pdf, *csv, *text;
  SqPaperPreview *preview;
};

G_DEFINE_TYPE (SqPapersDialog, sq_papers_dialog, GTK_TYPE_WINDOW)

/* --- what it shows --------------------------------------------------------------------------- */

static void
say (SqPapersDialog *dialog, const char *text)
{
  gtk_label_set_text (GTK_LABEL (dialog->message), text);
}

static SqPaperSpec
spec_of (SqPapersDialog *dialog)
{
  return sq_paper_spec (dialog->lays, sq_figures_decimal (), dialog->today);
}

static void
show_page (SqPapersDialog *dialog)
{
  guint n = sq_paper_preview_n_pages (dialog->preview);
  guint i = sq_paper_preview_page (dialog->preview);
  g_autofree char *text = n > 0 ? sq_words_page (i + 1, n) : g_strdup ("");
  gtk_label_set_text (GTK_LABEL (dialog->page), text);
  gtk_widget_set_sensitive (dialog->back, i > 0);
  gtk_widget_set_sensitive (dialog->forth, i + 1 < n);
}

/* Whether a lay that was printed does not fit the pieces any more. */
static gboolean
is_revised (const SqLays *lays)
{
  for (guint i = 0; i < lays->cloths->len; i++)
    if (sq_lays_cloth (lays, i)->kept != NULL && !sq_lays_cloth (lays, i)->is_kept)
      return TRUE;
  return FALSE;
}

static void
show_choice (SqPapersDialog *dialog)
{
  const SqJob *job = sq_document_get_job (dialog->document);
  guint kinds = sq_paper_kinds (job);
  g_autofree char *state = sq_words_paper_state (job, dialog->today);
  g_autofree char *next = sq_revision_name (job->revision + 1);
  g_autofree char *make = g_strdup_printf (_ ("_Make it revision %s"), next);
  dialog->is_showing = TRUE;
  for (guint i = 0; i < SQ_N_PAPER_KINDS; i++)
    if (dialog->kinds[i] != NULL)
      gtk_check_button_set_active (GTK_CHECK_BUTTON (dialog->kinds[i]), kinds & 1u << i);
  if (dialog->lays != NULL)
    gtk_drop_down_set_selected (GTK_DROP_DOWN (dialog->sheet), spec_of (dialog).sheet);
  dialog->is_showing = FALSE;
  gtk_label_set_text (GTK_LABEL (dialog->state), state);
  gtk_label_set_label (GTK_LABEL (dialog->revision), make);
  gtk_widget_set_visible (dialog->revision_box, dialog->lays != NULL && is_revised (dialog->lays));
}

/* The papers anew, as soon as the plan that is there now is laid. */
static void
follow (SqPapersDialog *dialog)
{
  gboolean is_current = sq_lay_finder_is_current (dialog->finder);
  const SqLays *lays = sq_lay_finder_get_lays (dialog->finder);
  if (is_current && lays != dialog->lays)
    {
      g_clear_pointer (&dialog->lays, sq_lays_unref);
      g_clear_pointer (&dialog->papers, g_ptr_array_unref);
      dialog->lays = sq_lays_ref (lays);
      SqPaperSpec spec = spec_of (dialog);
      dialog->papers = sq_papers_new (sq_paper_kinds (lays->plan->job), &spec);
      sq_paper_preview_set_papers (dialog->preview, dialog->papers);
    }
  show_choice (dialog);
  show_page (dialog);
  gtk_widget_set_sensitive (dialog->print, is_current && dialog->papers->len > 0);
  gtk_widget_set_sensitive (dialog->pdf, is_current && dialog->papers->len > 0);
  gtk_widget_set_sensitive (dialog->csv, is_current);
  gtk_widget_set_sensitive (dialog->text, is_current);
}

/* --- choices --------------------------------------------------------------------------------- */

static void
on_kind (GtkCheckButton *check, GParamSpec *spec, SqPapersDialog *dialog)
{
  (void) spec;
  for (guint i = 0; i < SQ_N_PAPER_KINDS && !dialog->is_showing; i++)
    if (dialog->kinds[i] == GTK_WIDGET (check))
      sq_edit_paper_kind (dialog->document, (SqPaperKind) i, gtk_check_button_get_active (check));
}

static void
on_sheet (GtkDropDown *drop_down, GParamSpec *spec, SqPapersDialog *dialog)
{
  (void) spec;
  if (!dialog->is_showing && dialog->document != NULL)
    sq_edit_paper_sheet (dialog->document, (SqSheet) gtk_drop_down_get_selected (drop_down));
}

static void
on_revision (SqPapersDialog *dialog)
{
  sq_edit_next_revision (dialog->document);
}

static void
on_back (SqPapersDialog *dialog)
{
  sq_paper_preview_turn (dialog->preview, -1);
}

static void
on_forth (SqPapersDialog *dialog)
{
  sq_paper_preview_turn (dialog->preview, 1);
}

/* --- taking away ----------------------------------------------------------------------------- */

/* A layout that is out of the house stays with the job. */
static void
keep_lays (SqPapersDialog *dialog)
{
  if (sq_paper_kinds (dialog->lays->plan->job) & 1u << SQ_PAPER_LAYOUT)
    sq_edit_keep_lays (dialog->document, dialog->lays);
}

static GBytes *
bytes_of (SqPapersDialog *dialog, Out out, GError **error)
{
  const SqPlan *plan = dialog->lays->plan;
  SqPaperSpec spec = spec_of (dialog);
  SqLengthStyle style = sq_words_length_style (plan->job, sq_figures_decimal ());
  char *text;
  switch (out)
    {
    case OUT_PDF:
      return sq_papers_to_pdf (dialog->papers, NULL, &spec, NULL, error);
    case OUT_CSV:
      text = sq_words_cut_list_csv (plan);
      break;
    case OUT_TEXT:
    default:
      text = sq_words_cut_list (plan, dialog->lays, &style);
      break;
    }
  return g_bytes_new_take (text, strlen (text));
}

static void
save (SqPapersDialog *dialog, GFile *file, Out out)
{
  g_autoptr (GError) error = NULL;
  g_autoptr (GBytes) bytes = bytes_of (dialog, out, &error);
  g_autofree char *path = g_file_get_path (file);
  g_autofree char *name = g_file_get_basename (file);
  g_autofree char *shown = g_filename_display_name (name);
  if (bytes == NULL || path == NULL
      || !sq_file_save (path, g_bytes_get_data (bytes, NULL), g_bytes_get_size (bytes), &error))
    {
      if (error == NULL)
        error = g_error_new_literal (G_IO_ERROR, G_IO_ERROR_NOT_SUPPORTED,
                                     _ ("Files can be saved on this computer only."));
      sq_dialog_failed (GTK_WINDOW (dialog), file, TRUE, error);
      return;
    }
  /* Translators: a file's name. */
  g_autofree char *text = g_strdup_printf (_ ("“%s” is saved."), shown);
  if (out == OUT_PDF)
    keep_lays (dialog);
  say (dialog, text);
}

static void
on_chosen (GtkWindow *window, GFile *file, gpointer out)
{
  SqPapersDialog *dialog = SQ_PAPERS_DIALOG (window);
  if (file != NULL && dialog->lays != NULL)
    save (dialog, file, (Out) GPOINTER_TO_INT (out));
}

static void
ask (SqPapersDialog *dialog, Out out)
{
  static const struct
  {
    const char *title, *kind, *suffix;
  } kinds[] = {
    [OUT_PDF] = { N_ ("Save as PDF"), N_ ("PDF files"), ".pdf" },
    [OUT_CSV] = { N_ ("Save as a table"), N_ ("Tables with commas"), ".csv" },
    [OUT_TEXT] = { N_ ("Save as text"), N_ ("Text files"), ".txt" },
  };
  g_autofree char *name = g_strconcat (sq_document_get_title (dialog->document), kinds[out].suffix,
                                       NULL);
  g_strdelimit (name, "/", '-');
  sq_dialog_export (GTK_WINDOW (dialog), _ (kinds[out].title), _ (kinds[out].kind),
                    kinds[out].suffix, name, on_chosen, GINT_TO_POINTER (out));
}

static void
on_pdf (SqPapersDialog *dialog)
{
  ask (dialog, OUT_PDF);
}

static void
on_csv (SqPapersDialog *dialog)
{
  ask (dialog, OUT_CSV);
}

static void
on_text (SqPapersDialog *dialog)
{
  ask (dialog, OUT_TEXT);
}

static void
on_printed (gboolean is_printed, const GError *error, gpointer data)
{
  SqPapersDialog *dialog = data;
  g_autofree char *text = NULL;
  if (dialog->document == NULL)
    return;
  if (error != NULL)
    text = g_strdup_printf (_ ("Nothing was printed: %s"), error->message);
  else if (is_printed)
    {
      keep_lays (dialog);
      text = g_strdup (_ ("Handed to the printer."));
    }
  say (dialog, text != NULL ? text : "");
}

static void
on_print (SqPapersDialog *dialog)
{
  sq_print_papers (GTK_WINDOW (dialog), dialog->papers, spec_of (dialog).sheet,
                   sq_document_get_title (dialog->document), on_printed, g_object_ref (dialog),
                   g_object_unref);
}

/* --- the window ------------------------------------------------------------------------------ */

static gboolean
on_key (GtkEventControllerKey *controller, guint keyval, guint code, GdkModifierType state,
        GtkWindow *window)
{
  (void) controller, (void) code, (void) state;
  if (keyval != GDK_KEY_Escape)
    return GDK_EVENT_PROPAGATE;
  gtk_window_close (window);
  return GDK_EVENT_STOP;
}

static void
sq_papers_dialog_dispose (GObject *object)
{
  SqPapersDialog *dialog = SQ_PAPERS_DIALOG (object);
  if (dialog->finder != NULL)
    {
      g_signal_handlers_disconnect_by_data (dialog->finder, dialog);
      sq_lay_finder_release (dialog->finder);
    }
  g_clear_object (&dialog->finder);
  g_clear_object (&dialog->document);
  g_clear_pointer (&dialog->lays, sq_lays_unref);
  g_clear_pointer (&dialog->papers, g_ptr_array_unref);
  g_clear_pointer (&dialog->today, g_free);
  G_OBJECT_CLASS (sq_papers_dialog_parent_class)->dispose (object);
}

#define BIND(name) gtk_widget_class_bind_template_child (widget_class, SqPapersDialog, name)
#define CALL(name) gtk_widget_class_bind_template_callback (widget_class, name)

static void
sq_papers_dialog_class_init (SqPapersDialogClass *class)
{
  GtkWidgetClass *widget_class = GTK_WIDGET_CLASS (class);
  G_OBJECT_CLASS (class)->dispose = sq_papers_dialog_dispose;
  g_type_ensure (SQ_TYPE_PAPER_PREVIEW);
  gtk_widget_class_set_template_from_resource (widget_class, "/org/squab/Squab/papers-dialog.ui");
  BIND (cut_list);
  BIND (layout);
  BIND (sheet);
  BIND (state);
  BIND (revision_box);
  BIND (revision);
  BIND (page);
  BIND (back);
  BIND (forth);
  BIND (message);
  BIND (print);
  BIND (pdf);
  BIND (csv);
  BIND (text);
  BIND (preview);
  CALL (on_kind);
  CALL (on_sheet);
  CALL (on_revision);
  CALL (on_back);
  CALL (on_forth);
  CALL (on_print);
  CALL (on_pdf);
  CALL (on_csv);
  CALL (on_text);
  CALL (show_page);
}

static void
sq_papers_dialog_init (SqPapersDialog *dialog)
{
  GtkEventController *key = gtk_event_controller_key_new ();
  dialog->is_showing = TRUE;
  gtk_widget_init_template (GTK_WIDGET (dialog));
  dialog->is_showing = FALSE;
  dialog->kinds[SQ_PAPER_CUT_LIST] = dialog->cut_list;
  dialog->kinds[SQ_PAPER_LAYOUT] = dialog->layout;
  g_signal_connect (key, "key-pressed", G_CALLBACK (on_key), dialog);
  gtk_widget_add_controller (GTK_WIDGET (dialog), key);
}

void
sq_papers_dialog (GtkWindow *parent, SqDocument *document, SqLayFinder *finder)
{
  SqPapersDialog *dialog = g_object_new (SQ_TYPE_PAPERS_DIALOG, "transient-for", parent, NULL);
  dialog->document = g_object_ref (document);
  dialog->finder = g_object_ref (finder);
  dialog->today = sq_today ();
  g_signal_connect_swapped (finder, "changed", G_CALLBACK (follow), dialog);
  sq_lay_finder_hold (finder); /* what is looked at, and printed, stays what it is */
  if (sq_lay_finder_is_stopped (finder))
    sq_lay_finder_again (finder); /* without lays there is no paper */
  follow (dialog);
  sq_help_on_f1 (GTK_WINDOW (dialog), "cut-list");
  gtk_window_present (GTK_WINDOW (dialog));
  gtk_widget_grab_focus (GTK_WIDGET (dialog->preview));
}
