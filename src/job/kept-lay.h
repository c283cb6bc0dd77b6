/* SPDX-License-Identifier: GPL-3.0-or-later */
/* A lay that was printed, kept with the job: it stays what it was when pieces change, and can be
 * drawn for ever. Lengths in mm; x along the roll from the cut end, y across from the near usable
 * edge. */
#pragma once

#include "base/id.h"
#include "geometry/path.h"

/* Cloth that was laid on, as far as it was. */
typedef struct
{
  double width_mm, length_mm;
  GRefString *unknown;
} SqKeptStrip;

/* A piece as it was then. */
typedef struct
{
  SqId cushion;
  gboolean mirrored; /* of the cushion's mirrored cover */
  guint piece;       /* its index in that cover */
  GRefString *name;  /* NULL: none */
  GPtrArray *cut;    /* of SqPath: the rings of its cut line, the outer one first; may be shared */
  GRefString *unknown;
} SqKeptPiece;

/* One copy of it: its rings turned by @turn_deg counter-clockwise about (0, 0), moved by @at. */
typedef struct
{
  guint piece; /* index in the lay's pieces */
  guint copy;
  guint strip; /* index in the lay's strips */
  SqPoint at;
  double turn_deg;
  GRefString *unknown;
} SqKeptPlaced;

/* Copies that could not be laid. */
typedef struct
{
  guint piece, count;
  guint why; /* place in sq_unlaid_why_names */
  GRefString *unknown;
} SqKeptUnlaid;

/* Immutable once shared: fill a fresh one, then hand it over. */
typedef struct
{
  gint ref_count;
  SqId cloth;          /* 0: the job named none */
  guint64 digest;      /* of the task it is a lay of */
  guint64 seed, steps; /* what it was found with */
  guint revision;      /* of the papers it was printed for; 0: not told */
  GArray *strips;      /* of SqKeptStrip */
  GArray *pieces;      /* of SqKeptPiece: all that the task has, laid or not, in its order */
  GArray *placed;      /* of SqKeptPlaced */
  GArray *unlaid;      /* of SqKeptUnlaid */
  GRefString *unknown;
} SqKeptLay;

/* An empty one that is yours until shared. */
SqKeptLay *sq_kept_lay_new (SqId cloth);
SqKeptLay *sq_kept_lay_ref (const SqKeptLay *lay);
void sq_kept_lay_unref (SqKeptLay *lay);
G_DEFINE_AUTOPTR_CLEANUP_FUNC (SqKeptLay, sq_kept_lay_unref)

#define sq_kept_lay_strip(lay, i) (&g_array_index ((lay)->strips, SqKeptStrip, (i)))
#define sq_kept_lay_piece(lay, i) (&g_array_index ((lay)->pieces, SqKeptPiece, (i)))
#define sq_kept_lay_placed(lay, i) (&g_array_index ((lay)->placed, SqKeptPlaced, (i)))
#define sq_kept_lay_unlaid(lay, i) (&g_array_index ((lay)->unlaid, SqKeptUnlaid, (i)))
