/* SPDX-License-Identifier: GPL-3.0-or-later */
/* A face wider than its cloth of 1346.2, and the ways out. Allowances are 12.7. */
#include "plan/wide.h"

#include "cover/hand-made.h"

#define CLOTH "'cloths':[{'id':1,'price':20}],"

static SqWide *
wide_of (double width, double depth, const char *keys, const char *rest, gboolean with_lays,
         SqJob **job)
{
  g_autofree char *outline = rectangle (width, depth, (const char *const[4]){ 0 });
  g_autofree char *cushion = g_strconcat ("'build':'boxed',", keys, outline, NULL);
  g_autoptr (SqJob) own = job_of (cushion, rest);
  SqWide *wide = sq_wide_new (own, g_ptr_array_index (own->cushions, 0), with_lays, NULL);

  if (job != NULL)
    *job = g_steal_pointer (&own);
  return wide;
}

static const SqWideWay *
find (const SqWide *wide, SqWideKind kind)
{
  for (guint i = 0; i < wide->ways->len; i++)
    if (sq_wide_way (wide, i)->kind == kind)
      return sq_wide_way (wide, i);
  return NULL;
}

static void
test_not_wide (void)
{
  g_autoptr (SqWide) wide = wide_of (1300, 600, "", NULL, FALSE, NULL);

  g_assert_cmpuint (wide->ways->len, ==, 0);
}

/* 1800 × 600, cut 1825.4: two joins go; two cushions of 900; turned it is 625.4 across; a cloth of
 * 1825.4 takes it. */
static void
test_all_four (void)
{
  g_autoptr (SqJob) job = NULL;
  g_autoptr (SqWide) wide = wide_of (1800, 600, "", CLOTH, TRUE, &job);

  g_assert_cmpuint (wide->ways->len, ==, SQ_N_WIDE_KINDS);
  g_assert_cmpint (wide->in_use, ==, -1);
  for (guint i = 0; i < SQ_N_WIDE_KINDS; i++)
    {
      const SqWideWay *way = sq_wide_way (wide, i);
      const SqWayCloth *cloth = &g_array_index (way->way.cloths, SqWayCloth, 0);
      g_assert_true (way->way.possible);
      /* at least the whole seat and its underside out of the greatest width there is */
      g_assert_cmpfloat (cloth->buy_mm * fmax (1346.2, way->width_mm), >, 2 * 1800 * 600);
      if (way->kind == SQ_WIDE_CLOTH)
        g_assert_true (isnan (cloth->cost));
      else
        g_assert_cmpfloat_with_epsilon (cloth->cost, 20 * cloth->buy_mm / 1000, 1e-9);
    }
  g_assert_cmpuint (find (wide, SQ_WIDE_DIVIDE)->cushions->len, ==, 2);
  g_assert_cmpfloat_with_epsilon (find (wide, SQ_WIDE_CLOTH)->width_mm, 1825.4, 0.02);
  /* each face in three, and four joins of 600 more than turned */
  g_assert_cmpuint (find (wide, SQ_WIDE_TWO_JOINS)->way.pieces, ==,
                    find (wide, SQ_WIDE_TURN)->way.pieces + 4);
  g_assert_cmpfloat_with_epsilon (find (wide, SQ_WIDE_TWO_JOINS)->way.seam_mm,
                                  find (wide, SQ_WIDE_TURN)->way.seam_mm + 2400, 200);
}

/* 2700: halves are 1350, cut 1375.4, and so too wide; three of 900, beside each other, stand at
 * their neighbours. */
static void
test_fewest_parts (void)
{
  g_autoptr (SqJob) job = NULL;
  g_autoptr (SqWide) wide = wide_of (2700, 600, "'name':'Bench',", NULL, FALSE, &job);
  const SqWideWay *way = find (wide, SQ_WIDE_DIVIDE);
  const SqCushion *old = job->cushions->pdata[0];
  g_autoptr (SqJob) changed = sq_wide_apply (way, old, job);

  g_assert_cmpuint (way->cushions->len, ==, 3);
  g_assert_cmpuint (changed->cushions->len, ==, 3);
  for (guint i = 0; i < 3; i++)
    {
      const SqCushion *part = changed->cushions->pdata[i];
      g_autoptr (SqPath) path = sq_outline_path (part->outline, 0, NULL);
      SqBox box = sq_path_box (path);
      guint n, neighbours = 0;
      const SqCorner *ring = sq_outline_ring (part->outline, 0, &n);
      assert_mm (box.min.x, 900.0 * i);
      assert_mm (box.max.x, 900.0 * (i + 1));
      for (guint k = 0; k < n; k++)
        neighbours += ring[k].kind == SQ_EDGE_NEIGHBOUR ? 1 : 0;
      g_assert_cmpuint (neighbours, ==, i == 1 ? 2 : 1);
      for (guint k = 0; k < i; k++)
        g_assert_cmpuint (part->id, !=, ((const SqCushion *) changed->cushions->pdata[k])->id);
    }
  g_assert_cmpuint (((const SqCushion *) changed->cushions->pdata[0])->id, ==, old->id);
}

/* 3000 × 1500: too much for two joins, with sides of 839.6 it goes; 5000 does not. Turned it is
 * 1525.4 across, and says so. What is joined already is known to be. */
static void
test_impossible (void)
{
  g_autoptr (SqWide) wide = wide_of (5000, 1500, "'seams_across':'two',", NULL, FALSE, NULL);
  const SqWideWay *joins = find (wide, SQ_WIDE_TWO_JOINS), *turn = find (wide, SQ_WIDE_TURN);

  g_assert_cmpint (wide->in_use, ==, SQ_WIDE_TWO_JOINS);
  g_assert_false (joins->way.possible);
  g_assert_cmpint (joins->way.why.code, ==, SQ_PROBLEM_ACROSS_NO_PLACE);
  g_assert_false (turn->way.possible);
  g_assert_cmpint (turn->way.why.code, ==, SQ_PROBLEM_WIDER_THAN_CLOTH);
  g_assert_cmpuint (find (wide, SQ_WIDE_DIVIDE)->cushions->len, ==, 4);
  g_assert_true (find (wide, SQ_WIDE_CLOTH)->way.possible);
}

/* A stripe centred at 25 of every 110: the near half of 1825.4 asks for 912.7, so the middle lies at
 * 25 + 9 × 110 = 1015, and 912.7 beyond. */
static void
test_pattern (void)
{
  const char *cloth = "'cloths':[{'id':1,'repeat':{'across':110},'stripes':[{'at':10,'width':30,"
                      "'colour':'#203050'}]}],";
  g_autoptr (SqWide) wide = wide_of (1800, 600, "", cloth, TRUE, NULL);
  const SqWideWay *wider = find (wide, SQ_WIDE_CLOTH);

  g_assert_cmpfloat_with_epsilon (wider->width_mm, 1015 + 912.7, 0.02);
  g_assert_true (wider->way.possible);
  g_assert_false (isnan (g_array_index (wider->way.cloths, SqWayCloth, 0).buy_mm));
  g_assert_false (
      isnan (g_array_index (find (wide, SQ_WIDE_TWO_JOINS)->way.cloths, SqWayCloth, 0).buy_mm));
}

/* What is there of the cloth is the whole job's: each way tells what it takes. */
static void
test_stock (void)
{
  g_autoptr (SqWide) wide = wide_of (
      1800, 600, "",
      "'cloths':[{'id':1,'price':20,'stock':[{'id':1,'kind':'bolt','length':20000}]}],", TRUE,
      NULL);

  for (guint i = 0; i < wide->ways->len; i++)
    g_assert_cmpfloat (g_array_index (sq_wide_way (wide, i)->way.cloths, SqWayCloth, 0).buy_mm, >,
                       1200);
}

int
main (int argc, char **argv)
{
  g_test_init (&argc, &argv, NULL);
  g_test_add_func ("/wide/not-wide", test_not_wide);
  g_test_add_func ("/wide/all-four", test_all_four);
  g_test_add_func ("/wide/fewest-parts", test_fewest_parts);
  g_test_add_func ("/wide/impossible", test_impossible);
  g_test_add_func ("/wide/pattern", test_pattern);
  g_test_add_func ("/plan/wide/stock", test_stock);
  return g_test_run ();
}
