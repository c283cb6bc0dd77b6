/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "window/actions.h"

#include "job/shape.h"

/* @cushion, with an id of its own, comes last. */
static void
append (Maker *maker, SqCushion *cushion, const char *words)
{
  const SqJob *job = sq_document_get_job (maker->document);
  g_autoptr (SqJob) next = NULL;
  cushion->id = sq_job_new_cushion_id (job);
  next = sq_job_with_cushion (job, cushion);
  sq_document_edit (maker->document, next, words, NULL);
}

/* One of the shapes that seats begin with, of the chosen one's cloths. */
void
act_add_cushion (Maker *maker)
{
  const SqCushion *like = any_cushion (maker);
  SqShapeKind kind = (SqShapeKind) one_of (maker, SQ_N_SHAPE_KINDS);
  double usual[SQ_MOST_FIGURES];
  guint n;
  const SqFigure *figures = sq_shape_figures (kind, &n);
  if (sq_document_get_job (maker->document)->cushions->len >= MOST_CUSHIONS)
    return;
  for (guint i = 0; i < n; i++)
    usual[i] = figures[i].usual;
  g_autoptr (SqOutline) outline = sq_shape_outline (kind, usual, n, NULL);
  g_assert_nonnull (outline);
  g_autoptr (SqCushion) added = sq_cushion_new (0, outline);
  added->build = like->build;
  added->cloth = like->cloth;
  added->given = like->given
                 & (SQ_GIVEN_BUILD | SQ_GIVEN_CLOTH_FACE | SQ_GIVEN_CLOTH_UNDERSIDE
                    | SQ_GIVEN_CLOTH_SIDES);
  append (maker, added, "Add");
}

void
act_copy_cushion (Maker *maker)
{
  if (sq_document_get_job (maker->document)->cushions->len >= MOST_CUSHIONS)
    return;
  g_autoptr (SqCushion) copy = sq_cushion_dup (any_cushion (maker));
  append (maker, copy, "Copy");
}

void
act_mirror_cushion (Maker *maker)
{
  const SqCushion *cushion = any_cushion (maker);
  push_outline (maker, cushion, sq_outline_mirrored (cushion->outline), "Mirror");
}

void
act_remove_cushion (Maker *maker)
{
  const SqJob *job = sq_document_get_job (maker->document);
  if (job->cushions->len < 2)
    return;
  g_autoptr (SqJob) next = sq_job_without_cushion (job, any_cushion (maker)->id);
  sq_document_edit (maker->document, next, "Take away", NULL);
}

void
act_move_cushion (Maker *maker)
{
  const SqJob *job = sq_document_get_job (maker->document);
  g_autoptr (SqJob) next = sq_job_with_cushion_moved (job, any_cushion (maker)->id,
                                                      happens (maker, 0.5) ? 1 : -1);
  if (next != NULL)
    sq_document_edit (maker->document, next, "Move", NULL);
}
