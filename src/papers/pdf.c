/* SPDX-License-Identifier: GPL-3.0-or-later */
/* Papers as one PDF with an outline. */
#include "base/error.h"
#include "base/units.h"
#include "papers/paper.h"
#include "words/paper-words.h"

#include <cairo-pdf.h>

#define PT_PER_MM (72 / SQ_MM_PER_INCH)

static cairo_status_t
append (void *bytes, const unsigned char *data, unsigned int length)
{
  g_byte_array_append (bytes, data, length);
  return CAIRO_STATUS_SUCCESS;
}

static void
put_page (cairo_surface_t *surface, const SqPaper *paper, guint i)
{
  const SqPage *page = sq_paper_page (paper, i);

  cairo_pdf_surface_set_size (surface, page->width_mm * PT_PER_MM, page->height_mm * PT_PER_MM);
  cairo_t *cr = cairo_create (surface);
  sq_paper_paint_page (paper, i, cr, PT_PER_MM);
  cairo_show_page (cr);
  cairo_destroy (cr);
}

/* An entry of the outline that leads to page @number of the PDF. */
static int
add_bookmark (cairo_surface_t *surface, int parent, const char *text, guint number)
{
  g_autofree char *link = g_strdup_printf ("page=%u", number);

  return cairo_pdf_surface_add_outline (surface, parent, text, link, CAIRO_PDF_OUTLINE_FLAG_OPEN);
}

/* One for each line of @texts. */
static void
add_bookmarks (cairo_surface_t *surface, int parent, const char *texts, guint number)
{
  g_auto (GStrv) lines = g_strsplit (texts, "\n", -1);

  for (guint i = 0; lines[i] != NULL; i++)
    add_bookmark (surface, parent, lines[i], number);
}

/* The PDF as it grows. */
typedef struct
{
  cairo_surface_t *surface;
  const GArray *pages; /* whose numbers are wanted; NULL: all */
  guint next_wanted;   /* index in it */
  guint before, n;     /* pages gone by of all there are, and put */
  const SqTask *watch;
  guint n_all;
} Pdf;

static gboolean
is_wanted (Pdf *pdf)
{
  if (pdf->pages == NULL)
    return TRUE;
  while (pdf->next_wanted < pdf->pages->len
         && g_array_index (pdf->pages, guint, pdf->next_wanted) < pdf->before)
    pdf->next_wanted++;
  return pdf->next_wanted < pdf->pages->len
         && g_array_index (pdf->pages, guint, pdf->next_wanted) == pdf->before;
}

/* FALSE: stopped. */
static gboolean
put_paper (Pdf *pdf, const SqPaper *paper)
{
  int outline = 0;

  for (guint i = 0; i < paper->pages->len; i++)
    {
      pdf->before++;
      if (!is_wanted (pdf))
        continue;
      put_page (pdf->surface, paper, i);
      pdf->n++;
      if (outline == 0)
        outline = add_bookmark (pdf->surface, CAIRO_PDF_OUTLINE_ROOT,
                                sq_words_paper_kind (paper->kind), pdf->n);
      if (sq_paper_page (paper, i)->bookmark != NULL)
        add_bookmarks (pdf->surface, outline, sq_paper_page (paper, i)->bookmark, pdf->n);
      if (!sq_task_step (pdf->watch, (double) pdf->before / pdf->n_all))
        return FALSE;
    }
  return TRUE;
}

GBytes *
sq_papers_to_pdf (const GPtrArray *papers, const GArray *pages, const SqPaperSpec *spec,
                  const SqTask *watch, GError **error)
{
  g_autofree char *title = sq_words_paper_title (spec->lays->plan->job);
  g_autofree char *moment = g_strconcat (spec->date, "T00:00:00Z", NULL);
  GByteArray *bytes = g_byte_array_new ();
  cairo_surface_t *surface = cairo_pdf_surface_create_for_stream (append, bytes, 1, 1);

  cairo_pdf_surface_set_metadata (surface, CAIRO_PDF_METADATA_TITLE, title);
  cairo_pdf_surface_set_metadata (surface, CAIRO_PDF_METADATA_CREATOR, "Squab");
  cairo_pdf_surface_set_metadata (surface, CAIRO_PDF_METADATA_CREATE_DATE, moment);
  Pdf pdf = {
    .surface = surface, .pages = pages, .watch = watch, .n_all = sq_papers_n_pages (papers)
  };
  gboolean is_whole = TRUE;
  for (guint i = 0; i < papers->len && is_whole; i++)
    is_whole = put_paper (&pdf, g_ptr_array_index (papers, i));
  cairo_surface_finish (surface);

  cairo_status_t status = cairo_surface_status (surface);
  cairo_surface_destroy (surface);
  if (status == CAIRO_STATUS_SUCCESS && is_whole)
    return g_byte_array_free_to_bytes (bytes);
  g_byte_array_unref (bytes);
  if (!is_whole)
    g_set_error_literal (error, SQ_ERROR, SQ_ERROR_CANCELLED, sq_words_stopped ());
  else
    g_set_error (error, SQ_ERROR, SQ_ERROR_WRITE, "%s", cairo_status_to_string (status));
  return NULL;
}
