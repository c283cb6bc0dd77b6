/* SPDX-License-Identifier: GPL-3.0-or-later */
/* The changes a window makes to what a job is laid on and how, each with its words. One step each. */
#pragma once

#include "job/lay-edits.h"
#include "plan/lays.h"
#include "window/document.h"

/* @pin holds the copy of line @entry of @plan's cut list; @is_moved: it was put there by hand. */
void sq_edit_pin (SqDocument *document, const SqPlan *plan, const SqCutEntry *entry,
                  const SqPin *pin, gboolean is_moved);
void sq_edit_unpin (SqDocument *document, const SqPlan *plan, const SqCutEntry *entry,
                    const SqPinned *of);
void sq_edit_unpin_all (SqDocument *document, SqId cloth);

/* A new flaw where its id is 0; else the one of that id is as @flaw has it now. */
void sq_edit_flaw (SqDocument *document, SqId cloth, const SqFlaw *flaw);
void sq_edit_remove_flaw (SqDocument *document, SqId cloth, SqId flaw);

/* @stock (of SqStock; an id of 0: a new piece) is all that is in stock of @cloth, in this order. Nothing
 * where it was that already. */
void sq_edit_stock (SqDocument *document, SqId cloth, const GArray *stock);

/* Cloth is cut by such @cuts; so many layers at once at most (0: one), on a table so long (0: as long as
 * need be). Nothing where it was that already. */
void sq_edit_cutting (SqDocument *document, SqCuts cuts, guint most, double table_mm);
