/* SPDX-License-Identifier: GPL-3.0-or-later */
/* What lays are sought in: the shapes of a task, where two of them overlap and how deep, and the places
 * they may take on the strips, which lie side by side in one plane. */
#pragma once

#include "roll/lay-kinds.h"
#include "roll/lay-nofit.h"
#include "roll/lay-phase.h"

/* A shape as the search knows it: of a kind in a pose, or of a flaw. */
typedef struct
{
  SqLayParts *parts;
  SqGridBox box;        /* of the parts */
  gint32 length, width; /* of the cut line's box; 0: a flaw */
  float side_um;        /* the smaller of both */
  float weight;         /* what overlaps of it count: large and hollow ones are hard to place */
  guint kind, pose;
} SqLayWorldShape;

/* Where something lies in the plane. */
typedef struct
{
  guint shape, strip;
  gint32 x, y;
} SqLayPlace;

/* May be used by several threads at once: what changes in it are tables that are made. */
typedef struct
{
  const SqLayKinds *kinds;
  guint n_shapes, n_strips;
  SqLayWorldShape *shapes;
  guint *first_shape;  /* by kind: that of its first pose */
  SqLayNofit **nofits; /* by shape and shape, the first being the lesser; made when asked for */
  GMutex lock;         /* of making them */
  gint64 *strip_y;     /* strips lie side by side: where each begins */
  SqLayPhase *phases;  /* by shape and strip */
  gboolean *is_phased; /* by kind */
  GArray *fixed;       /* of SqLayPlace: flaws and pinned pieces, which nothing may lie on */
} SqLayWorld;

/* For pieces that lie as in @spots (of SqLaySpot): all that are laid but those that are pinned.
 * @kinds is borrowed and must outlive it. NULL where they are too many or too large. */
SqLayWorld *sq_lay_world_new (const SqLayKinds *kinds, const GArray *spots);
void sq_lay_world_free (SqLayWorld *world);
G_DEFINE_AUTOPTR_CLEANUP_FUNC (SqLayWorld, sq_lay_world_free)

/* The table of two shapes, the first the lesser one; borrowed. */
const SqLayNofit *sq_lay_world_make_nofit (SqLayWorld *world, guint moving, guint fixed);

/* sq_lay_nofit_depth of two shapes, @moving lying @dx, @dy from @fixed. */
static inline float
sq_lay_world_depth (SqLayWorld *world, guint moving, guint fixed, gint32 dx, gint32 dy)
{
  guint a = MIN (moving, fixed), b = MAX (moving, fixed);
  const SqLayNofit *nofit = g_atomic_pointer_get (&world->nofits[(gsize) a * world->n_shapes + b]);

  if (G_UNLIKELY (nofit == NULL))
    nofit = sq_lay_world_make_nofit (world, a, b);
  return a == moving ? sq_lay_nofit_depth (nofit, dx, dy) : sq_lay_nofit_depth (nofit, -dx, -dy);
}

SqLayPlace sq_lay_world_place (const SqLayWorld *world, const SqLaySpot *spot);
SqLaySpot sq_lay_world_spot (const SqLayWorld *world, const SqLayPlace *place);

/* The greatest x and y of @shape on @strip that is laid up to @end; FALSE where it does not go in. */
gboolean sq_lay_world_room (const SqLayWorld *world, guint shape, guint strip, gint32 end,
                            gint32 *most_x, gint32 *most_y);

/* Moves @place to (x, y) of its strip, from there into the strip, laid up to @end, and to the nearest
 * place of its pattern. FALSE where there is none. */
gboolean sq_lay_world_settle (const SqLayWorld *world, gint32 end, SqLayPlace *place, gint64 x,
                              gint64 y);
