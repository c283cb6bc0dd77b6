/* SPDX-License-Identifier: GPL-3.0-or-later */
/* A lay that keeps as much as it can of one before it. */
#pragma once

#include "base/task.h"
#include "roll/lay-kinds.h"

/* Each copy of @warm, of the task or of one much like it, at its old place or the nearest there is
 * room at on its strip, in its pose; items are told by their tags. What finds none near is laid anew
 * into what is left. At the end all slide to the left, past nothing.
 *
 * NULL where that is no good: it leaves more unlaid than @fresh (may be NULL), a lay of the task made
 * without @warm, or takes 2 % more cloth; it keeps less than half of the pieces; or @watch (may be
 * NULL) stopped it. Pure. */
SqLay *sq_lay_warm (const SqLayKinds *kinds, const SqLay *warm, const SqLay *fresh,
                    const SqTask *watch);
