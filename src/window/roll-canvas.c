/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "window/roll-canvas.h"

#include "drawing/piece-scene.h"
#include "drawing/roll-scene.h"
#include "window/figures.h"
#include "words/lay-words.h"
#include "words/piece-label.h"
#include "words/piece-names.h"

#include <glib/gi18n.h>

/* Around the roll, in em. */
#define MARGIN_EM 0.8
/* Of the pane's height a roll takes at least, however long it is. */
#define LEAST_SHARE 0.55

/* More pieces are not named one by one to a screen reader. */
#define MOST_TOLD 60

struct _SqRollCanvas
{
  SqCanvas parent;
  SqLayFinder *finder;
  SqSelection *selection;
  SqLays *lays;
  SqKeptLay *kept; /* shown in their place; NULL: they are shown */
  guint cloth;
  gint at; /* the placed piece the keyboard is on, −1: none */
};

G_DEFINE_TYPE (SqRollCanvas, sq_roll_canvas, SQ_TYPE_CANVAS)

enum
{
  LAYER_CLOTH = 2, /* after those of SqRollLayer */
  LAYER_END,
  LAYER_CHOSEN,
  LAYER_KEPT,
};

/* The lay that is shown; NULL: none. */
static const SqClothLay *
cloth_of (const SqRollCanvas *canvas)
{
  if (canvas->lays == NULL || canvas->cloth >= canvas->lays->cloths->len)
    return NULL;
  return sq_lays_cloth (canvas->lays, canvas->cloth);
}

static SqBox
shown_box (const SqRollCanvas *canvas)
{
  const SqClothLay *cloth = cloth_of (canvas);
  if (canvas->kept != NULL)
    return sq_roll_kept_box (canvas->kept);
  return cloth != NULL ? sq_roll_box (cloth) : sq_box_empty ();
}

/* --- drawing --------------------------------------------------------------------------------- */

static double
em_mm (SqRollCanvas *canvas)
{
  return sq_canvas_get_em (SQ_CANVAS (canvas)) / sq_canvas_get_view (SQ_CANVAS (canvas))->scale;
}

static SqRollLook
look_of (SqRollCanvas *canvas)
{
  return (SqRollLook){ .em_mm = em_mm (canvas),
                       .plain = canvas->lays->plan->job->defaults.cloth_colour };
}

static gpointer
ref_piece (gconstpointer piece)
{
  return sq_piece_ref (piece);
}

static void
unref_piece (gpointer piece)
{
  sq_piece_unref (piece);
}

/* What a layer's scene is made from. */
typedef struct
{
  guint layer, placed;
  const char *name;
} Part;

static SqScene *
make_chosen (SqRollCanvas *canvas, guint placed)
{
  SqSceneBuilder *builder = sq_scene_builder_new ();
  SqVector place = sq_roll_piece_place (canvas->lays, canvas->cloth, placed);
  g_autoptr (SqPath) cut = sq_roll_piece_cut (canvas->lays, canvas->cloth, placed);
  g_autoptr (SqPath) own = sq_path_moved (cut, 0, sq_scale (place, -1));
  const SqCloth *cloth = sq_plan_cloth (canvas->lays->plan, cloth_of (canvas)->cloth);
  SqGround ground = sq_cloth_ground (cloth, 0xffffff);
  sq_scene_set_ground (builder, &ground);
  sq_scene_stroke_path (builder, SQ_PEN_ACCENT, own);
  return sq_scene_builder_end (builder);
}

static SqScene *
make_part (SqCanvas *self, gconstpointer data)
{
  SqRollCanvas *canvas = SQ_ROLL_CANVAS (self);
  const Part *part = data;
  SqRollLook look = look_of (canvas);
  switch (part->layer)
    {
    case LAYER_CLOTH:
      return sq_roll_cloth_scene (canvas->lays, canvas->cloth, 0, INFINITY, &look);
    case LAYER_END:
      return sq_roll_end_scene (canvas->lays, canvas->cloth, 0, INFINITY);
    case LAYER_CHOSEN:
      return make_chosen (canvas, part->placed);
    case LAYER_KEPT:
      return sq_roll_kept_scene (canvas->kept, em_mm (canvas));
    default:
      return sq_roll_piece_scene (canvas->lays, canvas->cloth, part->placed,
                                  (SqRollLayer) part->layer, part->name, &look);
    }
}

static void
append_cloth (SqRollCanvas *canvas, GtkSnapshot *snapshot)
{
  const SqClothLay *cloth = cloth_of (canvas);
  const SqCloth *own = sq_plan_cloth (canvas->lays->plan, cloth->cloth);
  SqBox box = sq_roll_box (cloth);
  Part part = { .layer = LAYER_CLOTH };
  SqLayer what = { .layer = LAYER_CLOTH,
                   .look = { sq_figures_cloth_look (own), box.max.x, box.max.y,
                             canvas->lays->plan->job->defaults.cloth_colour },
                   .make = make_part,
                   .data = &part };
  sq_canvas_append (SQ_CANVAS (canvas), snapshot, &what);
  part.layer = what.layer = LAYER_END;
  what.look[0] = sq_lay_length (cloth->lay, 0);
  sq_canvas_append (SQ_CANVAS (canvas), snapshot, &what);
}

static gboolean
is_chosen (SqRollCanvas *canvas, const SqCutEntry *entry)
{
  const SqPlace *place = sq_selection_place (canvas->selection);
  const SqCover *cover = sq_plan_cover (canvas->lays->plan, entry->cushion);
  return place->kind == SQ_AT_PIECE && place->cushion == cover->cushion->id
         && place->item == entry->piece;
}

static void
append_piece (SqRollCanvas *canvas, GtkSnapshot *snapshot, guint i)
{
  const SqPlaced *placed = sq_lay_placed (cloth_of (canvas)->lay, i);
  const SqCutEntry *entry = sq_lays_entry (canvas->lays, placed);
  double scale = sq_canvas_get_view (SQ_CANVAS (canvas))->scale;
  SqVector place = sq_roll_piece_place (canvas->lays, canvas->cloth, i);
  g_autofree char *name = sq_words_piece (sq_plan_cover (canvas->lays->plan, entry->cushion),
                                          entry->piece);
  Part part = { .placed = i, .name = name };
  SqLayer what = {
    .subject = sq_lays_piece (canvas->lays, placed),
    .ref = ref_piece,
    .unref = unref_piece,
    .look = { (guint64) placed->pose.turn, em_mm (canvas), g_str_hash (name) * 31 + entry->number,
              sq_figures_cloth_look (sq_plan_cloth (canvas->lays->plan, entry->cloth)) },
    .make = make_part,
    .data = &part
  };
  gtk_snapshot_save (snapshot);
  gtk_snapshot_translate (snapshot, &GRAPHENE_POINT_INIT ((float) round (place.x * scale),
                                                          (float) round (-place.y * scale)));
  for (guint layer = SQ_ROLL_SHAPE; layer <= SQ_ROLL_LABEL; layer++)
    {
      part.layer = what.layer = layer;
      sq_canvas_append (SQ_CANVAS (canvas), snapshot, &what);
    }
  if (is_chosen (canvas, entry))
    {
      part.layer = what.layer = LAYER_CHOSEN;
      sq_canvas_append (SQ_CANVAS (canvas), snapshot, &what);
    }
  gtk_snapshot_restore (snapshot);
}

static gpointer
ref_kept (gconstpointer kept)
{
  return sq_kept_lay_ref (kept);
}

static void
unref_kept (gpointer kept)
{
  sq_kept_lay_unref (kept);
}

static void
append_kept (SqRollCanvas *canvas, GtkSnapshot *snapshot)
{
  Part part = { .layer = LAYER_KEPT };
  SqLayer what = { .subject = canvas->kept,
                   .ref = ref_kept,
                   .unref = unref_kept,
                   .layer = LAYER_KEPT,
                   .look = { em_mm (canvas) },
                   .make = make_part,
                   .data = &part };
  sq_canvas_append (SQ_CANVAS (canvas), snapshot, &what);
}

static void
sq_roll_canvas_draw (SqCanvas *self, GtkSnapshot *snapshot)
{
  SqRollCanvas *canvas = SQ_ROLL_CANVAS (self);
  const SqView *view = sq_canvas_get_view (self);
  const SqClothLay *cloth = cloth_of (canvas);
  gtk_snapshot_save (snapshot);
  gtk_snapshot_translate (snapshot,
                          &GRAPHENE_POINT_INIT ((float) view->origin.x, (float) view->origin.y));
  if (canvas->kept != NULL)
    append_kept (canvas, snapshot);
  else if (cloth != NULL)
    {
      append_cloth (canvas, snapshot);
      for (guint i = 0; i < cloth->lay->placed->len; i++)
        append_piece (canvas, snapshot, i);
    }
  gtk_snapshot_restore (snapshot);
}

/* All of it, the cut end at the left: a roll is read from there. A long one goes on beyond the pane, so
 * that what lies on it is still recognised. */
static SqView
sq_roll_canvas_fit (SqCanvas *self, int width, int height)
{
  double margin = MARGIN_EM * sq_canvas_get_em (self);
  SqBox box = shown_box (SQ_ROLL_CANVAS (self));
  SqView view = sq_view_fit (box, width, height, margin);
  double across = box.max.y - box.min.y;
  if (across > 0)
    view.scale = fmax (view.scale, LEAST_SHARE * (height - 2 * margin) / across);
  view.origin = sq_point (margin, height / 2.0 + view.scale * across / 2);
  return view;
}

/* --- hands ----------------------------------------------------------------------------------- */

static gint
piece_at (SqRollCanvas *canvas, SqPoint at)
{
  if (cloth_of (canvas) == NULL || canvas->kept != NULL)
    return -1;
  return sq_roll_piece_at (canvas->lays, canvas->cloth,
                           sq_view_to_mm (sq_canvas_get_view (SQ_CANVAS (canvas)), at));
}

/* Puts the keyboard on placed piece @i, and chooses its piece for all who show it. */
static void
choose (SqRollCanvas *canvas, gint i)
{
  canvas->at = i;
  if (i < 0)
    return;
  const SqCutEntry *entry = sq_lays_entry (canvas->lays,
                                           sq_lay_placed (cloth_of (canvas)->lay, (guint) i));
  const SqCover *cover = sq_plan_cover (canvas->lays->plan, entry->cushion);
  SqPlace place = { SQ_AT_PIECE, cover->cushion->id, entry->piece, NULL };
  sq_selection_choose (canvas->selection, &place);
}

static gboolean
sq_roll_canvas_press (SqCanvas *self, SqPoint at)
{
  choose (SQ_ROLL_CANVAS (self), piece_at (SQ_ROLL_CANVAS (self), at));
  return FALSE; /* nothing is dragged */
}

static void
sq_roll_canvas_hover (SqCanvas *self, const SqPoint *at)
{
  gboolean is_on = at != NULL && piece_at (SQ_ROLL_CANVAS (self), *at) >= 0;
  gtk_widget_set_cursor_from_name (GTK_WIDGET (self), is_on ? "pointer" : NULL);
}

static void
no_drag (SqCanvas *self, SqPoint at)
{
  (void) self, (void) at;
}

static void
no_release (SqCanvas *self)
{
  (void) self;
}

/* From piece to piece in the order of the cut list. */
static gboolean
sq_roll_canvas_key (SqCanvas *self, guint keyval, GdkModifierType state)
{
  SqRollCanvas *canvas = SQ_ROLL_CANVAS (self);
  gint n = cloth_of (canvas) != NULL && canvas->kept == NULL
               ? (gint) cloth_of (canvas)->lay->placed->len
               : 0;
  (void) state;
  if (n == 0)
    return FALSE;
  switch (keyval)
    {
    case GDK_KEY_Right:
    case GDK_KEY_Down:
      choose (canvas, (canvas->at + 1) % n);
      return TRUE;
    case GDK_KEY_Left:
    case GDK_KEY_Up:
      choose (canvas, canvas->at > 0 ? canvas->at - 1 : n - 1);
      return TRUE;
    default:
      return FALSE;
    }
}

/* "3, front boxing: 46 3⁄4 × 4, 0 – 19 7⁄8 from the cut end, …" */
static char *
placed_words (SqRollCanvas *canvas, guint i, gboolean is_set)
{
  const SqPlaced *placed = sq_lay_placed (cloth_of (canvas)->lay, i);
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
  gint i = by_keyboard ? canvas->at : piece_at (canvas, sq_point (x, y));
  if (i < 0 || cloth_of (canvas) == NULL || (guint) i >= cloth_of (canvas)->lay->placed->len)
    return FALSE;
  g_autofree char *words = placed_words (canvas, (guint) i, TRUE);
  gtk_tooltip_set_text (tooltip, words);
  return TRUE;
}

/* --- what it shows --------------------------------------------------------------------------- */

static void
tell (SqRollCanvas *canvas)
{
  const SqClothLay *cloth = cloth_of (canvas);
  g_autoptr (GString) text = g_string_new (NULL);
  if (cloth != NULL)
    {
      SqLengthStyle style = sq_figures_style (canvas->lays->plan->job);
      style.set = FALSE;
      guint n = cloth->lay->placed->len;
      g_autofree char *buy = sq_words_purchase (&cloth->purchase, &style);
      g_string_append_printf (text, ngettext ("%u piece; %s", "%u pieces; %s", n), n, buy);
      for (guint i = 0; i < MIN (n, MOST_TOLD); i++)
        {
          g_autofree char *words = placed_words (canvas, i, FALSE);
          g_string_append_printf (text, "; %s", words);
        }
      if (canvas->at >= 0 && (guint) canvas->at < n)
        {
          g_autofree char *words = placed_words (canvas, (guint) canvas->at, FALSE);
          /* Translators: a piece on the roll. */
          g_string_append_printf (text, _ ("; chosen: %s"), words);
        }
    }
  gtk_accessible_update_property (GTK_ACCESSIBLE (canvas), GTK_ACCESSIBLE_PROPERTY_LABEL,
                                  _ ("Roll"), GTK_ACCESSIBLE_PROPERTY_DESCRIPTION, text->str, -1);
}

static void
show_again (SqRollCanvas *canvas)
{
  if (sq_canvas_is_fitted (SQ_CANVAS (canvas)))
    sq_canvas_fit (SQ_CANVAS (canvas));
  tell (canvas);
  gtk_widget_queue_draw (GTK_WIDGET (canvas));
}

static void
follow (SqRollCanvas *canvas)
{
  const SqLays *lays = canvas->finder != NULL ? sq_lay_finder_get_lays (canvas->finder) : NULL;
  if (lays == canvas->lays)
    return;
  g_clear_pointer (&canvas->lays, sq_lays_unref);
  canvas->lays = lays != NULL ? sq_lays_ref (lays) : NULL;
  canvas->at = -1;
  show_again (canvas);
}

static void
on_selection (SqRollCanvas *canvas)
{
  const SqClothLay *cloth = cloth_of (canvas);
  gboolean is_there = cloth != NULL && canvas->at >= 0
                      && (guint) canvas->at < cloth->lay->placed->len;
  if (is_there
      && !is_chosen (canvas,
                     sq_lays_entry (canvas->lays, sq_lay_placed (cloth->lay, (guint) canvas->at))))
    canvas->at = -1;
  tell (canvas);
  gtk_widget_queue_draw (GTK_WIDGET (canvas));
}

void
sq_roll_canvas_set_cloth (SqRollCanvas *canvas, guint cloth)
{
  g_return_if_fail (SQ_IS_ROLL_CANVAS (canvas));
  if (canvas->cloth == cloth)
    return;
  canvas->cloth = cloth;
  canvas->at = -1;
  show_again (canvas);
}

void
sq_roll_canvas_show_kept (SqRollCanvas *canvas, const SqKeptLay *kept)
{
  g_return_if_fail (SQ_IS_ROLL_CANVAS (canvas));
  if (canvas->kept == kept)
    return;
  g_clear_pointer (&canvas->kept, sq_kept_lay_unref);
  canvas->kept = kept != NULL ? sq_kept_lay_ref (kept) : NULL;
  canvas->at = -1;
  show_again (canvas);
}

void
sq_roll_canvas_set_finder (SqRollCanvas *canvas, SqLayFinder *finder, SqSelection *selection)
{
  g_return_if_fail (SQ_IS_ROLL_CANVAS (canvas));
  if (canvas->finder != NULL)
    g_signal_handlers_disconnect_by_data (canvas->finder, canvas);
  if (canvas->selection != NULL)
    g_signal_handlers_disconnect_by_data (canvas->selection, canvas);
  g_set_object (&canvas->finder, finder);
  g_set_object (&canvas->selection, selection);
  if (finder != NULL)
    {
      g_signal_connect_swapped (finder, "changed", G_CALLBACK (follow), canvas);
      g_signal_connect_swapped (selection, "changed", G_CALLBACK (on_selection), canvas);
    }
  follow (canvas);
}

static void
sq_roll_canvas_dispose (GObject *object)
{
  SqRollCanvas *canvas = SQ_ROLL_CANVAS (object);
  sq_roll_canvas_set_finder (canvas, NULL, NULL);
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
  canvas_class->draw = sq_roll_canvas_draw;
  canvas_class->press = sq_roll_canvas_press;
  canvas_class->drag = no_drag;
  canvas_class->release = no_release;
  canvas_class->hover = sq_roll_canvas_hover;
  canvas_class->key = sq_roll_canvas_key;
  GTK_WIDGET_CLASS (class)->query_tooltip = sq_roll_canvas_query_tooltip;
  gtk_widget_class_set_css_name (GTK_WIDGET_CLASS (class), "roll");
}

static void
sq_roll_canvas_init (SqRollCanvas *canvas)
{
  canvas->at = -1;
  gtk_widget_set_has_tooltip (GTK_WIDGET (canvas), TRUE);
  gtk_accessible_update_property (GTK_ACCESSIBLE (canvas), GTK_ACCESSIBLE_PROPERTY_LABEL,
                                  _ ("Roll"), -1);
}
