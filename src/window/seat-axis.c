/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "window/seat-axis.h"

#include "job/symmetry.h"
#include "window/seat-canvas-private.h"

#include <glib/gi18n.h>

/* In em: size of the word, its distance from the axis, and from the border. */
#define WORD_SIZE 0.85
#define WORD_ASIDE 0.7
#define WORD_INSIDE 0.6

/* How far the axis goes from its point, forwards, inside @room: it leaves by the first border. */
static double
way_in_room_mm (const SqAxis *axis, SqBox room)
{
  double across = axis->along.x > 0 ? room.max.x - axis->at.x : room.min.x - axis->at.x;
  double up = axis->along.y > 0 ? room.max.y - axis->at.y : room.min.y - axis->at.y;
  double way = INFINITY;
  if (axis->along.x != 0)
    way = fmin (way, across / axis->along.x);
  if (axis->along.y != 0)
    way = fmin (way, up / axis->along.y);
  return way;
}

static void
add_word (SqSceneBuilder *builder, const SqAxis *axis, SqPoint end, double em_mm)
{
  const char *word = _ ("Both sides alike");
  double em = WORD_SIZE * em_mm, width = sq_text_width_em (word, FALSE) * em;
  SqPoint at = sq_moved (end, axis->along, -(width / 2 + WORD_INSIDE * em_mm));
  sq_scene_add_text (
      builder, &(SqText){ .at = sq_moved (at, sq_left (axis->along), WORD_ASIDE * em_mm),
                          .angle_rad = sq_readable_angle_rad (atan2 (axis->along.y, axis->along.x)),
                          .em_mm = em,
                          .width_mm = width,
                          .tone = SQ_TONE_DIM,
                          .text = word });
}

void
sq_seat_axis_append (SqSeatCanvas *canvas, GtkSnapshot *snapshot)
{
  SqBox room = sq_seat_canvas_room (canvas);
  SqSceneBuilder *builder;
  g_autoptr (SqScene) scene = NULL;
  SqPoint start, end;
  SqAxis axis, back;
  if (!sq_document_is_symmetric (canvas->document)
      || !sq_outline_front_axis (canvas->cover->cushion->outline, &axis))
    return;
  back = (SqAxis){ axis.at, sq_scale (axis.along, -1) };
  end = sq_moved (axis.at, axis.along, way_in_room_mm (&axis, room));
  start = sq_moved (back.at, back.along, way_in_room_mm (&back, room));
  builder = sq_scene_builder_new ();
  sq_scene_begin_stroke (builder, SQ_PEN_CHORD);
  sq_scene_add_line (builder, start, end);
  add_word (builder, &axis, end, sq_seat_canvas_look (canvas).em_mm);
  scene = sq_scene_builder_end (builder);
  sq_canvas_append_scene (SQ_CANVAS (canvas), snapshot, scene);
}
