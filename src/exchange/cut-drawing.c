/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "exchange/cut-drawing.h"

#include "exchange/cut-shape.h"
#include "words/names.h"
#include "words/paper-words.h"
#include "words/strip-words.h"

/* Between pieces side by side and between strips (mm). */
#define APART_MM 20.0
#define STRIPS_APART_MM 60.0
/* Pieces side by side go so far, then a new row begins. */
#define ROW_MM 3000.0
/* Of names of strips. */
#define NAME_MM 12.0

const char *const sq_cut_lines_names[] = { "cut", "sew", "notch", "mark", "text", NULL };
const char *const sq_cut_of_names[] = { "pieces", "cloth", "lay", NULL };

const char *
sq_cut_layer_name (SqCutLayer layer)
{
  static const char *const names[SQ_N_CUT_LAYERS] = {
    "cut", "cut-inside", "sew", "notch", "fold", "zip", "corner", "stay", "grain", "text", "cloth",
  };

  return names[layer];
}

/* --- a drawing as it grows ------------------------------------------------------------------ */

typedef struct
{
  SqCutDrawing *drawing;
  const SqLays *lays;
  const SqCutChoice *choice;
  GArray *shape_of; /* of guint, by line of the cut list: index of its shape, from 1; 0: none yet */
  double top_mm;    /* of what is there */
  SqBox box;        /* as SqCutDrawing has it */
} Making;

static void
free_shape (gpointer shape)
{
  sq_cut_shape_free (shape);
}

static Making
making_new (const SqLays *lays, const SqCutChoice *choice, char *name)
{
  SqCutDrawing *drawing = g_new0 (SqCutDrawing, 1);
  GArray *shape_of = g_array_new (FALSE, TRUE, sizeof (guint));

  g_array_set_size (shape_of, lays->plan->cut_list->len);
  drawing->name = name;
  drawing->title = sq_words_cut_file_title (lays->plan->job, choice->wrong_side);
  drawing->shapes = g_ptr_array_new_with_free_func (free_shape);
  drawing->places = g_array_new (FALSE, FALSE, sizeof (SqCutPlace));
  drawing->lines = sq_cut_lines_new ();
  drawing->texts = sq_cut_texts_new ();
  return (Making){ drawing, lays, choice, shape_of, 0, sq_box_empty () };
}

static guint
shape_of (Making *making, guint entry)
{
  guint *index = &g_array_index (making->shape_of, guint, entry);

  if (*index == 0)
    {
      g_ptr_array_add (making->drawing->shapes,
                       sq_cut_shape_new (making->lays->plan, entry, making->choice));
      *index = making->drawing->shapes->len;
    }
  return *index - 1;
}

static void
add_place (Making *making, guint shape, double turn_rad, SqPoint at)
{
  SqCutPlace place = { shape, turn_rad, at };
  const SqPath *cut = sq_piece_cut (sq_cut_shape (making->drawing, shape)->piece, 0);
  g_autoptr (SqPath) mirrored = making->choice->wrong_side ? sq_path_mirrored (cut) : NULL;
  g_autoptr (SqPath) placed = sq_path_moved (mirrored != NULL ? mirrored : cut, turn_rad, at);

  g_array_append_val (making->drawing->places, place);
  making->box = sq_box_union (making->box, sq_path_box (placed));
}

/* Moves all of it so that its box begins at (0, 0). */
static SqCutDrawing *
making_end (Making *making)
{
  SqCutDrawing *drawing = making->drawing;
  SqBox box = making->box;
  gboolean is_empty = box.min.x > box.max.x;
  SqVector by = is_empty ? sq_point (0, 0) : sq_scale (box.min, -1);

  for (guint i = 0; i < drawing->places->len; i++)
    sq_cut_place (drawing, i)->at = sq_add (sq_cut_place (drawing, i)->at, by);
  for (guint i = 0; i < drawing->lines->len; i++)
    {
      SqCutLine *line = sq_cut_line (drawing->lines, i);
      SqPath *moved = sq_path_moved (line->path, 0, by);
      sq_path_unref (line->path);
      line->path = moved;
    }
  for (guint i = 0; i < drawing->texts->len; i++)
    sq_cut_text (drawing->texts, i)->at = sq_add (sq_cut_text (drawing->texts, i)->at, by);
  if (!is_empty)
    drawing->box = (SqBox){ sq_point (0, 0), sq_sub (box.max, box.min) };
  g_array_unref (making->shape_of);
  return drawing;
}

void
sq_cut_drawing_free (SqCutDrawing *drawing)
{
  g_free (drawing->name);
  g_free (drawing->title);
  g_ptr_array_unref (drawing->shapes);
  g_array_unref (drawing->places);
  g_array_unref (drawing->lines);
  g_array_unref (drawing->texts);
  g_free (drawing);
}

static gboolean
is_wanted (const SqCutChoice *choice, guint entry)
{
  if (choice->entries == NULL)
    return TRUE;
  for (guint i = 0; i < choice->entries->len; i++)
    if (g_array_index (choice->entries, guint, i) == entry)
      return TRUE;
  return FALSE;
}

static const SqCutEntry *
entry_at (const SqLays *lays, guint i)
{
  return &g_array_index (lays->plan->cut_list, SqCutEntry, i);
}

/* --- pieces side by side -------------------------------------------------------------------- */

/* What is written of a piece does not go beyond it, so its lines are its box. */
static SqBox
shape_box (const Making *making, guint shape)
{
  const SqPiece *piece = sq_cut_shape (making->drawing, shape)->piece;
  SqBox box = sq_path_box (sq_piece_cut (piece, 0));

  if (making->choice->wrong_side)
    box = (SqBox){ { -box.max.x, box.min.y }, { -box.min.x, box.max.y } };
  return box;
}

/* Those of @cloth; in rows, each on top of the one before. */
static void
add_pieces (Making *making, SqId cloth, gboolean any_cloth)
{
  double x_mm = 0, low_mm = making->top_mm;

  for (guint i = 0; i < making->lays->plan->cut_list->len; i++)
    {
      if (!is_wanted (making->choice, i)
          || (!any_cloth && entry_at (making->lays, i)->cloth != cloth))
        continue;
      guint shape = shape_of (making, i);
      SqBox box = shape_box (making, shape);
      SqVector size = sq_sub (box.max, box.min);
      if (x_mm > 0 && x_mm + size.x > ROW_MM)
        {
          x_mm = 0;
          low_mm = making->top_mm;
        }
      add_place (making, shape, 0, sq_sub (sq_point (x_mm, low_mm), box.min));
      x_mm += size.x + APART_MM;
      making->top_mm = fmax (making->top_mm, low_mm + size.y + APART_MM);
    }
}

/* --- lays ----------------------------------------------------------------------------------- */

/* "Harbour stripe · Roll to buy · 53 in wide · RIGHT SIDE UP". New text. */
static char *
strip_text (const Making *making, const SqClothLay *cloth, guint strip)
{
  SqLengthStyle style = sq_length_style_default (making->lays->plan->job->units);
  g_autofree char *name = sq_words_cloth (sq_plan_cloth (making->lays->plan, cloth->cloth));
  g_autofree char *strip_name = sq_words_strip (making->lays, cloth, strip, &style);

  return g_strjoin (" · ", name, strip_name, sq_words_side_up (making->choice->wrong_side), NULL);
}

/* The edge of what is laid on, and its name above. */
static void
add_strip_edge (Making *making, const SqClothLay *cloth, guint strip)
{
  double length_mm = sq_lay_length (cloth->lay, strip) / SQ_GRID_PER_MM;
  double width_mm = sq_lay_task_strip (cloth->task, strip)->width / SQ_GRID_PER_MM;
  SqPoint above = sq_point (0, making->top_mm + width_mm + NAME_MM);
  g_autofree char *text = strip_text (making, cloth, strip);
  g_autoptr (SqPath) edge = sq_path_new_rectangle (0, making->top_mm, length_mm,
                                                   making->top_mm + width_mm);

  making->box = sq_box_union (making->box, sq_path_box (edge));
  making->box = sq_box_union (making->box, sq_cut_text_box (above, NAME_MM, text));
  if (making->choice->lines & SQ_LINES_MARK)
    sq_cut_lines_add (making->drawing->lines, SQ_LAYER_CLOTH, sq_path_ref (edge));
  if (making->choice->lines & SQ_LINES_TEXT)
    sq_cut_texts_add (making->drawing->texts, above, NAME_MM, g_steal_pointer (&text));
}

/* Where @placed lies, above what is there already. The roll turned over along its length has its near
 * edge far: what was mirrored by x, turned by t and then mirrored by y is turned by π − t. */
static void
add_placed (Making *making, const SqClothLay *cloth, const SqPlaced *placed)
{
  double width_mm = sq_lay_task_strip (cloth->task, placed->strip)->width / SQ_GRID_PER_MM;
  guint entry = (guint) (sq_lays_entry (making->lays, placed) - entry_at (making->lays, 0));
  double turn_rad;
  SqPoint at;

  if (!is_wanted (making->choice, entry))
    return;
  sq_lays_place (making->lays, placed, &turn_rad, &at);
  if (making->choice->wrong_side)
    {
      turn_rad = M_PI - turn_rad;
      at.y = width_mm - at.y;
    }
  add_place (making, shape_of (making, entry), turn_rad, sq_add (at, sq_point (0, making->top_mm)));
}

static void
add_lay (Making *making, const SqClothLay *cloth)
{
  for (guint strip = 0; strip < cloth->task->strips->len; strip++)
    {
      if (sq_lay_length (cloth->lay, strip) <= 0)
        continue;
      add_strip_edge (making, cloth, strip);
      for (guint i = 0; i < cloth->lay->placed->len; i++)
        if (sq_lay_placed (cloth->lay, i)->strip == strip)
          add_placed (making, cloth, sq_lay_placed (cloth->lay, i));
      making->top_mm += sq_lay_task_strip (cloth->task, strip)->width / SQ_GRID_PER_MM
                        + STRIPS_APART_MM;
    }
}

/* --- drawings ------------------------------------------------------------------------------- */

SqCutDrawing *
sq_cut_drawing_new (const SqLays *lays, const SqCutChoice *choice)
{
  Making making = making_new (lays, choice, sq_words_paper_title (lays->plan->job));

  for (guint i = 0; i < lays->cloths->len; i++)
    if (choice->of == SQ_CUT_LAYS)
      add_lay (&making, sq_lays_cloth (lays, i));
    else if (choice->of == SQ_CUT_CLOTHS)
      add_pieces (&making, sq_lays_cloth (lays, i)->cloth, FALSE);
  if (choice->of == SQ_CUT_PIECES)
    add_pieces (&making, 0, TRUE);
  return making_end (&making);
}

static SqCutDrawing *
drawing_of_piece (const SqLays *lays, const SqCutChoice *choice, guint entry)
{
  Making making = making_new (lays, choice, NULL);
  guint shape = shape_of (&making, entry);

  add_place (&making, shape, 0, sq_point (0, 0));
  making.drawing->name = g_strdup (sq_cut_shape (making.drawing, shape)->name);
  return making_end (&making);
}

/* Two cloths may bear one name. */
static char *
cloth_name (const SqLays *lays, guint index)
{
  g_autofree char *name = sq_words_cloth (
      sq_plan_cloth (lays->plan, sq_lays_cloth (lays, index)->cloth));

  for (guint i = 0; i < lays->cloths->len; i++)
    {
      g_autofree char *other = sq_words_cloth (
          sq_plan_cloth (lays->plan, sq_lays_cloth (lays, i)->cloth));
      if (i != index && g_str_equal (name, other))
        return g_strdup_printf ("%s (%u)", name, index + 1);
    }
  return g_steal_pointer (&name);
}

static SqCutDrawing *
drawing_of_cloth (const SqLays *lays, const SqCutChoice *choice, guint index)
{
  const SqClothLay *cloth = sq_lays_cloth (lays, index);
  Making making = making_new (lays, choice, cloth_name (lays, index));

  if (choice->of == SQ_CUT_LAYS)
    add_lay (&making, cloth);
  else
    add_pieces (&making, cloth->cloth, FALSE);
  return making_end (&making);
}

static void
free_drawing (gpointer drawing)
{
  sq_cut_drawing_free (drawing);
}

GPtrArray *
sq_cut_drawings_new (const SqLays *lays, const SqCutChoice *choice)
{
  GPtrArray *drawings = g_ptr_array_new_with_free_func (free_drawing);
  guint n = choice->of == SQ_CUT_PIECES ? lays->plan->cut_list->len : lays->cloths->len;

  for (guint i = 0; i < n; i++)
    if (choice->of != SQ_CUT_PIECES)
      g_ptr_array_add (drawings, drawing_of_cloth (lays, choice, i));
    else if (is_wanted (choice, i))
      g_ptr_array_add (drawings, drawing_of_piece (lays, choice, i));
  return drawings;
}

SqPath *
sq_cut_line_placed (const SqCutLine *line, const SqCutPlace *place)
{
  return sq_path_moved (line->path, place->turn_rad, place->at);
}

SqCutText
sq_cut_text_placed (const SqCutText *text, const SqCutPlace *place)
{
  SqCutText placed = *text;

  placed.at = sq_add (sq_turned (text->at, place->turn_rad), place->at);
  placed.angle_rad = text->angle_rad + place->turn_rad;
  return placed;
}
