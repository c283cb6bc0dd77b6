/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "hand-made-drawing.h"

#include "exchange/cut-shape.h"

static void
free_shape (gpointer shape)
{
  sq_cut_shape_free (shape);
}

SqCutDrawing *
drawing_new (const char *title)
{
  SqCutDrawing *drawing = g_new0 (SqCutDrawing, 1);

  drawing->name = g_strdup ("Bay seat");
  drawing->title = g_strdup (title);
  drawing->shapes = g_ptr_array_new_with_free_func (free_shape);
  drawing->places = g_array_new (FALSE, FALSE, sizeof (SqCutPlace));
  drawing->lines = sq_cut_lines_new ();
  drawing->texts = sq_cut_texts_new ();
  drawing->box = sq_box_empty ();
  return drawing;
}

SqCutShape *
add_shape (SqCutDrawing *drawing, const char *name)
{
  SqCutShape *shape = g_new0 (SqCutShape, 1);

  shape->name = g_strdup (name);
  shape->cloth = g_strdup ("Canvas");
  shape->count = 2;
  shape->lines = sq_cut_lines_new ();
  shape->texts = sq_cut_texts_new ();
  g_ptr_array_add (drawing->shapes, shape);
  return shape;
}

void
add_cut_line (SqCutShape *shape, SqCutLayer layer, SqPath *path)
{
  sq_cut_lines_add (shape->lines, layer, path);
}

void
add_cut_segment (SqCutShape *shape, SqCutLayer layer, SqPoint from, SqPoint to)
{
  const SqNode nodes[] = { { from, 0, 0 }, { to, 0, 0 } };

  add_cut_line (shape, layer, sq_path_new (nodes, G_N_ELEMENTS (nodes), FALSE));
}

void
add_cut_text (SqCutShape *shape, SqPoint at, double height_mm, const char *text)
{
  sq_cut_texts_add (shape->texts, at, height_mm, g_strdup (text));
}

void
add_cut_place (SqCutDrawing *drawing, guint shape, double turn_rad, SqPoint at)
{
  SqCutPlace place = { shape, turn_rad, at };
  const GArray *lines = sq_cut_shape (drawing, shape)->lines;

  g_array_append_val (drawing->places, place);
  for (guint i = 0; i < lines->len; i++)
    {
      g_autoptr (SqPath) placed = sq_cut_line_placed (sq_cut_line (lines, i), &place);
      drawing->box = sq_box_union (drawing->box, sq_path_box (placed));
    }
}
