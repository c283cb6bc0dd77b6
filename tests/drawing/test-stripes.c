/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "drawing/piece-scene.h"
#include "drawing/theme.h"
#include "hand-made.h"

/* The bands of @cloth on the rings of @shape (taken). */
static SqScene *
bands_on (GPtrArray *shape, const SqCloth *cloth, double grain_rad, SqPoint anchor,
          double across_mm)
{
  SqSceneBuilder *builder = sq_scene_builder_new ();
  SqPhase phase = { .across = TRUE, .anchor = anchor, .across_mm = across_mm };
  sq_scene_add_stripes (builder, shape, cloth, grain_rad, &phase, 1);
  g_ptr_array_unref (shape);
  return sq_scene_builder_end (builder);
}

static GPtrArray *
shape_of (SqPath *outer, SqPath *hole)
{
  GPtrArray *shape = g_ptr_array_new_with_free_func ((GDestroyNotify) sq_path_unref);
  g_ptr_array_add (shape, outer);
  if (hole != NULL)
    g_ptr_array_add (shape, hole);
  return shape;
}

static SqPath *
line_path (const SqScene *scene, guint i)
{
  const SqSceneLine *line = sq_scene_line (scene, i);
  return sq_path_new (sq_scene_nodes (scene, line), line->n, line->is_ring);
}

static double
area_of (const SqScene *scene)
{
  double area = 0;
  for (guint item = 0; item < sq_scene_n_items (scene); item++)
    for (guint i = 0; i < sq_scene_item (scene, item)->n_lines; i++)
      {
        g_autoptr (SqPath) path = line_path (scene, sq_scene_item (scene, item)->first_line + i);
        area += sq_path_area_mm2 (path);
      }
  return area;
}

/* Warp up the piece (grain 90°): across runs to the left, so the cloth's near edge lies at x = 30
 * if (0, 0) is 30 across. Stripes 10 … 18 every 50 then stand at x = 20 … 12, −30 … −38, 70 … 62. */
static void
test_stations (void)
{
  g_autoptr (SqCloth) cloth = hand_striped_cloth (10, 8, 50);
  g_autoptr (SqScene) scene = bands_on (shape_of (sq_path_new_rectangle (-40, -20, 66, 80), NULL),
                                        cloth, M_PI / 2, sq_point (0, 0), 30);
  const double expected[][2] = { { 62, 66 }, { 12, 20 }, { -38, -30 } };
  g_assert_cmpuint (sq_scene_n_items (scene), ==, 1);
  g_assert_cmpuint (sq_scene_item (scene, 0)->n_lines, ==, 3);
  g_assert_cmphex (sq_scene_item (scene, 0)->rgb, ==, 0x2d5f8b);
  for (guint i = 0; i < 3; i++)
    {
      g_autoptr (SqPath) band = line_path (scene, i);
      SqBox box = sq_path_box (band);
      g_assert_cmpfloat_with_epsilon (box.min.x, expected[i][0], 1e-9);
      g_assert_cmpfloat_with_epsilon (box.max.x, expected[i][1], 1e-9);
      g_assert_cmpfloat_with_epsilon (box.min.y, -20, 1e-9);
      g_assert_cmpfloat_with_epsilon (box.max.y, 80, 1e-9);
    }
}

/* Warp to the right: across is up. */
static void
test_sideways (void)
{
  g_autoptr (SqCloth) cloth = hand_striped_cloth (0, 5, 100);
  g_autoptr (SqScene) scene = bands_on (shape_of (sq_path_new_rectangle (0, 0, 200, 90), NULL),
                                        cloth, 0, sq_point (7, 40), 0);
  g_autoptr (SqPath) band = line_path (scene, 0);
  g_assert_cmpuint (sq_scene_item (scene, 0)->n_lines, ==, 1);
  g_assert_cmpfloat_with_epsilon (sq_path_box (band).min.y, 40, 1e-9);
  g_assert_cmpfloat_with_epsilon (sq_path_box (band).max.y, 45, 1e-9);
}

/* A strip −h … h out of the middle of a circle has the area 2 (h √(r² − h²) + r² asin (h / r)). */
static void
test_circle (void)
{
  double r = 100, h = 30;
  g_autoptr (SqCloth) cloth = hand_striped_cloth (0, 2 * h, 1000);
  g_autoptr (SqScene) scene = bands_on (shape_of (sq_path_new_circle (sq_point (3, 4), r), NULL),
                                        cloth, 0.3, sq_point (3, 4), h);
  g_assert_cmpfloat_with_epsilon (area_of (scene),
                                  2 * (h * sqrt (r * r - h * h) + r * r * asin (h / r)), 1e-6);
}

/* A cloth and its complement cover any shape once: concave, bent, with a hole, at any angle. */
static void
test_complement (void)
{
  for (int i = 0; i < 300; i++)
    {
      SqNode nodes[] = {
        { { 0, 0 }, g_test_rand_double_range (-0.3, 0.3), 0 },
        { { 300, 10 }, 0, 0 },
        { { 310, 200 }, g_test_rand_double_range (-0.2, 0.4), 0 },
        { { 200, 210 }, 0, 0 },
        { { 190, 100 }, g_test_rand_double_range (-0.2, 0.2), 0 }, /* a bay from above */
        { { 110, 95 }, 0, 0 },
        { { 100, 190 }, 0, 0 },
        { { -10, 200 }, g_test_rand_double_range (-0.2, 0.2), 0 },
      };
      g_autoptr (SqPath) outer = sq_path_new (nodes, G_N_ELEMENTS (nodes), TRUE);
      g_autoptr (SqPath) circle = sq_path_new_circle (sq_point (60, 100), 20);
      g_autoptr (SqPath) hole = sq_path_reversed (circle);
      double width = g_test_rand_double_range (3, 37), at = g_test_rand_double_range (0, 40);
      double turn = g_test_rand_double_range (-4, 4), across = g_test_rand_double_range (-90, 90);
      g_autoptr (SqCloth) cloth = hand_striped_cloth (at, width, 40);
      g_autoptr (SqCloth) rest = hand_striped_cloth (at + width, 40 - width, 40);
      g_autoptr (SqScene) a = bands_on (shape_of (sq_path_ref (outer), sq_path_ref (hole)), cloth,
                                        turn, sq_point (11, 12), across);
      g_autoptr (SqScene) b = bands_on (shape_of (sq_path_ref (outer), sq_path_ref (hole)), rest,
                                        turn, sq_point (11, 12), across);
      g_assert_cmpfloat_with_epsilon (area_of (a) + area_of (b),
                                      sq_path_area_mm2 (outer) + sq_path_area_mm2 (hole), 1e-5);
    }
}

/* Stripes finer than the eye are one colour over the whole shape. */
static void
test_too_fine (void)
{
  g_autoptr (SqCloth) cloth = hand_striped_cloth (0, 0.02, 0.04);
  g_autoptr (SqScene) scene = bands_on (shape_of (sq_path_new_rectangle (0, 0, 500, 500), NULL),
                                        cloth, 0, sq_point (0, 0), 0);
  g_assert_cmpuint (sq_scene_n_items (scene), ==, 1);
  g_assert_cmpfloat_with_epsilon (area_of (scene), 500 * 500, 1e-6);
  g_assert_cmphex (sq_scene_item (scene, 0)->rgb, ==,
                   sq_colour_between (cloth->colour, cloth->stripes[0].colour, 0.5));
}

static void
test_ground (void)
{
  g_autoptr (SqCloth) cloth = hand_striped_cloth (0, 10, 40);
  SqGround striped = sq_cloth_ground (cloth, 0), plain = sq_cloth_ground (NULL, 0x445566);
  g_assert_cmphex (striped.lightest, ==, cloth->colour);
  g_assert_cmphex (striped.darkest, ==, 0x2d5f8b);
  g_assert_cmphex (striped.mean, ==, sq_colour_between (cloth->colour, 0x2d5f8b, 0.25));
  g_assert_cmphex (plain.mean, ==, 0x445566);
}

int
main (int argc, char **argv)
{
  g_test_init (&argc, &argv, NULL);
  g_test_add_func ("/drawing/stripes/stations", test_stations);
  g_test_add_func ("/drawing/stripes/sideways", test_sideways);
  g_test_add_func ("/drawing/stripes/circle", test_circle);
  g_test_add_func ("/drawing/stripes/complement", test_complement);
  g_test_add_func ("/drawing/stripes/too-fine", test_too_fine);
  g_test_add_func ("/drawing/stripes/ground", test_ground);
  return g_test_run ();
}
