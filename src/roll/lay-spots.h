/* SPDX-License-Identifier: GPL-3.0-or-later */
/* Where the pieces of a lay lie, to be moved about and made a lay again. */
#pragma once

#include "roll/lay-kinds.h"

/* Where the pieces of @lay that are not pinned lie, in its order: a new array of SqLaySpot. */
GArray *sq_lay_spots_new (const SqLayKinds *kinds, const SqLay *lay);

/* The pieces at @spots, and those that are pinned, as a lay; unlaid is what @like has not laid either. New reference. */
SqLay *sq_lay_spots_to_lay (const SqLayKinds *kinds, const GArray *spots, const SqLay *like);

/* The strip whose length is to shrink: the last that is bought by its length, else the last. */
guint sq_lay_open_strip (const SqLayTask *task, const SqLay *lay);

/* How far each strip may be laid (µm, one a strip; to be freed) when the share @shrink is taken off
 * the open one. */
gint32 *sq_lay_ends_new (const SqLayTask *task, const SqLay *lay, double shrink);

/* Takes @by (µm) out of @strip, laid up to @end, at a line that @chance takes, 0: in the middle. What
 * lies behind it moves up. */
void sq_lay_spots_cut_out (const SqLayKinds *kinds, GArray *spots, guint strip, gint32 end,
                           gint32 by, guint64 chance);
