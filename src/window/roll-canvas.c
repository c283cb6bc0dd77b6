/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "window/roll-canvas-private.h"

#include "drawing/roll-scene.h"
#include "window/figures.h"
#include "words/lay-words.h"
#include "words/leftovers.h"
#include "words/piece-label.h"
#include "words/piece-names.h"

#include <glib/gi18n.h>

/* Around the roll, in em. */
#define MARGIN_EM 0.8
/* Of the pane's height a roll takes at least, however long it is. */
#define LEAST_SHARE 0.55

/* More pieces are not named one by one to a screen reader. */
#define MOST_TOLD 60

G_DEFINE_TYPE (SqRollCanvas, sq_roll_canvas, SQ_TYPE_CANVAS)

const SqClothLay *
sq_roll_cloth_lay (const SqRollCanvas *canvas)
{
  if (canvas->lays == NULL || canvas->cloth >= canvas->lays->cloths->len)
    return NULL;
  return sq_lays_cloth (canvas->lays, canvas->cloth);
}

const SqCloth *
sq_roll_cloth (const SqRollCanvas *canvas)
{
  const SqClothLay *cloth = sq_roll_cloth_lay (canvas);
  return cloth != NULL ? sq_plan_cloth (canvas->lays->plan, cloth->cloth) : NULL;
}

gboolean
sq_roll_may_change (SqRollCanvas *canvas)
{
  return sq_roll_cloth_lay (canvas) != NULL && canvas->kept == NULL && canvas->document != NULL
         && canvas->lays->plan == sq_document_get_plan (canvas->document);
}

double
sq_roll_px_mm (SqRollCanvas *canvas, double px)
{
  return px / sq_canvas_get_view (SQ_CANVAS (canvas))->scale;
}

SqPoint
sq_roll_mm (SqRollCanvas *canvas, SqPoint at)
{
  return sq_view_to_mm (sq_canvas_get_view (SQ_CANVAS (canvas)), at);
}

SqBox
sq_roll_shown_box (const SqRollCanvas *canvas)
{
  const SqClothLay *cloth = sq_roll_cloth_lay (canvas);
  if (canvas->kept != NULL)
    return sq_roll_kept_box (canvas->kept);
  return cloth != NULL ? sq_roll_box (cloth) : sq_box_empty ();
}

/* All of it, the cut end at the left: a roll is read from there. A long one goes on beyond the pane, so
 * that what lies on it is still recognised. */
static SqView
sq_roll_canvas_fit (SqCanvas *self, int width, int height)
{
  double margin = MARGIN_EM * sq_canvas_get_em (self);
  SqBox box = sq_roll_shown_box (SQ_ROLL_CANVAS (self));
  SqView view = sq_view_fit (box, width, height, margin);
  double across = box.max.y - box.min.y;
  if (across > 0)
    view.scale = fmax (view.scale, LEAST_SHARE * (height - 2 * margin) / across);
  view.origin = sq_point (margin, height / 2.0 + view.scale * across / 2);
  return view;
}

/* --- what is said ---------------------------------------------------------------------------- */

char *
sq_roll_placed_words (SqRollCanvas *canvas, guint i, gboolean is_set)
{
  const SqPlaced *placed = sq_lay_placed (sq_roll_cloth_lay (canvas)->lay, i);
  SqLengthStyle style = sq_figures_style (canvas->lays->plan->job);
  style.set = is_set;
  g_autofree char *named = sq_words_placed (canvas->lays, placed);
  g_autofree char *size = sq_words_piece_size (sq_lays_piece (canvas->lays, placed), &style);
  g_autofree char *where = sq_words_lying (canvas->lays, placed, &style);
  /* Translators: a piece, its size, and where it lies. */
  return g_strdup_printf (_ ("%s: %s; %s"), named, size, where);
}

static gboolean
sq_roll_canvas_query_tooltip (GtkWidget *widget, int x, int y, gboolean by_keyboard,
                              GtkTooltip *tooltip)
{
  SqRollCanvas *canvas = SQ_ROLL_CANVAS (widget);
  gint i = by_keyboard ? canvas->at : sq_roll_piece_under (canvas, sq_point (x, y));
  g_autofree char *flaw = by_keyboard ? NULL : sq_roll_flaw_words_at (canvas, sq_point (x, y));
  if (i < 0 && flaw != NULL)
    {
      gtk_tooltip_set_text (tooltip, flaw);
      return TRUE;
    }
  if (i < 0 || sq_roll_cloth_lay (canvas) == NULL
      || (guint) i >= sq_roll_cloth_lay (canvas)->lay->placed->len)
    return FALSE;
  g_autofree char *words = sq_roll_placed_words (canvas, (guint) i, TRUE);
  gtk_tooltip_set_text (tooltip, words);
  return TRUE;
}

/* --- what it shows --------------------------------------------------------------------------- */

static void
tell (SqRollCanvas *canvas)
{
  const SqClothLay *cloth = sq_roll_cloth_lay (canvas);
  g_autoptr (GString) text = g_string_new (NULL);
  if (cloth != NULL)
    {
      SqLengthStyle style = sq_figures_style (canvas->lays->plan->job);
      style.set = FALSE;
      guint n = cloth->lay->placed->len;
      g_autofree char *buy = sq_words_purchase (&cloth->purchase, &style);
      g_string_append_printf (text, ngettext ("%u piece; %s", "%u pieces; %s", n), n, buy);
      if (canvas->leftovers != NULL && canvas->leftovers->len > 0)
        {
          g_autofree char *left = sq_words_leftovers (canvas->leftovers, &style);
          g_string_append_printf (text, "; %s", left);
        }
      for (guint i = 0; i < MIN (n, MOST_TOLD); i++)
        {
          g_autofree char *words = sq_roll_placed_words (canvas, i, FALSE);
          g_string_append_printf (text, "; %s", words);
        }
      if (canvas->at >= 0 && (guint) canvas->at < n)
        {
          g_autofree char *words = sq_roll_placed_words (canvas, (guint) canvas->at, FALSE);
          /* Translators: a piece on the roll. */
          g_string_append_printf (text, _ ("; chosen: %s"), words);
          if (sq_roll_is_chosen_pinned (canvas))
            g_string_append (text, _ (", pinned"));
        }
      if (canvas->said != NULL)
        g_string_append_printf (text, "; %s", canvas->said);
    }
  gtk_accessible_update_property (GTK_ACCESSIBLE (canvas), GTK_ACCESSIBLE_PROPERTY_LABEL,
                                  _ ("Roll"), GTK_ACCESSIBLE_PROPERTY_DESCRIPTION, text->str, -1);
}

/* What is left while a piece is held nobody asks. */
static void
find_leftovers (SqRollCanvas *canvas)
{
  const SqClothLay *cloth = sq_roll_cloth_lay (canvas);
  g_clear_pointer (&canvas->leftovers, g_array_unref);
  if (cloth != NULL && canvas->hold == NULL)
    canvas->leftovers = sq_lays_leftovers (cloth);
}

void
sq_roll_show_again (SqRollCanvas *canvas)
{
  find_leftovers (canvas);
  if (sq_canvas_is_fitted (SQ_CANVAS (canvas)) && canvas->hold == NULL)
    sq_canvas_fit (SQ_CANVAS (canvas));
  tell (canvas);
  sq_roll_show_actions (canvas);
  gtk_widget_queue_draw (GTK_WIDGET (canvas));
}

void
sq_roll_show_lays (SqRollCanvas *canvas, const SqLays *lays)
{
  SqLays *next = lays != NULL ? sq_lays_ref (lays) : NULL;
  sq_lays_unref (canvas->lays);
  canvas->lays = next;
  sq_roll_show_again (canvas);
}

/* The copy that was chosen is it still, wherever it lies now. */
static void
keep_chosen (SqRollCanvas *canvas, const SqPinned *of)
{
  const SqClothLay *cloth = sq_roll_cloth_lay (canvas);
  canvas->at = -1;
  for (guint i = 0; of != NULL && cloth != NULL && i < cloth->lay->placed->len; i++)
    {
      SqPinned own = sq_lays_pinned (canvas->lays, sq_lay_placed (cloth->lay, i));
      if (sq_pinned_equal (&own, of))
        canvas->at = (gint) i;
    }
}

void
sq_roll_follow (SqRollCanvas *canvas)
{
  const SqLays *lays = canvas->finder != NULL ? sq_lay_finder_get_lays (canvas->finder) : NULL;
  gint at = sq_roll_chosen (canvas);
  if (lays == canvas->followed || (canvas->hold != NULL && sq_roll_may_change (canvas)))
    return;
  sq_roll_put_back (canvas);
  SqPinned of = { 0 };
  if (at >= 0)
    of = sq_lays_pinned (canvas->lays, sq_lay_placed (sq_roll_cloth_lay (canvas)->lay, (guint) at));
  g_clear_pointer (&canvas->followed, sq_lays_unref);
  g_clear_pointer (&canvas->lays, sq_lays_unref);
  canvas->followed = lays != NULL ? sq_lays_ref (lays) : NULL;
  canvas->lays = lays != NULL ? sq_lays_ref (lays) : NULL;
  keep_chosen (canvas, at >= 0 ? &of : NULL);
  canvas->said = NULL;
  sq_roll_show_again (canvas);
}

gint
sq_roll_chosen (SqRollCanvas *canvas)
{
  const SqClothLay *cloth = sq_roll_cloth_lay (canvas);
  return cloth != NULL && canvas->kept == NULL && canvas->at >= 0
                 && (guint) canvas->at < cloth->lay->placed->len
             ? canvas->at
             : -1;
}

void
sq_roll_choose (SqRollCanvas *canvas, gint i)
{
  canvas->at = i;
  canvas->said = NULL;
  if (i < 0)
    return;
  const SqCutEntry *entry = sq_lays_entry (
      canvas->lays, sq_lay_placed (sq_roll_cloth_lay (canvas)->lay, (guint) i));
  const SqCover *cover = sq_plan_cover (canvas->lays->plan, entry->cushion);
  SqPlace place = { SQ_AT_PIECE, cover->cushion->id, entry->piece, NULL };
  sq_selection_choose (canvas->selection, &place);
  sq_roll_show_actions (canvas);
}

static void
on_selection (SqRollCanvas *canvas)
{
  const SqClothLay *cloth = sq_roll_cloth_lay (canvas);
  gboolean is_there = cloth != NULL && canvas->at >= 0
                      && (guint) canvas->at < cloth->lay->placed->len;
  if (is_there
      && !sq_roll_is_chosen (
          canvas, sq_lays_entry (canvas->lays, sq_lay_placed (cloth->lay, (guint) canvas->at))))
    canvas->at = -1;
  tell (canvas);
  sq_roll_show_actions (canvas);
  gtk_widget_queue_draw (GTK_WIDGET (canvas));
}

void
sq_roll_canvas_set_cloth (SqRollCanvas *canvas, guint cloth)
{
  g_return_if_fail (SQ_IS_ROLL_CANVAS (canvas));
  if (canvas->cloth == cloth)
    return;
  canvas->cloth = cloth;
  sq_roll_put_back (canvas);
  canvas->at = -1;
  canvas->chosen_flaw = 0;
  sq_roll_show_again (canvas);
}

void
sq_roll_canvas_show_kept (SqRollCanvas *canvas, const SqKeptLay *kept)
{
  g_return_if_fail (SQ_IS_ROLL_CANVAS (canvas));
  if (canvas->kept == kept)
    return;
  g_clear_pointer (&canvas->kept, sq_kept_lay_unref);
  canvas->kept = kept != NULL ? sq_kept_lay_ref (kept) : NULL;
  sq_roll_put_back (canvas);
  canvas->at = -1;
  canvas->chosen_flaw = 0;
  sq_roll_show_again (canvas);
}

void
sq_roll_canvas_set_document (SqRollCanvas *canvas, SqDocument *document, SqLayFinder *finder,
                             SqSelection *selection)
{
  g_return_if_fail (SQ_IS_ROLL_CANVAS (canvas));
  if (canvas->finder != NULL)
    g_signal_handlers_disconnect_by_data (canvas->finder, canvas);
  if (canvas->selection != NULL)
    g_signal_handlers_disconnect_by_data (canvas->selection, canvas);
  sq_roll_put_back (canvas);
  g_set_object (&canvas->document, document);
  g_set_object (&canvas->finder, finder);
  g_set_object (&canvas->selection, selection);
  if (finder != NULL)
    {
      g_signal_connect_swapped (finder, "changed", G_CALLBACK (sq_roll_follow), canvas);
      g_signal_connect_swapped (selection, "changed", G_CALLBACK (on_selection), canvas);
    }
  sq_roll_follow (canvas);
}

static void
sq_roll_canvas_dispose (GObject *object)
{
  SqRollCanvas *canvas = SQ_ROLL_CANVAS (object);
  sq_roll_canvas_set_document (canvas, NULL, NULL, NULL);
  g_clear_pointer (&canvas->menu, gtk_widget_unparent);
  g_clear_object (&canvas->actions);
  g_clear_pointer (&canvas->leftovers, g_array_unref);
  g_clear_pointer (&canvas->followed, sq_lays_unref);
  g_clear_pointer (&canvas->lays, sq_lays_unref);
  g_clear_pointer (&canvas->kept, sq_kept_lay_unref);
  G_OBJECT_CLASS (sq_roll_canvas_parent_class)->dispose (object);
}

static void
sq_roll_canvas_class_init (SqRollCanvasClass *class)
{
  SqCanvasClass *canvas_class = SQ_CANVAS_CLASS (class);
  G_OBJECT_CLASS (class)->dispose = sq_roll_canvas_dispose;
  canvas_class->is_long = TRUE;
  canvas_class->fit = sq_roll_canvas_fit;
  canvas_class->draw = sq_roll_draw;
  canvas_class->press = sq_roll_press;
  canvas_class->drag = sq_roll_drag;
  canvas_class->release = sq_roll_release;
  canvas_class->hover = sq_roll_hover;
  canvas_class->key = sq_roll_key;
  GTK_WIDGET_CLASS (class)->query_tooltip = sq_roll_canvas_query_tooltip;
  gtk_widget_class_set_css_name (GTK_WIDGET_CLASS (class), "roll");
}

static void
sq_roll_canvas_init (SqRollCanvas *canvas)
{
  canvas->at = -1;
  gtk_widget_set_has_tooltip (GTK_WIDGET (canvas), TRUE);
  sq_roll_add_menu (canvas);
  sq_roll_add_hands (canvas);
  gtk_accessible_update_property (GTK_ACCESSIBLE (canvas), GTK_ACCESSIBLE_PROPERTY_LABEL,
                                  _ ("Roll"), -1);
}
