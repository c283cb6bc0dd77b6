/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "window/wide-offers.h"

#include "window/background.h"
#include "window/edit-ways.h"
#include "window/figures.h"
#include "window/look.h"
#include "words/wide.h"

/* Nothing is laid while a hand drags (ms). */
#define LAY_AFTER_MS 250

#define N_COLUMNS 2

/* What is laid on the thread. */
typedef struct
{
  SqJob *job;
  SqCushion *cushion;
} Laid;

struct _SqWideOffers
{
  GtkWidget parent;
  SqDocument *document;
  SqJob *job; /* what the offers are for */
  SqWide *wide;
  GtkWidget *grid;
  guint n_said;
  GtkWidget *said[SQ_N_WIDE_KINDS]; /* button or label of each way; NULL: none */
  SqBackground *laying;
  guint later;
};

G_DEFINE_TYPE (SqWideOffers, sq_wide_offers, GTK_TYPE_WIDGET)

static guint changed_signal;

/* --- what they say --------------------------------------------------------------------------- */

static void
say (SqWideOffers *offers)
{
  SqLengthStyle style = sq_figures_style (offers->job);
  for (guint i = 0; i < offers->wide->ways->len; i++)
    {
      const SqWideWay *way = sq_wide_way (offers->wide, i);
      GtkWidget *said = offers->said[i];
      g_autofree char *words = sq_words_wide_offer (way, &style);
      g_autofree char *summary = sq_words_wide_summary (way, &style);
      if (said == NULL)
        continue;
      if (GTK_IS_BUTTON (said))
        sq_look_set_label (GTK_LABEL (gtk_button_get_child (GTK_BUTTON (said))), words);
      else
        sq_look_set_label (GTK_LABEL (said), words);
      gtk_widget_set_tooltip_text (said, summary);
      gtk_accessible_update_property (GTK_ACCESSIBLE (said), GTK_ACCESSIBLE_PROPERTY_LABEL, words,
                                      GTK_ACCESSIBLE_PROPERTY_DESCRIPTION, summary, -1);
    }
}

static void
on_clicked (GtkButton *button, SqWideOffers *offers)
{
  guint i = GPOINTER_TO_UINT (g_object_get_data (G_OBJECT (button), "way"));
  /* The buttons go with the edit. */
  g_autoptr (SqWide) wide = sq_wide_ref (offers->wide);
  g_autoptr (SqDocument) document = g_object_ref (offers->document);
  sq_edit_wide (document, wide, i);
}

/* What can be done is a button; wider cloth is for the maker to find, and only said. */
static void
add (SqWideOffers *offers, guint i)
{
  const SqWideWay *way = sq_wide_way (offers->wide, i);
  gboolean is_button = way->kind != SQ_WIDE_CLOTH;
  GtkWidget *said = is_button ? gtk_button_new_with_label ("") : gtk_label_new (NULL);
  if (!way->way.possible || (gint) i == offers->wide->in_use)
    {
      g_object_unref (g_object_ref_sink (said));
      return;
    }
  gtk_widget_add_css_class (said, is_button ? "fix" : "dim");
  gtk_widget_set_halign (said, GTK_ALIGN_START);
  gtk_widget_set_valign (said, GTK_ALIGN_CENTER);
  g_object_set_data (G_OBJECT (said), "way", GUINT_TO_POINTER (i));
  if (is_button)
    g_signal_connect (said, "clicked", G_CALLBACK (on_clicked), offers);
  offers->said[i] = said;
  GtkWidget *label = is_button ? gtk_button_get_child (GTK_BUTTON (said)) : said;
  gtk_label_set_wrap (GTK_LABEL (label), TRUE);
  gtk_label_set_natural_wrap_mode (GTK_LABEL (label), GTK_NATURAL_WRAP_NONE);
  gtk_label_set_xalign (GTK_LABEL (label), 0);
  gtk_grid_attach (GTK_GRID (offers->grid), said, (int) (offers->n_said % N_COLUMNS),
                   (int) (offers->n_said / N_COLUMNS), 1, 1);
  offers->n_said++;
}

/* --- on the thread --------------------------------------------------------------------------- */

static void
laid_free (gpointer data)
{
  Laid *laid = data;
  sq_job_unref (laid->job);
  sq_cushion_unref (laid->cushion);
  g_free (laid);
}

static gpointer
lay (SqBackground *background, gpointer data, const SqTask *watch)
{
  const Laid *laid = data;
  (void) background;
  return sq_wide_new (laid->job, laid->cushion, TRUE, watch);
}

/* --- here ------------------------------------------------------------------------------------ */

static void
on_laid (gpointer owner, gpointer found, gboolean is_over)
{
  SqWideOffers *offers = owner;
  (void) is_over;
  g_clear_pointer (&offers->laying, sq_background_drop);
  if (found == NULL)
    return;
  g_clear_pointer (&offers->wide, sq_wide_unref);
  offers->wide = sq_wide_ref (found);
  say (offers);
  g_signal_emit (offers, changed_signal, 0);
}

static gboolean
on_later (gpointer data)
{
  static const SqBackgroundWork work = { lay, laid_free, (GDestroyNotify) sq_wide_unref };
  SqWideOffers *offers = data;
  Laid *laid = g_new0 (Laid, 1);
  offers->later = 0;
  laid->job = sq_job_ref (offers->job);
  laid->cushion = sq_cushion_ref (offers->wide->cushion);
  offers->laying = sq_background_begin (G_OBJECT (offers), &work, laid, on_laid);
  return G_SOURCE_REMOVE;
}

GtkWidget *
sq_wide_offers_new (SqDocument *document, SqId cushion)
{
  SqWideOffers *offers = g_object_new (SQ_TYPE_WIDE_OFFERS, NULL);
  const SqCushion *own = sq_job_cushion (sq_document_get_job (document), cushion);
  g_return_val_if_fail (own != NULL, GTK_WIDGET (offers));
  offers->document = g_object_ref (document);
  offers->job = sq_job_ref (sq_document_get_job (document));
  offers->wide = sq_wide_new (offers->job, own, FALSE, NULL);
  for (guint i = 0; i < offers->wide->ways->len; i++)
    add (offers, i);
  say (offers);
  if (offers->wide->ways->len > 0)
    offers->later = g_timeout_add (LAY_AFTER_MS, on_later, offers);
  return GTK_WIDGET (offers);
}

static void
sq_wide_offers_dispose (GObject *object)
{
  SqWideOffers *offers = SQ_WIDE_OFFERS (object);
  g_clear_handle_id (&offers->later, g_source_remove);
  g_clear_pointer (&offers->laying, sq_background_drop);
  g_clear_pointer (&offers->grid, gtk_widget_unparent);
  g_clear_object (&offers->document);
  g_clear_pointer (&offers->wide, sq_wide_unref);
  g_clear_pointer (&offers->job, sq_job_unref);
  G_OBJECT_CLASS (sq_wide_offers_parent_class)->dispose (object);
}

static void
sq_wide_offers_class_init (SqWideOffersClass *class)
{
  G_OBJECT_CLASS (class)->dispose = sq_wide_offers_dispose;
  changed_signal = g_signal_new ("changed", G_TYPE_FROM_CLASS (class), G_SIGNAL_RUN_LAST, 0, NULL,
                                 NULL, NULL, G_TYPE_NONE, 0);
  gtk_widget_class_set_layout_manager_type (GTK_WIDGET_CLASS (class), GTK_TYPE_BIN_LAYOUT);
}

static void
sq_wide_offers_init (SqWideOffers *offers)
{
  offers->grid = gtk_grid_new ();
  gtk_grid_set_column_spacing (GTK_GRID (offers->grid), 8);
  gtk_grid_set_row_spacing (GTK_GRID (offers->grid), 4);
  gtk_widget_set_halign (offers->grid, GTK_ALIGN_START);
  gtk_widget_set_parent (offers->grid, GTK_WIDGET (offers));
}
