/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "window/seat-figures.h"

#include "window/seat-canvas-private.h"

/* Handles are taken hold of, not the figures they touch; figures are hit a little beside (pixels). */
#define HANDLE_REACH 8
#define BESIDE 2

void
sq_seat_figures_clear (SqSeatFigures *figures)
{
  g_clear_pointer (&figures->dimensions, g_array_unref);
  g_clear_pointer (&figures->cover, sq_cover_unref);
  figures->is_pointed = FALSE;
}

static gboolean
is_same_look (const SqSeatLook *a, const SqSeatLook *b)
{
  return a->em_mm == b->em_mm && a->corner == b->corner && a->length.unit == b->length.unit
         && a->room.min.x == b->room.min.x && a->room.min.y == b->room.min.y
         && a->room.max.x == b->room.max.x && a->room.max.y == b->room.max.y;
}

static const GArray *
dimensions_of (SqSeatCanvas *canvas)
{
  SqSeatFigures *figures = &canvas->figures;
  SqSeatLook look = sq_seat_canvas_look (canvas);
  if (figures->dimensions != NULL && figures->cover == canvas->cover
      && is_same_look (&figures->look, &look))
    return figures->dimensions;
  g_clear_pointer (&figures->dimensions, g_array_unref);
  g_clear_pointer (&figures->cover, sq_cover_unref);
  figures->cover = sq_cover_ref (canvas->cover);
  figures->look = look;
  figures->dimensions = sq_seat_dimensions (figures->cover->cushion, &look);
  return figures->dimensions;
}

const SqDimension *
sq_seat_figures_find (SqSeatCanvas *canvas, const SqSideFigure *figure)
{
  const GArray *dimensions = dimensions_of (canvas);
  for (guint i = 0; i < dimensions->len; i++)
    {
      const SqDimension *dimension = &g_array_index (dimensions, SqDimension, i);
      if (dimension->measure == figure->measure && dimension->corner == figure->corner)
        return dimension;
    }
  return NULL;
}

static gboolean
is_on_handle (SqSeatCanvas *canvas, SqPoint at)
{
  SqGrip grip = sq_seat_grip_at (canvas, at);
  SqPoint place;
  return grip.kind != SQ_GRIP_NONE && grip.kind != SQ_GRIP_EDGE
         && sq_grip_place (canvas->cover->cushion->outline, grip, &place)
         && sq_distance (at, sq_view_to_device (sq_canvas_get_view (SQ_CANVAS (canvas)), place))
                < HANDLE_REACH;
}

const SqDimension *
sq_seat_figures_at (SqSeatCanvas *canvas, SqPoint at)
{
  const SqView *view = sq_canvas_get_view (SQ_CANVAS (canvas));
  if (canvas->cover == NULL || is_on_handle (canvas, at))
    return NULL;
  return sq_seat_dimension_at (dimensions_of (canvas), sq_view_to_mm (view, at),
                               BESIDE / view->scale);
}

SqVector
sq_seat_figures_outward (const SqOutline *outline, const SqSideFigure *figure, SqPoint *foot)
{
  guint ring = 0, i = 0, n;
  const SqCorner *corner = sq_outline_corner (outline, figure->corner, &ring, &i);
  const SqCorner *corners = sq_outline_ring (outline, ring, &n);
  SqVector out = sq_grip_outward (outline, corner->id);
  SqVector before = sq_grip_outward (outline, corners[(i + n - 1) % n].id);
  *foot = sq_side_figure_is_of_edge (figure) ? sq_between (corner->at, corners[(i + 1) % n].at, 0.5)
                                             : corner->at;
  return sq_unit (sq_side_figure_is_of_edge (figure) ? out : sq_add (before, out));
}

const char *
sq_seat_figures_hover (SqSeatCanvas *canvas, const SqPoint *at)
{
  SqSeatFigures *figures = &canvas->figures;
  const SqDimension *dimension = at != NULL ? sq_seat_figures_at (canvas, *at) : NULL;
  SqSideFigure now = { 0 };
  if (dimension != NULL)
    now = (SqSideFigure){ dimension->measure, dimension->corner };
  if (figures->is_pointed != (dimension != NULL)
      || !sq_side_figure_is_same (&now, &figures->pointed))
    gtk_widget_queue_draw (GTK_WIDGET (canvas));
  figures->is_pointed = dimension != NULL;
  figures->pointed = now;
  return dimension != NULL ? "text" : NULL;
}

void
sq_seat_figures_append (SqSeatCanvas *canvas, GtkSnapshot *snapshot)
{
  const SqSeatFigures *figures = &canvas->figures;
  double px = 1 / sq_canvas_get_view (SQ_CANVAS (canvas))->scale;
  const SqDimension *pointed = figures->is_pointed
                                   ? sq_seat_figures_find (canvas, &figures->pointed)
                                   : NULL;
  SqSceneBuilder *builder;
  if (pointed == NULL)
    return;
  builder = sq_scene_builder_new ();
  sq_scene_begin_fill (builder, SQ_FILL_ACCENT);
  sq_scene_add_plate (builder, pointed->at, pointed->width_mm + 6 * px, pointed->height_mm + 2 * px,
                      pointed->angle_rad, 4 * px);
  g_autoptr (SqScene) scene = sq_scene_builder_end (builder);
  sq_canvas_append_scene (SQ_CANVAS (canvas), snapshot, scene);
}
