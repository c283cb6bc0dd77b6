/* SPDX-License-Identifier: GPL-3.0-or-later */
/* Skirts and boxing in one cover. */
#include "base/units.h"
#include "cover/hand-made.h"

#define FOLDED "'build':'folded-corner',"
#define L_SHAPE(first, third)                                                                      \
  "'outline':[{'id':1,'x':0,'y':0" first "},{'id':2,'x':900,'y':0},{'id':3,'x':900,'y':400" third  \
  "},{'id':4,'x':400,'y':400},{'id':5,'x':400,'y':800},{'id':6,'x':0,'y':800}]"

static guint
count_of (const SqCover *cover, SqPieceRole role)
{
  guint n = 0;

  for (guint i = 0; i < cover->pieces->len; i++)
    n += sq_cover_piece (cover, i)->role == role ? 1 : 0;
  return n;
}

static double
run_mm (const SqPiece *piece, SqRunRole role, SqId edge)
{
  double sum = 0;

  for (guint i = 0; i < piece->runs->len; i++)
    if (sq_piece_run (piece, i)->role == role && sq_piece_run (piece, i)->edge == edge)
      sum += sq_piece_run (piece, i)->length_mm;
  return sum;
}

/* H 63.5 with a plain wrap of 9.525: D = 73.025. At the L's inward corner, 90° of it are cut out
 * (psi), so that both skirts stop (D + a_p) cot 45° + a_j = 82.55 + 12.7 from it, and 3.175 more that
 * are left between their cut corners: 98.425. One strip of twice that, D high, goes in. */
static void
test_let_in (void)
{
  g_autoptr (SqCover) cover = cover_of (
      FOLDED "'thickness':63.5,'zip':{'place':'none'}," L_SHAPE (",'build':'folded'", ""));
  const SqPiece *plate = piece_of (cover, SQ_ROLE_FACE);
  const SqPiece *let_in = piece_of (cover, SQ_ROLE_LET_IN);
  SqBox sew = sq_path_box (sq_piece_sew (let_in, 0));

  g_assert_cmpuint (cover->pieces->len, ==, 3);
  assert_mm (sew.max.x - sew.min.x, 2 * 98.425);
  assert_mm (sew.max.y - sew.min.y, 73.025);
  g_assert_cmpuint (plate->corner_notches->len, ==, 5);
  g_assert_cmpuint (plate->skirts->len, ==, 6);
  /* the skirts' four ends at the let-in are two joins, the other ten ends five corners */
  assert_mm (seams_mm (cover, SQ_SEAM_JOIN), 2 * 73.025);
  assert_mm (seams_mm (cover, SQ_SEAM_CORNER), 5 * 73.025);
  /* the skirt of edge 3, from (900, 400) to the inward corner, is that much shorter */
  assert_node (sq_piece_sew (plate, 0), 400 + 98.425, 400 + 73.025);
  assert_node (sq_piece_sew (plate, 0), 400 + 98.425, 400);
  assert_node (sq_piece_sew (plate, 0), 400, 400);
  /* once round: skirts to the underside, let-in to the underside and to the face */
  assert_mm (seams_mm (cover, SQ_SEAM_PERIMETER), 3400 + 2 * 98.425);
}

/* Beside a boxed side a skirt at an inward corner keeps only its own allowance and the wall's away:
 * a_j + a_p + 3.175 at 90°. */
static void
test_beside_boxing (void)
{
  g_autoptr (SqCover) cover = cover_of (
      FOLDED "'thickness':63.5,'zip':{'place':'none'}," L_SHAPE ("", ",'build':'boxed'"));
  const SqPiece *plate = piece_of (cover, SQ_ROLE_FACE);
  double give = 12.7 + 9.525 + 3.175;

  assert_mm (run_mm (plate, SQ_RUN_PERIMETER, 4), 400);
  assert_node (sq_piece_sew (plate, 0), 400 + 73.025, 400 + give);
  g_assert_cmpuint (count_of (cover, SQ_ROLE_BOXING), ==, 1);
  SqBox sew = sq_path_box (sq_piece_sew (piece_of (cover, SQ_ROLE_BOXING), 0));
  assert_mm (sew.max.x - sew.min.x, 500 + give);
}

/* A front that bows 3 in over a chord of 24 in is 24.987824 in long (R = c²/8s + s/2 = 25.5 in, the
 * angle 4 atan (2s/c)): so long is the boxing let in there, D high; the other three sides are skirts. */
static void
test_bow (void)
{
  g_autoptr (SqCover) cover = cover_of (
      FOLDED "'thickness':76.2,'outline':[{'id':1,'x':0,'y':0,'bow':76.2,'build':'boxed'},"
             "{'id':2,'x':609.6,'y':0},{'id':3,'x':609.6,'y':500},{'id':4,'x':0,'y':500}]");
  SqBox sew = sq_path_box (sq_piece_sew (piece_of (cover, SQ_ROLE_BOXING), 0));

  g_assert_cmpfloat_with_epsilon ((sew.max.x - sew.min.x) / SQ_MM_PER_INCH, 24.987824, 1e-6);
  assert_mm (sew.max.y - sew.min.y, 76.2 + 9.525);
  g_assert_cmpuint (piece_of (cover, SQ_ROLE_FACE)->skirts->len, ==, 3);
  g_assert_cmpuint (count_of (cover, SQ_ROLE_LET_IN), ==, 0);
}

/* A rounded corner between skirts is let in, as long as its arc. */
static void
test_rounding (void)
{
  g_autoptr (SqCover) cover = cover_of (
      FOLDED "'thickness':76.2,'outline':[{'id':1,'x':0,'y':0,'radius':60,'build':'folded'},"
             "{'id':2,'x':609.6,'y':0},{'id':3,'x':609.6,'y':500},{'id':4,'x':0,'y':500}]");
  SqBox sew = sq_path_box (sq_piece_sew (piece_of (cover, SQ_ROLE_LET_IN), 0));

  assert_mm (sew.max.x - sew.min.x, 60 * G_PI / 2);
}

/* In a U as wide as two skirts with their allowances, 2 (D + a_p) = 165.1 mm, they just find room
 * beside each other; in a narrower one they don't. */
static void
test_facing_skirts (void)
{
  for (guint i = 0; i < 2; i++)
    {
      double x = 400 + (i == 0 ? 165.2 : 165.0);
      g_autofree char *cushion = g_strdup_printf (
          FOLDED "'thickness':63.5,'outline':[{'id':1,'x':0,'y':0},{'id':2,'x':%g,'y':0},"
                 "{'id':3,'x':%g,'y':700},{'id':4,'x':%g,'y':700},"
                 "{'id':5,'x':%g,'y':200,'build':'boxed'},{'id':6,'x':400,'y':200},"
                 "{'id':7,'x':400,'y':700},{'id':8,'x':0,'y':700}]",
          x + 400, x + 400, x, x);
      g_autoptr (SqCover) cover = cover_of (cushion);
      g_assert_true ((find_problem (cover, SQ_PROBLEM_SKIRTS_MEET) != NULL) == (i == 1));
    }
}

/* A boxed cushion with some sides folded is the same cover as a folded one with the others boxed, but
 * for the allowances of its way. */
static void
test_either_way (void)
{
  g_autoptr (SqCover) folded = cover_of (
      FOLDED "'allowances':{'perimeter':10}," L_SHAPE (",'build':'boxed'", ""));
  g_autoptr (SqCover) boxed = cover_of (
      "'build':'boxed','allowances':{'perimeter':10},"
      "'outline':[{'id':1,'x':0,'y':0},{'id':2,'x':900,'y':0,'build':'folded'},"
      "{'id':3,'x':900,'y':400,'build':'folded'},{'id':4,'x':400,'y':400,'build':'folded'},"
      "{'id':5,'x':400,'y':800,'build':'folded'},{'id':6,'x':0,'y':800,'build':'folded'}]");

  g_assert_cmpuint (folded->pieces->len, ==, boxed->pieces->len);
  for (guint i = 0; i < folded->pieces->len; i++)
    g_assert_cmpuint (sq_cover_piece (folded, i)->digest, ==, sq_cover_piece (boxed, i)->digest);
}

/* With sides of both builds there is no boxing all round for a zip; what is offered helps. */
static void
test_zip_place (void)
{
  g_autoptr (SqJob) job = job_of (
      "'zip':{'place':'boxing'},'outline':[{'id':1,'x':0,'y':0,'build':'folded'},"
      "{'id':2,'x':600,'y':0},{'id':3,'x':600,'y':400},{'id':4,'x':0,'y':400}]",
      NULL);
  const SqCushion *cushion = g_ptr_array_index (job->cushions, 0);
  g_autoptr (SqCover) cover = sq_cover_new (job, cushion, FALSE, NULL);
  const SqProblem *p = find_problem (cover, SQ_PROBLEM_ZIP_NO_PLACE);

  g_assert_nonnull (p);
  g_assert_cmpint (cover->zip.place, ==, SQ_ZIP_UNDERSIDE);
  for (guint i = 0; i < SQ_N_FIXES && p->fixes[i].kind != SQ_FIX_NONE; i++)
    {
      g_autoptr (SqCushion) fixed = sq_fix_apply (&p->fixes[i], cushion);
      g_autoptr (SqCover) after = sq_cover_new (job, fixed, FALSE, NULL);
      g_assert_null (find_problem (after, SQ_PROBLEM_ZIP_NO_PLACE));
    }
}

int
main (int argc, char **argv)
{
  g_test_init (&argc, &argv, NULL);
  g_test_add_func ("/cover/mixed/let-in", test_let_in);
  g_test_add_func ("/cover/mixed/beside-boxing", test_beside_boxing);
  g_test_add_func ("/cover/mixed/bow", test_bow);
  g_test_add_func ("/cover/mixed/rounding", test_rounding);
  g_test_add_func ("/cover/mixed/facing-skirts", test_facing_skirts);
  g_test_add_func ("/cover/mixed/either-way", test_either_way);
  g_test_add_func ("/cover/mixed/zip-place", test_zip_place);
  return g_test_run ();
}
