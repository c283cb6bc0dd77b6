/* SPDX-License-Identifier: GPL-3.0-or-later */
/* How the roll is drawn: cloth, pieces, and what is said on them. */
#include "window/roll-canvas-private.h"

#include "drawing/piece-scene.h"
#include "drawing/roll-scene.h"
#include "window/figures.h"
#include "words/piece-names.h"
#include "words/strip-words.h"

enum
{
  LAYER_CLOTH = 2, /* after those of SqRollLayer */
  LAYER_END,
  LAYER_CHOSEN,
  LAYER_KEPT,
  LAYER_NAME,
  LAYER_PIN,
};

/* The mark of a pinned piece: its size, and what it keeps from the corner of the piece's box (em). */
#define PIN_EM 0.3
#define PIN_PAD_EM 0.9

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
  guint layer, placed; /* or a strip */
  const char *name;
} Part;

static SqScene *
make_chosen (SqRollCanvas *canvas, guint placed)
{
  SqSceneBuilder *builder = sq_scene_builder_new ();
  SqVector place = sq_roll_piece_place (canvas->lays, canvas->cloth, placed);
  g_autoptr (SqPath) cut = sq_roll_piece_cut (canvas->lays, canvas->cloth, placed);
  g_autoptr (SqPath) own = sq_path_moved (cut, 0, sq_scale (place, -1));
  const SqCloth *cloth = sq_plan_cloth (canvas->lays->plan, sq_roll_cloth_lay (canvas)->cloth);
  SqGround ground = sq_cloth_ground (cloth, 0xffffff);
  sq_scene_set_ground (builder, &ground);
  sq_scene_stroke_path (builder, SQ_PEN_ACCENT, own);
  return sq_scene_builder_end (builder);
}

/* A needle with a head, in a corner of the piece that has room for it. */
static SqScene *
make_pin (SqRollCanvas *canvas, guint placed)
{
  SqSceneBuilder *builder = sq_scene_builder_new ();
  double em = em_mm (canvas), pad = PIN_PAD_EM * em;
  SqVector place = sq_roll_piece_place (canvas->lays, canvas->cloth, placed);
  g_autoptr (SqPath) cut = sq_roll_piece_cut (canvas->lays, canvas->cloth, placed);
  g_autoptr (SqPath) own = sq_path_moved (cut, 0, sq_scale (place, -1));
  SqBox box = sq_path_box (own);
  const SqPoint corners[] = { sq_point (box.max.x - pad, box.max.y - pad),
                              sq_point (box.min.x + pad, box.max.y - pad),
                              sq_point (box.max.x - pad, box.min.y + pad),
                              sq_point (box.min.x + pad, box.min.y + pad) };
  SqPoint at = sq_point ((box.min.x + box.max.x) / 2, (box.min.y + box.max.y) / 2);
  for (guint i = G_N_ELEMENTS (corners); i-- > 0;)
    if (sq_path_winding (own, corners[i]) != 0)
      at = corners[i];
  sq_scene_begin_fill (builder, SQ_FILL_HANDLE);
  sq_scene_add_circle (builder, at, PIN_EM * em);
  sq_scene_begin_stroke (builder, SQ_PEN_ACCENT);
  sq_scene_add_circle (builder, at, PIN_EM * em);
  sq_scene_add_line (builder, sq_add (at, sq_scale (sq_point (-0.7, -0.7), PIN_EM * em)),
                     sq_add (at, sq_scale (sq_point (-1.9, -1.9), PIN_EM * em)));
  return sq_scene_builder_end (builder);
}

static SqScene *
make_name (SqRollCanvas *canvas, guint strip)
{
  SqRollLook look = look_of (canvas);
  SqLengthStyle style = sq_figures_style (canvas->lays->plan->job);
  const SqClothLay *cloth = sq_roll_cloth_lay (canvas);
  g_autofree char *name = sq_words_strip_name (canvas->lays, cloth, strip);
  g_autofree char *size = sq_words_strip_size (canvas->lays, cloth, strip, &style);
  return sq_roll_name_scene (cloth, strip, name, size, &look);
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
    case LAYER_PIN:
      return make_pin (canvas, part->placed);
    case LAYER_NAME:
      return make_name (canvas, part->placed);
    case LAYER_KEPT:
      return sq_roll_kept_scene (canvas->kept, em_mm (canvas));
    default:
      return sq_roll_piece_scene (canvas->lays, canvas->cloth, part->placed,
                                  (SqRollLayer) part->layer, part->name, &look);
    }
}

/* A number that two lays share only if their strips look alike. */
static double
look_of_strips (const SqClothLay *cloth, const SqCloth *own)
{
  guint look = sq_figures_cloth_look (own);
  for (guint i = 0; i < cloth->task->strips->len; i++)
    {
      const SqLayStrip *strip = sq_lay_task_strip (cloth->task, i);
      look = look * 31 + (guint) strip->width;
      look = look * 31 + (guint) strip->length;
      look = look * 31 + (guint) sq_lay_length (cloth->lay, i);
      for (guint k = 0; k < strip->n_flaws; k++)
        {
          const SqGridBox *flaw = &strip->flaws[k];
          look = look * 31 + (guint) flaw->min.x;
          look = look * 31 + (guint) flaw->min.y;
          look = look * 31 + (guint) flaw->max.x;
          look = look * 31 + (guint) flaw->max.y;
        }
    }
  return look;
}

static void
append_names (SqRollCanvas *canvas, GtkSnapshot *snapshot, SqLayer what)
{
  const SqClothLay *cloth = sq_roll_cloth_lay (canvas);
  double scale = sq_canvas_get_view (SQ_CANVAS (canvas))->scale;
  for (guint i = 0; sq_words_names_strips (cloth) && i < cloth->task->strips->len; i++)
    {
      SqVector by = sq_roll_strip_offset (cloth, i);
      Part part = { .layer = LAYER_NAME, .placed = i };
      what.layer = LAYER_NAME;
      what.look[1] = i;
      what.data = &part;
      gtk_snapshot_save (snapshot);
      gtk_snapshot_translate (snapshot, &GRAPHENE_POINT_INIT ((float) round (by.x * scale),
                                                              (float) round (-by.y * scale)));
      sq_canvas_append (SQ_CANVAS (canvas), snapshot, &what);
      gtk_snapshot_restore (snapshot);
    }
}

static void
append_cloth (SqRollCanvas *canvas, GtkSnapshot *snapshot)
{
  const SqClothLay *cloth = sq_roll_cloth_lay (canvas);
  SqBox box = sq_roll_box (cloth);
  Part part = { .layer = LAYER_CLOTH };
  SqLayer what = { .layer = LAYER_CLOTH,
                   .look = { look_of_strips (cloth, sq_roll_cloth (canvas)), box.max.x, box.max.y,
                             canvas->lays->plan->job->defaults.cloth_colour },
                   .make = make_part,
                   .data = &part };
  sq_canvas_append (SQ_CANVAS (canvas), snapshot, &what);
  part.layer = what.layer = LAYER_END;
  sq_canvas_append (SQ_CANVAS (canvas), snapshot, &what);
  append_names (canvas, snapshot, what);
}

gboolean
sq_roll_is_chosen (SqRollCanvas *canvas, const SqCutEntry *entry)
{
  const SqPlace *place = sq_selection_place (canvas->selection);
  const SqCover *cover = sq_plan_cover (canvas->lays->plan, entry->cushion);
  return place->kind == SQ_AT_PIECE && place->cushion == cover->cushion->id
         && place->item == entry->piece;
}

static void
append_piece (SqRollCanvas *canvas, GtkSnapshot *snapshot, guint i)
{
  const SqPlaced *placed = sq_lay_placed (sq_roll_cloth_lay (canvas)->lay, i);
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
  if (sq_lays_is_pinned (sq_roll_cloth_lay (canvas), placed))
    {
      part.layer = what.layer = LAYER_PIN;
      sq_canvas_append (SQ_CANVAS (canvas), snapshot, &what);
    }
  if (canvas->hold != NULL ? i == sq_roll_hold_placed (canvas->hold)
                           : sq_roll_is_chosen (canvas, entry))
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

/* What is left and worth keeping: a quiet outline with its size. */
static void
append_leftovers (SqRollCanvas *canvas, GtkSnapshot *snapshot)
{
  const SqClothLay *cloth = sq_roll_cloth_lay (canvas);
  SqLengthStyle style = sq_figures_style (canvas->lays->plan->job);
  SqSceneBuilder *builder = sq_scene_builder_new ();
  double em = 0.85 * em_mm (canvas);
  for (guint i = 0; canvas->leftovers != NULL && i < canvas->leftovers->len; i++)
    {
      const SqLeftover *leftover = &g_array_index (canvas->leftovers, SqLeftover, i);
      SqPoint min = sq_add (sq_roll_strip_offset (cloth, leftover->strip),
                            sq_point (leftover->x_mm, leftover->y_mm));
      SqPoint max = sq_add (min, sq_point (leftover->along_mm, leftover->across_mm));
      g_autoptr (SqPath) border = sq_path_new_rectangle (min.x, min.y, max.x, max.y);
      g_autofree char *text = sq_figures_size (leftover->along_mm, leftover->across_mm, &style);
      double width = sq_text_width_em (text, FALSE) * em, height = SQ_TEXT_HEIGHT_EM * em;
      SqPoint at = sq_point ((min.x + max.x) / 2, (min.y + max.y) / 2);
      gboolean is_high = width + em > max.x - min.x;
      sq_scene_stroke_path (builder, SQ_PEN_CHORD, border);
      if (is_high && width + em > max.y - min.y)
        continue;
      sq_scene_begin_fill (builder, SQ_FILL_PLATE);
      sq_scene_add_plate (builder, at, width + em / 2, height, is_high ? M_PI / 2 : 0, em / 3);
      sq_scene_add_text (builder, &(SqText){ .at = at,
                                             .angle_rad = is_high ? M_PI / 2 : 0,
                                             .em_mm = em,
                                             .width_mm = width,
                                             .tone = SQ_TONE_DIM,
                                             .text = text });
    }
  g_autoptr (SqScene) scene = sq_scene_builder_end (builder);
  if (canvas->leftovers != NULL && canvas->leftovers->len > 0)
    sq_canvas_append_scene (SQ_CANVAS (canvas), snapshot, scene);
}

/* Why the piece does not go where it was meant to, on it. */
static void
append_said (SqRollCanvas *canvas, GtkSnapshot *snapshot)
{
  gint i = canvas->hold != NULL ? (gint) sq_roll_hold_placed (canvas->hold) : canvas->at;
  if (canvas->said == NULL || i < 0)
    return;
  SqSceneBuilder *builder = sq_scene_builder_new ();
  double em = em_mm (canvas), width = sq_text_width_em (canvas->said, TRUE) * em;
  g_autoptr (SqPath) cut = sq_roll_piece_cut (canvas->lays, canvas->cloth, (guint) i);
  SqBox box = sq_path_box (cut), all = sq_roll_shown_box (canvas);
  double most = fmax (all.max.x, box.max.x) - width / 2, least = all.min.x + width / 2 + em / 2;
  SqPoint at = sq_point (fmax (fmin ((box.min.x + box.max.x) / 2, most), least),
                         (box.min.y + box.max.y) / 2);
  sq_scene_begin_fill (builder, SQ_FILL_PLATE);
  sq_scene_add_plate (builder, at, width + em, SQ_TEXT_HEIGHT_EM * em, 0, em / 3);
  sq_scene_add_text (builder, &(SqText){ .at = at,
                                         .em_mm = em,
                                         .width_mm = width,
                                         .tone = SQ_TONE_ACCENT,
                                         .bold = TRUE,
                                         .text = canvas->said });
  g_autoptr (SqScene) scene = sq_scene_builder_end (builder);
  sq_canvas_append_scene (SQ_CANVAS (canvas), snapshot, scene);
}

/* What is held lies over all others. */
static void
append_pieces (SqRollCanvas *canvas, GtkSnapshot *snapshot)
{
  guint n = sq_roll_cloth_lay (canvas)->lay->placed->len;
  guint held = canvas->hold != NULL ? sq_roll_hold_placed (canvas->hold) : n;
  for (guint i = 0; i < n; i++)
    if (i != held)
      append_piece (canvas, snapshot, i);
  if (held < n)
    append_piece (canvas, snapshot, held);
}

void
sq_roll_draw (SqCanvas *self, GtkSnapshot *snapshot)
{
  SqRollCanvas *canvas = SQ_ROLL_CANVAS (self);
  const SqView *view = sq_canvas_get_view (self);
  const SqClothLay *cloth = sq_roll_cloth_lay (canvas);
  gtk_snapshot_save (snapshot);
  gtk_snapshot_translate (snapshot,
                          &GRAPHENE_POINT_INIT ((float) view->origin.x, (float) view->origin.y));
  if (canvas->kept != NULL)
    append_kept (canvas, snapshot);
  else if (cloth != NULL)
    {
      append_cloth (canvas, snapshot);
      append_leftovers (canvas, snapshot);
      append_pieces (canvas, snapshot);
      sq_roll_append_flaws (canvas, snapshot);
      append_said (canvas, snapshot);
    }
  gtk_snapshot_restore (snapshot);
}
