/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "plan/spreads.h"

#include "cover/hand-made.h"

static SqLays *
lays_of (const char *text)
{
  const SqLayBudget first = { .seed = 1 };
  g_autoptr (SqJob) job = job_of_text (text);
  g_autoptr (SqPlan) plan = sq_plan_new (job, NULL);

  return sq_lays_new (plan, NULL, &first, NULL);
}

/* @count covers of 500 × 450, with these keys of the cushion and further ones of cloth and job. */
static SqLays *
lays_with (guint count, const char *cushion, const char *cloth, const char *rest)
{
  g_autofree char *text = g_strdup_printf (
      "{'format':'squab job','version':1,'units':'mm','cloths':[{'id':1,'width':1100%s}],"
      "'cushions':[{'id':1,'count':%u,%s,'outline':[{'id':1,'x':0,'y':0},"
      "{'id':2,'x':500,'y':0},{'id':3,'x':500,'y':450},{'id':4,'x':0,'y':450}]}]%s}",
      cloth, count, cushion, rest);

  return lays_of (text);
}

/* Every copy of every line of the cut list is in one bundle; gives how many bundles there are. */
static guint
assert_each_once (const SqSpreads *spreads)
{
  const GArray *cut_list = spreads->lays->plan->cut_list;
  g_autoptr (GArray) bundles = sq_spreads_bundles (spreads, NULL);

  for (guint entry = 0; entry < cut_list->len; entry++)
    {
      guint count = g_array_index (cut_list, SqCutEntry, entry).count;
      g_autofree guint *seen = g_new0 (guint, count);
      for (guint i = 0; i < bundles->len; i++)
        {
          const SqBundle *bundle = &g_array_index (bundles, SqBundle, i);
          for (guint k = 0; bundle->entry == entry && k < bundle->count; k++)
            seen[bundle->first + k]++;
        }
      for (guint k = 0; k < count; k++)
        g_assert_cmpuint (seen[k], ==, 1);
    }
  return bundles->len;
}

static guint
n_pieces (const SqLays *lays)
{
  return sq_plan_figures (lays->plan).pieces;
}

/* In the order in which one comes upon them along the roll. */
static void
test_roll (void)
{
  g_autoptr (SqLays) lays = lays_with (5, "'thickness':60", "", "");
  g_autoptr (SqSpreads) spreads = sq_spreads_new (lays);
  const SqSpread *spread = sq_spreads_at (spreads, 0);
  const SqClothLay *cloth = sq_spread_cloth (spread);

  g_assert_cmpuint (spreads->all->len, ==, 1);
  g_assert_false (spread->is_lot);
  g_assert_cmpuint (spread->plies, ==, 1);
  g_assert_cmpuint (spread->number, ==, 1);
  g_assert_cmpuint (spread->n, ==, 1);
  g_assert_cmpfloat (spread->ply_mm, ==, sq_lay_length (cloth->lay, 0) / 1e3);
  g_assert_cmpuint (assert_each_once (spreads), ==, n_pieces (lays));

  g_autoptr (GArray) along = sq_lay_along (cloth->task, cloth->lay, 0);
  gint32 before = 0;
  g_assert_cmpuint (along->len, ==, cloth->lay->placed->len);
  for (guint i = 0; i < along->len; i++)
    {
      const SqPlaced *placed = sq_lay_placed (cloth->lay, g_array_index (along, guint, i));
      const SqLayItem *item = sq_lay_task_item (cloth->task, placed->item);
      gint32 x = placed->at.x + sq_lay_item_box (item, placed->pose).min.x;
      g_assert_cmpint (x, >=, before);
      before = x;
    }
}

static void
test_stock (void)
{
  g_autoptr (SqLays) lays = lays_with (
      4, "'thickness':60", ",'stock':[{'id':3,'kind':'remnant','length':900,'width':1000}]", "");
  g_autoptr (SqSpreads) spreads = sq_spreads_new (lays);

  g_assert_cmpuint (spreads->all->len, ==, 2);
  for (guint i = 0; i < 2; i++)
    {
      g_assert_cmpuint (sq_spreads_at (spreads, i)->number, ==, i + 1);
      g_assert_cmpuint (sq_spreads_at (spreads, i)->n, ==, 2);
      g_assert_cmpuint (sq_spreads_at (spreads, i)->strip, ==, i);
    }
  g_assert_cmpuint (assert_each_once (spreads), ==, n_pieces (lays));
}

/* Two plies deep, 49 of a piece make a bundle more than 48, half of which nobody wants. */
static void
test_lot (void)
{
  for (guint count = 48; count <= 49; count++)
    {
      g_autoptr (SqLays) lays = lays_with (count, "'thickness':60", ",'one_way':true",
                                           ",'laying':{'plies':{'most':2}}");
      const SqPlyLay *best = sq_plies_best (sq_lays_cloth (lays, 0)->plies);
      g_autoptr (SqSpreads) spreads = sq_spreads_new (lays);
      g_autoptr (GArray) bundles = sq_spreads_bundles (spreads, NULL);
      guint spares = 0;

      g_assert_cmpuint (best->plies, >, 1);
      g_assert_true (sq_spreads_at (spreads, 0)->is_lot);
      g_assert_cmpuint (sq_spreads_at (spreads, 0)->plies, ==, best->plies);
      g_assert_cmpfloat (sq_spreads_at (spreads, 0)->ply_mm, ==, best->longest_mm);
      g_assert_cmpuint (assert_each_once (spreads), ==, best->lay->placed->len);
      for (guint i = 0; i < bundles->len; i++)
        {
          const SqBundle *bundle = &g_array_index (bundles, SqBundle, i);
          g_assert_cmpuint (bundle->count + bundle->spares, ==, best->plies);
          spares += bundle->spares;
        }
      g_assert_cmpuint (spares, ==, best->spares);
      g_assert_cmpuint (spares > 0, ==, count == 49);
    }
}

/* What goes on no cloth comes last, each by itself. */
static void
test_unlaid (void)
{
  g_autoptr (SqLays) lays = lays_with (3, "'build':'boxed','thickness':1150", "", "");
  g_autoptr (SqSpreads) spreads = sq_spreads_new (lays);
  g_autoptr (GArray) bundles = sq_spreads_bundles (spreads, NULL);
  guint n_unlaid = sq_lays_n_unlaid (lays);

  g_assert_cmpuint (n_unlaid, >, 0);
  g_assert_cmpuint (assert_each_once (spreads), ==, n_pieces (lays));
  for (guint i = 0; i < bundles->len; i++)
    {
      const SqBundle *bundle = &g_array_index (bundles, SqBundle, i);
      g_assert_cmpint (bundle->spread < 0, ==, i >= bundles->len - n_unlaid);
      g_assert_cmpuint (bundle->count, ==, 1);
    }
}

static void
test_entries (void)
{
  g_autoptr (SqLays) lays = lays_with (3, "'thickness':60", "", "");
  g_autoptr (SqSpreads) spreads = sq_spreads_new (lays);
  g_autoptr (GArray) entries = g_array_new (FALSE, FALSE, sizeof (guint));
  const guint wanted = 1;

  g_array_append_val (entries, wanted);
  g_autoptr (GArray) bundles = sq_spreads_bundles (spreads, entries);
  g_assert_cmpuint (bundles->len, ==, 3);
  for (guint i = 0; i < bundles->len; i++)
    g_assert_cmpuint (g_array_index (bundles, SqBundle, i).entry, ==, wanted);
}

int
main (int argc, char **argv)
{
  g_test_init (&argc, &argv, NULL);
  g_test_add_func ("/plan/spreads/roll", test_roll);
  g_test_add_func ("/plan/spreads/stock", test_stock);
  g_test_add_func ("/plan/spreads/lot", test_lot);
  g_test_add_func ("/plan/spreads/unlaid", test_unlaid);
  g_test_add_func ("/plan/spreads/entries", test_entries);
  return g_test_run ();
}
