/* SPDX-License-Identifier: GPL-3.0-or-later */
/* One piece of a lay in the hand: it follows, but lies only where it may. Knows no widget. */
#pragma once

#include "plan/lays.h"

typedef struct _SqRollHold SqRollHold;

/* How the hand means it (mm of the roll). */
typedef struct
{
  double snap_mm;       /* it goes to edges and neighbours within this */
  double reach_mm;      /* it is put no farther from where the hand is */
  gboolean others_move; /* what is not pinned makes way */
} SqRollHand;

/* Takes piece @placed of cloth @cloth of @lays, which are kept alive. */
SqRollHold *sq_roll_hold_new (const SqLays *lays, guint cloth, guint placed);
void sq_roll_hold_free (SqRollHold *hold);
G_DEFINE_AUTOPTR_CLEANUP_FUNC (SqRollHold, sq_roll_hold_free)

guint sq_roll_hold_placed (const SqRollHold *hold);
/* The hand moves by @by (mm) from where it took the piece, and is over @strip (−1: over none, the one
 * before counts). FALSE: there is no place near, and the piece stays where it was. */
gboolean sq_roll_hold_move (SqRollHold *hold, SqVector by, gint strip, const SqRollHand *hand);
/* Into the next pose it may take, about its middle. FALSE: there is none, or no place for it. */
gboolean sq_roll_hold_turn (SqRollHold *hold, const SqRollHand *hand);
/* One step (mm) along or across, or as far as the pattern goes on. FALSE: it can't go there. */
gboolean sq_roll_hold_nudge (SqRollHold *hold, int along, int across, double step_mm);

/* Why it is not where the hand is; SQ_LAY_RIGHT: it is. */
SqLayFault sq_roll_hold_refused (const SqRollHold *hold);
/* Whether it lies elsewhere than it did, or otherwise. */
gboolean sq_roll_hold_is_moved (const SqRollHold *hold);
/* The lays with the piece where it is now. Borrowed, until it moves. Others may lie under it where they
 * are to make way. */
const SqLays *sq_roll_hold_lays (const SqRollHold *hold);
/* The pin that holds it there. */
SqPin sq_roll_hold_pin (const SqRollHold *hold);
