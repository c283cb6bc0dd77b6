/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "papers/paper.h"

#include "base/error.h"
#include "base/units.h"
#include "drawing/paint.h"
#include "papers/kinds.h"
#include "words/lengths.h"
#include "words/paper-words.h"

#include <cairo-pdf.h>

#define PT_PER_MM (72 / SQ_MM_PER_INCH)

static void (*const makers[SQ_N_PAPER_KINDS]) (GArray *pages, const SqPaperSpec *spec) = {
  [SQ_PAPER_CUT_LIST] = sq_cut_list_pages,
  [SQ_PAPER_LAYOUT] = sq_layout_pages,
};

static void
clear_page (gpointer data)
{
  sq_scene_unref (((SqPage *) data)->scene);
}

SqPaper *
sq_paper_new (SqPaperKind kind, const SqPaperSpec *spec)
{
  SqPaper *paper = g_new0 (SqPaper, 1);

  paper->ref_count = 1;
  paper->kind = kind;
  paper->pages = g_array_new (FALSE, FALSE, sizeof (SqPage));
  g_array_set_clear_func (paper->pages, clear_page);
  makers[kind](paper->pages, spec);
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
  g_free (paper);
}

SqVector
sq_sheet_size_mm (SqSheet sheet)
{
  switch (sheet)
    {
    case SQ_SHEET_A4:
      break;
    case SQ_SHEET_LETTER:
      return sq_point (8.5 * SQ_MM_PER_INCH, 11 * SQ_MM_PER_INCH);
    }
  return sq_point (210, 297);
}

void
sq_paper_paint_page (const SqPaper *paper, guint i, cairo_t *cr, double scale)
{
  const SqPage *page = sq_paper_page (paper, i);
  SqView view = { .scale = scale,
                  .origin = sq_point (0, page->height_mm * scale),
                  .medium = SQ_MEDIUM_PAPER };

  sq_paint_scene (cr, &view, sq_theme_print (), page->scene);
}

static cairo_status_t
append (void *bytes, const unsigned char *data, unsigned int length)
{
  g_byte_array_append (bytes, data, length);
  return CAIRO_STATUS_SUCCESS;
}

static void
paint_paper (cairo_surface_t *surface, const SqPaper *paper)
{
  for (guint i = 0; i < paper->pages->len; i++)
    {
      const SqPage *page = sq_paper_page (paper, i);
      cairo_pdf_surface_set_size (surface, page->width_mm * PT_PER_MM, page->height_mm * PT_PER_MM);
      cairo_t *cr = cairo_create (surface);
      sq_paper_paint_page (paper, i, cr, PT_PER_MM);
      cairo_show_page (cr);
      cairo_destroy (cr);
    }
}

SqPaperSpec
sq_paper_spec (const SqLays *lays, char decimal, const char *date)
{
  const SqJob *job = lays->plan->job;
  SqPaperSpec spec = {
    .lays = lays,
    .style = sq_words_length_style (job, decimal),
    .sheet = job->units == SQ_UNIT_IN ? SQ_SHEET_LETTER : SQ_SHEET_A4,
    .date = date,
  };

  spec.style.set = TRUE;
  spec.style.with_unit = FALSE;
  if (job->given & SQ_GIVEN_SHEET)
    spec.sheet = job->papers.sheet;
  return spec;
}

guint
sq_paper_kinds (const SqJob *job)
{
  return job->given & SQ_GIVEN_PAPER_KINDS ? job->papers.kinds : (1 << SQ_N_PAPER_KINDS) - 1;
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

GBytes *
sq_papers_to_pdf (const GPtrArray *papers, const SqPaperSpec *spec, GError **error)
{
  g_autofree char *title = sq_words_paper_title (spec->lays->plan->job);
  g_autofree char *moment = g_strconcat (spec->date, "T00:00:00Z", NULL);
  GByteArray *bytes = g_byte_array_new ();
  cairo_surface_t *surface = cairo_pdf_surface_create_for_stream (append, bytes, 1, 1);

  cairo_pdf_surface_set_metadata (surface, CAIRO_PDF_METADATA_TITLE, title);
  cairo_pdf_surface_set_metadata (surface, CAIRO_PDF_METADATA_CREATOR, "Squab");
  cairo_pdf_surface_set_metadata (surface, CAIRO_PDF_METADATA_CREATE_DATE, moment);
  for (guint i = 0; i < papers->len; i++)
    paint_paper (surface, g_ptr_array_index (papers, i));
  cairo_surface_finish (surface);

  cairo_status_t status = cairo_surface_status (surface);
  cairo_surface_destroy (surface);
  if (status == CAIRO_STATUS_SUCCESS)
    return g_byte_array_free_to_bytes (bytes);
  g_byte_array_unref (bytes);
  g_set_error (error, SQ_ERROR, SQ_ERROR_WRITE, "%s", cairo_status_to_string (status));
  return NULL;
}
