/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "window/cloth-bands.h"

#include "window/colour-button.h"
#include "window/form.h"
#include "window/length-entry.h"
#include "window/look.h"

#include <glib/gi18n.h>

struct _SqClothBands
{
  GtkWidget parent;
  SqCloth *cloth;
  SqLengthStyle style;
  GtkWidget *hint, *grid, *note;
  GtkWidget *ground_width, *stripe_width; /* of even stripes */
  GPtrArray *rows;                        /* of Row */
};

G_DEFINE_TYPE (SqClothBands, sq_cloth_bands, GTK_TYPE_WIDGET)

/* One band. */
typedef struct
{
  SqClothBands *bands;
  guint i;
  GtkWidget *colour, *at, *width, *up, *down, *away;
} Row;

/* Of a first band: the blue of ticking. */
#define FIRST_COLOUR 0x2f4b6e

static guint edited_signal;

static void
on_mistake (SqClothBands *bands, const char *text)
{
  gtk_label_set_text (GTK_LABEL (bands->note), text);
  gtk_widget_set_visible (bands->note, text[0] != '\0');
}

/* --- edits --------------------------------------------------------------------------------- */

/* Tells of @stripes (their unknown keys are borrowed) in a cloth that recurs after @repeat_mm. */
static void
edit (SqClothBands *bands, const SqStripe *stripes, guint n, double repeat_mm)
{
  g_autoptr (SqCloth) cloth = sq_cloth_dup (bands->cloth);
  SqStripe *own = g_memdup2 (stripes, n * sizeof *stripes);
  for (guint i = 0; i < n; i++)
    if (own[i].unknown != NULL)
      g_ref_string_acquire (own[i].unknown);
  for (guint i = 0; i < cloth->n_stripes; i++)
    g_clear_pointer (&cloth->stripes[i].unknown, g_ref_string_release);
  g_free (cloth->stripes);
  cloth->stripes = own;
  cloth->n_stripes = n;
  cloth->repeat_across_mm = repeat_mm;
  g_signal_emit (bands, edited_signal, 0, cloth);
}

static SqStripe *
dup_stripes (SqClothBands *bands, guint more)
{
  guint n = bands->cloth->n_stripes;
  SqStripe *stripes = g_new0 (SqStripe, n + more);
  if (n > 0)
    memcpy (stripes, bands->cloth->stripes, n * sizeof *stripes);
  return stripes;
}

static void
edit_one (Row *row, const SqStripe *stripe)
{
  SqClothBands *bands = row->bands;
  g_autofree SqStripe *stripes = dup_stripes (bands, 0);
  stripes[row->i] = *stripe;
  edit (bands, stripes, bands->cloth->n_stripes, bands->cloth->repeat_across_mm);
}

/* A row that goes is left by the keyboard when its band has gone already. */
static gboolean
has_gone (const Row *row)
{
  return row->i >= row->bands->cloth->n_stripes;
}

static void
on_at (Row *row, double mm)
{
  if (has_gone (row))
    return;
  SqStripe stripe = row->bands->cloth->stripes[row->i];
  stripe.at_mm = mm;
  edit_one (row, &stripe);
}

static void
on_width (Row *row, double mm)
{
  if (has_gone (row))
    return;
  SqStripe stripe = row->bands->cloth->stripes[row->i];
  stripe.width_mm = mm;
  edit_one (row, &stripe);
}

static void
on_colour (Row *row)
{
  SqStripe stripe = row->bands->cloth->stripes[row->i];
  stripe.colour = sq_colour_button_get (row->colour);
  edit_one (row, &stripe);
}

static void
move (Row *row, int by)
{
  SqClothBands *bands = row->bands;
  g_autofree SqStripe *stripes = dup_stripes (bands, 0);
  guint to = row->i + (guint) by;
  SqStripe other = stripes[to];
  stripes[to] = stripes[row->i];
  stripes[row->i] = other;
  edit (bands, stripes, bands->cloth->n_stripes, bands->cloth->repeat_across_mm);
}

static void
on_up (Row *row)
{
  move (row, -1);
}

static void
on_down (Row *row)
{
  move (row, 1);
}

static void
on_away (Row *row)
{
  SqClothBands *bands = row->bands;
  guint n = bands->cloth->n_stripes, i = row->i;
  g_autofree SqStripe *stripes = dup_stripes (bands, 0);
  memmove (&stripes[i], &stripes[i + 1], (n - i - 1) * sizeof *stripes);
  edit (bands, stripes, n - 1, bands->cloth->repeat_across_mm); /* the row may be gone now */
}

static double
usual_width_mm (SqClothBands *bands)
{
  return bands->style.unit == SQ_UNIT_IN ? 25.4 : 25;
}

/* A band more, as far from the last one as that is wide. */
static void
on_add (SqClothBands *bands)
{
  guint n = bands->cloth->n_stripes;
  g_autofree SqStripe *stripes = dup_stripes (bands, 1);
  SqStripe last = { -usual_width_mm (bands), usual_width_mm (bands), FIRST_COLOUR, NULL };
  if (n > 0)
    last = stripes[n - 1];
  stripes[n] = (SqStripe){ last.at_mm + 2 * last.width_mm, last.width_mm, last.colour, NULL };
  edit (bands, stripes, n + 1, bands->cloth->repeat_across_mm);
  if (bands->rows->len > n)
    gtk_widget_grab_focus (((Row *) g_ptr_array_index (bands->rows, n))->at);
}

/* Ground and stripe in turn, the first stripe in its colour. */
static void
on_even (SqClothBands *bands)
{
  double ground, width;
  const SqCloth *cloth = bands->cloth;
  SqStripe stripe = { 0, 0, cloth->n_stripes > 0 ? cloth->stripes[0].colour : FIRST_COLOUR, NULL };
  if (!sq_length_entry_read (SQ_LENGTH_ENTRY (bands->ground_width), &ground)
      || !sq_length_entry_read (SQ_LENGTH_ENTRY (bands->stripe_width), &width))
    return;
  on_mistake (bands,
              ground > 0 && width > 0 ? "" : _ ("Ground and stripe have to be more than nothing."));
  if (ground <= 0 || width <= 0)
    return;
  stripe.at_mm = ground / 2;
  stripe.width_mm = width;
  edit (bands, &stripe, 1, ground + width);
}

/* --- rows ---------------------------------------------------------------------------------- */

static void
name_widget (GtkWidget *widget, const char *pattern, guint i)
{
  g_autofree char *name = g_strdup_printf (pattern, i + 1);
  gtk_accessible_update_property (GTK_ACCESSIBLE (widget), GTK_ACCESSIBLE_PROPERTY_LABEL, name, -1);
  if (GTK_IS_BUTTON (widget))
    gtk_widget_set_tooltip_text (widget, name);
}

static GtkWidget *
add_entry (Row *row, int column, const char *name, void (*given) (Row *row, double mm))
{
  GtkWidget *entry = sq_length_entry_new ();
  gtk_entry_set_alignment (GTK_ENTRY (entry), 1);
  name_widget (entry, name, row->i);
  g_signal_connect_swapped (entry, "given", G_CALLBACK (given), row);
  g_signal_connect_swapped (entry, "mistake", G_CALLBACK (on_mistake), row->bands);
  gtk_grid_attach (GTK_GRID (row->bands->grid), entry, column, (int) row->i + 1, 1, 1);
  return entry;
}

static GtkWidget *
add_button (Row *row, int column, const char *icon, const char *name, void (*clicked) (Row *row))
{
  GtkWidget *button = gtk_button_new_from_icon_name (icon);
  gtk_widget_add_css_class (button, "flat");
  name_widget (button, name, row->i);
  g_signal_connect_swapped (button, "clicked", G_CALLBACK (clicked), row);
  gtk_grid_attach (GTK_GRID (row->bands->grid), button, column, (int) row->i + 1, 1, 1);
  return button;
}

static void
add_row (SqClothBands *bands)
{
  Row *row = g_new0 (Row, 1);
  g_autofree char *colour_name = NULL;
  row->bands = bands;
  row->i = bands->rows->len;
  colour_name = g_strdup_printf (_ ("Colour of band %u"), row->i + 1);
  row->colour = sq_colour_button_new ();
  sq_colour_button_name (row->colour, colour_name);
  g_signal_connect_swapped (row->colour, "color-set", G_CALLBACK (on_colour), row);
  gtk_grid_attach (GTK_GRID (bands->grid), row->colour, 0, (int) row->i + 1, 1, 1);
  row->at = add_entry (row, 1, _ ("Band %u begins at"), on_at);
  row->width = add_entry (row, 2, _ ("Width of band %u"), on_width);
  row->up = add_button (row, 3, "go-up-symbolic", _ ("Band %u under the one before"), on_up);
  row->down = add_button (row, 4, "go-down-symbolic", _ ("Band %u over the next one"), on_down);
  row->away = add_button (row, 5, "list-remove-symbolic", _ ("Take band %u away"), on_away);
  g_ptr_array_add (bands->rows, row);
}

static void
remove_row (SqClothBands *bands)
{
  gtk_grid_remove_row (GTK_GRID (bands->grid), (int) bands->rows->len);
  g_ptr_array_set_size (bands->rows, (int) bands->rows->len - 1);
}

static void
show_row (SqClothBands *bands, guint i)
{
  const Row *row = g_ptr_array_index (bands->rows, i);
  const SqStripe *stripe = &bands->cloth->stripes[i];
  sq_colour_button_set (row->colour, stripe->colour);
  sq_length_entry_show (SQ_LENGTH_ENTRY (row->at), stripe->at_mm, &bands->style, FALSE);
  sq_length_entry_show (SQ_LENGTH_ENTRY (row->width), stripe->width_mm, &bands->style, FALSE);
  gtk_widget_set_sensitive (row->up, i > 0);
  gtk_widget_set_sensitive (row->down, i + 1 < bands->cloth->n_stripes);
}

void
sq_cloth_bands_show (SqClothBands *bands, const SqCloth *cloth, const SqLengthStyle *style)
{
  SqCloth *own = sq_cloth_ref (cloth);
  gboolean is_first = bands->cloth == NULL;
  g_return_if_fail (SQ_IS_CLOTH_BANDS (bands));
  g_clear_pointer (&bands->cloth, sq_cloth_unref);
  bands->cloth = own;
  bands->style = *style;
  while (bands->rows->len > cloth->n_stripes)
    remove_row (bands);
  while (bands->rows->len < cloth->n_stripes)
    add_row (bands);
  for (guint i = 0; i < cloth->n_stripes; i++)
    show_row (bands, i);
  gtk_widget_set_visible (bands->grid, cloth->n_stripes > 0);
  gtk_widget_set_visible (bands->hint, cloth->n_stripes > 0 && !(cloth->repeat_across_mm > 0));
  if (!is_first)
    return;
  sq_length_entry_show (SQ_LENGTH_ENTRY (bands->ground_width), 2 * usual_width_mm (bands), style,
                        FALSE);
  sq_length_entry_show (SQ_LENGTH_ENTRY (bands->stripe_width), usual_width_mm (bands), style,
                        FALSE);
}

static gboolean
take (GtkWidget *entry)
{
  double mm;
  gboolean is_fine = sq_length_entry_read (SQ_LENGTH_ENTRY (entry), &mm);
  g_signal_emit_by_name (entry, "activate");
  return is_fine;
}

gboolean
sq_cloth_bands_take (SqClothBands *bands)
{
  g_return_val_if_fail (SQ_IS_CLOTH_BANDS (bands), FALSE);
  for (guint i = 0; i < bands->rows->len; i++)
    {
      const Row *row = g_ptr_array_index (bands->rows, i);
      if (!take (row->at) || !take (row->width))
        return FALSE;
    }
  return TRUE;
}

/* --- making -------------------------------------------------------------------------------- */

static GtkWidget *
new_label (const char *text, const char *class)
{
  GtkWidget *label = gtk_label_new (text);
  gtk_label_set_xalign (GTK_LABEL (label), 0);
  gtk_label_set_wrap (GTK_LABEL (label), TRUE);
  gtk_label_set_max_width_chars (GTK_LABEL (label), 32);
  gtk_widget_add_css_class (label, class);
  return label;
}

/* It is for the stripes laid next. */
static void
on_even_width (GtkWidget *entry, double mm, SqClothBands *bands)
{
  sq_length_entry_show (SQ_LENGTH_ENTRY (entry), mm, &bands->style, FALSE);
}

/* Two widths and a button that lays such stripes. */
static GtkWidget *
new_even (SqClothBands *bands)
{
  GtkWidget *line = gtk_box_new (GTK_ORIENTATION_HORIZONTAL, 6);
  GtkWidget *button = sq_form_button (_ ("Lay e_ven stripes"));
  const struct
  {
    GtkWidget **entry;
    const char *name;
  } entries[] = { { &bands->ground_width, _ ("_Ground") },
                  { &bands->stripe_width, _ ("St_ripe") } };
  for (guint i = 0; i < G_N_ELEMENTS (entries); i++)
    {
      GtkWidget *name = gtk_label_new_with_mnemonic (entries[i].name);
      GtkWidget *entry = sq_length_entry_new ();
      gtk_editable_set_width_chars (GTK_EDITABLE (entry), 5);
      gtk_editable_set_max_width_chars (GTK_EDITABLE (entry), 5);
      gtk_entry_set_alignment (GTK_ENTRY (entry), 1);
      gtk_label_set_mnemonic_widget (GTK_LABEL (name), entry);
      gtk_accessible_update_relation (GTK_ACCESSIBLE (entry), GTK_ACCESSIBLE_RELATION_LABELLED_BY,
                                      name, NULL, -1);
      gtk_widget_add_css_class (name, "dim");
      g_signal_connect (entry, "given", G_CALLBACK (on_even_width), bands);
      g_signal_connect_swapped (entry, "mistake", G_CALLBACK (on_mistake), bands);
      gtk_box_append (GTK_BOX (line), name);
      gtk_box_append (GTK_BOX (line), entry);
      *entries[i].entry = entry;
    }
  g_signal_connect_swapped (button, "clicked", G_CALLBACK (on_even), bands);
  gtk_widget_set_hexpand (button, TRUE);
  gtk_widget_set_halign (button, GTK_ALIGN_END);
  gtk_box_append (GTK_BOX (line), button);
  return line;
}

static void
add_heads (SqClothBands *bands)
{
  gtk_grid_attach (GTK_GRID (bands->grid), new_label (_ ("Begins at"), "dim"), 1, 0, 1, 1);
  gtk_grid_attach (GTK_GRID (bands->grid), new_label (_ ("Width"), "dim"), 2, 0, 1, 1);
}

GtkWidget *
sq_cloth_bands_new (void)
{
  return g_object_new (SQ_TYPE_CLOTH_BANDS, NULL);
}

static void
sq_cloth_bands_dispose (GObject *object)
{
  GtkWidget *child;
  while ((child = gtk_widget_get_first_child (GTK_WIDGET (object))) != NULL)
    gtk_widget_unparent (child);
  G_OBJECT_CLASS (sq_cloth_bands_parent_class)->dispose (object);
}

static void
sq_cloth_bands_finalize (GObject *object)
{
  g_clear_pointer (&SQ_CLOTH_BANDS (object)->cloth, sq_cloth_unref);
  g_ptr_array_unref (SQ_CLOTH_BANDS (object)->rows);
  G_OBJECT_CLASS (sq_cloth_bands_parent_class)->finalize (object);
}

static void
sq_cloth_bands_class_init (SqClothBandsClass *class)
{
  GtkWidgetClass *widget_class = GTK_WIDGET_CLASS (class);
  G_OBJECT_CLASS (class)->dispose = sq_cloth_bands_dispose;
  G_OBJECT_CLASS (class)->finalize = sq_cloth_bands_finalize;
  edited_signal = g_signal_new ("edited", G_TYPE_FROM_CLASS (class), G_SIGNAL_RUN_LAST, 0, NULL,
                                NULL, NULL, G_TYPE_NONE, 1, G_TYPE_POINTER);
  gtk_widget_class_set_css_name (widget_class, "clothbands");
  gtk_widget_class_set_layout_manager_type (widget_class, GTK_TYPE_BOX_LAYOUT);
}

static void
sq_cloth_bands_init (SqClothBands *bands)
{
  GtkLayoutManager *layout = gtk_widget_get_layout_manager (GTK_WIDGET (bands));
  GtkWidget *add = sq_form_button (_ ("Add a _band"));
  GtkWidget *even = new_even (bands);
  gtk_orientable_set_orientation (GTK_ORIENTABLE (layout), GTK_ORIENTATION_VERTICAL);
  gtk_box_layout_set_spacing (GTK_BOX_LAYOUT (layout), 6);
  bands->rows = g_ptr_array_new_with_free_func (g_free);
  bands->grid = gtk_grid_new ();
  gtk_grid_set_column_spacing (GTK_GRID (bands->grid), 4);
  gtk_grid_set_row_spacing (GTK_GRID (bands->grid), 3);
  add_heads (bands);
  bands->hint = new_label (_ ("Without a repeat across, the bands lie once."), "dim");
  bands->note = new_label ("", "mistake");
  gtk_widget_set_visible (bands->note, FALSE);
  g_signal_connect_swapped (add, "clicked", G_CALLBACK (on_add), bands);
  gtk_widget_set_halign (add, GTK_ALIGN_START);
  GtkWidget *const children[] = { bands->grid, bands->hint, bands->note, add, even };
  for (guint i = 0; i < G_N_ELEMENTS (children); i++)
    gtk_widget_set_parent (children[i], GTK_WIDGET (bands));
}
