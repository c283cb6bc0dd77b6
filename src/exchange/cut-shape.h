/* SPDX-License-Identifier: GPL-3.0-or-later */
/* What a machine is told of one piece. Internal to the room. */
#pragma once

#include "exchange/cut-drawing.h"

/* The shape of line @entry of the cut list. New; free with sq_cut_shape_free(). */
SqCutShape *sq_cut_shape_new (const SqPlan *plan, guint entry, const SqCutChoice *choice);
void sq_cut_shape_free (SqCutShape *shape);

/* New arrays, of SqCutLine and SqCutText, that clear what they own. */
GArray *sq_cut_lines_new (void);
GArray *sq_cut_texts_new (void);
/* @path is taken. */
void sq_cut_lines_add (GArray *lines, SqCutLayer layer, SqPath *path);
/* @text is taken. */
void sq_cut_texts_add (GArray *texts, SqPoint at, double height_mm, char *text);

/* What @text takes at @at at most, about. */
SqBox sq_cut_text_box (SqPoint at, double height_mm, const char *text);
