/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "plan/lays.h"
#include "roll/lay-cost.h"

#include "cover/hand-made.h"

static const SqLayBudget first = { .seed = 1, .steps = 0 };

/* Two boxed seats, the second one's underside of another cloth, which is striped. */
static SqPlan *
plan_of_width (double width_mm)
{
  g_autofree char *text = g_strdup_printf (
      "{'format':'squab job','version':1,'units':'mm','cloths':[{'id':1,'width':1400},"
      "{'id':2,'width':1400,'repeat':{'across':60},'stripes':[{'at':0,'width':20,'colour':'#"
      "102030'}]}],'cushions':[{'id':1,'thickness':50,'build':'boxed','outline':[{'id':1,'x':0,"
      "'y':0},{'id':2,'x':%g,'y':0},{'id':3,'x':%g,'y':400},{'id':4,'x':0,'y':400}],'cloth':{"
      "'face':1,'underside':1,'sides':1}},{'id':2,'count':3,'thickness':50,'build':'boxed',"
      "'outline':[{'id':1,'x':0,'y':0},{'id':2,'x':300,'y':0},{'id':3,'x':300,'y':300},{'id':4,"
      "'x':0,'y':300}],'cloth':{'face':2,'underside':2,'sides':2}}]}",
      width_mm, width_mm);
  g_autoptr (SqJob) job = job_of_text (text);
  return sq_plan_new (job, NULL);
}

static void
test_each_cloth (void)
{
  g_autoptr (SqPlan) plan = plan_of_width (500);
  g_autoptr (SqLays) lays = sq_lays_new (plan, NULL, &first, NULL);

  g_assert_cmpuint (lays->cloths->len, ==, 2);
  for (guint i = 0; i < 2; i++)
    {
      const SqClothLay *cloth = sq_lays_cloth (lays, i);
      const SqClothTotal *total = &g_array_index (plan->cloths, SqClothTotal, i);
      g_assert_cmpuint (cloth->cloth, ==, total->cloth);
      g_assert_true (sq_lay_is_valid (cloth->task, cloth->lay));
      g_assert_cmpuint (cloth->lay->placed->len, ==, total->pieces);
      g_assert_cmpfloat_with_epsilon (cloth->purchase.cut_mm2, total->area_mm2, 1);
    }
}

/* Every piece put where it is told lies on the cloth, within the length that is told. */
static void
test_places (void)
{
  g_autoptr (SqPlan) plan = plan_of_width (500);
  g_autoptr (SqLays) lays = sq_lays_new (plan, NULL, &first, NULL);

  for (guint i = 0; i < lays->cloths->len; i++)
    {
      const SqClothLay *cloth = sq_lays_cloth (lays, i);
      SqBox all = sq_box_empty ();
      for (guint k = 0; k < cloth->lay->placed->len; k++)
        {
          const SqPlaced *placed = sq_lay_placed (cloth->lay, k);
          double turn_rad;
          SqPoint at;
          g_assert_cmpuint (sq_lays_entry (lays, placed)->cloth, ==, cloth->cloth);
          sq_lays_place (lays, placed, &turn_rad, &at);
          g_autoptr (SqPath) cut = sq_path_moved (sq_piece_cut (sq_lays_piece (lays, placed), 0),
                                                  turn_rad, at);
          all = sq_box_union (all, sq_path_box (cut));
        }
      g_assert_cmpfloat (all.min.x, >=, -0.002);
      g_assert_cmpfloat (all.min.y, >=, -0.002);
      g_assert_cmpfloat (all.max.y, <=, 1400.002);
      g_assert_cmpfloat_with_epsilon (all.max.x, sq_lay_length (cloth->lay, 0) / 1000.0, 0.002);
    }
}

/* What did not change keeps its lay; what did gets the one it would have had anyway. */
static void
test_shared (void)
{
  g_autoptr (SqPlan) plan = plan_of_width (500);
  g_autoptr (SqPlan) other = plan_of_width (501);
  g_autoptr (SqLays) lays = sq_lays_new (plan, NULL, &first, NULL);
  g_autoptr (SqLays) next = sq_lays_new (other, lays, &first, NULL);
  g_autoptr (SqLays) alone = sq_lays_new (other, NULL, &first, NULL);
  g_autoptr (SqLays) longer = sq_lays_new (plan, lays, &(SqLayBudget){ .seed = 1, .steps = 3 },
                                           NULL);

  g_assert_true (sq_lays_cloth (next, 1)->lay == sq_lays_cloth (lays, 1)->lay);
  g_assert_true (sq_lays_cloth (next, 0)->lay != sq_lays_cloth (lays, 0)->lay);
  g_assert_true (sq_lays_cloth (longer, 1)->lay != sq_lays_cloth (lays, 1)->lay);
  g_assert_cmpint (sq_lay_length (sq_lays_cloth (next, 0)->lay, 0), ==,
                   sq_lay_length (sq_lays_cloth (alone, 0)->lay, 0));
}

/* Begun from lays of the same plan nothing is laid anew; from those of another, a lay is right, and the
 * same each time. */
static void
test_begun_from (void)
{
  g_autoptr (SqPlan) plan = plan_of_width (500);
  g_autoptr (SqPlan) other = plan_of_width (501);
  g_autoptr (SqLays) lays = sq_lays_new (plan, NULL, &(SqLayBudget){ .seed = 1, .steps = 3 }, NULL);
  g_autoptr (SqLays) again = sq_lays_new_from (plan, lays, &first, NULL);
  g_autoptr (SqLays) next = sq_lays_new_from (other, lays, &first, NULL);
  g_autoptr (SqLays) same = sq_lays_new_from (other, lays, &first, NULL);
  g_autoptr (SqLays) alone = sq_lays_new_from (other, NULL, &first, NULL);
  const SqClothLay *cloth = sq_lays_cloth (next, 0);

  for (guint i = 0; i < 2; i++)
    g_assert_true (sq_lays_cloth (again, i)->lay == sq_lays_cloth (lays, i)->lay);
  g_assert_true (sq_lays_cloth (next, 1)->lay == sq_lays_cloth (lays, 1)->lay);
  g_assert_true (sq_lay_is_valid (cloth->task, cloth->lay));
  g_assert_cmpmem (cloth->lay->placed->data, cloth->lay->placed->len * sizeof (SqPlaced),
                   sq_lays_cloth (same, 0)->lay->placed->data,
                   sq_lays_cloth (same, 0)->lay->placed->len * sizeof (SqPlaced));
  g_assert_cmpint (sq_lay_compare (cloth->task, cloth->lay, sq_lays_cloth (alone, 0)->lay), <=, 0);
}

/* Another lay takes its place, and what is to buy follows; it is no lay to find again. */
static void
test_with_lay (void)
{
  g_autoptr (SqPlan) plan = plan_of_width (500);
  g_autoptr (SqLays) lays = sq_lays_new (plan, NULL, &first, NULL);
  const SqClothLay *cloth = sq_lays_cloth (lays, 1);
  const SqLayBudget other = { .seed = 7, .steps = 2 };
  g_autoptr (SqLay) lay = sq_lay_run (cloth->task, NULL, &other, NULL);
  g_autoptr (SqLays) next = sq_lays_with_lay (lays, 1, lay);
  g_autoptr (SqLays) again = sq_lays_new (plan, next, &first, NULL);

  g_assert_true (sq_lays_cloth (next, 0)->lay == sq_lays_cloth (lays, 0)->lay);
  g_assert_true (sq_lays_cloth (next, 1)->lay == lay);
  g_assert_true (sq_lays_cloth (lays, 1)->lay != lay);
  g_assert_cmpfloat_with_epsilon (sq_lays_cloth (next, 1)->purchase.laid_mm,
                                  sq_lay_length (lay, 0) / 1000.0, 1e-9);
  g_assert_true (sq_lays_cloth (again, 0)->lay == sq_lays_cloth (lays, 0)->lay);
  g_assert_true (sq_lays_cloth (again, 1)->lay != lay);
}

/* A pin made of where a piece lies names it, and the strip it is on. */
static void
test_pin (void)
{
  g_autoptr (SqPlan) plan = plan_of_width (500);
  g_autoptr (SqLays) lays = sq_lays_new (plan, NULL, &first, NULL);
  const SqClothLay *cloth = sq_lays_cloth (lays, 0);

  for (guint i = 0; i < cloth->lay->placed->len; i++)
    {
      const SqPlaced *placed = sq_lay_placed (cloth->lay, i);
      const SqPiece *piece = sq_lays_piece (lays, placed);
      SqPin pin = sq_lays_pin (lays, cloth, placed);
      g_assert_cmpuint (pin.of.cloth, ==, cloth->cloth);
      g_assert_cmpuint (pin.of.role, ==, piece->role);
      g_assert_cmpuint (pin.of.ordinal, ==, piece->ordinal);
      g_assert_cmpuint (pin.of.copy, ==, placed->copy);
      g_assert_cmpuint (pin.stock, ==, 0);
      g_assert_cmpfloat (pin.at.x * 1000, ==, placed->at.x);
      g_assert_false (sq_lays_is_pinned (cloth, placed));
    }
}

static gboolean
is_cancelled (gpointer data)
{
  (void) data;
  return TRUE;
}

static void
test_stopped (void)
{
  const SqTask watch = { is_cancelled, NULL, NULL };
  g_autoptr (SqPlan) plan = plan_of_width (500);

  g_assert_null (sq_lays_new (plan, NULL, &first, &watch));
}

static void
see_progress (gpointer data, double fraction)
{
  double *last = data;
  g_assert_cmpfloat (fraction, >=, *last);
  g_assert_cmpfloat (fraction, <=, 1 + 1e-9);
  *last = fraction;
}

static void
test_progress (void)
{
  double last = 0;
  const SqTask watch = { NULL, see_progress, &last };
  g_autoptr (SqPlan) plan = plan_of_width (500);
  g_autoptr (SqLays) lays = sq_lays_new (plan, NULL, &first, &watch);

  g_assert_nonnull (lays);
  g_assert_cmpfloat (last, >, 0.5); /* the second cloth's */
}

/* What a cover says of its pieces is not said again of the lay. */
static void
test_told (void)
{
  g_autoptr (SqJob) job = job_of_text (
      "{'format':'squab job','version':1,'units':'mm','cloths':[{'id':1,'width':500}],'cushions':"
      "[{'id':1,'thickness':50,'build':'boxed','outline':[{'id':1,'x':0,'y':0},{'id':2,'x':700,"
      "'y':0},{'id':3,'x':700,'y':600},{'id':4,'x':0,'y':600}]}]}");
  g_autoptr (SqPlan) plan = sq_plan_new (job, NULL);
  g_autoptr (SqLays) lays = sq_lays_new (plan, NULL, &first, NULL);
  const SqClothLay *cloth = sq_lays_cloth (lays, 0);

  g_assert_cmpuint (sq_lays_n_unlaid (lays), ==, 2); /* top and underside */
  for (guint k = 0; k < cloth->lay->unlaid->len; k++)
    {
      const SqUnlaid *unlaid = &g_array_index (cloth->lay->unlaid, SqUnlaid, k);
      g_assert_cmpint (unlaid->why, ==, SQ_UNLAID_TOO_WIDE);
      g_assert_true (sq_lays_is_told (lays, cloth, unlaid));
    }
}

int
main (int argc, char **argv)
{
  g_test_init (&argc, &argv, NULL);
  g_test_add_func ("/plan/lays/each cloth", test_each_cloth);
  g_test_add_func ("/plan/lays/places", test_places);
  g_test_add_func ("/plan/lays/shared", test_shared);
  g_test_add_func ("/plan/lays/begun from", test_begun_from);
  g_test_add_func ("/plan/lays/stopped", test_stopped);
  g_test_add_func ("/plan/lays/progress", test_progress);
  g_test_add_func ("/plan/lays/told", test_told);
  g_test_add_func ("/plan/lays/with-lay", test_with_lay);
  g_test_add_func ("/plan/lays/pin", test_pin);
  return g_test_run ();
}
