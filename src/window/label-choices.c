/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "window/label-choices.h"

#include "window/edit-papers.h"
#include "window/figures.h"
#include "window/value-row.h"
#include "words/lengths.h"

#include <glib/gi18n.h>

#define N_COUNTS 2
#define N_LENGTHS 4

/* Places in SqLabelSheet, and the bits that say that they are the maker's own. */
static const struct
{
  const char *name;
  gsize at;
  guint32 bit;
} counts[N_COUNTS] = {
  { N_ ("Col_umns"), G_STRUCT_OFFSET (SqLabelSheet, columns), SQ_GIVEN_LABEL_COLUMNS },
  { N_ ("Ro_ws"), G_STRUCT_OFFSET (SqLabelSheet, rows), SQ_GIVEN_LABEL_ROWS },
}, lengths[N_LENGTHS] = {
  { N_ ("Margin at the si_des"), G_STRUCT_OFFSET (SqLabelSheet, side_mm), SQ_GIVEN_LABEL_SIDE },
  { N_ ("M_argin above and below"), G_STRUCT_OFFSET (SqLabelSheet, top_mm), SQ_GIVEN_LABEL_TOP },
  { N_ ("Gap bet_ween columns"), G_STRUCT_OFFSET (SqLabelSheet, across_mm), SQ_GIVEN_LABEL_ACROSS },
  { N_ ("G_ap between rows"), G_STRUCT_OFFSET (SqLabelSheet, along_mm), SQ_GIVEN_LABEL_ALONG },
};

struct _SqLabelChoices
{
  GtkBox parent;
  SqDocument *document;
  SqValueRow *counts[N_COUNTS], *lengths[N_LENGTHS], *first;
  guint skipped;
};

G_DEFINE_TYPE (SqLabelChoices, sq_label_choices, GTK_TYPE_BOX)

static guint skipped_signal;

static guint *
count_of (SqLabelSheet *sheet, guint i)
{
  return (guint *) (gpointer) ((char *) sheet + counts[i].at);
}

static double *
length_of (SqLabelSheet *sheet, guint i)
{
  return (double *) (gpointer) ((char *) sheet + lengths[i].at);
}

/* Which of @rows @row is. */
static guint
place_of (SqValueRow *const *rows, SqValueRow *row)
{
  guint i = 0;
  while (rows[i] != row)
    i++;
  return i;
}

/* --- what it shows --------------------------------------------------------------------------- */

static void
show_number (SqValueRow *row, guint number, guint usual, gboolean is_given)
{
  g_autofree char *text = is_given ? g_strdup_printf ("%u", number) : g_strdup ("");
  g_autofree char *dim = g_strdup_printf ("%u", usual);
  sq_value_row_show_entry (row, text, dim, is_given);
}

static void
show (SqLabelChoices *choices)
{
  const SqJob *job = sq_document_get_job (choices->document);
  SqLabelSheet sheet = sq_job_label_sheet (job), usual = job->defaults.labels;
  SqLengthStyle style = sq_figures_style (job);
  for (guint i = 0; i < N_COUNTS; i++)
    show_number (choices->counts[i], *count_of (&sheet, i), *count_of (&usual, i),
                 job->given & counts[i].bit);
  for (guint i = 0; i < N_LENGTHS; i++)
    {
      double mm = *length_of (&sheet, i);
      SqLengthStyle fine = sq_words_fine_style (mm, &style);
      sq_value_row_show_length (choices->lengths[i], mm, &fine, job->given & lengths[i].bit);
      sq_value_row_say (choices->lengths[i], "");
    }
  show_number (choices->first, choices->skipped + 1, 1, choices->skipped > 0);
}

/* --- what it changes ------------------------------------------------------------------------- */

/* What the job says of labels is @sheet from now on, @bit of it given or not. */
static void
edit (SqLabelChoices *choices, const SqLabelSheet *sheet, guint32 bit, gboolean is_given)
{
  const SqJob *job = sq_document_get_job (choices->document);
  guint32 given = sq_edit_papers_given (job);
  SqPapersChoice papers = job->papers;
  papers.labels = *sheet;
  sq_edit_papers (choices->document, &papers, is_given ? given | bit : given & ~bit);
}

static SqLabelSheet
now (SqLabelChoices *choices)
{
  return sq_document_get_job (choices->document)->papers.labels;
}

static void
on_count (SqValueRow *row, const char *text, SqLabelChoices *choices)
{
  guint i = place_of (choices->counts, row);
  SqLabelSheet sheet = now (choices);
  gboolean is_given = sq_words_read_count (text, count_of (&sheet, i));
  edit (choices, &sheet, counts[i].bit, is_given);
}

static void
on_count_back (SqValueRow *row, SqLabelChoices *choices)
{
  SqLabelSheet sheet = now (choices);
  edit (choices, &sheet, counts[place_of (choices->counts, row)].bit, FALSE);
}

static void
on_length (SqValueRow *row, double mm, SqLabelChoices *choices)
{
  guint i = place_of (choices->lengths, row);
  SqLabelSheet sheet = now (choices);
  *length_of (&sheet, i) = mm;
  if (mm >= 0)
    edit (choices, &sheet, lengths[i].bit, TRUE);
  else
    sq_value_row_say (row, _ ("It can’t be less than nothing."));
}

static void
on_length_back (SqValueRow *row, SqLabelChoices *choices)
{
  SqLabelSheet sheet = now (choices);
  edit (choices, &sheet, lengths[place_of (choices->lengths, row)].bit, FALSE);
}

static void
skip (SqLabelChoices *choices, guint skipped)
{
  choices->skipped = skipped;
  show (choices);
  g_signal_emit (choices, skipped_signal, 0);
}

static void
on_first (SqLabelChoices *choices, const char *text)
{
  guint first = 1;
  sq_words_read_count (text, &first); /* nothing: the first one */
  skip (choices, first - 1);
}

static void
on_first_back (SqLabelChoices *choices)
{
  skip (choices, 0);
}

guint
sq_label_choices_skipped (SqLabelChoices *choices)
{
  g_return_val_if_fail (SQ_IS_LABEL_CHOICES (choices), 0);
  return choices->skipped;
}

static const char *
check_count (const char *text)
{
  guint count;
  return text[0] == '\0' || sq_words_read_count (text, &count)
             ? NULL
             : _ ("Type a whole number from 1 to 100,000.");
}

/* --- making ---------------------------------------------------------------------------------- */

static SqValueRow *
add (SqLabelChoices *choices, GtkWidget *row)
{
  gtk_box_append (GTK_BOX (choices), row);
  return SQ_VALUE_ROW (row);
}

static void
fill (SqLabelChoices *choices)
{
  for (guint i = 0; i < N_COUNTS; i++)
    {
      choices->counts[i] = add (choices, sq_value_row_new_number (_ (counts[i].name), check_count));
      g_signal_connect (choices->counts[i], "text", G_CALLBACK (on_count), choices);
      g_signal_connect (choices->counts[i], "back", G_CALLBACK (on_count_back), choices);
    }
  for (guint i = 0; i < N_LENGTHS; i++)
    {
      choices->lengths[i] = add (choices, sq_value_row_new_length (_ (lengths[i].name)));
      g_signal_connect (choices->lengths[i], "length", G_CALLBACK (on_length), choices);
      g_signal_connect (choices->lengths[i], "back", G_CALLBACK (on_length_back), choices);
    }
  choices->first = add (choices, sq_value_row_new_number (_ ("First free l_abel"), check_count));
  g_signal_connect_swapped (choices->first, "text", G_CALLBACK (on_first), choices);
  g_signal_connect_swapped (choices->first, "back", G_CALLBACK (on_first_back), choices);
}

GtkWidget *
sq_label_choices_new (SqDocument *document)
{
  SqLabelChoices *choices = g_object_new (SQ_TYPE_LABEL_CHOICES, "orientation",
                                          GTK_ORIENTATION_VERTICAL, NULL);
  choices->document = g_object_ref (document);
  fill (choices);
  g_signal_connect_object (document, "changed", G_CALLBACK (show), choices, G_CONNECT_SWAPPED);
  show (choices);
  return GTK_WIDGET (choices);
}

static void
sq_label_choices_dispose (GObject *object)
{
  g_clear_object (&SQ_LABEL_CHOICES (object)->document);
  G_OBJECT_CLASS (sq_label_choices_parent_class)->dispose (object);
}

static void
sq_label_choices_class_init (SqLabelChoicesClass *class)
{
  G_OBJECT_CLASS (class)->dispose = sq_label_choices_dispose;
  skipped_signal = g_signal_new ("skipped", G_TYPE_FROM_CLASS (class), G_SIGNAL_RUN_LAST, 0, NULL,
                                 NULL, NULL, G_TYPE_NONE, 0);
}

static void
sq_label_choices_init (SqLabelChoices *choices)
{
  (void) choices;
}
