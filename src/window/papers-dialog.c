/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "window/papers-dialog.h"

#include "base/error.h"
#include "exchange/file-names.h"
#include "exchange/today.h"
#include "window/dialogs.h"
#include "window/edit-kept.h"
#include "window/figures.h"
#include "window/help.h"
#include "window/look.h"
#include "window/machine-files.h"
#include "window/make-papers.h"
#include "window/page-menu.h"
#include "window/paper-choices.h"
#include "window/paper-files.h"
#include "window/paper-preview.h"
#include "window/print-papers.h"
#include "window/save-machine-files.h"
#include "window/saving.h"
#include "window/value-group.h"
#include "words/paper-words.h"

#include <glib/gi18n.h>

/* Papers that a lay goes out of the house with. */
#define KINDS_OF_LAYS (1u << SQ_PAPER_LAYOUT | 1u << SQ_PAPER_MARKING | 1u << SQ_PAPER_TICKETS)
/* Than the window behind it (pixels). */
#define SMALLER 80

/* Papers of single pieces. */
#define KINDS_OF_PIECES (1u << SQ_PAPER_LABELS | 1u << SQ_PAPER_PATTERN)

struct _SqPapersDialog
{
  GtkWindow parent;
  SqDocument *document;
  SqLayFinder *finder;
  char *today;
  SqLays *lays;         /* what the papers are made of; NULL: none yet */
  SqKeptSpec *kept;     /* how; NULL: they can't be made so */
  GPtrArray *papers;    /* that are ready; NULL: none yet … */
  SqBackground *making; /* … and the rest is on its way; NULL: that is all */
  SqPaperChoices *choices;
  SqMachineFiles *machines;
  SqSaving *saving;
  GtkWidget *side, *foot, *refusal, *page, *back, *forth, *message, *print, *pdf, *csv, *text;
  GtkWidget *positions, *json, *note;
  SqPaperPreview *preview;
};

G_DEFINE_TYPE (SqPapersDialog, sq_papers_dialog, GTK_TYPE_WINDOW)

/* --- what it shows --------------------------------------------------------------------------- */

/* What became of what was saved or printed last, in the foot; and what the maker has to know of it above
 * (NULL: nothing). */
static void
say (SqPapersDialog *dialog, const char *text, const char *note)
{
  gtk_label_set_text (GTK_LABEL (dialog->message), text);
  gtk_label_set_text (GTK_LABEL (dialog->note), note != NULL ? note : "");
  gtk_widget_set_visible (dialog->note, note != NULL);
}

static void
show_page (SqPapersDialog *dialog)
{
  guint n = sq_paper_preview_n_pages (dialog->preview);
  guint i = sq_paper_preview_page (dialog->preview);
  g_autofree char *text = sq_paper_preview_words (dialog->preview);
  gtk_menu_button_set_label (GTK_MENU_BUTTON (dialog->page), text);
  gtk_widget_set_sensitive (dialog->page, n > 0);
  gtk_widget_set_sensitive (dialog->back, i > 0);
  gtk_widget_set_sensitive (dialog->forth, i + 1 < n);
}

/* Whether all papers that are wanted are made, and there are any. */
static gboolean
has_papers (SqPapersDialog *dialog)
{
  return sq_lay_finder_is_current (dialog->finder) && dialog->making == NULL
         && dialog->papers != NULL && dialog->papers->len > 0;
}

/* What can be taken away now. */
static void
show_ways_out (SqPapersDialog *dialog)
{
  gboolean is_current = sq_lay_finder_is_current (dialog->finder);
  gboolean is_free = !sq_saving_is_busy (dialog->saving);
  gtk_widget_set_sensitive (dialog->print, has_papers (dialog) && is_free);
  gtk_widget_set_sensitive (dialog->pdf, has_papers (dialog) && is_free);
  gtk_widget_set_sensitive (dialog->csv, is_current && is_free);
  gtk_widget_set_sensitive (dialog->text, is_current && is_free);
  gtk_widget_set_sensitive (dialog->positions, is_current && is_free);
  gtk_widget_set_sensitive (dialog->json, is_current && is_free);
  sq_machine_files_set_ready (dialog->machines, is_current && is_free);
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

/* --- making papers --------------------------------------------------------------------------- */

static void
show_papers (SqPapersDialog *dialog, GPtrArray *papers)
{
  if (papers != NULL)
    g_ptr_array_ref (papers);
  g_clear_pointer (&dialog->papers, g_ptr_array_unref);
  dialog->papers = papers;
  sq_paper_preview_set_papers (dialog->preview, papers);
}

static void
on_made (gpointer self, gpointer papers, gboolean is_over)
{
  SqPapersDialog *dialog = self;
  gboolean has_page = papers != NULL
                      && sq_papers_n_pages (papers) > sq_paper_preview_page (dialog->preview);
  if (is_over)
    g_clear_pointer (&dialog->making, sq_background_drop);
  /* The page that is looked at stays in sight until it comes again. */
  if (is_over || has_page)
    show_papers (dialog, papers);
  show_ways_out (dialog);
}

/* In the place of papers; NULL: they can be made. */
static void
show_refusal (SqPapersDialog *dialog, const char *why)
{
  sq_look_set_label (GTK_LABEL (dialog->refusal), why != NULL ? why : "");
  gtk_widget_set_visible (dialog->refusal, why != NULL);
  gtk_widget_set_visible (GTK_WIDGET (dialog->preview), why == NULL);
}

static SqKeptSpec *
new_spec (SqPapersDialog *dialog, guint kinds, GError **error)
{
  SqPaperSpec spec = sq_paper_spec (dialog->lays, sq_figures_decimal (), dialog->today);
  g_autoptr (GArray) entries = NULL;
  if ((kinds & KINDS_OF_PIECES)
      && !sq_paper_choices_entries (dialog->choices, dialog->lays->plan, &entries, error))
    return NULL;
  spec.entries = entries;
  spec.skipped_labels = sq_paper_choices_skipped (dialog->choices);
  return sq_paper_spec_check (&spec, kinds, error) ? sq_kept_spec_new (&spec) : NULL;
}

static void
make (SqPapersDialog *dialog)
{
  guint kinds = sq_paper_kinds (dialog->lays->plan->job);
  g_autoptr (GError) error = NULL;
  g_clear_pointer (&dialog->making, sq_background_drop);
  g_clear_pointer (&dialog->kept, sq_kept_spec_unref);
  dialog->kept = new_spec (dialog, kinds, &error);
  if (dialog->kept != NULL)
    dialog->making = sq_make_papers (G_OBJECT (dialog), kinds, dialog->kept, on_made);
  else
    show_papers (dialog, NULL);
  show_refusal (dialog, error != NULL ? error->message : NULL);
  show_ways_out (dialog);
}

/* The papers anew, as soon as the plan that is there now is laid. */
static void
follow (SqPapersDialog *dialog)
{
  const SqLays *lays = sq_lay_finder_get_lays (dialog->finder);
  if (sq_lay_finder_is_current (dialog->finder) && lays != dialog->lays)
    {
      g_clear_pointer (&dialog->lays, sq_lays_unref);
      dialog->lays = sq_lays_ref (lays);
      sq_paper_choices_show_revised (dialog->choices, is_revised (lays));
      make (dialog);
    }
  show_ways_out (dialog);
}

/* What the job does not keep was chosen. */
static void
on_chosen_otherwise (SqPapersDialog *dialog)
{
  if (dialog->lays != NULL)
    make (dialog);
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

/* --- taking away: files ---------------------------------------------------------------------- */

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
    say (dialog, _ ("Stopped. Nothing was saved."), NULL);
  else if (error != NULL)
    sq_dialog_failed (GTK_WINDOW (dialog), place, TRUE, error);
  else
    {
      /* Translators: a file's name. */
      g_autofree char *text = g_strdup_printf (_ ("“%s” is saved."), shown);
      say (dialog, text, NULL);
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
      || (kind == SQ_FILE_PDF && !has_papers (dialog)))
    return;
  /* A table tells of the whole job, papers as they were chosen. */
  SqKeptSpec *kept = kind == SQ_FILE_PDF ? g_atomic_rc_box_acquire (dialog->kept)
                                         : new_spec_of_all (dialog);
  SqPaperFile *file = sq_paper_file_new (kind, place, kind == SQ_FILE_PDF ? dialog->papers : NULL,
                                         kept, &error);
  sq_kept_spec_unref (kept);
  say (dialog, "", NULL);
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

static void
on_pdf (SqPapersDialog *dialog)
{
  guint n = sq_papers_n_pages (dialog->papers);
  if (n > SQ_PAPERS_MANY)
    sq_dialog_many_pages (GTK_WINDOW (dialog), n, _ ("_Save them all"), on_many_to_save, NULL);
  else
    ask_file (dialog, SQ_FILE_PDF);
}

static void
on_csv (SqPapersDialog *dialog)
{
  ask_file (dialog, SQ_FILE_TABLE);
}

static void
on_text (SqPapersDialog *dialog)
{
  ask_file (dialog, SQ_FILE_TEXT);
}

static void
on_positions (SqPapersDialog *dialog)
{
  ask_file (dialog, SQ_FILE_POSITIONS);
}

static void
on_json (SqPapersDialog *dialog)
{
  ask_file (dialog, SQ_FILE_JSON);
}

/* --- taking away: files for machines --------------------------------------------------------- */

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
  say (dialog, text,
       is_large
           ? _ ("It goes beyond 32,767 plotter units (819 mm, 32 1/4 in), which older plotters "
                "can’t draw. If yours stops there, save the pieces one by "
                "one.")
           : NULL);
  if (choice.of == SQ_CUT_LAYS)
    sq_edit_keep_lays (dialog->document, dialog->lays);
}

static void
on_machine_files (SqPapersDialog *dialog)
{
  const SqJob *job = sq_document_get_job (dialog->document);
  SqMachineChoice choice = sq_machine_files_choice (dialog->machines);
  g_autoptr (GArray) entries = NULL;
  g_autoptr (GError) error = NULL;
  say (dialog, "", NULL);
  if (sq_paper_choices_entries (dialog->choices, dialog->lays->plan, &entries, &error))
    sq_save_machine_files (GTK_WINDOW (dialog), dialog->saving, &choice, dialog->lays,
                           job->papers.wrong_side, entries,
                           sq_document_get_title (dialog->document), on_machine_files_saved);
  else
    say (dialog, "", error->message);
}

/* --- taking away: print ---------------------------------------------------------------------- */

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
  say (dialog, text != NULL ? text : "", NULL);
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
  if (answer == SQ_ANSWER_SAVE && has_papers (dialog))
    print (dialog, dialog->papers);
}

static void
on_print (SqPapersDialog *dialog)
{
  guint n = sq_papers_n_pages (dialog->papers);
  if (n > SQ_PAPERS_MANY)
    sq_dialog_many_pages (GTK_WINDOW (dialog), n, _ ("_Print them all"), on_many_to_print, NULL);
  else
    print (dialog, dialog->papers);
}

/* Of patterns as they are chosen, if they can be made so. */
static void
on_test_page (SqPapersDialog *dialog)
{
  if (dialog->kept == NULL || !sq_lay_finder_is_current (dialog->finder))
    return;
  g_autoptr (GPtrArray) papers = g_ptr_array_new_with_free_func ((GDestroyNotify) sq_paper_unref);
  g_ptr_array_add (papers, sq_test_page_new (&dialog->kept->spec));
  print (dialog, papers);
}

/* --- the window ------------------------------------------------------------------------------ */

/* Of the paper that is looked at. */
static const char *
help_page (SqPapersDialog *dialog)
{
  static const char *const pages[SQ_N_PAPER_KINDS] = {
    [SQ_PAPER_CUT_LIST] = "cut-list", [SQ_PAPER_LAYOUT] = "layout", [SQ_PAPER_MARKING] = "marking",
    [SQ_PAPER_TICKETS] = "labels",    [SQ_PAPER_LABELS] = "labels", [SQ_PAPER_PATTERN] = "patterns",
  };
  guint i;
  const SqPaper *paper = sq_paper_preview_paper (dialog->preview, &i);
  return pages[paper != NULL ? paper->kind : SQ_PAPER_CUT_LIST];
}

/* Escape stops what is being saved; then it closes. F1 tells of the paper that is looked at. */
static gboolean
on_key (GtkEventControllerKey *controller, guint keyval, guint code, GdkModifierType state,
        SqPapersDialog *dialog)
{
  (void) controller, (void) code, (void) state;
  if (keyval == GDK_KEY_F1)
    sq_help_show (GTK_WINDOW (dialog), help_page (dialog));
  else if (keyval == GDK_KEY_Escape && sq_saving_is_busy (dialog->saving))
    sq_saving_stop (dialog->saving);
  else if (keyval == GDK_KEY_Escape)
    gtk_window_close (GTK_WINDOW (dialog));
  else
    return GDK_EVENT_PROPAGATE;
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
  g_clear_pointer (&dialog->making, sq_background_drop);
  g_clear_pointer (&dialog->kept, sq_kept_spec_unref);
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
  BIND (side);
  BIND (foot);
  BIND (refusal);
  BIND (page);
  BIND (back);
  BIND (forth);
  BIND (message);
  BIND (note);
  BIND (print);
  BIND (pdf);
  BIND (csv);
  BIND (text);
  BIND (positions);
  BIND (json);
  BIND (preview);
  CALL (on_back);
  CALL (on_forth);
  CALL (on_print);
  CALL (on_pdf);
  CALL (on_csv);
  CALL (on_text);
  CALL (on_positions);
  CALL (on_json);
  CALL (show_page);
}

static void
sq_papers_dialog_init (SqPapersDialog *dialog)
{
  GtkEventController *key = gtk_event_controller_key_new ();
  gtk_widget_init_template (GTK_WIDGET (dialog));
  gtk_menu_button_set_popover (GTK_MENU_BUTTON (dialog->page), sq_page_menu_new (dialog->preview));
  dialog->saving = SQ_SAVING (sq_saving_new ());
  gtk_box_insert_child_after (GTK_BOX (dialog->foot), GTK_WIDGET (dialog->saving), dialog->forth);
  g_signal_connect_swapped (dialog->saving, "changed", G_CALLBACK (show_ways_out), dialog);
  g_signal_connect (key, "key-pressed", G_CALLBACK (on_key), dialog);
  gtk_widget_add_controller (GTK_WIDGET (dialog), key);
}

/* The choices, under their heading, and below them files for machines. */
static void
add_choices (SqPapersDialog *dialog)
{
  GtkWidget *choices = sq_paper_choices_new (dialog->document, dialog->today);
  GtkWidget *machines = sq_machine_files_new ();
  GtkWidget *group = sq_value_group_new (_ ("For plotters and cutting tables"), "machine-files",
                                         TRUE);
  dialog->choices = SQ_PAPER_CHOICES (choices);
  dialog->machines = SQ_MACHINE_FILES (machines);
  sq_value_group_add (SQ_VALUE_GROUP (group), machines);
  sq_help_on_f1 (machines, "machines");
  gtk_box_insert_child_after (GTK_BOX (dialog->side), choices,
                              gtk_widget_get_first_child (dialog->side));
  gtk_box_insert_child_after (GTK_BOX (dialog->side), group, choices);
  g_signal_connect_object (choices, "changed", G_CALLBACK (on_chosen_otherwise), dialog,
                           G_CONNECT_SWAPPED);
  g_signal_connect_object (choices, "test-page", G_CALLBACK (on_test_page), dialog,
                           G_CONNECT_SWAPPED);
  g_signal_connect_object (machines, "save", G_CALLBACK (on_machine_files), dialog,
                           G_CONNECT_SWAPPED);
}

/* Papers want to be looked at: nearly as large as the window behind. */
static void
set_size (SqPapersDialog *dialog, GtkWidget *parent)
{
  int width, height;
  gtk_window_get_default_size (GTK_WINDOW (dialog), &width, &height);
  gtk_window_set_default_size (GTK_WINDOW (dialog),
                               MAX (width, gtk_widget_get_width (parent) - SMALLER),
                               MAX (height, gtk_widget_get_height (parent) - SMALLER));
}

void
sq_papers_dialog (GtkWindow *parent, SqDocument *document, SqLayFinder *finder)
{
  SqPapersDialog *dialog = g_object_new (SQ_TYPE_PAPERS_DIALOG, "transient-for", parent, NULL);
  dialog->document = g_object_ref (document);
  dialog->finder = g_object_ref (finder);
  dialog->today = sq_today ();
  add_choices (dialog);
  set_size (dialog, GTK_WIDGET (parent));
  g_signal_connect_swapped (finder, "changed", G_CALLBACK (follow), dialog);
  sq_lay_finder_hold (finder); /* what is looked at, and printed, stays what it is */
  if (sq_lay_finder_is_stopped (finder))
    sq_lay_finder_again (finder); /* without lays there is no paper */
  follow (dialog);
  gtk_window_present (GTK_WINDOW (dialog));
  gtk_widget_grab_focus (GTK_WIDGET (dialog->preview));
}
