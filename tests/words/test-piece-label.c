/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "words/piece-label.h"

#include "hand-made.h"

static void
test_size (void)
{
  SqPiece *piece = hand_made_piece (SQ_ROLE_FACE);
  SqLengthStyle style = sq_length_style_default (SQ_UNIT_IN);
  piece->width_mm = 46.75 * 25.4;
  piece->height_mm = 20.125 * 25.4;
  g_autofree char *size = sq_words_piece_size (piece, &style);
  g_assert_cmpstr (size, ==, "46 3/4 × 20 1/8");
  sq_piece_unref (piece);
}

static void
test_count_and_side (void)
{
  SqPiece *face = hand_made_piece (SQ_ROLE_FACE), *under = hand_made_piece (SQ_ROLE_UNDERSIDE);
  g_autofree char *count = sq_words_cut_count (12);
  g_assert_cmpstr (count, ==, "cut 12");
  g_assert_null (sq_words_piece_seen (face));
  g_assert_cmpstr (sq_words_piece_seen (under), ==, "seen right side up");
  sq_piece_unref (face);
  sq_piece_unref (under);
}

int
main (int argc, char **argv)
{
  g_test_init (&argc, &argv, NULL);
  g_test_add_func ("/words/piece-label/size", test_size);
  g_test_add_func ("/words/piece-label/count-and-side", test_count_and_side);
  return g_test_run ();
}
