/* SPDX-License-Identifier: GPL-3.0-or-later */
/* Drawings for machines as HP-GL: IN, PA, SP, PU, PD, DI, SI and LB, which all devices know. */
#pragma once

#include "exchange/cut-drawing.h"

/* A plotter unit is 0.025 mm (PCL 5 Technical Reference, part II, table 17-7). */
#define SQ_HPGL_PER_MM 40
/* Devices that count in 16 bits go no farther (819.175 mm). */
#define SQ_HPGL_MOST_UNITS 32767

/* The pen that draws @layer: 1 for cut lines, outer and inside, 2 for sew lines, 3 for notches, 4 for
 * marks, 5 for texts. Edges of cloth are marks: no knife follows them. */
guint sq_hpgl_pen (SqCutLayer layer);

/* @drawing as HP-GL, each point rounded to a unit from where it is, arcs as lines that lie within a
 * quarter of one, so that all that is drawn is within a unit. What belongs to no piece comes first, then the pieces one after the other, the nearest
 * next, and so its lines: a ring is begun at its nearest node, a line at its nearer end. Of each piece its
 * texts and marks come first, then sew lines, notches and what is cut inside, and the outer cut line last:
 * a knife must not free a piece before all else of it is done.
 *
 * Texts are labels in ASCII that end with ETX, which a device draws with its own letters: characters
 * beyond it as near as they can be written, else as "?", and ";" as ",". *@is_large tells whether
 * coordinates pass SQ_HPGL_MOST_UNITS. New text, yours to free. */
char *sq_hpgl_write (const SqCutDrawing *drawing, gboolean *is_large);
