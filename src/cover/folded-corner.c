/* SPDX-License-Identifier: GPL-3.0-or-later */
/* Folded-corner: top and sides in one plate, corners notched and sewn; a separate underside. Mixed
 * with boxed: sides that are to be boxed, and whatever leaves no cloth for a skirt (roundings,
 * corners that turn inward), have boxing let in between the skirts. */
#include "base/units.h"
#include "cover/finishing.h"
#include "cover/notches.h"
#include "cover/plate.h"
#include "cover/report.h"
#include "cover/wall.h"
#include "cover/ways.h"
#include "cover/zip.h"
#include "geometry/crossing.h"

enum
{
  STEP_ZIP = 1,
  STEP_CORNERS, /* of skirts and of boxing let in between them */
  STEP_UNDERSIDE,
};

/* A cover while it is made. */
typedef struct
{
  SqMaking *making;
  SqPlate plate;
  SqZipRun zip;      /* in the seam below the skirts */
  GPtrArray *strips; /* of GArray of SqStrip: of the wall after each skirt; NULL: none there */
  SqPlateRuns face;
  guint underside;
  guint *under_runs; /* of each stretch */
} Folded;

static const SqPlateSkirt *
skirt_at (const Folded *f, guint i)
{
  return &g_array_index (f->plate.skirts, SqPlateSkirt, i % f->plate.skirts->len);
}

/* ---- what can't be ------------------------------------------------------------------------- */

static void
refuse_corner (SqMaking *making, SqProblemCode code, SqId corner, gboolean may_be_sharp)
{
  SqProblem *p = sq_report_corner (making->cover->problems, code, SQ_FAULT, making->choices.cushion,
                                   corner);
  guint n = 0;

  p->fixes[n++] = (SqFix){ SQ_FIX_BUILD, 0, SQ_BUILD_BOXED };
  if (making->choices.build == SQ_BUILD_FOLDED_CORNER)
    p->fixes[n++] = (SqFix){ SQ_FIX_LET_IN, corner, 0 };
  if (may_be_sharp)
    p->fixes[n++] = (SqFix){ SQ_FIX_SHARPEN, corner, 0 };
}

static void
refuse_curve (SqMaking *making, SqId edge)
{
  SqProblem *p = sq_report_edge (making->cover->problems, SQ_PROBLEM_CURVE_IN_FOLDED, SQ_FAULT,
                                 making->choices.cushion, edge);
  guint n = 0;

  p->fixes[n++] = (SqFix){ SQ_FIX_BUILD, 0, SQ_BUILD_BOXED };
  if (making->choices.build == SQ_BUILD_FOLDED_CORNER)
    p->fixes[n++] = (SqFix){ SQ_FIX_EDGE_BUILD, edge, SQ_EDGE_BOXED };
  p->fixes[n++] = (SqFix){ SQ_FIX_STRAIGHTEN, edge, 0 };
}

static void
refuse_holes (SqMaking *making)
{
  const SqOutline *outline = making->choices.outline;
  SqProblemCode code = making->choices.build == SQ_BUILD_SPLIT_SIDE ? SQ_PROBLEM_HOLE_NOT_BUILT
                                                                    : SQ_PROBLEM_HOLE_IN_FOLDED;

  for (guint r = 1; r < sq_outline_n_rings (outline); r++)
    {
      guint n;
      SqId id = sq_outline_ring (outline, r, &n)[0].id;
      SqProblem *p = sq_report_corner (making->cover->problems, code, SQ_FAULT,
                                       making->choices.cushion, id);
      p->fixes[0] = (SqFix){ SQ_FIX_BUILD, 0, SQ_BUILD_BOXED };
      p->fixes[1] = (SqFix){ SQ_FIX_DROP_HOLE, id, 0 };
    }
}

gboolean
sq_can_be_folded (SqMaking *making, gboolean lets_in)
{
  const SqFinishedRing *ring = &making->cover->finished->rings[0];
  guint before = making->cover->problems->len;

  for (guint i = 0; i < ring->n_edges; i++)
    {
      const SqFinishedEdge *e = &ring->edges[i];
      if (!e->is_straight && e->build == SQ_EDGE_FOLDED)
        refuse_curve (making, e->id);
      if (lets_in)
        continue;
      if (e->radius_mm > 0)
        refuse_corner (making, SQ_PROBLEM_CURVE_IN_FOLDED, e->corner, TRUE);
      if (e->turn_rad < -SQ_SAME_SKIRT_RAD)
        refuse_corner (making, SQ_PROBLEM_REFLEX_IN_FOLDED, e->corner, FALSE);
    }
  refuse_holes (making);
  return making->cover->problems->len == before;
}

/* A wrap that turns under takes w cot (theta / 2) off both ends of every skirt. */
static gboolean
check_wrap (Folded *f)
{
  const SqChoices *c = &f->making->choices;
  GArray *problems = f->making->cover->problems;
  const SqFinished *finished = f->making->cover->finished;
  double slack = 0;
  SqEdgeRank worst = { 0 };

  for (guint i = 0; i < f->plate.skirts->len; i++)
    {
      const SqPlateSkirt *s = skirt_at (f, i);
      double both = (s->start.meets_wall ? 0 : tan (s->start.turn_rad / 2))
                    + (s->end.meets_wall ? 0 : tan (s->end.turn_rad / 2));
      SqPoint middle = sq_moved (s->from, s->along, s->length_mm / 2);
      SqEdgeRank rank = { both > 0 ? -s->length_mm / both : -G_MAXDOUBLE,
                          sq_finished_to_frame (finished, middle), s->edge };
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
  if (f->plate.wrap_mm <= 0 || c->wrap_depth_mm < least - SQ_TIE_MM)
    return TRUE;
  SqProblem *p = sq_report_edge (problems, SQ_PROBLEM_WRAP_TOO_DEEP, SQ_FAULT, c->cushion,
                                 worst.id);
  p->facts[0] = c->wrap_depth_mm;
  p->facts[1] = least;
  p->fixes[0] = (SqFix){ SQ_FIX_WRAP_DEPTH, 0, floor (fmin (least / 2, 12.7) * 10) / 10 };
  return FALSE;
}

/* A skirt with its allowances as it lies in the flat plate, a little smaller, so that touching is
 * no overlap. */
static SqPath *
flat_skirt (const Folded *f, const SqPlateSkirt *s)
{
  const double little = 0.01;
  double deep = f->plate.depth_mm + f->making->choices.perimeter_mm - little;
  double before = s->start.meets_wall ? s->start.allowance_mm - little : -little;
  double after = s->end.meets_wall ? s->end.allowance_mm - little : -little;
  SqPoint a = sq_moved (sq_moved (s->from, s->along, -before), s->outward, little);
  SqPoint b = sq_moved (a, s->along, before + s->length_mm + after);
  SqPoint corners[] = { a, sq_moved (a, s->outward, deep - little),
                        sq_moved (b, s->outward, deep - little), b };

  return sq_path_new_polygon (corners, 4);
}

static gboolean
areas_meet (const SqPath *a, const SqPath *b)
{
  return sq_paths_distance_mm (a, b) <= 0 || sq_path_winding (a, sq_path_nodes (b)[0].at) != 0
         || sq_path_winding (b, sq_path_nodes (a)[0].at) != 0;
}

/* Skirts of edges that face each other across a notch in the seat may lie over each other in the
 * flat plate, and so may a skirt and the face beyond the notch. */
static gboolean
check_plate (Folded *f)
{
  guint n = f->plate.skirts->len, before = f->making->cover->problems->len;
  g_autoptr (GPtrArray) flat = g_ptr_array_new_with_free_func ((GDestroyNotify) sq_path_unref);

  for (guint i = 0; i < n; i++)
    g_ptr_array_add (flat, flat_skirt (f, skirt_at (f, i)));
  for (guint i = 0; i < n; i++)
    {
      gboolean meets = areas_meet (flat->pdata[i], f->plate.ring->path);
      for (guint k = 0; k < i && !meets; k++)
        meets = areas_meet (flat->pdata[i], flat->pdata[k]);
      if (!meets)
        continue;
      SqProblem *p = sq_report_edge (f->making->cover->problems, SQ_PROBLEM_SKIRTS_MEET, SQ_FAULT,
                                     f->making->choices.cushion, skirt_at (f, i)->edge);
      p->fixes[0] = (SqFix){ SQ_FIX_EDGE_BUILD, skirt_at (f, i)->edge, SQ_EDGE_BOXED };
      p->fixes[1] = (SqFix){ SQ_FIX_BUILD, 0, SQ_BUILD_BOXED };
    }
  return f->making->cover->problems->len == before;
}

/* ---- walls ---------------------------------------------------------------------------------- */

/* The boxing after skirt @i, cut into strips; breaks of the ring at its joins. FALSE: can't be cut. */
static gboolean
divide_wall (Folded *f, guint i, GArray *breaks)
{
  double whole = sq_path_length_mm (f->plate.ring->path);
  double from = skirt_at (f, i)->to_mm, to = skirt_at (f, i + 1)->from_mm;

  while (to < from - SQ_COINCIDE_MM)
    to += whole;
  if (to - from <= SQ_COINCIDE_MM)
    {
      g_ptr_array_add (f->strips, NULL);
      return TRUE;
    }
  GArray *strips = sq_boxing_divide_part (f->making, 0, from, to);
  g_ptr_array_add (f->strips, strips);
  for (guint k = 1; strips != NULL && k < strips->len; k++)
    g_array_append_val (breaks, g_array_index (strips, SqStrip, k).from_mm);
  return strips != NULL;
}

/* Boxing all round: every side of the plate is boxed. */
static gboolean
divide_all_round (Folded *f, GArray *breaks)
{
  const SqZipRun none = { 0 };
  GArray *strips = sq_boxing_divide (f->making, 0, &none);

  g_ptr_array_add (f->strips, strips);
  for (guint k = 0; strips != NULL && k < strips->len; k++)
    g_array_append_val (breaks, g_array_index (strips, SqStrip, k).from_mm);
  return strips != NULL;
}

/* Whether a wall is only there because two skirts can't meet at a corner. */
static gboolean
is_let_in (const Folded *f, const GArray *strips)
{
  const SqFinishedRing *ring = f->plate.ring;
  double whole = sq_path_length_mm (ring->path);
  double from = g_array_index (strips, SqStrip, 0).from_mm;
  double to = g_array_index (strips, SqStrip, strips->len - 1).to_mm;

  for (guint i = 0; i < ring->n_edges; i++)
    for (int turn = -1; turn <= 1 && ring->edges[i].build == SQ_EDGE_BOXED; turn++)
      {
        double own_from = ring->edges[i].own_start_mm + turn * whole;
        double own_to = ring->edges[i].own_end_mm + turn * whole;
        if (fmin (to, own_to) - fmax (from, own_from) > SQ_COINCIDE_MM)
          return FALSE;
      }
  return TRUE;
}

/* Makes and sews the wall after skirt @i. */
static void
make_wall (Folded *f, guint i, const GArray *strips, const GArray *places)
{
  SqMaking *making = f->making;
  const SqWall wall = {
    .foot_mm = making->choices.thickness_mm - f->plate.depth_mm,
    .height_mm = f->plate.depth_mm,
    .strips = strips,
    .stretches = f->plate.stretches,
    .is_open = f->plate.skirts->len > 0,
    .role = is_let_in (f, strips) ? SQ_ROLE_LET_IN : SQ_ROLE_BOXING,
    .steps = { STEP_ZIP, STEP_CORNERS, STEP_CORNERS, STEP_UNDERSIDE },
  };
  const SqWallSide above = { f->face.piece, f->face.stretches, FALSE };
  const SqWallSide below = { f->underside, f->under_runs, TRUE };
  guint n = strips->len;
  g_autofree SqStripRuns *upper = g_new0 (SqStripRuns, n);
  g_autofree SqStripRuns *lower = g_new0 (SqStripRuns, n);

  sq_wall_make (making, &wall, upper, lower);
  if (wall.is_open)
    {
      guint next = (i + 1) % f->plate.skirts->len;
      sq_making_add_seam (making, SQ_SEAM_JOIN, (SqSide){ f->face.piece, f->face.ends[i], 1 },
                          (SqSide){ lower[0].piece, lower[0].left[0], 1 }, STEP_CORNERS);
      sq_making_add_seam (making, SQ_SEAM_JOIN, (SqSide){ f->face.piece, f->face.starts[next], 1 },
                          (SqSide){ lower[n - 1].piece, lower[n - 1].right[0], 1 }, STEP_CORNERS);
    }
  sq_wall_sew (making, &wall, upper, lower, &above, &below, places);
}

/* ---- the underside ------------------------------------------------------------------------- */

/* A point of the underside's sew line below @along of a skirt, whose wrap turns under. */
static SqPoint
under_skirt (const Folded *f, const SqPlateSkirt *s, double along)
{
  double in = f->plate.wrap_mm;
  double held = CLAMP (along, s->start.taken_mm, s->length_mm - s->end.taken_mm);

  return sq_moved (sq_moved (s->from, s->along, held), s->outward, -in);
}

/* The underside's sew line in seat coordinates: F, or F drawn in by a mitred wrap, with a node
 * where each stretch begins; tags are stretches. */
static SqPath *
underside_outline (const Folded *f)
{
  guint all = f->plate.stretches->len;
  g_autofree SqNode *nodes = g_new0 (SqNode, all);

  if (f->plate.wrap_mm <= 0)
    return sq_path_ref (f->plate.ring->path);
  for (guint i = 0; i < f->plate.skirts->len; i++)
    {
      const SqPlateSkirt *s = skirt_at (f, i);
      double along = 0;
      for (guint k = 0; k < s->n; k++)
        {
          guint index = (s->first + k) % all;
          const SqStretch *stretch = &g_array_index (f->plate.stretches, SqStretch, index);
          nodes[index] = (SqNode){ under_skirt (f, s, along), 0, index };
          along += stretch->to_mm - stretch->from_mm;
        }
    }
  return sq_path_new (nodes, all, TRUE);
}

/* The runs of an underside that is drawn in: its nodes are those of the stretches. */
static void
draw_drawn_in (Folded *f, SqDraft *draft, const SqPath *outline)
{
  const SqChoices *c = &f->making->choices;
  guint all = f->plate.stretches->len;

  for (guint k = all; k-- > 0;)
    {
      const SqStretch *s = &g_array_index (f->plate.stretches, SqStretch, k);
      SqPoint end = sq_path_nodes (outline)[(k + 1) % all].at;
      f->under_runs[k] = sq_draft_run (draft, s->is_zip ? SQ_RUN_ZIP : SQ_RUN_PERIMETER, s->edge,
                                       s->is_zip ? c->zip_mm : c->perimeter_mm);
      sq_draft_node (draft, sq_point (-end.x, end.y), 0);
    }
}

static void
make_underside (Folded *f)
{
  SqMaking *making = f->making;
  const SqChoices *c = &making->choices;
  g_autoptr (SqPath) outline = underside_outline (f);
  gboolean drawn_in = f->plate.wrap_mm > 0;
  SqDraft draft;

  f->under_runs = g_new0 (guint, f->plate.stretches->len);
  sq_draft_begin (&draft, SQ_ROLE_UNDERSIDE, &c->underside);
  if (drawn_in)
    draw_drawn_in (f, &draft, outline);
  else
    sq_draft_ring (&draft, making, f->plate.ring, f->plate.stretches, TRUE, TRUE, f->under_runs);
  sq_draft_flat_patch (&draft, outline, TRUE, drawn_in ? 0 : c->thickness_mm - f->plate.depth_mm);
  sq_lay_face_on_cloth (making, draft.piece, &c->underside, TRUE, FALSE);
  f->underside = sq_making_add_piece (making, &draft);
  if (c->zip_place == SQ_ZIP_UNDERSIDE)
    sq_zip_mark_across (making, f->underside, (const SqPath *const[]){ outline }, 1);
}

/* ---- the way -------------------------------------------------------------------------------- */

static void
make_cover (Folded *f)
{
  SqMaking *making = f->making;
  const SqChoices *c = &making->choices;
  g_autoptr (GArray) notches = sq_plate_find_notches (&f->plate);
  g_autoptr (GArray) places = sq_notch_places (c->house, f->plate.ring);
  const SqSkirtSeams seams = { SQ_SEAM_PERIMETER, STEP_ZIP, STEP_UNDERSIDE };

  sq_plate_make (&f->plate, notches, FALSE, &f->face);
  make_underside (f);
  sq_plate_sew_corners (&f->plate, &f->face, STEP_CORNERS);
  const SqWallSide below = { f->underside, f->under_runs, TRUE };
  sq_plate_sew_skirts (&f->plate, &f->face, &below, &seams, places);
  for (guint i = 0; i < f->strips->len; i++)
    if (f->strips->pdata[i] != NULL)
      make_wall (f, i, f->strips->pdata[i], places);
  if (c->face.one_way)
    sq_report_piece (making->cover->problems, SQ_PROBLEM_SKIRTS_FOLLOW, SQ_NOTE, c->cushion,
                     f->face.piece);
}

static void
free_strips (gpointer strips)
{
  if (strips != NULL)
    g_array_unref (strips);
}

void
sq_way_folded_corner (SqMaking *making)
{
  const SqChoices *c = &making->choices;
  gboolean lets_in = sq_choices_is_mixed (c), mitred = c->wrap_style == SQ_WRAP_MITRED;
  g_autoptr (GArray) breaks = g_array_new (FALSE, FALSE, sizeof (double));
  Folded f = { .making = making, .strips = g_ptr_array_new_with_free_func (free_strips) };
  if (lets_in && mitred)
    sq_report_key (making->cover->problems, SQ_PROBLEM_WRAP_NOT_MITRED, SQ_WARNING, c->cushion,
                   "underside_wrap.style")
        ->fixes[0]
        = (SqFix){ SQ_FIX_WRAP_STYLE, 0, SQ_WRAP_PLAIN };
  double depth = c->thickness_mm + (lets_in && mitred ? 0 : c->wrap_depth_mm);
  gboolean fits = sq_can_be_folded (making, lets_in);

  if (fits)
    fits = sq_plate_init (&f.plate, making, depth, mitred && !lets_in ? c->wrap_depth_mm : 0)
           && check_wrap (&f) && (!lets_in || check_plate (&f));
  if (fits && f.plate.skirts->len == 0)
    fits = divide_all_round (&f, breaks);
  for (guint i = 0; fits && i < f.plate.skirts->len; i++)
    fits = divide_wall (&f, i, breaks);
  if (fits && c->zip_place == SQ_ZIP_BACK_SEAM)
    f.zip = sq_zip_in_seam (making);
  if (fits)
    {
      sq_plate_break (&f.plate, breaks, &f.zip);
      make_cover (&f);
    }
  sq_plate_clear (&f.plate);
  sq_plate_runs_clear (&f.face);
  g_free (f.under_runs);
  g_ptr_array_unref (f.strips);
}
