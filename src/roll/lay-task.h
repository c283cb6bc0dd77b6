/* SPDX-License-Identifier: GPL-3.0-or-later */
/* What is to be laid on one cloth: polygons, how often, how they may be turned, where the pattern
 * must fall. Knows no cushion. Whole micrometres, so that touching is exact and an answer is the
 * same on every machine. */
#pragma once

#include "geometry/path.h"

/* 1 µm; |x| ≤ 500 m fits. On the cloth x is along the roll from the cut end, y across from the near
 * usable edge, right side up. */
typedef struct
{
  gint32 x, y;
} SqGrid;

#define SQ_GRID_PER_MM 1000.0

/* An arc's chord lies no farther inside a polygon than this (mm): below what a blade can follow. */
#define SQ_GRID_FLATTEN_MM 0.004

typedef struct
{
  SqGrid *points;
  guint n;
} SqGridRing;

/* Turns an item may take, as bits. */
typedef enum
{
  SQ_LAY_UPRIGHT = 1 << 0,
  SQ_LAY_QUARTER = 1 << 1,
  SQ_LAY_HALF = 1 << 2,
  SQ_LAY_THREE_QUARTERS = 1 << 3,
} SqLayTurn;

/* Where the pattern lies: the anchor's x ≡ along modulo repeat_along, its y ≡ across modulo
 * repeat_across; a repeat of 0 binds nothing. */
typedef struct
{
  SqGrid anchor;
  gint32 along, across, repeat_along, repeat_across;
} SqGridPhase;

typedef struct
{
  SqGridRing *rings; /* the outer one, then holes; turned so that the grain lies along +x */
  guint n_rings;
  guint turns;       /* of SqLayTurn */
  SqGridPhase phase; /* as it lies upright */
  guint demand;
  guint tag; /* the caller's own */
} SqLayItem;

/* Immutable, shared by reference. */
typedef struct
{
  gint ref_count;
  GArray *items; /* of SqLayItem */
  gint32 width;  /* usable, of the roll */
  guint64 digest;
} SqLayTask;

/* An empty task, to be filled and then sealed. */
SqLayTask *sq_lay_task_new (gint32 width);
/* Adds an item; @rings (of SqPath, mm, the outer one first) are turned by @turn_rad about (0, 0)
 * and flattened. @phase has its anchor in the rings' own mm; it is turned with them. */
typedef struct
{
  GPtrArray *rings;
  double turn_rad;
  guint turns;
  SqPoint anchor;
  double along_mm, across_mm, repeat_along_mm, repeat_across_mm; /* repeats of 0: not bound */
  guint demand, tag;
} SqLayItemSpec;
void sq_lay_task_add (SqLayTask *task, const SqLayItemSpec *spec);
/* Takes the digest; nothing may be added after. */
void sq_lay_task_seal (SqLayTask *task);
SqLayTask *sq_lay_task_ref (const SqLayTask *task);
void sq_lay_task_unref (SqLayTask *task);
G_DEFINE_AUTOPTR_CLEANUP_FUNC (SqLayTask, sq_lay_task_unref)
