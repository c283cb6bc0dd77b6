/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "window/pieces-canvas.h"

#include "drawing/arrange.h"
#include "window/figures.h"

#include <glib/gi18n.h>
#include <string.h>

struct _SqPiecesCanvas
{
  SqCanvas parent;
  SqDocument *document;
  SqSelection *selection;
  SqCover *cover;             /* of the chosen cushion; NULL: none */
  GArray *labels;             /* of SqPieceLabel, owning their texts */
  SqArrangement *arrangement; /* of the cover's pieces; NULL: none yet */
};

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
#define LAYER_CHOSEN (SQ_PIECE_LABEL + 1)

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

/* Where a piece's (0, 0) is from the view's origin, in whole pixels. */
static SqPoint
stand_of (SqPiecesCanvas *canvas, guint i)
{
  SqVector offset = canvas->arrangement->stands[i].offset;
  double scale = sq_canvas_get_view (SQ_CANVAS (canvas))->scale;
  return sq_point (round (offset.x * scale), round (-offset.y * scale));
}

static void
append_piece (SqPiecesCanvas *canvas, GtkSnapshot *snapshot, guint i)
{
  SqPoint at = stand_of (canvas, i);
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

/* --- hands --------------------------------------------------------------------------------- */

/* Index of the piece there, −1: none. */
static int
piece_at (SqPiecesCanvas *canvas, SqPoint at)
{
  const SqView *view = sq_canvas_get_view (SQ_CANVAS (canvas));
  if (canvas->arrangement == NULL)
    return -1;
  for (guint i = canvas->cover->pieces->len; i-- > 0;)
    {
      SqView own = *view;
      own.origin = sq_add (view->origin, stand_of (canvas, i));
      if (sq_path_winding (sq_piece_cut (sq_cover_piece (canvas->cover, i), 0),
                           sq_view_to_mm (&own, at))
          != 0)
        return (int) i;
    }
  return -1;
}

static void
choose (SqPiecesCanvas *canvas, int i)
{
  if (i >= 0)
    sq_selection_choose_part (canvas->selection, SQ_AT_PIECE, (guint32) i);
  else
    sq_selection_choose_part (canvas->selection, SQ_AT_CUSHION, 0);
}

static gboolean
sq_pieces_canvas_press (SqCanvas *self, SqPoint at)
{
  SqPiecesCanvas *canvas = SQ_PIECES_CANVAS (self);
  if (canvas->document != NULL)
    choose (canvas, piece_at (canvas, at));
  return FALSE;
}

static void
sq_pieces_canvas_hover (SqCanvas *self, const SqPoint *at)
{
  gboolean is_over = at != NULL && piece_at (SQ_PIECES_CANVAS (self), *at) >= 0;
  gtk_widget_set_cursor_from_name (GTK_WIDGET (self), is_over ? "pointer" : NULL);
}

static void
nothing (SqCanvas *self)
{
  (void) self;
}

static void
nothing_at (SqCanvas *self, SqPoint at)
{
  (void) self, (void) at;
}

static gboolean
choose_next (SqPiecesCanvas *canvas, int by)
{
  const SqPlace *place = sq_selection_place (canvas->selection);
  int n = (int) canvas->cover->pieces->len, now = by > 0 ? -1 : 0;
  if (place->kind == SQ_AT_PIECE)
    now = (int) place->item;
  if (n > 0)
    choose (canvas, (now + by + n) % n);
  return n > 0;
}

static gboolean
sq_pieces_canvas_key (SqCanvas *self, guint keyval, GdkModifierType state)
{
  SqPiecesCanvas *canvas = SQ_PIECES_CANVAS (self);
  (void) state;
  if (canvas->cover == NULL)
    return FALSE;
  switch (keyval)
    {
    case GDK_KEY_Page_Down:
      return choose_next (canvas, 1);
    case GDK_KEY_Page_Up:
      return choose_next (canvas, -1);
    case GDK_KEY_Escape:
      if (sq_selection_place (canvas->selection)->kind != SQ_AT_PIECE)
        return FALSE;
      choose (canvas, -1);
      return TRUE;
    default:
      return FALSE;
    }
}

/* --- what it shows -------------------------------------------------------------------------- */

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
    g_string_append_printf (text, _ ("; %s chosen"),
                            g_array_index (canvas->labels, SqPieceLabel, place->item).name);
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

static void
follow (SqPiecesCanvas *canvas)
{
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
  G_OBJECT_CLASS (sq_pieces_canvas_parent_class)->dispose (object);
}

static void
sq_pieces_canvas_class_init (SqPiecesCanvasClass *class)
{
  SqCanvasClass *canvas_class = SQ_CANVAS_CLASS (class);
  G_OBJECT_CLASS (class)->dispose = sq_pieces_canvas_dispose;
  canvas_class->fit = sq_pieces_canvas_fit;
  canvas_class->draw = sq_pieces_canvas_draw;
  canvas_class->press = sq_pieces_canvas_press;
  canvas_class->drag = nothing_at;
  canvas_class->release = nothing;
  canvas_class->hover = sq_pieces_canvas_hover;
  canvas_class->key = sq_pieces_canvas_key;
  gtk_widget_class_set_css_name (GTK_WIDGET_CLASS (class), "pieces");
}

static void
sq_pieces_canvas_init (SqPiecesCanvas *canvas)
{
  canvas->labels = g_array_new (FALSE, FALSE, sizeof (SqPieceLabel));
  g_array_set_clear_func (canvas->labels, label_clear);
  gtk_accessible_update_property (GTK_ACCESSIBLE (canvas), GTK_ACCESSIBLE_PROPERTY_LABEL,
                                  _ ("Pieces"), -1);
}
