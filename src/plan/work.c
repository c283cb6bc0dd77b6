/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "plan/work.h"

#define MM_PER_M 1e3

/* Where a seam changes its direction by less, it is sewn on without a stop. */
#define TURN_RAD (M_PI / 6)

/* Cutting out, in minutes (common practice, no source): a piece laid hold of and put by; a metre round
 * an outline, marked and cut; a metre of straight cut along a rule, which is two pieces' edge. */
#define PIECE_MINUTES 0.3
#define OUTLINE_METRE_MINUTES 0.8
#define STRAIGHT_METRE_MINUTES 0.3

static gboolean
is_face (const SqPiece *piece)
{
  return piece->role == SQ_ROLE_FACE || piece->role == SQ_ROLE_UNDERSIDE
         || piece->role == SQ_ROLE_SIDE || piece->role == SQ_ROLE_DISC;
}

/* Whether a seam turns where @run of @piece begins. */
static gboolean
turns_at (const SqPiece *piece, guint run)
{
  const SqRun *r = sq_piece_run (piece, run);
  const SqPath *ring = g_ptr_array_index (piece->sew, r->ring);
  guint n = sq_path_n_nodes (ring);
  SqSegment before = sq_path_segment (ring, (r->from + n - 1) % n);
  SqSegment after = sq_path_segment (ring, r->from);
  SqVector u = sq_segment_direction (&before, 1), v = sq_segment_direction (&after, 0);

  return fabs (atan2 (sq_cross (u, v), sq_dot (u, v))) > TURN_RAD;
}

/* Corners that a seam turns at: those of the piece that lies flat, counted where its runs begin. */
static guint
corners_of (const SqCover *cover, const SqSeam *seam)
{
  const SqSide *side = &seam->a;
  guint n = 0;

  if (seam->kind == SQ_SEAM_CORNER)
    return 1;
  if (seam->kind != SQ_SEAM_PERIMETER && seam->kind != SQ_SEAM_WELT)
    return 0;
  if (!is_face (sq_cover_piece (cover, side->piece)) && seam->b.n_runs > 0)
    side = &seam->b;
  if (!is_face (sq_cover_piece (cover, side->piece)))
    return 0;
  for (guint i = 0; i < side->n_runs; i++)
    n += turns_at (sq_cover_piece (cover, side->piece), sq_side_run (cover, side, i));
  return n;
}

SqWork
sq_plan_work (const SqPlan *plan)
{
  SqFigures f = sq_plan_figures (plan);
  SqWork w = {
    .pieces = f.pieces, .seam_mm = f.seam_mm, .blocks = f.foam_parts, .cushions = f.cushions
  };

  for (guint i = 0; i < plan->covers->len; i++)
    {
      const SqCover *cover = sq_plan_cover (plan, i);
      guint count = cover->cushion->count, corners = 0;
      for (guint k = 0; k < cover->seams->len; k++)
        corners += corners_of (cover, sq_cover_seam (cover, k));
      w.corners += corners * count;
      w.zips += cover->zip.place != SQ_ZIP_NONE ? count : 0;
      w.welt_mm += cover->welt.at != SQ_WELT_NONE ? cover->welt.length_mm * count : 0;
    }
  return w;
}

double
sq_work_minutes (const SqWork *w, const SqJob *job)
{
  return sq_job_rate (job, SQ_RATE_CUT) * w->pieces
         + sq_job_rate (job, SQ_RATE_SEW) * w->seam_mm / MM_PER_M
         + sq_job_rate (job, SQ_RATE_CORNER) * w->corners + sq_job_rate (job, SQ_RATE_ZIP) * w->zips
         + sq_job_rate (job, SQ_RATE_WELT) * w->welt_mm / MM_PER_M
         + sq_job_rate (job, SQ_RATE_FOAM) * w->blocks
         + sq_job_rate (job, SQ_RATE_HANDLING) * w->cushions;
}

double
sq_cutting_minutes (const SqCutting *c, const SqJob *job)
{
  double sample = job->defaults.rates.of[SQ_RATE_CUT];
  double pace = sample > 0 ? sq_job_rate (job, SQ_RATE_CUT) / sample : 1;

  return pace
         * (PIECE_MINUTES * c->pieces + OUTLINE_METRE_MINUTES * c->outline_mm / MM_PER_M
            + STRAIGHT_METRE_MINUTES * c->straight_mm / MM_PER_M);
}
