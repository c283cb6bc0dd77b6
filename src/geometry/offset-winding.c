/* SPDX-License-Identifier: GPL-3.0-or-later */
/* Winding numbers on both sides of the edges of a plane. */
#include "geometry/offset-plane.h"

#include "base/units.h"

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
edge_winding (const SqPlaneEdge *edge, SqPoint p, gboolean turned)
{
  SqPoint a = upright (edge->s.from, turned), b = upright (edge->s.to, turned);
  double bulge = edge->s.bulge;

  if (!sq_segment_is_arc (&edge->s)
      && ((a.x < p.x && b.x < p.x) || (a.y < p.y && b.y < p.y) || (a.y > p.y && b.y > p.y)))
    return 0;
  SqVector chord = sq_sub (b, a), from_a = sq_sub (p, a);
  double left = sq_cross (chord, from_a);
  /* a point on the chord, as of another edge between the same vertices, must not be on its left for
   * the ray and on neither side for the arc */
  gboolean is_left = left > 0;
  int winding = crossing (p.y, a.y, b.y, is_left);
  if (sq_segment_is_arc (&edge->s) && is_left != (bulge > 0))
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

/* The edges that reach into each of so many bands of equal height: a ray keeps to its band. */
typedef struct
{
  double low, height;
  guint n;
  guint *first; /* those of band i are edges[first[i]] … edges[first[i + 1] − 1] */
  guint *edges;
} Bands;

/* With fewer edges than this to a band, sorting them costs more than it saves. */
#define EDGES_PER_BAND 24

static guint
band_at (const Bands *bands, double y)
{
  double i = (y - bands->low) / bands->height;
  return i <= 0 ? 0 : MIN ((guint) i, bands->n - 1);
}

static void
edge_range (const SqPlane *plane, guint i, gboolean turned, double *low, double *high)
{
  SqBox box = sq_segment_box (&sq_plane_edge (plane, i)->s);

  *low = turned ? box.min.x : box.min.y;
  *high = turned ? box.max.x : box.max.y;
}

static Bands
bands_new (const SqPlane *plane, gboolean turned)
{
  guint n_edges = plane->edges->len;
  Bands bands = { .low = INFINITY, .n = 1 + n_edges / EDGES_PER_BAND };
  g_autofree double *lows = g_new (double, n_edges), *highs = g_new (double, n_edges);
  double top = -INFINITY;

  for (guint i = 0; i < n_edges; i++)
    {
      edge_range (plane, i, turned, &lows[i], &highs[i]);
      bands.low = fmin (bands.low, lows[i]);
      top = fmax (top, highs[i]);
    }
  bands.height = fmax (top - bands.low, SQ_COINCIDE_MM) / bands.n;
  bands.first = g_new0 (guint, bands.n + 1);
  for (guint i = 0; i < n_edges; i++)
    for (guint k = band_at (&bands, lows[i]); k <= band_at (&bands, highs[i]); k++)
      bands.first[k + 1]++;
  for (guint k = 0; k < bands.n; k++)
    bands.first[k + 1] += bands.first[k];
  bands.edges = g_new (guint, bands.first[bands.n]);
  g_autofree guint *next = g_memdup2 (bands.first, bands.n * sizeof (guint));
  for (guint i = 0; i < n_edges; i++)
    for (guint k = band_at (&bands, lows[i]); k <= band_at (&bands, highs[i]); k++)
      bands.edges[next[k]++] = i;
  return bands;
}

static void
bands_clear (Bands *bands)
{
  g_free (bands->first);
  g_free (bands->edges);
}

/* The winding number on the left of @edge. The ray runs as square to it as may be; the edge's own
 * part is known without computing on which side of it the point lies. */
static int
left_winding (const SqPlane *plane, const Bands bands[2], const SqPlaneEdge *edge)
{
  SqVector chord = sq_sub (edge->s.to, edge->s.from);
  gboolean turned = fabs (chord.x) > fabs (chord.y);
  SqPoint p = upright (sq_segment_point (&edge->s, 0.5), turned);
  gboolean is_arc = sq_segment_is_arc (&edge->s);
  int winding = crossing (p.y, upright (edge->s.from, turned).y, upright (edge->s.to, turned).y,
                          !is_arc || edge->s.bulge < 0);
  const Bands *in = &bands[turned ? 1 : 0];
  guint band = band_at (in, p.y);

  if (is_arc && edge->s.bulge > 0)
    winding++;
  winding *= edge->weight;
  for (guint i = in->first[band]; i < in->first[band + 1]; i++)
    {
      const SqPlaneEdge *other = sq_plane_edge (plane, in->edges[i]);
      if (other != edge)
        winding += other->weight * edge_winding (other, p, turned);
    }
  return winding;
}

/* The only edge that leaves @vertex if one arrives and one leaves there; else NULL. */
static SqPlaneEdge *
only_way_on (const SqPlane *plane, guint vertex)
{
  guint first = plane->first_out[vertex];

  if (plane->n_in[vertex] != 1 || plane->first_out[vertex + 1] != first + 1)
    return NULL;
  return sq_plane_edge (plane, first);
}

/* From one meeting to the next the winding numbers stay; they are taken at the longest edge. */
static void
wind_strand (const SqPlane *plane, const Bands bands[2], SqPlaneEdge *start)
{
  SqPlaneEdge *longest = start;
  double length = 0;

  for (SqPlaneEdge *e = start; e != NULL && !e->is_known; e = only_way_on (plane, e->to))
    {
      e->is_known = TRUE;
      if (sq_distance (e->s.from, e->s.to) > length)
        {
          length = sq_distance (e->s.from, e->s.to);
          longest = e;
        }
    }
  int left = left_winding (plane, bands, longest);
  for (SqPlaneEdge *e = start; e != NULL; e = only_way_on (plane, e->to))
    {
      e->left = left;
      if (only_way_on (plane, e->to) == start)
        break;
    }
}

void
sq_plane_wind (SqPlane *plane)
{
  Bands bands[2] = { bands_new (plane, FALSE), bands_new (plane, TRUE) };
  SqPlaneEdge *edges = (SqPlaneEdge *) plane->edges->data;

  for (guint i = 0; i < plane->edges->len; i++)
    if (only_way_on (plane, edges[i].from) == NULL)
      wind_strand (plane, bands, &edges[i]);
  for (guint i = 0; i < plane->edges->len; i++)
    if (!edges[i].is_known)
      wind_strand (plane, bands, &edges[i]);
  bands_clear (&bands[0]);
  bands_clear (&bands[1]);
}
