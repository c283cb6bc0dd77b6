/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "words/ply-words.h"

#include "cover/hand-made.h"
#include "words/cut-list.h"

/* Plies of these figures: one deep, then as @best has it. */
static SqPlies *
plies_of (SqPlyLay best)
{
  SqPlies *plies = g_new0 (SqPlies, 1);
  SqPlyLay one = { .plies = 1, .lays = 1, .minutes = 200 };

  plies->ref_count = 1;
  plies->depths = g_array_new (FALSE, FALSE, sizeof (SqPlyLay));
  g_array_append_val (plies->depths, one);
  g_array_append_val (plies->depths, best);
  plies->best = 1;
  return plies;
}

static void
test_said (void)
{
  SqLengthStyle style = sq_length_style_default (SQ_UNIT_MM);
  g_autoptr (SqPlies) plies = plies_of ((SqPlyLay){
      .plies = 6, .lays = 2, .longest_mm = 4100, .buy_mm = 24600, .minutes = 104, .spares = 2 });
  g_autofree char *text = sq_words_plies (plies, &style);
  g_autofree char *reckoned = sq_words_plies_reckoned (plies, &style);

  g_assert_cmpstr (text, ==, "6 plies, 24.6 m to buy");
  g_assert_cmpstr (
      reckoned, ==,
      "2 lays one after the other, a ply 4.10 m long at most; every ply right side up; "
      "96 minutes less than one ply at a time; 2 pieces more than are wanted");
}

/* More work is said, too, and what the table is too short for; one lay is none after another. */
static void
test_worse (void)
{
  SqLengthStyle style = sq_length_style_default (SQ_UNIT_MM);
  g_autoptr (SqPlies) plies = plies_of ((SqPlyLay){
      .plies = 2, .lays = 1, .longest_mm = 900, .buy_mm = 1900, .minutes = 201, .unlaid = 1 });
  g_autofree char *reckoned = sq_words_plies_reckoned (plies, &style);

  g_assert_cmpstr (
      reckoned, ==,
      "one lay, a ply 0.90 m long; every ply right side up; 1 minute more than one ply "
      "at a time; 1 piece does not go on the table");
}

/* The cut list of a lot says it; nobody else hears of plies. */
static void
test_cut_list (void)
{
  const SqLayBudget first = { .seed = 1 };
  SqLengthStyle style = sq_length_style_default (SQ_UNIT_MM);

  for (guint is_lot = 0; is_lot < 2; is_lot++)
    {
      g_autofree char *text = g_strdup_printf (
          "{'format':'squab job','version':1,'units':'mm'%s,'cushions':[{'id':1,'count':24,"
          "'thickness':60,'outline':[{'id':1,'x':0,'y':0},{'id':2,'x':600,'y':0},"
          "{'id':3,'x':600,'y':500},{'id':4,'x':0,'y':500}]}]}",
          is_lot ? ",'laying':{'plies':{'most':12,'table':6000}}" : "");
      g_autoptr (SqJob) job = job_of_text (text);
      g_autoptr (SqPlan) plan = sq_plan_new (job, NULL);
      g_autoptr (SqLays) lays = sq_lays_new (plan, NULL, &first, NULL);
      g_autofree char *list = sq_words_cut_list (plan, lays, &style);
      g_assert_true ((strstr (list, "as a lot") != NULL) == (is_lot == 1));
      g_assert_true ((sq_lays_cloth (lays, 0)->plies != NULL) == (is_lot == 1));
      if (is_lot)
        {
          const SqPlies *plies = sq_lays_cloth (lays, 0)->plies;
          g_autofree char *first_lay = sq_words_ply_lay (plies, 0, &style);
          g_autofree char *start = g_strdup_printf (
              "Lay 1 of %u, %u pl", sq_plies_best (plies)->lays, sq_plies_best (plies)->plies);
          g_assert_true (g_str_has_prefix (first_lay, start));
        }
      g_autoptr (SqLays) again = sq_lays_new (plan, lays, &first, NULL);
      g_assert_true (sq_lays_cloth (again, 0)->plies == sq_lays_cloth (lays, 0)->plies);
    }
}

int
main (int argc, char *argv[])
{
  g_test_init (&argc, &argv, NULL);
  g_test_add_func ("/words/plies/said", test_said);
  g_test_add_func ("/words/plies/worse", test_worse);
  g_test_add_func ("/words/plies/cut-list", test_cut_list);
  return g_test_run ();
}
