/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "geometry/clip.h"

#include "base/units.h"
#include "geometry/crossing.h"

/* Narrower ones, on the average, are slivers (mm). */
#define SLIVER_MM 1e-6

static double
left_of (SqPoint p, SqPoint at, SqVector direction)
{
  return sq_cross (direction, sq_sub (p, at));
}

/* ---- rings --------------------------------------------------------------------------------- */

/* The points where a ring passes a line, by their distance along it; of each pair of them the ring
 * enters the left at the second and leaves it at the first. */
typedef struct
{
  const SqPath *ring;
  guint n;
  double *stations; /* along the ring */
  SqPoint *points;
} Passages;

static Passages
find_passages (const SqPath *ring, SqPoint at, SqVector direction)
{
  g_autoptr (GArray) chords = sq_ring_chords (ring, at, direction);
  Passages p = { .ring = ring, .n = chords->len };

  p.stations = g_new (double, p.n);
  p.points = g_new (SqPoint, p.n);
  for (guint i = 0; i < p.n; i++)
    {
      SqNearest near = sq_path_nearest (
          ring, sq_moved (at, direction, g_array_index (chords, double, i)));
      p.stations[i] = near.station_mm;
      p.points[i] = near.at;
    }
  return p;
}

static void
clear_passages (Passages *p)
{
  g_free (p->stations);
  g_free (p->points);
}

/* The passage that the ring comes to after passage @i. */
static guint
next_passage (const Passages *p, guint i)
{
  double whole = sq_path_length_mm (p->ring), nearest = INFINITY;
  guint next = i;

  for (guint k = 0; k < p->n; k++)
    {
      double ahead = p->stations[k] - p->stations[i];
      ahead += ahead <= 0 ? whole : 0;
      if (k == i || ahead >= nearest)
        continue;
      nearest = ahead;
      next = k;
    }
  return next;
}

static void
add_part (SqPathBuilder *builder, const SqPath *ring, double from, double to)
{
  g_autoptr (SqPath) part = sq_path_part (ring, from, to);
  const SqNode *nodes = sq_path_nodes (part);

  for (guint i = 0; i + 1 < sq_path_n_nodes (part); i++)
    sq_path_builder_add (builder, nodes[i].at, nodes[i].bulge, nodes[i].tag);
}

/* The ring that leaves the line at passage @first. */
static SqPath *
ring_from (const Passages *p, guint first, guint32 tag, gboolean *done)
{
  SqPathBuilder builder;
  guint i = first;

  sq_path_builder_init (&builder);
  do
    {
      guint end = next_passage (p, i);
      done[i] = TRUE;
      add_part (&builder, p->ring, p->stations[i], p->stations[end]);
      sq_path_builder_add (&builder, p->points[end], 0, tag);
      /* It comes back where a chord begins, and the line leads on to where that ends. */
      i = end | 1;
    }
  while (!done[i]);
  return sq_path_builder_end (&builder, TRUE);
}

/* Whether the greater part of @ring, which the line does not divide, is left of it. */
static gboolean
lies_left (const SqPath *ring, SqPoint at, SqVector direction)
{
  double farthest = 0;

  for (guint i = 0; i < sq_path_n_segments (ring); i++)
    for (guint k = 0; k < 2; k++)
      {
        SqSegment s = sq_path_segment (ring, i);
        double left = left_of (sq_segment_point (&s, k / 2.0), at, direction);
        farthest = fabs (left) > fabs (farthest) ? left : farthest;
      }
  return farthest > 0;
}

GPtrArray *
sq_ring_clipped (const SqPath *ring, SqPoint at, SqVector direction, guint32 tag)
{
  GPtrArray *rings = g_ptr_array_new_with_free_func ((GDestroyNotify) sq_path_unref);
  Passages p = find_passages (ring, at, direction);
  g_autofree gboolean *done = g_new0 (gboolean, p.n);

  if (p.n == 0 && lies_left (ring, at, direction))
    g_ptr_array_add (rings, sq_path_ref (ring));
  for (guint i = 1; i < p.n; i += 2)
    {
      if (done[i])
        continue;
      SqPath *part = ring_from (&p, i, tag, done);
      if (sq_path_area_mm2 (part) > SLIVER_MM * sq_path_length_mm (part))
        g_ptr_array_add (rings, part);
      else
        sq_path_unref (part);
    }
  clear_passages (&p);
  return rings;
}

/* ---- open paths ---------------------------------------------------------------------------- */

GPtrArray *
sq_path_clipped (const SqPath *path, SqPoint at, SqVector direction)
{
  GPtrArray *parts = g_ptr_array_new_with_free_func ((GDestroyNotify) sq_path_unref);
  SqBox box = sq_box_with (sq_path_box (path), at);
  double reach = 1 + sq_distance (box.min, box.max), from = 0;
  SqNode ends[] = { { sq_moved (at, direction, -reach), 0, 0 },
                    { sq_moved (at, direction, reach), 0, 0 } };
  g_autoptr (SqPath) line = sq_path_new (ends, 2, FALSE);
  g_autoptr (GArray) crossings = sq_paths_crossings (path, line);

  for (guint i = 0; i <= crossings->len; i++)
    {
      double to = i < crossings->len ? g_array_index (crossings, SqCrossing, i).station_a_mm
                                     : sq_path_length_mm (path);
      SqPoint middle = sq_path_point_at (path, (from + to) / 2, NULL);
      if (to - from <= SQ_COINCIDE_MM)
        continue;
      if (left_of (middle, at, direction) >= -SQ_COINCIDE_MM)
        g_ptr_array_add (parts, sq_path_part (path, from, to));
      from = to;
    }
  return parts;
}
