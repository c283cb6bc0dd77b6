/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "window/widths-dialog.h"

#include "base/units.h"
#include "plan/cloth-widths.h"
#include "window/background.h"
#include "window/figures.h"
#include "window/help.h"
#include "window/look.h"
#include "words/lay-words.h"
#include "words/lengths.h"
#include "words/names.h"

#include <glib/gi18n.h>

#define WRAP_CHARS 44

/* Widths that cloth is sold in: inches where the job's lengths are, else mm. Common practice. */
static const double in_inches[] = { 48, 54, 60, 72 };
static const double in_mm[] = { 1200, 1400, 1500, 1800 };

typedef struct
{
  SqJob *job;
  SqId cloth;
  double widths_mm[G_N_ELEMENTS (in_mm)];
} Compared;

typedef struct
{
  SqLengthStyle style;
  SqBackground *laying;
  GtkWidget *sentence, *grid;
} Dialog;

static void
dialog_free (gpointer data)
{
  Dialog *dialog = data;
  g_clear_pointer (&dialog->laying, sq_background_drop);
  g_free (dialog);
}

/* --- on the thread --------------------------------------------------------------------------- */

static void
compared_free (gpointer data)
{
  sq_job_unref (((Compared *) data)->job);
  g_free (data);
}

static gpointer
compare (SqBackground *background, gpointer data, const SqTask *watch)
{
  const Compared *compared = data;
  (void) background;
  return sq_cloth_widths_new (compared->job, compared->cloth, compared->widths_mm,
                              G_N_ELEMENTS (compared->widths_mm), watch);
}

/* --- what is told ---------------------------------------------------------------------------- */

/* "2 1/8 yd"; where pieces find no place, how many. */
static char *
length_words (const Dialog *dialog, const SqPurchase *purchase)
{
  if (purchase->unlaid > 0)
    return g_strdup_printf (
        ngettext ("%u piece does not go on", "%u pieces do not go on", purchase->unlaid),
        purchase->unlaid);
  return sq_words_sold_length (purchase->buy_mm, &dialog->style);
}

static char *
difference_words (const Dialog *dialog, const SqClothWidth *width)
{
  double mm = width->matched.buy_mm - width->plain.buy_mm;
  if (width->matched.unlaid + width->plain.unlaid > 0)
    return g_strdup ("");
  if (mm <= 0)
    return g_strdup (_ ("nothing"));
  return sq_words_sold_length (mm, &dialog->style);
}

static char *
sentence_words (const Dialog *dialog, const SqClothWidths *widths)
{
  const SqClothWidth *own = sq_cloth_width (widths, 0);
  for (guint i = 0; i < widths->widths->len; i++)
    if (sq_cloth_width (widths, i)->is_own)
      own = sq_cloth_width (widths, i);
  double mm = own->matched.buy_mm - own->plain.buy_mm;
  g_autofree char *length = sq_words_sold_length (mm, &dialog->style);
  if (!widths->has_pattern)
    return g_strdup (_ ("This cloth has no pattern to match."));
  if (own->matched.unlaid + own->plain.unlaid > 0)
    return g_strdup (_ ("Not all pieces go on this cloth."));
  if (mm <= 0)
    return g_strdup (_ ("Matching costs no cloth here."));
  /* TRANSLATORS: a length of cloth, as "0.6 m". */
  return g_strdup_printf (_ ("Matching costs %s."), length);
}

static void
add_cell (Dialog *dialog, int row, int column, const char *text, gboolean is_strong)
{
  GtkWidget *label = gtk_label_new (text);
  g_autoptr (PangoAttrList) list = sq_look_figures (label, text);
  if (is_strong)
    pango_attr_list_insert (list, pango_attr_weight_new (PANGO_WEIGHT_BOLD));
  gtk_label_set_attributes (GTK_LABEL (label), list);
  gtk_label_set_xalign (GTK_LABEL (label), column == 0 ? 0 : 1);
  gtk_widget_add_css_class (label, row == 0 ? "dim" : "figures");
  gtk_grid_attach (GTK_GRID (dialog->grid), label, column, row, 1, 1);
}

static void
add_width (Dialog *dialog, int row, const SqClothWidths *widths, const SqClothWidth *width)
{
  g_autofree char *figure = sq_length_format (width->width_mm, &dialog->style);
  g_autofree char *name = width->is_own ? g_strdup_printf (_ ("%s, this cloth"), figure)
                                        : g_strdup (figure);
  g_autofree char *matched = length_words (dialog, &width->matched);
  g_autofree char *plain = length_words (dialog, &width->plain);
  g_autofree char *difference = difference_words (dialog, width);
  add_cell (dialog, row, 0, name, width->is_own);
  add_cell (dialog, row, 1, matched, width->is_own);
  if (!widths->has_pattern)
    return;
  add_cell (dialog, row, 2, plain, width->is_own);
  add_cell (dialog, row, 3, difference, width->is_own);
}

static void
on_found (gpointer owner, gpointer found, gboolean is_over)
{
  Dialog *dialog = g_object_get_data (G_OBJECT (owner), "dialog");
  const SqClothWidths *widths = found;
  (void) is_over;
  g_clear_pointer (&dialog->laying, sq_background_drop);
  if (widths == NULL)
    return;
  g_autofree char *sentence = sentence_words (dialog, widths);
  gtk_label_set_text (GTK_LABEL (dialog->sentence), sentence);
  add_cell (dialog, 0, 0, _ ("Width"), FALSE);
  add_cell (dialog, 0, 1, widths->has_pattern ? _ ("Matched") : _ ("To buy"), FALSE);
  if (widths->has_pattern)
    {
      add_cell (dialog, 0, 2, _ ("Not matched"), FALSE);
      add_cell (dialog, 0, 3, _ ("Matching costs"), FALSE);
    }
  for (guint i = 0; i < widths->widths->len; i++)
    add_width (dialog, (int) i + 1, widths, sq_cloth_width (widths, i));
}

/* --- making ---------------------------------------------------------------------------------- */

static void
begin (GtkWidget *window, Dialog *dialog, SqDocument *document, SqId cloth)
{
  static const SqBackgroundWork work = { compare, compared_free,
                                         (GDestroyNotify) sq_cloth_widths_unref };
  const SqJob *job = sq_document_get_job (document);
  Compared *compared = g_new0 (Compared, 1);
  compared->job = sq_job_ref (job);
  compared->cloth = cloth;
  for (guint i = 0; i < G_N_ELEMENTS (compared->widths_mm); i++)
    compared->widths_mm[i] = dialog->style.unit == SQ_UNIT_IN ? in_inches[i] * SQ_MM_PER_INCH
                                                              : in_mm[i];
  dialog->laying = sq_background_begin (G_OBJECT (window), &work, compared, on_found);
}

static GtkWidget *
new_label (const char *text, const char *look)
{
  GtkWidget *label = gtk_label_new (text);
  gtk_label_set_wrap (GTK_LABEL (label), TRUE);
  gtk_label_set_xalign (GTK_LABEL (label), 0);
  gtk_label_set_width_chars (GTK_LABEL (label), WRAP_CHARS);
  gtk_label_set_max_width_chars (GTK_LABEL (label), WRAP_CHARS);
  gtk_widget_add_css_class (label, look);
  return label;
}

static gboolean
on_escape (GtkWidget *window, GVariant *arguments, gpointer data)
{
  (void) arguments, (void) data;
  gtk_window_close (GTK_WINDOW (window));
  return TRUE;
}

static void
add_escape (GtkWidget *window)
{
  GtkEventController *keys = gtk_shortcut_controller_new ();
  gtk_shortcut_controller_add_shortcut (
      GTK_SHORTCUT_CONTROLLER (keys),
      gtk_shortcut_new (gtk_keyval_trigger_new (GDK_KEY_Escape, 0),
                        gtk_callback_action_new (on_escape, NULL, NULL)));
  gtk_widget_add_controller (window, keys);
}

void
sq_widths_dialog (GtkWindow *parent, SqDocument *document, SqId cloth)
{
  const SqCloth *own = sq_job_cloth (sq_document_get_job (document), cloth);
  g_return_if_fail (own != NULL);
  Dialog *dialog = g_new0 (Dialog, 1);
  GtkWidget *window = gtk_window_new (), *box = gtk_box_new (GTK_ORIENTATION_VERTICAL, 14);
  g_autofree char *name = sq_words_cloth (own);
  g_autofree char *title = g_strdup_printf (_ ("Widths and matching: %s"), name);
  dialog->style = sq_figures_style (sq_document_get_job (document));
  dialog->sentence = new_label (_ ("Laying…"), "heading");
  dialog->grid = gtk_grid_new ();
  gtk_grid_set_row_spacing (GTK_GRID (dialog->grid), 8);
  gtk_grid_set_column_spacing (GTK_GRID (dialog->grid), 24);
  gtk_widget_add_css_class (box, "form");
  gtk_box_append (GTK_BOX (box), dialog->sentence);
  gtk_box_append (GTK_BOX (box), dialog->grid);
  gtk_box_append (GTK_BOX (box), new_label (_ ("Each is laid once, quickly: a longer search may do "
                                               "with less. Cloth at hand, flaws and pins are left "
                                               "out."),
                                            "dim"));
  g_object_set_data_full (G_OBJECT (window), "dialog", dialog, dialog_free);
  gtk_window_set_title (GTK_WINDOW (window), title);
  gtk_window_set_transient_for (GTK_WINDOW (window), parent);
  gtk_window_set_modal (GTK_WINDOW (window), TRUE);
  gtk_window_set_destroy_with_parent (GTK_WINDOW (window), TRUE);
  gtk_window_set_titlebar (GTK_WINDOW (window), gtk_header_bar_new ());
  gtk_window_set_child (GTK_WINDOW (window), box);
  add_escape (window);
  sq_help_on_f1 (window, "roll");
  begin (window, dialog, document, cloth);
  gtk_window_present (GTK_WINDOW (window));
}
