/* SPDX-License-Identifier: GPL-3.0-or-later */
/* One way of building as a row of the comparison: a small picture, what it takes, or why it can't
 * be. */
#pragma once

#include <gtk/gtk.h>

#include "plan/ways.h"

#define SQ_TYPE_WAY_ROW (sq_way_row_get_type ())
G_DECLARE_FINAL_TYPE (SqWayRow, sq_way_row, SQ, WAY_ROW, GtkListBoxRow)

/* What all rows of a table have in common: one size group a column. */
#define SQ_N_WAY_COLUMNS 8
typedef struct
{
  GtkSizeGroup *groups[SQ_N_WAY_COLUMNS];
} SqWayColumns;

GtkWidget *sq_way_row_new (const SqWayColumns *columns);
void sq_way_row_show (SqWayRow *row, const SqWay *way, gboolean is_in_use);

/* The names of the columns, as a row above the others. */
GtkWidget *sq_way_row_new_heads (const SqWayColumns *columns);
