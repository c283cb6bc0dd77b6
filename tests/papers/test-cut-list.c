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
        g_autoptr (SqPaper) paper = paper_of_sample (samples[i], SQ_PAPER_CUT_LIST,
                                                     (SqSheet) sheet);
        g_test_message ("%s", samples[i]);
        assert_paper_is_clean (paper);
        g_assert_cmpfloat (sq_paper_page (paper, 0)->width_mm, ==,
                           sq_sheet_size_mm ((SqSheet) sheet).x);
      }
}

/* The worked plate: an 18 1/2 in square, 2 1/2 in thick, is cut 25 in square, its underside
 * 19 1/4 in: reckoned by hand. */
static void
test_says_it_all (void)
{
  g_autoptr (SqPaper) paper = paper_of_sample ("worked-plate", SQ_PAPER_CUT_LIST, SQ_SHEET_A4);
  const char *const wanted[] = { "Plate",   "Underside", "25 × 25",    "19 1⁄4 × 19 1⁄4",
                                 "cut 1",   "ZIP",       "FOAM",       "TOTALS",
                                 "AT WORK", "front",     "Page 1 of 2" };

  for (guint i = 0; i < G_N_ELEMENTS (wanted); i++)
    if (!has_text (paper, wanted[i]))
      g_error ("“%s” is not on the paper", wanted[i]);
}

static void
assert_names_fit (const char *name, guint n)
{
  g_autofree char *text = many_cushions (n, name);

  for (guint sheet = 0; sheet < SQ_N_SHEETS; sheet++)
    {
      g_autoptr (SqPaper) paper = paper_of_text (text, SQ_PAPER_CUT_LIST, (SqSheet) sheet);
      assert_paper_is_clean (paper);
    }
}

static void
test_names (void)
{
  assert_names_fit ("Seat", 2);
  assert_names_fit ("玄関の座布団と窓際の長椅子のためのクッション", 2);
  assert_names_fit ("כרית המושב הקדמי", 2);
  assert_names_fit ("وسادة المقعد", 2);
  assert_names_fit ("The_seat_that_has_a_name_without_a_single_space_in_it_from_end_to_end_and_on",
                    2);
  assert_names_fit ("i", 1);
}

static void
test_forty_cushions (void)
{
  assert_names_fit ("Ward room bench", 40);
}

static void
test_nothing (void)
{
  g_autoptr (SqPaper) paper = paper_of_text ("{'format':'squab job','version':1,'cushions':[]}",
                                             SQ_PAPER_CUT_LIST, SQ_SHEET_A4);

  assert_paper_is_clean (paper);
  g_assert_cmpuint (paper->pages->len, ==, 1);
}

int
main (int argc, char **argv)
{
  g_test_init (&argc, &argv, NULL);
  g_test_add_func ("/papers/cut list/samples", test_samples);
  g_test_add_func ("/papers/cut list/says it all", test_says_it_all);
  g_test_add_func ("/papers/cut list/names", test_names);
  g_test_add_func ("/papers/cut list/forty cushions", test_forty_cushions);
  g_test_add_func ("/papers/cut list/nothing", test_nothing);
  return g_test_run ();
}
