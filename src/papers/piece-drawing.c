/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "papers/piece-drawing.h"

#include "drawing/piece-scene.h"
#include "papers/arrow.h"
#include "papers/typeset.h"
#include "words/lengths.h"

#define FIGURE_EM_MM 3.0
#define FIGURE_GAP_MM 0.8

/* Left free for the figures beside the piece. */
#define ASIDE_MM 5.2

/* A strip that would be drawn lower than this is broken, and drawn so high. */
#define LOWEST_MM 4.5
#define BROKEN_MM 6.5
#define BREAK_MM 5.0

/* An edge nearer than this to an overall figure says the same. */
#define SAME_MM 0.6

/* Sides that turn by less are one. */
#define STRAIGHT_RAD 1e-3

/* From an edge to the middle of its figure. */
#define EDGE_GAP_EM 0.95

#define ARROW_MM 6.0
#define HEAD_MM 2.2

/* How the piece gets onto the page. */
typedef struct
{
  const SqPiece *piece;
  double turn_rad;
  SqBox extent; /* of the cut line, turned */
  double scale;
  SqPoint at;         /* on the page: the extent's lower left corner */
  double width_mm;    /* on the page */
  double end_mm;      /* of the turned piece: how much is drawn of each end; 0: all of it */
  SqSceneBuilder *to; /* the page */
  GPtrArray *figures; /* of SqPath: rings about the figures that stand inside already */
} Drawing;

double
sq_piece_drawing_turn_rad (const SqCover *cover, const SqPiece *piece)
{
  if (cover->finished == NULL || (piece->role != SQ_ROLE_FACE && piece->role != SQ_ROLE_UNDERSIDE))
    return 0;
  SqVector front = cover->finished->front_dir;
  if (piece->role == SQ_ROLE_UNDERSIDE)
    front.y = -front.y; /* its front runs the other way: mirrored, then taken from the other end */
  return -atan2 (front.y, front.x);
}

static SqBox
turned_extent (const SqPiece *piece, double turn_rad)
{
  g_autoptr (SqPath) turned = sq_path_moved (sq_piece_cut (piece, 0), turn_rad, sq_point (0, 0));

  return sq_path_box (turned);
}

static SqVector
size_of (SqBox box)
{
  return sq_sub (box.max, box.min);
}

static void
drawing_init (Drawing *d, const SqCover *cover, guint index, SqVector room)
{
  *d = (Drawing){ .piece = sq_cover_piece (cover, index) };
  d->turn_rad = sq_piece_drawing_turn_rad (cover, d->piece);
  d->extent = turned_extent (d->piece, d->turn_rad);
  SqVector size = size_of (d->extent);
  d->scale = fmin (room.x / size.x, room.y / size.y);
  d->width_mm = size.x * d->scale;
  if (size.y * d->scale < LOWEST_MM && size.x > 2 * size.y)
    {
      d->scale = BROKEN_MM / size.y;
      d->width_mm = room.x;
      d->end_mm = (room.x - BREAK_MM) / 2 / d->scale;
    }
}

double
sq_piece_drawing_height_mm (const SqCover *cover, guint index, double width_mm, double most_mm)
{
  Drawing d;

  drawing_init (&d, cover, index, sq_point (width_mm - ASIDE_MM, most_mm - ASIDE_MM));
  return size_of (d.extent).y * d.scale + ASIDE_MM;
}

/* In a broken strip, what lies between the ends is pushed into the break. */
static SqPoint
to_page (const Drawing *d, SqPoint p)
{
  SqVector from = sq_sub (sq_turned (p, d->turn_rad), d->extent.min);
  double length = size_of (d->extent).x, x = from.x * d->scale;

  if (d->end_mm > 0 && from.x > length - d->end_mm)
    x = d->width_mm - (length - from.x) * d->scale;
  else if (d->end_mm > 0 && from.x > d->end_mm)
    x = d->end_mm * d->scale + (from.x - d->end_mm) / (length - 2 * d->end_mm) * BREAK_MM;
  return sq_add (d->at, sq_point (x, from.y * d->scale));
}

static gboolean
is_in_break (const Drawing *d, SqPoint p)
{
  double x = sq_turned (p, d->turn_rad).x - d->extent.min.x;

  return d->end_mm > 0 && x > d->end_mm && x < size_of (d->extent).x - d->end_mm;
}

static SqPath *
ring_about (SqPoint at, double width, double height, double angle_rad)
{
  SqVector along = sq_turned (sq_point (width / 2, 0), angle_rad);
  SqVector up = sq_turned (sq_point (0, height / 2), angle_rad);
  const SqNode nodes[] = { { sq_sub (sq_sub (at, along), up), 0, 0 },
                           { sq_sub (sq_add (at, along), up), 0, 0 },
                           { sq_add (sq_add (at, along), up), 0, 0 },
                           { sq_add (sq_sub (at, along), up), 0, 0 } };

  return sq_path_new (nodes, G_N_ELEMENTS (nodes), TRUE);
}

/* No figure stands on the line from @a to @b. */
static void
keep_clear (const Drawing *d, SqPoint a, SqPoint b)
{
  SqVector along = sq_sub (b, a);

  g_ptr_array_add (d->figures, ring_about (sq_between (a, b, 0.5), sq_norm (along), 1.6,
                                           atan2 (along.y, along.x)));
}

/* The lines of one stroke of the piece's scene. */
static void
add_stroke (const Drawing *d, const SqScene *scene, const SqItem *item)
{
  sq_scene_begin_stroke (d->to, item->pen);
  for (guint i = 0; i < item->n_lines; i++)
    {
      const SqSceneLine *line = sq_scene_line (scene, item->first_line + i);
      const SqNode *nodes = sq_scene_nodes (scene, line);
      g_autofree SqNode *mapped = g_new (SqNode, line->n);
      guint n_hidden = 0;
      for (guint k = 0; k < line->n; k++)
        {
          n_hidden += is_in_break (d, nodes[k].at);
          mapped[k] = nodes[k];
          mapped[k].at = to_page (d, nodes[k].at);
        }
      if (n_hidden == line->n)
        continue;
      sq_scene_add_nodes (d->to, mapped, line->n, line->is_ring);
      if (item->pen == SQ_PEN_GRAIN)
        keep_clear (d, mapped[0].at, mapped[1].at);
    }
}

/* Of the piece's scene; @grain: the double arrow along it, too. */
static void
add_lines (const Drawing *d, gboolean grain)
{
  SqPieceLook look = { FIGURE_EM_MM / d->scale };
  g_autoptr (SqScene) scene = sq_piece_scene (d->piece, NULL, 0xffffff, SQ_PIECE_LINES, NULL,
                                              &look);

  for (guint i = 0; i < sq_scene_n_items (scene); i++)
    {
      const SqItem *item = sq_scene_item (scene, i);
      if (item->kind == SQ_ITEM_STROKE && (grain || item->pen != SQ_PEN_GRAIN))
        add_stroke (d, scene, item);
    }
}

/* White paper between two zigzags where a strip is broken. */
static void
add_break (const Drawing *d)
{
  double left = d->at.x + d->end_mm * d->scale, height = size_of (d->extent).y * d->scale;
  double low = d->at.y - 1, high = d->at.y + height + 1, middle = (low + high) / 2;

  if (d->end_mm <= 0)
    return;
  for (guint i = 0; i < 2; i++)
    {
      double x = i == 0 ? left : left + BREAK_MM;
      const SqNode zigzag[] = { { { x, low }, 0, 0 },
                                { { x + 0.7, middle - 0.9 }, 0, 0 },
                                { { x - 0.7, middle + 0.9 }, 0, 0 },
                                { { x, high }, 0, 0 } };
      if (i == 0)
        {
          const SqNode paper[] = { zigzag[0],
                                   { { x + BREAK_MM, low }, 0, 0 },
                                   { { x + BREAK_MM + 0.7, middle - 0.9 }, 0, 0 },
                                   { { x + BREAK_MM - 0.7, middle + 0.9 }, 0, 0 },
                                   { { x + BREAK_MM, high }, 0, 0 },
                                   zigzag[3],
                                   zigzag[2],
                                   zigzag[1] };
          sq_scene_begin_colour (d->to, 0xffffff, 1);
          sq_scene_add_nodes (d->to, paper, G_N_ELEMENTS (paper), TRUE);
        }
      sq_scene_begin_stroke (d->to, SQ_PEN_RULE);
      sq_scene_add_nodes (d->to, zigzag, G_N_ELEMENTS (zigzag), FALSE);
    }
}

/* A figure whose box's middle is @at. */
static void
add_figure (const Drawing *d, const char *text, SqPoint at, double angle_rad)
{
  sq_scene_add_text (d->to, &(SqText){ .at = at,
                                       .angle_rad = angle_rad,
                                       .em_mm = FIGURE_EM_MM,
                                       .width_mm = sq_text_width_em (text, FALSE) * FIGURE_EM_MM,
                                       .text = text });
}

/* A line from @from to @to with ticks across its ends. */
static void
add_measure (const Drawing *d, SqPoint from, SqPoint to)
{
  SqVector tick = sq_scale (sq_left (sq_unit (sq_sub (to, from))), 0.8);

  sq_scene_begin_stroke (d->to, SQ_PEN_RULE);
  sq_scene_add_line (d->to, from, to);
  sq_scene_add_line (d->to, sq_sub (from, tick), sq_add (from, tick));
  sq_scene_add_line (d->to, sq_sub (to, tick), sq_add (to, tick));
}

/* What the figure on a measure of @length_mm leaves of the line at each side. */
static void
add_overall (const Drawing *d, SqPoint from, SqPoint to, double mm, const SqLengthStyle *style)
{
  g_autofree char *text = sq_words_figure (mm, style);
  SqVector along = sq_unit (sq_sub (to, from));
  double width_mm = sq_text_width_em (text, FALSE) * FIGURE_EM_MM;
  double length_mm = sq_distance (from, to);
  SqPoint middle = sq_between (from, to, 0.5);
  gboolean has_room = width_mm + 3 < length_mm;

  if (has_room)
    {
      add_measure (d, from, sq_moved (middle, along, -width_mm / 2 - 0.6));
      add_measure (d, sq_moved (middle, along, width_mm / 2 + 0.6), to);
    }
  /* upright and too long for its side, a figure stands across, and ends before the piece */
  if (along.y > 0.5 && !has_room)
    middle.x = d->at.x - FIGURE_GAP_MM - width_mm / 2;
  add_figure (d, text, middle, along.y > 0.5 && has_room ? M_PI / 2 : 0);
}

static void
add_overalls (const Drawing *d, const SqLengthStyle *style)
{
  SqVector size = size_of (d->extent);
  double height_mm = size.y * d->scale, gap_mm = ASIDE_MM / 2 + 0.3;

  add_overall (d, sq_point (d->at.x, d->at.y - gap_mm),
               sq_point (d->at.x + d->width_mm, d->at.y - gap_mm), size.x, style);
  add_overall (d, sq_point (d->at.x - gap_mm, d->at.y),
               sq_point (d->at.x - gap_mm, d->at.y + height_mm), size.y, style);
}

/* --- figures inside -------------------------------------------------------------------------- */

/* The piece's point that comes to @at on the page. Not for broken strips. */
static SqPoint
from_page (const Drawing *d, SqPoint at)
{
  SqVector on_piece = sq_scale (sq_sub (at, d->at), 1 / d->scale);

  return sq_turned (sq_add (on_piece, d->extent.min), -d->turn_rad);
}

static gboolean
meets_a_mark (const Drawing *d, SqBox box)
{
  for (guint i = 0; i < d->piece->marks->len; i++)
    {
      const SqMark *mark = &g_array_index (d->piece->marks, SqMark, i);
      if (mark->line == NULL)
        continue;
      SqBox line = sq_path_box (mark->line);
      SqBox on_page = sq_box_with (sq_box_with (sq_box_empty (), to_page (d, line.min)),
                                   to_page (d, line.max));
      if (sq_box_meets (box, on_page, 0.8))
        return TRUE;
    }
  return FALSE;
}

/* Whether @ring lies on the piece's cloth, and on nothing that is drawn there. */
static gboolean
is_free (const Drawing *d, const SqPath *ring)
{
  SqBox box = sq_path_box (ring);

  for (guint i = 0; i < sq_path_n_nodes (ring) * 4; i++)
    {
      double station = sq_path_length_mm (ring) * i / (sq_path_n_nodes (ring) * 4);
      SqPoint p = from_page (d, sq_path_point_at (ring, station, NULL));
      if (sq_path_winding (sq_piece_cut (d->piece, 0), p) <= 0)
        return FALSE;
      for (guint hole = 1; hole < d->piece->cut->len; hole++)
        if (sq_path_winding (sq_piece_cut (d->piece, hole), p) != 0)
          return FALSE;
    }
  for (guint i = 0; i < d->figures->len; i++)
    if (sq_box_meets (box, sq_path_box (g_ptr_array_index (d->figures, i)), 0.3))
      return FALSE;
  return !meets_a_mark (d, box);
}

static void
try_figure (const Drawing *d, const char *text, SqPoint at, double angle_rad)
{
  double width_mm = sq_text_width_em (text, FALSE) * FIGURE_EM_MM;
  g_autoptr (SqPath) ring = ring_about (at, width_mm, SQ_TEXT_HEIGHT_EM * FIGURE_EM_MM, angle_rad);

  if (!is_free (d, ring))
    return;
  add_figure (d, text, at, angle_rad);
  g_ptr_array_add (d->figures, g_steal_pointer (&ring));
}

/* The figure of one side of the cut line, along it: its length or, of an arc, its radius. */
static void
add_side (const Drawing *d, const SqSegment *side, const SqLengthStyle *style)
{
  SqVector size = size_of (d->extent), along = sq_sub (side->to, side->from);
  SqVector turned = sq_turned (along, d->turn_rad);
  double length_mm = sq_norm (along);
  gboolean is_arc = sq_segment_is_arc (side);
  gboolean is_overall = (fabs (turned.y) < SAME_MM && fabs (length_mm - size.x) < SAME_MM)
                        || (fabs (turned.x) < SAME_MM && fabs (length_mm - size.y) < SAME_MM);
  SqPoint middle = to_page (d, sq_segment_point (side, 0.5));
  SqVector inward = sq_left (sq_unit (turned));
  g_autofree char *figure = sq_words_figure (
      is_arc ? fabs (sq_segment_radius_mm (side)) : length_mm, style);
  /* the mark of a radius on every drawing, ISO 129-1 */
  g_autofree char *text = g_strconcat (is_arc ? "R " : "", figure, NULL);

  double width_mm = sq_text_width_em (text, FALSE) * FIGURE_EM_MM;
  /* how far an arc comes towards the ends of its figure */
  double rise_mm = is_arc
                       ? width_mm * width_mm / 8 / (fabs (sq_segment_radius_mm (side)) * d->scale)
                       : 0;

  if ((is_overall && !is_arc) || width_mm > 0.9 * length_mm * d->scale)
    return;
  try_figure (d, text, sq_moved (middle, inward, EDGE_GAP_EM * FIGURE_EM_MM + rise_mm),
              sq_readable_angle_rad (atan2 (turned.y, turned.x)));
}

/* The longest sides come first: they tell most. */
static int
compare_sides (gconstpointer a, gconstpointer b)
{
  const SqSegment *x = a, *y = b;
  double more = sq_distance (y->from, y->to) - sq_distance (x->from, x->to);

  return more < -SAME_MM ? -1 : more > SAME_MM;
}

/* Runs divide what is one side to the eye: @side goes on straight from the last of @sides, or not. */
static gboolean
lengthen_last (GArray *sides, const SqSegment *side)
{
  SqSegment *last = sides->len > 0 ? &g_array_index (sides, SqSegment, sides->len - 1) : NULL;

  if (last == NULL || sq_segment_is_arc (last) || sq_segment_is_arc (side)
      || fabs (sq_cross (sq_unit (sq_sub (last->to, last->from)),
                         sq_unit (sq_sub (side->to, side->from))))
             > STRAIGHT_RAD)
    return FALSE;
  last->to = side->to;
  return TRUE;
}

static void
add_sides (const Drawing *d, const SqLengthStyle *style)
{
  g_autoptr (GArray) sides = g_array_new (FALSE, FALSE, sizeof (SqSegment));
  const SqPath *cut = sq_piece_cut (d->piece, 0);

  for (guint i = 0; i < sq_path_n_segments (cut); i++)
    {
      SqSegment side = sq_path_segment (cut, i);
      if (!lengthen_last (sides, &side))
        g_array_append_val (sides, side);
    }
  /* the ring may begin within a side */
  if (sides->len > 1 && lengthen_last (sides, &g_array_index (sides, SqSegment, 0)))
    g_array_remove_index (sides, 0);
  g_array_sort (sides, compare_sides);
  for (guint i = 0; i < MIN (sides->len, 12); i++)
    add_side (d, &g_array_index (sides, SqSegment, i), style);
}

/* --- arrows --------------------------------------------------------------------------------- */

/* An arrow to @to with @word beside it, in the first place that is free; FALSE: there is none. */
static gboolean
try_arrow (const Drawing *d, SqVector to, const char *word)
{
  static const SqPoint places[] = {
    { 0.5, 0.36 }, { 0.32, 0.5 }, { 0.68, 0.5 }, { 0.32, 0.3 }, { 0.68, 0.3 }, { 0.5, 0.6 },
    { 0.32, 0.7 }, { 0.68, 0.7 }, { 0.2, 0.5 },  { 0.8, 0.5 },  { 0.2, 0.25 }, { 0.8, 0.25 },
  };
  double width_mm = sq_text_width_em (word, FALSE) * FIGURE_EM_MM;
  SqVector size = sq_scale (size_of (d->extent), d->scale);

  for (guint i = 0; i < G_N_ELEMENTS (places); i++)
    {
      SqPoint at = sq_add (d->at, sq_point (places[i].x * size.x, places[i].y * size.y));
      g_autoptr (SqPath) ring = ring_about (at, width_mm + 4, ARROW_MM + 0.6, 0);
      if (!is_free (d, ring))
        continue;
      sq_set_arrow (d->to, sq_moved (at, sq_point (1, 0), -width_mm / 2), to, ARROW_MM, HEAD_MM);
      add_figure (d, word, sq_moved (at, sq_point (1, 0), 1.6), 0);
      g_ptr_array_add (d->figures, g_steal_pointer (&ring));
      return TRUE;
    }
  return FALSE;
}

/* In a strip that is too low for words, an arrow alone near its left end. */
static void
add_low_arrow (const Drawing *d, SqVector to)
{
  double height_mm = size_of (d->extent).y * d->scale;
  SqPoint at = sq_add (d->at, sq_point (height_mm, height_mm / 2));

  if (height_mm <= ARROW_MM + 2 && fabs (to.y) > 0.7)
    sq_set_arrow (d->to, at, to, 0.56 * height_mm, HEAD_MM);
}

static void
add_arrows (const Drawing *d, const SqDrawingWords *words)
{
  gboolean is_face = d->piece->role == SQ_ROLE_FACE || d->piece->role == SQ_ROLE_UNDERSIDE;
  SqVector up = isnan (words->up_rad) ? sq_point (0, 0)
                                      : sq_turned (sq_point (1, 0), words->up_rad + d->turn_rad);

  if (d->end_mm <= 0 && is_face)
    try_arrow (d, sq_point (0, -1), words->front);
  if (!isnan (words->up_rad) && (d->end_mm > 0 || !try_arrow (d, up, words->up)))
    add_low_arrow (d, up);
}

void
sq_piece_drawing_add (SqSceneBuilder *builder, const SqCover *cover, guint index, SqBox box,
                      const SqLengthStyle *style, const SqDrawingWords *words)
{
  SqVector room = sq_sub (size_of (box), sq_point (ASIDE_MM, ASIDE_MM));
  Drawing d;

  drawing_init (&d, cover, index, room);
  double height_mm = size_of (d.extent).y * d.scale;
  d.to = builder;
  d.at = sq_point (box.min.x + ASIDE_MM + (room.x - d.width_mm) / 2,
                   box.min.y + ASIDE_MM + (room.y - height_mm) / 2);
  d.figures = g_ptr_array_new_with_free_func ((GDestroyNotify) sq_path_unref);
  add_lines (&d, isnan (words->up_rad)); /* an up says more than the grain */
  add_arrows (&d, words);
  add_break (&d);
  add_overalls (&d, style);
  if (d.end_mm <= 0)
    add_sides (&d, style);
  g_ptr_array_unref (d.figures);
}
