/* SPDX-License-Identifier: GPL-3.0-or-later */
/* One flank of a wrapped front: the line along which the wrap, going over top, nose and underside,
 * meets the cushion's side, drawn as it lies in the flat on both of them. Internal to the room.
 *
 * Flanks run from the front line to the back. Plan coordinates: y is the distance from the front
 * line, x runs along it; a left flank is given mirrored, so that both are alike. Only the upper half
 * is drawn, from the end of the nose's upper round on: the lower half is its mirror image. */
#pragma once

#include "geometry/path.h"

typedef struct
{
  SqPath *wrap;      /* on the wrap: x as in plan, y as in plan on the top; over the round what is
                        left of the way round it, below 0 at last. Tags as in the plan. */
  guint wrap_top;    /* node of wrap at which the top begins */
  SqPath *side;      /* on the side: x along the plan, y the height. Tags as in the plan. */
  SqPath *cells;     /* the same with a node for each one of the plan … */
  guint *cell_nodes; /* … which these are */
} SqFlank;

/* The flank over @plan (open, from y = 0, y growing all along), where the front is rounded by
 * @radius_mm above and below and the cushion is @height_mm high. NULL where @plan runs along the
 * front for so long that no arcs follow it. */
SqFlank *sq_flank_new (const SqPath *plan, double radius_mm, double height_mm);
void sq_flank_free (SqFlank *flank);
G_DEFINE_AUTOPTR_CLEANUP_FUNC (SqFlank, sq_flank_free)

/* Whether a flank can follow @segment of a plan: y grows from its start to its end. */
gboolean sq_flank_can_follow (const SqSegment *segment);
