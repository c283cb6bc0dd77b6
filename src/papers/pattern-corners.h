/* SPDX-License-Identifier: GPL-3.0-or-later */
/* A large straight piece of which only the corners are drawn in full size, with what lies between them
 * as figures. Internal to the room. */
#pragma once

#include "papers/pattern-lines.h"

/* How much of both legs of a corner is drawn at least, mm. */
#define SQ_CORNER_LEG_MM 80.0
/* Beyond the piece's outline there is room for what is written at it. */
#define SQ_CORNER_BESIDE_MM 8.0

/* Corners that are drawn together: they lie so near each other that their legs meet. */
typedef struct
{
  SqBox window;    /* of the piece, mirrored if the pattern is, not turned */
  GArray *corners; /* of guint, in the order of travel */
} SqCornerPatch;

typedef struct
{
  GArray *points;  /* of SqPoint: the outline's corners in order, mirrored if the pattern is */
  GArray *patches; /* of SqCornerPatch; at least two */
  guint *patch_of; /* one a corner */
} SqPatternCorners;

/* The corners of @piece; NULL where its outline is not all straight, has holes, or leaves nothing
 * out. */
SqPatternCorners *sq_pattern_corners_new (const SqPiece *piece, SqPatternLines lines,
                                          gboolean mirrored);
void sq_pattern_corners_free (SqPatternCorners *corners);

#define sq_corner_patch(all, i) (&g_array_index ((all)->patches, SqCornerPatch, (i)))
#define sq_corner_point(all, i) (g_array_index ((all)->points, SqPoint, (i)))

/* The corner that follows corner @i. */
guint sq_corner_next (const SqPatternCorners *corners, guint i);
/* Whether corner @i and the next one are drawn apart: the side between them is broken. */
gboolean sq_corner_is_broken (const SqPatternCorners *corners, guint i);

/* Two corners, of what lies across from each other. */
typedef struct
{
  guint a, b;
} SqDiagonal;

/* The distances that tell, beside the sides, how the patches lie: of four of them both diagonals. New
 * array of SqDiagonal. */
GArray *sq_corner_diagonals (const SqPatternCorners *corners);
