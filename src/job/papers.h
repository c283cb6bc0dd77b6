/* SPDX-License-Identifier: GPL-3.0-or-later */
/* What of a job is printed, on what: the maker's choice. */
#pragma once

#include <glib.h>

/* In the order in which they lie in a folder. */
typedef enum
{
  SQ_PAPER_CUT_LIST,
  SQ_PAPER_LAYOUT,
  SQ_PAPER_MARKING, /* where to chalk every piece on the cloth */
  SQ_PAPER_TICKETS, /* what goes with each lay: how many plies, which pieces */
  SQ_PAPER_LABELS,  /* to stick or pin on pieces */
  SQ_PAPER_PATTERN, /* pieces in full size */
} SqPaperKind;
#define SQ_N_PAPER_KINDS (SQ_PAPER_PATTERN + 1)

/* Upright. */
typedef enum
{
  SQ_SHEET_A4, /* 210 × 297 mm, and its multiples: ISO 216 */
  SQ_SHEET_A3,
  SQ_SHEET_A2,
  SQ_SHEET_A1,
  SQ_SHEET_A0,
  SQ_SHEET_LETTER, /* 8 1/2 × 11 in, and its multiples: ANSI/ASME Y14.1 sizes A to E */
  SQ_SHEET_ANSI_B,
  SQ_SHEET_ANSI_C,
  SQ_SHEET_ANSI_D,
  SQ_SHEET_ANSI_E,
} SqSheet;
#define SQ_N_SHEETS (SQ_SHEET_ANSI_E + 1)

/* Which lines a pattern has, beside its marks. */
typedef enum
{
  SQ_PATTERN_BOTH,
  SQ_PATTERN_CUT,
  SQ_PATTERN_SEW,
} SqPatternLines;

/* How patterns are printed. Lengths in mm. */
typedef struct
{
  SqSheet sheet;
  double roll_mm;    /* > 0: on a roll so wide instead of sheets */
  double margin_mm;  /* of every edge, that stays empty */
  double overlap_mm; /* that two sheets of a piece have in common */
  SqPatternLines lines;
  gboolean corners_only; /* large straight pieces: corners in full size, distances between */
} SqPatternChoice;

/* How labels lie on a sheet: all equally large, in rows and columns. Lengths in mm. */
typedef struct
{
  guint columns, rows;
  double side_mm, top_mm;     /* from the sheet's edges to the first and the last ones */
  double across_mm, along_mm; /* between two side by side, and two below each other */
} SqLabelSheet;

/* Each of them counts only where the job says that it was given (SqJobGiven), but for what is
 * nothing when it is not: see sq_job_pattern_choice(). */
typedef struct
{
  SqSheet sheet;       /* of all but patterns */
  guint kinds;         /* bits: 1 << SqPaperKind */
  gboolean wrong_side; /* marked on the cloth's wrong side: marking guide, patterns, files for
                          machines are mirrored as a whole */
  SqPatternChoice pattern;
  SqLabelSheet labels;
  GRefString *unknown, *unknown_pattern, *unknown_labels;
} SqPapersChoice;
