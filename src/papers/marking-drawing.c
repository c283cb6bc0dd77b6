/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "papers/marking-drawing.h"

#include "drawing/roll-scene.h"
#include "papers/roll-bands.h"
#include "words/marking-words.h"
#include "words/piece-names.h"

#define LABEL_EM_MM 3.6
#define LETTER_EM_MM 2.7
#define NARROW_EM_MM 2.6
#define DOT_MM 0.45

/* The strip's width on paper: large, for the letters. */
#define MOST_HIGH_MM 170.0
#define LEAST_HIGH_MM 70.0
#define MOST_BAND_MM 105.0

/* Directions in which a letter may stand from its point, and how far from it, in em. */
#define N_DIRECTIONS 16
static const double aways_em[] = { 0.95, 1.3, 1.7 };

typedef struct
{
  const SqPaperSpec *spec;
  const SqMarking *marking;
} Drawing;

/* A piece's drawing, in mm of cloth. */
typedef struct
{
  SqSceneBuilder *builder;
  const GPtrArray *cut; /* of SqPath */
  GArray *taken;        /* of SqBox: by texts */
  double scale;
} Lettering;

static void
draw_flaw (SqSceneBuilder *builder, const SqBox *flaw)
{
  g_autoptr (SqPath) box = sq_path_new_rectangle (flaw->min.x, flaw->min.y, flaw->max.x,
                                                  flaw->max.y);

  sq_scene_begin_stroke (builder, SQ_PEN_RULE);
  sq_scene_add_path (builder, box);
  sq_scene_add_line (builder, flaw->min, flaw->max);
  sq_scene_add_line (builder, sq_point (flaw->min.x, flaw->max.y),
                     sq_point (flaw->max.x, flaw->min.y));
}

/* Its edges, its flaws, and the straight cuts right through, as far as they are in the band. */
static void
draw_cloth (const SqRollBand *band, gconstpointer data)
{
  const SqMarking *marking = ((const Drawing *) data)->marking;
  SqSceneBuilder *builder = sq_scene_builder_new ();
  g_autoptr (SqPath) edge = sq_path_new_rectangle (band->from_mm, 0, band->to_mm,
                                                   marking->width_mm);

  sq_scene_stroke_path (builder, SQ_PEN_RULE, edge);
  for (guint i = 0; i < marking->flaws->len; i++)
    {
      SqBox flaw = g_array_index (marking->flaws, SqBox, i);
      flaw.min.x = fmax (flaw.min.x, band->from_mm);
      flaw.max.x = fmin (flaw.max.x, band->to_mm);
      if (flaw.min.x < flaw.max.x)
        draw_flaw (builder, &flaw);
    }
  sq_scene_begin_stroke (builder, SQ_PEN_INK);
  for (guint i = 0; i < marking->cuts->len; i++)
    {
      const SqStraightCut *cut = sq_marking_cut (marking, i);
      double from_mm = fmax (cut->from_mm, band->from_mm), to_mm = fmin (cut->to_mm, band->to_mm);
      if (cut->is_across && cut->at_mm >= band->from_mm && cut->at_mm <= band->to_mm)
        sq_scene_add_line (builder, sq_point (cut->at_mm, cut->from_mm),
                           sq_point (cut->at_mm, cut->to_mm));
      else if (!cut->is_across && from_mm < to_mm)
        sq_scene_add_line (builder, sq_point (from_mm, cut->at_mm), sq_point (to_mm, cut->at_mm));
    }
  sq_roll_band_scene (band, sq_scene_builder_end (builder), sq_point (0, 0));
}

/* --- letters --------------------------------------------------------------------------------- */

static gboolean
is_inside (const Lettering *lettering, SqPoint p)
{
  gboolean is_in = sq_path_winding (g_ptr_array_index (lettering->cut, 0), p) != 0;

  for (guint i = 1; i < lettering->cut->len && is_in; i++)
    is_in = sq_path_winding (g_ptr_array_index (lettering->cut, i), p) == 0;
  return is_in;
}

/* Whether a text may stand in @box: all on the piece, and on no other text. */
static gboolean
is_free (const Lettering *lettering, SqBox box)
{
  for (guint i = 0; i < lettering->taken->len; i++)
    if (sq_box_meets (box, g_array_index (lettering->taken, SqBox, i), 0))
      return FALSE;
  for (int i = 0; i <= 2; i++)
    for (int k = 0; k <= 2; k++)
      if (!is_inside (lettering, sq_point (box.min.x + (box.max.x - box.min.x) * i / 2,
                                           box.min.y + (box.max.y - box.min.y) * k / 2)))
        return FALSE;
  return TRUE;
}

/* Writes @letter beside @at, where there is room; towards @inward first. */
static void
add_letter (Lettering *lettering, SqPoint at, SqVector inward, const char *letter)
{
  double em_mm = LETTER_EM_MM * lettering->scale;
  double width_mm = sq_text_width_em (letter, TRUE) * em_mm;
  SqVector half = sq_point (width_mm / 2, SQ_TEXT_HEIGHT_EM * em_mm / 2);

  for (guint away = 0; away < G_N_ELEMENTS (aways_em); away++)
    for (int i = 0; i < N_DIRECTIONS; i++)
      {
        int step = i % 2 == 0 ? i / 2 : -(i + 1) / 2;
        SqVector way = sq_turned (inward, step * 2 * M_PI / N_DIRECTIONS);
        SqPoint middle = sq_moved (at, way, aways_em[away] * em_mm);
        SqBox box = { sq_sub (middle, half), sq_add (middle, half) };
        if (!is_free (lettering, box))
          continue;
        sq_scene_add_text (
            lettering->builder,
            &(SqText){
                .at = middle, .em_mm = em_mm, .width_mm = width_mm, .bold = TRUE, .text = letter });
        g_array_append_val (lettering->taken, box);
        return;
      }
}

/* A dot on every point; letters first at those between which lines run straight. */
static void
add_letters (Lettering *lettering, const SqMarkedPiece *piece, gboolean of_middles)
{
  guint first = 0;

  for (guint ring = 0; ring < piece->rings->len; ring++)
    {
      const GArray *points = sq_marked_piece_ring (piece, ring);
      for (guint i = 0; i < points->len; i++)
        {
          SqPoint before = sq_mark_point (points, (i + points->len - 1) % points->len)->at;
          SqPoint at = sq_mark_point (points, i)->at;
          SqPoint after = sq_mark_point (points, (i + 1) % points->len)->at;
          SqVector along = sq_unit (
              sq_add (sq_unit (sq_sub (at, before)), sq_unit (sq_sub (after, at))));
          SqVector inward = ring == 0 ? sq_left (along) : sq_right (along);
          g_autofree char *letter = sq_words_mark_letter (first + i);
          if (sq_mark_point (points, i)->is_middle == of_middles)
            add_letter (lettering, at, inward, letter);
        }
      first += points->len;
    }
}

static void
add_dots (Lettering *lettering, const SqMarkedPiece *piece)
{
  for (guint ring = 0; ring < piece->rings->len; ring++)
    for (guint i = 0; i < sq_marked_piece_ring (piece, ring)->len; i++)
      {
        sq_scene_begin_colour (lettering->builder, 0, 1);
        sq_scene_add_circle (lettering->builder,
                             sq_mark_point (sq_marked_piece_ring (piece, ring), i)->at,
                             DOT_MM * lettering->scale);
      }
}

/* The number of a narrow piece that lies askew, along its longest side. */
static void
add_number (Lettering *lettering, guint number, SqBox *taken)
{
  const SqPath *ring = g_ptr_array_index (lettering->cut, 0);
  SqBox box = sq_path_box (ring);
  g_autofree char *text = g_strdup_printf ("%u", number);
  double em_mm = NARROW_EM_MM * lettering->scale, longest_mm = 0, angle_rad = 0;
  double width_mm = sq_text_width_em (text, TRUE) * em_mm;
  SqPoint at = sq_between (box.min, box.max, 0.5);

  for (guint i = 0; i < sq_path_n_segments (ring); i++)
    {
      SqSegment side = sq_path_segment (ring, i);
      SqVector along = sq_sub (side.to, side.from);
      if (sq_norm (along) <= longest_mm)
        continue;
      longest_mm = sq_norm (along);
      angle_rad = sq_readable_angle_rad (atan2 (along.y, along.x));
    }
  for (int i = -1; i <= 1; i += 2)
    for (int k = -1; k <= 1; k += 2)
      if (!is_inside (lettering, sq_add (at, sq_turned (sq_point (i * width_mm / 2, k * em_mm / 2),
                                                        angle_rad))))
        return;
  sq_scene_add_text (lettering->builder, &(SqText){ .at = at,
                                                    .angle_rad = angle_rad,
                                                    .em_mm = em_mm,
                                                    .width_mm = width_mm,
                                                    .bold = TRUE,
                                                    .text = text });
  SqVector half = sq_point (fmax (width_mm, em_mm), fmax (width_mm, em_mm));
  *taken = (SqBox){ sq_sub (at, half), sq_add (at, half) };
}

static void
draw_piece (const SqRollBand *band, guint i, gconstpointer data)
{
  const Drawing *drawing = data;
  const SqLays *lays = drawing->spec->lays;
  const SqMarkedPiece *piece = sq_marked_piece (drawing->marking, i);
  const SqPlaced *placed = sq_lay_placed (sq_lays_cloth (lays, drawing->marking->cloth)->lay,
                                          piece->placed);
  const SqCutEntry *entry = sq_lays_entry (lays, placed);
  g_autofree char *name = sq_words_piece (sq_plan_cover (lays->plan, entry->cushion), entry->piece);
  g_autoptr (GArray) taken = g_array_new (FALSE, FALSE, sizeof (SqBox));
  Lettering lettering = { sq_scene_builder_new (), piece->cut, taken, band->of->scale };
  SqBox label = sq_box_empty ();

  sq_scene_begin_stroke (lettering.builder, SQ_PEN_CUT);
  for (guint k = 0; k < piece->cut->len; k++)
    sq_scene_add_path (lettering.builder, g_ptr_array_index (piece->cut, k));
  sq_roll_add_label (lettering.builder, piece->cut, entry->number, name,
                     LABEL_EM_MM * lettering.scale, &label);
  if (label.min.x > label.max.x)
    add_number (&lettering, entry->number, &label);
  g_array_append_val (taken, label);
  if (!piece->is_rectangle)
    {
      add_dots (&lettering, piece);
      add_letters (&lettering, piece, FALSE);
      add_letters (&lettering, piece, TRUE);
    }
  sq_roll_band_scene (band, sq_scene_builder_end (lettering.builder), sq_point (0, 0));
}

SqBox
sq_marking_drawing (SqPages *pages, const SqPaperSpec *spec, const SqMarking *marking)
{
  g_autoptr (GPtrArray) cuts = g_ptr_array_new ();
  SqId cloth = sq_lays_cloth (spec->lays, marking->cloth)->cloth;
  Drawing drawing = { spec, marking };
  SqRollBands bands = { .pages = pages,
                        .style = &spec->style,
                        .cloth = sq_plan_cloth (spec->lays->plan, cloth),
                        .wrong_side = spec->wrong_side,
                        .box = { { 0, 0 }, { marking->laid_mm, marking->width_mm } },
                        .cuts = cuts,
                        .most_high_mm = MOST_HIGH_MM,
                        .least_high_mm = LEAST_HIGH_MM,
                        .most_band_mm = MOST_BAND_MM,
                        .draw_cloth = draw_cloth,
                        .draw_piece = draw_piece,
                        .data = &drawing };

  for (guint i = 0; i < marking->pieces->len; i++)
    g_ptr_array_add (cuts, g_ptr_array_index (sq_marked_piece (marking, i)->cut, 0));
  return sq_roll_bands_draw (&bands, 0);
}
