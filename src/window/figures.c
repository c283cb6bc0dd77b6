/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "window/figures.h"

#include "drawing/seat-drawn.h"
#include "plan/materials.h"
#include "words/lengths.h"

#include <glib/gi18n.h>
#include <locale.h>

char
sq_figures_decimal (void)
{
  return localeconv ()->decimal_point[0] == ',' ? ',' : '.';
}

SqLengthStyle
sq_figures_style (const SqJob *job)
{
  SqLengthStyle style = sq_words_length_style (job, sq_figures_decimal ());
  style.set = TRUE;
  style.with_unit = FALSE;
  return style;
}

char *
sq_figures_count (guint n)
{
  /* Where the comma is the decimal sign, a narrow space is understood everywhere (ISO 80000-1). */
  const char *sign = sq_figures_decimal () == ',' ? "\u202f" : ",";
  GString *text = g_string_new (NULL);
  g_string_printf (text, "%u", n);
  for (gssize at = (gssize) text->len - 3; at > 0; at -= 3)
    g_string_insert (text, at, sign);
  return g_string_free (text, FALSE);
}

double
sq_figures_step_mm (const SqJob *job)
{
  double step = job->units == SQ_UNIT_IN ? job->defaults.step_in_mm : job->defaults.step_mm_mm;
  return step > 0 ? step : 1;
}

char *
sq_figures_size (double width_mm, double height_mm, const SqLengthStyle *style)
{
  g_autofree char *width = sq_words_figure (width_mm, style);
  g_autofree char *height = sq_words_figure (height_mm, style);
  /* Translators: a width and a depth or height. */
  return g_strdup_printf (_ ("%s × %s"), width, height);
}

SqVector
sq_figures_seat_extent (const SqCover *cover)
{
  g_autoptr (SqPath) ring = NULL;
  g_autoptr (SqPath) turned = NULL;
  SqVector front = cover->finished != NULL ? cover->finished->front_dir : sq_point (1, 0);
  SqBox box;
  if (sq_outline_n_rings (cover->cushion->outline) == 0)
    return sq_figures_finished_extent (cover);
  ring = sq_seat_ring (cover->cushion->outline, 0);
  if (ring == NULL)
    return sq_point (0, 0);
  if (cover->mirrored)
    front.y = -front.y; /* the finished outline is the image's */
  turned = sq_path_moved (ring, -atan2 (front.y, front.x), sq_point (0, 0));
  box = sq_path_box (turned);
  return sq_sub (box.max, box.min);
}

SqVector
sq_figures_finished_extent (const SqCover *cover)
{
  if (cover->finished == NULL)
    return sq_point (0, 0);
  return sq_sub (cover->finished->extent.max, cover->finished->extent.min);
}

SqBox
sq_figures_seat_box (const SqCover *cover)
{
  const SqCushion *cushion = cover->cushion;
  SqBox box = sq_box_empty ();
  for (guint ring = 0; ring < sq_outline_n_rings (cushion->outline); ring++)
    {
      guint n;
      const SqCorner *corners = sq_outline_ring (cushion->outline, ring, &n);
      g_autoptr (SqPath) path = sq_seat_ring (cushion->outline, ring);
      if (path != NULL)
        box = sq_box_union (box, sq_path_box (path));
      for (guint i = 0; i < n; i++)
        box = sq_box_with (box, corners[i].at);
    }
  /* A bolster has a plan where nothing is drawn. */
  if (sq_outline_n_rings (cushion->outline) == 0 && cover->finished != NULL)
    box = sq_path_box (cover->finished->rings[0].path);
  return box;
}

char *
sq_figures_foot (const SqPlan *plan, const SqLengthStyle *style)
{
  SqFigures figures = sq_plan_figures (plan);
  g_autofree char *cloth = sq_words_area (figures.cloth_mm2, style);
  g_autofree char *foam = sq_words_volume (figures.foam_mm3, style);
  g_autofree char *weight = sq_words_weight (figures.foam_g, style);
  g_autofree char *zip = sq_words_long_length (figures.zip_mm, style);
  g_autofree char *seam = sq_words_long_length (sq_plan_materials (plan).sewn_mm, style);
  /* Translators: the line at the foot: area of cloth, foam's volume and weight, length of zip and
   * of all seams. */
  return g_strdup_printf (_ ("Cloth %s   ·   foam %s, %s   ·   zip %s   ·   seams %s"), cloth, foam,
                          weight, zip, seam);
}

const char *
sq_figures_mistake (SqLengthResult result)
{
  switch (result)
    {
    case SQ_LENGTH_OK:
      return "";
    case SQ_LENGTH_EMPTY:
      return _ ("Type a length, as 18 1/2.");
    case SQ_LENGTH_UNEXPECTED:
      return _ ("Not a length. Type it as 18 1/2, 46.5 cm or 36 - 2*1/2.");
    case SQ_LENGTH_UNFINISHED:
      return _ ("A figure is missing at the end.");
    case SQ_LENGTH_FRACTION:
    case SQ_LENGTH_DIVISION_BY_ZERO:
      return _ ("Nothing can be divided by zero.");
    case SQ_LENGTH_UNITS:
      return _ ("The units don’t give a length.");
    case SQ_LENGTH_PARENTHESIS:
      return _ ("A parenthesis is missing.");
    case SQ_LENGTH_TOO_LARGE:
      return _ ("Longer than 100 m.");
    case SQ_LENGTH_TOO_LONG:
      return _ ("Too long to read.");
    }
  g_return_val_if_reached ("");
}

static gboolean
is_seen_from_above (SqPieceRole role)
{
  return role == SQ_ROLE_FACE || role == SQ_ROLE_WRAP || role == SQ_ROLE_TUBE;
}

const SqPiece *
sq_figures_face (const SqCover *cover)
{
  for (guint i = 0; i < cover->pieces->len; i++)
    if (is_seen_from_above (sq_cover_piece (cover, i)->role))
      return sq_cover_piece (cover, i);
  return NULL;
}

const SqCloth *
sq_figures_face_cloth (const SqPlan *plan, const SqCover *cover)
{
  const SqPiece *face = sq_figures_face (cover);
  if (face != NULL)
    return sq_plan_cloth (plan, face->cloth);
  return plan->job->cloths->len > 0 ? g_ptr_array_index (plan->job->cloths, 0) : NULL;
}

guint
sq_figures_cloth_look (const SqCloth *cloth)
{
  guint look;
  if (cloth == NULL)
    return 0;
  look = cloth->colour * 31 + (guint) lround (cloth->repeat_across_mm * 1000);
  for (guint i = 0; i < cloth->n_stripes; i++)
    {
      const SqStripe *stripe = &cloth->stripes[i];
      look = look * 31 + stripe->colour;
      look = look * 31 + g_double_hash (&stripe->at_mm);
      look = look * 31 + g_double_hash (&stripe->width_mm);
    }
  return look;
}
