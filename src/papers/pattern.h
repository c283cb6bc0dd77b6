/* SPDX-License-Identifier: GPL-3.0-or-later */
/* Full-scale patterns: what all their pages are drawn from. Internal to the room.
 *
 * How the sheets of a piece fit together. A sheet shows a window of the piece in its box, which is
 * what margins and the caption at its foot leave; the piece's point p lies on the page at
 * posed (p) + part.at. Long narrow pieces may lie below each other in one row of sheets, named after
 * the first of them, and are put together as one. The windows of neighbours have the overlap in common (0: they touch). On the
 * middle line of what two neighbours have in common lie their match marks: n = 2, or one for every
 * 600 mm begun of the window's side, at (i + 1/2) / n of its length; so the same marks lie at the
 * same places of the piece on both sheets. A mark is a diamond of half-diagonal 4 mm with a cross in
 * it, in the pen of rules; as far as it leaves the box, on a narrow overlap, it is cut off there. The
 * left and upper side of a window, where there is a sheet beyond, are drawn as dashed lines, to
 * be trimmed along; on the sheets left and above a fine line shows where the trimmed edge comes to. */
#pragma once

#include "papers/pattern-sheets.h"

/* Immutable but for what is kept of work done once. */
typedef struct
{
  SqPlan *plan;
  SqPatternChoice choice;
  gboolean wrong_side;
  SqLengthStyle style;
  char *date;
  SqPatternSheets *sheets;
  guint n_before; /* pages before the first sheet */
  GMutex mutex;   /* of what follows */
  GArray *notes;  /* of SqPatternNotes, one a piece */
} SqPattern;

/* Half of a match mark's diagonal. */
#define SQ_MATCH_MARK_MM 4.0
/* Kept clear of words at an edge where another sheet follows. */
#define SQ_PATTERN_BAND_MM 14.0

/* The sides of a sheet on which its piece goes on. */
typedef struct
{
  gboolean left, right, above, below;
} SqPatternSides;

SqPatternSides sq_pattern_sides (const SqPatternPiece *piece, const SqPatternPart *part);
