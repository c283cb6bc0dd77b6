/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "drawing/guide-scene.h"

#include "base/units.h"

/* All in em: how far a guide goes on beyond its ends, where the words stand from the hand, what
 * their plate has around them, and the cross where sides would meet. */
#define BEYOND_EM 1.0
#define ASIDE_EM 1.5
#define PLATE_EM 0.5
#define CROSS_EM 0.55
#define RING_EM 0.9

static void
add_guide (SqSceneBuilder *builder, SqPoint from, SqPoint to, double beyond_mm)
{
  SqVector along = sq_unit (sq_sub (to, from));
  if (sq_distance (from, to) <= SQ_COINCIDE_MM)
    return;
  sq_scene_begin_stroke (builder, SQ_PEN_GUIDE);
  sq_scene_add_line (builder, sq_moved (from, along, -beyond_mm), sq_moved (to, along, beyond_mm));
}

/* The edge that another is compared with. */
static void
add_other_edge (SqSceneBuilder *builder, const SqGuides *guides, const SqSnapReason *reason)
{
  guint ring, i, n;
  const SqCorner *corners;
  if (reason->kind != SQ_SNAP_SQUARE && reason->kind != SQ_SNAP_PARALLEL
      && reason->kind != SQ_SNAP_EQUAL_LENGTH)
    return;
  if (sq_outline_corner (guides->outline, reason->other, &ring, &i) == NULL)
    return;
  corners = sq_outline_ring (guides->outline, ring, &n);
  add_guide (builder, corners[i].at, corners[(i + 1) % n].at, 0);
}

/* Beside the hand, on its side away from the seat's middle; on the other where the room ends. */
static void
add_words (SqSceneBuilder *builder, const SqGuides *guides, double em_mm, SqBox room)
{
  SqPoint by = guides->crossing != NULL ? *guides->crossing : guides->at;
  double width = sq_text_width_em (guides->words, FALSE) * em_mm;
  double half = width / 2 + PLATE_EM * em_mm, height = SQ_TEXT_HEIGHT_EM * em_mm;
  double aside = ASIDE_EM * em_mm, right = by.x >= guides->middle.x ? 1 : -1;
  double up = by.y >= guides->middle.y ? 1 : -1;
  if (by.x + right * (aside + 2 * half) > room.max.x
      || by.x + right * (aside + 2 * half) < room.min.x)
    right = -right;
  if (by.y + up * (aside + height) > room.max.y || by.y + up * (aside + height) < room.min.y)
    up = -up;
  SqPoint at = sq_add (by, sq_point (right * (aside + half), up * aside));
  at.x = fmax (fmin (at.x, room.max.x - half), room.min.x + half);
  sq_scene_begin_fill (builder, SQ_FILL_PLATE);
  sq_scene_add_plate (builder, at, 2 * half, 1.2 * height, 0, PLATE_EM * em_mm);
  sq_scene_add_text (builder, &(SqText){ .at = at,
                                         .em_mm = em_mm,
                                         .width_mm = width,
                                         .tone = SQ_TONE_ACCENT,
                                         .text = guides->words });
}

static void
add_crossing (SqSceneBuilder *builder, SqPoint at, double em_mm)
{
  double arm = CROSS_EM * em_mm;
  sq_scene_begin_stroke (builder, SQ_PEN_ACCENT);
  sq_scene_add_circle (builder, at, RING_EM * em_mm);
  sq_scene_add_line (builder, sq_point (at.x - arm, at.y - arm), sq_point (at.x + arm, at.y + arm));
  sq_scene_add_line (builder, sq_point (at.x - arm, at.y + arm), sq_point (at.x + arm, at.y - arm));
}

SqScene *
sq_guide_scene (const SqGuides *guides, double em_mm, SqBox room)
{
  SqSceneBuilder *builder = sq_scene_builder_new ();
  for (guint i = 0; i < guides->n_reasons; i++)
    {
      const SqSnapReason *reason = &guides->reasons[i];
      add_other_edge (builder, guides, reason);
      if (reason->kind != SQ_SNAP_GRID) /* its guide would say nothing: steps are everywhere */
        add_guide (builder, reason->from, reason->to, BEYOND_EM * em_mm);
    }
  if (guides->crossing != NULL)
    add_crossing (builder, *guides->crossing, em_mm);
  if (guides->words != NULL)
    add_words (builder, guides, em_mm, room);
  return sq_scene_builder_end (builder);
}
