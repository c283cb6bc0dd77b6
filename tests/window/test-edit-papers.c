/* SPDX-License-Identifier: GPL-3.0-or-later */
/* What is chosen of papers, as steps of a job. */
#include "window/edit-papers.h"

#include "exchange/defaults-file.h"
#include "exchange/job-file.h"
#include "papers/paper.h"

static SqDocument *
new_document (void)
{
  SqDefaults defaults;
  g_autoptr (SqJob) job = NULL;
  sq_defaults_builtin (&defaults);
  job = sq_job_new (&defaults);
  return sq_document_new (job, NULL);
}

static guint
n_steps (SqDocument *document)
{
  gboolean exists = TRUE;
  int by = 0;
  while (sq_document_words (document, by - 1, &exists), exists)
    by--;
  return (guint) -by;
}

/* Steps that follow each other are one, and taken back as one. */
static void
test_one_step (void)
{
  g_autoptr (SqDocument) document = new_document ();
  const SqJob *first = sq_document_get_job (document);
  SqPapersChoice papers = first->papers;
  guint usual = sq_paper_kinds (first);
  papers.kinds = 1 << SQ_PAPER_PATTERN;
  sq_edit_papers (document, &papers, SQ_GIVEN_PAPER_KINDS);
  papers.pattern.margin_mm = 12;
  papers.pattern.roll_mm = 914;
  papers.wrong_side = TRUE;
  sq_edit_papers (document, &papers, SQ_GIVEN_PAPER_KINDS | SQ_GIVEN_PATTERN_MARGIN);
  const SqJob *now = sq_document_get_job (document);
  g_assert_cmpuint (sq_paper_kinds (now), ==, 1 << SQ_PAPER_PATTERN);
  g_assert_cmpfloat (sq_job_pattern_choice (now).margin_mm, ==, 12);
  g_assert_cmpfloat (sq_job_pattern_choice (now).roll_mm, ==, 914);
  g_assert_true (now->papers.wrong_side);
  g_assert_cmpuint (n_steps (document), ==, 1);
  sq_document_undo (document);
  g_assert_cmpuint (sq_paper_kinds (sq_document_get_job (document)), ==, usual);
  g_assert_false (sq_document_is_modified (document));
}

/* What changes nothing is no step; what is not given follows the defaults. */
static void
test_no_step (void)
{
  g_autoptr (SqDocument) document = new_document ();
  SqPapersChoice papers = sq_document_get_job (document)->papers;
  double usual_mm = sq_job_pattern_choice (sq_document_get_job (document)).overlap_mm;
  sq_edit_papers (document, &papers, 0);
  g_assert_cmpuint (n_steps (document), ==, 0);
  papers.pattern.overlap_mm = usual_mm + 1;
  sq_edit_papers (document, &papers, SQ_GIVEN_PATTERN_OVERLAP);
  g_assert_cmpuint (sq_edit_papers_given (sq_document_get_job (document)), ==,
                    SQ_GIVEN_PATTERN_OVERLAP);
  sq_edit_papers (document, &papers, 0);
  g_assert_cmpfloat (sq_job_pattern_choice (sq_document_get_job (document)).overlap_mm, ==,
                     usual_mm);
}

/* Of the rest of the job nothing is touched, and all of it is in its file. */
static void
test_rest (void)
{
  g_autoptr (SqDocument) document = new_document ();
  g_autoptr (SqJob) job = sq_job_dup (sq_document_get_job (document));
  job->given |= SQ_GIVEN_UNITS;
  job->units = SQ_UNIT_CM;
  sq_document_edit (document, job, "Unit", NULL);
  SqPapersChoice papers = job->papers;
  papers.labels.columns = 3;
  papers.labels.side_mm = 7;
  papers.pattern.lines = SQ_PATTERN_SEW;
  papers.pattern.corners_only = TRUE;
  sq_edit_papers (document, &papers, SQ_GIVEN_LABEL_COLUMNS | SQ_GIVEN_LABEL_SIDE);
  g_assert_true (sq_document_get_job (document)->given & SQ_GIVEN_UNITS);
  g_autofree char *text = sq_job_write (sq_document_get_job (document));
  g_autoptr (GError) error = NULL;
  g_autoptr (SqJob) read = sq_job_read (text, -1, &job->defaults, &error);
  g_assert_no_error (error);
  g_assert_cmpuint (sq_job_label_sheet (read).columns, ==, 3);
  g_assert_cmpfloat (sq_job_label_sheet (read).side_mm, ==, 7);
  g_assert_cmpuint (sq_job_label_sheet (read).rows, ==, job->defaults.labels.rows);
  g_assert_cmpint (read->papers.pattern.lines, ==, SQ_PATTERN_SEW);
  g_assert_true (read->papers.pattern.corners_only);
}

int
main (int argc, char **argv)
{
  g_test_init (&argc, &argv, NULL);
  g_test_add_func ("/window/edit-papers/one-step", test_one_step);
  g_test_add_func ("/window/edit-papers/no-step", test_no_step);
  g_test_add_func ("/window/edit-papers/rest", test_rest);
  return g_test_run ();
}
