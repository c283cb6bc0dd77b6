/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "base/units.h"
#include "cover/hand-made.h"

#define IN SQ_MM_PER_INCH

/* 24 × 20 × 4 in with 1/2 in of allowance: panels 25 × 21, boxing 5 wide, 88 round in all, zip
 * strips (4/2) + 1/2 + 1/2 = 3 wide: geometry that any source must agree with. */
static void
test_rectangle (void)
{
  g_autoptr (SqCover) cover = cover_of_rectangle (24 * IN, 20 * IN, "'thickness':101.6");
  const SqPiece *top = piece_of (cover, SQ_ROLE_FACE), *under = piece_of (cover, SQ_ROLE_UNDERSIDE);
  double round_mm = 0;

  /* top, underside, one plain strip from one end of the zip to the other, two halves with it */
  g_assert_cmpuint (cover->pieces->len, ==, 5);
  assert_mm (top->width_mm, 25 * IN);
  assert_mm (top->height_mm, 21 * IN);
  assert_mm (top->area_mm2, 25 * 21 * IN * IN);
  assert_mm (under->area_mm2, 25 * 21 * IN * IN);
  for (guint i = 2; i < cover->pieces->len; i++)
    {
      const SqPiece *strip = sq_cover_piece (cover, i);
      SqBox box = sq_path_box (sq_piece_cut (strip, 0));
      assert_mm (box.max.y - box.min.y, strip->role == SQ_ROLE_BOXING ? 5 * IN : 3 * IN);
    }
  for (guint i = 0; i < cover->seams->len; i++)
    {
      const SqSeam *seam = sq_cover_seam (cover, i);
      round_mm += seam->kind == SQ_SEAM_PERIMETER && seam->a.piece == 0 ? seam->length_a_mm : 0;
    }
  assert_mm (round_mm, 88 * IN);
}

/* The zip fills the back edge, 24 in. Its strips are that and two joins long; the plain one is the
 * other 64 in, two tucks of 1 in at each end, and two joins. */
static void
test_tucks (void)
{
  g_autoptr (SqCover) cover = cover_of_rectangle (24 * IN, 20 * IN, "'thickness':101.6");
  const SqPiece *plain = piece_of (cover, SQ_ROLE_BOXING),
                *half = piece_of (cover, SQ_ROLE_ZIP_STRIP);
  SqBox box = sq_path_box (sq_piece_cut (half, 0));
  guint n_folds = 0, n_lines = 0;

  assert_mm (box.max.x - box.min.x, 25 * IN);
  box = sq_path_box (sq_piece_cut (plain, 0));
  assert_mm (box.max.x - box.min.x, (64 + 4 + 1) * IN);
  for (guint i = 0; i < plain->runs->len; i++)
    {
      const SqRun *run = sq_piece_run (plain, i);
      n_folds += run->role == SQ_RUN_FOLD;
      if (run->role == SQ_RUN_FOLD)
        {
          assert_mm (run->length_mm, 1 * IN);
          g_assert_cmpint (sq_cover_seam_of_run (cover, 2, i), ==, -1);
        }
    }
  /* over the zip and back, at both ends, above and below */
  g_assert_cmpuint (n_folds, ==, 8);
  for (guint i = 0; i < plain->marks->len; i++)
    n_lines += g_array_index (plain->marks, SqMark, i).kind == SQ_MARK_FOLD;
  g_assert_cmpuint (n_lines, ==, 2);
}

/* The underside is the top's mirror image, x → −x, and so is every length along it. */
static void
test_underside (void)
{
  g_autoptr (SqCover) cover = cover_of (
      "'outline':[{'id':1,'x':0,'y':0},{'id':2,'x':600,'y':0,'bow':40},"
      "{'id':3,'x':560,'y':420,'radius':50},{'id':4,'x':30,'y':450}]");
  const SqPath *top = sq_piece_cut (piece_of (cover, SQ_ROLE_FACE), 0),
               *under = sq_piece_cut (piece_of (cover, SQ_ROLE_UNDERSIDE), 0);

  assert_mm (sq_path_area_mm2 (top), sq_path_area_mm2 (under));
  g_assert_cmpuint (sq_path_n_nodes (top), ==, sq_path_n_nodes (under));
  for (guint i = 0; i < sq_path_n_nodes (top); i++)
    assert_node (under, -sq_path_nodes (top)[i].at.x, sq_path_nodes (top)[i].at.y);
}

/* A drum of 18 in: circles cut at 19, a strip of 56.548668 in (π d). */
static void
test_drum (void)
{
  g_autoptr (SqCover) cover = cover_of (
      "'outline':[{'id':1,'x':0,'y':0,'bow':228.6},{'id':2,'x':457.2,'y':0,"
      "'bow':228.6}],'thickness':101.6,'zip':{'place':'underside'}");
  const SqPiece *top = piece_of (cover, SQ_ROLE_FACE);

  assert_mm (top->area_mm2, G_PI * 9.5 * 9.5 * IN * IN);
  assert_mm (top->width_mm, 19 * IN);
  assert_mm (seams_mm (cover, SQ_SEAM_PERIMETER), 2 * 56.548667765 * IN);
}

/* A rounding of 3 in by 90° is sewn at 4.712389 in and cut at 5.497787, 1/2 in outside: the strip's
 * edge, which has no more than is sewn, must open by the 0.785398 between. */
static void
test_rounded_corner (void)
{
  g_autoptr (SqCover) cover = cover_of (
      "'outline':[{'id':1,'x':0,'y':0},{'id':2,'x':609.6,'y':0},"
      "{'id':3,'x':609.6,'y':508,'radius':76.2},{'id':4,'x':0,'y':508}],"
      "'zip':{'place':'underside'}");
  const SqPiece *top = piece_of (cover, SQ_ROLE_FACE);
  double sewn = 0, cut = 0;

  for (guint i = 0; i < sq_path_n_segments (sq_piece_sew (top, 0)); i++)
    {
      SqSegment s = sq_path_segment (sq_piece_sew (top, 0), i);
      sewn += sq_segment_is_arc (&s) ? sq_segment_length_mm (&s) : 0;
    }
  for (guint i = 0; i < sq_path_n_segments (sq_piece_cut (top, 0)); i++)
    {
      SqSegment s = sq_path_segment (sq_piece_cut (top, 0), i);
      cut += sq_segment_is_arc (&s) ? sq_segment_length_mm (&s) : 0;
    }
  assert_mm (sewn, 4.71238898 * IN);
  assert_mm (cut, 5.49778714 * IN);
  /* run 0 on a rounding: it belongs to no edge, but to both */
  guint n_roundings = 0;
  for (guint i = 0; i < top->runs->len; i++)
    n_roundings += sq_piece_run (top, i)->edge == 0;
  g_assert_cmpuint (n_roundings, >=, 1);
}

/* An L: its face is clipped at the inner corner, and the cut lines there meet 1/2 in outside. */
static void
test_reflex (void)
{
  g_autoptr (SqCover) cover = cover_of (
      "'outline':[{'id':1,'x':0,'y':0},{'id':2,'x':1000,'y':0},"
      "{'id':3,'x':1000,'y':400},{'id':4,'x':400,'y':400},{'id':5,'x':400,'y':900},"
      "{'id':6,'x':0,'y':900}]");
  const SqProblem *note = find_problem (cover, SQ_PROBLEM_REFLEX_CLIP);

  g_assert_nonnull (note);
  g_assert_cmpint (note->severity, ==, SQ_NOTE);
  g_assert_cmpuint (note->place.item, ==, 4);
  assert_node (sq_piece_cut (piece_of (cover, SQ_ROLE_FACE), 0), 412.7, 412.7);
}

/* A hole of 100 × 80 mm gets a boxing of its own, 360 mm round, without a zip; its allowance lies
 * inside the hole, where there is cloth. */
static void
test_hole (void)
{
  g_autoptr (SqCover) cover = cover_of (
      "'outline':[{'id':1,'x':0,'y':0},{'id':2,'x':600,'y':0},{'id':3,'x':600,'y':500},"
      "{'id':4,'x':0,'y':500}],'holes':[[{'id':5,'x':250,'y':210},"
      "{'id':6,'x':250,'y':290},{'id':7,'x':350,'y':290},{'id':8,'x':350,'y':210}]]");
  const SqPiece *top = piece_of (cover, SQ_ROLE_FACE);
  guint n_inner = 0;

  g_assert_cmpuint (top->sew->len, ==, 2);
  assert_mm (sq_path_area_mm2 (sq_piece_sew (top, 1)), -100 * 80);
  assert_mm (sq_path_area_mm2 (sq_piece_cut (top, 1)), -(100 - 25.4) * (80 - 25.4));
  for (guint i = 0; i < cover->pieces->len; i++)
    {
      const SqPiece *piece = sq_cover_piece (cover, i);
      if (piece->hole != 1)
        continue;
      n_inner++;
      g_assert_cmpint (piece->role, ==, SQ_ROLE_BOXING);
      SqBox box = sq_path_box (sq_piece_cut (piece, 0));
      assert_mm (box.max.x - box.min.x, 360 + 25.4);
    }
  g_assert_cmpuint (n_inner, ==, 1);
}

int
main (int argc, char **argv)
{
  g_test_init (&argc, &argv, NULL);
  g_test_add_func ("/cover/boxed/rectangle", test_rectangle);
  g_test_add_func ("/cover/boxed/tucks", test_tucks);
  g_test_add_func ("/cover/boxed/underside", test_underside);
  g_test_add_func ("/cover/boxed/drum", test_drum);
  g_test_add_func ("/cover/boxed/rounded-corner", test_rounded_corner);
  g_test_add_func ("/cover/boxed/reflex", test_reflex);
  g_test_add_func ("/cover/boxed/hole", test_hole);
  return g_test_run ();
}
