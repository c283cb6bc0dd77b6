/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "window/edit-hole.h"

#include "job/safe-edit.h"

#include <glib/gi18n.h>

static void
push (SqDocument *document, const SqCushion *cushion, const SqOutline *outline, const char *words)
{
  g_autoptr (SqCushion) changed = sq_cushion_with_outline (cushion, outline);
  g_autoptr (SqJob) job = sq_job_with_cushion (sq_document_get_job (document), changed);
  sq_document_edit (document, job, words, NULL);
}

SqId
sq_edit_cut_hole (SqDocument *document, SqId cushion, SqHoleShape shape, SqPoint middle,
                  double width_mm, double depth_mm)
{
  const SqCushion *now = sq_job_cushion (sq_document_get_job (document), cushion);
  SqId id = 0;
  if (now == NULL || !(width_mm > 0) || (shape == SQ_HOLE_RECTANGULAR && !(depth_mm > 0)))
    return 0;
  g_autoptr (SqOutline) outline = shape == SQ_HOLE_ROUND
                                      ? sq_outline_with_round_hole (now->outline, middle, width_mm,
                                                                    &id)
                                      : sq_outline_with_rectangular_hole (now->outline, middle,
                                                                          width_mm, depth_mm, &id);
  if (outline == NULL || !sq_outline_is_good (outline, NULL))
    return 0;
  push (document, now, outline,
        shape == SQ_HOLE_ROUND ? _ ("Cut a round hole") : _ ("Cut a rectangular hole"));
  return id;
}

gboolean
sq_edit_close_hole (SqDocument *document, SqId cushion, SqId corner)
{
  const SqCushion *now = sq_job_cushion (sq_document_get_job (document), cushion);
  guint ring;
  if (now == NULL || sq_outline_corner (now->outline, corner, &ring, NULL) == NULL || ring == 0)
    return FALSE;
  g_autoptr (SqOutline) outline = sq_outline_without_ring (now->outline, ring);
  push (document, now, outline, _ ("Take the hole away"));
  return TRUE;
}
