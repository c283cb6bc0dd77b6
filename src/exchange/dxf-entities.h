/* SPDX-License-Identifier: GPL-3.0-or-later */
/* What is drawn in a DXF file. Internal to the room. */
#pragma once

#include "exchange/dxf-out.h"

/* In all that follow @owner is the handle of the block record they are in. */

/* A line, or a polyline: with arcs as bulges; the old kind in R12 and where @old is. */
void sq_dxf_path (SqDxfOut *out, guint32 owner, const char *layer, const SqPath *path,
                  gboolean old);
void sq_dxf_line (SqDxfOut *out, guint32 owner, const char *layer, SqPoint from, SqPoint to);
void sq_dxf_mark (SqDxfOut *out, guint32 owner, const char *layer, SqPoint at, double z_mm);
/* @label, of ASCII, and what @text says after it. */
void sq_dxf_text (SqDxfOut *out, guint32 owner, const char *layer, const char *label,
                  const SqCutText *text);
/* The block @name where @place puts it. */
void sq_dxf_insert (SqDxfOut *out, guint32 owner, const char *layer, const char *name,
                    const SqCutPlace *place);
