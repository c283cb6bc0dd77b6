/* SPDX-License-Identifier: GPL-3.0-or-later */
/* Walls of boxing: strips that stand along a ring, or along part of one, joined end to end and sewn
 * to what is above and below them. Internal to the room. */
#pragma once

#include "cover/boxing.h"
#include "cover/stretches.h"

typedef struct
{
  guint ring;
  double foot_mm, height_mm; /* z of its lower seam, and from there to the upper one */
  const GArray *strips;      /* of SqStrip, in order of travel */
  const GArray *stretches;   /* of SqStretch: of the whole ring */
  SqZipRun zip;              /* between an upper and a lower strip */
  gboolean is_open;          /* its two ends don't meet */
  gboolean is_unmatched;     /* its pattern need not meet that of the front */
  SqPieceRole role;          /* of its plain strips */
  struct
  {
    guint zip, joins, top, underside;
  } steps; /* of its seams */
} SqWall;

/* Which runs of a strip do what. */
typedef struct
{
  guint piece;
  guint lower_first, upper_first, n; /* runs of its long sides, as many on both */
  guint left[2], right[2];           /* of its ends, from below up */
  guint zip;                         /* of a zip strip */
} SqStripRuns;

/* Makes the pieces of @wall, with the zip and the joins between them. @upper and @lower, one a
 * strip, are filled: the same of a plain strip. */
void sq_wall_make (SqMaking *making, const SqWall *wall, SqStripRuns *upper, SqStripRuns *lower);

/* The sides that @wall has in common with what is above and below it: a piece, and its run of each
 * stretch of the ring. */
typedef struct
{
  guint piece;
  const guint *runs;
  gboolean mirrored;
} SqWallSide;

/* Sews strips to what is @above and @below, with notches at @places (of SqNotchPlace). */
void sq_wall_sew (SqMaking *making, const SqWall *wall, const SqStripRuns *upper,
                  const SqStripRuns *lower, const SqWallSide *above, const SqWallSide *below,
                  const GArray *places);

/* Patches of a wall along @ring from station to station: x is the station, y the height over
 * @foot_mm. With @fold_at the strip lies folded back there: its x is the mirror image of the
 * station. */
void sq_draft_wall_patches (SqDraft *draft, const SqPath *ring, double from_mm, double to_mm,
                            double y0_mm, double y1_mm, double foot_mm, const double *fold_at_mm);
