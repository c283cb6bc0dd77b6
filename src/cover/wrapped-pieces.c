/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "cover/wrapped.h"

#include "base/units.h"
#include "cover/ways.h"

/* Where the flat coordinates of a flank or of a piece's half go. */
typedef struct
{
  SqPoint at;
  SqVector ex, ey;
} Placing;

static const SqFinishedRing *
ring_of (const SqWrapping *w)
{
  return &w->making->cover->finished->rings[0];
}

/* ---- drawing ------------------------------------------------------------------------------- */

static SqVector
directed (const Placing *p, SqVector v)
{
  return sq_add (sq_scale (p->ex, v.x), sq_scale (p->ey, v.y));
}

static SqPoint
placed (const Placing *p, SqPoint q)
{
  return sq_add (p->at, directed (p, q));
}

/* Appends the nodes of @path from node @from to node @to, forwards or backwards; the last one is
 * left out. */
static void
trace (GArray *nodes, const Placing *p, const SqPath *path, guint from, guint to)
{
  const SqNode *of = sq_path_nodes (path);
  double turn = sq_cross (p->ex, p->ey) < 0 ? -1 : 1;
  gboolean backwards = to < from;

  for (guint i = from; i != to; i += backwards ? -1 : 1)
    {
      const SqNode *start = backwards ? &of[i - 1] : &of[i];
      SqNode node = { placed (p, of[i].at), (backwards ? -turn : turn) * start->bulge, start->tag };
      g_array_append_val (nodes, node);
    }
}

static void
trace_point (GArray *nodes, const Placing *p, SqPoint at)
{
  SqNode node = { .at = placed (p, at) };
  g_array_append_val (nodes, node);
}

/* All of @path as runs, one for each of its stretches. Returns the first. */
static guint
draw_runs (SqDraft *draft, const Placing *p, const SqPath *path, gboolean backwards,
           const SqId *edges, double allowance)
{
  g_autoptr (GArray) nodes = g_array_new (FALSE, FALSE, sizeof (SqNode));
  guint last = sq_path_n_segments (path), first = draft->piece->runs->len;

  trace (nodes, p, path, backwards ? last : 0, backwards ? 0 : last);
  for (guint i = 0; i < nodes->len; i++)
    {
      const SqNode *n = &g_array_index (nodes, SqNode, i);
      if (i == 0 || n[-1].tag != n->tag)
        sq_draft_run (draft, SQ_RUN_PERIMETER, edges[n->tag], allowance);
      sq_draft_node (draft, n->at, n->bulge);
    }
  return first;
}

/* The run between the two rounds, up or down the front, from the flank's first node on. */
static void
draw_front (SqDraft *draft, const SqWrapping *w, const SqFlankSide *side, const Placing *p,
            const SqPath *half)
{
  if (!sq_wrapping_has_flat (w))
    return;
  sq_draft_run (draft, SQ_RUN_PERIMETER, side->edges[0], w->making->choices.perimeter_mm);
  sq_draft_node (draft, placed (p, sq_path_nodes (half)[0].at), 0);
}

/* Runs that a flank has on the wrap, and as many on the side. */
static guint
n_flank_runs (const SqWrapping *w, const SqFlankSide *side)
{
  return 2 * side->n + (sq_wrapping_has_flat (w) ? 1 : 0);
}

/* ---- the wrap ------------------------------------------------------------------------------ */

/* Plan coordinates of a flank to the wrap's, that is to the seat's. */
static Placing
on_wrap (const SqWrapping *w, gboolean is_left, gboolean below)
{
  const SqFinished *f = w->making->cover->finished;
  SqVector away = sq_left (f->front_dir);
  Placing p = { f->front_at, sq_scale (f->front_dir, is_left ? -1 : 1), away };

  if (below)
    {
      p.at = sq_moved (p.at, away, -2 * w->middle_mm);
      p.ey = sq_scale (away, -1);
    }
  return p;
}

static void
draw_back (SqDraft *draft, const SqWrapping *w, gboolean below)
{
  const SqChoices *c = &w->making->choices;
  Placing p = on_wrap (w, FALSE, TRUE);

  for (guint k = 0; k < w->n_back; k++)
    {
      guint i = (w->back_first + (below ? w->n_back - 1 - k : k)) % w->stretches->len;
      const SqStretch *s = sq_wrapping_stretch (w, i);
      if (!below)
        {
          w->top[i] = sq_draft_stretch (draft, ring_of (w), s, FALSE, SQ_RUN_PERIMETER,
                                        c->perimeter_mm);
          continue;
        }
      g_autoptr (SqPath) part = sq_path_part (ring_of (w)->path, s->from_mm, s->to_mm);
      g_autoptr (SqPath) path = sq_wrapping_framed (w, part);
      g_autoptr (GArray) nodes = g_array_new (FALSE, FALSE, sizeof (SqNode));
      trace (nodes, &p, path, sq_path_n_segments (path), 0);
      w->underside[i] = sq_draft_run (draft, s->is_zip ? SQ_RUN_ZIP : SQ_RUN_PERIMETER, s->edge,
                                      s->is_zip ? c->zip_mm : c->perimeter_mm);
      for (guint j = 0; j < nodes->len; j++)
        sq_draft_node (draft, g_array_index (nodes, SqNode, j).at,
                       g_array_index (nodes, SqNode, j).bulge);
    }
}

static void
draw_wrap (SqDraft *draft, SqWrapping *w)
{
  double allowance = w->making->choices.perimeter_mm;
  SqFlankSide *right = &w->sides[0], *left = &w->sides[1];
  const Placing top_right = on_wrap (w, FALSE, FALSE), below_right = on_wrap (w, FALSE, TRUE);
  const Placing top_left = on_wrap (w, TRUE, FALSE), below_left = on_wrap (w, TRUE, TRUE);

  draw_back (draft, w, FALSE);
  left->on_wrap.first_run = draw_runs (draft, &top_left, left->flank->wrap, TRUE, left->edges,
                                       allowance);
  draw_front (draft, w, left, &top_left, left->flank->wrap);
  draw_runs (draft, &below_left, left->flank->wrap, FALSE, left->edges, allowance);
  draw_back (draft, w, TRUE);
  right->on_wrap.first_run = draw_runs (draft, &below_right, right->flank->wrap, TRUE, right->edges,
                                        allowance);
  draw_front (draft, w, right, &below_right, right->flank->wrap);
  draw_runs (draft, &top_right, right->flank->wrap, FALSE, right->edges, allowance);
}

static SqPoint3
lifted (SqPoint p, double z)
{
  return (SqPoint3){ p.x, p.y, z };
}

/* A band of the wrap: from node @from of both flanks to node @to of them, or to the back. */
static SqPath *
band (const SqWrapping *w, gboolean below, gboolean is_round)
{
  const SqFlank *right = w->sides[0].flank, *left = w->sides[1].flank;
  const Placing to_right = on_wrap (w, FALSE, below), to_left = on_wrap (w, TRUE, below);
  g_autoptr (GArray) nodes = g_array_new (FALSE, FALSE, sizeof (SqNode));

  if (is_round)
    {
      trace (nodes, &to_right, right->wrap, 0, right->wrap_top);
      trace_point (nodes, &to_right, sq_path_nodes (right->wrap)[right->wrap_top].at);
      trace (nodes, &to_left, left->wrap, left->wrap_top, 0);
      trace_point (nodes, &to_left, sq_path_nodes (left->wrap)[0].at);
    }
  else
    {
      g_autoptr (SqPath) part = sq_path_part (ring_of (w)->path, sq_wrapping_back_mm (w, 0),
                                              sq_wrapping_back_mm (w, 1));
      g_autoptr (SqPath) back = sq_wrapping_framed (w, part);
      trace (nodes, &to_right, right->wrap, right->wrap_top, sq_path_n_segments (right->wrap));
      trace (nodes, &to_right, back, 0, sq_path_n_segments (back));
      trace (nodes, &to_left, left->wrap, sq_path_n_segments (left->wrap), left->wrap_top);
      trace_point (nodes, &to_left, sq_path_nodes (left->wrap)[left->wrap_top].at);
    }
  for (guint i = 0; i < nodes->len; i++)
    g_array_index (nodes, SqNode, i).tag = 0;
  g_autoptr (SqPath) ring = sq_path_new ((const SqNode *) nodes->data, nodes->len, TRUE);
  /* A round may use up all the depth there is. */
  return fabs (sq_path_area_mm2 (ring)) > SQ_COINCIDE_MM ? g_steal_pointer (&ring) : NULL;
}

/* A patch that begins where the wrap, over the nose, has come @down_mm from the front line's own
 * place on it, and goes on downwards; there it is @away_mm from the front line and at height @z_mm,
 * and runs along @ex. */
static void
add_band (SqDraft *draft, const SqWrapping *w, SqPath *region, double down, double away, double z,
          SqPoint3 ex, double radius)
{
  const SqFinished *f = w->making->cover->finished;
  SqVector back = sq_left (f->front_dir);

  if (region == NULL)
    return;
  sq_draft_patch (draft, radius > 0 ? SQ_PATCH_CYLINDER : SQ_PATCH_PLANE, region,
                  sq_moved (f->front_at, back, -down),
                  lifted (sq_moved (f->front_at, back, away), z), ex, lifted (f->front_dir, 0),
                  radius);
  sq_draft_patch_along (draft, sq_scale (back, -1));
}

static SqPath *
front_band (const SqWrapping *w)
{
  g_autoptr (GArray) nodes = g_array_new (FALSE, FALSE, sizeof (SqNode));

  for (guint i = 0; i < 4; i++)
    {
      gboolean is_left = i == 1 || i == 2;
      Placing p = on_wrap (w, is_left, i >= 2);
      trace_point (nodes, &p, sq_path_nodes (w->sides[is_left].flank->wrap)[0].at);
    }
  return sq_path_new ((const SqNode *) nodes->data, nodes->len, TRUE);
}

/* Top, upper round, front, lower round and underside: each goes on where the one before ends. */
static void
add_wrap_patches (SqDraft *draft, const SqWrapping *w)
{
  double r = w->radius_mm, h = w->height_mm, down = (G_PI / 2 - 1) * r;
  SqVector back = sq_left (w->making->cover->finished->front_dir);
  const SqPoint3 to_front = lifted (sq_scale (back, -1), 0), to_back = lifted (back, 0);
  const SqPoint3 downwards = { 0, 0, -1 };
  SqPath *top = band (w, FALSE, FALSE);

  if (top != NULL)
    {
      sq_draft_flat_patch (draft, top, FALSE, h);
      sq_path_unref (top);
    }
  if (r > 0)
    add_band (draft, w, band (w, FALSE, TRUE), -r, r, h, to_front, r);
  if (sq_wrapping_has_flat (w))
    add_band (draft, w, front_band (w), down, 0, h - r, downwards, 0);
  down += h - 2 * r;
  if (r > 0)
    add_band (draft, w, band (w, TRUE, TRUE), down, 0, r, downwards, r);
  down += G_PI / 2 * r;
  add_band (draft, w, band (w, TRUE, FALSE), down, r, 0, to_back, 0);
}

void
sq_wrapping_make_wrap (SqWrapping *w)
{
  SqDraft draft;

  w->top = g_new0 (guint, w->stretches->len);
  w->underside = g_new0 (guint, w->stretches->len);
  sq_draft_begin (&draft, SQ_ROLE_WRAP, &w->making->choices.face);
  draw_wrap (&draft, w);
  add_wrap_patches (&draft, w);
  sq_lay_face_on_cloth (w->making, draft.piece, &w->making->choices.face, FALSE, TRUE);
  w->wrap = sq_making_add_piece (w->making, &draft);
  for (guint i = 0; i < 2; i++)
    {
      w->sides[i].on_wrap.piece = w->wrap;
      w->sides[i].on_wrap.n_runs = n_flank_runs (w, &w->sides[i]);
    }
}

/* ---- sides --------------------------------------------------------------------------------- */

/* A side's own coordinates from those of its flank: seen from outside, x is the ring's station. */
static Placing
on_side (const SqWrapping *w, const SqFlankSide *side, gboolean below)
{
  return (Placing){ sq_point (side->station_mm, below ? w->height_mm : 0),
                    sq_point (side->is_left ? -1 : 1, 0), sq_point (0, below ? -1 : 1) };
}

/* The end at the back: in two parts where it meets two strips with a zip between. */
static void
draw_end (SqDraft *draft, const SqWrapping *w, SqFlankSide *side, const Placing *p)
{
  const SqChoices *c = &w->making->choices;
  double x = sq_path_length_mm (side->plan);
  const double up[] = { 0, w->height_mm / 2 }, down[] = { w->height_mm, w->height_mm / 2 };
  guint n = side->meets_zip ? 2 : 1;

  for (guint k = 0; k < n; k++)
    {
      guint run = sq_draft_run (draft, SQ_RUN_JOIN, 0, c->join_mm);
      side->ends[side->is_left ? n - 1 - k : k] = run;
      sq_draft_node (draft, placed (p, sq_point (x, (side->is_left ? down : up)[k])), 0);
    }
  if (n == 1)
    side->ends[1] = side->ends[0];
}

static void
draw_side (SqDraft *draft, const SqWrapping *w, SqFlankSide *side)
{
  const SqPath *half = side->flank->side;
  double allowance = w->making->choices.perimeter_mm;
  const Placing above = on_side (w, side, FALSE), below = on_side (w, side, TRUE);

  side->on_side.first_run = draw_runs (draft, &below, half, side->is_left, side->edges, allowance);
  if (side->is_left)
    {
      draw_front (draft, w, side, &below, half);
      draw_runs (draft, &above, half, FALSE, side->edges, allowance);
      draw_end (draft, w, side, &above);
      return;
    }
  draw_end (draft, w, side, &above);
  side->on_side.first_run = draw_runs (draft, &above, half, TRUE, side->edges, allowance);
  draw_front (draft, w, side, &above, half);
}

/* The wall over segment @i of the plan, as high as the profile lets it be. */
static void
add_cell (SqDraft *draft, const SqWrapping *w, const SqFlankSide *side, guint i)
{
  const SqFlank *flank = side->flank;
  guint from = flank->cell_nodes[i], to = flank->cell_nodes[i + 1];
  const SqNode *cells = sq_path_nodes (flank->cells);
  const Placing above = on_side (w, side, FALSE), below = on_side (w, side, TRUE);
  const Placing plan = on_wrap (w, side->is_left, FALSE);
  const Placing *first = side->is_left ? &above : &below, *second = side->is_left ? &below : &above;
  SqSegment s = sq_path_segment (side->plan, i);
  g_autoptr (GArray) nodes = g_array_new (FALSE, FALSE, sizeof (SqNode));

  trace (nodes, first, flank->cells, from, to);
  trace_point (nodes, first, cells[to].at);
  trace (nodes, second, flank->cells, to, from);
  trace_point (nodes, second, cells[from].at);
  for (guint k = 0; k < nodes->len; k++)
    g_array_index (nodes, SqNode, k).tag = 0;

  /* Seen from outside a left side runs from the back to the front. */
  guint start = side->is_left ? to : from;
  SqVector dir = directed (&plan, sq_segment_direction (&s, side->is_left ? 1 : 0));
  double radius = sq_segment_is_arc (&s) ? sq_segment_radius_mm (&s) : 0;
  sq_draft_patch (draft, radius != 0 ? SQ_PATCH_CYLINDER : SQ_PATCH_PLANE,
                  sq_path_new ((const SqNode *) nodes->data, nodes->len, TRUE),
                  placed (&above, sq_point (cells[start].at.x, 0)),
                  lifted (placed (&plan, side->is_left ? s.to : s.from), 0),
                  lifted (side->is_left ? sq_scale (dir, -1) : dir, 0), (SqPoint3){ 0, 0, 1 },
                  radius);
}

/* Corners of the seat that a side goes round, where it is as high as the cushion. */
static void
mark_corners (SqPiece *piece, const SqWrapping *w, const SqFlankSide *side)
{
  const Placing above = on_side (w, side, FALSE);
  const SqPath *plan = side->plan;

  for (guint i = 1; i < sq_path_n_segments (plan); i++)
    {
      const SqNode *n = &sq_path_nodes (plan)[i];
      if (n[-1].tag == n->tag || side->edges[n[-1].tag] == 0 || side->edges[n->tag] == 0
          || n->at.y < w->radius_mm)
        continue;
      double x = sq_path_station_mm (plan, i);
      SqNode line[] = { { placed (&above, sq_point (x, 0)), 0, 0 },
                        { placed (&above, sq_point (x, w->height_mm)), 0, 0 } };
      sq_piece_add_mark (piece, SQ_MARK_CORNER, 1, line[0].at, 0, 0, sq_path_new (line, 2, FALSE),
                         -1, 0);
    }
}

void
sq_wrapping_make_side (SqWrapping *w, SqFlankSide *side)
{
  SqDraft draft;

  sq_draft_begin (&draft, SQ_ROLE_SIDE, &w->making->choices.sides);
  draw_side (&draft, w, side);
  for (guint i = 0; i < sq_path_n_segments (side->plan); i++)
    add_cell (&draft, w, side, i);
  mark_corners (draft.piece, w, side);
  draft.piece->sides = side->is_left ? SQ_SIDE_LEFT : SQ_SIDE_RIGHT;
  sq_lay_boxing_on_cloth (w->making, draft.piece, FALSE);
  side->piece = sq_making_add_piece (w->making, &draft);
  side->on_side.piece = side->piece;
  side->on_side.n_runs = n_flank_runs (w, side);
}
