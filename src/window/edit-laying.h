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

/* The same of a piece of cloth in stock. */
void sq_edit_stock (SqDocument *document, SqId cloth, const SqStock *stock);
void sq_edit_remove_stock (SqDocument *document, SqId cloth, SqId stock);

void sq_edit_cuts (SqDocument *document, SqCuts cuts);
void sq_edit_plies (SqDocument *document, guint most, double table_mm);
