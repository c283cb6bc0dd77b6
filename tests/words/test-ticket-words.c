/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "words/ticket-words.h"

#include "cover/hand-made.h"

static SqSpreads *
spreads_of (guint width, const char *cloth, const char *rest, guint count)
{
  const SqLayBudget first = { .seed = 1 };
  g_autofree char *text = g_strdup_printf (
      "{'format':'squab job','version':1,'units':'mm','cloths':[{'id':1,'name':'Canvas','width':"
      "%u%s}],'cushions':[{'id':1,'name':'Bench','count':%u,'thickness':60,'outline':["
      "{'id':1,'x':0,'y':0},{'id':2,'x':500,'y':0},{'id':3,'x':500,'y':450},{'id':4,'x':0,"
      "'y':450}]}]%s}",
      width, cloth, count, rest);
  g_autoptr (SqJob) job = job_of_text (text);
  g_autoptr (SqPlan) plan = sq_plan_new (job, NULL);
  g_autoptr (SqLays) lays = sq_lays_new (plan, NULL, &first, NULL);

  return sq_spreads_new (lays);
}

static void
test_roll (void)
{
  SqLengthStyle style = sq_length_style_default (SQ_UNIT_MM);
  g_autoptr (SqSpreads) spreads = spreads_of (1100, "", "", 2);
  const SqSpread *spread = sq_spreads_at (spreads, 0);
  SqSpread known = *spread;
  known.ply_mm = 1234.4;
  g_autofree char *lay = sq_words_ticket_lay (spread);
  g_autofree char *name = sq_words_ticket_name (spread);
  g_autofree char *plies = sq_words_ticket_plies (&known, &style);
  g_autofree char *from = sq_words_ticket_from (&known, &style);

  g_assert_cmpstr (lay, ==, "Lay 1 of 1");
  g_assert_cmpstr (name, ==, "Canvas, lay 1 of 1");
  g_assert_cmpstr (plies, ==, "1 ply, 1234 mm long");
  g_assert_cmpstr (from, ==, "From: Roll to buy · 1100 mm wide");
  g_assert_null (sq_words_ticket_up (spread));
}

/* Two plies: how much is spread in all, where the cloth's up is. */
static void
test_lot (void)
{
  SqLengthStyle style = sq_length_style_default (SQ_UNIT_MM);
  g_autoptr (SqSpreads) spreads = spreads_of (1100, ",'one_way':true",
                                              ",'laying':{'plies':{'most':2}}", 48);
  SqSpread known = *sq_spreads_at (spreads, 0);
  known.ply_mm = 2400;
  g_autofree char *plies = sq_words_ticket_plies (&known, &style);
  g_autofree char *from = sq_words_ticket_from (&known, &style);

  g_assert_cmpstr (plies, ==, "2 plies, each 2400 mm long");
  g_assert_cmpstr (from, ==, "From: Roll to buy · 1100 mm wide · 4.80 m in all");
  g_assert_cmpstr (sq_words_ticket_up (&known), ==,
                   "One-way cloth: its up to the right, the same in every ply");
}

/* Rows add up to the cut list's counts and to the last row; spares are told. */
static void
test_table (void)
{
  g_autoptr (SqSpreads) spreads = spreads_of (1100, ",'one_way':true",
                                              ",'laying':{'plies':{'most':2}}", 49);
  const GArray *cut_list = spreads->lays->plan->cut_list;
  SqSheetTable table;

  g_assert_cmpuint (spreads->all->len, ==, 1);
  sq_words_ticket_table (&table, spreads, 0);
  g_assert_cmpuint (table.rows->len, ==, cut_list->len + 1);
  for (guint row = 0; row < cut_list->len; row++)
    {
      g_assert_cmpstr (sq_sheet_cell (&table, row, 2), ==, "");
      g_assert_cmpstr (sq_sheet_cell (&table, row, 3), ==, "25");
      g_assert_cmpstr (sq_sheet_cell (&table, row, 4), ==, "50");
      g_assert_cmpstr (sq_sheet_cell (&table, row, 5), ==, "1");
    }
  g_autofree char *sum = g_strdup_printf ("%u", 50 * cut_list->len);
  g_assert_cmpstr (sq_sheet_cell (&table, cut_list->len, 1), ==, "All pieces");
  g_assert_cmpstr (sq_sheet_cell (&table, cut_list->len, 4), ==, sum);
  sq_sheet_table_clear (&table);
}

/* Neither face of 500 goes on a cloth of 300. */
static void
test_unlaid (void)
{
  g_autoptr (SqSpreads) spreads = spreads_of (1100, "", "", 3);
  g_autoptr (SqSpreads) narrow = spreads_of (300, "", "", 1);
  g_autofree char *none = sq_words_ticket_unlaid (spreads, 0);
  g_autofree char *text = sq_words_ticket_unlaid (narrow, 0);

  g_assert_null (none);
  g_assert_cmpstr (text, ==,
                   "2 pieces of this cloth are in no lay: see the layout for the reason.");
}

int
main (int argc, char *argv[])
{
  g_test_init (&argc, &argv, NULL);
  g_test_add_func ("/words/ticket/roll", test_roll);
  g_test_add_func ("/words/ticket/lot", test_lot);
  g_test_add_func ("/words/ticket/table", test_table);
  g_test_add_func ("/words/ticket/unlaid", test_unlaid);
  return g_test_run ();
}
