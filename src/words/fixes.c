/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "words/fixes.h"

#include "words/lengths.h"
#include "words/piece-names.h"

#include <glib/gi18n.h>

static const char *
build_label (guint build)
{
  static const char *const labels[SQ_N_BUILDS] = {
    [SQ_BUILD_FOLDED_CORNER] = N_ ("Fold the corners"),
    [SQ_BUILD_BOXED] = N_ ("Box the cushion"),
    [SQ_BUILD_WRAPPED_FRONT] = N_ ("Wrap the front"),
    [SQ_BUILD_SPLIT_SIDE] = N_ ("Split the sides"),
    [SQ_BUILD_KNIFE_EDGE] = N_ ("Make a knife edge"),
    [SQ_BUILD_BOLSTER] = N_ ("Make a bolster"),
  };

  g_return_val_if_fail (build < SQ_N_BUILDS, "");
  return _ (labels[build]);
}

static const char *
zip_place_label (guint place)
{
  static const char *const labels[] = {
    [SQ_ZIP_NONE] = N_ ("Leave the zip out"),
    [SQ_ZIP_BOXING] = N_ ("Put the zip in the boxing"),
    [SQ_ZIP_UNDERSIDE] = N_ ("Put the zip in the underside"),
    [SQ_ZIP_BACK_SEAM] = N_ ("Put the zip in the back seam"),
    [SQ_ZIP_SIDE_SEAM] = N_ ("Put the zip in the side seam"),
    [SQ_ZIP_TUBE] = N_ ("Put the zip in the tube"),
  };

  g_return_val_if_fail (place < G_N_ELEMENTS (labels), "");
  return _ (labels[place]);
}

static const char *
profile_label (guint profile)
{
  switch (profile)
    {
    case SQ_PROFILE_SQUARE:
      return _ ("Make the front square");
    case SQ_PROFILE_HALF_ROUND:
      return _ ("Make the front half-round");
    default:
      return _ ("Round the front above and below");
    }
}

static char *
length_label (const char *pattern, double mm, const SqLengthStyle *style)
{
  g_autofree char *length = sq_words_length (mm, style);

  return g_strdup_printf (pattern, length);
}

static char *
corner_label (const char *pattern, const SqCushion *cushion, SqId corner)
{
  g_autofree char *name = sq_words_corner (cushion, corner);

  return g_strdup_printf (pattern, name);
}

static char *
edge_label (const char *pattern, const SqCushion *cushion, SqId corner)
{
  g_autofree char *name = sq_words_edge_corners (cushion, corner);

  return g_strdup_printf (pattern, name);
}

char *
sq_words_fix (const SqFix *fix, const SqCushion *cushion, const SqLengthStyle *style)
{
  switch (fix->kind)
    {
    case SQ_FIX_NONE:
      return g_strdup ("");
    case SQ_FIX_BUILD:
      return g_strdup (build_label ((guint) fix->value));
    case SQ_FIX_RADIUS:
      return length_label (_ ("Radius %s"), fix->value, style);
    case SQ_FIX_CLEARANCE:
      return length_label (_ ("Clearance %s"), fix->value, style);
    case SQ_FIX_STRAIGHTEN:
      return edge_label (_ ("Make %s straight"), cushion, fix->item);
    case SQ_FIX_SHARPEN:
      return corner_label (_ ("Make corner %s sharp"), cushion, fix->item);
    case SQ_FIX_DROP_CORNER:
      return corner_label (_ ("Remove corner %s"), cushion, fix->item);
    case SQ_FIX_DROP_HOLE:
      return g_strdup (_ ("Remove the hole"));
    case SQ_FIX_THICKNESS:
      return length_label (_ ("Thickness %s"), fix->value, style);
    case SQ_FIX_WRAP_DEPTH:
      return length_label (_ ("Wrap %s deep"), fix->value, style);
    case SQ_FIX_WRAP_STYLE:
      return g_strdup ((guint) fix->value == SQ_WRAP_MITRED ? _ ("Mitre the wrap")
                                                            : _ ("Make the wrap plain"));
    case SQ_FIX_ZIP_PLACE:
      return g_strdup (zip_place_label ((guint) fix->value));
    case SQ_FIX_ZIP_EDGE:
      return fix->item == 0 ? g_strdup (_ ("Choose the zip’s edge by the rules"))
                            : edge_label (_ ("Put the zip along %s"), cushion, fix->item);
    case SQ_FIX_ZIP_RULES:
      return g_strdup (_ ("Place the zip by the rules"));
    case SQ_FIX_ALLOWANCES:
      return g_strdup (_ ("Take the usual allowances"));
    case SQ_FIX_CLOTH:
      return g_strdup (_ ("Take the first cloth"));
    case SQ_FIX_EDGE_BUILD:
      return edge_label ((guint) fix->value == SQ_EDGE_BOXED ? _ ("Box the side at %s")
                                                             : _ ("Fold the side at %s"),
                         cushion, fix->item);
    case SQ_FIX_LET_IN:
      return corner_label (_ ("Let boxing in at corner %s"), cushion, fix->item);
    case SQ_FIX_EDGE_AS_WAY:
      return edge_label (_ ("Build %s like the rest"), cushion, fix->item);
    case SQ_FIX_WELT_AT:
      return g_strdup ((guint) fix->value == SQ_WELT_NONE ? _ ("Leave the welt out")
                                                          : _ ("Sew in a welt"));
    case SQ_FIX_WELT_CORD:
      return length_label (_ ("Cord %s thick"), fix->value, style);
    case SQ_FIX_WELT_CUT:
      return g_strdup ((guint) fix->value == SQ_WELT_BIAS ? _ ("Cut the welt on the bias")
                                                          : _ ("Cut the welt straight"));
    case SQ_FIX_PROFILE:
      return g_strdup (profile_label ((guint) fix->value));
    case SQ_FIX_PROFILE_RADIUS:
      return length_label (_ ("Radius of the front %s"), fix->value, style);
    case SQ_FIX_SPLIT_EVEN:
      return g_strdup (_ ("Split in the middle"));
    case SQ_FIX_DRAW_IN:
      return length_label (_ ("Draw in by %s"), fix->value, style);
    case SQ_FIX_BOLSTER_DIAMETER:
      return length_label (_ ("Diameter %s"), fix->value, style);
    case SQ_FIX_BOLSTER_LENGTH:
      return length_label (_ ("Length %s"), fix->value, style);
    case SQ_FIX_BOLSTER_RISE:
      return length_label (_ ("Rise %s"), fix->value, style);
    case SQ_FIX_STRIPES_RUN:
      return g_strdup ((guint) fix->value == SQ_STRIPES_SIDE_TO_SIDE
                           ? _ ("Run the cloth side to side")
                           : _ ("Run the cloth front to back"));
    case SQ_FIX_SEAMS_ACROSS:
      return g_strdup ((guint) fix->value == SQ_ACROSS_TWO_JOINS ? _ ("Join it of three widths")
                                                                 : _ ("Cut it in one"));
    case SQ_FIX_NOT_REVERSIBLE:
      return g_strdup (_ ("Give it one right way up"));
    }
  g_return_val_if_reached (g_strdup (""));
}
