/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "papers/roll-bands.h"

#include "words/lengths.h"
#include "words/paper-words.h"

#define FIGURE_EM_MM 2.9

/* Beside the roll: figures across; below: figures along and the edge's name; above: a line. */
#define LEFT_MM 15.0
#define BELOW_MM 22.0
#define ABOVE_MM 6.0
#define RIGHT_MM 9.0 /* for the cloth's up */

static const SqType figure_type = { FIGURE_EM_MM, FALSE, SQ_TONE_INK };

static const double scales[] = { 4, 5, 6, 8, 10, 12, 15, 20, 25, 30, 40, 50, 75, 100, 150, 200 };

/* The largest round scale at which @length_mm is at most @most_mm on paper. */
static double
scale_for (double length_mm, double most_mm)
{
  guint i = 0;

  while (i + 1 < G_N_ELEMENTS (scales) && length_mm / scales[i] > most_mm)
    i++;
  return scales[i];
}

static double
band_room_mm (const SqRollBands *roll)
{
  SqBox area = sq_pages_area (roll->pages);

  return area.max.x - area.min.x - LEFT_MM - RIGHT_MM;
}

static const SqPath *
cut_of (const SqRollBands *roll, guint i)
{
  return g_ptr_array_index (roll->cuts, i);
}

/* How high the roll may be drawn: so that its table goes onto the same page, if enough is left. */
static double
most_high_mm (const SqRollBands *roll, double table_mm)
{
  double room_mm = sq_pages_room_mm (roll->pages) - ABOVE_MM - BELOW_MM;

  if (room_mm - table_mm >= SQ_ROLL_BAND_LEAST_MM)
    room_mm -= table_mm;
  return fmin (room_mm, roll->most_high_mm);
}

/* In one band if the roll is not too narrow then; else in bands, no piece longer than one. */
static void
choose_scale (SqRollBands *roll, double table_mm)
{
  double width_mm = roll->box.max.y, length_mm = roll->box.max.x, longest_mm = 0;
  double whole = fmax (scale_for (width_mm, most_high_mm (roll, table_mm)),
                       scale_for (length_mm, band_room_mm (roll)));

  roll->scale = whole;
  if (width_mm / whole >= roll->least_high_mm)
    return;
  for (guint i = 0; i < roll->cuts->len; i++)
    {
      SqBox box = sq_path_box (cut_of (roll, i));
      longest_mm = fmax (longest_mm, box.max.x - box.min.x);
    }
  roll->scale = fmin (whole, fmax (scale_for (width_mm, roll->most_band_mm),
                                   scale_for (longest_mm, band_room_mm (roll))));
}

/* --- what is drawn of a band ----------------------------------------------------------------- */

SqPoint
sq_roll_band_point (const SqRollBand *band, SqPoint p)
{
  double scale = band->of->scale;

  return sq_add (band->at, sq_point ((p.x - band->from_mm) / scale, p.y / scale));
}

void
sq_roll_band_scene (const SqRollBand *band, SqScene *scene, SqVector place)
{
  sq_scene_add_scene (sq_pages_scene (band->of->pages), scene, sq_roll_band_point (band, place),
                      1 / band->of->scale);
  sq_scene_unref (scene);
}

/* Each piece is drawn whole in the first band that has all of it: nobody cuts it twice. */
static gboolean
is_drawn_in (const SqRollBand *band, SqBox box)
{
  return box.min.x >= band->from_mm - 0.01 && box.max.x <= band->to_mm + 0.01
         && box.max.x > band->before_mm + 0.01;
}

/* The part of @nodes on one side of the line across the roll at @x_mm (Sutherland and Hodgman,
 * Communications of the ACM 17, 1974). */
static GArray *
clipped (const GArray *nodes, double x_mm, int side)
{
  GArray *out = g_array_new (FALSE, FALSE, sizeof (SqNode));

  for (guint i = 0; i < nodes->len; i++)
    {
      SqPoint a = g_array_index (nodes, SqNode, i).at;
      SqPoint b = g_array_index (nodes, SqNode, (i + 1) % nodes->len).at;
      double da = side * (a.x - x_mm), db = side * (b.x - x_mm);
      SqNode node = { a, 0, 0 };
      if (da >= 0)
        g_array_append_val (out, node);
      node.at = sq_between (a, b, da / (da - db));
      if ((da < 0) != (db < 0))
        g_array_append_val (out, node);
    }
  return out;
}

/* A piece that is drawn whole in another band: dashed, as far as it reaches into this one. */
static void
add_reaching (const SqRollBands *roll, const SqRollBand *band, guint i)
{
  g_autoptr (SqPath) flat = sq_path_flattened (cut_of (roll, i), 0.1 * roll->scale);
  g_autoptr (GArray) nodes = g_array_new (FALSE, FALSE, sizeof (SqNode));

  g_array_append_vals (nodes, sq_path_nodes (flat), sq_path_n_nodes (flat));
  g_autoptr (GArray) right = clipped (nodes, band->from_mm, 1);
  g_autoptr (GArray) both = clipped (right, band->to_mm, -1);
  if (both->len < 3)
    return;
  for (guint k = 0; k < both->len; k++)
    {
      SqNode *node = &g_array_index (both, SqNode, k);
      node->at = sq_roll_band_point (band, node->at);
    }
  sq_scene_begin_stroke (sq_pages_scene (roll->pages), SQ_PEN_SEW);
  sq_scene_add_nodes (sq_pages_scene (roll->pages), (const SqNode *) (gpointer) both->data,
                      both->len, TRUE);
}

/* --- running dimensions ---------------------------------------------------------------------- */

static int
compare_figures (gconstpointer a, gconstpointer b)
{
  double x = *(const double *) a, y = *(const double *) b;

  return (x > y) - (x < y);
}

/* Adds one figure at @mm, if it is not too near to the last. */
static void
add_dimension (const SqRollBands *roll, const SqRollBand *band, double mm, gboolean is_along,
               double *last_mm)
{
  g_autofree char *text = sq_words_figure (mm, roll->style);
  double width_mm = sq_text_width_em (text, FALSE) * FIGURE_EM_MM;
  double apart_mm = SQ_TEXT_HEIGHT_EM * FIGURE_EM_MM + 0.1;
  SqSceneBuilder *scene = sq_pages_scene (roll->pages);
  SqPoint edge = is_along ? sq_roll_band_point (band, sq_point (mm, 0))
                          : sq_roll_band_point (band, sq_point (band->from_mm, mm));
  double along = is_along ? edge.x : edge.y;
  SqVector out = is_along ? sq_point (0, -1) : sq_point (-1, 0);

  if (along - *last_mm < apart_mm)
    return;
  *last_mm = along;
  sq_scene_begin_stroke (scene, SQ_PEN_RULE);
  sq_scene_add_line (scene, edge, sq_moved (edge, out, 1.6));
  sq_scene_add_text (scene, &(SqText){ .at = sq_moved (edge, out, 2 + width_mm / 2),
                                       .angle_rad = is_along ? M_PI / 2 : 0,
                                       .em_mm = FIGURE_EM_MM,
                                       .width_mm = width_mm,
                                       .text = text });
}

/* Where pieces begin and end along the near edge, and across from it: each from the exact figure,
 * so nothing adds up; where they crowd, some are left to the table. */
static void
add_dimensions (const SqRollBands *roll, const SqRollBand *band, gboolean is_along)
{
  g_autoptr (GArray) figures = g_array_new (FALSE, FALSE, sizeof (double));
  double last_mm = -1000, end_mm = is_along ? fmin (band->to_mm, roll->box.max.x) : roll->box.max.y;

  for (guint i = 0; i < roll->cuts->len; i++)
    {
      SqBox box = sq_path_box (cut_of (roll, i));
      if (!is_drawn_in (band, box))
        continue;
      g_array_append_val (figures, *(is_along ? &box.min.x : &box.min.y));
      g_array_append_val (figures, *(is_along ? &box.max.x : &box.max.y));
    }
  g_array_append_val (figures, end_mm);
  g_array_sort (figures, compare_figures);
  for (guint i = 0; i < figures->len; i++)
    add_dimension (roll, band, g_array_index (figures, double, i), is_along, &last_mm);
}

/* --- a band ---------------------------------------------------------------------------------- */

static gboolean
has_up (const SqRollBands *roll)
{
  return roll->cloth != NULL && roll->cloth->one_way;
}

/* One head, towards the cloth's up, at the right of the roll. */
static void
add_up (const SqRollBands *roll, const SqRollBand *band)
{
  const SqCloth *cloth = roll->cloth;
  SqSceneBuilder *scene = sq_pages_scene (roll->pages);

  if (!has_up (roll))
    return;
  SqVector up = sq_point (cloth->up_is_start ? -1 : 1, 0);
  SqPoint end = sq_roll_band_point (band, sq_point (band->to_mm, roll->box.max.y / 2));
  SqPoint middle = sq_add (end, sq_point (RIGHT_MM / 2, 0)), tip = sq_moved (middle, up, 3);
  SqPoint base = sq_moved (tip, up, -2.4);
  const SqNode head[] = { { tip, 0, 0 },
                          { sq_moved (base, sq_left (up), 1.1), 0, 0 },
                          { sq_moved (base, sq_left (up), -1.1), 0, 0 } };
  SqColumn word = { middle.x - RIGHT_MM / 2, middle.y + 6, RIGHT_MM };

  sq_scene_begin_stroke (scene, SQ_PEN_INK);
  sq_scene_add_line (scene, sq_moved (middle, up, -3), base);
  sq_scene_begin_colour (scene, 0, 1);
  sq_scene_add_nodes (scene, head, G_N_ELEMENTS (head), TRUE);
  sq_set_line (scene, &word, SQ_ALIGN_MIDDLE, &figure_type, sq_words_up ());
}

static void
add_names (const SqRollBands *roll, const SqRollBand *band, const SqColumn *column)
{
  SqSceneBuilder *scene = sq_pages_scene (roll->pages);
  g_autofree char *state = sq_words_layout_state (roll->wrong_side, roll->scale, band->from_mm,
                                                  roll->style);
  SqColumn above = { column->left_mm + LEFT_MM, column->top_mm, column->width_mm - LEFT_MM };
  SqColumn below = { above.left_mm, band->at.y - BELOW_MM + 4, above.width_mm };
  SqType bold = figure_type;

  bold.bold = TRUE;
  sq_set_line (scene, &above, SQ_ALIGN_START, &bold, state);
  sq_set_line (scene, &below, SQ_ALIGN_START, &figure_type, sq_words_near_edge ());
  if (band->from_mm <= 0)
    {
      SqColumn end = { column->left_mm, column->top_mm, LEFT_MM - 1 };
      sq_set_line (scene, &end, SQ_ALIGN_END, &figure_type, sq_words_cut_end ());
    }
}

static SqBox
add_band (const SqRollBands *roll, SqRollBand *band)
{
  double height_mm = roll->box.max.y / roll->scale;
  SqColumn column = sq_pages_block (roll->pages, ABOVE_MM + height_mm + BELOW_MM, 0);

  band->at = sq_point (column.left_mm + LEFT_MM, column.top_mm - ABOVE_MM - height_mm);
  roll->draw_cloth (band, roll->data);
  for (guint i = 0; i < roll->cuts->len; i++)
    {
      SqBox box = sq_path_box (cut_of (roll, i));
      if (is_drawn_in (band, box))
        roll->draw_piece (band, i, roll->data);
      else if (box.min.x < band->to_mm && box.max.x > band->from_mm)
        add_reaching (roll, band, i);
    }
  add_dimensions (roll, band, TRUE);
  add_dimensions (roll, band, FALSE);
  add_names (roll, band, &column);
  add_up (roll, band);
  double right_mm = has_up (roll) ? RIGHT_MM : 0;
  return (SqBox){ { column.left_mm, band->at.y - BELOW_MM },
                  { band->at.x + (band->to_mm - band->from_mm) / roll->scale + right_mm,
                    band->at.y + height_mm } };
}

/* Where the next band begins: at the first piece that is not whole in this one or one before. */
static double
next_from_mm (const SqRollBands *roll, const SqRollBand *band)
{
  double next_mm = band->to_mm;

  for (guint i = 0; i < roll->cuts->len; i++)
    {
      SqBox box = sq_path_box (cut_of (roll, i));
      if (box.max.x > band->to_mm + 0.01)
        next_mm = fmin (next_mm, box.min.x);
    }
  return fmax (next_mm, band->from_mm + 1); /* it goes on in any case */
}

SqBox
sq_roll_bands_draw (SqRollBands *roll, double with_mm)
{
  double length_mm, before_mm = -1;
  SqBox drawn = sq_box_empty ();

  choose_scale (roll, with_mm);
  length_mm = band_room_mm (roll) * roll->scale;
  for (double from_mm = 0; from_mm < roll->box.max.x;)
    {
      SqRollBand band = { .of = roll,
                          .from_mm = from_mm,
                          .to_mm = fmin (from_mm + length_mm, roll->box.max.x),
                          .before_mm = before_mm };
      drawn = add_band (roll, &band);
      if (band.to_mm >= roll->box.max.x)
        break;
      from_mm = next_from_mm (roll, &band);
      before_mm = band.to_mm;
    }
  return drawn;
}
