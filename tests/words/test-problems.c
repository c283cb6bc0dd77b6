/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "words/problems.h"

#include "hand-made.h"

#include <string.h>

/* What every code has for facts, after cover/problem.h. */
static const guint n_lengths[SQ_N_PROBLEM_CODES] = {
  [SQ_PROBLEM_OUTLINE_CROSSES] = 2,     [SQ_PROBLEM_EDGE_TOO_SHORT] = 1,
  [SQ_PROBLEM_THICKNESS] = 1,           [SQ_PROBLEM_RADIUS_TOO_LARGE] = 2,
  [SQ_PROBLEM_CLEARANCE_TOO_LARGE] = 1, [SQ_PROBLEM_NOTCH_IS_DART] = 2,
  [SQ_PROBLEM_WRAP_SLACK] = 2,          [SQ_PROBLEM_WRAP_TOO_DEEP] = 2,
  [SQ_PROBLEM_ZIP_BOXING_LOW] = 2,      [SQ_PROBLEM_ZIP_FOLD_FOAM] = 2,
  [SQ_PROBLEM_ZIP_TOO_SHORT] = 2,       [SQ_PROBLEM_ZIP_TOO_LONG] = 2,
  [SQ_PROBLEM_JOIN_NO_ROOM] = 1,        [SQ_PROBLEM_BOXING_TOO_SHORT] = 1,
  [SQ_PROBLEM_WIDER_THAN_CLOTH] = 2,    [SQ_PROBLEM_WELT_THICK] = 2,
  [SQ_PROBLEM_WELT_TIGHT] = 2,          [SQ_PROBLEM_PROFILE_RADIUS] = 2,
  [SQ_PROBLEM_SPLIT_OUTSIDE] = 2,       [SQ_PROBLEM_DRAW_IN_MEETS] = 2,
  [SQ_PROBLEM_STUFFED_SMALLER] = 2,     [SQ_PROBLEM_BOLSTER_DIAMETER] = 1,
  [SQ_PROBLEM_BOLSTER_LENGTH] = 1,      [SQ_PROBLEM_BOLSTER_RISE] = 2,
  [SQ_PROBLEM_LET_IN_NO_ROOM] = 2,      [SQ_PROBLEM_ACROSS_NO_PLACE] = 2,
};

static SqProblem
problem_of (SqProblemCode code)
{
  SqProblem problem = { .code = code,
                        .severity = SQ_WARNING,
                        .place = { SQ_AT_CORNER, 3, 13, NULL },
                        .facts = { 38.1, 50.8 } };

  if (code == SQ_PROBLEM_ZIP_TOO_LONG)
    problem.facts[0] = 50.8, problem.facts[1] = 38.1;
  if (code == SQ_PROBLEM_WIDER_THAN_CLOTH || code == SQ_PROBLEM_CUT_SPLIT
      || code == SQ_PROBLEM_ACROSS_NO_PLACE)
    problem.place.kind = SQ_AT_PIECE, problem.place.item = 0;
  return problem;
}

static void
assert_is_sentence (const char *text)
{
  gsize n = strlen (text);

  g_test_message ("%s", text);
  g_assert_cmpuint (n, >, 20);
  g_assert_true (g_ascii_isupper (text[0]));
  g_assert_cmpint (text[n - 1], ==, '.');
  g_assert_null (strchr (text, '%'));
  g_assert_null (strstr (text, "(null)"));
  g_assert_null (strstr (text, "?"));
  g_assert_null (strstr (text, "  "));
}

static void
assert_all_say_figures (const SqLengthStyle *style, const char *first, const char *second)
{
  g_autoptr (SqCover) cover = hand_made_plate_cover ();

  for (guint code = 0; code < SQ_N_PROBLEM_CODES; code++)
    {
      SqProblem problem = problem_of ((SqProblemCode) code);
      g_autofree char *text = sq_words_problem (&problem, cover, style);
      assert_is_sentence (text);
      if (n_lengths[code] > 0)
        g_assert_nonnull (strstr (text, first));
      if (n_lengths[code] > 1)
        g_assert_nonnull (strstr (text, second));
    }
}

static void
test_every_code (void)
{
  SqLengthStyle inches = sq_length_style_default (SQ_UNIT_IN);
  SqLengthStyle cm = sq_length_style_default (SQ_UNIT_CM);

  cm.decimal = ',';
  assert_all_say_figures (&inches, "1 1/2 in", "2 in");
  assert_all_say_figures (&cm, "3,8 cm", "5,1 cm");
}

static void
test_all_differ (void)
{
  g_autoptr (SqCover) cover = hand_made_plate_cover ();
  g_autoptr (GHashTable) said = g_hash_table_new_full (g_str_hash, g_str_equal, g_free, NULL);
  SqLengthStyle style = sq_length_style_default (SQ_UNIT_MM);

  for (guint code = 0; code < SQ_N_PROBLEM_CODES; code++)
    {
      SqProblem problem = problem_of ((SqProblemCode) code);
      g_assert_true (g_hash_table_add (said, sq_words_problem (&problem, cover, &style)));
    }
}

static void
assert_says (const SqCover *cover, const SqProblem *problem, const char *expected)
{
  SqLengthStyle style = sq_length_style_default (SQ_UNIT_IN);
  g_autofree char *text = sq_words_problem (problem, cover, &style);

  g_assert_cmpstr (text, ==, expected);
}

static void
test_places (void)
{
  g_autoptr (SqCover) cover = hand_made_plate_cover ();
  SqProblem problem = problem_of (SQ_PROBLEM_REFLEX_IN_FOLDED);

  assert_says (cover, &problem,
               "Corner C turns inward, so there is no cloth for a folded skirt there. Box the "
               "cushion.");
  problem.code = SQ_PROBLEM_CURVE_IN_FOLDED;
  assert_says (cover, &problem,
               "Corner C is rounded, so a folded skirt would not lie flat there. Make it sharp, or "
               "box the cushion.");
  problem.place = (SqPlace){ SQ_AT_EDGE, 3, 14, NULL };
  assert_says (cover, &problem,
               "Edge D–A is curved, so a folded skirt would not lie flat there. Make it straight, "
               "or box the cushion.");
  problem = problem_of (SQ_PROBLEM_WIDER_THAN_CLOTH);
  assert_says (cover, &problem,
               "The plate is 1 1/2 in wide, and the cloth only 2 in. Choose wider cloth, or make "
               "two cushions of the seat.");
}

static void
test_keys (void)
{
  g_autoptr (SqCover) cover = hand_made_plate_cover ();
  static const char *const allowances[] = {
    "allowances.corner",    "allowances.perimeter", "allowances.zip", "allowances.join",
    "underside_wrap.depth", "zip.extension",        "zip.tuck",       "foam.batting"
  };
  static const char *const cloths[] = { "cloth.face", "cloth.underside", "cloth.sides" };
  g_autoptr (GHashTable) said = g_hash_table_new_full (g_str_hash, g_str_equal, g_free, NULL);
  SqLengthStyle style = sq_length_style_default (SQ_UNIT_MM);
  SqProblem problem = { .code = SQ_PROBLEM_ALLOWANCE, .place = { SQ_AT_KEY, 3, 0, NULL } };

  for (guint i = 0; i < G_N_ELEMENTS (allowances); i++)
    {
      problem.place.key = allowances[i];
      g_assert_true (g_hash_table_add (said, sq_words_problem (&problem, cover, &style)));
    }
  problem.code = SQ_PROBLEM_CLOTH_MISSING;
  problem.facts[0] = 7;
  for (guint i = 0; i < G_N_ELEMENTS (cloths); i++)
    {
      problem.place.key = cloths[i];
      char *text = sq_words_problem (&problem, cover, &style);
      g_assert_nonnull (strstr (text, "cloth number 7,"));
      g_assert_true (g_hash_table_add (said, text));
    }
}

static void
test_what_was_done (void)
{
  g_autoptr (SqCover) cover = hand_made_plate_cover ();
  SqProblem problem = problem_of (SQ_PROBLEM_ZIP_BOXING_LOW);

  assert_says (cover, &problem,
               "The boxing is only 1 1/2 in high, too low for a zip, which wants 2 in. So the zip "
               "lies across the underside.");
  cover->zip.place = SQ_ZIP_BOXING;
  assert_says (cover, &problem,
               "The boxing is only 1 1/2 in high, and a zip in it is hard to sew under 2 in. Put "
               "the zip in another place.");
  problem = problem_of (SQ_PROBLEM_ZIP_TOO_LONG);
  assert_says (cover, &problem,
               "The zip is to open 2 in, and its place has room for 1 1/2 in. Make it shorter, or "
               "leave it to the rules.");
  problem.facts[0] = -12.7;
  assert_says (cover, &problem,
               "The zip is to open only -1/2 in, too little to sew it in. Make it longer, or leave "
               "it to the rules.");
  problem = problem_of (SQ_PROBLEM_NOTCH_IS_DART);
  problem.facts[1] = -3;
  assert_says (cover, &problem,
               "At corner C a corner allowance of 1 1/2 in leaves nothing to cut out: fold the "
               "corner and sew it as a dart.");
}

int
main (int argc, char **argv)
{
  g_test_init (&argc, &argv, NULL);
  g_test_add_func ("/words/problems/every-code", test_every_code);
  g_test_add_func ("/words/problems/all-differ", test_all_differ);
  g_test_add_func ("/words/problems/places", test_places);
  g_test_add_func ("/words/problems/keys", test_keys);
  g_test_add_func ("/words/problems/what-was-done", test_what_was_done);
  return g_test_run ();
}
