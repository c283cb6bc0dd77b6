/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "cover/clips.h"

#include "base/units.h"
#include "cover/hand-made.h"

static guint
clips_on (const SqPiece *piece)
{
  guint n = 0;

  for (guint i = 0; i < piece->marks->len; i++)
    n += g_array_index (piece->marks, SqMark, i).kind == SQ_MARK_CLIP ? 1 : 0;
  return n;
}

static guint
clips_on_all (const SqCover *cover, SqPieceRole role)
{
  guint n = 0;

  for (guint i = 0; i < cover->pieces->len; i++)
    n += sq_cover_piece (cover, i)->role == role ? clips_on (sq_cover_piece (cover, i)) : 0;
  return n;
}

/* A chord c of a circle of radius r stands c²/8r off it (the usual first term of the sagitta): 20 mm
 * at 100 mm is 0.5 off. */
static void
test_spacing (void)
{
  assert_mm (sq_clip_spacing_mm (100, 0.5), 20);
  g_assert_cmpfloat (fabs (100 - sqrt (100 * 100 - 10 * 10) - 0.5), <, 2e-3);
}

/* A round pad: the boxing must open for the bulge, the faces need nothing. */
static void
test_bulge (void)
{
  g_autoptr (SqCover) cover = cover_of (
      "'zip':{'place':'none'},'outline':[{'id':1,'x':-200,'y':0,'bow':200},"
      "{'id':2,'x':200,'y':0,'bow':200}]");
  double round_mm = 400 * G_PI, spacing = sq_clip_spacing_mm (200, 0.5);

  g_assert_cmpuint (clips_on_all (cover, SQ_ROLE_FACE), ==, 0);
  g_assert_cmpuint (clips_on_all (cover, SQ_ROLE_UNDERSIDE), ==, 0);
  /* along both of its sides, in every stretch as many as it takes */
  g_assert_cmpuint (clips_on_all (cover, SQ_ROLE_BOXING), >=, 2 * (guint) (round_mm / spacing));
  g_assert_cmpuint (clips_on_all (cover, SQ_ROLE_BOXING), <, 2 * (guint) (round_mm / spacing) + 20);
}

/* A hollow front: there the faces must open, and the boxing needs nothing. */
static void
test_hollow (void)
{
  g_autoptr (SqCover) cover = cover_of (
      "'zip':{'place':'none'},'outline':[{'id':1,'x':0,'y':0,'bow':-60},"
      "{'id':2,'x':500,'y':0},{'id':3,'x':500,'y':500},{'id':4,'x':0,'y':500}]");

  g_assert_cmpuint (clips_on_all (cover, SQ_ROLE_FACE), >, 5);
  g_assert_cmpuint (clips_on_all (cover, SQ_ROLE_UNDERSIDE), ==,
                    clips_on_all (cover, SQ_ROLE_FACE));
  g_assert_cmpuint (clips_on_all (cover, SQ_ROLE_BOXING), ==, 0);
}

/* They end short of the sew line. */
static void
test_depth (void)
{
  g_autoptr (SqCover) cover = cover_of (
      "'zip':{'place':'none'},'outline':[{'id':1,'x':-200,'y':0,'bow':200},"
      "{'id':2,'x':200,'y':0,'bow':200}]");
  const SqPiece *boxing = piece_of (cover, SQ_ROLE_BOXING);

  for (guint i = 0; i < boxing->marks->len; i++)
    {
      const SqMark *mark = &g_array_index (boxing->marks, SqMark, i);
      if (mark->kind == SQ_MARK_CLIP)
        assert_mm (mark->depth_mm, 12.7 - 1.5875);
    }
}

/* Gentle curves need none. */
static void
test_gentle (void)
{
  g_autoptr (SqCover) cover = cover_of (
      "'zip':{'place':'none'},'outline':[{'id':1,'x':0,'y':0,'bow':10},"
      "{'id':2,'x':500,'y':0},{'id':3,'x':500,'y':500},{'id':4,'x':0,'y':500}]");

  g_assert_cmpuint (clips_on_all (cover, SQ_ROLE_BOXING), ==, 0);
}

int
main (int argc, char **argv)
{
  g_test_init (&argc, &argv, NULL);
  g_test_add_func ("/cover/clips/spacing", test_spacing);
  g_test_add_func ("/cover/clips/bulge", test_bulge);
  g_test_add_func ("/cover/clips/hollow", test_hollow);
  g_test_add_func ("/cover/clips/depth", test_depth);
  g_test_add_func ("/cover/clips/gentle", test_gentle);
  return g_test_run ();
}
