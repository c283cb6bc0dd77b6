/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "window/edit-place.h"

#include "job/edge.h"
#include "job/symmetry-sides.h"
#include "window/side-walk.h"
#include "words/piece-names.h"

#include <glib/gi18n.h>

/* The axis on both sides of which @outline is edited; FALSE: it isn't. */
static gboolean
axis_of (SqDocument *document, const SqOutline *outline, SqAxis *axis)
{
  return sq_document_is_symmetric (document) && sq_outline_front_axis (outline, axis);
}

SqOutline *
sq_edit_outline_meant (SqDocument *document, const SqOutline *before, const SqOutline *after)
{
  SqAxis axis;
  if (!axis_of (document, before, &axis))
    return sq_outline_ref (after);
  return sq_outline_symmetric_edit (before, after, &axis, FALSE);
}

static void
push_outline (SqDocument *document, const SqCushion *cushion, const SqOutline *outline, char *words)
{
  g_autoptr (SqOutline) meant = sq_edit_outline_meant (document, cushion->outline, outline);
  g_autoptr (SqCushion) changed = sq_cushion_with_outline (cushion, meant);
  g_autoptr (SqJob) job = sq_job_with_cushion (sq_document_get_job (document), changed);
  sq_document_edit (document, job, words, NULL);
  g_free (words);
}

/* Words with the edge's two letters in them; new. */
static char *
edge_words (const SqCushion *cushion, SqId edge, const char *pattern)
{
  g_autofree char *name = sq_words_edge_corners (cushion, edge);
  return g_strdup_printf (pattern, name);
}

static void
set_given (SqCorner *corner, guint32 given, gboolean is_given)
{
  corner->given = is_given ? corner->given | given : corner->given & ~given;
}

SqSidesResult
sq_edit_side_length (SqDocument *document, SqId cushion, SqId edge, double mm, SqStays stays)
{
  const SqCushion *now = sq_job_cushion (sq_document_get_job (document), cushion);
  SqSidesResult result = SQ_SIDES_FINE;
  g_autoptr (SqOutline) outline = NULL;
  SqAxis axis;
  g_return_val_if_fail (now != NULL && sq_outline_corner (now->outline, edge, NULL, NULL) != NULL,
                        SQ_SIDES_NO_DIRECTION);
  outline = axis_of (document, now->outline, &axis)
                ? sq_outline_with_side_length_symmetric (now->outline, edge, mm, stays, &axis,
                                                         &result)
                : sq_outline_with_side_length (now->outline, edge, mm, stays, &result);
  if (outline != NULL)
    push_outline (document, now, outline, edge_words (now, edge, _ ("Length of side %s")));
  return result;
}

SqSidesResult
sq_edit_angle (SqDocument *document, SqId cushion, SqId corner, double rad, SqStays stays)
{
  const SqCushion *now = sq_job_cushion (sq_document_get_job (document), cushion);
  SqSidesResult result = SQ_SIDES_FINE;
  g_autoptr (SqOutline) outline = NULL;
  g_autofree char *name = NULL;
  SqAxis axis;
  g_return_val_if_fail (now != NULL && sq_outline_corner (now->outline, corner, NULL, NULL) != NULL,
                        SQ_SIDES_NO_DIRECTION);
  outline = axis_of (document, now->outline, &axis)
                ? sq_outline_with_angle_symmetric (now->outline, corner, rad, stays, &axis, &result)
                : sq_outline_with_angle (now->outline, corner, rad, stays, &result);
  name = sq_words_corner (now, corner);
  if (outline != NULL)
    push_outline (document, now, outline, g_strdup_printf (_ ("Angle at corner %s"), name));
  return result;
}

SqSidesResult
sq_edit_place_length (SqDocument *document, SqId cushion, SqId id, SqPlaceLength length,
                      const double *mm)
{
  const SqCushion *now = sq_job_cushion (sq_document_get_job (document), cushion);
  const SqCorner *old = now != NULL ? sq_outline_corner (now->outline, id, NULL, NULL) : NULL;
  SqSidesResult result = SQ_SIDES_FINE;
  g_autoptr (SqOutline) outline = NULL;
  g_autofree char *name = NULL;
  SqCorner corner;
  g_return_val_if_fail (old != NULL, SQ_SIDES_NO_DIRECTION);
  corner = *old;
  switch (length)
    {
    case SQ_PLACE_SIDE:
      if (mm != NULL)
        result = sq_edit_side_length (
            document, cushion, id, *mm,
            sq_walk_usual_stays (now->outline, &(SqSideFigure){ SQ_MEASURE_LENGTH, id }));
      return result;
    case SQ_PLACE_RISE:
      corner.bow_mm = mm != NULL ? *mm : 0;
      corner.shape = corner.bow_mm != 0 ? SQ_SHAPE_BOW : SQ_SHAPE_STRAIGHT;
      outline = sq_outline_with_corner (now->outline, &corner);
      push_outline (document, now, outline, edge_words (now, id, _ ("Rise of side %s")));
      return result;
    case SQ_PLACE_CLEARANCE:
      corner.clearance_mm = mm != NULL ? *mm : 0;
      set_given (&corner, SQ_GIVEN_CLEARANCE, mm != NULL);
      outline = sq_outline_with_corner (now->outline, &corner);
      push_outline (document, now, outline, edge_words (now, id, _ ("What stays free at %s")));
      return result;
    case SQ_PLACE_RADIUS:
      if (mm != NULL && *mm < 0)
        return SQ_SIDES_NOT_POSITIVE;
      corner.radius_mm = mm != NULL ? *mm : 0;
      set_given (&corner, SQ_GIVEN_RADIUS, corner.radius_mm > 0);
      outline = sq_outline_with_corner (now->outline, &corner);
      name = sq_words_corner (now, id);
      push_outline (document, now, outline, g_strdup_printf (_ ("Round corner %s"), name));
      return result;
    }
  g_return_val_if_reached (result);
}

void
sq_edit_edge_kind (SqDocument *document, SqId cushion, SqId edge, const guint *kind)
{
  const SqCushion *now = sq_job_cushion (sq_document_get_job (document), cushion);
  const SqCorner *old = now != NULL ? sq_outline_corner (now->outline, edge, NULL, NULL) : NULL;
  g_autoptr (SqOutline) outline = NULL;
  SqCorner corner;
  g_return_if_fail (old != NULL);
  corner = *old;
  corner.kind = kind != NULL ? (SqEdgeKind) *kind : SQ_EDGE_FREE;
  set_given (&corner, SQ_GIVEN_KIND, kind != NULL);
  outline = sq_outline_with_corner (now->outline, &corner);
  push_outline (document, now, outline, edge_words (now, edge, _ ("What stands at %s")));
}

void
sq_edit_edge_build (SqDocument *document, SqId cushion, SqId edge, const guint *build)
{
  const SqCushion *now = sq_job_cushion (sq_document_get_job (document), cushion);
  const SqCorner *old = now != NULL ? sq_outline_corner (now->outline, edge, NULL, NULL) : NULL;
  g_autoptr (SqOutline) outline = NULL;
  SqCorner corner;
  g_return_if_fail (old != NULL);
  corner = *old;
  corner.build = build != NULL ? (SqEdgeBuild) *build : SQ_EDGE_FOLDED;
  set_given (&corner, SQ_GIVEN_EDGE_BUILD, build != NULL);
  outline = sq_outline_with_corner (now->outline, &corner);
  push_outline (document, now, outline, edge_words (now, edge, _ ("How side %s is built")));
}

SqId
sq_edit_add_corner (SqDocument *document, SqId cushion, SqId edge, SqPoint p)
{
  const SqCushion *now = sq_job_cushion (sq_document_get_job (document), cushion);
  SqId added[2] = { 0, 0 };
  g_autoptr (SqOutline) outline = NULL;
  SqAxis axis;
  if (now == NULL)
    return 0;
  if (axis_of (document, now->outline, &axis))
    outline = sq_outline_with_corners_on_edges (now->outline, edge, p, &axis, added);
  else
    outline = sq_outline_with_corner_on_edge (now->outline, edge, p, &added[0]);
  if (outline == NULL)
    return 0;
  push_outline (document, now, outline, edge_words (now, edge, _ ("New corner on %s")));
  return added[0];
}

/* Whether each ring that lost corners still has three. */
static gboolean
has_enough_corners (const SqOutline *before, const SqOutline *after)
{
  guint n_rings = sq_outline_n_rings (before), n, left;
  if (sq_outline_n_rings (after) != n_rings)
    return FALSE;
  for (guint ring = 0; ring < n_rings; ring++)
    {
      sq_outline_ring (before, ring, &n);
      sq_outline_ring (after, ring, &left);
      if (left < n && left < 3)
        return FALSE;
    }
  return TRUE;
}

gboolean
sq_edit_remove_corner (SqDocument *document, SqId cushion, SqId id)
{
  const SqCushion *now = sq_job_cushion (sq_document_get_job (document), cushion);
  g_autoptr (SqOutline) outline = NULL;
  g_autofree char *name = NULL;
  SqAxis axis;
  if (now == NULL || sq_outline_corner (now->outline, id, NULL, NULL) == NULL)
    return FALSE;
  outline = axis_of (document, now->outline, &axis)
                ? sq_outline_without_twins (now->outline, id, &axis)
                : sq_outline_without_corner (now->outline, id);
  if (outline == NULL || !has_enough_corners (now->outline, outline))
    return FALSE;
  name = sq_words_corner (now, id);
  push_outline (document, now, outline, g_strdup_printf (_ ("Remove corner %s"), name));
  return TRUE;
}
