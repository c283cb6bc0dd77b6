/* SPDX-License-Identifier: GPL-3.0-or-later */
/* Drawings for machines as SVG. */
#pragma once

#include "exchange/cut-drawing.h"

/* No line is wider: programs that tell cuts from pictures by it take a quarter of a point (0.088 mm) and
 * less for a cut, and what is much thinner is hardly seen on a screen. */
#define SQ_SVG_LINE_MM 0.08

/* @drawing as SVG 1.1 in true size: a unit is a millimetre, numbers go to 0.0001 mm. Each layer is a group
 * with its name as id and a colour of its own; within it each copy of a piece is one, its id the layer's
 * and the place's number from 1 ("cut-3"), and the drawing's own lines another ("cloth-0"). Layers stand
 * in the order a machine may take them, what is cut at the end: marks first, the outer cut lines last.
 * Arcs stay arcs, in parts of a third of a turn at most; rings are closed. Nothing is filled but texts.
 * New text, yours to free. */
char *sq_svg_write (const SqCutDrawing *drawing);
