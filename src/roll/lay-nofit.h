/* SPDX-License-Identifier: GPL-3.0-or-later */
/* Where one shape may not lie beside another, and how deep it is in there: a table over all places
 * of the one about the other, made once for two shapes and then asked a million times a second.
 *
 * The places where two convex parts overlap are the inside of the Minkowski sum of the one and the
 * other turned about; those where two shapes do, the union of such sums over all pairs of parts
 * (the no-fit region). A cell of the table lies outside of all sums, wholly inside one, or lists the
 * sums' edges that go through it: then it is decided exactly. */
#pragma once

#include "roll/lay-parts.h"

typedef struct _SqLayNofit SqLayNofit;

/* For @moving about @fixed. */
SqLayNofit *sq_lay_nofit_new (const SqLayParts *moving, const SqLayParts *fixed);
void sq_lay_nofit_free (SqLayNofit *nofit);

/* The box of the no-fit region: at places on its border or outside nothing overlaps. */
SqGridBox sq_lay_nofit_box (const SqLayNofit *nofit);

/* How far the moving shape, @dx and @dy from the fixed one (origin from origin, µm), is from the
 * nearest place where it overlaps no more: 0 where it does not overlap, exactly; more than 0 where
 * it does, about. */
float sq_lay_nofit_depth (const SqLayNofit *nofit, gint32 dx, gint32 dy);
