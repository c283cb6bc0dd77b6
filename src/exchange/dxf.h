/* SPDX-License-Identifier: GPL-3.0-or-later */
/* Drawings for machines as DXF. */
#pragma once

#include "exchange/cut-drawing.h"

typedef enum
{
  SQ_DXF_R12,   /* AC1009: read by everything; POLYLINE */
  SQ_DXF_R2000, /* AC1015: LWPOLYLINE, millimetres said in $INSUNITS */
} SqDxfRelease;
/* "r12", "r2000", NULL. */
extern const char *const sq_dxf_release_names[];

typedef enum
{
  SQ_DXF_PLAIN, /* layers by our own names */
  SQ_DXF_D6673, /* by the numbers of ASTM D6673-10, one block for each piece */
} SqDxfLayers;
/* "plain", "d6673", NULL. */
extern const char *const sq_dxf_layers_names[];

/* @drawing as a DXF file. New text, yours to free. Arcs are bulges; with D6673, which has none,
 * lines no farther off than 0.01 mm. */
char *sq_dxf_write (const SqCutDrawing *drawing, SqDxfRelease release, SqDxfLayers layers);
