/* SPDX-License-Identifier: GPL-3.0-or-later */
/* Pieces that go whole onto a sheet, packed so that little paper is used. Internal to the room. */
#pragma once

#include "papers/pattern-lines.h"

/* Between two of them: scissors must get through (mm). */
#define SQ_PATTERN_GAP_MM 10.0

/* Where one lies: as posed, moved by @at from the upper left corner of a sheet's room; y up. */
typedef struct
{
  guint item; /* the caller's own */
  guint sheet;
  guint quarters;
  SqVector at;
} SqPacked;

/* What is to be packed. */
typedef struct
{
  guint item;
  GPtrArray *rings; /* of SqPath, the outer one first; borrowed */
} SqToPack;

/* Packs @items (of SqToPack) onto sheets with so much room each. New array of SqPacked, by sheet; what
 * could not be laid is not in it. */
GArray *sq_pattern_pack (const GArray *items, SqVector room_mm);
