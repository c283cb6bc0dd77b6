/* SPDX-License-Identifier: GPL-3.0-or-later */
/* Where the pieces of a cover stand on the table: all at one true scale, the large ones first,
 * strips in rows below, no label over anything. */
#pragma once

#include "cover/piece.h"
#include "drawing/piece-scene.h"

/* The table, in user units (pixels). */
typedef struct
{
  double width, height;
  double margin, gap; /* around all; between pieces */
  double em;          /* of ordinary text */
} SqTable;

typedef struct
{
  /* mm: the piece's (0, 0) on the table, from the table's lower left corner, y up. */
  SqVector offset;
  guint row; /* from the top */
} SqStand;

typedef struct
{
  SqTable table;  /* what it was made for */
  double scale;   /* user units per mm, of all */
  SqPoint corner; /* upper left one of all, user units, y up */
  guint n_stands;
  SqStand *stands; /* in the order of the pieces */
} SqArrangement;

/* Stands for @pieces (of SqPiece) with their @labels (as many), as large as the table allows.
 * @before (may be NULL) is the arrangement of the same cover before an edit: its rows and scale
 * stay as long as they do nearly as well, so that nothing jumps under the hand. New; free with
 * sq_arrangement_free(). */
SqArrangement *sq_arrangement_new (const GPtrArray *pieces, const SqPieceLabel *labels,
                                   const SqTable *table, const SqArrangement *before);
void sq_arrangement_free (SqArrangement *arrangement);
G_DEFINE_AUTOPTR_CLEANUP_FUNC (SqArrangement, sq_arrangement_free)
