/* SPDX-License-Identifier: GPL-3.0-or-later */
/* How a job is to be laid on its cloths: what the maker chose for all of it, and pieces that lie
 * where a hand put them. */
#pragma once

#include "base/id.h"
#include "geometry/point.h"

typedef enum
{
  SQ_CUTS_BY_RULE,  /* as is worth it */
  SQ_CUTS_FREE,     /* a knife goes anywhere */
  SQ_CUTS_STRAIGHT, /* straight cuts right through what is left, as shears make them */
} SqCuts;
#define SQ_N_CUTS (SQ_CUTS_STRAIGHT + 1)

typedef struct
{
  SqCuts cuts;
  guint most_plies; /* layers of cloth that are cut at once, at most; 0: one */
  double table_mm;  /* what the table takes of a lay; 0: not told */
  GRefString *unknown, *unknown_plies;
} SqLaying;

/* One copy of a piece of a cover. */
typedef struct
{
  SqId cloth; /* 0: the job names none */
  SqId cushion;
  gboolean mirrored; /* of the cushion's mirrored cover */
  guint role;        /* place in sq_piece_role_names */
  guint ordinal;     /* among the cover's pieces of that role, from 0 */
  guint copy;        /* from 0, of all that are cut */
} SqPinned;

/* A copy that lies where it was put: its cut rings turned by turn_deg counter-clockwise about
 * (0, 0), then moved by @at; x along the piece of cloth from its cut end, y across from the near
 * usable edge (mm). */
typedef struct
{
  SqPinned of;
  SqId stock; /* of the cloth's stock; 0: the roll that is to be bought */
  SqPoint at;
  double turn_deg;
  GRefString *unknown;
} SqPin;

gboolean sq_pinned_equal (const SqPinned *a, const SqPinned *b);
