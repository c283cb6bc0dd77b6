/* SPDX-License-Identifier: GPL-3.0-or-later */
/* Cloth-covered cord in a seam: the strips that its cover is joined of, and where it is too stiff to
 * go. Internal to the room. */
#pragma once

#include "cover/making.h"

/* What strips of cut width @strip_mm give when cut from a cloth of usable width @width_mm and joined
 * with @join_mm at every join (mm). Straight ones go across the cloth: k W − (k − 1) 2 a. Those on the
 * bias at 45° are joined on the slant, and squared at both ends at last: k W √2 − (k − 1) 2 √2 a − b;
 * k of them take W + k b √2 of the cloth's length. */
double sq_welt_yield_mm (SqWeltCut cut, double width_mm, double strip_mm, double join_mm, guint n);

/* How many strips @length_mm of welt takes. 0: no strip of any use can be cut. */
guint sq_welt_strips (SqWeltCut cut, double width_mm, double strip_mm, double join_mm,
                      double length_mm);

/* The strips of the welts in the cover's welted seams, @n_rounds times round them of @round_mm each;
 * fills the cover's welt. Each welt begins in the middle of the back. */
void sq_welt_make (SqMaking *making, guint n_rounds, double round_mm);

/* Warns of edges and corners of the outer ring that the welt can't go round. */
void sq_welt_check_ring (SqMaking *making);
