/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "drawing/guide-scene.h"

#include "hand-made.h"

#define EM 10.0

static const SqPoint square[] = { { 0, 0 }, { 400, 0 }, { 400, 400 }, { 0, 400 } };
static const SqBox room = { { -100, -100 }, { 500, 500 } };

static const SqText *
only_text (const SqScene *scene)
{
  const SqText *found = NULL;
  for (guint i = 0; i < sq_scene_n_items (scene); i++)
    if (sq_scene_item (scene, i)->kind == SQ_ITEM_TEXT)
      {
        g_assert_null (found);
        found = sq_scene_text (scene, sq_scene_item (scene, i)->text);
      }
  return found;
}

static guint
n_strokes (const SqScene *scene, SqPen pen)
{
  guint n = 0;
  for (guint i = 0; i < sq_scene_n_items (scene); i++)
    n += sq_scene_item (scene, i)->kind == SQ_ITEM_STROKE && sq_scene_item (scene, i)->pen == pen;
  return n;
}

/* The words keep in the room wherever the hand is in it, and clear of the hand. */
static void
test_words (void)
{
  g_autoptr (SqCushion) cushion = hand_cushion (square, 4);
  for (double x = room.min.x; x <= room.max.x; x += 37)
    for (double y = room.min.y; y <= room.max.y; y += 41)
      {
        SqGuides guides = { .outline = cushion->outline,
                            .at = { x, y },
                            .middle = { 200, 200 },
                            .words = "square to A–B · steps of 1⁄8 in" };
        g_autoptr (SqScene) scene = sq_guide_scene (&guides, EM, room);
        const SqText *text = only_text (scene);
        g_assert_nonnull (text);
        g_assert_cmpfloat (text->at.x - text->width_mm / 2, >=, room.min.x);
        g_assert_cmpfloat (text->at.x + text->width_mm / 2, <=, room.max.x);
        g_assert_cmpfloat (text->at.y - EM * SQ_TEXT_HEIGHT_EM / 2, >=, room.min.y);
        g_assert_cmpfloat (text->at.y + EM * SQ_TEXT_HEIGHT_EM / 2, <=, room.max.y);
        g_assert_true (fabs (text->at.y - y) > EM * SQ_TEXT_HEIGHT_EM / 2
                       || fabs (text->at.x - x) > text->width_mm / 2);
      }
}

/* A guide for each reason but the grid's, and the edge that another is compared with. */
static void
test_guides (void)
{
  g_autoptr (SqCushion) cushion = hand_cushion (square, 4);
  SqSnapReason reasons[] = {
    { .kind = SQ_SNAP_SQUARE, .from = { 400, 0 }, .to = { 400, 300 }, .edge = 2, .other = 1 },
    { .kind = SQ_SNAP_GRID, .from = { 0, 0 }, .to = { 400, 300 }, .figure = 3.175 },
  };
  SqGuides guides = { .outline = cushion->outline, .reasons = reasons, .n_reasons = 2 };
  g_autoptr (SqScene) scene = sq_guide_scene (&guides, EM, room);
  g_assert_cmpuint (n_strokes (scene, SQ_PEN_GUIDE), ==, 2);
  g_assert_null (only_text (scene));
  guides.n_reasons = 0;
  guides.crossing = &square[2];
  g_autoptr (SqScene) stopped = sq_guide_scene (&guides, EM, room);
  g_assert_cmpuint (n_strokes (stopped, SQ_PEN_GUIDE), ==, 0);
  g_assert_cmpuint (n_strokes (stopped, SQ_PEN_ACCENT), ==, 1);
  SqBox box = sq_scene_box (stopped);
  g_assert_cmpfloat (fabs ((box.min.x + box.max.x) / 2 - 400), <, 1e-9);
}

int
main (int argc, char **argv)
{
  g_test_init (&argc, &argv, NULL);
  g_test_add_func ("/drawing/guide-scene/words", test_words);
  g_test_add_func ("/drawing/guide-scene/guides", test_guides);
  return g_test_run ();
}
