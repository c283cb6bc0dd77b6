/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "plan/plies.h"

#include "cover/hand-made.h"

/* So many flat covers of 500 × 450, 60 thick, with these further keys of the cloth and of the job. */
static SqPlan *
plan_of (guint count, const char *cloth, const char *laying)
{
  g_autofree char *text = g_strdup_printf (
      "{'format':'squab job','version':1,'units':'mm','cloths':[{'id':1,'width':1100%s}],"
      "'laying':{%s},"
      "'cushions':[{'id':1,'count':%u,'thickness':60,'outline':[{'id':1,'x':0,'y':0},{'id':2,'x':"
      "500,'y':0},{'id':3,'x':500,'y':450},{'id':4,'x':0,'y':450}]}]}",
      cloth, laying, count);
  g_autoptr (SqJob) job = job_of_text (text);
  return sq_plan_new (job, NULL);
}

static guint
wanted (const SqPlan *plan, guint line)
{
  return g_array_index (plan->cut_list, SqCutEntry, line).count;
}

/* No depth takes 3 % less cloth than the best, and none as good in that takes less time. */
static void
assert_best (const SqPlies *plies)
{
  const SqPlyLay *best = sq_plies_best (plies);
  double least_mm = HUGE_VAL;

  for (guint i = 0; i < plies->depths->len; i++)
    {
      g_assert_cmpuint (sq_ply_lay (plies, i)->unlaid, ==, best->unlaid);
      least_mm = fmin (least_mm, sq_ply_lay (plies, i)->buy_mm);
    }
  g_assert_cmpfloat (best->buy_mm, <=, 1.03 * least_mm);
  for (guint i = 0; i < plies->depths->len; i++)
    if (sq_ply_lay (plies, i)->buy_mm <= 1.03 * least_mm)
      g_assert_cmpfloat (best->minutes, <=, sq_ply_lay (plies, i)->minutes);
}

/* What holds of each depth, counted anew. */
static void
assert_right (const SqPlan *plan, const SqPlyLay *depth)
{
  guint spares = 0;
  double table_mm = plan->job->laying.table_mm;

  g_assert_true (sq_lay_is_valid (depth->task, depth->lay));
  for (guint i = 0; i < depth->task->items->len; i++)
    {
      const SqLayItem *item = sq_lay_task_item (depth->task, i);
      guint laid = 0;
      for (guint k = 0; k < depth->lay->placed->len; k++)
        laid += sq_lay_placed (depth->lay, k)->item == i;
      /* as many as are wanted, and not a copy more than that takes */
      g_assert_cmpuint (laid * depth->plies, >=, wanted (plan, item->tag));
      g_assert_cmpuint ((laid - 1) * depth->plies, <, wanted (plan, item->tag));
      spares += laid * depth->plies - wanted (plan, item->tag);
    }
  g_assert_cmpuint (depth->spares, ==, spares);
  for (guint i = 0; table_mm > 0 && i < depth->task->strips->len; i++)
    g_assert_cmpfloat (sq_lay_length (depth->lay, i) / 1e3, <=, table_mm);
  if (table_mm > 0)
    g_assert_cmpfloat (depth->longest_mm, <=, table_mm);
  g_assert_cmpfloat (depth->buy_mm, >=, depth->cloth_mm);
}

static void
test_not_asked_for (void)
{
  g_autoptr (SqPlan) plan = plan_of (12, "", "");

  g_assert_false (sq_job_has_plies (plan->job));
  g_autoptr (SqPlies) plies = sq_plies_new (plan, 1, NULL);
  g_assert_cmpuint (plies->depths->len, ==, 1);
  g_assert_cmpuint (sq_plies_best (plies)->plies, ==, 1);
}

/* Of twelve covers 1, 2, 3, 4, 6 and 12 deep cut 12, 6, 4, 3, 2 and 1 in a ply; 5 deep cuts 3 as 4
 * does, 7 to 11 deep cut 2 as 6 does. A cover has four pieces or more, with demands that are
 * multiples of twelve: depths whose copies are fewer for them stay in. */
static void
test_depths (void)
{
  g_autoptr (SqPlan) plan = plan_of (12, "", "'plies':{'most':12}");
  g_autoptr (SqPlies) plies = sq_plies_new (plan, 1, NULL);
  guint before = 0;

  g_assert_true (sq_job_has_plies (plan->job));
  g_assert_cmpuint (sq_ply_lay (plies, 0)->plies, ==, 1);
  for (guint i = 0; i < plies->depths->len; i++)
    {
      const SqPlyLay *depth = sq_ply_lay (plies, i);
      g_assert_cmpuint (depth->plies, >, before);
      before = depth->plies;
      assert_right (plan, depth);
      g_assert_cmpuint (depth->lays, ==, 1);
    }
  g_assert_cmpuint (before, ==, 12);
  assert_best (plies);
  const SqPlyLay *deepest = sq_ply_lay (plies, plies->depths->len - 1);
  g_assert_cmpuint (deepest->spares, ==, 0);
  assert_mm (deepest->cloth_mm, 12 * deepest->longest_mm);
  assert_mm (deepest->longest_mm, sq_lay_length (deepest->lay, 0) / 1e3 + SQ_PLY_ENDS_MM);
  /* 4 minutes a piece; a minute a ply and half a one a metre */
  assert_mm (sq_ply_lay (plies, 0)->minutes, 4.0 * sq_ply_lay (plies, 0)->lay->placed->len);
  assert_mm (deepest->minutes,
             4.0 * deepest->lay->placed->len + 12 + 0.5 * deepest->cloth_mm / 1e3);
}

/* A lot of sixty, up to four deep: one ply takes the least cloth by a little, and hours more. */
static void
test_time (void)
{
  g_autoptr (SqPlan) plan = plan_of (60, "", "'plies':{'most':4}");
  g_autoptr (SqPlies) plies = sq_plies_new (plan, 1, NULL);
  const SqPlyLay *one = sq_ply_lay (plies, 0), *best = sq_plies_best (plies);

  assert_best (plies);
  g_assert_cmpfloat (best->buy_mm, >, one->buy_mm);
  g_assert_cmpuint (best->plies, >, 1);
  g_assert_cmpfloat (best->minutes, <, one->minutes - 60);
}

/* Twelve rows of two faces or undersides, 475.4 each, are 5.7 m without the boxing: on a table of 2 m
 * more than three lays in turn. */
static void
test_table (void)
{
  g_autoptr (SqPlan) plan = plan_of (12, "", "'plies':{'most':4,'table':2000}");
  g_autoptr (SqPlies) plies = sq_plies_new (plan, 1, NULL);

  for (guint i = 0; i < plies->depths->len; i++)
    assert_right (plan, sq_ply_lay (plies, i));
  g_assert_cmpuint (sq_ply_lay (plies, 0)->lays, >, 3);
  g_assert_cmpuint (sq_ply_lay (plies, 0)->unlaid, ==, 0);
}

static gboolean
goes_on (const SqPiece *piece, double table_mm, double width_mm)
{
  gboolean upright = piece->height_mm <= table_mm && piece->width_mm <= width_mm;
  gboolean turned = piece->width_mm <= table_mm && piece->height_mm <= width_mm;

  return upright || (turned && piece->turns >= SQ_TURNS_QUARTER);
}

/* Pieces that are longer than the table are told, as often as they are wanted. */
static void
test_short_table (void)
{
  g_autoptr (SqPlan) plan = plan_of (5, "", "'plies':{'most':2,'table':300}");
  g_autoptr (SqPlies) plies = sq_plies_new (plan, 1, NULL);
  guint expected = 0;

  for (guint i = 0; i < plan->cut_list->len; i++)
    {
      const SqCutEntry *entry = &g_array_index (plan->cut_list, SqCutEntry, i);
      const SqPiece *piece = sq_cover_piece (sq_plan_cover (plan, entry->cushion), entry->piece);
      if (!goes_on (piece, 300, 1100))
        expected += entry->count;
    }
  g_assert_cmpuint (expected, >=, 10);
  for (guint i = 0; i < plies->depths->len; i++)
    g_assert_cmpuint (sq_ply_lay (plies, i)->unlaid, ==, expected);
}

/* Plies of a cloth that has to match begin where its pattern does: each takes whole repeats. */
static void
test_repeat (void)
{
  g_autoptr (SqPlan) plan = plan_of (
      6, ",'repeat':{'across':100,'along':160},'stripes':[{'at':30,'width':20,'colour':'#203050'}]",
      "'plies':{'most':3}");
  g_autoptr (SqPlies) plies = sq_plies_new (plan, 1, NULL);

  for (guint i = 1; i < plies->depths->len; i++)
    {
      const SqPlyLay *depth = sq_ply_lay (plies, i);
      double laid_mm = sq_lay_length (depth->lay, 0) / 1e3;
      assert_right (plan, depth);
      assert_mm (remainder (depth->longest_mm, 160), 0);
      g_assert_cmpfloat (depth->longest_mm, >=, laid_mm + SQ_PLY_ENDS_MM);
      g_assert_cmpfloat (depth->longest_mm, <, laid_mm + SQ_PLY_ENDS_MM + 160);
    }
}

/* On a table of 2,000 a ply takes 12 repeats of 160 at most, with its ends. */
static void
test_repeat_on_table (void)
{
  g_autoptr (SqPlan) plan = plan_of (
      12,
      ",'repeat':{'across':100,'along':160},'stripes':[{'at':30,'width':20,'colour':'#203050'}]",
      "'plies':{'most':3,'table':2000}");
  g_autoptr (SqPlies) plies = sq_plies_new (plan, 1, NULL);

  for (guint i = 0; i < plies->depths->len; i++)
    {
      const SqPlyLay *depth = sq_ply_lay (plies, i);
      assert_right (plan, depth);
      g_assert_cmpuint (depth->lays, >, 1);
      g_assert_cmpfloat (depth->longest_mm, <=, 1920);
      for (guint k = 0; k < depth->task->strips->len; k++)
        g_assert_cmpfloat (sq_lay_length (depth->lay, k) / 1e3, <=, 1920 - SQ_PLY_ENDS_MM);
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
  g_autoptr (SqPlan) plan = plan_of (12, "", "'plies':{'most':4}");
  const SqTask watch = { .is_cancelled = is_cancelled };

  g_assert_null (sq_plies_new (plan, 1, &watch));
}

int
main (int argc, char *argv[])
{
  g_test_init (&argc, &argv, NULL);
  g_test_add_func ("/plies/not-asked-for", test_not_asked_for);
  g_test_add_func ("/plies/depths", test_depths);
  g_test_add_func ("/plies/time", test_time);
  g_test_add_func ("/plies/table", test_table);
  g_test_add_func ("/plies/short-table", test_short_table);
  g_test_add_func ("/plies/repeat", test_repeat);
  g_test_add_func ("/plies/repeat-on-table", test_repeat_on_table);
  g_test_add_func ("/plies/stopped", test_stopped);
  return g_test_run ();
}
