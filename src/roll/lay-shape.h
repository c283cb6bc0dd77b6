/* SPDX-License-Identifier: GPL-3.0-or-later */
/* An item in one pose as the first lay sees it: parts with a left and a right outline, everything
 * between these taken for full. So a shape holds the item, and what a part may not overlap at a given
 * height is one stretch along the roll. Most items are one part; one with a pocket that opens across
 * the roll, or a hole, is several. */
#pragma once

#include "roll/lay-task.h"
#include "roll/trapezoids.h"

/* A stretch of an outline, on the line through the ends of edge, from height y0 up to y1. */
typedef struct
{
  gint32 y0, y1;
  SqGridEdge edge;
} SqLaySide;

/* Coordinates: the cut line's box begins at (0, 0). Sides are those of the ring grown by half the
 * gap and so may lie outside that box. */
typedef struct SqLayShape SqLayShape;
struct SqLayShape
{
  SqGridPose pose;
  SqGrid at;            /* of the box in the turned rings' own coordinates */
  gint32 length, width; /* of the box, along x and y */
  SqGridBox keep;       /* of the sides */
  SqGridBox core;       /* a large box within the sides; empty (min = max) where there is none */
  SqLaySide *left, *right;
  guint n_left, n_right;
  gint32 *ledges; /* heights at which a side is level, or ends: what other pieces may stand on */
  guint n_ledges;
  /* What it is made of, in its own coordinates; itself where that is one part. Of parts only keep,
   * core and sides are given. */
  SqLayShape **parts;
  guint n_parts;
};

/* A new shape of @item as @pose has it. Where its outline is made of many short edges,
 * sides lie outside it by up to 0.3 mm; longer edges are kept as they are. */
SqLayShape *sq_lay_shape_new (const SqLayItem *item, SqGridPose pose);
/* One of a box of the cloth where nothing may lie, its origin at the box's. */
SqLayShape *sq_lay_shape_new_box (const SqGridBox *box);
void sq_lay_shape_free (SqLayShape *shape);

/* Where @shape may not lie beside @other, both taken for full between their outlines: with its origin @up above the other's, at distances
 * along x between *from and *to, both not included, whole and rounded so that what is left is
 * free. FALSE where it may lie at any. */
gboolean sq_lay_shape_bar (const SqLayShape *shape, const SqLayShape *other, gint64 up,
                           gint64 *from, gint64 *to);
