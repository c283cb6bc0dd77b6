/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "plan/materials.h"

/* Common practice, no source: between 4 and 5 mm in canvas and vinyl, 3 and 3.5 in others. */
#define STITCH_STRONG_MM 4.5
#define STITCH_HOME_MM 3.25

double
sq_thread_share (double thickness_mm, double stitch_mm)
{
  return 2 + 2 * thickness_mm / stitch_mm;
}

static SqClothClass
class_of (const SqPlan *plan, const SqPiece *piece)
{
  const SqCloth *cloth = sq_plan_cloth (plan, piece->cloth);

  return cloth != NULL && (cloth->given & SQ_GIVEN_CLOTH_CLASS) ? cloth->kind
                                                                : plan->job->defaults.cloth_class;
}

static double
thickness_mm (const SqPlan *plan, const SqPiece *piece)
{
  const SqCloth *cloth = sq_plan_cloth (plan, piece->cloth);

  return cloth != NULL && (cloth->given & SQ_GIVEN_CLOTH_THICKNESS)
             ? cloth->thickness_mm
             : plan->job->defaults.cloth_thickness_mm[class_of (plan, piece)];
}

static void
add_seam (SqMaterials *m, const SqPlan *plan, const SqCover *cover, const SqSeam *seam)
{
  const SqPiece *a = sq_cover_piece (cover, seam->a.piece);
  const SqPiece *b = seam->b.n_runs > 0 ? sq_cover_piece (cover, seam->b.piece) : a;
  SqClothClass kind = class_of (plan, a);
  double stitch_mm = kind == SQ_CLOTH_CANVAS || kind == SQ_CLOTH_VINYL ? STITCH_STRONG_MM
                                                                       : STITCH_HOME_MM;
  gboolean is_double = seam->kind == SQ_SEAM_ZIP || seam->kind == SQ_SEAM_WELT;
  double sewn_mm = seam->length_a_mm * cover->cushion->count * (is_double ? 2 : 1);
  gboolean is_taped = (seam->kind == SQ_SEAM_PERIMETER || seam->kind == SQ_SEAM_CORNER)
                      && kind != SQ_CLOTH_VELVET && class_of (plan, b) != SQ_CLOTH_VELVET;

  m->sewn_mm += sewn_mm;
  m->thread_mm += sewn_mm
                  * sq_thread_share (thickness_mm (plan, a) + thickness_mm (plan, b), stitch_mm);
  if (is_taped)
    m->tape_mm += sewn_mm;
}

SqMaterials
sq_plan_materials (const SqPlan *plan)
{
  SqMaterials m = { 0 };

  for (guint i = 0; i < plan->covers->len; i++)
    {
      const SqCover *cover = sq_plan_cover (plan, i);
      for (guint k = 0; k < cover->seams->len; k++)
        add_seam (&m, plan, cover, sq_cover_seam (cover, k));
      m.tape_mm += 2 * cover->zip.length_mm * cover->cushion->count;
      m.cord_mm += cover->welt.length_mm * cover->cushion->count;
    }
  m.thread_mm *= 1 + SQ_THREAD_WASTE;
  return m;
}
