/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "base/units.h"
#include "cover/ways.h"
#include "geometry/offset.h"

void
sq_cut_foam (SqMaking *making)
{
  const SqChoices *c = &making->choices;
  const SqFinished *f = making->cover->finished;
  double extent = fmax (f->extent.max.x - f->extent.min.x, f->extent.max.y - f->extent.min.y);
  double area = 0;
  SqJoinRule rule = sq_join_rule_mitre ();
  SqFoamPart *part = g_new0 (SqFoamPart, 1);

  part->kind = c->foam_kind;
  part->count = 1;
  part->oversize_mm = sq_choices_oversize_mm (c, extent);
  /* Batting covers top and bottom: its loft comes off the block. */
  part->thickness_mm = fmax (0, c->thickness_mm - c->batting_mm);
  part->rings = g_ptr_array_new_with_free_func ((GDestroyNotify) sq_path_unref);
  for (guint i = 0; i < f->n_rings; i++)
    {
      SqPath *ring = part->oversize_mm != 0 ? sq_path_offset_evenly (
                         f->rings[i].path, part->oversize_mm / 2, &rule, NULL)
                                            : sq_path_ref (f->rings[i].path);
      if (ring == NULL) /* a hole narrower than the oversize closes up */
        continue;
      area += sq_path_area_mm2 (ring);
      g_ptr_array_add (part->rings, ring);
    }
  part->volume_mm3 = area * part->thickness_mm;
  part->weight_g = part->volume_mm3 * c->foam_density_kg_m3 * 1e-6; /* kg/m³ to g/mm³ */
  g_ptr_array_add (making->cover->foam, part);
}
