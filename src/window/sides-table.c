/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "window/sides-table.h"

#include "drawing/seat-drawn.h"
#include "window/closing-words.h"
#include "window/edit-place.h"
#include "window/figures.h"
#include "window/look.h"
#include "window/side-cell.h"
#include "window/side-figures.h"
#include "words/lengths.h"
#include "words/names.h"
#include "words/piece-names.h"

#include <glib/gi18n.h>

/* No higher than this: the seat has to be seen (pixels). */
#define MOST_HEIGHT 190

enum
{
  COLUMN_NAME,
  COLUMN_LENGTH,
  COLUMN_RISE,
  COLUMN_KIND,
  COLUMN_ANGLE,
  COLUMN_RADIUS,
  N_COLUMNS,
};

typedef struct
{
  SqId corner;
  GtkWidget *cells[N_COLUMNS];
} Row;

struct _SqSidesTable
{
  GtkWidget parent;
  SqDocument *document;
  SqSelection *selection;
  GtkWidget *seat; /* borrowed */
  GtkWidget *box, *grid, *note, *sums, *closing, *offer, *dismiss;
  GArray *rows;         /* of Row … */
  SqId rows_of;         /* … and their cushion */
  gboolean is_showing;  /* changes now are not the user's */
  double taped_mm;      /* the closing side as it was typed; 0: it wasn't … */
  SqId taped, taped_on; /* … it, and its cushion */
};

G_DEFINE_TYPE (SqSidesTable, sq_sides_table, GTK_TYPE_WIDGET)

static const SqCushion *
cushion_of (SqSidesTable *table)
{
  return table->document != NULL ? sq_job_cushion (sq_document_get_job (table->document),
                                                   sq_selection_cushion (table->selection))
                                 : NULL;
}

static SqMeasure
measure_of (int column)
{
  return column == COLUMN_LENGTH  ? SQ_MEASURE_LENGTH
         : column == COLUMN_RISE  ? SQ_MEASURE_RISE
         : column == COLUMN_ANGLE ? SQ_MEASURE_ANGLE
                                  : SQ_MEASURE_RADIUS;
}

/* Where @cell is. */
static void
find_cell (SqSidesTable *table, GtkWidget *cell, guint *row, int *column)
{
  for (*row = 0; *row < table->rows->len; (*row)++)
    for (*column = 1; *column < N_COLUMNS; (*column)++)
      if (g_array_index (table->rows, Row, *row).cells[*column] == cell)
        return;
}

static int
row_of (SqSidesTable *table, SqId corner)
{
  for (guint i = 0; i < table->rows->len; i++)
    if (g_array_index (table->rows, Row, i).corner == corner)
      return (int) i;
  return -1;
}

/* The row of what is chosen; −1: none. */
static int
chosen_row (SqSidesTable *table)
{
  SqId edge = sq_selection_item (table->selection, SQ_AT_EDGE);
  return row_of (table, edge != 0 ? edge : sq_selection_item (table->selection, SQ_AT_CORNER));
}

/* --- what is wrong ------------------------------------------------------------------------- */

/* Below the row; NULL: nothing is. */
static void
say (SqSidesTable *table, guint row, const char *mistake)
{
  if (gtk_widget_get_parent (table->note) != NULL)
    gtk_grid_remove (GTK_GRID (table->grid), table->note);
  gtk_label_set_text (GTK_LABEL (table->note), mistake != NULL ? mistake : "");
  if (mistake != NULL)
    gtk_grid_attach (GTK_GRID (table->grid), table->note, 0, 2 * (int) row + 2, N_COLUMNS, 1);
}

static void
say_at (SqSidesTable *table, GtkWidget *cell, guint row, const char *mistake)
{
  say (table, row, mistake);
  if (mistake != NULL)
    gtk_widget_add_css_class (cell, "error");
  else
    gtk_widget_remove_css_class (cell, "error");
  gtk_accessible_update_state (
      GTK_ACCESSIBLE (cell), GTK_ACCESSIBLE_STATE_INVALID,
      mistake != NULL ? GTK_ACCESSIBLE_INVALID_TRUE : GTK_ACCESSIBLE_INVALID_FALSE, -1);
  gtk_accessible_update_property (GTK_ACCESSIBLE (cell), GTK_ACCESSIBLE_PROPERTY_DESCRIPTION,
                                  mistake != NULL ? mistake : "", -1);
}

/* --- the foot ------------------------------------------------------------------------------ */

/* The side that closes the outer ring; 0: there is none. */
static SqId
closing_edge (const SqOutline *outline)
{
  guint n = 0;
  const SqCorner *corners;
  if (sq_outline_n_rings (outline) == 0)
    return 0;
  corners = sq_outline_ring (outline, 0, &n);
  return n >= 3 ? corners[(sq_walk_start (outline, 0) + n - 1) % n].id : 0;
}

static void
show_sums (SqSidesTable *table, const SqCushion *cushion)
{
  SqLengthStyle style = sq_figures_style (sq_document_get_job (table->document));
  g_autoptr (SqPath) ring = sq_seat_ring (cushion->outline, 0);
  g_autofree char *around = NULL, *area = NULL, *words = NULL;
  if (ring == NULL)
    return;
  around = sq_words_length (sq_path_length_mm (ring), &style);
  area = sq_words_area (fabs (sq_path_area_mm2 (ring)), &style);
  /* Translators: a seat's perimeter and its area. */
  words = g_strdup_printf (_ ("Around %s  ·  area %s"), around, area);
  sq_look_set_label (GTK_LABEL (table->sums), words);
}

static void
forget_taped (SqSidesTable *table)
{
  table->taped_mm = 0;
}

static void
show_closing (SqSidesTable *table, const SqCushion *cushion)
{
  const SqJob *job = sq_document_get_job (table->document);
  SqId edge = closing_edge (cushion->outline);
  gboolean is_off = FALSE;
  g_autofree char *words = NULL, *offer = NULL, *taped = NULL;
  SqLengthStyle style = sq_figures_style (job);
  if (table->taped != edge || table->taped_on != cushion->id)
    forget_taped (table);
  if (edge != 0)
    words = sq_closing_words (job, cushion, edge, table->taped_mm, &is_off);
  sq_look_set_label (GTK_LABEL (table->closing), words != NULL ? words : "");
  gtk_widget_set_visible (table->offer, is_off);
  gtk_widget_set_visible (table->dismiss, is_off);
  if (!is_off)
    return;
  taped = sq_length_format (table->taped_mm, &style);
  /* Translators: %s is the length of a side as it was taped. */
  offer = g_strdup_printf (_ ("Make it %s"), taped);
  gtk_button_set_label (GTK_BUTTON (table->offer), offer);
  sq_look_set_label (GTK_LABEL (gtk_button_get_child (GTK_BUTTON (table->offer))), offer);
}

static void
on_offer (SqSidesTable *table)
{
  const SqCushion *cushion = cushion_of (table);
  SqSidesResult result;
  int row = row_of (table, table->taped);
  if (cushion == NULL || row < 0)
    return;
  result = sq_edit_side_length (table->document, cushion->id, table->taped, table->taped_mm,
                                SQ_STAYS_END);
  say (table, (guint) row, result != SQ_SIDES_FINE ? sq_words_sides_result (result) : NULL);
}

static void
on_dismiss (SqSidesTable *table)
{
  forget_taped (table);
  show_closing (table, cushion_of (table));
  gtk_widget_grab_focus (g_array_index (table->rows, Row, 0).cells[COLUMN_LENGTH]);
}

/* --- edits --------------------------------------------------------------------------------- */

/* What closes the seat follows from the other sides: a taped length is compared, nothing bends. */
static const char *
give_closing (SqSidesTable *table, const SqCushion *cushion, const char *text)
{
  SqLengthStyle style = sq_figures_style (sq_document_get_job (table->document));
  double mm;
  SqLengthResult result = sq_length_parse (text, style.unit, style.decimal, &mm, NULL);
  if (result != SQ_LENGTH_OK)
    return sq_figures_mistake (result);
  if (mm <= 0)
    return sq_words_sides_result (SQ_SIDES_NOT_POSITIVE);
  table->taped_mm = mm;
  table->taped = closing_edge (cushion->outline);
  table->taped_on = cushion->id;
  show_closing (table, cushion);
  return NULL;
}

static gboolean
is_as_shown (SqSidesTable *table, const SqCushion *cushion, const SqSideFigure *figure,
             const char *text)
{
  g_autofree char *shown = sq_side_figure_text (sq_document_get_job (table->document), cushion,
                                                figure);
  return g_strcmp0 (text, shown) == 0;
}

static gboolean
on_given (GtkWidget *cell, const char *text, SqSidesTable *table)
{
  const SqCushion *cushion = cushion_of (table);
  const char *mistake;
  guint row;
  int column;
  if (table->is_showing || cushion == NULL)
    return TRUE;
  find_cell (table, cell, &row, &column);
  SqSideFigure figure = { measure_of (column), g_array_index (table->rows, Row, row).corner };
  if (sq_outline_corner (cushion->outline, figure.corner, NULL, NULL) == NULL)
    return TRUE; /* the row goes, and the keyboard leaves it with a figure half typed */
  if (column == COLUMN_LENGTH && figure.corner == closing_edge (cushion->outline))
    mistake = give_closing (table, cushion, text);
  else if (is_as_shown (table, cushion, &figure, text))
    mistake = NULL;
  else
    mistake = sq_side_figure_give (table->document, cushion->id, &figure,
                                   sq_walk_usual_stays (cushion->outline, &figure), text);
  say_at (table, cell, row, mistake);
  return mistake == NULL;
}

/* What is typed anew, or put back, is wrong no more. */
static void
on_cell_changed (GtkWidget *cell, SqSidesTable *table)
{
  guint row;
  int column;
  if (!gtk_widget_has_css_class (cell, "error"))
    return;
  find_cell (table, cell, &row, &column);
  say_at (table, cell, row, NULL);
}

static void
on_kind (GtkDropDown *menu, GParamSpec *spec, SqSidesTable *table)
{
  guint kind = gtk_drop_down_get_selected (menu), row;
  int column;
  (void) spec;
  if (table->is_showing || cushion_of (table) == NULL || kind >= SQ_N_EDGE_KINDS)
    return;
  find_cell (table, GTK_WIDGET (menu), &row, &column);
  sq_edit_edge_kind (table->document, cushion_of (table)->id,
                     g_array_index (table->rows, Row, row).corner, &kind);
}

/* --- moving about -------------------------------------------------------------------------- */

static void
go (GtkWidget *cell, int columns, int rows, gpointer data)
{
  SqSidesTable *table = data;
  guint row;
  int column;
  find_cell (table, cell, &row, &column);
  column = CLAMP (column + columns, COLUMN_LENGTH, COLUMN_RADIUS);
  row = (guint) CLAMP ((int) row + rows, 0, (int) table->rows->len - 1);
  gtk_widget_grab_focus (g_array_index (table->rows, Row, row).cells[column]);
}

static void
on_left (SqSidesTable *table)
{
  gtk_widget_grab_focus (table->seat);
}

/* The side, or corner, of the cell that the keyboard comes to is chosen on the seat too. */
static void
on_enter (GtkEventController *controller, SqSidesTable *table)
{
  GtkWidget *cell = gtk_event_controller_get_widget (controller);
  guint row;
  int column;
  if (table->is_showing || cushion_of (table) == NULL)
    return;
  find_cell (table, cell, &row, &column);
  sq_selection_choose_part (table->selection,
                            column == COLUMN_ANGLE || column == COLUMN_RADIUS ? SQ_AT_CORNER
                                                                              : SQ_AT_EDGE,
                            g_array_index (table->rows, Row, row).corner);
}

/* --- rows ---------------------------------------------------------------------------------- */

/* Names a cell, and lets the keyboard's coming be known. */
static void
prepare_cell (SqSidesTable *table, GtkWidget *cell, const char *pattern, const char *name)
{
  g_autofree char *label = g_strdup_printf (pattern, name);
  GtkEventController *focus = gtk_event_controller_focus_new ();
  g_signal_connect (focus, "enter", G_CALLBACK (on_enter), table);
  gtk_widget_add_controller (cell, focus);
  gtk_accessible_update_property (GTK_ACCESSIBLE (cell), GTK_ACCESSIBLE_PROPERTY_LABEL, label, -1);
}

static GtkWidget *
new_cell (SqSidesTable *table, int width_chars, const char *pattern, const char *name)
{
  GtkWidget *cell = sq_side_cell_new (width_chars);
  g_signal_connect (cell, "given", G_CALLBACK (on_given), table);
  g_signal_connect (cell, "changed", G_CALLBACK (on_cell_changed), table);
  g_signal_connect (cell, "go", G_CALLBACK (go), table);
  g_signal_connect_swapped (cell, "left", G_CALLBACK (on_left), table);
  prepare_cell (table, cell, pattern, name);
  return cell;
}

static GtkWidget *
new_kind (SqSidesTable *table, const char *name)
{
  g_autoptr (GtkStringList) kinds = gtk_string_list_new (NULL);
  GtkWidget *menu;
  for (guint i = 0; i < SQ_N_EDGE_KINDS; i++)
    gtk_string_list_append (kinds, sq_words_edge_kind ((SqEdgeKind) i));
  menu = gtk_drop_down_new (G_LIST_MODEL (g_steal_pointer (&kinds)), NULL);
  g_signal_connect (menu, "notify::selected", G_CALLBACK (on_kind), table);
  sq_side_cell_add_arrows (menu, go, table);
  prepare_cell (table, menu, _ ("%s, what stands there"), name);
  return menu;
}

static void
add_row (SqSidesTable *table, const SqCushion *cushion, SqId corner)
{
  g_autofree char *side = sq_words_edge_corners (cushion, corner);
  g_autofree char *letter = sq_words_corner (cushion, corner);
  Row row = { .corner = corner };
  row.cells[COLUMN_NAME] = gtk_label_new (side);
  gtk_label_set_xalign (GTK_LABEL (row.cells[COLUMN_NAME]), 0);
  gtk_widget_add_css_class (row.cells[COLUMN_NAME], "side-name");
  row.cells[COLUMN_LENGTH] = new_cell (table, 6, _ ("%s, length"), side);
  row.cells[COLUMN_RISE] = new_cell (table, 4, _ ("%s, rise"), side);
  row.cells[COLUMN_KIND] = new_kind (table, side);
  row.cells[COLUMN_ANGLE] = new_cell (table, 6, _ ("%s, angle"), letter);
  row.cells[COLUMN_RADIUS] = new_cell (table, 4, _ ("%s, radius"), letter);
  for (int i = 0; i < N_COLUMNS; i++)
    gtk_grid_attach (GTK_GRID (table->grid), row.cells[i], i, 2 * (int) table->rows->len + 1, 1, 1);
  g_array_append_val (table->rows, row);
}

static void
clear_rows (SqSidesTable *table)
{
  say (table, 0, NULL);
  for (guint i = 0; i < table->rows->len; i++)
    for (int column = 0; column < N_COLUMNS; column++)
      gtk_grid_remove (GTK_GRID (table->grid), g_array_index (table->rows, Row, i).cells[column]);
  g_array_set_size (table->rows, 0);
}

/* The corners in the order of the walk. */
static GArray *
walk_of (const SqOutline *outline)
{
  GArray *walk = g_array_new (FALSE, FALSE, sizeof (SqId));
  for (guint ring = 0; ring < sq_outline_n_rings (outline); ring++)
    {
      guint n, start = sq_walk_start (outline, ring);
      const SqCorner *corners = sq_outline_ring (outline, ring, &n);
      for (guint k = 0; k < n; k++)
        g_array_append_val (walk, corners[(start + k) % n].id);
    }
  return walk;
}

/* A row for each side; those that are there stay, and with them the keyboard. */
static void
make_rows (SqSidesTable *table, const SqCushion *cushion)
{
  g_autoptr (GArray) walk = walk_of (cushion->outline);
  gboolean is_same = walk->len == table->rows->len && table->rows_of == cushion->id;
  for (guint i = 0; is_same && i < walk->len; i++)
    is_same = g_array_index (table->rows, Row, i).corner == g_array_index (walk, SqId, i);
  if (is_same)
    return;
  clear_rows (table);
  table->rows_of = cushion->id;
  for (guint i = 0; i < walk->len; i++)
    add_row (table, cushion, g_array_index (walk, SqId, i));
}

static void
set_class (GtkWidget *widget, const char *css_class, gboolean is_set)
{
  if (is_set)
    gtk_widget_add_css_class (widget, css_class);
  else
    gtk_widget_remove_css_class (widget, css_class);
}

static void
show_row (SqSidesTable *table, const SqCushion *cushion, const Row *row, gboolean is_chosen)
{
  const SqJob *job = sq_document_get_job (table->document);
  const SqCorner *corner = sq_outline_corner (cushion->outline, row->corner, NULL, NULL);
  for (int column = COLUMN_LENGTH; column < N_COLUMNS; column++)
    {
      SqSideFigure figure = { measure_of (column), row->corner };
      g_autofree char *text = column != COLUMN_KIND ? sq_side_figure_text (job, cushion, &figure)
                                                    : NULL;
      if (text != NULL)
        sq_side_cell_show (SQ_SIDE_CELL (row->cells[column]), text);
    }
  gtk_widget_set_sensitive (row->cells[COLUMN_RISE], corner->shape != SQ_SHAPE_CURVE);
  set_class (row->cells[COLUMN_RISE], "usual", corner->shape == SQ_SHAPE_STRAIGHT);
  set_class (row->cells[COLUMN_RADIUS], "usual", corner->radius_mm <= 0);
  set_class (row->cells[COLUMN_LENGTH], "usual", row->corner == closing_edge (cushion->outline));
  gtk_drop_down_set_selected (GTK_DROP_DOWN (row->cells[COLUMN_KIND]), corner->kind);
  set_class (row->cells[COLUMN_NAME], "chosen", is_chosen);
}

static void
follow (SqSidesTable *table)
{
  const SqCushion *cushion = cushion_of (table);
  int chosen;
  gtk_widget_set_visible (table->box, cushion != NULL);
  if (cushion == NULL || !gtk_widget_get_visible (GTK_WIDGET (table)))
    return;
  table->is_showing = TRUE;
  make_rows (table, cushion);
  chosen = chosen_row (table);
  for (guint i = 0; i < table->rows->len; i++)
    show_row (table, cushion, &g_array_index (table->rows, Row, i), (int) i == chosen);
  table->is_showing = FALSE;
  show_sums (table, cushion);
  show_closing (table, cushion);
}

/* Opened by the user, it has the keyboard; closed, the seat has. */
static void
on_visible (SqSidesTable *table)
{
  int row;
  if (table->document == NULL)
    return;
  follow (table);
  if (!gtk_widget_get_visible (GTK_WIDGET (table)))
    gtk_widget_grab_focus (table->seat);
  else if (table->rows->len > 0)
    {
      row = MAX (chosen_row (table), 0);
      gtk_widget_grab_focus (g_array_index (table->rows, Row, (guint) row).cells[COLUMN_LENGTH]);
    }
}

static void
leave (SqSidesTable *table)
{
  if (table->document != NULL)
    g_signal_handlers_disconnect_by_data (table->document, table);
  if (table->selection != NULL)
    g_signal_handlers_disconnect_by_data (table->selection, table);
}

void
sq_sides_table_set_document (SqSidesTable *table, SqDocument *document, SqSelection *selection,
                             GtkWidget *seat)
{
  g_return_if_fail (SQ_IS_SIDES_TABLE (table));
  leave (table);
  g_set_object (&table->document, document);
  g_set_object (&table->selection, selection);
  table->seat = seat;
  if (document != NULL)
    {
      g_signal_connect_swapped (document, "changed", G_CALLBACK (follow), table);
      g_signal_connect_swapped (selection, "changed", G_CALLBACK (follow), table);
    }
  follow (table);
}

/* --- making -------------------------------------------------------------------------------- */

static void
add_heads (SqSidesTable *table)
{
  const char *const heads[N_COLUMNS] = { _ ("Side"),         _ ("Length"), _ ("Rise"),
                                         _ ("Stands there"), _ ("Angle"),  _ ("Radius") };
  for (int i = 0; i < N_COLUMNS; i++)
    {
      GtkWidget *head = gtk_label_new (heads[i]);
      gtk_label_set_xalign (GTK_LABEL (head), i == COLUMN_NAME || i == COLUMN_KIND ? 0 : 1);
      gtk_widget_add_css_class (head, "dim");
      gtk_grid_attach (GTK_GRID (table->grid), head, i, 0, 1, 1);
    }
}

static GtkWidget *
new_label (void)
{
  GtkWidget *label = gtk_label_new (NULL);
  gtk_label_set_xalign (GTK_LABEL (label), 0);
  gtk_label_set_wrap (GTK_LABEL (label), TRUE);
  gtk_widget_set_hexpand (label, TRUE);
  return label;
}

static void
add_foot (SqSidesTable *table)
{
  GtkWidget *buttons = gtk_box_new (GTK_ORIENTATION_HORIZONTAL, 6);
  table->sums = new_label ();
  table->closing = new_label ();
  table->offer = gtk_button_new ();
  table->dismiss = gtk_button_new_with_label (_ ("Leave it"));
  g_signal_connect_swapped (table->offer, "clicked", G_CALLBACK (on_offer), table);
  g_signal_connect_swapped (table->dismiss, "clicked", G_CALLBACK (on_dismiss), table);
  gtk_widget_add_css_class (table->sums, "dim");
  gtk_box_append (GTK_BOX (buttons), table->offer);
  gtk_box_append (GTK_BOX (buttons), table->dismiss);
  gtk_box_append (GTK_BOX (table->box), table->closing);
  gtk_box_append (GTK_BOX (table->box), buttons);
  gtk_box_append (GTK_BOX (table->box), table->sums);
}

static void
sq_sides_table_dispose (GObject *object)
{
  SqSidesTable *table = SQ_SIDES_TABLE (object);
  leave (table);
  g_clear_object (&table->document);
  g_clear_object (&table->selection);
  g_clear_pointer (&table->box, gtk_widget_unparent);
  g_clear_object (&table->note);
  G_OBJECT_CLASS (sq_sides_table_parent_class)->dispose (object);
}

static void
sq_sides_table_finalize (GObject *object)
{
  g_array_unref (SQ_SIDES_TABLE (object)->rows);
  G_OBJECT_CLASS (sq_sides_table_parent_class)->finalize (object);
}

static void
sq_sides_table_class_init (SqSidesTableClass *class)
{
  GtkWidgetClass *widget_class = GTK_WIDGET_CLASS (class);
  G_OBJECT_CLASS (class)->dispose = sq_sides_table_dispose;
  G_OBJECT_CLASS (class)->finalize = sq_sides_table_finalize;
  gtk_widget_class_set_css_name (widget_class, "sidestable");
  gtk_widget_class_set_layout_manager_type (widget_class, GTK_TYPE_BIN_LAYOUT);
}

static void
sq_sides_table_init (SqSidesTable *table)
{
  GtkWidget *scrolled = gtk_scrolled_window_new ();
  table->rows = g_array_new (FALSE, FALSE, sizeof (Row));
  table->box = gtk_box_new (GTK_ORIENTATION_VERTICAL, 2);
  table->grid = gtk_grid_new ();
  table->note = g_object_ref_sink (new_label ());
  gtk_widget_add_css_class (table->note, "mistake");
  gtk_grid_set_column_spacing (GTK_GRID (table->grid), 3);
  gtk_scrolled_window_set_child (GTK_SCROLLED_WINDOW (scrolled), table->grid);
  gtk_scrolled_window_set_propagate_natural_height (GTK_SCROLLED_WINDOW (scrolled), TRUE);
  gtk_scrolled_window_set_max_content_height (GTK_SCROLLED_WINDOW (scrolled), MOST_HEIGHT);
  gtk_box_append (GTK_BOX (table->box), scrolled);
  add_heads (table);
  add_foot (table);
  gtk_widget_set_parent (table->box, GTK_WIDGET (table));
  g_signal_connect (table, "notify::visible", G_CALLBACK (on_visible), NULL);
}
