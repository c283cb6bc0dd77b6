/* SPDX-License-Identifier: GPL-3.0-or-later */
/* Removing loops by winding number: of the edges that the chain divides the plane by, those between
 * inside and outside are kept and walked. */
#include "geometry/offset-plane.h"

#include "base/units.h"

/* Meetings computed from different pairs are one if they are this near (mm); if the edges found so
 * contradict each other, it is tried again with ten times as much, up to the second. */
#define JOIN_FIRST_MM (2 * SQ_COINCIDE_MM)
#define JOIN_LAST_MM 1e-3

/* Keeps the edges between inside and outside. FALSE if they do not close: then the winding numbers
 * contradict each other. */
static gboolean
keep_boundary (SqPlane *plane, int sense)
{
  guint n_vertices = plane->vertices->len, kept = 0;
  g_autofree int *balance = g_new0 (int, n_vertices);
  SqPlaneEdge *edges = (SqPlaneEdge *) plane->edges->data;

  for (guint i = 0; i < plane->edges->len; i++)
    {
      int left = edges[i].left * sense, right = (edges[i].left - edges[i].weight) * sense;
      if ((left > 0) == (right > 0))
        continue;
      balance[edges[i].from]++;
      balance[edges[i].to]--;
      edges[kept++] = edges[i];
    }
  g_array_set_size (plane->edges, kept);
  sq_plane_index (plane);
  for (guint i = 0; i < n_vertices; i++)
    if (balance[i] != 0)
      return FALSE;
  return TRUE;
}

/* Of the edges that leave @edge's end and are still free the one farthest to the left. */
static SqPlaneEdge *
next_free (const SqPlane *plane, const SqPlaneEdge *edge, const gboolean *is_used)
{
  SqVector in = sq_segment_direction (&edge->s, 1);
  SqPlaneEdge *best = NULL;
  double best_turn = 0;

  for (guint i = plane->first_out[edge->to]; i < plane->first_out[edge->to + 1]; i++)
    {
      SqPlaneEdge *e = sq_plane_edge (plane, i);
      double turn = sq_angle_rad (in, sq_segment_direction (&e->s, 0));
      if (!is_used[i] && (best == NULL || turn > best_turn))
        {
          best = e;
          best_turn = turn;
        }
    }
  return best;
}

/* The node between two kept edges that follow each other. */
static SqPoint
node_between (const SqPlane *plane, const SqPlaneEdge *a, const SqPlaneEdge *b)
{
  SqPoint at = g_array_index (plane->vertices, SqPoint, b->from);

  if (a->t1 == 1 && b->t0 == 0 && (a->piece + 1) % plane->chain->len == b->piece)
    return at;
  sq_offset_settle_on (&sq_offset_piece (plane->chain, a->piece)->s,
                       &sq_offset_piece (plane->chain, b->piece)->s, 100 * plane->join_mm, &at);
  return at;
}

/* Whether @b only goes on where @a was cut. */
static gboolean
goes_on (const SqPlaneEdge *a, const SqPlaneEdge *b)
{
  return a->piece == b->piece && a->t1 <= b->t0;
}

/* The pieces of a ring of edges; edges of one piece become one again. */
static GArray *
ring_of (const SqPlane *plane, SqPlaneEdge **edges, guint n)
{
  GArray *ring = g_array_new (FALSE, FALSE, sizeof (SqOffsetPiece));
  guint start = 0;

  while (start + 1 < n && goes_on (edges[(start + n - 1) % n], edges[start]))
    start++;
  for (guint i = 0; i < n;)
    {
      const SqPlaneEdge *first = edges[(start + i) % n], *last = first;
      const SqPlaneEdge *previous = edges[(start + i + n - 1) % n];
      for (i++; i < n && goes_on (last, edges[(start + i) % n]); i++)
        last = edges[(start + i) % n];
      SqOffsetPiece piece = *sq_offset_piece (plane->chain, first->piece);
      piece.s.bulge = sq_plane_part_bulge (&piece.s, first->t0, last->t1);
      piece.s.from = node_between (plane, previous, first);
      g_array_append_val (ring, piece);
    }
  for (guint i = 0; i < ring->len; i++)
    g_array_index (ring, SqOffsetPiece, i).s.to
        = g_array_index (ring, SqOffsetPiece, (i + 1) % ring->len).s.from;
  return ring;
}

/* A ring thinner than a point is none. */
static void
add_ring (const SqPlane *plane, GPtrArray *rings, SqPlaneEdge **edges, guint n)
{
  GArray *ring = ring_of (plane, edges, n);
  double length = 0;

  for (guint i = 0; i < ring->len; i++)
    length += sq_segment_length_mm (&sq_offset_piece (ring, i)->s);
  if (ring->len >= 2 && fabs (sq_offset_chain_area_mm2 (ring)) > length * plane->join_mm)
    g_ptr_array_add (rings, ring);
  else
    g_array_unref (ring);
}

/* Walks the kept edges. Whenever the way comes back to a vertex it is on, what lies between is a
 * ring of its own. */
static GPtrArray *
walk_rings (const SqPlane *plane)
{
  GPtrArray *rings = g_ptr_array_new_with_free_func ((GDestroyNotify) g_array_unref);
  SqPlaneEdge *edges = (SqPlaneEdge *) plane->edges->data;
  guint n = plane->edges->len;
  g_autofree gboolean *is_used = g_new0 (gboolean, n);
  g_autofree guint *step_at = g_new0 (guint, plane->vertices->len); /* 1 + its place on the way */
  g_autofree SqPlaneEdge **way = g_new (SqPlaneEdge *, n);

  for (guint start = 0; start < n; start++)
    {
      guint steps = 0;
      for (SqPlaneEdge *e = is_used[start] ? NULL : &edges[start]; e != NULL;
           e = next_free (plane, e, is_used))
        {
          is_used[e - edges] = TRUE;
          way[steps++] = e;
          step_at[e->from] = steps;
          if (step_at[e->to] == 0)
            continue;
          guint back_to = step_at[e->to] - 1;
          add_ring (plane, rings, way + back_to, steps - back_to);
          for (; steps > back_to; steps--)
            step_at[way[steps - 1]->from] = 0;
          if (steps == 0)
            break;
        }
      for (; steps > 0; steps--)
        step_at[way[steps - 1]->from] = 0;
    }
  return rings;
}

/* The greatest ring that winds as it should comes first, of halves as great the one that was walked
 * first, whichever way the ring lies; without one there is none at all. */
static void
sort_rings (GPtrArray *rings, int sense)
{
  const double more = 1 + 1e-9;
  guint best = 0;
  double most = 0;

  for (guint i = 0; i < rings->len; i++)
    {
      double area = sense * sq_offset_chain_area_mm2 (rings->pdata[i]);
      if (area > most * more)
        {
          most = area;
          best = i;
        }
    }
  if (most <= 0)
    {
      g_ptr_array_set_size (rings, 0);
      return;
    }
  gpointer first = rings->pdata[0];
  rings->pdata[0] = rings->pdata[best];
  rings->pdata[best] = first;
}

GPtrArray *
sq_offset_without_loops (const GArray *chain, int sense)
{
  GPtrArray *rings = NULL;

  for (double join_mm = JOIN_FIRST_MM; rings == NULL; join_mm *= 10)
    {
      SqPlane plane = sq_plane_new (chain, join_mm);
      sq_plane_wind (&plane);
      if (keep_boundary (&plane, sense) || join_mm > JOIN_LAST_MM)
        rings = walk_rings (&plane);
      sq_plane_clear (&plane);
    }
  sort_rings (rings, sense);
  return rings;
}
