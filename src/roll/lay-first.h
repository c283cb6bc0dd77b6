/* SPDX-License-Identifier: GPL-3.0-or-later */
/* One lay made piece by piece: each goes where it ends nearest the cut end of the first strip it
 * has room on, in the gaps that earlier ones left, too; of such places to the lowest. */
#pragma once

#include "base/task.h"
#include "roll/lay-order.h"

/* Lays @order (of SqLayRun). @watch is asked before each piece and told how far it is, from
 * @fraction_from to @fraction_to of the whole. NULL if it was stopped. Pure. */
SqLay *sq_lay_first (const SqLayKinds *kinds, const GArray *order, const SqTask *watch,
                     double fraction_from, double fraction_to);

/* The same beside @kept (of SqLaySpot; may be NULL), which lie where they are told to: where the
 * copies of @order go (a new array of SqLaySpot, in the order of laying), and in @why, by kind, why
 * not all of them do. */
GArray *sq_lay_first_spots (const SqLayKinds *kinds, const GArray *order, const GArray *kept,
                            SqUnlaidWhy *why, const SqTask *watch, double fraction_from,
                            double fraction_to);
