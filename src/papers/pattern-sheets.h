/* SPDX-License-Identifier: GPL-3.0-or-later */
/* Which piece lies on which sheet of a pattern, and where. Internal to the room. */
#pragma once

#include "papers/paper.h"
#include "papers/pattern-corners.h"
#include "papers/pattern-grid.h"

/* At the foot of every sheet, inside its margins: its caption. */
#define SQ_PATTERN_CAPTION_MM 13.0
/* What a PDF's page goes to: 14,400 units of 1/72 in (ISO 32000-1, annex C.2) are 5,080 mm. */
#define SQ_PATTERN_LONGEST_MM 5000.0

/* A piece, or what is asked of it. */
typedef struct
{
  guint entry; /* index in the plan's cut list */
  const SqCover *cover;
  const SqPiece *piece;      /* borrowed from the plan */
  SqPatternPose pose;        /* of a tiled one */
  GArray *lines;             /* of SqPatternLine, so posed; NULL: it lies whole on a sheet */
  const SqPatternGrid *grid; /* NULL likewise; borrowed; pieces of one row share it */
  SqVector offset;           /* from the posed piece to its grid */
  guint lead;                /* the first of the row, whose number its sheets bear */
  SqPatternCorners *corners; /* what is drawn of it; NULL: all */
  gboolean is_lying;         /* its sheets lie on their long side */
  gboolean is_placed;
  guint first, last; /* its sheets; the corners of others may lie between them */
} SqPatternPiece;

/* A piece on a sheet. */
typedef struct
{
  guint piece;
  SqPatternPose pose;
  SqVector at;       /* from the posed piece to the page */
  guint column, row; /* of the piece's grid, if it has one */
  guint patch;       /* of its corners, if only these are drawn */
} SqPatternPart;

typedef struct
{
  SqVector size_mm;
  SqBox box; /* what may be drawn on, above the caption; mm from the page's lower left corner */
  guint first_part, n_parts;
} SqPatternSheet;

typedef struct
{
  GArray *pieces;   /* of SqPatternPiece, in the order of the cut list */
  GPtrArray *grids; /* of SqPatternGrid */
  GArray *parts;    /* of SqPatternPart, sheet by sheet */
  GArray *sheets;   /* of SqPatternSheet */
} SqPatternSheets;

SqPatternSheets *sq_pattern_sheets_new (const SqPaperSpec *spec);
void sq_pattern_sheets_free (SqPatternSheets *sheets);

#define sq_pattern_piece(all, i) (&g_array_index ((all)->pieces, SqPatternPiece, (i)))
#define sq_pattern_part(all, i) (&g_array_index ((all)->parts, SqPatternPart, (i)))
#define sq_pattern_sheet(all, i) (&g_array_index ((all)->sheets, SqPatternSheet, (i)))

/* What a pattern has of a sheet between margins and caption; of a roll at most. */
SqVector sq_pattern_room_mm (const SqPatternChoice *choice, gboolean is_lying);

/* What lies of @piece on @sheet, of one of which only corners are drawn the first; NULL: nothing.
 * Borrowed. */
const SqPatternPart *sq_pattern_part_on (const SqPatternSheets *sheets, guint piece, guint sheet);

/* What of its piece @part shows on @sheet, where the piece lies as it is posed. */
SqBox sq_pattern_window (const SqPatternSheets *sheets, const SqPatternPart *part,
                         const SqPatternSheet *sheet);

/* The paper of @choice, upright, or lying; of a roll as wide as that, and 0 high. */
SqVector sq_pattern_paper_mm (const SqPatternChoice *choice, gboolean is_lying);
