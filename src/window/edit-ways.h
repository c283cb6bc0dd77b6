/* SPDX-License-Identifier: GPL-3.0-or-later */
/* How a cushion is built, and what its making is reckoned by: changes of a job, each one step. */
#pragma once

#include "plan/wide.h"
#include "window/document.h"

/* Builds the cushion as @way has it; nothing where it is built so already. */
void sq_edit_way (SqDocument *document, const SqWay *way);
/* Takes way @i out for a face that is wider than its cloth; what it is divided into keeps the cushion's
 * name, numbered. Nothing for wider cloth. */
void sq_edit_wide (SqDocument *document, const SqWide *wide, guint i);
/* The maker's own rate; NULL: the sample. */
void sq_edit_rate (SqDocument *document, SqRate rate, const double *value);
/* Of a cubic metre; NULL: none. */
void sq_edit_foam_price (SqDocument *document, SqFoamKind kind, const double *price);
/* Of a metre; NULL: none. */
void sq_edit_cloth_price (SqDocument *document, SqId cloth, const double *price);
