/* SPDX-License-Identifier: GPL-3.0-or-later */
/* The foam of a plan laid on sheets: how many of each kind and thickness there must be. Bolsters are
 * cut from blocks, not from sheets. */
#pragma once

#include "plan/plan.h"
#include "roll/lay-run.h"

/* One part of a cover as it is laid. */
typedef struct
{
  guint cushion, part; /* indexes of the cover, and of its foam */
} SqFoamOf;

/* All that is cut from sheets of one kind and thickness. */
typedef struct
{
  SqFoamKind kind;
  double thickness_mm;
  double length_mm, width_mm; /* of a sheet */
  double kerf_mm;             /* between two parts */
  GArray *parts;              /* of SqFoamOf: what an item's tag is a place in */
  SqLayTask *task;            /* its strips are sheets, more than are needed */
  SqLay *lay;
  guint sheets; /* that something lies on */
  double waste; /* the share of them that is not cut: 0 … 1 */
  guint unlaid; /* parts that go on no sheet */
} SqFoamLay;

/* The foam of @plan, an array of SqFoamLay in the order of kind and thickness. @before (may be NULL)
 * is only a source of lays of the same tasks. Work for @watch (may be NULL): NULL if it was
 * stopped. New. */
GArray *sq_foam_lays_new (const SqPlan *plan, const GArray *before, const SqTask *watch);

#define sq_foam_lay(lays, i) (&g_array_index ((lays), SqFoamLay, (i)))
#define sq_foam_lay_part(lay, i) (&g_array_index ((lay)->parts, SqFoamOf, (i)))
