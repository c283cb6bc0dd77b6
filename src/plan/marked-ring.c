/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "plan/marked-ring.h"

/* What is left out of a straight line, and what rounding may take then. */
#define LEFT_OUT_MM 0.02
#define READ_MM (SQ_MARKED_MM - LEFT_OUT_MM)

/* A point of an arc is to be nearer: three of them carry an error on. */
#define ON_ARC_MM (SQ_MARKED_MM / 2)

/* A chain of arcs is one arc where it is no farther off, and straight where it hardly rises. */
#define CHAIN_MM 0.3
#define SLIGHT_MM 0.15

/* No arc is marked by three points that is longer than a hand draws at once, or turns by more than a
 * right angle. */
#define MOST_LENGTH_MM 600.0
#define MOST_TURN_RAD (M_PI / 2 + 1e-6)

/* Looks along a part of a line (per segment) and a candidate for it. */
#define LOOKS 8

SqLengthStyle
sq_mark_style (gboolean is_fine, const SqLengthStyle *style)
{
  SqLengthStyle own = *style;

  own.halves = is_fine;
  return own;
}

static SqPoint
as_read (const SqMarkPoint *point, const SqLengthStyle *style)
{
  SqLengthStyle own = sq_mark_style (point->is_fine, style);

  return sq_point (sq_length_rounded_mm (point->at.x, &own),
                   sq_length_rounded_mm (point->at.y, &own));
}

static SqMarkPoint
mark_point (SqPoint at, double most_mm, const SqLengthStyle *style)
{
  SqMarkPoint point = { .at = at };

  point.is_fine = sq_distance (at, as_read (&point, style)) > most_mm;
  return point;
}

/* --- the line that is marked ----------------------------------------------------------------- */

/* The work: nodes of the ring from where it begins, its first one repeated at the end. */
typedef struct
{
  GArray *nodes; /* of SqNode */
  const SqLengthStyle *style;
} Marked;

static SqNode *
node (const Marked *marked, guint i)
{
  return &g_array_index (marked->nodes, SqNode, i);
}

static SqSegment
segment (const Marked *marked, guint i)
{
  return (SqSegment){ node (marked, i)->at, node (marked, i + 1)->at, node (marked, i)->bulge };
}

static gboolean
is_arc (const Marked *marked, guint i)
{
  SqSegment own = segment (marked, i);

  return sq_segment_is_arc (&own);
}

/* Whether a line through all nodes from @from to @to is one straight line. */
static gboolean
is_straight (const SqNode *nodes, guint n, guint from, guint to)
{
  SqSegment chord = { nodes[from % n].at, nodes[to % n].at, 0 };

  for (guint i = from; i < to; i++)
    {
      double t;
      if (fabs (nodes[i % n].bulge) > SQ_STRAIGHT_BULGE)
        return FALSE;
      if (sq_segment_nearest_mm (&chord, nodes[i % n].at, &t) > LEFT_OUT_MM)
        return FALSE;
    }
  return TRUE;
}

/* A node that the line goes straight on at is no place to begin. */
static gboolean
is_corner (const SqNode *nodes, guint n, guint i)
{
  return !is_straight (nodes, n, i + n - 1, i + n + 1);
}

static guint
first_node (const SqPath *ring)
{
  const SqNode *nodes = sq_path_nodes (ring);
  guint n = sq_path_n_nodes (ring), first = 0;
  SqPoint corner = sq_path_box (ring).min;
  double nearest_mm = HUGE_VAL;

  for (guint i = 0; i < n; i++)
    {
      double mm = sq_distance (nodes[i].at, corner);
      if (mm < nearest_mm - SQ_MARKED_MM && is_corner (nodes, n, i))
        {
          nearest_mm = mm;
          first = i;
        }
    }
  return first;
}

/* The ring from its first node on, without those between others on one straight line. */
static void
take_nodes (Marked *marked, const SqPath *ring)
{
  const SqNode *nodes = sq_path_nodes (ring);
  guint n = sq_path_n_nodes (ring), first = first_node (ring);

  for (guint i = 0, next; i < n; i = next)
    {
      g_array_append_val (marked->nodes, nodes[(first + i) % n]);
      next = i + 1;
      while (next < n && is_straight (nodes, n, first + i, first + next + 1))
        next++;
    }
  g_array_append_val (marked->nodes, nodes[first]);
}

/* Halves the segment of node @i. */
static void
halve (Marked *marked, guint i)
{
  SqSegment whole = segment (marked, i), half = sq_segment_part (&whole, 0, 0.5);
  SqNode middle = { half.to, half.bulge, node (marked, i)->tag };

  node (marked, i)->bulge = half.bulge;
  g_array_insert_val (marked->nodes, i + 1, middle);
}

/* --- arcs ------------------------------------------------------------------------------------ */

/* The arc from @a through @b to @c. The angle at b over the chord is half of what the rest of the
 * circle takes (Euclid III.20). */
static SqSegment
arc_through (SqPoint a, SqPoint b, SqPoint c)
{
  double at_b = fabs (sq_angle_rad (sq_sub (a, b), sq_sub (c, b)));
  double bulge = tan ((M_PI - at_b) / 2);

  return (SqSegment){ a, c, sq_cross (sq_sub (c, a), sq_sub (b, a)) < 0 ? bulge : -bulge };
}

/* How far @part, an open path, and @other are apart at most. */
static double
apart_mm (const SqPath *part, const SqSegment *other)
{
  double apart = 0, t;

  for (guint i = 0; i < sq_path_n_segments (part); i++)
    for (guint k = 0; k <= LOOKS; k++)
      {
        SqSegment own = sq_path_segment (part, i);
        apart = fmax (
            apart, sq_segment_nearest_mm (other, sq_segment_point (&own, (double) k / LOOKS), &t));
      }
  for (guint k = 0; k <= 2 * LOOKS; k++)
    apart = fmax (apart,
                  sq_path_nearest (part, sq_segment_point (other, k / (2.0 * LOOKS))).distance_mm);
  return apart;
}

static SqPath *
part_path (const Marked *marked, guint from, guint to)
{
  SqPathBuilder builder;

  sq_path_builder_init (&builder);
  for (guint i = from; i <= to; i++)
    sq_path_builder_add (&builder, node (marked, i)->at, i < to ? node (marked, i)->bulge : 0, 0);
  return sq_path_builder_end (&builder, FALSE);
}

/* An arc of one hand's stroke, with what is marked of it. */
typedef struct
{
  SqMarkPoint from, middle, to;
  gboolean is_slight; /* straight */
} Stroke;

/* Whether the arcs from node @from to @to can be marked as one. */
static gboolean
make_stroke (const Marked *marked, guint from, guint to, Stroke *stroke)
{
  g_autoptr (SqPath) part = part_path (marked, from, to);
  SqPoint a = node (marked, from)->at, c = node (marked, to)->at;
  SqPoint b = sq_path_point_at (part, sq_path_length_mm (part) / 2, NULL);
  SqSegment chord = { a, c, 0 }, arc = arc_through (a, b, c);
  double turn_rad = fabs (sq_segment_sweep_rad (&arc));

  *stroke = (Stroke){ mark_point (a, ON_ARC_MM, marked->style),
                      mark_point (b, ON_ARC_MM, marked->style),
                      mark_point (c, ON_ARC_MM, marked->style),
                      apart_mm (part, &chord) <= SLIGHT_MM };
  if (stroke->is_slight)
    return TRUE;
  if (sq_path_length_mm (part) > MOST_LENGTH_MM || turn_rad > MOST_TURN_RAD)
    return FALSE;
  SqSegment read = arc_through (as_read (&stroke->from, marked->style),
                                as_read (&stroke->middle, marked->style),
                                as_read (&stroke->to, marked->style));
  stroke->middle.is_middle = TRUE;
  stroke->middle.radius_mm = fabs (sq_segment_radius_mm (&arc));
  stroke->middle.rise_mm = fabs (arc.bulge) * sq_distance (a, c) / 2;
  return apart_mm (part, &arc) <= CHAIN_MM && apart_mm (part, &read) <= READ_MM;
}

/* The longest stroke that begins at node @from: where it ends. */
static guint
next_stroke (Marked *marked, guint from, Stroke *stroke)
{
  guint to = from + 1;
  Stroke longer;

  while (!make_stroke (marked, from, to, stroke))
    halve (marked, from);
  while (to + 1 < marked->nodes->len && is_arc (marked, to)
         && make_stroke (marked, from, to + 1, &longer))
    {
      *stroke = longer;
      to++;
    }
  return to;
}

/* The points of @ring as it runs. */
static GArray *
mark_along (const SqPath *ring, const SqLengthStyle *style)
{
  GArray *points = g_array_new (FALSE, FALSE, sizeof (SqMarkPoint));
  g_autoptr (GArray) nodes = g_array_new (FALSE, FALSE, sizeof (SqNode));
  Marked marked = { nodes, style };
  gboolean after_arc = FALSE;

  take_nodes (&marked, ring);
  for (guint i = 0, next; i + 1 < nodes->len; i = next)
    {
      gboolean last_is_arc = i == 0 ? is_arc (&marked, nodes->len - 2) : after_arc;
      gboolean own_is_arc = is_arc (&marked, i);
      SqMarkPoint point = mark_point (node (&marked, i)->at,
                                      own_is_arc || last_is_arc ? ON_ARC_MM : READ_MM, style);
      Stroke stroke;
      g_array_append_val (points, point);
      next = i + 1;
      after_arc = own_is_arc;
      if (!own_is_arc)
        continue;
      next = next_stroke (&marked, i, &stroke);
      if (!stroke.is_slight)
        g_array_append_val (points, stroke.middle);
    }
  return points;
}

GArray *
sq_marked_ring (const SqPath *ring, const SqLengthStyle *style)
{
  g_autoptr (SqPath) reversed = sq_path_reversed (ring);

  return mark_along (sq_path_area_mm2 (ring) < 0 ? reversed : ring, style);
}

SqPath *
sq_marked_ring_read (const GArray *points, const SqLengthStyle *style)
{
  SqPathBuilder builder;

  sq_path_builder_init (&builder);
  for (guint i = 0; i < points->len; i++)
    {
      const SqMarkPoint *own = sq_mark_point (points, i);
      const SqMarkPoint *next = sq_mark_point (points, (i + 1) % points->len);
      const SqMarkPoint *after = sq_mark_point (points, (i + 2) % points->len);
      double bulge = 0;
      if (own->is_middle)
        continue;
      if (next->is_middle)
        bulge = arc_through (as_read (own, style), as_read (next, style), as_read (after, style))
                    .bulge;
      sq_path_builder_add (&builder, as_read (own, style), bulge, 0);
    }
  return sq_path_builder_end (&builder, TRUE);
}
