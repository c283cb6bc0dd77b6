/* SPDX-License-Identifier: GPL-3.0-or-later */
/* Knife-edge: two faces, one the other's mirror image, and one seam all round. */
#include "base/units.h"
#include "cover/finishing.h"
#include "cover/notches.h"
#include "cover/report.h"
#include "cover/stretches.h"
#include "cover/ways.h"
#include "cover/welt.h"
#include "cover/zip.h"
#include "geometry/crossing.h"
#include "geometry/offset.h"

enum
{
  STEP_ZIP = 1,
  STEP_PERIMETER,
};

/* How far a face stands out over the outline on every side, so that it reaches halfway down the
 * core's edge: half a quarter round less the half that it replaces, or straight down. */
static double
growth_mm (const SqChoices *c)
{
  switch (c->filling)
    {
    case SQ_FILLING_FOAM_HALF_ROUND:
      return (G_PI / 4 - 0.5) * c->thickness_mm;
    case SQ_FILLING_FOAM_SQUARE:
      return c->thickness_mm / 2;
    case SQ_FILLING_SOFT:
      break;
    }
  return 0;
}

static gboolean
has_no_holes (SqMaking *making)
{
  const SqFinished *f = making->cover->finished;
  const SqCushion *cushion = making->choices.cushion;

  for (guint r = 1; r < f->n_rings; r++)
    {
      SqId id = f->rings[r].edges[0].corner;
      SqProblem *p = sq_report_corner (making->cover->problems, SQ_PROBLEM_HOLE_NOT_BUILT, SQ_FAULT,
                                       cushion, id);
      p->fixes[0] = (SqFix){ SQ_FIX_BUILD, 0, SQ_BUILD_BOXED };
      p->fixes[1] = (SqFix){ SQ_FIX_DROP_HOLE, id, 0 };
    }
  return f->n_rings == 1;
}

/* The corner of the outline nearest @at can't be gone round. */
static void
report_corner_at (SqMaking *making, SqPoint at)
{
  const SqFinishedRing *ring = &making->cover->finished->rings[0];
  double nearest = INFINITY;
  SqId id = 0;

  for (guint i = 0; i < ring->n_edges; i++)
    {
      double d = sq_distance (sq_path_point_at (ring->path, ring->edges[i].start_mm, NULL), at);
      if (d < nearest)
        {
          nearest = d;
          id = ring->edges[i].corner;
        }
    }
  sq_report_corner (making->cover->problems, SQ_PROBLEM_CORNER_NOT_BUILT, SQ_FAULT,
                    making->choices.cushion, id)
      ->fixes[0]
      = (SqFix){ SQ_FIX_BUILD, 0, SQ_BUILD_BOXED };
}

/* Parallels that don't meet are prolonged straight; the prolongation belongs to the edge that it is
 * of, whichever way round the ring runs. New path. */
static SqPath *
with_ends_given (const SqPath *path, const GArray *trims)
{
  guint n = sq_path_n_nodes (path);
  g_autofree SqNode *nodes = g_memdup2 (sq_path_nodes (path), n * sizeof (SqNode));

  for (guint i = 0; i < trims->len; i++)
    {
      const SqOffsetTrim *t = &g_array_index (trims, SqOffsetTrim, i);
      if ((t->last + n - t->first) % n > 1)
        nodes[(t->last + n - 1) % n].tag = t->tag_after;
    }
  return sq_path_new (nodes, n, TRUE);
}

/* The outline grown by what the core's edge takes; new path, or NULL. */
static SqPath *
grown (SqMaking *making)
{
  const SqPath *outline = making->cover->finished->rings[0].path;
  double by = growth_mm (&making->choices);
  SqJoinRule rule = sq_join_rule_mitre ();
  SqOffsetReport report = { 0 };
  SqPoint where;

  if (by == 0)
    return sq_path_ref (outline);
  /* Corners stay sharp, however acute, as those of the outline do. */
  rule.mitre_limit = rule.square_at = 1e9;
  SqPath *path = sq_path_offset_evenly (outline, by, &rule, &report);
  gboolean good = path != NULL && report.end == SQ_OFFSET_CLEAN;
  where = report.where;
  good = good && sq_path_is_simple (path, &where);
  SqPath *given = good ? with_ends_given (path, report.trims) : NULL;
  if (!good)
    report_corner_at (making, where);
  sq_offset_report_clear (&report);
  g_clear_pointer (&path, sq_path_unref);
  return given;
}

/* ---- drawing in ---------------------------------------------------------------------------- */

/* What a corner's two edges allow. */
typedef struct
{
  double by_mm;      /* it is drawn in from each of its edges; 0: it stays */
  double largest_mm; /* a draw-in must stay below this; infinite: it stays anyway */
} DrawIn;

/* Along edge @i before it runs straight. */
static double
taper_mm (const SqChoices *c, const SqFinishedEdge *e)
{
  double length = e->own_end_mm - e->own_start_mm;
  return fmin (length * fmin (c->house->draw_in_share, 0.5), c->house->draw_in_most_mm);
}

/* Sharp convex corners between straight edges are drawn in. On a curve the taper is not known, and a
 * corner that turns inward has cloth enough. */
static DrawIn
draw_in_at (const SqChoices *c, const SqFinishedRing *ring, guint i)
{
  const SqFinishedEdge *e = &ring->edges[i];
  const SqFinishedEdge *before = &ring->edges[(i + ring->n_edges - 1) % ring->n_edges];
  DrawIn d = { 0, INFINITY };

  if (e->radius_mm > 0 || !e->is_straight || !before->is_straight
      || e->turn_rad < c->house->draw_in_least_turn_deg * SQ_RAD_PER_DEG - 1e-9)
    return d;
  double share = fmin (1, e->turn_rad / (90 * SQ_RAD_PER_DEG));
  /* Measured along an edge the new corner is cot (θ/2) = tan (turn/2) times the draw-in away. */
  double reach = tan (e->turn_rad / 2) * share;
  d.largest_mm = fmin (taper_mm (c, e), taper_mm (c, before)) / reach;
  d.by_mm = c->draw_in_mm < d.largest_mm - SQ_COINCIDE_MM ? c->draw_in_mm * share : 0;
  return d;
}

static void
report_meeting (SqMaking *making, SqId corner, double largest)
{
  SqProblem *p = sq_report_corner (making->cover->problems, SQ_PROBLEM_DRAW_IN_MEETS, SQ_FAULT,
                                   making->choices.cushion, corner);
  p->facts[0] = making->choices.draw_in_mm;
  p->facts[1] = largest;
  p->fixes[0] = (SqFix){ SQ_FIX_DRAW_IN, 0, fmax (0, floor (largest * 10 - 1e-6) / 10) };
}

/* @ring with its corners drawn in; new path. */
static SqPath *
drawn_in (const SqChoices *c, const SqFinishedRing *ring, const DrawIn *draw)
{
  const SqNode *nodes = sq_path_nodes (ring->path);
  guint n = ring->n_edges, n_nodes = sq_path_n_nodes (ring->path);
  SqPathBuilder path;

  sq_path_builder_init (&path);
  for (guint k = 0; k < n_nodes; k++)
    {
      guint i = nodes[k].tag, next = (i + 1) % n;
      SqPoint from = nodes[k].at, to = nodes[(k + 1) % n_nodes].at;
      if (i >= n || (draw[i].by_mm == 0 && draw[next].by_mm == 0))
        {
          sq_path_builder_add (&path, from, nodes[k].bulge, i);
          continue;
        }
      SqVector along = sq_unit (sq_sub (to, from));
      double taper = taper_mm (c, &ring->edges[i]), by = draw[i].by_mm;
      if (by > 0)
        {
          SqPoint corner = sq_moved (from, along, by * tan (ring->edges[i].turn_rad / 2));
          sq_path_builder_add (&path, sq_moved (corner, sq_left (along), by), 0, i);
          sq_path_builder_add (&path, sq_moved (from, along, taper), 0, i);
        }
      else
        sq_path_builder_add (&path, from, 0, i);
      /* With tapers of half an edge the two of them meet. */
      if (draw[next].by_mm > 0 && sq_distance (from, to) - 2 * taper > SQ_COINCIDE_MM)
        sq_path_builder_add (&path, sq_moved (to, along, -taper), 0, i);
    }
  return sq_path_builder_end (&path, TRUE);
}

/* Draws the corners of @ring in, and says where that can't be done. */
static void
draw_corners_in (SqMaking *making, SqFinishedRing *ring)
{
  const SqChoices *c = &making->choices;
  g_autofree DrawIn *draw = g_new (DrawIn, ring->n_edges);
  guint tightest = 0, sharpest = 0;

  if (c->draw_in_mm == 0)
    return;
  if (c->draw_in_mm < 0)
    {
      SqProblem *p = sq_report_key (making->cover->problems, SQ_PROBLEM_ALLOWANCE, SQ_FAULT,
                                    c->cushion, "knife_edge.draw_in");
      p->facts[0] = c->draw_in_mm;
      p->fixes[0] = (SqFix){ SQ_FIX_DRAW_IN, 0, c->house->draw_in_mm };
      return;
    }
  for (guint i = 0; i < ring->n_edges; i++)
    {
      draw[i] = draw_in_at (c, ring, i);
      tightest = draw[i].largest_mm < draw[tightest].largest_mm - SQ_TIE_MM ? i : tightest;
      sharpest = ring->edges[i].turn_rad > ring->edges[sharpest].turn_rad + 1e-9 ? i : sharpest;
    }
  if (c->draw_in_mm >= draw[tightest].largest_mm - SQ_COINCIDE_MM)
    report_meeting (making, ring->edges[tightest].corner, draw[tightest].largest_mm);
  SqPath *path = drawn_in (c, ring, draw);
  if (!sq_path_is_simple (path, NULL))
    {
      /* Another edge of the seat comes too near. */
      report_meeting (making, ring->edges[sharpest].corner, 0);
      sq_path_unref (path);
      return;
    }
  sq_path_unref (ring->path);
  ring->path = path;
  sq_measure_edge_stations (ring);
}

/* ---- pieces and seams ---------------------------------------------------------------------- */

/* @zip, on the outline, on the ring of a face: as far from the middle of its edge as there. */
static SqZipRun
zip_on_face (const SqMaking *making, const SqFinishedRing *face, const SqZipRun *zip)
{
  const SqFinishedRing *outline = &making->cover->finished->rings[0];

  for (guint i = 0; i < face->n_edges; i++)
    if (face->edges[i].id == making->cover->zip.edge)
      {
        double by = (face->edges[i].own_start_mm + face->edges[i].own_end_mm
                     - outline->edges[i].own_start_mm - outline->edges[i].own_end_mm)
                    / 2;
        return (SqZipRun){ zip->is_there, zip->from_mm + by, zip->to_mm + by };
      }
  return *zip;
}

static guint
make_face (SqMaking *making, const SqFinishedRing *ring, const GArray *stretches, gboolean mirrored,
           guint *runs)
{
  const SqChoices *c = &making->choices;
  const SqClothChoice *cloth = mirrored ? &c->underside : &c->face;
  SqDraft draft;

  sq_draft_begin (&draft, mirrored ? SQ_ROLE_UNDERSIDE : SQ_ROLE_FACE, cloth);
  sq_draft_ring (&draft, making, ring, stretches, mirrored, TRUE, runs);
  /* No flat cloth bends to what it becomes when it is stuffed: it crumples at the seam. So both
   * faces are taken as they lie on each other before that. */
  sq_draft_flat_patch (&draft, ring->path, mirrored, 0);
  sq_lay_face_on_cloth (making, draft.piece, cloth, mirrored, !mirrored || c->reversible);
  return sq_making_add_piece (making, &draft);
}

/* Notches of the seam that begins at @from_mm of @ring. */
static void
notch (SqMaking *making, guint seam, const SqFinishedRing *ring, double from_mm)
{
  g_autoptr (GArray) places = sq_notch_places (making->choices.house, ring);
  double whole = sq_path_length_mm (ring->path);
  double length = sq_cover_seam (making->cover, seam)->length_a_mm;
  gboolean all_round = length > whole - SQ_COINCIDE_MM;

  for (guint i = 0; i < places->len; i++)
    {
      const SqNotchPlace *place = &g_array_index (places, SqNotchPlace, i);
      double along = sq_station_on_ring_mm (place->station_mm - from_mm, whole);
      if (all_round || (along > 1 && along < length - 1))
        sq_notch_seam (making, seam, fmin (along, length), place->ticks);
    }
}

static void
mark_zip (SqMaking *making, guint piece, const SqFinishedRing *ring, const SqZipRun *zip,
          gboolean mirrored)
{
  SqPath *line = sq_path_part (ring->path, zip->from_mm, zip->to_mm);

  if (mirrored)
    {
      SqPath *turned = sq_path_mirrored (line);
      sq_path_unref (line);
      line = turned;
    }
  sq_piece_add_mark (sq_making_piece (making, piece), SQ_MARK_ZIP, 1, sq_path_nodes (line)[0].at, 0,
                     0, line, -1, 0);
}

static void
make_cover (SqMaking *making, const SqFinishedRing *ring)
{
  const SqChoices *c = &making->choices;
  SqSeamKind kind = c->welt_at != SQ_WELT_NONE ? SQ_SEAM_WELT : SQ_SEAM_PERIMETER;
  double whole = sq_path_length_mm (ring->path);
  SqZipRun zip = { 0 };
  guint first = 0, n = 0;

  if (c->zip_place == SQ_ZIP_BACK_SEAM)
    {
      zip = sq_zip_in_seam (making);
      zip = zip_on_face (making, ring, &zip);
    }
  g_autoptr (GArray) stretches = sq_stretches_new (ring, NULL, &zip);
  g_autofree guint *above = g_new (guint, stretches->len);
  g_autofree guint *below = g_new (guint, stretches->len);
  guint top = make_face (making, ring, stretches, FALSE, above);
  guint underside = make_face (making, ring, stretches, TRUE, below);

  if (zip.is_there)
    {
      sq_stretches_between (stretches, zip.from_mm, zip.to_mm, whole, &first, &n);
      guint seam = sq_making_add_seam (
          making, SQ_SEAM_ZIP, sq_ring_side (top, above, stretches, first, n, FALSE),
          sq_ring_side (underside, below, stretches, first, n, TRUE), STEP_ZIP);
      /* Where it begins and ends. */
      sq_notch_seam (making, seam, 0, 1);
      notch (making, seam, ring, zip.from_mm);
      sq_notch_seam (making, seam, sq_cover_seam (making->cover, seam)->length_a_mm, 1);
      mark_zip (making, top, ring, &zip, FALSE);
      mark_zip (making, underside, ring, &zip, TRUE);
    }
  first = (first + n) % stretches->len;
  n = stretches->len - n;
  guint seam = sq_making_add_seam (
      making, kind, sq_ring_side (top, above, stretches, first, n, FALSE),
      sq_ring_side (underside, below, stretches, first, n, TRUE), STEP_PERIMETER);
  notch (making, seam, ring, zip.is_there ? zip.to_mm : 0);
  if (c->zip_place == SQ_ZIP_UNDERSIDE)
    sq_zip_mark_across (making, underside, (const SqPath *const[]){ ring->path }, 1);
}

static void
note_corners (SqMaking *making)
{
  const SqFinishedRing *ring = &making->cover->finished->rings[0];

  for (guint i = 0; i < ring->n_edges; i++)
    if (ring->edges[i].turn_rad < -5 * SQ_RAD_PER_DEG && ring->edges[i].radius_mm <= 0)
      sq_report_corner (making->cover->problems, SQ_PROBLEM_REFLEX_CLIP, SQ_NOTE,
                        making->choices.cushion, ring->edges[i].corner);
}

void
sq_way_knife_edge (SqMaking *making)
{
  const SqFinishedRing *outline = &making->cover->finished->rings[0];

  if (!has_no_holes (making))
    return;
  SqFinishedRing face = { .path = grown (making), .n_edges = outline->n_edges };
  if (face.path == NULL)
    return;
  face.edges = g_memdup2 (outline->edges, outline->n_edges * sizeof *outline->edges);
  sq_measure_edge_stations (&face);
  draw_corners_in (making, &face);
  make_cover (making, &face);
  if (making->choices.welt_at != SQ_WELT_NONE)
    {
      sq_welt_check_ring (making);
      sq_welt_make (making, 1, sq_path_length_mm (face.path));
    }
  note_corners (making);
  sq_path_unref (face.path);
  g_free (face.edges);
}
