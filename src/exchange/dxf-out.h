/* SPDX-License-Identifier: GPL-3.0-or-later */
/* A DXF file as it grows: group codes and their values. Internal to the room. */
#pragma once

#include "exchange/dxf.h"

/* Lines end as DOS ends them: programs that come from there, and controllers of old machines, want
 * no others, and all the rest read both. */

typedef struct
{
  GString *text;
  SqDxfRelease release;
  guint32 next_handle;
} SqDxfOut;

/* Handles of what every R2000 file has. R12 goes without. What is free follows: block records of
 * pieces, then whatever comes. */
enum
{
  SQ_DXF_VPORTS = 1,
  SQ_DXF_VPORT,
  SQ_DXF_LTYPES,
  SQ_DXF_LTYPE, /* three of them */
  SQ_DXF_LAYERS = SQ_DXF_LTYPE + 3,
  SQ_DXF_STYLES,
  SQ_DXF_STYLE,
  SQ_DXF_VIEWS,
  SQ_DXF_UCSS,
  SQ_DXF_APPIDS,
  SQ_DXF_APPID,
  SQ_DXF_DIMSTYLES,
  SQ_DXF_DIMSTYLE,
  SQ_DXF_RECORDS,
  SQ_DXF_MODEL,
  SQ_DXF_PAPER,
  SQ_DXF_ROOT,
  SQ_DXF_GROUPS,
  SQ_DXF_LAYOUTS,
  SQ_DXF_MODEL_LAYOUT,
  SQ_DXF_PAPER_LAYOUT,
  SQ_DXF_MLINES,
  SQ_DXF_MLINE,
  SQ_DXF_PLOTS,
  SQ_DXF_PLOT_STYLE,
  SQ_DXF_PIECES,
};

/* One group. @value is plain ASCII. */
void sq_dxf_string (SqDxfOut *out, int code, const char *value);
/* Several: codes and values with a blank between, groups with a bar between: "0 SECTION|2 HEADER".
 * */
void sq_dxf_groups (SqDxfOut *out, const char *groups);
void sq_dxf_integer (SqDxfOut *out, int code, int value);
void sq_dxf_handle (SqDxfOut *out, int code, guint32 handle);
/* In fixed decimals: a millionth of a millimetre for lengths; bulges and angles reach farther. */
void sq_dxf_length (SqDxfOut *out, int code, double value_mm);
void sq_dxf_ratio (SqDxfOut *out, int code, double value);
/* Three groups from @code on: x, y and z. */
void sq_dxf_point (SqDxfOut *out, int code, SqPoint point, double z_mm);

/* What a person wrote, UTF-8: all but ASCII as \U+XXXX (as two of them what needs more than four
 * digits), control characters as blanks, and nothing in it means anything to a reader. Cut off
 * where the release has no more room. */
void sq_dxf_words (SqDxfOut *out, int code, const char *label, const char *words);

/* The start of an entity of @type: its handle and owner where the release has them, its layer.
 * Returns its handle. */
guint32 sq_dxf_entity (SqDxfOut *out, const char *type, guint32 owner, const char *layer);
/* A subclass marker, where the release has them. */
void sq_dxf_subclass (SqDxfOut *out, const char *name);
