/* SPDX-License-Identifier: GPL-3.0-or-later */
/* Lays kept with the job. */
#pragma once

#include "plan/lays.h"
#include "window/document.h"

/* Keeps the lay of cloth @index of @lays, or those of all cloths: one step. Nothing where they are
 * kept already. */
void sq_edit_keep_lay (SqDocument *document, const SqLays *lays, guint index);
void sq_edit_keep_lays (SqDocument *document, const SqLays *lays);
/* The kept lay of @cloth is let go. */
void sq_edit_let_lay_go (SqDocument *document, SqId cloth);
