/* SPDX-License-Identifier: GPL-3.0-or-later */
/* A cushion in the list: it stays the same over edits, and says when what it shows has changed. */
#pragma once

#include <glib-object.h>

#include "plan/plan.h"

#define SQ_TYPE_CUSHION_ITEM (sq_cushion_item_get_type ())
G_DECLARE_FINAL_TYPE (SqCushionItem, sq_cushion_item, SQ, CUSHION_ITEM, GObject)

/* The cushion of cover @i of @plan. Emits "changed" when sq_cushion_item_follow() brings another
 * cover or name. */
SqCushionItem *sq_cushion_item_new (const SqPlan *plan, guint i);
void sq_cushion_item_follow (SqCushionItem *item, const SqPlan *plan, guint i);

SqId sq_cushion_item_id (SqCushionItem *item);
const SqPlan *sq_cushion_item_plan (SqCushionItem *item, guint *i);
/* Emits "rename": somebody wants to type another name for it. */
void sq_cushion_item_rename (SqCushionItem *item);

/* "2 × Bay seat"; "Boxed, 3 in", under it "2 pairs" or "mirror image" where it is. Borrowed. */
const char *sq_cushion_item_name (SqCushionItem *item);
const char *sq_cushion_item_words (SqCushionItem *item);
