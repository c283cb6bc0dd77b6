/* SPDX-License-Identifier: GPL-3.0-or-later */
/* What the maker takes away on paper: pages, each a scene in mm, that preview, printer and PDF all
 * paint alike. */
#pragma once

#include <cairo.h>

#include "base/task.h"
#include "drawing/scene.h"
#include "job/papers.h"
#include "plan/lays.h"

/* What a paper is made from; all borrowed. */
typedef struct
{
  const SqLays *lays; /* and their plan, and its job */
  SqLengthStyle style;
  SqSheet sheet;    /* of all but patterns */
  const char *date; /* as it is to be read, "2026-11-25" */
  gboolean wrong_side;
  SqPatternChoice pattern;
  SqLabelSheet labels;
  guint skipped_labels;  /* places of the first sheet of labels that are used up */
  const GArray *entries; /* of guint, indexes in the plan's cut list, ascending: what patterns and
                            labels are made of; NULL: all of it */
} SqPaperSpec;

/* (0, 0) is the page's lower left corner, y up. */
typedef struct
{
  double width_mm, height_mm;
  SqScene *scene; /* NULL: made by the paper when it is asked for */
  char *bookmark; /* what begins on it, as a PDF's outline has it: an entry a line; NULL: nothing */
} SqPage;

/* Immutable, shared by reference. */
typedef struct
{
  gint ref_count;
  SqPaperKind kind;
  GArray *pages; /* of SqPage; at least one */
  /* Where pages are too many to be drawn before they are wanted: what draws page @i, and from what.
   * Any thread. */
  SqScene *(*draw) (gconstpointer source, guint i);
  gpointer source;
  GDestroyNotify source_free;
} SqPaper;

/* New reference. @spec is one that sq_paper_spec_check() lets pass. */
SqPaper *sq_paper_new (SqPaperKind kind, const SqPaperSpec *spec);
SqPaper *sq_paper_ref (const SqPaper *paper);
void sq_paper_unref (SqPaper *paper);
G_DEFINE_AUTOPTR_CLEANUP_FUNC (SqPaper, sq_paper_unref)

#define sq_paper_page(paper, i) (&g_array_index ((paper)->pages, SqPage, (i)))

/* What is on page @i. New reference. */
SqScene *sq_paper_page_scene (const SqPaper *paper, guint i);

/* Width and height of an upright @sheet, mm. */
SqVector sq_sheet_size_mm (SqSheet sheet);

/* Paints page @i onto @cr, where a unit is 1 / @scale mm, from the page's upper left corner at
 * (0, 0), y down; nothing behind it. */
void sq_paper_paint_page (const SqPaper *paper, guint i, cairo_t *cr, double scale);

/* The papers of the plan of @lays as its job wants them: on the sheets it names, with @decimal ('.'
 * or ',') in figures, as of @date (YYYY-MM-DD). Both are borrowed. All lines of the cut list. */
SqPaperSpec sq_paper_spec (const SqLays *lays, char decimal, const char *date);
/* Whether papers of @kinds (bits) can be made as @spec has them. Else SQ_ERROR_VALUE with a sentence
 * for the maker: margins or labels that leave nothing of a sheet. */
gboolean sq_paper_spec_check (const SqPaperSpec *spec, guint kinds, GError **error);
/* What a page of a pattern needs beside its margins, and how large a label has to be to be read. */
#define SQ_PATTERN_LEAST_MM 110.0 /* the check squares, 4 in of them, with their words */
#define SQ_PATTERN_WIDEST_MM                                                                       \
  5000.0 /* a PDF's page goes to 14,400 units of 1/72 in, ISO 32000-1 C.2 */
#define SQ_LABEL_LEAST_WIDTH_MM 35.0
#define SQ_LABEL_LEAST_HEIGHT_MM 18.0
/* Of one label on an upright @sheet, mm. Not above 0: there is no room for it. */
SqVector sq_label_size_mm (const SqLabelSheet *labels, SqSheet sheet);
/* The kinds of paper @job wants, as bits: 1 << SqPaperKind; cut list and layout where it doesn't
 * say. */
guint sq_paper_kinds (const SqJob *job);
#define SQ_ALL_PAPER_KINDS ((1U << SQ_N_PAPER_KINDS) - 1)

/* The papers of @kinds (bits), in their order. New array of SqPaper, its own. */
GPtrArray *sq_papers_new (guint kinds, const SqPaperSpec *spec);
guint sq_papers_n_pages (const GPtrArray *papers);

/* A page to print before any pattern: the check squares, rulers along two edges up to the margins, and
 * what to do if they do not measure true. Of kind SQ_PAPER_PATTERN, of one page, on the paper of
 * @spec->pattern. New reference. */
SqPaper *sq_test_page_new (const SqPaperSpec *spec);

/* More pages than this nobody prints without having been asked. */
#define SQ_PAPERS_MANY 10000

/* Those pages of @papers (of SqPaper), made from @spec, whose numbers, from 1 over all papers, are in
 * @pages (of guint, ascending; NULL: all) as one PDF, with an outline; the same bytes for the same
 * papers on the same machine. NULL with @error as cairo puts it, or with SQ_ERROR_CANCELLED where
 * @watch (may be NULL) stopped it. Any thread. */
GBytes *sq_papers_to_pdf (const GPtrArray *papers, const GArray *pages, const SqPaperSpec *spec,
                          const SqTask *watch, GError **error);
