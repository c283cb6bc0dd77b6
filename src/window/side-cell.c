/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "window/side-cell.h"

#include "window/chosen-text.h"
#include "window/look.h"

struct _SqSideCell
{
  GtkEntry parent;
  char *shown;
  gboolean is_typing;  /* arrow keys are the text's */
  gboolean is_setting; /* changes now are not the user's */
};

G_DEFINE_TYPE (SqSideCell, sq_side_cell, GTK_TYPE_ENTRY)

static guint given_signal, go_signal, left_signal;

static gboolean
is_touched (SqSideCell *cell)
{
  return g_strcmp0 (gtk_editable_get_text (GTK_EDITABLE (cell)), cell->shown) != 0;
}

static void
set_text (SqSideCell *cell)
{
  cell->is_setting = TRUE;
  sq_chosen_text_set (GTK_EDITABLE (cell), cell->shown != NULL ? cell->shown : "");
  cell->is_setting = FALSE;
}

static void
put_back (SqSideCell *cell)
{
  if (is_touched (cell))
    set_text (cell);
  cell->is_typing = FALSE;
}

/* So that what is typed next takes its place. */
static void
select_all (SqSideCell *cell)
{
  gtk_editable_select_region (GTK_EDITABLE (cell), 0, -1);
}

/* FALSE: it can't be taken; it stays to be put right. */
static gboolean
take (SqSideCell *cell)
{
  gboolean is_taken = TRUE;
  if (cell->is_typing)
    {
      g_autofree char *text = g_strdup (gtk_editable_get_text (GTK_EDITABLE (cell)));
      g_signal_emit (cell, given_signal, 0, text, &is_taken);
    }
  if (is_taken)
    put_back (cell); /* to what it is now */
  return is_taken;
}

void
sq_side_cell_show (SqSideCell *cell, const char *text)
{
  gboolean was_touched = is_touched (cell) && cell->shown != NULL;
  g_return_if_fail (SQ_IS_SIDE_CELL (cell));
  if (g_strcmp0 (cell->shown, text) == 0)
    return;
  g_free (cell->shown);
  cell->shown = g_strdup (text);
  if (!was_touched)
    set_text (cell);
}

static void
on_changed (SqSideCell *cell)
{
  const char *text = gtk_editable_get_text (GTK_EDITABLE (cell));
  g_autoptr (PangoAttrList) list = sq_look_figures (GTK_WIDGET (cell), text);
  gtk_entry_set_attributes (GTK_ENTRY (cell), list);
  cell->is_typing = cell->is_typing || !cell->is_setting;
}

static void
on_leave (SqSideCell *cell)
{
  if (!take (cell))
    put_back (cell);
}

static void
begin_typing (SqSideCell *cell)
{
  cell->is_typing = TRUE;
  gtk_editable_set_position (GTK_EDITABLE (cell), -1);
}

/* How far an arrow key goes; FALSE: it is none. */
static gboolean
is_arrow (GtkWidget *widget, guint keyval, int *columns, int *rows)
{
  GtkWidget *table = gtk_widget_get_parent (widget); /* figures run to the right in any language */
  int right = gtk_widget_get_direction (table) == GTK_TEXT_DIR_RTL ? -1 : 1;
  gboolean is_left = keyval == GDK_KEY_Left || keyval == GDK_KEY_KP_Left;
  gboolean is_right = keyval == GDK_KEY_Right || keyval == GDK_KEY_KP_Right;
  gboolean is_up = keyval == GDK_KEY_Up || keyval == GDK_KEY_KP_Up;
  gboolean is_down = keyval == GDK_KEY_Down || keyval == GDK_KEY_KP_Down;
  *columns = is_left ? -right : is_right ? right : 0;
  *rows = is_up ? -1 : is_down ? 1 : 0;
  return *columns != 0 || *rows != 0;
}

static gboolean
on_key (GtkEventControllerKey *controller, guint keyval, guint code, GdkModifierType state,
        SqSideCell *cell)
{
  int columns, rows;
  (void) controller, (void) code;
  if (state & (GDK_CONTROL_MASK | GDK_ALT_MASK | GDK_SHIFT_MASK))
    return GDK_EVENT_PROPAGATE;
  if (is_arrow (GTK_WIDGET (cell), keyval, &columns, &rows))
    {
      if (cell->is_typing && columns != 0)
        return GDK_EVENT_PROPAGATE;
      if (take (cell))
        g_signal_emit (cell, go_signal, 0, columns, rows);
      return GDK_EVENT_STOP;
    }
  switch (keyval)
    {
    case GDK_KEY_Return:
    case GDK_KEY_KP_Enter:
    case GDK_KEY_ISO_Enter:
      if (!cell->is_typing)
        begin_typing (cell);
      else if (take (cell))
        {
          g_signal_emit (cell, go_signal, 0, 0, 1);
          if (gtk_widget_get_focus_child (GTK_WIDGET (cell)) != NULL)
            select_all (cell); /* it was the last one */
        }
      return GDK_EVENT_STOP;
    case GDK_KEY_F2:
      begin_typing (cell);
      return GDK_EVENT_STOP;
    case GDK_KEY_Escape:
      if (cell->is_typing)
        {
          put_back (cell);
          select_all (cell);
        }
      else
        g_signal_emit (cell, left_signal, 0);
      return GDK_EVENT_STOP;
    case GDK_KEY_Tab:
    case GDK_KEY_KP_Tab:
      return take (cell) ? GDK_EVENT_PROPAGATE : GDK_EVENT_STOP;
    default:
      return GDK_EVENT_PROPAGATE;
    }
}

/* --- a cell of another kind ---------------------------------------------------------------- */

typedef struct
{
  SqSideCellGo go;
  gpointer data;
} Arrows;

static gboolean
on_arrow (GtkEventControllerKey *controller, guint keyval, guint code, GdkModifierType state,
          const Arrows *arrows)
{
  GtkWidget *widget = gtk_event_controller_get_widget (GTK_EVENT_CONTROLLER (controller));
  GtkRoot *root = gtk_widget_get_root (widget);
  GtkWidget *focus = gtk_root_get_focus (root);
  int columns, rows;
  (void) code;
  if (state & (GDK_CONTROL_MASK | GDK_ALT_MASK | GDK_SHIFT_MASK)
      || !is_arrow (widget, keyval, &columns, &rows))
    return GDK_EVENT_PROPAGATE;
  /* In a list that has popped up they choose from it. */
  if (focus == NULL || GTK_ROOT (gtk_widget_get_native (focus)) != root)
    return GDK_EVENT_PROPAGATE;
  arrows->go (widget, columns, rows, arrows->data);
  return GDK_EVENT_STOP;
}

static void
free_arrows (gpointer arrows, GClosure *closure)
{
  (void) closure;
  g_free (arrows);
}

void
sq_side_cell_add_arrows (GtkWidget *widget, SqSideCellGo go, gpointer data)
{
  GtkEventController *key = gtk_event_controller_key_new ();
  Arrows *arrows = g_new (Arrows, 1);
  *arrows = (Arrows){ go, data };
  gtk_event_controller_set_propagation_phase (key, GTK_PHASE_CAPTURE);
  g_signal_connect_data (key, "key-pressed", G_CALLBACK (on_arrow), arrows, free_arrows, 0);
  gtk_widget_add_controller (widget, key);
}

/* --- making -------------------------------------------------------------------------------- */

static void
sq_side_cell_finalize (GObject *object)
{
  g_free (SQ_SIDE_CELL (object)->shown);
  G_OBJECT_CLASS (sq_side_cell_parent_class)->finalize (object);
}

static void
sq_side_cell_class_init (SqSideCellClass *class)
{
  GType type = G_TYPE_FROM_CLASS (class);
  G_OBJECT_CLASS (class)->finalize = sq_side_cell_finalize;
  given_signal = g_signal_new ("given", type, G_SIGNAL_RUN_LAST, 0, NULL, NULL, NULL,
                               G_TYPE_BOOLEAN, 1, G_TYPE_STRING);
  go_signal = g_signal_new ("go", type, G_SIGNAL_RUN_LAST, 0, NULL, NULL, NULL, G_TYPE_NONE, 2,
                            G_TYPE_INT, G_TYPE_INT);
  left_signal = g_signal_new ("left", type, G_SIGNAL_RUN_LAST, 0, NULL, NULL, NULL, G_TYPE_NONE, 0);
}

static void
sq_side_cell_init (SqSideCell *cell)
{
  GtkEventController *focus = gtk_event_controller_focus_new ();
  GtkEventController *key = gtk_event_controller_key_new ();
  gtk_entry_set_alignment (GTK_ENTRY (cell), 1);
  sq_look_set_figures (GTK_WIDGET (cell));
  g_signal_connect (cell, "changed", G_CALLBACK (on_changed), NULL);
  g_signal_connect_swapped (focus, "leave", G_CALLBACK (on_leave), cell);
  gtk_event_controller_set_propagation_phase (key, GTK_PHASE_CAPTURE);
  g_signal_connect (key, "key-pressed", G_CALLBACK (on_key), cell);
  gtk_widget_add_controller (GTK_WIDGET (cell), focus);
  gtk_widget_add_controller (GTK_WIDGET (cell), key);
}

GtkWidget *
sq_side_cell_new (int width_chars)
{
  SqSideCell *cell = g_object_new (SQ_TYPE_SIDE_CELL, NULL);
  gtk_editable_set_width_chars (GTK_EDITABLE (cell), width_chars);
  gtk_editable_set_max_width_chars (GTK_EDITABLE (cell), width_chars);
  return GTK_WIDGET (cell);
}
