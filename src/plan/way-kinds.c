/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "plan/way-kinds.h"

#include "base/units.h"
#include "cover/choices.h"

const SqWayKind sq_way_kinds[SQ_N_WAY_KINDS] = {
  { SQ_BUILD_BOXED, FALSE, FALSE },         { SQ_BUILD_BOXED, TRUE, FALSE },
  { SQ_BUILD_FOLDED_CORNER, FALSE, FALSE }, { SQ_BUILD_FOLDED_CORNER, FALSE, TRUE },
  { SQ_BUILD_SPLIT_SIDE, FALSE, FALSE },    { SQ_BUILD_KNIFE_EDGE, FALSE, FALSE },
  { SQ_BUILD_WRAPPED_FRONT, FALSE, FALSE }, { SQ_BUILD_BOLSTER, FALSE, FALSE },
};

#define GIVEN_ZIP                                                                                  \
  (SQ_GIVEN_ZIP_PLACE | SQ_GIVEN_ZIP_EDGE | SQ_GIVEN_ZIP_FROM | SQ_GIVEN_ZIP_TO | SQ_GIVEN_ZIP_AT  \
   | SQ_GIVEN_ZIP_METHOD)

static gboolean
has_welt (const SqCushion *cushion)
{
  return (cushion->given_way & SQ_GIVEN_WELT_AT) && cushion->welt.at != SQ_WELT_NONE;
}

/* The outer ring's corners, none where nothing is drawn; holes follow the cushion's way. */
static const SqCorner *
outer_ring (const SqOutline *outline, guint *n)
{
  *n = 0;
  return sq_outline_n_rings (outline) > 0 ? sq_outline_ring (outline, 0, n) : NULL;
}

/* Whether some edge is built otherwise than the cushion's way, folded or boxed, has it. */
static gboolean
is_mixed (const SqCushion *cushion, SqBuild build)
{
  SqEdgeBuild other = build == SQ_BUILD_BOXED ? SQ_EDGE_FOLDED : SQ_EDGE_BOXED;
  guint n;
  const SqCorner *corners = outer_ring (cushion->outline, &n);

  if (build != SQ_BUILD_BOXED && build != SQ_BUILD_FOLDED_CORNER)
    return FALSE;
  for (guint i = 0; i < n; i++)
    if ((corners[i].given & SQ_GIVEN_EDGE_BUILD) && corners[i].build == other)
      return TRUE;
  return FALSE;
}

guint
sq_way_kind_of (const SqJob *job, const SqCushion *cushion)
{
  SqBuild build = cushion->given & SQ_GIVEN_BUILD ? cushion->build : job->defaults.build;
  SqWayKind own = { .build = build, .mixed = is_mixed (cushion, build) };
  guint kind = 0;

  if (own.mixed)
    own.build = SQ_BUILD_FOLDED_CORNER;
  own.welt = own.build == SQ_BUILD_BOXED && has_welt (cushion);
  while (kind < SQ_N_WAY_KINDS - 1
         && (sq_way_kinds[kind].build != own.build || sq_way_kinds[kind].welt != own.welt
             || sq_way_kinds[kind].mixed != own.mixed))
    kind++;
  return kind;
}

/* ---- boxing where skirts find no cloth ------------------------------------------------------- */

static void
box_both (gboolean *boxed, guint corner, guint n)
{
  boxed[corner] = boxed[(corner + n - 1) % n] = TRUE;
}

/* Edges at corners that turn inward. */
static void
box_inward (const SqOutline *outline, gboolean *boxed, guint n)
{
  g_autoptr (SqPath) path = sq_outline_path (outline, 0, NULL);

  if (path == NULL)
    return;
  const SqNode *nodes = sq_path_nodes (path);
  guint n_nodes = sq_path_n_nodes (path);
  for (guint i = 0; i < n_nodes; i++)
    {
      guint before = (i + n_nodes - 1) % n_nodes;
      SqSegment from = sq_path_segment (path, before), to = sq_path_segment (path, i);
      SqVector u = sq_segment_direction (&from, 1), v = sq_segment_direction (&to, 0);
      if (nodes[i].tag != nodes[before].tag && sq_cross (u, v) < -SQ_STRAIGHT_RAD)
        box_both (boxed, nodes[i].tag, n);
    }
}

/* Which edges of the outer ring can't be skirts: curves, and those at rounded corners and at
 * corners that turn inward. New array of *@n. */
static gboolean *
boxed_edges (const SqOutline *outline, guint *n_edges)
{
  guint n;
  const SqCorner *corners = outer_ring (outline, &n);
  gboolean *boxed = g_new0 (gboolean, MAX (n, 1));

  for (guint i = 0; i < n; i++)
    {
      if (corners[i].shape == SQ_SHAPE_CURVE
          || (corners[i].shape == SQ_SHAPE_BOW && corners[i].bow_mm != 0))
        boxed[i] = TRUE;
      if ((corners[i].given & SQ_GIVEN_RADIUS) && corners[i].radius_mm > 0)
        box_both (boxed, i, n);
    }
  if (n > 0)
    box_inward (outline, boxed, n);
  *n_edges = n;
  return boxed;
}

/* The outline with each edge as the way has it, but those of the outer ring's @n that are @boxed. */
static SqOutline *
with_edges (const SqOutline *outline, const gboolean *boxed, guint n)
{
  g_autofree guint *sizes = NULL;
  g_autofree SqCorner *corners = sq_outline_dup_corners (outline, &sizes);
  guint n_rings = sq_outline_n_rings (outline), n_all = 0;

  for (guint i = 0; i < n_rings; i++)
    n_all += sizes[i];
  for (guint i = 0; i < n_all; i++)
    {
      gboolean is_boxed = i < n && boxed[i];
      corners[i].given &= ~(guint32) SQ_GIVEN_EDGE_BUILD;
      corners[i].build = is_boxed ? SQ_EDGE_BOXED : SQ_EDGE_FOLDED;
      if (is_boxed)
        corners[i].given |= SQ_GIVEN_EDGE_BUILD;
    }
  return sq_outline_new (corners, sizes, n_rings);
}

static SqOutline *
outline_of (const SqWayKind *kind, const SqCushion *cushion)
{
  guint n, n_boxed = 0;

  if (!kind->mixed)
    return with_edges (cushion->outline, NULL, 0);
  g_autofree gboolean *boxed = boxed_edges (cushion->outline, &n);
  for (guint i = 0; i < n; i++)
    n_boxed += boxed[i];
  return n_boxed > 0 && n_boxed < n ? with_edges (cushion->outline, boxed, n) : NULL;
}

SqCushion *
sq_way_kind_apply (const SqWayKind *kind, const SqCushion *cushion)
{
  g_autoptr (SqOutline) outline = outline_of (kind, cushion);

  if (outline == NULL)
    return NULL;
  SqCushion *as = sq_cushion_with_outline (cushion, outline);
  as->build = kind->build;
  as->given |= SQ_GIVEN_BUILD;
  if (kind->build == SQ_BUILD_BOXED && !kind->welt)
    as->given_way &= ~(guint32) SQ_GIVEN_WELT_AT;
  else if (kind->welt && !has_welt (as))
    {
      as->welt.at = SQ_WELT_BOTH;
      as->given_way |= SQ_GIVEN_WELT_AT;
    }
  if ((as->given & SQ_GIVEN_ZIP_PLACE)
      && !(sq_choices_zip_places (kind->build) & (1U << as->zip.place)))
    as->given &= ~(guint32) GIVEN_ZIP;
  return as;
}
