/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "exchange/hpgl.h"

#include "hand-made-drawing.h"

#include <stdlib.h>
#include <string.h>

/* ---- a reader ------------------------------------------------------------------------------ */

/* One stretch with the pen down, or a label; in units. */
typedef struct
{
  guint pen;
  SqPath *line; /* NULL: a label */
  SqPoint at;
  double angle_rad, height_cm;
  char *label;
} Mark;

static void
clear_mark (gpointer data)
{
  Mark *mark = data;

  g_clear_pointer (&mark->line, sq_path_unref);
  g_free (mark->label);
}

typedef struct
{
  GArray *marks; /* of Mark */
  SqPathBuilder down;
  Mark style; /* of the next: pen, place, angle and height */
} Reading;

static void
end_line (Reading *reading)
{
  Mark mark = reading->style;

  mark.line = sq_path_builder_end (&reading->down, FALSE);
  sq_path_builder_init (&reading->down);
  if (mark.line != NULL)
    g_array_append_val (reading->marks, mark);
}

/* PU, PD and PA with any number of points. */
static void
read_points (Reading *reading, char *const *numbers, gboolean pen_down)
{
  for (guint i = 0; numbers[i] != NULL; i += 2)
    {
      g_assert_nonnull (numbers[i + 1]);
      SqPoint to = sq_point (atol (numbers[i]), atol (numbers[i + 1]));
      if (pen_down && reading->down.nodes->len == 0)
        sq_path_builder_add (&reading->down, reading->style.at, 0, 0);
      if (pen_down)
        sq_path_builder_add (&reading->down, to, 0, 0);
      reading->style.at = to;
    }
}

static void
read_command (Reading *reading, const char *command)
{
  g_auto (GStrv) numbers = g_strsplit (command + 2, ",", -1);

  if (g_str_has_prefix (command, "PU") || g_str_has_prefix (command, "SP"))
    end_line (reading);
  if (g_str_has_prefix (command, "PU"))
    read_points (reading, numbers, FALSE);
  else if (g_str_has_prefix (command, "PD"))
    read_points (reading, numbers, TRUE);
  else if (g_str_has_prefix (command, "SP"))
    reading->style.pen = (guint) atoi (numbers[0]);
  else if (g_str_has_prefix (command, "DI"))
    reading->style.angle_rad = atan2 (atof (numbers[1]), atof (numbers[0]));
  else if (g_str_has_prefix (command, "SI"))
    reading->style.height_cm = atof (numbers[1]);
  else
    g_assert_true (g_str_equal (command, "IN") || g_str_equal (command, "PA"));
}

/* After the published command set: two letters and numbers with commas, up to a semicolon; a label goes
 * up to ETX. Line ends between commands say nothing. */
static GArray *
read_back (const char *at)
{
  Reading reading = { .marks = g_array_new (FALSE, FALSE, sizeof (Mark)) };

  g_array_set_clear_func (reading.marks, clear_mark);
  sq_path_builder_init (&reading.down);
  while (*at != '\0')
    {
      gboolean is_label = g_str_has_prefix (at, "LB");
      gsize length = strcspn (at, is_label ? "\003" : ";\n");
      g_autofree char *command = g_strndup (at, length);
      if (is_label)
        {
          Mark mark = reading.style;
          mark.label = g_strdup (command + 2);
          g_array_append_val (reading.marks, mark);
        }
      else if (length > 0)
        read_command (&reading, command);
      at += length + 1;
    }
  end_line (&reading);
  g_array_unref (reading.down.nodes);
  g_assert_cmpuint (reading.style.pen, ==, 0);
  return reading.marks;
}

#define mark_at(marks, i) (&g_array_index ((marks), Mark, (i)))

static GArray *
written (const SqCutDrawing *drawing)
{
  gboolean is_large;
  g_autofree char *hpgl = sq_hpgl_write (drawing, &is_large);

  g_assert_true (g_str_has_prefix (hpgl, "IN;"));
  g_assert_true (g_str_has_suffix (hpgl, "PU;SP0;\n"));
  g_assert_true (g_str_is_ascii (hpgl));
  return read_back (hpgl);
}

/* ---- tests --------------------------------------------------------------------------------- */

/* Every point where it is to half a unit each way, whatever the one before was rounded to; 24 × 20 in
 * are 24384 × 20320 units. */
static void
test_units (void)
{
  g_autoptr (SqCutDrawing) drawing = drawing_new ("Pads, RIGHT SIDE UP");
  SqCutShape *shape = add_shape (drawing, "1 Top");
  double step = 609.6 / 1000;
  SqPathBuilder builder;

  sq_path_builder_init (&builder);
  for (guint i = 0; i <= 1000; i++)
    sq_path_builder_add (&builder, sq_point (i * step, i % 2 == 0 ? 0 : 0.3), 0, 0);
  add_cut_line (shape, SQ_LAYER_FOLD, sq_path_builder_end (&builder, FALSE));
  add_cut_line (shape, SQ_LAYER_CUT, sq_path_new_rectangle (0, 0, 609.6, 508));
  add_cut_place (drawing, 0, 0, sq_point (0, 0));

  g_autoptr (GArray) marks = written (drawing);
  g_assert_cmpuint (marks->len, ==, 2);
  const SqNode *nodes = sq_path_nodes (mark_at (marks, 0)->line);
  g_assert_cmpuint (sq_path_n_nodes (mark_at (marks, 0)->line), ==, 1001);
  for (guint i = 0; i <= 1000; i++)
    g_assert_cmpfloat_with_epsilon (nodes[i].at.x, i * step * 40, 0.5 + 1e-9);
  SqBox box = sq_path_box (mark_at (marks, 1)->line);
  g_assert_cmpfloat (box.max.x, ==, 24384);
  g_assert_cmpfloat (box.max.y, ==, 20320);
  /* a ring ends where it begins, and begins where the pen is */
  g_assert_cmpuint (sq_path_n_nodes (mark_at (marks, 1)->line), ==, 5);
  nodes = sq_path_nodes (mark_at (marks, 1)->line);
  g_assert_cmpfloat (nodes[0].at.x, ==, 24384);
  g_assert_cmpfloat (nodes[0].at.y, ==, 0);
  g_assert_cmpfloat (nodes[4].at.x, ==, 24384);
  g_assert_cmpfloat (nodes[4].at.y, ==, 0);
}

/* What is drawn lies within a unit of the circle: a quarter off the arc, and up to 0.71 where a point
 * was rounded. */
static void
test_arcs (void)
{
  g_autoptr (SqCutDrawing) drawing = drawing_new ("Pads, RIGHT SIDE UP");
  SqCutShape *shape = add_shape (drawing, "1 Top");

  add_cut_line (shape, SQ_LAYER_CUT, sq_path_new_circle (sq_point (200.013, 200), 200));
  add_cut_place (drawing, 0, 0, sq_point (0, 0));
  g_autoptr (GArray) marks = written (drawing);
  const SqPath *line = mark_at (marks, 0)->line;
  g_assert_cmpuint (sq_path_n_nodes (line), >, 100);
  g_assert_cmpuint (sq_path_n_nodes (line), <, 600);
  for (guint i = 0; i < sq_path_n_segments (line); i++)
    for (double t = 0; t < 1; t += 0.25)
      {
        SqSegment s = sq_path_segment (line, i);
        double off = sq_distance (sq_segment_point (&s, t), sq_point (200.013 * 40, 8000)) - 8000;
        g_assert_cmpfloat (fabs (off), <, 1);
      }
}

/* A piece 100 × 60 with everything on it, its outer cut line first in the drawing. */
static SqCutDrawing *
full_drawing (void)
{
  SqCutDrawing *drawing = drawing_new ("Pads, RIGHT SIDE UP");
  SqCutShape *shape = add_shape (drawing, "1 Top");

  add_cut_line (shape, SQ_LAYER_CUT, sq_path_new_rectangle (0, 0, 100, 60));
  add_cut_line (shape, SQ_LAYER_CUT_INSIDE, sq_path_new_rectangle (40, 20, 60, 40));
  add_cut_line (shape, SQ_LAYER_SEW, sq_path_new_rectangle (10, 10, 90, 50));
  add_cut_segment (shape, SQ_LAYER_NOTCH, sq_point (50, 0), sq_point (50, 6));
  add_cut_segment (shape, SQ_LAYER_GRAIN, sq_point (20, 45), sq_point (80, 45));
  add_cut_segment (shape, SQ_LAYER_FOLD, sq_point (0, 30), sq_point (100, 30));
  add_cut_text (shape, sq_point (15, 12), 5, "1 Top; cut 4 × – · A");
  return drawing;
}

static void
test_order_and_pens (void)
{
  const guint pens[] = { 5, 4, 4, 2, 3, 1, 1 };
  g_autoptr (SqCutDrawing) drawing = full_drawing ();

  add_cut_place (drawing, 0, 0, sq_point (500, 0));
  add_cut_place (drawing, 0, 0, sq_point (0, 0));
  add_cut_place (drawing, 0, 0, sq_point (250, 0));
  g_autoptr (GArray) marks = written (drawing);
  g_assert_cmpuint (marks->len, ==, 3 * G_N_ELEMENTS (pens));
  for (guint i = 0; i < marks->len; i++)
    {
      const Mark *mark = mark_at (marks, i);
      guint piece = i / G_N_ELEMENTS (pens);
      g_assert_cmpuint (mark->pen, ==, pens[i % G_N_ELEMENTS (pens)]);
      /* from the left to the right, and none begun before the last was ended */
      g_assert_cmpfloat (mark->at.x, >=, piece * 250 * 40);
      g_assert_cmpfloat (mark->at.x, <=, (piece * 250 + 100) * 40);
      if (i % G_N_ELEMENTS (pens) == 5) /* the hole */
        g_assert_cmpfloat (sq_path_length_mm (mark->line), ==, 80 * 40);
      if (i % G_N_ELEMENTS (pens) == 6)
        g_assert_cmpfloat (sq_path_length_mm (mark->line), ==, 320 * 40);
    }
}

/* A line is drawn from the end that is nearer to the pen, an arc of it too. */
static void
test_turned_round (void)
{
  const SqNode nodes[] = { { { 100, 50 }, 0.5, 0 }, { { 20, 0 }, 0, 0 } };
  g_autoptr (SqCutDrawing) drawing = drawing_new ("Pads, RIGHT SIDE UP");
  SqCutShape *shape = add_shape (drawing, "1 Top");

  add_cut_line (shape, SQ_LAYER_STAY, sq_path_new (nodes, G_N_ELEMENTS (nodes), FALSE));
  add_cut_segment (shape, SQ_LAYER_STAY, sq_point (10, 0), sq_point (0, 0));
  add_cut_place (drawing, 0, 0, sq_point (0, 0));
  g_autoptr (GArray) marks = written (drawing);
  const SqPath *first = mark_at (marks, 0)->line, *second = mark_at (marks, 1)->line;
  g_autoptr (SqPath) arc = sq_path_new (nodes, G_N_ELEMENTS (nodes), FALSE);
  SqBox box = sq_path_box (arc), drawn = sq_path_box (second);

  g_assert_cmpfloat (sq_path_nodes (first)[0].at.x, ==, 0);
  g_assert_cmpfloat (sq_path_nodes (second)[0].at.x, ==, 20 * 40);
  g_assert_cmpfloat_with_epsilon (drawn.min.y, box.min.y * 40, 1.25);
  g_assert_cmpfloat_with_epsilon (drawn.max.x, box.max.x * 40, 1.25);
}

/* No knife follows what is not cut. */
static void
test_pens (void)
{
  for (guint layer = 0; layer < SQ_N_CUT_LAYERS; layer++)
    {
      guint pen = sq_hpgl_pen ((SqCutLayer) layer);
      g_assert_cmpuint (pen, >=, 1);
      g_assert_cmpuint (pen, <=, 8);
      g_assert_true ((pen == 1) == (layer <= SQ_LAYER_CUT_INSIDE));
    }
  g_assert_cmpuint (sq_hpgl_pen (SQ_LAYER_CLOTH), ==, sq_hpgl_pen (SQ_LAYER_FOLD));
}

/* The cloth's edge comes before all pieces. */
static void
test_cloth (void)
{
  g_autoptr (SqCutDrawing) drawing = full_drawing ();
  SqCutLine edge = { SQ_LAYER_CLOTH, sq_path_new_rectangle (0, 0, 700, 400) };

  g_array_append_val (drawing->lines, edge);
  add_cut_place (drawing, 0, 0, sq_point (0, 0));
  g_autoptr (GArray) marks = written (drawing);
  g_assert_cmpuint (mark_at (marks, 0)->pen, ==, 4);
  g_assert_cmpfloat (sq_path_length_mm (mark_at (marks, 0)->line), ==, 2200 * 40);
}

static void
test_labels (void)
{
  g_autoptr (SqCutDrawing) drawing = full_drawing ();

  add_cut_text (g_ptr_array_index (drawing->shapes, 0), sq_point (15, 2), 5,
                "Sitz\003für \xff 席\n");
  add_cut_place (drawing, 0, M_PI_2, sq_point (300, 100));
  g_autoptr (GArray) marks = written (drawing);
  const Mark *first = mark_at (marks, 0), *second = mark_at (marks, 1);
  g_assert_cmpstr (first->label, ==, "1 Top, cut 4 x - - A");
  g_assert_cmpfloat (first->at.x, ==, (300 - 12) * 40);
  g_assert_cmpfloat (first->at.y, ==, (100 + 15) * 40);
  g_assert_cmpfloat_with_epsilon (first->angle_rad, M_PI_2, 1e-9);
  g_assert_cmpfloat (first->height_cm, ==, 0.5);
  g_assert_cmpstr (second->label, ==, "Sitzfur ? ?");
  g_assert_cmpfloat (second->height_cm, ==, 0.5);
}

static gboolean
is_large (double width_mm)
{
  g_autoptr (SqCutDrawing) drawing = drawing_new ("Pads, RIGHT SIDE UP");
  SqCutShape *shape = add_shape (drawing, "1 Top");
  gboolean large;

  add_cut_line (shape, SQ_LAYER_CUT, sq_path_new_rectangle (0, 0, width_mm, 100));
  add_cut_place (drawing, 0, 0, sq_point (0, 0));
  g_autofree char *hpgl = sq_hpgl_write (drawing, &large);
  g_assert_nonnull (strstr (hpgl, "4000"));
  return large;
}

/* 32767 units are 819.175 mm. */
static void
test_large (void)
{
  g_assert_false (is_large (819.175));
  g_assert_true (is_large (819.2));
}

/* A line shorter than a unit is still a dot, and points that fall together are written once. */
static void
test_small (void)
{
  g_autoptr (SqCutDrawing) drawing = drawing_new ("Pads, RIGHT SIDE UP");
  const SqNode nodes[] = { { { 20, 10 }, 0, 0 }, { { 20.004, 10 }, 0, 0 }, { { 30, 10 }, 0, 0 } };
  SqCutShape *shape = add_shape (drawing, "1 Top");

  add_cut_segment (shape, SQ_LAYER_STAY, sq_point (10, 10), sq_point (10.004, 10));
  add_cut_line (shape, SQ_LAYER_STAY, sq_path_new (nodes, G_N_ELEMENTS (nodes), FALSE));
  add_cut_place (drawing, 0, 0, sq_point (0, 0));
  g_autoptr (GArray) marks = written (drawing);
  g_assert_cmpuint (marks->len, ==, 2);
  g_assert_cmpuint (sq_path_n_nodes (mark_at (marks, 0)->line), ==, 2);
  g_assert_cmpfloat (sq_path_length_mm (mark_at (marks, 0)->line), ==, 0);
  g_assert_cmpuint (sq_path_n_nodes (mark_at (marks, 1)->line), ==, 2);
}

int
main (int argc, char **argv)
{
  g_test_init (&argc, &argv, NULL);
  g_test_add_func ("/hpgl/units", test_units);
  g_test_add_func ("/hpgl/arcs", test_arcs);
  g_test_add_func ("/hpgl/order and pens", test_order_and_pens);
  g_test_add_func ("/hpgl/turned round", test_turned_round);
  g_test_add_func ("/hpgl/pens", test_pens);
  g_test_add_func ("/hpgl/cloth", test_cloth);
  g_test_add_func ("/hpgl/labels", test_labels);
  g_test_add_func ("/hpgl/large", test_large);
  g_test_add_func ("/hpgl/small", test_small);
  return g_test_run ();
}
