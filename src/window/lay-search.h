/* SPDX-License-Identifier: GPL-3.0-or-later */
/* Work in the background on the lays of a plan: the first ones, and better ones. */
#pragma once

#include "plan/lays.h"
#include "window/background.h"

/* First lays of @plan, begun from @before (may be NULL): found once, as SqLays. */
SqBackground *sq_lay_search_first (GObject *owner, const SqPlan *plan, const SqLays *before,
                                   SqBackgroundFound found);

/* Better lays than @lays: found as SqLays each time there are, until nothing better turns up for a
 * while, at most for @seconds. @seed: what chance begins from. */
SqBackground *sq_lay_search_better (GObject *owner, const SqLays *lays, double seconds,
                                    guint64 seed, SqBackgroundFound found);

/* Whether there is anything to look for: a lay of more than one piece that is not kept. */
gboolean sq_lay_search_is_worth_it (const SqLays *lays);
