/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "window/edit-papers.h"

#include "job/names.h"

#include <glib/gi18n.h>

#define GIVEN_OF_PAPERS                                                                            \
  (SQ_GIVEN_SHEET | SQ_GIVEN_PAPER_KINDS | SQ_GIVEN_PATTERN_SHEET | SQ_GIVEN_PATTERN_MARGIN        \
   | SQ_GIVEN_PATTERN_OVERLAP | SQ_GIVEN_LABEL_COLUMNS | SQ_GIVEN_LABEL_ROWS | SQ_GIVEN_LABEL_SIDE \
   | SQ_GIVEN_LABEL_TOP | SQ_GIVEN_LABEL_ACROSS | SQ_GIVEN_LABEL_ALONG)

static gboolean
is_same_pattern (const SqPatternChoice *a, const SqPatternChoice *b)
{
  return a->sheet == b->sheet && a->roll_mm == b->roll_mm && a->margin_mm == b->margin_mm
         && a->overlap_mm == b->overlap_mm && a->lines == b->lines
         && a->corners_only == b->corners_only;
}

static gboolean
is_same_labels (const SqLabelSheet *a, const SqLabelSheet *b)
{
  return a->columns == b->columns && a->rows == b->rows && a->side_mm == b->side_mm
         && a->top_mm == b->top_mm && a->across_mm == b->across_mm && a->along_mm == b->along_mm;
}

static gboolean
is_same (const SqPapersChoice *a, const SqPapersChoice *b)
{
  return a->sheet == b->sheet && a->kinds == b->kinds && a->wrong_side == b->wrong_side
         && is_same_pattern (&a->pattern, &b->pattern) && is_same_labels (&a->labels, &b->labels);
}

guint32
sq_edit_papers_given (const SqJob *job)
{
  return job->given & GIVEN_OF_PAPERS;
}

void
sq_edit_papers (SqDocument *document, const SqPapersChoice *choice, guint32 given)
{
  g_autoptr (SqJob) job = sq_job_dup (sq_document_get_job (document));
  if (given == sq_edit_papers_given (job) && is_same (choice, &job->papers))
    return;
  job->given = (job->given & ~GIVEN_OF_PAPERS) | given;
  job->papers.sheet = choice->sheet;
  job->papers.kinds = choice->kinds;
  job->papers.wrong_side = choice->wrong_side;
  job->papers.pattern = choice->pattern;
  job->papers.labels = choice->labels;
  sq_document_edit (document, job, _ ("Choice of papers"), "papers");
}

void
sq_edit_next_revision (SqDocument *document)
{
  g_autoptr (SqJob) job = sq_job_dup (sq_document_get_job (document));
  job->revision++;
  g_autofree char *name = sq_revision_name (job->revision);
  g_autofree char *words = g_strdup_printf (_ ("Revision %s"), name);
  sq_document_edit (document, job, words, NULL);
}
