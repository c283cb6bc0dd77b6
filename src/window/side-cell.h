/* SPDX-License-Identifier: GPL-3.0-or-later */
/* A cell of the table of sides, as in a spreadsheet: arrow keys go to other cells until something
 * is typed or Enter begins a change; Enter takes it and goes down, Escape puts it back. */
#pragma once

#include <gtk/gtk.h>

#define SQ_TYPE_SIDE_CELL (sq_side_cell_get_type ())
G_DECLARE_FINAL_TYPE (SqSideCell, sq_side_cell, SQ, SIDE_CELL, GtkEntry)

/* Emits "given" (text), which is to return whether that could be taken; "go" (int columns to the
 * right, int rows down); and "left" when Escape has nothing to put back. */
GtkWidget *sq_side_cell_new (int width_chars);

/* Shows @text; what is being typed stays. */
void sq_side_cell_show (SqSideCell *cell, const char *text);
/* Lets arrow keys on @widget, a cell of another kind, go to other cells too: @go is called as for
 * "go", @data before its figures. */
typedef void (*SqSideCellGo) (GtkWidget *widget, int columns, int rows, gpointer data);
void sq_side_cell_add_arrows (GtkWidget *widget, SqSideCellGo go, gpointer data);
