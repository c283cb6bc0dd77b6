/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "plan/lay-tasks.h"

#include "cover/hand-made.h"

#define SEAT                                                                                       \
  "'id':1,'count':3,'outline':[{'id':1,'x':0,'y':0},{'id':2,'x':600,'y':0},"                       \
  "{'id':3,'x':600,'y':500},{'id':4,'x':0,'y':500}]"

static SqPlan *
plan_of (const char *cloth)
{
  g_autofree char *text = g_strdup_printf (
      "{'format':'squab job','version':1,'cloths':[{'id':1%s}],'cushions':[{" SEAT "}]}", cloth);
  g_autoptr (SqJob) job = job_of_text (text);
  return sq_plan_new (job, NULL);
}

/* The task's item for the first piece of @role. */
/* As bits of SqLayTurn. */
static guint
turns_of (const SqLayItem *item)
{
  guint turns = 0;
  for (guint i = 0; i < item->n_poses; i++)
    turns |= 1u << item->poses[i].turn / SQ_GRID_QUARTER;
  return turns;
}

static const SqLayItem *
item_of (const SqPlan *plan, const SqLayTask *task, SqPieceRole role)
{
  for (guint i = 0; i < task->items->len; i++)
    {
      const SqLayItem *item = sq_lay_task_item (task, i);
      const SqCutEntry *entry = &g_array_index (plan->cut_list, SqCutEntry, item->tag);
      if (sq_cover_piece (sq_plan_cover (plan, entry->cushion), entry->piece)->role == role)
        return item;
    }
  g_assert_not_reached ();
}

static void
test_plain (void)
{
  g_autoptr (SqPlan) plan = plan_of (",'width':1400");
  g_autoptr (SqLayTask) task = sq_plan_lay_task (plan, 1);
  g_autoptr (SqLayTask) again = sq_plan_lay_task (plan, 1);
  const SqLayItem *face = item_of (plan, task, SQ_ROLE_FACE);

  g_assert_cmpuint (task->items->len, ==, plan->cut_list->len);
  g_assert_cmpuint (task->strips->len, ==, 1);
  g_assert_cmpint (sq_lay_task_strip (task, 0)->kind, ==, SQ_STRIP_ROLL);
  g_assert_cmpint (sq_lay_task_strip (task, 0)->width, ==, 1400000);
  g_assert_cmpint (sq_lay_task_strip (task, 0)->length, ==, 0);
  g_assert_true (task->digest == again->digest);
  /* 600 × 500 and half an inch all round, its depth along the roll. */
  g_assert_cmpuint (face->demand, ==, 3);
  g_assert_cmpuint (turns_of (face), ==, SQ_LAY_UPRIGHT | SQ_LAY_HALF);
  g_assert_cmpint (face->box.max.x - face->box.min.x, ==, 525400);
  g_assert_cmpint (face->box.max.y - face->box.min.y, ==, 625400);
  g_assert_cmpint (face->phase.repeat_across_nm, ==, 0);
  g_assert_cmpuint (turns_of (item_of (plan, task, SQ_ROLE_BOXING)), ==, 15);
}

static void
test_one_way (void)
{
  g_autoptr (SqPlan) plan = plan_of (",'one_way':true");
  g_autoptr (SqLayTask) task = sq_plan_lay_task (plan, 1);

  for (guint i = 0; i < task->items->len; i++)
    g_assert_cmpuint (turns_of (sq_lay_task_item (task, i)), ==, SQ_LAY_UPRIGHT);
}

static void
test_striped (void)
{
  g_autoptr (SqPlan) plan = plan_of (",'repeat':{'across':103.1875},"
                                     "'stripes':[{'at':0,'width':20,'colour':'#ff0000'}]");
  g_autoptr (SqLayTask) task = sq_plan_lay_task (plan, 1);
  const SqLayItem *face = item_of (plan, task, SQ_ROLE_FACE);

  /* The middle of the stripe, to the nanometre. */
  g_assert_cmpint (face->phase.across_nm, ==, 10000000);
  g_assert_cmpint (face->phase.repeat_across_nm, ==, 103187500);
  g_assert_cmpint (face->phase.repeat_along_nm, ==, 0);
  g_assert_cmpuint (turns_of (face), ==, SQ_LAY_UPRIGHT | SQ_LAY_HALF);
}

/* Two equal stripes, uneven gaps: a half turn lays the pattern on itself, but not the stripe that
 * is centred. */
static void
test_off_axis (void)
{
  g_autoptr (SqPlan) plan = plan_of (",'repeat':{'across':100},"
                                     "'stripes':[{'at':0,'width':20,'colour':'#ff0000'},"
                                     "{'at':30,'width':20,'colour':'#ff0000'}]");
  g_autoptr (SqLayTask) task = sq_plan_lay_task (plan, 1);

  g_assert_true (sq_cloth_allows_half_turn (sq_plan_cloth (plan, 1)));
  g_assert_cmpuint (turns_of (item_of (plan, task, SQ_ROLE_FACE)), ==, SQ_LAY_UPRIGHT);
}

static void
test_dropped (void)
{
  g_autoptr (SqPlan) plan = plan_of (",'repeat':{'across':100,'along':300,'drop':0.5}");
  g_autoptr (SqLayTask) task = sq_plan_lay_task (plan, 1);
  const SqGridPhase *face = &item_of (plan, task, SQ_ROLE_FACE)->phase;

  g_assert_cmpint (face->repeat_along_nm, ==, 300000000);
  g_assert_cmpint (face->drop_nm, ==, 150000000);
  g_assert_cmpint (item_of (plan, task, SQ_ROLE_BOXING)->phase.repeat_along_nm, ==, 0);
}

int
main (int argc, char *argv[])
{
  g_test_init (&argc, &argv, NULL);
  g_test_add_func ("/plan/lay-tasks/plain", test_plain);
  g_test_add_func ("/plan/lay-tasks/one-way", test_one_way);
  g_test_add_func ("/plan/lay-tasks/striped", test_striped);
  g_test_add_func ("/plan/lay-tasks/off-axis", test_off_axis);
  g_test_add_func ("/plan/lay-tasks/dropped", test_dropped);
  return g_test_run ();
}
