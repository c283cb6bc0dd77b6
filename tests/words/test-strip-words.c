/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "words/strip-words.h"

#include "cover/hand-made.h"
#include "words/lay-words.h"

static SqLays *
lays_with (const char *cloth, const char *more)
{
  const SqLayBudget first = { .seed = 1, .steps = 0 };
  g_autofree char *text = g_strdup_printf (
      "{'format':'squab job','version':1,'units':'in','cloths':[{'id':1,'width':1346.2%s}],"
      "'cushions':[{'id':1,'count':2,'thickness':60,'outline':[{'id':1,'x':0,'y':0},"
      "{'id':2,'x':600,'y':0},{'id':3,'x':600,'y':500},{'id':4,'x':0,'y':500}]}]%s}",
      cloth, more);
  g_autoptr (SqJob) job = job_of_text (text);
  g_autoptr (SqPlan) plan = sq_plan_new (job, NULL);
  return sq_lays_new (plan, NULL, &first, NULL);
}

#define STOCK                                                                                      \
  ",'stock':[{'id':9,'kind':'bolt','length':914.4},"                                               \
  "{'id':2,'kind':'remnant','length':1219.2,'width':762},{'id':4,'kind':'remnant','length':10}]"

static void
test_names (void)
{
  g_autoptr (SqLays) lays = lays_with (STOCK, "");
  const SqClothLay *cloth = sq_lays_cloth (lays, 0);
  SqLengthStyle style = sq_length_style_default (SQ_UNIT_IN);
  static const char *const names[] = { "Remnant 1 · 48 × 30 in", "Remnant 2 · 3/8 × 53 in",
                                       "Bolt 1 · 1.00 yd × 53 in", "Roll to buy · 53 in wide" };

  g_assert_true (sq_words_names_strips (cloth));
  for (guint i = 0; i < G_N_ELEMENTS (names); i++)
    {
      g_autofree char *name = sq_words_strip (lays, cloth, i, &style);
      g_assert_cmpstr (name, ==, names[i]);
    }
  g_autofree char *unused = sq_words_unused_stock (lays, cloth);
  g_assert_cmpstr (unused, ==, "Nothing lies on Remnant 2.");
}

/* With nothing in stock, nobody hears of strips. */
static void
test_alone (void)
{
  g_autoptr (SqLays) lays = lays_with ("", "");
  const SqClothLay *cloth = sq_lays_cloth (lays, 0);
  SqLengthStyle style = sq_length_style_default (SQ_UNIT_IN);
  g_autofree char *lying = sq_words_lying (lays, sq_lay_placed (cloth->lay, 0), &style);

  g_assert_false (sq_words_names_strips (cloth));
  g_assert_null (sq_words_unused_stock (lays, cloth));
  g_assert_null (strstr (lying, "oll"));
}

static void
test_lying (void)
{
  g_autoptr (SqLays) lays = lays_with (STOCK, "");
  const SqClothLay *cloth = sq_lays_cloth (lays, 0);
  SqLengthStyle style = sq_length_style_default (SQ_UNIT_IN);
  SqSheetTable table;

  sq_words_lay_table (&table, lays, 0, &style);
  g_assert_cmpstr (table.heads[4], ==, "On");
  g_assert_cmpstr (sq_sheet_cell (&table, 0, 4), ==, "Remnant 1");
  sq_sheet_table_clear (&table);
  for (guint i = 0; i < cloth->lay->placed->len; i++)
    {
      const SqPlaced *placed = sq_lay_placed (cloth->lay, i);
      g_autofree char *lying = sq_words_lying (lays, placed, &style);
      g_autofree char *strip = sq_words_strip_name (lays, cloth, placed->strip);
      g_autofree char *wanted = g_strdup_printf ("%s: ", strip);
      g_assert_true (g_str_has_prefix (lying, wanted));
    }
}

int
main (int argc, char **argv)
{
  g_test_init (&argc, &argv, NULL);
  g_test_add_func ("/words/strip-words/names", test_names);
  g_test_add_func ("/words/strip-words/alone", test_alone);
  g_test_add_func ("/words/strip-words/lying", test_lying);
  return g_test_run ();
}
