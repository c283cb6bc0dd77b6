/* SPDX-License-Identifier: GPL-3.0-or-later */
/* What a cloth would take if it were laid otherwise: what matching its pattern costs, and other
 * widths. */
#pragma once

#include "plan/purchase.h"
#include "roll/lay-run.h"

typedef struct
{
  double width_mm;     /* usable */
  gboolean is_own;     /* that is the cloth's */
  gboolean is_matched; /* the pattern falls where it must */
  SqPurchase purchase; /* as if nothing were in stock, by first lays */
} SqLayOption;

/* An array of SqLayOption for @cloth: as it is; not matched, where it has a pattern that pieces
 * keep to; on each usual width that is another. A width is as another cloth of it, laid with
 * covers made for it. Empty where nothing is cut from @cloth. Long work for @watch (may be NULL):
 * NULL if it was stopped. New. */
GArray *sq_lay_options_new (const SqPlan *plan, SqId cloth, const SqTask *watch);

#define sq_lay_option(options, i) (&g_array_index ((options), SqLayOption, (i)))

/* How much more is to buy because the pattern is matched (mm); NaN where there is nothing to
 * compare: no pattern, or not all can be laid. */
double sq_lay_options_matching_mm (const GArray *options);
