/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "papers/paper.h"

#include "papers/clean-page.h"
#include "papers/job-papers.h"

static void
test_samples (void)
{
  for (guint i = 0; samples[i] != NULL; i++)
    for (guint sheet = 0; sheet < SQ_N_SHEETS; sheet++)
      {
        g_autoptr (SqPaper) paper = paper_of_sample (samples[i], SQ_PAPER_LAYOUT, (SqSheet) sheet);
        g_test_message ("%s", samples[i]);
        assert_paper_is_clean (paper);
        g_assert_cmpfloat (sq_paper_page (paper, 0)->width_mm, ==,
                           sq_sheet_size_mm ((SqSheet) sheet).y);
        g_assert_true (has_text (paper, "cut end"));
        g_assert_true (has_text (paper, "RIGHT SIDE UP"));
        g_assert_false (has_text (paper, "Plies"));
      }
}

static guint
count_in_all (const SqPaper *paper, const char *wanted)
{
  guint count = 0;

  for (guint i = 0; i < paper->pages->len; i++)
    count += count_text (sq_paper_page (paper, i), wanted);
  return count;
}

/* Every copy stands in the table once. */
static void
test_table (void)
{
  g_autoptr (SqPaper) paper = paper_of_sample ("dining-pads", SQ_PAPER_LAYOUT, SQ_SHEET_A4);

  for (guint copy = 1; copy <= 8; copy++)
    {
      g_autofree char *words = g_strdup_printf ("%u of 8", copy);
      g_assert_cmpuint (count_in_all (paper, words), ==, 3); /* top, underside, boxing */
    }
}

/* A roll that goes on over several pages: each piece is drawn whole once. */
static void
test_long_roll (void)
{
  g_autofree char *text = many_cushions (40, "Ward room bench");

  for (guint sheet = 0; sheet < SQ_N_SHEETS; sheet++)
    {
      g_autoptr (SqPaper) paper = paper_of_text (text, SQ_PAPER_LAYOUT, (SqSheet) sheet);
      assert_paper_is_clean (paper);
      g_assert_cmpuint (paper->pages->len, >, sq_sheet_size_mm ((SqSheet) sheet).x < 250 ? 5 : 0);
      for (guint copy = 1; copy <= 40; copy++)
        {
          g_autofree char *name = g_strdup_printf ("%u  Top", copy);
          g_assert_cmpuint (count_in_all (paper, name), ==, 1);
        }
      g_assert_true (has_text (paper, "goes on at"));
    }
}

/* A lot is drawn as the cloth has it and, after that, as its plies lie on the table, lay by lay. */
static void
test_lot (void)
{
  static const char text[]
      = "{\"format\":\"squab job\",\"version\":1,\"units\":\"mm\",\"cloths\":[{\"id\":4,"
        "\"name\":\"Harbour canvas\",\"width\":1380}],\"laying\":{\"plies\":{\"most\":4,"
        "\"table\":2400}},\"cushions\":[{\"id\":1,\"count\":16,\"thickness\":60,\"cloth\":"
        "{\"face\":4},\"outline\":[{\"x\":0,\"y\":0},{\"x\":520,\"y\":0},{\"x\":480,"
        "\"y\":410},{\"x\":0,\"y\":430}]}]}";

  for (guint sheet = 0; sheet < SQ_N_SHEETS; sheet++)
    {
      g_autoptr (SqPaper) paper = paper_of_text (text, SQ_PAPER_LAYOUT, (SqSheet) sheet);
      assert_paper_is_clean (paper);
      g_assert_true (has_text (paper, "Plies: Harbour canvas"));
      g_assert_true (has_text (paper, "Lay 1 of "));
      g_assert_true (has_text (paper, "Lay 2 of "));
    }
}

static void
test_names (void)
{
  static const char *const names[] = { "玄関の座布団", "כרית", "وسادة",
                                       "N_a_m_e_w_i_t_h_o_u_t_s_p_a_c_e_s" };

  for (guint i = 0; i < G_N_ELEMENTS (names); i++)
    {
      g_autofree char *text = many_cushions (2, names[i]);
      g_autoptr (SqPaper) paper = paper_of_text (text, SQ_PAPER_LAYOUT, SQ_SHEET_A4);
      assert_paper_is_clean (paper);
    }
}

static void
test_unlaid (void)
{
  g_autoptr (SqPaper) paper = paper_of_text (
      "{'format':'squab job','version':1,'units':'mm','cloths':[{'id':1,'name':'Narrow','width':"
      "300}],'cushions':[{'id':1,'thickness':50,'build':'boxed','outline':[{'id':1,'x':0,'y':0},"
      "{'id':2,'x':600,'y':0},{'id':3,'x':600,'y':500},{'id':4,'x':0,'y':500}]}]}",
      SQ_PAPER_LAYOUT, SQ_SHEET_A4);

  assert_paper_is_clean (paper);
  g_assert_true (has_text (paper, "does not go on the cloth"));
}

/* Each strip is drawn under its name, with its flaws; every copy stands in the table once. */
static void
test_stock (void)
{
  static const char *const wanted[] = {
    "Remnant 1 · 900 × 800 mm",
    "Roll to buy · 1400 mm wide",
    "Nothing lies on Bolt 1.",
    "Hatched: flaws; nothing is cut from there.",
    "On",
  };

  for (guint sheet = 0; sheet < SQ_N_SHEETS; sheet++)
    {
      g_autoptr (SqPaper) paper = paper_of_text (
          "{'format':'squab job','version':1,'units':'mm','cloths':[{'id':1,'width':1400,'stock':["
          "{'id':1,'kind':'bolt','length':60},{'id':2,'kind':'remnant','length':900,'width':800}],"
          "'flaws':[{'id':1,'stock':2,'x':400,'y':300,'length':20,'width':20}]}],"
          "'cushions':[{'id':1,'count':3,'thickness':60,'outline':[{'id':1,'x':0,'y':0},"
          "{'id':2,'x':600,'y':0},{'id':3,'x':600,'y':500},{'id':4,'x':0,'y':500}]}]}",
          SQ_PAPER_LAYOUT, (SqSheet) sheet);
      assert_paper_is_clean (paper);
      for (guint i = 0; i < G_N_ELEMENTS (wanted); i++)
        {
          g_test_message ("%s", wanted[i]);
          g_assert_true (has_text (paper, wanted[i]));
        }
      for (guint copy = 1; copy <= 3; copy++)
        {
          g_autofree char *words = g_strdup_printf ("%u of 3", copy);
          g_assert_cmpuint (count_in_all (paper, words), >=, 4);
        }
    }
}

int
main (int argc, char **argv)
{
  g_test_init (&argc, &argv, NULL);
  g_test_add_func ("/papers/layout/samples", test_samples);
  g_test_add_func ("/papers/layout/table", test_table);
  g_test_add_func ("/papers/layout/long roll", test_long_roll);
  g_test_add_func ("/papers/layout/lot", test_lot);
  g_test_add_func ("/papers/layout/names", test_names);
  g_test_add_func ("/papers/layout/unlaid", test_unlaid);
  g_test_add_func ("/papers/layout/stock", test_stock);
  return g_test_run ();
}
