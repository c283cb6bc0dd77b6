/* SPDX-License-Identifier: GPL-3.0-or-later */
/* The switch that edits both sides of a seat alike, and the offer to make them so. */
#include "window/window-private.h"

#include "window/edit-symmetry.h"

#include <glib/gi18n.h>

/* While the seat isn't alike on both sides only twins follow each other: a bar says so. */
static void
show_offer (SqWindow *window)
{
  SqId cushion = sq_selection_cushion (window->selection);
  gboolean is_on = window->document != NULL && sq_document_is_symmetric (window->document);
  gtk_revealer_set_reveal_child (GTK_REVEALER (window->symmetry_offer),
                                 is_on && cushion != 0 && !window->is_offer_declined
                                     && !sq_edit_is_symmetric (window->document, cushion));
}

static void
on_switch (GSimpleAction *action, GVariant *state, gpointer data)
{
  SqWindow *window = data;
  if (window->document == NULL)
    return;
  g_simple_action_set_state (action, state);
  window->is_offer_declined = FALSE;
  gtk_label_set_text (GTK_LABEL (window->symmetry_words),
                      _ ("This seat isn’t alike on both sides yet. Make both as its"));
  sq_document_set_symmetric (window->document, g_variant_get_boolean (state));
  show_offer (window);
  gtk_widget_queue_draw (GTK_WIDGET (window->seat));
}

static void
make (SqWindow *window, gboolean from_left)
{
  SqId cushion = sq_selection_cushion (window->selection);
  if (window->document == NULL || cushion == 0)
    return;
  if (!sq_edit_make_symmetric (window->document, cushion, from_left))
    gtk_label_set_text (GTK_LABEL (window->symmetry_words),
                        _ ("That half can’t be mirrored: it crosses the middle too often."));
  gtk_widget_grab_focus (GTK_WIDGET (window->seat));
}

static void
on_left (GSimpleAction *action, GVariant *parameter, gpointer window)
{
  (void) action, (void) parameter;
  make (window, TRUE);
}

static void
on_right (GSimpleAction *action, GVariant *parameter, gpointer window)
{
  (void) action, (void) parameter;
  make (window, FALSE);
}

static void
on_decline (GSimpleAction *action, GVariant *parameter, gpointer data)
{
  SqWindow *window = data;
  (void) action, (void) parameter;
  window->is_offer_declined = TRUE;
  show_offer (window);
  gtk_widget_grab_focus (GTK_WIDGET (window->seat));
}

void
sq_window_add_symmetry_actions (SqWindow *window)
{
  const GActionEntry entries[] = {
    { .name = "symmetric", .state = "false", .change_state = on_switch },
    { .name = "symmetric-from-left", .activate = on_left },
    { .name = "symmetric-from-right", .activate = on_right },
    { .name = "symmetric-decline", .activate = on_decline },
  };
  g_action_map_add_action_entries (G_ACTION_MAP (window), entries, G_N_ELEMENTS (entries), window);
  g_signal_connect_object (window->selection, "changed", G_CALLBACK (show_offer), window,
                           G_CONNECT_SWAPPED);
}

void
sq_window_follow_symmetry (SqWindow *window)
{
  g_signal_connect_object (window->document, "changed", G_CALLBACK (show_offer), window,
                           G_CONNECT_SWAPPED);
}
