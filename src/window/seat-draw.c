/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "window/seat-draw-private.h"

#include "window/figures.h"
#include "words/angles.h"
#include "words/lengths.h"
#include "words/piece-names.h"
#include "words/snap-words.h"

#include <glib/gi18n.h>

/* A corner lands where it tells something within REACH; a click so near to the first one closes the
 * ring; two presses are at the same place within SAME_PLACE (pixels). */
#define REACH 8
#define SAME_PLACE 6

/* What is typed is no longer than this. */
#define MOST_TYPED 40

G_DEFINE_TYPE (SqSeatDraw, sq_seat_draw, SQ_TYPE_CANVAS)

static guint drawn_signal, given_up_signal;

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

SqLengthStyle
sq_seat_draw_style (SqSeatDraw *draw)
{
  SqLengthStyle style = sq_length_style_default (draw->units);
  style.decimal = sq_figures_decimal ();
  style.set = TRUE;
  return style;
}

/* --- where the next corner lands ------------------------------------------------------------ */

static double
reach_mm (SqSeatDraw *draw)
{
  return REACH / sq_canvas_get_view (SQ_CANVAS (draw))->scale;
}

/* The hand has not left the corner that was put last. */
static gboolean
is_at_last (SqSeatDraw *draw)
{
  guint n = n_corners (draw);
  return n > 0 && sq_distance (draw->raw, corner_at (draw, n - 1)) <= reach_mm (draw);
}

static SqSnap
land (SqSeatDraw *draw, const SqOutline *outline)
{
  gboolean is_free = sq_canvas_get_modifiers (SQ_CANVAS (draw)) & GDK_CONTROL_MASK;
  SqSnapQuestion question = {
    .before = outline,
    .drag = SQ_DRAG_NEW_CORNER,
    .id = n_corners (draw),
    .raw = draw->raw,
    .reach_mm = reach_mm (draw),
    .kinds = is_free ? 0 : SQ_SNAP_ALL,
    .grid_mm = draw->step_mm,
    .grid_along = { 1, 0 },
  };
  if (draw->by_keys) /* it goes by exact steps */
    return (SqSnap){ .at = draw->raw };
  if (is_at_last (draw))
    return (SqSnap){ .at = corner_at (draw, n_corners (draw) - 1) };
  return sq_snap (&question);
}

/* The side as long as is typed, in the direction pointed at. */
static void
take_typed (SqSeatDraw *draw)
{
  double mm;
  SqLengthResult result = sq_length_parse (draw->typed->str, draw->units, sq_figures_decimal (),
                                           &mm, NULL);
  SqPoint last = corner_at (draw, n_corners (draw) - 1);
  SqVector along = sq_unit (sq_sub (draw->snap.at, last));
  draw->is_closing = FALSE;
  if (result != SQ_LENGTH_OK)
    draw->mistake = sq_figures_mistake (result);
  else if (!(mm > 0) || sq_norm (along) == 0)
    draw->mistake = _ ("This length can’t be.");
  else
    draw->snap.at = sq_moved (last, along, mm);
}

static void
tell (SqSeatDraw *draw)
{
  guint n = n_corners (draw);
  g_autofree char *corners = g_strdup_printf (ngettext ("%u corner", "%u corners", n), n);
  g_autofree char *words = draw->has_place ? sq_seat_draw_words (draw) : NULL;
  g_autofree char *text = words != NULL ? g_strdup_printf ("%s; %s", corners, words)
                                        : g_strdup (corners);
  gtk_accessible_update_property (GTK_ACCESSIBLE (draw), GTK_ACCESSIBLE_PROPERTY_DESCRIPTION, text,
                                  -1);
  gtk_widget_queue_draw (GTK_WIDGET (draw));
}

/* All that follows from where the hand is, and from what is typed. */
static void
follow (SqSeatDraw *draw)
{
  g_autoptr (SqOutline) outline = sq_drawn_ring_outline (&draw->ring);
  guint n = n_corners (draw);
  draw->mistake = NULL;
  draw->is_crossing = FALSE;
  draw->snap = land (draw, outline);
  draw->is_closing = n >= 3 && sq_distance (draw->raw, corner_at (draw, 0)) <= reach_mm (draw);
  if (draw->is_closing)
    draw->snap.at = corner_at (draw, 0);
  if (draw->typed != NULL)
    take_typed (draw);
  if (draw->is_closing)
    draw->is_crossing = !sq_drawn_ring_closes (&draw->ring, &draw->crossing);
  else if (n > 0 && sq_distance (draw->snap.at, corner_at (draw, n - 1)) > 0)
    draw->is_crossing = !sq_drawn_ring_takes (&draw->ring, draw->snap.at, &draw->crossing);
  tell (draw);
}

/* --- what is said --------------------------------------------------------------------------- */

/* "C–D 18 1⁄2 · 90°": the side that would be put, by its letters. */
static void
add_side (SqSeatDraw *draw, GString *words)
{
  guint n = n_corners (draw);
  SqLengthStyle style = sq_seat_draw_style (draw);
  SqPoint last = corner_at (draw, n - 1);
  g_autofree char *figure = sq_length_format (sq_distance (last, draw->snap.at), &style);
  SqDrawnRing longer;
  sq_drawn_ring_init (&longer);
  g_array_append_vals (longer.corners, draw->ring.corners->data, n);
  if (!draw->is_closing)
    g_array_append_val (longer.corners, draw->snap.at);
  g_autoptr (SqOutline) outline = sq_drawn_ring_outline (&longer);
  g_autoptr (SqCushion) cushion = sq_cushion_new (1, outline);
  g_autofree char *name = sq_words_edge_corners (cushion, n);
  sq_drawn_ring_clear (&longer);
  g_string_append_printf (words, "%s %s", name, draw->typed != NULL ? draw->typed->str : figure);
  if (n > 1 && sq_distance (last, draw->snap.at) > 0)
    {
      SqVector back = sq_sub (corner_at (draw, n - 2), last), on = sq_sub (draw->snap.at, last);
      g_autofree char *angle = sq_words_angle (fabs (sq_angle_rad (back, on)), &style);
      g_string_append_printf (words, " · %s", angle);
    }
}

static void
add_reasons (SqSeatDraw *draw, GString *words)
{
  SqLengthStyle style = sq_seat_draw_style (draw);
  g_autoptr (SqOutline) outline = sq_drawn_ring_outline (&draw->ring);
  g_autoptr (SqCushion) cushion = sq_cushion_new (1, outline);
  for (guint i = 0; i < draw->snap.n_reasons; i++)
    if (draw->snap.reasons[i].kind != SQ_SNAP_GRID)
      {
        g_autofree char *reason = sq_words_snap_reason (cushion, SQ_DRAG_NEW_CORNER,
                                                        &draw->snap.reasons[i], &style);
        g_string_append_printf (words, " · %s", reason);
      }
}

char *
sq_seat_draw_words (SqSeatDraw *draw)
{
  GString *words = g_string_new (NULL);
  if (n_corners (draw) > 0
      && (draw->typed != NULL
          || sq_distance (draw->snap.at, corner_at (draw, n_corners (draw) - 1)) > 0))
    add_side (draw, words);
  if (draw->mistake != NULL)
    g_string_append_printf (words, " · %s", draw->mistake);
  else if (draw->is_crossing)
    g_string_assign (words, _ ("sides would cross"));
  else if (draw->is_closing)
    g_string_append_printf (words, " · %s", _ ("closes the seat"));
  else if (draw->typed == NULL && n_corners (draw) > 0)
    add_reasons (draw, words);
  return g_string_free (words, words->len == 0);
}

/* --- putting corners ------------------------------------------------------------------------ */

static void
drop_typed (SqSeatDraw *draw)
{
  if (draw->typed != NULL)
    g_string_free (g_steal_pointer (&draw->typed), TRUE);
}

gboolean
sq_seat_draw_close (SqSeatDraw *draw)
{
  g_autoptr (SqOutline) seat = NULL;
  g_return_val_if_fail (SQ_IS_SEAT_DRAW (draw), FALSE);
  seat = sq_drawn_ring_seat (&draw->ring);
  if (seat != NULL)
    {
      g_signal_emit (draw, drawn_signal, 0, seat);
      return TRUE;
    }
  if (n_corners (draw) >= 3)
    {
      draw->is_crossing = !sq_drawn_ring_closes (&draw->ring, &draw->crossing);
      draw->has_place = TRUE;
      tell (draw);
    }
  gtk_widget_error_bell (GTK_WIDGET (draw));
  return FALSE;
}

/* Whether it put a corner. */
static gboolean
put (SqSeatDraw *draw)
{
  if (draw->is_closing)
    {
      sq_seat_draw_close (draw);
      return FALSE;
    }
  if (draw->mistake != NULL || draw->is_crossing
      || !sq_drawn_ring_takes (&draw->ring, draw->snap.at, &draw->crossing))
    {
      gtk_widget_error_bell (GTK_WIDGET (draw));
      return FALSE;
    }
  g_array_append_val (draw->ring.corners, draw->snap.at);
  draw->raw = draw->snap.at;
  drop_typed (draw);
  follow (draw);
  return TRUE;
}

static void
take_back (SqSeatDraw *draw)
{
  if (draw->typed != NULL)
    {
      const char *last = g_utf8_find_prev_char (draw->typed->str,
                                                draw->typed->str + draw->typed->len);
      g_string_truncate (draw->typed, last != NULL ? (gsize) (last - draw->typed->str) : 0);
      if (draw->typed->len == 0)
        drop_typed (draw);
    }
  else if (n_corners (draw) > 0)
    g_array_set_size (draw->ring.corners, n_corners (draw) - 1);
  follow (draw);
}

/* --- hands ---------------------------------------------------------------------------------- */

static gboolean
is_second_press (SqSeatDraw *draw, SqPoint at)
{
  gint64 before = draw->pressed_us;
  int pause_ms = 400;
  g_object_get (gtk_widget_get_settings (GTK_WIDGET (draw)), "gtk-double-click-time", &pause_ms,
                NULL);
  draw->pressed_us = g_get_monotonic_time ();
  return draw->pressed_us - before < pause_ms * G_GINT64_CONSTANT (1000)
         && sq_distance (at, draw->pressed) < SAME_PLACE;
}

static void
point_at (SqSeatDraw *draw, SqPoint at)
{
  draw->has_place = TRUE;
  draw->by_keys = FALSE;
  draw->raw = sq_view_to_mm (sq_canvas_get_view (SQ_CANVAS (draw)), at);
  follow (draw);
}

static gboolean
press (SqCanvas *canvas, SqPoint at)
{
  SqSeatDraw *draw = SQ_SEAT_DRAW (canvas);
  gboolean is_second = is_second_press (draw, at);
  draw->pressed = at;
  point_at (draw, at);
  if (is_second ? draw->has_put : draw->is_closing)
    return TRUE; /* closes once let go: a press must not outlive the paper that is pressed */
  draw->has_put = !is_second && put (draw);
  return FALSE;
}

static void
drag (SqCanvas *canvas, SqPoint at)
{
  (void) canvas, (void) at;
}

static void
release (SqCanvas *canvas)
{
  sq_seat_draw_close (SQ_SEAT_DRAW (canvas));
}

static void
hover (SqCanvas *canvas, const SqPoint *at)
{
  SqSeatDraw *draw = SQ_SEAT_DRAW (canvas);
  if (at != NULL)
    point_at (draw, *at);
  else if (!draw->by_keys)
    {
      draw->has_place = FALSE;
      tell (draw);
    }
}

/* The cross-hair goes on from the last corner, or from the middle of the paper, on the grid. */
static void
take_cross_hair (SqSeatDraw *draw)
{
  const SqView *view = sq_canvas_get_view (SQ_CANVAS (draw));
  int width = gtk_widget_get_width (GTK_WIDGET (draw));
  int height = gtk_widget_get_height (GTK_WIDGET (draw));
  if (draw->by_keys)
    return;
  draw->by_keys = TRUE;
  draw->raw = n_corners (draw) > 0 ? corner_at (draw, n_corners (draw) - 1)
                                   : sq_view_to_mm (view, sq_point (width / 2.0, height / 2.0));
  draw->raw.x = round (draw->raw.x / draw->step_mm) * draw->step_mm;
  draw->raw.y = round (draw->raw.y / draw->step_mm) * draw->step_mm;
}

/* Keeps the cross-hair on the paper. */
static void
pan_to_hand (SqSeatDraw *draw)
{
  SqPoint at = sq_view_to_device (sq_canvas_get_view (SQ_CANVAS (draw)), draw->raw);
  double dx = CLAMP (at.x, 0, gtk_widget_get_width (GTK_WIDGET (draw))) - at.x;
  double dy = CLAMP (at.y, 0, gtk_widget_get_height (GTK_WIDGET (draw))) - at.y;
  if (dx != 0 || dy != 0)
    sq_canvas_pan (SQ_CANVAS (draw), dx, dy);
}

static gboolean
move (SqSeatDraw *draw, double x, double y, GdkModifierType state)
{
  double step_mm = draw->step_mm * (state & GDK_SHIFT_MASK ? 10 : 1);
  take_cross_hair (draw);
  draw->has_place = TRUE;
  draw->raw = sq_add (draw->raw, sq_point (x * step_mm, y * step_mm));
  pan_to_hand (draw);
  follow (draw);
  return TRUE;
}

/* Enter puts the corner that keys or a figure have a place for; else it closes the seat. */
static gboolean
enter (SqSeatDraw *draw)
{
  guint n = n_corners (draw);
  gboolean is_moved = draw->by_keys
                      && (n == 0 || sq_distance (draw->raw, corner_at (draw, n - 1)) > 0);
  if (draw->typed != NULL || is_moved)
    put (draw);
  else
    sq_seat_draw_close (draw);
  return TRUE;
}

/* A figure begins with a digit or a sign; letters are units. */
static gboolean
type (SqSeatDraw *draw, guint32 character)
{
  gboolean begins = g_unichar_isdigit (character) || character == '.' || character == ','
                    || character == '(';
  if (n_corners (draw) == 0 || !draw->has_place || character == 0 || !g_unichar_isprint (character)
      || (draw->typed == NULL && !begins))
    return FALSE;
  if (draw->typed == NULL)
    draw->typed = g_string_new (NULL);
  if (draw->typed->len < MOST_TYPED)
    g_string_append_unichar (draw->typed, character);
  follow (draw);
  return TRUE;
}

static gboolean
on_key (GtkEventControllerKey *controller, guint keyval, guint code, GdkModifierType state,
        SqSeatDraw *draw)
{
  (void) controller, (void) code;
  if (state & (GDK_CONTROL_MASK | GDK_ALT_MASK))
    return GDK_EVENT_PROPAGATE;
  if (sq_canvas_is_dragging (SQ_CANVAS (draw))) /* it closes in a moment */
    return GDK_EVENT_STOP;
  switch (keyval)
    {
    case GDK_KEY_Left:
    case GDK_KEY_KP_Left:
      return move (draw, -1, 0, state);
    case GDK_KEY_Right:
    case GDK_KEY_KP_Right:
      return move (draw, 1, 0, state);
    case GDK_KEY_Up:
    case GDK_KEY_KP_Up:
      return move (draw, 0, 1, state);
    case GDK_KEY_Down:
    case GDK_KEY_KP_Down:
      return move (draw, 0, -1, state);
    case GDK_KEY_space:
      if (draw->typed != NULL)
        return type (draw, ' ');
      take_cross_hair (draw);
      put (draw);
      return TRUE;
    case GDK_KEY_Return:
    case GDK_KEY_KP_Enter:
      return enter (draw);
    case GDK_KEY_BackSpace:
      take_back (draw);
      return TRUE;
    case GDK_KEY_Escape:
      g_signal_emit (draw, given_up_signal, 0);
      return TRUE;
    default:
      return type (draw, gdk_keyval_to_unicode (keyval));
    }
}

/* All keys are taken before. */
static gboolean
no_key (SqCanvas *canvas, guint keyval, GdkModifierType state)
{
  (void) canvas, (void) keyval, (void) state;
  return FALSE;
}

/* --- the widget ----------------------------------------------------------------------------- */

void
sq_seat_draw_begin (SqSeatDraw *draw, SqUnit units, double step_mm)
{
  g_return_if_fail (SQ_IS_SEAT_DRAW (draw) && step_mm > 0);
  draw->units = units;
  draw->step_mm = step_mm;
  draw->has_place = draw->by_keys = draw->is_closing = draw->is_crossing = FALSE;
  draw->mistake = NULL;
  drop_typed (draw);
  g_array_set_size (draw->ring.corners, 0);
  sq_canvas_fit (SQ_CANVAS (draw));
  tell (draw);
}

GtkWidget *
sq_seat_draw_new (void)
{
  return g_object_new (SQ_TYPE_SEAT_DRAW, NULL);
}

static void
sq_seat_draw_finalize (GObject *object)
{
  SqSeatDraw *draw = SQ_SEAT_DRAW (object);
  drop_typed (draw);
  sq_drawn_ring_clear (&draw->ring);
  G_OBJECT_CLASS (sq_seat_draw_parent_class)->finalize (object);
}

static void
sq_seat_draw_class_init (SqSeatDrawClass *class)
{
  GType type = G_TYPE_FROM_CLASS (class);
  SqCanvasClass *canvas_class = SQ_CANVAS_CLASS (class);
  G_OBJECT_CLASS (class)->finalize = sq_seat_draw_finalize;
  canvas_class->fit = sq_seat_draw_fit;
  canvas_class->draw = sq_seat_draw_draw;
  canvas_class->press = press;
  canvas_class->drag = drag;
  canvas_class->release = release;
  canvas_class->hover = hover;
  canvas_class->key = no_key;
  drawn_signal = g_signal_new ("drawn", type, G_SIGNAL_RUN_LAST, 0, NULL, NULL, NULL, G_TYPE_NONE,
                               1, G_TYPE_POINTER);
  given_up_signal = g_signal_new ("given-up", type, G_SIGNAL_RUN_LAST, 0, NULL, NULL, NULL,
                                  G_TYPE_NONE, 0);
  gtk_widget_class_set_css_name (GTK_WIDGET_CLASS (class), "seat");
}

static void
sq_seat_draw_init (SqSeatDraw *draw)
{
  GtkEventController *key = gtk_event_controller_key_new ();
  sq_drawn_ring_init (&draw->ring);
  draw->step_mm = 1;
  /* Before the canvas: here the space bar puts a corner. */
  gtk_event_controller_set_propagation_phase (key, GTK_PHASE_CAPTURE);
  g_signal_connect (key, "key-pressed", G_CALLBACK (on_key), draw);
  gtk_widget_add_controller (GTK_WIDGET (draw), key);
  gtk_accessible_update_property (GTK_ACCESSIBLE (draw), GTK_ACCESSIBLE_PROPERTY_LABEL,
                                  _ ("Drawing paper"), -1);
}
