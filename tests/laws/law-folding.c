/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "laws/laws.h"

#include "base/units.h"

/* Sewn partners meet in space within this (mm). */
#define MEET_MM 0.05
/* A point this far beside a patch's region still belongs to it. */
#define BESIDE_MM 1e-5
/* What maps may disagree by where patches meet; arcs that stand for a curve turn a little more or
 * less between their nodes than a bulge can say. */
#define AGREE_MM 1e-4
#define N_SAMPLES 9

static double
distance3 (SqPoint3 a, SqPoint3 b)
{
  double x = a.x - b.x, y = a.y - b.y, z = a.z - b.z;
  return sqrt (x * x + y * y + z * z);
}

/* ---- patches ------------------------------------------------------------------------------- */

static gboolean
patch_has (const SqPatch *patch, SqPoint p)
{
  SqBox box = sq_path_box (patch->region), at = { p, p };

  return sq_box_meets (box, at, BESIDE_MM)
         && (sq_path_winding (patch->region, p) != 0
             || sq_path_nearest (patch->region, p).distance_mm <= BESIDE_MM);
}

/* Where @p of the piece lies in space; all patches that have it must agree. */
static char *
place_in_space (const SqPiece *piece, SqPoint p, SqPoint3 *at)
{
  gboolean any = FALSE;

  for (guint i = 0; i < piece->patches->len; i++)
    {
      const SqPatch *patch = &g_array_index (piece->patches, SqPatch, i);
      if (!patch_has (patch, p))
        continue;
      SqPoint3 here = sq_patch_map (patch, p);
      if (any && distance3 (here, *at) > AGREE_MM)
        return g_strdup_printf ("patches of a %s disagree by %.9g mm at (%.9g, %.9g)",
                                sq_piece_role_name (piece->role), distance3 (here, *at), p.x, p.y);
      *at = here;
      any = TRUE;
    }
  return any ? NULL
             : g_strdup_printf ("no patch of a %s has (%.9g, %.9g)",
                                sq_piece_role_name (piece->role), p.x, p.y);
}

/* A map keeps lengths where its tangents are unit and square to each other. */
static char *
check_isometry (const SqPiece *piece)
{
  for (guint i = 0; i < piece->patches->len; i++)
    {
      const SqPatch *patch = &g_array_index (piece->patches, SqPatch, i);
      for (guint k = 0; k < sq_path_n_nodes (patch->region); k++)
        {
          SqPoint p = sq_path_nodes (patch->region)[k].at;
          /* An arc of radius r shortens the chord of h by h³/24r². */
          double h = patch->kind == SQ_PATCH_CYLINDER ? fmin (1e-3, 1e-3 * fabs (patch->radius_mm))
                                                      : 1e-3;
          SqPoint3 o = sq_patch_map (patch, p);
          double along = distance3 (o, sq_patch_map (patch, sq_point (p.x + h, p.y)));
          double across = distance3 (o, sq_patch_map (patch, sq_point (p.x, p.y + h)));
          double slanting = distance3 (o, sq_patch_map (patch, sq_point (p.x + h, p.y + h)));
          double noise = 1e-6 + 1e-11 / h; /* of figures of some 1000 mm, over a small step */
          if (fabs (along / h - 1) > noise || fabs (across / h - 1) > noise
              || fabs (slanting / h - G_SQRT2) > noise)
            return g_strdup_printf ("patch %u of a %s stretches by %.9g, %.9g, %.9g", i,
                                    sq_piece_role_name (piece->role), along / h, across / h,
                                    slanting / h);
        }
    }
  return NULL;
}

/* Patches agree wherever the outline of one touches another. */
static char *
check_borders (const SqPiece *piece)
{
  char *wrong = NULL;
  SqPoint3 at;

  for (guint i = 0; i < piece->patches->len; i++)
    {
      const SqPatch *patch = &g_array_index (piece->patches, SqPatch, i);
      guint n = MIN (2 * sq_path_n_segments (patch->region), 64);
      double whole = sq_path_length_mm (patch->region);
      for (guint k = 0; k < sq_path_n_nodes (patch->region) && wrong == NULL && k < 64; k++)
        wrong = place_in_space (piece, sq_path_nodes (patch->region)[k].at, &at);
      for (guint k = 0; k < n && wrong == NULL; k++)
        wrong = place_in_space (piece, sq_path_point_at (patch->region, whole * k / n, NULL), &at);
    }
  return wrong;
}

/* ---- seams --------------------------------------------------------------------------------- */

/* The point of a seam's side at @along from its start. */
static SqPoint
point_of_side (const SqCover *cover, const SqSide *side, double along)
{
  const SqPiece *piece = sq_cover_piece (cover, side->piece);

  for (guint i = 0;; i++)
    {
      const SqRun *run = sq_piece_run (piece, sq_side_run (cover, side, i));
      if (along <= run->length_mm || i + 1 == side->n_runs)
        {
          const SqPath *ring = sq_piece_sew (piece, run->ring);
          return sq_path_point_at (
              ring, sq_path_station_mm (ring, run->from) + fmin (along, run->length_mm), NULL);
        }
      along -= run->length_mm;
    }
}

static char *
check_seam (const SqCover *cover, guint index)
{
  const SqSeam *seam = sq_cover_seam (cover, index);
  const SqPiece *a = sq_cover_piece (cover, seam->a.piece),
                *b = sq_cover_piece (cover, seam->b.piece);

  for (int k = 0; k < N_SAMPLES; k++)
    {
      double share = k / (N_SAMPLES - 1.0);
      SqPoint p = point_of_side (cover, &seam->a, share * seam->length_a_mm);
      SqPoint q = point_of_side (cover, &seam->b, (1 - share) * seam->length_b_mm);
      SqPoint3 at_a, at_b;
      char *wrong = place_in_space (a, p, &at_a);
      if (wrong == NULL)
        wrong = place_in_space (b, q, &at_b);
      if (wrong != NULL)
        return wrong;
      if (distance3 (at_a, at_b) > MEET_MM)
        return g_strdup_printf (
            "%s seam %u gapes by %.9g mm at %g of its length: piece %u at (%.6g, %.6g, %.6g), "
            "piece %u at (%.6g, %.6g, %.6g)",
            sq_seam_kind_name (seam->kind), index, distance3 (at_a, at_b), share, seam->a.piece,
            at_a.x, at_a.y, at_a.z, seam->b.piece, at_b.x, at_b.y, at_b.z);
    }
  return NULL;
}

/* The edge of a tuck is caught in the seam of what it covers: it lies on the outline. */
static char *
check_folds (const SqCover *cover, const SqPiece *piece)
{
  const SqPath *outline = cover->finished->rings[piece->hole].path;

  /* A welt goes round corners, which no strip of flat cloth is folded round. */
  if (piece->role == SQ_ROLE_WELT)
    return NULL;
  for (guint r = 0; r < piece->runs->len; r++)
    {
      const SqRun *run = sq_piece_run (piece, r);
      const SqPath *ring = sq_piece_sew (piece, run->ring);
      for (int k = 0; run->role == SQ_RUN_FOLD && k < N_SAMPLES; k++)
        {
          SqPoint p = sq_path_point_at (
              ring, sq_path_station_mm (ring, run->from) + run->length_mm * k / (N_SAMPLES - 1.0),
              NULL);
          SqPoint3 at;
          char *wrong = place_in_space (piece, p, &at);
          if (wrong != NULL)
            return wrong;
          double beside = sq_path_nearest (outline, sq_point (at.x, at.y)).distance_mm;
          double over = fmin (fabs (at.z), fabs (at.z - cover->thickness_mm));
          if (hypot (beside, over) > MEET_MM)
            return g_strdup_printf ("a tuck's edge is %.9g mm from the seam that takes it",
                                    hypot (beside, over));
        }
    }
  return NULL;
}

static char *
check_cover (const SqCover *cover)
{
  char *wrong = NULL;

  for (guint i = 0; i < cover->pieces->len && wrong == NULL; i++)
    {
      const SqPiece *piece = sq_cover_piece (cover, i);
      wrong = check_isometry (piece);
      if (wrong == NULL)
        wrong = check_borders (piece);
      if (wrong == NULL)
        wrong = check_folds (cover, piece);
    }
  for (guint i = 0; i < cover->seams->len && wrong == NULL; i++)
    wrong = check_seam (cover, i);
  return wrong;
}

char *
law_folding (const LawCase *c)
{
  char *wrong = NULL;

  for (guint i = 0; i < c->plan->covers->len && wrong == NULL; i++)
    wrong = check_cover (sq_plan_cover (c->plan, i));
  return wrong;
}
