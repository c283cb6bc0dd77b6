/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "window/roll-pane.h"

#include "plan/leftovers.h"
#include "window/cutting-dialog.h"
#include "window/edit-kept.h"
#include "window/figures.h"
#include "window/look.h"
#include "window/roll-canvas.h"
#include "window/stock-dialog.h"
#include "window/widths-dialog.h"
#include "words/cuts-words.h"
#include "words/lay-words.h"
#include "words/leftovers.h"
#include "words/names.h"
#include "words/ply-words.h"
#include "words/strip-words.h"

#include <glib/gi18n.h>

struct _SqRollPane
{
  GtkBox parent;
  SqDocument *document;
  SqLayFinder *finder;
  guint shown; /* which of the lays' cloths */
  gboolean is_showing;
  GtkWidget *cloths, *figures, *laid, *stop, *keep, *fold;
  GtkWidget *unlaid; /* what finds no place */
  GtkWidget *offer, *offer_words, *show_kept;
  SqRollCanvas *canvas;
};

G_DEFINE_TYPE (SqRollPane, sq_roll_pane, GTK_TYPE_BOX)

/* The cloth that is shown; NULL: none. */
static const SqClothLay *
cloth_of (SqRollPane *pane)
{
  const SqLays *lays = pane->finder != NULL ? sq_lay_finder_get_lays (pane->finder) : NULL;
  return lays != NULL && pane->shown < lays->cloths->len ? sq_lays_cloth (lays, pane->shown) : NULL;
}

/* --- what is told ---------------------------------------------------------------------------- */

/* The names of the cloths, only where they have changed: a list that is open stays. */
static void
show_cloths (SqRollPane *pane, const SqLays *lays)
{
  GtkStringList *names = GTK_STRING_LIST (gtk_drop_down_get_model (GTK_DROP_DOWN (pane->cloths)));
  guint n = g_list_model_get_n_items (G_LIST_MODEL (names));
  for (guint i = 0; i < lays->cloths->len; i++)
    {
      g_autofree char *name = sq_words_cloth (
          sq_plan_cloth (lays->plan, sq_lays_cloth (lays, i)->cloth));
      if (i < n && g_str_equal (name, gtk_string_list_get_string (names, i)))
        continue;
      gtk_string_list_splice (names, i, i < n, (const char *const[]){ name, NULL });
    }
  if (n > lays->cloths->len)
    gtk_string_list_splice (names, lays->cloths->len, n - lays->cloths->len, NULL);
  pane->shown = MIN (pane->shown, lays->cloths->len > 0 ? lays->cloths->len - 1 : 0);
  if (lays->cloths->len > 0)
    gtk_drop_down_set_selected (GTK_DROP_DOWN (pane->cloths), pane->shown);
  gtk_widget_set_visible (pane->cloths, lays->cloths->len > 1);
  sq_roll_canvas_set_cloth (pane->canvas, pane->shown);
}

/* "1.62 m laid, 84 % full"; of a lot, its layers; while better is looked for, for how long. */
static char *
laid_words (SqRollPane *pane, const SqLays *lays, const SqClothLay *cloth)
{
  SqLengthStyle style = sq_figures_style (lays->plan->job);
  double searching_s = sq_lay_finder_get_searching (pane->finder);
  double full = sq_lay_density (cloth->task, cloth->lay, cloth->task->strips->len - 1);
  g_autofree char *length = sq_words_sold_length (cloth->purchase.laid_mm, &style);
  if (cloth->plies != NULL && searching_s < 0)
    return sq_words_plies (cloth->plies, &style);
  if (full <= 0)
    return searching_s >= 0 ? g_strdup_printf (_ ("looking for better… %.0f s"), searching_s)
                            : g_strdup ("");
  if (searching_s >= 0)
    return g_strdup_printf (_ ("%.0f %% full, looking… %.0f s"), 100 * full, searching_s);
  return g_strdup_printf (_ ("%s laid, %.0f %% full"), length, 100 * full);
}

static void
set_label (GtkWidget *label, const char *text)
{
  g_autoptr (PangoAttrList) list = NULL;
  if (g_str_equal (text, gtk_label_get_text (GTK_LABEL (label))))
    return;
  list = sq_look_figures (label, text);
  gtk_label_set_text (GTK_LABEL (label), text);
  gtk_label_set_attributes (GTK_LABEL (label), list);
}

/* What to buy; while that is being found out, how far it is. */
static void
show_figures (SqRollPane *pane, const SqLays *lays, const SqClothLay *cloth)
{
  double progress = sq_lay_finder_get_progress (pane->finder);
  gboolean is_stopped = sq_lay_finder_is_stopped (pane->finder);
  gboolean is_told = progress < 0 && !is_stopped && cloth != NULL;
  g_autofree char *text = NULL, *laid = NULL;
  if (progress >= 0)
    text = g_strdup_printf (_ ("Laying… %.0f %%"), 100 * progress);
  else if (is_stopped)
    text = g_strdup (_ ("Out of date: laying was stopped."));
  else if (is_told)
    {
      SqLengthStyle style = sq_figures_style (lays->plan->job);
      text = sq_words_purchase (&cloth->purchase, &style);
      laid = laid_words (pane, lays, cloth);
    }
  set_label (pane->figures, text != NULL ? text : "");
  set_label (pane->laid, laid != NULL ? laid : "");
  gtk_widget_set_tooltip_text (pane->laid, sq_lay_finder_get_searching (pane->finder) >= 0
                                               ? _ ("Looking for a lay that takes less cloth")
                                               : NULL);
}

/* Takes @words; NULL or nothing in them: no line. */
static void
add_line (GString *text, char *words)
{
  if (words != NULL && words[0] != '\0')
    g_string_append_printf (text, "%s%s", text->len > 0 ? "\n" : "", words);
  g_free (words);
}

/* What straight cuts take, what is left of the cloth, and how a lot is cut. */
static void
show_tooltip (SqRollPane *pane, const SqLays *lays, const SqClothLay *cloth)
{
  g_autoptr (GArray) leftovers = cloth != NULL ? sq_lays_leftovers (cloth) : NULL;
  g_autoptr (GString) lines = g_string_new (NULL);
  g_autofree char *lot = NULL;
  if (cloth != NULL)
    {
      SqLengthStyle style = sq_figures_style (lays->plan->job);
      add_line (lines, sq_words_straight_cuts (lays, cloth, &style));
      add_line (lines, sq_words_leftovers (leftovers, &style));
      if (cloth->plies != NULL)
        lot = sq_words_plies_reckoned (cloth->plies, &style);
    }
  gtk_widget_set_tooltip_text (pane->figures, lines->len > 0 ? lines->str : NULL);
  if (lot != NULL && sq_lay_finder_get_searching (pane->finder) < 0)
    gtk_widget_set_tooltip_text (pane->laid, lot);
}

/* The one button that stops and goes on. */
static void
show_stop (SqRollPane *pane)
{
  gboolean is_stopped = sq_lay_finder_is_stopped (pane->finder);
  gboolean is_working = sq_lay_finder_get_progress (pane->finder) >= 0
                        || sq_lay_finder_get_searching (pane->finder) >= 0;
  gboolean can_search = !is_working && sq_lay_finder_can_search (pane->finder);
  gtk_widget_set_visible (pane->stop, is_working || is_stopped || can_search);
  gtk_button_set_label (GTK_BUTTON (pane->stop), is_stopped   ? _ ("Lay again")
                                                 : can_search ? _ ("Continue")
                                                              : _ ("Stop"));
  gtk_widget_set_tooltip_text (pane->stop, can_search ? _ ("Look for a better lay") : NULL);
}

/* What is not as the maker meant it: pieces without a place, pins that can't be kept, cloth at hand that
 * nothing lies on. */
static void
show_unlaid (SqRollPane *pane, const SqLays *lays, const SqClothLay *cloth)
{
  g_autoptr (GString) text = g_string_new (NULL);
  SqLengthStyle style = sq_figures_style (lays->plan->job);
  for (guint i = 0; cloth != NULL && i < cloth->lay->unlaid->len; i++)
    add_line (text, sq_words_unlaid (lays, cloth, &g_array_index (cloth->lay->unlaid, SqUnlaid, i),
                                     &style));
  for (guint i = 0; cloth != NULL && i < cloth->task->bad_pins->len; i++)
    add_line (text, sq_words_bad_pin (lays, cloth, i));
  if (cloth != NULL)
    add_line (text, sq_words_unused_stock (lays, cloth));
  gtk_widget_set_visible (pane->unlaid, text->len > 0);
  set_label (pane->unlaid, text->str);
}

/* The kept lay: one and the same as the one shown, out of date, or none. */
static void
show_kept (SqRollPane *pane, const SqClothLay *cloth)
{
  const SqKeptLay *kept = cloth != NULL ? cloth->kept : NULL;
  gboolean is_old = kept != NULL && !cloth->is_kept;
  pane->is_showing = TRUE;
  gtk_toggle_button_set_active (GTK_TOGGLE_BUTTON (pane->keep), cloth != NULL && cloth->is_kept);
  pane->is_showing = FALSE;
  gtk_widget_set_sensitive (pane->keep, cloth != NULL && cloth->lay->placed->len > 0
                                            && sq_lay_finder_is_current (pane->finder));
  gtk_widget_set_visible (pane->offer, is_old);
  if (!is_old)
    gtk_toggle_button_set_active (GTK_TOGGLE_BUTTON (pane->show_kept), FALSE);
  sq_roll_canvas_show_kept (
      pane->canvas,
      is_old && gtk_toggle_button_get_active (GTK_TOGGLE_BUTTON (pane->show_kept)) ? kept : NULL);
  if (is_old)
    {
      g_autofree char *words = sq_words_kept_old (kept);
      gtk_label_set_text (GTK_LABEL (pane->offer_words), words);
    }
}

/* What needs a cloth that the job names. */
static void
show_actions (SqRollPane *pane)
{
  static const char *const names[] = { "stock", "widths" };
  GActionMap *map = G_ACTION_MAP (sq_roll_canvas_get_actions (pane->canvas));
  const SqClothLay *cloth = cloth_of (pane);
  gboolean has_cloth = cloth != NULL
                       && sq_job_cloth (sq_document_get_job (pane->document), cloth->cloth) != NULL;
  for (guint i = 0; i < G_N_ELEMENTS (names); i++)
    g_simple_action_set_enabled (G_SIMPLE_ACTION (g_action_map_lookup_action (map, names[i])),
                                 has_cloth);
}

static void
follow (SqRollPane *pane)
{
  const SqLays *lays = sq_lay_finder_get_lays (pane->finder);
  const SqClothLay *cloth;
  if (lays != NULL)
    show_cloths (pane, lays);
  cloth = cloth_of (pane);
  show_figures (pane, lays, cloth);
  show_stop (pane);
  show_actions (pane);
  if (lays == NULL)
    return;
  show_unlaid (pane, lays, cloth);
  show_tooltip (pane, lays, cloth);
  show_kept (pane, cloth);
}

/* --- what is done ---------------------------------------------------------------------------- */

static void
on_cloth (GtkDropDown *drop_down, GParamSpec *spec, SqRollPane *pane)
{
  guint chosen = gtk_drop_down_get_selected (drop_down);
  (void) spec;
  if (chosen == GTK_INVALID_LIST_POSITION || chosen == pane->shown || pane->finder == NULL)
    return;
  pane->shown = chosen;
  gtk_toggle_button_set_active (GTK_TOGGLE_BUTTON (pane->show_kept), FALSE);
  follow (pane);
}

static void
on_stop (SqRollPane *pane)
{
  if (sq_lay_finder_is_stopped (pane->finder) || sq_lay_finder_can_search (pane->finder))
    sq_lay_finder_again (pane->finder);
  else
    sq_lay_finder_stop (pane->finder);
}

static void
on_keep (GtkToggleButton *button, SqRollPane *pane)
{
  const SqClothLay *cloth = pane->finder != NULL ? cloth_of (pane) : NULL;
  if (pane->is_showing || cloth == NULL)
    return;
  if (gtk_toggle_button_get_active (button))
    sq_edit_keep_lay (pane->document, sq_lay_finder_get_lays (pane->finder), pane->shown);
  else
    sq_edit_let_lay_go (pane->document, cloth->cloth);
}

static void
on_show_kept (SqRollPane *pane)
{
  if (pane->finder != NULL)
    show_kept (pane, cloth_of (pane));
}

static void
on_let_go (SqRollPane *pane)
{
  const SqClothLay *cloth = cloth_of (pane);
  if (cloth != NULL)
    sq_edit_let_lay_go (pane->document, cloth->cloth);
}

static void
on_keep_new (SqRollPane *pane)
{
  if (sq_lay_finder_is_current (pane->finder) && cloth_of (pane) != NULL)
    sq_edit_keep_lay (pane->document, sq_lay_finder_get_lays (pane->finder), pane->shown);
}

static void
on_stock (GSimpleAction *action, GVariant *parameter, gpointer data)
{
  SqRollPane *pane = data;
  const SqClothLay *cloth = cloth_of (pane);
  (void) action, (void) parameter;
  if (cloth != NULL)
    sq_stock_dialog (GTK_WINDOW (gtk_widget_get_root (GTK_WIDGET (pane))), pane->document,
                     cloth->cloth);
}

static void
on_widths (GSimpleAction *action, GVariant *parameter, gpointer data)
{
  SqRollPane *pane = data;
  const SqClothLay *cloth = cloth_of (pane);
  (void) action, (void) parameter;
  if (cloth != NULL)
    sq_widths_dialog (GTK_WINDOW (gtk_widget_get_root (GTK_WIDGET (pane))), pane->document,
                      cloth->cloth);
}

static void
on_cutting (GSimpleAction *action, GVariant *parameter, gpointer data)
{
  SqRollPane *pane = data;
  (void) action, (void) parameter;
  if (pane->document != NULL)
    sq_cutting_dialog (GTK_WINDOW (gtk_widget_get_root (GTK_WIDGET (pane))), pane->document);
}

static void
add_actions (SqRollPane *pane)
{
  const GActionEntry entries[] = { { .name = "stock", .activate = on_stock },
                                   { .name = "widths", .activate = on_widths },
                                   { .name = "cutting", .activate = on_cutting } };
  GActionGroup *group = sq_roll_canvas_get_actions (pane->canvas);
  g_action_map_add_action_entries (G_ACTION_MAP (group), entries, G_N_ELEMENTS (entries), pane);
  gtk_widget_insert_action_group (GTK_WIDGET (pane), "roll", group);
}

/* --- the widget ------------------------------------------------------------------------------ */

void
sq_roll_pane_set_document (SqRollPane *pane, SqDocument *document, SqLayFinder *finder,
                           SqSelection *selection)
{
  g_return_if_fail (SQ_IS_ROLL_PANE (pane));
  if (pane->finder != NULL)
    g_signal_handlers_disconnect_by_data (pane->finder, pane);
  g_set_object (&pane->document, document);
  g_set_object (&pane->finder, finder);
  sq_roll_canvas_set_document (pane->canvas, document, finder, selection);
  if (finder == NULL)
    return;
  g_signal_connect_swapped (finder, "changed", G_CALLBACK (follow), pane);
  follow (pane);
}

GtkWidget *
sq_roll_pane_get_canvas (SqRollPane *pane)
{
  g_return_val_if_fail (SQ_IS_ROLL_PANE (pane), NULL);
  return GTK_WIDGET (pane->canvas);
}

static void
sq_roll_pane_dispose (GObject *object)
{
  SqRollPane *pane = SQ_ROLL_PANE (object);
  if (pane->canvas != NULL)
    sq_roll_pane_set_document (pane, NULL, NULL, NULL);
  pane->canvas = NULL;
  G_OBJECT_CLASS (sq_roll_pane_parent_class)->dispose (object);
}

#define BIND(name) gtk_widget_class_bind_template_child (widget_class, SqRollPane, name)

static void
sq_roll_pane_class_init (SqRollPaneClass *class)
{
  GtkWidgetClass *widget_class = GTK_WIDGET_CLASS (class);
  G_OBJECT_CLASS (class)->dispose = sq_roll_pane_dispose;
  g_type_ensure (SQ_TYPE_ROLL_CANVAS);
  gtk_widget_class_set_template_from_resource (widget_class, "/org/squab/Squab/roll-pane.ui");
  BIND (cloths);
  BIND (figures);
  BIND (laid);
  BIND (stop);
  BIND (keep);
  BIND (fold);
  BIND (unlaid);
  BIND (offer);
  BIND (offer_words);
  BIND (show_kept);
  BIND (canvas);
  gtk_widget_class_bind_template_callback (widget_class, on_cloth);
  gtk_widget_class_bind_template_callback (widget_class, on_stop);
  gtk_widget_class_bind_template_callback (widget_class, on_keep);
  gtk_widget_class_bind_template_callback (widget_class, on_show_kept);
  gtk_widget_class_bind_template_callback (widget_class, on_let_go);
  gtk_widget_class_bind_template_callback (widget_class, on_keep_new);
}

static void
on_folded (SqRollPane *pane)
{
  gboolean is_open = gtk_widget_get_visible (GTK_WIDGET (pane->canvas));
  gtk_button_set_icon_name (GTK_BUTTON (pane->fold),
                            is_open ? "pan-down-symbolic" : "pan-up-symbolic");
}

static void
sq_roll_pane_init (SqRollPane *pane)
{
  gtk_widget_init_template (GTK_WIDGET (pane));
  add_actions (pane);
  g_signal_connect_object (pane->canvas, "notify::visible", G_CALLBACK (on_folded), pane,
                           G_CONNECT_SWAPPED);
}
