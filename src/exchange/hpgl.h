/* SPDX-License-Identifier: GPL-3.0-or-later */
/* Drawings for machines as HP-GL. */
#pragma once

#include "exchange/cut-drawing.h"

/* A plotter unit is 0.025 mm (PCL 5 Technical Reference, part II, table 17-7). */
#define SQ_HPGL_PER_MM 40
/* Devices that count in 16 bits go no farther (819.175 mm). */
#define SQ_HPGL_MOST_UNITS 32767

/* The pen that draws @layer, 1 … 8. */
guint sq_hpgl_pen (SqCutLayer layer);

/* @drawing as HP-GL: one pen for each kind of line, pieces one after the other. *@is_large tells
 * whether coordinates pass SQ_HPGL_MOST_UNITS. New text, yours to free. */
char *sq_hpgl_write (const SqCutDrawing *drawing, gboolean *is_large);
