/* SPDX-License-Identifier: GPL-3.0-or-later */
/* Whatever is drawn, the file says the same. */
#include "exchange/dxf.h"

#include "dxf-reader.h"
#include "hand-made-drawing.h"

#define N_DRAWINGS 60
#define MOST_NODES 9

/* Lengths are written in whole millionths. */
#define WITHIN_MM 1e-6
#define BULGE_WITHIN 1e-11

/* Chords of D6673 are no farther off than that (mm), and what is written of their ends. */
#define CHORD_WITHIN_MM 0.01001

static double
random_between (double least, double most)
{
  return g_test_rand_double_range (least, most);
}

static SqPoint
random_point (void)
{
  return sq_point (random_between (-3000, 3000), random_between (-3000, 3000));
}

static SqPath *
random_path (void)
{
  SqNode nodes[MOST_NODES];
  guint n = (guint) g_test_rand_int_range (2, MOST_NODES + 1);

  for (guint i = 0; i < n; i++)
    nodes[i] = (SqNode){ random_point (), g_test_rand_bit () ? 0 : tan (random_between (-1.2, 1.2)),
                         i };
  return sq_path_new (nodes, n, g_test_rand_bit () != 0);
}

static SqCutDrawing *
random_drawing (void)
{
  SqCutDrawing *drawing = drawing_new ("");
  guint n = (guint) g_test_rand_int_range (1, 5);

  for (guint i = 0; i < n; i++)
    {
      SqCutShape *shape = add_shape (drawing, "x");
      for (int k = g_test_rand_int_range (0, 8); k > 0; k--)
        add_cut_line (shape, (SqCutLayer) g_test_rand_int_range (0, SQ_N_CUT_LAYERS),
                      random_path ());
      for (int k = g_test_rand_int_range (1, 4); k > 0; k--)
        add_cut_place (drawing, i, random_between (-G_PI, G_PI), random_point ());
    }
  return drawing;
}

static void
assert_same (const SqPath *found, const SqPath *expected)
{
  g_assert_cmpuint (sq_path_n_segments (found), ==, sq_path_n_segments (expected));
  g_assert_cmpuint (sq_path_n_nodes (found), ==, sq_path_n_nodes (expected));
  for (guint i = 0; i < sq_path_n_nodes (found); i++)
    {
      const SqNode *a = &sq_path_nodes (found)[i], *b = &sq_path_nodes (expected)[i];
      g_assert_cmpfloat (sq_distance (a->at, b->at), <=, WITHIN_MM);
      if (i < sq_path_n_segments (found))
        g_assert_cmpfloat_with_epsilon (a->bulge, b->bulge, BULGE_WITHIN);
    }
}

static void
test_plain (void)
{
  for (guint k = 0; k < N_DRAWINGS; k++)
    {
      g_autoptr (SqCutDrawing) drawing = random_drawing ();
      g_autofree char *text = sq_dxf_write (drawing, (SqDxfRelease) (k % 2), SQ_DXF_PLAIN);
      g_autoptr (GArray) groups = read_groups (text);
      guint at, to;

      find_section (groups, "ENTITIES", &at, &to);
      for (guint i = 0; i < drawing->places->len; i++)
        {
          const SqCutPlace *place = sq_cut_place (drawing, i);
          const GArray *lines = sq_cut_shape (drawing, place->shape)->lines;
          for (guint l = 0; l < lines->len; l++, at = next_entity (groups, at, to))
            {
              const SqCutLine *line = sq_cut_line (lines, l);
              g_autoptr (SqPath) found = path_of (groups, at, to);
              g_autoptr (SqPath) placed = sq_cut_line_placed (line, place);
              g_autofree char *layer = g_ascii_strup (sq_cut_layer_name (line->layer), -1);
              g_assert_cmpstr (value_of (groups, at, to, 8), ==, layer);
              assert_same (found, placed);
            }
        }
      g_assert_cmpuint (at, ==, to);
    }
}

/* All of @path is near @chords, and the other way round. */
static void
assert_near (const SqPath *chords, const SqPath *path)
{
  for (guint i = 0; i < sq_path_n_segments (chords); i++)
    {
      SqSegment chord = sq_path_segment (chords, i);
      g_assert_false (sq_segment_is_arc (&chord));
      for (double t = 0; t <= 1; t += 0.25)
        g_assert_cmpfloat (sq_path_nearest (path, sq_segment_point (&chord, t)).distance_mm, <=,
                           CHORD_WITHIN_MM);
    }
  for (guint i = 0; i < sq_path_n_nodes (path); i++)
    g_assert_cmpfloat (sq_path_nearest (chords, sq_path_nodes (path)[i].at).distance_mm, <=,
                       CHORD_WITHIN_MM);
}

static gboolean
is_line_of_d6673 (SqCutLayer layer)
{
  return layer != SQ_LAYER_NOTCH && layer != SQ_LAYER_GRAIN && layer != SQ_LAYER_TEXT
         && layer != SQ_LAYER_CLOTH;
}

/* The next line or polyline from @at on that is not the grain; @to without one. */
static guint
next_line (const GArray *groups, guint at, guint to)
{
  while (at < to
         && (!g_str_has_suffix (group_at (groups, at)->value, "LINE")
             || g_str_equal (value_of (groups, at, to, 8), "7")))
    at = next_entity (groups, at, to);
  return at;
}

static void
assert_shape (const GArray *groups, const char *block, const SqCutShape *shape)
{
  guint at, to;

  find_block (groups, block, &at, &to);
  for (guint l = 0; l < shape->lines->len; l++)
    {
      const SqCutLine *line = sq_cut_line (shape->lines, l);
      if (!is_line_of_d6673 (line->layer))
        continue;
      at = next_line (groups, at, to);
      g_assert_cmpuint (at, <, to);
      g_autoptr (SqPath) found = path_of (groups, at, to);
      assert_near (found, line->path);
      at = next_entity (groups, at, to);
    }
  g_assert_cmpuint (next_line (groups, at, to), ==, to);
}

static void
test_blocks (void)
{
  for (guint k = 0; k < N_DRAWINGS / 4; k++)
    {
      g_autoptr (SqCutDrawing) drawing = random_drawing ();
      g_autofree char *text = sq_dxf_write (drawing, (SqDxfRelease) (k % 2), SQ_DXF_D6673);
      g_autoptr (GArray) groups = read_groups (text);

      for (guint i = 0; i < drawing->shapes->len; i++)
        {
          g_autofree char *block = i == 0 ? g_strdup ("X") : g_strdup_printf ("X_%u", i + 1);
          assert_shape (groups, block, sq_cut_shape (drawing, i));
        }
    }
}

int
main (int argc, char **argv)
{
  g_test_init (&argc, &argv, NULL);
  g_test_add_func ("/exchange/dxf-random/plain", test_plain);
  g_test_add_func ("/exchange/dxf-random/blocks", test_blocks);
  return g_test_run ();
}
