/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "words/marking-words.h"

#include "base/units.h"
#include "cover/hand-made.h"

#include <string.h>

static SqLays *
lays_with (const char *cloth)
{
  g_autofree char *text = g_strdup_printf (
      "{'format':'squab job','version':1,'units':'in','cloths':[{'id':1,'width':1371.6%s}],"
      "'cushions':[{'id':1,'count':2,'thickness':76.2,'outline':[{'id':1,'x':0,'y':0},"
      "{'id':2,'x':609.6,'y':0},{'id':3,'x':609.6,'y':508,'radius':50.8},{'id':4,'x':0,'y':508}]}]"
      "}",
      cloth);
  g_autoptr (SqJob) job = job_of_text (text);
  g_autoptr (SqPlan) plan = sq_plan_new (job, NULL);
  return sq_lays_new (plan, NULL, &(SqLayBudget){ .seed = 1 }, NULL);
}

static void
test_letters (void)
{
  static const struct
  {
    guint i;
    const char *letters;
  } cases[] = { { 0, "a" }, { 25, "z" }, { 26, "aa" }, { 27, "ab" }, { 52, "ba" }, { 702, "aaa" } };

  for (guint i = 0; i < G_N_ELEMENTS (cases); i++)
    {
      g_autofree char *letters = sq_words_mark_letter (cases[i].i);
      g_assert_cmpstr (letters, ==, cases[i].letters);
    }
}

static void
test_before (void)
{
  g_autoptr (SqLays) lays = lays_with (",'flaws':[{'id':1,'x':2540,'y':25.4,'length':12.7,"
                                       "'width':50.8}],'repeat':{'across':50.8,'along':100}");
  SqLengthStyle style = sq_length_style_default (SQ_UNIT_IN);
  g_autoptr (SqMarking) marking = sq_marking_new (lays, 0, 0, FALSE, &style);
  g_autoptr (GPtrArray) before = sq_words_marking_before (lays, marking, &style);

  g_assert_cmpuint (before->len, ==, 2);
  g_assert_cmpstr (g_ptr_array_index (before, 0), ==, "Square the cut end to the near edge.");
  g_assert_cmpstr (g_ptr_array_index (before, 1), ==,
                   "Mark the flaw: along 100 – 100 1/2, across 1 – 3. Nothing is cut from there.");
  g_assert_true (strstr (sq_words_marking_lie (TRUE), "wrong side up") != NULL);
  g_assert_true (strstr (sq_words_marking_lie (FALSE), "right side up") != NULL);
}

/* Texts of straight cuts; what is not woven plainly is cut, and nobody is told to rip it. */
static void
test_cuts (void)
{
  static const char *const classes[] = { "canvas", "vinyl" };

  for (guint i = 0; i < G_N_ELEMENTS (classes); i++)
    {
      g_autofree char *keys = g_strdup_printf (",'class':'%s'", classes[i]);
      g_autoptr (SqLays) lays = lays_with (keys);
      SqLengthStyle style = sq_length_style_default (SQ_UNIT_IN);
      g_autoptr (SqMarking) marking = sq_marking_new (lays, 0, 0, FALSE, &style);
      const char *verb = i == 0 ? "Rip" : "Cut";
      g_array_set_size (marking->cuts, 0);
      const SqStraightCut cuts[] = { { TRUE, 101.6, 0, 1371.6, TRUE, TRUE },
                                     { FALSE, 63.5, 101.6, 609.6, FALSE, TRUE },
                                     { FALSE, 63.5, 0, 254, TRUE, FALSE } };
      g_array_append_vals (marking->cuts, cuts, G_N_ELEMENTS (cuts));
      g_autofree char *across = sq_words_straight_cut (lays, marking, 0, &style);
      g_autofree char *along = sq_words_straight_cut (lays, marking, 1, &style);
      g_autofree char *across_wanted = g_strdup_printf ("%s across at 4", verb);
      g_autofree char *along_wanted = g_strdup_printf ("%s along at 2\xc2\xa0"
                                                       "1/2: 4 – 24",
                                                       verb);
      g_assert_cmpstr (across, ==, across_wanted);
      g_assert_cmpstr (along, ==, along_wanted);
      g_autofree char *a_short_one = sq_words_straight_cut (lays, marking, 2, &style);
      g_assert_true (g_str_has_prefix (a_short_one, "Cut along at "));
      g_assert_cmpstr (sq_words_strips_first (lays, marking), ==,
                       i == 0 ? "STRIPS TO RIP OR CUT FIRST" : "STRIPS TO CUT FIRST");
      g_assert_true ((strstr (sq_words_strips_how (lays, marking), "Snip the edge") != NULL)
                     == (i == 0));
    }
}

/* Every point of every piece is told, its figures the exact ones rounded once; of a straight rectangle
 * its ranges alone. */
static void
test_points (void)
{
  g_autoptr (SqLays) lays = lays_with ("");
  SqLengthStyle style = sq_length_style_default (SQ_UNIT_IN);
  g_autoptr (SqMarking) marking = sq_marking_new (lays, 0, 0, TRUE, &style);
  guint arcs = 0, rectangles = 0;

  for (guint i = 0; i < marking->pieces->len; i++)
    {
      const SqMarkedPiece *piece = sq_marked_piece (marking, i);
      const GArray *points = sq_marked_piece_ring (piece, 0);
      g_autoptr (GPtrArray) ranges = sq_words_mark_ranges (marking, i, &style);
      g_autofree char *name = sq_words_marked (lays, marking, i);
      SqSheetTable table;
      sq_words_mark_points (&table, marking, i, &style);
      g_assert_true (g_ascii_isdigit (name[0]) && strstr (name, "  ") != NULL);
      g_assert_cmpuint (ranges->len, ==, piece->is_rectangle ? 2 : 0);
      g_assert_cmpuint (table.rows->len, ==, piece->is_rectangle ? 0 : points->len);
      rectangles += piece->is_rectangle;
      for (guint k = 0; k < table.rows->len; k++)
        {
          const SqMarkPoint *point = sq_mark_point (points, k);
          double mm;
          g_assert_cmpint (
              sq_length_parse (sq_sheet_cell (&table, k, 1), SQ_UNIT_IN, '.', &mm, NULL), ==,
              SQ_LENGTH_OK);
          g_assert_cmpfloat (fabs (mm - point->at.x), <=,
                             SQ_MM_PER_INCH / (point->is_fine ? 64 : 32) + 1e-6);
          if (!point->is_middle)
            continue;
          arcs++;
          g_assert_true (g_str_has_prefix (sq_sheet_cell (&table, k, 3), "arc, R 2"));
        }
      sq_sheet_table_clear (&table);
    }
  g_assert_cmpuint (arcs, ==, 4); /* a rounding on each of two tops and two undersides */
  g_assert_cmpuint (rectangles, >, 0);
}

static void
test_copies (void)
{
  g_autoptr (SqLays) lays = lays_with ("");
  const SqBundle single = { 0, 1, 1, 0, 0 }, both = { 0, 0, 2, 0, 0 }, spare = { 0, 2, 0, 1, 0 };
  g_autofree char *second = sq_words_marked_copies (lays, &single);
  g_autofree char *all = sq_words_marked_copies (lays, &both);
  g_autofree char *none = sq_words_marked_copies (lays, &spare);

  g_assert_cmpstr (second, ==, "2 of 2");
  g_assert_cmpstr (all, ==, "1–2 of 2");
  g_assert_cmpstr (none, ==, "spare");
}

int
main (int argc, char **argv)
{
  g_test_init (&argc, &argv, NULL);
  g_test_add_func ("/words/marking-words/letters", test_letters);
  g_test_add_func ("/words/marking-words/before", test_before);
  g_test_add_func ("/words/marking-words/cuts", test_cuts);
  g_test_add_func ("/words/marking-words/points", test_points);
  g_test_add_func ("/words/marking-words/copies", test_copies);
  return g_test_run ();
}
