/* SPDX-License-Identifier: GPL-3.0-or-later */
/* All that a cut list says, as finished texts in the order in which they are read: plain text, CSV
 * and paper only set them. */
#pragma once

#include "plan/lays.h"

/* A table of texts. */
typedef struct
{
  const char *heading; /* static */
  const char *aligns;  /* of the columns, a letter each: 'l' or 'r'; static */
  char **heads;        /* one a column; NULL: none */
  GPtrArray *rows;     /* of char **, one a column */
} SqSheetTable;

typedef struct
{
  SqSeverity severity;
  char *name;    /* "Error" */
  char *cushion; /* "" where there is only one */
  char *text;
} SqSheetProblem;

/* A line: a piece to cut. */
typedef struct
{
  guint entry;         /* index in the plan's cut list */
  guint number, count; /* from 1; how many in all */
  char *cushion;       /* "" where there is only one */
  char *piece;
  char *piece_alone;    /* the same where @right_side is not said */
  char *width, *length; /* of the cut line, across and along the cloth; figures */
  char *right_side;     /* which side is up, and where its arrow points */
  GPtrArray *remarks;   /* of texts: corner notches, skirts, allowances, marks */
} SqSheetLine;

/* What is cut from one cloth. */
typedef struct
{
  SqId cloth;
  char *name;     /* "" where the job names none */
  char *about;    /* "upholstery, 53 in usable width, striped"; may be empty */
  char *sum;      /* "7 pieces, 21.4 sq ft" */
  char *buy;      /* "2 1/8 yd to buy, 31 % waste"; "" without a lay */
  char *reckoned; /* how that came about; "" without a lay */
  GArray *lines;  /* of SqSheetLine */
} SqSheetCloth;

typedef struct
{
  char *title;
  char *customer, *notes; /* "" where there is none */
  /* Headings, static: of problems; of lines of cloths; of cautions. */
  const char *before, *cloth, *at_work;
  char *units;           /* what lengths are in, and what width and length are */
  SqSheetTable cushions; /* name, count, way of building, size */
  GArray *problems;      /* of SqSheetProblem, the worst first */
  GArray *cloths;        /* of SqSheetCloth */
  SqSheetTable zips, foam, foam_sheets;
  SqSheetTable totals; /* what, how much, how it was reckoned (may be empty) */
  GPtrArray *cautions; /* of const char */
} SqCutSheet;

/* The cut list of @plan, with what to buy for @lays, which are the plan's (NULL: that is left out).
 * New; free with sq_cut_sheet_free(). */
SqCutSheet *sq_cut_sheet_new (const SqPlan *plan, const SqLays *lays, const SqLengthStyle *style);
void sq_cut_sheet_free (SqCutSheet *sheet);
G_DEFINE_AUTOPTR_CLEANUP_FUNC (SqCutSheet, sq_cut_sheet_free)

#define sq_cut_sheet_cloth(sheet, i) (&g_array_index ((sheet)->cloths, SqSheetCloth, (i)))
#define sq_sheet_line(cloth, i) (&g_array_index ((cloth)->lines, SqSheetLine, (i)))

void sq_sheet_table_clear (SqSheetTable *table);

/* A cell of a table. Borrowed. */
const char *sq_sheet_cell (const SqSheetTable *table, guint row, guint column);
