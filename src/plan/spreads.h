/* SPDX-License-Identifier: GPL-3.0-or-later */
/* What is spread on the table to be cut at once, and the pieces that come off it. */
#pragma once

#include "plan/lays.h"

/* A strip of a cloth's lay; of a lot a lay of its plies. */
typedef struct
{
  const SqLays *lays; /* what the two next are of: of a lot sq_lays_of_plies(); the spreads' own */
  guint cloth, strip;
  gboolean is_lot;
  guint plies;     /* 1 where it is no lot */
  double ply_mm;   /* to spread of each; of a lot with what evens its ends */
  guint number, n; /* from 1: which of those of its cloth, and how many there are */
} SqSpread;

/* Equal pieces that lie above each other. Copies count from 0 through all that are wanted. */
typedef struct
{
  guint entry;        /* index in the plan's cut list */
  guint first, count; /* its copies */
  guint spares;       /* plies beyond them: nobody wants these */
  gint spread;        /* index; −1: no lay could take it */
} SqBundle;

typedef struct
{
  SqLays *lays, *of_plies; /* the latter NULL where there are no lots */
  GArray *all;             /* of SqSpread, cloth by cloth */
} SqSpreads;

/* Everything of @lays that something lies on. A cloth that is best cut several plies deep, or on
 * several tables, is spread as a lot. New; free with sq_spreads_free(). */
SqSpreads *sq_spreads_new (const SqLays *lays);
void sq_spreads_free (SqSpreads *spreads);
G_DEFINE_AUTOPTR_CLEANUP_FUNC (SqSpreads, sq_spreads_free)

#define sq_spreads_at(spreads, i) (&g_array_index ((spreads)->all, SqSpread, (i)))

/* The lay that @spread is a strip of. */
const SqClothLay *sq_spread_cloth (const SqSpread *spread);

/* What becomes of @placed, of the lay of spread @i. */
SqBundle sq_spreads_bundle (const SqSpreads *spreads, guint i, const SqPlaced *placed);

/* How many copies of what is cut from cloth @index no lay could take. */
guint sq_spreads_n_unlaid (const SqSpreads *spreads, guint index);

/* All pieces in the order in which they come off the table, spread by spread from the cut end on;
 * those no lay could take come last, each alone; SQ_LAY_MOST_PIECES in all. @entries (of guint,
 * ascending; NULL: all): only of these lines of the cut list. New array of SqBundle. */
GArray *sq_spreads_bundles (const SqSpreads *spreads, const GArray *entries);
