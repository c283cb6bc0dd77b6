/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "drawing/roll-strips.h"

#include "cover/hand-made.h"

static const SqRollLook look = { 20, FALSE, 0xffffff };

/* A remnant of 1,000 × 800 with a flaw that reaches over its edge, a bolt of 30 m with one far off,
 * and the roll. */
static SqLays *
made_lays (void)
{
  const SqLayBudget first = { .seed = 1, .steps = 0 };
  g_autoptr (SqJob) job = job_of_text (
      "{'format':'squab job','version':1,'cloths':[{'id':1,'width':1400,'stock':["
      "{'id':2,'kind':'remnant','length':1000,'width':800},{'id':3,'kind':'bolt','length':30000}],"
      "'flaws':[{'id':7,'stock':2,'x':900,'y':700,'length':300,'width':50},"
      "{'id':8,'stock':3,'x':5000,'y':0,'length':10,'width':10},"
      "{'id':9,'stock':66,'x':0,'y':0,'length':10,'width':10}]}],"
      "'cushions':[{'id':1,'thickness':60,'outline':[{'id':1,'x':0,'y':0},"
      "{'id':2,'x':600,'y':0},{'id':3,'x':600,'y':500},{'id':4,'x':0,'y':500}]}]}");
  g_autoptr (SqPlan) plan = sq_plan_new (job, NULL);
  return sq_lays_new (plan, NULL, &first, NULL);
}

static void
test_boxes (void)
{
  g_autoptr (SqLays) lays = made_lays ();
  const SqClothLay *cloth = sq_lays_cloth (lays, 0);
  SqBox whole = sq_roll_box (cloth);

  assert_mm (sq_roll_strip_box (cloth, 0).max.x, 1000);
  assert_mm (sq_roll_strip_box (cloth, 0).max.y, 800);
  /* A long bolt as far as its flaw, and some more. */
  assert_mm (sq_roll_strip_box (cloth, 1).max.x, 5410);
  assert_mm (sq_roll_strip_offset (cloth, 1).x, 1000 + SQ_ROLL_GAP_MM);
  assert_mm (sq_roll_strip_offset (cloth, 2).x, 1000 + 5410 + 2 * SQ_ROLL_GAP_MM);
  /* All lies on what is there: the roll to buy takes no room. */
  assert_mm (whole.max.x, 1000 + 5410 + SQ_ROLL_GAP_MM);
  assert_mm (whole.max.y, 1400 + SQ_ROLL_GAP_MM);
  g_assert_cmpint (sq_roll_strip_at (cloth, sq_point (10, 790)), ==, 0);
  g_assert_cmpint (sq_roll_strip_at (cloth, sq_point (10, 850)), ==, -1);
  g_assert_cmpint (sq_roll_strip_at (cloth, sq_point (1050, 10)), ==, -1);
  g_assert_cmpint (sq_roll_strip_at (cloth, sq_point (6000, 1000)), ==, 1);
  g_assert_cmpint (sq_roll_strip_at (cloth, sq_point (-1, 10)), ==, -1);
}

static void
test_flaws (void)
{
  g_autoptr (SqLays) lays = made_lays ();
  const SqClothLay *cloth = sq_lays_cloth (lays, 0);
  const SqCloth *own = sq_plan_cloth (lays->plan, 1);
  SqBox far_off = sq_roll_flaw_box (cloth, sq_cloth_find_flaw (own, 8));

  assert_mm (far_off.min.y, 0);
  assert_mm (far_off.max.x, 1000 + SQ_ROLL_GAP_MM + 5010);
  g_assert_cmpuint (sq_roll_flaw_at (lays, 0, sq_point (905, 720), 0), ==, 7);
  g_assert_cmpuint (sq_roll_flaw_at (lays, 0, sq_point (895, 720), 0), ==, 0);
  g_assert_cmpuint (sq_roll_flaw_at (lays, 0, sq_point (895, 720), 6), ==, 7);
  g_assert_cmpuint (sq_roll_flaw_at (lays, 0, sq_point (1000 + SQ_ROLL_GAP_MM + 5005, 5), 0), ==,
                    8);
  g_assert_cmpuint (sq_roll_flaw_at (lays, 0, sq_point (5, 5), 0), ==, 0);
}

/* What is drawn of a strip is no more than the strip, its flaw's hatching included. */
static void
test_scenes (void)
{
  g_autoptr (SqLays) lays = made_lays ();
  g_autoptr (SqScene) strip = sq_roll_strip_scene (lays, 0, 0, 0, 1e6, &look);
  g_autoptr (SqScene) part = sq_roll_strip_scene (lays, 0, 0, 200, 500, &look);
  g_autoptr (SqScene) all = sq_roll_cloth_scene (lays, 0, 0, 1e6, &look);
  g_autofree char *drawn = sq_scene_dump (strip), *part_drawn = sq_scene_dump (part);
  SqBox box = sq_scene_box (strip), whole = sq_roll_box (sq_lays_cloth (lays, 0));

  assert_mm (box.min.x, 0);
  assert_mm (box.max.x, 1000);
  assert_mm (box.max.y, 800);
  assert_mm (sq_scene_box (part).min.x, 200);
  assert_mm (sq_scene_box (part).max.x, 500);
  g_assert_nonnull (strstr (drawn, "hatch"));
  g_assert_null (strstr (part_drawn, "hatch"));
  assert_mm (sq_scene_box (all).max.x, whole.max.x);
  assert_mm (sq_scene_box (all).max.y, 1400);
}

/* Its name stands in the room above a strip and before the next, however large text is. */
static void
test_name (void)
{
  g_autoptr (SqLays) lays = made_lays ();
  const SqClothLay *cloth = sq_lays_cloth (lays, 0);
  static const double sizes[] = { 5, 40, 500 };

  for (guint i = 0; i < G_N_ELEMENTS (sizes); i++)
    {
      SqRollLook own = look;
      own.em_mm = sizes[i];
      g_autoptr (SqScene) name = sq_roll_name_scene (cloth, 0, "Remnant 1", "39 × 31 in", &own);
      SqBox box = sq_scene_box (name);
      g_assert_cmpfloat (box.min.y, >, 800);
      g_assert_cmpfloat (box.max.y, <, 800 + SQ_ROLL_GAP_MM);
      g_assert_cmpfloat (box.min.x, >=, 0);
      g_assert_cmpfloat (box.max.x, <, 1000 + SQ_ROLL_GAP_MM);
    }
}

int
main (int argc, char **argv)
{
  g_test_init (&argc, &argv, NULL);
  g_test_add_func ("/drawing/roll-strips/boxes", test_boxes);
  g_test_add_func ("/drawing/roll-strips/flaws", test_flaws);
  g_test_add_func ("/drawing/roll-strips/scenes", test_scenes);
  g_test_add_func ("/drawing/roll-strips/name", test_name);
  return g_test_run ();
}
