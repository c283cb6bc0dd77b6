/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "window/edit-shape.h"

#include "job/edge.h"
#include "job/safe-edit.h"
#include "window/edit-place.h"
#include "words/piece-names.h"

#include <glib/gi18n.h>

/* A straight edge that becomes an arc rises by this part of its chord. */
#define RISE_SHARE 0.1

SqOutline *
sq_edit_outline_moved (SqDocument *document, const SqOutline *outline, SqId corner,
                       gboolean is_edge, SqVector by)
{
  g_autoptr (SqOutline) moved = is_edge ? sq_outline_with_edge_moved (outline, corner, by)
                                        : sq_outline_with_corner_moved (outline, corner, by);
  return sq_edit_outline_meant (document, outline, moved);
}

gboolean
sq_edit_move (SqDocument *document, SqId cushion, SqId corner, gboolean is_edge, SqVector by,
              const char *words, const char *key)
{
  const SqJob *job = sq_document_get_job (document);
  const SqCushion *now = sq_job_cushion (job, cushion);
  double share;
  g_return_val_if_fail (now != NULL, FALSE);
  g_autoptr (SqOutline) moved = sq_edit_outline_moved (document, now->outline, corner, is_edge, by);
  g_autoptr (SqOutline) good = sq_outline_last_good (now->outline, moved, &share, NULL);
  if (share < 1)
    return FALSE;
  g_autoptr (SqCushion) changed = sq_cushion_with_outline (now, good);
  g_autoptr (SqJob) after = sq_job_with_cushion (job, changed);
  sq_document_edit (document, after, words, key);
  return TRUE;
}

static void
push (SqDocument *document, const SqCushion *cushion, const SqOutline *outline, SqId edge,
      const char *pattern)
{
  g_autoptr (SqOutline) meant = sq_edit_outline_meant (document, cushion->outline, outline);
  g_autoptr (SqCushion) changed = sq_cushion_with_outline (cushion, meant);
  g_autoptr (SqJob) job = sq_job_with_cushion (sq_document_get_job (document), changed);
  g_autofree char *name = sq_words_edge_corners (cushion, edge);
  g_autofree char *words = g_strdup_printf (pattern, name);
  sq_document_edit (document, job, words, NULL);
}

/* The rise of the arc that the edge is to be. */
static double
rise_mm (const SqCorner *corner, const SqCorner *next)
{
  double rise = sq_bow_through (corner->at, next->at, sq_edge_point (corner, next, 0.5));
  return sq_edge_is_straight (corner) || rise == 0 ? RISE_SHARE * sq_distance (corner->at, next->at)
                                                   : rise;
}

void
sq_edit_edge_shape (SqDocument *document, SqId cushion, SqId edge, SqEdgeShape shape)
{
  const SqCushion *now = sq_job_cushion (sq_document_get_job (document), cushion);
  g_autoptr (SqOutline) outline = NULL;
  guint ring, i, n;
  const SqCorner *old = now != NULL ? sq_outline_corner (now->outline, edge, &ring, &i) : NULL;
  g_return_if_fail (old != NULL);
  SqCorner corner = *old;
  const SqCorner *corners = sq_outline_ring (now->outline, ring, &n);
  switch (shape)
    {
    case SQ_SHAPE_CURVE:
      outline = sq_outline_with_edge_as_curve (now->outline, edge);
      push (document, now, outline, edge, _ ("Free curve %s"));
      return;
    case SQ_SHAPE_BOW:
      corner.bow_mm = rise_mm (old, &corners[(i + 1) % n]);
      corner.shape = SQ_SHAPE_BOW;
      outline = sq_outline_with_corner (now->outline, &corner);
      push (document, now, outline, edge, _ ("Arc %s"));
      return;
    case SQ_SHAPE_STRAIGHT:
    default:
      corner.bow_mm = 0;
      corner.shape = SQ_SHAPE_STRAIGHT;
      outline = sq_outline_with_corner (now->outline, &corner);
      push (document, now, outline, edge, _ ("Straight edge %s"));
      return;
    }
}

void
sq_edit_front (SqDocument *document, SqId cushion, SqId edge)
{
  const SqCushion *now = sq_job_cushion (sq_document_get_job (document), cushion);
  g_autofree guint *sizes = NULL;
  guint n = 0;
  g_return_if_fail (now != NULL && sq_outline_corner (now->outline, edge, NULL, NULL) != NULL);
  g_autofree SqCorner *corners = sq_outline_dup_corners (now->outline, &sizes);
  for (guint ring = 0; ring < sq_outline_n_rings (now->outline); ring++)
    n += sizes[ring];
  for (guint i = 0; i < n; i++)
    corners[i].front = corners[i].id == edge;
  g_autoptr (SqOutline) outline = sq_outline_new (corners, sizes,
                                                  sq_outline_n_rings (now->outline));
  g_autoptr (SqCushion) changed = sq_cushion_with_outline (now, outline);
  g_autoptr (SqJob) job = sq_job_with_cushion (sq_document_get_job (document), changed);
  g_autofree char *name = sq_words_edge_corners (now, edge);
  g_autofree char *words = g_strdup_printf (_ ("Front at %s"), name);
  sq_document_edit (document, job, words, NULL);
}
