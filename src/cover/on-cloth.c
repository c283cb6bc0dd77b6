/* SPDX-License-Identifier: GPL-3.0-or-later */
/* How pieces lie on the cloth: grain, the turns they may take, and where the pattern falls. */
#include "base/units.h"
#include "cover/boxing.h"
#include "cover/ways.h"

static double
angle_of (SqVector v)
{
  double a = atan2 (v.y, v.x);
  return a < -1e-12 ? a + 2 * M_PI : fmax (a, 0);
}

static SqTurns
turns_of (const SqClothChoice *cloth, gboolean quarter)
{
  if (cloth->one_way || !cloth->half_turn)
    return SQ_TURNS_NONE;
  if (quarter && !cloth->phase_across && !cloth->phase_along)
    return SQ_TURNS_QUARTER;
  return SQ_TURNS_HALF;
}

static void
set_phase (SqPiece *piece, const SqChoices *c, const SqClothChoice *cloth, SqPoint anchor,
           gboolean along)
{
  if (c->centre_on == SQ_CENTRE_NONE)
    return;
  piece->phase = (SqPhase){ .along = cloth->phase_along && along,
                            .across = cloth->phase_across,
                            .anchor = anchor,
                            .along_mm = cloth->centre_along_mm,
                            .across_mm = cloth->centre_across_mm };
  if (!piece->phase.along && !piece->phase.across)
    piece->phase = (SqPhase){ 0 };
}

/* What the cloth's up points to lies at the back of a seat and at the top of a side. */
static SqVector
roll_direction (const SqClothChoice *cloth, SqVector up)
{
  return cloth->up_is_start ? sq_scale (up, -1) : up;
}

static double
front_middle_mm (const SqFinished *f)
{
  const SqFinishedEdge *front = &f->rings[0].edges[0];
  return (front->own_start_mm + front->own_end_mm) / 2;
}

void
sq_lay_face_on_cloth (const SqMaking *making, SqPiece *piece, const SqClothChoice *cloth,
                      gboolean mirrored, gboolean must_match)
{
  const SqChoices *c = &making->choices;
  const SqFinished *f = making->cover->finished;
  gboolean across = c->stripes_run == SQ_STRIPES_SIDE_TO_SIDE;
  SqVector up = across ? f->front_dir : sq_left (f->front_dir);
  SqPoint anchor = sq_path_point_at (f->rings[0].path, front_middle_mm (f), NULL);
  SqVector grain = roll_direction (cloth, up);

  anchor = sq_moved (anchor, across ? sq_left (f->front_dir) : f->front_dir, c->stripes_shift_mm);
  if (mirrored)
    {
      anchor.x = -anchor.x;
      grain.x = -grain.x;
    }
  piece->grain_rad = angle_of (grain);
  piece->turns = turns_of (cloth, cloth->kind == SQ_CLOTH_MESH);
  if (must_match)
    set_phase (piece, c, cloth, anchor, TRUE);
}

void
sq_lay_boxing_on_cloth (const SqMaking *making, SqPiece *piece, gboolean must_match)
{
  const SqChoices *c = &making->choices;
  const SqClothChoice *cloth = &c->sides;
  gboolean along = sq_boxing_lies_along (c);
  SqVector up = along ? sq_point (1, 0) : sq_point (0, 1);

  piece->grain_rad = angle_of (along && !cloth->one_way ? up : roll_direction (cloth, up));
  piece->turns = turns_of (cloth, TRUE);
  if (must_match)
    set_phase (
        piece, c, cloth,
        sq_point (front_middle_mm (making->cover->finished) + (along ? 0 : c->stripes_shift_mm), 0),
        FALSE);
}

void
sq_lay_upright_on_cloth (SqPiece *piece, const SqClothChoice *cloth)
{
  piece->grain_rad = angle_of (roll_direction (cloth, sq_point (0, 1)));
  piece->turns = turns_of (cloth, TRUE);
}

void
sq_lay_tube_on_cloth (const SqMaking *making, SqPiece *piece)
{
  const SqChoices *c = &making->choices;
  const SqClothChoice *cloth = &c->face;

  sq_lay_upright_on_cloth (piece, cloth);
  /* Stripes go round it, as they stand on a boxing; plain cloth lies along. */
  if (!cloth->one_way && (c->stripes_run == SQ_STRIPES_SIDE_TO_SIDE || !cloth->phase_across))
    piece->grain_rad = 0;
}
