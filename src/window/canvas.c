/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "window/canvas.h"

#include "window/look.h"

#include <string.h>

/* One notch of the wheel, one press of a key. */
#define ZOOM_STEP 1.2

/* How far lines and their ornaments reach over a scene's box (pixels). */
#define OVERHANG 14

/* A wheel's notch moves so many pixels. */
#define SCROLL_STEP 48

/* Things are taken hold of within this of their middle or line (pixels). */
#define REACH 12
#define REACH_OF_FINGER 22

/* No seat is looked at nearer or from farther than this (pixels per mm). */
#define LEAST_SCALE 0.002
#define MOST_SCALE 40

/* A drawing keeps room for this many lines of text, and so many ems of width: larger text than that
 * would leave nothing of it. It is never less than LEAST_EM pixels for that reason. */
#define MOST_LINES 26
#define MOST_EMS 22
#define LEAST_EM 11

typedef enum
{
  HOLD_NOTHING,
  HOLD_SHEET,
  HOLD_THING, /* what the subclass took */
} Hold;

typedef struct
{
  SqView view;
  gboolean is_fitted;
  int width, height;
  SqKeptNodes *kept;
  const SqTheme *theme;
  double em;
  char *font;

  Hold hold;
  gboolean space; /* is down */
  SqPoint pointer, pressed, before;
  GdkModifierType modifiers;
  gboolean is_touched; /* a finger it was, not a mouse */
  double scale_before; /* of a pinch */
} SqCanvasPrivate;

G_DEFINE_ABSTRACT_TYPE_WITH_PRIVATE (SqCanvas, sq_canvas, GTK_TYPE_WIDGET)

static SqCanvasPrivate *
private_of (SqCanvas *canvas)
{
  return sq_canvas_get_instance_private (canvas);
}

/* --- the view ------------------------------------------------------------------------------ */

/* Whole pixels: what lies on the sheet looks the same wherever it is moved to. */
static void
set_view (SqCanvas *canvas, SqView view)
{
  SqCanvasPrivate *p = private_of (canvas);
  view.origin = sq_point (round (view.origin.x), round (view.origin.y));
  view.medium = SQ_MEDIUM_SCREEN;
  if (view.scale == p->view.scale && view.origin.x == p->view.origin.x
      && view.origin.y == p->view.origin.y)
    return;
  p->view = view;
  gtk_widget_queue_draw (GTK_WIDGET (canvas));
  gtk_widget_queue_allocate (GTK_WIDGET (canvas)); /* what stands on the sheet moves with it */
}

const SqView *
sq_canvas_get_view (SqCanvas *canvas)
{
  return &private_of (canvas)->view;
}

void
sq_canvas_fit (SqCanvas *canvas)
{
  SqCanvasPrivate *p = private_of (canvas);
  p->is_fitted = TRUE;
  if (p->width > 0 && p->height > 0)
    set_view (canvas, SQ_CANVAS_GET_CLASS (canvas)->fit (canvas, p->width, p->height));
}

gboolean
sq_canvas_is_fitted (SqCanvas *canvas)
{
  return private_of (canvas)->is_fitted;
}

void
sq_canvas_zoom (SqCanvas *canvas, double factor, SqPoint at)
{
  SqCanvasPrivate *p = private_of (canvas);
  SqView view = p->view;
  SqPoint mm = sq_view_to_mm (&view, at);
  view.scale = CLAMP (view.scale * factor, LEAST_SCALE, MOST_SCALE);
  view.origin = sq_point (at.x - mm.x * view.scale, at.y + mm.y * view.scale);
  p->is_fitted = FALSE;
  set_view (canvas, view);
}

void
sq_canvas_zoom_step (SqCanvas *canvas, int steps)
{
  SqCanvasPrivate *p = private_of (canvas);
  sq_canvas_zoom (canvas, pow (ZOOM_STEP, steps), sq_point (p->width / 2.0, p->height / 2.0));
}

void
sq_canvas_pan (SqCanvas *canvas, double dx, double dy)
{
  SqCanvasPrivate *p = private_of (canvas);
  SqView view = p->view;
  view.origin = sq_add (view.origin, sq_point (dx, dy));
  p->is_fitted = FALSE;
  set_view (canvas, view);
}

static void
sq_canvas_size_allocate (GtkWidget *widget, int width, int height, int baseline)
{
  SqCanvas *canvas = SQ_CANVAS (widget);
  SqCanvasPrivate *p = private_of (canvas);
  (void) baseline;
  if (width == p->width && height == p->height)
    return;
  p->width = width;
  p->height = height;
  if (p->is_fitted)
    sq_canvas_fit (canvas);
  gtk_widget_queue_draw (widget);
}

/* --- drawing ------------------------------------------------------------------------------- */

/* Colours and font as the desktop has them; when they change no node can be kept. */
static void
follow_desktop (SqCanvas *canvas)
{
  SqCanvasPrivate *p = private_of (canvas);
  const char *family;
  const SqTheme *theme = sq_look_theme (GTK_WIDGET (canvas));
  double em = sq_look_em (GTK_WIDGET (canvas), &family);
  double room = fmin ((double) p->width / MOST_EMS, (double) p->height / MOST_LINES);
  em = fmin (em, fmax (room, LEAST_EM));
  if (theme == p->theme && em == p->em && g_strcmp0 (family, p->font) == 0)
    return;
  p->theme = theme;
  p->em = em;
  g_free (p->font);
  p->font = g_strdup (family);
  sq_kept_nodes_clear (p->kept);
}

const SqTheme *
sq_canvas_get_theme (SqCanvas *canvas)
{
  follow_desktop (canvas);
  return private_of (canvas)->theme;
}

double
sq_canvas_get_em (SqCanvas *canvas)
{
  follow_desktop (canvas);
  return private_of (canvas)->em;
}

SqKeptNodes *
sq_canvas_get_kept (SqCanvas *canvas)
{
  return private_of (canvas)->kept;
}

static GskRenderNode *
paint_node (SqCanvas *canvas, const SqScene *scene, double weight)
{
  SqCanvasPrivate *p = private_of (canvas);
  SqView view = { .scale = p->view.scale, .font = p->font, .weight = weight };
  SqBox box = sq_scene_box (scene);
  graphene_rect_t bounds = GRAPHENE_RECT_INIT (0, 0, 0, 0);
  GskRenderNode *node;
  if (box.min.x <= box.max.x)
    {
      double x = floor (box.min.x * view.scale) - OVERHANG;
      double y = floor (-box.max.y * view.scale) - OVERHANG;
      double w = ceil (box.max.x * view.scale) + OVERHANG - x;
      double h = ceil (-box.min.y * view.scale) + OVERHANG - y;
      graphene_rect_init (&bounds, (float) x, (float) y, (float) w, (float) h);
    }
  node = gsk_cairo_node_new (&bounds);
  if (sq_scene_n_items (scene) > 0)
    {
      cairo_t *cr = gsk_cairo_node_get_draw_context (node);
      sq_paint_scene (cr, &view, p->theme, scene);
      cairo_destroy (cr);
    }
  return node;
}

void
sq_canvas_append (SqCanvas *canvas, GtkSnapshot *snapshot, const SqLayer *layer)
{
  SqCanvasPrivate *p = private_of (canvas);
  SqKeptKey key = { layer->subject, layer->layer, { p->view.scale, layer->weight } };
  GskRenderNode *node;
  memcpy (key.look + 2, layer->look, sizeof layer->look);
  node = sq_kept_nodes_find (p->kept, &key);
  if (node == NULL)
    {
      g_autoptr (SqScene) scene = layer->make (canvas, layer->data);
      gpointer subject = layer->subject != NULL ? layer->ref (layer->subject) : NULL;
      node = sq_kept_nodes_add (p->kept, &key, subject, layer->unref,
                                paint_node (canvas, scene, layer->weight));
    }
  gtk_snapshot_append_node (snapshot, node);
}

void
sq_canvas_append_scene (SqCanvas *canvas, GtkSnapshot *snapshot, const SqScene *scene)
{
  GskRenderNode *node = paint_node (canvas, scene, 0);
  gtk_snapshot_append_node (snapshot, node);
  gsk_render_node_unref (node);
}

static void
sq_canvas_snapshot (GtkWidget *widget, GtkSnapshot *snapshot)
{
  SqCanvas *canvas = SQ_CANVAS (widget);
  SqCanvasPrivate *p = private_of (canvas);
  follow_desktop (canvas);
  gtk_snapshot_push_clip (snapshot,
                          &GRAPHENE_RECT_INIT (0, 0, (float) p->width, (float) p->height));
  sq_kept_nodes_begin (p->kept);
  SQ_CANVAS_GET_CLASS (canvas)->draw (canvas, snapshot);
  sq_kept_nodes_end (p->kept);
  gtk_snapshot_pop (snapshot);
}

GskRenderNode *
sq_canvas_record (SqCanvas *canvas, gboolean fresh)
{
  SqCanvasPrivate *p = private_of (canvas);
  SqKeptNodes *kept = p->kept;
  GtkSnapshot *snapshot = gtk_snapshot_new ();
  if (fresh)
    p->kept = sq_kept_nodes_new ();
  sq_canvas_snapshot (GTK_WIDGET (canvas), snapshot);
  if (fresh)
    {
      sq_kept_nodes_free (p->kept);
      p->kept = kept;
    }
  return gtk_snapshot_free_to_node (snapshot);
}

/* --- hands --------------------------------------------------------------------------------- */

static void
set_hold (SqCanvas *canvas, Hold hold)
{
  SqCanvasPrivate *p = private_of (canvas);
  p->hold = hold;
  if (hold == HOLD_SHEET)
    gtk_widget_set_cursor_from_name (GTK_WIDGET (canvas), "grabbing");
}

/* The pointer shows what would happen where it is. */
static void
show_hover (SqCanvas *canvas)
{
  SqCanvasPrivate *p = private_of (canvas);
  if (p->hold == HOLD_NOTHING && p->space)
    gtk_widget_set_cursor_from_name (GTK_WIDGET (canvas), "grab");
  else if (p->hold == HOLD_NOTHING)
    SQ_CANVAS_GET_CLASS (canvas)->hover (canvas, &p->pointer);
}

void
sq_canvas_let_go (SqCanvas *canvas)
{
  set_hold (canvas, HOLD_NOTHING);
  show_hover (canvas);
}

gboolean
sq_canvas_is_dragging (SqCanvas *canvas)
{
  return private_of (canvas)->hold == HOLD_THING;
}

GdkModifierType
sq_canvas_get_modifiers (SqCanvas *canvas)
{
  return private_of (canvas)->modifiers;
}

double
sq_canvas_get_reach (SqCanvas *canvas)
{
  return private_of (canvas)->is_touched ? REACH_OF_FINGER : REACH;
}

/* Remembers the modifiers of the event that @controller is at, and what made it. */
static void
take_event (SqCanvas *canvas, GtkEventController *controller)
{
  SqCanvasPrivate *p = private_of (canvas);
  GdkDevice *device = gtk_event_controller_get_current_event_device (controller);
  p->modifiers = gtk_event_controller_get_current_event_state (controller);
  p->is_touched = device != NULL && gdk_device_get_source (device) == GDK_SOURCE_TOUCHSCREEN;
}

static void
on_drag_begin (GtkGestureDrag *gesture, double x, double y, SqCanvas *canvas)
{
  SqCanvasPrivate *p = private_of (canvas);
  guint button = gtk_gesture_single_get_current_button (GTK_GESTURE_SINGLE (gesture));
  take_event (canvas, GTK_EVENT_CONTROLLER (gesture));
  /* What stands on the sheet has hands of its own. */
  if (gtk_widget_pick (GTK_WIDGET (canvas), x, y, GTK_PICK_DEFAULT) != GTK_WIDGET (canvas))
    {
      gtk_gesture_set_state (GTK_GESTURE (gesture), GTK_EVENT_SEQUENCE_DENIED);
      return;
    }
  p->pressed = p->pointer = sq_point (x, y);
  p->before = sq_point (0, 0);
  gtk_widget_grab_focus (GTK_WIDGET (canvas));
  if (button == GDK_BUTTON_MIDDLE || (button == GDK_BUTTON_PRIMARY && p->space))
    set_hold (canvas, HOLD_SHEET);
  else if (button == GDK_BUTTON_PRIMARY && SQ_CANVAS_GET_CLASS (canvas)->press (canvas, p->pressed))
    set_hold (canvas, HOLD_THING);
  if (p->hold == HOLD_NOTHING)
    gtk_gesture_set_state (GTK_GESTURE (gesture), GTK_EVENT_SEQUENCE_DENIED);
}

static void
on_drag_update (GtkGestureDrag *gesture, double dx, double dy, SqCanvas *canvas)
{
  SqCanvasPrivate *p = private_of (canvas);
  take_event (canvas, GTK_EVENT_CONTROLLER (gesture));
  p->pointer = sq_add (p->pressed, sq_point (dx, dy));
  if (p->hold == HOLD_SHEET)
    sq_canvas_pan (canvas, dx - p->before.x, dy - p->before.y);
  else if (p->hold == HOLD_THING)
    SQ_CANVAS_GET_CLASS (canvas)->drag (canvas, p->pointer);
  p->before = sq_point (dx, dy);
}

static void
on_drag_end (GtkGestureDrag *gesture, double dx, double dy, SqCanvas *canvas)
{
  (void) gesture, (void) dx, (void) dy;
  if (private_of (canvas)->hold == HOLD_THING)
    SQ_CANVAS_GET_CLASS (canvas)->release (canvas);
  sq_canvas_let_go (canvas);
}

static void
on_motion (GtkEventControllerMotion *controller, double x, double y, SqCanvas *canvas)
{
  take_event (canvas, GTK_EVENT_CONTROLLER (controller));
  private_of (canvas)->pointer = sq_point (x, y);
  show_hover (canvas);
}

static void
on_leave (GtkEventControllerMotion *controller, SqCanvas *canvas)
{
  (void) controller;
  if (private_of (canvas)->hold == HOLD_NOTHING)
    SQ_CANVAS_GET_CLASS (canvas)->hover (canvas, NULL);
}

static gboolean
on_scroll (GtkEventControllerScroll *controller, double dx, double dy, SqCanvas *canvas)
{
  SqCanvasPrivate *p = private_of (canvas);
  GtkEventController *self = GTK_EVENT_CONTROLLER (controller);
  GdkModifierType state = gtk_event_controller_get_current_event_state (self);
  gboolean is_pixels
      = gdk_scroll_event_get_direction (gtk_event_controller_get_current_event (self))
            == GDK_SCROLL_SMOOTH
        && gdk_device_get_source (gtk_event_controller_get_current_event_device (self))
               != GDK_SOURCE_MOUSE;
  double step = is_pixels ? 1 : SCROLL_STEP;
  if (state & GDK_CONTROL_MASK)
    sq_canvas_zoom (canvas, pow (ZOOM_STEP, -dy * step / SCROLL_STEP), p->pointer);
  else if (!(state & GDK_SHIFT_MASK) == (SQ_CANVAS_GET_CLASS (canvas)->is_long && !is_pixels))
    sq_canvas_pan (canvas, -(dx + dy) * step, 0);
  else
    sq_canvas_pan (canvas, -dx * step, -dy * step);
  return GDK_EVENT_STOP;
}

static void
on_pinch_begin (GtkGesture *gesture, GdkEventSequence *sequence, SqCanvas *canvas)
{
  SqCanvasPrivate *p = private_of (canvas);
  (void) sequence;
  p->scale_before = 1;
  gtk_gesture_get_bounding_box_center (gesture, &p->before.x, &p->before.y);
}

/* Two fingers: what lies between them stays between them. */
static void
on_pinch (GtkGestureZoom *gesture, double scale, SqCanvas *canvas)
{
  SqCanvasPrivate *p = private_of (canvas);
  SqPoint middle;
  gtk_gesture_get_bounding_box_center (GTK_GESTURE (gesture), &middle.x, &middle.y);
  sq_canvas_pan (canvas, middle.x - p->before.x, middle.y - p->before.y);
  sq_canvas_zoom (canvas, scale / p->scale_before, middle);
  p->before = middle;
  p->scale_before = scale;
}

static gboolean
zoom_by_key (SqCanvas *canvas, guint keyval)
{
  switch (keyval)
    {
    case GDK_KEY_plus:
    case GDK_KEY_equal:
    case GDK_KEY_KP_Add:
      sq_canvas_zoom_step (canvas, 1);
      return TRUE;
    case GDK_KEY_minus:
    case GDK_KEY_KP_Subtract:
      sq_canvas_zoom_step (canvas, -1);
      return TRUE;
    default:
      return FALSE;
    }
}

static gboolean
on_key (GtkEventControllerKey *controller, guint keyval, guint code, GdkModifierType state,
        SqCanvas *canvas)
{
  SqCanvasPrivate *p = private_of (canvas);
  (void) controller, (void) code;
  if (state & (GDK_CONTROL_MASK | GDK_ALT_MASK))
    return GDK_EVENT_PROPAGATE;
  if (p->hold == HOLD_THING)
    return SQ_CANVAS_GET_CLASS (canvas)->key (canvas, keyval, state);
  if (keyval == GDK_KEY_space)
    {
      p->space = TRUE;
      show_hover (canvas);
      return GDK_EVENT_STOP;
    }
  return zoom_by_key (canvas, keyval) || SQ_CANVAS_GET_CLASS (canvas)->key (canvas, keyval, state);
}

static void
on_key_up (GtkEventControllerKey *controller, guint keyval, guint code, GdkModifierType state,
           SqCanvas *canvas)
{
  (void) controller, (void) code, (void) state;
  if (keyval != GDK_KEY_space)
    return;
  private_of (canvas)->space = FALSE;
  show_hover (canvas);
}

/* What is dragged may go elsewhere with another modifier. */
static gboolean
on_modifiers (GtkEventControllerKey *controller, GdkModifierType state, SqCanvas *canvas)
{
  SqCanvasPrivate *p = private_of (canvas);
  (void) controller;
  p->modifiers = state;
  if (p->hold == HOLD_THING)
    SQ_CANVAS_GET_CLASS (canvas)->drag (canvas, p->pointer);
  return GDK_EVENT_PROPAGATE;
}

static void
on_focus_leave (GtkEventControllerFocus *controller, SqCanvas *canvas)
{
  (void) controller;
  private_of (canvas)->space = FALSE;
  gtk_widget_queue_draw (GTK_WIDGET (canvas));
}

static void
on_focus_enter (GtkEventControllerFocus *controller, SqCanvas *canvas)
{
  (void) controller;
  gtk_widget_queue_draw (GTK_WIDGET (canvas));
}

static void
add_pointer (SqCanvas *canvas)
{
  GtkWidget *widget = GTK_WIDGET (canvas);
  GtkGesture *drag = gtk_gesture_drag_new ();
  GtkGesture *pinch = gtk_gesture_zoom_new ();
  GtkEventController *motion = gtk_event_controller_motion_new ();
  GtkEventController *scroll = gtk_event_controller_scroll_new (
      GTK_EVENT_CONTROLLER_SCROLL_BOTH_AXES);
  gtk_gesture_single_set_button (GTK_GESTURE_SINGLE (drag), 0);
  g_signal_connect (drag, "drag-begin", G_CALLBACK (on_drag_begin), canvas);
  g_signal_connect (drag, "drag-update", G_CALLBACK (on_drag_update), canvas);
  g_signal_connect (drag, "drag-end", G_CALLBACK (on_drag_end), canvas);
  g_signal_connect (pinch, "begin", G_CALLBACK (on_pinch_begin), canvas);
  g_signal_connect (pinch, "scale-changed", G_CALLBACK (on_pinch), canvas);
  g_signal_connect (motion, "enter", G_CALLBACK (on_motion), canvas);
  g_signal_connect (motion, "motion", G_CALLBACK (on_motion), canvas);
  g_signal_connect (motion, "leave", G_CALLBACK (on_leave), canvas);
  g_signal_connect (scroll, "scroll", G_CALLBACK (on_scroll), canvas);
  gtk_widget_add_controller (widget, GTK_EVENT_CONTROLLER (drag));
  gtk_widget_add_controller (widget, GTK_EVENT_CONTROLLER (pinch));
  gtk_widget_add_controller (widget, motion);
  gtk_widget_add_controller (widget, scroll);
}

static void
add_keyboard (SqCanvas *canvas)
{
  GtkEventController *key = gtk_event_controller_key_new ();
  GtkEventController *focus = gtk_event_controller_focus_new ();
  g_signal_connect (key, "key-pressed", G_CALLBACK (on_key), canvas);
  g_signal_connect (key, "key-released", G_CALLBACK (on_key_up), canvas);
  g_signal_connect (key, "modifiers", G_CALLBACK (on_modifiers), canvas);
  g_signal_connect (focus, "enter", G_CALLBACK (on_focus_enter), canvas);
  g_signal_connect (focus, "leave", G_CALLBACK (on_focus_leave), canvas);
  gtk_widget_add_controller (GTK_WIDGET (canvas), key);
  gtk_widget_add_controller (GTK_WIDGET (canvas), focus);
}

static void
sq_canvas_finalize (GObject *object)
{
  SqCanvasPrivate *p = private_of (SQ_CANVAS (object));
  sq_kept_nodes_free (p->kept);
  g_free (p->font);
  G_OBJECT_CLASS (sq_canvas_parent_class)->finalize (object);
}

static void
sq_canvas_class_init (SqCanvasClass *class)
{
  GtkWidgetClass *widget_class = GTK_WIDGET_CLASS (class);
  G_OBJECT_CLASS (class)->finalize = sq_canvas_finalize;
  widget_class->size_allocate = sq_canvas_size_allocate;
  widget_class->snapshot = sq_canvas_snapshot;
  gtk_widget_class_set_accessible_role (widget_class, GTK_ACCESSIBLE_ROLE_IMG);
}

static void
sq_canvas_init (SqCanvas *canvas)
{
  SqCanvasPrivate *p = private_of (canvas);
  p->kept = sq_kept_nodes_new ();
  p->view.scale = 1;
  p->is_fitted = TRUE;
  gtk_widget_set_focusable (GTK_WIDGET (canvas), TRUE);
  add_pointer (canvas);
  add_keyboard (canvas);
}
