/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "window/pattern-choices.h"

#include "base/units.h"
#include "window/edit-papers.h"
#include "window/figures.h"
#include "window/form.h"
#include "window/value-row.h"
#include "words/lengths.h"
#include "words/paper-words.h"

#include <glib/gi18n.h>

/* What follows the sheets in their list. */
#define ROLL SQ_N_SHEETS
/* How wide a roll is until the maker says: the commonest of plotters. */
#define ROLL_IN_MM (36 * SQ_MM_PER_INCH)
#define ROLL_MM_MM 914.0

struct _SqPatternChoices
{
  GtkBox parent;
  SqDocument *document;
  gboolean is_showing;
  SqValueRow *paper, *roll, *margin, *overlap, *lines;
  GtkWidget *corners_only;
};

G_DEFINE_TYPE (SqPatternChoices, sq_pattern_choices, GTK_TYPE_BOX)

static guint test_page_signal;

/* --- what it shows --------------------------------------------------------------------------- */

static void
show_paper (SqPatternChoices *choices, const SqPatternChoice *pattern, gboolean is_given)
{
  guint values[SQ_N_SHEETS + 1];
  const char *names[SQ_N_SHEETS + 1];
  for (guint i = 0; i < SQ_N_SHEETS; i++)
    {
      values[i] = i;
      names[i] = sq_words_sheet ((SqSheet) i);
    }
  values[ROLL] = ROLL;
  names[ROLL] = _ ("Roll of paper");
  sq_value_row_show_choice (choices->paper, pattern->roll_mm > 0 ? ROLL : pattern->sheet, values,
                            names, ROLL + 1, is_given);
}

static void
show_lines (SqPatternChoices *choices, SqPatternLines lines)
{
  const guint values[] = { SQ_PATTERN_BOTH, SQ_PATTERN_CUT, SQ_PATTERN_SEW };
  const char *names[] = { _ ("Cut and sew lines"), _ ("Cut line"), _ ("Sew line") };
  sq_value_row_show_choice (choices->lines, lines, values, names, G_N_ELEMENTS (values),
                            lines != SQ_PATTERN_BOTH);
}

/* Margins matter to a fraction of a millimetre. */
static void
show_length (SqValueRow *row, const SqJob *job, double mm, gboolean is_given)
{
  SqLengthStyle style = sq_figures_style (job), fine = sq_words_fine_style (mm, &style);
  sq_value_row_show_length (row, mm, &fine, is_given);
}

static void
show (SqPatternChoices *choices)
{
  const SqJob *job = sq_document_get_job (choices->document);
  SqPatternChoice pattern = sq_job_pattern_choice (job);
  gboolean is_roll = pattern.roll_mm > 0;
  choices->is_showing = TRUE;
  show_paper (choices, &pattern, is_roll || (job->given & SQ_GIVEN_PATTERN_SHEET));
  gtk_widget_set_visible (GTK_WIDGET (choices->roll), is_roll);
  if (is_roll)
    show_length (choices->roll, job, pattern.roll_mm, TRUE);
  show_length (choices->margin, job, pattern.margin_mm, job->given & SQ_GIVEN_PATTERN_MARGIN);
  show_length (choices->overlap, job, pattern.overlap_mm, job->given & SQ_GIVEN_PATTERN_OVERLAP);
  show_lines (choices, pattern.lines);
  gtk_check_button_set_active (GTK_CHECK_BUTTON (choices->corners_only), pattern.corners_only);
  choices->is_showing = FALSE;
}

/* --- what it changes ------------------------------------------------------------------------- */

/* What the job says of patterns is @pattern from now on, @bit (SqJobGiven, 0: none) given or not. */
static void
edit (SqPatternChoices *choices, const SqPatternChoice *pattern, guint32 bit, gboolean is_given)
{
  const SqJob *job = sq_document_get_job (choices->document);
  guint32 given = sq_edit_papers_given (job);
  SqPapersChoice papers = job->papers;
  papers.pattern = *pattern;
  sq_edit_papers (choices->document, &papers, is_given ? given | bit : given & ~bit);
}

static SqPatternChoice
now (SqPatternChoices *choices)
{
  return sq_document_get_job (choices->document)->papers.pattern;
}

static void
on_paper (SqPatternChoices *choices, guint value)
{
  const SqJob *job = sq_document_get_job (choices->document);
  SqPatternChoice pattern = now (choices);
  if (value == ROLL)
    {
      pattern.roll_mm = job->units == SQ_UNIT_IN ? ROLL_IN_MM : ROLL_MM_MM;
      edit (choices, &pattern, 0, FALSE);
      return;
    }
  pattern.roll_mm = 0;
  pattern.sheet = (SqSheet) value;
  edit (choices, &pattern, SQ_GIVEN_PATTERN_SHEET, TRUE);
}

static void
on_paper_back (SqPatternChoices *choices)
{
  SqPatternChoice pattern = now (choices);
  pattern.roll_mm = 0;
  edit (choices, &pattern, SQ_GIVEN_PATTERN_SHEET, FALSE);
}

static void
on_roll (SqPatternChoices *choices, double mm)
{
  SqPatternChoice pattern = now (choices);
  pattern.roll_mm = mm;
  if (mm > 0)
    edit (choices, &pattern, 0, FALSE);
  else
    sq_value_row_say (choices->roll, _ ("It has to be more than nothing."));
}

/* @pattern with a length that was typed into @row, if it is one. */
static void
edit_length (SqPatternChoices *choices, const SqPatternChoice *pattern, SqValueRow *row, double mm,
             guint32 bit)
{
  if (mm >= 0)
    edit (choices, pattern, bit, TRUE);
  else
    sq_value_row_say (row, _ ("It can’t be less than nothing."));
}

static void
on_margin (SqPatternChoices *choices, double mm)
{
  SqPatternChoice pattern = now (choices);
  pattern.margin_mm = mm;
  edit_length (choices, &pattern, choices->margin, mm, SQ_GIVEN_PATTERN_MARGIN);
}

static void
on_margin_back (SqPatternChoices *choices)
{
  SqPatternChoice pattern = now (choices);
  edit (choices, &pattern, SQ_GIVEN_PATTERN_MARGIN, FALSE);
}

static void
on_overlap (SqPatternChoices *choices, double mm)
{
  SqPatternChoice pattern = now (choices);
  pattern.overlap_mm = mm;
  edit_length (choices, &pattern, choices->overlap, mm, SQ_GIVEN_PATTERN_OVERLAP);
}

static void
on_overlap_back (SqPatternChoices *choices)
{
  SqPatternChoice pattern = now (choices);
  edit (choices, &pattern, SQ_GIVEN_PATTERN_OVERLAP, FALSE);
}

static void
on_lines (SqPatternChoices *choices, guint value)
{
  SqPatternChoice pattern = now (choices);
  pattern.lines = (SqPatternLines) value;
  edit (choices, &pattern, 0, FALSE);
}

static void
on_lines_back (SqPatternChoices *choices)
{
  on_lines (choices, SQ_PATTERN_BOTH);
}

static void
on_corners_only (SqPatternChoices *choices)
{
  SqPatternChoice pattern = now (choices);
  pattern.corners_only = gtk_check_button_get_active (GTK_CHECK_BUTTON (choices->corners_only));
  if (!choices->is_showing)
    edit (choices, &pattern, 0, FALSE);
}

/* --- making ---------------------------------------------------------------------------------- */

static void
on_test_page (SqPatternChoices *choices)
{
  g_signal_emit (choices, test_page_signal, 0);
}

static SqValueRow *
add (SqPatternChoices *choices, GtkWidget *row, const char *given, GCallback on_given,
     GCallback on_back)
{
  g_signal_connect_swapped (row, given, on_given, choices);
  if (on_back != NULL)
    g_signal_connect_swapped (row, "back", on_back, choices);
  gtk_box_append (GTK_BOX (choices), row);
  return SQ_VALUE_ROW (row);
}

static void
add_test_page (SqPatternChoices *choices)
{
  GtkWidget *button = sq_form_button (_ ("Test pa_ge…"));
  gtk_widget_set_tooltip_text (
      button, _ ("Print it, and measure its squares, before you print a whole pattern"));
  gtk_widget_set_halign (button, GTK_ALIGN_START);
  gtk_widget_add_css_class (button, "lone");
  g_signal_connect_swapped (button, "clicked", G_CALLBACK (on_test_page), choices);
  gtk_box_append (GTK_BOX (choices), button);
}

static void
fill (SqPatternChoices *choices)
{
  choices->paper = add (choices, sq_value_row_new_choice (_ ("P_aper")), "choice",
                        G_CALLBACK (on_paper), G_CALLBACK (on_paper_back));
  choices->roll = add (choices, sq_value_row_new_measure (_ ("_Width of the roll")), "length",
                       G_CALLBACK (on_roll), NULL);
  choices->margin = add (choices, sq_value_row_new_length (_ ("M_argin")), "length",
                         G_CALLBACK (on_margin), G_CALLBACK (on_margin_back));
  choices->overlap = add (choices, sq_value_row_new_length (_ ("O_verlap")), "length",
                          G_CALLBACK (on_overlap), G_CALLBACK (on_overlap_back));
  choices->lines = add (choices, sq_value_row_new_choice (_ ("_Draw")), "choice",
                        G_CALLBACK (on_lines), G_CALLBACK (on_lines_back));
  choices->corners_only = sq_form_check (_ ("Only co_rners of large pieces"));
  g_signal_connect_swapped (choices->corners_only, "notify::active", G_CALLBACK (on_corners_only),
                            choices);
  gtk_box_append (GTK_BOX (choices), choices->corners_only);
  add_test_page (choices);
}

GtkWidget *
sq_pattern_choices_new (SqDocument *document)
{
  SqPatternChoices *choices = g_object_new (SQ_TYPE_PATTERN_CHOICES, "orientation",
                                            GTK_ORIENTATION_VERTICAL, NULL);
  choices->document = g_object_ref (document);
  fill (choices);
  g_signal_connect_object (document, "changed", G_CALLBACK (show), choices, G_CONNECT_SWAPPED);
  show (choices);
  return GTK_WIDGET (choices);
}

static void
sq_pattern_choices_dispose (GObject *object)
{
  g_clear_object (&SQ_PATTERN_CHOICES (object)->document);
  G_OBJECT_CLASS (sq_pattern_choices_parent_class)->dispose (object);
}

static void
sq_pattern_choices_class_init (SqPatternChoicesClass *class)
{
  G_OBJECT_CLASS (class)->dispose = sq_pattern_choices_dispose;
  test_page_signal = g_signal_new ("test-page", G_TYPE_FROM_CLASS (class), G_SIGNAL_RUN_LAST, 0,
                                   NULL, NULL, NULL, G_TYPE_NONE, 0);
}

static void
sq_pattern_choices_init (SqPatternChoices *choices)
{
  (void) choices;
}
