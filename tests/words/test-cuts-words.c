/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "words/cuts-words.h"

#include "cover/hand-made.h"

/* The lays of a round pad, said to have to buy so much cut freely and straight. */
static SqLays *
lays_with (const char *cuts, double free_mm, double straight_mm)
{
  g_autofree char *text = g_strdup_printf (
      "{'format':'squab job','version':1,'units':'mm','laying':{'cuts':'%s'},'cloths':[{'id':1,"
      "'width':1400}],'cushions':[{'id':1,'count':4,'thickness':50,'build':'boxed','outline':[{'id'"
      ":"
      "1,'x':0,'y':0},{'id':2,'x':600,'y':0},{'id':3,'x':450,'y':500},{'id':4,'x':150,'y':500}],"
      "'cloth':{'face':1,'underside':1,'sides':1}}]}",
      cuts);
  g_autoptr (SqJob) job = job_of_text (text);
  g_autoptr (SqPlan) plan = sq_plan_new (job, NULL);
  SqLays *lays = sq_lays_new (plan, NULL, &(SqLayBudget){ .seed = 1 }, NULL);

  sq_lays_cloth (lays, 0)->by_cuts[0].purchase.buy_mm = free_mm;
  sq_lays_cloth (lays, 0)->by_cuts[1].purchase.buy_mm = straight_mm;
  return lays;
}

static void
assert_begins (const SqLays *lays, const char *wanted)
{
  SqLengthStyle style = sq_length_style_default (SQ_UNIT_MM);
  g_autofree char *text = sq_words_straight_cuts (lays, sq_lays_cloth (lays, 0), &style);

  if (!g_str_has_prefix (text, wanted))
    g_assert_cmpstr (text, ==, wanted);
}

static void
test_straight (void)
{
  g_autoptr (SqLays) more = lays_with ("straight", 2000, 2300);
  g_autoptr (SqLays) same = lays_with ("straight", 2000, 2000);
  g_autoptr (SqLays) less = lays_with ("straight", 2100, 2000);
  g_autoptr (SqLays) would = lays_with ("free", 2000, 2300);

  assert_begins (more, "Straight cuts, right through: 0.3 m more cloth, ");
  assert_begins (same, "Straight cuts, right through: no more cloth, ");
  assert_begins (less, "Straight cuts, right through: 0.1 m less cloth, ");
  assert_begins (would, "Straight cuts, right through, would take 0.3 m more cloth, ");
}

static void
test_unlaid (void)
{
  g_autoptr (SqLays) lays = lays_with ("free", 2000, 2300);

  sq_lays_cloth (lays, 0)->by_cuts[1].purchase.unlaid = 2;
  assert_begins (lays, "Straight cuts, right through, leave no room for all pieces.");
  sq_lays_cloth (lays, 0)->by_cuts[0].purchase.unlaid = 3;
  assert_begins (lays, "");
}

int
main (int argc, char **argv)
{
  g_test_init (&argc, &argv, NULL);
  g_test_add_func ("/words/cuts-words/straight", test_straight);
  g_test_add_func ("/words/cuts-words/unlaid", test_unlaid);
  return g_test_run ();
}
