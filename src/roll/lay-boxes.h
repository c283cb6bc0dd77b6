/* SPDX-License-Identifier: GPL-3.0-or-later */
/* Lays of rectangles alone, piece by piece. */
#pragma once

#include "base/task.h"
#include "roll/lay-order.h"

/* So many rules there are for what is laid next and where, the ones that mostly take least first. */
#define SQ_N_LAY_BOX_RULES 22
/* That which takes what fits best next of all there are. */
#define SQ_LAY_BOX_RULE_BEST_FIT 1

/* Whether all that is to be laid, and what is pinned, are rectangles that keep square. */
gboolean sq_lay_kinds_are_boxes (const SqLayKinds *kinds);

/* Lays @order (of SqLayRun) as rule number @rule has it, in the first strip that has room; of pieces
 * that are none, their boxes. Some rules take from each batch what fits best next, and go by the
 * order among few or where several fit alike. @watch (may be NULL) is asked whether to go on: NULL if
 * not. Pure. */
SqLay *sq_lay_boxes (const SqLayKinds *kinds, const GArray *order, guint rule, const SqTask *watch);
