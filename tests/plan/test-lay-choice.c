/* SPDX-License-Identifier: GPL-3.0-or-later */
/* That both ways of cutting are laid, what they take is reckoned, and the rule chooses. */
#include "plan/lay-choice.h"

#include "plan/kept-lays.h"
#include "plan/lay-tasks.h"
#include "plan/work.h"

#include "cover/hand-made.h"

static const SqLayBudget first = { .seed = 1 };

/* So many cushions with slanted sides. */
static SqPlan *
plan_of (guint count, const char *rest)
{
  g_autofree char *text = g_strdup_printf (
      "{'format':'squab job','version':1,'units':'mm',%s'cloths':[{'id':1,'width':1400}],"
      "'cushions':[{'id':1,'count':%u,'thickness':50,'build':'boxed','outline':[{'id':1,'x':0,'y'"
      ":0},{'id':2,'x':600,'y':0},{'id':3,'x':450,'y':500},{'id':4,'x':150,'y':500}],'cloth':{"
      "'face':1,'underside':1,'sides':1}}]}",
      rest, count);
  g_autoptr (SqJob) job = job_of_text (text);
  return sq_plan_new (job, NULL);
}

/* Sets what a lay is said to have to buy. */
static gboolean
chosen (const SqPlan *plan, double free_mm, double straight_mm, guint unlaid_free,
        guint unlaid_straight)
{
  g_autoptr (SqLayTask) task = sq_plan_lay_task (plan, 1);
  const SqCutsLay by_cuts[2] = {
    { .task = task, .purchase = { .buy_mm = free_mm, .unlaid = unlaid_free } },
    { .task = task, .purchase = { .buy_mm = straight_mm, .unlaid = unlaid_straight } },
  };

  return sq_cuts_are_straight (plan, by_cuts);
}

static void
test_rule (void)
{
  g_autoptr (SqPlan) few = plan_of (20, "");
  g_autoptr (SqPlan) many = plan_of (21, "");
  g_autoptr (SqPlan) straight = plan_of (21, "'laying':{'cuts':'straight'},");
  g_autoptr (SqPlan) free = plan_of (2, "'laying':{'cuts':'free'},");

  g_assert_true (chosen (few, 5000, 5000, 0, 0));
  g_assert_true (chosen (few, 5000, 4900, 0, 0));
  g_assert_true (chosen (few, 5000, 5100, 0, 0));   /* 2 % */
  g_assert_false (chosen (few, 3000, 3100, 0, 0));  /* more than 3 % */
  g_assert_true (chosen (few, 9900, 10100, 0, 0));  /* 2 %, 0.2 m */
  g_assert_false (chosen (few, 9850, 10100, 0, 0)); /* 0.25 m */
  g_assert_false (chosen (few, 5000, 5000, 0, 1));
  g_assert_true (chosen (few, 5000, 6000, 1, 0));
  g_assert_false (chosen (many, 5000, 5000, 0, 0));
  g_assert_true (chosen (straight, 5000, 9000, 0, 0));
  g_assert_false (chosen (free, 5000, 5000, 0, 0));
}

/* The lay is of the task that is chosen, and both are right; what is chosen is as files have it. */
static void
test_laid (void)
{
  static const char *const rests[] = { "", "'laying':{'cuts':'free'},",
                                       "'laying':{'cuts':'straight'}," };

  for (guint i = 0; i < G_N_ELEMENTS (rests); i++)
    {
      g_autoptr (SqPlan) plan = plan_of (3, rests[i]);
      g_autoptr (SqLays) lays = sq_lays_new (plan, NULL, &first, NULL);
      const SqClothLay *cloth = sq_lays_cloth (lays, 0);
      guint k = sq_cloth_lay_cuts (cloth);
      g_assert_true (cloth->task == cloth->by_cuts[k].task);
      g_assert_true (cloth->lay == cloth->by_cuts[k].lay);
      g_assert_false (cloth->by_cuts[0].task->straight);
      g_assert_true (cloth->by_cuts[1].task->straight);
      for (guint m = 0; m < 2; m++)
        g_assert_true (sq_lay_is_valid (cloth->by_cuts[m].task, cloth->by_cuts[m].lay));
      g_assert_cmpuint (k, ==,
                        i == 0 ? (guint) sq_cuts_are_straight (plan, cloth->by_cuts) : i - 1);
    }
}

/* Of a large job only what is chosen is laid, and without a second lay of it. */
static void
test_large (void)
{
  g_autoptr (SqPlan) plan = plan_of (60, "");
  g_autoptr (SqLays) lays = sq_lays_new (plan, NULL, &first, NULL);
  const SqClothLay *cloth = sq_lays_cloth (lays, 0);

  g_assert_false (cloth->task->straight);
  g_assert_null (cloth->by_cuts[0].lay);
  g_assert_null (cloth->by_cuts[1].lay);
  g_assert_true (sq_lay_is_valid (cloth->task, cloth->lay));
}

/* A kept lay is taken whichever it was laid for, even where the rule would have the other. */
static void
test_kept (void)
{
  g_autoptr (SqPlan) free = plan_of (3, "'laying':{'cuts':'free'},");
  g_autoptr (SqPlan) straight = plan_of (3, "'laying':{'cuts':'straight'},");
  const SqPlan *plans[] = { free, straight };

  for (guint i = 0; i < 2; i++)
    {
      g_autoptr (SqLays) lays = sq_lays_new (plans[i], NULL, &first, NULL);
      g_autoptr (SqKeptLay) kept = sq_lays_keep (lays, 0, NULL);
      g_autoptr (SqJob) job = sq_job_with_kept_lay (plans[1 - i]->job, kept);
      g_autoptr (SqPlan) plan = sq_plan_new (job, NULL);
      g_autoptr (SqLays) again = sq_lays_new (plan, NULL, &first, NULL);
      g_assert_true (sq_lays_cloth (again, 0)->is_kept);
      g_assert_cmpuint (sq_cloth_lay_cuts (sq_lays_cloth (again, 0)), ==, i);
    }
}

/* Begun from others, both are kept up. */
static void
test_begun_from (void)
{
  g_autoptr (SqPlan) plan = plan_of (3, "");
  g_autoptr (SqPlan) more = plan_of (4, "");
  g_autoptr (SqLays) lays = sq_lays_new (plan, NULL, &first, NULL);
  g_autoptr (SqLays) same = sq_lays_new_from (plan, lays, &first, NULL);
  g_autoptr (SqLays) next = sq_lays_new_from (more, lays, &first, NULL);
  g_autoptr (SqLays) alone = sq_lays_new (more, NULL, &first, NULL);
  g_autoptr (SqLays) fresh = sq_lays_new (more, next, &first, NULL);

  for (guint k = 0; k < 2; k++)
    {
      const SqCutsLay *own = &sq_lays_cloth (next, 0)->by_cuts[k];
      g_assert_true (sq_lays_cloth (same, 0)->by_cuts[k].lay
                     == sq_lays_cloth (lays, 0)->by_cuts[k].lay);
      g_assert_true (sq_lay_is_valid (own->task, own->lay));
      g_assert_true (own->is_given);
      /* what was begun from another is no first lay */
      g_assert_true (sq_lays_cloth (fresh, 0)->by_cuts[k].lay != own->lay);
      g_assert_cmpfloat (sq_lays_cloth (fresh, 0)->by_cuts[k].purchase.laid_mm, ==,
                         sq_lays_cloth (alone, 0)->by_cuts[k].purchase.laid_mm);
    }
}

/* ---- what there is to cut ------------------------------------------------------------------ */

static SqLayTask *
task_of (SqPath *path, guint demand)
{
  SqLayTask *task = sq_lay_task_new (0);
  g_autoptr (GPtrArray) rings = g_ptr_array_new_with_free_func ((GDestroyNotify) sq_path_unref);
  const SqLayStrip strip = { .kind = SQ_STRIP_ROLL, .width = 1000000 };

  g_ptr_array_add (rings, path);
  SqLayItemSpec spec = { .rings = rings, .turns = SQ_LAY_UPRIGHT, .demand = demand };
  sq_lay_task_set_straight (task);
  sq_lay_task_add_strip (task, &strip);
  sq_lay_task_add (task, &spec);
  sq_lay_task_seal (task);
  return task;
}

/* Two squares of 500 side by side: one cut of 1 m across, one of 0.5 m between them, and nothing round
 * them; two triangles of the same boxes: their long sides besides. */
static void
test_cutting (void)
{
  const SqPoint corners[] = { { 0, 0 }, { 500, 0 }, { 0, 500 } };
  g_autoptr (SqLayTask) squares = task_of (sq_path_new_rectangle (0, 0, 500, 500), 2);
  g_autoptr (SqLayTask) triangles = task_of (sq_path_new_polygon (corners, 3), 2);
  g_autoptr (SqLay) lay_squares = sq_lay_run (squares, NULL, &first, NULL);
  g_autoptr (SqLay) lay_triangles = sq_lay_run (triangles, NULL, &first, NULL);
  SqCutting cut_squares = sq_lay_cutting (squares, lay_squares);
  SqCutting cut_triangles = sq_lay_cutting (triangles, lay_triangles);

  g_assert_cmpuint (cut_squares.pieces, ==, 2);
  g_assert_cmpuint (cut_squares.cuts, ==, 2);
  g_assert_cmpfloat_with_epsilon (cut_squares.straight_mm, 1500, 1e-6);
  g_assert_cmpfloat (cut_squares.outline_mm, ==, 0);
  g_assert_cmpfloat_with_epsilon (cut_triangles.straight_mm, 1500, 1e-6);
  g_assert_cmpfloat_with_epsilon (cut_triangles.outline_mm, 2 * 500 * sqrt (2), 0.01);
}

/* Half the rate of the sample is half the time. */
static void
test_minutes (void)
{
  g_autoptr (SqPlan) plan = plan_of (1, "");
  double sample = sq_job_rate (plan->job, SQ_RATE_CUT);
  g_autoptr (SqJob) quick = sq_job_with_rate (plan->job, SQ_RATE_CUT, sample / 2);
  const SqCutting round = { .pieces = 10, .outline_mm = 20000 };
  const SqCutting straight = { .pieces = 10, .cuts = 12, .straight_mm = 13000 };

  g_assert_cmpfloat (sq_cutting_minutes (&straight, plan->job), <,
                     sq_cutting_minutes (&round, plan->job));
  g_assert_cmpfloat_with_epsilon (sq_cutting_minutes (&round, quick),
                                  sq_cutting_minutes (&round, plan->job) / 2, 1e-9);
}

int
main (int argc, char **argv)
{
  g_test_init (&argc, &argv, NULL);
  g_test_add_func ("/plan/lay-choice/rule", test_rule);
  g_test_add_func ("/plan/lay-choice/laid", test_laid);
  g_test_add_func ("/plan/lay-choice/large", test_large);
  g_test_add_func ("/plan/lay-choice/kept", test_kept);
  g_test_add_func ("/plan/lay-choice/begun-from", test_begun_from);
  g_test_add_func ("/plan/lay-choice/cutting", test_cutting);
  g_test_add_func ("/plan/lay-choice/minutes", test_minutes);
  return g_test_run ();
}
