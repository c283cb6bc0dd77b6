/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "exchange/hpgl.h"

#include "base/number.h"

#define FLATTEN_MM (0.5 / SQ_HPGL_PER_MM)

/* Points of one command: some devices take in no more than a line at a time. */
#define POINTS_A_COMMAND 16

/* A label begins at every width and a half (HP-GL reference guides, SI and CP): that makes its letters
 * stand about as close as those of a usual typeface. */
#define WIDTH_PER_HEIGHT 0.5

/* Ends a label. It is what every device expects without being told, and no device draws it, which older
 * ones do with any other character. */
#define LABEL_END '\003'

/* The order within a piece, and the pens. Inside before outside. */
static const struct
{
  guint stage, pen;
} layers[SQ_N_CUT_LAYERS] = {
  [SQ_LAYER_TEXT] = { 0, 5 },       [SQ_LAYER_CLOTH] = { 1, 4 },  [SQ_LAYER_FOLD] = { 1, 4 },
  [SQ_LAYER_ZIP] = { 1, 4 },        [SQ_LAYER_CORNER] = { 1, 4 }, [SQ_LAYER_STAY] = { 1, 4 },
  [SQ_LAYER_GRAIN] = { 1, 4 },      [SQ_LAYER_SEW] = { 2, 2 },    [SQ_LAYER_NOTCH] = { 3, 3 },
  [SQ_LAYER_CUT_INSIDE] = { 4, 1 }, [SQ_LAYER_CUT] = { 5, 1 },
};

/* A line or a text to draw, where it is in the drawing. */
typedef struct
{
  SqCutLayer layer;
  SqPath *path;   /* owned; NULL: a text */
  SqCutText text; /* borrowed text */
  SqPoint from, to;
} Stroke;

typedef struct
{
  GString *out;
  SqPoint pen_at;
  guint pen;
  double label_mm, label_rad; /* as told last */
  gboolean is_large;
} Plot;

guint
sq_hpgl_pen (SqCutLayer layer)
{
  g_return_val_if_fail (layer < SQ_N_CUT_LAYERS, 0);
  return layers[layer].pen;
}

/* ---- what there is to draw ----------------------------------------------------------------- */

static void
clear_stroke (gpointer data)
{
  g_clear_pointer (&((Stroke *) data)->path, sq_path_unref);
}

static void
add_line (GArray *strokes, SqCutLayer layer, SqPath *path)
{
  guint last = sq_path_is_ring (path) ? 0 : sq_path_n_nodes (path) - 1;
  Stroke stroke = { .layer = layer,
                    .path = path,
                    .from = sq_path_nodes (path)[0].at,
                    .to = sq_path_nodes (path)[last].at };

  g_array_append_val (strokes, stroke);
}

static void
add_text (GArray *strokes, SqCutText text)
{
  Stroke stroke = { .layer = SQ_LAYER_TEXT, .text = text, .from = text.at, .to = text.at };

  g_array_append_val (strokes, stroke);
}

static GArray *
strokes_new (void)
{
  GArray *strokes = g_array_new (FALSE, FALSE, sizeof (Stroke));

  g_array_set_clear_func (strokes, clear_stroke);
  return strokes;
}

static GArray *
strokes_of_place (const SqCutDrawing *drawing, const SqCutPlace *place)
{
  const SqCutShape *shape = sq_cut_shape (drawing, place->shape);
  GArray *strokes = strokes_new ();

  for (guint i = 0; i < shape->lines->len; i++)
    {
      const SqCutLine *line = sq_cut_line (shape->lines, i);
      add_line (strokes, line->layer, sq_cut_line_placed (line, place));
    }
  for (guint i = 0; i < shape->texts->len; i++)
    add_text (strokes, sq_cut_text_placed (sq_cut_text (shape->texts, i), place));
  return strokes;
}

/* What belongs to no piece. */
static GArray *
strokes_of_drawing (const SqCutDrawing *drawing)
{
  GArray *strokes = strokes_new ();

  for (guint i = 0; i < drawing->lines->len; i++)
    {
      const SqCutLine *line = sq_cut_line (drawing->lines, i);
      add_line (strokes, line->layer, sq_path_ref (line->path));
    }
  for (guint i = 0; i < drawing->texts->len; i++)
    add_text (strokes, *sq_cut_text (drawing->texts, i));
  return strokes;
}

/* ---- commands ------------------------------------------------------------------------------ */

/* Rounded once, from where the point is. */
static void
to_units (SqPoint p, long units[2])
{
  units[0] = lround (p.x * SQ_HPGL_PER_MM);
  units[1] = lround (p.y * SQ_HPGL_PER_MM);
}

static void
add_units (Plot *plot, const long units[2])
{
  if (MAX (labs (units[0]), labs (units[1])) > SQ_HPGL_MOST_UNITS)
    plot->is_large = TRUE;
  g_string_append_printf (plot->out, "%ld,%ld", units[0], units[1]);
}

static void
move_to (Plot *plot, SqPoint p)
{
  long units[2];

  to_units (p, units);
  g_string_append (plot->out, "PU");
  add_units (plot, units);
  g_string_append (plot->out, ";\n");
}

/* Points that come to lie on the one before say nothing; but a line that is one point is a dot. */
static void
add_line_to (Plot *plot, const SqPath *flat)
{
  guint n = sq_path_n_nodes (flat), n_segments = sq_path_n_segments (flat), in_command = 0;
  long before[2], units[2];

  to_units (sq_path_nodes (flat)[0].at, before);
  for (guint i = 1; i <= n_segments; i++)
    {
      to_units (sq_path_nodes (flat)[i % n].at, units);
      gboolean is_dot = i == n_segments && in_command == 0;
      if (units[0] == before[0] && units[1] == before[1] && !is_dot)
        continue;
      if (in_command % POINTS_A_COMMAND == 0)
        g_string_append (plot->out, in_command == 0 ? "PD" : ";\nPD");
      else
        g_string_append_c (plot->out, ',');
      add_units (plot, units);
      in_command++;
      before[0] = units[0];
      before[1] = units[1];
    }
  g_string_append (plot->out, ";\n");
}

static void
add_decimals (Plot *plot, const char *command, double a, double b)
{
  char first[SQ_NUMBER_SIZE], second[SQ_NUMBER_SIZE];

  g_string_append_printf (plot->out, "%s%s,%s;\n", command,
                          sq_number_write (round (a * 1e4) / 1e4, first),
                          sq_number_write (round (b * 1e4) / 1e4, second));
}

/* Size is told in centimetres. */
static void
add_label_style (Plot *plot, const SqCutText *text)
{
  double height_cm = text->height_mm / 10;

  if (text->angle_rad != plot->label_rad)
    add_decimals (plot, "DI", cos (text->angle_rad), sin (text->angle_rad));
  if (text->height_mm != plot->label_mm)
    add_decimals (plot, "SI", height_cm * WIDTH_PER_HEIGHT, height_cm);
  plot->label_rad = text->angle_rad;
  plot->label_mm = text->height_mm;
}

static void
add_label (Plot *plot, const char *text)
{
  g_autofree char *valid = g_utf8_make_valid (text, -1);
  g_autoptr (GString) plain = g_string_new (valid);
  g_string_replace (plain, "·", "-", 0);
  g_autofree char *ascii = g_str_to_ascii (plain->str, "C");

  g_string_append (plot->out, "LB");
  for (const char *at = ascii; *at != '\0'; at++)
    if (!g_ascii_iscntrl (*at))
      g_string_append_c (plot->out, *at == ';' ? ',' : *at);
  g_string_append_c (plot->out, LABEL_END);
  g_string_append (plot->out, ";\n");
}

static void
take_pen (Plot *plot, guint pen)
{
  if (pen == plot->pen)
    return;
  g_string_append_printf (plot->out, "PU;SP%u;\n", pen);
  plot->pen = pen;
}

static void
draw (Plot *plot, const Stroke *stroke)
{
  take_pen (plot, sq_hpgl_pen (stroke->layer));
  if (stroke->path == NULL)
    {
      add_label_style (plot, &stroke->text);
      move_to (plot, stroke->from);
      add_label (plot, stroke->text.text);
    }
  else
    {
      g_autoptr (SqPath) flat = sq_path_flattened (stroke->path, FLATTEN_MM);
      move_to (plot, stroke->from);
      add_line_to (plot, flat);
    }
  plot->pen_at = stroke->to;
}

/* ---- the way of the pen -------------------------------------------------------------------- */

#define stroke_at(strokes, i) (&g_array_index ((strokes), Stroke, (i)))

static guint
first_stage (const GArray *strokes)
{
  guint stage = G_MAXUINT;

  for (guint i = 0; i < strokes->len; i++)
    stage = MIN (stage, layers[stroke_at (strokes, i)->layer].stage);
  return stage;
}

/* The stroke of @stage that begins nearest to the pen, the first of equals; and how far it is. */
static guint
nearest_stroke (const Plot *plot, const GArray *strokes, guint stage, double *distance_mm)
{
  guint nearest = 0;

  *distance_mm = INFINITY;
  for (guint i = 0; i < strokes->len; i++)
    {
      const Stroke *stroke = stroke_at (strokes, i);
      double mm = sq_distance (plot->pen_at, stroke->from);
      if (layers[stroke->layer].stage == stage && mm < *distance_mm)
        {
          nearest = i;
          *distance_mm = mm;
        }
    }
  return nearest;
}

/* All of one piece. */
static void
draw_all (Plot *plot, GArray *strokes)
{
  while (strokes->len > 0)
    {
      double distance_mm;
      guint next = nearest_stroke (plot, strokes, first_stage (strokes), &distance_mm);
      draw (plot, stroke_at (strokes, next));
      g_array_remove_index (strokes, next);
    }
}

static guint
nearest_piece (const Plot *plot, const GPtrArray *pieces)
{
  guint nearest = 0;
  double nearest_mm = INFINITY;

  for (guint i = 0; i < pieces->len; i++)
    {
      const GArray *strokes = g_ptr_array_index (pieces, i);
      double distance_mm;
      nearest_stroke (plot, strokes, first_stage (strokes), &distance_mm);
      if (distance_mm < nearest_mm)
        {
          nearest = i;
          nearest_mm = distance_mm;
        }
    }
  return nearest;
}

static void
free_strokes (gpointer strokes)
{
  g_array_unref (strokes);
}

static void
draw_pieces (Plot *plot, const SqCutDrawing *drawing)
{
  g_autoptr (GPtrArray) pieces = g_ptr_array_new_with_free_func (free_strokes);

  for (guint i = 0; i < drawing->places->len; i++)
    g_ptr_array_add (pieces, strokes_of_place (drawing, sq_cut_place (drawing, i)));
  while (pieces->len > 0)
    {
      guint next = nearest_piece (plot, pieces);
      draw_all (plot, g_ptr_array_index (pieces, next));
      g_ptr_array_remove_index (pieces, next);
    }
}

char *
sq_hpgl_write (const SqCutDrawing *drawing, gboolean *is_large)
{
  Plot plot = { .out = g_string_new ("IN;\nPA;\n") };
  g_autoptr (GArray) own = strokes_of_drawing (drawing);

  draw_all (&plot, own);
  draw_pieces (&plot, drawing);
  g_string_append (plot.out, "PU;SP0;\n");
  *is_large = plot.is_large;
  return g_string_free (plot.out, FALSE);
}
