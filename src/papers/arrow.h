/* SPDX-License-Identifier: GPL-3.0-or-later */
/* Arrows on pages. Internal to the room. */
#pragma once

#include "drawing/scene.h"

/* An arrow of one head of @head_mm, @length_mm long, about @at, to unit @to. */
void sq_set_arrow (SqSceneBuilder *builder, SqPoint at, SqVector to, double length_mm,
                   double head_mm);
