/* SPDX-License-Identifier: GPL-3.0-or-later */
/* Taking pieces on the roll: by pointer, finger and keyboard. */
#include "window/roll-canvas-private.h"

#include "drawing/roll-scene.h"
#include "window/edit-laying.h"
#include "window/figures.h"

#include <glib/gi18n.h>

/* A press that moves less is a click; a piece goes to edges and neighbours within SNAP, and is put no
 * farther than REACH from where the hand is (pixels). */
#define LEAST_MOVE 4
#define SNAP 8
#define REACH 64

/* --- what is there --------------------------------------------------------------------------- */

gint
sq_roll_piece_under (SqRollCanvas *canvas, SqPoint at)
{
  if (sq_roll_cloth_lay (canvas) == NULL || canvas->kept != NULL)
    return -1;
  return sq_roll_piece_at (canvas->lays, canvas->cloth, sq_roll_mm (canvas, at));
}

static const SqPlaced *
chosen (SqRollCanvas *canvas)
{
  gint i = sq_roll_chosen (canvas);
  return i >= 0 ? sq_lay_placed (sq_roll_cloth_lay (canvas)->lay, (guint) i) : NULL;
}

gboolean
sq_roll_is_chosen_pinned (SqRollCanvas *canvas)
{
  const SqPlaced *placed = chosen (canvas);
  return placed != NULL && sq_lays_is_pinned (sq_roll_cloth_lay (canvas), placed);
}

/* Why it can't lie there; NULL: it can. Static. */
static const char *
refusal (SqLayFault fault)
{
  switch (fault)
    {
    case SQ_LAY_OVERLAP:
      return _ ("No room: another piece lies there");
    case SQ_LAY_FLAW:
      return _ ("A flaw is there");
    case SQ_LAY_OUTSIDE:
      return _ ("Off the cloth");
    case SQ_LAY_PATTERN:
      return _ ("The pattern falls elsewhere");
    case SQ_LAY_POSE:
      return _ ("It may not be turned");
    case SQ_LAY_RIGHT:
    case SQ_LAY_OTHER_TASK:
    case SQ_LAY_COUNT:
    case SQ_LAY_PIN:
    case SQ_LAY_CUTS:
    default:
      return NULL;
    }
}

/* --- the hold -------------------------------------------------------------------------------- */

static void
let_go (SqRollCanvas *canvas)
{
  g_clear_pointer (&canvas->hold, sq_roll_hold_free);
  canvas->is_moving = FALSE;
  if (canvas->finder != NULL)
    sq_lay_finder_release (canvas->finder);
}

static void
take (SqRollCanvas *canvas, guint i)
{
  canvas->hold = sq_roll_hold_new (canvas->lays, canvas->cloth, i);
  canvas->is_moving = FALSE;
  canvas->said = NULL;
  sq_lay_finder_hold (canvas->finder);
}

gboolean
sq_roll_put_back (SqRollCanvas *canvas)
{
  gboolean was_flaw = sq_roll_flaws_put_back (canvas);
  if (canvas->hold == NULL)
    return was_flaw;
  let_go (canvas);
  canvas->said = NULL;
  sq_canvas_let_go (SQ_CANVAS (canvas));
  if (canvas->followed != NULL)
    sq_roll_show_lays (canvas, canvas->followed);
  return TRUE;
}

/* What is held is pinned where it is; until that is laid, it is shown there. */
static void
put_down (SqRollCanvas *canvas)
{
  g_autoptr (SqRollHold) hold = g_steal_pointer (&canvas->hold);
  g_autoptr (SqLays) lays = sq_lays_ref (sq_roll_hold_lays (hold));
  const SqPlaced *placed = sq_lay_placed (sq_lays_cloth (lays, canvas->cloth)->lay,
                                          sq_roll_hold_placed (hold));
  SqPin pin = sq_roll_hold_pin (hold);
  canvas->said = NULL;
  let_go (canvas);
  if (sq_roll_hold_is_moved (hold))
    sq_edit_pin (canvas->document, lays->plan, sq_lays_entry (lays, placed), &pin, TRUE);
  else
    sq_roll_show_lays (canvas, canvas->followed);
  sq_roll_follow (canvas);
}

static SqRollHand
hand_of (SqRollCanvas *canvas)
{
  return (SqRollHand){
    .snap_mm = sq_roll_px_mm (canvas, SNAP),
    .reach_mm = sq_roll_px_mm (canvas, REACH),
    .others_move = (sq_canvas_get_modifiers (SQ_CANVAS (canvas)) & GDK_SHIFT_MASK) != 0
  };
}

static void
show_hold (SqRollCanvas *canvas)
{
  canvas->said = refusal (sq_roll_hold_refused (canvas->hold));
  sq_roll_show_lays (canvas, sq_roll_hold_lays (canvas->hold));
}

/* --- pointer --------------------------------------------------------------------------------- */

gboolean
sq_roll_press (SqCanvas *self, SqPoint at)
{
  SqRollCanvas *canvas = SQ_ROLL_CANVAS (self);
  if (sq_roll_flaws_press (canvas, at))
    return TRUE;
  gint i = sq_roll_piece_under (canvas, at);
  sq_roll_choose (canvas, i);
  if (i < 0 || !sq_roll_may_change (canvas))
    {
      sq_roll_show_again (canvas);
      return FALSE;
    }
  take (canvas, (guint) i);
  canvas->pressed = sq_roll_mm (canvas, at);
  return TRUE;
}

void
sq_roll_drag (SqCanvas *self, SqPoint at)
{
  SqRollCanvas *canvas = SQ_ROLL_CANVAS (self);
  SqPoint mm = sq_roll_mm (canvas, at);
  SqVector by = sq_sub (mm, canvas->pressed);
  if (canvas->flaws_hand != SQ_FLAWS_REST)
    sq_roll_flaws_drag (canvas, at);
  if (canvas->hold == NULL
      || (!canvas->is_moving && hypot (by.x, by.y) < sq_roll_px_mm (canvas, LEAST_MOVE)))
    return;
  SqRollHand hand = hand_of (canvas);
  canvas->is_moving = TRUE;
  sq_roll_hold_move (canvas->hold, by, sq_roll_strip_at (sq_roll_cloth_lay (canvas), mm), &hand);
  show_hold (canvas);
}

void
sq_roll_release (SqCanvas *self)
{
  SqRollCanvas *canvas = SQ_ROLL_CANVAS (self);
  if (canvas->flaws_hand != SQ_FLAWS_REST)
    sq_roll_flaws_release (canvas);
  else if (canvas->hold != NULL)
    put_down (canvas);
}

void
sq_roll_hover (SqCanvas *self, const SqPoint *at)
{
  SqRollCanvas *canvas = SQ_ROLL_CANVAS (self);
  const char *cursor = NULL;
  if (canvas->is_marking)
    cursor = "crosshair";
  else if (at != NULL && sq_roll_piece_under (canvas, *at) >= 0)
    cursor = sq_roll_may_change (canvas) ? "grab" : "pointer";
  gtk_widget_set_cursor_from_name (GTK_WIDGET (self), cursor);
}

/* --- keys and menu --------------------------------------------------------------------------- */

void
sq_roll_turn (SqRollCanvas *canvas)
{
  gint i = sq_roll_chosen (canvas);
  gboolean is_held = canvas->hold != NULL;
  if (i < 0 || !sq_roll_may_change (canvas))
    return;
  if (!is_held)
    take (canvas, (guint) i);
  SqRollHand hand = hand_of (canvas);
  hand.others_move |= !is_held; /* the rest is laid around it */
  gboolean is_turned = sq_roll_hold_turn (canvas->hold, &hand);
  const char *said = refusal (is_turned ? SQ_LAY_RIGHT : sq_roll_hold_refused (canvas->hold));
  if (!is_turned && said == NULL)
    said = refusal (SQ_LAY_POSE);
  if (is_held)
    show_hold (canvas);
  else
    put_down (canvas);
  canvas->said = said;
  sq_roll_show_again (canvas);
}

static void
nudge (SqRollCanvas *canvas, int along, int across, GdkModifierType state)
{
  gint i = sq_roll_chosen (canvas);
  double step_mm;
  if (i < 0 || !sq_roll_may_change (canvas) || canvas->hold != NULL)
    return;
  step_mm = sq_figures_step_mm (canvas->lays->plan->job) * (state & GDK_SHIFT_MASK ? 10 : 1);
  take (canvas, (guint) i);
  sq_roll_hold_nudge (canvas->hold, along, across, step_mm);
  const char *said = refusal (sq_roll_hold_refused (canvas->hold));
  put_down (canvas);
  canvas->said = said;
  sq_roll_show_again (canvas);
}

void
sq_roll_toggle_pin (SqRollCanvas *canvas)
{
  const SqPlaced *placed = chosen (canvas);
  if (placed == NULL || !sq_roll_may_change (canvas) || canvas->hold != NULL)
    return;
  const SqCutEntry *entry = sq_lays_entry (canvas->lays, placed);
  SqPin pin = sq_lays_pin (canvas->lays, sq_roll_cloth_lay (canvas), placed);
  if (sq_roll_is_chosen_pinned (canvas))
    sq_edit_unpin (canvas->document, canvas->lays->plan, entry, &pin.of);
  else
    sq_edit_pin (canvas->document, canvas->lays->plan, entry, &pin, FALSE);
}

/* From piece to piece in the order of the cut list. */
static gboolean
choose_next (SqRollCanvas *canvas, gint by)
{
  const SqClothLay *cloth = sq_roll_cloth_lay (canvas);
  gint n = cloth != NULL && canvas->kept == NULL ? (gint) cloth->lay->placed->len : 0;
  if (n == 0 || canvas->hold != NULL)
    return FALSE;
  sq_roll_choose (canvas, canvas->at < 0 ? (by > 0 ? 0 : n - 1) : (canvas->at + by + n) % n);
  return TRUE;
}

static gboolean
put_back (SqRollCanvas *canvas)
{
  gboolean was_marking = canvas->is_marking;
  if (was_marking)
    sq_roll_mark_flaw (canvas, FALSE);
  gboolean was_held = sq_roll_put_back (canvas);
  sq_roll_follow (canvas);
  return was_held || was_marking;
}

static gboolean
remove_chosen (SqRollCanvas *canvas)
{
  if (sq_roll_remove_flaw (canvas))
    return TRUE;
  if (!sq_roll_is_chosen_pinned (canvas))
    return FALSE;
  sq_roll_toggle_pin (canvas);
  return TRUE;
}

gboolean
sq_roll_key (SqCanvas *self, guint keyval, GdkModifierType state)
{
  SqRollCanvas *canvas = SQ_ROLL_CANVAS (self);
  switch (keyval)
    {
    case GDK_KEY_Right:
    case GDK_KEY_Down:
      return choose_next (canvas, 1);
    case GDK_KEY_Left:
    case GDK_KEY_Up:
      return choose_next (canvas, -1);
    case GDK_KEY_r:
      sq_roll_turn (canvas);
      return TRUE;
    case GDK_KEY_p:
      sq_roll_toggle_pin (canvas);
      return TRUE;
    case GDK_KEY_f:
      sq_roll_mark_flaw (canvas, !canvas->is_marking);
      return TRUE;
    case GDK_KEY_Delete:
    case GDK_KEY_BackSpace:
      return remove_chosen (canvas);
    case GDK_KEY_Escape:
      return put_back (canvas);
    case GDK_KEY_Menu:
      sq_roll_open_menu (canvas, NULL);
      return TRUE;
    case GDK_KEY_F10:
      if (!(state & GDK_SHIFT_MASK))
        return FALSE;
      sq_roll_open_menu (canvas, NULL);
      return TRUE;
    default:
      return FALSE;
    }
}

/* With Alt the arrows move the piece: a canvas leaves such keys alone. */
static gboolean
on_alt_key (GtkEventControllerKey *controller, guint keyval, guint code, GdkModifierType state,
            SqRollCanvas *canvas)
{
  (void) controller, (void) code;
  if (!(state & GDK_ALT_MASK) || sq_roll_chosen (canvas) < 0)
    return GDK_EVENT_PROPAGATE;
  switch (keyval)
    {
    case GDK_KEY_Right:
      nudge (canvas, 1, 0, state);
      return GDK_EVENT_STOP;
    case GDK_KEY_Left:
      nudge (canvas, -1, 0, state);
      return GDK_EVENT_STOP;
    case GDK_KEY_Up:
      nudge (canvas, 0, 1, state);
      return GDK_EVENT_STOP;
    case GDK_KEY_Down:
      nudge (canvas, 0, -1, state);
      return GDK_EVENT_STOP;
    default:
      return GDK_EVENT_PROPAGATE;
    }
}

static void
on_second_button (GtkGestureClick *gesture, int n, double x, double y, SqRollCanvas *canvas)
{
  SqPoint at = { x, y };
  (void) gesture, (void) n;
  gtk_widget_grab_focus (GTK_WIDGET (canvas));
  sq_roll_choose (canvas, sq_roll_piece_under (canvas, at));
  sq_roll_open_menu (canvas, &at);
}

void
sq_roll_add_hands (SqRollCanvas *canvas)
{
  GtkEventController *key = gtk_event_controller_key_new ();
  GtkGesture *click = gtk_gesture_click_new ();
  g_signal_connect (key, "key-pressed", G_CALLBACK (on_alt_key), canvas);
  gtk_widget_add_controller (GTK_WIDGET (canvas), key);
  gtk_gesture_single_set_button (GTK_GESTURE_SINGLE (click), GDK_BUTTON_SECONDARY);
  g_signal_connect (click, "pressed", G_CALLBACK (on_second_button), canvas);
  gtk_widget_add_controller (GTK_WIDGET (canvas), GTK_EVENT_CONTROLLER (click));
}
