/* SPDX-License-Identifier: GPL-3.0-or-later */
/* An item in one pose, cut into convex parts: what the search asks whether it overlaps. */
#pragma once

#include "roll/lay-task.h"

/* Convex, counter-clockwise, no three corners on a line. */
typedef struct
{
  SqGrid *points;
  guint n;
} SqLayPart;

/* The parts together hold the keep rings; they lie outside them only along arcs, by about half
 * a millimetre, and are the hull where the rings can't be cut. Coordinates as in SqLayShape: the cut
 * line's box begins at (0, 0). */
typedef struct
{
  GArray *parts; /* of SqLayPart */
  SqGridBox box; /* of them */
  double area;   /* of them, and of their convex hull: µm² */
  double hull;
} SqLayParts;

SqLayParts *sq_lay_parts_new (const SqLayItem *item, SqGridPose pose);
/* A box from (0, 0) to @size. */
SqLayParts *sq_lay_parts_new_box (SqGrid size);
void sq_lay_parts_free (SqLayParts *parts);
G_DEFINE_AUTOPTR_CLEANUP_FUNC (SqLayParts, sq_lay_parts_free)

#define sq_lay_part(all, i) (&g_array_index ((all)->parts, SqLayPart, (i)))
