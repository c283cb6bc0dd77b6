/* SPDX-License-Identifier: GPL-3.0-or-later */
/* One cloth as it is laid: the roll with its pattern, and the pieces where they lie. Roll
 * coordinates, mm: x along from the cut end, y across from the near usable edge; further strips
 * stand above the first. */
#pragma once

#include "drawing/scene.h"
#include "plan/lays.h"

typedef struct
{
  double em_mm;      /* size of ordinary text, in mm of the roll */
  gboolean is_paper; /* pattern so faint that black marks can be read on any printer */
  guint32 plain;     /* colour of a cloth that has none, 0xrrggbb */
} SqRollLook;

typedef enum
{
  SQ_ROLL_SHAPE, /* the cut shape and its line */
  SQ_ROLL_LABEL, /* number and name, as far as there is room */
} SqRollLayer;

/* Everything of the lay of @cloth: the bought length, or what is laid where nothing is bought. */
SqBox sq_roll_box (const SqClothLay *cloth);

/* How far from the first strip's (0, 0) that of @strip stands. */
SqVector sq_roll_strip_offset (const SqClothLay *cloth, guint strip);

/* The cloth of lay @cloth between @from_mm and @to_mm along the roll, with its stripes. New. */
SqScene *sq_roll_cloth_scene (const SqLays *lays, guint cloth, double from_mm, double to_mm,
                              const SqRollLook *look);
/* Where what is laid on each strip ends, dashed, within the same stretch. New. */
SqScene *sq_roll_end_scene (const SqLays *lays, guint cloth, double from_mm, double to_mm);

/* A lay as it was kept: outlines, with the names that were kept. New. */
SqScene *sq_roll_kept_scene (const SqKeptLay *kept, double em_mm);
/* Its box: the kept strips, one above the other. */
SqBox sq_roll_kept_box (const SqKeptLay *kept);

/* One layer of placed piece @placed of lay @cloth as it is turned, its place being at (0, 0): where
 * that is, see sq_roll_piece_place(). @name is written on it beside its number. New. */
SqScene *sq_roll_piece_scene (const SqLays *lays, guint cloth, guint placed, SqRollLayer layer,
                              const char *name, const SqRollLook *look);
SqVector sq_roll_piece_place (const SqLays *lays, guint cloth, guint placed);

/* The outer cut line of the piece where it lies. New. */
SqPath *sq_roll_piece_cut (const SqLays *lays, guint cloth, guint placed);

/* The index of the placed piece that @p lies on; −1: none. */
gint sq_roll_piece_at (const SqLays *lays, guint cloth, SqPoint p);
