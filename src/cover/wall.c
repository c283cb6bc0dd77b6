/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "cover/wall.h"

#include "base/units.h"
#include "cover/notches.h"
#include "cover/ways.h"

static const SqStrip *
strip_of (const SqWall *wall, guint i)
{
  return &g_array_index (wall->strips, SqStrip, i);
}

/* Whether strip @i is an upper and a lower one with the zip between; a zip that is slit in has one
 * strip, as high as the wall. */
static gboolean
has_two_parts (const SqMaking *making, const SqWall *wall, guint i)
{
  return strip_of (wall, i)->kind == SQ_STRIP_ZIP && making->choices.zip_method == SQ_ZIP_TWO_PART;
}

static const SqFinishedRing *
ring_of (const SqMaking *making, const SqWall *wall)
{
  return &making->cover->finished->rings[wall->ring];
}

static SqPoint3
lifted (SqPoint p, double z)
{
  return (SqPoint3){ p.x, p.y, z };
}

void
sq_draft_wall_patches (SqDraft *draft, const SqPath *ring, double from, double to, double y0,
                       double y1, double foot, const double *fold_at)
{
  double whole = sq_path_length_mm (ring), first = sq_station_on_ring_mm (from, whole);
  gboolean all_round = to - from >= whole - SQ_COINCIDE_MM;
  g_autoptr (SqPath) part = sq_path_part (ring, first,
                                          all_round ? first : sq_station_on_ring_mm (to, whole));
  double station = from;

  for (guint i = 0; i < sq_path_n_segments (part); i++)
    {
      SqSegment s = sq_path_segment (part, i);
      double length = sq_segment_length_mm (&s);
      SqVector dir = sq_segment_direction (&s, 0);
      double radius = sq_segment_is_arc (&s) ? sq_segment_radius_mm (&s) : 0;
      double x0 = station, x1 = station + length;
      if (fold_at != NULL)
        {
          /* Seen from its right side the layer below runs the other way and is bent the other
           * way. */
          double left = 2 * *fold_at - x1;
          x1 = 2 * *fold_at - x0;
          x0 = left;
          dir = sq_scale (sq_segment_direction (&s, 1), -1);
          radius = -radius;
        }
      SqPoint start = fold_at != NULL ? s.to : s.from;
      sq_draft_patch (draft, radius != 0 ? SQ_PATCH_CYLINDER : SQ_PATCH_PLANE,
                      sq_path_new_rectangle (x0, y0, x1, y1), sq_point (x0, y0),
                      lifted (start, foot + y0), lifted (dir, 0), (SqPoint3){ 0, 0, 1 }, radius);
      station += length;
    }
}

/* ---- a strip ------------------------------------------------------------------------------- */

static void
draw_tuck (SqDraft *draft, double allowance, double tuck, double x, double y, double dir)
{
  for (guint k = 0; k < 2 && tuck > 0; k++, x += dir * tuck)
    {
      sq_draft_run (draft, SQ_RUN_FOLD, 0, allowance);
      sq_draft_node (draft, sq_point (x, y), 0);
    }
}

/* One long side of a strip: lower (travelled with the ring) or upper (against it). */
static guint
draw_long_side (SqDraft *draft, const SqMaking *making, const SqWall *wall, const SqStrip *strip,
                double y, gboolean upper)
{
  const SqChoices *c = &making->choices;
  double whole = sq_path_length_mm (ring_of (making, wall)->path);
  double before = strip->tuck_before ? c->zip_tuck_mm : 0;
  double after = strip->tuck_after ? c->zip_tuck_mm : 0;
  double dir = upper ? -1 : 1, x = upper ? strip->to_mm : strip->from_mm;
  guint first, n, first_run = 0;

  sq_stretches_between (wall->stretches, strip->from_mm, strip->to_mm, whole, &first, &n);
  draw_tuck (draft, c->perimeter_mm, upper ? after : before, x - dir * 2 * (upper ? after : before),
             y, dir);
  for (guint k = 0; k < n; k++)
    {
      guint index = (first + (upper ? n - 1 - k : k)) % wall->stretches->len;
      const SqStretch *s = &g_array_index (wall->stretches, SqStretch, index);
      gboolean zip = !upper && s->is_zip;
      guint run = sq_draft_run (draft, zip ? SQ_RUN_ZIP : SQ_RUN_PERIMETER, s->edge,
                                zip ? c->zip_mm : c->perimeter_mm);
      first_run = k == 0 ? run : first_run;
      sq_draft_node (draft, sq_point (x, y), 0);
      x += dir * (s->to_mm - s->from_mm);
    }
  x = upper ? strip->from_mm : strip->to_mm;
  draw_tuck (draft, c->perimeter_mm, upper ? before : after, x, y, dir);
  return first_run;
}

static guint
sides_of (const SqFinishedRing *ring, const SqStrip *strip)
{
  double whole = sq_path_length_mm (ring->path);
  guint sides = 0;

  for (guint i = 0; i < ring->n_edges; i++)
    for (int turn = -1; turn <= 1; turn++)
      {
        double from = ring->edges[i].start_mm + turn * whole,
               to = ring->edges[i].end_mm + turn * whole;
        double shared = fmin (to, strip->to_mm) - fmax (from, strip->from_mm);
        /* A return or a hand's breadth round a corner gives a strip no new name; half an edge
         * does. */
        if (shared > fmin (0.5 * (to - from), 0.2 * (strip->to_mm - strip->from_mm)) - SQ_TIE_MM)
          sides |= ring->edges[i].side;
      }
  return sides;
}

static void
mark_corners (SqPiece *piece, const SqFinishedRing *ring, const SqStrip *strip, double y0,
              double y1)
{
  double whole = sq_path_length_mm (ring->path);

  for (guint i = 0; i < ring->n_edges; i++)
    for (int turn = -1; turn <= 1; turn++)
      {
        double x = ring->edges[i].start_mm + turn * whole;
        if (x < strip->from_mm + 1 || x > strip->to_mm - 1)
          continue;
        SqNode line[] = { { { x, y0 }, 0, 0 }, { { x, y1 }, 0, 0 } };
        sq_piece_add_mark (piece, SQ_MARK_CORNER, 1, line[0].at, 0, 0, sq_path_new (line, 2, FALSE),
                           -1, 0);
      }
}

static void
finish_strip (SqMaking *making, SqDraft *draft, const SqWall *wall, const SqStrip *strip, double y0,
              double y1)
{
  const SqFinishedRing *ring = ring_of (making, wall);

  draft->piece->sides = sides_of (ring, strip);
  draft->piece->hole = wall->ring;
  sq_draft_wall_patches (draft, ring->path, strip->from_mm, strip->to_mm, y0, y1, wall->foot_mm,
                         NULL);
  mark_corners (draft->piece, ring, strip, y0, y1);
}

/* The layer over the zip's end and the one folded back under it. */
static void
add_tuck (SqDraft *draft, const SqWall *wall, const SqPath *ring, double x, double tuck, double dir)
{
  double fold = x + dir * tuck, from = fmin (x, fold), to = fmax (x, fold);
  SqNode line[] = { { { fold, 0 }, 0, 0 }, { { fold, wall->height_mm }, 0, 0 } };

  sq_draft_wall_patches (draft, ring, from, to, 0, wall->height_mm, wall->foot_mm, NULL);
  sq_draft_wall_patches (draft, ring, from, to, 0, wall->height_mm, wall->foot_mm, &fold);
  sq_piece_add_mark (draft->piece, SQ_MARK_FOLD, 1, line[0].at, 0, 0, sq_path_new (line, 2, FALSE),
                     -1, 0);
}

static guint
draw_end (SqDraft *draft, const SqChoices *c, double x, double y)
{
  guint run = sq_draft_run (draft, SQ_RUN_JOIN, 0, c->join_mm);

  sq_draft_node (draft, sq_point (x, y), 0);
  return run;
}

static void
mark_zip (SqPiece *piece, const SqStrip *strip, double y)
{
  SqNode line[] = { { { strip->from_mm, y }, 0, 0 }, { { strip->to_mm, y }, 0, 0 } };
  sq_piece_add_mark (piece, SQ_MARK_ZIP, 1, line[0].at, 0, 0, sq_path_new (line, 2, FALSE), -1, 0);
}

/* A strip as high as the wall. */
static SqStripRuns
make_whole_strip (SqMaking *making, const SqWall *wall, guint i)
{
  const SqChoices *c = &making->choices;
  const SqStrip *strip = strip_of (wall, i);
  const SqPath *ring = ring_of (making, wall)->path;
  double whole = sq_path_length_mm (ring), height = wall->height_mm, tuck = c->zip_tuck_mm;
  double left = strip->from_mm - (strip->tuck_before ? 2 * tuck : 0);
  double right = strip->to_mm + (strip->tuck_after ? 2 * tuck : 0);
  SqStripRuns runs = { 0 };
  guint first;
  SqDraft draft;

  /* An end that meets the two zip strips is two runs. */
  gboolean zip = strip->kind == SQ_STRIP_ZIP, zip_left = FALSE, zip_right = FALSE;
  if (wall->zip.is_there && c->zip_method == SQ_ZIP_TWO_PART)
    {
      double dl = fabs (sq_station_on_ring_mm (strip->from_mm - wall->zip.to_mm + 1, whole) - 1);
      double dr = fabs (sq_station_on_ring_mm (strip->to_mm - wall->zip.from_mm + 1, whole) - 1);
      zip_left = dl < 1e-3;
      zip_right = dr < 1e-3;
    }
  sq_stretches_between (wall->stretches, strip->from_mm, strip->to_mm, whole, &first, &runs.n);
  sq_draft_begin (&draft, zip ? SQ_ROLE_ZIP_STRIP : wall->role, &c->sides);
  runs.lower_first = draw_long_side (&draft, making, wall, strip, 0, FALSE);
  runs.right[0] = runs.right[1] = draw_end (&draft, c, right, 0);
  if (zip_right)
    runs.right[1] = draw_end (&draft, c, right, height / 2);
  runs.upper_first = draw_long_side (&draft, making, wall, strip, height, TRUE);
  runs.left[1] = runs.left[0] = draw_end (&draft, c, left, height);
  if (zip_left)
    runs.left[0] = draw_end (&draft, c, left, height / 2);
  finish_strip (making, &draft, wall, strip, 0, height);
  if (strip->tuck_before)
    add_tuck (&draft, wall, ring, strip->from_mm, tuck, -1);
  if (strip->tuck_after)
    add_tuck (&draft, wall, ring, strip->to_mm, tuck, 1);
  if (zip)
    mark_zip (draft.piece, strip, height / 2);
  sq_lay_boxing_on_cloth (making, draft.piece, wall->ring == 0 && !wall->is_unmatched && !zip);
  runs.piece = sq_making_add_piece (making, &draft);
  return runs;
}

static SqStripRuns
make_zip_strip (SqMaking *making, const SqWall *wall, guint i, gboolean upper)
{
  const SqChoices *c = &making->choices;
  const SqStrip *strip = strip_of (wall, i);
  double whole = sq_path_length_mm (ring_of (making, wall)->path), y = wall->height_mm / 2;
  double y0 = upper ? y : 0, y1 = upper ? wall->height_mm : y;
  SqStripRuns runs = { 0 };
  guint first;
  SqDraft draft;

  sq_stretches_between (wall->stretches, strip->from_mm, strip->to_mm, whole, &first, &runs.n);
  sq_draft_begin (&draft, SQ_ROLE_ZIP_STRIP, &c->sides);
  if (upper)
    {
      runs.zip = sq_draft_run (&draft, SQ_RUN_ZIP, 0, c->zip_mm);
      sq_draft_node (&draft, sq_point (strip->from_mm, y0), 0);
    }
  else
    runs.lower_first = draw_long_side (&draft, making, wall, strip, y0, FALSE);
  runs.right[0] = runs.right[1] = draw_end (&draft, c, strip->to_mm, y0);
  if (upper)
    runs.upper_first = draw_long_side (&draft, making, wall, strip, y1, TRUE);
  else
    {
      runs.zip = sq_draft_run (&draft, SQ_RUN_ZIP, 0, c->zip_mm);
      sq_draft_node (&draft, sq_point (strip->to_mm, y1), 0);
    }
  runs.left[0] = runs.left[1] = draw_end (&draft, c, strip->from_mm, y1);
  draft.piece->upper = upper;
  finish_strip (making, &draft, wall, strip, y0, y1);
  sq_lay_boxing_on_cloth (making, draft.piece, FALSE);
  runs.piece = sq_making_add_piece (making, &draft);
  mark_zip (sq_making_piece (making, runs.piece), strip, y);
  return runs;
}

/* ---- the wall ------------------------------------------------------------------------------ */

static SqSide
one_run (guint piece, guint run)
{
  return (SqSide){ piece, run, 1 };
}

/* A zip strip's ends meet the halves of a plain strip's, or those of its like. */
static void
join (SqMaking *making, const SqWall *wall, const SqStripRuns *lower, const SqStripRuns *upper)
{
  guint n = wall->strips->len, n_joins = wall->is_open ? n - 1 : n;

  for (guint i = 0; i < n_joins; i++)
    {
      guint next = (i + 1) % n;
      gboolean zip_here = has_two_parts (making, wall, i);
      gboolean zip_next = has_two_parts (making, wall, next);
      sq_making_add_seam (making, SQ_SEAM_JOIN, one_run (lower[i].piece, lower[i].right[0]),
                          one_run (lower[next].piece, lower[next].left[0]), wall->steps.joins);
      if (!zip_here && !zip_next)
        continue;
      sq_making_add_seam (making, SQ_SEAM_JOIN, one_run (upper[i].piece, upper[i].right[1]),
                          one_run (upper[next].piece, upper[next].left[1]), wall->steps.joins);
    }
}

void
sq_wall_make (SqMaking *making, const SqWall *wall, SqStripRuns *upper, SqStripRuns *lower)
{
  for (guint i = 0; i < wall->strips->len; i++)
    {
      if (!has_two_parts (making, wall, i))
        {
          lower[i] = upper[i] = make_whole_strip (making, wall, i);
          continue;
        }
      upper[i] = make_zip_strip (making, wall, i, TRUE);
      lower[i] = make_zip_strip (making, wall, i, FALSE);
      sq_making_add_seam (making, SQ_SEAM_ZIP, one_run (lower[i].piece, lower[i].zip),
                          one_run (upper[i].piece, upper[i].zip), wall->steps.zip);
    }
  join (making, wall, lower, upper);
}

static void
notch (SqMaking *making, guint seam, const SqStrip *strip, double whole, double from, double to,
       gboolean backwards, const GArray *places)
{
  for (guint i = 0; i < places->len; i++)
    for (int turn = -1; turn <= 1; turn++)
      {
        const SqNotchPlace *place = &g_array_index (places, SqNotchPlace, i);
        double along = place->station_mm + turn * whole - strip->from_mm;
        /* Not at the very ends of strips, whose joins are mark enough. */
        if (along < from || along > to || along < 1 || along > strip->to_mm - strip->from_mm - 1)
          continue;
        double station = backwards ? to - along : along - from;
        if (station > 1e-6 && station < to - from - 1e-6)
          sq_notch_seam (making, seam, station, place->ticks);
      }
}

/* The seams of one long side of strip @i, a new one wherever a zip begins or ends. */
static void
sew_long_side (SqMaking *making, const SqWall *wall, guint i, const SqStripRuns *runs,
               const SqWallSide *other, gboolean upper, const GArray *places)
{
  const SqStrip *strip = strip_of (wall, i);
  double whole = sq_path_length_mm (ring_of (making, wall)->path), from = 0;
  gboolean welted = wall->ring == 0 && sq_choices_has_welt (&making->choices, upper);
  guint first, n, all = wall->stretches->len;

  sq_stretches_between (wall->stretches, strip->from_mm, strip->to_mm, whole, &first, &n);
  for (guint at = 0, end; at < n; at = end)
    {
      gboolean zip = !upper
                     && g_array_index (wall->stretches, SqStretch, (first + at) % all).is_zip;
      double to = from;
      for (end = at; end < n; end++)
        {
          const SqStretch *s = &g_array_index (wall->stretches, SqStretch, (first + end) % all);
          if (!upper && s->is_zip != zip)
            break;
          to += s->to_mm - s->from_mm;
        }
      SqSeamKind kind = zip ? SQ_SEAM_ZIP : welted ? SQ_SEAM_WELT : SQ_SEAM_PERIMETER;
      SqSide wall_side = { runs->piece,
                           upper ? runs->upper_first + n - end : runs->lower_first + at, end - at };
      guint seam = sq_making_add_seam (making, kind,
                                       sq_ring_side (other->piece, other->runs, wall->stretches,
                                                     (first + at) % all, end - at, other->mirrored),
                                       wall_side,
                                       zip     ? wall->steps.zip
                                       : upper ? wall->steps.top
                                               : wall->steps.underside);
      notch (making, seam, strip, whole, from, to, other->mirrored, places);
      from = to;
    }
}

void
sq_wall_sew (SqMaking *making, const SqWall *wall, const SqStripRuns *upper,
             const SqStripRuns *lower, const SqWallSide *above, const SqWallSide *below,
             const GArray *places)
{
  for (guint i = 0; i < wall->strips->len; i++)
    {
      sew_long_side (making, wall, i, &upper[i], above, TRUE, places);
      sew_long_side (making, wall, i, &lower[i], below, FALSE, places);
    }
}
