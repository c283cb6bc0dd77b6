/* SPDX-License-Identifier: GPL-3.0-or-later */
/* What is put into files for plotters and cutting tables, as it was chosen last. */
#pragma once

#include "exchange/cut-drawing.h"
#include "exchange/dxf.h"

typedef enum
{
  SQ_MACHINE_DXF_R12,
  SQ_MACHINE_DXF_R2000,
  SQ_MACHINE_SVG,
  SQ_MACHINE_HPGL,
} SqMachineFormat;
#define SQ_N_MACHINE_FORMATS (SQ_MACHINE_HPGL + 1)

typedef struct
{
  SqMachineFormat format;
  SqCutOf of;
  SqDxfLayers layers; /* of DXF */
  guint lines;        /* of SqCutLines */
  gboolean apart;     /* a file of each piece, or of each cloth */
} SqMachineChoice;

/* "DXF R12". Static. */
const char *sq_machine_format_name (SqMachineFormat format);
/* "DXF files"; ".dxf". Static. */
const char *sq_machine_format_sort (SqMachineFormat format);
const char *sq_machine_format_suffix (SqMachineFormat format);
gboolean sq_machine_format_is_dxf (SqMachineFormat format);

/* As remembered in the settings, and remembers it there. */
SqMachineChoice sq_machine_choice_read (void);
void sq_machine_choice_remember (const SqMachineChoice *choice);

/* @drawing in the format of @choice. *@is_large, if it goes farther than some machines do, is set to TRUE,
 * else left. New text. */
char *sq_machine_choice_write (const SqMachineChoice *choice, const SqCutDrawing *drawing,
                               gboolean *is_large);
