/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "cover/problem.h"

/* @cushion with its corner @id as @edit leaves it. */
static SqCushion *
with_corner (const SqCushion *cushion, SqId id, void (*edit) (SqCorner *corner, double value),
             double value)
{
  const SqCorner *corner = cushion->outline != NULL
                               ? sq_outline_corner (cushion->outline, id, NULL, NULL)
                               : NULL;
  if (corner == NULL)
    return NULL;
  SqCorner changed = *corner;
  edit (&changed, value);
  g_autoptr (SqOutline) outline = sq_outline_with_corner (cushion->outline, &changed);
  return sq_cushion_with_outline (cushion, outline);
}

static void
set_radius (SqCorner *corner, double value)
{
  corner->radius_mm = value;
  if (value > 0)
    corner->given |= SQ_GIVEN_RADIUS;
  else
    corner->given &= ~(guint32) SQ_GIVEN_RADIUS;
}

static void
set_clearance (SqCorner *corner, double value)
{
  corner->clearance_mm = value;
  corner->given |= SQ_GIVEN_CLEARANCE;
}

static void
straighten (SqCorner *corner, double value)
{
  (void) value;
  corner->shape = SQ_SHAPE_STRAIGHT;
  corner->bow_mm = 0;
}

static void
set_edge_build (SqCorner *corner, double value)
{
  corner->build = (SqEdgeBuild) value;
  corner->given |= SQ_GIVEN_EDGE_BUILD;
}

static void
unset_edge_build (SqCorner *corner, double value)
{
  (void) value;
  corner->build = SQ_EDGE_FOLDED;
  corner->given &= ~(guint32) SQ_GIVEN_EDGE_BUILD;
}

static SqCushion *
without_corner (const SqCushion *cushion, SqId id)
{
  if (sq_outline_corner (cushion->outline, id, NULL, NULL) == NULL)
    return NULL;
  g_autoptr (SqOutline) outline = sq_outline_without_corner (cushion->outline, id);
  return sq_cushion_with_outline (cushion, outline);
}

static SqCushion *
without_hole (const SqCushion *cushion, SqId id)
{
  guint ring;
  if (sq_outline_corner (cushion->outline, id, &ring, NULL) == NULL || ring == 0)
    return NULL;
  g_autoptr (SqOutline) outline = sq_outline_without_ring (cushion->outline, ring);
  return sq_cushion_with_outline (cushion, outline);
}

/* The straight edges before and after corner @id are folded for themselves. */
static SqCushion *
with_let_in (const SqCushion *cushion, SqId id)
{
  guint ring, index, n;
  if (cushion->outline == NULL || sq_outline_corner (cushion->outline, id, &ring, &index) == NULL)
    return NULL;
  const SqCorner *corners = sq_outline_ring (cushion->outline, ring, &n);
  SqId before = corners[(index + n - 1) % n].id;
  g_autoptr (SqCushion) first = with_corner (cushion, before, set_edge_build, SQ_EDGE_FOLDED);
  return with_corner (first, id, set_edge_build, SQ_EDGE_FOLDED);
}

#define GIVEN_ALLOWANCES                                                                           \
  (SQ_GIVEN_ALLOWANCE_CORNER | SQ_GIVEN_ALLOWANCE_PERIMETER | SQ_GIVEN_ALLOWANCE_ZIP               \
   | SQ_GIVEN_ALLOWANCE_JOIN | SQ_GIVEN_WRAP_DEPTH | SQ_GIVEN_ZIP_EXTENSION | SQ_GIVEN_ZIP_TUCK    \
   | SQ_GIVEN_FOAM_BATTING)
#define GIVEN_ZIP_LINE (SQ_GIVEN_ZIP_EDGE | SQ_GIVEN_ZIP_FROM | SQ_GIVEN_ZIP_TO | SQ_GIVEN_ZIP_AT)

/* What only some ways of building ask. */
static void
set_way_value (SqCushion *c, const SqFix *fix)
{
  guint32 set = 0, unset = 0;

  switch ((guint) fix->kind)
    {
    case SQ_FIX_WELT_AT:
      c->welt.at = (SqWeltAt) fix->value;
      set = SQ_GIVEN_WELT_AT;
      break;
    case SQ_FIX_WELT_CORD:
      c->welt.cord_mm = fix->value;
      set = SQ_GIVEN_WELT_CORD;
      break;
    case SQ_FIX_WELT_CUT:
      c->welt.cut = (SqWeltCut) fix->value;
      set = SQ_GIVEN_WELT_CUT;
      break;
    case SQ_FIX_PROFILE:
      c->profile.kind = (SqProfile) fix->value;
      set = SQ_GIVEN_PROFILE;
      unset = SQ_GIVEN_PROFILE_RADIUS;
      break;
    case SQ_FIX_PROFILE_RADIUS:
      c->profile.kind = SQ_PROFILE_RADIUS;
      c->profile.radius_mm = fix->value;
      set = SQ_GIVEN_PROFILE | SQ_GIVEN_PROFILE_RADIUS;
      break;
    case SQ_FIX_SPLIT_EVEN:
      unset = SQ_GIVEN_SPLIT_UPPER;
      break;
    case SQ_FIX_DRAW_IN:
      c->knife_edge.draw_in_mm = fix->value;
      set = SQ_GIVEN_DRAW_IN;
      break;
    case SQ_FIX_BOLSTER_DIAMETER:
      c->bolster.diameter_mm = fix->value;
      set = SQ_GIVEN_BOLSTER_DIAMETER;
      break;
    case SQ_FIX_BOLSTER_LENGTH:
      c->bolster.length_mm = fix->value;
      set = SQ_GIVEN_BOLSTER_LENGTH;
      break;
    case SQ_FIX_BOLSTER_RISE:
      c->bolster.rise_mm = fix->value;
      set = SQ_GIVEN_BOLSTER_RISE;
      break;
    default:
      break;
    }
  c->given_way = (c->given_way & ~unset) | set;
}

static void
set_value (SqCushion *c, const SqFix *fix)
{
  guint32 set = 0, unset = 0;

  switch (fix->kind)
    {
    case SQ_FIX_BUILD:
      c->build = (SqBuild) fix->value;
      set = SQ_GIVEN_BUILD;
      break;
    case SQ_FIX_THICKNESS:
      c->thickness_mm = fix->value;
      set = SQ_GIVEN_THICKNESS;
      break;
    case SQ_FIX_WRAP_DEPTH:
      c->wrap.depth_mm = fix->value;
      set = SQ_GIVEN_WRAP_DEPTH;
      break;
    case SQ_FIX_WRAP_STYLE:
      c->wrap.style = (SqWrapStyle) fix->value;
      set = SQ_GIVEN_WRAP_STYLE;
      break;
    case SQ_FIX_ZIP_PLACE:
      c->zip.place = (SqZipPlace) fix->value;
      set = SQ_GIVEN_ZIP_PLACE;
      unset = GIVEN_ZIP_LINE;
      break;
    case SQ_FIX_ZIP_EDGE:
      c->zip.edge = fix->item;
      unset = GIVEN_ZIP_LINE;
      set = fix->item != 0 ? SQ_GIVEN_ZIP_EDGE : 0;
      break;
    case SQ_FIX_ZIP_RULES:
      unset = GIVEN_ZIP_LINE;
      break;
    case SQ_FIX_ALLOWANCES:
      unset = GIVEN_ALLOWANCES;
      break;
    case SQ_FIX_CLOTH:
      unset = SQ_GIVEN_CLOTH_FACE | SQ_GIVEN_CLOTH_UNDERSIDE | SQ_GIVEN_CLOTH_SIDES
              | SQ_GIVEN_CLOTH_WELT;
      break;
    case SQ_FIX_STRIPES_RUN:
      c->stripes.run = (SqStripesRun) fix->value;
      set = SQ_GIVEN_STRIPES_RUN;
      break;
    case SQ_FIX_SEAMS_ACROSS:
      c->seams_across = (SqSeamsAcross) fix->value;
      set = SQ_GIVEN_SEAMS_ACROSS;
      break;
    case SQ_FIX_NOT_REVERSIBLE:
      unset = SQ_GIVEN_REVERSIBLE;
      break;
    case SQ_FIX_WELT_AT:
    case SQ_FIX_WELT_CORD:
    case SQ_FIX_WELT_CUT:
    case SQ_FIX_PROFILE:
    case SQ_FIX_PROFILE_RADIUS:
    case SQ_FIX_SPLIT_EVEN:
    case SQ_FIX_DRAW_IN:
    case SQ_FIX_BOLSTER_DIAMETER:
    case SQ_FIX_BOLSTER_LENGTH:
    case SQ_FIX_BOLSTER_RISE:
      set_way_value (c, fix);
      break;
    case SQ_FIX_NONE:
    case SQ_FIX_RADIUS:
    case SQ_FIX_CLEARANCE:
    case SQ_FIX_STRAIGHTEN:
    case SQ_FIX_SHARPEN:
    case SQ_FIX_DROP_CORNER:
    case SQ_FIX_DROP_HOLE:
    case SQ_FIX_EDGE_BUILD:
    case SQ_FIX_EDGE_AS_WAY:
    case SQ_FIX_LET_IN:
      break;
    }
  c->given = (c->given & ~unset) | set;
}

/* Built as @fix says all round: no side keeps a build of its own. */
static SqCushion *
with_build (const SqCushion *cushion, const SqFix *fix)
{
  g_autoptr (SqOutline) outline = NULL;
  SqCushion *changed;

  if (cushion->outline != NULL && sq_outline_n_rings (cushion->outline) > 0)
    {
      g_autofree guint *sizes = NULL;
      g_autofree SqCorner *corners = sq_outline_dup_corners (cushion->outline, &sizes);
      for (guint i = 0; i < sizes[0]; i++)
        unset_edge_build (&corners[i], 0);
      outline = sq_outline_new (corners, sizes, sq_outline_n_rings (cushion->outline));
    }
  changed = outline != NULL ? sq_cushion_with_outline (cushion, outline) : sq_cushion_dup (cushion);
  set_value (changed, fix);
  return changed;
}

SqCushion *
sq_fix_apply (const SqFix *fix, const SqCushion *cushion)
{
  g_return_val_if_fail (fix != NULL && cushion != NULL, NULL);

  switch (fix->kind)
    {
    case SQ_FIX_NONE:
      return NULL;
    case SQ_FIX_RADIUS:
      return with_corner (cushion, fix->item, set_radius, fix->value);
    case SQ_FIX_SHARPEN:
      return with_corner (cushion, fix->item, set_radius, 0);
    case SQ_FIX_CLEARANCE:
      return with_corner (cushion, fix->item, set_clearance, fix->value);
    case SQ_FIX_STRAIGHTEN:
      return with_corner (cushion, fix->item, straighten, 0);
    case SQ_FIX_EDGE_BUILD:
      return with_corner (cushion, fix->item, set_edge_build, fix->value);
    case SQ_FIX_LET_IN:
      return with_let_in (cushion, fix->item);
    case SQ_FIX_EDGE_AS_WAY:
      return with_corner (cushion, fix->item, unset_edge_build, 0);
    case SQ_FIX_DROP_CORNER:
      return without_corner (cushion, fix->item);
    case SQ_FIX_DROP_HOLE:
      return without_hole (cushion, fix->item);
    case SQ_FIX_BUILD:
      return with_build (cushion, fix);
    case SQ_FIX_THICKNESS:
    case SQ_FIX_WRAP_DEPTH:
    case SQ_FIX_WRAP_STYLE:
    case SQ_FIX_ZIP_PLACE:
    case SQ_FIX_ZIP_EDGE:
    case SQ_FIX_ZIP_RULES:
    case SQ_FIX_ALLOWANCES:
    case SQ_FIX_CLOTH:
    case SQ_FIX_STRIPES_RUN:
    case SQ_FIX_SEAMS_ACROSS:
    case SQ_FIX_NOT_REVERSIBLE:
    case SQ_FIX_WELT_AT:
    case SQ_FIX_WELT_CORD:
    case SQ_FIX_WELT_CUT:
    case SQ_FIX_PROFILE:
    case SQ_FIX_PROFILE_RADIUS:
    case SQ_FIX_SPLIT_EVEN:
    case SQ_FIX_DRAW_IN:
    case SQ_FIX_BOLSTER_DIAMETER:
    case SQ_FIX_BOLSTER_LENGTH:
    case SQ_FIX_BOLSTER_RISE:
      {
        SqCushion *changed = sq_cushion_dup (cushion);
        set_value (changed, fix);
        return changed;
      }
    }
  return NULL;
}
