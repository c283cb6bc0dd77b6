/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "window/seam-card.h"

#include "window/figures.h"
#include "window/look.h"
#include "words/lengths.h"
#include "words/piece-names.h"
#include "words/seam-words.h"

struct _SqSeamCard
{
  GtkWidget parent;
  SqDocument *document;
  SqSelection *selection;
  SqPiecesCanvas *pieces;
  GtkWidget *grid, *title, *sides[2], *lengths[2], *fit;
};

G_DEFINE_TYPE (SqSeamCard, sq_seam_card, GTK_TYPE_WIDGET)

/* So much of a card's width, in characters, that it wraps in a narrow pane. */
#define SIDE_CHARS 30

static void
say (GtkWidget *label, char *text)
{
  if (g_strcmp0 (text, gtk_label_get_text (GTK_LABEL (label))) != 0)
    sq_look_set_label (GTK_LABEL (label), text);
  g_free (text);
}

static void
show_side (SqSeamCard *card, guint i, const SqCover *cover, const SqSide *side, double length_mm,
           const SqLengthStyle *style)
{
  say (card->sides[i], sq_words_seam_side (cover, side));
  say (card->lengths[i], side->n_runs > 0 ? sq_words_length (length_mm, style) : g_strdup (""));
}

/* At the upper or the lower end of the pieces, wherever it hides less of the seam. */
static void
stand_clear (SqSeamCard *card)
{
  int width, height;
  gboolean is_above;
  gtk_widget_measure (card->grid, GTK_ORIENTATION_HORIZONTAL, -1, NULL, &width, NULL, NULL);
  width = MIN (width, gtk_widget_get_width (GTK_WIDGET (card->pieces)));
  gtk_widget_measure (card->grid, GTK_ORIENTATION_VERTICAL, width, &height, NULL, NULL, NULL);
  is_above = sq_pieces_canvas_hides_less_above (card->pieces, height);
  gtk_widget_set_valign (GTK_WIDGET (card), is_above ? GTK_ALIGN_START : GTK_ALIGN_END);
}

static void
follow (SqSeamCard *card)
{
  const SqPlace *place = card->selection != NULL ? sq_selection_place (card->selection) : NULL;
  const SqCover *cover = place != NULL && place->kind == SQ_AT_SEAM
                             ? sq_document_get_cover (card->document, place->cushion, NULL)
                             : NULL;
  gboolean is_there = cover != NULL && place->item < cover->seams->len;
  if (is_there)
    {
      const SqSeam *seam = sq_cover_seam (cover, place->item);
      SqLengthStyle style = sq_figures_style (sq_document_get_job (card->document));
      say (card->title, sq_words_seam (cover, place->item));
      show_side (card, 0, cover, &seam->a, seam->length_a_mm, &style);
      show_side (card, 1, cover, &seam->b, seam->length_b_mm, &style);
      say (card->fit, sq_words_seam_fit (seam, &style));
      stand_clear (card);
    }
  gtk_widget_set_visible (GTK_WIDGET (card), is_there);
}

void
sq_seam_card_set_document (SqSeamCard *card, SqDocument *document, SqSelection *selection,
                           SqPiecesCanvas *pieces)
{
  g_return_if_fail (SQ_IS_SEAM_CARD (card));
  if (card->document != NULL)
    g_signal_handlers_disconnect_by_data (card->document, card);
  if (card->selection != NULL)
    g_signal_handlers_disconnect_by_data (card->selection, card);
  g_set_object (&card->document, document);
  g_set_object (&card->selection, selection);
  g_set_object (&card->pieces, pieces);
  if (document != NULL)
    {
      g_signal_connect_swapped (document, "changed", G_CALLBACK (follow), card);
      g_signal_connect_swapped (selection, "changed", G_CALLBACK (follow), card);
    }
  follow (card);
}

static void
sq_seam_card_dispose (GObject *object)
{
  SqSeamCard *card = SQ_SEAM_CARD (object);
  if (card->document != NULL)
    sq_seam_card_set_document (card, NULL, NULL, NULL);
  g_clear_pointer (&card->grid, gtk_widget_unparent);
  G_OBJECT_CLASS (sq_seam_card_parent_class)->dispose (object);
}

static void
sq_seam_card_class_init (SqSeamCardClass *class)
{
  GtkWidgetClass *widget_class = GTK_WIDGET_CLASS (class);
  G_OBJECT_CLASS (class)->dispose = sq_seam_card_dispose;
  gtk_widget_class_set_css_name (widget_class, "seamcard");
  gtk_widget_class_set_layout_manager_type (widget_class, GTK_TYPE_BIN_LAYOUT);
}

static GtkWidget *
add_label (SqSeamCard *card, const char *css_class, int column, int row, int width)
{
  GtkWidget *label = gtk_label_new (NULL);
  gtk_label_set_xalign (GTK_LABEL (label), column == 0 ? 0 : 1);
  gtk_label_set_wrap (GTK_LABEL (label), column == 0);
  gtk_label_set_max_width_chars (GTK_LABEL (label), SIDE_CHARS);
  gtk_widget_set_valign (label, GTK_ALIGN_BASELINE);
  gtk_widget_set_hexpand (label, column == 0);
  gtk_widget_add_css_class (label, css_class);
  gtk_grid_attach (GTK_GRID (card->grid), label, column, row, width, 1);
  return label;
}

static void
sq_seam_card_init (SqSeamCard *card)
{
  GtkWidget *widget = GTK_WIDGET (card);
  card->grid = gtk_grid_new ();
  gtk_grid_set_column_spacing (GTK_GRID (card->grid), 14);
  gtk_widget_set_parent (card->grid, widget);
  card->title = add_label (card, "heading", 0, 0, 2);
  for (int i = 0; i < 2; i++)
    {
      card->sides[i] = add_label (card, "side-words", 0, i + 1, 1);
      card->lengths[i] = add_label (card, "length", 1, i + 1, 1);
    }
  card->fit = add_label (card, "dim", 0, 3, 2);
  gtk_widget_set_can_target (widget, FALSE);
  gtk_widget_set_halign (widget, GTK_ALIGN_CENTER);
  gtk_widget_set_visible (widget, FALSE);
}
