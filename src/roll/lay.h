/* SPDX-License-Identifier: GPL-3.0-or-later */
/* Where everything of a task lies: what a search found, and whether that is right. */
#pragma once

#include "roll/lay-task.h"

/* One copy of an item: its rings as @pose has them, then moved by @at, on a strip of the task. */
typedef struct
{
  guint item, copy; /* copy: 0 … demand − 1 */
  guint tag;        /* the item's */
  guint strip;
  SqGrid at;
  SqGridPose pose;
} SqPlaced;

typedef enum
{
  SQ_UNLAID_TOO_WIDE, /* in no turn it may take it goes into the width or length of any strip */
  SQ_UNLAID_PATTERN,  /* it would go in, but not where the pattern must fall */
  SQ_UNLAID_NO_ROOM,  /* the strips are full, or it is more than SQ_LAY_MOST_PIECES */
  SQ_UNLAID_CROSSES,  /* its outline crosses itself */
} SqUnlaidWhy;

/* Copies of an item that are not in the lay: its last ones but for those pinned. */
typedef struct
{
  guint item, count;
  SqUnlaidWhy why;
} SqUnlaid;

/* More copies in all are not laid. */
#define SQ_LAY_MOST_PIECES 100000

/* Immutable, shared by reference. */
typedef struct
{
  gint ref_count;
  GArray *placed;  /* of SqPlaced, by item, then copy */
  GArray *unlaid;  /* of SqUnlaid, by item */
  GArray *lengths; /* of gint32: how much of each strip of the task is laid, from x = 0 */
  guint64 task_digest;
  guint64 seed, steps; /* what it was found with: the same again finds the same */
} SqLay;

/* Nothing laid of @task yet: to be filled before it is shared. */
SqLay *sq_lay_new (const SqLayTask *task);
SqLay *sq_lay_ref (const SqLay *lay);
void sq_lay_unref (SqLay *lay);
G_DEFINE_AUTOPTR_CLEANUP_FUNC (SqLay, sq_lay_unref)

#define sq_lay_placed(lay, i) (&g_array_index ((lay)->placed, SqPlaced, (i)))
/* µm */
#define sq_lay_length(lay, strip) (g_array_index ((lay)->lengths, gint32, (strip)))

/* Of the cut lines of all that is laid on @strip, mm². */
double sq_lay_area_mm2 (const SqLayTask *task, const SqLay *lay, guint strip);
/* The share of @strip, as far as it is laid, that lies under pieces; 0 where nothing is laid. */
double sq_lay_density (const SqLayTask *task, const SqLay *lay, guint strip);

/* Where in placed stands what lies on @strip, in the order in which one comes upon it from the start
 * on: by where it begins along the strip, then across. New array of guint. */
GArray *sq_lay_along (const SqLayTask *task, const SqLay *lay, guint strip);

typedef enum
{
  SQ_LAY_RIGHT,
  SQ_LAY_OTHER_TASK, /* another digest, or another number of strips */
  SQ_LAY_COUNT,      /* an item is not exactly as often laid and unlaid as wanted, or bears
                        another tag */
  SQ_LAY_POSE,       /* a turn the item may not take */
  SQ_LAY_OUTSIDE,    /* beyond the cloth, or beyond the length that is told */
  SQ_LAY_PATTERN,    /* the pattern does not fall where it must */
  SQ_LAY_FLAW,       /* on a flaw of the cloth */
  SQ_LAY_PIN,        /* a pinned copy is elsewhere */
  SQ_LAY_OVERLAP,    /* two overlap, or come nearer than the gap */
  SQ_LAY_CUTS,       /* no straight cuts can follow it */
} SqLayFault;

/* Looks over all of @lay anew and exactly, from nothing but the task. @at, if not NULL, gets the
 * index of a piece that is wrong. */
SqLayFault sq_lay_fault (const SqLayTask *task, const SqLay *lay, guint *at);

static inline gboolean
sq_lay_is_valid (const SqLayTask *task, const SqLay *lay)
{
  return sq_lay_fault (task, lay, NULL) == SQ_LAY_RIGHT;
}
