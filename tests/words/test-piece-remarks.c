/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "words/piece-remarks.h"

#include "hand-made.h"

static char *
remarks_of (const SqCover *cover, guint piece)
{
  SqLengthStyle style = sq_length_style_default (SQ_UNIT_IN);
  g_autoptr (GPtrArray) remarks = sq_words_piece_remarks (cover, piece, &style);
  GString *text = g_string_new (NULL);

  for (guint i = 0; i < remarks->len; i++)
    g_string_append_printf (text, "%s\n", (const char *) g_ptr_array_index (remarks, i));
  return g_string_free (text, FALSE);
}

static void
test_plate (void)
{
  g_autoptr (SqCover) cover = hand_made_plate_cover ();
  g_autofree char *plate = remarks_of (cover, 0);
  g_autofree char *underside = remarks_of (cover, 1);

  g_assert_cmpstr (plate, ==,
                   "Corners A, B, C, D: cut out squares of 2 3/4 in\n"
                   "Skirts 2 7/8 in from fold to sew line\n"
                   "Allowances: perimeter 3/8 in, corners 1/2 in\n"
                   "Marks: 4 match notches\n");
  g_assert_cmpstr (underside, ==,
                   "Allowance 3/8 in all round\n"
                   "Marks: 1 zip line\n");
}

static void
test_corners_that_differ (void)
{
  g_autoptr (SqCover) cover = hand_made_plate_cover ();
  GArray *notches = sq_cover_piece (cover, 0)->corner_notches;
  GArray *skirts = sq_cover_piece (cover, 0)->skirts;
  g_array_index (notches, SqCornerNotch, 1).dart = TRUE;
  g_array_index (notches, SqCornerNotch, 2).mouth_mm = 63.5;
  g_array_set_size (skirts, 2);
  g_array_index (skirts, SqSkirt, 1).depth_mm = 76.2;
  g_autofree char *plate = remarks_of (cover, 0);

  g_assert_cmpstr (plate, ==,
                   "Corners A, D: cut out squares of 2 3/4 in\n"
                   "Corner B: cut nothing out; fold it and sew a dart\n"
                   "Corner C: cut out 2 3/4 in deep, 2 1/2 in wide at the mouth\n"
                   "Skirt A–B: 2 7/8 in from fold to sew line\n"
                   "Skirt B–C: 3 in from fold to sew line\n"
                   "Allowances: perimeter 3/8 in, corners 1/2 in\n"
                   "Marks: 4 match notches\n");
}

static void
test_nothing_to_say (void)
{
  g_autoptr (SqCover) cover = hand_made_cover ();
  g_ptr_array_add (cover->pieces, hand_made_piece (SQ_ROLE_BOXING));
  g_autofree char *nothing = remarks_of (cover, 0);

  g_assert_cmpstr (nothing, ==, "");
}

int
main (int argc, char **argv)
{
  g_test_init (&argc, &argv, NULL);
  g_test_add_func ("/words/piece-remarks/plate", test_plate);
  g_test_add_func ("/words/piece-remarks/corners-that-differ", test_corners_that_differ);
  g_test_add_func ("/words/piece-remarks/nothing-to-say", test_nothing_to_say);
  return g_test_run ();
}
