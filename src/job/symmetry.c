/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "job/symmetry.h"

#include "base/units.h"
#include "job/frame.h"

SqAxis
sq_axis_through (SqPoint from, SqPoint to)
{
  SqVector along = sq_unit (sq_sub (to, from));

  return (SqAxis){ from, sq_norm (along) > 0 ? along : sq_point (0, 1) };
}

gboolean
sq_outline_front_axis (const SqOutline *outline, SqAxis *axis)
{
  SqFront front;
  guint n;

  if (!sq_outline_front (outline, &front))
    return FALSE;
  const SqCorner *ring = sq_outline_ring (outline, 0, &n);
  *axis = (SqAxis){ sq_between (front.at, ring[(front.edge + 1) % n].at, 0.5),
                    sq_left (front.along) };
  return TRUE;
}
