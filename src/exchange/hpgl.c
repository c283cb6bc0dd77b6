/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "exchange/hpgl.h"

#include "base/number.h"

#define FLATTEN_MM (0.25 / SQ_HPGL_PER_MM)

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

static guint
stage_of (const Stroke *stroke)
{
  return layers[stroke->layer].stage;
}

static int
compare_stages (gconstpointer a, gconstpointer b)
{
  guint first = stage_of (a), second = stage_of (b);
  return first < second ? -1 : first > second;
}

static void
clear_stroke (gpointer data)
{
  g_clear_pointer (&((Stroke *) data)->path, sq_path_unref);
}

static void
add_line (GArray *strokes, SqCutLayer layer, SqPath *path)
{
  Stroke stroke = { .layer = layer, .path = path };

  g_array_append_val (strokes, stroke);
}

static void
add_text (GArray *strokes, SqCutText text)
{
  Stroke stroke = { .layer = SQ_LAYER_TEXT, .text = text };

  g_array_append_val (strokes, stroke);
}

static GArray *
strokes_new (void)
{
  GArray *strokes = g_array_new (FALSE, FALSE, sizeof (Stroke));

  g_array_set_clear_func (strokes, clear_stroke);
  return strokes;
}

/* By stage. */
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
  g_array_sort (strokes, compare_stages);
  return strokes;
}

/* What belongs to no piece, by stage. */
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
  g_array_sort (strokes, compare_stages);
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

/* @path begun at @node: one of a ring, an end of a line. */
static SqPath *
begun_at (SqPath *path, guint node)
{
  guint n = sq_path_n_nodes (path);
  g_autofree SqNode *nodes = NULL;

  if (node == 0)
    return sq_path_ref (path);
  if (!sq_path_is_ring (path))
    return sq_path_reversed (path);
  nodes = g_new (SqNode, n);
  for (guint i = 0; i < n; i++)
    nodes[i] = sq_path_nodes (path)[(node + i) % n];
  return sq_path_new (nodes, n, TRUE);
}

static void
draw_text (Plot *plot, const SqCutText *text)
{
  add_label_style (plot, text);
  move_to (plot, text->at);
  add_label (plot, text->text);
  plot->pen_at = text->at;
}

static void
draw_line (Plot *plot, SqPath *path, guint node)
{
  g_autoptr (SqPath) begun = begun_at (path, node);
  g_autoptr (SqPath) flat = sq_path_flattened (begun, FLATTEN_MM);
  guint n = sq_path_n_nodes (flat);

  move_to (plot, sq_path_nodes (flat)[0].at);
  add_line_to (plot, flat);
  plot->pen_at = sq_path_nodes (flat)[sq_path_is_ring (flat) ? 0 : n - 1].at;
}

/* ---- the way of the pen -------------------------------------------------------------------- */

#define stroke_at(strokes, i) (&g_array_index ((strokes), Stroke, (i)))

/* How far @stroke is from the pen: a text from where it begins, a ring from the nearest of its nodes, a
 * line from the nearer end, *@node. */
static double
distance_mm (const Plot *plot, const Stroke *stroke, guint *node)
{
  guint n = stroke->path != NULL ? sq_path_n_nodes (stroke->path) : 0;
  guint step = n > 0 && sq_path_is_ring (stroke->path) ? 1 : MAX (n, 2) - 1;
  double nearest_mm = n == 0 ? sq_distance (plot->pen_at, stroke->text.at) : INFINITY;

  *node = 0;
  for (guint i = 0; i < n; i += step)
    {
      double mm = sq_distance (plot->pen_at, sq_path_nodes (stroke->path)[i].at);
      if (mm < nearest_mm)
        {
          *node = i;
          nearest_mm = mm;
        }
    }
  return nearest_mm;
}

/* Where to go on. */
typedef struct
{
  guint stroke, node;
  double mm; /* how far that is */
} Next;

/* Of @strokes, which are sorted by stage, the nearest of the first stage, the first of equals. */
static Next
next_of (const Plot *plot, const GArray *strokes)
{
  Next next = { 0, 0, INFINITY };

  for (guint i = 0; i < strokes->len; i++)
    {
      const Stroke *stroke = stroke_at (strokes, i);
      guint node;
      if (stage_of (stroke) != stage_of (stroke_at (strokes, 0)))
        break;
      double mm = distance_mm (plot, stroke, &node);
      if (mm < next.mm)
        next = (Next){ i, node, mm };
    }
  return next;
}

/* All of one piece. */
static void
draw_all (Plot *plot, GArray *strokes)
{
  while (strokes->len > 0)
    {
      Next next = next_of (plot, strokes);
      const Stroke *stroke = stroke_at (strokes, next.stroke);
      take_pen (plot, sq_hpgl_pen (stroke->layer));
      if (stroke->path == NULL)
        draw_text (plot, &stroke->text);
      else
        draw_line (plot, stroke->path, next.node);
      g_array_remove_index (strokes, next.stroke);
    }
}

static guint
nearest_piece (const Plot *plot, const GPtrArray *pieces)
{
  guint nearest = 0;
  double nearest_mm = INFINITY;

  for (guint i = 0; i < pieces->len; i++)
    {
      double mm = next_of (plot, g_ptr_array_index (pieces, i)).mm;
      if (mm < nearest_mm)
        {
          nearest = i;
          nearest_mm = mm;
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
