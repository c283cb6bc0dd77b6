/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "plan/ways.h"

#include "cover/hand-made.h"
#include "plan/cost.h"
#include "plan/work.h"

/* The worked plate: 18 1/2 in square, 2 1/2 in thick, folded corners. */
#define PLATE                                                                                      \
  "'build':'folded-corner','thickness':63.5,'outline':[{'id':1,'x':0,'y':0},"                      \
  "{'id':2,'x':469.9,'y':0},{'id':3,'x':469.9,'y':469.9},{'id':4,'x':0,'y':469.9}]"
/* A square with its front bowed, and an L. */
#define BOW                                                                                        \
  "'outline':[{'id':1,'x':0,'y':0,'bow':30},{'id':2,'x':500,'y':0},{'id':3,'x':500,'y':500},"      \
  "{'id':4,'x':0,'y':500}]"
#define ELL                                                                                        \
  "'outline':[{'id':1,'x':0,'y':0},{'id':2,'x':900,'y':0},{'id':3,'x':900,'y':900},"               \
  "{'id':4,'x':400,'y':900},{'id':5,'x':400,'y':400},{'id':6,'x':0,'y':400}]"

static SqWays *
ways_of (const char *cushion, const char *rest, gboolean with_lays)
{
  g_autoptr (SqJob) job = job_of (cushion, rest);
  return sq_ways_new (job, g_ptr_array_index (job->cushions, 0), with_lays, NULL);
}

/* The way of @build, or NULL. */
static const SqWay *
find (const SqWays *ways, SqBuild build, gboolean welt, gboolean mixed)
{
  for (guint i = 0; i < ways->ways->len; i++)
    {
      const SqWay *way = sq_ways_way (ways, i);
      if (way->build == build && way->welt == welt && way->mixed == mixed)
        return way;
    }
  return NULL;
}

/* By hand, for one: 2 pieces, corner seams of 73.025 and the underside once round, 4 corner seams
 * and 4 corners of the underside, a zip, a block. By the samples that is 4 × 2 + 3 × 2.1717 + 2 × 8
 * + 12 + 10 + 20 = 72.5151 minutes, at 30 an hour 36.25755. */
static void
test_worked_plate (void)
{
  g_autoptr (SqWays) ways = ways_of (PLATE ",'count':2", NULL, FALSE);
  const SqWay *way = sq_ways_way (ways, ways->in_use);
  guint lacks = 0;

  g_assert_cmpint (way->build, ==, SQ_BUILD_FOLDED_CORNER);
  g_assert_false (way->mixed);
  g_assert_true (way->as == ways->cushion);
  g_assert_true (way->possible);
  g_assert_cmpuint (way->pieces, ==, 4);
  assert_mm (way->seam_mm, 2 * (4 * 73.025 + 4 * 469.9));
  assert_mm (way->minutes, 2 * 72.5151);
  assert_mm (way->work_cost, 2 * 36.25755);
  assert_mm (way->foam_mm3 / 1e6, 2 * 482.6 * 482.6 * 63.5 / 1e6);
  g_assert_true (isnan (g_array_index (way->cloths, SqWayCloth, 0).buy_mm));
  assert_mm (sq_way_cost (way, &lacks), way->work_cost);
  g_assert_cmpuint (lacks, ==, SQ_COST_CLOTH | SQ_COST_FOAM);
}

/* The plate, 635 mm, and the underside, 488.95, lie side by side on 1346.2: 635 mm, and with 50.8 to
 * square the end just six eighths of a yard, 685.8. */
static void
test_cost (void)
{
  g_autoptr (SqWays) ways = ways_of (
      PLATE, "'cloths':[{'id':1,'price':20}],'foams':[{'id':1,'material':'seat','price':480}],",
      TRUE);
  const SqWay *way = sq_ways_way (ways, ways->in_use);
  const SqWayCloth *cloth = &g_array_index (way->cloths, SqWayCloth, 0);
  guint lacks = 0;

  g_assert_cmpuint (way->cloths->len, ==, 1);
  g_assert_cmpuint (cloth->cloth, ==, 1);
  assert_mm (cloth->area_mm2, 635.0 * 635 - 4 * 69.85 * 69.85 + 488.95 * 488.95);
  assert_mm (cloth->buy_mm, 685.8);
  assert_mm (cloth->cost, 13.716);
  assert_mm (way->cloth_cost, 13.716);
  assert_mm (way->foam_cost, 482.6 * 482.6 * 63.5 / 1e9 * 480);
  assert_mm (sq_way_cost (way, &lacks), 13.716 + way->foam_cost + 36.25755);
  g_assert_cmpuint (lacks, ==, 0);
}

/* A cloth without a price, or a piece that no cloth takes: that much of the cost is not known. */
static void
test_cost_not_known (void)
{
  static const struct
  {
    const char *rest;
    guint lacks;
  } cases[] = {
    { "'cloths':[{'id':1}],'foams':[{'id':1,'material':'seat','price':480}],", SQ_COST_CLOTH },
    { "'cloths':[{'id':1,'price':20}],'foams':[{'id':1,'material':'firm','price':480}],",
      SQ_COST_FOAM },
    { "'cloths':[{'id':1,'price':-1}],", SQ_COST_CLOTH | SQ_COST_FOAM },
    { "'cloths':[{'id':1,'price':0}],'foams':[{'id':1,'material':'seat','price':0}],", 0 },
  };

  for (guint i = 0; i < G_N_ELEMENTS (cases); i++)
    {
      g_autoptr (SqWays) ways = ways_of (PLATE, cases[i].rest, TRUE);
      const SqWay *way = sq_ways_way (ways, ways->in_use);
      guint lacks;
      double cost = sq_way_cost (way, &lacks);
      g_assert_cmpuint (lacks, ==, cases[i].lacks);
      g_assert_cmpfloat (cost, >=, way->work_cost);
    }
}

/* Own rates count instead of the samples, each by itself. */
static void
test_rates (void)
{
  g_autoptr (SqJob) job = job_of (PLATE, "'rates':{'wage':60,'zip':0,'sew':-1},");
  g_autoptr (SqWays) ways = sq_ways_new (job, g_ptr_array_index (job->cushions, 0), FALSE, NULL);
  const SqWay *way = sq_ways_way (ways, ways->in_use);
  g_autoptr (SqJob) own = sq_job_ref (job);

  assert_mm (way->minutes, 60.5151);
  assert_mm (way->work_cost, 60.5151);
  g_assert_true (sq_ways_has_samples (job));
  for (SqRate rate = 0; rate < SQ_N_RATES; rate++)
    {
      SqJob *next = sq_job_with_rate (own, rate, 1);
      sq_job_unref (own);
      own = next;
    }
  g_assert_false (sq_ways_has_samples (own));
}

/* Boxed: five pieces; the seams round face and underside turn at four corners each. */
static void
test_work (void)
{
  g_autofree char *seat = rectangle (600, 500, (const char *const[4]){ NULL });
  g_autofree char *cushion = g_strdup_printf ("'build':'boxed',%s", seat);
  g_autoptr (SqJob) job = job_of (cushion, NULL);
  g_autoptr (SqPlan) plan = sq_plan_new (job, NULL);
  SqWork w = sq_plan_work (plan);

  g_assert_cmpuint (w.pieces, ==, 5);
  g_assert_cmpuint (w.corners, ==, 8);
  g_assert_cmpuint (w.zips, ==, 1);
  g_assert_cmpuint (w.blocks, ==, 1);
  g_assert_cmpuint (w.cushions, ==, 1);
  assert_mm (w.seam_mm, sq_plan_figures (plan).seam_mm);
}

/* A round seat turns at no corner. */
static void
test_round (void)
{
  g_autoptr (SqJob) job = job_of ("'build':'boxed','outline':[{'id':1,'x':0,'y':0,'bow':200},"
                                  "{'id':2,'x':400,'y':0,'bow':200}]",
                                  NULL);
  g_autoptr (SqPlan) plan = sq_plan_new (job, NULL);

  g_assert_cmpuint (sq_plan_work (plan).corners, ==, 0);
}

/* A curve can't be folded: the fault says where, and nothing is reckoned. */
static void
test_impossible (void)
{
  g_autoptr (SqWays) ways = ways_of ("'build':'boxed'," BOW, NULL, TRUE);
  const SqWay *folded = find (ways, SQ_BUILD_FOLDED_CORNER, FALSE, FALSE);

  g_assert_nonnull (folded);
  g_assert_false (folded->possible);
  g_assert_cmpint (folded->why.severity, ==, SQ_FAULT);
  g_assert_cmpint (folded->why.code, ==, SQ_PROBLEM_CURVE_IN_FOLDED);
  g_assert_cmpuint (folded->why.place.item, ==, 1);
  g_assert_nonnull (folded->where);
  g_assert_cmpuint (folded->pieces, ==, 0);
  g_assert_cmpuint (folded->cloths->len, ==, 0);
}

static const SqCorner *
edge (const SqWay *way, SqId id)
{
  return sq_outline_corner (way->as->outline, id, NULL, NULL);
}

static gboolean
is_boxed (const SqWay *way, SqId id)
{
  return (edge (way, id)->given & SQ_GIVEN_EDGE_BUILD) && edge (way, id)->build == SQ_EDGE_BOXED;
}

/* Boxing is let in along the bow, or on both sides of the corner that turns inward; a square has no
 * need of it, a round seat nothing left to fold. */
static void
test_mixed (void)
{
  g_autoptr (SqWays) bow = ways_of ("'build':'boxed'," BOW, NULL, FALSE);
  g_autoptr (SqWays) ell = ways_of ("'build':'boxed'," ELL, NULL, FALSE);
  g_autoptr (SqWays) square = ways_of (PLATE, NULL, FALSE);
  g_autoptr (SqWays) round = ways_of ("'build':'boxed','outline':[{'id':1,'x':0,'y':0,'bow':200},"
                                      "{'id':2,'x':400,'y':0,'bow':200}]",
                                      NULL, FALSE);
  const SqWay *way = find (bow, SQ_BUILD_FOLDED_CORNER, FALSE, TRUE);

  g_assert_nonnull (way);
  for (SqId id = 1; id <= 4; id++)
    g_assert_cmpint (is_boxed (way, id), ==, id == 1);
  way = find (ell, SQ_BUILD_FOLDED_CORNER, FALSE, TRUE);
  g_assert_nonnull (way);
  for (SqId id = 1; id <= 6; id++)
    g_assert_cmpint (is_boxed (way, id), ==, id == 4 || id == 5);
  g_assert_null (find (square, SQ_BUILD_FOLDED_CORNER, FALSE, TRUE));
  g_assert_null (find (round, SQ_BUILD_FOLDED_CORNER, FALSE, TRUE));
}

/* The way in use is found by build, welt and edges, and is the cushion untouched. */
static void
test_in_use (void)
{
  static const struct
  {
    const char *keys;
    SqBuild build;
    gboolean welt, mixed;
  } cases[] = {
    { BOW, SQ_BUILD_BOXED, FALSE, FALSE },
    { "'welt':{'at':'top'}," BOW, SQ_BUILD_BOXED, TRUE, FALSE },
    { "'build':'split-side'," BOW, SQ_BUILD_SPLIT_SIDE, FALSE, FALSE },
    { "'build':'folded-corner','outline':[{'id':1,'x':0,'y':0,'build':'boxed'},"
      "{'id':2,'x':500,'y':0},{'id':3,'x':500,'y':500}]",
      SQ_BUILD_FOLDED_CORNER, FALSE, TRUE },
    { "'build':'boxed','outline':[{'id':1,'x':0,'y':0,'build':'folded'},"
      "{'id':2,'x':500,'y':0},{'id':3,'x':500,'y':500}]",
      SQ_BUILD_FOLDED_CORNER, FALSE, TRUE },
  };

  for (guint i = 0; i < G_N_ELEMENTS (cases); i++)
    {
      g_autoptr (SqWays) ways = ways_of (cases[i].keys, NULL, FALSE);
      const SqWay *way = sq_ways_way (ways, ways->in_use);
      g_assert_cmpint (way->build, ==, cases[i].build);
      g_assert_cmpint (way->welt, ==, cases[i].welt);
      g_assert_cmpint (way->mixed, ==, cases[i].mixed);
      g_assert_true (way->as == ways->cushion);
    }
}

/* Every way can be chosen: built as it says, the comparison finds it in use. What one way can't have is
 * left to its rules. */
static void
test_chosen (void)
{
  g_autoptr (SqJob) job = job_of ("'build':'boxed','welt':{'at':'underside'},"
                                  "'zip':{'place':'boxing','edge':3,'from':10,'to':400}," BOW,
                                  NULL);
  g_autoptr (SqWays) ways = sq_ways_new (job, g_ptr_array_index (job->cushions, 0), FALSE, NULL);

  g_assert_cmpuint (ways->ways->len, ==, 8);
  for (guint i = 0; i < ways->ways->len; i++)
    {
      const SqWay *way = sq_ways_way (ways, i);
      g_autoptr (SqJob) next = sq_job_with_cushion (job, way->as);
      g_autoptr (SqWays) after = sq_ways_new (next, way->as, FALSE, NULL);
      const SqWay *now = sq_ways_way (after, after->in_use);

      g_assert_cmpint (now->build, ==, way->build);
      g_assert_cmpint (now->mixed, ==, way->mixed);
      for (guint k = 0; way->where != NULL && k < way->where->problems->len; k++)
        g_assert_cmpint (sq_cover_problem (way->where, k)->code, !=, SQ_PROBLEM_ZIP_NO_PLACE);
    }
  g_assert_true (find (ways, SQ_BUILD_FOLDED_CORNER, FALSE, FALSE)->as->welt.at
                 == SQ_WELT_UNDERSIDE);
  g_assert_cmpuint (find (ways, SQ_BUILD_FOLDED_CORNER, FALSE, FALSE)->as->given
                        & (SQ_GIVEN_ZIP_PLACE | SQ_GIVEN_ZIP_EDGE | SQ_GIVEN_ZIP_FROM),
                    ==, 0);
}

/* A pair's figures are of both hands. */
static void
test_pair (void)
{
  g_autoptr (SqWays) one = ways_of (PLATE, NULL, FALSE);
  g_autoptr (SqWays) pair = ways_of ("'hand':'pair'," PLATE, NULL, FALSE);

  g_assert_cmpuint (sq_ways_way (pair, pair->in_use)->pieces, ==, 4);
  assert_mm (sq_ways_way (pair, pair->in_use)->minutes,
             2 * sq_ways_way (one, one->in_use)->minutes);
}

/* Nothing drawn yet: every way says so. */
static void
test_nothing_drawn (void)
{
  g_autoptr (SqWays) ways = ways_of ("'build':'boxed'", NULL, TRUE);

  for (guint i = 0; i < ways->ways->len; i++)
    if (sq_ways_way (ways, i)->build != SQ_BUILD_BOLSTER)
      g_assert_false (sq_ways_way (ways, i)->possible);
}

static gboolean
yes (gpointer data)
{
  (void) data;
  return TRUE;
}

static void
test_stopped (void)
{
  g_autoptr (SqJob) job = job_of (PLATE, NULL);
  const SqTask watch = { .is_cancelled = yes };

  g_assert_null (sq_ways_new (job, g_ptr_array_index (job->cushions, 0), TRUE, &watch));
}

int
main (int argc, char **argv)
{
  g_test_init (&argc, &argv, NULL);
  g_test_add_func ("/plan/ways/worked-plate", test_worked_plate);
  g_test_add_func ("/plan/ways/cost", test_cost);
  g_test_add_func ("/plan/ways/cost-not-known", test_cost_not_known);
  g_test_add_func ("/plan/ways/rates", test_rates);
  g_test_add_func ("/plan/ways/work", test_work);
  g_test_add_func ("/plan/ways/round", test_round);
  g_test_add_func ("/plan/ways/impossible", test_impossible);
  g_test_add_func ("/plan/ways/mixed", test_mixed);
  g_test_add_func ("/plan/ways/in-use", test_in_use);
  g_test_add_func ("/plan/ways/chosen", test_chosen);
  g_test_add_func ("/plan/ways/pair", test_pair);
  g_test_add_func ("/plan/ways/nothing-drawn", test_nothing_drawn);
  g_test_add_func ("/plan/ways/stopped", test_stopped);
  return g_test_run ();
}
