/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "window/pieces-canvas-private.h"

#include "drawing/seam-drawn.h"
#include "window/figures.h"
#include "words/piece-remarks.h"
#include "words/seam-words.h"

#include <glib/gi18n.h>
#include <string.h>

G_DEFINE_TYPE (SqPiecesCanvas, sq_pieces_canvas, SQ_TYPE_CANVAS)

/* Around the table and between pieces (em). */
#define MARGIN_EM 1.5
#define GAP_EM 1.3

/* --- scenes -------------------------------------------------------------------------------- */

/* What the scene of a layer is made from. */
typedef struct
{
  const SqPiece *piece;
  const SqCloth *cloth;
  const SqPieceLabel *label;
  SqPieceLayer layer;
} Part;

/* After those of SqPieceLayer. */
enum
{
  LAYER_CHOSEN = SQ_PIECE_LABEL + 1,
  LAYER_SEAM,
  LAYER_SEAM_HOVERED,
  LAYER_PROBLEMS, /* and the next ones: a layer for each severity */
};

/* A seam that the pointer is on is lit less than the chosen one. */
#define HOVERED_WEIGHT 0.5

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

/* Size of text in mm of the pieces. Between pieces seen smaller than they were arranged for, text
 * gets smaller too. */
static double
em_mm (SqPiecesCanvas *canvas)
{
  SqCanvas *self = SQ_CANVAS (canvas);
  return sq_canvas_get_em (self)
         / fmax (sq_canvas_get_view (self)->scale, canvas->arrangement->scale);
}

static SqScene *
make_part (SqCanvas *self, gconstpointer data)
{
  SqPiecesCanvas *canvas = SQ_PIECES_CANVAS (self);
  const Part *part = data;
  SqPieceLook look = { em_mm (canvas) };
  guint32 plain = sq_document_get_job (canvas->document)->defaults.cloth_colour;
  return sq_piece_scene (part->piece, part->cloth, plain, part->layer, part->label, &look);
}

static SqScene *
make_chosen (SqCanvas *self, gconstpointer data)
{
  const Part *part = data;
  SqSceneBuilder *builder = sq_scene_builder_new ();
  SqGround ground = sq_cloth_ground (part->cloth, 0xffffff);
  (void) self;
  sq_scene_set_ground (builder, &ground);
  sq_scene_begin_stroke (builder, SQ_PEN_ACCENT);
  for (guint ring = 0; ring < part->piece->cut->len; ring++)
    sq_scene_add_path (builder, sq_piece_cut (part->piece, ring));
  return sq_scene_builder_end (builder);
}

static void
append_part (SqPiecesCanvas *canvas, GtkSnapshot *snapshot, const Part *part, guint layer)
{
  SqLayer what = { .subject = part->piece,
                   .ref = ref_piece,
                   .unref = unref_piece,
                   .layer = layer,
                   .look = { sq_figures_cloth_look (part->cloth), g_str_hash (part->label->name),
                             g_str_hash (part->label->size), em_mm (canvas) },
                   .make = layer == LAYER_CHOSEN ? make_chosen : make_part,
                   .data = part };
  sq_canvas_append (SQ_CANVAS (canvas), snapshot, &what);
}

static gboolean
is_chosen (SqPiecesCanvas *canvas, guint i)
{
  const SqPlace *place = sq_selection_place (canvas->selection);
  return place->kind == SQ_AT_PIECE && place->item == i;
}

SqPoint
sq_pieces_stand (SqPiecesCanvas *canvas, guint i)
{
  SqVector offset = canvas->arrangement->stands[i].offset;
  double scale = sq_canvas_get_view (SQ_CANVAS (canvas))->scale;
  return sq_point (round (offset.x * scale), round (-offset.y * scale));
}

static void
append_piece (SqPiecesCanvas *canvas, GtkSnapshot *snapshot, guint i)
{
  SqPoint at = sq_pieces_stand (canvas, i);
  Part part = { .piece = sq_cover_piece (canvas->cover, i),
                .label = &g_array_index (canvas->labels, SqPieceLabel, i) };
  part.cloth = sq_plan_cloth (sq_document_get_plan (canvas->document), part.piece->cloth);
  gtk_snapshot_save (snapshot);
  gtk_snapshot_translate (snapshot, &GRAPHENE_POINT_INIT ((float) at.x, (float) at.y));
  for (part.layer = SQ_PIECE_CLOTH; part.layer <= SQ_PIECE_LINES; part.layer++)
    append_part (canvas, snapshot, &part, part.layer);
  if (is_chosen (canvas, i))
    append_part (canvas, snapshot, &part, LAYER_CHOSEN);
  part.layer = SQ_PIECE_LABEL;
  append_part (canvas, snapshot, &part, SQ_PIECE_LABEL);
  gtk_snapshot_restore (snapshot);
}

/* One side of a seam, lit. */
typedef struct
{
  const SqCover *cover;
  guint seam;
  gboolean b;
} Lit;

static SqScene *
make_lit (SqCanvas *self, gconstpointer data)
{
  const Lit *lit = data;
  return sq_seam_side_scene (lit->cover, lit->seam, lit->b, em_mm (SQ_PIECES_CANVAS (self)));
}

static void
append_lit (SqPiecesCanvas *canvas, GtkSnapshot *snapshot, const Lit *lit, gboolean is_chosen)
{
  const SqSeam *seam = sq_cover_seam (canvas->cover, lit->seam);
  const SqSide *side = lit->b ? &seam->b : &seam->a;
  SqLayer what = { .layer = is_chosen ? LAYER_SEAM : LAYER_SEAM_HOVERED,
                   .ref = ref_piece,
                   .unref = unref_piece,
                   .look = { side->first_run, side->n_runs, lit->b, em_mm (canvas) },
                   .weight = is_chosen ? 1 : HOVERED_WEIGHT,
                   .make = make_lit,
                   .data = lit };
  SqPoint at;
  if (side->n_runs == 0)
    return;
  at = sq_pieces_stand (canvas, side->piece);
  what.subject = sq_cover_piece (canvas->cover, side->piece);
  gtk_snapshot_save (snapshot);
  gtk_snapshot_translate (snapshot, &GRAPHENE_POINT_INIT ((float) at.x, (float) at.y));
  sq_canvas_append (SQ_CANVAS (canvas), snapshot, &what);
  gtk_snapshot_restore (snapshot);
}

static void
append_seam (SqPiecesCanvas *canvas, GtkSnapshot *snapshot, gint seam, gboolean is_chosen)
{
  if (seam < 0)
    return;
  append_lit (canvas, snapshot, &(Lit){ canvas->cover, (guint) seam, FALSE }, is_chosen);
  append_lit (canvas, snapshot, &(Lit){ canvas->cover, (guint) seam, TRUE }, is_chosen);
}

static void
append_marks (SqPiecesCanvas *canvas, GtkSnapshot *snapshot)
{
  g_autoptr (GArray) marks = sq_pieces_marks (canvas);
  sq_problem_marks_append (SQ_CANVAS (canvas), snapshot, marks, LAYER_PROBLEMS);
}

static void
sq_pieces_canvas_draw (SqCanvas *self, GtkSnapshot *snapshot)
{
  SqPiecesCanvas *canvas = SQ_PIECES_CANVAS (self);
  const SqView *view = sq_canvas_get_view (self);
  if (canvas->arrangement == NULL)
    return;
  gtk_snapshot_save (snapshot);
  gtk_snapshot_translate (snapshot,
                          &GRAPHENE_POINT_INIT ((float) view->origin.x, (float) view->origin.y));
  for (guint i = 0; i < canvas->cover->pieces->len; i++)
    append_piece (canvas, snapshot, i);
  if (canvas->hovered_seam != sq_pieces_chosen_seam (canvas))
    append_seam (canvas, snapshot, canvas->hovered_seam, FALSE);
  append_seam (canvas, snapshot, sq_pieces_chosen_seam (canvas), TRUE);
  append_marks (canvas, snapshot);
  gtk_snapshot_restore (snapshot);
}

/* --- the table ----------------------------------------------------------------------------- */

static void
label_clear (gpointer label)
{
  sq_piece_label_clear (label);
}

static void
make_labels (SqPiecesCanvas *canvas)
{
  SqLengthStyle style = sq_figures_style (sq_document_get_job (canvas->document));
  g_array_set_size (canvas->labels, 0);
  for (guint i = 0; i < canvas->cover->pieces->len; i++)
    {
      SqPieceLabel label;
      sq_piece_label_init (&label, canvas->cover, i, &style);
      g_array_append_val (canvas->labels, label);
    }
}

static void
arrange (SqPiecesCanvas *canvas, const SqTable *table)
{
  SqArrangement *before = canvas->arrangement;
  canvas->arrangement = NULL;
  if (before != NULL && memcmp (&before->table, table, sizeof *table) != 0)
    g_clear_pointer (&before, sq_arrangement_free);
  if (canvas->cover != NULL && canvas->cover->pieces->len > 0)
    canvas->arrangement = sq_arrangement_new (
        canvas->cover->pieces, (const SqPieceLabel *) (gpointer) canvas->labels->data, table,
        before);
  g_clear_pointer (&before, sq_arrangement_free);
}

static SqView
sq_pieces_canvas_fit (SqCanvas *self, int width, int height)
{
  SqPiecesCanvas *canvas = SQ_PIECES_CANVAS (self);
  double em = sq_canvas_get_em (self);
  SqTable table = { width, height, MARGIN_EM * em, GAP_EM * em, em };
  SqView view = { .scale = 1, .origin = sq_point (0, height) };
  arrange (canvas, &table);
  if (canvas->arrangement != NULL)
    view.scale = canvas->arrangement->scale;
  return view;
}

/* --- what it shows -------------------------------------------------------------------------- */

static SqLengthStyle
plain_style (SqPiecesCanvas *canvas)
{
  SqLengthStyle style = sq_figures_style (sq_document_get_job (canvas->document));
  style.set = FALSE;
  return style;
}

/* "; Top chosen: 5 match notches, …" */
static void
describe_piece (SqPiecesCanvas *canvas, guint i, GString *text)
{
  SqLengthStyle style = plain_style (canvas);
  g_autoptr (GPtrArray) remarks = sq_words_piece_remarks (canvas->cover, i, &style);
  g_string_append_printf (text, _ ("; %s chosen"),
                          g_array_index (canvas->labels, SqPieceLabel, i).name);
  for (guint k = 0; k < remarks->len; k++)
    g_string_append_printf (text, "; %s", (const char *) g_ptr_array_index (remarks, k));
}

static void
describe_seam (SqPiecesCanvas *canvas, guint seam, GString *text)
{
  SqLengthStyle style = plain_style (canvas);
  g_autofree char *sentence = sq_words_seam_sentence (canvas->cover, seam, &style);
  /* Translators: a seam in words. */
  g_string_append_printf (text, _ ("; seam: %s"), sentence);
}

/* All pieces in words: "7 pieces; Top 46 3⁄4 × 20 1⁄8, cut 1; …" */
static char *
describe (SqPiecesCanvas *canvas)
{
  guint n = canvas->cover != NULL ? canvas->cover->pieces->len : 0;
  const SqPlace *place = n > 0 ? sq_selection_place (canvas->selection) : NULL;
  GString *text = g_string_new (NULL);
  g_string_append_printf (text, ngettext ("%u piece", "%u pieces", n), n);
  for (guint i = 0; i < n; i++)
    {
      const SqPieceLabel *label = &g_array_index (canvas->labels, SqPieceLabel, i);
      g_string_append_printf (text, "; %s %s, %s", label->name, label->size, label->count);
    }
  if (place != NULL && place->kind == SQ_AT_PIECE && place->item < n)
    describe_piece (canvas, place->item, text);
  if (sq_pieces_chosen_seam (canvas) >= 0)
    describe_seam (canvas, (guint) sq_pieces_chosen_seam (canvas), text);
  return g_string_free (text, FALSE);
}

static void
tell (SqPiecesCanvas *canvas)
{
  g_autofree char *text = describe (canvas);
  gtk_accessible_update_property (GTK_ACCESSIBLE (canvas), GTK_ACCESSIBLE_PROPERTY_LABEL,
                                  _ ("Pieces"), GTK_ACCESSIBLE_PROPERTY_DESCRIPTION, text, -1);
}

/* The pieces have changed: they stand as before as long as that does nearly as well. */
static void
arrange_again (SqPiecesCanvas *canvas)
{
  SqCanvas *self = SQ_CANVAS (canvas);
  make_labels (canvas);
  if (sq_canvas_is_fitted (self))
    sq_canvas_fit (self);
  else
    {
      SqTable table = { 0 };
      if (canvas->arrangement != NULL)
        table = canvas->arrangement->table;
      if (table.width > 0)
        arrange (canvas, &table);
      else
        sq_canvas_fit (self);
    }
}

/* What was chosen goes on being chosen where the new cover has it. */
static void
choose_again (SqPiecesCanvas *canvas, const SqCover *before)
{
  const SqPlace *place = sq_selection_place (canvas->selection);
  gint again = -1;
  canvas->hovered_seam = -1;
  if (canvas->cover == NULL || place->cushion != before->cushion->id
      || (place->kind != SQ_AT_PIECE && place->kind != SQ_AT_SEAM))
    return;
  if (place->kind == SQ_AT_PIECE && place->item < before->pieces->len)
    again = sq_piece_again (before, place->item, canvas->cover);
  if (place->kind == SQ_AT_SEAM && place->item < before->seams->len)
    again = sq_seam_again (before, place->item, canvas->cover);
  if (again >= 0)
    sq_selection_choose_part (canvas->selection, place->kind, (guint32) again);
  else
    sq_selection_choose_part (canvas->selection, SQ_AT_CUSHION, 0);
}

static void
follow (SqPiecesCanvas *canvas)
{
  g_autoptr (SqCover) old = canvas->cover != NULL ? sq_cover_ref (canvas->cover) : NULL;
  SqId before = canvas->cover != NULL ? canvas->cover->cushion->id : 0;
  SqId now = canvas->document != NULL ? sq_selection_cushion (canvas->selection) : 0;
  const SqCover *cover = canvas->document != NULL
                             ? sq_document_get_cover (canvas->document, now, NULL)
                             : NULL;
  if (cover == canvas->cover)
    return;
  g_clear_pointer (&canvas->cover, sq_cover_unref);
  canvas->cover = cover != NULL ? sq_cover_ref (cover) : NULL;
  if (before != now || cover == NULL)
    g_clear_pointer (&canvas->arrangement, sq_arrangement_free);
  if (cover != NULL)
    arrange_again (canvas);
  if (old != NULL && before == now)
    choose_again (canvas, old);
  tell (canvas);
  gtk_widget_queue_draw (GTK_WIDGET (canvas));
}

static void
on_selection (SqPiecesCanvas *canvas)
{
  follow (canvas);
  tell (canvas);
  gtk_widget_queue_draw (GTK_WIDGET (canvas));
}

void
sq_pieces_canvas_set_document (SqPiecesCanvas *canvas, SqDocument *document, SqSelection *selection)
{
  g_return_if_fail (SQ_IS_PIECES_CANVAS (canvas));
  if (canvas->document != NULL)
    g_signal_handlers_disconnect_by_data (canvas->document, canvas);
  if (canvas->selection != NULL)
    g_signal_handlers_disconnect_by_data (canvas->selection, canvas);
  g_clear_pointer (&canvas->cover, sq_cover_unref);
  g_clear_pointer (&canvas->arrangement, sq_arrangement_free);
  g_set_object (&canvas->document, document);
  g_set_object (&canvas->selection, selection);
  if (document != NULL)
    {
      g_signal_connect_swapped (document, "changed", G_CALLBACK (follow), canvas);
      g_signal_connect_swapped (selection, "changed", G_CALLBACK (on_selection), canvas);
    }
  follow (canvas);
}

static void
sq_pieces_canvas_dispose (GObject *object)
{
  SqPiecesCanvas *canvas = SQ_PIECES_CANVAS (object);
  if (canvas->document != NULL)
    sq_pieces_canvas_set_document (canvas, NULL, NULL);
  g_clear_pointer (&canvas->labels, g_array_unref);
  g_clear_pointer (&canvas->base, sq_job_unref);
  g_clear_pointer (&canvas->held_cover, sq_cover_unref);
  g_clear_pointer (&canvas->menu, gtk_widget_unparent);
  g_clear_object (&canvas->actions);
  G_OBJECT_CLASS (sq_pieces_canvas_parent_class)->dispose (object);
}

static void
sq_pieces_canvas_class_init (SqPiecesCanvasClass *class)
{
  SqCanvasClass *canvas_class = SQ_CANVAS_CLASS (class);
  G_OBJECT_CLASS (class)->dispose = sq_pieces_canvas_dispose;
  canvas_class->fit = sq_pieces_canvas_fit;
  canvas_class->draw = sq_pieces_canvas_draw;
  canvas_class->press = sq_pieces_press;
  canvas_class->drag = sq_pieces_drag;
  canvas_class->release = sq_pieces_release;
  canvas_class->hover = sq_pieces_hover;
  canvas_class->key = sq_pieces_key;
  GTK_WIDGET_CLASS (class)->query_tooltip = sq_pieces_query_tooltip;
  gtk_widget_class_set_css_name (GTK_WIDGET_CLASS (class), "pieces");
}

static void
sq_pieces_canvas_init (SqPiecesCanvas *canvas)
{
  canvas->labels = g_array_new (FALSE, FALSE, sizeof (SqPieceLabel));
  g_array_set_clear_func (canvas->labels, label_clear);
  canvas->hovered_seam = -1;
  sq_pieces_add_menu (canvas);
  sq_pieces_add_hands (canvas);
  gtk_widget_set_has_tooltip (GTK_WIDGET (canvas), TRUE);
  gtk_accessible_update_property (GTK_ACCESSIBLE (canvas), GTK_ACCESSIBLE_PROPERTY_LABEL,
                                  _ ("Pieces"), -1);
}
