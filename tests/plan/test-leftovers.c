/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "plan/leftovers.h"

#include "cover/hand-made.h"

static SqLays *
lays_of (const char *cloth)
{
  g_autofree char *text = g_strdup_printf (
      "{'format':'squab job','version':1,'units':'mm','cloths':[{'id':1,'width':1000%s}],"
      "'cushions':[{'id':1,'thickness':50,'build':'knife-edge','outline':[{'id':1,'x':0,'y':0},{"
      "'id':2,'x':600,'y':0},{'id':3,'x':600,'y':600},{'id':4,'x':0,'y':600}],'cloth':{'face':1,"
      "'underside':1,'sides':1}}]}",
      cloth);
  g_autoptr (SqJob) job = job_of_text (text);
  g_autoptr (SqPlan) plan = sq_plan_new (job, NULL);
  return sq_lays_new (plan, NULL, &(SqLayBudget){ .seed = 1 }, NULL);
}

/* The faces, 625.4 mm across, lie one at the far edge and the other behind it at the near one: beside
 * each a rectangle is left, the larger as long as what is bought, but for what squares the end. */
static void
test_of_roll (void)
{
  g_autoptr (SqLays) lays = lays_of ("");
  const SqClothLay *cloth = sq_lays_cloth (lays, 0);
  g_autoptr (GArray) leftovers = sq_lays_leftovers (cloth);

  g_assert_cmpuint (leftovers->len, ==, 2);
  const SqLeftover *left = &g_array_index (leftovers, SqLeftover, 0);
  g_assert_cmpfloat_with_epsilon (left->x_mm + left->along_mm,
                                  cloth->purchase.buy_mm - SQ_SQUARING_MM, 0.001);
  for (guint i = 0; i < 2; i++)
    g_assert_cmpfloat_with_epsilon (g_array_index (leftovers, SqLeftover, i).across_mm,
                                    1000 - 625.4, 0.2);
}

/* On a bolt that is there the whole rest of it is left; a remnant that nothing lies on is none. */
static void
test_of_stock (void)
{
  g_autoptr (SqLays) lays = lays_of (",'stock':[{'id':1,'kind':'remnant','length':200,'width':900},"
                                     "{'id':2,'kind':'bolt','length':9000}]");
  const SqClothLay *cloth = sq_lays_cloth (lays, 0);
  g_autoptr (GArray) leftovers = sq_lays_leftovers (cloth);
  double laid_mm = sq_lay_length (cloth->lay, 1) / 1000.0;

  g_assert_cmpuint (cloth->purchase.bolts, ==, 0);
  g_assert_cmpuint (leftovers->len, >=, 2);
  const SqLeftover *rest = &g_array_index (leftovers, SqLeftover, 0);
  g_assert_cmpuint (sq_lay_task_strip (cloth->task, rest->strip)->tag, ==, 2);
  g_assert_cmpfloat_with_epsilon (rest->x_mm, laid_mm, 0.001);
  g_assert_cmpfloat_with_epsilon (rest->x_mm + rest->along_mm, 9000, 0.001);
  g_assert_cmpfloat_with_epsilon (rest->across_mm, 1000, 0.001);
  for (guint i = 0; i < leftovers->len; i++)
    g_assert_cmpuint (g_array_index (leftovers, SqLeftover, i).strip, ==, rest->strip);
}

int
main (int argc, char **argv)
{
  g_test_init (&argc, &argv, NULL);
  g_test_add_func ("/plan/leftovers/roll", test_of_roll);
  g_test_add_func ("/plan/leftovers/stock", test_of_stock);
  return g_test_run ();
}
