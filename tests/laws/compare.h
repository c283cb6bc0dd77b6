/* SPDX-License-Identifier: GPL-3.0-or-later */
/* Whether two covers are the same thing. */
#pragma once

#include "cover/cover.h"

/* A seat turned counter-clockwise about (0, 0), then moved. */
typedef struct
{
  double turn_rad;
  SqVector by;
} Motion;

/* NULL where @b is @a, after the motion (NULL: none) its seat went through is undone; else what
 * differs, to be freed. Lengths and coordinates may differ by @within_mm; 0: by nothing. */
char *covers_differ (const SqCover *a, const SqCover *b, const Motion *motion, double within_mm);

/* The same for two pieces that differ by nothing. */
char *pieces_differ (const SqPiece *a, const SqPiece *b);
