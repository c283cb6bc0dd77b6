/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "plan/foam-lays.h"

#include "cover/hand-made.h"

/* Seats of 600 × 500 mm take foam of 612.7 × 512.7: two beside each other across a sheet of 1,219.2
 * with its saw cut of 3 mm, and three such rows along 2,032, so six; a seventh would take all but
 * 11 % of the sheet, and no way of laying them leaves so little. */
#define SEAT(id, count, more)                                                                      \
  "{'id':" #id ",'count':" #count ",'thickness':76.2" more                                         \
  ",'outline':[{'id':1,'x':0,'y':0},{'id':2,'x':600,'y':0},{'id':3,'x':600,'y':500},"              \
  "{'id':4,'x':0,'y':500}]}"

static SqPlan *
plan_of (const char *foams, const char *cushions)
{
  g_autofree char *text = g_strdup_printf (
      "{'format':'squab job','version':1,'foams':[%s],'cushions':[%s]}", foams, cushions);
  g_autoptr (SqJob) job = job_of_text (text);
  return sq_plan_new (job, NULL);
}

/* On no two parts the kerf is less, and nothing leaves its sheet: looked over anew. */
static void
assert_right (const GArray *lays)
{
  for (guint i = 0; i < lays->len; i++)
    {
      const SqFoamLay *foam = sq_foam_lay (lays, i);
      g_assert_true (sq_lay_is_valid (foam->task, foam->lay));
      g_assert_cmpfloat (foam->waste, >=, 0);
      g_assert_cmpfloat (foam->waste, <, 1);
    }
}

static void
test_sheets (void)
{
  static const struct
  {
    const char *cushions;
    guint sheets;
  } cases[] = { { SEAT (1, 1, ""), 1 },
                { SEAT (1, 6, ""), 1 },
                { SEAT (1, 7, ""), 2 },
                { SEAT (1, 12, ""), 2 },
                { SEAT (1, 4, "") "," SEAT (2, 2, ""), 1 },
                { SEAT (1, 60, ""), 10 } };

  for (guint i = 0; i < G_N_ELEMENTS (cases); i++)
    {
      g_autoptr (SqPlan) plan = plan_of ("", cases[i].cushions);
      g_autoptr (GArray) lays = sq_foam_lays_new (plan, NULL, NULL);
      const SqFoamLay *foam = sq_foam_lay (lays, 0);

      g_assert_cmpuint (lays->len, ==, 1);
      g_assert_cmpuint (foam->sheets, ==, cases[i].sheets);
      g_assert_cmpuint (foam->unlaid, ==, 0);
      assert_mm (foam->thickness_mm, 76.2);
      assert_right (lays);
      if (i == 0)
        g_assert_cmpfloat_with_epsilon (foam->waste, 1 - 612.7 * 512.7 / (2032 * 1219.2), 1e-6);
    }
}

/* Each kind and thickness has sheets of its own, as large as the job says. */
static void
test_kinds (void)
{
  g_autoptr (SqPlan) plan = plan_of (
      "{'id':1,'material':'firm','sheet':{'length':1000,'width':530},'kerf':0}",
      SEAT (1, 2, "") "," SEAT (2, 3, ",'foam':{'material':'firm'}") "," SEAT (
          3, 1, ",'foam':{'batting':20}"));
  g_autoptr (GArray) lays = sq_foam_lays_new (plan, NULL, NULL);

  g_assert_cmpuint (lays->len, ==, 3);
  assert_mm (sq_foam_lay (lays, 0)->thickness_mm, 56.2);
  assert_mm (sq_foam_lay (lays, 1)->thickness_mm, 76.2);
  g_assert_cmpint (sq_foam_lay (lays, 2)->kind, ==, SQ_FOAM_FIRM);
  assert_mm (sq_foam_lay (lays, 2)->length_mm, 1000);
  assert_mm (sq_foam_lay (lays, 2)->width_mm, 530);
  assert_mm (sq_foam_lay (lays, 2)->kerf_mm, 0);
  g_assert_cmpuint (sq_foam_lay (lays, 2)->sheets, ==, 3);
  assert_right (lays);
}

/* What is larger than a sheet is told; what is turned on its side goes on. */
static void
test_too_large (void)
{
  g_autoptr (SqPlan) plan = plan_of (
      "{'id':1,'material':'seat','sheet':{'length':515,'width':640}},"
      "{'id':2,'material':'firm','sheet':{'length':600,'width':600}}",
      SEAT (1, 1, "") "," SEAT (2, 3, ",'foam':{'material':'firm'}"));
  g_autoptr (GArray) lays = sq_foam_lays_new (plan, NULL, NULL);

  g_assert_cmpuint (sq_foam_lay (lays, 0)->sheets, ==, 1);
  g_assert_cmpuint (sq_foam_lay (lays, 0)->unlaid, ==, 0);
  g_assert_cmpuint (sq_foam_lay (lays, 1)->sheets, ==, 0);
  g_assert_cmpuint (sq_foam_lay (lays, 1)->unlaid, ==, 3);
  assert_mm (sq_foam_lay (lays, 1)->waste, 0);
  assert_right (lays);
}

/* A bolster is no part of a sheet. */
static void
test_bolster (void)
{
  g_autoptr (SqPlan) plan = plan_of (
      "", "{'id':1,'build':'bolster','bolster':{'diameter':200,'length':900}}");
  g_autoptr (GArray) lays = sq_foam_lays_new (plan, NULL, NULL);

  g_assert_cmpuint (sq_plan_cover (plan, 0)->foam->len, ==, 1);
  g_assert_cmpuint (lays->len, ==, 0);
}

static gboolean
stop (gpointer data)
{
  (void) data;
  return TRUE;
}

static void
test_shared_and_stopped (void)
{
  const SqTask watch = { stop, NULL, NULL };
  g_autoptr (SqPlan) plan = plan_of ("", SEAT (1, 9, ""));
  g_autoptr (GArray) lays = sq_foam_lays_new (plan, NULL, NULL);
  g_autoptr (GArray) again = sq_foam_lays_new (plan, lays, &watch);

  g_assert_nonnull (again);
  g_assert_true (sq_foam_lay (again, 0)->lay == sq_foam_lay (lays, 0)->lay);
  g_assert_null (sq_foam_lays_new (plan, NULL, &watch));
}

int
main (int argc, char *argv[])
{
  g_test_init (&argc, &argv, NULL);
  g_test_add_func ("/plan/foam-lays/sheets", test_sheets);
  g_test_add_func ("/plan/foam-lays/kinds", test_kinds);
  g_test_add_func ("/plan/foam-lays/too-large", test_too_large);
  g_test_add_func ("/plan/foam-lays/bolster", test_bolster);
  g_test_add_func ("/plan/foam-lays/shared-and-stopped", test_shared_and_stopped);
  return g_test_run ();
}
