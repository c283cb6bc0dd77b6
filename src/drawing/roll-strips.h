/* SPDX-License-Identifier: GPL-3.0-or-later */
/* What a cloth's pieces are laid on: what is there of it and the roll that is bought, with their
 * pattern and flaws. Roll coordinates, mm: x along from the cut end, y across from the near usable
 * edge; further strips lie to the right of the first, in a line along their near edges. */
#pragma once

#include "drawing/scene.h"
#include "plan/lays.h"

/* Between strips, and above them where they are named (mm). */
#define SQ_ROLL_GAP_MM 180.0

typedef struct
{
  double em_mm;      /* size of ordinary text, in mm of the roll */
  gboolean is_paper; /* pattern so faint that black marks can be read on any printer */
  guint32 plain;     /* colour of a cloth that has none, 0xrrggbb */
} SqRollLook;

/* Everything of the lay of @cloth: of each strip what is bought of it or laid, or what is there. Of
 * what is long only so much as matters. Of several strips, with room above for their names. */
SqBox sq_roll_box (const SqClothLay *cloth);
/* The same of one strip, with its own cut end's near corner at (0, 0). */
SqBox sq_roll_strip_box (const SqClothLay *cloth, guint strip);
/* How far from the first strip's (0, 0) that of @strip stands. */
SqVector sq_roll_strip_offset (const SqClothLay *cloth, guint strip);
/* The strip that @p lies on, as far as it is shown; −1: none. */
gint sq_roll_strip_at (const SqClothLay *cloth, SqPoint p);

/* The cloth of all strips between @from_mm and @to_mm along, with stripes and flaws. New. */
SqScene *sq_roll_cloth_scene (const SqLays *lays, guint cloth, double from_mm, double to_mm,
                              const SqRollLook *look);
/* The same of one strip, with its own (0, 0). */
SqScene *sq_roll_strip_scene (const SqLays *lays, guint cloth, guint strip, double from_mm,
                              double to_mm, const SqRollLook *look);
/* Where what is laid on each strip ends, dashed, within the same stretch. New. */
SqScene *sq_roll_end_scene (const SqLays *lays, guint cloth, double from_mm, double to_mm);
/* The same of one strip. */
SqScene *sq_roll_strip_end_scene (const SqLays *lays, guint cloth, guint strip, double from_mm,
                                  double to_mm);
/* @name above the strip, and its size as @detail where there is room, from its cut end on, its own
 * (0, 0) at (0, 0); nothing where nothing of the strip is shown. New. */
SqScene *sq_roll_name_scene (const SqClothLay *cloth, guint strip, const char *name,
                             const char *detail, const SqRollLook *look);

/* The box of @flaw where it is shown; empty where its piece of cloth is not there. */
SqBox sq_roll_flaw_box (const SqClothLay *cloth, const SqFlaw *flaw);
/* The flaw of lay @cloth that @p lies on, or is no farther from than @reach_mm; 0: none. */
SqId sq_roll_flaw_at (const SqLays *lays, guint cloth, SqPoint p, double reach_mm);
