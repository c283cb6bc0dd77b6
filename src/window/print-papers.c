/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "window/print-papers.h"

#include "base/units.h"

#define PT_PER_MM (72 / SQ_MM_PER_INCH)

typedef struct
{
  GPtrArray *papers;
  SqSheet sheet;
  SqPrinted printed;
  gpointer data;
  GDestroyNotify data_free;
} Printing;

static void
printing_free (gpointer data, GClosure *closure)
{
  Printing *printing = data;
  (void) closure;
  g_ptr_array_unref (printing->papers);
  if (printing->data_free != NULL)
    printing->data_free (printing->data);
  g_free (printing);
}

static const SqPaper *
paper_at (const Printing *printing, guint *page)
{
  for (guint i = 0; i < printing->papers->len; i++)
    {
      const SqPaper *paper = g_ptr_array_index (printing->papers, i);
      if (*page < paper->pages->len)
        return paper;
      *page -= paper->pages->len;
    }
  g_return_val_if_reached (NULL);
}

/* Some papers lie. */
static void
on_page_setup (GtkPrintOperation *operation, GtkPrintContext *context, int number,
               GtkPageSetup *setup, Printing *printing)
{
  guint i = (guint) number;
  const SqPage *page = sq_paper_page (paper_at (printing, &i), i);
  (void) operation, (void) context;
  gtk_page_setup_set_orientation (setup, page->width_mm > page->height_mm
                                             ? GTK_PAGE_ORIENTATION_LANDSCAPE
                                             : GTK_PAGE_ORIENTATION_PORTRAIT);
}

static void
on_draw (GtkPrintOperation *operation, GtkPrintContext *context, int number, Printing *printing)
{
  guint i = (guint) number;
  const SqPaper *paper = paper_at (printing, &i);
  (void) operation;
  sq_paper_paint_page (paper, i, gtk_print_context_get_cairo_context (context), PT_PER_MM);
}

static void
on_done (GtkPrintOperation *operation, GtkPrintOperationResult result, Printing *printing)
{
  g_autoptr (GError) error = NULL;
  if (result == GTK_PRINT_OPERATION_RESULT_ERROR)
    gtk_print_operation_get_error (operation, &error);
  printing->printed (result == GTK_PRINT_OPERATION_RESULT_APPLY, error, printing->data);
}

static GtkPageSetup *
page_setup_of (SqSheet sheet)
{
  /* PWG 5101.1 Media Standardized Names */
  static const char *const names[SQ_N_SHEETS] = {
    "iso_a4",    "iso_a3",    "iso_a2", "iso_a1", "iso_a0",
    "na_letter", "na_ledger", "na_c",   "na_d",   "na_e",
  };
  GtkPageSetup *setup = gtk_page_setup_new ();
  g_autoptr (GtkPaperSize) size = gtk_paper_size_new (names[sheet]);
  gtk_page_setup_set_paper_size (setup, size);
  return setup;
}

void
sq_print_papers (GtkWindow *parent, GPtrArray *papers, SqSheet sheet, const char *name,
                 SqPrinted printed, gpointer data, GDestroyNotify data_free)
{
  g_autoptr (GtkPrintOperation) operation = gtk_print_operation_new ();
  g_autoptr (GtkPageSetup) setup = page_setup_of (sheet);
  Printing *printing = g_new (Printing, 1);
  int n_pages = 0;
  *printing = (Printing){ g_ptr_array_ref (papers), sheet, printed, data, data_free };
  for (guint i = 0; i < papers->len; i++)
    n_pages += (int) ((const SqPaper *) g_ptr_array_index (papers, i))->pages->len;
  gtk_print_operation_set_n_pages (operation, n_pages);
  gtk_print_operation_set_job_name (operation, name);
  gtk_print_operation_set_unit (operation, GTK_UNIT_POINTS);
  gtk_print_operation_set_use_full_page (operation, TRUE);
  gtk_print_operation_set_default_page_setup (operation, setup);
  gtk_print_operation_set_allow_async (operation, TRUE);
  g_signal_connect (operation, "request-page-setup", G_CALLBACK (on_page_setup), printing);
  g_signal_connect (operation, "draw-page", G_CALLBACK (on_draw), printing);
  g_signal_connect_data (operation, "done", G_CALLBACK (on_done), printing, printing_free, 0);
  gtk_print_operation_run (operation, GTK_PRINT_OPERATION_ACTION_PRINT_DIALOG, parent, NULL);
}
