/* SPDX-License-Identifier: GPL-3.0-or-later */
/* Boxed: a top, an underside, its mirror image, and a boxing between them all round. */
#include "base/units.h"
#include "cover/boxing.h"
#include "cover/notches.h"
#include "cover/report.h"
#include "cover/ways.h"
#include "cover/zip.h"

enum
{
  STEP_ZIP = 1,
  STEP_JOINS,
  STEP_TOP,
  STEP_UNDERSIDE,
};

/* A stretch of a finished ring that is one run on every piece that has it. */
typedef struct
{
  double from_mm, to_mm;
  SqId edge; /* 0: a rounding */
} Stretch;

/* One ring's boxing while it is made. */
typedef struct
{
  guint ring;
  GArray *strips;    /* of SqStrip */
  GArray *stretches; /* of Stretch */
  guint first_run;   /* of the ring, on top and on underside */
  SqZipRun zip;
} Boxing;

static double
wrapped (double station, double whole)
{
  double s = fmod (station, whole);
  return s < 0 ? s + whole : s;
}

static int
compare_doubles (gconstpointer a, gconstpointer b)
{
  double x = *(const double *) a, y = *(const double *) b;
  return x < y ? -1 : x > y;
}

/* All stations at which a run begins: ends of edges and of strips. */
static GArray *
run_breaks (const SqFinishedRing *ring, const GArray *strips)
{
  GArray *breaks = g_array_new (FALSE, FALSE, sizeof (double));
  double whole = sq_path_length_mm (ring->path), zero = 0;

  g_array_append_val (breaks, zero);
  for (guint i = 0; i < ring->n_edges; i++)
    {
      double own_start = wrapped (ring->edges[i].own_start_mm, whole);
      double own_end = wrapped (ring->edges[i].own_end_mm, whole);
      g_array_append_val (breaks, own_start);
      g_array_append_val (breaks, own_end);
    }
  for (guint i = 0; strips != NULL && i < strips->len; i++)
    {
      double from = wrapped (g_array_index (strips, SqStrip, i).from_mm, whole);
      double to = wrapped (g_array_index (strips, SqStrip, i).to_mm, whole);
      g_array_append_val (breaks, from);
      g_array_append_val (breaks, to);
    }
  g_array_sort (breaks, compare_doubles);
  return breaks;
}

static SqId
edge_at (const SqFinishedRing *ring, double station)
{
  for (guint i = 0; i < ring->n_edges; i++)
    if (station > ring->edges[i].own_start_mm && station < ring->edges[i].own_end_mm)
      return ring->edges[i].id;
  return 0;
}

static GArray *
find_stretches (const SqFinishedRing *ring, const GArray *strips)
{
  GArray *stretches = g_array_new (FALSE, FALSE, sizeof (Stretch));
  g_autoptr (GArray) breaks = run_breaks (ring, strips);
  double whole = sq_path_length_mm (ring->path);

  for (guint i = 0; i < breaks->len; i++)
    {
      double from = g_array_index (breaks, double, i);
      double to = i + 1 < breaks->len ? g_array_index (breaks, double, i + 1) : whole;
      /* The node of a corner is used as it stands: its station is exact to the last bits only. */
      if (to - from <= SQ_COINCIDE_MM || whole - from <= SQ_COINCIDE_MM)
        continue;
      Stretch s = { from, to, edge_at (ring, (from + to) / 2) };
      if (stretches->len > 0)
        s.from_mm = g_array_index (stretches, Stretch, stretches->len - 1).to_mm;
      g_array_append_val (stretches, s);
    }
  g_array_index (stretches, Stretch, stretches->len - 1).to_mm = whole;
  return stretches;
}

/* Index of the stretch that begins at @station. */
static guint
stretch_from (const Boxing *b, double station, double whole)
{
  double s = wrapped (station, whole);
  guint best = 0;
  double nearest = INFINITY;

  for (guint i = 0; i < b->stretches->len; i++)
    {
      double d = fabs (g_array_index (b->stretches, Stretch, i).from_mm - s);
      d = fmin (d, whole - d);
      if (d < nearest)
        {
          nearest = d;
          best = i;
        }
    }
  return best;
}

/* The stretches that @strip runs along, as first and number, cyclic. */
static void
strip_stretches (const Boxing *b, const SqStrip *strip, double whole, guint *first, guint *n)
{
  guint last = stretch_from (b, strip->to_mm, whole);

  *first = stretch_from (b, strip->from_mm, whole);
  *n = (last + b->stretches->len - *first) % b->stretches->len;
  if (*n == 0)
    *n = b->stretches->len;
}

/* ---- top and underside --------------------------------------------------------------------- */

/* Draws one ring of a face: forwards for the top, mirrored and backwards for the underside. */
static void
draw_face_ring (SqDraft *draft, const SqFinishedRing *ring, const Boxing *b, double allowance,
                gboolean mirrored)
{
  guint n = b->stretches->len;

  for (guint k = 0; k < n; k++)
    {
      const Stretch *s = &g_array_index (b->stretches, Stretch, mirrored ? n - 1 - k : k);
      g_autoptr (SqPath) part = sq_path_part (ring->path, s->from_mm, s->to_mm);
      if (mirrored)
        {
          SqPath *turned = sq_path_mirrored (part);
          sq_path_unref (part);
          part = turned;
        }
      sq_draft_run (draft, SQ_RUN_PERIMETER, s->edge, allowance);
      for (guint i = 0; i + 1 < sq_path_n_nodes (part); i++)
        sq_draft_node (draft, sq_path_nodes (part)[i].at, sq_path_nodes (part)[i].bulge);
    }
}

static guint
make_face (SqMaking *making, const Boxing *boxings, SqPieceRole role)
{
  const SqChoices *c = &making->choices;
  const SqFinished *f = making->cover->finished;
  gboolean mirrored = role == SQ_ROLE_UNDERSIDE;
  const SqClothChoice *cloth = mirrored ? &c->underside : &c->face;
  SqDraft draft;

  sq_draft_begin (&draft, role, cloth);
  for (guint r = 0; r < f->n_rings; r++)
    {
      if (r > 0)
        sq_draft_next_ring (&draft);
      draw_face_ring (&draft, &f->rings[r], &boxings[r], c->perimeter_mm, mirrored);
    }
  double side = mirrored ? -1 : 1, z = mirrored ? 0 : c->thickness_mm;
  SqPath *region = mirrored ? sq_path_mirrored (f->rings[0].path) : sq_path_ref (f->rings[0].path);
  sq_draft_patch (&draft, SQ_PATCH_PLANE, region, sq_point (0, 0), (SqPoint3){ 0, 0, z },
                  (SqPoint3){ side, 0, 0 }, (SqPoint3){ 0, 1, 0 }, 0);
  sq_lay_face_on_cloth (making, draft.piece, cloth, mirrored, !mirrored);
  return sq_making_add_piece (making, &draft);
}

/* ---- boxing -------------------------------------------------------------------------------- */

/* Which runs of a strip do what; the numbers count from first. */
typedef struct
{
  guint piece;
  guint lower_first, upper_first, n; /* perimeter runs, as many on both */
  guint left[2], right[2], n_ends;   /* join runs, from the underside up */
  guint zip;                         /* of a zip strip */
} StripRuns;

static SqPoint3
lifted (SqPoint p, double z)
{
  return (SqPoint3){ p.x, p.y, z };
}

/* Patches for the wall along stations from … to of the ring; with @fold_at the strip lies folded
 * back there: its x is the mirror image of the station. */
static void
add_wall_patches (SqDraft *draft, const SqPath *ring, double from, double to, double y0, double y1,
                  const double *fold_at)
{
  double whole = sq_path_length_mm (ring), first = wrapped (from, whole);
  gboolean all_round = to - from >= whole - SQ_COINCIDE_MM;
  g_autoptr (SqPath) part = sq_path_part (ring, first, all_round ? first : wrapped (to, whole));
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
                      sq_path_new_rectangle (x0, y0, x1, y1), sq_point (x0, y0), lifted (start, y0),
                      lifted (dir, 0), (SqPoint3){ 0, 0, 1 }, radius);
      station += length;
    }
}

/* One side of a strip, lower (travelled with the ring) or upper (against it). */
static guint
draw_strip_side (SqDraft *draft, const Boxing *b, const SqStrip *strip, double whole,
                 double allowance, double tuck, double y, gboolean upper)
{
  guint first, n, first_run = 0;
  double before = strip->tuck_before ? tuck : 0, after = strip->tuck_after ? tuck : 0;
  double ends[2] = { upper ? after : before, upper ? before : after };
  double x = upper ? strip->to_mm + 2 * after : strip->from_mm - 2 * before;
  double dir = upper ? -1 : 1;

  strip_stretches (b, strip, whole, &first, &n);
  for (guint k = 0; k < 2 && ends[0] > 0; k++, x += dir * ends[0])
    {
      sq_draft_run (draft, SQ_RUN_FOLD, 0, allowance);
      sq_draft_node (draft, sq_point (x, y), 0);
    }
  x = upper ? strip->to_mm : strip->from_mm;
  for (guint k = 0; k < n; k++)
    {
      guint index = (first + (upper ? n - 1 - k : k)) % b->stretches->len;
      const Stretch *s = &g_array_index (b->stretches, Stretch, index);
      guint run = sq_draft_run (draft, SQ_RUN_PERIMETER, s->edge, allowance);
      first_run = k == 0 ? run : first_run;
      sq_draft_node (draft, sq_point (x, y), 0);
      x += dir * (s->to_mm - s->from_mm);
    }
  x = upper ? strip->from_mm : strip->to_mm;
  for (guint k = 0; k < 2 && ends[1] > 0; k++, x += dir * ends[1])
    {
      sq_draft_run (draft, SQ_RUN_FOLD, 0, allowance);
      sq_draft_node (draft, sq_point (x, y), 0);
    }
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
mark_fold (SqPiece *piece, double x, double height)
{
  SqNode line[] = { { { x, 0 }, 0, 0 }, { { x, height }, 0, 0 } };
  sq_piece_add_mark (piece, SQ_MARK_FOLD, 1, line[0].at, 0, 0, sq_path_new (line, 2, FALSE), -1, 0);
}

static void
finish_strip (SqMaking *making, SqDraft *draft, const Boxing *b, const SqStrip *strip, double y0,
              double y1)
{
  const SqFinishedRing *ring = &making->cover->finished->rings[b->ring];

  draft->piece->sides = sides_of (ring, strip);
  draft->piece->hole = b->ring;
  add_wall_patches (draft, ring->path, strip->from_mm, strip->to_mm, y0, y1, NULL);
  mark_corners (draft->piece, ring, strip, y0, y1);
}

/* The layer over the zip's end and the one folded back under it. */
static void
add_tuck (SqDraft *draft, const SqPath *ring, double x, double tuck, double dir, double height)
{
  double fold = x + dir * tuck;

  add_wall_patches (draft, ring, fmin (x, fold), fmax (x, fold), 0, height, NULL);
  add_wall_patches (draft, ring, fmin (x, fold), fmax (x, fold), 0, height, &fold);
  mark_fold (draft->piece, fold, height);
}

static StripRuns
make_plain_strip (SqMaking *making, const Boxing *b, const SqStrip *strip)
{
  const SqChoices *c = &making->choices;
  const SqFinishedRing *ring = &making->cover->finished->rings[b->ring];
  double whole = sq_path_length_mm (ring->path), height = c->thickness_mm, tuck = c->zip_tuck_mm;
  double left = strip->from_mm - (strip->tuck_before ? 2 * tuck : 0);
  double right = strip->to_mm + (strip->tuck_after ? 2 * tuck : 0);
  StripRuns runs = { 0 };
  guint first;
  SqDraft draft;

  /* An end that meets the two zip strips is two runs. */
  gboolean zip_left = FALSE, zip_right = FALSE;
  if (b->zip.is_there)
    {
      double dl = fabs (wrapped (strip->from_mm - b->zip.to_mm + 1, whole) - 1);
      double dr = fabs (wrapped (strip->to_mm - b->zip.from_mm + 1, whole) - 1);
      zip_left = dl < 1e-3;
      zip_right = dr < 1e-3;
    }
  strip_stretches (b, strip, whole, &first, &runs.n);
  sq_draft_begin (&draft, SQ_ROLE_BOXING, &c->sides);
  runs.lower_first = draw_strip_side (&draft, b, strip, whole, c->perimeter_mm, tuck, 0, FALSE);
  runs.right[0] = sq_draft_run (&draft, SQ_RUN_JOIN, 0, c->join_mm);
  sq_draft_node (&draft, sq_point (right, 0), 0);
  if (zip_right)
    {
      runs.right[1] = sq_draft_run (&draft, SQ_RUN_JOIN, 0, c->join_mm);
      sq_draft_node (&draft, sq_point (right, height / 2), 0);
    }
  runs.upper_first = draw_strip_side (&draft, b, strip, whole, c->perimeter_mm, tuck, height, TRUE);
  runs.left[1] = sq_draft_run (&draft, SQ_RUN_JOIN, 0, c->join_mm);
  sq_draft_node (&draft, sq_point (left, height), 0);
  runs.left[0] = runs.left[1];
  if (zip_left)
    {
      runs.left[0] = sq_draft_run (&draft, SQ_RUN_JOIN, 0, c->join_mm);
      sq_draft_node (&draft, sq_point (left, height / 2), 0);
    }
  finish_strip (making, &draft, b, strip, 0, height);
  if (strip->tuck_before)
    add_tuck (&draft, ring->path, strip->from_mm, tuck, -1, height);
  if (strip->tuck_after)
    add_tuck (&draft, ring->path, strip->to_mm, tuck, 1, height);
  sq_lay_boxing_on_cloth (making, draft.piece, b->ring == 0);
  runs.piece = sq_making_add_piece (making, &draft);
  return runs;
}

static StripRuns
make_zip_strip (SqMaking *making, const Boxing *b, const SqStrip *strip, gboolean upper)
{
  const SqChoices *c = &making->choices;
  double whole = sq_path_length_mm (making->cover->finished->rings[b->ring].path);
  double y0 = upper ? c->thickness_mm / 2 : 0, y1 = upper ? c->thickness_mm : c->thickness_mm / 2;
  StripRuns runs = { 0 };
  guint first;
  SqDraft draft;

  strip_stretches (b, strip, whole, &first, &runs.n);
  sq_draft_begin (&draft, SQ_ROLE_ZIP_STRIP, &c->sides);
  if (upper)
    {
      runs.zip = sq_draft_run (&draft, SQ_RUN_ZIP, 0, c->zip_mm);
      sq_draft_node (&draft, sq_point (strip->from_mm, y0), 0);
    }
  else
    runs.lower_first = draw_strip_side (&draft, b, strip, whole, c->perimeter_mm, 0, y0, FALSE);
  runs.right[0] = sq_draft_run (&draft, SQ_RUN_JOIN, 0, c->join_mm);
  sq_draft_node (&draft, sq_point (strip->to_mm, y0), 0);
  if (upper)
    runs.upper_first = draw_strip_side (&draft, b, strip, whole, c->perimeter_mm, 0, y1, TRUE);
  else
    {
      runs.zip = sq_draft_run (&draft, SQ_RUN_ZIP, 0, c->zip_mm);
      sq_draft_node (&draft, sq_point (strip->to_mm, y1), 0);
    }
  runs.left[0] = sq_draft_run (&draft, SQ_RUN_JOIN, 0, c->join_mm);
  sq_draft_node (&draft, sq_point (strip->from_mm, y1), 0);
  draft.piece->upper = upper;
  finish_strip (making, &draft, b, strip, y0, y1);
  sq_lay_boxing_on_cloth (making, draft.piece, FALSE);
  runs.piece = sq_making_add_piece (making, &draft);

  double y = c->thickness_mm / 2;
  SqNode line[] = { { { strip->from_mm, y }, 0, 0 }, { { strip->to_mm, y }, 0, 0 } };
  sq_piece_add_mark (sq_making_piece (making, runs.piece), SQ_MARK_ZIP, 1, line[0].at, 0, 0,
                     sq_path_new (line, 2, FALSE), -1, 0);
  return runs;
}

/* ---- seams --------------------------------------------------------------------------------- */

static SqSide
one_run (guint piece, guint run)
{
  return (SqSide){ piece, run, 1 };
}

/* Seams of a strip with the top, the underside, or both. */
static void
sew_perimeter (SqMaking *making, const Boxing *b, const SqStrip *strip, const StripRuns *upper,
               const StripRuns *lower, const GArray *places)
{
  const SqFinishedRing *ring = &making->cover->finished->rings[b->ring];
  double whole = sq_path_length_mm (ring->path);
  guint first, n, all = b->stretches->len, seams[2];

  strip_stretches (b, strip, whole, &first, &n);
  seams[0] = sq_making_add_seam (making, SQ_SEAM_PERIMETER, (SqSide){ 0, b->first_run + first, n },
                                 (SqSide){ upper->piece, upper->upper_first, n }, STEP_TOP);
  /* On the underside the same stretches stand in reverse order. */
  guint first_under = (all - first + all - n) % all;
  seams[1] = sq_making_add_seam (making, SQ_SEAM_PERIMETER,
                                 (SqSide){ 1, b->first_run + first_under, n },
                                 (SqSide){ lower->piece, lower->lower_first, n }, STEP_UNDERSIDE);

  for (guint i = 0; i < places->len; i++)
    for (int turn = -1; turn <= 1; turn++)
      {
        const SqNotchPlace *place = &g_array_index (places, SqNotchPlace, i);
        double along = place->station_mm + turn * whole - strip->from_mm;
        double length = strip->to_mm - strip->from_mm;
        if (along < 1 || along > length - 1)
          continue;
        sq_notch_seam (making, seams[0], along, place->ticks);
        sq_notch_seam (making, seams[1], length - along, place->ticks);
      }
}

static void
sew_joins (SqMaking *making, const Boxing *b, const StripRuns *lower, const StripRuns *upper)
{
  guint n = b->strips->len;

  for (guint i = 0; i < n; i++)
    {
      guint next = (i + 1) % n;
      gboolean zip_here = g_array_index (b->strips, SqStrip, i).kind == SQ_STRIP_ZIP;
      gboolean zip_next = g_array_index (b->strips, SqStrip, next).kind == SQ_STRIP_ZIP;
      gboolean mixed = zip_here != zip_next;
      sq_making_add_seam (making, SQ_SEAM_JOIN, one_run (lower[i].piece, lower[i].right[0]),
                          one_run (lower[next].piece,
                                   mixed || zip_here ? lower[next].left[0] : lower[next].left[1]),
                          STEP_JOINS);
      if (!zip_here && !zip_next)
        continue;
      sq_making_add_seam (
          making, SQ_SEAM_JOIN,
          one_run (upper[i].piece, zip_here ? upper[i].right[0] : upper[i].right[1]),
          one_run (upper[next].piece, zip_next ? upper[next].left[0] : upper[next].left[1]),
          STEP_JOINS);
    }
}

static void
make_boxing (SqMaking *making, const Boxing *b)
{
  guint n = b->strips->len;
  g_autofree StripRuns *lower = g_new0 (StripRuns, n);
  g_autofree StripRuns *upper = g_new0 (StripRuns, n);
  g_autoptr (GArray) places = sq_notch_places (making->choices.house,
                                               &making->cover->finished->rings[b->ring]);

  for (guint i = 0; i < n; i++)
    {
      const SqStrip *strip = &g_array_index (b->strips, SqStrip, i);
      if (strip->kind == SQ_STRIP_PLAIN)
        {
          lower[i] = upper[i] = make_plain_strip (making, b, strip);
          continue;
        }
      upper[i] = make_zip_strip (making, b, strip, TRUE);
      lower[i] = make_zip_strip (making, b, strip, FALSE);
      sq_making_add_seam (making, SQ_SEAM_ZIP, one_run (lower[i].piece, lower[i].zip),
                          one_run (upper[i].piece, upper[i].zip), STEP_ZIP);
    }
  sew_joins (making, b, lower, upper);
  for (guint i = 0; i < n; i++)
    sew_perimeter (making, b, &g_array_index (b->strips, SqStrip, i), &upper[i], &lower[i], places);
}

/* ---- the way ------------------------------------------------------------------------------- */

static void
zip_in_underside (SqMaking *making, guint underside)
{
  const SqFinished *f = making->cover->finished;
  g_autofree const SqPath **rings = g_new (const SqPath *, f->n_rings);
  SqPoint from, to;

  for (guint i = 0; i < f->n_rings; i++)
    rings[i] = f->rings[i].path;
  if (!sq_zip_across (making, rings, f->n_rings, &from, &to))
    return;
  SqNode line[] = { { { -from.x, from.y }, 0, 0 }, { { -to.x, to.y }, 0, 0 } };
  sq_piece_add_mark (sq_making_piece (making, underside), SQ_MARK_ZIP, 1, line[0].at, 0, 0,
                     sq_path_new (line, 2, FALSE), -1, 0);
}

static void
note_corners (SqMaking *making)
{
  const SqFinished *f = making->cover->finished;
  const SqChoices *c = &making->choices;
  GArray *problems = making->cover->problems;

  for (guint i = 0; i < f->rings[0].n_edges; i++)
    {
      const SqFinishedEdge *e = &f->rings[0].edges[i];
      if (e->turn_rad < -5 * SQ_RAD_PER_DEG && e->radius_mm <= 0)
        sq_report_corner (problems, SQ_PROBLEM_REFLEX_CLIP, SQ_NOTE, c->cushion, e->corner);
    }
  if (c->face.phase_across && c->centre_on != SQ_CENTRE_NONE && !f->rings[0].edges[0].is_straight)
    sq_report_edge (problems, SQ_PROBLEM_STRIPES_SLANT, SQ_NOTE, c->cushion,
                    f->rings[0].edges[0].id);
}

void
sq_way_boxed (SqMaking *making)
{
  const SqFinished *f = making->cover->finished;
  g_autofree Boxing *boxings = g_new0 (Boxing, f->n_rings);
  guint first_run = 0;

  for (guint r = 0; r < f->n_rings; r++)
    {
      Boxing *b = &boxings[r];
      b->ring = r;
      if (r == 0 && making->choices.zip_place == SQ_ZIP_BOXING)
        b->zip = sq_zip_in_boxing (making);
      b->strips = sq_boxing_divide (making, r, &b->zip);
      b->stretches = find_stretches (&f->rings[r], b->strips);
      b->first_run = first_run;
      first_run += b->stretches->len;
    }
  make_face (making, boxings, SQ_ROLE_FACE);
  guint underside = make_face (making, boxings, SQ_ROLE_UNDERSIDE);
  for (guint r = 0; r < f->n_rings; r++)
    if (boxings[r].strips != NULL)
      make_boxing (making, &boxings[r]);
  if (making->choices.zip_place == SQ_ZIP_UNDERSIDE)
    zip_in_underside (making, underside);
  note_corners (making);
  for (guint r = 0; r < f->n_rings; r++)
    {
      g_clear_pointer (&boxings[r].strips, g_array_unref);
      g_array_unref (boxings[r].stretches);
    }
}
