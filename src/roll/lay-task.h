/* SPDX-License-Identifier: GPL-3.0-or-later */
/* What is to be laid on one cloth: polygons, how often, how they may be turned, where the pattern
 * must fall, and the strips there are to lay them on. Knows no cushion. */
#pragma once

#include "geometry/path.h"
#include "roll/grid.h"

/* An arc's chord lies no farther inside a polygon than this (mm): below what a blade can follow. */
#define SQ_GRID_FLATTEN_MM 0.004

/* Turns an item may take, as bits, where it may take no others than quarter turns. */
typedef enum
{
  SQ_LAY_UPRIGHT = 1 << 0,
  SQ_LAY_QUARTER = 1 << 1,
  SQ_LAY_HALF = 1 << 2,
  SQ_LAY_THREE_QUARTERS = 1 << 3,
} SqLayTurn;
#define SQ_N_LAY_TURNS 4

/* What an item may have for steps of a whole turn, and for poses in all, at most. */
#define SQ_LAY_MOST_STEPS 32
#define SQ_LAY_MOST_POSES (2 * SQ_LAY_MOST_STEPS)

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
  SqGridBox box;     /* of the cut line with its arcs as they are: what may not leave the cloth */
  SqGridPose *poses; /* that it may take, the preferred one first */
  guint n_poses;
  SqGridPhase phase;
  gint32 gap;       /* that it keeps; two keep half of both */
  gint priority;    /* where not all can be laid, the lowest is laid */
  gboolean crosses; /* its rings cross themselves or each other: it can't be laid */
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
  gint32 width;     /* usable */
  gint32 length;    /* 0: as long as needed, up to SQ_LAY_LONGEST */
  gint priority;    /* the lowest is filled first; equal: in the order added */
  SqGrid pattern;   /* where on the pattern its own (0, 0) lies */
  guint tag;        /* the caller's own */
  SqGridBox *flaws; /* where nothing may lie; copied by the task, as far as on the strip */
  guint n_flaws;
} SqLayStrip;

/* A copy of an item that lies where it is told to. */
typedef struct
{
  guint item, copy;
  guint strip; /* index of the task's */
  SqGrid at;   /* as in SqPlaced */
  SqGridPose pose;
} SqLayPin;

/* What a strip may have for length at most, 1,600 m: coordinates then fit with any item's. */
#define SQ_LAY_LONGEST 1600000000

/* Immutable once sealed, shared by reference. */
typedef struct
{
  gint ref_count;
  GArray *items;     /* of SqLayItem */
  GArray *strips;    /* of SqLayStrip, by priority */
  GArray *pins;      /* of SqLayPin; what can't be is none, see sq_lay_task_seal */
  GArray *bad_pins;  /* of SqLayPin: those that can't be; their pieces are laid as others are */
  gint32 gap;        /* what must stay free between two items, not at the cloth's edges */
  gboolean straight; /* only lays that straight cuts through what is left can follow */
  guint64 digest;    /* of all this but tags */
} SqLayTask;

/* An empty task, to be filled and then sealed; @gap µm, 0 where touching is allowed. */
SqLayTask *sq_lay_task_new (gint32 gap);

/* Width > 0, length >= 0, held to SQ_LAY_LONGEST. Sheets and bolts are added as often as there are
 * of them. */
void sq_lay_task_add_strip (SqLayTask *task, const SqLayStrip *strip);

/* Only lays that a knife or shears can cut by straight cuts, each right through what is left, from
 * edge to edge: of pieces that are no rectangles, their boxes count. */
void sq_lay_task_set_straight (SqLayTask *task);

/* After all strips and items are added. */
void sq_lay_task_add_pin (SqLayTask *task, const SqLayPin *pin);

/* An item as the caller has it. */
typedef struct
{
  GPtrArray *rings; /* of SqPath, simple, mm, the outer one first; borrowed */
  double turn_rad;  /* turns them and the anchor about (0, 0), so that the grain lies along +x */
  guint turns;      /* of SqLayTurn */
  guint steps;      /* > 0: any of so many steps of a whole turn instead, to SQ_LAY_MOST_STEPS */
  gboolean may_mirror;
  const SqGridPose
      *poses;     /* these n_poses instead of all that, to SQ_LAY_MOST_POSES, no two alike; … */
  guint n_poses;  /* … 0: turns or steps hold */
  SqPoint anchor; /* in the rings' own mm */
  double along_mm, across_mm, repeat_along_mm, repeat_across_mm, drop_mm; /* see SqGridPhase */
  double gap_mm; /* of its own instead of the task's; 0: the task's */
  gint priority; /* see SqLayItem */
  guint demand, tag;
} SqLayItemSpec;

/* Adds an item: its arcs are flattened and its corners rounded to the micrometre. Items keep the
 * order they were added in. */
void sq_lay_task_add (SqLayTask *task, const SqLayItemSpec *spec);

/* Takes the digest; nothing may be added after. A pin whose piece would lie off its strip, on a
 * flaw, on an earlier pin's, in a pose it may not take or where its pattern does not fall goes to
 * bad_pins; so does one of a copy that is not wanted, or pinned already, and where only straight cuts
 * are to be made one that these can't part from the earlier ones. */
void sq_lay_task_seal (SqLayTask *task);

SqLayTask *sq_lay_task_ref (const SqLayTask *task);
void sq_lay_task_unref (SqLayTask *task);
G_DEFINE_AUTOPTR_CLEANUP_FUNC (SqLayTask, sq_lay_task_unref)

#define sq_lay_task_item(task, i) (&g_array_index ((task)->items, SqLayItem, (i)))
#define sq_lay_task_strip(task, i) (&g_array_index ((task)->strips, SqLayStrip, (i)))

/* Numbers of items, from 1, by their tags (GUINT_TO_POINTER of both): of a tag's items the first. New
 * reference. */
GHashTable *sq_lay_task_tags (const SqLayTask *task);

/* The index of @pose in the item's poses; G_MAXUINT: it may not take it. */
guint sq_lay_item_pose (const SqLayItem *item, SqGridPose pose);
/* Whether a copy of an item is pinned where it can be. */
gboolean sq_lay_task_is_pinned (const SqLayTask *task, guint item, guint copy);
/* Of the cut line in @pose: what may not leave the cloth. */
SqGridBox sq_lay_item_box (const SqLayItem *item, SqGridPose pose);

/* How far along a strip may be laid: its length, or SQ_LAY_LONGEST. */
gint32 sq_lay_strip_end (const SqLayStrip *strip);
