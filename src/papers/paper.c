/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "papers/paper.h"

#include "base/error.h"
#include "base/units.h"
#include "drawing/paint.h"
#include "papers/kinds.h"

#include <cairo-pdf.h>

#define PT_PER_MM (72 / SQ_MM_PER_INCH)

static void (*const kinds[SQ_N_PAPER_KINDS]) (GArray *pages, const SqPaperSpec *spec) = {
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
  kinds[kind](paper->pages, spec);
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

GBytes *
sq_papers_to_pdf (const GPtrArray *papers, const char *title, const char *date, GError **error)
{
  g_autofree char *moment = g_strconcat (date, "T00:00:00Z", NULL);
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
