/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "window/side-figures.h"

#include "window/edit-place.h"
#include "window/figures.h"
#include "words/angles.h"
#include "words/names.h"
#include "words/piece-names.h"

#include <glib/gi18n.h>

gboolean
sq_side_figure_is_of_edge (const SqSideFigure *figure)
{
  return figure->measure == SQ_MEASURE_LENGTH || figure->measure == SQ_MEASURE_RISE;
}

gboolean
sq_side_figure_moves (const SqSideFigure *figure)
{
  return figure->measure == SQ_MEASURE_LENGTH || figure->measure == SQ_MEASURE_ANGLE;
}

gboolean
sq_side_figure_is_there (const SqCushion *cushion, const SqSideFigure *figure)
{
  const SqCorner *corner = sq_outline_corner (cushion->outline, figure->corner, NULL, NULL);
  return corner != NULL && (figure->measure != SQ_MEASURE_RISE || corner->shape != SQ_SHAPE_CURVE);
}

char *
sq_side_figure_name (const SqCushion *cushion, const SqSideFigure *figure)
{
  g_autofree char *name = sq_side_figure_is_of_edge (figure)
                              ? sq_words_edge_corners (cushion, figure->corner)
                              : sq_words_corner (cushion, figure->corner);
  switch (figure->measure)
    {
    case SQ_MEASURE_LENGTH:
      return g_strdup_printf (_ ("Length of side %s"), name);
    case SQ_MEASURE_RISE:
      return g_strdup_printf (_ ("Rise of side %s"), name);
    case SQ_MEASURE_RADIUS:
      return g_strdup_printf (_ ("Radius of corner %s"), name);
    case SQ_MEASURE_ANGLE:
      return g_strdup_printf (_ ("Angle at corner %s"), name);
    }
  g_return_val_if_reached (NULL);
}

/* Straight from corner to corner. */
static double
chord_mm (const SqOutline *outline, SqId edge)
{
  guint ring = 0, index = 0, n;
  const SqCorner *corner = sq_outline_corner (outline, edge, &ring, &index);
  const SqCorner *corners = sq_outline_ring (outline, ring, &n);
  return sq_distance (corner->at, corners[(index + 1) % n].at);
}

static SqSideReading
reading_of (const SqOutline *outline, SqId corner)
{
  guint ring = 0, index = 0, n;
  sq_outline_corner (outline, corner, &ring, &index);
  g_autofree SqSideReading *readings = sq_outline_side_readings (outline, ring, &n);
  return readings[index];
}

char *
sq_side_figure_text (const SqJob *job, const SqCushion *cushion, const SqSideFigure *figure)
{
  const SqCorner *corner = sq_outline_corner (cushion->outline, figure->corner, NULL, NULL);
  SqLengthStyle style = sq_figures_style (job);
  g_return_val_if_fail (corner != NULL, NULL);
  switch (figure->measure)
    {
    case SQ_MEASURE_LENGTH:
      return sq_length_format (chord_mm (cushion->outline, corner->id), &style);
    case SQ_MEASURE_RISE:
      if (corner->shape != SQ_SHAPE_CURVE)
        return sq_length_format (corner->shape == SQ_SHAPE_BOW ? corner->bow_mm : 0, &style);
      return sq_length_format (reading_of (cushion->outline, corner->id).rise_mm, &style);
    case SQ_MEASURE_RADIUS:
      return sq_length_format (corner->radius_mm, &style);
    case SQ_MEASURE_ANGLE:
      return sq_words_angle (reading_of (cushion->outline, corner->id).angle_rad, &style);
    }
  g_return_val_if_reached (NULL);
}

char *
sq_side_figure_stays (const SqCushion *cushion, const SqSideFigure *figure, SqStays stays)
{
  guint ring = 0, index = 0, n;
  const SqCorner *corner = sq_outline_corner (cushion->outline, figure->corner, &ring, &index);
  const SqCorner *corners = sq_outline_ring (cushion->outline, ring, &n);
  g_return_val_if_fail (corner != NULL, NULL);
  if (figure->measure == SQ_MEASURE_ANGLE)
    {
      guint side = stays == SQ_STAYS_START ? (index + n - 1) % n : index;
      return sq_words_edge_corners (cushion, corners[side].id);
    }
  return sq_words_corner (cushion,
                          stays == SQ_STAYS_START ? corner->id : corners[(index + 1) % n].id);
}

static const char *
give_angle (SqDocument *document, SqId cushion, SqId corner, SqStays stays, const char *text)
{
  double rad;
  SqSidesResult outcome;
  SqLengthResult result = sq_words_read_angle (text, sq_figures_decimal (), &rad);
  if (result == SQ_LENGTH_UNEXPECTED)
    return _ ("Not an angle. Type it in degrees, as 88.5.");
  if (result == SQ_LENGTH_EMPTY)
    return _ ("Type an angle in degrees, as 88.5.");
  if (result != SQ_LENGTH_OK)
    return sq_figures_mistake (result);
  outcome = sq_edit_angle (document, cushion, corner, rad, stays);
  if (outcome == SQ_SIDES_NOT_POSITIVE)
    return _ ("An angle lies between 0° and 360°.");
  return outcome != SQ_SIDES_FINE ? sq_words_sides_result (outcome) : NULL;
}

const char *
sq_side_figure_give (SqDocument *document, SqId cushion, const SqSideFigure *figure, SqStays stays,
                     const char *text)
{
  SqLengthStyle style = sq_figures_style (sq_document_get_job (document));
  SqLengthResult result;
  SqSidesResult outcome;
  double mm;
  if (figure->measure == SQ_MEASURE_ANGLE)
    return give_angle (document, cushion, figure->corner, stays, text);
  result = sq_length_parse (text, style.unit, style.decimal, &mm, NULL);
  if (result == SQ_LENGTH_EMPTY && figure->measure != SQ_MEASURE_LENGTH)
    {
      mm = 0; /* no rise, no rounding */
      result = SQ_LENGTH_OK;
    }
  if (result != SQ_LENGTH_OK)
    return sq_figures_mistake (result);
  if (figure->measure == SQ_MEASURE_LENGTH)
    outcome = sq_edit_side_length (document, cushion, figure->corner, mm, stays);
  else
    outcome = sq_edit_place_length (
        document, cushion, figure->corner,
        figure->measure == SQ_MEASURE_RISE ? SQ_PLACE_RISE : SQ_PLACE_RADIUS, &mm);
  return outcome != SQ_SIDES_FINE ? sq_words_sides_result (outcome) : NULL;
}
