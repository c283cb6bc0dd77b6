/* SPDX-License-Identifier: GPL-3.0-or-later */
/* The finished cushion, seen from its front, from a little to the right and above: every piece put in
 * its place in space by its own patches. */
#pragma once

#include "drawing/scene.h"
#include "plan/plan.h"

/* Cover @i of @plan, in its cloths (@plain: the colour of one that has none), seams as lines. Empty
 * where nothing of it can be built. mm of what is seen; its place means nothing. New scene. */
SqScene *sq_cushion_scene (const SqPlan *plan, guint i, guint32 plain);
