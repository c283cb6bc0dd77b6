/* SPDX-License-Identifier: GPL-3.0-or-later */
/* What the command line of squab-cut asks for. */
#pragma once

#include "exchange/dxf.h"
#include "job/papers.h"

typedef enum
{
  SQ_DO_HELP,
  SQ_DO_VERSION,
  SQ_DO_JOB,
  SQ_DO_LAY, /* of an open instance */
} SqDo;

/* What can be written to a file. */
typedef enum
{
  SQ_OUT_PLAN,
  SQ_OUT_SAVE, /* the job as it was opened */
  SQ_OUT_CUT_LIST,
  SQ_OUT_LAYOUT,
  SQ_OUT_MARKING,
  SQ_OUT_TICKETS,
  SQ_OUT_LABELS,
  SQ_OUT_PATTERN,
  SQ_OUT_TEST_PAGE,  /* what is printed before a pattern */
  SQ_OUT_EVERYTHING, /* all papers */
  SQ_OUT_CSV,        /* the cut list's lines */
  SQ_OUT_SVG,        /* for machines; the lay of an instance as a picture */
  SQ_OUT_DXF,
  SQ_OUT_HPGL,
} SqOut;
#define SQ_N_OUTS (SQ_OUT_HPGL + 1)

/* Texts are borrowed from the command line. */
typedef struct
{
  SqDo what;
  const char *file;            /* the job, or the instance */
  const char *outs[SQ_N_OUTS]; /* where to write each, "-": standard output; NULL: nowhere */
  double flatten_mm;           /* in the plan; 0: arcs stay arcs */
  gboolean ways;               /* the comparison of ways of building, in the plan or as text */
  gboolean has_sheet;
  SqSheet sheet;                 /* of papers, if it is given */
  double roll_mm;                /* that patterns are printed on, if it is given; else 0 */
  const char *pieces;            /* numbers of the cut list, see sq_ranges_read(); NULL: all */
  const char *pages;             /* of a PDF, the same */
  gboolean has_side, wrong_side; /* of the cloth, that is marked on */
  double margin_mm, overlap_mm;  /* of patterns; below 0: as the job says */
  gboolean has_pattern_lines, corners_only;
  SqPatternLines pattern_lines;
  const char *label_sheet; /* "2x6", columns and rows; NULL: as the job says */
  guint skipped_labels;
  gboolean has_cut_of;
  SqCutOf cut_of;  /* what files for machines hold … */
  guint cut_lines; /* … and of that, bits of SqCutLines; 0: all */
  SqDxfRelease dxf_release;
  SqDxfLayers dxf_layers;
  const char *date; /* that papers bear, YYYY-MM-DD; NULL: today */
  guint64 seed;     /* of lays … */
  guint64 steps;  /* … and how many to try after the first: G_MAXUINT64 where only time ends it */
  double seconds; /* that a lay may take; infinite: not told */
  gboolean cpu;   /* which are the processor's */
  guint threads;  /* 0: as many as there are processors, to a few */
} SqOptions;

/* Reads the command line into @options. FALSE with SQ_ERROR_USAGE, and a message in the user's
 * language, where it can't be followed. */
gboolean sq_options_read (SqOptions *options, int argc, char *const *argv, GError **error);

/* Whether something that was asked for is to be written to standard output. */
gboolean sq_options_has_standard_output (const SqOptions *options);

/* What --help prints. Static. */
const char *sq_options_help (void);
