/* SPDX-License-Identifier: GPL-3.0-or-later */
/* Match notches: common practice, no source. */
#include "base/units.h"
#include "cover/hand-made.h"

#define IN SQ_MM_PER_INCH
#define UNDERSIDE_ZIP "'zip':{'place':'underside'}"

/* The notch on @piece at (x, y), or NULL. */
static const SqMark *
notch_at (const SqPiece *piece, double x, double y)
{
  for (guint i = 0; i < piece->marks->len; i++)
    {
      const SqMark *mark = &g_array_index (piece->marks, SqMark, i);
      if (mark->kind == SQ_MARK_NOTCH && sq_distance (mark->at, sq_point (x, y)) < 1e-6)
        return mark;
    }
  return NULL;
}

static guint
count_notches (const SqPiece *piece)
{
  guint n = 0;

  for (guint i = 0; i < piece->marks->len; i++)
    n += g_array_index (piece->marks, SqMark, i).kind == SQ_MARK_NOTCH;
  return n;
}

/* Single at front and left, double at the back, triple at the right; corners single. The boxing is
 * joined at the right back corner: its end is its mark there. */
static void
test_sides (void)
{
  g_autoptr (SqCover) cover = cover_of_rectangle (24 * IN, 20 * IN, UNDERSIDE_ZIP);
  const SqPiece *top = piece_of (cover, SQ_ROLE_FACE);

  g_assert_cmpuint (notch_at (top, 12 * IN, 0)->count, ==, 1);
  g_assert_cmpuint (notch_at (top, 24 * IN, 10 * IN)->count, ==, 3);
  g_assert_cmpuint (notch_at (top, 12 * IN, 20 * IN)->count, ==, 2);
  g_assert_cmpuint (notch_at (top, 0, 10 * IN)->count, ==, 1);
  g_assert_cmpuint (notch_at (top, 0, 0)->count, ==, 1);
  g_assert_cmpuint (notch_at (top, 24 * IN, 0)->count, ==, 1);
  g_assert_cmpuint (notch_at (top, 0, 20 * IN)->count, ==, 1);
  g_assert_null (notch_at (top, 24 * IN, 20 * IN));
  /* 24 in is not over 24 in: none between */
  g_assert_cmpuint (count_notches (top), ==, 7);
}

/* The underside has the same, mirrored, and the boxing both rows: lengths are alike. */
static void
test_partners (void)
{
  g_autoptr (SqCover) cover = cover_of_rectangle (24 * IN, 20 * IN, UNDERSIDE_ZIP);
  const SqPiece *under = piece_of (cover, SQ_ROLE_UNDERSIDE),
                *strip = piece_of (cover, SQ_ROLE_BOXING);

  g_assert_cmpuint (notch_at (under, -24 * IN, 10 * IN)->count, ==, 3);
  g_assert_cmpuint (notch_at (under, -12 * IN, 20 * IN)->count, ==, 2);
  /* the right side's middle is 24 + 10 in along */
  g_assert_cmpuint (notch_at (strip, 34 * IN, 0)->count, ==, 3);
  g_assert_cmpuint (notch_at (strip, 34 * IN, 76.2)->count, ==, 3);
  g_assert_cmpuint (count_notches (strip), ==, 14);
}

/* Straight runs over 24 in have one at most every 12 in: 36 in has its middle and one at 9 from
 * either end. */
static void
test_long_runs (void)
{
  g_autoptr (SqCover) cover = cover_of_rectangle (36 * IN, 20 * IN, UNDERSIDE_ZIP);
  const SqPiece *top = piece_of (cover, SQ_ROLE_FACE);

  g_assert_nonnull (notch_at (top, 9 * IN, 0));
  g_assert_cmpuint (notch_at (top, 9 * IN, 0)->count, ==, 1);
  g_assert_nonnull (notch_at (top, 27 * IN, 0));
  g_assert_cmpuint (count_notches (top), ==, 3 + 4 + 4);
}

/* Curves: 4 in apart over R 12 in, 2 to R 4, 1 below. A drum's quarter turn R π/2 takes as many
 * intervals as keep within that. */
static void
test_curves (void)
{
  static const struct
  {
    double radius_in;
    guint intervals;
  } cases[] = { { 15, 6 },  /* 23.562 / 4 → 6 */
                { 12, 10 }, /* 18.850 / 2 → 10 */
                { 9, 8 },   /* 14.137 / 2 → 8 */
                { 4, 7 },   /* 6.283 / 1 → 7 */
                { 3, 5 } }; /* 4.712 / 1 → 5 */

  for (guint i = 0; i < G_N_ELEMENTS (cases); i++)
    {
      double r = cases[i].radius_in * IN;
      g_autofree char *cushion = g_strdup_printf (
          "'outline':[{'id':1,'x':0,'y':0,'bow':%.10g},{'id':2,'x':%.10g,'y':0,'bow':%.10g}],"
          "'zip':{'place':'none'}",
          r, 2 * r, r);
      g_autoptr (SqCover) cover = cover_of (cushion);
      /* four quarters, each from a corner or a middle to the next; none at the one join */
      g_assert_cmpuint (count_notches (piece_of (cover, SQ_ROLE_FACE)), ==,
                        4 * cases[i].intervals - 1);
    }
}

static void
test_depth (void)
{
  g_autoptr (SqCover) usual = cover_of_rectangle (600, 500, UNDERSIDE_ZIP);
  g_autoptr (SqCover) narrow = cover_of_rectangle (600, 500,
                                                   UNDERSIDE_ZIP ",'allowances':{'perimeter':6}");

  /* 3/16 in, never over half the allowance */
  assert_mm (notch_at (piece_of (usual, SQ_ROLE_FACE), 300, 0)->depth_mm, 4.7625);
  assert_mm (notch_at (piece_of (narrow, SQ_ROLE_FACE), 300, 0)->depth_mm, 3);
}

/* They point towards the cut line, at corners along the bisector. */
static void
test_angle (void)
{
  g_autoptr (SqCover) cover = cover_of_rectangle (600, 500, UNDERSIDE_ZIP);
  const SqPiece *top = piece_of (cover, SQ_ROLE_FACE);

  assert_mm (notch_at (top, 300, 0)->angle_rad, -G_PI / 2);
  assert_mm (notch_at (top, 600, 250)->angle_rad, 0);
  assert_mm (notch_at (top, 0, 0)->angle_rad, -0.75 * G_PI);
}

/* A corner's line is carried square across the boxing. */
static void
test_corner_lines (void)
{
  g_autoptr (SqCover) cover = cover_of_rectangle (600, 500, UNDERSIDE_ZIP);
  const SqPiece *strip = piece_of (cover, SQ_ROLE_BOXING);
  guint n = 0;

  for (guint i = 0; i < strip->marks->len; i++)
    {
      const SqMark *mark = &g_array_index (strip->marks, SqMark, i);
      if (mark->kind != SQ_MARK_CORNER)
        continue;
      n++;
      assert_mm (sq_path_nodes (mark->line)[0].at.y, 0);
      assert_mm (sq_path_nodes (mark->line)[1].at.y, 76.2);
      assert_mm (sq_path_nodes (mark->line)[0].at.x, sq_path_nodes (mark->line)[1].at.x);
    }
  g_assert_cmpuint (n, ==, 3);
}

int
main (int argc, char **argv)
{
  g_test_init (&argc, &argv, NULL);
  g_test_add_func ("/cover/notches/sides", test_sides);
  g_test_add_func ("/cover/notches/partners", test_partners);
  g_test_add_func ("/cover/notches/long-runs", test_long_runs);
  g_test_add_func ("/cover/notches/curves", test_curves);
  g_test_add_func ("/cover/notches/depth", test_depth);
  g_test_add_func ("/cover/notches/angle", test_angle);
  g_test_add_func ("/cover/notches/corner-lines", test_corner_lines);
  return g_test_run ();
}
