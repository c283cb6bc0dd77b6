/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "window/seat-field.h"

#include "window/chosen-text.h"
#include "window/look.h"
#include "window/seat-canvas-private.h"
#include "window/side-figures.h"
#include "words/piece-names.h"

#include <glib/gi18n.h>

/* Between the field and the border of the sheet, and where no figure stands its corner or edge
 * (pixels). */
#define BORDER 4
#define FROM_SEAT 14

/* A pin: how long, its head, its collar (pixels). */
#define PIN_LENGTH 24
#define PIN_HEAD 4.5
#define PIN_COLLAR 4

struct _SqSeatField
{
  GtkWidget parent;
  SqSeatCanvas *canvas; /* its parent */
  GtkWidget *box, *entry, *stays_button, *note;
  gboolean is_open;
  SqSideFigure figure;
  SqStays stays;
  SqId cushion;
  char *shown; /* the figure as it is */
};

G_DEFINE_TYPE (SqSeatField, sq_seat_field, GTK_TYPE_WIDGET)

static const SqCushion *
cushion_of (SqSeatField *field)
{
  return field->canvas->cover != NULL ? field->canvas->cover->cushion : NULL;
}

/* --- where it stands ----------------------------------------------------------------------- */

/* How far a box of so many pixels reaches from its middle along @axis. */
static double
reach (double width, double height, SqVector axis)
{
  return (fabs (axis.x) * width + fabs (axis.y) * height) / 2;
}

/* Its middle (pixels): over the figure, but clear of the seat where the figure was. */
static SqPoint
middle_of (SqSeatField *field, int width, int height)
{
  const SqView *view = sq_canvas_get_view (SQ_CANVAS (field->canvas));
  const SqDimension *dimension = sq_seat_figures_find (field->canvas, &field->figure);
  SqPoint foot, at;
  SqVector out = sq_seat_figures_outward (cushion_of (field)->outline, &field->figure, &foot);
  out.y = -out.y; /* pixels go down */
  if (dimension == NULL || dimension->is_sign)
    {
      at = sq_view_to_device (view, foot);
      return sq_moved (at, out, FROM_SEAT + reach (width, height, out));
    }
  SqVector along = sq_turned (sq_point (1, 0), dimension->angle_rad);
  SqVector box = sq_point (dimension->width_mm * view->scale, dimension->height_mm * view->scale);
  double was = (fabs (sq_dot (out, sq_point (along.x, -along.y))) * box.x
                + fabs (sq_cross (out, sq_point (along.x, -along.y))) * box.y)
               / 2;
  at = sq_view_to_device (view, dimension->at);
  return sq_moved (at, out, fmax (reach (width, height, out) - was, 0));
}

void
sq_seat_field_allocate (SqSeatCanvas *canvas)
{
  SqSeatField *field = canvas->field;
  GtkAllocation room = { 0 };
  int width, height, most = gtk_widget_get_width (GTK_WIDGET (canvas));
  SqPoint middle;
  if (!field->is_open || cushion_of (field) == NULL)
    return;
  gtk_widget_measure (GTK_WIDGET (field), GTK_ORIENTATION_HORIZONTAL, -1, NULL, &width, NULL, NULL);
  gtk_widget_measure (GTK_WIDGET (field), GTK_ORIENTATION_VERTICAL, width, NULL, &height, NULL,
                      NULL);
  middle = middle_of (field, width, height);
  room.width = width;
  room.height = height;
  room.x = CLAMP ((int) lround (middle.x - width / 2.0), BORDER,
                  MAX (BORDER, most - width - BORDER));
  most = gtk_widget_get_height (GTK_WIDGET (canvas));
  room.y = CLAMP ((int) lround (middle.y - height / 2.0), BORDER,
                  MAX (BORDER, most - height - BORDER));
  gtk_widget_size_allocate (GTK_WIDGET (field), &room, -1);
}

/* --- what it says -------------------------------------------------------------------------- */

static gboolean
is_touched (SqSeatField *field)
{
  return g_strcmp0 (gtk_editable_get_text (GTK_EDITABLE (field->entry)), field->shown) != 0;
}

/* Shows why what is typed can't be; NULL: it can, or nothing was given yet. */
static void
say (SqSeatField *field, const char *mistake)
{
  g_autofree char *stays = sq_side_figure_stays (cushion_of (field), &field->figure, field->stays);
  /* Translators: %s is a corner's letter, or a side's two. */
  g_autofree char *words = g_strdup_printf (_ ("%s stays"), stays);
  gboolean moves = sq_side_figure_moves (&field->figure);
  gtk_label_set_text (GTK_LABEL (field->note), mistake != NULL ? mistake : "");
  gtk_widget_set_visible (field->note, mistake != NULL);
  if (mistake != NULL)
    gtk_widget_add_css_class (field->entry, "error");
  else
    gtk_widget_remove_css_class (field->entry, "error");
  gtk_accessible_update_state (
      GTK_ACCESSIBLE (field->entry), GTK_ACCESSIBLE_STATE_INVALID,
      mistake != NULL ? GTK_ACCESSIBLE_INVALID_TRUE : GTK_ACCESSIBLE_INVALID_FALSE, -1);
  gtk_accessible_update_property (GTK_ACCESSIBLE (field->entry),
                                  GTK_ACCESSIBLE_PROPERTY_DESCRIPTION,
                                  mistake != NULL ? mistake
                                  : moves         ? words
                                                  : "",
                                  -1);
  gtk_button_set_label (GTK_BUTTON (field->stays_button), words);
  gtk_widget_set_visible (field->stays_button, moves);
  gtk_widget_set_tooltip_text (field->stays_button, field->figure.measure == SQ_MEASURE_ANGLE
                                                        ? _ ("Let the other side stay (Ctrl+E)")
                                                        : _ ("Let the other end stay (Ctrl+E)"));
  gtk_widget_queue_draw (GTK_WIDGET (field->canvas));
}

static void
put_back (SqSeatField *field)
{
  if (is_touched (field))
    sq_chosen_text_set (GTK_EDITABLE (field->entry), field->shown);
}

static void
read_figure (SqSeatField *field)
{
  g_free (field->shown);
  field->shown = sq_side_figure_text (sq_document_get_job (field->canvas->document),
                                      cushion_of (field), &field->figure);
}

static void
on_changed (SqSeatField *field)
{
  const char *text = gtk_editable_get_text (GTK_EDITABLE (field->entry));
  g_autoptr (PangoAttrList) list = sq_look_figures (field->entry, text);
  gtk_entry_set_attributes (GTK_ENTRY (field->entry), list);
  if (field->is_open && cushion_of (field) != NULL)
    say (field, NULL);
}

/* --- opening and closing ------------------------------------------------------------------- */

/* The keyboard goes back to the seat, if it was here. */
static void
close_field (SqSeatField *field)
{
  gboolean had_focus = gtk_widget_get_focus_child (GTK_WIDGET (field->canvas)) != NULL;
  if (!field->is_open)
    return;
  field->is_open = FALSE;
  if (had_focus)
    gtk_widget_grab_focus (GTK_WIDGET (field->canvas));
  gtk_widget_set_visible (GTK_WIDGET (field), FALSE);
  gtk_widget_queue_draw (GTK_WIDGET (field->canvas));
}

/* FALSE: what is typed can't be; it says why. */
static gboolean
take (SqSeatField *field)
{
  g_autofree char *text = NULL;
  const char *mistake;
  if (!is_touched (field))
    return TRUE;
  text = g_strdup (gtk_editable_get_text (GTK_EDITABLE (field->entry)));
  mistake = sq_side_figure_give (field->canvas->document, field->cushion, &field->figure,
                                 field->stays, text);
  if (mistake != NULL)
    {
      say (field, mistake);
      return FALSE;
    }
  if (field->is_open)
    put_back (field); /* to the new figure */
  return TRUE;
}

static void
open_field (SqSeatField *field, const SqSideFigure *figure)
{
  SqSeatCanvas *canvas = field->canvas;
  g_autofree char *name = sq_side_figure_name (cushion_of (field), figure);
  field->is_open = FALSE; /* what is chosen now closes nothing */
  field->figure = *figure;
  field->cushion = cushion_of (field)->id;
  field->stays = sq_walk_usual_stays (cushion_of (field)->outline, figure);
  sq_selection_choose_part (canvas->selection,
                            sq_side_figure_is_of_edge (figure) ? SQ_AT_EDGE : SQ_AT_CORNER,
                            figure->corner);
  read_figure (field);
  sq_chosen_text_set (GTK_EDITABLE (field->entry), field->shown);
  field->is_open = TRUE;
  say (field, NULL);
  gtk_accessible_update_property (GTK_ACCESSIBLE (field->entry), GTK_ACCESSIBLE_PROPERTY_LABEL,
                                  name, -1);
  gtk_widget_set_visible (GTK_WIDGET (field), TRUE);
  gtk_widget_queue_allocate (GTK_WIDGET (canvas));
  gtk_widget_grab_focus (field->entry);
  /* The focus may have been here before: what is typed takes the figure's place all the same. */
  gtk_editable_select_region (GTK_EDITABLE (field->entry), 0, -1);
}

void
sq_seat_field_follow (SqSeatCanvas *canvas)
{
  SqSeatField *field = canvas->field;
  const SqCushion *cushion = cushion_of (field);
  gboolean was_touched;
  if (!field->is_open)
    return;
  if (cushion == NULL || cushion->id != field->cushion
      || !sq_side_figure_is_there (cushion, &field->figure)
      || sq_selection_item (canvas->selection,
                            sq_side_figure_is_of_edge (&field->figure) ? SQ_AT_EDGE : SQ_AT_CORNER)
             != field->figure.corner)
    {
      close_field (field);
      return;
    }
  was_touched = is_touched (field);
  read_figure (field);
  if (!was_touched)
    put_back (field);
  gtk_widget_queue_allocate (GTK_WIDGET (canvas));
}

/* --- hands --------------------------------------------------------------------------------- */

gboolean
sq_seat_field_press (SqSeatCanvas *canvas, SqPoint at)
{
  const SqDimension *dimension = sq_seat_figures_at (canvas, at);
  if (dimension == NULL)
    return FALSE;
  open_field (canvas->field, &(SqSideFigure){ dimension->measure, dimension->corner });
  return TRUE;
}

/* The figure that stands for what is chosen: an edge's length, a corner's angle; the first of the
 * walk where nothing is chosen. */
static SqSideFigure
chosen_figure (SqSeatField *field)
{
  SqGrip chosen = sq_seat_chosen (field->canvas);
  g_autoptr (GArray) walk = NULL;
  if (chosen.kind != SQ_GRIP_NONE)
    return (SqSideFigure){ sq_grip_is_of_edge (chosen) ? SQ_MEASURE_LENGTH : SQ_MEASURE_ANGLE,
                           chosen.corner };
  walk = sq_walk_figures (cushion_of (field)->outline);
  return walk->len > 0 ? g_array_index (walk, SqSideFigure, 0) : (SqSideFigure){ 0 };
}

gboolean
sq_seat_field_key (SqSeatCanvas *canvas, guint keyval, GdkModifierType state)
{
  SqSeatField *field = canvas->field;
  gunichar character = gdk_keyval_to_unicode (keyval);
  gboolean is_enter = keyval == GDK_KEY_Return || keyval == GDK_KEY_KP_Enter
                      || keyval == GDK_KEY_ISO_Enter;
  gboolean is_digit = g_unichar_isdigit (character) && sq_seat_chosen (canvas).kind != SQ_GRIP_NONE;
  char text[8] = "";
  SqSideFigure figure;
  if (sq_canvas_is_dragging (SQ_CANVAS (canvas)) || state & (GDK_CONTROL_MASK | GDK_ALT_MASK)
      || (!is_enter && !is_digit))
    return FALSE;
  figure = chosen_figure (field);
  if (!sq_side_figure_is_there (cushion_of (field), &figure))
    return FALSE;
  open_field (field, &figure);
  if (is_enter)
    return TRUE;
  g_unichar_to_utf8 (character, text);
  gtk_editable_set_text (GTK_EDITABLE (field->entry), text);
  gtk_editable_set_position (GTK_EDITABLE (field->entry), -1);
  return TRUE;
}

/* The next figure in the walk round the seat, or the one before. */
static void
walk_on (SqSeatField *field, int by)
{
  g_autoptr (GArray) walk = sq_walk_figures (cushion_of (field)->outline);
  guint at = 0;
  for (guint i = 0; i < walk->len; i++)
    {
      const SqSideFigure *figure = &g_array_index (walk, SqSideFigure, i);
      /* A rise or radius that is none now has its side's or corner's place. */
      if (figure->corner == field->figure.corner
          && sq_side_figure_is_of_edge (figure) == sq_side_figure_is_of_edge (&field->figure))
        at = i;
      if (sq_side_figure_is_same (figure, &field->figure))
        break;
    }
  at = (at + walk->len + (guint) by) % walk->len;
  open_field (field, &g_array_index (walk, SqSideFigure, at));
}

static void
swap_stays (SqSeatField *field)
{
  field->stays = field->stays == SQ_STAYS_START ? SQ_STAYS_END : SQ_STAYS_START;
  say (field, NULL);
}

static gboolean
on_key (GtkEventControllerKey *controller, guint keyval, guint code, GdkModifierType state,
        SqSeatField *field)
{
  (void) controller, (void) code;
  switch (keyval)
    {
    case GDK_KEY_Return:
    case GDK_KEY_KP_Enter:
    case GDK_KEY_ISO_Enter:
      if (take (field))
        close_field (field);
      return GDK_EVENT_STOP;
    case GDK_KEY_Escape:
      put_back (field);
      close_field (field);
      return GDK_EVENT_STOP;
    case GDK_KEY_Tab:
    case GDK_KEY_KP_Tab:
    case GDK_KEY_ISO_Left_Tab:
      if (state & GDK_CONTROL_MASK)
        return GDK_EVENT_PROPAGATE;
      if (take (field) && field->is_open)
        walk_on (field, keyval == GDK_KEY_ISO_Left_Tab || state & GDK_SHIFT_MASK ? -1 : 1);
      return GDK_EVENT_STOP;
    case GDK_KEY_e:
    case GDK_KEY_E:
      if (!(state & GDK_CONTROL_MASK) || !sq_side_figure_moves (&field->figure))
        return GDK_EVENT_PROPAGATE;
      swap_stays (field);
      return GDK_EVENT_STOP;
    default:
      return GDK_EVENT_PROPAGATE;
    }
}

/* What the entry has no use for is not for the seat below it either. */
static gboolean
on_key_left (GtkEventControllerKey *controller, guint keyval, guint code, GdkModifierType state,
             SqSeatField *field)
{
  (void) controller, (void) keyval, (void) code, (void) field;
  return (state & (GDK_CONTROL_MASK | GDK_ALT_MASK)) == 0;
}

static void
on_leave (SqSeatField *field)
{
  if (!field->is_open || cushion_of (field) == NULL)
    return;
  if (!take (field))
    put_back (field);
  close_field (field);
}

/* --- drawing ------------------------------------------------------------------------------- */

/* Whether a pin's head at @head would hide no figure. */
static gboolean
is_clear (SqSeatField *field, SqPoint head)
{
  SqPoint at = sq_view_to_device (sq_canvas_get_view (SQ_CANVAS (field->canvas)), head);
  for (guint i = 0; i < 8; i++)
    if (sq_seat_figures_at (field->canvas,
                            sq_moved (at, sq_turned (sq_point (1, 0), i * M_PI / 4), 2 * PIN_HEAD))
        != NULL)
      return FALSE;
  return TRUE;
}

static void
add_pin (SqSeatField *field, SqSceneBuilder *builder, SqId corner)
{
  const double turns[] = { 0, 0.6, -0.6, 1.2, -1.2, 1.8, -1.8 };
  double px = 1 / sq_canvas_get_view (SQ_CANVAS (field->canvas))->scale;
  SqPoint foot, head;
  SqVector out = sq_seat_figures_outward (cushion_of (field)->outline,
                                          &(SqSideFigure){ SQ_MEASURE_ANGLE, corner }, &foot);
  SqVector up = out;
  for (guint i = 0; i < G_N_ELEMENTS (turns); i++)
    {
      up = sq_turned (out, turns[i]);
      if (is_clear (field, sq_moved (foot, up, PIN_LENGTH * px)))
        break;
      up = out;
    }
  head = sq_moved (foot, up, PIN_LENGTH * px);
  SqPoint collar = sq_moved (foot, up, (PIN_LENGTH - 2 * PIN_HEAD) * px);
  sq_scene_begin_stroke (builder, SQ_PEN_HANDLE);
  sq_scene_add_line (builder, foot, head);
  sq_scene_add_line (builder, sq_moved (collar, sq_left (up), PIN_COLLAR * px),
                     sq_moved (collar, sq_right (up), PIN_COLLAR * px));
  sq_scene_begin_fill (builder, SQ_FILL_HANDLE);
  sq_scene_add_circle (builder, head, PIN_HEAD * px);
  sq_scene_begin_stroke (builder, SQ_PEN_ACCENT);
  sq_scene_add_circle (builder, head, PIN_HEAD * px);
}

/* The end that stays; of an angle both ends of the side that does. */
static void
add_pins (SqSeatField *field, SqSceneBuilder *builder)
{
  guint ring = 0, i = 0, n;
  const SqOutline *outline = cushion_of (field)->outline;
  sq_outline_corner (outline, field->figure.corner, &ring, &i);
  const SqCorner *corners = sq_outline_ring (outline, ring, &n);
  gboolean is_angle = field->figure.measure == SQ_MEASURE_ANGLE;
  if (!sq_side_figure_moves (&field->figure))
    return;
  if (is_angle || field->stays == SQ_STAYS_START)
    add_pin (field, builder, corners[i].id);
  if (field->stays == SQ_STAYS_END)
    add_pin (field, builder, corners[(i + 1) % n].id);
  else if (is_angle)
    add_pin (field, builder, corners[(i + n - 1) % n].id);
}

void
sq_seat_field_append (SqSeatCanvas *canvas, GtkSnapshot *snapshot)
{
  SqSeatField *field = canvas->field;
  SqSceneBuilder *builder;
  if (!field->is_open)
    return;
  builder = sq_scene_builder_new ();
  add_pins (field, builder);
  g_autoptr (SqScene) scene = sq_scene_builder_end (builder);
  sq_canvas_append_scene (SQ_CANVAS (canvas), snapshot, scene);
}

/* --- making -------------------------------------------------------------------------------- */

static void
sq_seat_field_dispose (GObject *object)
{
  SqSeatField *field = SQ_SEAT_FIELD (object);
  field->is_open = FALSE;
  g_clear_pointer (&field->box, gtk_widget_unparent);
  G_OBJECT_CLASS (sq_seat_field_parent_class)->dispose (object);
}

static void
sq_seat_field_finalize (GObject *object)
{
  g_free (SQ_SEAT_FIELD (object)->shown);
  G_OBJECT_CLASS (sq_seat_field_parent_class)->finalize (object);
}

static void
sq_seat_field_class_init (SqSeatFieldClass *class)
{
  GtkWidgetClass *widget_class = GTK_WIDGET_CLASS (class);
  G_OBJECT_CLASS (class)->dispose = sq_seat_field_dispose;
  G_OBJECT_CLASS (class)->finalize = sq_seat_field_finalize;
  gtk_widget_class_set_css_name (widget_class, "seatfield");
  gtk_widget_class_set_layout_manager_type (widget_class, GTK_TYPE_BIN_LAYOUT);
}

static void
add_controllers (SqSeatField *field)
{
  GtkEventController *before = gtk_event_controller_key_new ();
  GtkEventController *after = gtk_event_controller_key_new ();
  GtkEventController *focus = gtk_event_controller_focus_new ();
  gtk_event_controller_set_propagation_phase (before, GTK_PHASE_CAPTURE);
  g_signal_connect (before, "key-pressed", G_CALLBACK (on_key), field);
  g_signal_connect (after, "key-pressed", G_CALLBACK (on_key_left), field);
  g_signal_connect_swapped (focus, "leave", G_CALLBACK (on_leave), field);
  gtk_widget_add_controller (GTK_WIDGET (field), before);
  gtk_widget_add_controller (GTK_WIDGET (field), after);
  gtk_widget_add_controller (GTK_WIDGET (field), focus);
}

static void
sq_seat_field_init (SqSeatField *field)
{
  GtkWidget *line = gtk_box_new (GTK_ORIENTATION_HORIZONTAL, 4);
  field->box = gtk_box_new (GTK_ORIENTATION_VERTICAL, 2);
  field->entry = gtk_entry_new ();
  sq_look_set_figures (field->entry);
  field->stays_button = gtk_button_new ();
  field->note = gtk_label_new (NULL);
  gtk_editable_set_width_chars (GTK_EDITABLE (field->entry), 7);
  gtk_editable_set_max_width_chars (GTK_EDITABLE (field->entry), 7);
  gtk_widget_set_hexpand (field->entry, TRUE);
  gtk_widget_set_focusable (field->stays_button, FALSE); /* it has its key */
  gtk_widget_add_css_class (field->stays_button, "stays");
  gtk_label_set_wrap (GTK_LABEL (field->note), TRUE);
  gtk_label_set_xalign (GTK_LABEL (field->note), 0);
  gtk_label_set_max_width_chars (GTK_LABEL (field->note), 26);
  gtk_widget_add_css_class (field->note, "mistake");
  gtk_box_append (GTK_BOX (line), field->entry);
  gtk_box_append (GTK_BOX (line), field->stays_button);
  gtk_box_append (GTK_BOX (field->box), line);
  gtk_box_append (GTK_BOX (field->box), field->note);
  gtk_widget_set_parent (field->box, GTK_WIDGET (field));
  gtk_widget_set_visible (GTK_WIDGET (field), FALSE);
  g_signal_connect_swapped (field->entry, "changed", G_CALLBACK (on_changed), field);
  g_signal_connect_swapped (field->stays_button, "clicked", G_CALLBACK (swap_stays), field);
  add_controllers (field);
}

SqSeatField *
sq_seat_field_new (SqSeatCanvas *canvas)
{
  SqSeatField *field = g_object_new (SQ_TYPE_SEAT_FIELD, NULL);
  field->canvas = canvas;
  gtk_widget_set_parent (GTK_WIDGET (field), GTK_WIDGET (canvas));
  return field;
}
