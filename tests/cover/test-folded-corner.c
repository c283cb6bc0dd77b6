/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "base/units.h"
#include "cover/hand-made.h"
#include "geometry/crossing.h"

/* ---- the worked plate ---------------------------------------------------------------------- */

/* A 25 × 25 in plate with 2 3/4 in notches, corner allowance 1/2, perimeter 3/8: a top of 18 1/2
 * between corner seams, skirts of 2 7/8, an underside sewn at 18 1/2 (common practice, no source).
 * By hand: D = 63.5 + 9.525 = 73.025; plate 469.9 + 2 (D + 9.525) = 635; notch D + 9.525 − 12.7 =
 * 69.85; underside cut 469.9 + 2 × 9.525 = 488.95. */
#define WORKED_PLATE "'thickness':63.5,'build':'folded-corner'"

static void
test_worked_plate (void)
{
  g_autoptr (SqCover) cover = cover_of_rectangle (469.9, 469.9, WORKED_PLATE);
  const SqPiece *plate = piece_of (cover, SQ_ROLE_FACE),
                *under = piece_of (cover, SQ_ROLE_UNDERSIDE);

  g_assert_cmpuint (cover->pieces->len, ==, 2);
  assert_mm (plate->width_mm, 635);
  assert_mm (plate->height_mm, 635);
  assert_mm (plate->area_mm2, 635.0 * 635 - 4 * 69.85 * 69.85);
  g_assert_cmpuint (plate->corner_notches->len, ==, 4);
  for (guint i = 0; i < 4; i++)
    {
      const SqCornerNotch *notch = &g_array_index (plate->corner_notches, SqCornerNotch, i);
      g_assert_false (notch->dart);
      g_assert_cmpuint (notch->corner, ==, i + 1);
      assert_mm (notch->leg_mm, 69.85);
      assert_mm (notch->mouth_mm, 69.85 * G_SQRT2);
      assert_mm (notch->apex_mm, 12.7 * G_SQRT2);
      assert_mm (g_array_index (plate->skirts, SqSkirt, i).depth_mm, 73.025);
    }
  assert_mm (under->width_mm, 488.95);
  assert_mm (under->height_mm, 488.95);
  SqBox sewn = sq_path_box (sq_piece_sew (under, 0));
  assert_mm (sewn.max.x - sewn.min.x, 469.9);
  assert_mm (sewn.max.y - sewn.min.y, 469.9);
}

/* The cut line is a cross of twelve corners: the skirts' ends, and the notches' inner points
 * 12.7 mm into the gap from both neighbours' lines. */
static void
test_worked_plate_cut_line (void)
{
  g_autoptr (SqCover) cover = cover_of_rectangle (469.9, 469.9, WORKED_PLATE);
  const SqPath *cut = sq_piece_cut (piece_of (cover, SQ_ROLE_FACE), 0);
  const double low = -12.7, high = 469.9 + 12.7, out = 73.025 + 9.525;

  g_assert_cmpuint (sq_path_n_nodes (cut), ==, 12);
  assert_node (cut, low, low);
  assert_node (cut, low, -out);
  assert_node (cut, high, -out);
  assert_node (cut, high, low);
  assert_node (cut, 469.9 + out, low);
  assert_node (cut, 469.9 + out, high);
  assert_node (cut, high, high);
  assert_node (cut, high, 469.9 + out);
  assert_node (cut, low, 469.9 + out);
  assert_node (cut, low, high);
  assert_node (cut, -out, high);
  assert_node (cut, -out, low);
}

static void
test_worked_plate_seams (void)
{
  g_autoptr (SqCover) cover = cover_of_rectangle (469.9, 469.9, WORKED_PLATE);

  /* four corner seams D long, and once round the underside */
  g_assert_cmpuint (cover->seams->len, ==, 8);
  assert_mm (seams_mm (cover, SQ_SEAM_CORNER), 4 * 73.025);
  assert_mm (seams_mm (cover, SQ_SEAM_PERIMETER), 4 * 469.9);
  /* a zip across the underside from sew line to sew line, 1 in past both ends */
  g_assert_cmpint (cover->zip.place, ==, SQ_ZIP_UNDERSIDE);
  assert_mm (cover->zip.run_mm, 469.9);
  assert_mm (cover->zip.length_mm, 469.9 + 50.8);
}

/* ---- notches of any angle ------------------------------------------------------------------ */

/* A rhombus of 1 m sides with @angle_deg at corner 1, the origin. */
static SqCover *
cover_of_rhombus (double angle_deg, const char *keys)
{
  double x = 1000 * cos (angle_deg * SQ_RAD_PER_DEG), y = 1000 * sin (angle_deg * SQ_RAD_PER_DEG);
  g_autofree char *cushion = g_strdup_printf (
      "'build':'folded-corner',%s,'outline':[{'id':1,'x':0,'y':0},{'id':2,'x':1000,'y':0},"
      "{'id':3,'x':%.17g,'y':%.17g},{'id':4,'x':%.17g,'y':%.17g}]",
      keys, 1000 + x, y, x, y);
  return cover_of (cushion);
}

/* The point @apex_mm from corner 1 into the gap. */
static SqPoint
into_gap (double angle_deg, double apex_mm)
{
  double half = angle_deg / 2 * SQ_RAD_PER_DEG;
  return sq_point (-apex_mm * cos (half), -apex_mm * sin (half));
}

/* H 76.2, plain wrap 9.525, a_c 12.7, a_p 9.525: D + a_p = 95.25. From the geometry of the gap,
 * φ = 180° − θ wide: the two cut lines a_c outside the skirts' ends meet at a_c / sin (φ/2) on the
 * bisector; leg D + a_p − a_c tan (θ/2); mouth 2 ((D + a_p) sin (φ/2) − a_c cos (φ/2)). */
static void
test_notches (void)
{
  static const struct
  {
    double angle_deg, apex, leg, mouth;
  } cases[] = {
    { 60, 14.664696837, 87.917651581, 152.277839421 },
    { 90, 17.960512242, 82.55, 116.743329574 },
    { 120, 25.4, 73.252954744, 73.252954744 },
    { 150, 49.069031975, 47.852954744, 24.770512104 },
  };

  for (guint i = 0; i < G_N_ELEMENTS (cases); i++)
    {
      g_autoptr (SqCover) cover = cover_of_rhombus (cases[i].angle_deg, "'thickness':76.2");
      const SqPiece *plate = piece_of (cover, SQ_ROLE_FACE);
      const SqCornerNotch *notch = &g_array_index (plate->corner_notches, SqCornerNotch, 0);
      g_assert_false (notch->dart);
      assert_mm (notch->apex_mm, cases[i].apex);
      assert_mm (notch->leg_mm, cases[i].leg);
      assert_mm (notch->mouth_mm, cases[i].mouth);
      /* … and so it is cut: the inner point, and the two corners of the mouth. */
      SqPoint apex = into_gap (cases[i].angle_deg, cases[i].apex);
      assert_node (sq_piece_cut (plate, 0), apex.x, apex.y);
      assert_node (sq_piece_cut (plate, 0), -12.7, -95.25);
      SqVector along = sq_turned (sq_point (1, 0), cases[i].angle_deg * SQ_RAD_PER_DEG);
      SqPoint other = sq_moved (sq_scale (along, -12.7), sq_left (along), 95.25);
      assert_node (sq_piece_cut (plate, 0), other.x, other.y);
      assert_mm (sq_distance (sq_point (-12.7, -95.25), other), cases[i].mouth);
    }
}

/* At 165° a_c tan (θ/2) = 96.466 is more than D + a_p: nothing is left to cut out. At 164° 4.885 mm
 * of leg would be left, less than 1/4 in. Both are darts: the cut line is the plain mitre with its
 * corner at (D + a_p) / cos (φ/2), and what is left for the two ends is (D + a_p) tan (φ/2). */
static void
test_darts (void)
{
  static const struct
  {
    double angle_deg, left, tip, allowance;
  } cases[] = { { 164, 4.884804526, 96.186076282, 13.386514505 },
                { 165, 0, 96.071908495, 12.539900395 } };

  for (guint i = 0; i < G_N_ELEMENTS (cases); i++)
    {
      g_autoptr (SqCover) cover = cover_of_rhombus (cases[i].angle_deg, "'thickness':76.2");
      const SqPiece *plate = piece_of (cover, SQ_ROLE_FACE);
      const SqCornerNotch *notch = &g_array_index (plate->corner_notches, SqCornerNotch, 0);
      const SqProblem *note = find_problem (cover, SQ_PROBLEM_NOTCH_IS_DART);
      guint n_darts = 0;

      g_assert_true (notch->dart);
      g_assert_cmpfloat (notch->leg_mm, ==, 0);
      assert_mm (notch->apex_mm, cases[i].tip);
      g_assert_nonnull (note);
      g_assert_cmpint (note->severity, ==, SQ_NOTE);
      assert_mm (note->facts[0], 12.7);
      assert_mm (note->facts[1], cases[i].left);
      SqPoint tip = into_gap (cases[i].angle_deg, cases[i].tip);
      assert_node (sq_piece_cut (plate, 0), tip.x, tip.y);
      /* The runs on both sides of it, listed as trims at the tip. */
      assert_mm (sq_piece_run (plate, 0)->allowance_mm, cases[i].allowance);
      assert_mm (sq_piece_run (plate, 11)->allowance_mm, cases[i].allowance);
      for (guint k = 0; k < plate->trims->len; k++)
        {
          const SqTrim *trim = &g_array_index (plate->trims, SqTrim, k);
          if (trim->why != SQ_WHY_DART || (trim->run != 0 && trim->run != 11))
            continue;
          n_darts++;
          g_assert_cmpuint (trim->from, ==, trim->to);
          assert_mm (sq_distance (sq_path_nodes (sq_piece_cut (plate, 0))[trim->from].at, tip), 0);
        }
      g_assert_cmpuint (n_darts, ==, 2);
    }
}

/* ---- mitred wraps -------------------------------------------------------------------------- */

/* H 76.2, w 25.4. Below H each skirt end moves in by w cot (θ/2): corner seam H + w / sin (θ/2), the
 * underside F drawn in by w. */
static void
test_mitred_wrap (void)
{
  static const struct
  {
    double angle_deg, seam, in;
  } cases[] = {
    { 60, 127, 43.994090512 },
    { 90, 112.121024484, 25.4 },
    { 120, 105.529393675, 14.664696837 },
    { 150, 102.496014982, 6.805909488 },
  };

  for (guint i = 0; i < G_N_ELEMENTS (cases); i++)
    {
      g_autoptr (SqCover) cover = cover_of_rhombus (cases[i].angle_deg,
                                                    "'thickness':76.2,"
                                                    "'underside_wrap':{'depth':25.4}");
      const SqPiece *plate = piece_of (cover, SQ_ROLE_FACE);
      double in = cases[i].in, across = 25.4 * 25.4 / in; /* cot of the other corners' halves */

      g_assert_null (find_problem (cover, SQ_PROBLEM_WRAP_SLACK));
      /* Corner 1's seam is the last run of edge 4 and the first of edge 1. */
      assert_mm (sq_piece_run (plate, 0)->length_mm, cases[i].seam);
      assert_mm (sq_piece_run (plate, 11)->length_mm, cases[i].seam);
      assert_mm (sq_piece_run (plate, 1)->length_mm, 1000 - in - across);
      assert_mm (seams_mm (cover, SQ_SEAM_PERIMETER), 4 * (1000 - in - across));
      /* its sides are F's drawn in by w: the distance across falls by 2 w */
      SqBox sewn = sq_path_box (sq_piece_sew (piece_of (cover, SQ_ROLE_UNDERSIDE), 0));
      assert_mm (sewn.max.y - sewn.min.y, 1000 * sin (cases[i].angle_deg * SQ_RAD_PER_DEG) - 50.8);
    }
}

/* The cut line beside a skirt's end bends a_c tan (φ/4) below H. Above the bend both lines meet
 * a_c / tan (φ/2) down; at 150° and 30 mm of allowance that is 111.96, below the bend at 80.15: then
 * it is H/2 + a_c / (2 sin (φ/2)) = 96.0555. */
static void
test_mitred_notch (void)
{
  g_autoptr (SqCover) square = cover_of_rhombus (90, "'thickness':76.2,"
                                                     "'underside_wrap':{'depth':25.4}");
  g_autoptr (SqCover) blunt = cover_of_rhombus (150, "'thickness':76.2,"
                                                     "'underside_wrap':{'depth':25.4},"
                                                     "'allowances':{'corner':30}");
  const SqPiece *plate = piece_of (square, SQ_ROLE_FACE);
  const SqCornerNotch *notch = &g_array_index (plate->corner_notches, SqCornerNotch, 0);

  /* D + a_p − a_c = 111.125 − 12.7 */
  assert_mm (notch->leg_mm, 98.425);
  assert_mm (notch->apex_mm, 12.7 * G_SQRT2);
  assert_node (sq_piece_cut (plate, 0), -12.7, -12.7);

  plate = piece_of (blunt, SQ_ROLE_FACE);
  notch = &g_array_index (plate->corner_notches, SqCornerNotch, 0);
  g_assert_false (notch->dart);
  assert_mm (notch->leg_mm, 15.069450423);
  assert_mm (notch->apex_mm, 99.444022474);
  assert_mm (notch->mouth_mm, 15.601043074);
  SqPoint apex = into_gap (150, notch->apex_mm);
  assert_node (sq_piece_cut (plate, 0), apex.x, apex.y);
}

/* ---- wraps that don't do ------------------------------------------------------------------- */

static void
test_wrap_style (void)
{
  g_autoptr (SqCover) plain = cover_of_rectangle (
      500, 500, "'build':'folded-corner','underside_wrap':{'depth':19}");
  g_autoptr (SqCover) mitred = cover_of_rectangle (
      500, 500, "'build':'folded-corner','underside_wrap':{'depth':19.05}");

  /* mitred from 3/4 in on, where nothing else is said */
  assert_mm (sq_piece_run (piece_of (plain, SQ_ROLE_UNDERSIDE), 0)->length_mm, 500);
  assert_mm (sq_piece_run (piece_of (mitred, SQ_ROLE_UNDERSIDE), 0)->length_mm, 500 - 2 * 19.05);
}

static void
test_slack (void)
{
  g_autoptr (SqCover) half_inch = cover_of_rectangle (
      500, 400, "'build':'folded-corner','underside_wrap':{'depth':12.7}");
  g_autoptr (SqCover) more = cover_of_rectangle (
      500, 400, "'build':'folded-corner','underside_wrap':{'depth':15.875}");

  g_assert_null (find_problem (half_inch, SQ_PROBLEM_WRAP_SLACK));
  /* each underside seam is w (cot 45° + cot 45°) longer than the edge drawn in beneath it */
  const SqProblem *slack = find_problem (more, SQ_PROBLEM_WRAP_SLACK);
  g_assert_nonnull (slack);
  assert_mm (slack->facts[0], 15.875);
  assert_mm (slack->facts[1], 31.75);
}

static void
test_wrap_too_deep (void)
{
  /* impossible from L / (cot 45° + cot 45°) = 100 on: at the back one of the two short edges */
  g_autoptr (SqCover) fits = cover_of_rectangle (
      200, 300, "'build':'folded-corner','underside_wrap':{'depth':99}");
  g_autoptr (SqCover) deep = cover_of_rectangle (
      200, 300, "'build':'folded-corner','underside_wrap':{'depth':100}");
  const SqProblem *p = find_problem (deep, SQ_PROBLEM_WRAP_TOO_DEEP);

  g_assert_null (find_problem (fits, SQ_PROBLEM_WRAP_TOO_DEEP));
  g_assert_cmpuint (fits->pieces->len, ==, 2);
  g_assert_nonnull (p);
  g_assert_cmpuint (deep->pieces->len, ==, 0);
  g_assert_cmpint (p->place.kind, ==, SQ_AT_EDGE);
  g_assert_cmpuint (p->place.item, ==, 3);
  assert_mm (p->facts[0], 100);
  assert_mm (p->facts[1], 100);
}

/* ---- what can't be folded ------------------------------------------------------------------ */

static void
test_refused (void)
{
  static const struct
  {
    const char *outline;
    SqProblemCode code;
    guint item;
  } cases[] = {
    { "'outline':[{'id':1,'x':0,'y':0},{'id':2,'x':500,'y':0,'bow':20},{'id':3,'x':500,'y':400},"
      "{'id':4,'x':0,'y':400}]",
      SQ_PROBLEM_CURVE_IN_FOLDED, 2 },
    { "'outline':[{'id':1,'x':0,'y':0},{'id':2,'x':500,'y':0},{'id':3,'x':500,'y':400,"
      "'radius':30},{'id':4,'x':0,'y':400}]",
      SQ_PROBLEM_CURVE_IN_FOLDED, 3 },
    { "'outline':[{'id':1,'x':0,'y':0},{'id':2,'x':500,'y':0},{'id':3,'x':500,'y':400},"
      "{'id':4,'x':300,'y':400},{'id':5,'x':300,'y':200},{'id':6,'x':0,'y':200}]",
      SQ_PROBLEM_REFLEX_IN_FOLDED, 5 },
    { "'outline':[{'id':1,'x':0,'y':0},{'id':2,'x':500,'y':0},{'id':3,'x':500,'y':400},"
      "{'id':4,'x':0,'y':400}],'holes':[[{'id':5,'x':200,'y':200},{'id':6,'x':200,'y':250},"
      "{'id':7,'x':250,'y':200}]]",
      SQ_PROBLEM_HOLE_IN_FOLDED, 5 },
  };

  for (guint i = 0; i < G_N_ELEMENTS (cases); i++)
    {
      g_autofree char *cushion = g_strconcat ("'build':'folded-corner',", cases[i].outline, NULL);
      g_autoptr (SqCover) cover = cover_of (cushion);
      const SqProblem *p = find_problem (cover, cases[i].code);
      g_assert_nonnull (p);
      g_assert_cmpint (p->severity, ==, SQ_FAULT);
      g_assert_cmpuint (p->place.item, ==, cases[i].item);
      g_assert_cmpuint (cover->pieces->len, ==, 0);
      /* the rest of the plan is still there */
      g_assert_cmpuint (cover->foam->len, ==, 1);
    }
}

/* A corner in the middle of an edge, be it the one the front starts at, has nothing to fold: the
 * skirts beside it are one, and the cover is the one without it. */
static void
test_straight_corner (void)
{
  g_autoptr (SqCover) plain = cover_of_rectangle (600, 400, "'build':'folded-corner'");
  g_autoptr (SqCover) straight = cover_of (
      "'build':'folded-corner','outline':[{'id':1,'x':0,'y':0},{'id':7,'x':450,'y':0,'front':true},"
      "{'id':2,'x':600,'y':0},{'id':5,'x':600,'y':100},{'id':3,'x':600,'y':400},"
      "{'id':4,'x':0,'y':400}]");
  const SqPiece *face = sq_cover_piece (straight, 0);

  g_assert_cmpuint (straight->problems->len, ==, plain->problems->len);
  g_assert_cmpuint (face->corner_notches->len, ==, 4);
  g_assert_cmpuint (face->skirts->len, ==, 4);
  g_assert_cmpuint (straight->seams->len, ==, plain->seams->len);
  g_assert_true (sq_path_is_simple (sq_piece_sew (face, 0), NULL));
  assert_mm (sq_path_area_mm2 (sq_piece_cut (face, 0)),
             sq_path_area_mm2 (sq_piece_cut (sq_cover_piece (plain, 0), 0)));
  /* the longest part gives the skirt its name */
  g_assert_cmpuint (g_array_index (face->skirts, SqSkirt, 0).edge, ==, 5);
  g_assert_cmpuint (g_array_index (face->skirts, SqSkirt, 3).edge, ==, 1);
}

int
main (int argc, char **argv)
{
  g_test_init (&argc, &argv, NULL);
  g_test_add_func ("/cover/folded-corner/worked-plate", test_worked_plate);
  g_test_add_func ("/cover/folded-corner/worked-plate/cut-line", test_worked_plate_cut_line);
  g_test_add_func ("/cover/folded-corner/worked-plate/seams", test_worked_plate_seams);
  g_test_add_func ("/cover/folded-corner/notches", test_notches);
  g_test_add_func ("/cover/folded-corner/darts", test_darts);
  g_test_add_func ("/cover/folded-corner/mitred-wrap", test_mitred_wrap);
  g_test_add_func ("/cover/folded-corner/mitred-notch", test_mitred_notch);
  g_test_add_func ("/cover/folded-corner/wrap-style", test_wrap_style);
  g_test_add_func ("/cover/folded-corner/slack", test_slack);
  g_test_add_func ("/cover/folded-corner/wrap-too-deep", test_wrap_too_deep);
  g_test_add_func ("/cover/folded-corner/refused", test_refused);
  g_test_add_func ("/cover/folded-corner/straight-corner", test_straight_corner);
  return g_test_run ();
}
