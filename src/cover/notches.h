/* SPDX-License-Identifier: GPL-3.0-or-later */
/* Match notches: where they stand along the finished outline, and putting them on both pieces of a
 * seam. Internal to the room. */
#pragma once

#include "cover/making.h"

typedef struct
{
  double station_mm; /* on the finished ring */
  guint ticks;
  gboolean corner;
} SqNotchPlace;

/* At corners, the middle of each edge, and between as close as length and curves ask. Single at
 * front and left, double at the back, triple at the right, in the middle of each edge; all others
 * single (common practice, no source). New array of SqNotchPlace by increasing station. */
GArray *sq_notch_places (const SqDefaults *house, const SqFinishedRing *ring);

/* How far apart notches may be along an arc of @radius_mm; infinite: there need be none. */
double sq_notch_spacing_mm (const SqDefaults *house, double radius_mm);

/* Marks the notch that stands at @station_mm along seam @seam from the start of its side a, on both
 * pieces. */
void sq_notch_seam (SqMaking *making, guint seam, double station_mm, guint ticks);
