/* SPDX-License-Identifier: GPL-3.0-or-later */
/* The raw parallel, and what is reported of it. Every segment moves along its normals; neighbours
 * are joined (offset-join.c); parallels that their joins leave nothing of are dropped where their
 * own neighbours meet. What then still meets itself goes through offset-loops.c. */
#include "geometry/offset.h"

#include "base/units.h"
#include "geometry/offset-chain.h"

SqJoinRule
sq_join_rule_mitre (void)
{
  return (SqJoinRule){ SQ_JOIN_MITRE, 2.5, 2, 5 * SQ_RAD_PER_DEG };
}

SqJoinRule
sq_join_rule_round (void)
{
  return (SqJoinRule){ SQ_JOIN_ROUND, 2.5, 2, 5 * SQ_RAD_PER_DEG };
}

void
sq_offset_report_clear (SqOffsetReport *report)
{
  g_clear_pointer (&report->trims, g_array_unref);
}

/* What is being worked on: side i runs from node i, join i stands at it. */
typedef struct
{
  const SqPath *ring;
  int sense; /* 1: the ring runs counter-clockwise, −1: clockwise */
  guint n;
  SqOffsetSide *sides;
  SqOffsetJoin *joins;
  gboolean *is_gone; /* side i has no parallel, and join i does not stand */
} Work;

static guint
after (const Work *work, guint i)
{
  return i + 1 < work->n ? i + 1 : 0;
}

static guint
before (const Work *work, guint i)
{
  return i > 0 ? i - 1 : work->n - 1;
}

static SqOffsetSide
side_of (const SqPath *ring, guint i, double by_mm)
{
  SqSegment s = sq_path_segment (ring, i);
  SqOffsetSide side = { .start = sq_segment_direction (&s, 0),
                        .end = sq_segment_direction (&s, 1),
                        .by_mm = by_mm,
                        .radius_mm = INFINITY,
                        .tag = sq_path_nodes (ring)[i].tag };

  side.raw = (SqSegment){ sq_moved (s.from, sq_right (side.start), by_mm),
                          sq_moved (s.to, sq_right (side.end), by_mm), s.bulge };
  if (sq_segment_is_arc (&s))
    {
      double radius = sq_segment_radius_mm (&s);
      side.radius_mm = radius + by_mm;
      side.centre = sq_segment_centre (&s);
      side.is_used_up = side.radius_mm / radius * sq_segment_length_mm (&s) <= 2 * SQ_COINCIDE_MM;
    }
  else
    side.raw.bulge = 0;
  return side;
}

static SqPoint
side_start (const Work *work, guint i)
{
  const SqOffsetJoin *join = &work->joins[i];
  return join->at[join->n - 1];
}

static guint
next_standing (const Work *work, guint i)
{
  do
    i = after (work, i);
  while (work->is_gone[i]);
  return i;
}

static SqPoint
side_end (const Work *work, guint i)
{
  return work->joins[next_standing (work, i)].at[0];
}

/* The parallel of side @i between its joins; FALSE if they leave nothing of it. */
static gboolean
cut_side (const Work *work, guint i, SqSegment *cut)
{
  const SqOffsetSide *side = &work->sides[i];

  *cut = (SqSegment){ side_start (work, i), side_end (work, i), side->raw.bulge };
  if (side->is_used_up)
    return FALSE;
  if (!isfinite (side->radius_mm))
    return sq_dot (sq_sub (cut->to, cut->from), side->start) > SQ_COINCIDE_MM;
  double more = sq_offset_beyond (side, TRUE, cut->from) + sq_offset_beyond (side, FALSE, cut->to);
  if (more != 0)
    {
      double sweep = fabs (sq_segment_sweep_rad (&side->raw)) + more;
      cut->bulge = tan (sweep / 4) * (side->raw.bulge > 0 ? 1 : -1);
      return sweep * fabs (side->radius_mm) > SQ_COINCIDE_MM;
    }
  return TRUE;
}

static void
join_through (Work *work, guint i)
{
  sq_offset_join_through (&work->sides[before (work, i)], &work->sides[i],
                          sq_path_nodes (work->ring)[i].at, &work->joins[i]);
}

/* Whether @cut, the parallel of side @k, keeps as far from the ring's segment @i as the nearer of
 * their distances. */
static gboolean
keeps_off (const Work *work, guint k, const SqSegment *cut, guint i)
{
  SqSegment s = sq_path_segment (work->ring, i);
  double least = fmin (fabs (work->sides[i].by_mm), fabs (work->sides[k].by_mm)) - SQ_COINCIDE_MM;
  double t;

  return sq_segment_nearest_mm (&s, cut->from, &t) >= least
         && sq_segment_nearest_mm (&s, cut->to, &t) >= least
         && sq_segment_nearest_mm (cut, s.from, &t) >= least
         && sq_segment_nearest_mm (cut, s.to, &t) >= least;
}

/* A run of sides of which nothing is left: those from @first up to @next, the one that follows. */
typedef struct
{
  guint first, next;
  SqOffsetJoin join; /* the one at @next when it is not in force */
} Closing;

/* Whether the parallels on both sides of the run @first … @last meet, so that they may be cut back
 * to there and the run dropped. More than one side may hide another that stands without its
 * neighbours, or a ring of its own. But two that leave a convex corner behind can't, for the loop
 * which goes with them winds the wrong way: that is how a notch is swallowed by the allowances of
 * its own walls. Not if it all comes too near. */
static gboolean
find_closing (const Work *work, guint first, guint last, Closing *closing)
{
  guint a = before (work, first), b = after (work, last);
  SqSegment cut_a, cut_b;
  SqMeeting meeting[2];
  gboolean overlap;

  if ((first != last && after (work, first) != last) || a == b)
    return FALSE;
  cut_side (work, a, &cut_a);
  cut_side (work, b, &cut_b);
  if (sq_segments_meet (&cut_a, &cut_b, meeting, &overlap) != 1 || overlap)
    return FALSE;
  SqVector in = sq_segment_direction (&cut_a, meeting[0].ta);
  SqVector out = sq_segment_direction (&cut_b, meeting[0].tb);
  if (first != last && sq_cross (in, out) * work->sense <= 0)
    return FALSE;
  cut_a = sq_segment_part (&cut_a, 0, meeting[0].ta);
  cut_b = sq_segment_part (&cut_b, meeting[0].tb, 1);
  for (guint i = first; i != b; i = after (work, i))
    if (!keeps_off (work, a, &cut_a, i) || !keeps_off (work, b, &cut_b, i))
      return FALSE;
  sq_offset_settle_on (&work->sides[a].raw, &work->sides[b].raw, 100 * SQ_COINCIDE_MM,
                       &meeting[0].at);
  *closing = (Closing){ first, b, { .at = { meeting[0].at }, .n = 1 } };
  return TRUE;
}

/* Puts a closing in force, or takes it back. */
static void
toggle_closing (Work *work, Closing *closing)
{
  SqOffsetJoin other = work->joins[closing->next];

  for (guint i = closing->first; i != closing->next; i = after (work, i))
    work->is_gone[i] = !work->is_gone[i];
  work->joins[closing->next] = closing->join;
  closing->join = other;
}

static GArray *
find_closings (const Work *work, const gboolean *is_lost, guint start, gboolean *are_all)
{
  GArray *closings = g_array_new (FALSE, FALSE, sizeof (Closing));

  *are_all = TRUE;
  for (guint k = 1; k < work->n; k++)
    {
      guint first = (start + k) % work->n, last = first;
      Closing closing;
      if (!is_lost[first])
        continue;
      for (; is_lost[after (work, last)]; k++)
        last = after (work, last);
      if (find_closing (work, first, last, &closing))
        g_array_append_val (closings, closing);
      else
        *are_all = FALSE;
    }
  return closings;
}

/* Closes over what can be closed over, all at once, so that the order doesn't matter; @start is a
 * side that stands. What leaves nothing of a side between two closings is taken back. FALSE if
 * something is still lost. */
static gboolean
close_over_lost_sides (Work *work, const gboolean *is_lost, guint start)
{
  gboolean are_all;
  g_autoptr (GArray) closings = find_closings (work, is_lost, start, &are_all);
  Closing *closing = (Closing *) closings->data;
  g_autofree gboolean *holds = g_new (gboolean, closings->len);
  SqSegment cut;

  for (guint i = 0; i < closings->len; i++)
    toggle_closing (work, &closing[i]);
  for (guint i = 0; i < closings->len; i++)
    holds[i] = cut_side (work, before (work, closing[i].first), &cut)
               && cut_side (work, closing[i].next, &cut);
  for (guint i = 0; i < closings->len; i++)
    if (!holds[i])
      {
        toggle_closing (work, &closing[i]);
        are_all = FALSE;
      }
  return are_all;
}

static gboolean
undo_cut (Work *work, guint i)
{
  if (!work->joins[i].cuts_back)
    return FALSE;
  join_through (work, i);
  return TRUE;
}

/* Gives back to sides of which nothing is left what was cut off them, to all at once, so that the
 * order doesn't matter. That may take from their neighbours what these were prolonged by: FALSE if
 * there was nothing more to give back. */
static gboolean
undo_cuts (Work *work, gboolean *is_lost)
{
  gboolean any = FALSE;
  SqSegment cut;

  for (guint i = 0; i < work->n; i++)
    is_lost[i] = !work->is_gone[i] && !cut_side (work, i, &cut);
  for (guint i = 0; i < work->n; i++)
    if (is_lost[i])
      {
        any |= undo_cut (work, i);
        any |= undo_cut (work, next_standing (work, i));
      }
  return any;
}

/* Sides that their joins leave nothing of. */
static void
settle_lost_sides (Work *work)
{
  g_autofree gboolean *is_lost = g_new (gboolean, work->n);
  SqSegment cut;
  guint start = work->n;

  for (guint i = work->n; i-- > 0;)
    {
      is_lost[i] = !cut_side (work, i, &cut);
      if (!is_lost[i])
        start = i;
    }
  if (start < work->n && close_over_lost_sides (work, is_lost, start))
    return;
  while (undo_cuts (work, is_lost))
    ;
}

static void
add_piece (GArray *chain, SqOffsetPiece piece)
{
  /* a stretch shorter than a point is left out; the next piece starts where it would have */
  if (chain->len > 0)
    piece.s.from = g_array_index (chain, SqOffsetPiece, chain->len - 1).s.to;
  if (sq_distance (piece.s.from, piece.s.to) > SQ_COINCIDE_MM || fabs (piece.s.bulge) > 1)
    g_array_append_val (chain, piece);
}

static void
add_trim_piece (GArray *chain, SqPoint from, SqPoint to, double bulge, SqTrimKind kind,
                guint32 tag_before, guint32 tag_after)
{
  add_piece (chain, (SqOffsetPiece){ { from, to, bulge }, -1, kind, tag_before, tag_after });
}

static void
add_side (const Work *work, guint i, GArray *chain)
{
  const SqOffsetSide *side = &work->sides[i];
  SqSegment cut;

  if (cut_side (work, i, &cut) || !side->is_used_up)
    {
      SqOffsetPiece piece = { cut, (int) i, SQ_TRIM_STEP, side->tag, side->tag };
      add_piece (chain, piece);
      return;
    }
  add_trim_piece (chain, cut.from, side->centre, 0, SQ_TRIM_STEP, side->tag, side->tag);
  add_trim_piece (chain, side->centre, cut.to, 0, SQ_TRIM_STEP, side->tag, side->tag);
}

static GArray *
chain_of (const Work *work)
{
  GArray *chain = g_array_sized_new (FALSE, FALSE, sizeof (SqOffsetPiece), work->n * 2);

  for (guint i = 0; i < work->n; i++)
    {
      if (work->is_gone[i])
        continue;
      add_side (work, i, chain);
      guint next = next_standing (work, i);
      const SqOffsetJoin *join = &work->joins[next];
      for (guint k = 0; k + 1 < join->n; k++)
        add_trim_piece (chain, join->at[k], join->at[k + 1], join->bulge[k], join->kind,
                        work->sides[i].tag, work->sides[next].tag);
    }
  if (chain->len > 0)
    g_array_index (chain, SqOffsetPiece, chain->len - 1).s.to
        = g_array_index (chain, SqOffsetPiece, 0).s.from;
  return chain;
}

static GArray *
raw_parallel (const SqPath *ring, int sense, const double *by_tag_mm, const SqJoinRule *rule)
{
  guint n = sq_path_n_segments (ring);
  g_autofree SqOffsetSide *sides = g_new (SqOffsetSide, n);
  g_autofree SqOffsetJoin *joins = g_new (SqOffsetJoin, n);
  g_autofree gboolean *is_gone = g_new0 (gboolean, n);
  Work work = { ring, sense, n, sides, joins, is_gone };
  const SqNode *nodes = sq_path_nodes (ring);

  for (guint i = 0; i < n; i++)
    sides[i] = side_of (ring, i, by_tag_mm[nodes[i].tag]);
  for (guint i = 0; i < n; i++)
    if (!sq_offset_join (&sides[before (&work, i)], &sides[i], nodes[i].at, rule, &joins[i]))
      join_through (&work, i);
  settle_lost_sides (&work);
  return chain_of (&work);
}

/* Turns @chain so that it starts with the parallel of the ring's first segment that has one. */
static guint
first_piece (const GArray *chain)
{
  guint first = 0;
  const SqOffsetPiece *pieces = (const SqOffsetPiece *) chain->data;

  for (guint i = 0; i < chain->len; i++)
    if (pieces[i].side >= 0 && (pieces[first].side < 0 || pieces[i].side < pieces[first].side))
      first = i;
  return first;
}

static gboolean
is_same_trim (const SqOffsetPiece *a, const SqOffsetPiece *b)
{
  return a->side < 0 && b->side < 0 && a->kind == b->kind && a->tag_before == b->tag_before
         && a->tag_after == b->tag_after;
}

static void
note_trims (SqOffsetReport *report, const GArray *chain, guint first)
{
  const SqOffsetPiece *pieces = (const SqOffsetPiece *) chain->data, *last = NULL;

  for (guint i = 0; i < chain->len; i++)
    {
      const SqOffsetPiece *piece = &pieces[(first + i) % chain->len];
      guint end = (i + 1) % chain->len;
      if (last != NULL && is_same_trim (last, piece))
        g_array_index (report->trims, SqOffsetTrim, report->trims->len - 1).last = end;
      else if (piece->side < 0)
        {
          SqOffsetTrim trim = { piece->kind, piece->tag_before, piece->tag_after, i, end };
          g_array_append_val (report->trims, trim);
        }
      last = piece;
    }
}

/* CLEAN if the ring's segments all have one parallel each, one after the other. */
static void
note_lost_sides (SqOffsetReport *report, const GArray *chain, guint first, const SqPath *ring)
{
  guint n = sq_path_n_segments (ring), expected = 0;
  gboolean is_clean = TRUE;

  for (guint i = 0; i < chain->len && is_clean; i++)
    {
      int side = g_array_index (chain, SqOffsetPiece, (first + i) % chain->len).side;
      is_clean = side < 0 || side == (int) expected;
      expected += side >= 0 && is_clean;
    }
  report->end = is_clean && expected == n ? SQ_OFFSET_CLEAN : SQ_OFFSET_TRIMMED;
  if (report->end != SQ_OFFSET_CLEAN)
    report->where = sq_path_nodes (ring)[expected % n].at;
}

static SqPath *
path_of (const GArray *chain, guint first)
{
  g_autofree SqNode *nodes = g_new (SqNode, chain->len);

  for (guint i = 0; i < chain->len; i++)
    {
      const SqOffsetPiece *piece = &g_array_index (chain, SqOffsetPiece, (first + i) % chain->len);
      nodes[i] = (SqNode){ piece->s.from, piece->s.bulge, piece->tag_before };
    }
  return sq_path_new (nodes, chain->len, TRUE);
}

/* The one ring that is wanted, out of the raw parallel. */
static GArray *
wanted_ring (GArray *chain, int sense, SqOffsetReport *report)
{
  if (chain->len < 2)
    return NULL;
  if (sq_offset_chain_is_simple (chain) && sq_offset_chain_area_mm2 (chain) * sense > 0)
    return g_array_ref (chain);

  g_autoptr (GPtrArray) rings = sq_offset_without_loops (chain, sense);
  if (rings->len == 0)
    return NULL;
  if (rings->len > 1)
    {
      report->end = SQ_OFFSET_SPLIT;
      report->where = g_array_index ((GArray *) rings->pdata[1], SqOffsetPiece, 0).s.from;
    }
  return g_array_ref (rings->pdata[0]);
}

SqPath *
sq_path_offset (const SqPath *ring, const double *by_tag_mm, guint n_tags, const SqJoinRule *join,
                SqOffsetReport *report)
{
  SqOffsetReport own = { SQ_OFFSET_CLEAN, { 0, 0 }, NULL };

  g_return_val_if_fail (ring != NULL && sq_path_is_ring (ring), NULL);
  g_return_val_if_fail (by_tag_mm != NULL && sq_path_n_tags (ring) <= n_tags, NULL);
  g_return_val_if_fail (join != NULL, NULL);

  own.trims = g_array_new (FALSE, FALSE, sizeof (SqOffsetTrim));
  int sense = sq_path_area_mm2 (ring) < 0 ? -1 : 1;
  g_autoptr (GArray) chain = raw_parallel (ring, sense, by_tag_mm, join);
  g_autoptr (GArray) wanted = wanted_ring (chain, sense, &own);
  SqPath *result = NULL;

  if (wanted != NULL)
    {
      guint first = first_piece (wanted);
      note_trims (&own, wanted, first);
      if (own.end == SQ_OFFSET_CLEAN)
        note_lost_sides (&own, wanted, first, ring);
      result = path_of (wanted, first);
    }
  else
    {
      own.end = SQ_OFFSET_VANISHED;
      own.where = sq_path_nodes (ring)[0].at;
    }
  if (report != NULL)
    *report = own;
  else
    sq_offset_report_clear (&own);
  return result;
}

SqPath *
sq_path_offset_evenly (const SqPath *ring, double by_mm, const SqJoinRule *join,
                       SqOffsetReport *report)
{
  g_return_val_if_fail (ring != NULL, NULL);

  guint n_tags = sq_path_n_tags (ring);
  g_autofree double *by_tag_mm = g_new (double, n_tags);
  for (guint i = 0; i < n_tags; i++)
    by_tag_mm[i] = by_mm;
  return sq_path_offset (ring, by_tag_mm, n_tags, join, report);
}
