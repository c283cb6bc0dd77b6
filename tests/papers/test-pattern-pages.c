/* SPDX-License-Identifier: GPL-3.0-or-later */
/* What stands on the pages of patterns: words, squares, figures; and that they can be read. */
#include <string.h>

#include "geometry/box-clip.h"
#include "papers/clean-page.h"
#include "papers/job-papers.h"
#include "papers/pattern.h"
#include "words/pattern-words.h"

#define MARGIN_MM 10.0

/* A large plain seat, longer than it is deep. */
#define BENCH                                                                                      \
  "{'format':'squab job','version':1,'units':'mm','title':'Slipway','cushions':[{'id':1,"          \
  "'thickness':76.2,'build':'boxed','outline':[{'id':1,'x':0,'y':0,'front':true},{'id':2,"         \
  "'x':1200,'y':0},{'id':3,'x':1200,'y':500},{'id':4,'x':0,'y':500}]}]}"

static SqPatternChoice
choice_of (SqSheet sheet, double roll_mm)
{
  return (SqPatternChoice){
    .sheet = sheet, .roll_mm = roll_mm, .margin_mm = MARGIN_MM, .overlap_mm = 10
  };
}

/* The paper of the job that @text describes. */
static SqPaper *
pattern_of_text (const char *text, const SqPatternChoice *choice, gboolean wrong_side)
{
  g_autoptr (SqLays) lays = lays_of_text (text);
  SqPaperSpec spec = spec_of_lays (lays, SQ_SHEET_A4);

  spec.pattern = *choice;
  spec.wrong_side = wrong_side;
  return sq_paper_new (SQ_PAPER_PATTERN, &spec);
}

static SqPage
drawn_page (const SqPaper *paper, guint i)
{
  SqPage page = *sq_paper_page (paper, i);

  page.scene = sq_paper_page_scene (paper, i);
  return page;
}

/* --- words ---------------------------------------------------------------------------------- */

/* What is drawn of a piece. */
static gboolean
is_piece_pen (SqPen pen)
{
  return pen <= SQ_PEN_ZIP || pen == SQ_PEN_INK;
}

/* No line of a piece runs through a text, but for names of neighbours where an edge is full of lines. */
static void
check_texts_on_lines (const SqPage *page)
{
  for (guint t = 0; t < sq_scene_n_items (page->scene); t++)
    {
      const SqItem *item = sq_scene_item (page->scene, t);
      const SqText *text = item->kind == SQ_ITEM_TEXT ? sq_scene_text (page->scene, item->text)
                                                      : NULL;
      if (text == NULL || strlen (text->text) <= 3)
        continue;
      gboolean is_upright = fabs (sin (text->angle_rad)) > 0.9;
      SqVector half = sq_point (text->width_mm / 2, SQ_TEXT_HEIGHT_EM * text->em_mm / 2);
      if (is_upright)
        half = sq_point (half.y, half.x);
      if (!is_upright && fabs (sin (text->angle_rad)) > 0.1)
        continue;
      SqBox box = { sq_sub (text->at, half), sq_add (text->at, half) };
      for (guint i = 0; i < sq_scene_n_items (page->scene); i++)
        {
          const SqItem *stroke = sq_scene_item (page->scene, i);
          for (guint k = 0;
               stroke->kind == SQ_ITEM_STROKE && is_piece_pen (stroke->pen) && k < stroke->n_lines;
               k++)
            {
              const SqSceneLine *line = sq_scene_line (page->scene, stroke->first_line + k);
              g_autoptr (SqPath) path = sq_path_new (sq_scene_nodes (page->scene, line), line->n,
                                                     line->is_ring);
              g_autoptr (GArray) parts = sq_path_in_box (path, box);
              if (parts->len > 0)
                g_error ("a line (%s) runs through “%s”", sq_pen_name (stroke->pen), text->text);
            }
        }
    }
}

/* How many texts have @part in them. */
static guint
count_with (const SqPage *page, const char *part)
{
  guint n = 0;

  for (guint i = 0; i < sq_scene_n_items (page->scene); i++)
    {
      const SqItem *item = sq_scene_item (page->scene, i);
      n += item->kind == SQ_ITEM_TEXT
           && strstr (sq_scene_text (page->scene, item->text)->text, part) != NULL;
    }
  return n;
}

/* Every page of a piece has its name in the caption; on one of them it stands on the piece as well, on all
 * where several lie on a sheet and there is room. */
static void
check_names (const SqPaper *paper)
{
  const SqPattern *pattern = paper->source;

  for (guint i = 0; i < pattern->sheets->pieces->len; i++)
    {
      const SqPatternPiece *piece = sq_pattern_piece (pattern->sheets, i);
      g_autofree char *name = sq_words_pattern_name (pattern->plan, piece->entry);
      guint n = 0;
      if (piece->grid == NULL)
        continue;
      for (guint k = piece->first; k <= piece->last; k++)
        {
          SqPage page = drawn_page (paper, pattern->n_before + k);
          gboolean is_alone = sq_pattern_sheet (pattern->sheets, k)->n_parts == 1;
          g_assert_true (count_with (&page, name) >= 1 || !is_alone);
          n += count_text (&page, name) - (is_alone && pattern->plan->covers->len == 1);
          g_assert_cmpuint (count_with (&page, name), <=, 2);
          sq_scene_unref (page.scene);
        }
      g_assert_cmpuint (n, >=, 1);
      g_assert_cmpuint (n, <=, piece->last - piece->first + 1);
    }
}

static void
check_pages (const SqPaper *paper, const char *side_up)
{
  const SqPattern *pattern = paper->source;

  for (guint i = 0; i < paper->pages->len; i++)
    {
      SqPage page = drawn_page (paper, i);
      g_autofree char *number = g_strdup_printf ("Page %u of %u", i + 1, paper->pages->len);
      assert_page_is_clean (&page, MARGIN_MM - 0.001);
      g_assert_cmpuint (count_text (&page, number), ==, 1);
      g_assert_cmpfloat (page.height_mm, <=, SQ_PATTERN_LONGEST_MM + 1);
      if (i >= pattern->n_before)
        {
          g_assert_cmpuint (count_text (&page, side_up), >=, 1);
          check_texts_on_lines (&page);
        }
      sq_scene_unref (page.scene);
    }
}

/* All samples on all papers; lines, side and corners in turn, so that each of them is seen with each
 * paper. */
static void
test_all_ways (void)
{
  const SqPatternChoice papers[] = { choice_of (SQ_SHEET_A4, 0), choice_of (SQ_SHEET_LETTER, 0),
                                     choice_of (SQ_SHEET_A0, 0), choice_of (SQ_SHEET_A4, 914) };

  for (guint i = 0; samples[i] != NULL; i++)
    {
      g_autoptr (SqLays) lays = lays_of_sample (samples[i]);
      for (guint k = 0; k < G_N_ELEMENTS (papers) * 3; k++)
        {
          SqPaperSpec spec = spec_of_lays (lays, SQ_SHEET_A4);
          guint turn = i + k / G_N_ELEMENTS (papers);
          spec.pattern = papers[k % G_N_ELEMENTS (papers)];
          spec.pattern.lines = (SqPatternLines) (turn % 3);
          spec.pattern.corners_only = turn / 3 % 2 == 1;
          spec.wrong_side = (turn + k) % 2 == 1;
          g_autoptr (SqPaper) paper = sq_paper_new (SQ_PAPER_PATTERN, &spec);
          check_pages (paper, spec.wrong_side ? "WRONG SIDE UP" : "RIGHT SIDE UP");
          check_names (paper);
        }
    }
}

static gboolean
says (const SqPaper *paper, const char *part)
{
  for (guint p = 0; p < paper->pages->len; p++)
    {
      g_autoptr (SqScene) scene = sq_paper_page_scene (paper, p);
      for (guint i = 0; i < sq_scene_n_items (scene); i++)
        {
          const SqItem *item = sq_scene_item (scene, i);
          if (item->kind == SQ_ITEM_TEXT
              && strstr (sq_scene_text (scene, item->text)->text, part) != NULL)
            return TRUE;
        }
    }
  return FALSE;
}

static void
test_words (void)
{
  SqPatternChoice choice = choice_of (SQ_SHEET_A4, 0);
  g_autoptr (SqPaper) both = pattern_of_text (BENCH, &choice, FALSE);
  choice.lines = SQ_PATTERN_SEW;
  g_autoptr (SqPaper) sew = pattern_of_text (BENCH, &choice, TRUE);

  g_assert_true (says (both, "TOP · RIGHT SIDE UP"));
  g_assert_true (says (both, "UNDERSIDE · RIGHT SIDE UP"));
  g_assert_true (says (both, "FRONT"));
  g_assert_true (says (both, "Outline equals its own mirror image"));
  g_assert_true (says (both, "Slipway · Revision A"));
  g_assert_false (says (both, "NOT included"));
  g_assert_true (says (sew, "UNDERSIDE · WRONG SIDE UP"));
  g_assert_true (says (sew, "seam allowance NOT included"));
  g_assert_true (says (sew, "12.7 mm"));
  g_assert_true (says (both, "Blades, needles and saws"));
}

/* Names in several scripts, and one that never ends. */
static void
test_names (void)
{
  const char *names[] = { "窓辺の座布団", "מושב חלון", "مقعد النافذة",
                          "A cushion for the bench that runs along all three sides of the old "
                          "boat shed’s upper room, with a window in each of them" };

  for (guint i = 0; i < G_N_ELEMENTS (names); i++)
    {
      SqPatternChoice choice = choice_of (i % 2 == 0 ? SQ_SHEET_A4 : SQ_SHEET_A1, 0);
      g_autofree char *text = many_cushions (2, names[i]);
      g_autoptr (SqPaper) paper = pattern_of_text (text, &choice, FALSE);
      check_pages (paper, "RIGHT SIDE UP");
      check_names (paper);
      g_assert_true (says (paper, "cut 1"));
      g_autofree char *start = g_utf8_substring (names[i], 0,
                                                 MIN (8, g_utf8_strlen (names[i], -1)));
      g_assert_true (says (paper, start));
    }
}

/* --- squares -------------------------------------------------------------------------------- */

/* Fine squares of exactly that side on @page. */
static guint
count_squares (const SqPage *page, double side_mm)
{
  guint n = 0;

  for (guint i = 0; i < sq_scene_n_items (page->scene); i++)
    {
      const SqItem *item = sq_scene_item (page->scene, i);
      for (guint k = 0;
           item->kind == SQ_ITEM_STROKE && item->pen == SQ_PEN_RULE && k < item->n_lines; k++)
        {
          const SqSceneLine *line = sq_scene_line (page->scene, item->first_line + k);
          if (line->n != 4 || !line->is_ring)
            continue;
          g_autoptr (SqPath) ring = sq_path_new (sq_scene_nodes (page->scene, line), 4, TRUE);
          SqBox box = sq_path_box (ring);
          n += fabs (box.max.x - box.min.x - side_mm) < 1e-9
               && fabs (box.max.y - box.min.y - side_mm) < 1e-9;
        }
    }
  return n;
}

static void
check_squares (const SqPage *page)
{
  g_assert_cmpuint (count_squares (page, 100), ==, 1);
  g_assert_cmpuint (count_squares (page, 101.6), ==, 1);
}

static void
test_squares (void)
{
  const double rolls_mm[] = { 0, 0, 0, 130, 305, 914, 1000 };
  const SqSheet sheets[] = { SQ_SHEET_A4, SQ_SHEET_LETTER, SQ_SHEET_A0, SQ_SHEET_A4,
                             SQ_SHEET_A4, SQ_SHEET_A4,     SQ_SHEET_A4 };

  for (guint i = 0; i < G_N_ELEMENTS (sheets); i++)
    {
      SqPatternChoice choice = choice_of (sheets[i], rolls_mm[i]);
      g_autoptr (SqLays) lays = lays_of_text (BENCH);
      SqPaperSpec spec = spec_of_lays (lays, SQ_SHEET_A4);
      choice.overlap_mm = 0;
      spec.pattern = choice;
      g_assert_true (sq_paper_spec_check (&spec, 1 << SQ_PAPER_PATTERN, NULL));
      g_autoptr (SqPaper) paper = sq_paper_new (SQ_PAPER_PATTERN, &spec);
      g_autoptr (SqPaper) test = sq_test_page_new (&spec);
      SqPage first = drawn_page (paper, 0);
      check_squares (&first);
      sq_scene_unref (first.scene);
      g_assert_cmpint (test->kind, ==, SQ_PAPER_PATTERN);
      g_assert_cmpuint (test->pages->len, ==, 1);
      check_squares (sq_paper_page (test, 0));
      assert_page_is_clean (sq_paper_page (test, 0), MARGIN_MM - 0.001);
      g_assert_cmpuint (count_with (sq_paper_page (test, 0), "TEST PAGE"), ==, 1);
    }
}

/* --- corners -------------------------------------------------------------------------------- */

/* The bench's top is cut 12.7 larger all round: 1225.4 × 525.4, its diagonals 1333.3. Each corner has at
 * least 80 mm of both legs. */
static void
test_corners (void)
{
  SqPatternChoice choice = choice_of (SQ_SHEET_A4, 0);
  choice.corners_only = TRUE;
  g_autoptr (SqPaper) paper = pattern_of_text (BENCH, &choice, FALSE);
  const SqPattern *pattern = paper->source;
  const SqPatternPiece *top = sq_pattern_piece (pattern->sheets, 0);
  g_autoptr (GArray) diagonals = sq_corner_diagonals (top->corners);

  g_assert_cmpuint (top->corners->patches->len, ==, 4);
  g_assert_cmpuint (diagonals->len, ==, 2);
  g_assert_true (says (paper, "A to B 1225 mm"));
  g_assert_true (says (paper, "B to C 525 mm"));
  g_assert_true (says (paper, "A to C 1333 mm"));
  g_assert_true (says (paper, "B to D 1333 mm"));
  g_assert_true (says (paper, "corners only"));
  for (guint i = 0; i < 4; i++)
    {
      g_autoptr (GArray) parts = sq_path_in_box (sq_piece_cut (top->piece, 0),
                                                 sq_corner_patch (top->corners, i)->window);
      g_assert_cmpuint (parts->len, ==, 1);
      g_assert_cmpfloat_with_epsilon (sq_path_length_mm (g_array_index (parts, SqPathPart, 0).path),
                                      2 * SQ_CORNER_LEG_MM, 1e-6);
    }
  choice.corners_only = FALSE;
  g_autoptr (SqPaper) all = pattern_of_text (BENCH, &choice, FALSE);
  g_assert_cmpuint (paper->pages->len, <, all->pages->len / 2);
}

/* --- the rest ------------------------------------------------------------------------------- */

/* The cut lines of a mirrored pattern are mirrored, and no text is. */
static void
test_wrong_side (void)
{
  SqPatternChoice choice = choice_of (SQ_SHEET_A0, 0);
  g_autoptr (SqPaper) paper = pattern_of_text (BENCH, &choice, TRUE);
  const SqPattern *pattern = paper->source;

  for (guint i = 0; i < pattern->sheets->parts->len; i++)
    {
      const SqPatternPart *part = sq_pattern_part (pattern->sheets, i);
      const SqPatternPiece *piece = sq_pattern_piece (pattern->sheets, part->piece);
      SqVector x = sq_pattern_posed (part->pose, sq_point (1, 0));
      SqVector y = sq_pattern_posed (part->pose, sq_point (0, 1));
      g_assert_true (part->pose.mirrored);
      g_assert_cmpfloat (sq_cross (x, y), <, 0);
      g_assert_nonnull (piece->piece);
    }
  g_assert_true (says (paper, "WRONG SIDE UP"));
}

static void
test_bookmarks (void)
{
  SqPatternChoice choice = choice_of (SQ_SHEET_A4, 914);
  g_autoptr (SqPaper) paper = pattern_of_text (BENCH, &choice, FALSE);
  const SqPattern *pattern = paper->source;
  GString *all = g_string_new (NULL);

  for (guint i = 0; i < paper->pages->len; i++)
    if (sq_paper_page (paper, i)->bookmark != NULL)
      g_string_append_printf (all, "%s\n", sq_paper_page (paper, i)->bookmark);
  g_auto (GStrv) lines = g_strsplit (all->str, "\n", -1);
  g_assert_cmpuint (g_strv_length (lines), ==, pattern->plan->cut_list->len + 1);
  for (guint i = 0; i < pattern->plan->cut_list->len; i++)
    {
      g_autofree char *name = sq_words_pattern_name (pattern->plan, i);
      g_assert_true (g_strv_contains ((const char *const *) lines, name));
    }
  g_string_free (all, TRUE);
}

static void
test_chosen_entries (void)
{
  g_autoptr (SqLays) lays = lays_of_text (BENCH);
  SqPaperSpec spec = spec_of_lays (lays, SQ_SHEET_A4);
  g_autoptr (GArray) entries = g_array_new (FALSE, FALSE, sizeof (guint));
  guint second = 1;

  g_array_append_val (entries, second);
  spec.pattern = choice_of (SQ_SHEET_A4, 0);
  spec.entries = entries;
  g_autoptr (SqPaper) paper = sq_paper_new (SQ_PAPER_PATTERN, &spec);
  const SqPattern *pattern = paper->source;
  g_assert_cmpuint (pattern->sheets->pieces->len, ==, 1);
  g_assert_cmpuint (sq_pattern_piece (pattern->sheets, 0)->entry, ==, 1);
}

/* A seat of almost 100 m on A4 and on the narrowest roll: thousands of pages, known at once, drawn one by
 * one. */
static void
test_very_large (void)
{
  const SqPatternChoice choices[] = { choice_of (SQ_SHEET_A4, 0), choice_of (SQ_SHEET_A4, 140) };
  g_autoptr (SqLays) lays = lays_of_text (
      "{'format':'squab job','version':1,'cushions':[{'id':1,'thickness':76.2,'build':'boxed',"
      "'outline':[{'id':1,'x':0,'y':0,'front':true},{'id':2,'x':99000,'y':0},{'id':3,'x':90000,"
      "'y':99000},{'id':4,'x':0,'y':99000}]}]}");

  for (guint i = 0; i < G_N_ELEMENTS (choices); i++)
    {
      SqPaperSpec spec = spec_of_lays (lays, SQ_SHEET_A4);
      gint64 start = g_get_monotonic_time ();
      spec.pattern = choices[i];
      g_autoptr (SqPaper) paper = sq_paper_new (SQ_PAPER_PATTERN, &spec);
      g_autoptr (SqScene) first = sq_paper_page_scene (paper, 0);
      g_autoptr (SqScene) last = sq_paper_page_scene (paper, paper->pages->len - 1);
      double ms = (double) (g_get_monotonic_time () - start) / 1000;
      g_test_message ("%u pages in %.0f ms", paper->pages->len, ms);
      g_assert_cmpuint (paper->pages->len, >, 500);
      g_assert_cmpfloat (ms, <, 5000);
    }
}

static gpointer
draw_all (gpointer data)
{
  const SqPaper *paper = data;
  GString *all = g_string_new (NULL);

  for (guint i = 0; i < paper->pages->len; i++)
    {
      g_autoptr (SqScene) scene = sq_paper_page_scene (paper, i);
      g_autofree char *dump = sq_scene_dump (scene);
      g_string_append (all, dump);
    }
  return g_string_free (all, FALSE);
}

/* Pages are the same whoever draws them, in whatever order. */
static void
test_threads (void)
{
  SqPatternChoice choice = choice_of (SQ_SHEET_A4, 0);
  g_autoptr (SqPaper) paper = pattern_of_text (BENCH, &choice, FALSE);
  g_autoptr (SqPaper) again = pattern_of_text (BENCH, &choice, FALSE);
  GThread *a = g_thread_new ("a", draw_all, paper), *b = g_thread_new ("b", draw_all, paper);
  g_autofree char *first = g_thread_join (a), *second = g_thread_join (b);
  g_autoptr (SqScene) last = sq_paper_page_scene (again, again->pages->len - 1);
  g_autofree char *third = draw_all (again);

  g_assert_cmpstr (first, ==, second);
  g_assert_cmpstr (first, ==, third);
}

int
main (int argc, char **argv)
{
  g_test_init (&argc, &argv, NULL);
  g_test_add_func ("/pattern-pages/all-ways", test_all_ways);
  g_test_add_func ("/pattern-pages/words", test_words);
  g_test_add_func ("/pattern-pages/names", test_names);
  g_test_add_func ("/pattern-pages/squares", test_squares);
  g_test_add_func ("/pattern-pages/corners", test_corners);
  g_test_add_func ("/pattern-pages/wrong-side", test_wrong_side);
  g_test_add_func ("/pattern-pages/bookmarks", test_bookmarks);
  g_test_add_func ("/pattern-pages/chosen-entries", test_chosen_entries);
  g_test_add_func ("/pattern-pages/very-large", test_very_large);
  g_test_add_func ("/pattern-pages/threads", test_threads);
  return g_test_run ();
}
