/* SPDX-License-Identifier: GPL-3.0-or-later */
/* One cushion in the list: its drawing, its name, which can be typed anew, and what it is. It can
 * be dragged onto another one. */
#pragma once

#include <gtk/gtk.h>

#include "window/cushion-item.h"

#define SQ_TYPE_CUSHION_ROW (sq_cushion_row_get_type ())
G_DECLARE_FINAL_TYPE (SqCushionRow, sq_cushion_row, SQ, CUSHION_ROW, GtkWidget)

/* Emits "named" (text) when another name was typed, "dropped" (SqCushionItem) when one was dropped
 * on it. */
GtkWidget *sq_cushion_row_new (void);
/* Shows @item from now on; NULL: none. */
void sq_cushion_row_set_item (SqCushionRow *row, SqCushionItem *item);
SqCushionItem *sq_cushion_row_item (SqCushionRow *row);
