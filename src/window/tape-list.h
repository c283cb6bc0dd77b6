/* SPDX-License-Identifier: GPL-3.0-or-later */
/* A list that is typed down with a tape in the hand: side A–B, the angle at B, side B–C, … The last
 * side is computed; where it was taped too, the list tells whether the seat closes. */
#pragma once

#include <gtk/gtk.h>

#include "base/length.h"
#include "job/outline.h"

#define SQ_TYPE_TAPE_LIST (sq_tape_list_get_type ())
G_DECLARE_FINAL_TYPE (SqTapeList, sq_tape_list, SQ, TAPE_LIST, GtkWidget)

/* Bare figures are in @units; a seat that fails to close by less than @step_mm closes. Emits
 * "changed" when it says something else, and "done" when Enter leaves a side empty (no
 * parameters). */
GtkWidget *sq_tape_list_new (SqUnit units, double step_mm);

/* The seat that the figures enclose; NULL: they don't. Borrowed. */
const SqOutline *sq_tape_list_outline (SqTapeList *list);
/* The corners that the tape has come by, *@n of them, from (0, 0). Borrowed. */
const SqPoint *sq_tape_list_corners (SqTapeList *list, guint *n);
