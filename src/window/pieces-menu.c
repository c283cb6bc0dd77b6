/* SPDX-License-Identifier: GPL-3.0-or-later */
/* The menu of the pieces' canvas: what can be done with the chosen piece or seam and the stripes. */
#include "window/pieces-canvas-private.h"

#include "window/edit-stripes.h"
#include "window/edits.h"

#include <glib/gi18n.h>

static const struct
{
  const char *name;
  SqCentreOn centre_on;
} centres[] = {
  { "stripe", SQ_CENTRE_STRIPE },
  { "gap", SQ_CENTRE_GAP },
  { "none", SQ_CENTRE_NONE },
};

static gboolean
has_stripes (SqPiecesCanvas *canvas)
{
  return canvas->cover != NULL
         && sq_stripes_cloth (sq_document_get_job (canvas->document), canvas->cover) != NULL;
}

/* The edge that the chosen seam runs along most; 0: none, or the cover has no boxing. */
static SqId
edge_of_seam (SqPiecesCanvas *canvas)
{
  gint i = sq_pieces_chosen_seam (canvas);
  const SqSeam *seam = i >= 0 ? sq_cover_seam (canvas->cover, (guint) i) : NULL;
  double longest = 0;
  SqId found = 0;
  if (seam == NULL || seam->kind != SQ_SEAM_PERIMETER || canvas->cover->build != SQ_BUILD_BOXED)
    return 0;
  for (guint k = 0; k < seam->a.n_runs; k++)
    {
      const SqRun *run = sq_piece_run (sq_cover_piece (canvas->cover, seam->a.piece),
                                       sq_side_run (canvas->cover, &seam->a, k));
      if (run->edge == 0 || run->length_mm <= longest)
        continue;
      longest = run->length_mm;
      found = run->edge;
    }
  return found;
}

/* What is wrong at the chosen piece or seam; NULL: nothing. */
static const SqProblem *
problem_of (SqPiecesCanvas *canvas)
{
  const SqPlace *place = canvas->cover != NULL ? sq_selection_place (canvas->selection) : NULL;
  for (guint i = 0; place != NULL && i < canvas->cover->problems->len; i++)
    {
      const SqPlace *own = &sq_cover_problem (canvas->cover, i)->place;
      if (own->kind == place->kind && own->item == place->item)
        return sq_cover_problem (canvas->cover, i);
    }
  return NULL;
}

/* --- actions ------------------------------------------------------------------------------- */

static void
on_turn (GSimpleAction *action, GVariant *parameter, gpointer data)
{
  SqPiecesCanvas *canvas = data;
  (void) action, (void) parameter;
  if (has_stripes (canvas))
    sq_edit_turn_stripes (canvas->document, canvas->cover);
}

static void
on_centre (GSimpleAction *action, GVariant *parameter, gpointer data)
{
  SqPiecesCanvas *canvas = data;
  (void) action;
  for (guint i = 0; i < G_N_ELEMENTS (centres); i++)
    if (has_stripes (canvas)
        && g_str_equal (centres[i].name, g_variant_get_string (parameter, NULL)))
      sq_edit_centre_stripes (canvas->document, canvas->cover, centres[i].centre_on);
}

static void
on_zip_here (GSimpleAction *action, GVariant *parameter, gpointer data)
{
  SqPiecesCanvas *canvas = data;
  SqId edge = edge_of_seam (canvas);
  (void) action, (void) parameter;
  if (edge != 0)
    sq_edit_zip_on_edge (canvas->document, canvas->cover->cushion->id, edge);
}

static void
on_problem (GSimpleAction *action, GVariant *parameter, gpointer data)
{
  SqPiecesCanvas *canvas = data;
  const SqProblem *problem = problem_of (canvas);
  (void) action, (void) parameter;
  if (problem != NULL)
    sq_selection_show_problem (canvas->selection, &problem->place);
}

static void
enable (SqPiecesCanvas *canvas, const char *name, gboolean enabled)
{
  GAction *action = g_action_map_lookup_action (G_ACTION_MAP (canvas->actions), name);
  g_simple_action_set_enabled (G_SIMPLE_ACTION (action), enabled);
}

/* What can be done now, and what the stripes are centred on. */
static void
show_state (SqPiecesCanvas *canvas)
{
  GAction *action = g_action_map_lookup_action (G_ACTION_MAP (canvas->actions), "centre");
  const char *now = "";
  gboolean striped = has_stripes (canvas);
  if (striped)
    for (guint i = 0; i < G_N_ELEMENTS (centres); i++)
      if (centres[i].centre_on
          == sq_stripes_centre_on (sq_document_get_job (canvas->document), canvas->cover))
        now = centres[i].name;
  g_simple_action_set_state (G_SIMPLE_ACTION (action), g_variant_new_string (now));
  enable (canvas, "centre", striped);
  enable (canvas, "turn", striped);
  enable (canvas, "zip-here", edge_of_seam (canvas) != 0);
  enable (canvas, "problem", problem_of (canvas) != NULL);
}

/* --- the menu ------------------------------------------------------------------------------ */

static GMenuModel *
make_model (void)
{
  GMenu *menu = g_menu_new ();
  g_autoptr (GMenu) stripes = g_menu_new ();
  g_autoptr (GMenu) others = g_menu_new ();
  g_menu_append (stripes, _ ("_Turn the stripes"), "pieces.turn");
  g_menu_append (stripes, _ ("Centre on a _stripe"), "pieces.centre::stripe");
  g_menu_append (stripes, _ ("Centre on a _gap"), "pieces.centre::gap");
  g_menu_append (stripes, _ ("Centre on _nothing"), "pieces.centre::none");
  g_menu_append (others, _ ("_Zip on this edge"), "pieces.zip-here");
  g_menu_append (others, _ ("Go to the _problem"), "pieces.problem");
  g_menu_append_section (menu, NULL, G_MENU_MODEL (stripes));
  g_menu_append_section (menu, NULL, G_MENU_MODEL (others));
  return G_MENU_MODEL (menu);
}

void
sq_pieces_open_menu (SqPiecesCanvas *canvas, const SqPoint *at)
{
  GtkWidget *widget = GTK_WIDGET (canvas);
  GdkRectangle place = { gtk_widget_get_width (widget) / 2, gtk_widget_get_height (widget) / 3, 1,
                         1 };
  if (canvas->cover == NULL)
    return;
  if (at != NULL)
    place = (GdkRectangle){ (int) at->x, (int) at->y, 1, 1 };
  show_state (canvas);
  gtk_popover_set_pointing_to (GTK_POPOVER (canvas->menu), &place);
  gtk_popover_popup (GTK_POPOVER (canvas->menu));
}

static void
on_closed (GtkPopover *menu, SqPiecesCanvas *canvas)
{
  (void) menu;
  gtk_widget_grab_focus (GTK_WIDGET (canvas));
}

void
sq_pieces_add_menu (SqPiecesCanvas *canvas)
{
  const GActionEntry entries[] = {
    { .name = "turn", .activate = on_turn },
    { .name = "centre", .activate = on_centre, .parameter_type = "s", .state = "''" },
    { .name = "zip-here", .activate = on_zip_here },
    { .name = "problem", .activate = on_problem },
  };
  g_autoptr (GMenuModel) model = make_model ();
  canvas->actions = g_simple_action_group_new ();
  g_action_map_add_action_entries (G_ACTION_MAP (canvas->actions), entries, G_N_ELEMENTS (entries),
                                   canvas);
  gtk_widget_insert_action_group (GTK_WIDGET (canvas), "pieces", G_ACTION_GROUP (canvas->actions));
  canvas->menu = gtk_popover_menu_new_from_model (model);
  gtk_popover_set_has_arrow (GTK_POPOVER (canvas->menu), FALSE);
  gtk_widget_set_parent (canvas->menu, GTK_WIDGET (canvas));
  g_signal_connect (canvas->menu, "closed", G_CALLBACK (on_closed), canvas);
}
