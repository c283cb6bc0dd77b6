/* SPDX-License-Identifier: GPL-3.0-or-later */
/* In what order copies are laid. */
#pragma once

#include "roll/lay-kinds.h"

/* Copies of one kind, one after another. */
typedef struct
{
  guint kind, count;
  gboolean starts_batch; /* from here on the cloth far behind is left as it is */
  gint level;            /* runs of a lower one come first, see sq_lay_order_new */
} SqLayRun;

/* What serves best comes first. */
typedef enum
{
  SQ_LAY_BY_REACH, /* girth times the longer side: what is long is hard to place later */
  SQ_LAY_BY_AREA,
  SQ_LAY_BY_WIDTH, /* across the cloth */
  SQ_LAY_BY_LENGTH,
  SQ_LAY_BY_GIRTH,
} SqLaySort;
#define SQ_N_LAY_SORTS 5

/* The size that one lay of @kinds by no other is best made by. */
SqLaySort sq_lay_sort_first (const SqLayKinds *kinds);

/* How many pieces are laid: all, but no more than SQ_LAY_MOST_PIECES. */
guint sq_lay_n_pieces (const SqLayKinds *kinds);

/* All kinds, the greatest first (an array of SqLayRun). Many pieces are dealt out to batches, each
 * with some of every size, so that the time it takes grows with their number and no faster. Where
 * every strip has an end, those of the lowest priority come before all others. */
GArray *sq_lay_order_new (const SqLayKinds *kinds, SqLaySort sort);

/* As the pieces of @lay lie along their strips, matched by the items' tags; what it has not is
 * taken by area at the end; of those of each priority, where that counts. */
GArray *sq_lay_order_new_as (const SqLayKinds *kinds, const SqLay *lay);

/* A copy of @order with a few runs in other places, as the numbers from @chance have it; batches
 * and levels keep what they have. */
GArray *sq_lay_order_shuffled (const GArray *order, guint64 *chance);

/* The next number of a series that any first @chance begins. */
guint64 sq_lay_chance (guint64 *chance);
