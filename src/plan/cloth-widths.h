/* SPDX-License-Identifier: GPL-3.0-or-later */
/* What a job takes of a cloth if that were wider or narrower, and if its pattern were not matched. */
#pragma once

#include "plan/lays.h"

typedef struct
{
  double width_mm;
  gboolean is_own;    /* the cloth's own width */
  SqPurchase matched; /* the pattern falls where it must */
  SqPurchase plain;   /* it falls anywhere; the same as matched where there is none */
} SqClothWidth;

/* Immutable, shared by reference. */
typedef struct
{
  gint ref_count;
  SqId cloth;
  gboolean has_pattern;
  GArray *widths; /* of SqClothWidth, the narrowest first */
} SqClothWidths;

/* Lays all of @job that is cut from @cloth, of which it must have one, on each of the @n widths and on
 * its own, each as well as a first lay is. Stock, flaws and pins are left out: they are of the cloth as it is. A
 * lay that is matched is one that need not be, too, so that matching never seems to save cloth. NULL
 * if @watch (may be NULL) stopped it. Pure; any thread. */
SqClothWidths *sq_cloth_widths_new (const SqJob *job, SqId cloth, const double *widths_mm, guint n,
                                    const SqTask *watch);
SqClothWidths *sq_cloth_widths_ref (const SqClothWidths *widths);
void sq_cloth_widths_unref (SqClothWidths *widths);
G_DEFINE_AUTOPTR_CLEANUP_FUNC (SqClothWidths, sq_cloth_widths_unref)

#define sq_cloth_width(of, i) (&g_array_index ((of)->widths, SqClothWidth, (i)))
