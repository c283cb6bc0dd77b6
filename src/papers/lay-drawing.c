/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "papers/lay-drawing.h"

#include "drawing/roll-scene.h"

/* A number is as large as there is room for it, but no smaller than can be read (mm). */
#define MOST_EM_MM 3.6
#define LEAST_EM_MM 1.7
#define SMALLER 0.85
#define PAD 1.15 /* of its width: what stays free beside it */

static double
width_of_mm (const SqLaid *laid)
{
  const SqLayTask *task = sq_lays_cloth (laid->lays, laid->cloth)->task;

  return sq_lay_task_strip (task, laid->strip)->width / SQ_GRID_PER_MM;
}

static double
scale_of (const SqLaid *laid, double width_mm, double most_mm)
{
  return fmin (width_mm / laid->length_mm, most_mm / width_of_mm (laid));
}

double
sq_lay_drawing_height_mm (const SqLaid *laid, double width_mm, double most_mm)
{
  return scale_of (laid, width_mm, most_mm) * width_of_mm (laid);
}

/* The outer cut line of a piece as it lies on the table. */
static SqPath *
outline_of (const SqLaid *laid, guint placed)
{
  const SqClothLay *cloth = sq_lays_cloth (laid->lays, laid->cloth);
  SqVector by = sq_scale (sq_roll_strip_offset (cloth, laid->strip), -1);
  g_autoptr (SqPath) cut = sq_roll_piece_cut (laid->lays, laid->cloth, placed);
  g_autoptr (SqPath) own = sq_path_moved (cut, 0, by);

  if (!laid->wrong_side)
    return g_steal_pointer (&own);
  g_autoptr (SqPath) mirrored = sq_path_mirrored (own); /* x to −x; a half turn sets that right */
  return sq_path_moved (mirrored, M_PI, sq_point (0, width_of_mm (laid)));
}

/* Whether a box about @at, of that half size, lies on the piece. */
static gboolean
has_room (const SqPath *outline, SqPoint at, SqVector half)
{
  for (int i = -2; i <= 2; i++)
    for (int k = -1; k <= 1; k++)
      if (sq_path_winding (outline, sq_add (at, sq_point (half.x * i / 2, half.y * k))) == 0)
        return FALSE;
  return TRUE;
}

/* A place for a box of that half size, the middle first. */
static gboolean
find_room (const SqPath *outline, SqVector half, SqPoint *at)
{
  static const double shares[] = { 0.5, 0.25, 0.75, 0.12, 0.88 };
  SqBox box = sq_path_box (outline);
  SqVector size = sq_sub (box.max, box.min);

  for (guint i = 0; i < G_N_ELEMENTS (shares) * G_N_ELEMENTS (shares); i++)
    {
      *at = sq_add (box.min, sq_point (shares[i % G_N_ELEMENTS (shares)] * size.x,
                                       shares[i / G_N_ELEMENTS (shares)] * size.y));
      if (has_room (outline, *at, half))
        return TRUE;
    }
  return FALSE;
}

static void
add_number (SqSceneBuilder *builder, const SqPath *outline, guint number, double scale)
{
  g_autofree char *text = g_strdup_printf ("%u", number);
  double wide_em = sq_text_width_em (text, TRUE);
  SqBox box = sq_path_box (outline);
  guint n_turns = box.max.y - box.min.y > box.max.x - box.min.x ? 2 : 1;
  SqPoint at;

  for (double em_mm = MOST_EM_MM; em_mm >= LEAST_EM_MM; em_mm *= SMALLER)
    for (guint turned = 0; turned < n_turns; turned++)
      {
        double own_mm = em_mm / scale;
        SqVector half = sq_point (PAD * wide_em * own_mm / 2, SQ_TEXT_HEIGHT_EM * own_mm / 2);
        SqText item = { .em_mm = own_mm, .width_mm = wide_em * own_mm, .bold = TRUE, .text = text };
        if (!find_room (outline, turned ? sq_point (half.y, half.x) : half, &at))
          continue;
        item.at = at;
        item.angle_rad = turned ? M_PI / 2 : 0;
        sq_scene_add_text (builder, &item);
        return;
      }
}

void
sq_lay_drawing_add (SqSceneBuilder *builder, const SqLaid *laid, SqBox box)
{
  const SqClothLay *cloth = sq_lays_cloth (laid->lays, laid->cloth);
  double scale = scale_of (laid, box.max.x - box.min.x, box.max.y - box.min.y);
  SqSceneBuilder *roll = sq_scene_builder_new ();
  g_autoptr (SqPath) border = sq_path_new_rectangle (0, 0, laid->length_mm, width_of_mm (laid));

  sq_scene_begin_colour (roll, 0xeeeeee, 1);
  sq_scene_add_path (roll, border);
  for (guint i = 0; i < cloth->lay->placed->len; i++)
    {
      const SqPlaced *placed = sq_lay_placed (cloth->lay, i);
      if (placed->strip != laid->strip)
        continue;
      g_autoptr (SqPath) outline = outline_of (laid, i);
      sq_scene_begin_colour (roll, 0xffffff, 1);
      sq_scene_add_path (roll, outline);
      sq_scene_begin_stroke (roll, SQ_PEN_RULE);
      sq_scene_add_path (roll, outline);
      add_number (roll, outline, sq_lays_entry (laid->lays, placed)->number, scale);
    }
  sq_scene_begin_stroke (roll, SQ_PEN_RULE);
  sq_scene_add_path (roll, border);
  g_autoptr (SqScene) scene = sq_scene_builder_end (roll);
  sq_scene_add_scene (builder, scene, box.min, scale);
}
