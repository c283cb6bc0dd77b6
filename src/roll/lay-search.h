/* SPDX-License-Identifier: GPL-3.0-or-later */
/* Makes room: pieces that may overlap at first are moved one by one to where they overlap least, and
 * pairs that stay in each other's way weigh more and more, until nothing overlaps (guided local
 * search, as in Egeblad et al. 2007 and Umetani et al. 2009). */
#pragma once

#include "roll/lay-world.h"

/* How long one attempt goes on. */
typedef struct
{
  guint patience; /* rounds without getting nearer before it is tried anew */
  guint strikes;  /* so often */
} SqLayEffort;

/* Moves @spots until nothing overlaps and each strip is laid only up to ends (µm, one a strip).
 * Spots beyond an end are moved before it first. TRUE if that came out; else @spots is what was
 * nearest to it, and *@loss (may be NULL) tells how near. Pure in @spots, @ends and @seed. Stops as
 * soon as @is_cancelled (may be NULL) says so. */
gboolean sq_lay_search_separate (SqLayWorld *world, GArray *spots, const gint32 *ends, guint64 seed,
                                 SqLayEffort effort, gboolean (*is_cancelled) (gpointer),
                                 gpointer data, double *loss);

/* Moves what does not overlap towards the cut end as far as it goes. Pure. */
void sq_lay_search_compact (SqLayWorld *world, GArray *spots, const gint32 *ends);

/* Lets two large pieces of @spots change places, as chance has it. */
void sq_lay_search_swap (SqLayWorld *world, GArray *spots, guint64 seed);
