/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "cover/zip.h"

#include "base/units.h"
#include "cover/finishing.h"
#include "cover/report.h"
#include "geometry/crossing.h"

/* Extent of the outer ring along @dir. */
static void
extent_along (const SqPath *ring, SqVector dir, double *low, double *high)
{
  g_autoptr (SqPath) turned = sq_path_moved (ring, -atan2 (dir.y, dir.x), sq_point (0, 0));
  SqBox box = sq_path_box (turned);

  *low = box.min.x;
  *high = box.max.x;
}

static double
width_along (const SqFinished *f, SqVector dir)
{
  double low, high;
  extent_along (f->rings[0].path, dir, &low, &high);
  return high - low;
}

/* Chord of edge @i of the outer ring: middle of rounding to middle of rounding. */
static SqVector
edge_direction (const SqFinishedRing *ring, guint i)
{
  SqPoint a = sq_path_point_at (ring->path, ring->edges[i].own_start_mm, NULL);
  SqPoint b = sq_path_point_at (ring->path, ring->edges[i].own_end_mm, NULL);
  return sq_unit (sq_sub (b, a));
}

static gboolean
is_soft (const SqChoices *c)
{
  return c->build == SQ_BUILD_KNIFE_EDGE && c->filling == SQ_FILLING_SOFT;
}

static double
needed_mm (const SqChoices *c, double width)
{
  return c->foam_folds || is_soft (c) ? width : width + c->thickness_mm;
}

/* Run from which the foam can be got in at all; a soft filling is pressed together. */
static double
least_mm (const SqChoices *c, double width)
{
  if (is_soft (c))
    return width / 2;
  return c->foam_folds ? fmin (width, width / 2 + 2 * c->thickness_mm) : width + c->thickness_mm;
}

/* The opening rule: the run against the width of the finished outline parallel to it (common
 * practice, no source). */
static void
judge_opening (SqMaking *making, double width)
{
  const SqChoices *c = &making->choices;
  SqZip *zip = &making->cover->zip;
  GArray *problems = making->cover->problems;

  zip->needed_mm = needed_mm (c, width);
  zip->sliders = zip->run_mm > c->house->two_sliders_over_mm + SQ_COINCIDE_MM ? 2 : 1;
  zip->length_mm = zip->run_mm + 2 * c->zip_extension_mm;
  if (zip->run_mm >= zip->needed_mm - SQ_OPENING_MM)
    zip->opening = SQ_OPENING_GOES_IN;
  else if (zip->run_mm >= least_mm (c, width) - SQ_OPENING_MM)
    zip->opening = SQ_OPENING_FOLD;
  else
    zip->opening = SQ_OPENING_TOO_SHORT;
  /* Nobody needs to be told how a soft filling is got in. */
  if (zip->opening == SQ_OPENING_GOES_IN || (is_soft (c) && zip->opening == SQ_OPENING_FOLD))
    return;

  gboolean fold = zip->opening == SQ_OPENING_FOLD;
  SqProblem *p = sq_report_edge (problems,
                                 fold ? SQ_PROBLEM_ZIP_FOLD_FOAM : SQ_PROBLEM_ZIP_TOO_SHORT,
                                 fold ? SQ_NOTE : SQ_FAULT, c->cushion, zip->edge);
  p->facts[0] = zip->run_mm;
  p->facts[1] = fold ? width : least_mm (c, width);
  guint n = 0;
  if (c->cushion->given
      & (SQ_GIVEN_ZIP_EDGE | SQ_GIVEN_ZIP_FROM | SQ_GIVEN_ZIP_TO | SQ_GIVEN_ZIP_AT))
    p->fixes[n++] = (SqFix){ SQ_FIX_ZIP_RULES, 0, 0 };
  if (zip->place != SQ_ZIP_UNDERSIDE
      && (sq_choices_zip_places (c->build) & (1U << SQ_ZIP_UNDERSIDE)) != 0)
    p->fixes[n++] = (SqFix){ SQ_FIX_ZIP_PLACE, 0, SQ_ZIP_UNDERSIDE };
}

/* The same return round both ends of edge @i: what is missing, shared, within the limits. */
static double
return_mm (const SqChoices *c, const SqFinishedRing *ring, guint i, double missing)
{
  const SqFinishedEdge *before = &ring->edges[(i + ring->n_edges - 1) % ring->n_edges];
  const SqFinishedEdge *after = &ring->edges[(i + 1) % ring->n_edges];
  double side = fmin (before->end_mm - before->start_mm, after->end_mm - after->start_mm);
  double most = fmin (c->house->return_most_mm, side * c->house->return_most_share);

  if (most < c->house->return_least_mm - SQ_COINCIDE_MM)
    return 0;
  return fmax (fmin (missing / 2, most), c->house->return_least_mm);
}

/* An edge with returns, and whether the foam goes in there unfolded. */
typedef struct
{
  guint edge;
  double back_mm; /* return at both ends; below 0: it stops short of them */
  double run_mm, missing_mm;
} Candidate;

/* How far short of both ends of an edge of @length a zip in the seam stops, as far as the foam, of
 * @width parallel to it, still goes in. */
static double
short_of_mm (const SqChoices *c, double length, double width)
{
  double spare = (length - least_mm (c, width)) / 2;

  return fmax (0, fmin (fmin (c->house->zip_seam_clear_mm, length / 4), spare));
}

/* Whether the zip may go on round corners: the side's middle seam does. */
static gboolean
goes_round (const SqChoices *c)
{
  return c->zip_place == SQ_ZIP_SIDE_SEAM;
}

static Candidate
try_edge (const SqChoices *c, const SqFinished *f, guint i, gboolean with_returns)
{
  const SqFinishedRing *ring = &f->rings[0];
  const SqFinishedEdge *e = &ring->edges[i];
  Candidate t = { .edge = i, .run_mm = e->end_mm - e->start_mm };
  double needed = needed_mm (c, width_along (f, edge_direction (ring, i))) - SQ_OPENING_MM;

  /* In a seam it stops short of the corners, where the seam turns, if the foam still goes in. */
  if (c->zip_place != SQ_ZIP_BOXING && !(goes_round (c) && with_returns && t.run_mm < needed))
    {
      t.back_mm = -short_of_mm (c, t.run_mm, width_along (f, edge_direction (ring, i)));
      t.run_mm += 2 * t.back_mm;
    }
  else if (with_returns && t.run_mm < needed)
    {
      t.back_mm = return_mm (c, ring, i, needed + SQ_OPENING_MM - t.run_mm);
      t.run_mm += 2 * t.back_mm;
    }
  t.missing_mm = fmax (0, needed - t.run_mm);
  return t;
}

static Candidate
choose_edge (SqMaking *making)
{
  const SqChoices *c = &making->choices;
  const SqFinished *f = making->cover->finished;
  const SqFinishedRing *ring = &f->rings[0];
  Candidate best = try_edge (c, f, f->back, TRUE);
  gboolean all_seen = TRUE;

  if (best.missing_mm <= 0)
    return best;
  Candidate longest = { .run_mm = 0 };
  SqEdgeRank longest_rank = { 0 };
  for (guint i = 0; i < ring->n_edges; i++)
    {
      Candidate t = try_edge (c, f, i, FALSE);
      SqEdgeRank rank = sq_edge_rank (f, i, t.run_mm);
      if (ring->edges[i].seen || (!all_seen && !sq_edge_rank_beats (&rank, &longest_rank)))
        continue;
      all_seen = FALSE;
      longest = t;
      longest_rank = rank;
    }
  if (longest.run_mm > 0 && longest.missing_mm <= 0)
    return longest;
  /* Nothing lets the foam in unfolded. The back stays if folding does it there. */
  double back_least = least_mm (c, width_along (f, edge_direction (ring, best.edge)))
                      - SQ_OPENING_MM;
  if (best.run_mm < back_least)
    {
      if (longest.run_mm > best.run_mm + SQ_TIE_MM)
        return longest;
      if (all_seen)
        sq_report_cushion (making->cover->problems, SQ_PROBLEM_ZIP_ALL_SEEN, SQ_WARNING, c->cushion)
            ->fixes[0]
            = (SqFix){ SQ_FIX_ZIP_PLACE, 0, SQ_ZIP_UNDERSIDE };
    }
  return best;
}

/* Where the maker put it, held to what the ring has. */
static gboolean
asked_run (SqMaking *making, SqZipRun *run, guint *edge)
{
  const SqChoices *c = &making->choices;
  const SqCushion *cushion = c->cushion;
  const SqFinishedRing *ring = &making->cover->finished->rings[0];
  guint i = making->cover->finished->back;

  if (!(cushion->given & (SQ_GIVEN_ZIP_EDGE | SQ_GIVEN_ZIP_FROM | SQ_GIVEN_ZIP_TO)))
    return FALSE;
  if (cushion->given & SQ_GIVEN_ZIP_EDGE)
    {
      for (i = 0; i < ring->n_edges && ring->edges[i].id != cushion->zip.edge;)
        i++;
      if (i == ring->n_edges)
        {
          SqProblem *p = sq_report_key (making->cover->problems, SQ_PROBLEM_ZIP_EDGE_MISSING,
                                        SQ_WARNING, cushion, "zip.edge");
          p->facts[0] = cushion->zip.edge;
          p->fixes[0] = (SqFix){ SQ_FIX_ZIP_RULES, 0, 0 };
          return FALSE;
        }
    }
  const SqFinishedEdge *e = &ring->edges[i];
  double length = e->end_mm - e->start_mm, whole = sq_path_length_mm (ring->path);
  double off = 0;
  if (c->zip_place != SQ_ZIP_BOXING)
    off = short_of_mm (c, length, width_along (making->cover->finished, edge_direction (ring, i)));
  double from = (cushion->given & SQ_GIVEN_ZIP_FROM) ? cushion->zip.from_mm : off;
  double to = (cushion->given & SQ_GIVEN_ZIP_TO) ? cushion->zip.to_mm : length - off;
  if (c->mirrored)
    {
      double mirrored_from = length - to;
      to = length - from;
      from = mirrored_from;
    }
  /* The plain boxing needs room for both its tucks and then some. */
  double most = whole - fmax (4 * c->zip_tuck_mm, 2 * c->house->join_clear_mm);
  double run_asked = to - from;
  if (run_asked > most || run_asked < c->house->join_clear_mm || from < -whole || to > 2 * whole)
    {
      SqProblem *p = sq_report_key (making->cover->problems, SQ_PROBLEM_ZIP_TOO_LONG, SQ_FAULT,
                                    cushion, "zip.to");
      p->facts[0] = run_asked;
      p->facts[1] = most;
      p->fixes[0] = (SqFix){ SQ_FIX_ZIP_RULES, 0, 0 };
      return FALSE;
    }
  *edge = i;
  *run = (SqZipRun){ TRUE, e->start_mm + from, e->start_mm + to };
  return TRUE;
}

/* The zip along the outline that is asked for, or that the rules choose. */
static SqZipRun
zip_along (SqMaking *making)
{
  const SqFinished *f = making->cover->finished;
  const SqFinishedRing *ring = &f->rings[0];
  SqZip *zip = &making->cover->zip;
  SqZipRun run;
  guint edge;

  if (!asked_run (making, &run, &edge))
    {
      Candidate best = choose_edge (making);
      edge = best.edge;
      run = (SqZipRun){ TRUE, ring->edges[edge].start_mm - best.back_mm,
                        ring->edges[edge].end_mm + best.back_mm };
    }
  zip->place = making->choices.zip_place;
  zip->method = making->choices.zip_method;
  zip->edge = ring->edges[edge].id;
  zip->from_mm = run.from_mm - ring->edges[edge].start_mm;
  zip->to_mm = run.to_mm - ring->edges[edge].start_mm;
  zip->run_mm = run.to_mm - run.from_mm;
  judge_opening (making, width_along (f, edge_direction (ring, edge)));
  return run;
}

SqZipRun
sq_zip_in_seam (SqMaking *making)
{
  return zip_along (making);
}

SqZipRun
sq_zip_in_boxing (SqMaking *making)
{
  SqZipRun run = zip_along (making);

  /* On a cushion of a hand's breadth the tucks must not meet over the zip. */
  making->choices.zip_tuck_mm = fmin (making->choices.zip_tuck_mm, making->cover->zip.run_mm / 3);
  return run;
}

/* Holds @run to a strip from @from to @to: what would be left of a strip at an end belongs to the zip
 * if it is too short to be one. FALSE: the run lies elsewhere. */
static gboolean
hold_to_strip (const SqChoices *c, double from, double to, SqZipRun *run)
{
  double clear = c->zip_place == SQ_ZIP_BOXING ? c->house->join_clear_mm : SQ_TIE_MM;

  if (run->from_mm < from - SQ_TIE_MM || run->to_mm > to + SQ_TIE_MM)
    return FALSE;
  if (run->from_mm < from + clear)
    run->from_mm = from;
  if (run->to_mm > to - clear)
    run->to_mm = to;
  return TRUE;
}

SqZipRun
sq_zip_along_back (SqMaking *making, guint back, double from, double to)
{
  const SqChoices *c = &making->choices;
  const SqFinished *f = making->cover->finished;
  SqZip *zip = &making->cover->zip;
  double width = width_along (f, edge_direction (&f->rings[0], back)), short_mm = 0;

  /* As in any seam. */
  if (c->zip_place != SQ_ZIP_BOXING)
    short_mm = short_of_mm (c, to - from, width);
  SqZipRun usual = { TRUE, from + short_mm, to - short_mm }, run = usual;
  guint edge = back;

  if (asked_run (making, &run, &edge) && !hold_to_strip (c, from, to, &run))
    {
      SqProblem *p = sq_report_key (making->cover->problems, SQ_PROBLEM_ZIP_NO_PLACE, SQ_WARNING,
                                    c->cushion, "zip.edge");
      p->fixes[0] = (SqFix){ SQ_FIX_ZIP_RULES, 0, 0 };
      run = usual;
      edge = back;
    }
  zip->place = c->zip_place;
  zip->method = c->zip_method;
  zip->edge = f->rings[0].edges[edge].id;
  zip->from_mm = run.from_mm - f->rings[0].edges[edge].start_mm;
  zip->to_mm = run.to_mm - f->rings[0].edges[edge].start_mm;
  zip->run_mm = run.to_mm - run.from_mm;
  judge_opening (making, width);
  making->choices.zip_tuck_mm = fmin (c->zip_tuck_mm, zip->run_mm / 3);
  return run;
}

/* The longest side: its direction is the zip's. */
static guint
longest_side (const SqFinished *f)
{
  const SqFinishedRing *ring = &f->rings[0];
  SqEdgeRank best = sq_edge_rank (f, 0, ring->edges[0].end_mm - ring->edges[0].start_mm);
  guint longest = 0;

  for (guint i = 1; i < ring->n_edges; i++)
    {
      SqEdgeRank rank = sq_edge_rank (f, i, ring->edges[i].end_mm - ring->edges[i].start_mm);
      if (!sq_edge_rank_beats (&rank, &best))
        continue;
      longest = i;
      best = rank;
    }
  return longest;
}

/* How far beside a line one looks for what it does there (mm): a line may run along an edge. */
#define BESIDE_MM 1e-5

typedef struct
{
  double from, to; /* distances from at along dir; from >= to: none */
} Chord;

/* The longest chord of @ring on the line, the last of equal ones. */
static Chord
longest_chord (const SqPath *ring, SqPoint at, SqVector dir)
{
  g_autoptr (GArray) ends = sq_ring_chords (ring, at, dir);
  Chord longest = { 0, 0 };
  double best = 0;

  for (guint i = 0; i + 1 < ends->len; i += 2)
    {
      Chord c = { g_array_index (ends, double, i), g_array_index (ends, double, i + 1) };
      double length = c.to - c.from;
      if (length <= SQ_TIE_MM || length <= best - SQ_TIE_MM)
        continue;
      best = fmax (best, length);
      longest = c;
    }
  return longest;
}

/* The chord of the outer ring for a zip. On a line along an edge there is only as much cloth on
 * both sides as on the poorer one. */
static Chord
zip_chord (const SqPath *ring, SqPoint at, SqVector dir)
{
  Chord left = longest_chord (ring, sq_moved (at, sq_left (dir), BESIDE_MM), dir);
  Chord right = longest_chord (ring, sq_moved (at, sq_right (dir), BESIDE_MM), dir);
  double more = (left.to - left.from) - (right.to - right.from);

  if (fabs (more) > SQ_TIE_MM)
    return more < 0 ? left : right;
  return longest_chord (ring, at, dir);
}

/* The zip's chord, if it keeps off the holes. */
static gboolean
chord_clear_of_holes (const SqPath *const *rings, guint n_rings, SqPoint at, SqVector dir,
                      SqPoint *from, SqPoint *to, gboolean *across_hole)
{
  Chord chord = zip_chord (rings[0], at, dir);

  if (chord.to <= chord.from)
    return FALSE;
  for (guint i = 1; i < n_rings; i++)
    {
      g_autoptr (GArray) inside = sq_ring_chords (rings[i], at, dir);
      if (inside->len > 0 && g_array_index (inside, double, 0) < chord.to
          && g_array_index (inside, double, inside->len - 1) > chord.from)
        {
          *across_hole = TRUE;
          return FALSE;
        }
    }
  *from = sq_moved (at, dir, chord.from);
  *to = sq_moved (at, dir, chord.to);
  return TRUE;
}

/* Where across the underside, as distances from its far side, in order of preference. */
static guint
places_across (const SqMaking *making, double across, double along, double out[3])
{
  const SqDefaults *house = making->choices.house;
  double larger = fmax (across, along), smaller = fmin (across, along);
  double third = across * house->zip_third_share;
  gboolean middle = smaller > larger * (1 - house->zip_middle_ratio) + SQ_COINCIDE_MM
                    && larger < house->zip_middle_under_mm;

  out[0] = middle ? across / 2 : third;
  out[1] = middle ? third : across / 2;
  out[2] = across - third;
  return 3;
}

static gboolean
find_edge (SqMaking *making, guint *edge)
{
  const SqCushion *cushion = making->choices.cushion;
  const SqFinishedRing *ring = &making->cover->finished->rings[0];

  for (guint i = 0; i < ring->n_edges && (cushion->given & SQ_GIVEN_ZIP_EDGE); i++)
    if (ring->edges[i].id == cushion->zip.edge)
      {
        *edge = i;
        return TRUE;
      }
  if (cushion->given & SQ_GIVEN_ZIP_EDGE)
    {
      SqProblem *p = sq_report_key (making->cover->problems, SQ_PROBLEM_ZIP_EDGE_MISSING,
                                    SQ_WARNING, cushion, "zip.edge");
      p->facts[0] = cushion->zip.edge;
      p->fixes[0] = (SqFix){ SQ_FIX_ZIP_RULES, 0, 0 };
    }
  *edge = longest_side (making->cover->finished);
  return FALSE;
}

gboolean
sq_zip_across (SqMaking *making, const SqPath *const *rings, guint n_rings, SqPoint *from,
               SqPoint *to)
{
  const SqChoices *c = &making->choices;
  const SqFinished *f = making->cover->finished;
  SqZip *zip = &making->cover->zip;
  guint edge, n;
  double low, high, along_low, along_high, places[3];
  gboolean asked = find_edge (making, &edge), across_hole = FALSE;
  gboolean asked_at = (c->cushion->given & SQ_GIVEN_ZIP_AT) != 0;
  SqVector dir = edge_direction (&f->rings[0], edge);

  /* Across: towards the side that the distance is taken from. */
  SqVector toward = sq_right (dir); /* the edge asked for */
  if (!asked)
    {
      SqVector in_frame = { sq_dot (toward, f->front_dir), sq_cross (f->front_dir, toward) };
      gboolean from_back = fabs (in_frame.y) >= fabs (in_frame.x) - 1e-9;
      if (from_back ? in_frame.y < 0 : in_frame.x < 0)
        toward = sq_scale (toward, -1);
    }
  extent_along (rings[0], toward, &low, &high);
  extent_along (rings[0], dir, &along_low, &along_high);
  n = places_across (making, high - low, along_high - along_low, places);
  if (asked_at)
    {
      places[0] = c->cushion->zip.at_mm;
      n = 1;
    }
  /* A run from left to right, or front to back, whichever way the edge was drawn. */
  SqVector dir_frame = { sq_dot (dir, f->front_dir), sq_cross (f->front_dir, dir) };
  gboolean sideways = fabs (dir_frame.x) >= fabs (dir_frame.y) - 1e-9;
  if (sideways ? dir_frame.x < 0 : dir_frame.y < 0)
    dir = sq_scale (dir, -1);

  for (guint i = 0; i < n; i++)
    {
      SqPoint at = sq_scale (toward, high - places[i]);
      if (places[i] <= 0 || places[i] >= high - low
          || !chord_clear_of_holes (rings, n_rings, at, dir, from, to, &across_hole))
        continue;
      zip->place = SQ_ZIP_UNDERSIDE;
      zip->method = c->zip_method;
      zip->edge = f->rings[0].edges[edge].id;
      zip->at_mm = places[i];
      zip->from_mm = 0;
      zip->to_mm = zip->run_mm = sq_distance (*from, *to);
      judge_opening (making, width_along (f, dir));
      return TRUE;
    }
  SqProblem *p = sq_report_key (making->cover->problems,
                                across_hole ? SQ_PROBLEM_ZIP_ACROSS_HOLE : SQ_PROBLEM_ZIP_OUTSIDE,
                                SQ_FAULT, c->cushion, asked_at ? "zip.at" : "zip.place");
  p->facts[0] = places[0];
  guint k = 0;
  if (asked_at)
    p->fixes[k++] = (SqFix){ SQ_FIX_ZIP_RULES, 0, 0 };
  if (c->build == SQ_BUILD_BOXED)
    p->fixes[k++] = (SqFix){ SQ_FIX_ZIP_PLACE, 0, SQ_ZIP_BOXING };
  else if (c->build == SQ_BUILD_KNIFE_EDGE)
    p->fixes[k++] = (SqFix){ SQ_FIX_ZIP_PLACE, 0, SQ_ZIP_BACK_SEAM };
  return FALSE;
}

void
sq_zip_mark_across (SqMaking *making, guint underside, const SqPath *const *rings, guint n_rings)
{
  SqPoint from, to;

  if (!sq_zip_across (making, rings, n_rings, &from, &to))
    return;
  SqNode line[] = { { { -from.x, from.y }, 0, 0 }, { { -to.x, to.y }, 0, 0 } };
  sq_piece_add_mark (sq_making_piece (making, underside), SQ_MARK_ZIP, 1, line[0].at, 0, 0,
                     sq_path_new (line, 2, FALSE), -1, 0);
}
