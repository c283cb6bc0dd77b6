/* SPDX-License-Identifier: GPL-3.0-or-later */
/* Ways of laying piece by piece, and which of them suit a task. */
#pragma once

#include "base/task.h"
#include "roll/lay-order.h"

typedef enum
{
  SQ_LAY_BY_OUTLINES, /* see lay-first.h */
  SQ_LAY_BY_BOXES,
  SQ_LAY_BY_CUTS, /* straight ones */
} SqLayWay;

/* The way that suits a task for the first lay, and for attempts at better ones. */
SqLayWay sq_lay_way_first (const SqLayKinds *kinds);
SqLayWay sq_lay_way (const SqLayKinds *kinds);

/* Lays @order by @rule of @way; else as sq_lay_first(). */
SqLay *sq_lay_by_way (const SqLayKinds *kinds, const GArray *order, SqLayWay way, guint rule,
                      const SqTask *watch, double fraction_from, double fraction_to);

/* How far a series of attempts has come. */
typedef struct
{
  GArray *order;
  guint rule;
  SqLay *lay; /* that they give; NULL: none yet */
} SqLayTrack;

/* References to what @track has, to be cleared. */
SqLayTrack sq_lay_track_copy (const SqLayTrack *track);
void sq_lay_track_clear (SqLayTrack *track);

/* Attempt number @number at a better lay than @track has: in several orders, as many as are laid in
 * no time. The first attempts go through all orders by size by all rules; later ones through orders that
 * differ a little from the track's, as @chance has it. The track then has the best of them and
 * itself. FALSE if it was stopped. Pure. */
gboolean sq_lay_way_attempt (const SqLayKinds *kinds, SqLayWay way, guint64 number, guint64 chance,
                             SqLayTrack *track, const SqTask *watch);
