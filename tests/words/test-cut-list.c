/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "words/cut-list.h"

#include "hand-made.h"
#include "words/lengths.h"
#include "words/text-table.h"

#include <string.h>

/* How a list looks is decided in worked-plate.txt; --regen writes it anew, to be looked at. */
static gboolean regenerate;

static void
test_worked_plate (void)
{
  g_autoptr (SqPlan) plan = hand_made_plan ();
  SqLengthStyle style = sq_words_length_style (plan->job, '.');
  g_autofree char *list = sq_words_cut_list (plan, NULL, &style);
  const char *path = g_test_get_filename (G_TEST_DIST, "words", "worked-plate.txt", NULL);
  g_autofree char *golden = NULL;

  if (regenerate)
    g_assert_true (g_file_set_contents (path, list, -1, NULL));
  g_assert_true (g_file_get_contents (path, &golden, NULL, NULL));
  g_assert_cmpstr (list, ==, golden);
}

/* @plan with a second cushion like the first, the job's title and cushions' names as given. */
static void
add_second_cushion (SqPlan *plan, const char *name)
{
  SqCover *cover = hand_made_plate_cover ();

  g_clear_pointer (&cover->cushion->name, g_ref_string_release);
  cover->cushion->name = g_ref_string_new (name);
  g_ptr_array_add (plan->covers, cover);
  for (guint piece = 0; piece < cover->pieces->len; piece++)
    {
      SqCutEntry entry = { .number = 3 + piece, .cushion = 1, .piece = piece, .count = 2 };
      g_array_append_val (plan->cut_list, entry);
    }
}

static void
test_several_cushions (void)
{
  g_autoptr (SqPlan) plan = hand_made_plan ();
  SqLengthStyle style = sq_words_length_style (plan->job, '.');
  add_second_cushion (plan, "玄関の座布団");
  g_autofree char *list = sq_words_cut_list (plan, NULL, &style);

  g_assert_nonnull (strstr (list, "   1  Hall bench    Plate                               2"));
  g_assert_nonnull (strstr (list, "   3  玄関の座布団  Plate                               2"));
  g_assert_nonnull (strstr (list, "  Warning  玄関の座布団  The zip opens"));
}

static void
test_width (void)
{
  g_autoptr (SqPlan) plan = hand_made_plan ();
  SqLengthStyle style = sq_words_length_style (plan->job, '.');
  add_second_cushion (plan, "The bench under the long window");
  g_autofree char *list = sq_words_cut_list (plan, NULL, &style);
  g_auto (GStrv) lines = g_strsplit (list, "\n", -1);

  for (guint i = 0; lines[i] != NULL; i++)
    {
      g_assert_cmpuint (sq_text_width (lines[i]), <=, 108);
      g_assert_false (g_str_has_suffix (lines[i], " "));
    }
}

static void
test_metric (void)
{
  g_autoptr (SqPlan) plan = hand_made_plan ();
  plan->job->units = SQ_UNIT_CM;
  SqLengthStyle style = sq_words_length_style (plan->job, ',');
  g_autofree char *list = sq_words_cut_list (plan, NULL, &style);

  g_assert_nonnull (strstr (list, "Lengths in centimetres."));
  g_assert_nonnull (strstr (list, "Plate                               2   63,5    63,5\n"));
  g_assert_nonnull (strstr (list, "cut out squares of 7,0 cm"));
  g_assert_nonnull (strstr (list, "  Foam        29,6 l, 0,85 kg"));
}

static void
test_cloth (void)
{
  g_autoptr (SqPlan) plan = hand_made_plan ();
  g_autoptr (SqCloth) cloth = sq_cloth_new (7);
  g_clear_pointer (&cloth->name, g_ref_string_release);
  cloth->name = g_ref_string_new ("Harbour blue");
  cloth->kind = SQ_CLOTH_VELVET;
  cloth->width_mm = 1346.2;
  cloth->one_way = TRUE;
  cloth->given = SQ_GIVEN_CLOTH_CLASS | SQ_GIVEN_CLOTH_WIDTH | SQ_GIVEN_CLOTH_ONE_WAY;
  SqJob *job = sq_job_with_cloth (plan->job, cloth);
  sq_job_unref (plan->job);
  plan->job = job;
  g_array_index (plan->cloths, SqClothTotal, 0).cloth = 7;
  for (guint i = 0; i < plan->cut_list->len; i++)
    g_array_index (plan->cut_list, SqCutEntry, i).cloth = 7;
  SqLengthStyle style = sq_words_length_style (plan->job, '.');
  g_autofree char *list = sq_words_cut_list (plan, NULL, &style);

  g_assert_nonnull (strstr (list, "CLOTH  Harbour blue: 4 pieces, 13.4 sq ft\n"
                                  "  Velvet, 53 in usable width, one way up\n"
                                  "  No  Piece"));
}

int
main (int argc, char **argv)
{
  regenerate = argc == 2 && g_str_equal (argv[1], "--regen");
  argc -= regenerate ? 1 : 0;
  g_test_init (&argc, &argv, NULL);
  g_test_add_func ("/words/cut-list/worked-plate", test_worked_plate);
  g_test_add_func ("/words/cut-list/several-cushions", test_several_cushions);
  g_test_add_func ("/words/cut-list/width", test_width);
  g_test_add_func ("/words/cut-list/metric", test_metric);
  g_test_add_func ("/words/cut-list/cloth", test_cloth);
  return g_test_run ();
}
