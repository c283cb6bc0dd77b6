/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "drawing/seam-drawn.h"

#include "base/units.h"

/* Rings at the ends that meet, in em. */
#define RING_EM 0.3
/* Ring about a seam that is a point on the seat. */
#define POINT_EM 0.95

/* --- on the pieces ------------------------------------------------------------------------- */

SqPath *
sq_side_path (const SqCover *cover, const SqSide *side)
{
  const SqPiece *piece = sq_cover_piece (cover, side->piece);
  SqPathBuilder builder;
  SqPoint end = { 0, 0 };
  g_return_val_if_fail (side->n_runs > 0, NULL);
  sq_path_builder_init (&builder);
  for (guint i = 0, run = side->first_run; i < side->n_runs;
       i++, run = sq_piece_next_run (piece, run))
    {
      g_autoptr (SqPath) path = sq_piece_run_path (piece, run);
      guint n = sq_path_n_nodes (path);
      for (guint k = 0; k + 1 < n; k++)
        sq_path_builder_add (&builder, sq_path_nodes (path)[k].at, sq_path_nodes (path)[k].bulge,
                             run);
      end = sq_path_nodes (path)[n - 1].at;
    }
  sq_path_builder_add (&builder, end, 0, 0);
  return sq_path_builder_end (&builder, FALSE);
}

gint
sq_seam_near (const SqCover *cover, guint index, SqPoint at, double within_mm, double *distance_mm)
{
  const SqPiece *piece = sq_cover_piece (cover, index);
  gint found = -1;
  for (guint ring = 0; ring < piece->sew->len; ring++)
    {
      const SqPath *sew = sq_piece_sew (piece, ring);
      SqNearest nearest = sq_path_nearest (sew, at);
      guint32 run = sq_path_nodes (sew)[nearest.segment].tag;
      gint seam = nearest.distance_mm <= within_mm ? sq_cover_seam_of_run (cover, index, run) : -1;
      if (seam < 0)
        continue;
      found = seam;
      within_mm = nearest.distance_mm;
      if (distance_mm != NULL)
        *distance_mm = nearest.distance_mm;
    }
  return found;
}

/* --- on the seat --------------------------------------------------------------------------- */

static double
wrapped (double station, double whole)
{
  double s = fmod (station, whole);
  return s < 0 ? s + whole : s;
}

/* The side that lies flat on the seat: of the underside, or of a face without skirts. */
static const SqSide *
flat_side (const SqCover *cover, const SqSeam *seam)
{
  const SqSide *sides[] = { &seam->a, &seam->b };
  for (guint i = 0; i < G_N_ELEMENTS (sides); i++)
    {
      const SqPiece *piece;
      if (sides[i]->n_runs == 0)
        continue;
      piece = sq_cover_piece (cover, sides[i]->piece);
      if (piece->role == SQ_ROLE_UNDERSIDE
          || (piece->role == SQ_ROLE_FACE && piece->skirts->len == 0))
        return sides[i];
    }
  return NULL;
}

/* The stretch of the finished outline that a strip's side runs along: a strip's x is the station. */
static SqPath *
strip_on_ring (const SqCover *cover, const SqSide *side, SqPoint *at)
{
  const SqPiece *piece = sq_cover_piece (cover, side->piece);
  const SqPath *ring = cover->finished->rings[piece->hole].path;
  g_autoptr (SqPath) path = sq_side_path (cover, side);
  SqBox box = sq_path_box (path);
  double whole = sq_path_length_mm (ring), length = box.max.x - box.min.x;
  double from = wrapped (box.min.x, whole);
  *at = sq_path_point_at (ring, box.min.x, NULL);
  if (length < SQ_SEAM_MM)
    return NULL;
  return sq_path_part (ring, from, length >= whole ? from : wrapped (box.max.x, whole));
}

/* Where a seam of a skirt's end stands: at the corner, where its first side ends. */
static SqPoint
corner_of (const SqCover *cover, const SqSeam *seam)
{
  g_autoptr (SqPath) path = sq_side_path (cover, &seam->a);
  return sq_path_nodes (path)[sq_path_n_nodes (path) - 1].at;
}

SqPath *
sq_seam_on_seat (const SqCover *cover, guint index, SqPoint *at)
{
  const SqSeam *seam = sq_cover_seam (cover, index);
  const SqSide *flat = flat_side (cover, seam);
  g_autoptr (SqPath) path = NULL;
  gboolean is_mirrored = cover->mirrored;
  g_return_val_if_fail (cover->finished != NULL && at != NULL, NULL);
  if (flat != NULL)
    {
      path = sq_side_path (cover, flat);
      is_mirrored ^= sq_cover_piece (cover, flat->piece)->role == SQ_ROLE_UNDERSIDE;
      *at = sq_path_nodes (path)[0].at;
    }
  else if (seam->kind == SQ_SEAM_CORNER)
    *at = corner_of (cover, seam);
  else
    path = strip_on_ring (cover, &seam->a, at);
  if (is_mirrored)
    {
      SqPath *turned = path != NULL ? sq_path_mirrored (path) : NULL;
      g_clear_pointer (&path, sq_path_unref);
      path = turned;
      at->x = -at->x;
    }
  return g_steal_pointer (&path);
}

/* --- scenes -------------------------------------------------------------------------------- */

static void
add_ring (SqSceneBuilder *builder, SqPoint at, double radius_mm)
{
  sq_scene_begin_fill (builder, SQ_FILL_HANDLE);
  sq_scene_add_circle (builder, at, radius_mm);
  sq_scene_begin_stroke (builder, SQ_PEN_HANDLE);
  sq_scene_add_circle (builder, at, radius_mm);
}

SqScene *
sq_seam_side_scene (const SqCover *cover, guint index, gboolean b, double em_mm)
{
  const SqSeam *seam = sq_cover_seam (cover, index);
  const SqSide *side = b ? &seam->b : &seam->a;
  SqSceneBuilder *builder = sq_scene_builder_new ();
  if (side->n_runs > 0)
    {
      /* a forwards meets b backwards. */
      g_autoptr (SqPath) path = sq_side_path (cover, side);
      sq_scene_stroke_path (builder, SQ_PEN_ACCENT, path);
      add_ring (builder, sq_path_nodes (path)[b ? sq_path_n_nodes (path) - 1 : 0].at,
                RING_EM * em_mm);
    }
  return sq_scene_builder_end (builder);
}

SqScene *
sq_seam_seat_scene (const SqCover *cover, guint index, double em_mm)
{
  SqSceneBuilder *builder = sq_scene_builder_new ();
  SqPoint at;
  g_autoptr (SqPath) path = sq_seam_on_seat (cover, index, &at);
  if (path != NULL)
    sq_scene_stroke_path (builder, SQ_PEN_ACCENT, path);
  else
    {
      sq_scene_begin_stroke (builder, SQ_PEN_ACCENT);
      sq_scene_add_circle (builder, at, POINT_EM * em_mm);
    }
  return sq_scene_builder_end (builder);
}

/* --- again --------------------------------------------------------------------------------- */

static guint
n_bits (guint bits)
{
  guint n = 0;
  for (; bits != 0; bits &= bits - 1)
    n++;
  return n;
}

/* How much two pieces are the same one of their covers; 0: another kind of piece. */
static guint
alike (const SqPiece *a, const SqPiece *b)
{
  if (a->role != b->role || a->hole != b->hole || a->upper != b->upper)
    return 0;
  return 1 + 2 * n_bits (a->sides & b->sides) + (a->sides == b->sides ? 1 : 0)
         + (a->ordinal == b->ordinal ? 1 : 0);
}

/* Edges that both sides run along. */
static guint
n_shared_edges (const SqCover *a_cover, const SqSide *a, const SqCover *b_cover, const SqSide *b)
{
  const SqPiece *a_piece = sq_cover_piece (a_cover, a->piece);
  const SqPiece *b_piece = sq_cover_piece (b_cover, b->piece);
  guint n = 0;
  for (guint i = 0, own = a->first_run; i < a->n_runs; i++, own = sq_piece_next_run (a_piece, own))
    {
      SqId edge = sq_piece_run (a_piece, own)->edge;
      gboolean is_shared = FALSE;
      for (guint k = 0, other = b->first_run; k < b->n_runs;
           k++, other = sq_piece_next_run (b_piece, other))
        is_shared |= edge != 0 && sq_piece_run (b_piece, other)->edge == edge;
      n += is_shared ? 1 : 0;
    }
  return n;
}

static gboolean
has_edges (const SqCover *cover, const SqSide *side)
{
  return n_shared_edges (cover, side, cover, side) > 0;
}

/* How much a side is the same one; 0: another. */
static guint
same_side (const SqCover *before, const SqSide *a, const SqCover *now, const SqSide *b)
{
  guint pieces, edges;
  if (a->n_runs == 0 || b->n_runs == 0)
    return a->n_runs == b->n_runs ? 1 : 0;
  pieces = alike (sq_cover_piece (before, a->piece), sq_cover_piece (now, b->piece));
  edges = n_shared_edges (before, a, now, b);
  if (pieces == 0 || (edges == 0 && has_edges (before, a)))
    return 0;
  return pieces + 10 * edges;
}

gint
sq_seam_again (const SqCover *before, guint index, const SqCover *now)
{
  const SqSeam *seam = sq_cover_seam (before, index);
  guint best = 0;
  gint found = -1;
  for (guint i = 0; i < now->seams->len; i++)
    {
      const SqSeam *other = sq_cover_seam (now, i);
      guint a = same_side (before, &seam->a, now, &other->a);
      guint b = same_side (before, &seam->b, now, &other->b);
      guint likeness = a > 0 && b > 0 ? 2 * (a + b) + (i == index ? 1 : 0) : 0;
      if (other->kind != seam->kind || likeness <= best)
        continue;
      best = likeness;
      found = (gint) i;
    }
  return found;
}

gint
sq_piece_again (const SqCover *before, guint index, const SqCover *now)
{
  const SqPiece *piece = sq_cover_piece (before, index);
  guint best = 0;
  gint found = -1;
  for (guint i = 0; i < now->pieces->len; i++)
    {
      guint likeness = alike (piece, sq_cover_piece (now, i));
      if (likeness <= best)
        continue;
      best = likeness;
      found = (gint) i;
    }
  return found;
}
