/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "papers/paper.h"

#include <string.h>

#include "papers/clean-page.h"
#include "papers/job-papers.h"

static const SqSheet sheets[] = { SQ_SHEET_A4, SQ_SHEET_LETTER };

/* As they are sold, and some as the maker cuts them. */
static const SqLabelSheet label_sheets[] = {
  { .columns = 1, .rows = 1, .side_mm = 10, .top_mm = 10 },
  { .columns = 2, .rows = 6, .side_mm = 10, .top_mm = 10, .across_mm = 5, .along_mm = 4 },
  { .columns = 1, .rows = 2 },
  { .columns = 3, .rows = 8, .top_mm = 4 },
  { .columns = 4, .rows = 13, .side_mm = 8, .top_mm = 10, .across_mm = 3 },
  { .columns = 5, .rows = 13, .side_mm = 7, .top_mm = 12 },
};

static SqPaper *
labels_of (const SqLays *lays, SqSheet sheet, const SqLabelSheet *labels, guint skipped)
{
  SqPaperSpec spec = spec_of_lays (lays, sheet);

  spec.labels = *labels;
  spec.skipped_labels = skipped;
  g_assert_true (sq_paper_spec_check (&spec, 1U << SQ_PAPER_LABELS, NULL));
  return sq_paper_new (SQ_PAPER_LABELS, &spec);
}

static guint
cell_at (const SqPaper *paper, const SqLabelSheet *labels, SqSheet sheet, SqPoint at)
{
  SqVector size = sq_label_size_mm (labels, sheet);
  double height_mm = sq_paper_page (paper, 0)->height_mm;
  double column = (at.x - labels->side_mm) / (size.x + labels->across_mm);
  double row = (height_mm - at.y - labels->top_mm) / (size.y + labels->along_mm);

  return (guint) row * labels->columns + (guint) column;
}

/* A text begins and ends in the cell that its middle is in. */
static void
assert_in_its_cell (const SqPaper *paper, const SqLabelSheet *labels, SqSheet sheet,
                    const SqText *text)
{
  SqVector size = sq_label_size_mm (labels, sheet);
  guint cell = cell_at (paper, labels, sheet, text->at);
  double left = labels->side_mm + cell % labels->columns * (size.x + labels->across_mm);
  double top = sq_paper_page (paper, 0)->height_mm - labels->top_mm
               - cell / labels->columns * (size.y + labels->along_mm);
  double half_mm = SQ_TEXT_HEIGHT_EM * text->em_mm / 2;

  g_assert_cmpfloat (text->at.x - text->width_mm / 2, >, left);
  g_assert_cmpfloat (text->at.x + text->width_mm / 2, <, left + size.x);
  g_assert_cmpfloat (text->at.y + half_mm, <, top);
  g_assert_cmpfloat (text->at.y - half_mm, >, top - size.y);
}

/* How many labels have something written on them; each text lies in its cell. */
static guint
count_labels (const SqPaper *paper, const SqLabelSheet *labels, SqSheet sheet)
{
  guint count = 0;

  for (guint page = 0; page < paper->pages->len; page++)
    {
      g_autoptr (SqScene) scene = sq_paper_page_scene (paper, page);
      g_autofree gboolean *seen = g_new0 (gboolean, labels->columns * labels->rows);
      for (guint i = 0; i < sq_scene_n_items (scene); i++)
        if (sq_scene_item (scene, i)->kind == SQ_ITEM_TEXT)
          {
            const SqText *text = sq_scene_text (scene, sq_scene_item (scene, i)->text);
            guint cell = cell_at (paper, labels, sheet, text->at);
            assert_in_its_cell (paper, labels, sheet, text);
            count += !seen[cell];
            seen[cell] = TRUE;
          }
    }
  return count;
}

static guint
count_in_all (const SqPaper *paper, const char *part)
{
  guint count = 0;

  for (guint page = 0; page < paper->pages->len; page++)
    {
      g_autoptr (SqScene) scene = sq_paper_page_scene (paper, page);
      for (guint i = 0; i < sq_scene_n_items (scene); i++)
        {
          const SqItem *item = sq_scene_item (scene, i);
          count += item->kind == SQ_ITEM_TEXT
                   && strstr (sq_scene_text (scene, item->text)->text, part) != NULL;
        }
    }
  return count;
}

/* As many as there are pieces to cut; nothing lies on anything else, nothing ends in "…". */
static void
test_samples (void)
{
  for (guint i = 0; samples[i] != NULL; i++)
    {
      g_autoptr (SqLays) lays = lays_of_sample (samples[i]);
      for (guint k = 0; k < G_N_ELEMENTS (sheets) * G_N_ELEMENTS (label_sheets); k++)
        {
          SqSheet sheet = sheets[k % G_N_ELEMENTS (sheets)];
          const SqLabelSheet *labels = &label_sheets[k / G_N_ELEMENTS (sheets)];
          g_autoptr (SqPaper) paper = labels_of (lays, sheet, labels, 0);
          guint n = sq_plan_figures (lays->plan).pieces, each = labels->columns * labels->rows;
          g_test_message ("%s, %u × %u", samples[i], labels->columns, labels->rows);
          assert_paper_is_clean (paper);
          g_assert_cmpuint (count_labels (paper, labels, sheet), ==, n);
          g_assert_cmpuint (paper->pages->len, ==, (n + each - 1) / each);
          g_assert_false (has_text (paper, "…"));
          g_assert_cmpuint (count_in_all (paper, "cushion "), >=, n);
        }
    }
}

/* Rows of 14.85 mm can't be read. */
static void
test_too_small (void)
{
  g_autoptr (SqLays) lays = lays_of_sample ("bay-seat");

  for (guint i = 0; i < G_N_ELEMENTS (sheets); i++)
    {
      SqPaperSpec spec = spec_of_lays (lays, sheets[i]);
      spec.labels = (SqLabelSheet){ .columns = 5, .rows = 20 };
      g_assert_false (sq_paper_spec_check (&spec, 1U << SQ_PAPER_LABELS, NULL));
    }
}

/* n of N runs through for each piece, as drawn and mirrored. */
static void
test_counts (void)
{
  g_autoptr (SqLays) lays = lays_of_text (
      "{'format':'squab job','version':1,'units':'mm','cushions':[{'id':1,'count':4,'hand':'pair',"
      "'thickness':60,'build':'boxed','outline':[{'id':1,'x':0,'y':0},{'id':2,'x':500,'y':0},"
      "{'id':3,'x':400,'y':450},{'id':4,'x':0,'y':450}]}]}");
  g_autoptr (SqPaper) paper = labels_of (lays, SQ_SHEET_A4, &label_sheets[1], 0);
  guint n_entries = lays->plan->cut_list->len / 2;

  for (guint i = 1; i <= 4; i++)
    {
      g_autofree char *drawn = g_strdup_printf ("cushion %u of 4 · as drawn", i);
      g_autofree char *mirrored = g_strdup_printf ("cushion %u of 4 · MIRRORED", i);
      g_assert_cmpuint (count_in_all (paper, drawn), ==, n_entries);
      g_assert_cmpuint (count_in_all (paper, mirrored), ==, n_entries);
    }
  g_assert_cmpuint (count_in_all (paper, "UNDERSIDE"), ==, 8);
  g_assert_cmpuint (count_in_all (paper, "TOP"), ==, 8);
  g_assert_cmpuint (count_in_all (paper, "FRONT"), ==, 16);
}

static void
test_skipped (void)
{
  g_autoptr (SqLays) lays = lays_of_sample ("dining-pads");
  const SqLabelSheet *labels = &label_sheets[1];
  guint n = sq_plan_figures (lays->plan).pieces;

  for (guint skipped = 0; skipped < 12; skipped++)
    {
      g_autoptr (SqPaper) paper = labels_of (lays, SQ_SHEET_A4, labels, skipped);
      g_autoptr (SqScene) first = sq_paper_page_scene (paper, 0);
      for (guint i = 0; i < sq_scene_n_items (first); i++)
        if (sq_scene_item (first, i)->kind == SQ_ITEM_TEXT)
          g_assert_cmpuint (cell_at (paper, labels, SQ_SHEET_A4,
                                     sq_scene_text (first, sq_scene_item (first, i)->text)->at),
                            >=, skipped);
      g_assert_cmpuint (count_labels (paper, labels, SQ_SHEET_A4), ==, n);
      g_assert_cmpuint (paper->pages->len, ==, (n + skipped + 11) / 12);
    }
}

static void
test_entries (void)
{
  g_autoptr (SqLays) lays = lays_of_sample ("dining-pads");
  g_autoptr (GArray) entries = g_array_new (FALSE, FALSE, sizeof (guint));
  SqPaperSpec spec = spec_of_lays (lays, SQ_SHEET_A4);

  for (guint i = 0; i < 3; i += 2)
    g_array_append_val (entries, i);
  spec.entries = entries;
  g_autoptr (SqPaper) paper = sq_paper_new (SQ_PAPER_LABELS, &spec);
  g_assert_cmpuint (count_labels (paper, &spec.labels, SQ_SHEET_A4), ==, 16);
  g_assert_false (has_text (paper, "Underside"));

  g_array_set_size (entries, 0);
  g_autoptr (SqPaper) none = sq_paper_new (SQ_PAPER_LABELS, &spec);
  g_assert_cmpuint (none->pages->len, ==, 1);
  assert_paper_is_clean (none);
  g_assert_true (has_text (none, "There is no piece to label."));
}

/* Covers cut two plies deep: a label a bundle, with what is spare in the last ones. */
static void
test_lot (void)
{
  g_autoptr (SqLays) lays = lays_of_text (
      "{'format':'squab job','version':1,'units':'mm','cloths':[{'id':4,'width':1100,"
      "'one_way':true}],'laying':{'plies':{'most':2}},'cushions':[{'id':1,'count':49,"
      "'thickness':60,'outline':[{'id':1,'x':0,'y':0},{'id':2,'x':500,'y':0},{'id':3,'x':500,"
      "'y':450},{'id':4,'x':0,'y':450}]}]}");
  const SqPlyLay *best = sq_plies_best (sq_lays_cloth (lays, 0)->plies);

  for (guint k = 0; k < G_N_ELEMENTS (sheets) * G_N_ELEMENTS (label_sheets); k++)
    {
      SqSheet sheet = sheets[k % G_N_ELEMENTS (sheets)];
      const SqLabelSheet *labels = &label_sheets[k / G_N_ELEMENTS (sheets)];
      g_autoptr (SqPaper) paper = labels_of (lays, sheet, labels, 0);
      assert_paper_is_clean (paper);
      g_assert_cmpuint (best->plies, ==, 2);
      g_assert_cmpuint (count_labels (paper, labels, sheet), ==, best->lay->placed->len);
      g_assert_cmpuint (count_in_all (paper, "2 plies"), ==, best->lay->placed->len);
      if (labels->columns <= 2)
        g_assert_true (has_text (paper, "2 plies · copy 49 of 49 · 1 spare"));
    }
}

static void
test_names (void)
{
  static const char *const names[] = { "玄関の座布団と窓際の長椅子のためのクッション", "כרית המושב",
                                       "وسادة",
                                       "N_a_m_e_w_i_t_h_o_u_t_s_p_a_c_e_s_from_end_to_end_and_on" };

  for (guint i = 0; i < G_N_ELEMENTS (names); i++)
    {
      g_autofree char *text = g_strdup_printf (
          "{'format':'squab job','version':1,'units':'in','title':'%s','customer':'%s','cushions':["
          "{'id':1,'name':'%s','thickness':76.2,'outline':[{'x':0,'y':0},{'x':500,'y':0},"
          "{'x':500,'y':400},{'x':0,'y':400}]}]}",
          names[i], names[i], names[i]);
      g_autoptr (SqLays) lays = lays_of_text (text);
      for (guint k = 0; k < G_N_ELEMENTS (label_sheets); k++)
        {
          g_autoptr (SqPaper) paper = labels_of (lays, SQ_SHEET_A4, &label_sheets[k], 0);
          assert_paper_is_clean (paper);
          g_assert_cmpuint (count_labels (paper, &label_sheets[k], SQ_SHEET_A4), ==,
                            sq_plan_figures (lays->plan).pieces);
        }
    }
}

static void
test_unlaid (void)
{
  g_autoptr (SqLays) lays = lays_of_text (
      "{'format':'squab job','version':1,'units':'mm','cloths':[{'id':1,'name':'Narrow','width':"
      "300}],'cushions':[{'id':1,'thickness':50,'build':'boxed','outline':[{'id':1,'x':0,'y':0},"
      "{'id':2,'x':600,'y':0},{'id':3,'x':600,'y':500},{'id':4,'x':0,'y':500}]}]}");
  g_autoptr (SqPaper) paper = labels_of (lays, SQ_SHEET_A4, &label_sheets[1], 0);

  g_assert_cmpuint (count_in_all (paper, "Narrow · not laid"), ==, sq_lays_n_unlaid (lays));
  g_assert_cmpuint (count_labels (paper, &label_sheets[1], SQ_SHEET_A4), ==,
                    sq_plan_figures (lays->plan).pieces);
}

int
main (int argc, char **argv)
{
  g_test_init (&argc, &argv, NULL);
  g_test_add_func ("/papers/labels/samples", test_samples);
  g_test_add_func ("/papers/labels/too small", test_too_small);
  g_test_add_func ("/papers/labels/counts", test_counts);
  g_test_add_func ("/papers/labels/skipped", test_skipped);
  g_test_add_func ("/papers/labels/entries", test_entries);
  g_test_add_func ("/papers/labels/lot", test_lot);
  g_test_add_func ("/papers/labels/names", test_names);
  g_test_add_func ("/papers/labels/unlaid", test_unlaid);
  return g_test_run ();
}
