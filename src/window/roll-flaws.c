/* SPDX-License-Identifier: GPL-3.0-or-later */
/* Flaws of the cloth, marked on the roll by hand. */
#include "window/roll-canvas-private.h"

#include "drawing/roll-scene.h"
#include "window/edit-laying.h"
#include "window/figures.h"

#include <glib/gi18n.h>

/* A smaller mark is a slip of the hand (pixels). */
#define LEAST_MARK 4

static SqFlaw
flaw_of (SqRollCanvas *canvas, SqId id)
{
  const SqCloth *cloth = sq_roll_cloth (canvas);
  const SqFlaw *flaw = cloth != NULL ? sq_cloth_find_flaw (cloth, id) : NULL;
  return flaw != NULL ? *flaw : (SqFlaw){ 0 };
}

/* The strip whose piece of stock is @stock, where its (0, 0) is drawn. */
static SqVector
offset_of (SqRollCanvas *canvas, SqId stock)
{
  const SqClothLay *cloth = sq_roll_cloth_lay (canvas);
  guint i = 0;
  while (i + 1 < cloth->task->strips->len && sq_lay_task_strip (cloth->task, i)->tag != stock)
    i++;
  return sq_roll_strip_offset (cloth, i);
}

static double
reach_mm (SqRollCanvas *canvas)
{
  return sq_roll_px_mm (canvas, sq_canvas_get_reach (SQ_CANVAS (canvas)) / 3);
}

static SqId
flaw_under (SqRollCanvas *canvas, SqPoint at)
{
  if (sq_roll_cloth_lay (canvas) == NULL || canvas->kept != NULL)
    return 0;
  return sq_roll_flaw_at (canvas->lays, canvas->cloth, sq_roll_mm (canvas, at), reach_mm (canvas));
}

/* --- hands ----------------------------------------------------------------------------------- */

/* What is drawn between where the hand went down and where it is, as far as there is cloth. */
static void
draw_flaw (SqRollCanvas *canvas, SqPoint mm)
{
  const SqClothLay *cloth = sq_roll_cloth_lay (canvas);
  SqVector offset = offset_of (canvas, canvas->flaw.stock);
  gint strip = sq_roll_strip_at (cloth, canvas->pressed);
  SqBox box = sq_roll_strip_box (cloth, (guint) MAX (strip, 0));
  SqPoint a = sq_sub (canvas->pressed, offset), b = sq_sub (mm, offset);
  double x0 = fmax (fmin (a.x, b.x), 0), x1 = fmin (fmax (a.x, b.x), box.max.x);
  double y0 = fmax (fmin (a.y, b.y), 0), y1 = fmin (fmax (a.y, b.y), box.max.y);
  canvas->flaw.x_mm = x0;
  canvas->flaw.y_mm = y0;
  canvas->flaw.along_mm = fmax (x1 - x0, 0);
  canvas->flaw.across_mm = fmax (y1 - y0, 0);
}

gboolean
sq_roll_flaws_press (SqRollCanvas *canvas, SqPoint at)
{
  const SqClothLay *cloth = sq_roll_cloth_lay (canvas);
  canvas->chosen_flaw = 0;
  canvas->pressed = sq_roll_mm (canvas, at);
  if (!sq_roll_may_change (canvas) || sq_roll_cloth (canvas) == NULL)
    return FALSE;
  if (canvas->is_marking)
    {
      gint strip = sq_roll_strip_at (cloth, canvas->pressed);
      if (strip < 0)
        return FALSE;
      canvas->flaw = (SqFlaw){ .stock = sq_lay_task_strip (cloth->task, (guint) strip)->tag };
      canvas->flaws_hand = SQ_FLAWS_MARK;
      draw_flaw (canvas, canvas->pressed);
      return TRUE;
    }
  canvas->chosen_flaw = flaw_under (canvas, at);
  if (canvas->chosen_flaw == 0)
    return FALSE;
  canvas->at = -1;
  canvas->flaw = flaw_of (canvas, canvas->chosen_flaw);
  canvas->flaws_hand = SQ_FLAWS_MOVE;
  sq_roll_show_again (canvas);
  return TRUE;
}

void
sq_roll_flaws_drag (SqRollCanvas *canvas, SqPoint at)
{
  SqPoint mm = sq_roll_mm (canvas, at);
  if (canvas->flaws_hand == SQ_FLAWS_MARK)
    draw_flaw (canvas, mm);
  else
    {
      SqFlaw old = flaw_of (canvas, canvas->chosen_flaw);
      SqVector by = sq_sub (mm, canvas->pressed);
      canvas->flaw.x_mm = fmax (old.x_mm + by.x, 0);
      canvas->flaw.y_mm = fmax (old.y_mm + by.y, 0);
    }
  gtk_widget_queue_draw (GTK_WIDGET (canvas));
}

static gboolean
is_worth_it (SqRollCanvas *canvas)
{
  double least = sq_roll_px_mm (canvas, LEAST_MARK);
  SqFlaw old = flaw_of (canvas, canvas->flaw.id);
  if (canvas->flaws_hand == SQ_FLAWS_MARK)
    return canvas->flaw.along_mm > least && canvas->flaw.across_mm > least;
  return hypot (canvas->flaw.x_mm - old.x_mm, canvas->flaw.y_mm - old.y_mm) > least;
}

void
sq_roll_flaws_release (SqRollCanvas *canvas)
{
  gboolean is_mark = canvas->flaws_hand == SQ_FLAWS_MARK;
  gboolean is_meant = is_worth_it (canvas) && sq_roll_may_change (canvas);
  canvas->flaws_hand = SQ_FLAWS_REST;
  if (is_mark)
    sq_roll_mark_flaw (canvas, FALSE);
  if (!is_meant)
    {
      sq_roll_show_again (canvas);
      return;
    }
  SqId cloth = sq_roll_cloth_lay (canvas)->cloth;
  SqId id = is_mark ? sq_job_new_flaw_id (sq_document_get_job (canvas->document), cloth)
                    : canvas->flaw.id;
  sq_edit_flaw (canvas->document, cloth, &canvas->flaw);
  canvas->chosen_flaw = id;
  sq_roll_show_again (canvas);
}

gboolean
sq_roll_flaws_put_back (SqRollCanvas *canvas)
{
  if (canvas->flaws_hand == SQ_FLAWS_REST)
    return FALSE;
  canvas->flaws_hand = SQ_FLAWS_REST;
  sq_canvas_let_go (SQ_CANVAS (canvas));
  gtk_widget_queue_draw (GTK_WIDGET (canvas));
  return TRUE;
}

gboolean
sq_roll_remove_flaw (SqRollCanvas *canvas)
{
  SqFlaw flaw = flaw_of (canvas, canvas->chosen_flaw);
  if (flaw.id == 0 || canvas->flaws_hand != SQ_FLAWS_REST || !sq_roll_may_change (canvas))
    return FALSE;
  canvas->chosen_flaw = 0;
  sq_edit_remove_flaw (canvas->document, sq_roll_cloth_lay (canvas)->cloth, flaw.id);
  return TRUE;
}

void
sq_roll_mark_flaw (SqRollCanvas *canvas, gboolean is_marking)
{
  canvas->is_marking = is_marking && sq_roll_cloth (canvas) != NULL;
  gtk_widget_set_cursor_from_name (GTK_WIDGET (canvas), canvas->is_marking ? "crosshair" : NULL);
  sq_roll_show_actions (canvas);
}

/* --- words and drawing ----------------------------------------------------------------------- */

static char *
size_words (SqRollCanvas *canvas, const SqFlaw *flaw)
{
  SqLengthStyle style = sq_figures_style (canvas->lays->plan->job);
  return sq_figures_size (flaw->along_mm, flaw->across_mm, &style);
}

char *
sq_roll_flaw_words_at (SqRollCanvas *canvas, SqPoint at)
{
  SqFlaw flaw = flaw_of (canvas, flaw_under (canvas, at));
  if (flaw.id == 0)
    return NULL;
  g_autofree char *size = size_words (canvas, &flaw);
  return g_strdup_printf (_ ("Flaw: %s; nothing is laid on it"), size);
}

/* Its size in its middle; where that has no room, above it. */
static void
add_size (SqRollCanvas *canvas, SqSceneBuilder *builder, const SqFlaw *flaw, SqBox box,
          double em_mm)
{
  g_autofree char *text = size_words (canvas, flaw);
  double width_mm = sq_text_width_em (text, FALSE) * em_mm, height_mm = SQ_TEXT_HEIGHT_EM * em_mm;
  gboolean is_in = box.max.x - box.min.x > width_mm + em_mm && box.max.y - box.min.y > height_mm;
  SqPoint at = sq_point ((box.min.x + box.max.x) / 2,
                         is_in ? (box.min.y + box.max.y) / 2 : box.max.y + height_mm / 2);
  at.x = fmax (at.x, width_mm / 2);
  sq_scene_begin_fill (builder, SQ_FILL_PLATE);
  sq_scene_add_plate (builder, at, width_mm + em_mm / 2, height_mm, 0, em_mm / 3);
  sq_scene_add_text (builder,
                     &(SqText){ .at = at, .em_mm = em_mm, .width_mm = width_mm, .text = text });
}

static void
append_one (SqRollCanvas *canvas, GtkSnapshot *snapshot, const SqFlaw *flaw, gboolean is_chosen)
{
  SqBox box = sq_roll_flaw_box (sq_roll_cloth_lay (canvas), flaw);
  SqSceneBuilder *builder = sq_scene_builder_new ();
  double em_mm = 0.85 * sq_roll_px_mm (canvas, sq_canvas_get_em (SQ_CANVAS (canvas)));
  g_autoptr (SqPath) border = sq_path_new_rectangle (box.min.x, box.min.y, box.max.x, box.max.y);
  if (is_chosen)
    sq_scene_stroke_path (builder, SQ_PEN_ACCENT, border);
  add_size (canvas, builder, flaw, box, em_mm);
  g_autoptr (SqScene) scene = sq_scene_builder_end (builder);
  sq_canvas_append_scene (SQ_CANVAS (canvas), snapshot, scene);
}

/* Whether anything of it is on what is shown of its piece of cloth. */
static gboolean
is_on_cloth (SqRollCanvas *canvas, const SqFlaw *flaw)
{
  const SqClothLay *cloth = sq_roll_cloth_lay (canvas);
  for (guint i = 0; i < cloth->task->strips->len; i++)
    if (sq_lay_task_strip (cloth->task, i)->tag == flaw->stock)
      {
        SqPoint end = sq_roll_strip_box (cloth, i).max;
        return flaw->x_mm < end.x && flaw->y_mm < end.y;
      }
  return FALSE;
}

void
sq_roll_append_flaws (SqRollCanvas *canvas, GtkSnapshot *snapshot)
{
  const SqCloth *cloth = sq_roll_cloth (canvas);
  gboolean is_held = canvas->flaws_hand != SQ_FLAWS_REST;
  for (guint i = 0; cloth != NULL && i < cloth->flaws->len; i++)
    {
      const SqFlaw *flaw = sq_cloth_flaw (cloth, i);
      if (is_on_cloth (canvas, flaw) && !(is_held && flaw->id == canvas->flaw.id))
        append_one (canvas, snapshot, flaw, flaw->id == canvas->chosen_flaw);
    }
  if (is_held && canvas->flaw.along_mm > 0 && canvas->flaw.across_mm > 0)
    append_one (canvas, snapshot, &canvas->flaw, TRUE);
}
