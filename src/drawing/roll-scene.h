/* SPDX-License-Identifier: GPL-3.0-or-later */
/* One cloth as it is laid: the pieces where they lie on its strips, for which see roll-strips.h. */
#pragma once

#include "drawing/roll-strips.h"

typedef enum
{
  SQ_ROLL_SHAPE, /* the cut shape and its line */
  SQ_ROLL_LABEL, /* number and name, as far as there is room */
} SqRollLayer;

/* A lay as it was kept: outlines, with the names that were kept. New. */
SqScene *sq_roll_kept_scene (const SqKeptLay *kept, double em_mm);
/* Its box: the kept strips, one above the other. */
SqBox sq_roll_kept_box (const SqKeptLay *kept);

/* One layer of placed piece @placed of lay @cloth as it is turned, its place being at (0, 0): where
 * that is, see sq_roll_piece_place(). @name is written on it beside its number. New. */
SqScene *sq_roll_piece_scene (const SqLays *lays, guint cloth, guint placed, SqRollLayer layer,
                              const char *name, const SqRollLook *look);
SqVector sq_roll_piece_place (const SqLays *lays, guint cloth, guint placed);

/* Number and name on a piece of @rings (of SqPath), along its longer side or across it, then smaller,
 * then the number alone, at last nothing. @taken (may be NULL) is set to the box it takes, if any. */
void sq_roll_add_label (SqSceneBuilder *builder, const GPtrArray *rings, guint number,
                        const char *name, double em_mm, SqBox *taken);

/* The outer cut line of the piece where it lies. New. */
SqPath *sq_roll_piece_cut (const SqLays *lays, guint cloth, guint placed);

/* The index of the placed piece that @p lies on; −1: none. */
gint sq_roll_piece_at (const SqLays *lays, guint cloth, SqPoint p);
