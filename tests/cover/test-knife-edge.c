/* SPDX-License-Identifier: GPL-3.0-or-later */
/* Knife edges, worked out by hand. What is filled softly has the outline for its flat size. */
#include "base/units.h"
#include "cover/hand-made.h"

#define KNIFE "'build':'knife-edge',"

static const SqPath *
face_of (const SqCover *cover)
{
  return sq_piece_sew (piece_of (cover, SQ_ROLE_FACE), 0);
}

/* The angle inside @ring at its node nearest (x, y). */
static double
angle_deg (const SqPath *ring, double x, double y)
{
  guint n = sq_path_n_nodes (ring), at = 0;
  const SqNode *nodes = sq_path_nodes (ring);

  for (guint i = 0; i < n; i++)
    if (sq_distance (nodes[i].at, sq_point (x, y)) < sq_distance (nodes[at].at, sq_point (x, y)))
      at = i;
  SqVector in = sq_sub (nodes[at].at, nodes[(at + n - 1) % n].at);
  SqVector out = sq_sub (nodes[(at + 1) % n].at, nodes[at].at);
  return 180 - sq_angle_rad (in, out) / SQ_RAD_PER_DEG;
}

/* 18 in square: drawn in by 1/2 in from both edges of a corner, from 4 1/2 in away on. Each taper turns
 * by atan (1/2 / (4 1/2 − 1/2)) = 7.125°. An edge is 9 in and two tapers of √(4² + (1/2)²) in. */
static void
test_square (void)
{
  g_autoptr (SqCover) cover = cover_of_rectangle (457.2, 457.2, KNIFE "'thickness':101.6");
  const SqPath *face = face_of (cover);
  double edge = 228.6 + 2 * hypot (101.6, 12.7);

  assert_node (face, 12.7, 12.7);
  assert_node (face, 114.3, 0);
  assert_node (face, 342.9, 0);
  assert_node (face, 444.5, 12.7);
  assert_node (face, 457.2, 114.3);
  assert_node (face, 12.7, 444.5);
  g_assert_cmpfloat_with_epsilon (angle_deg (face, 0, 0), 104.25, 0.001);
  assert_mm (sq_path_length_mm (face), 4 * edge);
  /* The zip leaves an inch at both ends of the back. */
  g_assert_cmpint (cover->zip.place, ==, SQ_ZIP_BACK_SEAM);
  g_assert_cmpuint (cover->zip.edge, ==, 3);
  assert_mm (cover->zip.run_mm, 406.4);
  assert_mm (seams_mm (cover, SQ_SEAM_ZIP), 406.4);
  assert_mm (seams_mm (cover, SQ_SEAM_PERIMETER), 4 * edge - 406.4);
  g_assert_cmpuint (cover->seams->len, ==, 2);
}

/* Drawn and cut, the underside is the top in a mirror. */
static void
test_congruent (void)
{
  g_autoptr (SqCover) cover = cover_of (
      KNIFE "'knife_edge':{'filling':'foam-square'},'thickness':60,'outline':[{'id':1,'x':0,'y':0},"
            "{'id':2,'x':700,'y':30,'bow':20},{'id':3,'x':560,'y':420,'radius':60},"
            "{'id':4,'x':-40,'y':390}]");
  const SqPiece *top = piece_of (cover, SQ_ROLE_FACE), *under = piece_of (cover, SQ_ROLE_UNDERSIDE);
  const SqPath *pairs[][2] = { { sq_piece_sew (top, 0), sq_piece_sew (under, 0) },
                               { sq_piece_cut (top, 0), sq_piece_cut (under, 0) } };

  for (guint k = 0; k < 2; k++)
    {
      g_assert_cmpuint (sq_path_n_nodes (pairs[k][0]), ==, sq_path_n_nodes (pairs[k][1]));
      for (guint i = 0; i < sq_path_n_nodes (pairs[k][0]); i++)
        assert_node (pairs[k][1], -sq_path_nodes (pairs[k][0])[i].at.x,
                     sq_path_nodes (pairs[k][0])[i].at.y);
    }
}

/* A pad 18 in wide and 4 in thick: an arc 18 in long that rises 2 in has a chord of 17.393 in. The
 * insert is 1 1/2 in larger each way. */
static void
test_soft_filling (void)
{
  g_autoptr (SqCover) cover = cover_of_rectangle (457.2, 914.4, KNIFE "'thickness':101.6");
  const SqProblem *p = find_problem (cover, SQ_PROBLEM_STUFFED_SMALLER);

  g_assert_cmpfloat_with_epsilon (cover->stuffed.length_mm / SQ_MM_PER_INCH, 17.393, 0.0005);
  assert_mm (cover->stuffed.thickness_mm, 101.6);
  assert_mm (cover->insert.length_mm, 495.3);
  assert_mm (cover->insert.depth_mm, 952.5);
  assert_mm (cover->insert.thickness_mm, 101.6);
  g_assert_cmpuint (cover->foam->len, ==, 0);
  g_assert_nonnull (p);
  g_assert_cmpint (p->severity, ==, SQ_NOTE);
  assert_mm (p->facts[0], cover->stuffed.length_mm);
  assert_mm (p->facts[1], cover->stuffed.depth_mm);
  /* the chord closes: with a = half the angle, arc 2 a r, rise r (1 − cos a), chord 2 r sin a */
  double chord = cover->stuffed.depth_mm, rise = 50.8,
         r = (chord * chord / 4 + rise * rise) / (2 * rise);
  assert_mm (2 * r * asin (chord / 2 / r), 914.4);
}

/* As thick as an edge is long the pad is round: no more than a half circle bows. */
static void
test_very_thick (void)
{
  g_autoptr (SqCover) cover = cover_of_rectangle (120, 400, KNIFE "'thickness':120");

  g_assert_cmpfloat_with_epsilon (cover->stuffed.length_mm, 240 / G_PI, 1e-6);
  g_assert_cmpfloat_with_epsilon (cover->stuffed.thickness_mm, 240 / G_PI, 1e-6);
}

/* Over a core 100 thick faces grow by (π/4 − 1/2) × 100 round its half-round edges, by 50 down to the
 * middle of its square ones. */
static void
test_foam_core (void)
{
  static const char *const fillings[] = { "foam-half-round", "foam-square" };
  static const double growth[] = { 28.539816339745, 50 };

  for (guint i = 0; i < 2; i++)
    {
      g_autofree char *keys = g_strdup_printf (
          KNIFE "'thickness':100,'knife_edge':{'filling':'%s','draw_in':0}", fillings[i]);
      g_autoptr (SqCover) cover = cover_of_rectangle (600, 400, keys);
      SqBox box = sq_path_box (face_of (cover));
      assert_mm (box.min.x, -growth[i]);
      assert_mm (box.max.x, 600 + growth[i]);
      assert_mm (box.max.y - box.min.y, 400 + 2 * growth[i]);
      g_assert_cmpuint (sq_path_n_nodes (face_of (cover)), ==, 4 + 2 /* the zip's ends */);
      g_assert_cmpuint (cover->foam->len, ==, 1);
      assert_mm (cover->insert.length_mm, 0);
      g_assert_null (find_problem (cover, SQ_PROBLEM_STUFFED_SMALLER));
      /* The zip is in the middle of the back of the face as it is in that of the core. */
      assert_node (face_of (cover), 25.4, 400 + growth[i]);
      assert_node (face_of (cover), 574.6, 400 + growth[i]);
    }
}

/* Tapers are 6 in long at most. */
static void
test_long_edges (void)
{
  g_autoptr (SqCover) cover = cover_of_rectangle (2000, 400, KNIFE "'thickness':100");

  assert_node (face_of (cover), 152.4, 0);
  assert_node (face_of (cover), 1847.6, 0);
  assert_node (face_of (cover), 2000, 100);
}

/* A ring of @n equal edges whose corners are 300 mm from (0, 0). */
static SqCover *
cover_of_regular (guint n)
{
  g_autoptr (GString) text = g_string_new (KNIFE "'outline':[");

  for (guint i = 0; i < n; i++)
    g_string_append_printf (text, "%s{'id':%u,'x':%.12f,'y':%.12f}", i > 0 ? "," : "", i + 1,
                            300 * cos (2 * G_PI * i / n), 300 * sin (2 * G_PI * i / n));
  g_string_append (text, "]");
  return cover_of (text->str);
}

/* 120° inside: drawn in by 60/90 of 12.7 from each edge, 8.4667 / sin 60° along the bisector. Corners
 * of more than 150° stay. */
static void
test_obtuse (void)
{
  g_autoptr (SqCover) six = cover_of_regular (6);
  g_autoptr (SqCover) sixteen = cover_of_regular (16);

  assert_node (face_of (six), 300 - 12.7 * 60 / 90 / sin (G_PI / 3), 0);
  assert_node (face_of (sixteen), 300, 0);
  g_assert_null (find_problem (six, SQ_PROBLEM_DRAW_IN_MEETS));
}

/* Curves, roundings and corners that turn inward are let alone. */
static void
test_let_alone (void)
{
  g_autoptr (SqCover) cover = cover_of (
      KNIFE "'outline':[{'id':1,'x':0,'y':0,'bow':40},{'id':2,'x':600,'y':0},"
            "{'id':3,'x':600,'y':400,'radius':50},{'id':4,'x':0,'y':400}]");
  g_autoptr (SqCover) inward = cover_of (
      KNIFE "'outline':[{'id':1,'x':0,'y':0},{'id':2,'x':800,'y':0},{'id':3,'x':800,'y':400},"
            "{'id':4,'x':400,'y':400},{'id':5,'x':400,'y':800},{'id':6,'x':0,'y':800}]");

  assert_node (face_of (cover), 0, 0);
  assert_node (face_of (cover), 600, 0);
  assert_node (face_of (cover), 12.7, 387.3);
  assert_node (face_of (inward), 400, 400);
  assert_node (face_of (inward), 387.3, 787.3);
  g_assert_nonnull (find_problem (inward, SQ_PROBLEM_REFLEX_CLIP));
}

/* At 90° a draw-in reaches as far along an edge as it goes in; the short edges' tapers are 10 mm. */
static void
test_draw_in_meets (void)
{
  g_autoptr (SqCover) cover = cover_of_rectangle (40, 400, KNIFE "'thickness':20");
  const SqProblem *p = find_problem (cover, SQ_PROBLEM_DRAW_IN_MEETS);

  g_assert_nonnull (p);
  g_assert_cmpint (p->severity, ==, SQ_FAULT);
  assert_mm (p->facts[0], 12.7);
  assert_mm (p->facts[1], 10);
  g_assert_cmpint (p->fixes[0].kind, ==, SQ_FIX_DRAW_IN);
  assert_mm (p->fixes[0].value, 9.9);
  /* they stay as they are */
  assert_node (face_of (cover), 0, 0);
}

/* Growing by 50 closes a notch that is 60 wide. */
static void
test_can_not_be_made (void)
{
  g_autoptr (SqCover) notched = cover_of (
      KNIFE "'thickness':100,'knife_edge':{'filling':'foam-square'},'outline':[{'id':1,'x':0,"
            "'y':0},{'id':2,'x':600,'y':0},{'id':3,'x':600,'y':400},{'id':4,'x':330,'y':400},"
            "{'id':5,'x':330,'y':200},{'id':6,'x':270,'y':200},{'id':7,'x':270,'y':400},"
            "{'id':8,'x':0,'y':400}]");
  g_autoptr (SqCover) holed = cover_of_rectangle (
      600, 400,
      KNIFE "'holes':[[{'id':5,'x':200,'y':100},{'id':6,'x':200,'y':200},"
            "{'id':7,'x':300,'y':200}]]");

  g_assert_nonnull (find_problem (notched, SQ_PROBLEM_CORNER_NOT_BUILT));
  g_assert_cmpuint (notched->pieces->len, ==, 0);
  g_assert_nonnull (find_problem (holed, SQ_PROBLEM_HOLE_NOT_BUILT));
  g_assert_cmpuint (holed->pieces->len, ==, 0);
}

static guint
n_notches (const SqPiece *piece, guint ticks)
{
  guint n = 0;

  for (guint i = 0; i < piece->marks->len; i++)
    {
      const SqMark *mark = &g_array_index (piece->marks, SqMark, i);
      n += mark->kind == SQ_MARK_NOTCH && mark->count == ticks;
    }
  return n;
}

/* One seam all round; four corners, four middles: double at the back, triple at the right. */
static void
test_seam_and_notches (void)
{
  g_autoptr (SqCover) shut = cover_of_rectangle (457.2, 457.2, KNIFE "'zip':{'place':'none'}");
  g_autoptr (SqCover) welted = cover_of_rectangle (457.2, 457.2, KNIFE "'welt':{'at':'top'}");
  const SqPiece *top = piece_of (shut, SQ_ROLE_FACE), *under = piece_of (shut, SQ_ROLE_UNDERSIDE);

  g_assert_cmpuint (shut->seams->len, ==, 1);
  assert_mm (sq_cover_seam (shut, 0)->length_a_mm, sq_path_length_mm (face_of (shut)));
  g_assert_cmpuint (n_notches (top, 1), ==, 6);
  g_assert_cmpuint (n_notches (top, 2), ==, 1);
  g_assert_cmpuint (n_notches (top, 3), ==, 1);
  g_assert_cmpuint (n_notches (under, 1), ==, 6);
  assert_mm (seams_mm (welted, SQ_SEAM_PERIMETER), 0);
  assert_mm (seams_mm (welted, SQ_SEAM_WELT) + seams_mm (welted, SQ_SEAM_ZIP),
             sq_path_length_mm (face_of (welted)));
  /* and two where the zip begins and ends */
  g_assert_cmpuint (n_notches (piece_of (welted, SQ_ROLE_FACE), 1), ==, 8);
}

/* A soft filling is pressed together: half its width will do. */
static void
test_zips (void)
{
  g_autoptr (SqCover) across = cover_of_rectangle (600, 400, KNIFE "'zip':{'place':'underside'}");
  g_autoptr (SqCover) right = cover_of_rectangle (600, 400, KNIFE "'zip':{'edge':2}");
  g_autoptr (SqCover) half = cover_of_rectangle (600, 400,
                                                 KNIFE "'zip':{'edge':3,'from':150,'to':450}");
  g_autoptr (SqCover) less = cover_of_rectangle (600, 400,
                                                 KNIFE "'zip':{'edge':3,'from':150,'to':440}");

  g_assert_cmpint (across->zip.place, ==, SQ_ZIP_UNDERSIDE);
  g_assert_cmpuint (across->seams->len, ==, 1);
  /* another edge is left by an inch at both ends, too */
  assert_mm (right->zip.from_mm, 25.4);
  assert_mm (right->zip.run_mm, 400 - 50.8);
  g_assert_cmpint (half->zip.opening, ==, SQ_OPENING_FOLD);
  g_assert_null (find_problem (half, SQ_PROBLEM_ZIP_FOLD_FOAM));
  /* the back runs from right to left */
  assert_node (face_of (half), 450, 400);
  assert_node (face_of (half), 150, 400);
  g_assert_nonnull (find_problem (less, SQ_PROBLEM_ZIP_TOO_SHORT));
}

/* 200 mm square and 40 thick over foam: less 1 in at both ends 149.2 are left, and 100 + 80 are needed:
 * it goes as near to the corners as that. */
static void
test_zip_of_small_core (void)
{
  g_autoptr (SqCover) cover = cover_of_rectangle (
      200, 200, KNIFE "'thickness':40,'knife_edge':{'filling':'foam-half-round'}");

  assert_mm (cover->zip.run_mm, 180);
  g_assert_cmpint (cover->zip.opening, ==, SQ_OPENING_FOLD);
}

int
main (int argc, char **argv)
{
  g_test_init (&argc, &argv, NULL);
  g_test_add_func ("/knife-edge/square", test_square);
  g_test_add_func ("/knife-edge/congruent", test_congruent);
  g_test_add_func ("/knife-edge/soft-filling", test_soft_filling);
  g_test_add_func ("/knife-edge/very-thick", test_very_thick);
  g_test_add_func ("/knife-edge/foam-core", test_foam_core);
  g_test_add_func ("/knife-edge/long-edges", test_long_edges);
  g_test_add_func ("/knife-edge/obtuse", test_obtuse);
  g_test_add_func ("/knife-edge/let-alone", test_let_alone);
  g_test_add_func ("/knife-edge/draw-in-meets", test_draw_in_meets);
  g_test_add_func ("/knife-edge/can-not-be-made", test_can_not_be_made);
  g_test_add_func ("/knife-edge/seam-and-notches", test_seam_and_notches);
  g_test_add_func ("/knife-edge/zips", test_zips);
  g_test_add_func ("/knife-edge/zip-of-small-core", test_zip_of_small_core);
  return g_test_run ();
}
