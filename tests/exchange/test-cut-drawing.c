/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "exchange/cut-drawing.h"

#include "exchange/defaults-file.h"
#include "exchange/job-file.h"

/* Kept to the micrometre that lays are in, twice. */
#define WITHIN_MM 0.003

static SqLays *
lays_of (const char *sample)
{
  g_autofree char *path = g_test_build_filename (G_TEST_DIST, "..", "data", "samples", sample,
                                                 NULL);
  g_autoptr (GError) error = NULL;
  SqDefaults defaults;
  const SqLayBudget first = { .seed = 1 };

  sq_defaults_builtin (&defaults);
  g_autoptr (SqJob) job = sq_job_load (path, &defaults, &error);
  g_assert_no_error (error);
  g_autoptr (SqPlan) plan = sq_plan_new (job, NULL);
  return sq_lays_new (plan, NULL, &first, NULL);
}

static double
area_mm2 (const SqCutShape *shape, SqCutLayer layer)
{
  double area = 0;

  for (guint i = 0; i < shape->lines->len; i++)
    if (sq_cut_line (shape->lines, i)->layer == layer)
      area += sq_path_area_mm2 (sq_cut_line (shape->lines, i)->path);
  return area;
}

static guint
count_lines (const SqCutShape *shape, SqCutLayer layer)
{
  guint n = 0;

  for (guint i = 0; i < shape->lines->len; i++)
    n += sq_cut_line (shape->lines, i)->layer == layer ? 1 : 0;
  return n;
}

static void
test_pieces (void)
{
  g_autoptr (SqLays) lays = lays_of ("bay-seat.squab");

  for (guint wrong_side = 0; wrong_side < 2; wrong_side++)
    {
      SqCutChoice choice = { .of = SQ_CUT_PIECES,
                             .lines = SQ_LINES_ALL,
                             .wrong_side = wrong_side == 1 };
      g_autoptr (SqCutDrawing) drawing = sq_cut_drawing_new (lays, &choice);
      g_assert_cmpuint (drawing->shapes->len, ==, lays->plan->cut_list->len);
      g_assert_cmpuint (drawing->places->len, ==, drawing->shapes->len);
      g_assert_cmpfloat (drawing->box.min.x, ==, 0);
      g_assert_cmpfloat (drawing->box.min.y, ==, 0);
      for (guint i = 0; i < drawing->shapes->len; i++)
        {
          const SqCutShape *shape = sq_cut_shape (drawing, i);
          double cut_mm2 = area_mm2 (shape, SQ_LAYER_CUT) + area_mm2 (shape, SQ_LAYER_CUT_INSIDE);
          g_assert_cmpfloat_with_epsilon (cut_mm2, shape->piece->area_mm2, 1e-6 * cut_mm2);
          g_assert_cmpuint (count_lines (shape, SQ_LAYER_GRAIN), ==, 1);
          g_assert_cmpuint (count_lines (shape, SQ_LAYER_SEW), ==, shape->piece->sew->len);
          g_assert_cmpuint (shape->texts->len, >, 0);
        }
    }
}

/* The longest side of the first ring, as a vector where the ring is placed. */
static SqVector
longest_side (const SqCutDrawing *drawing, const SqCutPlace *place)
{
  const SqCutShape *shape = sq_cut_shape (drawing, place->shape);
  g_autoptr (SqPath) ring = sq_cut_line_placed (sq_cut_line (shape->lines, 0), place);
  SqVector longest = sq_point (0, 0);

  for (guint i = 0; i < sq_path_n_segments (ring); i++)
    {
      SqSegment side = sq_path_segment (ring, i);
      SqVector along = sq_sub (side.to, side.from);
      if (sq_norm (along) > sq_norm (longest) + WITHIN_MM)
        longest = along;
    }
  return longest;
}

/* Each copy lies where the lay has it; on the wrong side all of it is the mirror image, with the near
 * edge far. */
static void
test_lay (void)
{
  g_autoptr (SqLays) lays = lays_of ("dining-pads.squab");
  SqCutChoice right = { .of = SQ_CUT_LAYS, .lines = SQ_LINES_ALL },
              wrong = { .of = SQ_CUT_LAYS, .lines = SQ_LINES_ALL, .wrong_side = TRUE };

  for (guint i = 0; i < lays->cloths->len; i++)
    {
      const SqClothLay *cloth = sq_lays_cloth (lays, i);
      g_autoptr (GPtrArray) all = sq_cut_drawings_new (lays, &right);
      g_autoptr (GPtrArray) all_wrong = sq_cut_drawings_new (lays, &wrong);
      const SqCutDrawing *drawing = g_ptr_array_index (all, i);
      const SqCutDrawing *mirrored = g_ptr_array_index (all_wrong, i);
      double width_mm = sq_lay_task_strip (cloth->task, 0)->width / SQ_GRID_PER_MM;

      g_assert_cmpuint (all->len, ==, lays->cloths->len);
      g_assert_cmpuint (drawing->places->len, ==, cloth->lay->placed->len);
      g_assert_cmpuint (mirrored->places->len, ==, cloth->lay->placed->len);
      for (guint k = 0; k < drawing->places->len; k++)
        {
          const SqPlaced *placed = sq_lay_placed (cloth->lay, k);
          const SqCutPlace *place = sq_cut_place (drawing, k);
          const SqCutPlace *other = sq_cut_place (mirrored, k);
          SqGridBox box = sq_lay_item_box (sq_lay_task_item (cloth->task, placed->item),
                                           placed->pose);
          g_autoptr (SqPath) ring = sq_cut_line_placed (
              sq_cut_line (sq_cut_shape (drawing, place->shape)->lines, 0), place);
          g_autoptr (SqPath) far_ring = sq_cut_line_placed (
              sq_cut_line (sq_cut_shape (mirrored, other->shape)->lines, 0), other);
          SqBox is = sq_path_box (ring), far = sq_path_box (far_ring);
          SqVector side = longest_side (drawing, place), far_side = longest_side (mirrored, other);

          g_assert_cmpfloat_with_epsilon (is.min.x, (placed->at.x + box.min.x) / SQ_GRID_PER_MM,
                                          WITHIN_MM);
          g_assert_cmpfloat_with_epsilon (is.max.y, (placed->at.y + box.max.y) / SQ_GRID_PER_MM,
                                          WITHIN_MM);
          g_assert_cmpfloat_with_epsilon (far.min.x, is.min.x, WITHIN_MM);
          g_assert_cmpfloat_with_epsilon (far.min.y, width_mm - is.max.y, WITHIN_MM);
          g_assert_cmpfloat_with_epsilon (fabs (side.x), fabs (far_side.x), WITHIN_MM);
        }
    }
}

static void
test_what_is_left_out (void)
{
  g_autoptr (SqLays) lays = lays_of ("bay-seat.squab");
  g_autoptr (GArray) entries = g_array_new (FALSE, FALSE, sizeof (guint));
  const guint second = 1;
  SqCutChoice choice = { .of = SQ_CUT_PIECES, .lines = SQ_LINES_CUT, .entries = entries };

  g_array_append_val (entries, second);
  g_autoptr (SqCutDrawing) drawing = sq_cut_drawing_new (lays, &choice);
  g_assert_cmpuint (drawing->shapes->len, ==, 1);
  g_assert_cmpuint (sq_cut_shape (drawing, 0)->entry, ==, 1);
  g_assert_cmpuint (sq_cut_shape (drawing, 0)->texts->len, ==, 0);
  for (guint i = 0; i < sq_cut_shape (drawing, 0)->lines->len; i++)
    g_assert_cmpint (sq_cut_line (sq_cut_shape (drawing, 0)->lines, i)->layer, <=,
                     SQ_LAYER_CUT_INSIDE);
}

/* Cut lines in one file and sew lines in another lie on each other; and names of strips are on the
 * drawing, too. */
static void
test_fits_together (void)
{
  g_autoptr (SqLays) lays = lays_of ("bay-seat.squab");

  for (guint of = 0; of <= SQ_CUT_LAYS; of++)
    for (guint wrong_side = 0; wrong_side < 2; wrong_side++)
      {
        SqCutChoice choice = { (SqCutOf) of, SQ_LINES_ALL, .wrong_side = wrong_side == 1 };
        g_autoptr (SqCutDrawing) all = sq_cut_drawing_new (lays, &choice);
        for (guint k = 0; sq_cut_lines_names[k] != NULL; k++)
          {
            choice.lines = 1U << k;
            g_autoptr (SqCutDrawing) some = sq_cut_drawing_new (lays, &choice);
            g_assert_cmpmem (&some->box, sizeof (SqBox), &all->box, sizeof (SqBox));
            for (guint i = 0; i < all->places->len; i++)
              {
                g_assert_cmpfloat (sq_cut_place (some, i)->at.x, ==, sq_cut_place (all, i)->at.x);
                g_assert_cmpfloat (sq_cut_place (some, i)->at.y, ==, sq_cut_place (all, i)->at.y);
              }
          }
        for (guint i = 0; i < all->texts->len; i++)
          g_assert_cmpfloat (sq_cut_text (all->texts, i)->at.y
                                 + sq_cut_text (all->texts, i)->height_mm,
                             <=, all->box.max.y);
      }
}

/* Every file has a name of its own. */
static void
test_names (void)
{
  g_autoptr (SqLays) lays = lays_of ("dining-pads.squab");

  for (guint of = 0; of <= SQ_CUT_LAYS; of++)
    {
      SqCutChoice choice = { .of = (SqCutOf) of, .lines = SQ_LINES_ALL };
      g_autoptr (GPtrArray) drawings = sq_cut_drawings_new (lays, &choice);
      g_autoptr (GHashTable) names = g_hash_table_new (g_str_hash, g_str_equal);
      for (guint i = 0; i < drawings->len; i++)
        g_assert_true (
            g_hash_table_add (names, ((SqCutDrawing *) g_ptr_array_index (drawings, i))->name));
    }
}

int
main (int argc, char **argv)
{
  g_test_init (&argc, &argv, NULL);
  g_test_add_func ("/cut drawing/pieces", test_pieces);
  g_test_add_func ("/cut drawing/lay", test_lay);
  g_test_add_func ("/cut drawing/what is left out", test_what_is_left_out);
  g_test_add_func ("/cut drawing/fits together", test_fits_together);
  g_test_add_func ("/cut drawing/names", test_names);
  return g_test_run ();
}
