/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "window/window-private.h"

#include "window/dialogs.h"
#include "window/figures.h"
#include "window/job-dialog.h"
#include "window/look.h"
#include "window/papers-dialog.h"
#include "window/recovery.h"
#include "window/settings.h"
#include "window/ways-dialog.h"
#include "words/lengths.h"

#include <glib/gi18n.h>

/* Of the roll with its caption, before the maker has chosen another (pixels). */
#define USUAL_ROLL_HEIGHT 206

G_DEFINE_TYPE (SqWindow, sq_window, GTK_TYPE_APPLICATION_WINDOW)

/* --- what it says -------------------------------------------------------------------------- */

static void
enable (SqWindow *window, const char *name, gboolean enabled)
{
  GAction *action = g_action_map_lookup_action (G_ACTION_MAP (window), name);
  g_simple_action_set_enabled (G_SIMPLE_ACTION (action), enabled);
}

/* "Undo: Move corner B", on the button that does it. */
static void
show_step (GtkWidget *button, const char *pattern, const char *plain, const char *words)
{
  g_autofree char *text = words != NULL ? g_strdup_printf (pattern, words) : g_strdup (plain);
  gtk_widget_set_tooltip_text (button, text);
  gtk_accessible_update_property (GTK_ACCESSIBLE (button), GTK_ACCESSIBLE_PROPERTY_LABEL, text, -1);
}

/* What holds of the document as a whole. */
static void
show_state (SqWindow *window)
{
  SqDocument *document = window->document;
  g_autofree char *undo = NULL, *redo = NULL;
  gboolean is_modified = FALSE;
  if (document != NULL)
    g_object_get (document, "undo-words", &undo, "redo-words", &redo, "modified", &is_modified,
                  NULL);
  enable (window, "undo", undo != NULL);
  enable (window, "redo", redo != NULL);
  enable (window, "steps", undo != NULL || redo != NULL);
  gtk_widget_set_sensitive (window->all_steps, undo != NULL || redo != NULL);
  enable (window, "job", document != NULL);
  enable (window, "print", document != NULL);
  enable (window, "ways", document != NULL);
  gtk_widget_set_visible (window->print, document != NULL);
  enable (window, "save",
          document != NULL && (is_modified || sq_document_get_file (document) == NULL));
  enable (window, "save-as", document != NULL);
  sq_window_hold_session (window, is_modified);
  /* Translators: %s says what is undone or redone. */
  show_step (window->undo, _ ("Undo: %s"), _ ("Undo"), undo);
  show_step (window->redo, _ ("Redo: %s"), _ ("Redo"), redo);
  gtk_label_set_text (GTK_LABEL (window->title),
                      document != NULL ? sq_document_get_title (document) : "Squab");
  gtk_label_set_text (GTK_LABEL (window->subtitle),
                      document != NULL ? sq_document_get_place (document) : "");
  gtk_widget_set_visible (window->subtitle, document != NULL);
  gtk_widget_set_visible (window->save, document != NULL);
  gtk_widget_set_visible (window->steps, document != NULL);
  gtk_widget_set_visible (window->zooms, document != NULL);
  gtk_window_set_title (GTK_WINDOW (window),
                        document != NULL ? sq_document_get_title (document) : "Squab");
}

/* The line at the foot. */
static void
show_figures (SqWindow *window)
{
  static const char *const classes[] = { "none", "note", "warning", "fault" };
  const SqPlan *plan = sq_document_get_plan (window->document);
  SqLengthStyle style = sq_figures_style (plan->job);
  g_autofree char *figures = sq_figures_foot (plan, &style);
  int worst;
  g_autofree char *count = sq_problems_count_words (plan, &worst);
  if (g_strcmp0 (figures, gtk_inscription_get_text (GTK_INSCRIPTION (window->figures))) != 0)
    {
      g_autoptr (PangoAttrList) list = sq_look_figures (window->figures, figures);
      gtk_inscription_set_text (GTK_INSCRIPTION (window->figures), figures);
      gtk_inscription_set_attributes (GTK_INSCRIPTION (window->figures), list);
      gtk_accessible_update_property (GTK_ACCESSIBLE (window->figures),
                                      GTK_ACCESSIBLE_PROPERTY_DESCRIPTION, figures, -1);
    }
  if (g_strcmp0 (count, gtk_label_get_text (GTK_LABEL (window->count_words))) == 0)
    return;
  gtk_label_set_text (GTK_LABEL (window->count_words), count);
  gtk_accessible_update_property (GTK_ACCESSIBLE (window->count), GTK_ACCESSIBLE_PROPERTY_LABEL,
                                  count, -1);
  for (guint i = 0; i < G_N_ELEMENTS (classes); i++)
    gtk_widget_remove_css_class (window->count, classes[i]);
  gtk_widget_add_css_class (window->count, classes[worst + 1]);
}

/* What stands above seat and pieces. */
static void
show_captions (SqWindow *window)
{
  SqId cushion = sq_selection_cushion (window->selection);
  const SqCover *cover = sq_document_get_cover (window->document, cushion, NULL);
  g_autofree char *corners = NULL, *pieces = NULL;
  guint n = 0;
  if (cover != NULL)
    for (guint ring = 0, m; ring < sq_outline_n_rings (cover->cushion->outline); ring++, n += m)
      sq_outline_ring (cover->cushion->outline, ring, &m);
  const char *unit = sq_words_unit (sq_document_get_job (window->document)->units);
  /* Translators: a seat that nothing is drawn of, as a bolster's; %s is a unit. */
  corners = n == 0
                ? g_strdup_printf (_ ("from above, lengths in %s"), unit)
                : g_strdup_printf (
                    ngettext ("%u corner, lengths in %s", "%u corners, lengths in %s", n), n, unit);
  n = cover != NULL ? cover->pieces->len : 0;
  pieces = g_strdup_printf (
      ngettext ("%u piece, right side of the cloth up", "%u pieces, right side of the cloth up", n),
      n);
  gtk_label_set_text (GTK_LABEL (window->seat_words), corners);
  gtk_label_set_text (GTK_LABEL (window->pieces_words), pieces);
}

static void
on_changed (SqWindow *window)
{
  show_figures (window);
  show_captions (window);
}

/* --- the document -------------------------------------------------------------------------- */

SqDocument *
sq_window_get_document (SqWindow *window)
{
  g_return_val_if_fail (SQ_IS_WINDOW (window), NULL);
  return window->document;
}

static void
bind_document (SqWindow *window, SqDocument *document)
{
  SqSelection *selection = window->selection;
  /* First the list: it sees to it that a cushion is chosen. */
  sq_cushion_list_set_document (window->cushions, document, selection);
  sq_seat_canvas_set_document (window->seat, document, selection);
  sq_sides_table_set_document (window->sides, document, selection, GTK_WIDGET (window->seat));
  sq_pieces_canvas_set_document (window->pieces, document, selection);
  sq_seam_card_set_document (window->seam_card, document, selection, window->pieces);
  sq_values_set_document (window->values, document, selection);
  sq_problems_set_document (window->problems, document, selection);
  sq_steps_menu_set_document (window->steps_menu, document);
  sq_roll_pane_set_document (window->roll, document, window->finder, selection);
}

/* A bar above the work says when changes can't be kept between savings; it asks for nothing. */
static void
on_kept (SqDocument *document, const GError *error, gpointer data)
{
  SqWindow *window = data;
  g_autofree char *words = NULL;
  (void) document;
  if (error != NULL)
    words = g_strdup_printf (_ ("Changes can’t be kept between savings: save often. (%s)"),
                             error->message);
  gtk_label_set_text (GTK_LABEL (window->notice_words), words != NULL ? words : "");
  gtk_revealer_set_reveal_child (GTK_REVEALER (window->notice), words != NULL);
}

static void
on_hide_notice (GSimpleAction *action, GVariant *parameter, gpointer data)
{
  (void) action, (void) parameter;
  gtk_revealer_set_reveal_child (GTK_REVEALER (SQ_WINDOW (data)->notice), FALSE);
}

void
sq_window_set_document (SqWindow *window, SqDocument *document)
{
  g_return_if_fail (SQ_IS_WINDOW (window) && window->document == NULL);
  window->document = g_object_ref (document);
  sq_recovery_keep (document, on_kept, window);
  window->finder = sq_lay_finder_new (document);
  bind_document (window, document);
  sq_window_follow_symmetry (window);
  g_signal_connect_object (document, "changed", G_CALLBACK (on_changed), window, G_CONNECT_SWAPPED);
  g_signal_connect_object (document, "notify::modified", G_CALLBACK (show_state), window,
                           G_CONNECT_SWAPPED);
  gtk_stack_set_visible_child_name (GTK_STACK (window->stack), "work");
  gtk_widget_grab_focus (GTK_WIDGET (window->seat));
  show_state (window);
  on_changed (window);
  if (sq_plan_figures (sq_document_get_plan (document)).faults > 0)
    gtk_revealer_set_reveal_child (GTK_REVEALER (window->revealer), TRUE);
}

SqSeatCanvas *
sq_window_get_seat (SqWindow *window)
{
  g_return_val_if_fail (SQ_IS_WINDOW (window), NULL);
  return window->seat;
}

SqCanvas *
sq_window_get_pieces (SqWindow *window)
{
  g_return_val_if_fail (SQ_IS_WINDOW (window), NULL);
  return SQ_CANVAS (window->pieces);
}

SqCanvas *
sq_window_get_roll (SqWindow *window)
{
  g_return_val_if_fail (SQ_IS_WINDOW (window), NULL);
  return SQ_CANVAS (sq_roll_pane_get_canvas (window->roll));
}

SqSelection *
sq_window_get_selection (SqWindow *window)
{
  g_return_val_if_fail (SQ_IS_WINDOW (window), NULL);
  return window->selection;
}

/* --- actions ------------------------------------------------------------------------------- */

/* A hand holds something, or draws a seat: its step isn't done yet. */
static gboolean
is_dragging (SqWindow *window)
{
  return sq_window_is_drawing (window) || sq_canvas_is_dragging (SQ_CANVAS (window->seat))
         || sq_canvas_is_dragging (SQ_CANVAS (window->pieces));
}

static void
on_undo (GSimpleAction *action, GVariant *parameter, gpointer data)
{
  (void) action, (void) parameter;
  if (!is_dragging (data))
    sq_document_undo (SQ_WINDOW (data)->document);
}

static void
on_redo (GSimpleAction *action, GVariant *parameter, gpointer data)
{
  (void) action, (void) parameter;
  if (!is_dragging (data))
    sq_document_redo (SQ_WINDOW (data)->document);
}

static void
on_steps (GSimpleAction *action, GVariant *parameter, gpointer data)
{
  (void) action, (void) parameter;
  if (!is_dragging (data))
    gtk_menu_button_popup (GTK_MENU_BUTTON (SQ_WINDOW (data)->all_steps));
}

static void
on_print (GSimpleAction *action, GVariant *parameter, gpointer data)
{
  SqWindow *window = data;
  (void) action, (void) parameter;
  if (!is_dragging (window))
    sq_papers_dialog (GTK_WINDOW (window), window->document, window->finder);
}

static void
on_ways (GSimpleAction *action, GVariant *parameter, gpointer data)
{
  SqWindow *window = data;
  (void) action, (void) parameter;
  if (window->document == NULL || is_dragging (window))
    return;
  if (window->ways == NULL)
    g_set_weak_pointer (&window->ways,
                        sq_ways_dialog (GTK_WINDOW (window), window->document, window->selection));
  else
    gtk_window_present (GTK_WINDOW (window->ways));
}

static void
on_job (GSimpleAction *action, GVariant *parameter, gpointer data)
{
  (void) action, (void) parameter;
  if (!is_dragging (data))
    sq_job_dialog (GTK_WINDOW (data), SQ_WINDOW (data)->document);
}

/* What is wrong at @place, in the list. */
static void
on_problem (SqSelection *selection, const SqPlace *place, SqWindow *window)
{
  (void) selection;
  gtk_revealer_set_reveal_child (GTK_REVEALER (window->revealer), TRUE);
  sq_problems_show (window->problems, place);
}

/* The canvas that the keyboard is on, else the seat. */
static SqCanvas *
looked_at (SqWindow *window)
{
  GtkWidget *focus = gtk_window_get_focus (GTK_WINDOW (window));
  if (sq_window_is_drawing (window))
    return SQ_CANVAS (window->draw);
  return focus != NULL && SQ_IS_CANVAS (focus) ? SQ_CANVAS (focus) : SQ_CANVAS (window->seat);
}

static void
on_zoom_in (GSimpleAction *action, GVariant *parameter, gpointer data)
{
  (void) action, (void) parameter;
  sq_canvas_zoom_step (looked_at (data), 1);
}

static void
on_zoom_out (GSimpleAction *action, GVariant *parameter, gpointer data)
{
  (void) action, (void) parameter;
  sq_canvas_zoom_step (looked_at (data), -1);
}

static void
on_fit (GSimpleAction *action, GVariant *parameter, gpointer data)
{
  (void) action, (void) parameter;
  sq_canvas_fit (SQ_CANVAS (SQ_WINDOW (data)->draw));
  sq_canvas_fit (SQ_CANVAS (SQ_WINDOW (data)->seat));
  sq_canvas_fit (SQ_CANVAS (SQ_WINDOW (data)->pieces));
}

static void
on_full_screen (GSimpleAction *action, GVariant *parameter, gpointer data)
{
  (void) action, (void) parameter;
  if (gtk_window_is_fullscreen (data))
    gtk_window_unfullscreen (data);
  else
    gtk_window_fullscreen (data);
}

static void
add_actions (SqWindow *window)
{
  const GActionEntry entries[] = {
    { .name = "undo", .activate = on_undo },
    { .name = "redo", .activate = on_redo },
    { .name = "steps", .activate = on_steps },
    { .name = "job", .activate = on_job },
    { .name = "print", .activate = on_print },
    { .name = "ways", .activate = on_ways },
    { .name = "zoom-in", .activate = on_zoom_in },
    { .name = "zoom-out", .activate = on_zoom_out },
    { .name = "fit", .activate = on_fit },
    { .name = "fullscreen", .activate = on_full_screen },
    { .name = "hide-notice", .activate = on_hide_notice },
  };
  g_autoptr (GPropertyAction) problems = g_property_action_new ("problems", window->revealer,
                                                                "reveal-child");
  g_autoptr (GPropertyAction) sides = g_property_action_new ("sides", window->sides, "visible");
  g_autoptr (GPropertyAction) roll = g_property_action_new (
      "roll", sq_roll_pane_get_canvas (window->roll), "visible");
  g_action_map_add_action_entries (G_ACTION_MAP (window), entries, G_N_ELEMENTS (entries), window);
  g_action_map_add_action (G_ACTION_MAP (window), G_ACTION (problems));
  g_action_map_add_action (G_ACTION_MAP (window), G_ACTION (sides));
  g_action_map_add_action (G_ACTION_MAP (window), G_ACTION (roll));
  sq_window_add_file_actions (window);
  sq_window_add_cushion_actions (window);
  sq_window_add_symmetry_actions (window);
  sq_window_add_draw_actions (window);
}

/* --- the window ---------------------------------------------------------------------------- */

/* Seat or pieces take the whole middle; never both. */
static void
on_only (GtkToggleButton *button, GParamSpec *spec, SqWindow *window)
{
  gboolean is_seat = GTK_WIDGET (button) == window->seat_only;
  gboolean is_on = gtk_toggle_button_get_active (button);
  (void) spec;
  gtk_widget_set_visible (is_seat ? window->pieces_pane : window->seat_pane, !is_on);
}

/* Unfolded the roll has some height, at least; folded nothing but its caption. */
static void
fit_roll (SqWindow *window)
{
  int height = gtk_widget_get_height (window->bench), position;
  gboolean is_open = gtk_widget_get_visible (sq_roll_pane_get_canvas (window->roll));
  if (height == 0)
    return;
  position = is_open ? height - window->roll_height : height;
  gtk_paned_set_position (GTK_PANED (window->bench), position);
}

/* The divider has its first place as soon as it is known how high the bench is. */
static void
on_bench (SqWindow *window)
{
  if (window->is_roll_fitted || gtk_widget_get_height (window->bench) == 0)
    return;
  window->is_roll_fitted = TRUE;
  fit_roll (window);
}

/* The hand that moves the divider says how high the roll is. */
static void
on_divider (SqWindow *window)
{
  int height = gtk_widget_get_height (window->bench);
  if (window->is_roll_fitted && gtk_widget_get_visible (sq_roll_pane_get_canvas (window->roll)))
    window->roll_height = height - gtk_paned_get_position (GTK_PANED (window->bench));
}

/* How the window looked when one was closed last. */
static void
recall (SqWindow *window)
{
  g_autoptr (GKeyFile) settings = sq_settings_read ();
  int width = g_key_file_get_integer (settings, SQ_SETTINGS_WINDOW, "width", NULL);
  int height = g_key_file_get_integer (settings, SQ_SETTINGS_WINDOW, "height", NULL);
  int middle = g_key_file_get_integer (settings, SQ_SETTINGS_WINDOW, "middle", NULL);
  if (width > 0 && height > 0)
    gtk_window_set_default_size (GTK_WINDOW (window), width, height);
  if (g_key_file_get_boolean (settings, SQ_SETTINGS_WINDOW, "maximized", NULL))
    gtk_window_maximize (GTK_WINDOW (window));
  if (middle > 0)
    gtk_paned_set_position (GTK_PANED (window->middle), middle);
  gtk_revealer_set_reveal_child (
      GTK_REVEALER (window->revealer),
      g_key_file_get_boolean (settings, SQ_SETTINGS_WINDOW, "problems", NULL));
  gtk_widget_set_visible (GTK_WIDGET (window->sides),
                          g_key_file_get_boolean (settings, SQ_SETTINGS_WINDOW, "sides", NULL));
  gtk_widget_set_visible (
      sq_roll_pane_get_canvas (window->roll),
      !g_key_file_get_boolean (settings, SQ_SETTINGS_WINDOW, "roll-folded", NULL));
  window->roll_height = g_key_file_get_integer (settings, SQ_SETTINGS_WINDOW, "roll-height", NULL);
  if (window->roll_height <= 0)
    window->roll_height = USUAL_ROLL_HEIGHT;
}

static void
remember (SqWindow *window)
{
  g_autoptr (GKeyFile) settings = sq_settings_read ();
  int width, height;
  gtk_window_get_default_size (GTK_WINDOW (window), &width, &height);
  g_key_file_set_integer (settings, SQ_SETTINGS_WINDOW, "width", width);
  g_key_file_set_integer (settings, SQ_SETTINGS_WINDOW, "height", height);
  g_key_file_set_boolean (settings, SQ_SETTINGS_WINDOW, "maximized",
                          gtk_window_is_maximized (GTK_WINDOW (window)));
  if (window->document != NULL)
    {
      g_key_file_set_integer (settings, SQ_SETTINGS_WINDOW, "middle",
                              gtk_paned_get_position (GTK_PANED (window->middle)));
      g_key_file_set_boolean (settings, SQ_SETTINGS_WINDOW, "problems",
                              gtk_revealer_get_reveal_child (GTK_REVEALER (window->revealer)));
      g_key_file_set_boolean (settings, SQ_SETTINGS_WINDOW, "sides",
                              gtk_widget_get_visible (GTK_WIDGET (window->sides)));
      g_key_file_set_boolean (settings, SQ_SETTINGS_WINDOW, "roll-folded",
                              !gtk_widget_get_visible (sq_roll_pane_get_canvas (window->roll)));
      g_key_file_set_integer (settings, SQ_SETTINGS_WINDOW, "roll-height", window->roll_height);
    }
  sq_settings_write (settings);
}

static gboolean
sq_window_close_request (GtkWindow *window)
{
  if (!sq_window_may_close (SQ_WINDOW (window)))
    return TRUE;
  remember (SQ_WINDOW (window));
  return GTK_WINDOW_CLASS (sq_window_parent_class)->close_request (window);
}

static void
sq_window_dispose (GObject *object)
{
  SqWindow *window = SQ_WINDOW (object);
  sq_window_hold_session (window, FALSE);
  g_clear_weak_pointer (&window->ways);
  g_clear_object (&window->finder);
  if (window->document != NULL)
    bind_document (window, NULL);
  g_clear_object (&window->document);
  G_OBJECT_CLASS (sq_window_parent_class)->dispose (object);
}

static void
sq_window_finalize (GObject *object)
{
  g_object_unref (SQ_WINDOW (object)->selection);
  G_OBJECT_CLASS (sq_window_parent_class)->finalize (object);
}

#define BIND(name) gtk_widget_class_bind_template_child (widget_class, SqWindow, name)

static void
sq_window_class_init (SqWindowClass *class)
{
  GtkWidgetClass *widget_class = GTK_WIDGET_CLASS (class);
  G_OBJECT_CLASS (class)->dispose = sq_window_dispose;
  G_OBJECT_CLASS (class)->finalize = sq_window_finalize;
  GTK_WINDOW_CLASS (class)->close_request = sq_window_close_request;
  g_type_ensure (SQ_TYPE_START_PAGE);
  g_type_ensure (SQ_TYPE_CUSHION_LIST);
  g_type_ensure (SQ_TYPE_SEAT_CANVAS);
  g_type_ensure (SQ_TYPE_SIDES_TABLE);
  g_type_ensure (SQ_TYPE_SEAT_DRAW);
  g_type_ensure (SQ_TYPE_PIECES_CANVAS);
  g_type_ensure (SQ_TYPE_SEAM_CARD);
  g_type_ensure (SQ_TYPE_VALUES);
  g_type_ensure (SQ_TYPE_PROBLEMS);
  g_type_ensure (SQ_TYPE_STEPS_MENU);
  g_type_ensure (SQ_TYPE_ROLL_PANE);
  gtk_widget_class_set_template_from_resource (widget_class, "/org/squab/Squab/window.ui");
  BIND (title);
  BIND (subtitle);
  BIND (save);
  BIND (print);
  BIND (steps);
  BIND (undo);
  BIND (redo);
  BIND (all_steps);
  BIND (steps_menu);
  BIND (zooms);
  BIND (stack);
  BIND (recent_menu);
  BIND (notice);
  BIND (notice_words);
  BIND (bench);
  BIND (middle);
  BIND (seat_pane);
  BIND (pieces_pane);
  BIND (seat_only);
  BIND (pieces_only);
  BIND (seat_words);
  BIND (pieces_words);
  BIND (symmetry_offer);
  BIND (symmetry_words);
  BIND (revealer);
  BIND (figures);
  BIND (count);
  BIND (count_words);
  BIND (start_page);
  BIND (draw);
  BIND (cushions);
  BIND (seat);
  BIND (sides);
  BIND (pieces);
  BIND (seam_card);
  BIND (values);
  BIND (problems);
  BIND (roll);
}

static void
sq_window_init (SqWindow *window)
{
  window->selection = sq_selection_new ();
  gtk_widget_init_template (GTK_WIDGET (window));
  if (gtk_widget_get_default_direction () == GTK_TEXT_DIR_RTL) /* it does not turn by itself */
    gtk_inscription_set_xalign (GTK_INSCRIPTION (window->figures), 1);
  add_actions (window);
  g_signal_connect_swapped (window->start_page, "start", G_CALLBACK (sq_window_start), window);
  g_signal_connect_swapped (window->start_page, "sample", G_CALLBACK (sq_window_open_sample),
                            window);
  g_signal_connect_object (sq_roll_pane_get_canvas (window->roll), "notify::visible",
                           G_CALLBACK (fit_roll), window, G_CONNECT_SWAPPED);
  g_signal_connect_object (window->bench, "notify::max-position", G_CALLBACK (on_bench), window,
                           G_CONNECT_SWAPPED);
  g_signal_connect_object (window->bench, "notify::position", G_CALLBACK (on_divider), window,
                           G_CONNECT_SWAPPED);
  g_signal_connect (window->seat_only, "notify::active", G_CALLBACK (on_only), window);
  g_signal_connect (window->pieces_only, "notify::active", G_CALLBACK (on_only), window);
  g_signal_connect_object (window->selection, "changed", G_CALLBACK (show_state), window,
                           G_CONNECT_SWAPPED);
  g_signal_connect_object (window->selection, "problem", G_CALLBACK (on_problem), window, 0);
  g_menu_append_section (window->recent_menu, NULL, sq_settings_recent_menu ());
  recall (window);
  show_state (window);
  gtk_widget_grab_focus (GTK_WIDGET (window->start_page));
}

SqWindow *
sq_window_new (GtkApplication *application)
{
  return g_object_new (SQ_TYPE_WINDOW, "application", application, NULL);
}
