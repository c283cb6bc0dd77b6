/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "drawing/roll-scene.h"

#include "base/units.h"
#include "drawing/piece-scene.h"

/* How much of a pattern shows through pieces. */
#define SHEEN_ALPHA 0.3
#define PAPER_SHEEN_ALPHA 0.6

/* Label: its size when there is little room, and what it keeps from the edge, in em. */
#define SMALL_EM 0.78
#define SMALLEST_EM 0.62
#define PAD_EM 0.35

/* --- pieces --------------------------------------------------------------------------------- */

/* Its rings as they are turned, not yet moved. New array of SqPath, its own. */
static GPtrArray *
turned_cut (const SqLays *lays, const SqPlaced *placed)
{
  const SqPiece *piece = sq_lays_piece (lays, placed);
  GPtrArray *rings = g_ptr_array_new_with_free_func ((GDestroyNotify) sq_path_unref);
  double turn_rad;
  SqPoint at;

  sq_lays_place (lays, placed, &turn_rad, &at);
  for (guint i = 0; i < piece->cut->len; i++)
    g_ptr_array_add (rings, sq_path_moved (sq_piece_cut (piece, i), turn_rad, sq_point (0, 0)));
  return rings;
}

SqVector
sq_roll_piece_place (const SqLays *lays, guint index, guint i)
{
  const SqClothLay *cloth = sq_lays_cloth (lays, index);
  const SqPlaced *placed = sq_lay_placed (cloth->lay, i);
  double turn_rad;
  SqPoint at;

  sq_lays_place (lays, placed, &turn_rad, &at);
  return sq_add (at, sq_roll_strip_offset (cloth, placed->strip));
}

SqPath *
sq_roll_piece_cut (const SqLays *lays, guint index, guint i)
{
  g_autoptr (GPtrArray) rings = turned_cut (lays,
                                            sq_lay_placed (sq_lays_cloth (lays, index)->lay, i));

  return sq_path_moved (g_ptr_array_index (rings, 0), 0, sq_roll_piece_place (lays, index, i));
}

static gboolean
is_on (const GPtrArray *rings, SqPoint p)
{
  gboolean is_in = sq_path_winding (g_ptr_array_index (rings, 0), p) != 0;

  for (guint i = 1; i < rings->len && is_in; i++)
    is_in = sq_path_winding (g_ptr_array_index (rings, i), p) == 0;
  return is_in;
}

gint
sq_roll_piece_at (const SqLays *lays, guint index, SqPoint p)
{
  const GArray *placed = sq_lays_cloth (lays, index)->lay->placed;

  for (guint i = 0; i < placed->len; i++)
    {
      SqPoint own = sq_sub (p, sq_roll_piece_place (lays, index, i));
      g_autoptr (GPtrArray) rings = turned_cut (lays, &g_array_index (placed, SqPlaced, i));
      if (is_on (rings, own))
        return (gint) i;
    }
  return -1;
}

static void
add_shape (SqSceneBuilder *builder, const GPtrArray *rings, const SqRollLook *look)
{
  sq_scene_begin_colour (builder, 0xffffff, look->is_paper ? PAPER_SHEEN_ALPHA : SHEEN_ALPHA);
  for (guint i = 0; i < rings->len; i++)
    sq_scene_add_path (builder, g_ptr_array_index (rings, i));
  sq_scene_begin_stroke (builder, SQ_PEN_CUT);
  for (guint i = 0; i < rings->len; i++)
    sq_scene_add_path (builder, g_ptr_array_index (rings, i));
}

/* Whether a box about @at lies on the piece; it is probed along its border. */
static gboolean
has_room (const GPtrArray *rings, SqPoint at, SqVector half, double angle_rad)
{
  for (int i = -4; i <= 4; i++)
    for (int k = -1; k <= 1; k++)
      {
        SqVector along = sq_turned (sq_point (half.x * i / 4.0, half.y * k), angle_rad);
        if (!is_on (rings, sq_add (at, along)))
          return FALSE;
      }
  return TRUE;
}

/* Where a text of that size may stand, the middle first; FALSE: nowhere. */
static gboolean
label_place (const GPtrArray *rings, double width_mm, double height_mm, double angle_rad,
             SqPoint *at)
{
  static const double places[] = { 0.5, 0.35, 0.65, 0.2, 0.8 };
  SqBox box = sq_path_box (g_ptr_array_index (rings, 0));
  SqVector size = sq_sub (box.max, box.min), half = sq_point (width_mm / 2, height_mm / 2);
  gboolean is_upright = fabs (angle_rad) > M_PI / 4;

  if (size.x < (is_upright ? height_mm : width_mm) || size.y < (is_upright ? width_mm : height_mm))
    return FALSE;
  for (guint i = 0; i < G_N_ELEMENTS (places); i++)
    for (guint k = 0; k < G_N_ELEMENTS (places); k++)
      {
        *at = sq_add (box.min, sq_point (places[k] * size.x, places[i] * size.y));
        if (has_room (rings, *at, half, angle_rad))
          return TRUE;
      }
  return FALSE;
}

static gboolean
try_label (SqSceneBuilder *builder, const GPtrArray *rings, const char *text, double em_mm,
           double angle_rad, SqBox *taken)
{
  double width_mm = sq_text_width_em (text, TRUE) * em_mm;
  double height_mm = SQ_TEXT_HEIGHT_EM * em_mm, pad_mm = PAD_EM * em_mm;
  SqPoint at;

  if (!label_place (rings, width_mm + 2 * pad_mm, height_mm + pad_mm, angle_rad, &at))
    return FALSE;
  sq_scene_begin_fill (builder, SQ_FILL_PLATE);
  sq_scene_add_plate (builder, at, width_mm + pad_mm, height_mm, angle_rad, pad_mm);
  sq_scene_add_text (builder, &(SqText){ .at = at,
                                         .angle_rad = angle_rad,
                                         .em_mm = em_mm,
                                         .width_mm = width_mm,
                                         .bold = TRUE,
                                         .text = text });
  if (taken != NULL)
    {
      SqVector half = sq_point (width_mm / 2 + pad_mm, height_mm / 2);
      if (fabs (angle_rad) > M_PI / 4)
        half = sq_point (half.y, half.x);
      *taken = (SqBox){ sq_sub (at, half), sq_add (at, half) };
    }
  return TRUE;
}

void
sq_roll_add_label (SqSceneBuilder *builder, const GPtrArray *rings, guint number, const char *name,
                   double em_mm, SqBox *taken)
{
  g_autofree char *short_text = g_strdup_printf ("%u", number);
  g_autofree char *text = g_strdup_printf ("%u  %s", number, name);
  SqBox box = sq_path_box (g_ptr_array_index (rings, 0));
  gboolean is_high = box.max.y - box.min.y > 1.5 * (box.max.x - box.min.x);
  double first = is_high ? M_PI / 2 : 0, second = is_high ? 0 : M_PI / 2;

  const struct
  {
    const char *text;
    double em;
  } tries[] = { { text, 1 },
                { text, SMALL_EM },
                { short_text, 1 },
                { short_text, SMALL_EM },
                { short_text, SMALLEST_EM } };
  for (guint i = 0; i < G_N_ELEMENTS (tries); i++)
    if (try_label (builder, rings, tries[i].text, tries[i].em * em_mm, first, taken)
        || try_label (builder, rings, tries[i].text, tries[i].em * em_mm, second, taken))
      return;
}

SqScene *
sq_roll_piece_scene (const SqLays *lays, guint index, guint i, SqRollLayer layer, const char *name,
                     const SqRollLook *look)
{
  SqSceneBuilder *builder = sq_scene_builder_new ();
  const SqClothLay *cloth = sq_lays_cloth (lays, index);
  const SqPlaced *placed = sq_lay_placed (cloth->lay, i);
  g_autoptr (GPtrArray) rings = turned_cut (lays, placed);
  SqGround ground = sq_cloth_ground (sq_plan_cloth (lays->plan, cloth->cloth), look->plain);

  if (!look->is_paper)
    sq_scene_set_ground (builder, &ground);
  switch (layer)
    {
    case SQ_ROLL_SHAPE:
      add_shape (builder, rings, look);
      break;
    case SQ_ROLL_LABEL:
      sq_roll_add_label (builder, rings, sq_lays_entry (lays, placed)->number, name, look->em_mm,
                         NULL);
      break;
    }
  return sq_scene_builder_end (builder);
}

/* --- a kept lay ------------------------------------------------------------------------------ */

static double
kept_offset_mm (const SqKeptLay *kept, guint strip)
{
  double x = 0;

  for (guint i = 0; i < MIN (strip, kept->strips->len); i++)
    x += g_array_index (kept->strips, SqKeptStrip, i).length_mm + SQ_ROLL_GAP_MM;
  return x;
}

SqBox
sq_roll_kept_box (const SqKeptLay *kept)
{
  SqBox box = sq_box_with (sq_box_empty (), sq_point (0, 0));

  for (guint i = 0; i < kept->strips->len; i++)
    {
      const SqKeptStrip *strip = &g_array_index (kept->strips, SqKeptStrip, i);
      box = sq_box_with (box,
                         sq_point (kept_offset_mm (kept, i) + strip->length_mm, strip->width_mm));
    }
  return box;
}

static void
add_kept (SqSceneBuilder *builder, const SqKeptLay *kept, const SqKeptPlaced *placed, double em_mm)
{
  const SqKeptPiece *piece = &g_array_index (kept->pieces, SqKeptPiece, placed->piece);
  SqVector at = sq_add (placed->at, sq_point (kept_offset_mm (kept, placed->strip), 0));
  g_autoptr (GPtrArray) rings = g_ptr_array_new_with_free_func ((GDestroyNotify) sq_path_unref);

  sq_scene_begin_stroke (builder, SQ_PEN_CUT);
  for (guint i = 0; i < piece->cut->len; i++)
    {
      SqPath *ring = sq_path_moved (g_ptr_array_index (piece->cut, i),
                                    placed->turn_deg * SQ_RAD_PER_DEG, at);
      g_ptr_array_add (rings, ring);
      sq_scene_add_path (builder, ring);
    }
  if (piece->name != NULL && rings->len > 0)
    try_label (builder, rings, piece->name, SMALL_EM * em_mm, 0, NULL);
}

SqScene *
sq_roll_kept_scene (const SqKeptLay *kept, double em_mm)
{
  SqSceneBuilder *builder = sq_scene_builder_new ();

  sq_scene_begin_stroke (builder, SQ_PEN_RULE);
  for (guint i = 0; i < kept->strips->len; i++)
    {
      const SqKeptStrip *strip = &g_array_index (kept->strips, SqKeptStrip, i);
      double x = kept_offset_mm (kept, i);
      g_autoptr (SqPath) border = sq_path_new_rectangle (x, 0, x + strip->length_mm,
                                                         strip->width_mm);
      sq_scene_add_path (builder, border);
    }
  for (guint i = 0; i < kept->placed->len; i++)
    add_kept (builder, kept, &g_array_index (kept->placed, SqKeptPlaced, i), em_mm);
  return sq_scene_builder_end (builder);
}
