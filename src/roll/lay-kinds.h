/* SPDX-License-Identifier: GPL-3.0-or-later */
/* The items of a task, equal ones together: what the search lays copies of. */
#pragma once

#include "roll/lay-shape.h"
#include "roll/lay.h"

/* Items that are the same but for where their own (0, 0) lies, and for their tags. */
typedef struct
{
  guint first;         /* the first such item */
  guint count;         /* of copies to lay: without those pinned; 0 if its outline crosses itself */
  SqLayShape **shapes; /* one for each pose of its items */
  guint n_shapes;
} SqLayKind;

/* A copy of a kind: its shape's origin is at (x, y) of the strip. */
typedef struct
{
  guint kind, strip, pose; /* pose: index of the kind's shapes */
  gint64 x, y;
} SqLaySpot;

typedef struct
{
  const SqLayTask *task;
  GArray *kinds;  /* of SqLayKind, by their first items */
  guint *kind_of; /* by item */
  GArray *pinned; /* of SqLaySpot: what lies where it is told to, as the task's pins */
} SqLayKinds;

/* Of @task, which is borrowed and must outlive it. */
SqLayKinds *sq_lay_kinds_new (const SqLayTask *task);
void sq_lay_kinds_free (SqLayKinds *kinds);
G_DEFINE_AUTOPTR_CLEANUP_FUNC (SqLayKinds, sq_lay_kinds_free)

#define sq_lay_kind(all, i) (&g_array_index ((all)->kinds, SqLayKind, (i)))

/* Where a copy of item @i in @pose, which it may take, lies when it is moved by @at. */
SqLaySpot sq_lay_kinds_spot (const SqLayKinds *kinds, guint i, SqGridPose pose, guint strip,
                             SqGrid at);

/* A copy of an item that lies where it does. */
typedef struct
{
  guint item, copy;
  SqLaySpot spot;
} SqLayKept;

/* The lay that has what is pinned, a piece at every one of @spots (of SqLaySpot) and what is missing
 * as unlaid: why_of_kind (of SqUnlaidWhy) says why, but of what crosses itself. Copies that are not
 * pinned are dealt to equal items in the order of @spots. */
SqLay *sq_lay_kinds_to_lay (const SqLayKinds *kinds, const GArray *spots,
                            const SqUnlaidWhy *why_of_kind);

/* The same with @kept (of SqLayKept, in any order), none of them pinned; @spots are dealt to the
 * other copies. Where copies are missing before one that is kept, that takes the number of the first
 * of these. */
SqLay *sq_lay_kinds_to_lay_with (const SqLayKinds *kinds, const GArray *kept, const GArray *spots,
                                 const SqUnlaidWhy *why_of_kind);
