/* SPDX-License-Identifier: GPL-3.0-or-later */
/* Drawings for machines as SVG. */
#pragma once

#include "exchange/cut-drawing.h"

/* @drawing as SVG 1.1 in true size: a unit is a millimetre, layers are groups with their names as ids,
 * arcs stay arcs. New text, yours to free. */
char *sq_svg_write (const SqCutDrawing *drawing);
