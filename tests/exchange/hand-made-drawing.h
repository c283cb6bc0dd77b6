/* SPDX-License-Identifier: GPL-3.0-or-later */
/* Drawings for machines, made by hand. */
#pragma once

#include "exchange/cut-drawing.h"

SqCutDrawing *drawing_new (const char *title);
/* A shape named @name with nothing in it. Borrowed. */
SqCutShape *add_shape (SqCutDrawing *drawing, const char *name);
/* @path is taken. */
void add_cut_line (SqCutShape *shape, SqCutLayer layer, SqPath *path);
void add_cut_segment (SqCutShape *shape, SqCutLayer layer, SqPoint from, SqPoint to);
void add_cut_text (SqCutShape *shape, SqPoint at, double height_mm, const char *text);
void add_cut_place (SqCutDrawing *drawing, guint shape, double turn_rad, SqPoint at);
