/* SPDX-License-Identifier: GPL-3.0-or-later */
/* Pieces that are wider than their cloth. Internal to the room. */
#pragma once

#include "cover/making.h"

/* Where two joins are asked for, divides each face, underside and wrap that is wider than its cloth
 * into a middle and two sides by lines along the grain, at equal distances from the middle of its
 * pattern, or from its own: the middle as wide as the cloth lets it be, in whole repeats. The
 * pattern goes on over the joins. After the way of building, before sealing. */
void sq_across_join (SqMaking *making);

/* Tells of each sealed piece that is still wider than its cloth. */
void sq_across_check (SqMaking *making);
