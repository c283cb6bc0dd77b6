/* SPDX-License-Identifier: GPL-3.0-or-later */
/* The way round a seat as a taper goes it: from the start of the front edge, side after side, and
 * after each side the angle at its end. The last side, back to where the walk began, closes it:
 * its length and the angles at both its ends follow from the others. */
#pragma once

#include "drawing/seat-scene.h"
#include "job/sides.h"

/* A figure of the seat: what is measured, and the corner it belongs to or its edge starts at. */
typedef struct
{
  SqMeasure measure;
  SqId corner;
} SqSideFigure;

/* The corner of @ring at which its walk begins: the front edge's, in holes the first. */
guint sq_walk_start (const SqOutline *outline, guint ring);

/* All figures in the order of the walk, ring after ring: length of a side, its rise if it is bowed,
 * the angle at its end, and the radius there if it is rounded. New array of SqSideFigure. */
GArray *sq_walk_figures (const SqOutline *outline);

/* The end (of an angle: the side) that stays unless the maker says otherwise: what the walk comes
 * by earlier. */
SqStays sq_walk_usual_stays (const SqOutline *outline, const SqSideFigure *figure);

/* What closes the walk of @ring if its last side was taped as @taped_mm: *@closes_mm is what it
 * must measure by the other sides and the angles between them. Returns how much longer it was
 * taped. */
double sq_walk_misclosure_mm (const SqOutline *outline, guint ring, double taped_mm,
                              double *closes_mm);
