/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "drawing/cushion-scene.h"

#include "exchange/defaults-file.h"

#include <math.h>

/* 600 × 400 × 100 mm, its front bowed by @bow_mm, built as @build. */
static SqPlan *
block_plan (SqBuild build, double bow_mm)
{
  const SqCorner corners[] = {
    { .id = 1, .shape = bow_mm != 0 ? SQ_SHAPE_BOW : SQ_SHAPE_STRAIGHT, .bow_mm = bow_mm },
    { .id = 2, .at = { 600, 0 } },
    { .id = 3, .at = { 600, 400 } },
    { .id = 4, .at = { 0, 400 } }
  };
  guint n = G_N_ELEMENTS (corners);
  g_autoptr (SqOutline) outline = sq_outline_new (corners, &n, 1);
  SqCushion *cushion = sq_cushion_new (1, outline);
  SqDefaults defaults;

  sq_defaults_builtin (&defaults);
  g_autoptr (SqJob) job = sq_job_new (&defaults);
  cushion->build = build;
  cushion->thickness_mm = 100;
  cushion->given = SQ_GIVEN_BUILD | SQ_GIVEN_THICKNESS;
  g_ptr_array_add (job->cushions, cushion);
  return sq_plan_new (job, NULL);
}

/* Every way that is built of a 600 × 400 × 100 block is seen 600 × 400 × 100 from the same place, by
 * hand: turned by 0.42 and looked at from 0.55 above, the corners go from −400 sin 0.42 to
 * 600 cos 0.42 across, and from 0, a folded cover's from its wrap of 9.525 below, to (600 sin 0.42 + 400 cos 0.42) sin 0.55 + 100 cos 0.55 up. */
static void
test_block (void)
{
  static const SqBuild builds[] = { SQ_BUILD_BOXED, SQ_BUILD_FOLDED_CORNER, SQ_BUILD_SPLIT_SIDE };

  for (guint i = 0; i < G_N_ELEMENTS (builds); i++)
    {
      g_autoptr (SqPlan) plan = block_plan (builds[i], 0);
      g_autoptr (SqScene) scene = sq_cushion_scene (plan, 0, 0xddd3bf);
      SqBox box = sq_scene_box (scene);
      g_assert_cmpfloat_with_epsilon (box.min.x, -400 * sin (0.42), 0.01);
      g_assert_cmpfloat_with_epsilon (box.max.x, 600 * cos (0.42), 0.01);
      double wrap = builds[i] == SQ_BUILD_FOLDED_CORNER ? 9.525 : 0;
      g_assert_cmpfloat_with_epsilon (box.min.y, -wrap * cos (0.55), 0.01);
      g_assert_cmpfloat_with_epsilon (
          box.max.y, (600 * sin (0.42) + 400 * cos (0.42)) * sin (0.55) + 100 * cos (0.55), 0.01);
    }
}

/* Areas that are seen, and how many of them. */
static guint
n_fills (const SqScene *scene)
{
  guint n = 0;

  for (guint i = 0; i < sq_scene_n_items (scene); i++)
    n += sq_scene_item (scene, i)->kind == SQ_ITEM_FILL;
  return n;
}

/* Of a block three sides are seen: the top, painted last, as bright as the cloth, the others darker. */
static void
test_light (void)
{
  g_autoptr (SqPlan) plan = block_plan (SQ_BUILD_BOXED, 0);
  g_autoptr (SqScene) scene = sq_cushion_scene (plan, 0, 0xddd3bf);
  const SqItem *last = NULL;

  for (guint i = 0; i < sq_scene_n_items (scene); i++)
    {
      const SqItem *item = sq_scene_item (scene, i);
      if (item->kind != SQ_ITEM_FILL)
        continue;
      if (last != NULL)
        g_assert_cmpuint (last->rgb & 0xff, <, 0xbf);
      last = item;
    }
  g_assert_nonnull (last);
  g_assert_cmpuint (last->rgb, ==, 0xddd3bf);
  g_assert_cmpuint (n_fills (scene), >=, 3);
}

/* A bent side is shown by more than one flat one. */
static void
test_bent (void)
{
  g_autoptr (SqPlan) flat = block_plan (SQ_BUILD_BOXED, 0);
  g_autoptr (SqPlan) bowed = block_plan (SQ_BUILD_BOXED, 120);
  g_autoptr (SqScene) a = sq_cushion_scene (flat, 0, 0xddd3bf);
  g_autoptr (SqScene) b = sq_cushion_scene (bowed, 0, 0xddd3bf);

  g_assert_cmpuint (n_fills (b), >, n_fills (a) + 2);
}

/* What can't be built is not seen. */
static void
test_nothing (void)
{
  g_autoptr (SqPlan) plan = block_plan (SQ_BUILD_FOLDED_CORNER, 120);
  g_autoptr (SqScene) scene = sq_cushion_scene (plan, 0, 0xddd3bf);

  g_assert_cmpuint (sq_scene_n_items (scene), ==, 0);
}

int
main (int argc, char **argv)
{
  g_test_init (&argc, &argv, NULL);
  g_test_add_func ("/drawing/cushion-scene/block", test_block);
  g_test_add_func ("/drawing/cushion-scene/light", test_light);
  g_test_add_func ("/drawing/cushion-scene/bent", test_bent);
  g_test_add_func ("/drawing/cushion-scene/nothing", test_nothing);
  return g_test_run ();
}
