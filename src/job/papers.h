/* SPDX-License-Identifier: GPL-3.0-or-later */
/* What of a job is printed, on what: the maker's choice. */
#pragma once

#include <glib.h>

typedef enum
{
  SQ_PAPER_CUT_LIST,
  SQ_PAPER_LAYOUT,
} SqPaperKind;
#define SQ_N_PAPER_KINDS (SQ_PAPER_LAYOUT + 1)

/* Upright. */
typedef enum
{
  SQ_SHEET_A4,     /* 210 × 297 mm, ISO 216 */
  SQ_SHEET_LETTER, /* 8 1/2 × 11 in, ANSI/ASME Y14.1 size A */
} SqSheet;
#define SQ_N_SHEETS (SQ_SHEET_LETTER + 1)

/* Each of them counts only where the job says that it was given (SqJobGiven). */
typedef struct
{
  SqSheet sheet;
  guint kinds; /* bits: 1 << SqPaperKind */
  GRefString *unknown;
} SqPapersChoice;
