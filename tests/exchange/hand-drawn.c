/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "exchange/hand-drawn.h"

static void
clear_line (gpointer line)
{
  sq_path_unref (((SqCutLine *) line)->path);
}

static void
clear_text (gpointer text)
{
  g_free (((SqCutText *) text)->text);
}

static GArray *
lines_new (void)
{
  GArray *lines = g_array_new (FALSE, FALSE, sizeof (SqCutLine));

  g_array_set_clear_func (lines, clear_line);
  return lines;
}

static GArray *
texts_new (void)
{
  GArray *texts = g_array_new (FALSE, FALSE, sizeof (SqCutText));

  g_array_set_clear_func (texts, clear_text);
  return texts;
}

static void
free_shape (gpointer data)
{
  SqCutShape *shape = data;

  g_free (shape->name);
  g_free (shape->cloth);
  g_array_unref (shape->lines);
  g_array_unref (shape->texts);
  g_free (shape);
}

SqCutDrawing *
drawn_new (double width_mm, double height_mm)
{
  SqCutDrawing *drawing = g_new0 (SqCutDrawing, 1);

  drawing->name = g_strdup ("Pads");
  drawing->title = g_strdup ("Pads, RIGHT SIDE UP");
  drawing->shapes = g_ptr_array_new_with_free_func (free_shape);
  drawing->places = g_array_new (FALSE, FALSE, sizeof (SqCutPlace));
  drawing->lines = lines_new ();
  drawing->texts = texts_new ();
  drawing->box = (SqBox){ sq_point (0, 0), sq_point (width_mm, height_mm) };
  return drawing;
}

guint
drawn_shape (SqCutDrawing *drawing, const char *name)
{
  SqCutShape *shape = g_new0 (SqCutShape, 1);

  shape->name = g_strdup (name);
  shape->cloth = g_strdup ("");
  shape->count = 1;
  shape->lines = lines_new ();
  shape->texts = texts_new ();
  g_ptr_array_add (drawing->shapes, shape);
  return drawing->shapes->len - 1;
}

void
drawn_line (SqCutDrawing *drawing, guint shape, SqCutLayer layer, SqPath *path)
{
  SqCutLine line = { layer, path };

  g_array_append_val (sq_cut_shape (drawing, shape)->lines, line);
}

void
drawn_text (SqCutDrawing *drawing, guint shape, SqPoint at, double height_mm, const char *text)
{
  SqCutText line = { .at = at, .height_mm = height_mm, .text = g_strdup (text) };

  g_array_append_val (sq_cut_shape (drawing, shape)->texts, line);
}

void
drawn_place (SqCutDrawing *drawing, guint shape, double turn_rad, SqPoint at)
{
  SqCutPlace place = { shape, turn_rad, at };

  g_array_append_val (drawing->places, place);
}

SqPath *
straight (double x0, double y0, double x1, double y1)
{
  return bulging ((const double[][3]){ { x0, y0, 0 }, { x1, y1, 0 } }, 2, FALSE);
}

SqPath *
bulging (const double (*nodes)[3], guint n, gboolean is_ring)
{
  SqPathBuilder builder;

  sq_path_builder_init (&builder);
  for (guint i = 0; i < n; i++)
    sq_path_builder_add (&builder, sq_point (nodes[i][0], nodes[i][1]), nodes[i][2], 0);
  return sq_path_builder_end (&builder, is_ring);
}
