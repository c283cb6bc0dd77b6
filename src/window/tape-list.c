/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "window/tape-list.h"

#include "base/units.h"
#include "job/sides.h"
#include "window/figures.h"
#include "window/first-job.h"
#include "window/look.h"
#include "words/angles.h"
#include "words/lengths.h"
#include "words/names.h"
#include "words/piece-names.h"

#include <glib/gi18n.h>

/* More sides than anybody tapes. */
#define MOST_SIDES 40

/* So much of the list is there from the start: it takes the width it will need. */
#define LEAST_ROWS 4

/* A longer list scrolls (pixels). */
#define MOST_HEIGHT 200

/* Lines of words below the list. */
#define WORDS_CHARS 44
#define LEAST_WORDS_CHARS 24

/* A side, and the angle before it; the first one has none. */
typedef struct
{
  GtkWidget *angle_name, *angle, *side_name, *side;
} Row;

struct _SqTapeList
{
  GtkWidget parent;
  GtkWidget *content, *scrolled, *grid, *closing_name, *closing, *words, *mistake;
  Row rows[MOST_SIDES];
  guint n_rows;
  SqLengthStyle style;
  double step_mm;
  /* What the figures say. */
  double sides_mm[MOST_SIDES + 1], angles_rad[MOST_SIDES];
  guint n_sides;
  SqOutline *outline;
  SqPoint corners[MOST_SIDES + 1];
};

G_DEFINE_TYPE (SqTapeList, sq_tape_list, GTK_TYPE_WIDGET)

static guint changed_signal, done_signal;

/* --- what the figures say ------------------------------------------------------------------ */

static const char *
text_of (GtkWidget *entry)
{
  return gtk_editable_get_text (GTK_EDITABLE (entry));
}

static gboolean
is_empty (GtkWidget *entry)
{
  return text_of (entry)[strspn (text_of (entry), " ")] == '\0';
}

/* The field that is wrong, and why; NULL: none. */
typedef struct
{
  GtkWidget *entry;
  const char *why;
} Mistake;

static gboolean
read_side (SqTapeList *list, GtkWidget *entry, double *mm, Mistake *mistake)
{
  SqLengthResult result = sq_length_parse (text_of (entry), list->style.unit, list->style.decimal,
                                           mm, NULL);
  if (result == SQ_LENGTH_OK)
    return TRUE;
  *mistake = (Mistake){ entry, sq_figures_mistake (result) };
  return FALSE;
}

/* An angle that is not typed is square. */
static gboolean
read_angle (SqTapeList *list, GtkWidget *entry, double *rad, Mistake *mistake)
{
  *rad = M_PI / 2;
  if (is_empty (entry)
      || sq_words_read_angle (text_of (entry), list->style.decimal, rad) == SQ_LENGTH_OK)
    return TRUE;
  *mistake = (Mistake){ entry, _ ("Not an angle. Type it in degrees, as 101.3.") };
  return FALSE;
}

/* How many sides are typed, empty ones between them included. */
static guint
count_sides (SqTapeList *list)
{
  guint n = list->n_rows;
  while (n > 0 && is_empty (list->rows[n - 1].side))
    n--;
  return n;
}

static gboolean
read_figures (SqTapeList *list, Mistake *mistake)
{
  guint n = count_sides (list);
  list->n_sides = 0;
  for (guint i = 0; i < n; i++, list->n_sides++)
    if ((i > 0 && !read_angle (list, list->rows[i].angle, &list->angles_rad[i - 1], mistake))
        || !read_side (list, list->rows[i].side, &list->sides_mm[i], mistake))
      return FALSE;
  return n > 0;
}

/* The field of figure @place, in the order in which they are taped. */
static GtkWidget *
field_at (SqTapeList *list, gint place)
{
  return place % 2 == 0 ? list->rows[place / 2].side : list->rows[place / 2 + 1].angle;
}

static const char *
words_for (SqSidesResult result, gboolean is_angle)
{
  if (result == SQ_SIDES_NOT_POSITIVE && is_angle)
    return _ ("An angle lies between nothing and a full turn.");
  if (result == SQ_SIDES_TOO_LONG)
    return _ ("No side is that long.");
  return sq_words_sides_result (result);
}

/* --- what it says -------------------------------------------------------------------------- */

/* What corners and sides are called once there are @n corners. */
static SqCushion *
named_corners (guint n)
{
  SqCorner corners[MOST_SIDES + 1] = { { .id = 0 } };
  g_autoptr (SqOutline) outline = NULL;
  for (guint i = 0; i < n; i++)
    corners[i].id = i + 1;
  outline = sq_outline_new (corners, &n, 1);
  return sq_cushion_new (1, outline);
}

/* "Closes with 23 1/8 in, angles 88.2° at E and 91.8° at A." */
static char *
closing_words (SqTapeList *list, const SqClosing *closing)
{
  g_autoptr (SqCushion) named = named_corners (list->n_sides + 1);
  g_autofree char *first = sq_words_corner (named, 1);
  g_autofree char *last = sq_words_corner (named, list->n_sides + 1);
  g_autofree char *side = sq_words_length (closing->side_mm, &list->style);
  g_autofree char *at_last = sq_words_angle (closing->last_angle_rad, &list->style);
  g_autofree char *at_first = sq_words_angle (closing->first_angle_rad, &list->style);
  /* Translators: a length; then an angle and a corner's letter, twice. */
  return g_strdup_printf (_ ("Closes with %s, angles %s at %s and %s at %s."), side, at_last, last,
                          at_first, first);
}

/* By how much the side that was taped last misses; NULL: it closes. */
static char *
misclosure_words (SqTapeList *list, double closing_mm)
{
  double by_mm;
  g_autofree char *length = NULL;
  list->sides_mm[list->n_sides] = closing_mm;
  by_mm = sq_sides_misclosure_mm (list->sides_mm, list->angles_rad, list->n_sides + 1);
  if (fabs (by_mm) < list->step_mm)
    return NULL;
  length = sq_words_length (fabs (by_mm), &list->style);
  return g_strdup_printf (by_mm > 0 ? _ ("It doesn’t close: this side was taped %s too long.")
                                    : _ ("It doesn’t close: this side was taped %s too short."),
                          length);
}

static void
mark (GtkWidget *entry, const char *why)
{
  if (entry == NULL)
    return;
  if (why != NULL)
    gtk_widget_add_css_class (entry, "error");
  else
    gtk_widget_remove_css_class (entry, "error");
  gtk_accessible_update_state (
      GTK_ACCESSIBLE (entry), GTK_ACCESSIBLE_STATE_INVALID,
      why != NULL ? GTK_ACCESSIBLE_INVALID_TRUE : GTK_ACCESSIBLE_INVALID_FALSE, -1);
  gtk_accessible_update_property (GTK_ACCESSIBLE (entry), GTK_ACCESSIBLE_PROPERTY_DESCRIPTION,
                                  why != NULL ? why : "", -1);
}

/* Says at its field what is wrong, and below the list. */
static void
show_mistake (SqTapeList *list, const Mistake *mistake)
{
  for (guint i = 0; i < list->n_rows; i++)
    {
      mark (list->rows[i].angle, mistake->entry == list->rows[i].angle ? mistake->why : NULL);
      mark (list->rows[i].side, mistake->entry == list->rows[i].side ? mistake->why : NULL);
    }
  mark (list->closing, mistake->entry == list->closing ? mistake->why : NULL);
  gtk_label_set_text (GTK_LABEL (list->mistake), mistake->why != NULL ? mistake->why : "");
}

static void
set_name (GtkWidget *label, GtkWidget *entry, const char *text)
{
  gtk_label_set_text (GTK_LABEL (label), text);
  gtk_accessible_update_property (GTK_ACCESSIBLE (entry), GTK_ACCESSIBLE_PROPERTY_LABEL, text, -1);
}

/* The side that closes: what it is called, and the figure that follows. */
static void
show_closing (SqTapeList *list, const SqClosing *closing)
{
  gboolean is_known = closing->side_mm > 0;
  g_autofree char *words = is_known ? closing_words (list, closing) : NULL;
  g_autofree char *figure = is_known ? sq_words_length (closing->side_mm, &list->style) : NULL;
  gtk_widget_set_visible (list->closing, is_known);
  gtk_widget_set_visible (list->closing_name, is_known);
  gtk_entry_set_placeholder_text (GTK_ENTRY (list->closing), figure);
  sq_look_set_label (GTK_LABEL (list->words), words != NULL ? words : "");
  if (is_known)
    {
      g_autoptr (SqCushion) named = named_corners (list->n_sides + 1);
      g_autofree char *side = sq_words_edge_corners (named, list->n_sides + 1);
      /* Translators: the side that closes the seat, "E–A". */
      g_autofree char *name = g_strdup_printf (_ ("Closing side %s"), side);
      set_name (list->closing_name, list->closing, name);
    }
}

/* --- rows ---------------------------------------------------------------------------------- */

static void on_changed (SqTapeList *list);
static void on_enter (GtkWidget *entry, SqTapeList *list);

static GtkWidget *
new_entry (SqTapeList *list, int chars, const char *placeholder)
{
  GtkWidget *entry = gtk_entry_new ();
  sq_look_set_figures (entry);
  gtk_editable_set_width_chars (GTK_EDITABLE (entry), chars);
  gtk_editable_set_max_width_chars (GTK_EDITABLE (entry), chars);
  gtk_entry_set_alignment (GTK_ENTRY (entry), 1);
  gtk_entry_set_placeholder_text (GTK_ENTRY (entry), placeholder);
  g_signal_connect_swapped (entry, "changed", G_CALLBACK (on_changed), list);
  g_signal_connect (entry, "activate", G_CALLBACK (on_enter), list);
  return entry;
}

static GtkWidget *
new_name (void)
{
  GtkWidget *label = gtk_label_new (NULL);
  gtk_label_set_xalign (GTK_LABEL (label), 0);
  return label;
}

/* The angle comes first: that is how Tab goes. */
static void
add_angle (SqTapeList *list, guint i, const SqCushion *named)
{
  Row *row = &list->rows[i];
  g_autofree char *corner = sq_words_corner (named, i + 1);
  /* Translators: a corner's letter. */
  g_autofree char *name = g_strdup_printf (_ ("Angle at %s"), corner);
  row->angle_name = new_name ();
  row->angle = new_entry (list, 6, "90°");
  set_name (row->angle_name, row->angle, name);
  gtk_grid_attach (GTK_GRID (list->grid), row->angle_name, 0, (int) i, 1, 1);
  gtk_grid_attach (GTK_GRID (list->grid), row->angle, 1, (int) i, 1, 1);
}

static void
add_row (SqTapeList *list)
{
  guint i = list->n_rows++;
  Row *row = &list->rows[i];
  g_autoptr (SqCushion) named = named_corners (i + 2);
  g_autofree char *side = sq_words_edge_corners (named, i + 1);
  /* Translators: a side's two letters, "A–B". */
  g_autofree char *name = g_strdup_printf (_ ("Side %s"), side);
  if (i > 0)
    add_angle (list, i, named);
  row->side_name = new_name ();
  row->side = new_entry (list, 9, NULL);
  gtk_widget_set_hexpand (row->side, TRUE);
  set_name (row->side_name, row->side, name);
  gtk_grid_attach (GTK_GRID (list->grid), row->side_name, 2, (int) i, 1, 1);
  gtk_grid_attach (GTK_GRID (list->grid), row->side, 3, (int) i, 1, 1);
}

static void
drop_row (SqTapeList *list)
{
  guint i = --list->n_rows;
  gtk_grid_remove_row (GTK_GRID (list->grid), (int) i);
  list->rows[i] = (Row){ NULL };
}

/* An empty row stands at the end, for the side that comes next. */
static void
fit_rows (SqTapeList *list)
{
  guint wanted = CLAMP (count_sides (list) + 1, LEAST_ROWS, MOST_SIDES);
  int height;
  while (list->n_rows > wanted)
    drop_row (list);
  while (list->n_rows < wanted)
    add_row (list);
  gtk_widget_measure (list->grid, GTK_ORIENTATION_VERTICAL, -1, NULL, &height, NULL, NULL);
  gtk_scrolled_window_set_min_content_height (GTK_SCROLLED_WINDOW (list->scrolled),
                                              MIN (height, MOST_HEIGHT));
}

static void
on_changed (SqTapeList *list)
{
  Mistake mistake = { NULL, NULL };
  SqClosing closing = { 0 };
  SqSidesResult result = SQ_SIDES_FINE;
  gint bad = -1;
  double closing_mm;
  g_autofree char *misses = NULL;
  g_clear_pointer (&list->outline, sq_outline_unref);
  fit_rows (list);
  if (read_figures (list, &mistake) && list->n_sides >= 2)
    list->outline = sq_outline_from_sides (list->sides_mm, list->angles_rad, list->n_sides,
                                           &closing, &result, &bad);
  if (result != SQ_SIDES_FINE)
    mistake = (Mistake){ bad >= 0 ? field_at (list, bad) : list->rows[list->n_sides - 1].side,
                         words_for (result, bad % 2 == 1) };
  sq_sides_walk (list->sides_mm, list->angles_rad, list->n_sides, list->corners);
  if (list->outline != NULL && !is_empty (list->closing)
      && read_side (list, list->closing, &closing_mm, &mistake))
    {
      misses = misclosure_words (list, closing_mm);
      if (misses != NULL)
        mistake = (Mistake){ list->closing, misses };
    }
  show_closing (list, &closing);
  show_mistake (list, &mistake);
  g_signal_emit (list, changed_signal, 0);
}

/* Enter goes to the next figure; on a side that is left empty the seat closes. */
static void
on_enter (GtkWidget *entry, SqTapeList *list)
{
  for (guint i = 0; i < list->n_rows; i++)
    {
      if (entry == list->rows[i].angle)
        gtk_widget_grab_focus (list->rows[i].side);
      else if (entry == list->rows[i].side && !is_empty (entry) && i + 1 < list->n_rows)
        gtk_widget_grab_focus (list->rows[i + 1].angle);
      else if (entry == list->rows[i].side)
        g_signal_emit (list, done_signal, 0);
      else
        continue;
      return;
    }
  g_signal_emit (list, done_signal, 0);
}

const SqOutline *
sq_tape_list_outline (SqTapeList *list)
{
  g_return_val_if_fail (SQ_IS_TAPE_LIST (list), NULL);
  return list->outline;
}

const SqPoint *
sq_tape_list_corners (SqTapeList *list, guint *n)
{
  g_return_val_if_fail (SQ_IS_TAPE_LIST (list), NULL);
  *n = list->n_sides + 1;
  return list->corners;
}

/* --- the widget ---------------------------------------------------------------------------- */

static GtkWidget *
new_line (const char *class)
{
  GtkWidget *label = new_name ();
  gtk_label_set_wrap (GTK_LABEL (label), TRUE);
  gtk_label_set_width_chars (GTK_LABEL (label), LEAST_WORDS_CHARS);
  gtk_label_set_max_width_chars (GTK_LABEL (label), WORDS_CHARS);
  gtk_widget_add_css_class (label, class);
  return label;
}

GtkWidget *
sq_tape_list_new (SqUnit units, double step_mm)
{
  SqTapeList *list = g_object_new (SQ_TYPE_TAPE_LIST, NULL);
  list->style = sq_first_job_style (units);
  list->style.set = TRUE;
  list->step_mm = step_mm;
  return GTK_WIDGET (list);
}

static gboolean
sq_tape_list_grab_focus (GtkWidget *widget)
{
  return gtk_widget_grab_focus (SQ_TAPE_LIST (widget)->rows[0].side);
}

static void
sq_tape_list_dispose (GObject *object)
{
  g_clear_pointer (&SQ_TAPE_LIST (object)->content, gtk_widget_unparent);
  G_OBJECT_CLASS (sq_tape_list_parent_class)->dispose (object);
}

static void
sq_tape_list_finalize (GObject *object)
{
  g_clear_pointer (&SQ_TAPE_LIST (object)->outline, sq_outline_unref);
  G_OBJECT_CLASS (sq_tape_list_parent_class)->finalize (object);
}

static void
sq_tape_list_class_init (SqTapeListClass *class)
{
  GType type = G_TYPE_FROM_CLASS (class);
  G_OBJECT_CLASS (class)->dispose = sq_tape_list_dispose;
  G_OBJECT_CLASS (class)->finalize = sq_tape_list_finalize;
  GTK_WIDGET_CLASS (class)->grab_focus = sq_tape_list_grab_focus;
  changed_signal = g_signal_new ("changed", type, G_SIGNAL_RUN_LAST, 0, NULL, NULL, NULL,
                                 G_TYPE_NONE, 0);
  done_signal = g_signal_new ("done", type, G_SIGNAL_RUN_LAST, 0, NULL, NULL, NULL, G_TYPE_NONE, 0);
  gtk_widget_class_set_layout_manager_type (GTK_WIDGET_CLASS (class), GTK_TYPE_BIN_LAYOUT);
}

static void
sq_tape_list_init (SqTapeList *list)
{
  GtkWidget *closing = gtk_box_new (GTK_ORIENTATION_HORIZONTAL, 12);
  list->content = gtk_box_new (GTK_ORIENTATION_VERTICAL, 8);
  list->grid = gtk_grid_new ();
  gtk_widget_add_css_class (list->grid, "tape");
  list->scrolled = gtk_scrolled_window_new ();
  gtk_scrolled_window_set_policy (GTK_SCROLLED_WINDOW (list->scrolled), GTK_POLICY_NEVER,
                                  GTK_POLICY_AUTOMATIC);
  gtk_scrolled_window_set_max_content_height (GTK_SCROLLED_WINDOW (list->scrolled), MOST_HEIGHT);
  gtk_scrolled_window_set_child (GTK_SCROLLED_WINDOW (list->scrolled), list->grid);
  gtk_grid_set_row_spacing (GTK_GRID (list->grid), 6);
  gtk_grid_set_column_spacing (GTK_GRID (list->grid), 12);
  list->closing_name = new_name ();
  gtk_widget_set_hexpand (list->closing_name, TRUE);
  list->closing = new_entry (list, 9, NULL);
  list->words = new_line ("dim");
  list->mistake = new_line ("mistake");
  gtk_box_append (GTK_BOX (closing), list->closing_name);
  gtk_box_append (GTK_BOX (closing), list->closing);
  gtk_box_append (GTK_BOX (list->content), list->scrolled);
  gtk_box_append (GTK_BOX (list->content), closing);
  gtk_box_append (GTK_BOX (list->content), list->words);
  gtk_box_append (GTK_BOX (list->content), list->mistake);
  gtk_widget_set_visible (list->closing, FALSE);
  gtk_widget_set_visible (list->closing_name, FALSE);
  gtk_widget_set_parent (list->content, GTK_WIDGET (list));
  fit_rows (list);
}
