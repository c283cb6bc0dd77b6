/* SPDX-License-Identifier: GPL-3.0-or-later */
/* What is seen of a seat that is being drawn. */
#include "window/seat-draw-private.h"

#include "base/units.h"
#include "drawing/guide-scene.h"
#include "drawing/seat-scene.h"
#include "window/figures.h"
#include "words/piece-names.h"

/* What the empty paper shows, about a bench (mm). */
#define PAPER_WIDTH 1500
#define PAPER_DEPTH 900
#define MARGIN 24

/* Grid lines come no nearer to each other (pixels); each so-manyth is a main one. */
#define LEAST_GRID 9
#define MAIN_INCHES 12
#define MAIN_METRIC 10

/* In em: a corner's handle, the first one's; how far letters and figures stand away. */
#define HANDLE 0.4
#define FIRST_HANDLE 0.55
#define ASIDE 1.1
#define FIGURE_SIZE 0.9
#define CROSS_HAIR 1.2

static guint
n_corners (SqSeatDraw *draw)
{
  return draw->ring.corners->len;
}

static SqPoint
corner_at (SqSeatDraw *draw, guint i)
{
  return g_array_index (draw->ring.corners, SqPoint, i);
}

SqView
sq_seat_draw_fit (SqCanvas *canvas, int width, int height)
{
  SqSeatDraw *draw = SQ_SEAT_DRAW (canvas);
  SqBox box = { { 0, 0 }, { PAPER_WIDTH, PAPER_DEPTH } };
  for (guint i = 0; i < n_corners (draw); i++)
    box = sq_box_with (box, corner_at (draw, i));
  return sq_view_fit (box, width, height, MARGIN);
}

static SqBox
room_of (SqCanvas *canvas)
{
  const SqView *view = sq_canvas_get_view (canvas);
  SqPoint end = sq_point (gtk_widget_get_width (GTK_WIDGET (canvas)),
                          gtk_widget_get_height (GTK_WIDGET (canvas)));
  SqBox box = sq_box_with (sq_box_empty (), sq_view_to_mm (view, sq_point (0, 0)));
  return sq_box_with (box, sq_view_to_mm (view, end));
}

static void
append_grid (SqSeatDraw *draw, GtkSnapshot *snapshot)
{
  SqCanvas *canvas = SQ_CANVAS (draw);
  gboolean is_inch = draw->units == SQ_UNIT_IN;
  double least_mm = LEAST_GRID / sq_canvas_get_view (canvas)->scale;
  double step_mm = is_inch ? SQ_MM_PER_INCH : SQ_MM_PER_CM;
  g_autoptr (SqScene) scene = sq_paper_grid_scene (room_of (canvas), step_mm,
                                                   is_inch ? MAIN_INCHES : MAIN_METRIC, least_mm);
  sq_canvas_append_scene (canvas, snapshot, scene);
}

/* Sides with their lengths, corners with their letters. */
static void
add_sides (SqSeatDraw *draw, SqSceneBuilder *builder, double em_mm)
{
  SqLengthStyle style = sq_seat_draw_style (draw);
  sq_scene_begin_stroke (builder, SQ_PEN_INK);
  for (guint i = 0; i + 1 < n_corners (draw); i++)
    sq_scene_add_line (builder, corner_at (draw, i), corner_at (draw, i + 1));
  for (guint i = 0; i + 1 < n_corners (draw); i++)
    {
      SqPoint from = corner_at (draw, i), to = corner_at (draw, i + 1);
      SqVector along = sq_unit (sq_sub (to, from));
      g_autofree char *text = sq_length_format (sq_distance (from, to), &style);
      sq_scene_add_text (
          builder,
          &(SqText){ .at = sq_moved (sq_between (from, to, 0.5), sq_right (along), ASIDE * em_mm),
                     .angle_rad = sq_readable_angle_rad (atan2 (along.y, along.x)),
                     .em_mm = FIGURE_SIZE * em_mm,
                     .width_mm = sq_text_width_em (text, FALSE) * FIGURE_SIZE * em_mm,
                     .text = text });
    }
}

static void
add_corners (SqSeatDraw *draw, SqSceneBuilder *builder, double em_mm)
{
  g_autoptr (SqOutline) outline = sq_drawn_ring_outline (&draw->ring);
  g_autoptr (SqCushion) cushion = sq_cushion_new (1, outline);
  for (guint i = 0; i < n_corners (draw); i++)
    {
      SqPoint at = corner_at (draw, i);
      double radius_mm = em_mm * (i == 0 && n_corners (draw) > 2 ? FIRST_HANDLE : HANDLE);
      g_autofree char *letter = sq_words_corner (cushion, i + 1);
      sq_scene_begin_fill (builder, SQ_FILL_HANDLE);
      sq_scene_add_circle (builder, at, radius_mm);
      sq_scene_begin_stroke (builder, i == 0 && draw->is_closing ? SQ_PEN_ACCENT : SQ_PEN_HANDLE);
      sq_scene_add_circle (builder, at, radius_mm);
      sq_scene_add_text (builder,
                         &(SqText){ .at = sq_add (at, sq_point (ASIDE * em_mm, ASIDE * em_mm)),
                                    .em_mm = FIGURE_SIZE * em_mm,
                                    .width_mm = sq_text_width_em (letter, FALSE) * em_mm,
                                    .tone = SQ_TONE_DIM,
                                    .text = letter });
    }
}

/* The side that would be put, the one that would close, and the cross-hair. */
static void
add_next (SqSeatDraw *draw, SqSceneBuilder *builder, double em_mm)
{
  SqPoint at = draw->snap.at;
  double arm = CROSS_HAIR * em_mm;
  guint n = n_corners (draw);
  if (n > 1 && !draw->is_closing)
    {
      sq_scene_begin_stroke (builder, SQ_PEN_CHORD);
      sq_scene_add_line (builder, at, corner_at (draw, 0));
    }
  sq_scene_begin_stroke (builder, SQ_PEN_ACCENT);
  if (n > 0)
    sq_scene_add_line (builder, corner_at (draw, n - 1), at);
  if (draw->by_keys || n == 0)
    {
      sq_scene_add_line (builder, sq_point (at.x - arm, at.y), sq_point (at.x + arm, at.y));
      sq_scene_add_line (builder, sq_point (at.x, at.y - arm), sq_point (at.x, at.y + arm));
    }
}

static void
append_guides (SqSeatDraw *draw, GtkSnapshot *snapshot, double em_mm)
{
  g_autoptr (SqOutline) outline = sq_drawn_ring_outline (&draw->ring);
  g_autofree char *words = sq_seat_draw_words (draw);
  guint n = n_corners (draw);
  SqGuides guides = {
    .outline = outline,
    .reasons = draw->snap.reasons,
    .n_reasons = draw->is_crossing || draw->is_closing || draw->typed != NULL
                     ? 0
                     : draw->snap.n_reasons,
    .at = draw->snap.at,
    .middle = n > 0 ? sq_between (corner_at (draw, 0), corner_at (draw, n - 1), 0.5)
                    : draw->snap.at,
    .words = words,
    .crossing = draw->is_crossing ? &draw->crossing : NULL,
  };
  g_autoptr (SqScene) scene = sq_guide_scene (&guides, em_mm, room_of (SQ_CANVAS (draw)));
  sq_canvas_append_scene (SQ_CANVAS (draw), snapshot, scene);
}

void
sq_seat_draw_draw (SqCanvas *canvas, GtkSnapshot *snapshot)
{
  SqSeatDraw *draw = SQ_SEAT_DRAW (canvas);
  const SqView *view = sq_canvas_get_view (canvas);
  double em_mm = sq_canvas_get_em (canvas) / view->scale;
  SqSceneBuilder *builder = sq_scene_builder_new ();
  g_autoptr (SqScene) scene = NULL;
  gtk_snapshot_save (snapshot);
  gtk_snapshot_translate (snapshot,
                          &GRAPHENE_POINT_INIT ((float) view->origin.x, (float) view->origin.y));
  append_grid (draw, snapshot);
  add_sides (draw, builder, em_mm);
  if (draw->has_place)
    add_next (draw, builder, em_mm);
  add_corners (draw, builder, em_mm);
  scene = sq_scene_builder_end (builder);
  sq_canvas_append_scene (canvas, snapshot, scene);
  if (draw->has_place)
    append_guides (draw, snapshot, em_mm);
  gtk_snapshot_restore (snapshot);
}
