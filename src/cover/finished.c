/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "cover/finishing.h"

#include "base/units.h"
#include "cover/report.h"
#include "geometry/crossing.h"
#include "geometry/offset.h"
#include "geometry/rounding.h"

/* A ring on its way: corners as given, and its path with tag i for the edge from corner i. */
typedef struct
{
  const SqCorner *corners;
  guint n;
  SqPath *path;
  gboolean mirrored;
} Ring;

/* Edges keep their ids in a mirrored cushion, where they run the other way. */
static SqId
edge_id (const Ring *ring, guint i)
{
  return ring->corners[ring->mirrored ? (i + 1) % ring->n : i].id;
}

static gboolean
check_edges (const Ring *ring, const SqCushion *cushion, GArray *problems)
{
  const SqNode *nodes = sq_path_nodes (ring->path);
  guint n_nodes = sq_path_n_nodes (ring->path);

  for (guint i = 0; i < n_nodes; i++)
    {
      SqSegment s = sq_path_segment (ring->path, i);
      if (sq_segment_length_mm (&s) > SQ_COINCIDE_MM)
        continue;
      SqProblem *p = sq_report_edge (problems, SQ_PROBLEM_EDGE_TOO_SHORT, SQ_FAULT, cushion,
                                     edge_id (ring, nodes[i].tag));
      p->fixes[0] = (SqFix){ SQ_FIX_DROP_CORNER, ring->corners[nodes[i].tag].id, 0 };
      return FALSE;
    }
  return TRUE;
}

/* The seat's ring as drawn, if it bounds something. */
static gboolean
draw_ring (Ring *ring, const SqOutline *outline, guint index, const SqChoices *choices,
           GArray *problems)
{
  const SqCushion *cushion = choices->cushion;
  guint bad = 0;
  SqPoint where;

  ring->corners = sq_outline_ring (outline, index, &ring->n);
  ring->mirrored = choices->mirrored;
  ring->path = ring->n >= 2 ? sq_outline_path (outline, index, &bad) : NULL;
  if (ring->path == NULL)
    {
      if (ring->n >= 2)
        sq_report_edge (problems, SQ_PROBLEM_CURVE_UNFIT, SQ_FAULT, cushion, edge_id (ring, bad))
            ->fixes[0]
            = (SqFix){ SQ_FIX_STRAIGHTEN, edge_id (ring, bad), 0 };
      else
        sq_report_cushion (problems, SQ_PROBLEM_OUTLINE_MISSING, SQ_FAULT, cushion);
      return FALSE;
    }
  if (!check_edges (ring, cushion, problems))
    return FALSE;
  /* Edges bowed in past the others leave less than nothing. */
  if (sq_path_area_mm2 (ring->path) * (index == 0 ? 1 : -1) < 1e-3)
    {
      sq_report_cushion (problems, SQ_PROBLEM_OUTLINE_EMPTY, SQ_FAULT, cushion);
      return FALSE;
    }
  if (!sq_path_is_simple (ring->path, &where))
    {
      SqProblem *p = sq_report_cushion (problems, SQ_PROBLEM_OUTLINE_CROSSES, SQ_FAULT, cushion);
      p->facts[0] = where.x;
      p->facts[1] = where.y;
      return FALSE;
    }
  return TRUE;
}

static gboolean
has_every_edge (const SqPath *path, guint n_edges, guint *missing)
{
  g_autofree guint8 *seen = g_new0 (guint8, n_edges);
  const SqNode *nodes = sq_path_nodes (path);

  for (guint i = 0; i < sq_path_n_nodes (path); i++)
    seen[nodes[i].tag] = 1;
  for (guint i = 0; i < n_edges; i++)
    if (!seen[i])
      {
        *missing = i;
        return FALSE;
      }
  return TRUE;
}

/* A step from one clearance to another belongs to the edge that has the larger one, whichever way
 * round the ring runs. New path. */
static SqPath *
with_steps_given (const SqPath *path, const double *by_mm, const GArray *trims)
{
  guint n = sq_path_n_nodes (path);
  g_autofree SqNode *nodes = g_memdup2 (sq_path_nodes (path), n * sizeof (SqNode));

  for (guint i = 0; i < trims->len; i++)
    {
      const SqOffsetTrim *t = &g_array_index (trims, SqOffsetTrim, i);
      if (t->kind == SQ_TRIM_STEP && by_mm[t->tag_after] < by_mm[t->tag_before])
        for (guint k = t->first; k != t->last; k = (k + 1) % n)
          nodes[k].tag = t->tag_after;
    }
  return sq_path_new (nodes, n, TRUE);
}

/* Draws every edge in by what stays free there. */
static gboolean
take_clearance (Ring *ring, const SqChoices *choices, GArray *problems)
{
  g_autofree double *by = g_new (double, ring->n);
  gboolean any = FALSE;
  guint largest = 0;

  for (guint i = 0; i < ring->n; i++)
    {
      by[i] = -sq_choices_clearance_mm (choices, &ring->corners[i]);
      any |= by[i] != 0;
      largest = by[i] < by[largest] ? i : largest;
    }
  if (!any)
    return TRUE;

  /* An outline's corners stay sharp however acute, but for needles longer than any seat;
   * collinear edges of different clearance get the step they need. */
  SqJoinRule rule = sq_join_rule_mitre ();
  rule.mitre_limit = rule.square_at = 1e9;
  SqOffsetReport report = { 0 };
  SqPath *path = sq_path_offset (ring->path, by, ring->n, &rule, &report);
  gboolean good = path != NULL && report.end == SQ_OFFSET_CLEAN
                  && has_every_edge (path, ring->n, &largest) && sq_path_is_simple (path, NULL)
                  && sq_path_length_mm (path) <= 4 * SQ_SEAT_MOST_MM;
  SqPath *given = good ? with_steps_given (path, by, report.trims) : NULL;
  sq_offset_report_clear (&report);
  g_clear_pointer (&path, sq_path_unref);
  if (!good)
    {
      SqId id = edge_id (ring, largest);
      SqProblem *p = sq_report_edge (problems, SQ_PROBLEM_CLEARANCE_TOO_LARGE, SQ_FAULT,
                                     choices->cushion, id);
      p->facts[0] = -by[largest];
      p->fixes[0] = (SqFix){ SQ_FIX_CLEARANCE, id, 0 };
      return FALSE;
    }
  sq_path_unref (ring->path);
  ring->path = given;
  return TRUE;
}

/* First node of edge @i: where its corner is. */
static guint
corner_node (const SqPath *path, guint i)
{
  const SqNode *nodes = sq_path_nodes (path);
  guint n = sq_path_n_nodes (path);

  for (guint k = 0; k < n; k++)
    if (nodes[k].tag == i && nodes[(k + n - 1) % n].tag != i)
      return k;
  return 0;
}

static double
radius_of_finished (const SqChoices *choices, const SqCorner *before, const SqCorner *corner)
{
  /* In a well the radius measured is the well's own. */
  if (before->kind == SQ_EDGE_WELL && corner->kind == SQ_EDGE_WELL)
    return corner->radius_mm
           - fmin (sq_choices_clearance_mm (choices, before),
                   sq_choices_clearance_mm (choices, corner));
  return corner->radius_mm;
}

static SqPath *
round_corners (const Ring *ring, const SqChoices *choices, double *radius, GArray *problems)
{
  guint n_nodes = sq_path_n_nodes (ring->path);
  g_autofree double *by_node = g_new0 (double, n_nodes);
  g_autofree guint32 *tags = g_new0 (guint32, n_nodes);
  g_autoptr (GArray) troubles = g_array_new (FALSE, FALSE, sizeof (SqRoundingTrouble));
  gboolean any = FALSE;

  for (guint i = 0; i < ring->n; i++)
    {
      const SqCorner *corner = &ring->corners[i];
      radius[i] = 0;
      if (!(corner->radius_mm > 0))
        continue;
      radius[i] = radius_of_finished (choices, &ring->corners[(i + ring->n - 1) % ring->n], corner);
      if (!(radius[i] > 0))
        {
          radius[i] = 0;
          continue;
        }
      guint node = corner_node (ring->path, i);
      by_node[node] = radius[i];
      tags[node] = ring->n + i;
      any = TRUE;
    }
  if (!any)
    return sq_path_ref (ring->path);

  SqPath *path = sq_path_rounded (ring->path, by_node, tags, troubles);
  for (guint k = 0; k < troubles->len; k++)
    {
      const SqRoundingTrouble *t = &g_array_index (troubles, SqRoundingTrouble, k);
      guint i = tags[t->node] - ring->n;
      SqId id = ring->corners[i].id;
      radius[i] = 0;
      if (isinf (t->largest_mm)) /* no turn, so nothing to round */
        continue;
      SqProblem *p = sq_report_corner (problems, SQ_PROBLEM_RADIUS_TOO_LARGE, SQ_FAULT,
                                       choices->cushion, id);
      p->facts[0] = ring->corners[i].radius_mm;
      p->facts[1] = t->largest_mm;
      p->fixes[0] = t->largest_mm > 0.5
                        ? (SqFix){ SQ_FIX_RADIUS, id, floor (t->largest_mm * 10) / 10 }
                        : (SqFix){ SQ_FIX_SHARPEN, id, 0 };
      if (t->largest_mm > 0.5)
        p->fixes[1] = (SqFix){ SQ_FIX_SHARPEN, id, 0 };
    }
  return path;
}

/* The station at which edge @i starts in a ring whose roundings are tagged n + i: the middle of
 * its rounding, or its first node. An edge that its roundings use up is still there, 0 long. */
static double
edge_start (const SqPath *path, guint i, guint n)
{
  double from = 0, to = 0;

  if (sq_tagged_stretch (path, n + i, &from, &to))
    return (from + to) / 2;
  if (sq_tagged_stretch (path, i, &from, &to))
    return sq_path_station_mm (path, corner_node (path, i));
  sq_tagged_stretch (path, n + (i + 1) % n, &from, &to);
  return from;
}

/* @path starting at @station, with edges counted from @first and a node in every rounding's
 * middle. */
static SqPath *
started_at (const SqPath *path, guint n, guint first)
{
  g_autofree double *starts = g_new (double, n);

  for (guint i = 0; i < n; i++)
    starts[i] = edge_start (path, i, n);
  g_autoptr (SqPath) split = sq_path_split_at (path, starts, n);

  const SqNode *nodes = sq_path_nodes (split);
  guint n_nodes = sq_path_n_nodes (split), at = 0;
  double best = INFINITY, whole = sq_path_length_mm (split);
  for (guint k = 0; k < n_nodes; k++)
    {
      double d = fabs (sq_path_station_mm (split, k) - starts[first]);
      d = fmin (d, whole - d);
      if (d < best)
        {
          best = d;
          at = k;
        }
    }
  g_autofree SqNode *turned = g_new (SqNode, n_nodes);
  for (guint k = 0; k < n_nodes; k++)
    {
      turned[k] = nodes[(at + k) % n_nodes];
      guint edge = turned[k].tag % n;
      turned[k].tag = (turned[k].tag - edge) + (edge + n - first) % n;
    }
  return sq_path_new (turned, n_nodes, TRUE);
}

static SqSideOf
side_of (SqVector outward)
{
  /* A hair's breadth beyond 45° still counts as front or back, whatever way the seat is turned. */
  if (fabs (outward.y) >= fabs (outward.x) - 1e-9)
    return outward.y < 0 ? SQ_SIDE_FRONT : SQ_SIDE_BACK;
  return outward.x > 0 ? SQ_SIDE_RIGHT : SQ_SIDE_LEFT;
}

/* Ends of edge @i of a sharp ring, seat coordinates. */
static void
edge_ends (const Ring *ring, guint i, SqPoint *from, SqPoint *to)
{
  const SqNode *nodes = sq_path_nodes (ring->path);

  *from = nodes[corner_node (ring->path, i)].at;
  *to = nodes[corner_node (ring->path, (i + 1) % ring->n)].at;
}

static guint
find_front (const Ring *ring)
{
  double best = INFINITY;
  guint front = 0;

  for (guint i = 0; i < ring->n; i++)
    {
      if (ring->corners[i].front)
        return i;
      SqPoint from, to;
      edge_ends (ring, i, &from, &to);
      SqVector outward = sq_right (sq_unit (sq_sub (to, from)));
      if (outward.y < best - 1e-9
          || (outward.y < best + 1e-9 && ring->corners[i].id < ring->corners[front].id))
        {
          best = fmin (best, outward.y);
          front = i;
        }
    }
  return front;
}

static double
turn_at (const SqPath *sharp, guint i)
{
  guint n = sq_path_n_nodes (sharp), node = corner_node (sharp, i);
  SqSegment in = sq_path_segment (sharp, (node + n - 1) % n), out = sq_path_segment (sharp, node);

  return sq_angle_rad (sq_segment_direction (&in, 1), sq_segment_direction (&out, 0));
}

static void
measure_edges (const SqFinished *f, SqFinishedRing *out, const Ring *ring, const SqChoices *choices,
               guint first, const double *radius)
{
  guint n = ring->n;

  out->n_edges = n;
  out->edges = g_new0 (SqFinishedEdge, n);
  sq_measure_edge_stations (out);
  for (guint i = 0; i < n; i++)
    {
      SqFinishedEdge *e = &out->edges[i];
      guint from = (first + i) % n;
      const SqCorner *corner = &ring->corners[from];
      SqPoint a, b;
      edge_ends (ring, from, &a, &b);
      SqVector along = sq_sub (b, a);
      e->id = edge_id (ring, from);
      e->corner = corner->id;
      e->kind = corner->kind;
      e->seen = sq_choices_seen (corner);
      e->build = sq_choices_edge_build (choices, corner);
      e->side = side_of (sq_right (
          sq_unit (sq_point (sq_dot (along, f->front_dir), sq_cross (f->front_dir, along)))));
      e->turn_rad = turn_at (ring->path, from);
      e->radius_mm = radius[from];
    }
}

SqEdgeRank
sq_edge_rank (const SqFinished *f, guint edge, double merit_mm)
{
  const SqFinishedRing *ring = &f->rings[0];
  const SqFinishedEdge *e = &ring->edges[edge];
  SqPoint middle = sq_path_point_at (ring->path, (e->start_mm + e->end_mm) / 2, NULL);

  return (SqEdgeRank){ merit_mm, sq_finished_to_frame (f, middle), e->id };
}

gboolean
sq_edge_rank_beats (const SqEdgeRank *a, const SqEdgeRank *b)
{
  const double by[] = { a->merit_mm - b->merit_mm, a->middle.y - b->middle.y,
                        a->middle.x - b->middle.x };

  for (guint i = 0; i < G_N_ELEMENTS (by); i++)
    if (fabs (by[i]) > SQ_TIE_MM)
      return by[i] > 0;
  return a->id < b->id;
}

/* The longest of the back's edges, else the edge whose middle is farthest from the front. */
static guint
find_back (const SqFinished *f)
{
  const SqFinishedRing *ring = &f->rings[0];
  SqEdgeRank best = { 0 };
  gboolean any = FALSE;
  guint back = 0;

  for (guint i = 1; i < ring->n_edges; i++)
    any |= ring->edges[i].side == SQ_SIDE_BACK;
  for (guint i = 1; i < ring->n_edges; i++)
    {
      const SqFinishedEdge *e = &ring->edges[i];
      SqEdgeRank rank = sq_edge_rank (f, i, any ? e->end_mm - e->start_mm : 0);
      if ((any && e->side != SQ_SIDE_BACK) || (back > 0 && !sq_edge_rank_beats (&rank, &best)))
        continue;
      back = i;
      best = rank;
    }
  return back;
}

static void
finish_ring (SqFinished *f, Ring *ring, const SqChoices *choices, guint first, GArray *problems)
{
  SqFinishedRing *out = &f->rings[f->n_rings];
  g_autofree double *radius = g_new0 (double, ring->n);
  g_autoptr (SqPath) rounded = round_corners (ring, choices, radius, problems);

  out->path = started_at (rounded, ring->n, first);
  measure_edges (f, out, ring, choices, first, radius);
  f->n_rings++;
}

/* Whether the hole just finished lies inside the outline and clear of the other holes. */
static gboolean
check_hole (const SqFinished *f, const SqChoices *choices, SqId corner, GArray *problems)
{
  const SqPath *hole = f->rings[f->n_rings - 1].path;

  if (!sq_ring_contains (f->rings[0].path, hole, SQ_TIE_MM, NULL))
    {
      sq_report_corner (problems, SQ_PROBLEM_HOLE_OUTSIDE, SQ_FAULT, choices->cushion, corner)
          ->fixes[0]
          = (SqFix){ SQ_FIX_DROP_HOLE, corner, 0 };
      return FALSE;
    }
  for (guint i = 1; i + 1 < f->n_rings; i++)
    {
      const SqPath *other = f->rings[i].path;
      if (sq_paths_distance_mm (other, hole) > SQ_TIE_MM
          && sq_path_winding (other, sq_path_nodes (hole)[0].at) == 0
          && sq_path_winding (hole, sq_path_nodes (other)[0].at) == 0)
        continue;
      sq_report_corner (problems, SQ_PROBLEM_HOLES_MEET, SQ_FAULT, choices->cushion, corner)
          ->fixes[0]
          = (SqFix){ SQ_FIX_DROP_HOLE, corner, 0 };
      return FALSE;
    }
  return TRUE;
}

static void
drop_last_ring (SqFinished *f)
{
  SqFinishedRing *ring = &f->rings[--f->n_rings];

  g_clear_pointer (&ring->path, sq_path_unref);
  g_clear_pointer (&ring->edges, g_free);
}

static void
finish_holes (SqFinished *f, const SqOutline *outline, const SqChoices *choices, GArray *problems)
{
  for (guint i = 1; i < sq_outline_n_rings (outline); i++)
    {
      Ring hole = { 0 };
      if (draw_ring (&hole, outline, i, choices, problems)
          && take_clearance (&hole, choices, problems))
        {
          finish_ring (f, &hole, choices, 0, problems);
          if (!check_hole (f, choices, hole.corners[0].id, problems))
            drop_last_ring (f);
        }
      g_clear_pointer (&hole.path, sq_path_unref);
    }
}

SqFinished *
sq_finished_new (const SqChoices *choices, GArray *problems)
{
  const SqCushion *cushion = choices->cushion;

  if (choices->outline == NULL || sq_outline_n_rings (choices->outline) == 0)
    {
      sq_report_cushion (problems, SQ_PROBLEM_OUTLINE_MISSING, SQ_FAULT, cushion);
      return NULL;
    }
  /* A corner dragged across the seat may have turned it inside out. */
  g_autoptr (SqOutline) outline = sq_outline_turned_right (choices->outline);
  Ring outer = { 0 };
  if (!draw_ring (&outer, outline, 0, choices, problems)
      || !take_clearance (&outer, choices, problems))
    {
      g_clear_pointer (&outer.path, sq_path_unref);
      return NULL;
    }
  SqFinished *f = g_new0 (SqFinished, 1);
  f->ref_count = 1;
  f->rings = g_new0 (SqFinishedRing, sq_outline_n_rings (outline));

  guint front = find_front (&outer);
  SqPoint to;
  edge_ends (&outer, front, &f->front_at, &to);
  f->front_dir = sq_unit (sq_sub (to, f->front_at));
  finish_ring (f, &outer, choices, front, problems);
  sq_path_unref (outer.path);
  f->back = find_back (f);

  g_autoptr (SqPath) framed = sq_path_moved (
      f->rings[0].path, -atan2 (f->front_dir.y, f->front_dir.x), sq_point (0, 0));
  SqPoint origin = { sq_dot (f->front_at, f->front_dir), sq_cross (f->front_dir, f->front_at) };
  SqBox box = sq_path_box (framed);
  f->extent = (SqBox){ sq_sub (box.min, origin), sq_sub (box.max, origin) };

  finish_holes (f, outline, choices, problems);
  return f;
}

SqPoint
sq_finished_to_frame (const SqFinished *f, SqPoint p)
{
  SqVector d = sq_sub (p, f->front_at);
  return sq_point (sq_dot (d, f->front_dir), sq_cross (f->front_dir, d));
}

SqPoint
sq_finished_from_frame (const SqFinished *f, SqPoint p)
{
  return sq_moved (sq_moved (f->front_at, f->front_dir, p.x), sq_left (f->front_dir), p.y);
}

SqFinished *
sq_finished_ref (const SqFinished *finished)
{
  SqFinished *f = (SqFinished *) finished;
  g_atomic_int_inc (&f->ref_count);
  return f;
}

void
sq_finished_unref (SqFinished *f)
{
  if (f == NULL || !g_atomic_int_dec_and_test (&f->ref_count))
    return;
  while (f->n_rings > 0)
    drop_last_ring (f);
  g_free (f->rings);
  g_free (f);
}
