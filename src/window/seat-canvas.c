/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "window/seat-canvas-private.h"

#include "drawing/seam-drawn.h"
#include "drawing/seat-scene.h"
#include "window/figures.h"
#include "window/seat-axis.h"
#include "window/seat-notes.h"
#include "words/lengths.h"
#include "words/piece-names.h"

#include <glib/gi18n.h>
#include <string.h>

G_DEFINE_TYPE (SqSeatCanvas, sq_seat_canvas, SQ_TYPE_CANVAS)

/* Around the seat where all of it is shown, for its figures (em). */
#define MARGIN_EM 4.2

/* The grid is drawn over whole tiles, so that a pan keeps it (pixels). */
#define TILE 512

/* Grid lines come no nearer to each other (pixels); each so-manyth is a main one. */
#define LEAST_GRID 9
#define MAIN_INCHES 12 /* a foot */
#define MAIN_METRIC 10

/* Of SqUnit. */
#define N_UNITS 3

enum
{
  LAYER_GRID,
  LAYER_FILL,
  LAYER_LINES,
  LAYER_HOVERED_EDGE,
  LAYER_CHOSEN_EDGE,
  LAYER_SEAM,
  LAYER_THINGS,
  LAYER_GRIPS = LAYER_THINGS + SQ_N_THING_LAYERS,
  LAYER_FIGURES = LAYER_GRIPS + SQ_N_GRIP_LAYERS, /* and the next ones: for each unit, and each
                                                     corner chosen */
};

/* --- scenes -------------------------------------------------------------------------------- */

static const SqJob *
job_of (SqSeatCanvas *canvas)
{
  return sq_document_get_job (canvas->document);
}

/* What is in sight, in mm, grown to whole @tile pixels. */
static SqBox
room_of (SqSeatCanvas *canvas, double tile)
{
  const SqView *view = sq_canvas_get_view (SQ_CANVAS (canvas));
  double width = gtk_widget_get_width (GTK_WIDGET (canvas));
  double height = gtk_widget_get_height (GTK_WIDGET (canvas));
  double left = floor (-view->origin.x / tile) * tile;
  double top = floor (-view->origin.y / tile) * tile;
  double right = ceil ((width - view->origin.x) / tile) * tile;
  double bottom = ceil ((height - view->origin.y) / tile) * tile;
  return (SqBox){ { left / view->scale, -bottom / view->scale },
                  { right / view->scale, -top / view->scale } };
}

SqBox
sq_seat_canvas_room (SqSeatCanvas *canvas)
{
  return room_of (canvas, 1);
}

SqSeatLook
sq_seat_canvas_look (SqSeatCanvas *canvas)
{
  double scale = sq_canvas_get_view (SQ_CANVAS (canvas))->scale;
  return (SqSeatLook){ .em_mm = sq_canvas_get_em (SQ_CANVAS (canvas)) / scale,
                       .length = sq_figures_style (job_of (canvas)),
                       .room = room_of (canvas, 1),
                       .corner = sq_selection_item (canvas->selection, SQ_AT_CORNER) };
}

static SqScene *
make_grid (SqCanvas *self, gconstpointer data)
{
  SqSeatCanvas *canvas = SQ_SEAT_CANVAS (self);
  gboolean is_inches = job_of (canvas)->units == SQ_UNIT_IN;
  double step = is_inches ? 25.4 : 10;
  (void) data;
  return sq_paper_grid_scene (room_of (canvas, TILE), step, is_inches ? MAIN_INCHES : MAIN_METRIC,
                              LEAST_GRID / sq_canvas_get_view (self)->scale);
}

static const SqCloth *
face_of (SqSeatCanvas *canvas)
{
  return sq_figures_face_cloth (sq_document_get_plan (canvas->document), canvas->cover);
}

static SqScene *
make_seat (SqCanvas *self, gconstpointer data)
{
  SqSeatCanvas *canvas = SQ_SEAT_CANVAS (self);
  SqSeatLook look = sq_seat_canvas_look (canvas);
  return sq_seat_scene (canvas->cover, face_of (canvas), (SqSeatLayer) GPOINTER_TO_UINT (data),
                        &look);
}

/* One edge, as a strong line. */
static SqScene *
make_edge (SqCanvas *self, gconstpointer data)
{
  SqSeatCanvas *canvas = SQ_SEAT_CANVAS (self);
  const SqOutline *outline = canvas->cover->cushion->outline;
  SqSceneBuilder *builder = sq_scene_builder_new ();
  guint ring, index, n;
  const SqCorner *corner = sq_outline_corner (outline, GPOINTER_TO_UINT (data), &ring, &index);
  if (corner != NULL)
    {
      const SqCorner *corners = sq_outline_ring (outline, ring, &n);
      g_autoptr (SqPath) path = sq_outline_path (outline, ring, NULL);
      sq_scene_begin_stroke (builder, SQ_PEN_ACCENT);
      if (path == NULL)
        sq_scene_add_line (builder, corner->at, corners[(index + 1) % n].at);
      for (guint i = 0; path != NULL && i < sq_path_n_segments (path); i++)
        if (sq_path_nodes (path)[i].tag == index)
          {
            SqSegment segment = sq_path_segment (path, i);
            SqNode nodes[] = { { segment.from, segment.bulge, 0 }, { segment.to, 0, 0 } };
            sq_scene_add_nodes (builder, nodes, 2, FALSE);
          }
    }
  return sq_scene_builder_end (builder);
}

/* --- drawing ------------------------------------------------------------------------------- */

static gpointer
ref_cover (gconstpointer cover)
{
  return sq_cover_ref (cover);
}

static void
unref_cover (gpointer cover)
{
  sq_cover_unref (cover);
}

static void
append_seat (SqSeatCanvas *canvas, GtkSnapshot *snapshot, guint layer, SqSeatLayer part, SqBox room)
{
  SqLayer what = { .subject = canvas->cover,
                   .ref = ref_cover,
                   .unref = unref_cover,
                   .layer = layer,
                   .make = make_seat,
                   .data = GUINT_TO_POINTER (part) };
  if (part == SQ_SEAT_FILL)
    what.look[0] = sq_figures_cloth_look (face_of (canvas));
  if (part == SQ_SEAT_DIMENSIONS)
    {
      double look[] = { room.min.x, room.min.y, room.max.x, room.max.y };
      memcpy (what.look, look, sizeof look);
    }
  sq_canvas_append (SQ_CANVAS (canvas), snapshot, &what);
}

static void
append_grid (SqSeatCanvas *canvas, GtkSnapshot *snapshot)
{
  SqBox room = room_of (canvas, TILE);
  SqLayer what = { .layer = LAYER_GRID,
                   .look = { room.min.x, room.min.y, room.max.x + job_of (canvas)->units,
                             room.max.y },
                   .make = make_grid };
  sq_canvas_append (SQ_CANVAS (canvas), snapshot, &what);
}

static void
append_edge (SqSeatCanvas *canvas, GtkSnapshot *snapshot, guint layer, SqGrip grip, double weight)
{
  SqLayer what = { .subject = canvas->cover,
                   .ref = ref_cover,
                   .unref = unref_cover,
                   .layer = layer,
                   .look = { grip.corner },
                   .weight = weight,
                   .make = make_edge,
                   .data = GUINT_TO_POINTER (grip.corner) };
  if (sq_grip_is_of_edge (grip))
    sq_canvas_append (SQ_CANVAS (canvas), snapshot, &what);
}

static SqScene *
make_seam (SqCanvas *self, gconstpointer data)
{
  double em_mm = sq_canvas_get_em (self) / sq_canvas_get_view (self)->scale;
  return sq_seam_seat_scene (SQ_SEAT_CANVAS (self)->cover, GPOINTER_TO_UINT (data), em_mm);
}

/* The chosen seam, lit. */
static void
append_seam (SqSeatCanvas *canvas, GtkSnapshot *snapshot)
{
  const SqPlace *place = sq_selection_place (canvas->selection);
  SqLayer what = { .subject = canvas->cover,
                   .ref = ref_cover,
                   .unref = unref_cover,
                   .layer = LAYER_SEAM,
                   .look = { place->item },
                   .make = make_seam,
                   .data = GUINT_TO_POINTER (place->item) };
  if (place->kind == SQ_AT_SEAM && place->item < canvas->cover->seams->len)
    sq_canvas_append (SQ_CANVAS (canvas), snapshot, &what);
}

static void
sq_seat_canvas_draw (SqCanvas *self, GtkSnapshot *snapshot)
{
  SqSeatCanvas *canvas = SQ_SEAT_CANVAS (self);
  const SqView *view = sq_canvas_get_view (self);
  if (canvas->document == NULL)
    return;
  gtk_snapshot_save (snapshot);
  gtk_snapshot_translate (snapshot,
                          &GRAPHENE_POINT_INIT ((float) view->origin.x, (float) view->origin.y));
  append_grid (canvas, snapshot);
  if (canvas->cover != NULL)
    {
      guint figures = LAYER_FIGURES + job_of (canvas)->units
                      + N_UNITS * sq_selection_item (canvas->selection, SQ_AT_CORNER);
      append_seat (canvas, snapshot, LAYER_FILL, SQ_SEAT_FILL, sq_box_empty ());
      append_seat (canvas, snapshot, LAYER_LINES, SQ_SEAT_LINES, sq_box_empty ());
      sq_seat_things_append (canvas, snapshot, LAYER_THINGS);
      sq_seat_axis_append (canvas, snapshot);
      append_edge (canvas, snapshot, LAYER_HOVERED_EDGE, canvas->hovered, 0.5);
      append_edge (canvas, snapshot, LAYER_CHOSEN_EDGE, sq_seat_chosen (canvas), 1);
      append_seam (canvas, snapshot);
      sq_seat_figures_append (canvas, snapshot);
      append_seat (canvas, snapshot, figures, SQ_SEAT_DIMENSIONS, room_of (canvas, 1));
      sq_seat_grips_append (canvas, snapshot, LAYER_GRIPS);
      sq_seat_field_append (canvas, snapshot);
      sq_seat_hold_append (canvas, snapshot);
    }
  gtk_snapshot_restore (snapshot);
}

static SqView
sq_seat_canvas_fit (SqCanvas *self, int width, int height)
{
  SqSeatCanvas *canvas = SQ_SEAT_CANVAS (self);
  SqBox box = canvas->cover != NULL ? sq_figures_seat_box (canvas->cover) : sq_box_empty ();
  double margin = MARGIN_EM * sq_canvas_get_em (self);
  return sq_view_fit (box, width, height, fmin (margin, 0.2 * MIN (width, height)));
}

/* --- what it shows -------------------------------------------------------------------------- */

static char *
describe (SqSeatCanvas *canvas)
{
  SqLengthStyle style = sq_figures_style (job_of (canvas));
  const SqOutline *outline = canvas->cover->cushion->outline;
  SqVector extent = sq_figures_seat_extent (canvas->cover);
  SqGrip chosen = sq_seat_chosen (canvas);
  GString *text = g_string_new (NULL);
  guint corners = 0;
  style.set = FALSE;
  for (guint ring = 0, n; ring < sq_outline_n_rings (outline); ring++, corners += n)
    sq_outline_ring (outline, ring, &n);
  g_autofree char *width = sq_words_figure (extent.x, &style);
  g_autofree char *depth = sq_words_length (extent.y, &style);
  if (corners > 0)
    g_string_append_printf (text, ngettext ("%u corner", "%u corners", corners), corners);
  else
    g_string_append (text, _ ("from above"));
  /* Translators: width and depth of a seat. */
  g_string_append_printf (text, _ (", %s by %s"), width, depth);
  if (chosen.kind != SQ_GRIP_NONE && sq_outline_corner (outline, chosen.corner, NULL, NULL) != NULL)
    {
      gboolean is_edge = chosen.kind == SQ_GRIP_EDGE;
      g_autofree char *name = is_edge ? sq_words_edge (canvas->cover, chosen.corner)
                                      : sq_words_corner (canvas->cover->cushion, chosen.corner);
      g_string_append_printf (text, is_edge ? _ ("; edge %s chosen") : _ ("; corner %s chosen"),
                              name);
      if (sq_seat_notes_chosen (canvas) != NULL)
        /* Translators: %s is what the maker noted at an edge or a corner. */
        g_string_append_printf (text, _ (", note: %s"), sq_seat_notes_chosen (canvas));
    }
  g_autofree char *held = sq_seat_hold_words (canvas);
  if (held != NULL)
    g_string_append_printf (text, "; %s", held);
  return g_string_free (text, FALSE);
}

void
sq_seat_canvas_tell (SqSeatCanvas *canvas)
{
  g_autofree char *text = canvas->cover != NULL ? describe (canvas) : g_strdup (_ ("no seat"));
  gtk_accessible_update_property (GTK_ACCESSIBLE (canvas), GTK_ACCESSIBLE_PROPERTY_LABEL,
                                  _ ("Seat"), GTK_ACCESSIBLE_PROPERTY_DESCRIPTION, text, -1);
  gtk_widget_queue_draw (GTK_WIDGET (canvas));
}

/* Whether all of the seat's box is on the sheet. */
static gboolean
is_in_sight (SqSeatCanvas *canvas)
{
  const SqView *view = sq_canvas_get_view (SQ_CANVAS (canvas));
  SqBox box = sq_figures_seat_box (canvas->cover);
  SqPoint lower = sq_view_to_device (view, box.min), upper = sq_view_to_device (view, box.max);
  return lower.x >= 0 && upper.y >= 0 && upper.x <= gtk_widget_get_width (GTK_WIDGET (canvas))
         && lower.y <= gtk_widget_get_height (GTK_WIDGET (canvas));
}

static void
follow (SqSeatCanvas *canvas)
{
  SqCanvas *self = SQ_CANVAS (canvas);
  SqId before = canvas->cover != NULL ? canvas->cover->cushion->id : 0;
  SqId now = canvas->document != NULL ? sq_selection_cushion (canvas->selection) : 0;
  const SqCover *cover = canvas->document != NULL
                             ? sq_document_get_cover (canvas->document, now, NULL)
                             : NULL;
  if (cover != canvas->cover)
    {
      g_clear_pointer (&canvas->cover, sq_cover_unref);
      canvas->cover = cover != NULL ? sq_cover_ref (cover) : NULL;
      if (cover != NULL && !sq_canvas_is_dragging (self)
          && (before != now || (sq_canvas_is_fitted (self) && !is_in_sight (canvas))))
        sq_canvas_fit (self);
    }
  sq_seat_field_follow (canvas);
  sq_seat_canvas_tell (canvas);
}

static void
on_selection (SqSeatCanvas *canvas)
{
  sq_document_seal (canvas->document);
  follow (canvas);
}

void
sq_seat_canvas_set_document (SqSeatCanvas *canvas, SqDocument *document, SqSelection *selection)
{
  g_return_if_fail (SQ_IS_SEAT_CANVAS (canvas));
  if (canvas->document != NULL)
    g_signal_handlers_disconnect_by_data (canvas->document, canvas);
  if (canvas->selection != NULL)
    g_signal_handlers_disconnect_by_data (canvas->selection, canvas);
  g_clear_pointer (&canvas->cover, sq_cover_unref);
  g_set_object (&canvas->document, document);
  g_set_object (&canvas->selection, selection);
  if (document != NULL)
    {
      g_signal_connect_swapped (document, "changed", G_CALLBACK (follow), canvas);
      g_signal_connect_swapped (selection, "changed", G_CALLBACK (on_selection), canvas);
    }
  follow (canvas);
}

gboolean
sq_seat_canvas_corner_at (SqSeatCanvas *canvas, SqId id, SqPoint *at)
{
  const SqCorner *corner;
  g_return_val_if_fail (SQ_IS_SEAT_CANVAS (canvas), FALSE);
  corner = canvas->cover != NULL
               ? sq_outline_corner (canvas->cover->cushion->outline, id, NULL, NULL)
               : NULL;
  if (corner != NULL)
    *at = sq_view_to_device (sq_canvas_get_view (SQ_CANVAS (canvas)), corner->at);
  return corner != NULL;
}

static void
sq_seat_canvas_dispose (GObject *object)
{
  SqSeatCanvas *canvas = SQ_SEAT_CANVAS (object);
  sq_seat_hold_let_go (canvas, FALSE);
  sq_seat_figures_clear (&canvas->figures);
  if (canvas->document != NULL)
    sq_seat_canvas_set_document (canvas, NULL, NULL);
  g_clear_pointer (&canvas->things.base, sq_job_unref);
  g_clear_pointer (&canvas->things.cover, sq_cover_unref);
  g_clear_pointer (&canvas->menu, gtk_widget_unparent);
  g_clear_object (&canvas->actions);
  if (canvas->field != NULL)
    gtk_widget_unparent (GTK_WIDGET (canvas->field));
  canvas->field = NULL;
  G_OBJECT_CLASS (sq_seat_canvas_parent_class)->dispose (object);
}

static void
sq_seat_canvas_size_allocate (GtkWidget *widget, int width, int height, int baseline)
{
  GTK_WIDGET_CLASS (sq_seat_canvas_parent_class)->size_allocate (widget, width, height, baseline);
  sq_seat_field_allocate (SQ_SEAT_CANVAS (widget));
}

static void
sq_seat_canvas_snapshot (GtkWidget *widget, GtkSnapshot *snapshot)
{
  GTK_WIDGET_CLASS (sq_seat_canvas_parent_class)->snapshot (widget, snapshot);
  gtk_widget_snapshot_child (widget, GTK_WIDGET (SQ_SEAT_CANVAS (widget)->field), snapshot);
}

static void
sq_seat_canvas_class_init (SqSeatCanvasClass *class)
{
  SqCanvasClass *canvas_class = SQ_CANVAS_CLASS (class);
  G_OBJECT_CLASS (class)->dispose = sq_seat_canvas_dispose;
  canvas_class->fit = sq_seat_canvas_fit;
  canvas_class->draw = sq_seat_canvas_draw;
  canvas_class->press = sq_seat_press;
  canvas_class->drag = sq_seat_drag;
  canvas_class->release = sq_seat_release;
  canvas_class->hover = sq_seat_hover;
  canvas_class->key = sq_seat_key;
  GTK_WIDGET_CLASS (class)->size_allocate = sq_seat_canvas_size_allocate;
  GTK_WIDGET_CLASS (class)->snapshot = sq_seat_canvas_snapshot;
  GTK_WIDGET_CLASS (class)->query_tooltip = sq_seat_things_query_tooltip;
  gtk_widget_class_set_css_name (GTK_WIDGET_CLASS (class), "seat");
}

static void
sq_seat_canvas_init (SqSeatCanvas *canvas)
{
  sq_seat_add_menu (canvas);
  gtk_widget_set_has_tooltip (GTK_WIDGET (canvas), TRUE);
  sq_seat_notes_watch (canvas);
  canvas->field = sq_seat_field_new (canvas);
  gtk_accessible_update_property (GTK_ACCESSIBLE (canvas), GTK_ACCESSIBLE_PROPERTY_LABEL,
                                  _ ("Seat"), -1);
}
