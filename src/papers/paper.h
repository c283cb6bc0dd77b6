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

/* The papers of the plan of @lays as its job wants them: on the sheet it names (else Letter where its
 * lengths are in inches, A4 elsewhere), with @decimal ('.' or ',') in figures, as of @date
 * (YYYY-MM-DD). Both are borrowed. */
SqPaperSpec sq_paper_spec (const SqLays *lays, char decimal, const char *date);
/* The kinds of paper @job wants, as bits: 1 << SqPaperKind; all where it doesn't say. */
guint sq_paper_kinds (const SqJob *job);

/* The papers of @kinds (bits), in their order. New array of SqPaper, its own. */
GPtrArray *sq_papers_new (guint kinds, const SqPaperSpec *spec);

/* All pages of @papers (of SqPaper), made from @spec, as one PDF; the same bytes for the same papers
 * on the same machine. NULL with @error as cairo puts it. */
GBytes *sq_papers_to_pdf (const GPtrArray *papers, const SqPaperSpec *spec, GError **error);
