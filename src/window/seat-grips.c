/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "window/seat-grips.h"

#include "drawing/seat-drawn.h"
#include "job/edge.h"
#include "window/seat-canvas-private.h"
#include "words/piece-names.h"

#include <glib/gi18n.h>

/* Half the size of a handle, and of one that is pointed at or chosen (pixels). */
#define HANDLE 6
#define HANDLE_LARGE 7.5

/* The handle of a rounding stands no nearer to its corner, so that it can be told from it (pixels). */
#define ASIDE 26

/* A corner that turns less is not to be rounded (rad). */
#define LEAST_TURN_RAD 1e-3

/* --- places -------------------------------------------------------------------------------- */

gboolean
sq_grip_is_of_edge (SqGrip grip)
{
  return grip.kind == SQ_GRIP_EDGE || grip.kind == SQ_GRIP_BOW || grip.kind == SQ_GRIP_CONTROL_START
         || grip.kind == SQ_GRIP_CONTROL_END;
}

SqVector
sq_grip_outward (const SqOutline *outline, SqId edge)
{
  guint ring, i, n;
  const SqCorner *corners;
  if (sq_outline_corner (outline, edge, &ring, &i) == NULL)
    return sq_point (0, 0);
  corners = sq_outline_ring (outline, ring, &n);
  return sq_right (sq_unit (sq_sub (corners[(i + 1) % n].at, corners[i].at)));
}

/* From the corner into its angle: unit, along the bisector; *@apex_mm is how far the middle of its
 * rounding is. FALSE where nothing can be rounded. */
static gboolean
bisector (const SqCorner *corners, guint n, guint i, SqVector *inward, double *apex_mm)
{
  const SqCorner *before = &corners[(i + n - 1) % n], *next = &corners[(i + 1) % n];
  SqVector back = sq_scale (sq_edge_direction (before, &corners[i], TRUE), -1);
  SqVector on = sq_edge_direction (&corners[i], next, FALSE);
  double half_rad = fabs (sq_angle_rad (back, on)) / 2;
  if (sq_norm (back) == 0 || sq_norm (on) == 0 || half_rad < LEAST_TURN_RAD
      || half_rad > G_PI_2 - LEAST_TURN_RAD)
    return FALSE;
  *inward = sq_unit (sq_add (back, on));
  *apex_mm = corners[i].radius_mm * (1 / sin (half_rad) - 1);
  return TRUE;
}

gboolean
sq_grip_place (const SqOutline *outline, SqGrip grip, SqPoint *at)
{
  guint ring, i, n;
  const SqCorner *corner = sq_outline_corner (outline, grip.corner, &ring, &i), *corners;
  SqVector inward;
  double apex_mm;
  if (corner == NULL)
    return FALSE;
  corners = sq_outline_ring (outline, ring, &n);
  switch (grip.kind)
    {
    case SQ_GRIP_CORNER:
      *at = corner->at;
      return TRUE;
    case SQ_GRIP_EDGE:
    case SQ_GRIP_BOW:
      *at = sq_edge_point (corner, &corners[(i + 1) % n], 0.5);
      return grip.kind == SQ_GRIP_EDGE || corner->shape != SQ_SHAPE_CURVE;
    case SQ_GRIP_RADIUS:
      if (!bisector (corners, n, i, &inward, &apex_mm))
        return FALSE;
      *at = sq_moved (corner->at, inward, apex_mm);
      return TRUE;
    case SQ_GRIP_CONTROL_START:
      *at = corner->control[0];
      return corner->shape == SQ_SHAPE_CURVE;
    case SQ_GRIP_CONTROL_END:
      *at = corner->control[1];
      return corner->shape == SQ_SHAPE_CURVE;
    case SQ_GRIP_NONE:
    default:
      return FALSE;
    }
}

char *
sq_grip_words (const SqCushion *cushion, SqGrip grip)
{
  g_autofree char *name = sq_grip_is_of_edge (grip) ? sq_words_edge_corners (cushion, grip.corner)
                                                    : sq_words_corner (cushion, grip.corner);
  switch (grip.kind)
    {
    case SQ_GRIP_EDGE:
      /* Translators: %s is a corner's letter, or an edge's two: "Move edge A–B". */
      return g_strdup_printf (_ ("Move edge %s"), name);
    case SQ_GRIP_BOW:
      return g_strdup_printf (_ ("Rise of side %s"), name);
    case SQ_GRIP_RADIUS:
      return g_strdup_printf (_ ("Round corner %s"), name);
    case SQ_GRIP_CONTROL_START:
    case SQ_GRIP_CONTROL_END:
      return g_strdup_printf (_ ("Bend edge %s"), name);
    case SQ_GRIP_CORNER:
    case SQ_GRIP_NONE:
    default:
      return g_strdup_printf (_ ("Move corner %s"), name);
    }
}

/* Where its handle stands (pixels): at its place, but a rounding's clear of the corner. */
static gboolean
handle_place (SqSeatCanvas *canvas, SqGrip grip, SqPoint *at)
{
  const SqOutline *outline = canvas->cover->cushion->outline;
  const SqView *view = sq_canvas_get_view (SQ_CANVAS (canvas));
  guint ring, i, n;
  const SqCorner *corners;
  SqVector inward;
  double apex_mm;
  if (!sq_grip_place (outline, grip, at))
    return FALSE;
  if (grip.kind == SQ_GRIP_RADIUS)
    {
      sq_outline_corner (outline, grip.corner, &ring, &i);
      corners = sq_outline_ring (outline, ring, &n);
      bisector (corners, n, i, &inward, &apex_mm);
      *at = sq_moved (corners[i].at, inward, fmax (apex_mm, ASIDE / view->scale));
    }
  *at = sq_view_to_device (view, *at);
  return TRUE;
}

/* The handles beside the corners' own: those of what is chosen and of what is pointed at. */
static guint
handles_shown (SqSeatCanvas *canvas, SqGrip grips[4])
{
  const SqGrip subjects[] = { sq_seat_chosen (canvas), canvas->hovered };
  guint n = 0;
  for (guint k = 0; k < G_N_ELEMENTS (subjects); k++)
    {
      SqId id = subjects[k].corner;
      const SqCorner *corner = sq_outline_corner (canvas->cover->cushion->outline, id, NULL, NULL);
      gboolean is_edge = sq_grip_is_of_edge (subjects[k]);
      if (corner == NULL || subjects[k].kind == SQ_GRIP_NONE
          || (k > 0 && id == subjects[0].corner && is_edge == sq_grip_is_of_edge (subjects[0])))
        continue;
      if (!is_edge)
        grips[n++] = (SqGrip){ SQ_GRIP_RADIUS, id };
      else if (corner->shape != SQ_SHAPE_CURVE)
        grips[n++] = (SqGrip){ SQ_GRIP_BOW, id };
      else
        {
          grips[n++] = (SqGrip){ SQ_GRIP_CONTROL_START, id };
          grips[n++] = (SqGrip){ SQ_GRIP_CONTROL_END, id };
        }
    }
  return n;
}

/* --- what is at a point -------------------------------------------------------------------- */

static SqGrip
handle_near (SqSeatCanvas *canvas, SqPoint at)
{
  SqGrip grips[4], grip = { SQ_GRIP_NONE, 0 };
  guint n = handles_shown (canvas, grips);
  double best = sq_canvas_get_reach (SQ_CANVAS (canvas));
  for (guint i = 0; i < n; i++)
    {
      SqPoint place;
      if (!handle_place (canvas, grips[i], &place) || sq_distance (at, place) > best)
        continue;
      best = sq_distance (at, place);
      grip = grips[i];
    }
  return grip;
}

static SqGrip
corner_near (SqSeatCanvas *canvas, SqPoint at)
{
  const SqOutline *outline = canvas->cover->cushion->outline;
  const SqView *view = sq_canvas_get_view (SQ_CANVAS (canvas));
  SqGrip grip = { SQ_GRIP_NONE, 0 };
  double best = sq_canvas_get_reach (SQ_CANVAS (canvas));
  for (guint ring = 0; ring < sq_outline_n_rings (outline); ring++)
    {
      guint n;
      const SqCorner *corners = sq_outline_ring (outline, ring, &n);
      for (guint i = 0; i < n; i++)
        {
          double distance = sq_distance (at, sq_view_to_device (view, corners[i].at));
          if (distance > best)
            continue;
          best = distance;
          grip = (SqGrip){ SQ_GRIP_CORNER, corners[i].id };
        }
    }
  return grip;
}

static SqGrip
edge_near (SqSeatCanvas *canvas, SqPoint at)
{
  const SqOutline *outline = canvas->cover->cushion->outline;
  const SqView *view = sq_canvas_get_view (SQ_CANVAS (canvas));
  SqPoint mm = sq_view_to_mm (view, at);
  SqGrip grip = { SQ_GRIP_NONE, 0 };
  double best = sq_canvas_get_reach (SQ_CANVAS (canvas)) / view->scale;
  for (guint ring = 0; ring < sq_outline_n_rings (outline); ring++)
    {
      guint n;
      const SqCorner *corners = sq_outline_ring (outline, ring, &n);
      g_autoptr (SqPath) path = sq_seat_ring (outline, ring);
      if (path == NULL)
        continue;
      SqNearest nearest = sq_path_nearest (path, mm);
      guint32 tag = sq_path_nodes (path)[nearest.segment].tag;
      if (nearest.distance_mm > best)
        continue;
      best = nearest.distance_mm;
      /* A rounding is its corner's. */
      grip = tag < n ? (SqGrip){ SQ_GRIP_EDGE, corners[tag].id }
                     : (SqGrip){ SQ_GRIP_RADIUS, corners[(tag - n) % n].id };
    }
  return grip;
}

SqGrip
sq_seat_grip_at (SqSeatCanvas *canvas, SqPoint at)
{
  SqGrip grip = { SQ_GRIP_NONE, 0 };
  if (canvas->cover == NULL)
    return grip;
  grip = corner_near (canvas, at);
  if (grip.kind == SQ_GRIP_NONE)
    grip = handle_near (canvas, at);
  if (grip.kind == SQ_GRIP_NONE)
    grip = edge_near (canvas, at);
  return grip;
}

/* For a thing that moves along @way; y is up. */
static const char *
resize_cursor (SqVector way)
{
  static const char *const names[] = { "ew-resize", "nesw-resize", "ns-resize", "nwse-resize" };
  double eighths = atan2 (way.y, way.x) / (M_PI / 4);
  return names[(lround (eighths) + 8) % 4];
}

const char *
sq_seat_grip_cursor (SqSeatCanvas *canvas, SqGrip grip)
{
  const SqOutline *outline = canvas->cover != NULL ? canvas->cover->cushion->outline : NULL;
  switch (grip.kind)
    {
    case SQ_GRIP_CORNER:
      return "move";
    case SQ_GRIP_EDGE:
    case SQ_GRIP_BOW:
      return resize_cursor (sq_grip_outward (outline, grip.corner));
    case SQ_GRIP_RADIUS:
    case SQ_GRIP_CONTROL_START:
    case SQ_GRIP_CONTROL_END:
      return "grab";
    case SQ_GRIP_NONE:
    default:
      return NULL;
    }
}

/* --- drawing ------------------------------------------------------------------------------- */

/* What a handle looks like: round ones are corners', square ones edges'. */
enum
{
  LOOK_PLAIN = 0,
  LOOK_LARGE = 1 << 0,  /* pointed at */
  LOOK_CHOSEN = 1 << 1, /* large, and filled */
  LOOK_SQUARE = 1 << 2,
};

static SqScene *
make_handle (SqCanvas *self, gconstpointer data)
{
  guint look = GPOINTER_TO_UINT (data);
  double px = 1 / sq_canvas_get_view (self)->scale;
  double size = (look & (LOOK_LARGE | LOOK_CHOSEN) ? HANDLE_LARGE : HANDLE) * px;
  const SqNode square[] = {
    { .at = { size, 0 } }, { .at = { 0, size } }, { .at = { -size, 0 } }, { .at = { 0, -size } }
  };
  SqSceneBuilder *builder = sq_scene_builder_new ();
  for (guint pass = 0; pass < 3; pass++)
    {
      if (pass == 1 && !(look & LOOK_CHOSEN))
        continue;
      if (pass == 2)
        sq_scene_begin_stroke (builder,
                               look & (LOOK_LARGE | LOOK_CHOSEN) ? SQ_PEN_ACCENT : SQ_PEN_HANDLE);
      else
        sq_scene_begin_fill (builder, pass == 0 ? SQ_FILL_HANDLE : SQ_FILL_ACCENT);
      if (look & LOOK_SQUARE)
        sq_scene_add_nodes (builder, square, G_N_ELEMENTS (square), TRUE);
      else
        sq_scene_add_circle (builder, sq_point (0, 0), size);
    }
  return sq_scene_builder_end (builder);
}

static void
append_handle (SqSeatCanvas *canvas, GtkSnapshot *snapshot, guint layer, SqPoint at, guint look)
{
  SqLayer what = { .layer = layer + look, .make = make_handle, .data = GUINT_TO_POINTER (look) };
  const SqView *view = sq_canvas_get_view (SQ_CANVAS (canvas));
  gtk_snapshot_save (snapshot);
  gtk_snapshot_translate (snapshot, &GRAPHENE_POINT_INIT ((float) (at.x - view->origin.x),
                                                          (float) (at.y - view->origin.y)));
  sq_canvas_append (SQ_CANVAS (canvas), snapshot, &what);
  gtk_snapshot_restore (snapshot);
}

/* From each end of a free curve to its handle. */
static void
append_arms (SqSeatCanvas *canvas, GtkSnapshot *snapshot, SqId edge)
{
  const SqOutline *outline = canvas->cover->cushion->outline;
  guint ring, i, n;
  const SqCorner *corner = sq_outline_corner (outline, edge, &ring, &i);
  const SqCorner *corners = sq_outline_ring (outline, ring, &n);
  SqSceneBuilder *builder = sq_scene_builder_new ();
  sq_scene_begin_stroke (builder, SQ_PEN_LEADER);
  sq_scene_add_line (builder, corner->at, corner->control[0]);
  sq_scene_add_line (builder, corners[(i + 1) % n].at, corner->control[1]);
  g_autoptr (SqScene) scene = sq_scene_builder_end (builder);
  sq_canvas_append_scene (SQ_CANVAS (canvas), snapshot, scene);
}

void
sq_seat_grips_append (SqSeatCanvas *canvas, GtkSnapshot *snapshot, guint layer)
{
  const SqOutline *outline = canvas->cover->cushion->outline;
  const SqView *view = sq_canvas_get_view (SQ_CANVAS (canvas));
  SqGrip chosen = sq_seat_chosen (canvas), grips[4];
  guint n_grips = handles_shown (canvas, grips);
  for (guint i = 0; i < n_grips; i++)
    if (grips[i].kind == SQ_GRIP_CONTROL_START)
      append_arms (canvas, snapshot, grips[i].corner);
  for (guint ring = 0; ring < sq_outline_n_rings (outline); ring++)
    {
      guint n;
      const SqCorner *corners = sq_outline_ring (outline, ring, &n);
      for (guint i = 0; i < n; i++)
        {
          SqGrip grip = { SQ_GRIP_CORNER, corners[i].id };
          append_handle (canvas, snapshot, layer, sq_view_to_device (view, corners[i].at),
                         sq_grip_is_same (grip, chosen)            ? LOOK_CHOSEN
                         : sq_grip_is_same (grip, canvas->hovered) ? LOOK_LARGE
                                                                   : LOOK_PLAIN);
        }
    }
  for (guint i = 0; i < n_grips; i++)
    {
      guint look = sq_grip_is_of_edge (grips[i]) ? LOOK_SQUARE : LOOK_PLAIN;
      SqPoint at;
      if (sq_grip_is_same (grips[i], canvas->hovered))
        look |= LOOK_LARGE;
      if (handle_place (canvas, grips[i], &at))
        append_handle (canvas, snapshot, layer, at, look);
    }
}
