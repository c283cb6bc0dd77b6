/* SPDX-License-Identifier: GPL-3.0-or-later */
/* What the maker takes away on paper: pages, each a scene in mm, that preview, printer and PDF all
 * paint alike. */
#pragma once

#include <cairo.h>

#include "drawing/scene.h"
#include "job/papers.h"
#include "plan/lays.h"

/* What a paper is made from; all borrowed. */
typedef struct
{
  const SqLays *lays; /* and their plan, and its job */
  SqLengthStyle style;
  SqSheet sheet;
  const char *date; /* as it is to be read, "2026-11-25" */
} SqPaperSpec;

/* (0, 0) is the page's lower left corner, y up. */
typedef struct
{
  double width_mm, height_mm;
  SqScene *scene;
} SqPage;

/* Immutable, shared by reference. */
typedef struct
{
  gint ref_count;
  SqPaperKind kind;
  GArray *pages; /* of SqPage; at least one */
} SqPaper;

/* New reference. */
SqPaper *sq_paper_new (SqPaperKind kind, const SqPaperSpec *spec);
SqPaper *sq_paper_ref (const SqPaper *paper);
void sq_paper_unref (SqPaper *paper);
G_DEFINE_AUTOPTR_CLEANUP_FUNC (SqPaper, sq_paper_unref)

#define sq_paper_page(paper, i) (&g_array_index ((paper)->pages, SqPage, (i)))

/* Width and height of an upright @sheet, mm. */
SqVector sq_sheet_size_mm (SqSheet sheet);

/* Paints page @i onto @cr, where a unit is 1 / @scale mm, from the page's upper left corner at
 * (0, 0), y down; nothing behind it. */
void sq_paper_paint_page (const SqPaper *paper, guint i, cairo_t *cr, double scale);

/* All pages of @papers (of const SqPaper) as one PDF, that bears @title and @date (YYYY-MM-DD); the
 * same bytes for the same papers, on the same machine. NULL with @error as cairo puts it. */
GBytes *sq_papers_to_pdf (const GPtrArray *papers, const char *title, const char *date,
                          GError **error);
