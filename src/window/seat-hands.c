/* SPDX-License-Identifier: GPL-3.0-or-later */
/* Taking hold of corners and edges: by pointer, finger and keyboard. */
#include "window/seat-canvas-private.h"

#include "drawing/seat-drawn.h"
#include "job/edge.h"
#include "window/edit-place.h"
#include "window/edits.h"
#include "window/figures.h"

/* A handle is hit within this of its middle, an edge of its line (pixels). */
#define REACH 12

/* A press that moves less is a click (pixels). */
#define LEAST_MOVE 3

static const SqOutline *
outline_of (SqSeatCanvas *canvas)
{
  return canvas->cover != NULL ? canvas->cover->cushion->outline : NULL;
}

static SqGrip
corner_near (SqSeatCanvas *canvas, SqPoint at)
{
  const SqOutline *outline = outline_of (canvas);
  const SqView *view = sq_canvas_get_view (SQ_CANVAS (canvas));
  SqGrip grip = { SQ_GRIP_NONE, 0 };
  double best = REACH;
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
  const SqOutline *outline = outline_of (canvas);
  const SqView *view = sq_canvas_get_view (SQ_CANVAS (canvas));
  SqPoint mm = sq_view_to_mm (view, at);
  SqGrip grip = { SQ_GRIP_NONE, 0 };
  double best = REACH / view->scale;
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
                     : (SqGrip){ SQ_GRIP_CORNER, corners[(tag - n) % n].id };
    }
  return grip;
}

SqGrip
sq_seat_grip_at (SqSeatCanvas *canvas, SqPoint at)
{
  SqGrip grip = { SQ_GRIP_NONE, 0 };
  if (canvas->cover != NULL)
    grip = corner_near (canvas, at);
  if (canvas->cover != NULL && grip.kind == SQ_GRIP_NONE)
    grip = edge_near (canvas, at);
  return grip;
}

SqGrip
sq_seat_chosen (SqSeatCanvas *canvas)
{
  const SqPlace *place;
  if (canvas->selection == NULL)
    return (SqGrip){ SQ_GRIP_NONE, 0 };
  place = sq_selection_place (canvas->selection);
  if (place->kind == SQ_AT_CORNER)
    return (SqGrip){ SQ_GRIP_CORNER, place->item };
  if (place->kind == SQ_AT_EDGE)
    return (SqGrip){ SQ_GRIP_EDGE, place->item };
  return (SqGrip){ SQ_GRIP_NONE, 0 };
}

static void
choose (SqSeatCanvas *canvas, SqGrip grip)
{
  if (grip.kind == SQ_GRIP_NONE)
    sq_selection_choose_part (canvas->selection, SQ_AT_CUSHION, 0);
  else
    sq_selection_choose_part (canvas->selection,
                              grip.kind == SQ_GRIP_CORNER ? SQ_AT_CORNER : SQ_AT_EDGE, grip.corner);
}

/* --- pointer ------------------------------------------------------------------------------- */

/* Outward from the middle of the edge's chord; (0, 0) if it has none. */
static SqVector
edge_normal (const SqOutline *outline, SqId id)
{
  guint ring, i, n;
  const SqCorner *corners;
  if (sq_outline_corner (outline, id, &ring, &i) == NULL)
    return sq_point (0, 0);
  corners = sq_outline_ring (outline, ring, &n);
  return sq_right (sq_unit (sq_sub (corners[(i + 1) % n].at, corners[i].at)));
}

/* The cursor that tells which way an edge goes; y is up. */
static const char *
resize_cursor (SqVector normal)
{
  static const char *const names[] = { "ew-resize", "nesw-resize", "ns-resize", "nwse-resize" };
  double eighths = atan2 (normal.y, normal.x) / (M_PI / 4);
  return names[(lround (eighths) + 8) % 4];
}

static const char *
cursor_for (SqSeatCanvas *canvas, SqGrip grip)
{
  switch (grip.kind)
    {
    case SQ_GRIP_CORNER:
      return "move";
    case SQ_GRIP_EDGE:
      return resize_cursor (edge_normal (outline_of (canvas), grip.corner));
    case SQ_GRIP_NONE:
    default:
      return NULL;
    }
}

void
sq_seat_hover (SqCanvas *self, const SqPoint *at)
{
  SqSeatCanvas *canvas = SQ_SEAT_CANVAS (self);
  SqGrip grip = { SQ_GRIP_NONE, 0 };
  const char *cursor = at != NULL ? sq_seat_things_cursor (canvas, *at) : NULL;
  if (at != NULL && cursor == NULL)
    {
      grip = sq_seat_grip_at (canvas, *at);
      cursor = cursor_for (canvas, grip);
    }
  gtk_widget_set_cursor_from_name (GTK_WIDGET (self), cursor);
  if (grip.kind == canvas->hovered.kind && grip.corner == canvas->hovered.corner)
    return;
  canvas->hovered = grip;
  gtk_widget_queue_draw (GTK_WIDGET (self));
}

static void
end_drag (SqSeatCanvas *canvas)
{
  canvas->held = (SqGrip){ SQ_GRIP_NONE, 0 };
  canvas->is_moving = FALSE;
  canvas->moved = sq_point (0, 0);
  g_clear_pointer (&canvas->base, sq_job_unref);
}

/* A new corner where the edge was pressed twice, or in its middle; it is chosen. */
static gboolean
add_corner (SqSeatCanvas *canvas, SqGrip grip, const SqPoint *at)
{
  SqId cushion = sq_selection_cushion (canvas->selection);
  guint ring, i, n;
  SqPoint middle;
  SqId added;
  if (grip.kind != SQ_GRIP_EDGE
      || sq_outline_corner (outline_of (canvas), grip.corner, &ring, &i) == NULL)
    return FALSE;
  const SqCorner *corners = sq_outline_ring (outline_of (canvas), ring, &n);
  middle = sq_edge_point (&corners[i], &corners[(i + 1) % n], 0.5);
  added = sq_edit_add_corner (canvas->document, cushion, grip.corner, at != NULL ? *at : middle);
  if (added != 0)
    choose (canvas, (SqGrip){ SQ_GRIP_CORNER, added });
  return added != 0;
}

/* Whether this press is the second of two quick ones at the same place. A click gesture can't
 * tell: the drag has taken the first press from it. */
static gboolean
is_second_press (SqSeatCanvas *canvas, SqPoint at)
{
  gint64 before = canvas->pressed_us;
  int pause_ms = 400;
  g_object_get (gtk_widget_get_settings (GTK_WIDGET (canvas)), "gtk-double-click-time", &pause_ms,
                NULL);
  canvas->pressed_us = g_get_monotonic_time ();
  return canvas->pressed_us - before < pause_ms * G_GINT64_CONSTANT (1000)
         && sq_distance (at, canvas->pressed) < 2 * LEAST_MOVE;
}

gboolean
sq_seat_press (SqCanvas *self, SqPoint at)
{
  SqSeatCanvas *canvas = SQ_SEAT_CANVAS (self);
  SqGrip grip = sq_seat_grip_at (canvas, at);
  SqPoint mm = sq_view_to_mm (sq_canvas_get_view (self), at);
  gboolean is_held;
  if (canvas->document == NULL)
    return FALSE;
  end_drag (canvas);
  if (sq_seat_things_press (canvas, at, &is_held))
    return is_held;
  if (is_second_press (canvas, at) && add_corner (canvas, grip, &mm))
    return FALSE;
  choose (canvas, grip);
  if (grip.kind == SQ_GRIP_NONE)
    return FALSE;
  canvas->held = grip;
  canvas->pressed = at;
  canvas->base = sq_job_ref (sq_document_get_job (canvas->document));
  return TRUE;
}

/* @by as a hand means it: a corner goes to whole steps of what figures show, an edge moves square
 * to itself, by such steps. */
static SqVector
meant (SqSeatCanvas *canvas, SqVector by)
{
  const SqCushion *cushion = sq_job_cushion (canvas->base,
                                             sq_selection_cushion (canvas->selection));
  const SqCorner *corner = cushion != NULL ? sq_outline_corner (cushion->outline,
                                                                canvas->held.corner, NULL, NULL)
                                           : NULL;
  SqLengthStyle style = sq_figures_style (canvas->base);
  if (corner == NULL)
    return sq_point (0, 0);
  if (canvas->held.kind == SQ_GRIP_EDGE)
    {
      SqVector normal = edge_normal (cushion->outline, corner->id);
      return sq_scale (normal, sq_length_rounded_mm (sq_dot (by, normal), &style));
    }
  SqPoint to = sq_add (corner->at, by);
  to.x = sq_length_rounded_mm (to.x, &style);
  to.y = sq_length_rounded_mm (to.y, &style);
  return sq_sub (to, corner->at);
}

void
sq_seat_drag (SqCanvas *self, SqPoint at)
{
  SqSeatCanvas *canvas = SQ_SEAT_CANVAS (self);
  const SqView *view = sq_canvas_get_view (self);
  SqVector pixels = sq_sub (at, canvas->pressed);
  if (sq_seat_things_drag (canvas, at))
    return;
  if (canvas->base == NULL || (!canvas->is_moving && sq_norm (pixels) < LEAST_MOVE))
    return;
  SqVector by = meant (canvas,
                       sq_point (pixels.x / view->scale, -pixels.y / view->scale)); /* y is up */
  canvas->is_moving = TRUE;
  if (by.x == canvas->moved.x && by.y == canvas->moved.y)
    return;
  canvas->moved = by;
  g_autoptr (SqJob) job = sq_edit_moved (canvas->base, sq_selection_cushion (canvas->selection),
                                         canvas->held.corner, canvas->held.kind == SQ_GRIP_EDGE,
                                         by);
  if (job != NULL)
    sq_document_try (canvas->document, job);
}

void
sq_seat_release (SqCanvas *self)
{
  SqSeatCanvas *canvas = SQ_SEAT_CANVAS (self);
  gboolean is_back = canvas->moved.x == 0 && canvas->moved.y == 0;
  if (sq_seat_things_release (canvas))
    return;
  if (canvas->base != NULL && canvas->cover != NULL && !is_back)
    {
      g_autofree char *words = sq_edit_moved_words (canvas->cover->cushion, canvas->held.corner,
                                                    canvas->held.kind == SQ_GRIP_EDGE);
      sq_document_keep (canvas->document, words);
    }
  else if (canvas->document != NULL)
    sq_document_drop (canvas->document);
  end_drag (canvas);
}

/* --- keyboard ------------------------------------------------------------------------------ */

static gboolean
nudge (SqSeatCanvas *canvas, SqVector direction, GdkModifierType state)
{
  SqGrip grip = sq_seat_chosen (canvas);
  const SqJob *job = sq_document_get_job (canvas->document);
  SqId cushion = sq_selection_cushion (canvas->selection);
  double step = job->units == SQ_UNIT_IN ? job->defaults.step_in_mm : job->defaults.step_mm_mm;
  if (grip.kind == SQ_GRIP_NONE || sq_canvas_is_dragging (SQ_CANVAS (canvas)))
    return FALSE;
  if (state & GDK_SHIFT_MASK)
    step *= 10;
  g_autoptr (SqJob) moved = sq_edit_moved (job, cushion, grip.corner, grip.kind == SQ_GRIP_EDGE,
                                           sq_scale (direction, step));
  if (moved == NULL)
    return FALSE;
  g_autofree char *words = sq_edit_moved_words (canvas->cover->cushion, grip.corner,
                                                grip.kind == SQ_GRIP_EDGE);
  g_autofree char *key = g_strdup_printf ("nudge %u %u %d", cushion, grip.corner, grip.kind);
  sq_document_edit (canvas->document, moved, words, key);
  return TRUE;
}

/* The corner @by places on from the chosen one, in the order of their letters. */
static gboolean
choose_next (SqSeatCanvas *canvas, int by)
{
  const SqOutline *outline = outline_of (canvas);
  SqGrip now = sq_seat_chosen (canvas);
  g_autoptr (GArray) ids = g_array_new (FALSE, FALSE, sizeof (SqId));
  int at = by > 0 ? -1 : 0;
  for (guint ring = 0; ring < sq_outline_n_rings (outline); ring++)
    {
      guint n;
      const SqCorner *corners = sq_outline_ring (outline, ring, &n);
      for (guint i = 0; i < n; i++)
        {
          if (now.kind != SQ_GRIP_NONE && corners[i].id == now.corner)
            at = (int) ids->len;
          g_array_append_val (ids, corners[i].id);
        }
    }
  if (ids->len == 0)
    return FALSE;
  at = (at + by + (int) ids->len) % (int) ids->len;
  choose (canvas, (SqGrip){ SQ_GRIP_CORNER, g_array_index (ids, SqId, at) });
  return TRUE;
}

/* A letter chooses the corner that has it. */
static gboolean
choose_letter (SqSeatCanvas *canvas, guint keyval)
{
  const SqOutline *outline = outline_of (canvas);
  guint32 letter = gdk_keyval_to_unicode (gdk_keyval_to_upper (keyval)), place = 0;
  if (letter < 'A' || letter > 'Z')
    return FALSE;
  for (guint ring = 0; ring < sq_outline_n_rings (outline); ring++)
    {
      guint n;
      const SqCorner *corners = sq_outline_ring (outline, ring, &n);
      if (letter - 'A' - place < n)
        {
          choose (canvas, (SqGrip){ SQ_GRIP_CORNER, corners[letter - 'A' - place].id });
          return TRUE;
        }
      place += n;
    }
  return FALSE;
}

static gboolean
remove_corner (SqSeatCanvas *canvas)
{
  SqGrip grip = sq_seat_chosen (canvas);
  if (grip.kind != SQ_GRIP_CORNER || sq_canvas_is_dragging (SQ_CANVAS (canvas)))
    return FALSE;
  choose (canvas, (SqGrip){ SQ_GRIP_NONE, 0 });
  return sq_edit_remove_corner (canvas->document, sq_selection_cushion (canvas->selection),
                                grip.corner);
}

static gboolean
take_back (SqSeatCanvas *canvas)
{
  if (sq_canvas_is_dragging (SQ_CANVAS (canvas)))
    {
      if (!sq_seat_things_put_back (canvas))
        sq_document_drop (canvas->document);
      end_drag (canvas);
      sq_canvas_let_go (SQ_CANVAS (canvas));
      return TRUE;
    }
  if (sq_seat_chosen (canvas).kind == SQ_GRIP_NONE)
    return FALSE;
  choose (canvas, (SqGrip){ SQ_GRIP_NONE, 0 });
  return TRUE;
}

gboolean
sq_seat_key (SqCanvas *self, guint keyval, GdkModifierType state)
{
  SqSeatCanvas *canvas = SQ_SEAT_CANVAS (self);
  if (canvas->cover == NULL)
    return FALSE;
  switch (keyval)
    {
    case GDK_KEY_Left:
    case GDK_KEY_KP_Left:
      return nudge (canvas, sq_point (-1, 0), state);
    case GDK_KEY_Right:
    case GDK_KEY_KP_Right:
      return nudge (canvas, sq_point (1, 0), state);
    case GDK_KEY_Up:
    case GDK_KEY_KP_Up:
      return nudge (canvas, sq_point (0, 1), state);
    case GDK_KEY_Down:
    case GDK_KEY_KP_Down:
      return nudge (canvas, sq_point (0, -1), state);
    case GDK_KEY_Page_Down:
      return choose_next (canvas, 1);
    case GDK_KEY_Page_Up:
      return choose_next (canvas, -1);
    case GDK_KEY_Insert:
    case GDK_KEY_KP_Insert:
      return !sq_canvas_is_dragging (self) && add_corner (canvas, sq_seat_chosen (canvas), NULL);
    case GDK_KEY_Delete:
    case GDK_KEY_KP_Delete:
    case GDK_KEY_BackSpace:
      return remove_corner (canvas);
    case GDK_KEY_Escape:
      return take_back (canvas);
    default:
      return choose_letter (canvas, keyval);
    }
}
