/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "drawing/roll-strips.h"

#include "drawing/piece-scene.h"

/* How strongly a pattern is printed. */
#define PAPER_ALPHA 0.3

/* What is no longer is shown whole; of longer ones, so much more than what matters. */
#define SHOWN_WHOLE_MM 3000.0
#define SHOWN_MORE_MM 400.0

/* Lines across a flaw, and how many at most. */
#define HATCH_MM 12.0
#define MOST_HATCHES 200

/* A name's letters are no larger than this share of the gap above strips. */
#define NAME_SHARE 0.7
#define NAME_PAD_EM 0.05
#define NAME_APART_EM 0.6

static const SqLayStrip *
strip_of (const SqClothLay *cloth, guint strip)
{
  return sq_lay_task_strip (cloth->task, strip);
}

static double
strip_width_mm (const SqClothLay *cloth, guint strip)
{
  return strip_of (cloth, strip)->width / SQ_GRID_PER_MM;
}

static double
laid_mm (const SqClothLay *cloth, guint strip)
{
  return sq_lay_length (cloth->lay, strip) / SQ_GRID_PER_MM;
}

/* How far along something matters: pieces and flaws. */
static double
matters_mm (const SqClothLay *cloth, guint strip)
{
  const SqLayStrip *own = strip_of (cloth, strip);
  double to_mm = laid_mm (cloth, strip);

  for (guint i = 0; i < own->n_flaws; i++)
    to_mm = fmax (to_mm, own->flaws[i].max.x / SQ_GRID_PER_MM);
  return to_mm;
}

/* What is shown of a strip: the roll as it is bought, what is there as it is. */
static double
strip_length_mm (const SqClothLay *cloth, guint strip)
{
  double whole_mm = strip_of (cloth, strip)->length / SQ_GRID_PER_MM;

  if (whole_mm > SHOWN_WHOLE_MM)
    return fmin (whole_mm, fmax (matters_mm (cloth, strip) + SHOWN_MORE_MM, SHOWN_WHOLE_MM));
  if (whole_mm > 0)
    return whole_mm;
  if (cloth->purchase.bolts == 1)
    return fmax (laid_mm (cloth, strip), cloth->purchase.buy_mm);
  return laid_mm (cloth, strip);
}

static gboolean
goes_on (const SqClothLay *cloth, guint strip)
{
  return strip_of (cloth, strip)->length / SQ_GRID_PER_MM > strip_length_mm (cloth, strip);
}

SqVector
sq_roll_strip_offset (const SqClothLay *cloth, guint strip)
{
  double x = 0;

  for (guint i = 0; i < strip; i++)
    x += strip_length_mm (cloth, i) + SQ_ROLL_GAP_MM;
  return sq_point (x, 0);
}

SqBox
sq_roll_strip_box (const SqClothLay *cloth, guint strip)
{
  return (SqBox){ sq_point (0, 0),
                  sq_point (strip_length_mm (cloth, strip), strip_width_mm (cloth, strip)) };
}

SqBox
sq_roll_box (const SqClothLay *cloth)
{
  SqBox box = sq_box_with (sq_box_empty (), sq_point (0, 0));

  for (guint i = 0; i < cloth->task->strips->len; i++)
    if (strip_length_mm (cloth, i) > 0)
      box = sq_box_with (
          box, sq_add (sq_roll_strip_offset (cloth, i), sq_roll_strip_box (cloth, i).max));
  if (cloth->task->strips->len > 1)
    box.max.y += SQ_ROLL_GAP_MM;
  return box;
}

static gboolean
is_in (SqBox box, SqPoint p, double reach_mm)
{
  return p.x >= box.min.x - reach_mm && p.x <= box.max.x + reach_mm && p.y >= box.min.y - reach_mm
         && p.y <= box.max.y + reach_mm;
}

gint
sq_roll_strip_at (const SqClothLay *cloth, SqPoint p)
{
  for (guint i = 0; i < cloth->task->strips->len; i++)
    if (is_in (sq_roll_strip_box (cloth, i), sq_sub (p, sq_roll_strip_offset (cloth, i)), 0))
      return (gint) i;
  return -1;
}

/* --- flaws ---------------------------------------------------------------------------------- */

static SqBox
box_on_strip (const SqFlaw *flaw)
{
  return (SqBox){ sq_point (flaw->x_mm, flaw->y_mm),
                  sq_point (flaw->x_mm + flaw->along_mm, flaw->y_mm + flaw->across_mm) };
}

SqBox
sq_roll_flaw_box (const SqClothLay *cloth, const SqFlaw *flaw)
{
  SqBox box = box_on_strip (flaw);

  for (guint i = 0; i < cloth->task->strips->len; i++)
    if (strip_of (cloth, i)->tag == flaw->stock)
      {
        SqVector by = sq_roll_strip_offset (cloth, i);
        return (SqBox){ sq_add (box.min, by), sq_add (box.max, by) };
      }
  return sq_box_empty ();
}

SqId
sq_roll_flaw_at (const SqLays *lays, guint index, SqPoint p, double reach_mm)
{
  const SqClothLay *cloth = sq_lays_cloth (lays, index);
  const SqCloth *own = sq_plan_cloth (lays->plan, cloth->cloth);

  for (guint i = own != NULL ? own->flaws->len : 0; i-- > 0;)
    if (is_in (sq_roll_flaw_box (cloth, sq_cloth_flaw (own, i)), p, reach_mm))
      return sq_cloth_flaw (own, i)->id;
  return 0;
}

/* One line of the hatch: where x − y is @at_mm, as far as it is in @box. */
static void
add_hatch (SqSceneBuilder *builder, SqBox box, double at_mm, SqVector by)
{
  double from = fmax (box.min.x, box.min.y + at_mm), to = fmin (box.max.x, box.max.y + at_mm);

  if (to > from)
    sq_scene_add_line (builder, sq_add (sq_point (from, from - at_mm), by),
                       sq_add (sq_point (to, to - at_mm), by));
}

static void
add_flaw (SqSceneBuilder *builder, SqBox box, SqVector by)
{
  double first = box.min.x - box.max.y, last = box.max.x - box.min.y;
  double step = fmax (HATCH_MM, (last - first) / MOST_HATCHES);
  g_autoptr (SqPath) border = sq_path_new_rectangle (box.min.x + by.x, box.min.y + by.y,
                                                     box.max.x + by.x, box.max.y + by.y);

  sq_scene_begin_fill (builder, SQ_FILL_PLATE);
  sq_scene_add_path (builder, border);
  sq_scene_begin_stroke (builder, SQ_PEN_HATCH);
  for (double at = first + step / 2; at < last; at += step)
    add_hatch (builder, box, at, by);
  sq_scene_begin_stroke (builder, SQ_PEN_INK);
  sq_scene_add_path (builder, border);
}

/* Those of @strip, as far as they lie on what is shown between the two places. */
static void
add_flaws (SqSceneBuilder *builder, const SqLays *lays, const SqClothLay *cloth, guint strip,
           double from_mm, double to_mm, SqVector by)
{
  const SqCloth *own = sq_plan_cloth (lays->plan, cloth->cloth);
  double width_mm = strip_width_mm (cloth, strip);

  for (guint i = 0; own != NULL && i < own->flaws->len; i++)
    {
      const SqFlaw *flaw = sq_cloth_flaw (own, i);
      SqBox box = box_on_strip (flaw);
      if (flaw->stock != strip_of (cloth, strip)->tag)
        continue;
      box.min = sq_point (fmax (box.min.x, from_mm), fmax (box.min.y, 0));
      box.max = sq_point (fmin (box.max.x, to_mm), fmin (box.max.y, width_mm));
      if (box.max.x > box.min.x && box.max.y > box.min.y)
        add_flaw (builder, box, by);
    }
}

/* --- the cloth ------------------------------------------------------------------------------- */

/* The border, open where the strip goes on. */
static void
add_border (SqSceneBuilder *builder, SqBox box, gboolean is_open)
{
  const SqNode nodes[] = { { sq_point (box.max.x, box.min.y), 0, 0 },
                           { box.min, 0, 0 },
                           { sq_point (box.min.x, box.max.y), 0, 0 },
                           { box.max, 0, 0 } };

  sq_scene_begin_stroke (builder, SQ_PEN_RULE);
  sq_scene_add_nodes (builder, nodes, G_N_ELEMENTS (nodes), !is_open);
}

static void
add_strip (SqSceneBuilder *builder, const SqLays *lays, const SqClothLay *cloth, guint strip,
           double from_mm, double to_mm, SqVector by, const SqRollLook *look)
{
  const SqCloth *own = sq_plan_cloth (lays->plan, cloth->cloth);
  SqGrid pattern = strip_of (cloth, strip)->pattern;
  gboolean has_colour = own != NULL && (own->given & SQ_GIVEN_CLOTH_COLOUR);
  const SqPhase phase = { .across = TRUE, .anchor = by, .across_mm = pattern.y / SQ_GRID_PER_MM };
  SqBox box = sq_roll_strip_box (cloth, strip);
  gboolean is_open = goes_on (cloth, strip) && to_mm >= box.max.x;

  to_mm = fmin (to_mm, box.max.x);
  if (to_mm <= from_mm)
    return;
  box = (SqBox){ sq_add (sq_point (from_mm, 0), by), sq_add (sq_point (to_mm, box.max.y), by) };
  g_autoptr (GPtrArray) shape = g_ptr_array_new_with_free_func ((GDestroyNotify) sq_path_unref);
  g_ptr_array_add (shape, sq_path_new_rectangle (box.min.x, box.min.y, box.max.x, box.max.y));
  sq_scene_begin_colour (builder, has_colour ? own->colour : look->plain,
                         look->is_paper ? PAPER_ALPHA / 2 : 1);
  sq_scene_add_path (builder, g_ptr_array_index (shape, 0));
  if (own != NULL)
    sq_scene_add_stripes (builder, shape, own, 0, &phase, look->is_paper ? PAPER_ALPHA : 1);
  add_flaws (builder, lays, cloth, strip, from_mm, to_mm, by);
  add_border (builder, box, is_open);
}

static SqSceneBuilder *
begin (const SqLays *lays, guint index, const SqRollLook *look)
{
  SqSceneBuilder *builder = sq_scene_builder_new ();
  const SqClothLay *cloth = sq_lays_cloth (lays, index);
  SqGround ground = sq_cloth_ground (sq_plan_cloth (lays->plan, cloth->cloth), look->plain);

  if (!look->is_paper)
    sq_scene_set_ground (builder, &ground);
  return builder;
}

SqScene *
sq_roll_strip_scene (const SqLays *lays, guint index, guint strip, double from_mm, double to_mm,
                     const SqRollLook *look)
{
  SqSceneBuilder *builder = begin (lays, index, look);

  add_strip (builder, lays, sq_lays_cloth (lays, index), strip, from_mm, to_mm, sq_point (0, 0),
             look);
  return sq_scene_builder_end (builder);
}

SqScene *
sq_roll_cloth_scene (const SqLays *lays, guint index, double from_mm, double to_mm,
                     const SqRollLook *look)
{
  SqSceneBuilder *builder = begin (lays, index, look);
  const SqClothLay *cloth = sq_lays_cloth (lays, index);

  for (guint i = 0; i < cloth->task->strips->len; i++)
    add_strip (builder, lays, cloth, i, from_mm, to_mm, sq_roll_strip_offset (cloth, i), look);
  return sq_scene_builder_end (builder);
}

static void
add_end (SqSceneBuilder *builder, const SqClothLay *cloth, guint strip, double from_mm,
         double to_mm, SqVector by)
{
  double end_mm = laid_mm (cloth, strip);
  SqPoint at = sq_add (by, sq_point (end_mm, 0));

  if (end_mm > from_mm && end_mm < to_mm && end_mm < strip_length_mm (cloth, strip))
    sq_scene_add_line (builder, at, sq_add (at, sq_point (0, strip_width_mm (cloth, strip))));
}

SqScene *
sq_roll_strip_end_scene (const SqLays *lays, guint index, guint strip, double from_mm, double to_mm)
{
  SqSceneBuilder *builder = sq_scene_builder_new ();

  sq_scene_begin_stroke (builder, SQ_PEN_SEW);
  add_end (builder, sq_lays_cloth (lays, index), strip, from_mm, to_mm, sq_point (0, 0));
  return sq_scene_builder_end (builder);
}

SqScene *
sq_roll_end_scene (const SqLays *lays, guint index, double from_mm, double to_mm)
{
  SqSceneBuilder *builder = sq_scene_builder_new ();
  const SqClothLay *cloth = sq_lays_cloth (lays, index);

  sq_scene_begin_stroke (builder, SQ_PEN_SEW);
  for (guint i = 0; i < cloth->task->strips->len; i++)
    add_end (builder, cloth, i, from_mm, to_mm, sq_roll_strip_offset (cloth, i));
  return sq_scene_builder_end (builder);
}

SqScene *
sq_roll_name_scene (const SqClothLay *cloth, guint strip, const char *name, const char *detail,
                    const SqRollLook *look)
{
  SqSceneBuilder *builder = sq_scene_builder_new ();
  double em_mm = fmin (look->em_mm, NAME_SHARE * SQ_ROLL_GAP_MM);
  double room_mm = strip_length_mm (cloth, strip) + SQ_ROLL_GAP_MM - NAME_APART_EM * em_mm;
  double whole_mm = sq_text_with_detail_width_em (name, TRUE, detail) * em_mm;
  gboolean has_room = whole_mm <= room_mm;
  double width_mm = has_room ? whole_mm : fmin (sq_text_width_em (name, TRUE) * em_mm, room_mm);
  double above_mm = (NAME_PAD_EM + SQ_TEXT_HEIGHT_EM / 2) * em_mm;
  const SqText text = { .at = sq_point (width_mm / 2, strip_width_mm (cloth, strip) + above_mm),
                        .em_mm = em_mm,
                        .width_mm = width_mm,
                        .align = SQ_ALIGN_START,
                        .bold = TRUE,
                        .text = name,
                        .detail = has_room ? detail : NULL };

  if (strip_length_mm (cloth, strip) > 0)
    sq_scene_add_text (builder, &text);
  return sq_scene_builder_end (builder);
}
