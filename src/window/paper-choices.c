/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "window/paper-choices.h"

#include "base/error.h"
#include "base/ranges.h"
#include "job/names.h"
#include "window/edit-papers.h"
#include "window/form.h"
#include "window/help.h"
#include "window/label-choices.h"
#include "window/pattern-choices.h"
#include "window/value-row.h"
#include "words/paper-words.h"

#include <glib/gi18n.h>

#define WRAP_CHARS 36

struct _SqPaperChoices
{
  GtkBox parent;
  SqDocument *document;
  char *today;
  gboolean is_showing;
  GtkWidget *everything, *kinds[SQ_N_PAPER_KINDS];
  GtkWidget *patterns, *labels; /* their choices */
  SqValueRow *sheet, *side, *pieces;
  char *pieces_text; /* "": all */
  GtkWidget *state, *revision_box, *revision, *revision_words;
};

G_DEFINE_TYPE (SqPaperChoices, sq_paper_choices, GTK_TYPE_BOX)

static guint changed_signal, test_page_signal;

/* --- what it shows --------------------------------------------------------------------------- */

static void
show_kinds (SqPaperChoices *choices, guint kinds)
{
  gboolean is_all = kinds == SQ_ALL_PAPER_KINDS;
  for (guint i = 0; i < SQ_N_PAPER_KINDS; i++)
    gtk_check_button_set_active (GTK_CHECK_BUTTON (choices->kinds[i]), kinds & 1u << i);
  gtk_check_button_set_active (GTK_CHECK_BUTTON (choices->everything), is_all);
  gtk_check_button_set_inconsistent (GTK_CHECK_BUTTON (choices->everything), kinds != 0 && !is_all);
  gtk_widget_set_visible (choices->labels, kinds & 1u << SQ_PAPER_LABELS);
  gtk_widget_set_visible (choices->patterns, kinds & 1u << SQ_PAPER_PATTERN);
}

static void
show_sheet (SqPaperChoices *choices, const SqJob *job)
{
  guint values[SQ_N_SHEETS];
  const char *names[SQ_N_SHEETS];
  for (guint i = 0; i < SQ_N_SHEETS; i++)
    {
      values[i] = i;
      names[i] = sq_words_sheet ((SqSheet) i);
    }
  sq_value_row_show_choice (choices->sheet, sq_job_sheet (job), values, names, SQ_N_SHEETS,
                            job->given & SQ_GIVEN_SHEET);
}

static void
show_side (SqPaperChoices *choices, gboolean wrong_side)
{
  const guint values[] = { FALSE, TRUE };
  const char *names[] = { _ ("Right side"), _ ("Wrong side") };
  sq_value_row_show_choice (choices->side, wrong_side, values, names, G_N_ELEMENTS (values),
                            wrong_side);
}

static void
show (SqPaperChoices *choices)
{
  const SqJob *job = sq_document_get_job (choices->document);
  g_autofree char *state = sq_words_paper_state (job, choices->today);
  g_autofree char *next = sq_revision_name (job->revision + 1);
  g_autofree char *make = g_strdup_printf (_ ("Ma_ke it revision %s"), next);
  choices->is_showing = TRUE;
  show_kinds (choices, sq_paper_kinds (job));
  choices->is_showing = FALSE;
  show_sheet (choices, job);
  show_side (choices, job->papers.wrong_side);
  sq_value_row_show_entry (choices->pieces, choices->pieces_text, _ ("all"),
                           choices->pieces_text[0] != '\0');
  gtk_label_set_text (GTK_LABEL (choices->state), state);
  gtk_label_set_label (GTK_LABEL (choices->revision_words), make);
  gtk_accessible_update_property (GTK_ACCESSIBLE (choices->revision), GTK_ACCESSIBLE_PROPERTY_LABEL,
                                  gtk_label_get_text (GTK_LABEL (choices->revision_words)), -1);
}

void
sq_paper_choices_show_revised (SqPaperChoices *choices, gboolean is_revised)
{
  g_return_if_fail (SQ_IS_PAPER_CHOICES (choices));
  gtk_widget_set_visible (choices->revision_box, is_revised);
}

/* --- which papers ---------------------------------------------------------------------------- */

static void
edit_kinds (SqPaperChoices *choices, guint kinds, gboolean is_given)
{
  const SqJob *job = sq_document_get_job (choices->document);
  guint32 given = sq_edit_papers_given (job);
  SqPapersChoice papers = job->papers;
  papers.kinds = kinds;
  sq_edit_papers (choices->document, &papers,
                  is_given ? given | SQ_GIVEN_PAPER_KINDS : given & ~SQ_GIVEN_PAPER_KINDS);
}

static void
on_kind (GtkCheckButton *check, GParamSpec *spec, SqPaperChoices *choices)
{
  guint kinds = sq_paper_kinds (sq_document_get_job (choices->document));
  gboolean is_wanted = gtk_check_button_get_active (check);
  (void) spec;
  if (choices->is_showing)
    return;
  for (guint i = 0; i < SQ_N_PAPER_KINDS; i++)
    if (choices->kinds[i] == GTK_WIDGET (check))
      kinds = is_wanted ? kinds | 1u << i : kinds & ~(1u << i);
  edit_kinds (choices, kinds, TRUE);
}

/* Off again, it is what is usual. */
static void
on_everything (SqPaperChoices *choices)
{
  if (choices->is_showing)
    return;
  if (gtk_check_button_get_active (GTK_CHECK_BUTTON (choices->everything)))
    edit_kinds (choices, SQ_ALL_PAPER_KINDS, TRUE);
  else
    edit_kinds (choices, 0, FALSE);
}

/* --- how they are ---------------------------------------------------------------------------- */

static void
edit_sheet (SqPaperChoices *choices, SqSheet sheet, gboolean is_given)
{
  const SqJob *job = sq_document_get_job (choices->document);
  guint32 given = sq_edit_papers_given (job);
  SqPapersChoice papers = job->papers;
  papers.sheet = sheet;
  sq_edit_papers (choices->document, &papers,
                  is_given ? given | SQ_GIVEN_SHEET : given & ~SQ_GIVEN_SHEET);
}

static void
on_sheet (SqPaperChoices *choices, guint value)
{
  edit_sheet (choices, (SqSheet) value, TRUE);
}

static void
on_sheet_back (SqPaperChoices *choices)
{
  edit_sheet (choices, sq_document_get_job (choices->document)->papers.sheet, FALSE);
}

static void
on_side (SqPaperChoices *choices, guint value)
{
  const SqJob *job = sq_document_get_job (choices->document);
  SqPapersChoice papers = job->papers;
  papers.wrong_side = value != 0;
  sq_edit_papers (choices->document, &papers, sq_edit_papers_given (job));
}

static void
on_side_back (SqPaperChoices *choices)
{
  on_side (choices, FALSE);
}

static void
on_pieces (SqPaperChoices *choices, const char *text)
{
  const SqPlan *plan = sq_document_get_plan (choices->document);
  g_autoptr (GArray) entries = NULL;
  g_autoptr (GError) error = NULL;
  char *own = g_strstrip (g_strdup (text));
  g_free (choices->pieces_text);
  choices->pieces_text = own;
  show (choices);
  sq_paper_choices_entries (choices, plan, &entries, &error);
  sq_value_row_say (choices->pieces, error != NULL ? error->message : "");
  g_signal_emit (choices, changed_signal, 0);
}

static void
on_pieces_back (SqPaperChoices *choices)
{
  on_pieces (choices, "");
}

static void
on_skipped (SqPaperChoices *choices)
{
  g_signal_emit (choices, changed_signal, 0);
}

static void
on_test_page (SqPaperChoices *choices)
{
  g_signal_emit (choices, test_page_signal, 0);
}

static void
on_revision (SqPaperChoices *choices)
{
  sq_edit_next_revision (choices->document);
}

/* --- what of it the job does not keep -------------------------------------------------------- */

gboolean
sq_paper_choices_entries (SqPaperChoices *choices, const SqPlan *plan, GArray **entries,
                          GError **error)
{
  g_return_val_if_fail (SQ_IS_PAPER_CHOICES (choices), FALSE);
  *entries = NULL;
  if (choices->pieces_text[0] == '\0')
    return TRUE;
  *entries = sq_ranges_read (choices->pieces_text, plan->cut_list->len);
  if (*entries == NULL)
    {
      g_set_error (error, SQ_ERROR, SQ_ERROR_VALUE,
                   _ ("“%s” names no pieces. Type their numbers in the cut list, 1 to %u, as "
                      "1, 3-5."),
                   choices->pieces_text, plan->cut_list->len);
      return FALSE;
    }
  for (guint i = 0; i < (*entries)->len; i++)
    g_array_index (*entries, guint, i)--; /* numbers are from 1 */
  return TRUE;
}

guint
sq_paper_choices_skipped (SqPaperChoices *choices)
{
  g_return_val_if_fail (SQ_IS_PAPER_CHOICES (choices), 0);
  return sq_label_choices_skipped (SQ_LABEL_CHOICES (choices->labels));
}

/* --- making ---------------------------------------------------------------------------------- */

static GtkWidget *
add_check (SqPaperChoices *choices, const char *label)
{
  GtkWidget *check = sq_form_check (label);
  gtk_box_append (GTK_BOX (choices), check);
  return check;
}

/* Choices of the kind above. */
static GtkWidget *
add_below (SqPaperChoices *choices, GtkWidget *below)
{
  gtk_widget_add_css_class (below, "below");
  gtk_box_append (GTK_BOX (choices), below);
  return below;
}

static void
add_kinds (SqPaperChoices *choices)
{
  static const char *const names[SQ_N_PAPER_KINDS] = {
    [SQ_PAPER_CUT_LIST] = N_ ("_Cut list"),     [SQ_PAPER_LAYOUT] = N_ ("_Layout on the cloth"),
    [SQ_PAPER_MARKING] = N_ ("_Marking guide"), [SQ_PAPER_TICKETS] = N_ ("Cut t_ickets"),
    [SQ_PAPER_LABELS] = N_ ("La_bels"),         [SQ_PAPER_PATTERN] = N_ ("Patter_ns"),
  };
  choices->everything = add_check (choices, _ ("_Everything for the workshop"));
  g_signal_connect_swapped (choices->everything, "notify::active", G_CALLBACK (on_everything),
                            choices);
  for (guint i = 0; i < SQ_N_PAPER_KINDS; i++)
    {
      choices->kinds[i] = add_check (choices, _ (names[i]));
      g_signal_connect (choices->kinds[i], "notify::active", G_CALLBACK (on_kind), choices);
      if (i == SQ_PAPER_LABELS)
        choices->labels = add_below (choices, sq_label_choices_new (choices->document));
      if (i == SQ_PAPER_PATTERN)
        choices->patterns = add_below (choices, sq_pattern_choices_new (choices->document));
    }
  sq_help_on_f1 (choices->labels, "labels");
  sq_help_on_f1 (choices->patterns, "patterns");
  g_signal_connect_swapped (choices->labels, "skipped", G_CALLBACK (on_skipped), choices);
  g_signal_connect_swapped (choices->patterns, "test-page", G_CALLBACK (on_test_page), choices);
}

static SqValueRow *
add_row (SqPaperChoices *choices, GtkWidget *row, const char *tip, const char *given,
         GCallback on_given, GCallback on_back)
{
  gtk_widget_set_tooltip_text (row, tip);
  g_signal_connect_swapped (row, given, on_given, choices);
  g_signal_connect_swapped (row, "back", on_back, choices);
  gtk_box_append (GTK_BOX (choices), row);
  return SQ_VALUE_ROW (row);
}

static void
add_rows (SqPaperChoices *choices)
{
  choices->sheet = add_row (choices, sq_value_row_new_choice (_ ("S_heet")),
                            _ ("Of all papers but patterns"), "choice", G_CALLBACK (on_sheet),
                            G_CALLBACK (on_sheet_back));
  gtk_widget_add_css_class (GTK_WIDGET (choices->sheet), "common");
  choices->side = add_row (choices, sq_value_row_new_choice (_ ("Marked _on")),
                           _ ("The side of the cloth that marking guide, patterns and files for "
                              "machines are made for"),
                           "choice", G_CALLBACK (on_side), G_CALLBACK (on_side_back));
  choices->pieces = add_row (choices, sq_value_row_new_entry (_ ("_Which pieces"), NULL),
                             _ ("Which numbers of the cut list, as 1, 3-5: of patterns, labels and "
                                "files for machines"),
                             "text", G_CALLBACK (on_pieces), G_CALLBACK (on_pieces_back));
}

static GtkWidget *
new_words (const char *text)
{
  GtkWidget *label = gtk_label_new (text);
  gtk_label_set_xalign (GTK_LABEL (label), 0);
  gtk_label_set_wrap (GTK_LABEL (label), TRUE);
  gtk_label_set_max_width_chars (GTK_LABEL (label), WRAP_CHARS);
  return label;
}

static void
add_revision (SqPaperChoices *choices)
{
  choices->state = new_words (NULL);
  gtk_widget_add_css_class (choices->state, "dim");
  gtk_widget_add_css_class (choices->state, "state");
  choices->revision_box = gtk_box_new (GTK_ORIENTATION_VERTICAL, 6);
  choices->revision = sq_form_button ("");
  choices->revision_words = gtk_button_get_child (GTK_BUTTON (choices->revision));
  g_signal_connect_swapped (choices->revision, "clicked", G_CALLBACK (on_revision), choices);
  gtk_box_append (GTK_BOX (choices->revision_box),
                  new_words (_ ("Pieces have changed since this revision was printed.")));
  gtk_box_append (GTK_BOX (choices->revision_box), choices->revision);
  gtk_box_append (GTK_BOX (choices), choices->state);
  gtk_box_append (GTK_BOX (choices), choices->revision_box);
}

GtkWidget *
sq_paper_choices_new (SqDocument *document, const char *today)
{
  SqPaperChoices *choices = g_object_new (SQ_TYPE_PAPER_CHOICES, "orientation",
                                          GTK_ORIENTATION_VERTICAL, NULL);
  choices->document = g_object_ref (document);
  choices->today = g_strdup (today);
  choices->pieces_text = g_strdup ("");
  add_kinds (choices);
  add_rows (choices);
  add_revision (choices);
  g_signal_connect_object (document, "changed", G_CALLBACK (show), choices, G_CONNECT_SWAPPED);
  show (choices);
  return GTK_WIDGET (choices);
}

static void
sq_paper_choices_dispose (GObject *object)
{
  SqPaperChoices *choices = SQ_PAPER_CHOICES (object);
  g_clear_object (&choices->document);
  g_clear_pointer (&choices->today, g_free);
  g_clear_pointer (&choices->pieces_text, g_free);
  G_OBJECT_CLASS (sq_paper_choices_parent_class)->dispose (object);
}

static void
sq_paper_choices_class_init (SqPaperChoicesClass *class)
{
  G_OBJECT_CLASS (class)->dispose = sq_paper_choices_dispose;
  test_page_signal = g_signal_new ("test-page", G_TYPE_FROM_CLASS (class), G_SIGNAL_RUN_LAST, 0,
                                   NULL, NULL, NULL, G_TYPE_NONE, 0);
  changed_signal = g_signal_new ("changed", G_TYPE_FROM_CLASS (class), G_SIGNAL_RUN_LAST, 0, NULL,
                                 NULL, NULL, G_TYPE_NONE, 0);
}

static void
sq_paper_choices_init (SqPaperChoices *choices)
{
  (void) choices;
}
