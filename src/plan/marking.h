/* SPDX-License-Identifier: GPL-3.0-or-later */
/* How a strip of cloth is marked: every mark's place along from the cut end and across from the near
 * edge, on the side that lies up, in the order in which one marks. Places are exact; whoever shows
 * them rounds each once, so nothing adds up. */
#pragma once

#include "plan/lays.h"
#include "plan/marked-ring.h"
#include "plan/marking-cuts.h"

/* A mark inside a piece or on its edge. */
typedef struct
{
  SqMarkKind kind;
  guint ticks;       /* of a notch */
  GArray *at;        /* of SqPoint: a notch's middle on the cut line, the nodes of a line */
  guint ring, side;  /* of a notch: the ring, and the segment of what is drawn from its figures */
  double station_mm; /* of a notch: along that ring */
} SqInnerMark;

/* A piece where it lies. */
typedef struct
{
  guint placed;           /* index in the lay */
  GPtrArray *cut;         /* of SqPath: its cut line, the outer ring, then holes */
  SqBox box;              /* of its cut line */
  gboolean is_rectangle;  /* straight along the cloth: its box says all of its outline, … */
  gboolean is_fine;       /* … shown to half the step, as for SqMarkPoint */
  gboolean is_in_strip;   /* freed by the marking's straight cuts, but for its ends */
  GPtrArray *rings;       /* of GArray of SqMarkPoint: how these are marked */
  GArray *marks;          /* of SqInnerMark: notches round the piece, then lines */
  gboolean has_diagonals; /* it is large: both diagonals are worth a check, … */
  guint corners[4];       /* … from the first to the third, from the second to the fourth of these
                           * points of the outer ring */
} SqMarkedPiece;

#define sq_marked_piece_ring(piece, i) ((const GArray *) g_ptr_array_index ((piece)->rings, (i)))
#define sq_inner_mark(piece, i) (&g_array_index ((piece)->marks, SqInnerMark, (i)))

/* One strip of a lay. */
typedef struct
{
  guint cloth, strip; /* indexes */
  gboolean wrong_side;
  double width_mm;   /* usable */
  double laid_mm;    /* along */
  GArray *flaws;     /* of SqBox */
  GArray *cuts;      /* of SqStraightCut: first of all */
  GPtrArray *pieces; /* of SqMarkedPiece, in order: what those cuts free, then the others along the
                      * cloth from the cut end, ties from the near edge */
} SqMarking;

/* How strip @strip of the lay of cloth @cloth is marked; figures are read in @style's step. Where the
 * wrong side lies up, the cloth is turned over along its length: the cut end stays where it is,
 * what was the far edge is near. New. */
SqMarking *sq_marking_new (const SqLays *lays, guint cloth, guint strip, gboolean wrong_side,
                           const SqLengthStyle *style);
void sq_marking_free (SqMarking *marking);
G_DEFINE_AUTOPTR_CLEANUP_FUNC (SqMarking, sq_marking_free)

#define sq_marked_piece(marking, i)                                                                \
  ((const SqMarkedPiece *) g_ptr_array_index ((marking)->pieces, (i)))
#define sq_marking_cut(marking, i) (&g_array_index ((marking)->cuts, SqStraightCut, (i)))

/* The diagonals of a piece that has them, mm. */
void sq_marked_diagonals_mm (const SqMarkedPiece *piece, double out[2]);

/* Whether @cloth (NULL: not told) can be torn along a thread, across the roll or along it: a woven
 * cloth without a coat or pile, and across only where no pattern has to lie square to the tear. */
gboolean sq_cloth_tears (const SqCloth *cloth, gboolean across);
