/* SPDX-License-Identifier: GPL-3.0-or-later */
/* Pieces divided along a line. Cloth is 1346.2 wide and allowances are 12.7 where nothing else is
 * said; GEOS is the second opinion on what the panels cover. */
#include "cover/hand-made.h"
#include "geometry/geos.h"

#define FLAT_MM 0.01
#define TWO ",'seams_across':'two'"

/* Area of the union of all sew outlines of @role, and the sum of their areas, as GEOS has them. */
static double
united_mm2 (const SqCover *cover, SqPieceRole role, double *sum)
{
  GEOSContextHandle_t geos = geos_context ();
  GEOSGeometry *all = GEOSGeom_createEmptyPolygon_r (geos);
  double area;

  *sum = 0;
  for (guint i = 0; i < cover->pieces->len; i++)
    {
      const SqPiece *piece = sq_cover_piece (cover, i);
      if (piece->role != role)
        continue;
      GEOSGeometry *panel = geos_polygon (sq_piece_sew (piece, 0), FLAT_MM);
      GEOSGeometry *more = GEOSUnion_r (geos, all, panel);
      *sum += geos_area_mm2 (sq_piece_sew (piece, 0), FLAT_MM);
      GEOSGeom_destroy_r (geos, all);
      GEOSGeom_destroy_r (geos, panel);
      all = more;
    }
  GEOSArea_r (geos, all, &area);
  GEOSGeom_destroy_r (geos, all);
  return area;
}

/* Panels of @role cover just what the undivided piece of @whole does, each place once. */
static void
assert_covers (const SqCover *cover, const SqCover *whole, SqPieceRole role)
{
  double sum, area = geos_area_mm2 (sq_piece_sew (piece_of (whole, role), 0), FLAT_MM);

  g_assert_cmpfloat_with_epsilon (united_mm2 (cover, role, &sum), area, 1);
  g_assert_cmpfloat_with_epsilon (sum, area, 1);
}

static guint
count_pieces (const SqCover *cover, SqPieceRole role)
{
  guint n = 0;

  for (guint i = 0; i < cover->pieces->len; i++)
    n += sq_cover_piece (cover, i)->role == role ? 1 : 0;
  return n;
}

static guint
count_marks (const SqCover *cover, SqMarkKind kind, gboolean only_faces)
{
  guint n = 0;

  for (guint i = 0; i < cover->pieces->len; i++)
    {
      const SqPiece *piece = sq_cover_piece (cover, i);
      for (guint k = 0; k < piece->marks->len; k++)
        n += g_array_index (piece->marks, SqMark, k).kind == kind
                     && (!only_faces || piece->role == SQ_ROLE_FACE)
                 ? 1
                 : 0;
    }
  return n;
}

static void
assert_panel (const SqCover *cover, guint i, double x0, double x1)
{
  SqBox box = sq_path_box (sq_piece_sew (sq_cover_piece (cover, i), 0));
  assert_mm (box.min.x, x0);
  assert_mm (box.max.x, x1);
}

/* 1800 wide: the middle is 1346.2 − 2 × 12.7 = 1320.8, and (1800 − 1320.8) / 2 = 239.6 are left on
 * each side of it. */
static void
test_plain (void)
{
  g_autoptr (SqCover) whole = cover_of_rectangle (1800, 600, "'build':'boxed'");
  g_autoptr (SqCover) cover = cover_of_rectangle (1800, 600, "'build':'boxed'" TWO);

  g_assert_nonnull (find_problem (whole, SQ_PROBLEM_WIDER_THAN_CLOTH));
  g_assert_null (find_problem (cover, SQ_PROBLEM_WIDER_THAN_CLOTH));
  g_assert_cmpuint (count_pieces (cover, SQ_ROLE_FACE), ==, 3);
  g_assert_cmpuint (count_pieces (cover, SQ_ROLE_UNDERSIDE), ==, 3);
  assert_panel (cover, 0, 0, 239.6);
  assert_panel (cover, 1, 239.6, 1560.4);
  assert_panel (cover, 2, 1560.4, 1800);
  assert_panel (cover, 3, -1800, -1560.4);
  assert_mm (sq_cover_piece (cover, 0)->width_mm, 239.6 + 2 * 12.7);
  assert_mm (sq_cover_piece (cover, 1)->width_mm, 1346.2);
  assert_covers (cover, whole, SQ_ROLE_FACE);
  assert_covers (cover, whole, SQ_ROLE_UNDERSIDE);
  /* four joins of 600 more, sewn before all else; round the faces as much as before */
  assert_mm (seams_mm (cover, SQ_SEAM_JOIN), seams_mm (whole, SQ_SEAM_JOIN) + 4 * 600);
  assert_mm (seams_mm (cover, SQ_SEAM_PERIMETER), seams_mm (whole, SQ_SEAM_PERIMETER));
  for (guint i = 0; i < cover->seams->len; i++)
    {
      const SqSeam *seam = sq_cover_seam (cover, i);
      gboolean across = seam->kind == SQ_SEAM_JOIN && seam->a.piece < 6;
      g_assert_true (across == (seam->step == 1));
      assert_mm (seam->length_a_mm, seam->length_b_mm);
    }
  g_assert_cmpuint (count_marks (cover, SQ_MARK_NOTCH, FALSE), ==,
                    count_marks (whole, SQ_MARK_NOTCH, FALSE));
}

/* 1330 wide, 1355.4 cut: the sides are not narrower than 2 in, so the middle is 1330 − 101.6. */
static void
test_hardly_wider (void)
{
  g_autoptr (SqCover) cover = cover_of_rectangle (1330, 600, "'build':'boxed'" TWO);

  assert_panel (cover, 0, 0, 50.8);
  assert_panel (cover, 1, 50.8, 1279.2);
  assert_panel (cover, 2, 1279.2, 1330);
}

/* A repeat of 110 goes 12 times into 1320.8, but the middle of the stripe at 25 has 685 of the cloth
 * on one side of it and 661.2 on the other, or 575 and 771.2: 12 repeats and two allowances take
 * 672.7 on both. So there are 11, 1210, symmetric about the middle of the front. All
 * panels have their pattern by the same point, the top's by what is centred there. */
static void
test_on_the_repeat (void)
{
  const char *cloth = "'cloths':[{'id':1,'repeat':{'across':110},'stripes':[{'at':10,'width':30,"
                      "'colour':'#203050'}]}],";
  g_autofree char *keys = rectangle (1800, 600, (const char *const[4]){ 0 });
  g_autofree char *cushion = g_strconcat ("'build':'boxed','seams_across':'two',", keys, NULL);
  g_autoptr (SqCover) cover = cover_in (cloth, cushion);

  assert_panel (cover, 0, 0, 295);
  assert_panel (cover, 1, 295, 1505);
  for (guint i = 0; i < 6; i++)
    {
      const SqPiece *panel = sq_cover_piece (cover, i);
      g_assert_true (panel->phase.across);
      g_assert_cmpint (panel->turns, ==, SQ_TURNS_NONE);
      assert_mm (panel->phase.anchor.x, i < 3 ? 900 : -900);
      assert_mm (panel->phase.across_mm, 25);
    }
}

/* The plate of a folded cover keeps its four notches and skirts, each on its panel. */
static void
test_plate (void)
{
  g_autoptr (SqCover) whole = cover_of_rectangle (1700, 600, "'build':'folded-corner'");
  g_autoptr (SqCover) cover = cover_of_rectangle (1700, 600, "'build':'folded-corner'" TWO);
  guint notches = 0, skirts = 0;

  g_assert_cmpuint (count_pieces (cover, SQ_ROLE_FACE), ==, 3);
  assert_covers (cover, whole, SQ_ROLE_FACE);
  for (guint i = 0; i < 3; i++)
    {
      notches += sq_cover_piece (cover, i)->corner_notches->len;
      skirts += sq_cover_piece (cover, i)->skirts->len;
    }
  g_assert_cmpuint (notches, ==, 4);
  /* front and back on all three, left and right on theirs */
  g_assert_cmpuint (skirts, ==, 8);
  assert_mm (seams_mm (cover, SQ_SEAM_CORNER), seams_mm (whole, SQ_SEAM_CORNER));
  g_assert_cmpuint (count_marks (cover, SQ_MARK_NOTCH, TRUE), ==,
                    count_marks (whole, SQ_MARK_NOTCH, TRUE));
}

/* Across 600 × 400 the zip lies a third from the back: parts 133.333 and 266.667 deep, each with
 * half of the cut zip's allowances. */
static void
test_zip_of_two_parts (void)
{
  const char *const builds[] = { "boxed", "folded-corner" };

  for (guint i = 0; i < G_N_ELEMENTS (builds); i++)
    {
      g_autofree char *slit = g_strdup_printf ("'build':'%s','zip':{'place':'underside'}",
                                               builds[i]);
      g_autofree char *two = g_strdup_printf (
          "'build':'%s','zip':{'place':'underside','method':'two-part'}", builds[i]);
      g_autoptr (SqCover) whole = cover_of_rectangle (600, 400, slit);
      g_autoptr (SqCover) cover = cover_of_rectangle (600, 400, two);
      double heights[2];
      guint n = 0;

      g_assert_cmpint (whole->zip.method, ==, SQ_ZIP_SLIT_IN);
      g_assert_cmpint (cover->zip.method, ==, SQ_ZIP_TWO_PART);
      assert_mm (cover->zip.run_mm, whole->zip.run_mm);
      for (guint p = 0; p < cover->pieces->len; p++)
        {
          SqBox box = sq_path_box (sq_piece_sew (sq_cover_piece (cover, p), 0));
          if (sq_cover_piece (cover, p)->role == SQ_ROLE_UNDERSIDE)
            heights[n++] = box.max.y - box.min.y;
        }
      g_assert_cmpuint (n, ==, 2);
      assert_mm (fmin (heights[0], heights[1]), 400.0 / 3);
      assert_mm (fmax (heights[0], heights[1]), 800.0 / 3);
      assert_mm (seams_mm (cover, SQ_SEAM_ZIP), 600);
      assert_mm (seams_mm (cover, SQ_SEAM_PERIMETER), seams_mm (whole, SQ_SEAM_PERIMETER));
      assert_covers (cover, whole, SQ_ROLE_UNDERSIDE);
      /* both parts have the line of the teeth */
      g_assert_cmpuint (count_marks (cover, SQ_MARK_ZIP, FALSE), ==, 2);
    }
}

/* A zip slit into the boxing: one strip as high as the cushion, its line in the middle. */
static void
test_slit_in_boxing (void)
{
  g_autoptr (SqCover) cover = cover_of_rectangle (600, 400, "'zip':{'method':'slit-in'}");
  const SqPiece *strip = piece_of (cover, SQ_ROLE_ZIP_STRIP);
  SqBox box = sq_path_box (sq_piece_sew (strip, 0));

  g_assert_cmpint (cover->zip.place, ==, SQ_ZIP_BOXING);
  g_assert_cmpuint (count_pieces (cover, SQ_ROLE_ZIP_STRIP), ==, 1);
  assert_mm (box.max.y - box.min.y, 76.2);
  assert_mm (box.max.x - box.min.x, 600);
  assert_mm (seams_mm (cover, SQ_SEAM_ZIP), 0);
  for (guint i = 0; i < strip->marks->len; i++)
    if (g_array_index (strip->marks, SqMark, i).kind == SQ_MARK_ZIP)
      assert_mm (g_array_index (strip->marks, SqMark, i).at.y, 38.1);
  g_assert_cmpuint (count_marks (cover, SQ_MARK_ZIP, FALSE), ==, 1);
}

int
main (int argc, char **argv)
{
  g_test_init (&argc, &argv, NULL);
  g_test_add_func ("/panels/plain", test_plain);
  g_test_add_func ("/panels/hardly-wider", test_hardly_wider);
  g_test_add_func ("/panels/on-the-repeat", test_on_the_repeat);
  g_test_add_func ("/panels/plate", test_plate);
  g_test_add_func ("/panels/zip-of-two-parts", test_zip_of_two_parts);
  g_test_add_func ("/panels/slit-in-boxing", test_slit_in_boxing);
  return g_test_run ();
}
