/* SPDX-License-Identifier: GPL-3.0-or-later */
/* The menu of the seat's canvas: what can be done with the chosen edge or corner. */
#include "window/seat-canvas-private.h"

#include "window/edit-hole.h"
#include "window/edit-place.h"
#include "window/edit-shape.h"
#include "window/hole-dialog.h"
#include "words/names.h"

#include <glib/gi18n.h>

static const struct
{
  const char *name;
  SqEdgeShape shape;
} shapes[] = {
  { "straight", SQ_SHAPE_STRAIGHT },
  { "arc", SQ_SHAPE_BOW },
  { "curve", SQ_SHAPE_CURVE },
};

/* The chosen edge, or (0) none. */
static SqId
edge_of (SqSeatCanvas *canvas)
{
  SqGrip chosen = sq_seat_chosen (canvas);
  return chosen.kind == SQ_GRIP_EDGE ? chosen.corner : 0;
}

static SqId
corner_of (SqSeatCanvas *canvas)
{
  SqGrip chosen = sq_seat_chosen (canvas);
  return chosen.kind == SQ_GRIP_CORNER ? chosen.corner : 0;
}

static const SqCorner *
values_of (SqSeatCanvas *canvas, SqId id, guint *ring)
{
  return sq_outline_corner (canvas->cover->cushion->outline, id, ring, NULL);
}

/* --- actions ------------------------------------------------------------------------------- */

static void
on_insert (GSimpleAction *action, GVariant *parameter, gpointer data)
{
  (void) action, (void) parameter;
  sq_seat_add_corner (data);
}

static void
on_remove (GSimpleAction *action, GVariant *parameter, gpointer data)
{
  (void) action, (void) parameter;
  sq_seat_remove_corner (data);
}

static void
on_sharp (GSimpleAction *action, GVariant *parameter, gpointer data)
{
  SqSeatCanvas *canvas = data;
  (void) action, (void) parameter;
  sq_edit_place_length (canvas->document, canvas->cover->cushion->id, corner_of (canvas),
                        SQ_PLACE_RADIUS, NULL);
}

static void
on_shape (GSimpleAction *action, GVariant *parameter, gpointer data)
{
  SqSeatCanvas *canvas = data;
  (void) action;
  for (guint i = 0; i < G_N_ELEMENTS (shapes); i++)
    if (g_str_equal (shapes[i].name, g_variant_get_string (parameter, NULL)))
      sq_edit_edge_shape (canvas->document, canvas->cover->cushion->id, edge_of (canvas),
                          shapes[i].shape);
}

static void
on_kind (GSimpleAction *action, GVariant *parameter, gpointer data)
{
  SqSeatCanvas *canvas = data;
  guint kind = (guint) g_variant_get_int32 (parameter);
  (void) action;
  sq_edit_edge_kind (canvas->document, canvas->cover->cushion->id, edge_of (canvas), &kind);
}

static void
on_build (GSimpleAction *action, GVariant *parameter, gpointer data)
{
  SqSeatCanvas *canvas = data;
  gint32 build = g_variant_get_int32 (parameter);
  guint given = (guint) build;
  (void) action;
  sq_edit_edge_build (canvas->document, canvas->cover->cushion->id, edge_of (canvas),
                      build >= 0 ? &given : NULL);
}

static void
on_front (GSimpleAction *action, GVariant *parameter, gpointer data)
{
  SqSeatCanvas *canvas = data;
  (void) action, (void) parameter;
  sq_edit_front (canvas->document, canvas->cover->cushion->id, edge_of (canvas));
}

/* At a place of the seat, x and y. */
static void
on_hole (GSimpleAction *action, GVariant *parameter, gpointer data)
{
  SqSeatCanvas *canvas = data;
  SqPoint at;
  (void) action;
  g_variant_get (parameter, "(dd)", &at.x, &at.y);
  sq_hole_dialog (GTK_WINDOW (gtk_widget_get_root (GTK_WIDGET (canvas))), canvas->document,
                  canvas->cover->cushion->id, &at);
}

static void
on_close_hole (GSimpleAction *action, GVariant *parameter, gpointer data)
{
  SqSeatCanvas *canvas = data;
  (void) action, (void) parameter;
  sq_edit_close_hole (canvas->document, canvas->cover->cushion->id, sq_seat_chosen (canvas).corner);
}

static GSimpleAction *
find (SqSeatCanvas *canvas, const char *name)
{
  GAction *action = g_action_map_lookup_action (G_ACTION_MAP (canvas->actions), name);
  return G_SIMPLE_ACTION (action);
}

/* How the side below @edge (NULL: none is chosen) is built, where the cover may have both. */
static void
show_build (SqSeatCanvas *canvas, const SqCorner *edge, guint ring)
{
  gboolean is_given = edge != NULL && (edge->given & SQ_GIVEN_EDGE_BUILD);
  SqBuild build = canvas->cover->build;
  g_simple_action_set_state (find (canvas, "build"),
                             g_variant_new_int32 (is_given ? (gint32) edge->build : -1));
  g_simple_action_set_enabled (find (canvas, "build"),
                               edge != NULL && ring == 0
                                   && (build == SQ_BUILD_BOXED || build == SQ_BUILD_FOLDED_CORNER));
}

/* What can be done now, and how the chosen edge is. */
static void
show_state (SqSeatCanvas *canvas)
{
  SqId edge = edge_of (canvas), corner = corner_of (canvas);
  guint ring = 0;
  const SqCorner *values = values_of (canvas, edge != 0 ? edge : corner, &ring);
  const char *shape = "";
  for (guint i = 0; edge != 0 && i < G_N_ELEMENTS (shapes); i++)
    if (shapes[i].shape == values->shape)
      shape = shapes[i].name;
  g_simple_action_set_state (find (canvas, "shape"), g_variant_new_string (shape));
  g_simple_action_set_state (find (canvas, "kind"),
                             g_variant_new_int32 (edge != 0 ? (gint32) values->kind : -1));
  g_simple_action_set_enabled (find (canvas, "insert"), edge != 0);
  g_simple_action_set_enabled (find (canvas, "shape"), edge != 0);
  g_simple_action_set_enabled (find (canvas, "kind"), edge != 0);
  show_build (canvas, edge != 0 ? values : NULL, ring);
  g_simple_action_set_enabled (find (canvas, "front"), edge != 0 && ring == 0 && !values->front);
  g_simple_action_set_enabled (find (canvas, "close-hole"), ring > 0);
  g_simple_action_set_enabled (find (canvas, "remove"), corner != 0);
  g_simple_action_set_enabled (find (canvas, "sharp"), corner != 0 && values->radius_mm > 0);
}

/* --- the menu ------------------------------------------------------------------------------ */

static void
append_kinds (GMenu *menu)
{
  g_autoptr (GMenu) kinds = g_menu_new ();
  for (gint32 i = 0; i < SQ_N_EDGE_KINDS; i++)
    {
      g_autoptr (GMenuItem) item = g_menu_item_new (sq_words_edge_kind ((SqEdgeKind) i), NULL);
      g_menu_item_set_action_and_target (item, "seat.kind", "i", i);
      g_menu_append_item (kinds, item);
    }
  g_menu_append_submenu (menu, _ ("What stan_ds there"), G_MENU_MODEL (kinds));
}

static void
append_builds (GMenu *menu)
{
  g_autoptr (GMenu) builds = g_menu_new ();
  const gint32 values[] = { -1, SQ_EDGE_FOLDED, SQ_EDGE_BOXED };
  for (guint i = 0; i < G_N_ELEMENTS (values); i++)
    {
      const char *name = values[i] < 0 ? _ ("Like the rest")
                                       : sq_words_edge_build ((SqEdgeBuild) values[i]);
      g_autoptr (GMenuItem) item = g_menu_item_new (name, NULL);
      g_menu_item_set_action_and_target (item, "seat.build", "i", values[i]);
      g_menu_append_item (builds, item);
    }
  g_menu_append_submenu (menu, _ ("S_ide"), G_MENU_MODEL (builds));
}

static void
append_close_hole (GMenu *menu)
{
  g_autoptr (GMenu) hole = g_menu_new ();
  g_menu_append (hole, _ ("Take the _hole away"), "seat.close-hole");
  g_menu_append_section (menu, NULL, G_MENU_MODEL (hole));
}

static GMenuModel *
edge_model (void)
{
  GMenu *menu = g_menu_new ();
  g_autoptr (GMenu) run = g_menu_new ();
  g_autoptr (GMenu) edge = g_menu_new ();
  g_menu_append (run, _ ("_Straight"), "seat.shape::straight");
  g_menu_append (run, _ ("_Arc"), "seat.shape::arc");
  g_menu_append (run, _ ("Free _curve"), "seat.shape::curve");
  g_menu_append (edge, _ ("_New corner"), "seat.insert");
  g_menu_append (edge, _ ("This is the _front"), "seat.front");
  append_kinds (edge);
  append_builds (edge);
  g_menu_append_section (menu, NULL, G_MENU_MODEL (run));
  g_menu_append_section (menu, NULL, G_MENU_MODEL (edge));
  append_close_hole (menu);
  return G_MENU_MODEL (menu);
}

static GMenuModel *
corner_model (void)
{
  GMenu *menu = g_menu_new ();
  g_menu_append (menu, _ ("_Remove corner"), "seat.remove");
  g_menu_append (menu, _ ("N_o rounding"), "seat.sharp");
  append_close_hole (menu);
  return G_MENU_MODEL (menu);
}

/* Of the seat at @at, where nothing is chosen. */
static GMenuModel *
seat_model (SqPoint at)
{
  GMenu *menu = g_menu_new ();
  g_autoptr (GMenuItem) hole = g_menu_item_new (_ ("Cut a _hole here…"), NULL);
  g_menu_item_set_action_and_target (hole, "seat.hole", "(dd)", at.x, at.y);
  g_menu_append_item (menu, hole);
  return G_MENU_MODEL (menu);
}

void
sq_seat_open_menu (SqSeatCanvas *canvas, const SqPoint *at)
{
  SqGrip chosen = sq_seat_chosen (canvas);
  g_autoptr (GMenuModel) model = NULL;
  SqPoint place;
  if (canvas->cover == NULL)
    return;
  if (!sq_grip_place (canvas->cover->cushion->outline, chosen, &place))
    {
      if (at == NULL)
        return;
      model = seat_model (sq_view_to_mm (sq_canvas_get_view (SQ_CANVAS (canvas)), *at));
    }
  else
    {
      show_state (canvas);
      model = chosen.kind == SQ_GRIP_EDGE ? edge_model () : corner_model ();
    }
  place = at != NULL ? *at : sq_view_to_device (sq_canvas_get_view (SQ_CANVAS (canvas)), place);
  gtk_popover_menu_set_menu_model (GTK_POPOVER_MENU (canvas->menu), model);
  gtk_popover_set_pointing_to (GTK_POPOVER (canvas->menu),
                               &(GdkRectangle){ (int) place.x, (int) place.y, 1, 1 });
  gtk_popover_popup (GTK_POPOVER (canvas->menu));
}

static void
on_closed (GtkPopover *menu, SqSeatCanvas *canvas)
{
  (void) menu;
  gtk_widget_grab_focus (GTK_WIDGET (canvas));
}

/* What is there is chosen, so that the menu is about it. */
static void
on_secondary (GtkGestureClick *click, int n_press, double x, double y, SqSeatCanvas *canvas)
{
  SqPoint at = sq_point (x, y);
  (void) click, (void) n_press;
  if (canvas->cover == NULL || sq_canvas_is_dragging (SQ_CANVAS (canvas)))
    return;
  sq_seat_choose (canvas, sq_seat_grip_at (canvas, at));
  sq_seat_open_menu (canvas, &at);
}

void
sq_seat_add_menu (SqSeatCanvas *canvas)
{
  const GActionEntry entries[] = {
    { .name = "insert", .activate = on_insert },
    { .name = "remove", .activate = on_remove },
    { .name = "sharp", .activate = on_sharp },
    { .name = "front", .activate = on_front },
    { .name = "close-hole", .activate = on_close_hole },
    { .name = "hole", .activate = on_hole, .parameter_type = "(dd)" },
    { .name = "shape", .activate = on_shape, .parameter_type = "s", .state = "''" },
    { .name = "kind", .activate = on_kind, .parameter_type = "i", .state = "-1" },
    { .name = "build", .activate = on_build, .parameter_type = "i", .state = "-1" },
  };
  GtkGesture *click = gtk_gesture_click_new ();
  canvas->actions = g_simple_action_group_new ();
  g_action_map_add_action_entries (G_ACTION_MAP (canvas->actions), entries, G_N_ELEMENTS (entries),
                                   canvas);
  gtk_widget_insert_action_group (GTK_WIDGET (canvas), "seat", G_ACTION_GROUP (canvas->actions));
  canvas->menu = gtk_popover_menu_new_from_model (NULL);
  gtk_popover_set_has_arrow (GTK_POPOVER (canvas->menu), FALSE);
  gtk_widget_set_parent (canvas->menu, GTK_WIDGET (canvas));
  g_signal_connect (canvas->menu, "closed", G_CALLBACK (on_closed), canvas);
  gtk_gesture_single_set_button (GTK_GESTURE_SINGLE (click), GDK_BUTTON_SECONDARY);
  g_signal_connect (click, "pressed", G_CALLBACK (on_secondary), canvas);
  gtk_widget_add_controller (GTK_WIDGET (canvas), GTK_EVENT_CONTROLLER (click));
}
