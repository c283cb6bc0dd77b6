/* SPDX-License-Identifier: GPL-3.0-or-later */
/* A finished ring cut into stretches, each of which is one run on every piece that has it; and the
 * ring of a face drawn of them. Internal to the room. */
#pragma once

#include "cover/boxing.h"

/* Stations as in SqFinishedRing, from < to. */
typedef struct
{
  double from_mm, to_mm;
  SqId edge;       /* 0: a rounding */
  gboolean is_zip; /* the seam here is opened by a zip */
} SqStretch;

/* @station_mm brought to 0 … @whole_mm, the ring's length. */
double sq_station_on_ring_mm (double station_mm, double whole_mm);

/* The stretches of @ring: from edge's end to edge's end, and broken at @breaks_mm (any station;
 * may be NULL) and at both ends of @zip (may be NULL) too. New array of SqStretch in order of
 * travel; the first begins at station 0. */
GArray *sq_stretches_new (const SqFinishedRing *ring, const GArray *breaks_mm, const SqZipRun *zip);

/* Index of the stretch that begins at @station_mm. */
guint sq_stretch_from (const GArray *stretches, double station_mm, double whole_mm);

/* The stretches between two stations where stretches begin: the first, and how many, going on past
 * the ring's start. The same station twice: all of them. */
void sq_stretches_between (const GArray *stretches, double from_mm, double to_mm, double whole_mm,
                           guint *first, guint *n);

/* A stretch of a ring of a face begun with @draft, as a run of @role: forwards, or mirrored and
 * backwards. Returns the run. */
guint sq_draft_stretch (SqDraft *draft, const SqFinishedRing *ring, const SqStretch *stretch,
                        gboolean mirrored, SqRunRole role, double allowance_mm);

/* All of @ring as a ring of a face, run by run; mirrored faces have their runs in reverse order. A
 * stretch with a zip is a run of that role if @with_zip. @runs: of each stretch, to be filled. */
void sq_draft_ring (SqDraft *draft, const SqMaking *making, const SqFinishedRing *ring,
                    const GArray *stretches, gboolean mirrored, gboolean with_zip, guint *runs);

/* The side of a seam that @n stretches from @first on are on piece @piece; @runs: its run of each
 * stretch. */
SqSide sq_ring_side (guint piece, const guint *runs, const GArray *stretches, guint first, guint n,
                     gboolean mirrored);
