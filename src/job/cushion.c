/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "job/cushion.h"

SqCushion *
sq_cushion_new (SqId id, const SqOutline *outline)
{
  SqCushion *cushion;

  g_return_val_if_fail (outline != NULL, NULL);
  cushion = g_new0 (SqCushion, 1);
  cushion->ref_count = 1;
  cushion->id = id;
  cushion->name = g_ref_string_new ("");
  cushion->count = 1;
  cushion->outline = sq_outline_ref (outline);
  return cushion;
}

SqCushion *
sq_cushion_dup (const SqCushion *cushion)
{
  SqCushion *copy = g_memdup2 (cushion, sizeof *cushion);

  copy->ref_count = 1;
  g_ref_string_acquire (copy->name);
  sq_outline_ref (copy->outline);
  for (guint i = 0; i < SQ_N_CUSHION_PARTS; i++)
    if (copy->unknown[i] != NULL)
      g_ref_string_acquire (copy->unknown[i]);
  return copy;
}

SqCushion *
sq_cushion_with_outline (const SqCushion *cushion, const SqOutline *outline)
{
  SqCushion *copy = sq_cushion_dup (cushion);

  sq_outline_unref (copy->outline);
  copy->outline = sq_outline_ref (outline);
  return copy;
}

SqCushion *
sq_cushion_ref (const SqCushion *cushion)
{
  SqCushion *shared = (SqCushion *) cushion;

  g_return_val_if_fail (cushion != NULL, NULL);
  g_atomic_int_inc (&shared->ref_count);
  return shared;
}

void
sq_cushion_unref (SqCushion *cushion)
{
  g_return_if_fail (cushion != NULL);
  if (!g_atomic_int_dec_and_test (&cushion->ref_count))
    return;
  g_clear_pointer (&cushion->name, g_ref_string_release);
  g_clear_pointer (&cushion->outline, sq_outline_unref);
  for (guint i = 0; i < SQ_N_CUSHION_PARTS; i++)
    g_clear_pointer (&cushion->unknown[i], g_ref_string_release);
  g_free (cushion);
}
