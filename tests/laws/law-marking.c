/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "laws/laws.h"

#include "base/units.h"
#include "cover/ticks.h"
#include "plan/marked-ring.h"

/* Of every segment so many places are looked at. */
#define N_PLACES 5

/* Between a tick's end and where it should be (mm). */
#define TICK_MM 1e-6

/* How far @path is from @other at most, looked at along each of its segments. */
static double
farthest_mm (const SqPath *path, const SqPath *other)
{
  double farthest = 0;

  for (guint i = 0; i < sq_path_n_segments (path); i++)
    {
      SqSegment segment = sq_path_segment (path, i);
      for (guint k = 0; k < N_PLACES; k++)
        farthest = fmax (farthest,
                         sq_path_nearest (other, sq_segment_point (&segment, (double) k / N_PLACES))
                             .distance_mm);
    }
  return farthest;
}

/* A cut line as it lies on cloth, @turn_rad turned, is told by its figures. */
static char *
reading_wrong (const SqPiece *piece, double turn_rad, SqVector by, SqUnit unit)
{
  SqLengthStyle style = sq_length_style_default (unit);

  for (guint i = 0; i < piece->cut->len; i++)
    {
      g_autoptr (SqPath) ring = sq_path_moved (sq_piece_cut (piece, i), turn_rad, by);
      g_autoptr (GArray) points = sq_marked_ring (ring, &style);
      g_autoptr (SqPath) read = sq_marked_ring_read (points, &style);
      double off_mm = fmax (farthest_mm (ring, read), farthest_mm (read, ring));
      if (off_mm > SQ_MARKED_MM)
        return g_strdup_printf ("ring %u read from its %u points is %g mm off", i, points->len,
                                off_mm);
    }
  return NULL;
}

/* How far @p is from the nearest cut line. */
static double
off_cut_mm (const SqPiece *piece, SqPoint p)
{
  double nearest_mm = INFINITY;

  for (guint i = 0; i < piece->cut->len; i++)
    nearest_mm = fmin (nearest_mm, sq_path_nearest (sq_piece_cut (piece, i), p).distance_mm);
  return nearest_mm;
}

/* Ticks begin at the cut line and are as long as their mark says. */
static char *
ticks_wrong (const SqPiece *piece)
{
  for (guint i = 0; i < piece->marks->len; i++)
    {
      const SqMark *mark = &g_array_index (piece->marks, SqMark, i);
      SqSegment ticks[SQ_MOST_TICKS];
      guint n = sq_mark_ticks (piece, mark, ticks);
      if (n == 0 && mark->depth_mm > 0
          && (mark->kind == SQ_MARK_NOTCH || mark->kind == SQ_MARK_CLIP))
        return g_strdup_printf ("mark %u has no tick", i);
      for (guint k = 0; k < n; k++)
        if (off_cut_mm (piece, ticks[k].from) > TICK_MM
            || fabs (sq_distance (ticks[k].from, ticks[k].to) - mark->depth_mm) > TICK_MM)
          return g_strdup_printf ("tick %u of mark %u is %g mm off the cut line", k, i,
                                  off_cut_mm (piece, ticks[k].from));
    }
  return NULL;
}

char *
law_marking (const LawCase *c)
{
  GRand *chance = g_rand_new_with_seed (c->seed);
  char *wrong = NULL;

  for (guint i = 0; i < c->plan->covers->len && wrong == NULL; i++)
    {
      const SqCover *cover = sq_plan_cover (c->plan, i);
      for (guint p = 0; p < cover->pieces->len && wrong == NULL; p++)
        {
          const SqPiece *piece = sq_cover_piece (cover, p);
          double turn_rad = g_rand_int_range (chance, 0, 8) * M_PI / 4;
          SqVector by = { g_rand_double_range (chance, 0, 2000),
                          g_rand_double_range (chance, 0, 1000) };
          wrong = ticks_wrong (piece);
          if (wrong == NULL)
            wrong = reading_wrong (piece, turn_rad, by,
                                   g_rand_boolean (chance) ? SQ_UNIT_IN : SQ_UNIT_MM);
          if (wrong != NULL)
            {
              char *where = g_strdup_printf ("cushion %u, piece %u: %s", i, p, wrong);
              g_free (wrong);
              wrong = where;
            }
        }
    }
  g_rand_free (chance);
  return wrong;
}
