/* SPDX-License-Identifier: GPL-3.0-or-later */
/* Where on a page there is room for words: a grid of cells, of which what is drawn blocks some.
 * Internal to the room. */
#pragma once

#include "geometry/path.h"

typedef struct _SqFreeRoom SqFreeRoom;

/* All of @box, mm, is free. Its cells are @cell_mm wide and high, more where there would be too many of
 * them. */
SqFreeRoom *sq_free_room_new (SqBox box, double cell_mm);
void sq_free_room_free (SqFreeRoom *room);
G_DEFINE_AUTOPTR_CLEANUP_FUNC (SqFreeRoom, sq_free_room_free)

/* Takes away what lies under a line, to a tenth of a cell; under a box. */
void sq_free_room_block_path (SqFreeRoom *room, const SqPath *path);
void sq_free_room_block_box (SqFreeRoom *room, SqBox box);
/* Takes away what lies outside of @rings (of SqPath, outer and holes), whose lines are blocked
 * already. */
void sq_free_room_block_outside (SqFreeRoom *room, const GPtrArray *rings);

/* The free rectangle *@best into which a box of @size goes so many times as large, more often than into
 * any other. 0: there is none. */
double sq_free_room_best (const SqFreeRoom *room, SqVector size, SqBox *best);
