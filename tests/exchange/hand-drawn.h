/* SPDX-License-Identifier: GPL-3.0-or-later */
/* Drawings for machines put together by hand. */
#pragma once

#include "exchange/cut-drawing.h"

/* "Pads" with nothing on it yet. */
SqCutDrawing *drawn_new (double width_mm, double height_mm);

/* A shape without a piece; its index. */
guint drawn_shape (SqCutDrawing *drawing, const char *name);
/* @path is taken. */
void drawn_line (SqCutDrawing *drawing, guint shape, SqCutLayer layer, SqPath *path);
void drawn_text (SqCutDrawing *drawing, guint shape, SqPoint at, double height_mm,
                 const char *text);
void drawn_place (SqCutDrawing *drawing, guint shape, double turn_rad, SqPoint at);

/* A straight line. */
SqPath *straight (double x0, double y0, double x1, double y1);
/* The nodes, as x, y, bulge. */
SqPath *bulging (const double (*nodes)[3], guint n, gboolean is_ring);
