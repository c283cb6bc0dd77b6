/* SPDX-License-Identifier: GPL-3.0-or-later */
/* Boxed: a top, an underside, its mirror image, and a boxing between them all round. */
#include "base/units.h"
#include "cover/notches.h"
#include "cover/report.h"
#include "cover/wall.h"
#include "cover/ways.h"
#include "cover/welt.h"
#include "cover/zip.h"

enum
{
  STEP_ZIP = 1,
  STEP_JOINS,
  STEP_TOP,
  STEP_UNDERSIDE,
};

/* One ring while it is made. */
typedef struct
{
  GArray *strips;         /* of SqStrip; NULL: none can be cut */
  GArray *stretches;      /* of SqStretch */
  SqZipRun zip;           /* of the boxing */
  guint *top, *underside; /* run of each stretch on the faces */
} Ring;

static void
divide_ring (SqMaking *making, guint r, Ring *ring)
{
  const SqFinishedRing *finished = &making->cover->finished->rings[r];
  g_autoptr (GArray) breaks = g_array_new (FALSE, FALSE, sizeof (double));
  SqZipRun seam = { 0 };

  if (r == 0 && making->choices.zip_place == SQ_ZIP_BOXING)
    ring->zip = sq_zip_in_boxing (making);
  if (r == 0 && making->choices.zip_place == SQ_ZIP_BACK_SEAM)
    seam = sq_zip_in_seam (making);
  ring->strips = sq_boxing_divide (making, r, &ring->zip);
  for (guint i = 0; ring->strips != NULL && i < ring->strips->len; i++)
    {
      g_array_append_val (breaks, g_array_index (ring->strips, SqStrip, i).from_mm);
      g_array_append_val (breaks, g_array_index (ring->strips, SqStrip, i).to_mm);
    }
  ring->stretches = sq_stretches_new (finished, breaks, &seam);
  ring->top = g_new (guint, ring->stretches->len);
  ring->underside = g_new (guint, ring->stretches->len);
}

static guint
make_face (SqMaking *making, const Ring *rings, SqPieceRole role)
{
  const SqChoices *c = &making->choices;
  const SqFinished *f = making->cover->finished;
  gboolean mirrored = role == SQ_ROLE_UNDERSIDE;
  const SqClothChoice *cloth = mirrored ? &c->underside : &c->face;
  SqDraft draft;

  sq_draft_begin (&draft, role, cloth);
  for (guint r = 0; r < f->n_rings; r++)
    {
      if (r > 0)
        sq_draft_next_ring (&draft);
      sq_draft_ring (&draft, making, &f->rings[r], rings[r].stretches, mirrored, mirrored,
                     mirrored ? rings[r].underside : rings[r].top);
    }
  sq_draft_flat_patch (&draft, f->rings[0].path, mirrored, mirrored ? 0 : c->thickness_mm);
  sq_lay_face_on_cloth (making, draft.piece, cloth, mirrored, !mirrored || c->reversible);
  return sq_making_add_piece (making, &draft);
}

static void
make_boxing (SqMaking *making, guint r, const Ring *ring, guint top, guint underside)
{
  const SqWall wall = {
    .ring = r,
    .height_mm = making->choices.thickness_mm,
    .strips = ring->strips,
    .stretches = ring->stretches,
    .zip = ring->zip,
    .role = SQ_ROLE_BOXING,
    .steps = { STEP_ZIP, STEP_JOINS, STEP_TOP, STEP_UNDERSIDE },
  };
  const SqWallSide above = { top, ring->top, FALSE }, below = { underside, ring->underside, TRUE };
  g_autofree SqStripRuns *upper = g_new0 (SqStripRuns, ring->strips->len);
  g_autofree SqStripRuns *lower = g_new0 (SqStripRuns, ring->strips->len);
  g_autoptr (GArray) places = sq_notch_places (making->choices.house,
                                               &making->cover->finished->rings[r]);

  sq_wall_make (making, &wall, upper, lower);
  sq_wall_sew (making, &wall, upper, lower, &above, &below, places);
}

static void
zip_in_underside (SqMaking *making, guint underside)
{
  const SqFinished *f = making->cover->finished;
  g_autofree const SqPath **rings = g_new (const SqPath *, f->n_rings);

  for (guint i = 0; i < f->n_rings; i++)
    rings[i] = f->rings[i].path;
  sq_zip_mark_across (making, underside, rings, f->n_rings);
}

void
sq_note_inward_corners (SqMaking *making)
{
  const SqFinishedRing *ring = &making->cover->finished->rings[0];

  for (guint i = 0; i < ring->n_edges; i++)
    if (ring->edges[i].turn_rad < -5 * SQ_RAD_PER_DEG && ring->edges[i].radius_mm <= 0)
      sq_report_corner (making->cover->problems, SQ_PROBLEM_REFLEX_CLIP, SQ_NOTE,
                        making->choices.cushion, ring->edges[i].corner);
}

static void
note_corners (SqMaking *making)
{
  const SqFinished *f = making->cover->finished;
  const SqChoices *c = &making->choices;

  sq_note_inward_corners (making);
  if (c->face.phase_across && c->centre_on != SQ_CENTRE_NONE && !f->rings[0].edges[0].is_straight)
    sq_report_edge (making->cover->problems, SQ_PROBLEM_STRIPES_SLANT, SQ_NOTE, c->cushion,
                    f->rings[0].edges[0].id);
}

void
sq_way_boxed (SqMaking *making)
{
  const SqFinished *f = making->cover->finished;
  g_autofree Ring *rings = g_new0 (Ring, f->n_rings);

  for (guint r = 0; r < f->n_rings; r++)
    divide_ring (making, r, &rings[r]);
  guint top = make_face (making, rings, SQ_ROLE_FACE);
  guint underside = make_face (making, rings, SQ_ROLE_UNDERSIDE);
  for (guint r = 0; r < f->n_rings; r++)
    if (rings[r].strips != NULL)
      make_boxing (making, r, &rings[r], top, underside);
  if (making->choices.welt_at != SQ_WELT_NONE)
    {
      sq_welt_check_ring (making);
      sq_welt_make (making, making->choices.welt_at == SQ_WELT_BOTH ? 2 : 1,
                    sq_path_length_mm (f->rings[0].path));
    }
  if (making->choices.zip_place == SQ_ZIP_UNDERSIDE)
    zip_in_underside (making, underside);
  note_corners (making);
  for (guint r = 0; r < f->n_rings; r++)
    {
      g_clear_pointer (&rings[r].strips, g_array_unref);
      g_array_unref (rings[r].stretches);
      g_free (rings[r].top);
      g_free (rings[r].underside);
    }
}
