/* SPDX-License-Identifier: GPL-3.0-or-later */
/* Into which strips a boxing is cut: common practice, no source. Cloth is 1346.2 mm wide where it is
 * not given, joins take 12.7. */
#include "base/units.h"
#include "cover/hand-made.h"

#define ONE_WAY "'cloths':[{'id':1,'one_way':true}],"
#define UNDERSIDE_ZIP "'zip':{'place':'underside'}"

/* The strips of @role in order of their stations, as from and to. */
static GArray *
strips (const SqCover *cover, SqPieceRole role)
{
  GArray *ends = g_array_new (FALSE, FALSE, sizeof (SqPoint));

  for (guint i = 0; i < cover->pieces->len; i++)
    {
      const SqPiece *piece = sq_cover_piece (cover, i);
      SqPoint span = { INFINITY, -INFINITY };
      if (piece->role != role || piece->upper)
        continue;
      for (guint r = 0; r < piece->runs->len; r++)
        if (sq_piece_run (piece, r)->role == SQ_RUN_PERIMETER)
          {
            double x = sq_path_nodes (sq_piece_sew (piece, 0))[sq_piece_run (piece, r)->from].at.x;
            double next = sq_path_nodes (sq_piece_sew (piece, 0))[sq_piece_run (piece, r)->to].at.x;
            span.x = fmin (span.x, fmin (x, next));
            span.y = fmax (span.y, fmax (x, next));
          }
      guint at = 0;
      while (at < ends->len && g_array_index (ends, SqPoint, at).x < span.x)
        at++;
      g_array_insert_val (ends, at, span);
    }
  return ends;
}

static void
assert_strips (const SqCover *cover, SqPieceRole role, const SqPoint *spans, guint n)
{
  g_autoptr (GArray) ends = strips (cover, role);

  g_assert_cmpuint (ends->len, ==, n);
  for (guint i = 0; i < n; i++)
    {
      assert_mm (g_array_index (ends, SqPoint, i).x, spans[i].x);
      assert_mm (g_array_index (ends, SqPoint, i).y, spans[i].y);
    }
}

/* 2000 mm round: one strip along the roll, joined at a back corner; of two as far back, the right
 * one, 1000 mm from the start of the front. */
static void
test_one_strip (void)
{
  static const SqPoint all_round[] = { { -1000, 1000 } };
  g_autoptr (SqCover) cover = cover_of_rectangle (600, 400, UNDERSIDE_ZIP);

  assert_strips (cover, SQ_ROLE_BOXING, all_round, 1);
}

/* One-way cloth is cut across: 1346.2 − 25.4 = 1320.8 is the most. Of 2000 mm two strips between
 * opposite corners are the only ones that fit. */
static void
test_across (void)
{
  g_autofree char *outline = rectangle (600, 400, NULL);
  g_autofree char *cushion = g_strconcat (outline, "," UNDERSIDE_ZIP, NULL);
  g_autoptr (SqCover) cover = cover_in (ONE_WAY, cushion);
  g_autoptr (GArray) ends = strips (cover, SQ_ROLE_BOXING);

  g_assert_cmpuint (ends->len, ==, 2);
  for (guint i = 0; i < 2; i++)
    {
      SqPoint span = g_array_index (ends, SqPoint, i);
      assert_mm (span.y - span.x, 1000);
    }
}

/* 1200 × 500 with the zip in the whole back: the sides 500 and a tuck each, the front between. */
static void
test_at_corners (void)
{
  static const SqPoint plain[] = { { 0, 1200 }, { 1200, 1700 }, { 2900, 3400 } },
                       zip[] = { { 1700, 2900 } };
  g_autofree char *outline = rectangle (1200, 500, NULL);
  g_autoptr (SqCover) cover = cover_in (ONE_WAY, outline);

  assert_strips (cover, SQ_ROLE_BOXING, plain, 3);
  assert_strips (cover, SQ_ROLE_ZIP_STRIP, zip, 1);
}

/* A zip of 2000 mm is joined where both halves are longest, and the front never in its middle
 * third, 666.7 to 1333.3. */
static void
test_along_edges (void)
{
  static const SqPoint zip[] = { { 2500, 3500 }, { 3500, 4500 } };
  g_autofree char *outline = rectangle (2000, 500, NULL);
  g_autoptr (SqCover) cover = cover_in (ONE_WAY, outline);
  g_autoptr (GArray) plain = strips (cover, SQ_ROLE_BOXING);
  double sum = 0;

  assert_strips (cover, SQ_ROLE_ZIP_STRIP, zip, 2);
  for (guint i = 0; i < plain->len; i++)
    {
      SqPoint span = g_array_index (plain, SqPoint, i);
      sum += span.y - span.x;
      g_assert_false (span.x > 667 && span.x < 1333);
      g_assert_cmpfloat (span.y - span.x, <=, 1320.8);
    }
  assert_mm (sum, 3000);
  g_assert_null (find_problem (cover, SQ_PROBLEM_JOIN_NO_ROOM));
}

/* A front of 1900 mm has to be joined along its length, past its middle third; the other join is at
 * a corner all the same. Stations 0 and 1900 are the ends of the front. */
static void
test_corner_first (void)
{
  g_autofree char *outline = rectangle (1900, 500, NULL);
  g_autoptr (SqCover) cover = cover_in (ONE_WAY, outline);
  g_autoptr (GArray) plain = strips (cover, SQ_ROLE_BOXING);
  guint n_at_corners = 0;

  g_assert_cmpuint (plain->len, ==, 3);
  for (guint i = 0; i < plain->len; i++)
    {
      double from = g_array_index (plain, SqPoint, i).x;
      n_at_corners += fabs (from) < 1e-6 || fabs (from - 1900) < 1e-6;
    }
  g_assert_cmpuint (n_at_corners, ==, 1);
}

/* Plain cloth goes along the roll up to 3 m. */
static void
test_along (void)
{
  g_autoptr (SqCover) fits = cover_of_rectangle (1000, 500, UNDERSIDE_ZIP);
  g_autoptr (SqCover) over = cover_of_rectangle (1000, 501, UNDERSIDE_ZIP);
  g_autoptr (GArray) one = strips (fits, SQ_ROLE_BOXING);
  g_autoptr (GArray) two = strips (over, SQ_ROLE_BOXING);

  g_assert_cmpuint (one->len, ==, 1);
  g_assert_cmpuint (two->len, ==, 2);
}

/* Striped cloth stands upright all round, or lies along where stripes run side to side. */
static void
test_stripes (void)
{
  const char *striped = "'cloths':[{'id':1,'repeat':{'across':100},"
                        "'stripes':[{'at':10,'width':20,'colour':'#203050'}]}],";
  g_autofree char *outline = rectangle (600, 400, NULL);
  g_autofree char *sideways = g_strconcat (outline, ",'stripes':{'run':'side-to-side'}", NULL);
  g_autoptr (SqCover) upright = cover_in (striped, outline);
  g_autoptr (SqCover) along = cover_in (striped, sideways);

  assert_mm (piece_of (upright, SQ_ROLE_BOXING)->grain_rad, G_PI / 2);
  assert_mm (piece_of (along, SQ_ROLE_BOXING)->grain_rad, 0);
}

/* Cloth on which no strip of any use fits across. */
static void
test_too_narrow (void)
{
  g_autofree char *outline = rectangle (600, 400, NULL);
  g_autoptr (SqCover) narrow = cover_in ("'cloths':[{'id':1,'one_way':true,'width':150}],",
                                         outline);

  g_assert_nonnull (find_problem (narrow, SQ_PROBLEM_BOXING_TOO_SHORT));
}

/* @n corners round a circle, every other one nearer to its middle. */
static SqCover *
cover_of_star (guint n, double radius_mm, double inner_share)
{
  g_autoptr (GString) cushion = g_string_new ("'zip':{'place':'none'},'outline':[");

  for (guint i = 0; i < n; i++)
    {
      double r = radius_mm * (i % 2 == 0 ? 1 : inner_share), a = 2 * G_PI * i / n;
      g_string_append_printf (cushion, "%s{'id':%u,'x':%.6f,'y':%.6f}", i > 0 ? "," : "", i + 1,
                              r * cos (a), r * sin (a));
    }
  g_string_append (cushion, "]");
  return cover_of (cushion->str);
}

/* Rings of very many corners, as imported ones may be, take no time to speak of. */
static void
test_many_corners (void)
{
  g_autoptr (SqCover) circle = cover_of_star (3000, 300, 1);
  g_autoptr (SqCover) zigzag = cover_of_star (1000, 900, 0.99);
  g_autoptr (SqCover) field = cover_of_star (1000, 90000, 0.3);
  g_autoptr (GArray) once = strips (circle, SQ_ROLE_BOXING);
  g_autoptr (GArray) often = strips (zigzag, SQ_ROLE_BOXING);

  g_assert_cmpuint (once->len, ==, 1);
  g_assert_cmpuint (often->len, >, 2);
  /* 63 km of boxing are not cut out */
  g_assert_nonnull (find_problem (field, SQ_PROBLEM_BOXING_TOO_SHORT));
}

/* Strips that must fall on stripes are a repeat shorter than the cloth is wide, so that the pattern
 * can be met wherever it lies: here 600 − 2 × 12.7 − 100 = 474.6 at most. */
static void
test_matched (void)
{
  g_autoptr (SqCover) striped = cover_in (
      "'cloths':[{'id':1,'width':600,'repeat':{'across':100},'stripes':[{'at':0,'width':30,"
      "'colour':'#102030'}]}],",
      "'thickness':50,'build':'boxed'," UNDERSIDE_ZIP ",'outline':[{'id':1,'x':0,'y':0},{'id':2,"
      "'x':560,'y':0},{'id':3,'x':560,'y':450},{'id':4,'x':0,'y':450}]");
  g_autoptr (GArray) ends = strips (striped, SQ_ROLE_BOXING);

  g_assert_cmpuint (ends->len, >, 3);
  for (guint i = 0; i < ends->len; i++)
    {
      SqPoint span = g_array_index (ends, SqPoint, i);
      g_assert_cmpfloat (span.y - span.x, <=, 474.6 + 1e-6);
    }
}

/* Though three strips would do if one were joined along the front, four are made: a join more, at a
 * corner, is better than one that shows. */
static void
test_no_join_in_front (void)
{
  g_autoptr (SqCover) bay = cover_in (
      "'cloths':[{'id':1,'width':1346.2,'repeat':{'across':101.6},'stripes':[{'at':0,'width':30,"
      "'colour':'#102030'}]}],",
      "'thickness':76.2,'build':'boxed'," UNDERSIDE_ZIP ",'outline':[{'id':1,'x':0,'y':0,'front':"
      "true},{'id':2,'x':1168.4,'y':0},{'id':3,'x':1168.4,'y':304.8},{'id':4,'x':965.2,'y':482.6},"
      "{'id':5,'x':0,'y':482.6}]");
  g_autoptr (GArray) ends = strips (bay, SQ_ROLE_BOXING);

  g_assert_cmpuint (ends->len, ==, 4);
  for (guint i = 0; i < ends->len; i++)
    {
      SqPoint span = g_array_index (ends, SqPoint, i);
      g_assert_true (span.x <= 1 || span.x >= 1167);
      g_assert_true (span.y <= 1 || span.y >= 1167);
    }
}

int
main (int argc, char **argv)
{
  g_test_init (&argc, &argv, NULL);
  g_test_add_func ("/cover/boxing/one-strip", test_one_strip);
  g_test_add_func ("/cover/boxing/across", test_across);
  g_test_add_func ("/cover/boxing/at-corners", test_at_corners);
  g_test_add_func ("/cover/boxing/along-edges", test_along_edges);
  g_test_add_func ("/cover/boxing/corner-first", test_corner_first);
  g_test_add_func ("/cover/boxing/along", test_along);
  g_test_add_func ("/cover/boxing/stripes", test_stripes);
  g_test_add_func ("/cover/boxing/too-narrow", test_too_narrow);
  g_test_add_func ("/cover/boxing/many-corners", test_many_corners);
  g_test_add_func ("/cover/boxing/matched", test_matched);
  g_test_add_func ("/cover/boxing/no join in front", test_no_join_in_front);
  return g_test_run ();
}
