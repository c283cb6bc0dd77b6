/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "drawing/piece-scene.h"
#include "geometry/crossing.h"
#include "hand-made.h"

static const SqPieceLabel label = {
  .name = "Top", .size = "38 × 20", .count = "cut 1", .seen = NULL, .n = 1
};

static SqScene *
layer_of (const SqPiece *piece, const SqCloth *cloth, SqPieceLayer layer, double em_mm)
{
  SqPieceLook look = { em_mm };
  return sq_piece_scene (piece, cloth, 0x6f7a6c, layer, &label, &look);
}

static void
add_mark (SqPiece *piece, SqMarkKind kind, guint count, SqPoint at, double angle_rad, SqPath *line)
{
  SqMark mark = { .kind = kind, .count = count, .at = at, .angle_rad = angle_rad };
  mark.depth_mm = 4.7625;
  mark.line = line;
  mark.seam = -1;
  g_array_append_val (piece->marks, mark);
}

/* The lines of the first stroke with @pen, as paths. */
static GPtrArray *
lines_of (const SqScene *scene, SqPen pen)
{
  GPtrArray *lines = g_ptr_array_new_with_free_func ((GDestroyNotify) sq_path_unref);
  for (guint i = 0; i < sq_scene_n_items (scene); i++)
    {
      const SqItem *item = sq_scene_item (scene, i);
      if (item->kind != SQ_ITEM_STROKE || item->pen != pen)
        continue;
      for (guint k = 0; k < item->n_lines; k++)
        {
          const SqSceneLine *line = sq_scene_line (scene, item->first_line + k);
          g_ptr_array_add (lines,
                           sq_path_new (sq_scene_nodes (scene, line), line->n, line->is_ring));
        }
    }
  return lines;
}

static SqPiece *
plain_piece (double width, double height)
{
  return hand_piece (SQ_ROLE_FACE, sq_path_new_rectangle (0, 0, width, height), 12.7, M_PI / 2, 0);
}

/* As many ticks as the mark says, square to the edge, from the cut line inwards, as deep as they
 * are cut when that can be seen, and never beyond the sew line. */
static void
test_notches (void)
{
  for (guint count = 1; count <= 3; count++)
    for (int small = 0; small <= 1; small++)
      {
        g_autoptr (SqPiece) piece = plain_piece (400, 300);
        add_mark (piece, SQ_MARK_NOTCH, count, sq_point (150, 0), -M_PI / 2, NULL);
        g_autoptr (SqScene) scene = layer_of (piece, NULL, SQ_PIECE_LINES, small ? 60 : 4);
        g_autoptr (GPtrArray) ticks = lines_of (scene, SQ_PEN_NOTCH);
        double middle = 0;
        g_assert_cmpuint (ticks->len, ==, count);
        for (guint i = 0; i < count; i++)
          {
            SqBox box = sq_path_box (g_ptr_array_index (ticks, i));
            middle += box.min.x / count;
            g_assert_cmpfloat_with_epsilon (box.min.x, box.max.x, 1e-9);
            g_assert_cmpfloat_with_epsilon (box.min.y, -12.7, 1e-9);
            g_assert_cmpfloat_with_epsilon (box.max.y, small ? 0 : -12.7 + 4.7625, 1e-9);
          }
        g_assert_cmpfloat_with_epsilon (middle, 150, 1e-9);
      }
}

/* What is solid, dashed and dotted is where the piece says. */
static void
test_lines (void)
{
  g_autoptr (SqPiece) piece = plain_piece (400, 300);
  SqNode fold[] = { { { 50, 0 }, 0, 0 }, { { 50, 300 }, 0, 0 } };
  SqNode zip[] = { { { 30, 200 }, 0, 0 }, { { 370, 200 }, 0, 0 } };
  add_mark (piece, SQ_MARK_FOLD, 0, fold[0].at, 0, sq_path_new (fold, 2, FALSE));
  add_mark (piece, SQ_MARK_ZIP, 0, zip[0].at, 0, sq_path_new (zip, 2, FALSE));
  g_autoptr (SqScene) scene = layer_of (piece, NULL, SQ_PIECE_LINES, 4);
  g_autoptr (GPtrArray) cut = lines_of (scene, SQ_PEN_CUT), sew = lines_of (scene, SQ_PEN_SEW);
  g_autoptr (GPtrArray) folds = lines_of (scene, SQ_PEN_FOLD), zips = lines_of (scene, SQ_PEN_ZIP);
  g_assert_cmpuint (cut->len, ==, 1);
  g_assert_cmpfloat_with_epsilon (sq_path_area_mm2 (g_ptr_array_index (cut, 0)), 425.4 * 325.4,
                                  1e-6);
  g_assert_cmpuint (sew->len, ==, 1);
  g_assert_cmpfloat_with_epsilon (sq_path_length_mm (g_ptr_array_index (sew, 0)), 1400, 1e-6);
  g_assert_cmpuint (folds->len, ==, 1);
  g_assert_cmpuint (zips->len, ==, 1);
  g_assert_true (sq_scene_ground (scene)->is_cloth);
  g_assert_cmphex (sq_scene_ground (scene)->mean, ==, 0x6f7a6c);
}

/* The arrow lies along the grain, inside the sew line, off the label, whatever the grain. */
static void
test_grain (void)
{
  for (int degrees = -180; degrees < 180; degrees += 30)
    {
      double grain = degrees * M_PI / 180;
      g_autoptr (SqPiece) piece = hand_piece (
          SQ_ROLE_FACE, sq_path_new_rectangle (20, 30, 520, 330), 12.7, grain, 0);
      g_autoptr (SqScene) scene = layer_of (piece, NULL, SQ_PIECE_LINES, 12);
      g_autoptr (GPtrArray) arrows = lines_of (scene, SQ_PEN_GRAIN);
      gboolean is_inside;
      SqBox plate = sq_piece_label_box (piece, &label, 12, &is_inside);
      g_assert_true (is_inside);
      g_assert_cmpuint (arrows->len, ==, 1);
      SqSegment arrow = sq_path_segment (g_ptr_array_index (arrows, 0), 0);
      SqVector along = sq_turned (sq_point (1, 0), grain);
      g_assert_cmpfloat_with_epsilon (sq_dot (sq_segment_direction (&arrow, 0), along), 1, 1e-9);
      g_assert_true (sq_path_winding (sq_piece_sew (piece, 0), arrow.from) == 1);
      g_assert_true (sq_path_winding (sq_piece_sew (piece, 0), arrow.to) == 1);
      g_assert_false (sq_box_meets (plate, sq_segment_box (&arrow), 0));
    }
}

/* On a plate where it fits, off the zip; above where it does not. */
static void
test_label (void)
{
  g_autoptr (SqPiece) large = plain_piece (600, 400), strip = plain_piece (600, 76);
  SqNode zip[] = { { { 30, 200 }, 0, 0 }, { { 570, 200 }, 0, 0 } };
  gboolean is_inside;
  SqBox box = sq_piece_label_box (large, &label, 20, &is_inside);
  g_assert_true (is_inside);
  g_assert_cmpfloat_with_epsilon (box.min.x + box.max.x, 600, 1e-6);
  g_assert_cmpfloat_with_epsilon (box.min.y + box.max.y, 400, 1e-6);

  add_mark (large, SQ_MARK_ZIP, 0, zip[0].at, 0, sq_path_new (zip, 2, FALSE));
  box = sq_piece_label_box (large, &label, 20, &is_inside);
  g_assert_true (is_inside);
  g_assert_true (box.min.y > 200 || box.max.y < 200);

  box = sq_piece_label_box (strip, &label, 20, &is_inside);
  g_assert_false (is_inside);
  g_assert_cmpfloat (box.min.y, >, 76 + 12.7);
  g_assert_cmpfloat_with_epsilon (box.min.x, -12.7, 1e-9);

  g_autoptr (SqScene) scene = layer_of (strip, NULL, SQ_PIECE_LABEL, 20);
  g_assert_cmpuint (sq_scene_n_items (scene), ==, 1);
  g_assert_cmpstr (sq_scene_text (scene, 0)->text, ==, "Top");
  g_assert_cmpstr (sq_scene_text (scene, 0)->detail, ==, "38 × 20");
}

/* A ring-shaped piece has no room in its middle, and its cloth has a hole. */
static void
test_hole (void)
{
  g_autoptr (SqPiece) piece = plain_piece (600, 600);
  g_autoptr (SqPath) sew = sq_path_new_circle (sq_point (300, 300), 200);
  g_autoptr (SqPath) cut = sq_path_new_circle (sq_point (300, 300), 187.3);
  g_autoptr (SqCloth) cloth = hand_striped_cloth (0, 20, 50);
  gboolean is_inside;
  double area = 0;
  g_ptr_array_add (piece->sew, sq_path_reversed (sew));
  g_ptr_array_add (piece->cut, sq_path_reversed (cut));
  SqBox box = sq_piece_label_box (piece, &label, 10, &is_inside);
  g_assert_true (!is_inside || !sq_box_meets (box, sq_path_box (sew), 0));

  g_autoptr (SqScene) scene = layer_of (piece, cloth, SQ_PIECE_CLOTH, 10);
  const SqItem *fill = sq_scene_item (scene, 1); /* after the shadow */
  g_assert_cmphex (fill->rgb, ==, cloth->colour);
  for (guint i = 0; i < fill->n_lines; i++)
    {
      const SqSceneLine *line = sq_scene_line (scene, fill->first_line + i);
      g_autoptr (SqPath) ring = sq_path_new (sq_scene_nodes (scene, line), line->n, TRUE);
      area += sq_path_area_mm2 (ring);
    }
  g_assert_cmpfloat_with_epsilon (area, 625.4 * 625.4 - M_PI * 187.3 * 187.3, 1e-6);
}

int
main (int argc, char **argv)
{
  g_test_init (&argc, &argv, NULL);
  g_test_add_func ("/drawing/piece-scene/notches", test_notches);
  g_test_add_func ("/drawing/piece-scene/lines", test_lines);
  g_test_add_func ("/drawing/piece-scene/grain", test_grain);
  g_test_add_func ("/drawing/piece-scene/label", test_label);
  g_test_add_func ("/drawing/piece-scene/hole", test_hole);
  return g_test_run ();
}
