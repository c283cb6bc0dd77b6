/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "plan/materials.h"

#include "cover/hand-made.h"

/* textilecalculation.blogspot.com, 2015/06: T 0.01 in, S 10 stitches an inch, type 301: 2.2 in. */
static void
test_published (void)
{
  g_assert_cmpfloat_with_epsilon (sq_thread_share (0.254, 2.54), 2.2, 1e-12);
}

static SqMaterials
materials_of (const char *cloth, guint count)
{
  g_autofree char *text = g_strdup_printf (
      "{'format':'squab job','version':1,'units':'mm','cloths':[{'id':1%s}],'cushions':[{'id':1,"
      "'count':%u,'thickness':50,'build':'boxed','zip':{'place':'none'},'outline':[{'id':1,'x':0,"
      "'y':0},{'id':2,'x':400,'y':0},{'id':3,'x':400,'y':300},{'id':4,'x':0,'y':300}]}]}",
      cloth, count);
  g_autoptr (SqJob) job = job_of_text (text);
  g_autoptr (SqPlan) plan = sq_plan_new (job, NULL);
  return sq_plan_materials (plan);
}

/* A boxed 400 × 300 × 50 without a zip: twice round is 2,800, and one join of 50. In canvas of
 * 0.6 mm, 4.5 mm a stitch: 2,850 × (2 + 2 × 1.2 ÷ 4.5) × 1.15. */
static void
test_by_hand (void)
{
  SqMaterials m = materials_of ("", 1), three = materials_of ("", 3);

  assert_mm (m.sewn_mm, 2850);
  assert_mm (m.tape_mm, 2800);
  assert_mm (m.thread_mm, 2850 * (2 + 2 * 1.2 / 4.5) * 1.15);
  assert_mm (three.sewn_mm, 3 * 2850);
  assert_mm (three.thread_mm, 3 * m.thread_mm);
}

static void
test_velvet (void)
{
  SqMaterials m = materials_of (",'class':'velvet'", 1);

  assert_mm (m.tape_mm, 0);
  assert_mm (m.thread_mm, 2850 * (2 + 2 * 3.0 / 3.25) * 1.15);
}

/* A zip's seam is sewn on both sides of the teeth, and both its flanges are taped. */
static void
test_zip (void)
{
  g_autoptr (SqJob) job = job_of_text (
      "{'format':'squab job','version':1,'units':'mm','cushions':[{'id':1,'thickness':50,'build':"
      "'boxed','outline':[{'id':1,'x':0,'y':0},{'id':2,'x':400,'y':0},{'id':3,'x':400,'y':300},"
      "{'id':4,'x':0,'y':300}]}]}");
  g_autoptr (SqPlan) plan = sq_plan_new (job, NULL);
  const SqCover *cover = sq_plan_cover (plan, 0);
  SqMaterials m = sq_plan_materials (plan);
  double all = sq_plan_figures (plan).seam_mm, zip = seams_mm (cover, SQ_SEAM_ZIP);

  g_assert_cmpfloat (zip, >, 0);
  assert_mm (m.sewn_mm, all + zip);
  assert_mm (m.tape_mm, 2800 + 2 * cover->zip.length_mm);
}

int
main (int argc, char **argv)
{
  g_test_init (&argc, &argv, NULL);
  g_test_add_func ("/plan/materials/published", test_published);
  g_test_add_func ("/plan/materials/by hand", test_by_hand);
  g_test_add_func ("/plan/materials/velvet", test_velvet);
  g_test_add_func ("/plan/materials/zip", test_zip);
  return g_test_run ();
}
