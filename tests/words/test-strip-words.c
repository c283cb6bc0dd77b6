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
  g_autofree char *reckoned = sq_words_reckoned (lays, cloth, &style);
  g_assert_true (g_str_has_prefix (reckoned, "Laid on Remnant 1, Bolt 1."));
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

/* A patterned piece is trimmed to where the program takes the pattern to begin. */
static void
test_trim (void)
{
  static const struct
  {
    const char *cloth, *remnant, *bolt;
  } cases[] = {
    { STOCK, NULL, NULL },
    { STOCK ",'repeat':{'across':100}", "its near edge", NULL },
    { STOCK ",'repeat':{'along':300}", "its cut end", "its cut end" },
    { STOCK ",'repeat':{'across':100,'along':300}", "its cut end and its near edge",
      "its cut end" },
  };

  for (guint i = 0; i < G_N_ELEMENTS (cases); i++)
    {
      g_autoptr (SqLays) lays = lays_with (cases[i].cloth, "");
      const SqClothLay *cloth = sq_lays_cloth (lays, 0);
      const char *remnant = sq_words_trim_first (lays, cloth, 0);
      const char *bolt = sq_words_trim_first (lays, cloth, 2);
      g_assert_true ((remnant != NULL) == (cases[i].remnant != NULL));
      g_assert_true ((bolt != NULL) == (cases[i].bolt != NULL));
      g_assert_true (remnant == NULL || strstr (remnant, cases[i].remnant) != NULL);
      g_assert_true (bolt == NULL || strstr (bolt, cases[i].bolt) != NULL);
      g_assert_null (sq_words_trim_first (lays, cloth, 3));
    }
}

/* The cut list tells how many sheets of foam it takes, and what goes on none. */
static void
test_foam_sheets (void)
{
  static const struct
  {
    const char *foam, *size, *sheets;
  } cases[] = {
    { "", "80 × 48", "1" },
    { ",'foams':[{'id':1,'material':'seat','sheet':{'length':609.6,'width':609.6}}]", "24 × 24",
      "0, and 2 parts larger than a sheet: glue them up" },
  };

  for (guint i = 0; i < G_N_ELEMENTS (cases); i++)
    {
      g_autoptr (SqLays) lays = lays_with ("", cases[i].foam);
      SqLengthStyle style = sq_length_style_default (SQ_UNIT_IN);
      g_autoptr (SqCutSheet) sheet = sq_cut_sheet_new (lays->plan, lays, &style);
      g_autoptr (SqCutSheet) without = sq_cut_sheet_new (lays->plan, NULL, &style);
      g_assert_cmpuint (sheet->foam_sheets.rows->len, ==, 1);
      g_assert_cmpstr (sq_sheet_cell (&sheet->foam_sheets, 0, 2), ==, cases[i].size);
      g_assert_cmpstr (sq_sheet_cell (&sheet->foam_sheets, 0, 4), ==, cases[i].sheets);
      g_assert_cmpuint (without->foam_sheets.rows->len, ==, 0);
    }
}

/* Each pin that can't be kept says why, and the piece is laid all the same. */
static void
test_bad_pins (void)
{
  static const struct
  {
    const char *pin, *why;
  } cases[] = {
    { "'copy':1,'x':-5,'y':300,'turn':90",
      "Top, 2 of 2 can’t lie where it was pinned: it would leave "
      "the cloth. It is laid elsewhere." },
    { "'x':600,'y':600,'turn':45", "it may not be turned like that" },
    { "'x':1300,'y':400,'turn':90", "it would lie on a flaw" },
  };

  for (guint i = 0; i < G_N_ELEMENTS (cases); i++)
    {
      g_autofree char *pins = g_strdup_printf (",'pins':[{'cloth':1,'cushion':1,'role':'face',%s}]",
                                               cases[i].pin);
      g_autoptr (SqLays) lays = lays_with (
          ",'flaws':[{'id':1,'x':800,'y':700,'length':5,'width':5}]", pins);
      const SqClothLay *cloth = sq_lays_cloth (lays, 0);
      g_assert_cmpuint (cloth->task->bad_pins->len, ==, 1);
      g_autofree char *text = sq_words_bad_pin (lays, cloth, 0);
      g_test_message ("%s", text);
      g_assert_nonnull (strstr (text, cases[i].why));
      g_assert_cmpuint (cloth->purchase.unlaid, ==, 0);
    }
}

/* Of two in one place the first is kept. */
static void
test_pins_meet (void)
{
  g_autoptr (SqLays) lays = lays_with (
      "", ",'pins':[{'cloth':1,'cushion':1,'role':'face','x':600,'y':100,'turn':90},"
          "{'cloth':1,'cushion':1,'role':'face','copy':1,'x':700,'y':100,'turn':90}]");
  const SqClothLay *cloth = sq_lays_cloth (lays, 0);
  guint n_pinned = 0;

  g_assert_cmpuint (cloth->task->pins->len, ==, 1);
  g_autofree char *text = sq_words_bad_pin (lays, cloth, 0);
  g_assert_nonnull (strstr (text, "2 of 2"));
  g_assert_nonnull (strstr (text, "it would lie on another pinned piece"));
  for (guint i = 0; i < cloth->lay->placed->len; i++)
    n_pinned += sq_lays_is_pinned (cloth, sq_lay_placed (cloth->lay, i));
  g_assert_cmpuint (n_pinned, ==, 1);
}

int
main (int argc, char **argv)
{
  g_test_init (&argc, &argv, NULL);
  g_test_add_func ("/words/strip-words/names", test_names);
  g_test_add_func ("/words/strip-words/alone", test_alone);
  g_test_add_func ("/words/strip-words/lying", test_lying);
  g_test_add_func ("/words/strip-words/trim", test_trim);
  g_test_add_func ("/words/strip-words/foam-sheets", test_foam_sheets);
  g_test_add_func ("/words/strip-words/bad-pins", test_bad_pins);
  g_test_add_func ("/words/strip-words/pins-meet", test_pins_meet);
  return g_test_run ();
}
