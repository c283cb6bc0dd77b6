/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "cover/plate.h"

#include "base/units.h"
#include "cover/notches.h"
#include "cover/report.h"
#include "cover/ways.h"

static const SqFinishedEdge *
edge_at (const SqPlate *plate, guint i)
{
  return &plate->ring->edges[i % plate->ring->n_edges];
}

static SqPlateSkirt *
skirt_at (const SqPlate *plate, guint i)
{
  return &g_array_index (plate->skirts, SqPlateSkirt, i % plate->skirts->len);
}

/* ---- skirts -------------------------------------------------------------------------------- */

/* Whether edge @i + 1 goes straight on from edge @i as the same skirt. */
static gboolean
goes_on (const SqPlate *plate, guint i)
{
  const SqFinishedEdge *next = edge_at (plate, i + 1);

  return edge_at (plate, i)->build == SQ_EDGE_FOLDED && next->build == SQ_EDGE_FOLDED
         && edge_at (plate, i)->is_straight && next->is_straight && next->radius_mm <= 0
         && fabs (next->turn_rad) <= SQ_SAME_SKIRT_RAD;
}

/* How far before the corner that @turn_rad turns at, with a rounding of @radius, a skirt must end so
 * that its cut corner clears what hangs beyond it: another skirt, or a wall that keeps its own
 * allowance. At equality the cut lines touch. */
static double
gives_way_mm (const SqPlate *plate, double turn, double radius, gboolean to_skirt)
{
  const SqChoices *c = &plate->making->choices;
  double psi = M_PI + turn, deep = plate->depth_mm + c->perimeter_mm;
  double s = c->join_mm;

  if (turn >= -SQ_SAME_SKIRT_RAD)
    return 0;
  if (to_skirt)
    s += deep / tan (psi / 2);
  else
    s += fmax (0, (deep * cos (psi) + c->perimeter_mm) / sin (psi));
  return fmax (0, s + c->house->let_in_clear_mm - radius * tan (fabs (turn) / 2));
}

/* What the corner between edge @before and the next one asks of the skirts beside it. */
static SqSkirtEnd
end_at (const SqPlate *plate, guint before, gboolean is_end, double *give_mm)
{
  const SqChoices *c = &plate->making->choices;
  const SqFinishedEdge *next = edge_at (plate, before + 1);
  const SqFinishedEdge *other = is_end ? next : edge_at (plate, before);
  gboolean to_skirt = other->build == SQ_EDGE_FOLDED && other->is_straight;
  SqSkirtEnd end = { .corner = next->corner, .turn_rad = next->turn_rad };

  end.meets_wall = !to_skirt || next->radius_mm > 0 || next->turn_rad < -SQ_SAME_SKIRT_RAD;
  end.allowance_mm = end.meets_wall ? c->join_mm : c->corner_mm;
  *give_mm = gives_way_mm (plate, next->turn_rad, next->radius_mm, to_skirt);
  return end;
}

static gboolean
add_skirt (SqPlate *plate, guint from, guint *next)
{
  const SqChoices *c = &plate->making->choices;
  double whole = sq_path_length_mm (plate->ring->path), longest = 0, give[2], length = 0;
  SqPlateSkirt skirt = { 0 };

  *next = from;
  do
    {
      const SqFinishedEdge *e = edge_at (plate, *next);
      double own = e->own_end_mm - e->own_start_mm;
      if (own > longest + SQ_TIE_MM || skirt.edge == 0)
        {
          skirt.edge = e->id;
          longest = own;
        }
      length += own;
      (*next)++;
    }
  while (goes_on (plate, *next - 1) && *next - from < plate->ring->n_edges);
  skirt.start = end_at (plate, from + plate->ring->n_edges - 1, FALSE, &give[0]);
  skirt.end = end_at (plate, *next - 1, TRUE, &give[1]);
  skirt.from_mm = edge_at (plate, from)->own_start_mm + give[0]
                  + (from >= plate->ring->n_edges ? whole : 0);
  skirt.length_mm = length - give[0] - give[1];
  skirt.to_mm = skirt.from_mm + skirt.length_mm;
  if (skirt.length_mm < c->house->join_clear_mm && give[0] + give[1] > 0)
    {
      SqProblem *p = sq_report_edge (plate->making->cover->problems, SQ_PROBLEM_LET_IN_NO_ROOM,
                                     SQ_FAULT, c->cushion, skirt.edge);
      p->facts[0] = give[0] + give[1];
      p->facts[1] = length;
      p->fixes[0] = (SqFix){ SQ_FIX_EDGE_BUILD, skirt.edge, SQ_EDGE_BOXED };
      p->fixes[1] = (SqFix){ SQ_FIX_BUILD, 0, SQ_BUILD_BOXED };
      return FALSE;
    }
  skirt.from = sq_path_point_at (plate->ring->path, skirt.from_mm, &skirt.along);
  /* From corner to corner, not at a station just before one. */
  SqPoint to = sq_path_point_at (plate->ring->path, skirt.to_mm, NULL);
  skirt.along = sq_unit (sq_sub (to, skirt.from));
  skirt.outward = sq_right (skirt.along);
  g_array_append_val (plate->skirts, skirt);
  return TRUE;
}

gboolean
sq_plate_init (SqPlate *plate, SqMaking *making, double depth_mm, double wrap_mm)
{
  const SqFinishedRing *ring = &making->cover->finished->rings[0];
  guint first = 0;
  gboolean fits = TRUE;

  *plate = (SqPlate){ .making = making, .ring = ring, .depth_mm = depth_mm, .wrap_mm = wrap_mm };
  plate->skirts = g_array_new (FALSE, FALSE, sizeof (SqPlateSkirt));
  while (first < ring->n_edges && goes_on (plate, first + ring->n_edges - 1))
    first++;
  for (guint i = first, next; i < first + ring->n_edges; i = next)
    if (edge_at (plate, i)->build == SQ_EDGE_FOLDED && edge_at (plate, i)->is_straight)
      fits = add_skirt (plate, i, &next) && fits;
    else
      next = i + 1;
  for (guint i = 0; i < plate->skirts->len; i++)
    {
      SqPlateSkirt *skirt = skirt_at (plate, i);
      skirt->start.taken_mm = wrap_mm * tan (skirt->start.turn_rad / 2);
      skirt->end.taken_mm = wrap_mm * tan (skirt->end.turn_rad / 2);
    }
  return fits;
}

void
sq_plate_clear (SqPlate *plate)
{
  g_clear_pointer (&plate->skirts, g_array_unref);
  g_clear_pointer (&plate->stretches, g_array_unref);
}

void
sq_plate_break (SqPlate *plate, const GArray *breaks_mm, const SqZipRun *zip)
{
  g_autoptr (GArray) breaks = g_array_new (FALSE, FALSE, sizeof (double));
  double whole = sq_path_length_mm (plate->ring->path);

  if (breaks_mm != NULL)
    g_array_append_vals (breaks, breaks_mm->data, breaks_mm->len);
  for (guint i = 0; i < plate->skirts->len; i++)
    {
      g_array_append_val (breaks, skirt_at (plate, i)->from_mm);
      g_array_append_val (breaks, skirt_at (plate, i)->to_mm);
    }
  plate->stretches = sq_stretches_new (plate->ring, breaks, zip);
  for (guint i = 0; i < plate->skirts->len; i++)
    {
      SqPlateSkirt *skirt = skirt_at (plate, i);
      sq_stretches_between (plate->stretches, skirt->from_mm, skirt->to_mm, whole, &skirt->first,
                            &skirt->n);
    }
}

void
sq_plate_gap (const SqPlate *plate, guint i, guint *first, guint *n)
{
  const SqPlateSkirt *skirt = skirt_at (plate, i), *next = skirt_at (plate, i + 1);
  guint all = plate->stretches->len;

  *first = (skirt->first + skirt->n) % all;
  *n = (next->first + all - *first) % all;
}

/* ---- notches ------------------------------------------------------------------------------- */

/* Whether the dart at @corner is listed: a cover may have two plates. */
static gboolean
is_listed (const SqPlate *plate, SqId corner)
{
  const SqCover *cover = plate->making->cover;

  for (guint i = 0; i < cover->problems->len; i++)
    if (sq_cover_problem (cover, i)->code == SQ_PROBLEM_NOTCH_IS_DART
        && sq_cover_problem (cover, i)->place.item == corner)
      return TRUE;
  return FALSE;
}

/* Sizes of the notch between @end of one skirt and the next one's start, and whether it is a dart.
 * The formulas follow from the two cut lines, a_c outside each skirt's end, and the gap's bisector
 * between. */
static SqCornerNotch
find_notch (SqPlate *plate, SqSkirtEnd *end, SqSkirtEnd *start)
{
  const SqChoices *c = &plate->making->choices;
  double phi = end->turn_rad, s = sin (phi / 2), depth = plate->depth_mm + c->perimeter_mm;
  double height = plate->depth_mm - plate->wrap_mm, a = c->corner_mm;
  SqCornerNotch notch = { .corner = end->corner };
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
  end->allowance_mm = start->allowance_mm = notch.dart ? closing : a;
  end->is_dart = start->is_dart = notch.dart;
  if (notch.dart && !is_listed (plate, notch.corner))
    {
      SqProblem *p = sq_report_corner (plate->making->cover->problems, SQ_PROBLEM_NOTCH_IS_DART,
                                       SQ_NOTE, c->cushion, notch.corner);
      p->facts[0] = a;
      p->facts[1] = fmax (0, notch.leg_mm);
    }
  if (notch.dart)
    {
      notch.leg_mm = notch.mouth_mm = 0;
      notch.apex_mm = depth / cos (phi / 2);
    }
  return notch;
}

GArray *
sq_plate_find_notches (SqPlate *plate)
{
  GArray *notches = g_array_new (FALSE, FALSE, sizeof (SqCornerNotch));

  for (guint i = 0; i < plate->skirts->len; i++)
    {
      SqPlateSkirt *skirt = skirt_at (plate, i);
      SqPlateSkirt *before = skirt_at (plate, i + plate->skirts->len - 1);
      if (skirt->start.meets_wall)
        continue;
      SqCornerNotch notch = find_notch (plate, &before->end, &skirt->start);
      g_array_append_val (notches, notch);
    }
  return notches;
}

/* ---- the piece ----------------------------------------------------------------------------- */

/* A point of a skirt: @along it from its start, @down from the fold, spread flat. */
static SqPoint
on_skirt (const SqPlateSkirt *skirt, double along, double down)
{
  return sq_moved (sq_moved (skirt->from, skirt->along, along), skirt->outward, down);
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

/* The skirt hangs down from the face; below that a mitred wrap turns under. */
static void
add_skirt_patches (SqDraft *draft, const SqPlate *plate, const SqPlateSkirt *skirt)
{
  double h = plate->making->choices.thickness_mm, hang = plate->depth_mm - plate->wrap_mm;
  double l = skirt->length_mm;
  SqVector u = skirt->along, o = skirt->outward;
  SqPoint3 ex = mix (sq_scale (u, u.x), -o.x), ey = mix (sq_scale (u, u.y), -o.y);

  sq_draft_patch (draft, SQ_PATCH_PLANE,
                  quad (skirt->from, on_skirt (skirt, 0, hang), on_skirt (skirt, l, hang),
                        on_skirt (skirt, l, 0)),
                  skirt->from, (SqPoint3){ skirt->from.x, skirt->from.y, h }, ex, ey, 0);
  if (plate->wrap_mm <= 0)
    return;
  SqPoint start = on_skirt (skirt, 0, hang);
  ex = mix (sq_add (sq_scale (u, u.x), sq_scale (o, -o.x)), 0);
  ey = mix (sq_add (sq_scale (u, u.y), sq_scale (o, -o.y)), 0);
  sq_draft_patch (draft, SQ_PATCH_PLANE,
                  quad (start, on_skirt (skirt, skirt->start.taken_mm, plate->depth_mm),
                        on_skirt (skirt, l - skirt->end.taken_mm, plate->depth_mm),
                        on_skirt (skirt, l, hang)),
                  start, (SqPoint3){ skirt->from.x, skirt->from.y, h - hang }, ex, ey, 0);
}

static guint
draw_skirt_end (SqDraft *draft, const SqPlate *plate, const SqPlateSkirt *skirt, gboolean is_start)
{
  const SqSkirtEnd *end = is_start ? &skirt->start : &skirt->end;
  double hang = plate->depth_mm - plate->wrap_mm;
  guint run = sq_draft_run (draft, end->meets_wall ? SQ_RUN_JOIN : SQ_RUN_CORNER, skirt->edge,
                            end->allowance_mm);

  if (is_start)
    sq_draft_node (draft, skirt->from, 0);
  else
    sq_draft_node (draft, on_skirt (skirt, skirt->length_mm - end->taken_mm, plate->depth_mm), 0);
  if (plate->wrap_mm > 0)
    sq_draft_node (draft, on_skirt (skirt, is_start ? 0 : skirt->length_mm, hang), 0);
  return run;
}

static void
draw_skirt (SqDraft *draft, const SqPlate *plate, guint i, SqPlateRuns *runs)
{
  const SqPlateSkirt *skirt = skirt_at (plate, i);
  const SqChoices *c = &plate->making->choices;
  SqSkirt listed = { skirt->edge, plate->depth_mm };
  double along = 0;

  runs->starts[i] = draw_skirt_end (draft, plate, skirt, TRUE);
  for (guint k = 0; k < skirt->n; k++)
    {
      guint index = (skirt->first + k) % plate->stretches->len;
      const SqStretch *s = &g_array_index (plate->stretches, SqStretch, index);
      runs->stretches[index] = sq_draft_run (draft, s->is_zip ? SQ_RUN_ZIP : SQ_RUN_PERIMETER,
                                             s->edge, s->is_zip ? c->zip_mm : c->perimeter_mm);
      sq_draft_node (draft,
                     on_skirt (skirt, k == 0 ? skirt->start.taken_mm : along, plate->depth_mm), 0);
      along += s->to_mm - s->from_mm;
    }
  runs->ends[i] = draw_skirt_end (draft, plate, skirt, FALSE);
  g_array_append_val (draft->piece->skirts, listed);
  add_skirt_patches (draft, plate, skirt);
}

static void
draw_gap (SqDraft *draft, const SqPlate *plate, guint first, guint n, SqPlateRuns *runs)
{
  for (guint k = 0; k < n; k++)
    {
      guint index = (first + k) % plate->stretches->len;
      const SqStretch *s = &g_array_index (plate->stretches, SqStretch, index);
      runs->stretches[index] = sq_draft_stretch (draft, plate->ring, s, FALSE, SQ_RUN_PERIMETER,
                                                 plate->making->choices.perimeter_mm);
    }
}

/* Lists the two runs beside each dart, which ends where their cut lines meet. */
static void
list_darts (const SqPlate *plate, SqPiece *piece, gboolean turned_over, const SqPlateRuns *runs)
{
  double depth = plate->depth_mm + plate->making->choices.perimeter_mm;
  guint n = plate->skirts->len;

  for (guint i = 0; i < n; i++)
    {
      const SqPlateSkirt *skirt = skirt_at (plate, i), *before = skirt_at (plate, i + n - 1);
      if (!skirt->start.is_dart)
        continue;
      SqVector middle = sq_unit (sq_add (before->outward, skirt->outward));
      SqPoint tip = sq_moved (skirt->from, middle, depth / cos (skirt->start.turn_rad / 2));
      if (turned_over)
        tip.x = -tip.x;
      sq_piece_add_dart (piece, runs->ends[(i + n - 1) % n], tip);
      sq_piece_add_dart (piece, runs->starts[i], tip);
    }
}

static void
turn_runs_over (SqPlateRuns *runs, guint n_stretches, guint n_skirts, guint n_runs)
{
  for (guint i = 0; i < n_stretches; i++)
    runs->stretches[i] = n_runs - 1 - runs->stretches[i];
  for (guint i = 0; i < n_skirts; i++)
    {
      runs->starts[i] = n_runs - 1 - runs->starts[i];
      runs->ends[i] = n_runs - 1 - runs->ends[i];
    }
}

void
sq_plate_make (SqPlate *plate, const GArray *notches, gboolean turned_over, SqPlateRuns *runs)
{
  SqMaking *making = plate->making;
  const SqChoices *c = &making->choices;
  const SqClothChoice *cloth = turned_over ? &c->underside : &c->face;
  guint n_stretches = plate->stretches->len, n_skirts = plate->skirts->len;
  SqDraft draft;

  *runs = (SqPlateRuns){ 0, g_new0 (guint, n_stretches), g_new0 (guint, n_skirts + 1),
                         g_new0 (guint, n_skirts + 1) };
  sq_draft_begin (&draft, turned_over ? SQ_ROLE_UNDERSIDE : SQ_ROLE_FACE, cloth);
  g_array_append_vals (draft.piece->corner_notches, notches->data, notches->len);
  sq_draft_flat_patch (&draft, plate->ring->path, FALSE, c->thickness_mm);
  for (guint i = 0; i < n_skirts; i++)
    {
      guint first, n;
      draw_skirt (&draft, plate, i, runs);
      sq_plate_gap (plate, i, &first, &n);
      draw_gap (&draft, plate, first, n, runs);
    }
  if (n_skirts == 0)
    draw_gap (&draft, plate, 0, n_stretches, runs);
  if (turned_over)
    {
      turn_runs_over (runs, n_stretches, n_skirts, draft.piece->runs->len);
      sq_draft_turn_over (&draft, c->thickness_mm);
    }
  sq_lay_face_on_cloth (making, draft.piece, cloth, turned_over, !turned_over || c->reversible);
  runs->piece = sq_making_add_piece (making, &draft);
  list_darts (plate, sq_making_piece (making, runs->piece), turned_over, runs);
}

void
sq_plate_runs_clear (SqPlateRuns *runs)
{
  g_clear_pointer (&runs->stretches, g_free);
  g_clear_pointer (&runs->starts, g_free);
  g_clear_pointer (&runs->ends, g_free);
}

void
sq_plate_sew_corners (const SqPlate *plate, const SqPlateRuns *runs, guint step)
{
  guint n = plate->skirts->len;

  for (guint i = 0; i < n; i++)
    if (!skirt_at (plate, i)->end.meets_wall)
      sq_making_add_seam (plate->making, SQ_SEAM_CORNER, (SqSide){ runs->piece, runs->ends[i], 1 },
                          (SqSide){ runs->piece, runs->starts[(i + 1) % n], 1 }, step);
}

/* The seams of skirt @i, a new one wherever a zip begins or ends. */
static void
sew_skirt (const SqPlate *plate, guint i, const SqPlateRuns *runs, const SqWallSide *other,
           const SqSkirtSeams *seams, const GArray *places)
{
  const SqPlateSkirt *skirt = skirt_at (plate, i);
  double whole = sq_path_length_mm (plate->ring->path), from = 0;
  guint all = plate->stretches->len;

  for (guint at = 0, end; at < skirt->n; at = end)
    {
      gboolean zip = g_array_index (plate->stretches, SqStretch, (skirt->first + at) % all).is_zip;
      double to = from;
      for (end = at; end < skirt->n; end++)
        {
          const SqStretch *s = &g_array_index (plate->stretches, SqStretch,
                                               (skirt->first + end) % all);
          if (s->is_zip != zip)
            break;
          to += s->to_mm - s->from_mm;
        }
      guint first = (skirt->first + at) % all;
      guint seam = sq_making_add_seam (
          plate->making, zip ? SQ_SEAM_ZIP : seams->kind,
          sq_ring_side (runs->piece, runs->stretches, plate->stretches, first, end - at, FALSE),
          sq_ring_side (other->piece, other->runs, plate->stretches, first, end - at,
                        other->mirrored),
          zip ? seams->zip_step : seams->step);
      double taken = at == 0 ? skirt->start.taken_mm : 0;
      double length = sq_cover_seam (plate->making->cover, seam)->length_a_mm;
      for (guint k = 0; k < places->len; k++)
        {
          const SqNotchPlace *place = &g_array_index (places, SqNotchPlace, k);
          double station = sq_station_on_ring_mm (place->station_mm - skirt->from_mm, whole);
          double along = station - from - taken;
          if (station > from && station < to && along > 1 && along < length - 1)
            sq_notch_seam (plate->making, seam, along, place->ticks);
        }
      from = to;
    }
}

void
sq_plate_sew_skirts (const SqPlate *plate, const SqPlateRuns *runs, const SqWallSide *other,
                     const SqSkirtSeams *seams, const GArray *places)
{
  for (guint i = 0; i < plate->skirts->len; i++)
    sew_skirt (plate, i, runs, other, seams, places);
}
