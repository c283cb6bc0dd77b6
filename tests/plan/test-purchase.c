/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "plan/purchase.h"

#include "cover/hand-made.h"
#include "roll/lay-run.h"

static SqPlan *
plan_in (const char *units)
{
  g_autofree char *text = g_strdup_printf (
      "{'format':'squab job','version':1,'units':'%s','cushions':[]}", units);
  g_autoptr (SqJob) job = job_of_text (text);
  return sq_plan_new (job, NULL);
}

static void
add_strip (SqLayTask *task, SqStripKind kind, gint32 width, gint32 length)
{
  SqLayStrip strip = { .kind = kind, .width = width, .length = length };
  sq_lay_task_add_strip (task, &strip);
}

static void
add_rectangle (SqLayTask *task, double length_mm, double width_mm, double repeat_along_mm,
               guint demand)
{
  g_autoptr (GPtrArray) rings = g_ptr_array_new_with_free_func ((GDestroyNotify) sq_path_unref);
  g_ptr_array_add (rings, sq_path_new_rectangle (0, 0, length_mm, width_mm));
  SqLayItemSpec spec = {
    .rings = rings, .turns = SQ_LAY_UPRIGHT, .repeat_along_mm = repeat_along_mm, .demand = demand
  };
  sq_lay_task_add (task, &spec);
}

static SqPurchase
purchase_of (SqLayTask *task, const char *units)
{
  const SqLayBudget budget = { .seed = 1, .steps = 0 };
  g_autoptr (SqPlan) plan = plan_in (units);

  sq_lay_task_seal (task);
  g_autoptr (SqLay) lay = sq_lay_run (task, NULL, &budget, NULL);
  return sq_plan_purchase (plan, task, lay);
}

/* 1 m of pieces as wide as the cloth, and 2 in: 1,050.8 mm are 10 eighths of a yard, 11 times
 * 10 cm. */
static void
test_sold (void)
{
  static const struct
  {
    const char *units;
    double buy_mm;
  } sold[] = { { "in", 1143 }, { "mm", 1100 }, { "cm", 1100 } };

  for (guint i = 0; i < G_N_ELEMENTS (sold); i++)
    {
      g_autoptr (SqLayTask) task = sq_lay_task_new (0);
      add_strip (task, SQ_STRIP_ROLL, 1000000, 0);
      add_rectangle (task, 250, 1000, 0, 4);
      SqPurchase p = purchase_of (task, sold[i].units);
      g_assert_cmpuint (p.bolts, ==, 1);
      assert_mm (p.laid_mm, 1000);
      assert_mm (p.squaring_mm, 50.8);
      assert_mm (p.pattern_mm, 0);
      assert_mm (p.buy_mm, sold[i].buy_mm);
      assert_mm (p.cut_mm2, 1e6);
      assert_mm (p.waste, 1 - 1000 / sold[i].buy_mm);
      g_assert_cmpuint (p.unlaid, ==, 0);
    }
}

/* What comes out even is not rounded up by another step. */
static void
test_even (void)
{
  g_autoptr (SqLayTask) task = sq_lay_task_new (0);

  add_strip (task, SQ_STRIP_ROLL, 1000000, 0);
  add_rectangle (task, 10 * 114.3 - 50.8, 800, 0, 1);
  assert_mm (purchase_of (task, "in").buy_mm, 1143);
}

/* A repeat more, as the shop cuts where it likes. */
static void
test_pattern (void)
{
  g_autoptr (SqLayTask) task = sq_lay_task_new (0);

  add_strip (task, SQ_STRIP_ROLL, 1000000, 0);
  add_rectangle (task, 500, 800, 320, 1);
  SqPurchase p = purchase_of (task, "mm");
  assert_mm (p.laid_mm, 500);
  assert_mm (p.pattern_mm, 320);
  assert_mm (p.buy_mm, 900);
}

/* Two bolts are squared and rounded each; the remnant costs nothing; the last piece has no room. */
static void
test_bolts (void)
{
  g_autoptr (SqLayTask) task = sq_lay_task_new (0);

  add_strip (task, SQ_STRIP_REMNANT, 900000, 600000);
  add_strip (task, SQ_STRIP_ROLL, 900000, 1100000);
  add_strip (task, SQ_STRIP_ROLL, 900000, 600000);
  add_rectangle (task, 500, 900, 0, 5);
  SqPurchase p = purchase_of (task, "mm");
  g_assert_cmpuint (p.bolts, ==, 2);
  g_assert_cmpuint (p.stock, ==, 1);
  assert_mm (p.laid_mm, 1500);
  assert_mm (p.squaring_mm, 101.6);
  assert_mm (p.buy_mm, 1100 + 600);
  assert_mm (p.cut_mm2, 3 * 500 * 900);
  g_assert_cmpuint (p.unlaid, ==, 1);
}

static void
test_nothing (void)
{
  g_autoptr (SqLayTask) task = sq_lay_task_new (0);

  add_strip (task, SQ_STRIP_ROLL, 900000, 0);
  SqPurchase p = purchase_of (task, "mm");
  g_assert_cmpuint (p.bolts, ==, 0);
  assert_mm (p.buy_mm, 0);
  assert_mm (p.waste, 0);
}

int
main (int argc, char *argv[])
{
  g_test_init (&argc, &argv, NULL);
  g_test_add_func ("/plan/purchase/sold", test_sold);
  g_test_add_func ("/plan/purchase/even", test_even);
  g_test_add_func ("/plan/purchase/pattern", test_pattern);
  g_test_add_func ("/plan/purchase/bolts", test_bolts);
  g_test_add_func ("/plan/purchase/nothing", test_nothing);
  return g_test_run ();
}
