/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "window/edit-symmetry.h"

#include <glib/gi18n.h>

/* Differences that no maker measures. */
#define ALIKE_MM 0.1

gboolean
sq_edit_is_symmetric (SqDocument *document, SqId cushion)
{
  const SqCushion *now = sq_job_cushion (sq_document_get_job (document), cushion);
  SqAxis axis;
  /* A bolster that nothing is drawn of is alike on both sides. */
  if (now != NULL && sq_outline_n_rings (now->outline) == 0)
    return TRUE;
  return now != NULL && sq_outline_front_axis (now->outline, &axis)
         && sq_outline_is_symmetric (now->outline, &axis, ALIKE_MM);
}

gboolean
sq_edit_make_symmetric (SqDocument *document, SqId cushion, gboolean from_left)
{
  const SqJob *job = sq_document_get_job (document);
  const SqCushion *now = sq_job_cushion (job, cushion);
  SqAxis axis;
  if (now == NULL || !sq_outline_front_axis (now->outline, &axis))
    return FALSE;
  g_autoptr (SqOutline) outline = sq_outline_made_symmetric (now->outline, &axis, from_left);
  if (outline == NULL)
    return FALSE;
  g_autoptr (SqCushion) changed = sq_cushion_with_outline (now, outline);
  g_autoptr (SqJob) after = sq_job_with_cushion (job, changed);
  sq_document_edit (document, after,
                    from_left ? _ ("Alike from the left half") : _ ("Alike from the right half"),
                    NULL);
  return TRUE;
}

gboolean
sq_edit_is_across (SqDocument *document, const SqOutline *outline, SqId edge, SqAxis *axis)
{
  g_autoptr (GArray) twins = NULL;
  if (!sq_document_is_symmetric (document) || !sq_outline_front_axis (outline, axis))
    return FALSE;
  twins = sq_outline_twins (outline, axis);
  for (guint i = 0; i < twins->len; i++)
    {
      const SqTwins *pair = &g_array_index (twins, SqTwins, i);
      if (pair->corner == edge)
        return pair->edge_twin == edge && pair->twin != edge;
    }
  return FALSE;
}
