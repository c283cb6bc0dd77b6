/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "base/units.h"
#include "cover/hand-made.h"

#define IN SQ_MM_PER_INCH
#define SPLIT "'build':'split-side',"
#define HEXAGON                                                                                    \
  "'outline':[{'id':1,'x':0,'y':0},{'id':2,'x':500,'y':0},{'id':3,'x':750,'y':433.0127018922193}," \
  "{'id':4,'x':500,'y':866.0254037844386},{'id':5,'x':0,'y':866.0254037844386},"                   \
  "{'id':6,'x':-250,'y':433.0127018922193}]"

/* 20 × 20 × 4 in, allowances 1/2 in: each plate D = 2 in deep all round, so cut 20 + 2 (2 + 1/2) = 25 in
 * square, with notches of D + a_p − a_c = 2 in square, and one seam of 80 in between them. */
static void
test_plates (void)
{
  g_autoptr (SqCover) cover = cover_of_rectangle (20 * IN, 20 * IN,
                                                  SPLIT "'thickness':101.6,'zip':{'place':'none'}");
  const SqPieceRole roles[] = { SQ_ROLE_FACE, SQ_ROLE_UNDERSIDE };

  g_assert_cmpuint (cover->pieces->len, ==, 2);
  for (guint i = 0; i < 2; i++)
    {
      const SqPiece *plate = piece_of (cover, roles[i]);
      assert_mm (plate->width_mm, 25 * IN);
      assert_mm (plate->height_mm, 25 * IN);
      assert_mm (plate->area_mm2, (25 * 25 - 4 * 2 * 2) * IN * IN);
      g_assert_cmpuint (plate->corner_notches->len, ==, 4);
      assert_mm (g_array_index (plate->corner_notches, SqCornerNotch, 0).leg_mm, 2 * IN);
      assert_mm (g_array_index (plate->skirts, SqSkirt, 0).depth_mm, 2 * IN);
    }
  assert_mm (seams_mm (cover, SQ_SEAM_PERIMETER), 80 * IN);
  assert_mm (seams_mm (cover, SQ_SEAM_CORNER), 8 * 2 * IN);
}

/* Split 1 in from the top of 4: the plates are 20 + 2 (1 + 1/2) = 23 and 20 + 2 (3 + 1/2) = 27 in. */
static void
test_typed (void)
{
  g_autoptr (SqCover) cover = cover_of_rectangle (
      20 * IN, 20 * IN, SPLIT "'thickness':101.6,'split_side':{'upper':25.4}");

  assert_mm (piece_of (cover, SQ_ROLE_FACE)->width_mm, 23 * IN);
  assert_mm (piece_of (cover, SQ_ROLE_UNDERSIDE)->width_mm, 27 * IN);
}

/* The lower plate is the upper one's mirror image where the side is split evenly. */
static void
test_mirror (void)
{
  g_autoptr (SqCover) cover = cover_of (SPLIT "'zip':{'place':'none'}," HEXAGON);
  g_autoptr (SqPath) image = sq_path_mirrored (
      sq_piece_cut (piece_of (cover, SQ_ROLE_UNDERSIDE), 0));
  const SqPath *upper = sq_piece_cut (piece_of (cover, SQ_ROLE_FACE), 0);

  for (guint i = 0; i < sq_path_n_nodes (image); i++)
    g_assert_cmpfloat (sq_path_nearest (upper, sq_path_nodes (image)[i].at).distance_mm, <, 1e-9);
  g_assert_cmpfloat_with_epsilon (sq_path_area_mm2 (image), sq_path_area_mm2 (upper), 1e-6);
}

/* The zip lies in the middle seam, at the back, 1 in short of both corners. */
static void
test_zip (void)
{
  g_autoptr (SqCover) cover = cover_of_rectangle (600, 400, SPLIT "'thickness':100");

  g_assert_cmpint (cover->zip.place, ==, SQ_ZIP_SIDE_SEAM);
  assert_mm (cover->zip.run_mm, 600 - 50.8);
  assert_mm (seams_mm (cover, SQ_SEAM_ZIP), 600 - 50.8);
  assert_mm (seams_mm (cover, SQ_SEAM_PERIMETER), 2000 - (600 - 50.8));
}

/* Behind a seat that narrows to 440 mm, 600 wide and 100 thick, foam that folds needs 600/2 + 200 mm: the
 * seam goes on round both corners, and so does the zip, by half of what the width is more, but no more
 * than 6 in and a third of the side. */
static void
test_returns (void)
{
  g_autoptr (SqCover) cover = cover_of (
      SPLIT "'thickness':100,'outline':[{'id':1,'x':0,'y':0},{'id':2,'x':600,'y':0},"
            "{'id':3,'x':520,'y':450},{'id':4,'x':80,'y':450}]");

  assert_mm (cover->zip.run_mm, 600);
  assert_mm (cover->zip.from_mm, -80);
  assert_mm (seams_mm (cover, SQ_SEAM_ZIP), 600);
}

/* What folded corners refuse, split sides refuse. */
static void
test_refused (void)
{
  static const struct
  {
    const char *outline;
    SqProblemCode code;
  } cases[] = {
    { "'outline':[{'id':1,'x':0,'y':0,'bow':30},{'id':2,'x':600,'y':0},{'id':3,'x':600,'y':400}]",
      SQ_PROBLEM_CURVE_IN_FOLDED },
    { "'outline':[{'id':1,'x':0,'y':0},{'id':2,'x':600,'y':0},{'id':3,'x':200,'y':100},"
      "{'id':4,'x':0,'y':400}]",
      SQ_PROBLEM_REFLEX_IN_FOLDED },
  };

  for (guint i = 0; i < G_N_ELEMENTS (cases); i++)
    {
      g_autofree char *cushion = g_strconcat (SPLIT, cases[i].outline, NULL);
      g_autoptr (SqCover) cover = cover_of (cushion);
      g_assert_nonnull (find_problem (cover, cases[i].code));
      g_assert_cmpuint (cover->pieces->len, ==, 0);
    }
}

int
main (int argc, char **argv)
{
  g_test_init (&argc, &argv, NULL);
  g_test_add_func ("/cover/split-side/plates", test_plates);
  g_test_add_func ("/cover/split-side/typed", test_typed);
  g_test_add_func ("/cover/split-side/mirror", test_mirror);
  g_test_add_func ("/cover/split-side/zip", test_zip);
  g_test_add_func ("/cover/split-side/returns", test_returns);
  g_test_add_func ("/cover/split-side/refused", test_refused);
  return g_test_run ();
}
