/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "base/units.h"
#include "cover/bolster.h"
#include "cover/report.h"
#include "cover/ways.h"
#include "geometry/offset.h"

/* The chord of an arc @length_mm long that rises @rise_mm. With a the half of its angle the arc is
 * 2 a r, the rise r (1 − cos a) and the chord 2 r sin a, so (1 − cos a) / a = 2 rise / length; the
 * left side grows up to the half circle, beyond which no pad bows. */
static double
chord_mm (double length_mm, double rise_mm)
{
  double share = 2 * rise_mm / length_mm, low = 0, high = G_PI / 2;

  for (int i = 0; i < 60; i++)
    {
      double a = (low + high) / 2;
      if ((1 - cos (a)) / a < share)
        low = a;
      else
        high = a;
    }
  return length_mm * sin (high) / high;
}

/* A soft filling: the insert is larger than the cover, and what it stuffs is smaller. */
static void
fill_softly (SqMaking *making)
{
  const SqChoices *c = &making->choices;
  SqCover *cover = making->cover;
  SqBox extent = cover->finished->extent;
  double length = extent.max.x - extent.min.x, depth = extent.max.y - extent.min.y;

  cover->insert = (SqFilled){ length + c->house->insert_larger_mm,
                              depth + c->house->insert_larger_mm, c->thickness_mm };
  cover->stuffed = (SqFilled){ chord_mm (length, c->thickness_mm / 2),
                               chord_mm (depth, c->thickness_mm / 2),
                               fmin (c->thickness_mm, fmin (length, depth) * 2 / G_PI) };
  SqProblem *p = sq_report_cushion (cover->problems, SQ_PROBLEM_STUFFED_SMALLER, SQ_NOTE,
                                    c->cushion);
  p->facts[0] = cover->stuffed.length_mm;
  p->facts[1] = cover->stuffed.depth_mm;
}

/* Adds @path moved out by @by_mm. A hole that closes up by that is left out; of an outer ring that does
 * nothing is left. */
static void
add_ring (SqFoamPart *part, const SqPath *path, double by_mm)
{
  SqJoinRule rule = sq_join_rule_mitre ();
  SqPath *ring = by_mm != 0 ? sq_path_offset_evenly (path, by_mm, &rule, NULL) : sq_path_ref (path);

  if (ring == NULL)
    return;
  part->volume_mm3 += sq_path_area_mm2 (ring) * part->thickness_mm;
  g_ptr_array_add (part->rings, ring);
}

/* Batting covers top and bottom: its loft comes off the block. */
static void
cut_block (const SqMaking *making, SqFoamPart *part)
{
  const SqFinished *f = making->cover->finished;

  part->thickness_mm = fmax (0, making->choices.thickness_mm - making->choices.batting_mm);
  for (guint i = 0; i < f->n_rings && (i == 0 || part->rings->len > 0); i++)
    add_ring (part, f->rings[i].path, part->oversize_mm / 2);
}

/* Standing on its end; batting goes round it. */
static void
cut_bolster (const SqMaking *making, SqFoamPart *part)
{
  const SqChoices *c = &making->choices;
  g_autoptr (SqPath) section = sq_bolster_section (c);

  part->thickness_mm = c->bolster_length_mm;
  add_ring (part, section, (part->oversize_mm - c->batting_mm) / 2);
}

void
sq_cut_foam (SqMaking *making)
{
  const SqChoices *c = &making->choices;
  SqBox extent = making->cover->finished->extent;
  gboolean is_bolster = c->build == SQ_BUILD_BOLSTER;
  double length = extent.max.x - extent.min.x, depth = extent.max.y - extent.min.y;

  if (c->build == SQ_BUILD_KNIFE_EDGE && c->filling == SQ_FILLING_SOFT)
    {
      fill_softly (making);
      return;
    }
  SqFoamPart *part = g_new0 (SqFoamPart, 1);
  part->kind = c->foam_kind;
  part->count = 1;
  part->oversize_mm = sq_choices_oversize_mm (c, is_bolster ? c->bolster_diameter_mm
                                                            : fmax (length, depth));
  part->rings = g_ptr_array_new_with_free_func ((GDestroyNotify) sq_path_unref);
  if (is_bolster)
    cut_bolster (making, part);
  else
    cut_block (making, part);
  if (part->rings->len == 0)
    {
      sq_foam_part_free (part);
      return;
    }
  part->weight_g = part->volume_mm3 * c->foam_density_kg_m3 * 1e-6; /* kg/m³ to g/mm³ */
  g_ptr_array_add (making->cover->foam, part);
}
