/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "cover/cover.h"

#include "base/units.h"
#include "cover/across.h"
#include "cover/bolster.h"
#include "cover/clips.h"
#include "cover/finishing.h"
#include "cover/report.h"
#include "cover/ways.h"
#include "cover/zip.h"

/* One line a way of building. */
static void (*const ways[SQ_N_BUILDS]) (SqMaking *making) = {
  [SQ_BUILD_FOLDED_CORNER] = sq_way_folded_corner, [SQ_BUILD_BOXED] = sq_way_boxed,
  [SQ_BUILD_WRAPPED_FRONT] = sq_way_wrapped_front, [SQ_BUILD_SPLIT_SIDE] = sq_way_split_side,
  [SQ_BUILD_KNIFE_EDGE] = sq_way_knife_edge,       [SQ_BUILD_BOLSTER] = sq_way_bolster,
};

void
sq_foam_part_free (SqFoamPart *part)
{
  g_ptr_array_unref (part->rings);
  g_free (part);
}

static SqCover *
cover_alloc (const SqCushion *cushion)
{
  SqCover *cover = g_new0 (SqCover, 1);

  cover->ref_count = 1;
  cover->cushion = sq_cushion_ref (cushion);
  cover->pieces = g_ptr_array_new_with_free_func ((GDestroyNotify) sq_piece_unref);
  cover->seams = g_array_new (FALSE, TRUE, sizeof (SqSeam));
  cover->problems = g_array_new (FALSE, TRUE, sizeof (SqProblem));
  cover->foam = g_ptr_array_new_with_free_func ((GDestroyNotify) sq_foam_part_free);
  return cover;
}

/* Whether @finished, turned over to its right or left, fills the same seat: whether it is its own
 * mirror image, front to the front. */
static gboolean
is_own_mirror (const SqFinished *f)
{
  /* Mirrored x → −x about the middle of its extent along the front. */
  double middle = f->extent.min.x + f->extent.max.x;

  for (guint r = 0; r < f->n_rings; r++)
    for (guint i = 0; i < sq_path_n_segments (f->rings[r].path); i++)
      {
        SqSegment s = sq_path_segment (f->rings[r].path, i);
        for (int half = 0; half < 2; half++)
          {
            SqPoint p = sq_finished_to_frame (f, sq_segment_point (&s, half * 0.5));
            SqPoint image = sq_finished_from_frame (f, sq_point (middle - p.x, p.y));
            double nearest = INFINITY;
            for (guint k = r > 0 ? 1 : 0; k < (r > 0 ? f->n_rings : 1); k++)
              nearest = fmin (nearest, sq_path_nearest (f->rings[k].path, image).distance_mm);
            if (nearest > SQ_TIE_MM)
              return FALSE;
          }
      }
  return TRUE;
}

static void
check_reversible (SqMaking *making)
{
  const SqChoices *c = &making->choices;

  if (c->reversible && c->build != SQ_BUILD_BOLSTER && !is_own_mirror (making->cover->finished))
    sq_report_cushion (making->cover->problems, SQ_PROBLEM_ONE_RIGHT_WAY, SQ_WARNING, c->cushion)
        ->fixes[0]
        = (SqFix){ SQ_FIX_NOT_REVERSIBLE, 0, 0 };
}

static void
build (SqMaking *making)
{
  const SqChoices *c = &making->choices;

  if (sq_choices_is_mixed (c))
    sq_way_folded_corner (making);
  else
    ways[c->build](making);
}

static SqPath *
copy_path (const SqPath *path, G_GNUC_UNUSED gpointer data)
{
  return sq_path_ref (path);
}

static void
keep_underside (SqCover *cover)
{
  const SqFinished *f = cover->finished;

  for (guint i = 0; i < cover->pieces->len && cover->underside == NULL; i++)
    {
      const SqPiece *piece = sq_cover_piece (cover, i);
      if (piece->role == SQ_ROLE_UNDERSIDE && piece->skirts->len == 0)
        cover->underside = g_ptr_array_copy (piece->sew, (GCopyFunc) copy_path, NULL);
    }
  if (cover->underside != NULL || cover->pieces->len == 0 || cover->build == SQ_BUILD_BOLSTER)
    return;
  /* In one with sides, or with the top: it is the outline there. */
  cover->underside = g_ptr_array_new_with_free_func ((GDestroyNotify) sq_path_unref);
  for (guint r = 0; r < f->n_rings; r++)
    g_ptr_array_add (cover->underside, sq_path_mirrored (f->rings[r].path));
}

SqCover *
sq_cover_new (const SqJob *job, const SqCushion *cushion, gboolean mirrored, const SqCover *before)
{
  g_return_val_if_fail (job != NULL && cushion != NULL, NULL);

  g_autoptr (SqOutline) image = mirrored ? sq_outline_mirrored (cushion->outline) : NULL;
  SqCover *cover = cover_alloc (cushion);
  SqMaking making = { .cover = cover, .before = before };
  gboolean buildable = sq_choices_resolve (job, cushion, image != NULL ? image : cushion->outline,
                                           mirrored, &making.choices, cover->problems);
  g_autoptr (SqOutline) plan = NULL;

  if (buildable && making.choices.build == SQ_BUILD_BOLSTER)
    {
      buildable = sq_bolster_measure (&making.choices, cover->problems);
      making.choices.outline = plan = sq_bolster_outline (&making.choices);
    }
  cover->mirrored = mirrored;
  cover->build = making.choices.build;
  cover->thickness_mm = making.choices.thickness_mm;
  cover->finished = sq_finished_new (&making.choices, cover->problems);
  if (cover->finished == NULL || !buildable)
    return cover;
  sq_cut_foam (&making);
  build (&making);
  check_reversible (&making);
  sq_clip_curves (&making);
  keep_underside (cover);
  sq_zip_part_underside (&making);
  sq_across_join (&making);
  sq_making_seal (&making);
  sq_across_check (&making);
  return cover;
}

SqCover *
sq_cover_ref (const SqCover *cover)
{
  SqCover *c = (SqCover *) cover;
  g_atomic_int_inc (&c->ref_count);
  return c;
}

void
sq_cover_unref (SqCover *cover)
{
  if (cover == NULL || !g_atomic_int_dec_and_test (&cover->ref_count))
    return;
  sq_cushion_unref (cover->cushion);
  g_clear_pointer (&cover->finished, sq_finished_unref);
  g_ptr_array_unref (cover->pieces);
  g_array_unref (cover->seams);
  g_array_unref (cover->problems);
  g_ptr_array_unref (cover->foam);
  g_clear_pointer (&cover->underside, g_ptr_array_unref);
  g_free (cover);
}

const SqPiece *
sq_cover_piece (const SqCover *cover, guint i)
{
  return g_ptr_array_index (cover->pieces, i);
}

guint
sq_side_run (const SqCover *cover, const SqSide *side, guint i)
{
  guint run = side->first_run;

  while (i-- > 0)
    run = sq_piece_next_run (sq_cover_piece (cover, side->piece), run);
  return run;
}

static gboolean
side_has (const SqCover *cover, const SqSide *side, guint piece, guint run)
{
  if (side->piece != piece)
    return FALSE;
  guint own = side->first_run;
  for (guint i = 0; i < side->n_runs;
       i++, own = sq_piece_next_run (sq_cover_piece (cover, piece), own))
    if (own == run)
      return TRUE;
  return FALSE;
}

gint
sq_cover_seam_of_run (const SqCover *cover, guint piece, guint run)
{
  for (guint i = 0; i < cover->seams->len; i++)
    {
      const SqSeam *seam = sq_cover_seam (cover, i);
      if (side_has (cover, &seam->a, piece, run) || side_has (cover, &seam->b, piece, run))
        return (gint) i;
    }
  return -1;
}

const char *
sq_seam_kind_name (SqSeamKind kind)
{
  static const char *const names[] = { "perimeter", "corner", "join", "zip", "welt" };
  g_return_val_if_fail (kind < G_N_ELEMENTS (names), NULL);
  return names[kind];
}
