/* SPDX-License-Identifier: GPL-3.0-or-later */
/* What a DXF file has beside what is drawn. Internal to the room. */
#pragma once

#include "exchange/dxf-out.h"

typedef struct
{
  const char *name;
  int colour; /* its index, 1 … 255 */
} SqDxfLayer;

/* The whole sections HEADER (and CLASSES) for a drawing within @box. @next_handle is above all that
 * are in the file. */
void sq_dxf_header (SqDxfOut *out, SqBox box, guint32 next_handle);
/* The whole section TABLES; @blocks are names of blocks, whose records have the handles from
 * SQ_DXF_PIECES on. */
void sq_dxf_tables (SqDxfOut *out, SqBox box, const SqDxfLayer *layers, guint n_layers,
                    const GPtrArray *blocks);
/* The whole section OBJECTS: none in R12. */
void sq_dxf_objects (SqDxfOut *out, SqBox box);

void sq_dxf_begin_section (SqDxfOut *out, const char *name);
void sq_dxf_end_section (SqDxfOut *out);
/* What is between these two is in the block @name, whose record is @record; it is itself on @layer.
 * */
void sq_dxf_begin_block (SqDxfOut *out, guint32 record, const char *layer, const char *name);
void sq_dxf_end_block (SqDxfOut *out, guint32 record, const char *layer);
