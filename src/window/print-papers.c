/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "window/print-papers.h"

#include "base/units.h"

#include <math.h>

#define PT_PER_MM (72 / SQ_MM_PER_INCH)
/* Two sheets are the same if they differ by no more. */
#define SAME_MM 0.1

typedef struct
{
  GPtrArray *papers;
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

/* An upright sheet of that size, as printers know it; NULL: there is none. */
static const char *
sheet_name (double width_mm, double height_mm)
{
  /* PWG 5101.1 Media Standardized Names */
  static const char *const names[SQ_N_SHEETS] = {
    "iso_a4",    "iso_a3",    "iso_a2", "iso_a1", "iso_a0",
    "na_letter", "na_ledger", "na_c",   "na_d",   "na_e",
  };
  for (guint i = 0; i < SQ_N_SHEETS; i++)
    {
      SqVector size = sq_sheet_size_mm ((SqSheet) i);
      if (fabs (size.x - width_mm) < SAME_MM && fabs (size.y - height_mm) < SAME_MM)
        return names[i];
    }
  return NULL;
}

/* Of a size that no sheet has: a piece of a roll. */
static GtkPaperSize *
new_roll_size (const SqPage *page)
{
  g_autofree char *name = g_strdup_printf ("custom_%.0fx%.0fmm", page->width_mm, page->height_mm);
  g_autofree char *shown = g_strdup_printf ("%.0f × %.0f mm", page->width_mm, page->height_mm);
  return gtk_paper_size_new_custom (name, shown, page->width_mm, page->height_mm, GTK_UNIT_MM);
}

/* Each page has a size of its own: sheets stand or lie, and a roll is cut off as it is needed. */
static void
set_up (GtkPageSetup *setup, const SqPage *page)
{
  gboolean is_lying = page->width_mm > page->height_mm;
  const char *name = is_lying ? sheet_name (page->height_mm, page->width_mm)
                              : sheet_name (page->width_mm, page->height_mm);
  g_autoptr (GtkPaperSize) size = name != NULL ? gtk_paper_size_new (name) : new_roll_size (page);
  gtk_page_setup_set_paper_size (setup, size);
  gtk_page_setup_set_orientation (setup, name != NULL && is_lying ? GTK_PAGE_ORIENTATION_LANDSCAPE
                                                                  : GTK_PAGE_ORIENTATION_PORTRAIT);
}

static void
on_page_setup (GtkPrintOperation *operation, GtkPrintContext *context, int number,
               GtkPageSetup *setup, Printing *printing)
{
  guint i = (guint) number;
  (void) operation, (void) context;
  set_up (setup, sq_paper_page (paper_at (printing, &i), i));
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

/* A pattern is nothing unless it comes out in its own size. */
static GtkPrintSettings *
new_settings (void)
{
  GtkPrintSettings *settings = gtk_print_settings_new ();
  gtk_print_settings_set_scale (settings, 100);
  /* PWG 5100.16, 4.2.7; what begins with "cups-" is told to the printer. */
  gtk_print_settings_set (settings, "cups-print-scaling", "none");
  return settings;
}

void
sq_print_papers (GtkWindow *parent, GPtrArray *papers, const char *name, SqPrinted printed,
                 gpointer data, GDestroyNotify data_free)
{
  g_autoptr (GtkPrintOperation) operation = gtk_print_operation_new ();
  g_autoptr (GtkPageSetup) setup = gtk_page_setup_new ();
  g_autoptr (GtkPrintSettings) settings = new_settings ();
  Printing *printing = g_new (Printing, 1);
  guint first = 0;
  *printing = (Printing){ g_ptr_array_ref (papers), printed, data, data_free };
  set_up (setup, sq_paper_page (paper_at (printing, &first), first));
  gtk_print_operation_set_n_pages (operation, (int) sq_papers_n_pages (papers));
  gtk_print_operation_set_job_name (operation, name);
  gtk_print_operation_set_unit (operation, GTK_UNIT_POINTS);
  gtk_print_operation_set_use_full_page (operation, TRUE);
  gtk_print_operation_set_default_page_setup (operation, setup);
  gtk_print_operation_set_print_settings (operation, settings);
  gtk_print_operation_set_show_progress (operation, TRUE);
  gtk_print_operation_set_allow_async (operation, TRUE);
  g_signal_connect (operation, "request-page-setup", G_CALLBACK (on_page_setup), printing);
  g_signal_connect (operation, "draw-page", G_CALLBACK (on_draw), printing);
  g_signal_connect_data (operation, "done", G_CALLBACK (on_done), printing, printing_free, 0);
  gtk_print_operation_run (operation, GTK_PRINT_OPERATION_ACTION_PRINT_DIALOG, parent, NULL);
}
