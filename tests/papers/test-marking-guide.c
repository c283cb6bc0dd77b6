/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "papers/paper.h"

#include "papers/clean-page.h"
#include "papers/job-papers.h"

/* A4 and Letter, and two that are much larger. */
static const SqSheet sheets[] = { SQ_SHEET_A4, SQ_SHEET_LETTER, SQ_SHEET_A1, SQ_SHEET_ANSI_C };

static guint
count_in_all (const SqPaper *paper, const char *wanted)
{
  guint count = 0;

  for (guint i = 0; i < paper->pages->len; i++)
    count += count_text (sq_paper_page (paper, i), wanted);
  return count;
}

static void
test_samples (void)
{
  for (guint i = 0; samples[i] != NULL; i++)
    for (guint sheet = 0; sheet < G_N_ELEMENTS (sheets); sheet++)
      {
        g_autoptr (SqPaper) paper = paper_of_sample (samples[i], SQ_PAPER_MARKING, sheets[sheet]);
        g_test_message ("%s", samples[i]);
        assert_paper_is_clean (paper);
        g_assert_true (has_text (paper, "Marking guide: "));
        g_assert_true (has_text (paper, "RIGHT SIDE UP"));
        g_assert_true (has_text (paper, "Square the cut end"));
        g_assert_true (has_text (paper, "keep guards on"));
        g_assert_false (has_text (paper, "…"));
      }
}

/* Every copy has its place, with its name once more where it goes on in the next column. */
static void
test_copies (void)
{
  g_autoptr (SqPaper) paper = paper_of_sample ("dining-pads", SQ_PAPER_MARKING, SQ_SHEET_A0);

  for (guint copy = 1; copy <= 8; copy++)
    {
      g_autofree char *words = g_strdup_printf ("%u of 8", copy);
      g_assert_cmpuint (count_in_all (paper, words), >=, 3); /* top, underside, boxing */
    }
  /* every top and underside has its points lettered, in the drawing and in the list */
  g_assert_cmpuint (count_in_all (paper, "a"), ==, 2 * 16);
  g_assert_cmpuint (count_in_all (paper, "d"), ==, 2 * 16);
  g_assert_cmpuint (count_in_all (paper, "STRIPS TO RIP OR CUT FIRST"), ==, 1);
}

static void
test_long_roll (void)
{
  g_autofree char *text = many_cushions (40, "Ward room bench");

  for (guint sheet = 0; sheet < G_N_ELEMENTS (sheets); sheet++)
    {
      g_autoptr (SqPaper) paper = paper_of_text (text, SQ_PAPER_MARKING, sheets[sheet]);
      assert_paper_is_clean (paper);
      g_assert_true (has_text (paper, "goes on at"));
      g_assert_false (has_text (paper, "…"));
    }
}

#define LOT(job)                                                                                   \
  "{'format':'squab job','version':1,'units':'mm','cloths':[{'id':4,'name':'Harbour canvas',"      \
  "'width':1380}],'laying':{'plies':{'most':4,'table':2400}}," job "'cushions':[{'id':1,"          \
  "'count':16,'thickness':60,'cloth':{'face':4},'outline':[{'x':0,'y':0},{'x':520,'y':0},{'x':"    \
  "480,'y':410},{'x':0,'y':430}]}]}"

/* Of a lot the top ply of each lay is marked, and nothing else. */
static void
test_lot (void)
{
  for (guint sheet = 0; sheet < G_N_ELEMENTS (sheets); sheet++)
    {
      g_autoptr (SqPaper) paper = paper_of_text (LOT (""), SQ_PAPER_MARKING, sheets[sheet]);
      assert_paper_is_clean (paper);
      g_assert_true (has_text (paper, "Marking guide, top ply: Harbour canvas"));
      g_assert_false (has_text (paper, "Marking guide: "));
      g_assert_true (has_text (paper, "Lay 1 of "));
      g_assert_true (has_text (paper, "Lay 2 of "));
    }
}

static void
test_wrong_side (void)
{
  g_autoptr (SqPaper) paper = paper_of_text (LOT ("'papers':{'marked_on':'wrong'},"),
                                             SQ_PAPER_MARKING, SQ_SHEET_A4);

  assert_paper_is_clean (paper);
  g_assert_true (has_text (paper, "WRONG SIDE UP"));
  g_assert_true (has_text (paper, "It is turned over"));
  g_assert_false (has_text (paper, "RIGHT SIDE UP"));
}

static void
test_names (void)
{
  static const char *const names[] = { "玄関の座布団", "כרית", "وسادة",
                                       "N_a_m_e_w_i_t_h_o_u_t_s_p_a_c_e_s" };

  for (guint i = 0; i < G_N_ELEMENTS (names); i++)
    {
      g_autofree char *text = many_cushions (2, names[i]);
      g_autoptr (SqPaper) paper = paper_of_text (text, SQ_PAPER_MARKING, SQ_SHEET_A4);
      assert_paper_is_clean (paper);
    }
}

/* Coated cloth is cut, and never with a hot knife. */
static void
test_vinyl (void)
{
  g_autoptr (SqPaper) paper = paper_of_text (
      "{'format':'squab job','version':1,'units':'mm','cloths':[{'id':1,'name':'Jetty red','class':"
      "'vinyl','width':1300}],'cushions':[{'id':1,'thickness':50,'outline':[{'id':1,'x':0,'y':0},"
      "{'id':2,'x':600,'y':0},{'id':3,'x':600,'y':500},{'id':4,'x':0,'y':500}]}]}",
      SQ_PAPER_MARKING, SQ_SHEET_A4);

  assert_paper_is_clean (paper);
  g_assert_true (has_text (paper, "STRIPS TO CUT FIRST"));
  g_assert_true (has_text (paper, "do not rip them"));
  g_assert_true (has_text (paper, "Never cut vinyl with a hot knife"));
  g_assert_false (has_text (paper, "Rip "));
}

/* What could not be laid is told; a cloth with nothing on it says so. */
static void
test_unlaid (void)
{
  g_autoptr (SqPaper) paper = paper_of_text (
      "{'format':'squab job','version':1,'units':'mm','cloths':[{'id':1,'name':'Narrow','width':"
      "30}],'cushions':[{'id':1,'thickness':50,'build':'knife-edge','zip':{'place':'none'},"
      "'outline':[{'id':1,'x':0,'y':0},{'id':2,'x':600,'y':0},{'id':3,'x':600,'y':500},{'id':4,"
      "'x':0,'y':500}]}]}",
      SQ_PAPER_MARKING, SQ_SHEET_A4);

  assert_paper_is_clean (paper);
  g_assert_true (has_text (paper, "does not go on the cloth"));
  g_assert_true (has_text (paper, "there is nothing to mark"));
}

/* Strip by strip, with its flaws, and how each is to be trimmed. */
static void
test_stock (void)
{
  static const char *const wanted[] = {
    "Remnant 1 · 900 × 800 mm",
    "Roll to buy · 1400 mm wide",
    "Nothing lies on Bolt 1.",
    "Mark the flaw: along 400 – 420, across 300 – 320.",
    "Trim it first to where the pattern begins",
    "STRIPS TO CUT FIRST", /* striped cloth is not ripped across */
  };

  for (guint sheet = 0; sheet < G_N_ELEMENTS (sheets); sheet++)
    {
      g_autoptr (SqPaper) paper = paper_of_text (
          "{'format':'squab job','version':1,'units':'mm','cloths':[{'id':1,'width':1400,'repeat':"
          "{'across':50},'stripes':[{'at':0,'width':20,'colour':'#204060'}],'stock':["
          "{'id':1,'kind':'bolt','length':60},{'id':2,'kind':'remnant','length':900,'width':800}],"
          "'flaws':[{'id':1,'stock':2,'x':400,'y':300,'length':20,'width':20}]}],"
          "'cushions':[{'id':1,'count':3,'thickness':60,'outline':[{'id':1,'x':0,'y':0},"
          "{'id':2,'x':600,'y':0},{'id':3,'x':600,'y':500},{'id':4,'x':0,'y':500}]}]}",
          SQ_PAPER_MARKING, sheets[sheet]);
      assert_paper_is_clean (paper);
      for (guint i = 0; i < G_N_ELEMENTS (wanted); i++)
        {
          g_test_message ("%s", wanted[i]);
          g_assert_true (has_text (paper, wanted[i]));
        }
    }
}

int
main (int argc, char **argv)
{
  g_test_init (&argc, &argv, NULL);
  g_test_add_func ("/papers/marking-guide/samples", test_samples);
  g_test_add_func ("/papers/marking-guide/copies", test_copies);
  g_test_add_func ("/papers/marking-guide/long roll", test_long_roll);
  g_test_add_func ("/papers/marking-guide/lot", test_lot);
  g_test_add_func ("/papers/marking-guide/wrong side", test_wrong_side);
  g_test_add_func ("/papers/marking-guide/names", test_names);
  g_test_add_func ("/papers/marking-guide/vinyl", test_vinyl);
  g_test_add_func ("/papers/marking-guide/unlaid", test_unlaid);
  g_test_add_func ("/papers/marking-guide/stock", test_stock);
  return g_test_run ();
}
