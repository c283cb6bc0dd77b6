/* SPDX-License-Identifier: GPL-3.0-or-later */
/* What is chosen in a window: a cushion, and a place on it. It belongs to the view, never to the
 * job. */
#pragma once

#include <glib-object.h>

#include "cover/problem.h"

#define SQ_TYPE_SELECTION (sq_selection_get_type ())
G_DECLARE_FINAL_TYPE (SqSelection, sq_selection, SQ, SELECTION, GObject)

/* Emits "changed" (no parameters) when something else is chosen, and "problem" (pointer to const
 * SqPlace) when what is wrong there is to be read. Nothing chosen: cushion 0. */
SqSelection *sq_selection_new (void);

/* The place: SQ_AT_CUSHION where no part of the cushion is chosen. */
const SqPlace *sq_selection_place (SqSelection *selection);
SqId sq_selection_cushion (SqSelection *selection);
/* The item if the place is of @kind (a member of SqPlace's enumeration), else 0. */
guint32 sq_selection_item (SqSelection *selection, guint kind);

void sq_selection_choose (SqSelection *selection, const SqPlace *place);
void sq_selection_choose_cushion (SqSelection *selection, SqId cushion);
/* A part of the chosen cushion; @kind as in SqPlace. */
void sq_selection_choose_part (SqSelection *selection, guint kind, guint32 item);
/* Asks for what is wrong at @place to be shown. */
void sq_selection_show_problem (SqSelection *selection, const SqPlace *place);
