/* SPDX-License-Identifier: GPL-3.0-or-later */
/* Parallel paths at a distance of their own for every tag: cut lines from sew lines, finished
 * outlines from seats. */
#pragma once

#include "geometry/path.h"

/* What is done where two offset segments part at a corner. */
typedef struct
{
  enum
  {
    SQ_JOIN_MITRE,
    SQ_JOIN_ROUND,
  } kind;
  double mitre_limit; /* a mitre whose tip lies farther from the corner than this many times the
                         larger distance … */
  double square_at;   /* … is cut square to the corner's bisector at this many times it */
  double step_rad;    /* different distances meeting at less turn than this get a step, square to
                         the path, instead of a mitre far away */
} SqJoinRule;

/* Mitred, limit 2.5, squared at 2, steps under 5°: the rule of all cut lines. */
SqJoinRule sq_join_rule_mitre (void);
/* Arcs about the corners, for checks and previews. */
SqJoinRule sq_join_rule_round (void);

typedef enum
{
  SQ_OFFSET_CLEAN,    /* every segment of the ring has its parallel */
  SQ_OFFSET_TRIMMED,  /* loops were removed; some stretch has no parallel of its own */
  SQ_OFFSET_SPLIT,    /* more than one ring came out; the one with the greatest area is returned */
  SQ_OFFSET_VANISHED, /* nothing is left; no ring is returned */
} SqOffsetEnd;

typedef enum
{
  SQ_TRIM_MITRE, /* a mitre cut square */
  SQ_TRIM_STEP,  /* a step between two distances */
  SQ_TRIM_ROUND, /* a round join; where the distances differ it has the larger one for its radius,
                    and the nearer parallel steps out to it */
  SQ_TRIM_BEVEL, /* parallels that don't meet within a quarter turn of their circles: prolonged
                    along their tangents */
} SqTrimKind;

/* A stretch of the result that is no parallel: its segments first … last − 1 (cyclic). */
typedef struct
{
  SqTrimKind kind;
  guint32 tag_before, tag_after; /* of the ring's segments on its two sides */
  guint first, last;             /* nodes of the result */
} SqOffsetTrim;

typedef struct
{
  SqOffsetEnd end;
  SqPoint where; /* TRIMMED: a node of @ring beside a stretch without a parallel; SPLIT: a point of
                    another of the rings, be it a pocket; VANISHED: the ring's first node */
  GArray *trims; /* of SqOffsetTrim, in order of travel; owned by the report */
} SqOffsetReport;

void sq_offset_report_clear (SqOffsetReport *report);

/* The ring parallel to the simple ring @ring at by_tag_mm[tag] to the right of each segment:
 * outward for > 0, inward for < 0. Offsets of lines are lines and of arcs concentric arcs,
 * exactly; segments are prolonged along their own line or circle to meet, or cut back where they
 * overlap. Loops are removed by winding number: what is returned winds like @ring and bounds the
 * region whose points the raw parallel winds about in @ring's sense. Pockets, as an outward
 * offset leaves behind where it closes the mouth of a notch, are dropped; the end is SPLIT then,
 * too. A notch whose walls' own distances leave nothing of it gives the plain corner of its
 * neighbours.
 *
 * Each segment of the result carries the tag it came from; those of a trim carry tag_before.
 * What is left of a trim after loops were removed is still one. Nodes of the result that belong
 * to a node of the ring stay one node; collinear neighbours of equal distance are kept apart,
 * not merged; tangent neighbours stay tangent. The result starts with the parallel of @ring's
 * first segment that has one.
 *
 * by_tag_mm has n_tags entries, finite; all tags of @ring are below n_tags. Returns a new ring,
 * or NULL if it vanished. @report may be NULL; otherwise it is filled and the caller clears it. */
SqPath *sq_path_offset (const SqPath *ring, const double *by_tag_mm, guint n_tags,
                        const SqJoinRule *join, SqOffsetReport *report);

/* The same at one distance everywhere. */
SqPath *sq_path_offset_evenly (const SqPath *ring, double by_mm, const SqJoinRule *join,
                               SqOffsetReport *report);
