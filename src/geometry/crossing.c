/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "geometry/crossing.h"

#include "base/units.h"

#include <stdlib.h>

/* With so few segments comparing all boxes is quicker than sorting them. */
#define SORT_FROM 40

/* Stations of one point found on two neighbours differ by no more than this (mm). */
#define SAME_STATION_MM (4 * SQ_COINCIDE_MM)

/* A segment with its box. */
typedef struct
{
  SqBox box;
  SqSegment segment;
  const SqPath *path;
  guint i;
} Side;

/* What is done with two segments whose boxes meet; FALSE ends the search. */
typedef gboolean (*PairFunc) (const Side *a, const Side *b, gpointer data);

static Side
side_of (const SqPath *path, guint i)
{
  SqSegment s = sq_path_segment (path, i);

  return (Side){ sq_segment_box (&s), s, path, i };
}

static int
compare_sides (const void *a, const void *b)
{
  double x = ((const Side *) a)->box.min.x, y = ((const Side *) b)->box.min.x;
  return (x > y) - (x < y);
}

/* Boxes apart, nothing meets: exact questions are asked of few pairs. Many boxes are swept from
 * left to right. */
static gboolean
each_near_pair (Side *sides, guint n, PairFunc func, gpointer data)
{
  gboolean is_sorted = n > SORT_FROM;

  if (is_sorted)
    qsort (sides, n, sizeof (Side), compare_sides);
  for (guint i = 0; i < n; i++)
    for (guint j = i + 1; j < n; j++)
      {
        if (is_sorted && sides[j].box.min.x > sides[i].box.max.x + SQ_COINCIDE_MM)
          break;
        if (sq_box_meets (sides[i].box, sides[j].box, SQ_COINCIDE_MM)
            && !func (&sides[i], &sides[j], data))
          return FALSE;
      }
  return TRUE;
}

/* A meeting of the two paths, and whether they run over each other from there or up to there. */
typedef struct
{
  SqCrossing crossing;
  gboolean starts, ends;
} Found;

/* Place @t of segment @i; a node is the start of the segment that starts there. */
static double
station_of (const SqPath *path, guint *i, double t)
{
  double start = sq_path_station_mm (path, *i), end = sq_path_station_mm (path, *i + 1);

  if (t < 1)
    return start + t * (end - start);
  if (*i + 1 < sq_path_n_segments (path))
    return sq_path_station_mm (path, ++*i);
  if (!sq_path_is_ring (path))
    return end;
  *i = 0;
  return 0;
}

typedef struct
{
  const SqPath *a;
  GArray *found; /* of Found */
} Search;

static gboolean
find_crossings (const Side *a, const Side *b, gpointer data)
{
  Search *search = data;
  SqMeeting meetings[2];
  gboolean overlap;

  if (a->path == b->path)
    return TRUE;
  if (a->path != search->a)
    return find_crossings (b, a, data);
  guint n = sq_segments_meet (&a->segment, &b->segment, meetings, &overlap);
  for (guint k = 0; k < n; k++)
    {
      Found found = { { meetings[k].at, a->i, b->i, 0, 0 }, overlap && k == 0, overlap && k == 1 };
      SqCrossing *crossing = &found.crossing;
      crossing->station_a_mm = station_of (a->path, &crossing->segment_a, meetings[k].ta);
      crossing->station_b_mm = station_of (b->path, &crossing->segment_b, meetings[k].tb);
      g_array_append_val (search->found, found);
    }
  return TRUE;
}

static gboolean
is_same_station (const SqPath *path, double a, double b)
{
  double apart = fabs (a - b);

  if (sq_path_is_ring (path))
    apart = fmin (apart, sq_path_length_mm (path) - apart);
  return apart <= SAME_STATION_MM;
}

static gboolean
is_same_crossing (const SqPath *a, const SqPath *b, const SqCrossing *m, const SqCrossing *n)
{
  return is_same_station (a, m->station_a_mm, n->station_a_mm)
         && is_same_station (b, m->station_b_mm, n->station_b_mm);
}

static int
compare_found (const void *a, const void *b)
{
  const SqCrossing *m = &((const Found *) a)->crossing, *n = &((const Found *) b)->crossing;

  if (m->station_a_mm != n->station_a_mm)
    return m->station_a_mm < n->station_a_mm ? -1 : 1;
  return (m->station_b_mm > n->station_b_mm) - (m->station_b_mm < n->station_b_mm);
}

/* One of each; where one common stretch goes on into the next there is nothing to tell. */
static GArray *
distinct_crossings (const SqPath *a, const SqPath *b, GArray *all)
{
  GArray *crossings = g_array_new (FALSE, FALSE, sizeof (SqCrossing));
  g_autoptr (GArray) groups = g_array_new (FALSE, FALSE, sizeof (Found));

  g_array_sort (all, compare_found);
  for (guint i = 0; i < all->len; i++)
    {
      const Found *found = &g_array_index (all, Found, i);
      Found *same = NULL;
      for (guint j = 0; j < groups->len && same == NULL; j++)
        {
          Found *group = &g_array_index (groups, Found, j);
          if (is_same_crossing (a, b, &group->crossing, &found->crossing))
            same = group;
        }
      if (same == NULL)
        g_array_append_vals (groups, found, 1);
      else
        {
          same->starts = same->starts || found->starts;
          same->ends = same->ends || found->ends;
        }
    }
  for (guint j = 0; j < groups->len; j++)
    {
      const Found *group = &g_array_index (groups, Found, j);
      if (!(group->starts && group->ends))
        g_array_append_val (crossings, group->crossing);
    }
  /* alike all the way round */
  if (crossings->len == 0 && groups->len > 0)
    g_array_append_val (crossings, g_array_index (groups, Found, 0).crossing);
  return crossings;
}

GArray *
sq_paths_crossings (const SqPath *a, const SqPath *b)
{
  guint n_a = sq_path_n_segments (a), n_b = sq_path_n_segments (b), n = 0;
  SqBox box_a = sq_path_box (a), box_b = sq_path_box (b);
  g_autoptr (GArray) found = g_array_new (FALSE, FALSE, sizeof (Found));
  g_autoptr (SqPath) copy = NULL;

  if (sq_box_meets (box_a, box_b, SQ_COINCIDE_MM))
    {
      g_autofree Side *sides = g_new (Side, n_a + n_b);
      if (a == b)
        b = copy = sq_path_new (sq_path_nodes (a), sq_path_n_nodes (a), sq_path_is_ring (a));
      for (guint i = 0; i < n_a; i++)
        {
          sides[n] = side_of (a, i);
          n += sq_box_meets (sides[n].box, box_b, SQ_COINCIDE_MM);
        }
      for (guint i = 0; i < n_b; i++)
        {
          sides[n] = side_of (b, i);
          n += sq_box_meets (sides[n].box, box_a, SQ_COINCIDE_MM);
        }
      each_near_pair (sides, n, find_crossings, &(Search){ a, found });
    }
  return distinct_crossings (a, b, found);
}

/* Whether a segment lies wholly behind their common node and the next one wholly before it, seen
 * along the bisector of their directions there: then they can't meet but in the node. */
static gboolean
move_apart (const SqSegment *s, const SqSegment *next)
{
  SqVector in = sq_segment_direction (s, 1), out = sq_segment_direction (next, 0);
  SqVector on = sq_unit (sq_add (in, out));

  return fabs (s->bulge) < 0.9 && fabs (next->bulge) < 0.9 && sq_dot (in, on) > 0.1
         && sq_dot (out, on) > 0.1 && sq_dot (sq_segment_direction (s, 0), on) > 0.1
         && sq_dot (sq_segment_direction (next, 1), on) > 0.1;
}

static gboolean
is_folded_back (const SqSegment *s, const SqSegment *next)
{
  SqVector in = sq_segment_direction (s, 1), out = sq_segment_direction (next, 0);

  return !sq_segment_is_arc (s) && !sq_segment_is_arc (next) && sq_dot (in, out) < 0
         && fabs (sq_cross (in, out)) < SQ_STRAIGHT_RAD;
}

/* Whether neighbours have more in common than their node, or than both nodes of a ring of two. */
static gboolean
neighbours_meet (const SqPath *path, const Side *s, const Side *next, SqPoint *where)
{
  SqMeeting meetings[2];
  gboolean overlap;

  if (move_apart (&s->segment, &next->segment))
    return FALSE;
  *where = next->segment.from;
  if (is_folded_back (&s->segment, &next->segment))
    return TRUE;
  guint n = sq_segments_meet (&s->segment, &next->segment, meetings, &overlap);
  if (overlap)
    return TRUE;
  if (n < 2 || sq_path_n_nodes (path) == 2)
    return FALSE;
  gboolean first_is_node = meetings[0].ta == 1 && meetings[0].tb == 0;
  *where = meetings[first_is_node ? 1 : 0].at;
  return TRUE;
}

static gboolean
is_apart (const Side *a, const Side *b, gpointer data)
{
  SqPoint *where = data;
  const SqPath *path = a->path;
  guint n = sq_path_n_segments (path);
  SqMeeting meetings[2];

  if (a->i > b->i)
    return is_apart (b, a, data);
  if (b->i == a->i + 1)
    return !neighbours_meet (path, a, b, where);
  if (sq_path_is_ring (path) && a->i == 0 && b->i == n - 1)
    return !neighbours_meet (path, b, a, where);
  if (sq_segments_meet (&a->segment, &b->segment, meetings, NULL) == 0)
    return TRUE;
  *where = meetings[0].at;
  return FALSE;
}

gboolean
sq_path_is_simple (const SqPath *path, SqPoint *where)
{
  guint n = sq_path_n_segments (path);
  g_autofree Side *sides = g_new (Side, n);
  SqPoint place;

  if (where == NULL)
    where = &place;
  for (guint i = 0; i < n; i++)
    {
      sides[i] = side_of (path, i);
      *where = sides[i].segment.from;
      if (sq_distance (sides[i].segment.from, sides[i].segment.to) < SQ_COINCIDE_MM)
        return FALSE;
    }
  return each_near_pair (sides, n, is_apart, where);
}

static double
box_distance (SqBox a, SqBox b)
{
  double x = fmax (fmax (a.min.x - b.max.x, b.min.x - a.max.x), 0);
  double y = fmax (fmax (a.min.y - b.max.y, b.min.y - a.max.y), 0);
  return sqrt (x * x + y * y);
}

/* Two points of two paths as near as any. */
typedef struct
{
  double distance_mm;
  SqPoint on_a, on_b;
} Gap;

static void
narrow (Gap *gap, SqPoint p, const SqSegment *b, gboolean is_swapped)
{
  double t, distance = sq_segment_nearest_mm (b, p, &t);

  if (distance < gap->distance_mm)
    {
      SqPoint q = sq_segment_point (b, t);
      *gap = is_swapped ? (Gap){ distance, q, p } : (Gap){ distance, p, q };
    }
}

/* Where the arc @a runs along @direction or against it. */
static void
narrow_where_parallel (Gap *gap, const SqSegment *a, SqVector direction, const SqSegment *b,
                       gboolean is_swapped)
{
  SqVector middle = sq_segment_direction (a, 0.5);

  for (int sign = -1; sign <= 1; sign += 2)
    {
      double t = 0.5 + sq_angle_rad (middle, sq_scale (direction, sign)) / sq_segment_sweep_rad (a);
      if (t > 0 && t < 1)
        narrow (gap, sq_segment_point (a, t), b, is_swapped);
    }
}

/* The shortest way between two segments that don't meet starts at an end or is square to both: on
 * the line of two centres, or where an arc is parallel to the line. */
static void
narrow_between (Gap *gap, const Side *side_a, const Side *side_b)
{
  const SqSegment *a = &side_a->segment, *b = &side_b->segment;
  SqMeeting meetings[2];
  gboolean is_arc_a = sq_segment_is_arc (a), is_arc_b = sq_segment_is_arc (b);

  if (sq_box_meets (side_a->box, side_b->box, SQ_COINCIDE_MM)
      && sq_segments_meet (a, b, meetings, NULL) > 0)
    {
      *gap = (Gap){ 0, meetings[0].at, meetings[0].at };
      return;
    }
  narrow (gap, a->from, b, FALSE);
  narrow (gap, a->to, b, FALSE);
  narrow (gap, b->from, a, TRUE);
  narrow (gap, b->to, a, TRUE);
  if (is_arc_a && is_arc_b)
    {
      SqVector centres = sq_sub (sq_segment_centre (b), sq_segment_centre (a));
      narrow_where_parallel (gap, a, sq_left (centres), b, FALSE);
    }
  else if (is_arc_a)
    narrow_where_parallel (gap, a, sq_segment_direction (b, 0), b, FALSE);
  else if (is_arc_b)
    narrow_where_parallel (gap, b, sq_segment_direction (a, 0), a, TRUE);
}

static Gap
gap_between (const SqPath *a, const SqPath *b)
{
  guint n_a = sq_path_n_segments (a), n_b = sq_path_n_segments (b);
  g_autofree Side *sides = g_new (Side, n_b);
  Gap gap = { .distance_mm = INFINITY };

  for (guint j = 0; j < n_b; j++)
    sides[j] = side_of (b, j);
  for (guint i = 0; i < n_a && gap.distance_mm > 0; i++)
    {
      Side side = side_of (a, i);
      if (box_distance (side.box, sq_path_box (b)) >= gap.distance_mm)
        continue;
      for (guint j = 0; j < n_b && gap.distance_mm > 0; j++)
        if (box_distance (side.box, sides[j].box) < gap.distance_mm)
          narrow_between (&gap, &side, &sides[j]);
    }
  return gap;
}

double
sq_paths_distance_mm (const SqPath *a, const SqPath *b)
{
  return gap_between (a, b).distance_mm;
}

gboolean
sq_ring_contains (const SqPath *outer, const SqPath *inner, double gap_mm, SqPoint *where)
{
  Gap gap = gap_between (inner, outer);
  SqPoint node = sq_path_nodes (inner)[0].at;
  gboolean is_inside = sq_path_winding (outer, node) != 0;
  gboolean is_near = gap.distance_mm <= SQ_COINCIDE_MM || gap.distance_mm < gap_mm - SQ_COINCIDE_MM;

  if (where != NULL)
    *where = is_near ? gap.on_a : node;
  return is_inside && !is_near;
}

/* Where a segment that only climbs or only falls, seen along the line, passes the line. If it is
 * too flat to meet it in figures, its end nearest to the line is as good. */
static SqPoint
passage (const SqSegment *line, const SqSegment *s)
{
  SqPoint points[2];
  guint n = sq_segments_meet_extended (line, s, points);
  double t, from = sq_segment_nearest_mm (line, s->from, &t);
  double to = sq_segment_nearest_mm (line, s->to, &t), best = fmin (from, to);
  SqPoint at = from <= to ? s->from : s->to;

  for (guint i = 0; i < n; i++)
    {
      double distance = sq_segment_nearest_mm (s, points[i], &t);
      if (distance < best)
        {
          best = distance;
          at = points[i];
        }
    }
  return at;
}

/* The places where an arc turns back, seen along @direction, cut it in pieces that only climb or
 * only fall. */
static guint
turning_places (const SqSegment *s, SqVector direction, double places[4])
{
  double sweep = sq_segment_sweep_rad (s);
  guint n = 0;

  places[n++] = 0;
  if (sq_segment_is_arc (s))
    {
      double along = 0.5 + sq_angle_rad (sq_segment_direction (s, 0.5), direction) / sweep;
      double half_turn = G_PI / fabs (sweep);
      for (double t = along - 2 * half_turn; t < 1 && n < 3; t += half_turn)
        if (t > 0)
          places[n++] = t;
    }
  places[n++] = 1;
  return n;
}

static int
compare_doubles (gconstpointer a, gconstpointer b)
{
  double x = *(const double *) a, y = *(const double *) b;
  return (x > y) - (x < y);
}

/* Drops chords and gaps that are mere points: where the ring touches the line. */
static void
drop_touches (GArray *stations)
{
  guint n = 0;
  double *t = (double *) (gpointer) stations->data;

  for (guint i = 0; i + 1 < stations->len; i += 2)
    {
      if (n > 0 && t[i] - t[n - 1] <= SQ_COINCIDE_MM)
        t[n - 1] = t[i + 1];
      else if (t[i + 1] - t[i] > SQ_COINCIDE_MM)
        {
          t[n++] = t[i];
          t[n++] = t[i + 1];
        }
    }
  g_array_set_size (stations, n);
}

/* Every end of a piece lies to the left, the line itself included, or to the right; the ring
 * passes the line as often one way as the other. */
GArray *
sq_ring_chords (const SqPath *ring, SqPoint at, SqVector direction)
{
  GArray *stations = g_array_new (FALSE, FALSE, sizeof (double));
  SqBox box = sq_box_with (sq_path_box (ring), at);
  double reach = 1 + sq_distance (box.min, box.max);
  SqSegment line = { sq_moved (at, direction, -reach), sq_moved (at, direction, reach), 0 };

  for (guint i = 0; i < sq_path_n_segments (ring); i++)
    {
      SqSegment s = sq_path_segment (ring, i);
      double places[4];
      guint n = turning_places (&s, direction, places);
      for (guint k = 0; k + 1 < n; k++)
        {
          SqSegment piece = sq_segment_part (&s, places[k], places[k + 1]);
          gboolean from_left = sq_cross (direction, sq_sub (piece.from, at)) >= 0;
          gboolean to_left = sq_cross (direction, sq_sub (piece.to, at)) >= 0;
          if (from_left != to_left)
            {
              double station = sq_dot (sq_sub (passage (&line, &piece), at), direction);
              g_array_append_val (stations, station);
            }
        }
    }
  g_array_sort (stations, compare_doubles);
  drop_touches (stations);
  return stations;
}
