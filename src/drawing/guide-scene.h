/* SPDX-License-Identifier: GPL-3.0-or-later */
/* What is seen beside the hand while something is dragged over the seat: guides, why they hold, and
 * where the drag is stopped. Seat coordinates. */
#pragma once

#include "drawing/scene.h"
#include "job/snap.h"

typedef struct
{
  const SqOutline *outline; /* whose edges the reasons name */
  const SqSnapReason *reasons;
  guint n_reasons;
  SqPoint at;              /* of what is dragged; the words stand beside it, … */
  SqPoint middle;          /* … away from here */
  const char *words;       /* NULL: none */
  const SqPoint *crossing; /* where sides would cross, the words being about that; NULL: nowhere */
} SqGuides;

/* The words keep inside @room where it is large enough for them. New scene. */
SqScene *sq_guide_scene (const SqGuides *guides, double em_mm, SqBox room);
