/* SPDX-License-Identifier: GPL-3.0-or-later */
/* How a finished outline is made. Internal to the room. */
#pragma once

#include "cover/choices.h"
#include "cover/finished.h"

/* Seat → clearance per edge → rounding. NULL if the outline can't be used; everything wrong is
 * appended to @problems. Holes that can't be used are left out. */
SqFinished *sq_finished_new (const SqChoices *choices, GArray *problems);

/* Stations of the stretch of @path tagged @tag; FALSE if there is none. */
gboolean sq_tagged_stretch (const SqPath *path, guint32 tag, double *from_mm, double *to_mm);

/* Where the edges of @ring begin and end, with and without their roundings, and whether they are
 * straight: from the tags of its path. */
void sq_measure_edge_stations (SqFinishedRing *ring);

/* How an edge of the outer ring stands against others: by what is asked for, then by the rule for
 * ties. All within SQ_TIE_MM of the best are equal; of those the farthest from the front wins, then
 * the one farthest right in the seat frame, then the lowest id. */
typedef struct
{
  double merit_mm;
  SqPoint middle; /* seat frame */
  SqId id;
} SqEdgeRank;

SqEdgeRank sq_edge_rank (const SqFinished *finished, guint edge, double merit_mm);
gboolean sq_edge_rank_beats (const SqEdgeRank *a, const SqEdgeRank *b);
