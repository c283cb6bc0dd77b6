/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "window/papers-dialog-private.h"

#include "exchange/today.h"
#include "window/figures.h"
#include "window/help.h"
#include "window/look.h"
#include "window/make-papers.h"
#include "window/page-menu.h"
#include "window/value-group.h"

#include <glib/gi18n.h>

/* Than the window behind it (pixels). */
#define SMALLER 80

/* Papers of single pieces. */
#define KINDS_OF_PIECES (1u << SQ_PAPER_LABELS | 1u << SQ_PAPER_PATTERN)

G_DEFINE_TYPE (SqPapersDialog, sq_papers_dialog, GTK_TYPE_WINDOW)

/* --- what it shows --------------------------------------------------------------------------- */

void
sq_papers_dialog_say (SqPapersDialog *dialog, const char *text, const char *note)
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
  gboolean waits = n == 0 && dialog->finder != NULL && !sq_lay_finder_is_current (dialog->finder);
  gtk_menu_button_set_label (GTK_MENU_BUTTON (dialog->page),
                             waits ? _ ("The pieces are being laid…") : text);
  gtk_widget_set_sensitive (dialog->page, n > 0);
  gtk_widget_set_sensitive (dialog->back, i > 0);
  gtk_widget_set_sensitive (dialog->forth, i + 1 < n);
}

gboolean
sq_papers_dialog_is_ready (SqPapersDialog *dialog)
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
  gtk_widget_set_sensitive (dialog->print, sq_papers_dialog_is_ready (dialog) && is_free);
  gtk_widget_set_sensitive (dialog->pdf, sq_papers_dialog_is_ready (dialog) && is_free);
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
  show_page (dialog);
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
  CALL (sq_papers_dialog_print);
  CALL (sq_papers_dialog_save_pdf);
  CALL (sq_papers_dialog_save_table);
  CALL (sq_papers_dialog_save_text);
  CALL (sq_papers_dialog_save_positions);
  CALL (sq_papers_dialog_save_json);
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
  g_signal_connect_object (choices, "test-page", G_CALLBACK (sq_papers_dialog_print_test_page),
                           dialog, G_CONNECT_SWAPPED);
  g_signal_connect_object (machines, "save", G_CALLBACK (sq_papers_dialog_save_machine_files),
                           dialog, G_CONNECT_SWAPPED);
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
