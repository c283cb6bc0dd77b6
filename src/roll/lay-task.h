/* SPDX-License-Identifier: GPL-3.0-or-later */
/* What is to be laid on one cloth: polygons, how often, how they may be turned, where the pattern
 * must fall, and the strips there are to lay them on. Knows no cushion. */
#pragma once

#include "geometry/path.h"
#include "roll/grid.h"

/* An arc's chord lies no farther inside a polygon than this (mm): below what a blade can follow. */
#define SQ_GRID_FLATTEN_MM 0.004

/* Turns an item may take, as bits. */
typedef enum
{
  SQ_LAY_UPRIGHT = 1 << 0,
  SQ_LAY_QUARTER = 1 << 1,
  SQ_LAY_HALF = 1 << 2,
  SQ_LAY_THREE_QUARTERS = 1 << 3,
} SqLayTurn;
#define SQ_N_LAY_TURNS 4

/* Where the pattern lies. Its columns stand across at across_nm, across_nm + repeat_across_nm …;
 * in one of them it recurs along at along_nm, along_nm + repeat_along_nm …, in every other column
 * shifted by drop_nm. The item's anchor, turned with it, must fall on one of these places, each
 * rounded to the micrometre by itself so that nothing adds up. A repeat of 0 binds nothing in its
 * direction; a drop needs both. Nanometres, as a pattern's sixteenths of an inch are no whole
 * micrometres. */
typedef struct
{
  SqGrid anchor;
  gint64 along_nm, across_nm, repeat_along_nm, repeat_across_nm, drop_nm;
} SqGridPhase;

typedef struct
{
  /* The cut line, the outer ring, then holes, with the grain along +x; and grown by half the gap on
   * every side, which is what may not overlap. The same rings where there is no gap. */
  SqGridRing *rings, *keep;
  guint n_rings, n_keep;
  SqGridBox box; /* of the cut line with its arcs as they are: what may not leave the cloth */
  guint turns;   /* of SqLayTurn, any set of them but none */
  SqGridPhase phase;
  guint demand;
  guint tag; /* the caller's own */
} SqLayItem;

typedef enum
{
  SQ_STRIP_ROLL,    /* bought by its length, from the start */
  SQ_STRIP_REMNANT, /* there anyway */
  SQ_STRIP_SHEET,   /* bought whole */
} SqStripKind;

/* Cloth to lay on. A bolt is a roll of its length. */
typedef struct
{
  SqStripKind kind;
  gint32 width;   /* usable */
  gint32 length;  /* 0: as long as needed, up to SQ_LAY_LONGEST */
  gint priority;  /* the lowest is filled first; equal: in the order added */
  SqGrid pattern; /* where on the pattern its own (0, 0) lies */
  guint tag;      /* the caller's own */
} SqLayStrip;

/* What a strip may have for length at most, 1,600 m: coordinates then fit with any item's. */
#define SQ_LAY_LONGEST 1600000000

/* Immutable once sealed, shared by reference. */
typedef struct
{
  gint ref_count;
  GArray *items;  /* of SqLayItem */
  GArray *strips; /* of SqLayStrip, by priority */
  gint32 gap;     /* what must stay free between two items, not at the cloth's edges */
  guint64 digest; /* of all this but tags */
} SqLayTask;

/* An empty task, to be filled and then sealed; @gap µm, 0 where touching is allowed. */
SqLayTask *sq_lay_task_new (gint32 gap);

/* Width > 0, length >= 0, held to SQ_LAY_LONGEST. */
void sq_lay_task_add_strip (SqLayTask *task, const SqLayStrip *strip);

/* An item as the caller has it. */
typedef struct
{
  GPtrArray *rings; /* of SqPath, simple, mm, the outer one first; borrowed */
  double turn_rad;  /* turns them and the anchor about (0, 0), so that the grain lies along +x */
  guint turns;      /* of SqLayTurn */
  SqPoint anchor;   /* in the rings' own mm */
  double along_mm, across_mm, repeat_along_mm, repeat_across_mm, drop_mm; /* see SqGridPhase */
  guint demand, tag;
} SqLayItemSpec;

/* Adds an item: its arcs are flattened and its corners rounded to the micrometre. Items keep the
 * order they were added in. */
void sq_lay_task_add (SqLayTask *task, const SqLayItemSpec *spec);

/* Takes the digest; nothing may be added after. */
void sq_lay_task_seal (SqLayTask *task);

SqLayTask *sq_lay_task_ref (const SqLayTask *task);
void sq_lay_task_unref (SqLayTask *task);
G_DEFINE_AUTOPTR_CLEANUP_FUNC (SqLayTask, sq_lay_task_unref)

#define sq_lay_task_item(task, i) (&g_array_index ((task)->items, SqLayItem, (i)))
#define sq_lay_task_strip(task, i) (&g_array_index ((task)->strips, SqLayStrip, (i)))

/* How far along a strip may be laid: its length, or SQ_LAY_LONGEST. */
gint32 sq_lay_strip_end (const SqLayStrip *strip);
