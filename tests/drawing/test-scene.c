/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "drawing/scene.h"

static SqScene *
small_scene (void)
{
  SqSceneBuilder *builder = sq_scene_builder_new ();
  SqNode arc[] = { { { 10, 0 }, 1, 0 }, { { -10, 0 }, 0, 0 } };
  sq_scene_begin_stroke (builder, SQ_PEN_SEW);
  sq_scene_add_nodes (builder, arc, 2, FALSE);
  sq_scene_add_line (builder, sq_point (-0.0001, 1.0004), sq_point (2, 3));
  sq_scene_begin_stroke (builder, SQ_PEN_HATCH); /* nothing is added to it */
  sq_scene_begin_colour (builder, 0x112233, 0.5);
  sq_scene_add_circle (builder, sq_point (1, 2), 3);
  sq_scene_add_text (builder, &(SqText){ .at = { 0, -20 },
                                         .em_mm = 4,
                                         .width_mm = 12,
                                         .tone = SQ_TONE_DIM,
                                         .text = "18 1⁄2",
                                         .detail = "cut 1" });
  return sq_scene_builder_end (builder);
}

static void
test_dump (void)
{
  g_autoptr (SqScene) scene = small_scene ();
  g_autofree char *dump = sq_scene_dump (scene);
  g_assert_cmpstr (dump, ==,
                   "stroke sew\n"
                   "  line 10.000 0.000 ~ 1.000, -10.000 0.000\n"
                   "  line 0.000 1.000, 2.000 3.000\n"
                   "fill colour 112233 0.500\n"
                   "  ring 4.000 2.000 ~ 1.000, -2.000 2.000 ~ 1.000\n"
                   "text dim 0.000 -20.000 0.000 4.000 12.000 \"18 1⁄2\" \"cut 1\"\n");
}

static void
test_box (void)
{
  g_autoptr (SqScene) scene = small_scene ();
  g_autoptr (SqScene) empty = sq_scene_builder_end (sq_scene_builder_new ());
  SqBox box = sq_scene_box (scene);
  g_assert_cmpuint (sq_scene_n_items (scene), ==, 3);
  g_assert_cmpfloat_with_epsilon (box.max.y, 10, 1e-9); /* the top of the arc */
  g_assert_cmpfloat_with_epsilon (box.min.y, -20 - 4 * SQ_TEXT_HEIGHT_EM / 2, 1e-9);
  g_assert_true (sq_scene_box (empty).min.x > sq_scene_box (empty).max.x);
}

/* A scene in another stands at its place, as much larger as was asked for. */
static void
test_scene_in_scene (void)
{
  g_autoptr (SqScene) small = small_scene ();
  SqSceneBuilder *builder = sq_scene_builder_new ();
  sq_scene_add_scene (builder, small, sq_point (100, 50), 2);
  g_autoptr (SqScene) scene = sq_scene_builder_end (builder);
  g_autofree char *dump = sq_scene_dump (scene);
  g_assert_cmpstr (dump, ==,
                   "stroke sew\n"
                   "  line 120.000 50.000 ~ 1.000, 80.000 50.000\n"
                   "  line 100.000 52.001, 104.000 56.000\n"
                   "fill colour 112233 0.500\n"
                   "  ring 108.000 54.000 ~ 1.000, 96.000 54.000 ~ 1.000\n"
                   "text dim 100.000 10.000 0.000 8.000 24.000 \"18 1⁄2\" \"cut 1\"\n");
}

/* A plate is a rectangle with round corners: its area is known in closed form. */
static void
test_plate (void)
{
  SqSceneBuilder *builder = sq_scene_builder_new ();
  sq_scene_begin_fill (builder, SQ_FILL_PLATE);
  sq_scene_add_plate (builder, sq_point (5, 6), 40, 20, 0.7, 4);
  g_autoptr (SqScene) scene = sq_scene_builder_end (builder);
  const SqSceneLine *line = sq_scene_line (scene, 0);
  g_autoptr (SqPath) ring = sq_path_new (sq_scene_nodes (scene, line), line->n, line->is_ring);
  g_assert_cmpfloat_with_epsilon (sq_path_area_mm2 (ring), 40 * 20 - (4 - M_PI) * 16, 1e-9);
}

static void
test_readable (void)
{
  for (int degrees = -720; degrees <= 720; degrees += 15)
    {
      double angle = degrees * M_PI / 180, readable = sq_readable_angle_rad (angle);
      g_assert_cmpfloat (cos (readable - SQ_LEAN_RAD), >, -1e-9);
      g_assert_cmpfloat_with_epsilon (sin (2 * readable), sin (2 * angle), 1e-9);
    }
  g_assert_cmpfloat_with_epsilon (sq_readable_angle_rad (-M_PI / 2), M_PI / 2, 1e-9);
  g_assert_cmpfloat_with_epsilon (sq_readable_angle_rad (1.62), 1.62, 1e-9);
  g_assert_cmpfloat_with_epsilon (sq_readable_angle_rad (1.8), 1.8 - M_PI, 1e-9);
}

static void
test_widths (void)
{
  double whole = sq_text_width_em ("18", FALSE), mixed = sq_text_width_em ("18 1⁄2", FALSE);
  g_assert_cmpfloat (mixed, >, whole + 1);
  g_assert_cmpfloat (mixed, <, sq_text_width_em ("18 1/2", FALSE)); /* fractions are small */
  g_assert_cmpfloat (sq_text_width_em ("Top", TRUE), >, sq_text_width_em ("Top", FALSE));
  g_assert_cmpfloat (sq_text_with_detail_width_em ("Top", TRUE, "18"), >,
                     sq_text_width_em ("Top", TRUE) + sq_text_width_em ("18", FALSE) * 0.8);
}

int
main (int argc, char **argv)
{
  g_test_init (&argc, &argv, NULL);
  g_test_add_func ("/drawing/scene/scene in scene", test_scene_in_scene);
  g_test_add_func ("/drawing/scene/dump", test_dump);
  g_test_add_func ("/drawing/scene/box", test_box);
  g_test_add_func ("/drawing/scene/plate", test_plate);
  g_test_add_func ("/drawing/scene/readable", test_readable);
  g_test_add_func ("/drawing/scene/widths", test_widths);
  return g_test_run ();
}
