/* SPDX-License-Identifier: GPL-3.0-or-later */
/* Wrapped front: one piece runs over top, front and underside; two sides close its ends, and a strip
 * with the zip its back. */
#include <math.h>

#include "base/units.h"
#include "cover/finishing.h"
#include "cover/notches.h"
#include "cover/report.h"
#include "cover/wall.h"
#include "cover/ways.h"
#include "cover/wrapped.h"
#include "cover/zip.h"

enum
{
  STEP_ZIP = 1,
  STEP_ENDS,
  STEP_SIDES,
  STEP_BACK,
};

/* Notches nearer to each other than this are read as one of two ticks (mm; common practice, no
 * source). */
#define NOTCHES_APART_MM 12.7

static const SqFinishedRing *
ring_of (const SqWrapping *w)
{
  return &w->making->cover->finished->rings[0];
}

const SqStretch *
sq_wrapping_stretch (const SqWrapping *w, guint i)
{
  return &g_array_index (w->stretches, SqStretch, i % w->stretches->len);
}

gboolean
sq_wrapping_has_flat (const SqWrapping *w)
{
  return w->height_mm - 2 * w->radius_mm > SQ_COINCIDE_MM;
}

/* ---- what can't be wrapped ----------------------------------------------------------------- */

static const SqFix boxed = { SQ_FIX_BUILD, 0, SQ_BUILD_BOXED };

/* The back: the edge that is the seat's back, or the farthest one that leaves room for sides, and
 * those beside it that look to the back too. FALSE: there is no edge between the sides. */
static gboolean
find_back (const SqFinished *f, guint *edge, guint back[2])
{
  const SqFinishedRing *ring = &f->rings[0];
  guint last = ring->n_edges - 1, best = f->back;

  if (ring->n_edges < 4)
    return FALSE;
  if (best < 2 || best >= last)
    {
      best = 2;
      SqEdgeRank rank = sq_edge_rank (f, best, 0);
      for (guint i = 3; i < last; i++)
        {
          SqEdgeRank other = sq_edge_rank (f, i, 0);
          if (!sq_edge_rank_beats (&other, &rank))
            continue;
          rank = other;
          best = i;
        }
    }
  *edge = back[0] = back[1] = best;
  while (back[0] > 2 && ring->edges[back[0] - 1].side == SQ_SIDE_BACK)
    back[0]--;
  while (back[1] + 1 < last && ring->edges[back[1] + 1].side == SQ_SIDE_BACK)
    back[1]++;
  return TRUE;
}

static gboolean
check_front (const SqWrapping *w)
{
  const SqChoices *c = &w->making->choices;
  const SqFinished *f = w->making->cover->finished;
  const SqFinishedEdge *front = &f->rings[0].edges[0];
  GArray *problems = w->making->cover->problems;
  guint before = problems->len;

  if (!front->is_straight)
    {
      SqProblem *p = sq_report_edge (problems, SQ_PROBLEM_FRONT_CURVED, SQ_FAULT, c->cushion,
                                     front->id);
      p->fixes[0] = (SqFix){ SQ_FIX_STRAIGHTEN, front->id, 0 };
      p->fixes[1] = boxed;
    }
  else if (front->own_end_mm - front->own_start_mm <= SQ_TIE_MM)
    sq_report_corner (problems, SQ_PROBLEM_CORNER_NOT_BUILT, SQ_FAULT, c->cushion, front->corner)
        ->fixes[0]
        = boxed;
  for (guint r = 1; r < f->n_rings; r++)
    {
      SqId id = f->rings[r].edges[0].corner;
      SqProblem *p = sq_report_corner (problems, SQ_PROBLEM_HOLE_NOT_BUILT, SQ_FAULT, c->cushion,
                                       id);
      p->fixes[0] = boxed;
      p->fixes[1] = (SqFix){ SQ_FIX_DROP_HOLE, id, 0 };
    }
  return problems->len == before;
}

SqPath *
sq_wrapping_framed (const SqWrapping *w, const SqPath *path)
{
  const SqFinished *f = w->making->cover->finished;
  double turn = -atan2 (f->front_dir.y, f->front_dir.x);
  SqPoint origin = { sq_dot (f->front_at, f->front_dir), sq_cross (f->front_dir, f->front_at) };

  return sq_path_moved (path, turn, sq_scale (origin, -1));
}

/* The round may reach from the front as far as the back comes near to it. */
static gboolean
check_radius (const SqWrapping *w)
{
  const SqChoices *c = &w->making->choices;
  const SqFinishedRing *ring = ring_of (w);
  g_autoptr (SqPath) part = sq_path_part (ring->path, ring->edges[w->back[0] - 1].own_end_mm,
                                          ring->edges[w->back[1] + 1].own_start_mm);
  g_autoptr (SqPath) back = sq_wrapping_framed (w, part);
  double largest = fmin (w->height_mm / 2, sq_path_box (back).min.y);

  if (c->profile_radius_mm >= 0 && c->profile_radius_mm <= largest + SQ_COINCIDE_MM)
    return TRUE;
  SqProblem *p = sq_report_key (w->making->cover->problems, SQ_PROBLEM_PROFILE_RADIUS, SQ_FAULT,
                                c->cushion, "front_profile.radius");
  guint n = 0;
  p->facts[0] = c->profile_radius_mm;
  p->facts[1] = c->profile_radius_mm < 0 ? 0 : fmax (largest, 0);
  if (largest > SQ_TIE_MM)
    p->fixes[n++] = (SqFix){ SQ_FIX_PROFILE_RADIUS, 0, largest };
  p->fixes[n++] = (SqFix){ SQ_FIX_PROFILE, 0,
                           largest < w->height_mm / 2 ? SQ_PROFILE_SQUARE : SQ_PROFILE_HALF_ROUND };
  return FALSE;
}

static void
report_turning (const SqWrapping *w, SqId edge)
{
  sq_report_edge (w->making->cover->problems, SQ_PROBLEM_SIDE_TURNS_BACK, SQ_FAULT,
                  w->making->choices.cushion, edge)
      ->fixes[0]
      = boxed;
}

/* Roundings turn from one direction to another that are both looked at. */
static gboolean
check_side (const SqWrapping *w, const SqFlankSide *side)
{
  for (guint i = 0; i < sq_path_n_segments (side->plan); i++)
    {
      SqSegment s = sq_path_segment (side->plan, i);
      SqId edge = side->edges[sq_path_nodes (side->plan)[i].tag];
      if (edge == 0 || sq_flank_can_follow (&s))
        continue;
      report_turning (w, edge);
      return FALSE;
    }
  return TRUE;
}

/* ---- sides in plan ------------------------------------------------------------------------- */

double
sq_wrapping_back_mm (const SqWrapping *w, guint end)
{
  const SqFinishedEdge *e = &ring_of (w)->edges[w->back[end]];
  return end == 0 ? e->start_mm : e->end_mm;
}

/* From the front line to the back, seen so that the side is on the right. */
static void
plan_side (const SqWrapping *w, SqFlankSide *side)
{
  g_autoptr (GArray) nodes = g_array_new (FALSE, FALSE, sizeof (SqNode));
  SqNode last = { 0 };

  side->edges = g_new (SqId, side->n);
  for (guint k = 0; k < side->n; k++)
    {
      const SqStretch *s = sq_wrapping_stretch (w, side->first
                                                       + (side->is_left ? side->n - 1 - k : k));
      g_autoptr (SqPath) part = sq_path_part (ring_of (w)->path, s->from_mm, s->to_mm);
      g_autoptr (SqPath) turned = sq_wrapping_framed (w, part);
      g_autoptr (SqPath) path = side->is_left ? sq_path_mirrored (turned) : sq_path_ref (turned);
      guint n = sq_path_n_segments (path);
      for (guint i = 0; i < n; i++)
        {
          SqNode node = sq_path_nodes (path)[i];
          node.tag = k;
          g_array_append_val (nodes, node);
        }
      last = sq_path_nodes (path)[n];
      side->edges[k] = s->edge;
    }
  g_array_append_val (nodes, last);
  g_array_index (nodes, SqNode, 0).at.y = 0;
  side->plan = sq_path_new ((const SqNode *) nodes->data, nodes->len, FALSE);
}

static void
find_sides (SqWrapping *w)
{
  const SqFinishedRing *ring = ring_of (w);
  const SqFinishedEdge *front = &ring->edges[0];
  double whole = sq_path_length_mm (ring->path);
  double from = sq_wrapping_back_mm (w, 0), to = sq_wrapping_back_mm (w, 1);
  g_autoptr (GArray) breaks = g_array_new (FALSE, FALSE, sizeof (double));

  g_array_append_val (breaks, from);
  g_array_append_val (breaks, to);
  if (w->zip.is_there)
    {
      g_array_append_val (breaks, w->zip.from_mm);
      g_array_append_val (breaks, w->zip.to_mm);
    }
  gboolean in_seam = w->making->choices.zip_place == SQ_ZIP_BACK_SEAM;
  w->stretches = sq_stretches_new (ring, breaks, in_seam ? &w->zip : NULL);
  sq_stretches_between (w->stretches, from, to, whole, &w->back_first, &w->n_back);
  for (guint i = 0; i < 2; i++)
    {
      SqFlankSide *side = &w->sides[i];
      side->is_left = i == 1;
      side->station_mm = side->is_left ? whole + front->own_start_mm : front->own_end_mm;
      sq_stretches_between (w->stretches, side->is_left ? to : front->own_end_mm,
                            side->is_left ? front->own_start_mm : from, whole, &side->first,
                            &side->n);
      plan_side (w, side);
    }
}

/* FALSE, and it is listed, where one of them can't be followed. */
static gboolean
bend_sides (SqWrapping *w)
{
  gboolean right = check_side (w, &w->sides[0]), left = check_side (w, &w->sides[1]);

  if (!right || !left)
    return FALSE;
  for (guint i = 0; i < 2; i++)
    {
      SqFlankSide *side = &w->sides[i];
      side->flank = sq_flank_new (side->plan, w->radius_mm, w->height_mm);
      if (side->flank != NULL)
        continue;
      report_turning (w, ring_of (w)->edges[i == 0 ? 1 : ring_of (w)->n_edges - 1].id);
      return FALSE;
    }
  return TRUE;
}

/* ---- seams --------------------------------------------------------------------------------- */

static void
add_notch (GArray *places, double station, guint ticks)
{
  SqNotchPlace place = { station, ticks, FALSE };

  for (guint i = 0; i < places->len; i++)
    if (fabs (g_array_index (places, SqNotchPlace, i).station_mm - station) < NOTCHES_APART_MM)
      return;
  g_array_append_val (places, place);
}

/* Where a side's seam is notched, as ways from the middle of the nose: there, where the seat's own
 * notches are, and along the round. What stands first stays. */
static GArray *
flank_notches (const SqWrapping *w, const SqFlankSide *side)
{
  const SqDefaults *house = w->making->choices.house;
  GArray *places = g_array_new (FALSE, FALSE, sizeof (SqNotchPlace));
  g_autoptr (GArray) seat = sq_notch_places (house, ring_of (w));
  double front = w->height_mm / 2 - w->radius_mm, whole = sq_path_length_mm (ring_of (w)->path);
  double nose = front + sq_path_station_mm (side->flank->wrap, side->flank->wrap_top);
  double half = front + sq_path_length_mm (side->flank->wrap), spacing;
  double plan = sq_path_length_mm (side->plan);

  add_notch (places, 0, 1);
  for (guint i = 0; i < seat->len; i++)
    {
      const SqNotchPlace *place = &g_array_index (seat, SqNotchPlace, i);
      double ahead = place->station_mm - side->station_mm;
      double along = sq_station_on_ring_mm (side->is_left ? -ahead : ahead, whole);
      if (along < plan - 1 && half - (plan - along) > nose + 1)
        add_notch (places, half - (plan - along), place->ticks);
    }
  if (nose < half - 1)
    add_notch (places, nose, 1);
  if (front > SQ_COINCIDE_MM)
    add_notch (places, front, 1);
  spacing = sq_notch_spacing_mm (house, w->radius_mm);
  guint n = w->radius_mm > 0 ? (guint) ceil ((nose - front) / spacing - 1e-6) : 0;
  for (guint k = 1; k < n; k++)
    add_notch (places, front + (nose - front) * k / n, 1);
  return places;
}

static void
sew_side (SqWrapping *w, const SqFlankSide *side)
{
  g_autoptr (GArray) places = flank_notches (w, side);
  guint seam = sq_making_add_seam (w->making, SQ_SEAM_PERIMETER, side->on_wrap, side->on_side,
                                   STEP_SIDES);
  double middle = sq_cover_seam (w->making->cover, seam)->length_a_mm / 2;

  for (guint i = 0; i < places->len; i++)
    {
      const SqNotchPlace *place = &g_array_index (places, SqNotchPlace, i);
      sq_notch_seam (w->making, seam, middle - place->station_mm, place->ticks);
      if (i > 0)
        sq_notch_seam (w->making, seam, middle + place->station_mm, place->ticks);
    }
}

static void
sew_end (SqMaking *making, const SqFlankSide *side, guint k, guint strip, guint run)
{
  sq_making_add_seam (making, SQ_SEAM_JOIN, (SqSide){ side->piece, side->ends[k], 1 },
                      (SqSide){ strip, run, 1 }, STEP_ENDS);
}

/* The strips at the back, their ends sewn to the sides and their long edges to the wrap. */
static void
make_back (SqWrapping *w)
{
  guint last = w->strips->len - 1;
  g_autoptr (GArray) places = sq_notch_places (w->making->choices.house, ring_of (w));
  SqWall wall = { .height_mm = w->height_mm,
                  .strips = w->strips,
                  .stretches = w->stretches,
                  .is_open = TRUE,
                  .is_unmatched = TRUE,
                  .role = SQ_ROLE_BOXING,
                  .steps = { STEP_ZIP, STEP_ENDS, STEP_BACK, STEP_BACK } };
  const SqWallSide above = { w->wrap, w->top, FALSE }, below = { w->wrap, w->underside, TRUE };
  g_autofree SqStripRuns *upper = g_new0 (SqStripRuns, last + 1);
  g_autofree SqStripRuns *lower = g_new0 (SqStripRuns, last + 1);

  if (w->making->choices.zip_place == SQ_ZIP_BOXING)
    wall.zip = w->zip;
  sq_wall_make (w->making, &wall, upper, lower);
  sew_end (w->making, &w->sides[0], 0, lower[0].piece, lower[0].left[0]);
  if (w->sides[0].meets_zip)
    sew_end (w->making, &w->sides[0], 1, upper[0].piece, upper[0].left[1]);
  sew_end (w->making, &w->sides[1], 0, lower[last].piece, lower[last].right[0]);
  if (w->sides[1].meets_zip)
    sew_end (w->making, &w->sides[1], 1, upper[last].piece, upper[last].right[1]);
  for (guint i = 0; i < 2; i++)
    sew_side (w, &w->sides[i]);
  sq_wall_sew (w->making, &wall, upper, lower, &above, &below, places);
}

/* ---- the way ------------------------------------------------------------------------------- */

static void
add_strip (SqWrapping *w, SqStripKind kind, double from, double to)
{
  gboolean runs_over_zip = kind == SQ_STRIP_PLAIN && w->making->choices.zip_tuck_mm > 0
                           && w->making->choices.zip_place == SQ_ZIP_BOXING;
  SqStrip strip = { kind, from, to, runs_over_zip && from == w->zip.to_mm,
                    runs_over_zip && to == w->zip.from_mm };

  if (to > from)
    g_array_append_val (w->strips, strip);
}

/* The back as one strip, or as two with the zip between, from end to end or between plain ones. */
static void
divide_back (SqWrapping *w)
{
  double from = sq_wrapping_back_mm (w, 0), to = sq_wrapping_back_mm (w, 1);

  w->strips = g_array_new (FALSE, FALSE, sizeof (SqStrip));
  if (w->making->choices.zip_place != SQ_ZIP_NONE)
    w->zip = sq_zip_along_back (w->making, w->edge, from, to);
  if (w->making->choices.zip_place != SQ_ZIP_BOXING)
    {
      add_strip (w, SQ_STRIP_PLAIN, from, to);
      return;
    }
  add_strip (w, SQ_STRIP_PLAIN, from, w->zip.from_mm);
  add_strip (w, SQ_STRIP_ZIP, w->zip.from_mm, w->zip.to_mm);
  add_strip (w, SQ_STRIP_PLAIN, w->zip.to_mm, to);
  gboolean two_parts = w->making->choices.zip_method == SQ_ZIP_TWO_PART;
  w->sides[0].meets_zip = two_parts && w->zip.from_mm == from;
  w->sides[1].meets_zip = two_parts && w->zip.to_mm == to;
}

static void
clear (SqWrapping *w)
{
  for (guint i = 0; i < 2; i++)
    {
      g_clear_pointer (&w->sides[i].plan, sq_path_unref);
      g_clear_pointer (&w->sides[i].flank, sq_flank_free);
      g_clear_pointer (&w->sides[i].edges, g_free);
    }
  g_clear_pointer (&w->strips, g_array_unref);
  g_clear_pointer (&w->stretches, g_array_unref);
  g_clear_pointer (&w->top, g_free);
  g_clear_pointer (&w->underside, g_free);
}

void
sq_way_wrapped_front (SqMaking *making)
{
  const SqFinished *f = making->cover->finished;
  SqWrapping w = { .making = making,
                   .height_mm = making->choices.thickness_mm,
                   .radius_mm = making->choices.profile_radius_mm };

  /* Half a thickness that was typed in another unit may be a hair more. */
  w.radius_mm = fmin (w.radius_mm, w.height_mm / 2);
  w.middle_mm = w.height_mm / 2 + (G_PI / 2 - 2) * w.radius_mm;
  if (!check_front (&w))
    return;
  if (!find_back (f, &w.edge, w.back))
    {
      sq_report_corner (making->cover->problems, SQ_PROBLEM_CORNER_NOT_BUILT, SQ_FAULT,
                        making->choices.cushion, f->rings[0].edges[1].corner)
          ->fixes[0]
          = boxed;
      return;
    }
  if (!check_radius (&w))
    return;
  divide_back (&w);
  find_sides (&w);
  if (bend_sides (&w))
    {
      sq_wrapping_make_wrap (&w);
      for (guint i = 0; i < 2; i++)
        sq_wrapping_make_side (&w, &w.sides[i]);
      make_back (&w);
      sq_note_inward_corners (making);
    }
  clear (&w);
}
