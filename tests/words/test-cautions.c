/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "words/cautions.h"

#include "hand-made.h"

#include <string.h>

static gboolean
warns_of (const SqPlan *plan, const char *word)
{
  g_autoptr (GPtrArray) cautions = sq_words_cautions (plan);

  for (guint i = 0; i < cautions->len; i++)
    if (strstr (g_ptr_array_index (cautions, i), word) != NULL)
      return TRUE;
  return FALSE;
}

static void
test_always (void)
{
  g_autoptr (SqPlan) plan = hand_made_plan ();

  g_assert_true (warns_of (plan, "Blades"));
  g_assert_true (warns_of (plan, "ventilate"));
  g_assert_true (warns_of (plan, "check what applies where you sell"));
  g_assert_true (warns_of (plan, "toxic smoke"));
  g_assert_false (warns_of (plan, "vinyl"));
  g_assert_false (warns_of (plan, "flotation"));
}

static void
test_vinyl (void)
{
  g_autoptr (SqPlan) plan = hand_made_plan ();
  g_autoptr (SqCloth) vinyl = sq_cloth_new (1);
  vinyl->kind = SQ_CLOTH_VINYL;
  vinyl->given = SQ_GIVEN_CLOTH_CLASS;
  SqJob *job = sq_job_with_cloth (plan->job, vinyl);
  sq_job_unref (plan->job);
  plan->job = job;
  g_array_index (plan->cloths, SqClothTotal, 0).cloth = 1;

  g_assert_true (warns_of (plan, "Never cut vinyl with a hot knife"));
  g_assert_false (warns_of (plan, "Hot cutting"));
}

/* Where cloth is marked and cut: of the blades, of heat, of nothing else. */
static void
test_cutting (void)
{
  g_autoptr (SqPlan) plan = hand_made_plan ();
  g_autoptr (GPtrArray) cautions = sq_words_cutting_cautions (plan);

  g_assert_cmpuint (cautions->len, ==, 2);
  g_assert_true (g_str_has_prefix (g_ptr_array_index (cautions, 0), "Blades"));
  g_assert_true (g_str_has_prefix (g_ptr_array_index (cautions, 1), "Hot cutting"));
}

static void
test_afloat (void)
{
  g_autoptr (SqPlan) plan = hand_made_plan ();
  SqFoamPart *foam = g_ptr_array_index (sq_plan_cover (plan, 0)->foam, 0);

  foam->kind = SQ_FOAM_CLOSED_CELL;
  g_assert_true (warns_of (plan, "no life-saving flotation"));
  g_assert_true (warns_of (plan, "hatch"));
}

int
main (int argc, char **argv)
{
  g_test_init (&argc, &argv, NULL);
  g_test_add_func ("/words/cautions/always", test_always);
  g_test_add_func ("/words/cautions/vinyl", test_vinyl);
  g_test_add_func ("/words/cautions/cutting", test_cutting);
  g_test_add_func ("/words/cautions/afloat", test_afloat);
  return g_test_run ();
}
