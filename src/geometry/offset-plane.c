/* SPDX-License-Identifier: GPL-3.0-or-later */
/* Cutting a chain into edges between vertices. */
#include "geometry/offset-plane.h"

#include "base/units.h"

#include <stdlib.h>
#include <string.h>

/* A place on a piece where an edge ends. */
typedef struct
{
  guint piece;
  double t;
  SqPoint at;
  guint vertex;
} Stop;

static void
add_stop (GArray *stops, guint piece, double t, SqPoint at)
{
  Stop stop = { piece, CLAMP (t, 0, 1), at, 0 };
  g_array_append_val (stops, stop);
}

static gboolean
add_meetings (const GArray *chain, guint i, guint j, gpointer data)
{
  SqMeeting meetings[2];
  guint n = sq_segments_meet (&sq_offset_piece (chain, i)->s, &sq_offset_piece (chain, j)->s,
                              meetings, NULL);

  for (guint k = 0; k < n; k++)
    {
      add_stop (data, i, meetings[k].ta, meetings[k].at);
      add_stop (data, j, meetings[k].tb, meetings[k].at);
    }
  return TRUE;
}

static int
compare_stops (gconstpointer a, gconstpointer b)
{
  const Stop *s = a, *t = b;

  if (s->piece != t->piece)
    return s->piece < t->piece ? -1 : 1;
  return (s->t > t->t) - (s->t < t->t);
}

/* The ends of every piece, its meetings with others and, for major arcs, the middle, so that no
 * edge is more than half a circle. */
static void
find_stops (const GArray *chain, GArray *stops)
{
  for (guint i = 0; i < chain->len; i++)
    {
      const SqSegment *s = &sq_offset_piece (chain, i)->s;
      add_stop (stops, i, 0, s->from);
      add_stop (stops, i, 1, s->to);
      if (fabs (s->bulge) > 0.9)
        add_stop (stops, i, 0.5, sq_segment_point (s, 0.5));
    }
  sq_offset_near_pairs (chain, add_meetings, stops);
  g_array_sort (stops, compare_stops);
}

static guint
root_of (guint *parent, guint i)
{
  while (parent[i] != i)
    i = parent[i] = parent[parent[i]];
  return i;
}

typedef struct
{
  SqPoint at;
  guint stop;
} Sorted;

static int
compare_sorted (gconstpointer a, gconstpointer b)
{
  double x = ((const Sorted *) a)->at.x, y = ((const Sorted *) b)->at.x;
  return (x > y) - (x < y);
}

/* Stops near each other share one vertex, which lies at a piece's end if one of them does. */
static void
find_vertices (SqPlane *plane, GArray *all_stops)
{
  guint n = all_stops->len;
  Stop *stops = (Stop *) all_stops->data;
  g_autofree guint *parent = g_new (guint, n);
  g_autofree Sorted *sorted = g_new (Sorted, n);

  for (guint i = 0; i < n; i++)
    {
      parent[i] = i;
      sorted[i] = (Sorted){ stops[i].at, i };
    }
  qsort (sorted, n, sizeof (Sorted), compare_sorted);
  for (guint i = 0; i < n; i++)
    for (guint j = i + 1; j < n && sorted[j].at.x - sorted[i].at.x <= plane->join_mm; j++)
      if (fabs (sorted[j].at.y - sorted[i].at.y) <= plane->join_mm)
        {
          guint a = root_of (parent, sorted[i].stop), b = root_of (parent, sorted[j].stop);
          gboolean a_is_end = stops[a].t == 0 || stops[a].t == 1;
          gboolean b_is_end = stops[b].t == 0 || stops[b].t == 1;
          gboolean keeps_a = a_is_end != b_is_end ? a_is_end : a < b;
          parent[keeps_a ? b : a] = keeps_a ? a : b;
        }
  for (guint i = 0; i < n; i++)
    if (parent[i] == i)
      {
        stops[i].vertex = plane->vertices->len;
        g_array_append_val (plane->vertices, stops[i].at);
      }
  for (guint i = 0; i < n; i++)
    stops[i].vertex = stops[root_of (parent, i)].vertex;
}

double
sq_plane_part_bulge (const SqSegment *s, double t0, double t1)
{
  if (!sq_segment_is_arc (s))
    return 0;
  return t0 == 0 && t1 == 1 ? s->bulge : tan (atan (s->bulge) * (t1 - t0));
}

static void
find_edges (SqPlane *plane, const GArray *stops)
{
  for (guint i = 0; i + 1 < stops->len; i++)
    {
      const Stop *a = &g_array_index (stops, Stop, i), *b = a + 1;
      if (a->piece != b->piece || a->vertex == b->vertex)
        continue;
      const SqSegment *s = &sq_offset_piece (plane->chain, a->piece)->s;
      SqPlaneEdge edge = { .s = { g_array_index (plane->vertices, SqPoint, a->vertex),
                                  g_array_index (plane->vertices, SqPoint, b->vertex),
                                  sq_plane_part_bulge (s, a->t, b->t) },
                           .piece = a->piece,
                           .t0 = a->t,
                           .t1 = b->t,
                           .from = a->vertex,
                           .to = b->vertex,
                           .weight = 1 };
      g_array_append_val (plane->edges, edge);
    }
}

static gboolean
joins_the_same (const SqPlaneEdge *e, const SqPlaneEdge *f)
{
  return MIN (e->from, e->to) == MIN (f->from, f->to)
         && MAX (e->from, e->to) == MAX (f->from, f->to);
}

static int
compare_ends (gconstpointer a, gconstpointer b)
{
  const SqPlaneEdge *e = a, *f = b;
  guint keys[2][3] = { { MIN (e->from, e->to), MAX (e->from, e->to), e->piece },
                       { MIN (f->from, f->to), MAX (f->from, f->to), f->piece } };

  for (int i = 0; i < 3; i++)
    if (keys[0][i] != keys[1][i])
      return keys[0][i] < keys[1][i] ? -1 : 1;
  return (e->t0 > f->t0) - (e->t0 < f->t0);
}

static int
compare_origins (gconstpointer a, gconstpointer b)
{
  const SqPlaneEdge *e = a, *f = b;
  guint keys[2][2] = { { e->from, e->piece }, { f->from, f->piece } };

  for (int i = 0; i < 2; i++)
    if (keys[0][i] != keys[1][i])
      return keys[0][i] < keys[1][i] ? -1 : 1;
  return (e->t0 > f->t0) - (e->t0 < f->t0);
}

static gboolean
is_parallel (const SqPlane *plane, const SqPlaneEdge *e)
{
  return sq_offset_piece (plane->chain, e->piece)->side >= 0;
}

/* Adds up the edges before @end that run the way @e does, against it < 0. Of those in the
 * direction that prevails one keeps the sum, a parallel rather than a trim; the others get 0. */
static void
merge_with (const SqPlane *plane, SqPlaneEdge *e, const SqPlaneEdge *end)
{
  SqPoint middle = sq_segment_point (&e->s, 0.5);
  SqPlaneEdge *forward = e, *backward = NULL;
  int sum = e->weight;

  for (SqPlaneEdge *f = e + 1; f < end; f++)
    {
      gboolean is_forward = f->from == e->from;
      SqPlaneEdge **kept = is_forward ? &forward : &backward;
      if (sq_distance (middle, sq_segment_point (&f->s, 0.5)) > 2 * plane->join_mm)
        continue;
      sum += is_forward ? f->weight : -f->weight;
      f->weight = 0;
      if (*kept == NULL || (!is_parallel (plane, *kept) && is_parallel (plane, f)))
        *kept = f;
    }
  e->weight = 0;
  if (sum != 0)
    (sum > 0 ? forward : backward)->weight = abs (sum);
}

/* Edges that run over each other become one. */
static void
merge_edges (SqPlane *plane)
{
  SqPlaneEdge *edges = (SqPlaneEdge *) plane->edges->data;
  guint n = plane->edges->len, kept = 0;

  qsort (edges, n, sizeof (SqPlaneEdge), compare_ends);
  for (guint i = 0, end = 0; i < n; i++)
    {
      for (end = MAX (end, i + 1); end < n && joins_the_same (&edges[i], &edges[end]);)
        end++;
      if (edges[i].weight != 0)
        merge_with (plane, &edges[i], &edges[end]);
    }
  for (guint i = 0; i < n; i++)
    if (edges[i].weight != 0)
      edges[kept++] = edges[i];
  g_array_set_size (plane->edges, kept);
}

void
sq_plane_index (SqPlane *plane)
{
  SqPlaneEdge *edges = (SqPlaneEdge *) plane->edges->data;
  guint n = plane->edges->len, n_vertices = plane->vertices->len;

  qsort (edges, n, sizeof (SqPlaneEdge), compare_origins);
  memset (plane->first_out, 0, (n_vertices + 1) * sizeof (guint));
  memset (plane->n_in, 0, n_vertices * sizeof (guint));
  for (guint i = 0; i < n; i++)
    {
      plane->first_out[edges[i].from + 1]++;
      plane->n_in[edges[i].to]++;
    }
  for (guint i = 0; i < n_vertices; i++)
    plane->first_out[i + 1] += plane->first_out[i];
}

SqPlane
sq_plane_new (const GArray *chain, double join_mm)
{
  SqPlane plane = { .chain = chain,
                    .join_mm = join_mm,
                    .vertices = g_array_new (FALSE, FALSE, sizeof (SqPoint)),
                    .edges = g_array_sized_new (FALSE, FALSE, sizeof (SqPlaneEdge), chain->len) };
  g_autoptr (GArray) stops = g_array_new (FALSE, FALSE, sizeof (Stop));

  find_stops (chain, stops);
  find_vertices (&plane, stops);
  find_edges (&plane, stops);
  merge_edges (&plane);
  plane.first_out = g_new (guint, plane.vertices->len + 1);
  plane.n_in = g_new (guint, plane.vertices->len);
  sq_plane_index (&plane);
  return plane;
}

void
sq_plane_clear (SqPlane *plane)
{
  g_array_unref (plane->vertices);
  g_array_unref (plane->edges);
  g_free (plane->first_out);
  g_free (plane->n_in);
}
