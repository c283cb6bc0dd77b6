/* SPDX-License-Identifier: GPL-3.0-or-later */
/* A small reader of DXF: enough to tell what was written. */
#pragma once

#include "exchange/dxf.h"

typedef struct
{
  int code;
  char *value;
} Group;

#define group_at(groups, i) (&g_array_index ((groups), Group, (i)))

/* The groups of @text; fails where it is not made of pairs of lines, CR LF at their ends, in ASCII.
 * */
GArray *read_groups (const char *text);

/* Index of the first group @code of @value at or after @from; fails where there is none. */
guint find_group (const GArray *groups, guint from, int code, const char *value);
gboolean has_group (const GArray *groups, int code, const char *value);
/* The first and the one after the last group of a section, or of a block. */
void find_section (const GArray *groups, const char *name, guint *from, guint *to);
void find_block (const GArray *groups, const char *name, guint *from, guint *to);

/* The entity after group @i, which starts one, or @to: vertices and the end of a polyline are its
 * own. */
guint next_entity (const GArray *groups, guint i, guint to);
/* The value of @code in the entity that starts at @i; NULL without one. */
const char *value_of (const GArray *groups, guint i, guint to, int code);
double number_of (const GArray *groups, guint i, guint to, int code);
SqPoint point_of (const GArray *groups, guint i, guint to, int code);
/* A line or polyline. */
SqPath *path_of (const GArray *groups, guint i, guint to);
