/* SPDX-License-Identifier: GPL-3.0-or-later */
/* Straight cuts, each right through what is left, from edge to edge: what shears, a knife along a
 * rule or a saw can follow. */
#pragma once

#include "roll/lay.h"

/* What cuts can take off, in µm of the strip. Wider than SqGridBox: room beyond the edges, too. */
typedef struct
{
  gint64 x0, y0, x1, y1;
} SqLayRect;

/* How many cuts, and how long they are together. */
typedef struct
{
  guint n;
  double mm;
} SqLayCuts;

/* What counts of @item in @pose for straight cuts: its box, and half the gap around it. In the
 * turned rings' own coordinates. */
SqGridBox sq_lay_cut_box (const SqLayItem *item, SqGridPose pose);

static inline SqLayRect
sq_lay_rect (const SqGridBox *box, SqGrid at)
{
  return (SqLayRect){ (gint64) box->min.x + at.x, (gint64) box->min.y + at.y,
                      (gint64) box->max.x + at.x, (gint64) box->max.y + at.y };
}

/* Parts @rects (of SqLayRect, none empty; put into another order) by such cuts through @within: first
 * across (of one x), then along, and so on by turns. A cut may touch a rectangle, not cross it. FALSE
 * where there are none that part them all: exactly, as any cut there is may be made first.
 *
 * @cuts (may be NULL) gets what that takes, with trimming each to its size; @rest (of SqLayRect; may
 * be NULL) gets what falls off added. */
gboolean sq_lay_rects_part (GArray *rects, const SqLayRect *within, SqLayCuts *cuts, GArray *rest);

/* Whether @lay, of @task, can be cut so, strip by strip; how many cuts that takes and how long they
 * are (either may be NULL). Pieces that are no rectangles are then cut out of their boxes, which is
 * not counted. */
gboolean sq_lay_is_straight (const SqLayTask *task, const SqLay *lay, guint *n_cuts,
                             double *cut_mm);
