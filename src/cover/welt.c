/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "cover/welt.h"

#include "base/units.h"
#include "cover/report.h"
#include "cover/ways.h"

/* No welt is joined of more strips: no cushion is like that, but a file may be. */
#define MOST_STRIPS 1000
/* A cord that asks no more of a corner than its cloth does. */
#define THIN_CORD_MM 3.0

double
sq_welt_yield_mm (SqWeltCut cut, double width, double strip, double join, guint n)
{
  double one = cut == SQ_WELT_BIAS ? width * G_SQRT2 : width;
  double lost = cut == SQ_WELT_BIAS ? 2 * G_SQRT2 * join : 2 * join;

  if (n == 0)
    return 0;
  return n * one - (n - 1) * lost - (cut == SQ_WELT_BIAS ? strip : 0);
}

guint
sq_welt_strips (SqWeltCut cut, double width, double strip, double join, double length)
{
  double one = sq_welt_yield_mm (cut, width, strip, join, 1);
  double more = sq_welt_yield_mm (cut, width, strip, join, 2) - one;

  if (one <= strip || more <= strip || !(length > 0))
    return 0;
  if (length <= one + SQ_COINCIDE_MM)
    return 1;
  double n = 1 + ceil ((length - one) / more - 1e-9);
  return n > MOST_STRIPS ? 0 : (guint) n;
}

/* Whether some curve of the outer ring is tighter than straight strips go round. */
static gboolean
has_tight_curve (const SqMaking *making)
{
  const SqPath *ring = making->cover->finished->rings[0].path;

  for (guint i = 0; i < sq_path_n_segments (ring); i++)
    {
      SqSegment s = sq_path_segment (ring, i);
      if (sq_segment_is_arc (&s)
          && fabs (sq_segment_radius_mm (&s)) < making->choices.house->welt_bias_under_mm)
        return TRUE;
    }
  return FALSE;
}

static SqWeltCut
cut_of (const SqMaking *making)
{
  const SqChoices *c = &making->choices;
  gboolean bends = c->build == SQ_BUILD_BOLSTER || has_tight_curve (making);

  if (c->cushion->given_way & SQ_GIVEN_WELT_CUT || c->welt.kind == SQ_CLOTH_VINYL)
    return c->welt_cut;
  return bends ? SQ_WELT_BIAS : c->welt_cut;
}

/* Strips of cut length @length_mm, @count of them. The long sides are caught in the welted seam, and
 * the ends are cut where they are sewn or lapped; so the sew line is as long as the strip. The cord
 * goes down the middle, with the cloth bent round it. */
static void
add_strips (SqMaking *making, SqWeltCut cut, double finished_mm, double length_mm, guint count)
{
  const SqChoices *c = &making->choices;
  double a = c->perimeter_mm, w = finished_mm, slant = cut == SQ_WELT_BIAS ? w : 0;
  /* On the slant, the sew line is in from the cut's corners. */
  double in = cut == SQ_WELT_BIAS ? a : 0, l = length_mm - (cut == SQ_WELT_BIAS ? w + 2 * a : 0);
  const SqPoint corners[] = { { in, 0 }, { in + l, 0 }, { in + l + slant, w }, { in + slant, w } };
  SqDraft draft;

  sq_draft_begin (&draft, SQ_ROLE_WELT, &c->welt);
  for (guint i = 0; i < 4; i++)
    {
      sq_draft_run (&draft, i % 2 == 0 ? SQ_RUN_FOLD : SQ_RUN_FREE, 0, i % 2 == 0 ? a : 0);
      sq_draft_node (&draft, corners[i], 0);
    }
  /* Half a turn of the bend brings its sides together. */
  sq_draft_patch (&draft, SQ_PATCH_CYLINDER, sq_path_new_polygon (corners, 4), sq_point (0, w / 2),
                  (SqPoint3){ 0, 0, c->thickness_mm }, (SqPoint3){ 0, 0, -1 },
                  (SqPoint3){ 1, 0, 0 }, w / (2 * G_PI));
  sq_draft_patch_along (&draft, sq_point (0, -1));
  draft.piece->count = count;
  /* Across the cloth, or at 45° to it. */
  draft.piece->grain_rad = cut == SQ_WELT_BIAS ? G_PI / 4 : G_PI / 2;
  draft.piece->turns = c->welt.one_way ? SQ_TURNS_NONE : SQ_TURNS_HALF;
  sq_making_add_piece (making, &draft);
}

void
sq_welt_make (SqMaking *making, guint n_rounds, double round_mm)
{
  const SqChoices *c = &making->choices;
  SqWelt *welt = &making->cover->welt;
  SqWeltCut cut = cut_of (making);
  double finished = G_PI * (c->welt_cord_mm + c->welt.thickness_mm);
  double strip = finished + 2 * c->perimeter_mm, width = c->welt.width_mm;
  double each = round_mm + c->welt_overlap_mm;
  guint n = sq_welt_strips (cut, width, strip, c->join_mm, each);

  *welt = (SqWelt){ .at = c->welt_at,
                    .cut = cut,
                    .cord_mm = c->welt_cord_mm,
                    .strip_mm = strip,
                    .length_mm = n_rounds * round_mm,
                    .n_strips = n * n_rounds };
  if (n == 0)
    {
      sq_report_key (making->cover->problems, SQ_PROBLEM_BOXING_TOO_SHORT, SQ_FAULT, c->cushion,
                     "cloth.welt")
          ->facts[0]
          = width;
      return;
    }
  /* As many whole strips as there are, and what is left of the last one. */
  double whole = cut == SQ_WELT_BIAS ? width * G_SQRT2 + strip : width;
  double rest = each - sq_welt_yield_mm (cut, width, strip, c->join_mm, n - 1);
  double lost = cut == SQ_WELT_BIAS ? 2 * G_SQRT2 * c->join_mm : 2 * c->join_mm;
  if (n > 1)
    {
      add_strips (making, cut, finished, whole, (n - 1) * n_rounds);
      rest += lost;
    }
  if (cut == SQ_WELT_BIAS)
    rest += n > 1 ? strip : 2 * strip;
  add_strips (making, cut, finished, fmin (rest, whole), n_rounds);
}

/* The least radius that this welt goes round (mm). */
static double
least_radius_mm (const SqChoices *c)
{
  const SqDefaults *house = c->house;
  double least = house->welt_least_radius_mm[c->welt.kind];

  if (c->welt_cord_mm >= house->welt_thick_cord_mm - SQ_COINCIDE_MM)
    return fmax (least, house->welt_thick_radius_mm);
  if (c->welt_cord_mm >= house->welt_medium_cord_mm - SQ_COINCIDE_MM)
    return fmax (least, house->welt_medium_radius_mm);
  return least;
}

static void
report_tight (SqMaking *making, SqProblem *p, double radius, double least, SqFix fix)
{
  const SqChoices *c = &making->choices;
  guint n = 0;

  p->facts[0] = radius;
  p->facts[1] = least;
  if (fix.kind != SQ_FIX_NONE)
    p->fixes[n++] = fix;
  if (c->welt_cord_mm > THIN_CORD_MM
      && radius >= c->house->welt_least_radius_mm[c->welt.kind] - SQ_COINCIDE_MM)
    p->fixes[n++] = (SqFix){ SQ_FIX_WELT_CORD, 0, THIN_CORD_MM };
  p->fixes[n++] = (SqFix){ SQ_FIX_WELT_AT, 0, SQ_WELT_NONE };
}

/* The tightest arc of edge @i itself; infinite if it is straight. */
static double
edge_radius_mm (const SqFinishedRing *ring, guint i)
{
  double tightest = INFINITY;

  for (guint k = 0; k < sq_path_n_segments (ring->path); k++)
    {
      SqSegment s = sq_path_segment (ring->path, k);
      if (sq_path_nodes (ring->path)[k].tag == i && sq_segment_is_arc (&s))
        tightest = fmin (tightest, fabs (sq_segment_radius_mm (&s)));
    }
  return tightest;
}

void
sq_welt_check_ring (SqMaking *making)
{
  const SqFinishedRing *ring = &making->cover->finished->rings[0];
  GArray *problems = making->cover->problems;
  const SqCushion *cushion = making->choices.cushion;
  double least = least_radius_mm (&making->choices);
  gboolean sharp_said = FALSE;

  for (guint i = 0; i < ring->n_edges; i++)
    {
      const SqFinishedEdge *e = &ring->edges[i];
      double radius = edge_radius_mm (ring, i);
      if (radius < least - SQ_COINCIDE_MM)
        report_tight (making,
                      sq_report_edge (problems, SQ_PROBLEM_WELT_TIGHT, SQ_WARNING, cushion, e->id),
                      radius, least, (SqFix){ SQ_FIX_STRAIGHTEN, e->id, 0 });
      if (e->radius_mm >= least - SQ_COINCIDE_MM || fabs (e->turn_rad) < 10 * SQ_RAD_PER_DEG)
        continue;
      /* A sharp corner is gone round by clipping; that is said once. */
      gboolean is_sharp = e->radius_mm <= 0;
      if (is_sharp && sharp_said)
        continue;
      sharp_said |= is_sharp;
      report_tight (making,
                    sq_report_corner (problems, SQ_PROBLEM_WELT_TIGHT,
                                      is_sharp ? SQ_NOTE : SQ_WARNING, cushion, e->corner),
                    e->radius_mm, least, (SqFix){ SQ_FIX_RADIUS, e->corner, ceil (least) });
    }
}
