/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "geometry/path.h"

#include "base/units.h"

#include <stdlib.h>
#include <string.h>

/* What is asked of every path is reckoned once, when it is made. All of it is one block: the
 * nodes, then the stations of the nodes (n_nodes + 1 of them; an open path leaves the last one
 * unused). */
struct _SqPath
{
  gint ref_count;
  gboolean is_ring;
  guint n_nodes, n_segments;
  guint32 n_tags;
  double area_mm2;
  SqBox box;
  double *stations_mm;
  SqNode nodes[];
};

static SqPath *
path_alloc (guint n_nodes, gboolean is_ring)
{
  gsize size = sizeof (SqPath) + n_nodes * sizeof (SqNode) + (n_nodes + 1) * sizeof (double);
  SqPath *path = g_malloc (size);

  path->ref_count = 1;
  path->is_ring = is_ring;
  path->n_nodes = n_nodes;
  path->n_segments = is_ring ? n_nodes : n_nodes - 1;
  path->stations_mm = (double *) &path->nodes[n_nodes];
  return path;
}

/* Reckons everything else from the nodes. The area is taken about the first node: far from the
 * origin the shoelace terms would cancel. */
static SqPath *
path_seal (SqPath *path)
{
  SqPoint first = path->nodes[0].at;
  double station = 0, area = 0;

  if (!path->is_ring)
    {
      path->nodes[path->n_segments].bulge = 0;
      path->nodes[path->n_segments].tag = 0;
    }
  path->n_tags = 0;
  path->box = sq_box_empty ();
  for (guint i = 0; i < path->n_segments; i++)
    {
      SqSegment s = sq_path_segment (path, i);
      path->stations_mm[i] = station;
      station += sq_segment_length_mm (&s);
      path->box = sq_box_union (path->box, sq_segment_box (&s));
      path->n_tags = MAX (path->n_tags, path->nodes[i].tag + 1);
      SqSegment about_first = { sq_sub (s.from, first), sq_sub (s.to, first), s.bulge };
      area += sq_segment_area_mm2 (&about_first);
    }
  path->stations_mm[path->n_segments] = station;
  path->area_mm2 = path->is_ring ? area : 0;
  return path;
}

SqPath *
sq_path_new (const SqNode *nodes, guint n_nodes, gboolean is_ring)
{
  g_return_val_if_fail (nodes != NULL && n_nodes >= 2, NULL);
  for (guint i = 0; i < n_nodes; i++)
    g_return_val_if_fail (
        isfinite (nodes[i].at.x) && isfinite (nodes[i].at.y) && isfinite (nodes[i].bulge), NULL);

  SqPath *path = path_alloc (n_nodes, is_ring);
  memcpy (path->nodes, nodes, n_nodes * sizeof (SqNode));
  return path_seal (path);
}

SqPath *
sq_path_ref (const SqPath *path)
{
  SqPath *shared = (SqPath *) path;

  g_atomic_int_inc (&shared->ref_count);
  return shared;
}

void
sq_path_unref (SqPath *path)
{
  if (g_atomic_int_dec_and_test (&path->ref_count))
    g_free (path);
}

SqPath *
sq_path_new_polygon (const SqPoint *points, guint n_points)
{
  g_return_val_if_fail (points != NULL && n_points >= 2, NULL);

  SqPath *path = path_alloc (n_points, TRUE);
  for (guint i = 0; i < n_points; i++)
    path->nodes[i] = (SqNode){ points[i], 0, i };
  return path_seal (path);
}

SqPath *
sq_path_new_rectangle (double x0, double y0, double x1, double y1)
{
  double left = fmin (x0, x1), right = fmax (x0, x1), low = fmin (y0, y1), high = fmax (y0, y1);
  SqPoint corners[] = { { left, low }, { right, low }, { right, high }, { left, high } };

  return sq_path_new_polygon (corners, G_N_ELEMENTS (corners));
}

SqPath *
sq_path_new_circle (SqPoint centre, double radius_mm)
{
  SqNode halves[] = { { { centre.x + radius_mm, centre.y }, 1, 0 },
                      { { centre.x - radius_mm, centre.y }, 1, 0 } };

  return sq_path_new (halves, G_N_ELEMENTS (halves), TRUE);
}

gboolean
sq_path_is_ring (const SqPath *path)
{
  return path->is_ring;
}

guint
sq_path_n_nodes (const SqPath *path)
{
  return path->n_nodes;
}

const SqNode *
sq_path_nodes (const SqPath *path)
{
  return path->nodes;
}

guint
sq_path_n_segments (const SqPath *path)
{
  return path->n_segments;
}

SqSegment
sq_path_segment (const SqPath *path, guint i)
{
  const SqNode *node = &path->nodes[i];
  const SqNode *next = i + 1 < path->n_nodes ? node + 1 : path->nodes;

  return (SqSegment){ node->at, next->at, node->bulge };
}

guint32
sq_path_n_tags (const SqPath *path)
{
  return path->n_tags;
}

double
sq_path_length_mm (const SqPath *path)
{
  return path->stations_mm[path->n_segments];
}

double
sq_path_area_mm2 (const SqPath *path)
{
  return path->area_mm2;
}

SqBox
sq_path_box (const SqPath *path)
{
  return path->box;
}

double
sq_path_station_mm (const SqPath *path, guint i)
{
  g_return_val_if_fail (i <= path->n_segments, 0);
  return path->stations_mm[i];
}

/* A ring's station taken round to 0 … length, an open path's held to it. */
static double
station_within (const SqPath *path, double station_mm)
{
  double length = sq_path_length_mm (path);

  if (!path->is_ring)
    return CLAMP (station_mm, 0, length);
  if (station_mm >= 0 && station_mm < length)
    return station_mm;
  double round = length > 0 ? fmod (station_mm, length) : 0;
  if (round < 0)
    round += length;
  return round < length ? round : 0;
}

/* A place on a path: at @t of the segment that starts at node @i. */
typedef struct
{
  guint i;
  double t;
} Place;

/* The last segment that starts at or before the station. */
static Place
place_of (const SqPath *path, double station_mm)
{
  guint low = 0, high = path->n_segments;

  while (high - low > 1)
    {
      guint middle = low + (high - low) / 2;
      if (path->stations_mm[middle] <= station_mm)
        low = middle;
      else
        high = middle;
    }
  double start = path->stations_mm[low], length = path->stations_mm[low + 1] - start;
  return (Place){ low, length > 0 ? fmin ((station_mm - start) / length, 1) : 0 };
}

SqPoint
sq_path_point_at (const SqPath *path, double station_mm, SqVector *direction)
{
  Place place = place_of (path, station_within (path, station_mm));
  SqSegment s = sq_path_segment (path, place.i);
  SqPoint at = sq_segment_point (&s, place.t);

  if (direction != NULL)
    {
      /* at the very end nodes may lie on each other: the way there counts */
      while (place.i > 0 && path->stations_mm[place.i] == path->stations_mm[place.i + 1])
        {
          s = sq_path_segment (path, --place.i);
          place.t = 1;
        }
      *direction = sq_segment_direction (&s, place.t);
    }
  return at;
}

SqNearest
sq_path_nearest (const SqPath *path, SqPoint p)
{
  SqNearest nearest = { .distance_mm = INFINITY };
  double best_t = 0;

  for (guint i = 0; i < path->n_segments; i++)
    {
      SqSegment s = sq_path_segment (path, i);
      double t, distance = sq_segment_nearest_mm (&s, p, &t);
      if (distance < nearest.distance_mm)
        {
          nearest.distance_mm = distance;
          nearest.segment = i;
          best_t = t;
        }
    }
  SqSegment s = sq_path_segment (path, nearest.segment);
  double start = path->stations_mm[nearest.segment];
  nearest.at = sq_segment_point (&s, best_t);
  nearest.station_mm = start + best_t * (path->stations_mm[nearest.segment + 1] - start);
  return nearest;
}

/* Whether @p lies within the circle of the arc, from its chord, without a centre. */
static gboolean
is_within_circle (const SqSegment *arc, SqPoint p)
{
  SqVector chord = sq_sub (arc->to, arc->from);
  SqVector v = sq_sub (p, sq_between (arc->from, arc->to, 0.5));
  double b = arc->bulge, square = sq_dot (chord, chord);
  double power = sq_dot (v, v) - square / 4;

  return b * (b * power - (1 - b * b) / 2 * sq_cross (chord, v)) < 0;
}

/* The chords are counted where they cross the ray from @p to the right, and every arc adds a turn
 * where @p lies between it and its chord. A @p on a chord counts as a little to the right of it
 * and, less still, above it: for the ray and for the arc alike. */
int
sq_path_winding (const SqPath *ring, SqPoint p)
{
  int winding = 0;

  g_return_val_if_fail (ring->is_ring, 0);
  for (guint i = 0; i < ring->n_segments; i++)
    {
      SqSegment s = sq_path_segment (ring, i);
      gboolean from_below = s.from.y <= p.y, to_below = s.to.y <= p.y;
      gboolean is_arc = sq_segment_is_arc (&s);

      if (from_below == to_below && !is_arc)
        continue;
      SqVector chord = sq_sub (s.to, s.from);
      double side = sq_cross (chord, sq_sub (p, s.from));
      if (from_below && !to_below && side > 0)
        winding++;
      else if (to_below && !from_below && side < 0)
        winding--;
      if (!is_arc)
        continue;
      gboolean to_right = side < 0 || (side == 0 && (chord.y > 0 || (chord.y == 0 && chord.x < 0)));
      if (to_right == (s.bulge > 0) && is_within_circle (&s, p))
        winding += s.bulge > 0 ? 1 : -1;
    }
  return winding;
}

/* Nodes in the other direction; a ring keeps its first. */
static SqPath *
path_turned_over (const SqPath *path, double x_sign, double bulge_sign)
{
  SqPath *result = path_alloc (path->n_nodes, path->is_ring);
  guint n = path->n_nodes;

  for (guint i = 0; i < n; i++)
    {
      guint node = path->is_ring ? (n - i) % n : n - 1 - i;
      guint segment = (node + n - 1) % n;
      SqPoint at = path->nodes[node].at;
      result->nodes[i] = (SqNode){ sq_point (x_sign * at.x + 0.0, at.y),
                                   bulge_sign * path->nodes[segment].bulge,
                                   path->nodes[segment].tag };
    }
  return path_seal (result);
}

SqPath *
sq_path_reversed (const SqPath *path)
{
  return path_turned_over (path, 1, -1);
}

SqPath *
sq_path_mirrored (const SqPath *path)
{
  return path_turned_over (path, -1, 1);
}

SqPath *
sq_path_moved (const SqPath *path, double turn_rad, SqVector by)
{
  SqPath *result = path_alloc (path->n_nodes, path->is_ring);
  double c = cos (turn_rad), s = sin (turn_rad);

  for (guint i = 0; i < path->n_nodes; i++)
    {
      SqNode node = path->nodes[i];
      node.at = sq_point (node.at.x * c - node.at.y * s + by.x,
                          node.at.x * s + node.at.y * c + by.y);
      result->nodes[i] = node;
    }
  return path_seal (result);
}

/* A place that uses the node it is as good as at; for the end of an open path @i is then the last
 * node. */
static Place
place_snapped (const SqPath *path, double station_mm)
{
  Place place = place_of (path, station_mm);

  if (station_mm - path->stations_mm[place.i] <= SQ_COINCIDE_MM)
    place.t = 0;
  else if (path->stations_mm[place.i + 1] - station_mm <= SQ_COINCIDE_MM)
    place = (Place){ place.i + 1, 0 };
  return place;
}

static void
add_part (SqPathBuilder *builder, const SqPath *path, guint i, double t0, double t1)
{
  SqSegment s = sq_path_segment (path, i), part = sq_segment_part (&s, t0, t1);

  sq_path_builder_add (builder, part.from, part.bulge, path->nodes[i].tag);
}

static SqPoint
point_of (const SqPath *path, Place place)
{
  if (place.t == 0)
    return path->nodes[place.i % path->n_nodes].at;
  SqSegment s = sq_path_segment (path, place.i);
  return sq_segment_point (&s, place.t);
}

SqPath *
sq_path_part (const SqPath *path, double from_mm, double to_mm)
{
  SqPathBuilder builder;
  guint n = path->n_segments;

  g_return_val_if_fail (path->is_ring || from_mm <= to_mm, NULL);
  from_mm = station_within (path, from_mm);
  to_mm = station_within (path, to_mm);
  Place from = place_snapped (path, from_mm), to = place_snapped (path, to_mm);
  /* counted on past the start, so that the end comes after the beginning */
  guint last = path->is_ring && to_mm <= from_mm ? to.i + n : to.i;

  sq_path_builder_init (&builder);
  for (guint k = from.i; k <= last; k++)
    {
      double t0 = k == from.i ? from.t : 0, t1 = k == last ? to.t : 1;
      if (t1 > t0)
        add_part (&builder, path, k % n, t0, t1);
    }
  if (builder.nodes->len == 0)
    sq_path_builder_add (&builder, point_of (path, from), 0, path->nodes[MIN (from.i, n - 1)].tag);
  sq_path_builder_add (&builder, point_of (path, to), 0, 0);
  return sq_path_builder_end (&builder, FALSE);
}

/* A chord's sagitta is 2 R sin² (sweep / 4). */
static guint
n_chords (const SqSegment *s, double deviation_mm)
{
  if (!sq_segment_is_arc (s))
    return 1;
  double sine = sqrt (deviation_mm / (2 * fabs (sq_segment_radius_mm (s))));
  double chords = fabs (sq_segment_sweep_rad (s)) / (4 * asin (fmin (sine, 1)));
  return (guint) CLAMP (ceil (chords - 1e-9), 1, 1e6);
}

SqPath *
sq_path_flattened (const SqPath *path, double deviation_mm)
{
  SqPathBuilder builder;

  g_return_val_if_fail (deviation_mm > 0, NULL);
  sq_path_builder_init (&builder);
  for (guint i = 0; i < path->n_segments; i++)
    {
      SqSegment s = sq_path_segment (path, i);
      guint n = n_chords (&s, deviation_mm);
      for (guint k = 0; k < n; k++)
        sq_path_builder_add (&builder, sq_segment_point (&s, (double) k / n), 0,
                             path->nodes[i].tag);
    }
  if (!path->is_ring)
    sq_path_builder_add (&builder, path->nodes[path->n_segments].at, 0, 0);
  return sq_path_builder_end (&builder, path->is_ring);
}

static int
compare_doubles (const void *a, const void *b)
{
  double x = *(const double *) a, y = *(const double *) b;
  return (x > y) - (x < y);
}

SqPath *
sq_path_split_at (const SqPath *path, const double *stations_mm, guint n)
{
  g_autofree double *sorted = g_new (double, n + 1);
  SqPathBuilder builder;
  guint next = 0;

  for (guint i = 0; i < n; i++)
    sorted[i] = station_within (path, stations_mm[i]);
  qsort (sorted, n, sizeof (double), compare_doubles);

  sq_path_builder_init (&builder);
  for (guint i = 0; i < path->n_segments; i++)
    {
      double start = path->stations_mm[i], end = path->stations_mm[i + 1];
      double last = start, last_t = 0;

      for (; next < n && sorted[next] < end - SQ_COINCIDE_MM; next++)
        if (sorted[next] > last + SQ_COINCIDE_MM)
          {
            double t = (sorted[next] - start) / (end - start);
            add_part (&builder, path, i, last_t, t);
            last = sorted[next];
            last_t = t;
          }
      add_part (&builder, path, i, last_t, 1);
    }
  if (!path->is_ring)
    sq_path_builder_add (&builder, path->nodes[path->n_segments].at, 0, 0);
  return sq_path_builder_end (&builder, path->is_ring);
}

void
sq_path_builder_init (SqPathBuilder *builder)
{
  builder->nodes = g_array_new (FALSE, FALSE, sizeof (SqNode));
}

void
sq_path_builder_add (SqPathBuilder *builder, SqPoint at, double bulge, guint32 tag)
{
  SqNode node = { at, bulge, tag };
  g_array_append_val (builder->nodes, node);
}

SqPath *
sq_path_builder_end (SqPathBuilder *builder, gboolean is_ring)
{
  g_autoptr (GArray) nodes = g_steal_pointer (&builder->nodes);

  if (nodes->len < 2)
    return NULL;
  return sq_path_new ((const SqNode *) (gpointer) nodes->data, nodes->len, is_ring);
}
