/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "plan/lay-tasks.h"

#include "cover/hand-made.h"
#include "job/lay-edits.h"

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

/* Remnants, then bolts, each in their order, then what is bought; a flaw where it is. */
static void
test_strips (void)
{
  g_autoptr (SqPlan) plan = plan_of (
      ",'width':1400,'stock':[{'id':5,'kind':'bolt','length':3000},"
      "{'id':3,'kind':'remnant','length':1200.0004,'width':600},{'id':9,'kind':'bolt','length':0},"
      "{'id':4,'kind':'remnant','length':500}],"
      "'flaws':[{'id':1,'stock':3,'x':100,'y':-20,'length':30,'width':50.5},"
      "{'id':2,'x':900,'y':0,'length':5,'width':1400},{'id':3,'stock':77,'x':0,'y':0,'length':5,"
      "'width':5},{'id':4,'stock':5,'x':0,'y':0,'length':5,'width':0}]");
  g_autoptr (SqLayTask) task = sq_plan_lay_task (plan, 1);
  static const struct
  {
    SqStripKind kind;
    guint tag;
    gint32 width, length;
    guint n_flaws;
  } expected[] = { { SQ_STRIP_REMNANT, 3, 600000, 1200000, 1 },
                   { SQ_STRIP_REMNANT, 4, 1400000, 500000, 0 },
                   { SQ_STRIP_REMNANT, 5, 1400000, 3000000, 0 },
                   { SQ_STRIP_ROLL, 0, 1400000, 0, 1 } };

  g_assert_cmpuint (task->strips->len, ==, G_N_ELEMENTS (expected));
  for (guint i = 0; i < G_N_ELEMENTS (expected); i++)
    {
      const SqLayStrip *strip = sq_lay_task_strip (task, i);
      g_assert_cmpint (strip->kind, ==, expected[i].kind);
      g_assert_cmpuint (strip->tag, ==, expected[i].tag);
      g_assert_cmpint (strip->width, ==, expected[i].width);
      g_assert_cmpint (strip->length, ==, expected[i].length);
      g_assert_cmpuint (strip->n_flaws, ==, expected[i].n_flaws);
    }
  const SqGridBox *flaw = &sq_lay_task_strip (task, 0)->flaws[0];
  g_assert_cmpint (flaw->min.x, ==, 100000);
  g_assert_cmpint (flaw->min.y, ==, 0);
  g_assert_cmpint (flaw->max.x, ==, 130000);
  g_assert_cmpint (flaw->max.y, ==, 30500);
}

/* A pin finds its piece by what it is, and its strip by its id; what is not there is no pin. */
static void
test_pins (void)
{
  g_autofree char *text = g_strdup_printf (
      "{'format':'squab job','version':1,'cloths':[{'id':1,'width':1400,"
      "'stock':[{'id':3,'kind':'remnant','length':1200}]}],'cushions':[{" SEAT "}],'pins':["
      "{'cloth':1,'cushion':1,'role':'face','copy':2,'stock':3,'x':600.0004,'y':30,'turn':90},"
      "{'cloth':1,'cushion':1,'role':'underside','x':%d,'y':30,'turn':0},"
      "{'cloth':1,'cushion':1,'role':'face','copy':3,'x':0,'y':0,'turn':0},"
      "{'cloth':1,'cushion':1,'role':'disc','x':0,'y':0,'turn':0},"
      "{'cloth':1,'cushion':2,'role':'face','x':0,'y':0,'turn':0},"
      "{'cloth':2,'cushion':1,'role':'face','x':0,'y':0,'turn':0},"
      "{'cloth':1,'cushion':1,'mirrored':true,'role':'face','x':0,'y':0,'turn':0},"
      "{'cloth':1,'cushion':1,'role':'face','copy':1,'stock':4,'x':0,'y':0,'turn':0}]}",
      600000);
  g_autoptr (SqJob) job = job_of_text (text);
  g_autoptr (SqPlan) plan = sq_plan_new (job, NULL);
  g_autoptr (SqLayTask) task = sq_plan_lay_task (plan, 1);
  const SqLayPin *pin = &g_array_index (task->pins, SqLayPin, 0);
  const SqPiece *face = NULL;

  g_assert_cmpuint (task->pins->len + task->bad_pins->len, ==, 2);
  g_assert_true (sq_lay_task_item (task, pin->item) == item_of (plan, task, SQ_ROLE_FACE));
  const SqCutEntry *entry = &g_array_index (plan->cut_list, SqCutEntry,
                                            sq_lay_task_item (task, pin->item)->tag);
  face = sq_cover_piece (sq_plan_cover (plan, entry->cushion), entry->piece);
  g_assert_cmpuint (pin->copy, ==, 2);
  g_assert_cmpuint (pin->strip, ==, 0);
  g_assert_cmpint (pin->at.x, ==, 600000);
  g_assert_cmpint (pin->at.y, ==, 30000);
  g_assert_cmpint (pin->pose.turn, ==,
                   (gint32) lround (90000 + face->grain_rad * 180e3 / G_PI) % 360000);
}

/* Straight cuts only where the maker chose them. */
static void
test_straight (void)
{
  g_autoptr (SqPlan) plan = plan_of ("");
  g_autoptr (SqJob) job = sq_job_with_cuts (plan->job, SQ_CUTS_STRAIGHT);
  g_autoptr (SqPlan) straight_plan = sq_plan_new (job, plan);
  g_autoptr (SqLayTask) task = sq_plan_lay_task (plan, 1);
  g_autoptr (SqLayTask) straight = sq_plan_lay_task (straight_plan, 1);

  g_assert_false (task->straight);
  g_assert_true (straight->straight);
  g_assert_cmpuint (task->digest, !=, straight->digest);
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
  g_test_add_func ("/plan/lay-tasks/strips", test_strips);
  g_test_add_func ("/plan/lay-tasks/pins", test_pins);
  g_test_add_func ("/plan/lay-tasks/straight", test_straight);
  return g_test_run ();
}
