/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "drawing/piece-scene.h"

#include "geometry/crossing.h"
#include "words/piece-label.h"
#include "words/piece-names.h"

/* Of a label on a plate, in em. */
#define PLATE_PAD_EM 1.2
#define PLATE_LINE_EM 1.26
#define PLATE_EDGE_EM 0.4

/* How much of the piece a plate may cover across and along: more hides the cloth. */
#define PLATE_MOST_WIDTH 0.82
#define PLATE_MOST_HEIGHT 0.5

/* A plate's place is good where the piece is so many times as wide; else the widest is taken. */
#define PLATE_EASE 1.3

/* Between a plate or arrow and the teeth of a zip, in em. */
#define ZIP_GAP_EM 0.5

/* Of a label above the piece. */
#define LABEL_GAP_EM 0.2

static double
width_of (SqBox box)
{
  return box.max.x - box.min.x;
}

static double
height_of (SqBox box)
{
  return box.max.y - box.min.y;
}

static SqBox
box_about (SqPoint at, double width, double height)
{
  return (SqBox){ { at.x - width / 2, at.y - height / 2 },
                  { at.x + width / 2, at.y + height / 2 } };
}

/* Whether @box meets a zip, or any line marked on the piece if @any. */
static gboolean
meets_mark (const SqPiece *piece, SqBox box, gboolean any, double gap_mm)
{
  for (guint i = 0; i < piece->marks->len; i++)
    {
      const SqMark *mark = &g_array_index (piece->marks, SqMark, i);
      if ((any || mark->kind == SQ_MARK_ZIP) && mark->line != NULL
          && sq_box_meets (box, sq_path_box (mark->line), gap_mm))
        return TRUE;
    }
  return FALSE;
}

static gboolean
meets_hole (const SqPiece *piece, SqBox box, double gap_mm)
{
  for (guint ring = 1; ring < piece->sew->len; ring++)
    if (sq_box_meets (box, sq_path_box (sq_piece_sew (piece, ring)), gap_mm))
      return TRUE;
  return FALSE;
}

/* Whether @box lies inside the outer sew line. */
static gboolean
is_inside_sew (const SqPiece *piece, SqBox box)
{
  for (int i = 0; i <= 4; i++)
    {
      SqPoint from = { box.min.x, box.min.y + i / 4.0 * height_of (box) };
      g_autoptr (GArray) chords = sq_ring_chords (sq_piece_sew (piece, 0), from, sq_point (1, 0));
      gboolean covered = FALSE;
      for (guint c = 0; c + 1 < chords->len; c += 2)
        covered = covered
                  || (g_array_index (chords, double, c) <= 0
                      && g_array_index (chords, double, c + 1) >= width_of (box));
      if (!covered)
        return FALSE;
    }
  return TRUE;
}

/* The middle of the longest chord of the sew line through @at along @direction, and its length. */
static SqPoint
longest_chord (const SqPiece *piece, SqPoint at, SqVector direction, double *length)
{
  g_autoptr (GArray) chords = sq_ring_chords (sq_piece_sew (piece, 0), at, direction);
  double middle = 0;
  *length = 0;
  for (guint c = 0; c + 1 < chords->len; c += 2)
    {
      double from = g_array_index (chords, double, c), to = g_array_index (chords, double, c + 1);
      if (to - from > *length)
        {
          *length = to - from;
          middle = (from + to) / 2;
        }
    }
  return sq_moved (at, direction, middle);
}

/* The second line on a plate; what goes on after the name above a piece. */
static char *
detail_of (const SqPieceLabel *label, gboolean is_inside)
{
  return is_inside || label->n > 1 ? g_strconcat (label->size, " · ", label->count, NULL)
                                   : g_strdup (label->size);
}

double
sq_piece_label_width_em (const SqPieceLabel *label)
{
  g_return_val_if_fail (label != NULL, 0);
  g_autofree char *detail = detail_of (label, FALSE);
  return sq_text_with_detail_width_em (label->name, TRUE, detail);
}

static gboolean
plate_inside (const SqPiece *piece, const SqPieceLabel *label, double em_mm, SqBox *plate)
{
  SqBox box = sq_path_box (sq_piece_cut (piece, 0));
  g_autofree char *detail = detail_of (label, TRUE);
  double line = sq_text_width_em (label->name, TRUE);
  line = fmax (line, SQ_DETAIL_EM * sq_text_width_em (detail, FALSE));
  if (label->seen != NULL)
    line = fmax (line, SQ_DETAIL_EM * sq_text_width_em (label->seen, FALSE));
  double width = (line + PLATE_PAD_EM) * em_mm;
  double height = (label->seen != NULL ? 3 : 2) * PLATE_LINE_EM * em_mm + PLATE_EDGE_EM * em_mm;
  if (width > PLATE_MOST_WIDTH * width_of (box) || height > PLATE_MOST_HEIGHT * height_of (box))
    return FALSE;
  const double places[] = { 0.5, 0.38, 0.62, 0.26, 0.74 };
  double widest = 0;
  for (guint i = 0; i < G_N_ELEMENTS (places) && widest < PLATE_EASE * width; i++)
    {
      SqPoint from = { box.min.x, box.min.y + places[i] * height_of (box) };
      double length;
      SqPoint middle = longest_chord (piece, from, sq_point (1, 0), &length);
      SqBox here = box_about (middle, width, height);
      if (length <= widest || meets_hole (piece, here, 0)
          || meets_mark (piece, here, FALSE, ZIP_GAP_EM * em_mm) || !is_inside_sew (piece, here))
        continue;
      widest = length;
      *plate = here;
    }
  return widest > 0;
}

SqBox
sq_piece_label_box (const SqPiece *piece, const SqPieceLabel *label, double em_mm,
                    gboolean *is_inside)
{
  SqBox plate = sq_box_empty ();
  g_return_val_if_fail (piece != NULL && label != NULL && is_inside != NULL, plate);
  *is_inside = plate_inside (piece, label, em_mm, &plate);
  if (*is_inside)
    return plate;
  SqBox cut = sq_path_box (sq_piece_cut (piece, 0));
  double width = sq_piece_label_width_em (label) * em_mm;
  double low = cut.max.y + LABEL_GAP_EM * em_mm;
  return (SqBox){ { cut.min.x, low }, { cut.min.x + width, low + SQ_TEXT_HEIGHT_EM * em_mm } };
}

static void
add_plate (SqSceneBuilder *builder, const SqPieceLabel *label, SqBox box, double em_mm)
{
  SqPoint middle = sq_between (box.min, box.max, 0.5);
  g_autofree char *detail = detail_of (label, TRUE);
  const char *lines[] = { label->name, detail, label->seen };
  SqText text = { .at = { middle.x, box.max.y - (PLATE_EDGE_EM + PLATE_LINE_EM) / 2 * em_mm },
                  .em_mm = em_mm,
                  .width_mm = width_of (box) - 0.8 * em_mm,
                  .bold = TRUE };
  sq_scene_begin_fill (builder, SQ_FILL_PLATE);
  sq_scene_add_plate (builder, middle, width_of (box), height_of (box), 0, 0.35 * em_mm);
  for (guint i = 0; i < G_N_ELEMENTS (lines) && lines[i] != NULL; i++)
    {
      text.text = lines[i];
      sq_scene_add_text (builder, &text);
      text.at.y -= PLATE_LINE_EM * em_mm;
      text.em_mm = SQ_DETAIL_EM * em_mm;
      text.tone = SQ_TONE_DIM;
      text.bold = FALSE;
    }
}

static void
add_label (SqSceneBuilder *builder, const SqPiece *piece, const SqPieceLabel *label, double em_mm)
{
  gboolean is_inside;
  SqBox box = sq_piece_label_box (piece, label, em_mm, &is_inside);
  if (is_inside)
    {
      add_plate (builder, label, box, em_mm);
      return;
    }
  g_autofree char *detail = detail_of (label, FALSE);
  sq_scene_add_text (builder, &(SqText){ .at = sq_between (box.min, box.max, 0.5),
                                         .em_mm = em_mm,
                                         .width_mm = width_of (box),
                                         .align = SQ_ALIGN_START,
                                         .bold = TRUE,
                                         .text = label->name,
                                         .detail = detail });
}

void
sq_piece_label_init (SqPieceLabel *label, const SqCover *cover, guint piece,
                     const SqLengthStyle *style)
{
  g_return_if_fail (label != NULL && cover != NULL && piece < cover->pieces->len);
  const SqPiece *own = sq_cover_piece (cover, piece);
  label->n = own->count * cover->cushion->count;
  label->name = sq_words_piece (cover, piece);
  label->size = sq_words_piece_size (own, style);
  label->count = sq_words_cut_count (label->n);
  label->seen = sq_words_piece_seen (own);
}

void
sq_piece_label_clear (SqPieceLabel *label)
{
  g_return_if_fail (label != NULL);
  g_free ((char *) label->name);
  g_free ((char *) label->size);
  g_free ((char *) label->count);
  *label = (SqPieceLabel){ 0 };
}

static void
add_cloth (SqSceneBuilder *builder, const SqPiece *piece, const SqCloth *cloth, guint32 plain)
{
  gboolean has_colour = cloth != NULL && (cloth->given & SQ_GIVEN_CLOTH_COLOUR);
  sq_scene_fill_path (builder, SQ_FILL_SHADOW, sq_piece_cut (piece, 0));
  sq_scene_begin_colour (builder, has_colour ? cloth->colour : plain, 1);
  for (guint ring = 0; ring < piece->cut->len; ring++)
    sq_scene_add_path (builder, sq_piece_cut (piece, ring));
  if (cloth != NULL)
    sq_scene_add_stripes (builder, piece->cut, cloth, piece->grain_rad, &piece->phase, 1);
}

/* Sew lines run by run; a run that is folded is no seam. */
static void
add_runs (SqSceneBuilder *builder, const SqPiece *piece, SqPen pen, gboolean folds)
{
  sq_scene_begin_stroke (builder, pen);
  for (guint i = 0; i < piece->runs->len; i++)
    if ((sq_piece_run (piece, i)->role == SQ_RUN_FOLD) == folds)
      {
        g_autoptr (SqPath) path = sq_piece_run_path (piece, i);
        sq_scene_add_path (builder, path);
      }
}

static void
add_marked_lines (SqSceneBuilder *builder, const SqPiece *piece, SqMarkKind kind, SqPen pen)
{
  sq_scene_begin_stroke (builder, pen);
  for (guint i = 0; i < piece->marks->len; i++)
    {
      const SqMark *mark = &g_array_index (piece->marks, SqMark, i);
      if (mark->kind == kind && mark->line != NULL)
        sq_scene_add_path (builder, mark->line);
    }
}

/* The allowance where @at lies on the sew line. */
static double
allowance_at (const SqPiece *piece, SqPoint at)
{
  double nearest_mm = INFINITY, allowance_mm = 0;
  for (guint ring = 0; ring < piece->sew->len; ring++)
    {
      const SqPath *sew = sq_piece_sew (piece, ring);
      SqNearest nearest = sq_path_nearest (sew, at);
      guint32 run = sq_path_nodes (sew)[nearest.segment].tag;
      if (nearest.distance_mm < nearest_mm && run < piece->runs->len)
        {
          nearest_mm = nearest.distance_mm;
          allowance_mm = sq_piece_run (piece, run)->allowance_mm;
        }
    }
  return allowance_mm;
}

/* The ticks of a notch or clip, in the allowance; drawn longer than they are cut where they would
 * be too small to see. */
static void
add_ticks (SqSceneBuilder *builder, const SqPiece *piece, const SqMark *mark, double em_mm)
{
  double allowance_mm = allowance_at (piece, mark->at);
  double seen_mm = fmin (allowance_mm, fmax (mark->depth_mm, 0.4 * em_mm));
  double apart_mm = fmax (3, 0.32 * em_mm);
  SqVector out = sq_turned (sq_point (1, 0), mark->angle_rad);
  guint count = mark->kind == SQ_MARK_CLIP ? 1 : MAX (mark->count, 1);
  for (guint i = 0; i < count; i++)
    {
      SqPoint foot = sq_moved (mark->at, sq_left (out), (i - (count - 1) / 2.0) * apart_mm);
      sq_scene_add_line (builder, sq_moved (foot, out, allowance_mm - seen_mm),
                         sq_moved (foot, out, allowance_mm));
    }
}

static void
add_notches (SqSceneBuilder *builder, const SqPiece *piece, double em_mm)
{
  sq_scene_begin_stroke (builder, SQ_PEN_NOTCH);
  for (guint i = 0; i < piece->marks->len; i++)
    {
      const SqMark *mark = &g_array_index (piece->marks, SqMark, i);
      if (mark->kind == SQ_MARK_NOTCH || mark->kind == SQ_MARK_CLIP)
        add_ticks (builder, piece, mark, em_mm);
    }
}

/* The @i-th place for the grain's arrow: to the right or left of the middle (below or above it for a
 * grain to the right), or in the middle of a narrow strip; later ones nearer to the ends of the
 * chord there. FALSE: no room. */
static gboolean
grain_place (const SqPiece *piece, guint i, double em_mm, SqSegment *arrow)
{
  const double asides[] = { 0.86, 0.14, 0.74, 0.26, 0.93, 0.07, 0.5 },
               alongs[] = { 0, -0.25, 0.25 };
  SqVector along = sq_turned (sq_point (1, 0), piece->grain_rad), across = sq_left (along);
  g_autoptr (SqPath) turned = sq_path_moved (sq_piece_sew (piece, 0), -piece->grain_rad,
                                             sq_point (0, 0));
  SqBox extent = sq_path_box (turned);
  double aside = asides[i % G_N_ELEMENTS (asides)], chord;
  double shift = alongs[i / G_N_ELEMENTS (asides)];
  if (i == 0 && height_of (extent) < 8 * em_mm)
    aside = 0.5;
  SqPoint on_line = sq_scale (across, extent.max.y - aside * height_of (extent));
  SqPoint middle = longest_chord (piece, on_line, along, &chord);
  double half = fmin ((shift == 0 ? 0.38 : 0.2) * chord, 2.6 * em_mm);
  middle = sq_moved (middle, along, shift * chord);
  *arrow = (SqSegment){ sq_moved (middle, along, -half), sq_moved (middle, along, half), 0 };
  return half >= 0.4 * em_mm;
}

#define N_GRAIN_PLACES 21

/* The double arrow along the grain, clear of label and holes, and of marks where that can be. */
static void
add_grain (SqSceneBuilder *builder, const SqPiece *piece, const SqPieceLabel *label, double em_mm)
{
  SqBox plate;
  double gap_mm = ZIP_GAP_EM * em_mm;
  gboolean has_plate = label != NULL && plate_inside (piece, label, em_mm, &plate);
  for (guint i = 0; i < 2 * N_GRAIN_PLACES; i++)
    {
      SqSegment arrow;
      if (!grain_place (piece, i % N_GRAIN_PLACES, em_mm, &arrow))
        continue;
      SqBox box = sq_segment_box (&arrow);
      if (meets_hole (piece, box, gap_mm) || (has_plate && sq_box_meets (box, plate, gap_mm))
          || (i < N_GRAIN_PLACES && meets_mark (piece, box, TRUE, gap_mm)))
        continue;
      sq_scene_begin_stroke (builder, SQ_PEN_GRAIN);
      sq_scene_add_line (builder, arrow.from, arrow.to);
      return;
    }
}

static void
add_lines (SqSceneBuilder *builder, const SqPiece *piece, const SqPieceLabel *label, double em_mm)
{
  add_runs (builder, piece, SQ_PEN_SEW, FALSE);
  add_runs (builder, piece, SQ_PEN_FOLD, TRUE);
  add_marked_lines (builder, piece, SQ_MARK_FOLD, SQ_PEN_FOLD);
  add_marked_lines (builder, piece, SQ_MARK_CORNER, SQ_PEN_CARRY);
  add_marked_lines (builder, piece, SQ_MARK_STAY, SQ_PEN_STAY);
  add_marked_lines (builder, piece, SQ_MARK_ZIP, SQ_PEN_ZIP);
  add_grain (builder, piece, label, em_mm);
  add_notches (builder, piece, em_mm);
  sq_scene_begin_stroke (builder, SQ_PEN_CUT);
  for (guint ring = 0; ring < piece->cut->len; ring++)
    sq_scene_add_path (builder, sq_piece_cut (piece, ring));
}

SqScene *
sq_piece_scene (const SqPiece *piece, const SqCloth *cloth, guint32 plain, SqPieceLayer layer,
                const SqPieceLabel *label, const SqPieceLook *look)
{
  g_return_val_if_fail (piece != NULL && look != NULL, NULL);
  SqSceneBuilder *builder = sq_scene_builder_new ();
  SqGround ground = sq_cloth_ground (cloth, plain);
  sq_scene_set_ground (builder, &ground);
  switch (layer)
    {
    case SQ_PIECE_CLOTH:
      add_cloth (builder, piece, cloth, plain);
      break;
    case SQ_PIECE_LINES:
      add_lines (builder, piece, label, look->em_mm);
      break;
    case SQ_PIECE_LABEL:
      if (label != NULL)
        add_label (builder, piece, label, look->em_mm);
      break;
    default:
      g_return_val_if_reached (sq_scene_builder_end (builder));
    }
  return sq_scene_builder_end (builder);
}
