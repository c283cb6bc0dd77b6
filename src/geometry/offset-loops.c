/* SPDX-License-Identifier: GPL-3.0-or-later */
/* Removing loops by winding number. The chain is cut into edges at all of its meetings; edges that
 * run over each other become one that counts for all; the winding number on both sides of each is
 * found; and the edges between inside and outside are walked. */
#include "geometry/offset-chain.h"

#include <stdlib.h>

#include "base/units.h"

/* Meetings computed from different pairs are one if they are this near (mm); if the edges found so
 * contradict each other, it is tried again with ten times as much, up to the second. */
#define JOIN_FIRST_MM (2 * SQ_COINCIDE_MM)
#define JOIN_LAST_MM 1e-3

/* A place on a piece where an edge ends. */
typedef struct
{
  guint piece;
  double t;
  SqPoint at;
  guint vertex;
} Stop;

/* A stretch of a piece between two vertices. @weight counts how many more pieces run this way than
 * the other. */
typedef struct
{
  SqSegment s;
  guint piece;
  double t0, t1;
  guint from, to;
  int weight;
  gboolean is_known;
  int left; /* winding number on the left side; on the right it is @weight less */
} Edge;

typedef struct
{
  const GArray *chain;
  double join_mm;
  GArray *stops;    /* of Stop, by piece and t */
  GArray *vertices; /* of SqPoint */
  GArray *edges;    /* of Edge */
  guint *first_out; /* edges are sorted by the vertex they leave, those of v from first_out[v] */
  guint *n_in;      /* edges that arrive at it */
} Plane;

static const SqOffsetPiece *
piece_of (const GArray *chain, guint i)
{
  return &g_array_index (chain, SqOffsetPiece, i);
}

double
sq_offset_chain_area_mm2 (const GArray *chain)
{
  double area = 0;

  for (guint i = 0; i < chain->len; i++)
    area += sq_segment_area_mm2 (&piece_of (chain, i)->s);
  return area;
}

/* Pairs of pieces whose boxes meet. */

typedef struct
{
  SqBox box;
  guint piece;
} Boxed;

static int
compare_boxes (gconstpointer a, gconstpointer b)
{
  double x = ((const Boxed *) a)->box.min.x, y = ((const Boxed *) b)->box.min.x;
  return (x > y) - (x < y);
}

/* Called for pairs i < j; FALSE ends it. */
typedef gboolean (*PairFunc) (const GArray *chain, guint i, guint j, gpointer data);

static gboolean
for_near_pairs (const GArray *chain, PairFunc func, gpointer data)
{
  g_autofree Boxed *boxes = g_new (Boxed, chain->len);

  for (guint i = 0; i < chain->len; i++)
    boxes[i] = (Boxed){ sq_segment_box (&piece_of (chain, i)->s), i };
  qsort (boxes, chain->len, sizeof (Boxed), compare_boxes);
  for (guint i = 0; i < chain->len; i++)
    for (guint j = i + 1;
         j < chain->len && boxes[j].box.min.x <= boxes[i].box.max.x + SQ_COINCIDE_MM; j++)
      if (sq_box_meets (boxes[i].box, boxes[j].box, SQ_COINCIDE_MM)
          && !func (chain, MIN (boxes[i].piece, boxes[j].piece),
                    MAX (boxes[i].piece, boxes[j].piece), data))
        return FALSE;
  return TRUE;
}

/* Whether a line square to the way through the common node of @a and @b parts them: each lies
 * between its tangent there and its chord. */
static gboolean
part_at_node (const SqSegment *a, const SqSegment *b)
{
  SqVector in = sq_segment_direction (a, 1), out = sq_segment_direction (b, 0);
  SqVector way = sq_add (in, out);
  SqVector chord_a = sq_sub (a->to, a->from), chord_b = sq_sub (b->to, b->from);

  return fabs (a->bulge) < 1 && fabs (b->bulge) < 1 && sq_dot (in, way) > 1e-3
         && sq_dot (chord_a, way) > 1e-3 * sq_norm (chord_a)
         && sq_dot (chord_b, way) > 1e-3 * sq_norm (chord_b);
}

static gboolean
meet_only_at_node (const GArray *chain, guint i, guint j, gpointer data)
{
  const SqSegment *a = &piece_of (chain, i)->s, *b = &piece_of (chain, j)->s;
  gboolean a_to_b = j == i + 1, b_to_a = i == 0 && j == chain->len - 1, overlap;
  SqMeeting meetings[2];
  (void) data;

  if (a_to_b && !b_to_a && part_at_node (a, b))
    return TRUE;
  if (b_to_a && !a_to_b && part_at_node (b, a))
    return TRUE;
  guint n = sq_segments_meet (a, b, meetings, &overlap);
  if (n != (guint) a_to_b + (guint) b_to_a || overlap)
    return FALSE;
  for (guint k = 0; k < n; k++)
    if (!(a_to_b && sq_distance (meetings[k].at, a->to) <= SQ_COINCIDE_MM)
        && !(b_to_a && sq_distance (meetings[k].at, b->to) <= SQ_COINCIDE_MM))
      return FALSE;
  return TRUE;
}

gboolean
sq_offset_chain_is_simple (const GArray *chain)
{
  return for_near_pairs (chain, meet_only_at_node, NULL);
}

/* Stops and vertices. */

static void
add_stop (Plane *plane, guint piece, double t, SqPoint at)
{
  Stop stop = { piece, CLAMP (t, 0, 1), at, 0 };
  g_array_append_val (plane->stops, stop);
}

static gboolean
add_meetings (const GArray *chain, guint i, guint j, gpointer data)
{
  SqMeeting meetings[2];
  guint n = sq_segments_meet (&piece_of (chain, i)->s, &piece_of (chain, j)->s, meetings, NULL);

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
find_stops (Plane *plane)
{
  for (guint i = 0; i < plane->chain->len; i++)
    {
      const SqSegment *s = &piece_of (plane->chain, i)->s;
      add_stop (plane, i, 0, s->from);
      add_stop (plane, i, 1, s->to);
      if (fabs (s->bulge) > 0.9)
        add_stop (plane, i, 0.5, sq_segment_point (s, 0.5));
    }
  for_near_pairs (plane->chain, add_meetings, plane);
  g_array_sort (plane->stops, compare_stops);
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
find_vertices (Plane *plane)
{
  guint n = plane->stops->len;
  Stop *stops = (Stop *) plane->stops->data;
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

/* Edges. */

static SqPoint
vertex_at (const Plane *plane, guint i)
{
  return g_array_index (plane->vertices, SqPoint, i);
}

static double
part_bulge (const SqSegment *s, double t0, double t1)
{
  if (!sq_segment_is_arc (s))
    return 0;
  return t0 == 0 && t1 == 1 ? s->bulge : tan (atan (s->bulge) * (t1 - t0));
}

static void
find_edges (Plane *plane)
{
  for (guint i = 0; i + 1 < plane->stops->len; i++)
    {
      const Stop *a = &g_array_index (plane->stops, Stop, i), *b = a + 1;
      if (a->piece != b->piece || a->vertex == b->vertex)
        continue;
      const SqSegment *s = &piece_of (plane->chain, a->piece)->s;
      Edge edge = { .s = { vertex_at (plane, a->vertex), vertex_at (plane, b->vertex),
                           part_bulge (s, a->t, b->t) },
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
joins_the_same (const Edge *e, const Edge *f)
{
  return MIN (e->from, e->to) == MIN (f->from, f->to)
         && MAX (e->from, e->to) == MAX (f->from, f->to);
}

static int
compare_ends (gconstpointer a, gconstpointer b)
{
  const Edge *e = a, *f = b;
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
  const Edge *e = a, *f = b;
  guint keys[2][2] = { { e->from, e->piece }, { f->from, f->piece } };

  for (int i = 0; i < 2; i++)
    if (keys[0][i] != keys[1][i])
      return keys[0][i] < keys[1][i] ? -1 : 1;
  return (e->t0 > f->t0) - (e->t0 < f->t0);
}

static gboolean
is_parallel (const Plane *plane, const Edge *e)
{
  return piece_of (plane->chain, e->piece)->side >= 0;
}

/* Adds up the edges before @end that run the way @e does, against it < 0. Of those in the
 * direction that prevails one keeps the sum, a parallel rather than a trim; the others get 0. */
static void
merge_with (const Plane *plane, Edge *e, const Edge *end)
{
  SqPoint middle = sq_segment_point (&e->s, 0.5);
  Edge *forward = e, *backward = NULL;
  int sum = e->weight;

  for (Edge *f = e + 1; f < end; f++)
    {
      gboolean is_forward = f->from == e->from;
      Edge **kept = is_forward ? &forward : &backward;
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
merge_edges (Plane *plane)
{
  Edge *edges = (Edge *) plane->edges->data;
  guint n = plane->edges->len, kept = 0;

  qsort (edges, n, sizeof (Edge), compare_ends);
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

/* Sorts the edges by the vertex they leave. */
static void
index_edges (Plane *plane)
{
  Edge *edges = (Edge *) plane->edges->data;
  guint n = plane->edges->len, n_vertices = plane->vertices->len;

  qsort (edges, n, sizeof (Edge), compare_origins);
  plane->first_out = g_new0 (guint, n_vertices + 1);
  plane->n_in = g_new0 (guint, n_vertices);
  for (guint i = 0; i < n; i++)
    {
      plane->first_out[edges[i].from + 1]++;
      plane->n_in[edges[i].to]++;
    }
  for (guint i = 0; i < n_vertices; i++)
    plane->first_out[i + 1] += plane->first_out[i];
}

/* Winding numbers. */

/* What a → b adds to the winding number about a point at height @y by the ray from it to the
 * right, where @is_left says whether the point lies to the left of a → b. */
static int
crossing (double y, double a_y, double b_y, gboolean is_left)
{
  if (a_y <= y && y < b_y)
    return is_left ? 1 : 0;
  if (b_y <= y && y < a_y)
    return is_left ? 0 : -1;
  return 0;
}

static SqPoint
upright (SqPoint p, gboolean turned)
{
  return turned ? sq_point (-p.y, p.x) : p;
}

/* What an edge adds about a point off it: its chord by the ray, and one more between chord and
 * arc. */
static int
edge_winding (const Edge *edge, SqPoint p, gboolean turned)
{
  SqPoint a = upright (edge->s.from, turned), b = upright (edge->s.to, turned);
  double bulge = edge->s.bulge;

  if (!sq_segment_is_arc (&edge->s)
      && ((a.x < p.x && b.x < p.x) || (a.y < p.y && b.y < p.y) || (a.y > p.y && b.y > p.y)))
    return 0;
  SqVector chord = sq_sub (b, a), from_a = sq_sub (p, a);
  double left = sq_cross (chord, from_a);
  int winding = crossing (p.y, a.y, b.y, left > 0);
  if (sq_segment_is_arc (&edge->s) && left * bulge < 0)
    {
      /* b (x² + y² − half²) = half (1 − b²) y is the circle seen from its chord */
      double chord2 = sq_dot (chord, chord);
      SqVector v = sq_sub (p, sq_between (a, b, 0.5));
      double beyond = bulge * (sq_dot (v, v) - chord2 / 4) - (1 - bulge * bulge) / 2 * left;
      if (beyond * bulge < 0)
        winding += bulge > 0 ? 1 : -1;
    }
  return winding;
}

/* The winding number on the left of @edge. The ray runs as square to it as may be; the edge's own
 * part is known without computing on which side of it the point lies. */
static int
left_winding (const Plane *plane, const Edge *edge)
{
  SqVector chord = sq_sub (edge->s.to, edge->s.from);
  gboolean turned = fabs (chord.x) > fabs (chord.y);
  SqPoint p = upright (sq_segment_point (&edge->s, 0.5), turned);
  gboolean is_arc = sq_segment_is_arc (&edge->s);
  int winding = crossing (p.y, upright (edge->s.from, turned).y, upright (edge->s.to, turned).y,
                          !is_arc || edge->s.bulge < 0);

  if (is_arc && edge->s.bulge > 0)
    winding++;
  winding *= edge->weight;
  for (guint i = 0; i < plane->edges->len; i++)
    {
      const Edge *other = &g_array_index (plane->edges, Edge, i);
      if (other != edge)
        winding += other->weight * edge_winding (other, p, turned);
    }
  return winding;
}

/* The only edge that leaves @vertex if one arrives and one leaves there; else NULL. */
static Edge *
only_way_on (const Plane *plane, guint vertex)
{
  guint first = plane->first_out[vertex];

  if (plane->n_in[vertex] != 1 || plane->first_out[vertex + 1] != first + 1)
    return NULL;
  return &g_array_index (plane->edges, Edge, first);
}

/* From one meeting to the next the winding numbers stay; they are taken at the longest edge. */
static void
wind_strand (const Plane *plane, Edge *start)
{
  Edge *longest = start;
  double length = 0;

  for (Edge *e = start; e != NULL && !e->is_known; e = only_way_on (plane, e->to))
    {
      e->is_known = TRUE;
      if (sq_distance (e->s.from, e->s.to) > length)
        {
          length = sq_distance (e->s.from, e->s.to);
          longest = e;
        }
    }
  int left = left_winding (plane, longest);
  for (Edge *e = start; e != NULL; e = only_way_on (plane, e->to))
    {
      e->left = left;
      if (only_way_on (plane, e->to) == start)
        break;
    }
}

static void
find_windings (Plane *plane)
{
  Edge *edges = (Edge *) plane->edges->data;

  for (guint i = 0; i < plane->edges->len; i++)
    if (only_way_on (plane, edges[i].from) == NULL)
      wind_strand (plane, &edges[i]);
  for (guint i = 0; i < plane->edges->len; i++)
    if (!edges[i].is_known)
      wind_strand (plane, &edges[i]);
}

/* Keeps the edges between inside and outside. FALSE if they do not close: then the winding numbers
 * contradict each other. */
static gboolean
keep_boundary (Plane *plane, int sense)
{
  guint n_vertices = plane->vertices->len, kept = 0;
  g_autofree int *balance = g_new0 (int, n_vertices);
  Edge *edges = (Edge *) plane->edges->data;

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
  g_clear_pointer (&plane->first_out, g_free);
  g_clear_pointer (&plane->n_in, g_free);
  index_edges (plane);
  for (guint i = 0; i < n_vertices; i++)
    if (balance[i] != 0)
      return FALSE;
  return TRUE;
}

/* Walking. */

/* Of the edges that leave @edge's end and are still free the one farthest to the left. */
static Edge *
next_free (const Plane *plane, const Edge *edge, const gboolean *is_used)
{
  SqVector in = sq_segment_direction (&edge->s, 1);
  Edge *best = NULL;
  double best_turn = 0;

  for (guint i = plane->first_out[edge->to]; i < plane->first_out[edge->to + 1]; i++)
    {
      Edge *e = &g_array_index (plane->edges, Edge, i);
      double turn = sq_angle_rad (in, sq_segment_direction (&e->s, 0));
      if (!is_used[i] && (best == NULL || turn > best_turn))
        {
          best = e;
          best_turn = turn;
        }
    }
  return best;
}

/* Where the pieces of @a and @b cross near their common vertex, exactly. */
static SqPoint
exact_node (const Plane *plane, const Edge *a, const Edge *b)
{
  SqPoint at = vertex_at (plane, b->from), best = at, found[2];
  double nearest = 100 * plane->join_mm;

  if (a->t1 == 1 && b->t0 == 0 && (a->piece + 1) % plane->chain->len == b->piece)
    return at;
  guint n = sq_segments_meet_extended (&piece_of (plane->chain, a->piece)->s,
                                       &piece_of (plane->chain, b->piece)->s, found);
  for (guint i = 0; i < n; i++)
    if (sq_distance (found[i], at) < nearest)
      {
        nearest = sq_distance (found[i], at);
        best = found[i];
      }
  return best;
}

/* Whether @b only goes on where @a was cut. */
static gboolean
goes_on (const Edge *a, const Edge *b)
{
  return a->piece == b->piece && a->t1 == b->t0;
}

/* The pieces of a ring of edges; edges of one piece become one again. */
static GArray *
ring_of (const Plane *plane, Edge **edges, guint n)
{
  GArray *ring = g_array_new (FALSE, FALSE, sizeof (SqOffsetPiece));
  guint start = 0;

  while (start + 1 < n && goes_on (edges[(start + n - 1) % n], edges[start]))
    start++;
  for (guint i = 0; i < n;)
    {
      const Edge *first = edges[(start + i) % n], *last = first;
      const Edge *previous = edges[(start + i + n - 1) % n];
      for (i++; i < n && goes_on (last, edges[(start + i) % n]); i++)
        last = edges[(start + i) % n];
      SqOffsetPiece piece = *piece_of (plane->chain, first->piece);
      piece.s.bulge = part_bulge (&piece.s, first->t0, last->t1);
      piece.s.from = exact_node (plane, previous, first);
      g_array_append_val (ring, piece);
    }
  for (guint i = 0; i < ring->len; i++)
    g_array_index (ring, SqOffsetPiece, i).s.to
        = g_array_index (ring, SqOffsetPiece, (i + 1) % ring->len).s.from;
  return ring;
}

/* A ring thinner than a point is none. */
static void
add_ring (const Plane *plane, GPtrArray *rings, Edge **edges, guint n)
{
  GArray *ring = ring_of (plane, edges, n);
  double length = 0;

  for (guint i = 0; i < ring->len; i++)
    length += sq_segment_length_mm (&piece_of (ring, i)->s);
  if (ring->len >= 2 && fabs (sq_offset_chain_area_mm2 (ring)) > length * plane->join_mm)
    g_ptr_array_add (rings, ring);
  else
    g_array_unref (ring);
}

/* Walks the kept edges. Whenever the way comes back to a vertex it is on, what lies between is a
 * ring of its own. */
static GPtrArray *
walk_rings (const Plane *plane)
{
  GPtrArray *rings = g_ptr_array_new_with_free_func ((GDestroyNotify) g_array_unref);
  Edge *edges = (Edge *) plane->edges->data;
  guint n = plane->edges->len;
  g_autofree gboolean *is_used = g_new0 (gboolean, n);
  g_autofree guint *step_at = g_new0 (guint, plane->vertices->len); /* 1 + its place on the way */
  g_autofree Edge **way = g_new (Edge *, n);

  for (guint start = 0; start < n; start++)
    {
      guint steps = 0;
      for (Edge *e = is_used[start] ? NULL : &edges[start]; e != NULL;
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

static Plane
plane_new (const GArray *chain, double join_mm)
{
  return (Plane){ .chain = chain,
                  .join_mm = join_mm,
                  .stops = g_array_new (FALSE, FALSE, sizeof (Stop)),
                  .vertices = g_array_new (FALSE, FALSE, sizeof (SqPoint)),
                  .edges = g_array_new (FALSE, FALSE, sizeof (Edge)) };
}

static void
plane_clear (Plane *plane)
{
  g_array_unref (plane->stops);
  g_array_unref (plane->vertices);
  g_array_unref (plane->edges);
  g_free (plane->first_out);
  g_free (plane->n_in);
}

/* The greatest ring that winds as it should comes first; without one there is none at all. */
static void
sort_rings (GPtrArray *rings, int sense)
{
  guint best = 0;
  double most = 0;

  for (guint i = 0; i < rings->len; i++)
    {
      double area = sense * sq_offset_chain_area_mm2 (rings->pdata[i]);
      if (area > most)
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
      Plane plane = plane_new (chain, join_mm);
      find_stops (&plane);
      find_vertices (&plane);
      find_edges (&plane);
      merge_edges (&plane);
      index_edges (&plane);
      find_windings (&plane);
      if (keep_boundary (&plane, sense) || join_mm > JOIN_LAST_MM)
        rings = walk_rings (&plane);
      plane_clear (&plane);
    }
  sort_rings (rings, sense);
  return rings;
}
