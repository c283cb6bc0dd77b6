/* SPDX-License-Identifier: GPL-3.0-or-later */
/* What holds for the plan of any job at all. */
#pragma once

#include "plan/plan.h"

/* A job, its plan made from nothing, and the number that chance inside a law is taken from. */
typedef struct
{
  guint32 seed;
  const SqJob *job;
  const SqPlan *plan;
} LawCase;

/* NULL where the law holds; else what is wrong, with figures, to be freed. */
typedef char *(*Law) (const LawCase *c);

/* Both sides of every seam are equally long, run by run, and run against each other; every run
 * that is sewn is in just one seam. */
char *law_seams (const LawCase *c);
/* Match notches stand at the same places on both sides of a seam; in the middle of an edge there
 * are as many ticks as its side has. */
char *law_notches (const LawCase *c);
/* Cut lines are simple, each segment at its own run's allowance, save listed trims. */
char *law_cut_lines (const LawCase *c);
/* Folded back into space by its patches, a cover closes. */
char *law_folding (const LawCase *c);
/* Areas and cut lines as GEOS has them; what the foam measures and weighs. */
char *law_areas (const LawCase *c);
/* Strips of boxing go once round, fit the cloth and are joined where joins may be. */
char *law_boxing (const LawCase *c);
/* A mirrored seat has the mirrored cover. */
char *law_mirroring (const LawCase *c);
/* Turning and moving a seat whose front is marked changes nothing but coordinates; marking the
 * front that is found anyway changes nothing at all. */
char *law_turning (const LawCase *c);
/* A plan is the same whatever plan went before, and shares what did not change. */
char *law_before (const LawCase *c);
/* Saved and opened again, a job is the same and so is its plan. */
char *law_saving (const LawCase *c);
/* Laid on their cloths, pieces don't overlap, lie where their pattern must fall, and as often as
 * the cut list has them. */
char *law_lays (const LawCase *c);

/* What is read from the figures of the marking guide is the cut line to 1/32 in, whichever way a piece
 * lies; ticks of notches begin at the cut line. */
char *law_marking (const LawCase *c);

typedef struct
{
  const char *name;
  Law law;
} LawEntry;

extern const LawEntry laws[];
extern const guint n_laws;

/* The index of the cover's first piece of @role, or G_MAXUINT. */
guint first_piece (const SqCover *cover, SqPieceRole role);
gboolean has_problem (const SqCover *cover, SqProblemCode code);
