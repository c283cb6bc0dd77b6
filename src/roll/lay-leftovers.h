/* SPDX-License-Identifier: GPL-3.0-or-later */
/* What is left of the cloth that is worth keeping: rectangles between and behind the pieces. */
#pragma once

#include "roll/lay.h"

/* At least so long along and so wide across, µm. */
typedef struct
{
  gint32 along, across;
} SqLayLeast;

/* Rectangles of @strip up to @end (µm) that no cut line and no flaw reaches into, none over another:
 * the largest first, then the largest of what is left. Each is at least one of @least. Exact in that
 * nothing reaches into them; beside slanted and round cut lines one can be narrower than it might be,
 * by no more than a few mm. Array of SqGridBox, empty where nothing is worth keeping. */
GArray *sq_lay_leftovers (const SqLayTask *task, const SqLay *lay, guint strip, gint32 end,
                          const SqLayLeast *least, guint n_least);
