/* SPDX-License-Identifier: GPL-3.0-or-later */
/* Folded-corner: top and sides in one plate, corners notched and sewn; a separate underside. */
#include "base/units.h"
#include "cover/finishing.h"
#include "cover/notches.h"
#include "cover/report.h"
#include "cover/ways.h"
#include "cover/zip.h"
#include "geometry/offset.h"

enum
{
  STEP_ZIP = 1,
  STEP_CORNERS,
  STEP_UNDERSIDE,
};

/* A corner that turns less has nothing to fold: the skirts beside it are one (rad). */
#define SAME_SKIRT_RAD 1e-6

/* One edge of the face and what hangs on it. */
typedef struct
{
  SqPoint from, to;
  SqVector along, outward;
  double length_mm;
  double turn_rad;  /* phi at the corner that starts it */
  double corner_mm; /* allowance of the two corner runs there */
  gboolean dart;    /* at that corner: the allowance is what there is */
} Edge;

typedef struct
{
  SqMaking *making;
  SqFinishedRing *ring; /* the outline's, in one edge where corners don't turn */
  guint n;
  Edge *edges;
  double depth_mm; /* D: skirt from face to underside seam */
  double wrap_mm;  /* w, only where it turns under */
} Plate;

/* Everything a skirt can't be made for; TRUE if there is nothing. */
static gboolean
can_be_folded (SqMaking *making)
{
  const SqFinished *f = making->cover->finished;
  const SqOutline *outline = making->choices.outline;
  const SqCushion *cushion = making->choices.cushion;
  GArray *problems = making->cover->problems;
  const SqFix boxed = { SQ_FIX_BUILD, 0, SQ_BUILD_BOXED };
  guint before = problems->len;

  for (guint i = 0; i < f->rings[0].n_edges; i++)
    {
      const SqFinishedEdge *e = &f->rings[0].edges[i];
      SqProblem *p;
      if (!e->is_straight)
        {
          p = sq_report_edge (problems, SQ_PROBLEM_CURVE_IN_FOLDED, SQ_FAULT, cushion, e->id);
          p->fixes[0] = boxed;
          p->fixes[1] = (SqFix){ SQ_FIX_STRAIGHTEN, e->id, 0 };
        }
      if (e->radius_mm > 0)
        {
          p = sq_report_corner (problems, SQ_PROBLEM_CURVE_IN_FOLDED, SQ_FAULT, cushion, e->corner);
          p->fixes[0] = boxed;
          p->fixes[1] = (SqFix){ SQ_FIX_SHARPEN, e->corner, 0 };
        }
      if (e->turn_rad < -SAME_SKIRT_RAD)
        {
          p = sq_report_corner (problems, SQ_PROBLEM_REFLEX_IN_FOLDED, SQ_FAULT, cushion,
                                e->corner);
          p->fixes[0] = boxed;
        }
    }
  for (guint r = 1; r < sq_outline_n_rings (outline); r++)
    {
      guint n;
      SqId id = sq_outline_ring (outline, r, &n)[0].id;
      SqProblem *p = sq_report_corner (problems, SQ_PROBLEM_HOLE_IN_FOLDED, SQ_FAULT, cushion, id);
      p->fixes[0] = boxed;
      p->fixes[1] = (SqFix){ SQ_FIX_DROP_HOLE, id, 0 };
    }
  return problems->len == before;
}

/* Edge @from of @ring and those that go straight on from it, as one; the longest of them gives it its
 * name. *@next is the edge after it. */
static SqFinishedEdge
straight_stretch (const SqFinishedRing *ring, guint from, guint *next)
{
  SqFinishedEdge whole = ring->edges[from];
  double longest = 0;

  whole.end_mm = whole.start_mm;
  *next = from;
  do
    {
      const SqFinishedEdge *e = &ring->edges[*next % ring->n_edges];
      double length = e->end_mm - e->start_mm;
      if (length > longest + SQ_TIE_MM)
        {
          whole.id = e->id;
          longest = length;
        }
      whole.end_mm += length;
      (*next)++;
    }
  while (fabs (ring->edges[*next % ring->n_edges].turn_rad) <= SAME_SKIRT_RAD);
  return whole;
}

/* @ring, sharp and of straight edges, without the corners that don't turn; stations stay those of
 * @ring. New. */
static SqFinishedRing *
without_straight_corners (const SqFinishedRing *ring)
{
  SqFinishedRing *result = g_new0 (SqFinishedRing, 1);
  g_autofree SqNode *nodes = g_new (SqNode, ring->n_edges);
  guint first = 0, n = 0;

  while (fabs (ring->edges[first].turn_rad) <= SAME_SKIRT_RAD)
    first++;
  result->edges = g_new0 (SqFinishedEdge, ring->n_edges);
  for (guint at = first, next; at < first + ring->n_edges; at = next)
    {
      result->edges[n] = straight_stretch (ring, at, &next);
      nodes[n] = (SqNode){ sq_path_nodes (ring->path)[at].at, 0, n };
      n++;
    }
  result->n_edges = n;
  result->path = sq_path_new (nodes, n, TRUE);
  return result;
}

static void
finished_ring_free (SqFinishedRing *ring)
{
  sq_path_unref (ring->path);
  g_free (ring->edges);
  g_free (ring);
}

/* cot (theta / 2) of the corner with turn @phi: what a depth of 1 takes off each neighbour. */
static double
taken (double phi)
{
  return tan (phi / 2);
}

static void
find_edges (Plate *plate)
{
  const SqPath *path = plate->ring->path;

  for (guint i = 0; i < plate->n; i++)
    {
      SqSegment s = sq_path_segment (path, i);
      Edge *e = &plate->edges[i];
      e->from = s.from;
      e->to = s.to;
      e->length_mm = sq_segment_length_mm (&s);
      e->along = sq_segment_direction (&s, 0);
      e->outward = sq_right (e->along);
      e->turn_rad = plate->ring->edges[i].turn_rad;
    }
}

/* A wrap that turns under takes w cot (theta / 2) off both ends of every skirt. */
static gboolean
check_wrap (Plate *plate)
{
  const SqChoices *c = &plate->making->choices;
  GArray *problems = plate->making->cover->problems;
  const SqFinished *f = plate->making->cover->finished;
  double slack = 0;
  SqEdgeRank worst = { 0 };

  for (guint i = 0; i < plate->n; i++)
    {
      double both = taken (plate->edges[i].turn_rad)
                    + taken (plate->edges[(i + 1) % plate->n].turn_rad);
      SqPoint middle = sq_between (plate->edges[i].from, plate->edges[i].to, 0.5);
      SqEdgeRank rank = { -plate->edges[i].length_mm / both, sq_finished_to_frame (f, middle),
                          plate->ring->edges[i].id };
      slack = fmax (slack, c->wrap_depth_mm * both);
      if (i == 0 || sq_edge_rank_beats (&rank, &worst))
        worst = rank;
    }
  double least = -worst.merit_mm;
  if (c->wrap_style == SQ_WRAP_PLAIN)
    {
      if (c->wrap_depth_mm <= c->house->wrap_plain_warn_mm + SQ_COINCIDE_MM)
        return TRUE;
      SqProblem *p = sq_report_key (problems, SQ_PROBLEM_WRAP_SLACK, SQ_WARNING, c->cushion,
                                    "underside_wrap.depth");
      p->facts[0] = c->wrap_depth_mm;
      p->facts[1] = slack;
      p->fixes[0] = (SqFix){ SQ_FIX_WRAP_STYLE, 0, SQ_WRAP_MITRED };
      p->fixes[1] = (SqFix){ SQ_FIX_WRAP_DEPTH, 0, c->house->wrap_depth_mm };
      return TRUE;
    }
  if (c->wrap_depth_mm < least - SQ_TIE_MM)
    return TRUE;
  SqProblem *p = sq_report_edge (problems, SQ_PROBLEM_WRAP_TOO_DEEP, SQ_FAULT, c->cushion,
                                 worst.id);
  p->facts[0] = c->wrap_depth_mm;
  p->facts[1] = least;
  p->fixes[0] = (SqFix){ SQ_FIX_WRAP_DEPTH, 0, floor (fmin (least / 2, 12.7) * 10) / 10 };
  return FALSE;
}

/* Sizes of the notch at the corner that starts edge @i, and whether it is a dart. The formulas
 * follow from the two cut lines, a_c outside each skirt's end, and the gap's bisector between. */
static SqCornerNotch
find_notch (Plate *plate, guint i)
{
  const SqChoices *c = &plate->making->choices;
  Edge *e = &plate->edges[i];
  double phi = e->turn_rad, s = sin (phi / 2), depth = plate->depth_mm + c->perimeter_mm;
  double height = plate->depth_mm - plate->wrap_mm, a = c->corner_mm;
  SqCornerNotch notch = { .corner = plate->ring->edges[i].corner };
  /* Where the cut line outside the skirt's end bends, the skirt turning under; and where both cut
   * lines meet on the bisector. */
  double apex = a / tan (phi / 2);
  gboolean under = plate->wrap_mm > 0 && apex > height + a * tan (phi / 4);
  double mouth = 2 * (depth * s - a * cos (phi / 2));
  /* The lower cut lines meet on the bisector, too: this far from the two lines of a skirt's end. */
  double closing = depth * tan (phi / 2);

  if (plate->wrap_mm > 0)
    {
      double low = s * (depth + plate->wrap_mm + c->perimeter_mm);
      mouth = fmax (mouth, 2 * (low - a));
      closing = fmax (closing, low);
    }
  if (under)
    apex = height / 2 + a / (2 * s);
  notch.leg_mm = depth - apex;
  notch.mouth_mm = mouth;
  notch.apex_mm = apex / cos (phi / 2);
  notch.dart = notch.leg_mm < fmax (c->house->notch_leg_least_mm, SQ_COINCIDE_MM);
  /* Between the skirts of a dart there is cloth up to where the lower cut lines meet, and no more:
   * that is the allowance there. */
  e->corner_mm = notch.dart ? closing : a;
  e->dart = notch.dart;
  if (notch.dart)
    {
      SqProblem *p = sq_report_corner (plate->making->cover->problems, SQ_PROBLEM_NOTCH_IS_DART,
                                       SQ_NOTE, c->cushion, notch.corner);
      p->facts[0] = a;
      p->facts[1] = fmax (0, notch.leg_mm);
      notch.leg_mm = notch.mouth_mm = 0;
      notch.apex_mm = depth / cos (phi / 2);
    }
  return notch;
}

/* ---- the plate ----------------------------------------------------------------------------- */

/* A point of edge @e's skirt: @along the edge from its start, @down from the fold. */
static SqPoint
on_skirt (const Edge *e, double along, double down)
{
  return sq_moved (sq_moved (e->from, e->along, along), e->outward, down);
}

static SqPoint3
mix (SqVector along, double z)
{
  return (SqPoint3){ along.x, along.y, z };
}

static SqPath *
quad (SqPoint a, SqPoint b, SqPoint c, SqPoint d)
{
  SqPoint points[] = { a, b, c, d };
  return sq_path_new_polygon (points, 4);
}

/* The skirt hangs down from the face; below H a mitred wrap turns under. */
static void
add_skirt_patches (SqDraft *draft, const Plate *plate, const Edge *e, double in_start,
                   double in_end)
{
  double h = plate->making->choices.thickness_mm, hang = plate->depth_mm - plate->wrap_mm;
  double l = e->length_mm;
  SqVector u = e->along, o = e->outward;
  SqPoint3 ex = mix (sq_scale (u, u.x), -o.x), ey = mix (sq_scale (u, u.y), -o.y);

  sq_draft_patch (draft, SQ_PATCH_PLANE,
                  quad (e->from, on_skirt (e, 0, hang), on_skirt (e, l, hang), e->to), e->from,
                  (SqPoint3){ e->from.x, e->from.y, h }, ex, ey, 0);
  if (plate->wrap_mm <= 0)
    return;
  SqPoint start = on_skirt (e, 0, hang);
  ex = mix (sq_add (sq_scale (u, u.x), sq_scale (o, -o.x)), 0);
  ey = mix (sq_add (sq_scale (u, u.y), sq_scale (o, -o.y)), 0);
  sq_draft_patch (draft, SQ_PATCH_PLANE,
                  quad (start, on_skirt (e, in_start, plate->depth_mm),
                        on_skirt (e, l - in_end, plate->depth_mm), on_skirt (e, l, hang)),
                  start, (SqPoint3){ e->from.x, e->from.y, h - hang }, ex, ey, 0);
}

static void
list_darts (const Plate *plate, SqPiece *face)
{
  double depth = plate->depth_mm + plate->making->choices.perimeter_mm;

  for (guint i = 0; i < plate->n; i++)
    {
      const Edge *e = &plate->edges[i], *before = &plate->edges[(i + plate->n - 1) % plate->n];
      if (!e->dart)
        continue;
      SqVector middle = sq_unit (sq_add (before->outward, e->outward));
      SqPoint tip = sq_moved (e->from, middle, depth / cos (e->turn_rad / 2));
      sq_piece_add_dart (face, 3 * ((i + plate->n - 1) % plate->n) + 2, tip);
      sq_piece_add_dart (face, 3 * i, tip);
    }
}

/* The first run of each edge's three is 3 i: corner, perimeter, corner. */
static guint
make_plate (Plate *plate)
{
  SqMaking *making = plate->making;
  const SqChoices *c = &making->choices;
  double hang = plate->depth_mm - plate->wrap_mm;
  SqDraft draft;

  sq_draft_begin (&draft, SQ_ROLE_FACE, &c->face);
  sq_draft_patch (&draft, SQ_PATCH_PLANE, sq_path_ref (plate->ring->path), sq_point (0, 0),
                  (SqPoint3){ 0, 0, c->thickness_mm }, (SqPoint3){ 1, 0, 0 }, (SqPoint3){ 0, 1, 0 },
                  0);
  for (guint i = 0; i < plate->n; i++)
    {
      SqCornerNotch notch = find_notch (plate, i);
      g_array_append_val (draft.piece->corner_notches, notch);
    }
  for (guint i = 0; i < plate->n; i++)
    {
      const Edge *e = &plate->edges[i], *next = &plate->edges[(i + 1) % plate->n];
      double in_start = plate->wrap_mm * taken (e->turn_rad);
      double in_end = plate->wrap_mm * taken (next->turn_rad);
      SqId id = plate->ring->edges[i].id;
      SqSkirt skirt = { id, plate->depth_mm };

      sq_draft_run (&draft, SQ_RUN_CORNER, id, e->corner_mm);
      sq_draft_node (&draft, e->from, 0);
      if (plate->wrap_mm > 0)
        sq_draft_node (&draft, on_skirt (e, 0, hang), 0);
      sq_draft_run (&draft, SQ_RUN_PERIMETER, id, c->perimeter_mm);
      sq_draft_node (&draft, on_skirt (e, in_start, plate->depth_mm), 0);
      sq_draft_run (&draft, SQ_RUN_CORNER, id, next->corner_mm);
      sq_draft_node (&draft, on_skirt (e, e->length_mm - in_end, plate->depth_mm), 0);
      if (plate->wrap_mm > 0)
        sq_draft_node (&draft, on_skirt (e, e->length_mm, hang), 0);
      g_array_append_val (draft.piece->skirts, skirt);
      add_skirt_patches (&draft, plate, e, in_start, in_end);
    }
  sq_lay_face_on_cloth (making, draft.piece, &c->face, FALSE, TRUE);
  guint face = sq_making_add_piece (making, &draft);
  list_darts (plate, sq_making_piece (making, face));
  return face;
}

/* ---- the underside ------------------------------------------------------------------------- */

/* The underside's sew line in seat coordinates: F, or F drawn in by a mitred wrap. */
static SqPath *
underside_outline (const Plate *plate)
{
  if (plate->wrap_mm <= 0)
    return sq_path_ref (plate->ring->path);
  SqJoinRule rule = sq_join_rule_mitre ();
  return sq_path_offset_evenly (plate->ring->path, -plate->wrap_mm, &rule, NULL);
}

/* Run k of the underside is that of edge n − 1 − k: its mirror image runs the other way. */
static guint
make_underside (Plate *plate, const SqPath *outline)
{
  SqMaking *making = plate->making;
  const SqChoices *c = &making->choices;
  g_autoptr (SqPath) mirrored = sq_path_mirrored (outline);
  double z = c->thickness_mm - (plate->wrap_mm > 0 ? c->thickness_mm : plate->depth_mm);
  SqDraft draft;

  sq_draft_begin (&draft, SQ_ROLE_UNDERSIDE, &c->underside);
  for (guint k = 0; k < plate->n; k++)
    {
      sq_draft_run (&draft, SQ_RUN_PERIMETER, plate->ring->edges[plate->n - 1 - k].id,
                    c->perimeter_mm);
      sq_draft_node (&draft, sq_path_nodes (mirrored)[k].at, 0);
    }
  sq_draft_patch (&draft, SQ_PATCH_PLANE, sq_path_ref (mirrored), sq_point (0, 0),
                  (SqPoint3){ 0, 0, z }, (SqPoint3){ -1, 0, 0 }, (SqPoint3){ 0, 1, 0 }, 0);
  sq_lay_face_on_cloth (making, draft.piece, &c->underside, TRUE, FALSE);
  guint underside = sq_making_add_piece (making, &draft);

  SqPoint from, to;
  if (c->zip_place == SQ_ZIP_UNDERSIDE
      && sq_zip_across (making, (const SqPath *const[]){ outline }, 1, &from, &to))
    {
      SqNode line[] = { { { -from.x, from.y }, 0, 0 }, { { -to.x, to.y }, 0, 0 } };
      sq_piece_add_mark (sq_making_piece (making, underside), SQ_MARK_ZIP, 1, line[0].at, 0, 0,
                         sq_path_new (line, 2, FALSE), -1, 0);
    }
  return underside;
}

static void
sew (Plate *plate, guint face, guint underside)
{
  SqMaking *making = plate->making;
  guint n = plate->n;
  const SqFinishedRing *ring = &making->cover->finished->rings[0];
  g_autoptr (GArray) places = sq_notch_places (making->choices.house, ring);

  for (guint i = 0; i < n; i++)
    sq_making_add_seam (making, SQ_SEAM_CORNER, (SqSide){ face, 3 * i + 2, 1 },
                        (SqSide){ face, 3 * ((i + 1) % n), 1 }, STEP_CORNERS);
  for (guint i = 0; i < n; i++)
    {
      const SqFinishedEdge *e = &plate->ring->edges[i];
      guint seam = sq_making_add_seam (making, SQ_SEAM_PERIMETER, (SqSide){ face, 3 * i + 1, 1 },
                                       (SqSide){ underside, n - 1 - i, 1 }, STEP_UNDERSIDE);
      double taken_off = plate->wrap_mm * taken (plate->edges[i].turn_rad);
      double length = sq_cover_seam (making->cover, seam)->length_a_mm;
      for (guint k = 0; k < places->len; k++)
        {
          const SqNotchPlace *place = &g_array_index (places, SqNotchPlace, k);
          double station = place->station_mm;
          if (station
              < plate->ring->edges[0].start_mm) /* the last skirt may go on past the start */
            station += sq_path_length_mm (ring->path);
          double along = station - e->start_mm - taken_off;
          if (station > e->start_mm && station < e->end_mm && along > 1 && along < length - 1)
            sq_notch_seam (making, seam, along, place->ticks);
        }
    }
}

static void
make_cover (Plate *plate)
{
  const SqChoices *c = &plate->making->choices;
  g_autoptr (SqPath) outline = underside_outline (plate);
  guint face = make_plate (plate), underside = make_underside (plate, outline);

  sew (plate, face, underside);
  if (c->face.one_way)
    sq_report_piece (plate->making->cover->problems, SQ_PROBLEM_SKIRTS_FOLLOW, SQ_NOTE, c->cushion,
                     face);
}

void
sq_way_folded_corner (SqMaking *making)
{
  const SqFinished *f = making->cover->finished;
  const SqChoices *c = &making->choices;

  if (!can_be_folded (making))
    return;
  Plate plate = { .making = making, .ring = without_straight_corners (&f->rings[0]) };
  plate.n = plate.ring->n_edges;
  plate.edges = g_new0 (Edge, plate.n);
  plate.depth_mm = c->thickness_mm + c->wrap_depth_mm;
  plate.wrap_mm = c->wrap_style == SQ_WRAP_MITRED ? c->wrap_depth_mm : 0;
  find_edges (&plate);
  if (check_wrap (&plate))
    make_cover (&plate);
  finished_ring_free (plate.ring);
  g_free (plate.edges);
}
