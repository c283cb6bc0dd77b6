/* SPDX-License-Identifier: GPL-3.0-or-later */
/* Ticks 1/4 in apart, 3/16 in deep: common practice, no source. */
#include "cover/ticks.h"

#include "base/units.h"
#include "cover/hand-made.h"

#define IN SQ_MM_PER_INCH
#define DEEP_MM (3 * IN / 16)

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

/* A boxed face of 24 × 20 in with 1/2 in allowance: three ticks at the middle of the right edge. */
static void
test_triple (void)
{
  g_autoptr (SqCover) cover = cover_of_rectangle (24 * IN, 20 * IN, "'zip':{'place':'underside'}");
  const SqPiece *top = piece_of (cover, SQ_ROLE_FACE);
  SqSegment ticks[SQ_MOST_TICKS];

  g_assert_cmpuint (sq_mark_ticks (top, notch_at (top, 24 * IN, 10 * IN), ticks), ==, 3);
  for (guint i = 0; i < 3; i++)
    {
      assert_mm (ticks[i].from.x, 24.5 * IN);
      assert_mm (ticks[i].to.x, 24.5 * IN - DEEP_MM);
      assert_mm (ticks[i].from.y, 10 * IN + (i - 1.0) * IN / 4);
      assert_mm (ticks[i].to.y, ticks[i].from.y);
    }
}

/* At a corner the tick goes along the bisector, from the corner of the cut line. */
static void
test_corner (void)
{
  g_autoptr (SqCover) cover = cover_of_rectangle (24 * IN, 20 * IN, "'zip':{'place':'underside'}");
  const SqPiece *top = piece_of (cover, SQ_ROLE_FACE);
  SqSegment tick[SQ_MOST_TICKS];

  g_assert_cmpuint (sq_mark_ticks (top, notch_at (top, 0, 0), tick), ==, 1);
  g_assert_cmpfloat_with_epsilon (sq_distance (tick[0].from, sq_point (-0.5 * IN, -0.5 * IN)), 0,
                                  1e-4);
  g_assert_cmpfloat_with_epsilon (sq_distance (tick[0].from, tick[0].to), DEEP_MM, 1e-6);
  g_assert_cmpfloat_with_epsilon (tick[0].to.x - tick[0].from.x, DEEP_MM * M_SQRT1_2, 1e-4);
}

/* On all pieces of all kinds of outlines: every tick begins on the cut line and ends inside. */
static void
test_on_the_cut_line (void)
{
  static const char *const cushions[] = {
    "'zip':{'place':'none'},'outline':[{'id':1,'x':-200,'y':0,'bow':200},"
    "{'id':2,'x':200,'y':0,'bow':200}]",
    "'outline':[{'id':1,'x':0,'y':0,'bow':-60},{'id':2,'x':500,'y':0},"
    "{'id':3,'x':500,'y':500,'radius':60},{'id':4,'x':0,'y':500}]",
    "'build':'knife-edge','outline':[{'id':1,'x':0,'y':0},{'id':2,'x':500,'y':0},"
    "{'id':3,'x':400,'y':500},{'id':4,'x':0,'y':500}]",
  };

  for (guint i = 0; i < G_N_ELEMENTS (cushions); i++)
    {
      g_autoptr (SqCover) cover = cover_of (cushions[i]);
      for (guint p = 0; p < cover->pieces->len; p++)
        {
          const SqPiece *piece = sq_cover_piece (cover, p);
          for (guint m = 0; m < piece->marks->len; m++)
            {
              const SqMark *mark = &g_array_index (piece->marks, SqMark, m);
              SqSegment ticks[SQ_MOST_TICKS];
              guint n = sq_mark_ticks (piece, mark, ticks);
              g_assert_cmpuint (n, ==,
                                mark->kind == SQ_MARK_NOTCH  ? MAX (mark->count, 1)
                                : mark->kind == SQ_MARK_CLIP ? 1
                                                             : 0);
              for (guint k = 0; k < n; k++)
                {
                  const SqPath *cut = sq_piece_cut (piece, 0);
                  SqNearest nearest = sq_path_nearest (cut, ticks[k].from);
                  assert_mm (nearest.distance_mm, 0);
                  assert_mm (sq_distance (ticks[k].from, ticks[k].to), mark->depth_mm);
                  g_assert_cmpint (sq_path_winding (cut, ticks[k].to), ==, 1);
                }
            }
        }
    }
}

int
main (int argc, char **argv)
{
  g_test_init (&argc, &argv, NULL);
  g_test_add_func ("/ticks/triple", test_triple);
  g_test_add_func ("/ticks/corner", test_corner);
  g_test_add_func ("/ticks/on the cut line", test_on_the_cut_line);
  return g_test_run ();
}
