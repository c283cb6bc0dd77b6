/* SPDX-License-Identifier: GPL-3.0-or-later */
/* Marks where notes are pinned to the seat's edges and corners. */
#pragma once

#include "drawing/scene.h"
#include "job/cushion.h"

/* One that is pinned there. */
typedef struct
{
  SqId corner;
  gboolean is_edge; /* to the edge that starts there */
  SqPoint at;       /* the mark's middle, seat coordinates */
  const char *text; /* borrowed from the outline */
} SqPinnedNote;

/* Sides of a mark, in em. */
#define SQ_NOTE_MARK_EM 0.8

/* The notes of @cushion, with marks just inside the seat: beside an edge, clear of its middle, and
 * beyond a corner's letter. What is rounded away has none. New array of SqPinnedNote. */
GArray *sq_seat_notes (const SqCushion *cushion, double em_mm);

/* The note whose mark is at @p, or NULL; borrowed from @notes. */
const SqPinnedNote *sq_seat_note_at (const GArray *notes, SqPoint p, double within_mm);

/* Draws the marks: a small leaf with a corner turned down. */
void sq_seat_notes_draw (SqSceneBuilder *builder, const SqCushion *cushion, double em_mm);
