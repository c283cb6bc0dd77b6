/* SPDX-License-Identifier: GPL-3.0-or-later */
/* A strip as it fills: what lies on it, and where beside that a shape may lie. */
#pragma once

#include "roll/lay-kinds.h"
#include "roll/lay-phase.h"

/* A piece that lies, or a flaw; and from where to where what it keeps is, on the strip. */
typedef struct
{
  const SqLayShape *shape;
  gint64 x, y;
  gint64 left, right, bottom, top;
} SqLaid;

typedef struct SqLayBar SqLayBar;

typedef struct
{
  const SqLayStrip *strip;
  GPtrArray *flaws; /* of SqLayShape */
  GArray *laid;     /* of SqLaid: what is in the way, flaws and pinned pieces too */
  gint64 floor;     /* nothing is laid before this any more */
  gint64 end;       /* of what was put */
  /* For questions: room for them, and how many there are. */
  SqLayBar *bars;
  guint n_bars, room_for_bars;
} SqLayFilling;

/* One for each strip of the task, with its flaws and what is pinned. */
SqLayFilling *sq_lay_fillings_new (const SqLayKinds *kinds);
void sq_lay_fillings_free (SqLayFilling *fillings, guint n_strips);

void sq_lay_filling_put (SqLayFilling *filling, const SqLayShape *shape, gint64 x, gint64 y);
/* Leaves what ends more than @reach before the end as it is: nothing is laid there any more. */
void sq_lay_filling_leave (SqLayFilling *filling, gint64 reach);

/* The least x from @x up to @most where @shape may lie with its origin at the height @y, which
 * @phase allows; more than @most where there is none. */
gint64 sq_lay_filling_next_x (SqLayFilling *filling, const SqLayShape *shape,
                              const SqLayPhase *phase, gint64 y, gint64 x, gint64 most);
/* The greatest x from @least up to @x; less than @least where there is none. */
gint64 sq_lay_filling_last_x (SqLayFilling *filling, const SqLayShape *shape,
                              const SqLayPhase *phase, gint64 y, gint64 x, gint64 least);

/* How far to the left number @laid of filling->laid can slide at its height, past nothing: the x
 * there; its own where it can't. */
gint64 sq_lay_filling_slid_x (SqLayFilling *filling, guint laid, const SqLayPhase *phase);
void sq_lay_filling_move (SqLayFilling *filling, guint laid, gint64 x);
