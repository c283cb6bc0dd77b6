/* SPDX-License-Identifier: GPL-3.0-or-later */
/* What a plan takes besides cloth, foam and zips: thread and basting tape. Estimates, to buy by. */
#pragma once

#include "plan/plan.h"

/* What is added for ends, corners sewn twice and what is unpicked (15 %: the allowance that the
 * apparel trade adds to a measured figure; melgeecrafts.com, "thread consumption"). */
#define SQ_THREAD_WASTE 0.15

typedef struct
{
  double sewn_mm; /* rows of stitches: every seam once, a zip's on both sides of its teeth; a welt's
                       seam, and before that the welt round its cord */
  double thread_mm; /* for them, needle and bobbin together, with waste */
  double tape_mm;   /* basting tape: both flanges of every zip, corner seams, once round every
                       perimeter seam; none on velvet */
  double cord_mm;   /* for welts, their laps included */
} SqMaterials;

SqMaterials sq_plan_materials (const SqPlan *plan);

/* Thread in a length of seam, both threads together, of lockstitches (type 301 of ISO 4915)
 * @stitch_mm long through @thickness_mm of cloth: 2 + 2 × thickness ÷ stitch. By
 * textilecalculation.blogspot.com, 2015/06: 0.01 in thick and 10 stitches an inch take 2.2 in of
 * thread an inch. */
double sq_thread_share (double thickness_mm, double stitch_mm);
