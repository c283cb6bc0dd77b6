/* SPDX-License-Identifier: GPL-3.0-or-later */
/* Straight lines that strips are ripped or cut along before anything else is marked: each goes right
 * through what the ones before it left, so that a tear finds its way from edge to edge. */
#pragma once

#include "geometry/point.h"

/* What lies on a strip of cloth, mm: along from the cut end, across from the near edge. */
typedef struct
{
  SqBox box;
  gboolean is_rectangle; /* a straight one, of just that box */
  gboolean is_in_strip;  /* out: such lines free it, but for its ends */
} SqMarkingBox;

typedef struct
{
  gboolean is_across;    /* the line goes across the cloth at so much along; else along, … */
  double at_mm;          /* … at so much across */
  double from_mm, to_mm; /* where it begins and ends, in the other direction */
  gboolean from_edge;    /* it begins at the cloth's own near edge or cut end */
  gboolean to_edge;      /* it ends at the far edge */
} SqStraightCut;

/* The lines for @boxes (of SqMarkingBox, whose is_in_strip it sets) on cloth from (0, 0) to (@laid_mm,
 * @width_mm), in order; those that free no strip are left out. @goes_on: there is more cloth after
 * @laid_mm. New array of SqStraightCut. */
GArray *sq_marking_cuts (GArray *boxes, double laid_mm, double width_mm, gboolean goes_on);
