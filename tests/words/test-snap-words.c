/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "words/snap-words.h"

#include "hand-made.h"

static char *
said (SqDragKind drag, SqSnapKind kind, SqId other, double figure)
{
  g_autoptr (SqCushion) cushion = hand_made_cushion ();
  SqLengthStyle style = sq_length_style_default (SQ_UNIT_IN);
  SqSnapReason reason = { .kind = kind, .other = other, .figure = figure };
  return sq_words_snap_reason (cushion, drag, &reason, &style);
}

#define assert_said(words, ...)                                                                    \
  G_STMT_START                                                                                     \
  {                                                                                                \
    g_autofree char *text = said (__VA_ARGS__);                                                    \
    g_assert_cmpstr (text, ==, words);                                                             \
  }                                                                                                \
  G_STMT_END

/* Edges by two letters, corners by one: which of them a reason names is what snap.h says. */
static void
test_names (void)
{
  assert_said ("square to A–B", SQ_DRAG_CORNER, SQ_SNAP_SQUARE, 11, G_PI_2);
  assert_said ("in line with C", SQ_DRAG_CORNER, SQ_SNAP_ALIGNED, 13, 100);
  assert_said ("mirror image of B", SQ_DRAG_CORNER, SQ_SNAP_SYMMETRY, 12, 100);
  assert_said ("mirror image of B–C", SQ_DRAG_EDGE, SQ_SNAP_SYMMETRY, 12, 100);
  assert_said ("on the axis", SQ_DRAG_CORNER, SQ_SNAP_SYMMETRY, 0, 0);
  assert_said ("straight on from D", SQ_DRAG_CORNER, SQ_SNAP_STRAIGHT, 14, 0);
  assert_said ("straight", SQ_DRAG_BOW, SQ_SNAP_STRAIGHT, 14, 0);
  assert_said ("steps of 1/8 in", SQ_DRAG_CORNER, SQ_SNAP_GRID, 0, 3.175);
}

/* Every kind says something of its own, for each kind of drag. */
static void
test_all (void)
{
  for (guint drag = SQ_DRAG_CORNER; drag <= SQ_DRAG_RADIUS; drag++)
    {
      g_autoptr (GHashTable) all = g_hash_table_new_full (g_str_hash, g_str_equal, g_free, NULL);
      for (guint kind = 0; kind < SQ_N_SNAP_KINDS; kind++)
        {
          char *words = said ((SqDragKind) drag, (SqSnapKind) kind, 12, 10);
          g_assert_cmpstr (words, !=, "");
          g_assert_true (g_hash_table_add (all, words));
        }
    }
}

int
main (int argc, char **argv)
{
  g_test_init (&argc, &argv, NULL);
  g_test_add_func ("/words/snap-words/names", test_names);
  g_test_add_func ("/words/snap-words/all", test_all);
  return g_test_run ();
}
