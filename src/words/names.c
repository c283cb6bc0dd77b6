/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "words/names.h"

#include "words/text-table.h"

#include <glib/gi18n.h>

const char *
sq_words_build (SqBuild build)
{
  static const char *const names[SQ_N_BUILDS] = {
    [SQ_BUILD_FOLDED_CORNER] = N_ ("Folded corners"), [SQ_BUILD_BOXED] = N_ ("Boxed"),
    [SQ_BUILD_WRAPPED_FRONT] = N_ ("Wrapped front"),  [SQ_BUILD_SPLIT_SIDE] = N_ ("Split sides"),
    [SQ_BUILD_KNIFE_EDGE] = N_ ("Knife edge"),        [SQ_BUILD_BOLSTER] = N_ ("Bolster"),
  };

  g_return_val_if_fail (build < SQ_N_BUILDS, "");
  return _ (names[build]);
}

const char *
sq_words_edge_kind (SqEdgeKind kind)
{
  static const char *const names[SQ_N_EDGE_KINDS] = {
    [SQ_EDGE_FREE] = N_ ("Free"),
    [SQ_EDGE_WALL] = N_ ("Wall"),
    [SQ_EDGE_WELL] = N_ ("Well"),
    [SQ_EDGE_HULL_LINING] = N_ ("Hull lining"),
    [SQ_EDGE_ARM] = N_ ("Arm"),
    [SQ_EDGE_NEIGHBOUR] = N_ ("Neighbouring cushion"),
    [SQ_EDGE_LID_HINGE] = N_ ("Hinge of a lid"),
  };

  g_return_val_if_fail (kind < SQ_N_EDGE_KINDS, "");
  return _ (names[kind]);
}

const char *
sq_words_shape (SqShapeKind kind)
{
  static const char *const names[SQ_N_SHAPE_KINDS] = {
    [SQ_OUTLINE_RECTANGLE] = N_ ("Rectangle"),
    [SQ_OUTLINE_TRAPEZOID] = N_ ("Trapezoid"),
    /* TRANSLATORS: a seat shaped like the letter, with an ear round one arm. */
    [SQ_OUTLINE_L] = N_ ("L"),
    /* TRANSLATORS: a seat shaped like the letter, with ears round two arms. */
    [SQ_OUTLINE_T] = N_ ("T"),
    [SQ_OUTLINE_POLYGON] = N_ ("Polygon"),
    [SQ_OUTLINE_CIRCLE] = N_ ("Circle"),
    [SQ_OUTLINE_HALF_ROUND] = N_ ("Half round"),
    [SQ_OUTLINE_BAY] = N_ ("Bay"),
  };

  g_return_val_if_fail (kind < SQ_N_SHAPE_KINDS, "");
  return _ (names[kind]);
}

const char *
sq_words_shape_figure (SqFigureKind kind)
{
  static const char *const names[SQ_N_FIGURE_KINDS] = {
    [SQ_FIGURE_WIDTH] = N_ ("Width"),
    [SQ_FIGURE_DEPTH] = N_ ("Depth"),
    [SQ_FIGURE_BACK_WIDTH] = N_ ("Width at the back"),
    [SQ_FIGURE_EAR_WIDTH] = N_ ("Width of an ear"),
    [SQ_FIGURE_EAR_DEPTH] = N_ ("Depth of an ear"),
    [SQ_FIGURE_SIDE_COUNT] = N_ ("Number of sides"),
    [SQ_FIGURE_SIDE] = N_ ("Each side"),
    [SQ_FIGURE_DIAMETER] = N_ ("Diameter"),
    [SQ_FIGURE_SIDE_DEPTH] = N_ ("Depth of the straight sides"),
  };

  g_return_val_if_fail (kind < SQ_N_FIGURE_KINDS, "");
  return _ (names[kind]);
}

const char *
sq_words_sides_result (SqSidesResult result)
{
  switch (result)
    {
    case SQ_SIDES_FINE:
      return "";
    case SQ_SIDES_NOT_POSITIVE:
      return _ ("It has to be more than nothing.");
    case SQ_SIDES_TOO_LONG:
      return _ ("That is too long: the side that takes up the change would vanish.");
    case SQ_SIDES_TOO_SHORT:
      return _ ("That is too short: the side that takes up the change would vanish.");
    case SQ_SIDES_CROSS:
      return _ ("Sides would cross.");
    case SQ_SIDES_NO_DIRECTION:
      return _ ("The side has no direction to grow in. Drag one of its corners first.");
    }
  g_return_val_if_reached ("");
}

const char *
sq_words_side (SqSideOf side)
{
  switch (side)
    {
    case SQ_SIDE_FRONT:
      return _ ("Front");
    case SQ_SIDE_RIGHT:
      return _ ("Right");
    case SQ_SIDE_BACK:
      return _ ("Back");
    case SQ_SIDE_LEFT:
      return _ ("Left");
    }
  g_return_val_if_reached ("");
}

const char *
sq_words_cloth_class (SqClothClass kind)
{
  static const char *const names[SQ_N_CLOTH_CLASSES] = {
    [SQ_CLOTH_CANVAS] = N_ ("Canvas"),
    [SQ_CLOTH_UPHOLSTERY] = N_ ("Upholstery cloth"),
    [SQ_CLOTH_LOOSE_WEAVE] = N_ ("Loose weave"),
    [SQ_CLOTH_VELVET] = N_ ("Velvet"),
    [SQ_CLOTH_VINYL] = N_ ("Vinyl"),
    [SQ_CLOTH_STRETCH] = N_ ("Stretch cloth"),
    [SQ_CLOTH_MESH] = N_ ("Mesh"),
  };

  g_return_val_if_fail (kind < SQ_N_CLOTH_CLASSES, "");
  return _ (names[kind]);
}

const char *
sq_words_foam_kind (SqFoamKind kind)
{
  static const char *const names[SQ_N_FOAM_KINDS] = {
    [SQ_FOAM_SEAT] = N_ ("Seat foam"),
    [SQ_FOAM_FIRM] = N_ ("Firm foam"),
    [SQ_FOAM_FAST_DRAINING] = N_ ("Fast-draining foam"),
    [SQ_FOAM_CLOSED_CELL] = N_ ("Closed-cell foam"),
    [SQ_FOAM_BONDED] = N_ ("Bonded foam"),
  };

  g_return_val_if_fail (kind < SQ_N_FOAM_KINDS, "");
  return _ (names[kind]);
}

const char *
sq_words_zip_place (SqZipPlace place)
{
  switch (place)
    {
    case SQ_ZIP_NONE:
      return _ ("No zip");
    case SQ_ZIP_BOXING:
      return _ ("Zip in the boxing");
    case SQ_ZIP_UNDERSIDE:
      return _ ("Zip across the underside");
    case SQ_ZIP_BACK_SEAM:
      return _ ("Zip in the back seam");
    case SQ_ZIP_SIDE_SEAM:
      return _ ("Zip in the side seam");
    case SQ_ZIP_TUBE:
      return _ ("Zip in the tube");
    }
  g_return_val_if_reached ("");
}

const char *
sq_words_zip_place_short (SqZipPlace place)
{
  static const char *const names[SQ_N_ZIP_PLACES] = {
    [SQ_ZIP_NONE] = N_ ("None"),           [SQ_ZIP_BOXING] = N_ ("Boxing"),
    [SQ_ZIP_UNDERSIDE] = N_ ("Underside"), [SQ_ZIP_BACK_SEAM] = N_ ("Back seam"),
    [SQ_ZIP_SIDE_SEAM] = N_ ("Side seam"), [SQ_ZIP_TUBE] = N_ ("Tube"),
  };

  g_return_val_if_fail (place < SQ_N_ZIP_PLACES, "");
  return _ (names[place]);
}

const char *
sq_words_edge_build (SqEdgeBuild build)
{
  switch (build)
    {
    case SQ_EDGE_FOLDED:
      return _ ("Folded down");
    case SQ_EDGE_BOXED:
      return _ ("Boxed");
    case SQ_EDGE_OPEN:
      return _ ("Open");
    }
  g_return_val_if_reached ("");
}

const char *
sq_words_wrap_style (SqWrapStyle style)
{
  switch (style)
    {
    case SQ_WRAP_PLAIN:
      return _ ("Plain wrap");
    case SQ_WRAP_MITRED:
      return _ ("Mitred wrap");
    }
  g_return_val_if_reached ("");
}

const char *
sq_words_profile (SqProfile profile)
{
  switch (profile)
    {
    case SQ_PROFILE_SQUARE:
      return _ ("Square");
    case SQ_PROFILE_HALF_ROUND:
      return _ ("Half-round");
    case SQ_PROFILE_RADIUS:
      return _ ("Radius");
    }
  g_return_val_if_reached ("");
}

const char *
sq_words_stripes_run (SqStripesRun run)
{
  switch (run)
    {
    case SQ_STRIPES_FRONT_TO_BACK:
      return _ ("Stripes from front to back");
    case SQ_STRIPES_SIDE_TO_SIDE:
      return _ ("Stripes from side to side");
    }
  g_return_val_if_reached ("");
}

const char *
sq_words_centre_on (SqCentreOn centre_on)
{
  switch (centre_on)
    {
    case SQ_CENTRE_STRIPE:
      return _ ("A stripe in the middle");
    case SQ_CENTRE_GAP:
      return _ ("A gap in the middle");
    case SQ_CENTRE_MOTIF:
      return _ ("A motif in the middle");
    case SQ_CENTRE_NONE:
      return _ ("Nothing centred");
    }
  g_return_val_if_reached ("");
}

const char *
sq_words_severity (SqSeverity severity)
{
  switch (severity)
    {
    case SQ_NOTE:
      return _ ("Note");
    case SQ_WARNING:
      return _ ("Warning");
    case SQ_FAULT:
      return _ ("Error");
    }
  g_return_val_if_reached ("");
}

char *
sq_words_cushion (const SqJob *job, const SqCushion *cushion)
{
  g_autofree char *given = sq_text_clean (cushion->name);

  if (given[0] != '\0')
    return g_steal_pointer (&given);
  for (guint i = 0; i < job->cushions->len; i++)
    {
      const SqCushion *other = g_ptr_array_index (job->cushions, i);
      if (other->id == cushion->id)
        return g_strdup_printf (_ ("Cushion %u"), i + 1);
    }
  return g_strdup (_ ("Cushion"));
}

char *
sq_words_cover (const SqJob *job, const SqCover *cover)
{
  g_autofree char *name = sq_words_cushion (job, cover->cushion);

  if (!cover->mirrored)
    return g_steal_pointer (&name);
  /* TRANSLATORS: %s is a cushion's name; this one is the mirror image of what was drawn. */
  return g_strdup_printf (_ ("%s (mirrored)"), name);
}

const char *
sq_words_hand (SqHand hand)
{
  switch (hand)
    {
    case SQ_HAND_AS_DRAWN:
      return _ ("As drawn");
    case SQ_HAND_MIRRORED:
      return _ ("Mirrored");
    case SQ_HAND_PAIR:
      return _ ("A pair, one of each");
    }
  g_return_val_if_reached ("");
}

char *
sq_words_cloth (const SqCloth *cloth)
{
  if (cloth == NULL)
    return g_strdup (_ ("Cloth"));

  g_autofree char *given = sq_text_clean (cloth->name);
  if (given[0] != '\0')
    return g_steal_pointer (&given);
  return g_strdup_printf (_ ("Cloth %u"), cloth->id);
}
