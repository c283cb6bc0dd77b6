/* SPDX-License-Identifier: GPL-3.0-or-later */
/* What is drawn of a piece in true size. Internal to the room. */
#pragma once

#include "cover/piece.h"
#include "drawing/scene.h"
#include "job/papers.h"

/* How a piece lies on paper: mirrored first (x → −x), then turned counter-clockwise by so many
 * quarters about (0, 0). */
typedef struct
{
  gboolean mirrored;
  guint quarters; /* 0 … 3 */
} SqPatternPose;

SqVector sq_pattern_posed (SqPatternPose pose, SqVector v);
/* A box, turned alone. */
SqBox sq_pattern_box_turned (SqBox box, guint quarters);
/* New path. Open ones begin at the image of their first point. */
SqPath *sq_pattern_path_posed (SqPatternPose pose, const SqPath *path);

typedef struct
{
  SqPath *path;
  SqPen pen;
  SqBox box; /* of the path */
} SqPatternLine;

/* What a pattern is cut out along: the piece's cut rings, or its sew rings where only these are drawn.
 * Borrowed. */
const GPtrArray *sq_pattern_rings (const SqPiece *piece, SqPatternLines lines);

/* All lines of @piece as @pose has it, in the order of painting: sew line and folds, zip, stay
 * stitches, carried corners, the ticks of notches and clips, the cut line last and strongest. With
 * sew lines only these are solid, and notches begin there, inward. New array of SqPatternLine, its
 * own. */
GArray *sq_pattern_lines_new (const SqPiece *piece, SqPatternLines lines, SqPatternPose pose);
/* None, to be added to. */
GArray *sq_pattern_no_lines (void);
SqBox sq_pattern_lines_box (const GArray *lines);
#define sq_pattern_line(lines, i) (&g_array_index ((lines), SqPatternLine, (i)))

/* Whether the outline of @piece, turned over along or across its grain, is itself. */
gboolean sq_pattern_is_own_mirror (const SqPiece *piece);
