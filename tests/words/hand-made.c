/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "hand-made.h"

SqCushion *
hand_made_cushion (void)
{
  static const guint sizes[] = { 4, 3 };
  SqCorner corners[] = {
    { .id = 11, .at = { 0, 0 } },         { .id = 12, .at = { 469.9, 0 } },
    { .id = 13, .at = { 469.9, 469.9 } }, { .id = 14, .at = { 0, 469.9 } },
    { .id = 15, .at = { 200, 200 } },     { .id = 16, .at = { 200, 250 } },
    { .id = 17, .at = { 250, 200 } },
  };
  g_autoptr (SqOutline) outline = sq_outline_new (corners, sizes, G_N_ELEMENTS (sizes));
  SqCushion *cushion = sq_cushion_new (3, outline);

  g_clear_pointer (&cushion->name, g_ref_string_release);
  cushion->name = g_ref_string_new ("Hall bench");
  cushion->count = 2;
  cushion->build = SQ_BUILD_FOLDED_CORNER;
  return cushion;
}

SqPiece *
hand_made_piece (SqPieceRole role)
{
  SqPiece *piece = g_new0 (SqPiece, 1);

  piece->ref_count = 1;
  piece->role = role;
  piece->count = 1;
  piece->sew = g_ptr_array_new_with_free_func ((GDestroyNotify) sq_path_unref);
  piece->cut = g_ptr_array_new_with_free_func ((GDestroyNotify) sq_path_unref);
  piece->runs = g_array_new (FALSE, TRUE, sizeof (SqRun));
  piece->marks = g_array_new (FALSE, TRUE, sizeof (SqMark));
  piece->patches = g_array_new (FALSE, TRUE, sizeof (SqPatch));
  piece->trims = g_array_new (FALSE, TRUE, sizeof (SqTrim));
  piece->corner_notches = g_array_new (FALSE, TRUE, sizeof (SqCornerNotch));
  piece->skirts = g_array_new (FALSE, TRUE, sizeof (SqSkirt));
  return piece;
}

static void
free_foam (gpointer data)
{
  SqFoamPart *part = data;

  g_ptr_array_unref (part->rings);
  g_free (part);
}

SqCover *
hand_made_cover (void)
{
  SqCover *cover = g_new0 (SqCover, 1);

  cover->ref_count = 1;
  cover->cushion = hand_made_cushion ();
  cover->build = SQ_BUILD_FOLDED_CORNER;
  cover->thickness_mm = 63.5;
  cover->pieces = g_ptr_array_new_with_free_func ((GDestroyNotify) sq_piece_unref);
  cover->seams = g_array_new (FALSE, TRUE, sizeof (SqSeam));
  cover->problems = g_array_new (FALSE, TRUE, sizeof (SqProblem));
  cover->foam = g_ptr_array_new_with_free_func (free_foam);
  return cover;
}

static void
add_run (SqPiece *piece, SqRunRole role, SqId edge, double allowance_mm)
{
  SqRun run = { .role = role, .edge = edge, .allowance_mm = allowance_mm };
  g_array_append_val (piece->runs, run);
}

/* 25 × 25 in. */
static SqPiece *
new_plate (void)
{
  SqPiece *plate = hand_made_piece (SQ_ROLE_FACE);
  SqMark notch = { .kind = SQ_MARK_NOTCH, .count = 1, .seam = -1 };

  for (SqId corner = 11; corner <= 14; corner++)
    {
      SqCornerNotch cut_out = { corner, 17.9605, 69.85, 69.85 * G_SQRT2, FALSE };
      SqSkirt skirt = { corner, 73.025 };
      g_array_append_val (plate->corner_notches, cut_out);
      g_array_append_val (plate->skirts, skirt);
      g_array_append_val (plate->marks, notch);
      add_run (plate, SQ_RUN_PERIMETER, corner, 9.525);
      add_run (plate, SQ_RUN_CORNER, corner, 12.7);
    }
  plate->width_mm = plate->height_mm = 635;
  plate->area_mm2 = 635 * 635 - 4 * 69.85 * 69.85;
  return plate;
}

/* 19 1/4 × 19 1/4 in. */
static SqPiece *
new_underside (void)
{
  SqPiece *underside = hand_made_piece (SQ_ROLE_UNDERSIDE);
  SqMark zip = { .kind = SQ_MARK_ZIP, .seam = -1 };

  add_run (underside, SQ_RUN_PERIMETER, 11, 9.525);
  g_array_append_val (underside->marks, zip);
  underside->width_mm = underside->height_mm = 488.95;
  underside->area_mm2 = 488.95 * 488.95;
  return underside;
}

static SqFoamPart *
new_foam (void)
{
  SqFoamPart *foam = g_new0 (SqFoamPart, 1);

  foam->kind = SQ_FOAM_SEAT;
  foam->rings = g_ptr_array_new_with_free_func ((GDestroyNotify) sq_path_unref);
  g_ptr_array_add (foam->rings, sq_path_new_rectangle (-6.35, -6.35, 476.25, 476.25));
  foam->thickness_mm = 63.5;
  foam->count = 1;
  foam->volume_mm3 = 482.6 * 482.6 * 63.5;
  foam->weight_g = foam->volume_mm3 * 28.8e-6;
  return foam;
}

SqCover *
hand_made_plate_cover (void)
{
  SqCover *cover = hand_made_cover ();
  SqProblem fold = { .code = SQ_PROBLEM_ZIP_FOLD_FOAM,
                     .severity = SQ_WARNING,
                     .place = { SQ_AT_CUSHION, 3, 0, NULL },
                     .facts = { 419.1, 469.9 } };

  g_ptr_array_add (cover->pieces, new_plate ());
  g_ptr_array_add (cover->pieces, new_underside ());
  g_ptr_array_add (cover->foam, new_foam ());
  g_array_append_val (cover->problems, fold);
  cover->zip = (SqZip){ .place = SQ_ZIP_UNDERSIDE,
                        .edge = 13,
                        .at_mm = 156.6333,
                        .run_mm = 469.9,
                        .length_mm = 520.7,
                        .sliders = 1 };
  return cover;
}

static void
add_entry (SqPlan *plan, guint piece)
{
  SqCutEntry entry = { .number = piece + 1, .piece = piece, .count = 2 };
  g_array_append_val (plan->cut_list, entry);
}

SqPlan *
hand_made_plan (void)
{
  SqPlan *plan = g_new0 (SqPlan, 1);
  static const SqDefaults defaults = { 0 };
  SqCover *cover = hand_made_plate_cover ();
  SqClothTotal total = { .pieces = 4 };

  plan->ref_count = 1;
  plan->job = sq_job_new (&defaults);
  plan->job->title = g_ref_string_new ("Worked plate");
  plan->covers = g_ptr_array_new_with_free_func ((GDestroyNotify) sq_cover_unref);
  plan->cut_list = g_array_new (FALSE, TRUE, sizeof (SqCutEntry));
  plan->cloths = g_array_new (FALSE, TRUE, sizeof (SqClothTotal));
  for (guint i = 0; i < cover->pieces->len; i++)
    {
      add_entry (plan, i);
      total.area_mm2 += 2 * sq_cover_piece (cover, i)->area_mm2;
    }
  g_array_append_val (plan->cloths, total);
  g_ptr_array_add (plan->covers, cover);
  return plan;
}
