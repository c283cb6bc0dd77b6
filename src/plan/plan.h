/* SPDX-License-Identifier: GPL-3.0-or-later */
/* Everything that follows from a job without a search: covers, cut list, totals, problems. The same
 * job gives the same plan, bit for bit. */
#pragma once

#include "cover/cover.h"

/* Immutable, shared by reference. */
typedef struct
{
  gint ref_count;
  SqJob *job;
  GPtrArray *covers; /* of SqCover: one a cushion, in the job's order; then the mirrored
                         ones of pairs */
  GArray *cut_list;  /* of SqCutEntry, in the order of cutting */
  GArray *cloths;    /* of SqClothTotal */
} SqPlan;

/* One line of the cut list. */
typedef struct
{
  guint number;         /* from 1 */
  guint cushion, piece; /* indexes */
  guint count;          /* in all: per cushion × cushions */
  SqId cloth;
} SqCutEntry;

typedef struct
{
  SqId cloth;      /* 0: the job names none */
  guint pieces;    /* in all */
  double area_mm2; /* of all cut pieces: what is bought follows from the lay */
} SqClothTotal;

/* Totals that need no lay. */
typedef struct
{
  guint cushions, pieces;
  double cloth_mm2;
  guint foam_parts;
  double foam_mm3, foam_g;
  double zip_mm;
  guint sliders;
  double seam_mm; /* all seams of all cushions */
  guint notes, warnings, faults;
} SqFigures;

/* The plan of @job. @before (may be NULL) is only a source of covers and pieces to share: the
 * result is the same without it. */
SqPlan *sq_plan_new (const SqJob *job, const SqPlan *before);
SqPlan *sq_plan_ref (const SqPlan *plan);
void sq_plan_unref (SqPlan *plan);
G_DEFINE_AUTOPTR_CLEANUP_FUNC (SqPlan, sq_plan_unref)

const SqCover *sq_plan_cover (const SqPlan *plan, guint i);
SqFigures sq_plan_figures (const SqPlan *plan);
/* The cloth a piece is cut from; the job's default cloth where it names none. Borrowed, may be NULL
 * for id 0. */
const SqCloth *sq_plan_cloth (const SqPlan *plan, SqId id);
