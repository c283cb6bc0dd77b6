/* SPDX-License-Identifier: GPL-3.0-or-later */
/* Inside of the offset: the raw parallel of a ring, how its sides are joined, and what is left of
 * it once its loops are gone. Nobody but offset*.c includes this. */
#pragma once

#include "geometry/offset.h"

/* Different distances: a hair's difference is rounding, not a wish. */
#define SQ_SAME_DISTANCE_MM 1e-9

/* A segment of the ring, and its parallel before it is cut or prolonged. */
typedef struct
{
  SqSegment raw;
  SqVector start, end; /* unit directions of travel */
  double by_mm;
  double radius_mm; /* of the parallel, signed; infinite for a line */
  SqPoint centre;   /* only for arcs */
  guint32 tag;
  gboolean is_used_up; /* an arc whose radius the move uses up: its parallel is its centre */
} SqOffsetSide;

/* What stands between the parallels of two neighbours: at[0] ends the one, at[n − 1] starts the
 * other; with n = 1 they share the node. */
typedef struct
{
  SqPoint at[4];
  double bulge[3];
  guint n;
  SqTrimKind kind;
  gboolean cuts_back; /* takes something off a parallel that it may not have */
} SqOffsetJoin;

/* A piece of the closed chain that is the parallel: each starts where the one before ends. */
typedef struct
{
  SqSegment s;
  int side; /* of the ring's segments the one it is the parallel of; −1: part of a trim */
  SqTrimKind kind;
  guint32 tag_before, tag_after; /* alike for a parallel */
} SqOffsetPiece;

/* The join of @a, which ends at @corner, with @b, which starts there. FALSE if the parallels can't
 * be joined so that they meet: sq_offset_join_through () then has to do. */
gboolean sq_offset_join (const SqOffsetSide *a, const SqOffsetSide *b, SqPoint corner,
                         const SqJoinRule *rule, SqOffsetJoin *join);

/* The join that cuts nothing off and covers every point which lies beside either segment or
 * between them: the winding number then tells what of it is boundary. */
void sq_offset_join_through (const SqOffsetSide *a, const SqOffsetSide *b, SqPoint corner,
                             SqOffsetJoin *join);

/* How far @p lies beyond the end of @side's parallel (before its start, if @at_start) along its own
 * line or circle: a length, or for an arc an angle, −π … π. < 0: on the segment's side. */
double sq_offset_beyond (const SqOffsetSide *side, gboolean at_start, SqPoint p);

static inline const SqOffsetPiece *
sq_offset_piece (const GArray *chain, guint i)
{
  return &g_array_index (chain, SqOffsetPiece, i);
}

/* Signed area within a closed chain, which is not empty. */
double sq_offset_chain_area_mm2 (const GArray *chain);

/* Calls @func for all pairs of pieces i < j whose boxes meet, until it says FALSE; whether it never
 * did. */
typedef gboolean (*SqOffsetPairFunc) (const GArray *chain, guint i, guint j, gpointer data);
gboolean sq_offset_near_pairs (const GArray *chain, SqOffsetPairFunc func, gpointer data);

/* Moves *@at, which is near both, to where the lines or circles of @a and @b meet. Segments are found
 * to meet where they are as good as one; this is exact. FALSE, and nothing moved, if they don't
 * meet within @within_mm of it, or hardly cross. */
gboolean sq_offset_settle_on (const SqSegment *a, const SqSegment *b, double within_mm,
                              SqPoint *at);

/* Whether no two pieces of @chain (of SqOffsetPiece) meet but neighbours at their common node. */
gboolean sq_offset_chain_is_simple (const GArray *chain);

/* The rings that bound the region which @chain winds about in the sense of @sense (1: counter-
 * clockwise, −1: clockwise). Returns a new array of GArray of SqOffsetPiece, the one with the
 * greatest area first; the others may run the other way, as pockets do. It may be empty. */
GPtrArray *sq_offset_without_loops (const GArray *chain, int sense);
