/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "papers/paper.h"

#include "papers/clean-page.h"
#include "papers/job-papers.h"
#include "plan/spreads.h"

static const SqSheet sheets[] = { SQ_SHEET_A4, SQ_SHEET_LETTER, SQ_SHEET_A3 };

static guint
count_in_all (const SqPaper *paper, const char *wanted)
{
  guint count = 0;

  for (guint i = 0; i < paper->pages->len; i++)
    count += count_text (sq_paper_page (paper, i), wanted);
  return count;
}

static SqPaper *
tickets_of (const SqLays *lays, SqSheet sheet, gboolean wrong_side)
{
  SqPaperSpec spec = spec_of_lays (lays, sheet);

  spec.wrong_side = wrong_side;
  return sq_paper_new (SQ_PAPER_TICKETS, &spec);
}

/* A ticket for each lay, with all its boxes, whichever side is up. */
static void
assert_tickets (const SqLays *lays, SqSheet sheet)
{
  g_autoptr (SqSpreads) spreads = sq_spreads_new (lays);
  static const char *const words[] = {
    "First-off approved", "Spread", "Cut", "Bundled", "Counted", "date", "All pieces"
  };

  for (guint wrong = 0; wrong < 2; wrong++)
    {
      g_autoptr (SqPaper) paper = tickets_of (lays, sheet, wrong == 1);
      assert_paper_is_clean (paper);
      for (guint i = 0; i < G_N_ELEMENTS (words); i++)
        g_assert_cmpuint (count_in_all (paper, words[i]), ==, spreads->all->len);
      g_assert_cmpuint (count_in_all (paper, "RIGHT SIDE UP"), ==, wrong ? 0 : spreads->all->len);
      g_assert_cmpuint (count_in_all (paper, "WRONG SIDE UP"), ==, wrong ? spreads->all->len : 0);
      g_assert_false (has_text (paper, "…"));
    }
}

static void
test_samples (void)
{
  for (guint i = 0; samples[i] != NULL; i++)
    {
      g_autoptr (SqLays) lays = lays_of_sample (samples[i]);
      g_test_message ("%s", samples[i]);
      for (guint k = 0; k < G_N_ELEMENTS (sheets); k++)
        assert_tickets (lays, sheets[k]);
    }
}

/* Covers cut two plies deep, on a table: each lay has its ticket. */
static void
test_lot (void)
{
  g_autoptr (SqLays) lays = lays_of_text (
      "{'format':'squab job','version':1,'units':'mm','cloths':[{'id':4,'name':'Canvas',"
      "'width':1100,'one_way':true,'up':'start'}],'laying':{'plies':{'most':2,'table':5000}},"
      "'cushions':[{'id':1,'count':49,'thickness':60,'outline':[{'id':1,'x':0,'y':0},"
      "{'id':2,'x':500,'y':0},{'id':3,'x':500,'y':450},{'id':4,'x':0,'y':450}]}]}");
  const SqPlyLay *best = sq_plies_best (sq_lays_cloth (lays, 0)->plies);
  g_autoptr (SqPaper) paper = tickets_of (lays, SQ_SHEET_A4, FALSE);

  g_assert_cmpuint (best->plies, ==, 2);
  g_assert_cmpuint (best->lays, >, 2);
  for (guint k = 0; k < G_N_ELEMENTS (sheets); k++)
    assert_tickets (lays, sheets[k]);
  for (guint i = 1; i <= best->lays; i++)
    {
      g_autofree char *lay = g_strdup_printf ("Lay %u of %u", i, best->lays);
      g_assert_cmpuint (count_in_all (paper, lay), ==, 1);
    }
  g_assert_true (has_text (paper, "2 plies, each "));
  g_assert_true (has_text (paper, "Spare"));
  g_assert_cmpuint (
      count_in_all (paper, "One-way cloth: its up to the left, the same in every ply"), ==,
      best->lays);
}

/* Two small tickets on one page, with a line to cut between them and their entries in the outline. */
static void
test_two_on_a_page (void)
{
  g_autoptr (SqLays) lays = lays_of_sample ("bay-seat");
  g_autoptr (SqPaper) paper = tickets_of (lays, SQ_SHEET_A4, FALSE);

  g_assert_cmpuint (lays->cloths->len, ==, 2);
  g_assert_cmpuint (paper->pages->len, ==, 1);
  g_assert_cmpstr (sq_paper_page (paper, 0)->bookmark, ==,
                   "Harbour stripe, lay 1 of 1\nSlate canvas, lay 1 of 1");
}

/* A table that is longer than a page goes on under its heads, and a lay that is too long to be drawn is
 * on the layout. */
static void
test_long (void)
{
  g_autofree char *text = many_cushions (40, "Ward room bench");
  g_autoptr (SqLays) lays = lays_of_text (text);

  for (guint k = 0; k < G_N_ELEMENTS (sheets); k++)
    {
      g_autoptr (SqPaper) paper = tickets_of (lays, sheets[k], FALSE);
      assert_paper_is_clean (paper);
      g_assert_cmpuint (paper->pages->len, >, 1);
      g_assert_true (has_text (paper, "lay 1 of 1, continued"));
      g_assert_true (has_text (paper, "see the layout"));
      g_assert_cmpuint (count_in_all (paper, "In a ply"), >=, paper->pages->len - 1);
      for (guint i = 1; i <= 40; i++)
        {
          g_autofree char *name = g_strdup_printf ("Ward room bench %u", i);
          g_assert_true (has_text (paper, name));
        }
    }
}

static void
test_stock (void)
{
  g_autoptr (SqPaper) paper = paper_of_text (
      "{'format':'squab job','version':1,'units':'mm','cloths':[{'id':1,'width':1400,'stock':["
      "{'id':2,'kind':'remnant','length':900,'width':800}]}],"
      "'cushions':[{'id':1,'count':3,'thickness':60,'outline':[{'id':1,'x':0,'y':0},"
      "{'id':2,'x':600,'y':0},{'id':3,'x':600,'y':500},{'id':4,'x':0,'y':500}]}]}",
      SQ_PAPER_TICKETS, SQ_SHEET_A4);

  assert_paper_is_clean (paper);
  g_assert_true (has_text (paper, "From: Remnant 1 · 900 × 800 mm"));
  g_assert_true (has_text (paper, "From: Roll to buy · 1400 mm wide"));
  g_assert_true (has_text (paper, "Lay 2 of 2"));
}

static void
test_names (void)
{
  static const char *const names[] = { "玄関の座布団", "כרית המושב", "وسادة",
                                       "N_a_m_e_w_i_t_h_o_u_t_s_p_a_c_e_s_from_end_to_end_and_on" };

  for (guint i = 0; i < G_N_ELEMENTS (names); i++)
    {
      g_autofree char *text = g_strdup_printf (
          "{'format':'squab job','version':1,'units':'in','title':'%s','customer':'%s',"
          "'cloths':[{'id':1,'name':'%s'}],'cushions':[{'id':1,'name':'%s','hand':'pair',"
          "'thickness':76.2,'outline':[{'x':0,'y':0},{'x':500,'y':0},{'x':500,'y':400},"
          "{'x':0,'y':400}]}]}",
          names[i], names[i], names[i], names[i]);
      g_autoptr (SqPaper) paper = paper_of_text (text, SQ_PAPER_TICKETS, SQ_SHEET_A4);
      assert_paper_is_clean (paper);
    }
}

/* What no cloth can take is told; where there is nothing at all, that. */
static void
test_nothing (void)
{
  g_autoptr (SqPaper) narrow = paper_of_text (
      "{'format':'squab job','version':1,'units':'mm','cloths':[{'id':1,'name':'Narrow','width':"
      "40}],'cushions':[{'id':1,'thickness':50,'build':'boxed','outline':[{'id':1,'x':0,'y':0},"
      "{'id':2,'x':600,'y':0},{'id':3,'x':600,'y':500},{'id':4,'x':0,'y':500}]}]}",
      SQ_PAPER_TICKETS, SQ_SHEET_A4);
  g_autoptr (SqPaper) empty = paper_of_text ("{'format':'squab job','version':1,'cushions':[]}",
                                             SQ_PAPER_TICKETS, SQ_SHEET_A4);

  assert_paper_is_clean (narrow);
  g_assert_true (has_text (narrow, "pieces of this cloth are in no lay"));
  assert_paper_is_clean (empty);
  g_assert_true (has_text (empty, "There is no piece to cut."));
}

int
main (int argc, char **argv)
{
  g_test_init (&argc, &argv, NULL);
  g_test_add_func ("/papers/tickets/samples", test_samples);
  g_test_add_func ("/papers/tickets/lot", test_lot);
  g_test_add_func ("/papers/tickets/two on a page", test_two_on_a_page);
  g_test_add_func ("/papers/tickets/long", test_long);
  g_test_add_func ("/papers/tickets/stock", test_stock);
  g_test_add_func ("/papers/tickets/names", test_names);
  g_test_add_func ("/papers/tickets/nothing", test_nothing);
  return g_test_run ();
}
