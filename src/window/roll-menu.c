/* SPDX-License-Identifier: GPL-3.0-or-later */
/* The menu of the roll: what can be done with the chosen piece, and with the cloth. */
#include "window/roll-canvas-private.h"

#include "window/edit-laying.h"

#include <glib/gi18n.h>

static void
on_turn (GSimpleAction *action, GVariant *parameter, gpointer data)
{
  (void) action, (void) parameter;
  sq_roll_turn (data);
}

static void
on_pin (GSimpleAction *action, GVariant *parameter, gpointer data)
{
  (void) action, (void) parameter;
  sq_roll_toggle_pin (data);
}

static void
on_unpin_all (GSimpleAction *action, GVariant *parameter, gpointer data)
{
  SqRollCanvas *canvas = data;
  (void) action, (void) parameter;
  if (sq_roll_may_change (canvas))
    sq_edit_unpin_all (canvas->document, sq_roll_cloth_lay (canvas)->cloth);
}

static void
on_mark_flaw (GSimpleAction *action, GVariant *parameter, gpointer data)
{
  SqRollCanvas *canvas = data;
  (void) action, (void) parameter;
  sq_roll_mark_flaw (canvas, !canvas->is_marking);
  gtk_widget_grab_focus (GTK_WIDGET (canvas));
}

static void
on_remove_flaw (GSimpleAction *action, GVariant *parameter, gpointer data)
{
  (void) action, (void) parameter;
  sq_roll_remove_flaw (data);
}

/* --- what can be done ------------------------------------------------------------------------ */

static GSimpleAction *
action_of (SqRollCanvas *canvas, const char *name)
{
  return G_SIMPLE_ACTION (g_action_map_lookup_action (G_ACTION_MAP (canvas->actions), name));
}

static gboolean
has_pins (SqRollCanvas *canvas)
{
  const SqClothLay *cloth = sq_roll_cloth_lay (canvas);
  return cloth != NULL && cloth->task->pins->len + cloth->task->bad_pins->len > 0;
}

static gboolean
may_turn (SqRollCanvas *canvas)
{
  gint i = sq_roll_chosen (canvas);
  const SqClothLay *cloth = sq_roll_cloth_lay (canvas);
  return i >= 0
         && sq_lay_task_item (cloth->task, sq_lay_placed (cloth->lay, (guint) i)->item)->n_poses
                > 1;
}

void
sq_roll_show_actions (SqRollCanvas *canvas)
{
  gboolean may_change = sq_roll_may_change (canvas), has_cloth = sq_roll_cloth (canvas) != NULL;
  if (canvas->actions == NULL)
    return;
  g_simple_action_set_enabled (action_of (canvas, "turn"), may_change && may_turn (canvas));
  g_simple_action_set_enabled (action_of (canvas, "pin"),
                               may_change && sq_roll_chosen (canvas) >= 0);
  g_simple_action_set_state (action_of (canvas, "pin"),
                             g_variant_new_boolean (sq_roll_is_chosen_pinned (canvas)));
  g_simple_action_set_enabled (action_of (canvas, "unpin-all"), may_change && has_pins (canvas));
  g_simple_action_set_enabled (action_of (canvas, "mark-flaw"), may_change && has_cloth);
  g_simple_action_set_state (action_of (canvas, "mark-flaw"),
                             g_variant_new_boolean (canvas->is_marking));
  g_simple_action_set_enabled (action_of (canvas, "remove-flaw"),
                               may_change && canvas->chosen_flaw != 0);
}

GActionGroup *
sq_roll_canvas_get_actions (SqRollCanvas *canvas)
{
  g_return_val_if_fail (SQ_IS_ROLL_CANVAS (canvas), NULL);
  return G_ACTION_GROUP (canvas->actions);
}

/* --- the menu -------------------------------------------------------------------------------- */

static GMenuModel *
make_model (void)
{
  GMenu *menu = g_menu_new ();
  g_autoptr (GMenu) piece = g_menu_new ();
  g_autoptr (GMenu) cloth = g_menu_new ();
  g_menu_append (piece, _ ("_Turn"), "roll.turn");
  g_menu_append (piece, _ ("_Pinned here"), "roll.pin");
  g_menu_append (piece, _ ("_Unpin all"), "roll.unpin-all");
  g_menu_append (cloth, _ ("Mark a _flaw"), "roll.mark-flaw");
  g_menu_append (cloth, _ ("_Remove the flaw"), "roll.remove-flaw");
  g_menu_append_section (menu, NULL, G_MENU_MODEL (piece));
  g_menu_append_section (menu, NULL, G_MENU_MODEL (cloth));
  return G_MENU_MODEL (menu);
}

void
sq_roll_open_menu (SqRollCanvas *canvas, const SqPoint *at)
{
  GtkWidget *widget = GTK_WIDGET (canvas);
  GdkRectangle place = { gtk_widget_get_width (widget) / 2, gtk_widget_get_height (widget) / 3, 1,
                         1 };
  if (sq_roll_cloth_lay (canvas) == NULL)
    return;
  if (at != NULL)
    place = (GdkRectangle){ (int) at->x, (int) at->y, 1, 1 };
  sq_roll_show_actions (canvas);
  gtk_popover_set_pointing_to (GTK_POPOVER (canvas->menu), &place);
  gtk_popover_popup (GTK_POPOVER (canvas->menu));
}

static void
on_closed (GtkPopover *menu, SqRollCanvas *canvas)
{
  (void) menu;
  gtk_widget_grab_focus (GTK_WIDGET (canvas));
}

void
sq_roll_add_menu (SqRollCanvas *canvas)
{
  const GActionEntry entries[] = {
    { .name = "turn", .activate = on_turn },
    { .name = "pin", .activate = on_pin, .state = "false" },
    { .name = "unpin-all", .activate = on_unpin_all },
    { .name = "mark-flaw", .activate = on_mark_flaw, .state = "false" },
    { .name = "remove-flaw", .activate = on_remove_flaw },
  };
  g_autoptr (GMenuModel) model = make_model ();
  canvas->actions = g_simple_action_group_new ();
  g_action_map_add_action_entries (G_ACTION_MAP (canvas->actions), entries, G_N_ELEMENTS (entries),
                                   canvas);
  gtk_widget_insert_action_group (GTK_WIDGET (canvas), "roll", G_ACTION_GROUP (canvas->actions));
  canvas->menu = gtk_popover_menu_new_from_model (model);
  gtk_popover_set_has_arrow (GTK_POPOVER (canvas->menu), FALSE);
  gtk_widget_set_parent (canvas->menu, GTK_WIDGET (canvas));
  g_signal_connect (canvas->menu, "closed", G_CALLBACK (on_closed), canvas);
  sq_roll_show_actions (canvas);
}
