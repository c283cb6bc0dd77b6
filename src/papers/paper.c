/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "papers/paper.h"

#include "base/error.h"
#include "base/units.h"
#include "drawing/paint.h"
#include "papers/kinds.h"
#include "words/lengths.h"
#include "words/paper-words.h"

static void (*const makers[SQ_N_PAPER_KINDS]) (SqPaper *paper, const SqPaperSpec *spec) = {
  [SQ_PAPER_CUT_LIST] = sq_cut_list_make,     [SQ_PAPER_LAYOUT] = sq_layout_make,
  [SQ_PAPER_MARKING] = sq_marking_guide_make, [SQ_PAPER_TICKETS] = sq_tickets_make,
  [SQ_PAPER_LABELS] = sq_labels_make,         [SQ_PAPER_PATTERN] = sq_pattern_make,
};

static void
clear_page (gpointer data)
{
  SqPage *page = data;

  g_clear_pointer (&page->scene, sq_scene_unref);
  g_clear_pointer (&page->bookmark, g_free);
}

SqPaper *
sq_paper_new_of_pages (SqPaperKind kind, GArray *pages)
{
  SqPaper *paper = g_new0 (SqPaper, 1);

  paper->ref_count = 1;
  paper->kind = kind;
  paper->pages = pages;
  g_array_set_clear_func (paper->pages, clear_page);
  return paper;
}

SqPaper *
sq_paper_new (SqPaperKind kind, const SqPaperSpec *spec)
{
  SqPaper *paper = sq_paper_new_of_pages (kind, g_array_new (FALSE, FALSE, sizeof (SqPage)));

  makers[kind](paper, spec);
  return paper;
}

SqPaper *
sq_paper_ref (const SqPaper *paper)
{
  SqPaper *p = (SqPaper *) paper;
  g_atomic_int_inc (&p->ref_count);
  return p;
}

void
sq_paper_unref (SqPaper *paper)
{
  if (paper == NULL || !g_atomic_int_dec_and_test (&paper->ref_count))
    return;
  g_array_unref (paper->pages);
  if (paper->source_free != NULL)
    paper->source_free (paper->source);
  g_free (paper);
}

SqScene *
sq_paper_page_scene (const SqPaper *paper, guint i)
{
  const SqPage *page = sq_paper_page (paper, i);

  return page->scene != NULL ? sq_scene_ref (page->scene) : paper->draw (paper->source, i);
}

SqVector
sq_sheet_size_mm (SqSheet sheet)
{
  static const SqPoint iso_mm[] = {
    { 210, 297 }, { 297, 420 }, { 420, 594 }, { 594, 841 }, { 841, 1189 }
  };
  static const SqPoint ansi_in[] = { { 8.5, 11 }, { 11, 17 }, { 17, 22 }, { 22, 34 }, { 34, 44 } };

  if (sheet < SQ_SHEET_LETTER)
    return iso_mm[sheet - SQ_SHEET_A4];
  return sq_scale (ansi_in[sheet - SQ_SHEET_LETTER], SQ_MM_PER_INCH);
}

void
sq_paper_paint_page (const SqPaper *paper, guint i, cairo_t *cr, double scale)
{
  const SqPage *page = sq_paper_page (paper, i);
  SqView view = { .scale = scale,
                  .origin = sq_point (0, page->height_mm * scale),
                  .medium = SQ_MEDIUM_PAPER };

  g_autoptr (SqScene) scene = sq_paper_page_scene (paper, i);

  sq_paint_scene (cr, &view, sq_theme_print (), scene);
}

SqPaperSpec
sq_paper_spec (const SqLays *lays, char decimal, const char *date)
{
  const SqJob *job = lays->plan->job;
  SqPaperSpec spec = {
    .lays = lays,
    .style = sq_words_length_style (job, decimal),
    .sheet = sq_job_sheet (job),
    .date = date,
    .wrong_side = job->papers.wrong_side,
    .pattern = sq_job_pattern_choice (job),
    .labels = sq_job_label_sheet (job),
  };

  spec.style.set = TRUE;
  spec.style.with_unit = FALSE;
  return spec;
}

guint
sq_paper_kinds (const SqJob *job)
{
  return job->given & SQ_GIVEN_PAPER_KINDS ? job->papers.kinds
                                           : 1U << SQ_PAPER_CUT_LIST | 1U << SQ_PAPER_LAYOUT;
}

GPtrArray *
sq_papers_new (guint kinds, const SqPaperSpec *spec)
{
  GPtrArray *papers = g_ptr_array_new_with_free_func ((GDestroyNotify) sq_paper_unref);

  for (guint kind = 0; kind < SQ_N_PAPER_KINDS; kind++)
    if (kinds & 1u << kind)
      g_ptr_array_add (papers, sq_paper_new ((SqPaperKind) kind, spec));
  return papers;
}

guint
sq_papers_n_pages (const GPtrArray *papers)
{
  guint n = 0;

  for (guint i = 0; i < papers->len; i++)
    n += ((const SqPaper *) g_ptr_array_index (papers, i))->pages->len;
  return n;
}

/* Sets SQ_ERROR_VALUE to @sentence, which is freed. Gives FALSE. */
static gboolean
refuse (char *sentence, GError **error)
{
  g_autofree char *text = sentence;

  g_set_error_literal (error, SQ_ERROR, SQ_ERROR_VALUE, text);
  return FALSE;
}

static gboolean
check_pattern (const SqPaperSpec *spec, GError **error)
{
  const SqPatternChoice *choice = &spec->pattern;
  double width_mm = choice->roll_mm > 0 ? choice->roll_mm : sq_sheet_size_mm (choice->sheet).x;
  double taken_mm = 2 * choice->margin_mm + choice->overlap_mm;

  if (width_mm > SQ_PATTERN_WIDEST_MM)
    return refuse (sq_words_roll_too_wide (width_mm, SQ_PATTERN_WIDEST_MM, &spec->style), error);
  return width_mm - taken_mm >= SQ_PATTERN_LEAST_MM
         || refuse (sq_words_no_room_for_pattern (width_mm, choice->margin_mm, choice->overlap_mm,
                                                  &spec->style),
                    error);
}

static gboolean
check_labels (const SqPaperSpec *spec, GError **error)
{
  SqVector label = sq_label_size_mm (&spec->labels, spec->sheet);

  return (label.x >= SQ_LABEL_LEAST_WIDTH_MM && label.y >= SQ_LABEL_LEAST_HEIGHT_MM)
         || refuse (sq_words_no_room_for_labels (label.x, label.y, &spec->style), error);
}

gboolean
sq_paper_spec_check (const SqPaperSpec *spec, guint kinds, GError **error)
{
  return (!(kinds & 1U << SQ_PAPER_PATTERN) || check_pattern (spec, error))
         && (!(kinds & 1U << SQ_PAPER_LABELS) || check_labels (spec, error));
}

SqVector
sq_label_size_mm (const SqLabelSheet *labels, SqSheet sheet)
{
  SqVector size = sq_sheet_size_mm (sheet);

  return sq_point (
      (size.x - 2 * labels->side_mm - (labels->columns - 1) * labels->across_mm) / labels->columns,
      (size.y - 2 * labels->top_mm - (labels->rows - 1) * labels->along_mm) / labels->rows);
}
