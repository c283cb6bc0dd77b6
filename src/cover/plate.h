/* SPDX-License-Identifier: GPL-3.0-or-later */
/* A plate: a face with skirts that are folded down along straight stretches of its outline. Where two
 * skirts meet at a corner a notch is cut out between them; elsewhere boxing stands below the face.
 * Internal to the room. */
#pragma once

#include "cover/wall.h"

/* One end of a skirt. */
typedef struct
{
  gboolean meets_wall; /* it is joined to boxing, else sewn to the skirt beyond the corner */
  SqId corner;
  double turn_rad;     /* of the outline there, > 0; where two skirts meet */
  double allowance_mm; /* of the skirt's end */
  gboolean is_dart;    /* the allowance is what there is: nothing is cut out */
  double taken_mm;     /* off its lower edge, where a wrap turns under */
} SqSkirtEnd;

typedef struct
{
  SqId edge;             /* the longest of those it hangs from */
  double from_mm, to_mm; /* stations of the ring; may pass its length */
  guint first, n;        /* stretches of the ring */
  SqPoint from;
  SqVector along, outward; /* unit, in the plane of the face */
  double length_mm;
  SqSkirtEnd start, end;
} SqPlateSkirt;

typedef struct
{
  SqMaking *making;
  const SqFinishedRing *ring;
  double depth_mm; /* from the fold to the seam at the skirts' lower edge */
  double wrap_mm;  /* how much of it turns under, corners mitred */
  GArray *skirts;  /* of SqPlateSkirt, in order of travel */
  GArray *stretches;
} SqPlate;

/* Whether two edges of so little turn are one: there is nothing to fold between them. */
#define SQ_SAME_SKIRT_RAD 1e-6

/* Finds the skirts of the outer ring: along its edges that are to be folded, giving way to what
 * stands beside them at corners that turn inward and at curves. What can't be is listed, and FALSE
 * returned; clear the plate all the same. */
gboolean sq_plate_init (SqPlate *plate, SqMaking *making, double depth_mm, double wrap_mm);
void sq_plate_clear (SqPlate *plate);

/* Breaks the ring into stretches, at @breaks_mm and the ends of @zip (both may be NULL) too. Call it
 * once before the plate is made. */
void sq_plate_break (SqPlate *plate, const GArray *breaks_mm, const SqZipRun *zip);

/* Sizes of the notches, and which are darts; these are listed as notes. New array of SqCornerNotch;
 * the skirts' ends get their allowances. */
GArray *sq_plate_find_notches (SqPlate *plate);

/* Where a plate's runs are: of each stretch, and of the two ends of each skirt. */
typedef struct
{
  guint piece;
  guint *stretches, *starts, *ends;
} SqPlateRuns;

/* The piece: the upper face with its skirts hanging down, or @turned_over, the lower one with its
 * skirts standing up. Clear @runs after use. */
void sq_plate_make (SqPlate *plate, const GArray *notches, gboolean turned_over, SqPlateRuns *runs);
void sq_plate_runs_clear (SqPlateRuns *runs);

/* Sews skirts that meet at corners. */
void sq_plate_sew_corners (const SqPlate *plate, const SqPlateRuns *runs, guint step);

/* The stretches between the skirt @i and the next one, where boxing stands: first and number. */
void sq_plate_gap (const SqPlate *plate, guint i, guint *first, guint *n);

/* What the seams at the skirts' lower edge are, save where a zip is, and when they are sewn. */
typedef struct
{
  SqSeamKind kind;
  guint zip_step, step;
} SqSkirtSeams;

/* Sews the skirts' lower edges to @other, with notches at @places (of SqNotchPlace). */
void sq_plate_sew_skirts (const SqPlate *plate, const SqPlateRuns *runs, const SqWallSide *other,
                          const SqSkirtSeams *seams, const GArray *places);
