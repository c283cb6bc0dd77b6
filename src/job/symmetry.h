/* SPDX-License-Identifier: GPL-3.0-or-later */
/* Axes of symmetry. */
#pragma once

#include "job/outline.h"

typedef struct
{
  SqPoint at;
  SqVector along; /* unit; an axis square to the front points to the back */
} SqAxis;

/* The axis from @from to @to; along y if they are one point. */
SqAxis sq_axis_through (SqPoint from, SqPoint to);
/* Through the middle of the front edge's chord and square to it. FALSE without a front. */
gboolean sq_outline_front_axis (const SqOutline *outline, SqAxis *axis);

/* How far @p lies to the left of the axis (mm). */
static inline double
sq_axis_left_mm (const SqAxis *axis, SqPoint p)
{
  return sq_cross (axis->along, sq_sub (p, axis->at));
}

/* The point of the axis next to @p. */
static inline SqPoint
sq_axis_foot (const SqAxis *axis, SqPoint p)
{
  return sq_moved (axis->at, axis->along, sq_dot (axis->along, sq_sub (p, axis->at)));
}

/* The mirror image of @p. An upright axis leaves y as it is, a level one x, to the last bit. */
static inline SqPoint
sq_axis_mirrored (const SqAxis *axis, SqPoint p)
{
  return sq_moved (p, sq_left (axis->along), -2 * sq_axis_left_mm (axis, p));
}
