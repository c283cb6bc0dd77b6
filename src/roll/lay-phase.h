/* SPDX-License-Identifier: GPL-3.0-or-later */
/* Where on a strip a pattern lets an item lie. */
#pragma once

#include "roll/lay-task.h"

/* An item's phase on one strip in one pose, told of the point of the item that is moved. */
typedef struct
{
  gint64 along_nm, across_nm, repeat_along_nm, repeat_across_nm, drop_nm;
} SqLayPhase;

/* For the point @at of @item, in the coordinates of its rings as @pose has them, on @strip. */
SqLayPhase sq_lay_phase (const SqLayItem *item, SqGridPose pose, SqGrid at,
                         const SqLayStrip *strip);

/* The least y >= @y, and the greatest y <= @y, that the pattern allows. */
gint64 sq_lay_phase_next_y (const SqLayPhase *phase, gint64 y);
gint64 sq_lay_phase_last_y (const SqLayPhase *phase, gint64 y);
/* The least x >= @x, and the greatest x <= @x, that the pattern allows at the allowed height @y. */
gint64 sq_lay_phase_next_x (const SqLayPhase *phase, gint64 y, gint64 x);
gint64 sq_lay_phase_last_x (const SqLayPhase *phase, gint64 y, gint64 x);
