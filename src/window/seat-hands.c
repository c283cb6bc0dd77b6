/* SPDX-License-Identifier: GPL-3.0-or-later */
/* Taking hold of corners and edges: by pointer, finger and keyboard. */
#include "window/seat-canvas-private.h"

#include "job/edge.h"
#include "window/edit-place.h"
#include "window/edit-shape.h"
#include "window/figures.h"

/* Two presses are at the same place within this (pixels). */
#define SAME_PLACE 6

static const SqOutline *
outline_of (SqSeatCanvas *canvas)
{
  return canvas->cover != NULL ? canvas->cover->cushion->outline : NULL;
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

void
sq_seat_choose (SqSeatCanvas *canvas, SqGrip grip)
{
  if (grip.kind == SQ_GRIP_NONE)
    sq_selection_choose_part (canvas->selection, SQ_AT_CUSHION, 0);
  else
    sq_selection_choose_part (canvas->selection,
                              sq_grip_is_of_edge (grip) ? SQ_AT_EDGE : SQ_AT_CORNER, grip.corner);
}

/* --- pointer ------------------------------------------------------------------------------- */

void
sq_seat_hover (SqCanvas *self, const SqPoint *at)
{
  SqSeatCanvas *canvas = SQ_SEAT_CANVAS (self);
  SqGrip grip = { SQ_GRIP_NONE, 0 };
  const char *cursor = at != NULL ? sq_seat_things_cursor (canvas, *at) : NULL;
  if (cursor == NULL)
    cursor = sq_seat_figures_hover (canvas, at);
  if (at != NULL && cursor == NULL)
    {
      grip = sq_seat_grip_at (canvas, *at);
      cursor = sq_seat_grip_cursor (canvas, grip);
    }
  gtk_widget_set_cursor_from_name (GTK_WIDGET (self), cursor);
  if (sq_grip_is_same (grip, canvas->hovered))
    return;
  canvas->hovered = grip;
  gtk_widget_queue_draw (GTK_WIDGET (self));
}

/* A new corner where the edge was pressed twice, or in its middle; it is chosen. */
static gboolean
add_corner (SqSeatCanvas *canvas, SqGrip grip, const SqPoint *at)
{
  SqId cushion = sq_selection_cushion (canvas->selection);
  guint ring, i, n;
  SqPoint middle;
  SqId added;
  if ((grip.kind != SQ_GRIP_EDGE && grip.kind != SQ_GRIP_BOW)
      || sq_outline_corner (outline_of (canvas), grip.corner, &ring, &i) == NULL)
    return FALSE;
  const SqCorner *corners = sq_outline_ring (outline_of (canvas), ring, &n);
  middle = sq_edge_point (&corners[i], &corners[(i + 1) % n], 0.5);
  added = sq_edit_add_corner (canvas->document, cushion, grip.corner, at != NULL ? *at : middle);
  if (added != 0)
    sq_seat_choose (canvas, (SqGrip){ SQ_GRIP_CORNER, added });
  return added != 0;
}

gboolean
sq_seat_add_corner (SqSeatCanvas *canvas)
{
  return add_corner (canvas, sq_seat_chosen (canvas), NULL);
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
         && sq_distance (at, canvas->pressed) < SAME_PLACE;
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
  if (sq_seat_things_press (canvas, at, &is_held))
    return is_held;
  if (sq_seat_field_press (canvas, at))
    return FALSE;
  if (is_second_press (canvas, at) && add_corner (canvas, grip, &mm))
    return FALSE;
  sq_seat_choose (canvas, grip);
  canvas->pressed = at;
  if (grip.kind == SQ_GRIP_NONE)
    return FALSE;
  sq_seat_hold_take (canvas, grip, at);
  return TRUE;
}

void
sq_seat_drag (SqCanvas *self, SqPoint at)
{
  SqSeatCanvas *canvas = SQ_SEAT_CANVAS (self);
  if (!sq_seat_things_drag (canvas, at))
    sq_seat_hold_follow (canvas, at);
}

void
sq_seat_release (SqCanvas *self)
{
  SqSeatCanvas *canvas = SQ_SEAT_CANVAS (self);
  if (!sq_seat_things_release (canvas))
    sq_seat_hold_let_go (canvas, TRUE);
}

/* --- keyboard ------------------------------------------------------------------------------ */

/* By a step, by which no sides may cross. */
static gboolean
nudge (SqSeatCanvas *canvas, SqVector direction, GdkModifierType state)
{
  SqGrip grip = sq_seat_chosen (canvas);
  const SqJob *job = sq_document_get_job (canvas->document);
  const SqCushion *cushion = canvas->cover->cushion;
  SqVector by = sq_scale (direction, sq_figures_step_mm (job) * (state & GDK_SHIFT_MASK ? 10 : 1));
  if (grip.kind == SQ_GRIP_NONE || sq_canvas_is_dragging (SQ_CANVAS (canvas)))
    return FALSE;
  g_autofree char *words = sq_grip_words (cushion, grip);
  g_autofree char *key = g_strdup_printf ("nudge %u %u %d", cushion->id, grip.corner, grip.kind);
  if (!sq_edit_move (canvas->document, cushion->id, grip.corner, grip.kind == SQ_GRIP_EDGE, by,
                     words, key))
    gtk_widget_error_bell (GTK_WIDGET (canvas));
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
  sq_seat_choose (canvas, (SqGrip){ SQ_GRIP_CORNER, g_array_index (ids, SqId, at) });
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
          sq_seat_choose (canvas, (SqGrip){ SQ_GRIP_CORNER, corners[letter - 'A' - place].id });
          return TRUE;
        }
      place += n;
    }
  return FALSE;
}

gboolean
sq_seat_remove_corner (SqSeatCanvas *canvas)
{
  SqGrip grip = sq_seat_chosen (canvas);
  if (grip.kind != SQ_GRIP_CORNER || sq_canvas_is_dragging (SQ_CANVAS (canvas)))
    return FALSE;
  sq_seat_choose (canvas, (SqGrip){ SQ_GRIP_NONE, 0 });
  return sq_edit_remove_corner (canvas->document, sq_selection_cushion (canvas->selection),
                                grip.corner);
}

static gboolean
take_back (SqSeatCanvas *canvas)
{
  if (sq_canvas_is_dragging (SQ_CANVAS (canvas)))
    {
      if (!sq_seat_things_put_back (canvas))
        sq_seat_hold_let_go (canvas, FALSE);
      sq_canvas_let_go (SQ_CANVAS (canvas));
      return TRUE;
    }
  if (sq_seat_chosen (canvas).kind == SQ_GRIP_NONE)
    return FALSE;
  sq_seat_choose (canvas, (SqGrip){ SQ_GRIP_NONE, 0 });
  return TRUE;
}

gboolean
sq_seat_key (SqCanvas *self, guint keyval, GdkModifierType state)
{
  SqSeatCanvas *canvas = SQ_SEAT_CANVAS (self);
  if (canvas->cover == NULL)
    return FALSE;
  if (sq_seat_hold_key (canvas, keyval) || sq_seat_field_key (canvas, keyval, state))
    return TRUE;
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
      return !sq_canvas_is_dragging (self) && sq_seat_add_corner (canvas);
    case GDK_KEY_Delete:
    case GDK_KEY_KP_Delete:
    case GDK_KEY_BackSpace:
      return sq_seat_remove_corner (canvas);
    case GDK_KEY_Menu:
      sq_seat_open_menu (canvas, NULL);
      return TRUE;
    case GDK_KEY_F10:
      if (!(state & GDK_SHIFT_MASK))
        return FALSE;
      sq_seat_open_menu (canvas, NULL);
      return TRUE;
    case GDK_KEY_Escape:
      return take_back (canvas);
    default:
      return choose_letter (canvas, keyval);
    }
}
