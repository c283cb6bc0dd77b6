/* SPDX-License-Identifier: GPL-3.0-or-later */
/* Pieces as ASTM D6673 has them in a DXF file. Internal to the room.
 *
 * Sources: the table of layers in "DXF ASTM File Format", a public documentation after D6673-10
 * (withdrawn 2019); github.com/ksons/astm-parser, whose 33 files tell what is really written. That
 * a notch's z is its depth is told second-hand in a public note on the standard.
 *
 *   1 cut line, and what names a piece     8 folds, zips, corners, stay stitches: not cut
 *   2 points where a line turns           11 holes
 *   3 points of a curve                   14 sew lines
 *   4 notches: where they begin, as       15 texts
 *     deep as z is
 *   7 grain
 *
 * Left out: 84 … 87, copies of the lines on 1, 8, 11 and 14 for checking a reader's own curves by,
 * since these lines are as close themselves; the edges of cloth, which no layer is for; when it
 * was made, so that the same drawing gives the same file. */
#pragma once

#include "exchange/dxf-tables.h"

extern const SqDxfLayer sq_d6673_layers[];
extern const guint sq_d6673_n_layers;

/* Names of blocks, one for each shape: capitals, figures and _, no two alike. New array of new
 * texts. */
GPtrArray *sq_d6673_block_names (const SqCutDrawing *drawing);
/* The block @name of @shape, whose record is @record. @title is of the drawing. */
void sq_d6673_block (SqDxfOut *out, guint32 record, const char *name, const SqCutShape *shape,
                     const char *title);
/* What is said once of the whole drawing, its texts, and the blocks in their places. */
void sq_d6673_drawing (SqDxfOut *out, guint32 owner, const SqCutDrawing *drawing,
                       const GPtrArray *blocks);
