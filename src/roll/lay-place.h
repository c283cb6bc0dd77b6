/* SPDX-License-Identifier: GPL-3.0-or-later */
/* Where a hand may put one piece of a lay, all others staying where they are. */
#pragma once

#include "roll/lay.h"

typedef struct _SqLayPlacer SqLayPlacer;

/* As in SqPlaced. */
typedef struct
{
  guint strip;
  SqGrid at;
  SqGridPose pose;
} SqLayPlace;

typedef struct
{
  gint32 reach;         /* no farther from the wish, along and across (µm) */
  gint32 snap;          /* for each side on which it then touches, so much farther is as good */
  gboolean others_move; /* only what is pinned stays: the rest makes way */
} SqLayPlaceHow;

/* For piece @placed of @lay, a right one of @task; both are kept alive. */
SqLayPlacer *sq_lay_placer_new (const SqLayTask *task, const SqLay *lay, guint placed);
void sq_lay_placer_free (SqLayPlacer *placer);
G_DEFINE_AUTOPTR_CLEANUP_FUNC (SqLayPlacer, sq_lay_placer_free)

/* The place near @wish, in its pose and on its strip, where the piece lies on the cloth, off flaws, just
 * where its pattern falls, and overlaps nothing: of those that are looked at (the wish itself, and places
 * straight along or across from it at which it is free again or touches something) the nearest. FALSE
 * where none of them is within reach. Pure. */
gboolean sq_lay_placer_near (SqLayPlacer *placer, const SqLayPlace *wish, const SqLayPlaceHow *how,
                             SqLayPlace *found);

/* What is wrong with @place, as sq_lay_fault() would have it. */
SqLayFault sq_lay_placer_fault (SqLayPlacer *placer, const SqLayPlace *place, gboolean others_move);
