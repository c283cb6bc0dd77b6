/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "cover/clips.h"

#include "base/units.h"

/* Curvature below this is none (1/mm): a bend of a hair's breadth over a metre. */
#define STRAIGHT_PER_MM 1e-5

double
sq_clip_spacing_mm (double radius, double off)
{
  return sqrt (8 * radius * off);
}

/* A stretch of a seam's side along which it bends alike, stations from the start of the seam's
 * side a. */
typedef struct
{
  double from_mm, to_mm;
  double bend_per_mm; /* > 0: bulges outward, away from the piece */
} Bend;

static void
add_bends (const SqCover *cover, const SqSide *side, gboolean backwards, double length,
           GArray *bends)
{
  const SqPiece *piece = sq_cover_piece (cover, side->piece);
  double at = 0;

  for (guint i = 0; i < side->n_runs; i++)
    {
      const SqRun *run = sq_piece_run (piece, sq_side_run (cover, side, i));
      const SqPath *ring = sq_piece_sew (piece, run->ring);
      guint n = sq_path_n_nodes (ring), k = run->from;
      do
        {
          SqSegment s = sq_path_segment (ring, k);
          double l = sq_segment_length_mm (&s);
          double bend = sq_segment_is_arc (&s) ? 1 / sq_segment_radius_mm (&s) : 0;
          Bend b = { backwards ? length - at - l : at, backwards ? length - at : at + l, bend };
          g_array_append_val (bends, b);
          at += l;
          k = (k + 1) % n;
        }
      while (k != run->to);
    }
}

static double
bend_at (const GArray *bends, double station)
{
  for (guint i = 0; i < bends->len; i++)
    {
      const Bend *b = &g_array_index (bends, Bend, i);
      if (station >= b->from_mm && station <= b->to_mm)
        return fabs (b->bend_per_mm) < STRAIGHT_PER_MM ? 0 : b->bend_per_mm;
    }
  return 0;
}

/* The bend that the allowance of a side must open for: its own hollow, or what the other side bulges
 * more than it does itself. 0: none. */
static double
opens_for (double own, double other)
{
  double hollow = fmax (-own, 0), more = other > 0 ? other - own : 0;

  return fmax (hollow, more);
}

/* A clip on @side at @along from its start. */
static void
add_clip (SqMaking *making, const SqSide *side, guint seam, double along)
{
  SqPiece *piece = sq_making_piece (making, side->piece);
  double rest = along;

  for (guint i = 0; i < side->n_runs; i++)
    {
      const SqRun *run = sq_piece_run (piece, sq_side_run (making->cover, side, i));
      if (rest > run->length_mm && i + 1 < side->n_runs)
        {
          rest -= run->length_mm;
          continue;
        }
      const SqPath *ring = sq_piece_sew (piece, run->ring);
      SqVector dir;
      SqPoint at = sq_path_point_at (
          ring, sq_path_station_mm (ring, run->from) + fmin (rest, run->length_mm), &dir);
      SqVector outward = sq_right (dir);
      double depth = run->allowance_mm - making->choices.house->clip_short_mm;
      if (depth > 0)
        sq_piece_add_mark (piece, SQ_MARK_CLIP, 1, at, atan2 (outward.y, outward.x), depth, NULL,
                           (gint) seam, along);
      return;
    }
}

/* A stretch between two stations that wants clips @spacing_mm apart. */
typedef struct
{
  double from_mm, to_mm, spacing_mm;
} Opening;

/* Clips along openings that follow each other, as many as they need in all: a curve that is a chain
 * of arcs is clipped as one. */
static void
clip_openings (SqMaking *making, const SqSeam *seam, guint index, gboolean on_b,
               const Opening *openings, guint n_openings)
{
  const SqSide *side = on_b ? &seam->b : &seam->a;
  double needed = 0, done = 0;
  guint k = 0;

  for (guint i = 0; i < n_openings; i++)
    needed += (openings[i].to_mm - openings[i].from_mm) / openings[i].spacing_mm;
  guint n = (guint) fmin (1000, ceil (needed - 1e-9));
  for (guint i = 0; i < n_openings; i++)
    {
      const Opening *o = &openings[i];
      double own = (o->to_mm - o->from_mm) / o->spacing_mm;
      for (; k < n && (k + 0.5) * needed / n <= done + own; k++)
        {
          double at = o->from_mm + ((k + 0.5) * needed / n - done) * o->spacing_mm;
          add_clip (making, side, index, on_b ? seam->length_b_mm - at : at);
        }
      done += own;
    }
}

/* Clips on one side of a seam; @own and @other are bends by stations of side a. */
static void
clip_side (SqMaking *making, guint index, gboolean on_b, const GArray *own, const GArray *other,
           const GArray *stations)
{
  const SqSeam seam = *sq_cover_seam (making->cover, index);
  const SqDefaults *house = making->choices.house;
  g_autoptr (GArray) openings = g_array_new (FALSE, FALSE, sizeof (Opening));

  for (guint i = 0; i + 1 < stations->len; i++)
    {
      double from = g_array_index (stations, double, i);
      double to = g_array_index (stations, double, i + 1), middle = (from + to) / 2;
      if (to - from <= SQ_COINCIDE_MM)
        continue;
      double bend = opens_for (bend_at (own, middle), bend_at (other, middle));
      Opening o = { from, to, bend > 0 ? sq_clip_spacing_mm (1 / bend, house->clip_off_mm) : 0 };
      if (bend > 0 && o.spacing_mm <= house->clip_most_mm)
        {
          g_array_append_val (openings, o);
          continue;
        }
      clip_openings (making, &seam, index, on_b, (const Opening *) openings->data, openings->len);
      g_array_set_size (openings, 0);
    }
  clip_openings (making, &seam, index, on_b, (const Opening *) openings->data, openings->len);
}

static int
compare_doubles (gconstpointer a, gconstpointer b)
{
  double x = *(const double *) a, y = *(const double *) b;
  return x < y ? -1 : x > y;
}

static void
clip_seam (SqMaking *making, guint index)
{
  const SqSeam *seam = sq_cover_seam (making->cover, index);
  double length = seam->length_a_mm;
  g_autoptr (GArray) a = g_array_new (FALSE, FALSE, sizeof (Bend));
  g_autoptr (GArray) b = g_array_new (FALSE, FALSE, sizeof (Bend));
  g_autoptr (GArray) stations = g_array_new (FALSE, FALSE, sizeof (double));
  gboolean any = FALSE;

  add_bends (making->cover, &seam->a, FALSE, length, a);
  add_bends (making->cover, &seam->b, TRUE, length, b);
  for (guint i = 0; i < a->len + b->len; i++)
    {
      const Bend *bend = i < a->len ? &g_array_index (a, Bend, i)
                                    : &g_array_index (b, Bend, i - a->len);
      any |= fabs (bend->bend_per_mm) >= STRAIGHT_PER_MM;
      g_array_append_val (stations, bend->from_mm);
      g_array_append_val (stations, bend->to_mm);
    }
  if (!any)
    return;
  g_array_sort (stations, compare_doubles);
  clip_side (making, index, FALSE, a, b, stations);
  clip_side (making, index, TRUE, b, a, stations);
}

/* How far a stay stitch goes each way from the corner it saves (mm): 1 in, common practice, no
 * source. */
#define STAY_MM 25.4
/* Corners that turn in by less go without (rad). */
#define INWARD_RAD (5 * SQ_RAD_PER_DEG)

/* The run that the segment from node @node on belongs to, if the other piece of its seam stands along
 * it; else NULL. */
static const SqRun *
sewn_along (const SqPiece *piece, const SqPath *ring, guint node)
{
  guint n = sq_path_n_nodes (ring);
  const SqRun *run = sq_piece_run (piece, sq_path_nodes (ring)[node % n].tag);

  return run->role == SQ_RUN_PERIMETER || run->role == SQ_RUN_ZIP ? run : NULL;
}

/* At a sharp corner that turns inward the face is clipped to a stay stitch. */
static void
stay_corners (SqPiece *piece)
{
  for (guint r = 0; r < piece->sew->len; r++)
    {
      const SqPath *ring = sq_piece_sew (piece, r);
      guint n = sq_path_n_nodes (ring);
      for (guint i = 0; i < n; i++)
        {
          SqSegment in = sq_path_segment (ring, (i + n - 1) % n), out = sq_path_segment (ring, i);
          SqVector before = sq_segment_direction (&in, 1), after = sq_segment_direction (&out, 0);
          const SqRun *run = sewn_along (piece, ring, i);
          if (run == NULL || sewn_along (piece, ring, i + n - 1) == NULL
              || sq_angle_rad (before, after) > -INWARD_RAD)
            continue;
          double at = sq_path_station_mm (ring, i);
          SqVector outward = sq_right (sq_add (before, after));
          sq_piece_add_mark (piece, SQ_MARK_STAY, 1, out.from, 0, 0,
                             sq_path_part (ring, at - STAY_MM, at + STAY_MM), -1, 0);
          sq_piece_add_mark (piece, SQ_MARK_CLIP, 1, out.from, atan2 (outward.y, outward.x),
                             run->allowance_mm, NULL, -1, 0);
        }
    }
}

void
sq_clip_curves (SqMaking *making)
{
  for (guint i = 0; i < making->cover->seams->len; i++)
    {
      const SqSeam *seam = sq_cover_seam (making->cover, i);
      if ((seam->kind == SQ_SEAM_PERIMETER || seam->kind == SQ_SEAM_WELT) && seam->b.n_runs > 0)
        clip_seam (making, i);
    }
  for (guint i = 0; i < making->cover->pieces->len; i++)
    {
      SqPieceRole role = sq_cover_piece (making->cover, i)->role;
      if (role == SQ_ROLE_FACE || role == SQ_ROLE_UNDERSIDE)
        stay_corners (sq_making_piece (making, i));
    }
}
