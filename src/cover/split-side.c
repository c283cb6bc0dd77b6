/* SPDX-License-Identifier: GPL-3.0-or-later */
/* Split-side: two notched plates, one above and one below, each as deep as its part of the side; one
 * seam round the side where they meet. */
#include "cover/notches.h"
#include "cover/plate.h"
#include "cover/report.h"
#include "cover/ways.h"
#include "cover/welt.h"
#include "cover/zip.h"

enum
{
  STEP_ZIP = 1,
  STEP_CORNERS,
  STEP_SIDE,
};

static gboolean
is_split_inside (SqMaking *making)
{
  const SqChoices *c = &making->choices;

  if (c->split_upper_mm > SQ_COINCIDE_MM && c->split_upper_mm < c->thickness_mm - SQ_COINCIDE_MM)
    return TRUE;
  SqProblem *p = sq_report_key (making->cover->problems, SQ_PROBLEM_SPLIT_OUTSIDE, SQ_FAULT,
                                c->cushion, "split_side.upper");
  p->facts[0] = c->split_upper_mm;
  p->facts[1] = c->thickness_mm;
  p->fixes[0] = (SqFix){ SQ_FIX_SPLIT_EVEN, 0, 0 };
  return FALSE;
}

static guint
make_plate (SqPlate *plate, const SqZipRun *zip, gboolean turned_over, SqPlateRuns *runs)
{
  sq_plate_break (plate, NULL, zip);
  g_autoptr (GArray) notches = sq_plate_find_notches (plate);
  sq_plate_make (plate, notches, turned_over, runs);
  sq_plate_sew_corners (plate, runs, STEP_CORNERS);
  return runs->piece;
}

static void
make_cover (SqMaking *making, SqPlate *upper, SqPlate *lower)
{
  const SqChoices *c = &making->choices;
  const SqFinishedRing *ring = upper->ring;
  g_autoptr (GArray) places = sq_notch_places (c->house, ring);
  const SqSkirtSeams seams = { c->welt_at != SQ_WELT_NONE ? SQ_SEAM_WELT : SQ_SEAM_PERIMETER,
                               STEP_ZIP, STEP_SIDE };
  SqPlateRuns above, below;
  SqZipRun zip = { 0 };

  if (c->zip_place == SQ_ZIP_SIDE_SEAM)
    zip = sq_zip_in_seam (making);
  guint face = make_plate (upper, &zip, FALSE, &above);
  guint underside = make_plate (lower, &zip, TRUE, &below);
  const SqWallSide other = { underside, below.stretches, TRUE };
  sq_plate_sew_skirts (upper, &above, &other, &seams, places);
  if (c->welt_at != SQ_WELT_NONE)
    {
      sq_welt_check_ring (making);
      sq_welt_make (making, 1, sq_path_length_mm (ring->path));
    }
  if (c->zip_place == SQ_ZIP_UNDERSIDE)
    sq_zip_mark_across (making, underside, (const SqPath *const[]){ ring->path }, 1);
  if (c->face.one_way)
    sq_report_piece (making->cover->problems, SQ_PROBLEM_SKIRTS_FOLLOW, SQ_NOTE, c->cushion, face);
  sq_plate_runs_clear (&above);
  sq_plate_runs_clear (&below);
}

void
sq_way_split_side (SqMaking *making)
{
  const SqChoices *c = &making->choices;
  SqPlate upper = { 0 }, lower = { 0 };

  if (!is_split_inside (making) || !sq_can_be_folded (making, FALSE))
    return;
  if (sq_plate_init (&upper, making, c->split_upper_mm, 0)
      && sq_plate_init (&lower, making, c->thickness_mm - c->split_upper_mm, 0))
    make_cover (making, &upper, &lower);
  sq_plate_clear (&upper);
  sq_plate_clear (&lower);
}
