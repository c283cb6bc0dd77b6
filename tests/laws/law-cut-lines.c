/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "laws/laws.h"

#include "base/units.h"
#include "geometry/crossing.h"

#define EXACT_MM 1e-6

static gboolean
is_trimmed (const SqPiece *piece, guint ring, guint segment)
{
  guint n = sq_path_n_nodes (sq_piece_cut (piece, ring));

  for (guint i = 0; i < piece->trims->len; i++)
    {
      const SqTrim *trim = &g_array_index (piece->trims, SqTrim, i);
      guint length = (trim->to + n - trim->from) % n;
      if (trim->ring == ring && (segment + n - trim->from) % n < length)
        return TRUE;
    }
  return FALSE;
}

/* How far @p lies to the right of the line or circle of @s. */
static double
outside_mm (const SqSegment *s, SqPoint p)
{
  if (!sq_segment_is_arc (s))
    return sq_dot (sq_sub (p, s->from), sq_right (sq_segment_direction (s, 0)));
  double radius = sq_segment_radius_mm (s), d = sq_distance (p, sq_segment_centre (s));
  return radius > 0 ? d - radius : -radius - d;
}

/* How far three points of @cut are from being @by to the right of @s. */
static double
deviation_mm (const SqSegment *cut, const SqSegment *s, double by)
{
  double worst = 0;

  for (int k = 0; k <= 2; k++)
    worst = fmax (worst, fabs (outside_mm (s, sq_segment_point (cut, k / 2.0)) - by));
  return worst;
}

/* Each segment that is no trim is exactly its run's allowance from a line or circle of the run. */
static char *
check_allowances (const SqPiece *piece, guint ring)
{
  const SqPath *sew = sq_piece_sew (piece, ring), *cut = sq_piece_cut (piece, ring);

  for (guint i = 0; i < sq_path_n_segments (cut); i++)
    {
      SqSegment s = sq_path_segment (cut, i);
      guint32 tag = sq_path_nodes (cut)[i].tag;
      double best = INFINITY;
      if (is_trimmed (piece, ring, i))
        continue;
      if (tag >= piece->runs->len || sq_piece_run (piece, tag)->ring != ring)
        return g_strdup_printf ("cut segment %u of ring %u belongs to no run there", i, ring);
      for (guint k = 0; k < sq_path_n_segments (sew); k++)
        {
          SqSegment side = sq_path_segment (sew, k);
          if (sq_path_nodes (sew)[k].tag == tag)
            best = fmin (best, deviation_mm (&s, &side, sq_piece_run (piece, tag)->allowance_mm));
        }
      if (best > EXACT_MM)
        return g_strdup_printf ("cut segment %u of ring %u is %.9g mm off its run %u's allowance",
                                i, ring, best, tag);
    }
  return NULL;
}

/* The allowance of run @tag; beside a dart that of the perimeter, where its tip is cut. */
static double
least_of_run (const SqPiece *piece, guint32 tag)
{
  double least = sq_piece_run (piece, tag)->allowance_mm;
  guint n = piece->runs->len;

  for (guint i = 0; i < piece->trims->len; i++)
    {
      const SqTrim *trim = &g_array_index (piece->trims, SqTrim, i);
      if (trim->why == SQ_WHY_DART && trim->run == tag)
        least = fmin (least, fmin (sq_piece_run (piece, (tag + 1) % n)->allowance_mm,
                                   sq_piece_run (piece, (tag + n - 1) % n)->allowance_mm));
    }
  return least;
}

/* The smallest allowance of the runs that meet where a cut segment of run @tag is nearest to the
 * sew line: its own, and that of the place. */
static double
allowance_at (const SqPiece *piece, const SqPath *sew, const SqNearest *near, guint32 tag)
{
  guint n = sq_path_n_nodes (sew), i = near->segment;
  const SqNode *nodes = sq_path_nodes (sew);
  double least = fmin (least_of_run (piece, tag), least_of_run (piece, nodes[i].tag));

  if (sq_distance (near->at, nodes[i].at) < EXACT_MM)
    least = fmin (least, least_of_run (piece, nodes[(i + n - 1) % n].tag));
  if (sq_distance (near->at, nodes[(i + 1) % n].at) < EXACT_MM)
    least = fmin (least, least_of_run (piece, nodes[(i + 1) % n].tag));
  return least;
}

static char *
check_distance (const SqPiece *piece, guint ring)
{
  const SqPath *sew = sq_piece_sew (piece, ring), *cut = sq_piece_cut (piece, ring);

  for (guint i = 0; i < sq_path_n_segments (cut); i++)
    for (int k = 0; k < 4; k++)
      {
        SqSegment s = sq_path_segment (cut, i);
        SqPoint p = sq_segment_point (&s, k / 4.0);
        SqNearest near = sq_path_nearest (sew, p);
        double least = allowance_at (piece, sew, &near, sq_path_nodes (cut)[i].tag);
        if (near.distance_mm < least - EXACT_MM)
          return g_strdup_printf (
              "cut segment %u of ring %u is %.9g mm from the sew line where %.9g "
              "is the least, at (%.9g, %.9g)",
              i, ring, near.distance_mm, least, p.x, p.y);
      }
  return NULL;
}

static char *
check_ring (const SqPiece *piece, guint ring)
{
  const SqPath *sew = sq_piece_sew (piece, ring), *cut = sq_piece_cut (piece, ring);
  SqPoint where;
  char *wrong = NULL;

  if (!sq_path_is_simple (sew, &where))
    return g_strdup_printf ("sew ring %u is not simple at (%.9g, %.9g)", ring, where.x, where.y);
  if (!sq_path_is_simple (cut, &where))
    return g_strdup_printf ("cut ring %u is not simple at (%.9g, %.9g)", ring, where.x, where.y);
  double gained = sq_path_area_mm2 (cut) - sq_path_area_mm2 (sew);
  if (gained < -EXACT_MM * sq_path_length_mm (sew))
    return g_strdup_printf ("cut ring %u has %.9g mm2 less than its sew line", ring, -gained);
  wrong = check_allowances (piece, ring);
  return wrong != NULL ? wrong : check_distance (piece, ring);
}

/* Whether the cover says that the ring has no cut line, as small holes do. */
static gboolean
is_split (const SqCover *cover, guint piece, guint ring)
{
  const SqPiece *p = sq_cover_piece (cover, piece);

  if (sq_piece_cut (p, ring) != sq_piece_sew (p, ring))
    return FALSE;
  for (guint i = 0; i < cover->problems->len; i++)
    {
      const SqProblem *problem = sq_cover_problem (cover, i);
      if (problem->code == SQ_PROBLEM_CUT_SPLIT && problem->place.item == piece)
        return TRUE;
    }
  return FALSE;
}

char *
law_cut_lines (const LawCase *c)
{
  for (guint i = 0; i < c->plan->covers->len; i++)
    {
      const SqCover *cover = sq_plan_cover (c->plan, i);
      for (guint p = 0; p < cover->pieces->len; p++)
        {
          const SqPiece *piece = sq_cover_piece (cover, p);
          g_autofree char *wrong = NULL;
          for (guint ring = 0; ring < piece->sew->len && wrong == NULL; ring++)
            if (!is_split (cover, p, ring))
              wrong = check_ring (piece, ring);
          if (wrong != NULL)
            return g_strdup_printf ("cushion %u, piece %u (%s): %s", i, p,
                                    sq_piece_role_name (piece->role), wrong);
        }
    }
  return NULL;
}
