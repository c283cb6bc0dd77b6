/* SPDX-License-Identifier: GPL-3.0-or-later */
/* The words on a piece, its arrows, and its grain: where no line is, whole on that of its sheets that
 * has most room for them. Internal to the room. */
#pragma once

#include "papers/pattern.h"

typedef struct
{
  SqScene *scene; /* in mm of that page; NULL: not made yet */
  guint sheet;
} SqPatternNotes;

/* Those of piece @index of @pattern. New reference to their scene. */
SqScene *sq_pattern_notes (SqPattern *pattern, guint index, guint *sheet);
/* Adds number and name alone of @part's piece to @to, where there is room for them on @sheet. */
void sq_pattern_add_name (const SqPattern *pattern, const SqPatternPart *part, guint sheet,
                          SqSceneBuilder *to);
/* Adds those of a patch of corners, which lies on @sheet, to @to: what is on the piece, and the
 * diagonals; not where @taken (of SqBox) is. */
void sq_pattern_patch_notes (const SqPattern *pattern, const SqPatternPart *part, guint sheet,
                             const GArray *taken, SqSceneBuilder *to);
