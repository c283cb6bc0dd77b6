/* SPDX-License-Identifier: GPL-3.0-or-later */
/* A small drawing of what lies on a strip of cloth, pieces with their numbers, to be looked at beside a
 * table. Internal to the room. */
#pragma once

#include "drawing/scene.h"
#include "plan/lays.h"

/* @length_mm of strip @strip of lay @cloth of @lays from its cut end on. */
typedef struct
{
  const SqLays *lays;
  guint cloth, strip;
  double length_mm;
  gboolean wrong_side; /* as it lies with that up: turned over along its length */
} SqLaid;

/* How high a drawing of @laid becomes that is @width_mm wide, up to @most_mm. */
double sq_lay_drawing_height_mm (const SqLaid *laid, double width_mm, double most_mm);

/* Draws it into @box (mm), its cut end at the left. */
void sq_lay_drawing_add (SqSceneBuilder *builder, const SqLaid *laid, SqBox box);
