/* SPDX-License-Identifier: GPL-3.0-or-later */
/* Whether a cloth is laid so that straight cuts right through what is left can follow, or so that a
 * knife goes round every piece: what either takes, and which is worth it. */
#pragma once

#include "plan/purchase.h"

/* A cloth laid for the one or for the other. */
typedef struct
{
  SqLayTask *task;
  SqLay *lay;        /* a first lay of it (for straight ones: of a few attempts), or what one begun
                 from an earlier one came to; NULL: not laid, as nothing hangs on it */
  gboolean is_given; /* @lay is begun from an earlier one */
  SqPurchase purchase; /* for it */
} SqCutsLay;

/* What there is to cut. */
typedef struct
{
  guint pieces;
  guint cuts;         /* straight ones, right through what is left … */
  double straight_mm; /* … and their length */
  double outline_mm;  /* cut round a piece: all of it, or what is not on its box */
} SqCutting;

/* What it takes to cut @lay, of @task: by straight cuts wherever they can follow it. */
SqCutting sq_lay_cutting (const SqLayTask *task, const SqLay *lay);

/* Whether both are to be laid for a cloth that @pieces are cut from: the choice of @plan's job hangs
 * on it, or it is quickly told what the other would take. */
gboolean sq_cuts_want_both (const SqPlan *plan, guint pieces);

/* Whether straight cuts are chosen, of a cloth laid @by_cuts: two, for free ones and for straight ones.
 * As the job says; by rule for no more than 20 cushions, unless free ones save 3 % or 0.25 m of what
 * is bought, find room for more or keep to more pins. Lays that are not both wanted need not be
 * there. */
gboolean sq_cuts_are_straight (const SqPlan *plan, const SqCutsLay *by_cuts);
