/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "plan/lay-options.h"

#include "cover/hand-made.h"

static SqPlan *
plan_of (const char *cloth)
{
  g_autofree char *text = g_strdup_printf (
      "{'format':'squab job','version':1,'units':'mm','cloths':[{'id':1%s},{'id':2}],'cushions':[{"
      "'id':1,'count':3,'thickness':60,'outline':[{'id':1,'x':0,'y':0},{'id':2,'x':500,'y':0},"
      "{'id':3,'x':500,'y':450},{'id':4,'x':0,'y':450}]}]}",
      cloth);
  g_autoptr (SqJob) job = job_of_text (text);
  return sq_plan_new (job, NULL);
}

/* A plain cloth has nothing to match; the usual widths that are not its own follow. */
static void
test_plain (void)
{
  g_autoptr (SqPlan) plan = plan_of (",'width':1346.2");
  g_autoptr (GArray) options = sq_lay_options_new (plan, 1, NULL);
  g_autoptr (GArray) none = sq_lay_options_new (plan, 2, NULL);

  g_assert_cmpuint (none->len, ==, 0);
  g_assert_cmpuint (options->len, ==, 3);
  g_assert_true (sq_lay_option (options, 0)->is_own);
  assert_mm (sq_lay_option (options, 0)->width_mm, 1346.2);
  assert_mm (sq_lay_option (options, 1)->width_mm, 1117.6);
  assert_mm (sq_lay_option (options, 2)->width_mm, 1498.6);
  g_assert_false (sq_lay_option (options, 1)->is_own);
  g_assert_true (isnan (sq_lay_options_matching_mm (options)));
}

/* Faces and undersides are 525.4 across and 475.4 along. On 1,100 two lie beside each other wherever they
 * fall: three rows and the boxing. Where each face has to have the middle of a stripe that recurs every
 * 900 in its own middle, it lies from 57 to 583 and leaves too little beside it: five rows at least. */
static void
test_matched (void)
{
  g_autoptr (SqPlan) plan = plan_of (",'width':1100,'repeat':{'across':900},"
                                     "'stripes':[{'at':300,'width':40,'colour':'#203050'}]");
  g_autoptr (GArray) options = sq_lay_options_new (plan, 1, NULL);
  const SqLayOption *matched = sq_lay_option (options, 0), *free = sq_lay_option (options, 1);

  g_assert_true (matched->is_matched && !free->is_matched && free->is_own);
  g_assert_cmpuint (matched->purchase.unlaid + free->purchase.unlaid, ==, 0);
  g_assert_cmpfloat (matched->purchase.laid_mm, >, 5 * 475.4);
  g_assert_cmpfloat (free->purchase.laid_mm, <, 4.5 * 475.4);
  g_assert_cmpfloat (sq_lay_options_matching_mm (options), >, 400);
  assert_mm (sq_lay_options_matching_mm (options),
             matched->purchase.buy_mm - free->purchase.buy_mm);
}

/* What is in stock is no matter: each way tells what it takes. */
static void
test_stock (void)
{
  g_autoptr (SqPlan) plan = plan_of (",'width':1346.2,'stock':[{'id':1,'length':9000}]");
  g_autoptr (SqPlan) without = plan_of (",'width':1346.2");
  g_autoptr (GArray) options = sq_lay_options_new (plan, 1, NULL);
  g_autoptr (GArray) same = sq_lay_options_new (without, 1, NULL);

  for (guint i = 0; i < options->len; i++)
    assert_mm (sq_lay_option (options, i)->purchase.buy_mm,
               sq_lay_option (same, i)->purchase.buy_mm);
}

static gboolean
stop (gpointer data)
{
  (void) data;
  return TRUE;
}

static void
test_stopped (void)
{
  const SqTask watch = { stop, NULL, NULL };
  g_autoptr (SqPlan) plan = plan_of ("");

  g_assert_null (sq_lay_options_new (plan, 1, &watch));
}

int
main (int argc, char *argv[])
{
  g_test_init (&argc, &argv, NULL);
  g_test_add_func ("/plan/lay-options/plain", test_plain);
  g_test_add_func ("/plan/lay-options/matched", test_matched);
  g_test_add_func ("/plan/lay-options/stock", test_stock);
  g_test_add_func ("/plan/lay-options/stopped", test_stopped);
  return g_test_run ();
}
