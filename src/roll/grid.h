/* SPDX-License-Identifier: GPL-3.0-or-later */
/* Points and rings in whole micrometres: touching is exact, overlap can be decided, and an answer
 * is the same on every machine. */
#pragma once

#include <glib.h>

/* 1 µm. Items keep within ± 500 m, strips within 1,600 m, so that sums of both fit. On the cloth x
 * is along the roll from the cut end, y across from the near usable edge, right side up. */
typedef struct
{
  gint32 x, y;
} SqGrid;

#define SQ_GRID_PER_MM 1000.0

/* Not repeating its first point; rings of one item are told apart by nesting, not by direction. */
typedef struct
{
  SqGrid *points;
  guint n;
} SqGridRing;

typedef struct
{
  SqGrid min, max;
} SqGridBox;

static inline SqGrid
sq_grid_add (SqGrid a, SqGrid b)
{
  return (SqGrid){ a.x + b.x, a.y + b.y };
}

/* How something lies: mirrored first (x → −x) where mirrored, then turned counter-clockwise about
 * (0, 0) by turn, thousandths of a degree from 0 to 359,999. */
typedef struct
{
  gint32 turn;
  gboolean mirrored;
} SqGridPose;

#define SQ_GRID_QUARTER 90000
#define SQ_GRID_WHOLE_TURN 360000

static inline gboolean
sq_grid_pose_equal (SqGridPose a, SqGridPose b)
{
  return a.turn == b.turn && !a.mirrored == !b.mirrored;
}

/* @p as @pose has it: exact for quarter turns, else rounded to the micrometre. */
SqGrid sq_grid_posed (SqGrid p, SqGridPose pose);
/* What is nearest to @mm, which is held to ± 500 m. */
gint32 sq_grid_from_mm (double mm);

/* @rings as @pose has them, in the same order; to be freed with sq_grid_rings_free. */
SqGridRing *sq_grid_rings_posed (const SqGridRing *rings, guint n_rings, SqGridPose pose);
void sq_grid_rings_free (SqGridRing *rings, guint n_rings);
/* Of at least one ring with at least one point. */
SqGridBox sq_grid_rings_box (const SqGridRing *rings, guint n_rings);
/* Of the outer ring less the holes, mm². */
double sq_grid_rings_area_mm2 (const SqGridRing *rings, guint n_rings);
