/* SPDX-License-Identifier: GPL-3.0-or-later */
/* How the parallels of two neighbours are joined at their corner. */
#include "geometry/offset-chain.h"

#include "base/units.h"

/* A corner as the join rules see it. */
typedef struct
{
  const SqOffsetSide *a, *b;
  const SqJoinRule *rule;
  SqPoint corner;
  double turn_rad;
  double sine, cosine;         /* of the turn */
  gboolean turns_back;         /* all the way: its sine tells nothing */
  gboolean is_even;            /* the same distance on both sides */
  double larger_mm;            /* of the distances, without sign */
  double prolong_a, prolong_b; /* of the parallels' tangents until they meet; < 0: cut back */
  SqPoint tip;                 /* where they meet; not finite for a full turn back */
} Corner;

/* A turn of half a circle is one to the left where the path returns on its own left. Where the two
 * sides lie within a point of each other until their bends part them, the bends decide. */
static void
find_turn (Corner *c)
{
  double bend = 1 / (c->a->radius_mm - c->a->by_mm) + 1 / (c->b->radius_mm - c->b->by_mm);
  double least = fmax (SQ_STRAIGHT_RAD, sqrt (4 * fabs (bend) * SQ_COINCIDE_MM));

  c->turns_back = c->cosine < 0 && fabs (c->sine) <= least;
  if (c->turns_back)
    c->turn_rad = bend < 0 ? G_PI : -G_PI;
  else
    c->turn_rad = atan2 (c->sine, c->cosine);
}

static Corner
corner_of (const SqOffsetSide *a, const SqOffsetSide *b, SqPoint at, const SqJoinRule *rule)
{
  Corner c = { .a = a, .b = b, .rule = rule, .corner = at };

  c.sine = sq_cross (a->end, b->start);
  c.cosine = sq_dot (a->end, b->start);
  find_turn (&c);
  c.is_even = fabs (a->by_mm - b->by_mm) <= SQ_SAME_DISTANCE_MM;
  c.larger_mm = fmax (fabs (a->by_mm), fabs (b->by_mm));
  if (c.is_even && c.cosine > -0.5)
    c.prolong_a = c.prolong_b = a->by_mm * c.sine / (1 + c.cosine);
  else if (!c.turns_back && fabs (c.sine) > SQ_STRAIGHT_RAD)
    {
      c.prolong_a = (b->by_mm - a->by_mm * c.cosine) / c.sine;
      c.prolong_b = (a->by_mm - b->by_mm * c.cosine) / c.sine;
    }
  else
    c.prolong_a = c.prolong_b = copysign (INFINITY, (a->by_mm + b->by_mm) * c.turn_rad);
  c.tip = sq_moved (a->raw.to, a->end, c.prolong_a);
  return c;
}

static void
join_in_one (SqOffsetJoin *join, SqPoint at)
{
  join->at[0] = at;
  join->n = 1;
}

static void
join_start (SqOffsetJoin *join, SqTrimKind kind, SqPoint at)
{
  *join = (SqOffsetJoin){ .at = { at }, .n = 1, .kind = kind };
}

/* The next node, unless it is the last one again. */
static void
join_add (SqOffsetJoin *join, double bulge, SqPoint at)
{
  if (sq_distance (join->at[join->n - 1], at) <= SQ_COINCIDE_MM)
    return;
  join->bulge[join->n - 1] = bulge;
  join->at[join->n++] = at;
}

static gboolean
is_bent (const SqOffsetSide *side)
{
  return isfinite (side->radius_mm);
}

double
sq_offset_beyond (const SqOffsetSide *side, gboolean at_start, SqPoint p)
{
  SqPoint end = at_start ? side->raw.from : side->raw.to;
  SqVector onward = at_start ? sq_scale (side->start, -1) : side->end;

  if (!is_bent (side))
    return sq_dot (sq_sub (p, end), onward);
  double angle = sq_angle_rad (sq_sub (end, side->centre), sq_sub (p, side->centre));
  return (side->radius_mm > 0) != at_start ? angle : -angle;
}

/* Whether @p can end @side: never more than a quarter turn of a circle from where it was. */
static gboolean
is_in_reach (const SqOffsetSide *side, gboolean at_start, SqPoint p, gboolean only_onward)
{
  double by = sq_offset_beyond (side, at_start, p);

  if (only_onward && by < -SQ_COINCIDE_MM)
    return FALSE;
  return !is_bent (side) || fabs (by) <= G_PI_2;
}

/* Where the unbounded parallels meet, of two points the one nearer the tangents' tip. */
static gboolean
find_meeting (const Corner *c, gboolean only_onward, SqPoint *at)
{
  const SqSegment *a = &c->a->raw, *b = &c->b->raw;
  double least_radius = fmin (fabs (c->a->radius_mm), fabs (c->b->radius_mm));
  SqPoint found[2], goal = isfinite (c->tip.x) ? c->tip : c->corner;
  gboolean any = FALSE;

  if (c->a->is_used_up || c->b->is_used_up)
    return FALSE;
  *at = goal;
  if (!is_bent (c->a) && !is_bent (c->b))
    return isfinite (c->tip.x);
  /* hardly a corner: the tip is all but it */
  if (c->is_even && fabs (c->prolong_a) < least_radius / 10 && sq_offset_settle_on (a, b, 1, at))
    return TRUE;
  guint n = sq_segments_meet_extended (a, b, found);
  for (guint i = 0; i < n; i++)
    if (is_in_reach (c->a, FALSE, found[i], only_onward)
        && is_in_reach (c->b, TRUE, found[i], only_onward)
        && (!any || sq_distance (found[i], goal) < sq_distance (*at, goal)))
      {
        *at = found[i];
        any = TRUE;
      }
  if (any)
    sq_offset_settle_on (a, b, 1, at);
  return any;
}

/* Where the unbounded line through @through along the unit @along meets @side's line or circle,
 * the point nearest to its end there. */
static gboolean
line_meets_side (SqPoint through, SqVector along, const SqOffsetSide *side, gboolean at_start,
                 SqPoint *at)
{
  SqPoint end = at_start ? side->raw.from : side->raw.to;
  SqVector direction = at_start ? side->start : side->end, w = sq_sub (end, through);

  if (!is_bent (side))
    {
      double cross = sq_cross (direction, along);
      if (fabs (cross) < SQ_STRAIGHT_RAD)
        return FALSE;
      *at = sq_moved (end, direction, -sq_cross (w, along) / cross);
      return TRUE;
    }
  SqVector m = sq_sub (through, side->centre);
  double half_b = sq_dot (m, along), middle = -half_b, height = sq_cross (along, m);
  double half_chord = (side->radius_mm - height) * (side->radius_mm + height);
  if (half_chord < 0 || side->is_used_up)
    return FALSE;
  half_chord = sqrt (half_chord);
  double wanted = sq_dot (w, along);
  double first = middle - half_chord, second = middle + half_chord;
  *at = sq_moved (through, along, fabs (first - wanted) < fabs (second - wanted) ? first : second);
  return is_in_reach (side, at_start, *at, FALSE);
}

/* Different distances along a path that hardly turns: a step square to it, so that the parallels
 * need not meet far away. Where they overlap it stands on the farther one's normal: there the
 * nearer one ends before the other segment can bend towards it. */
static void
join_by_step (const Corner *c, SqOffsetJoin *join)
{
  SqVector along = sq_unit (sq_add (c->a->end, c->b->start));
  SqPoint from = c->a->raw.to, to = c->b->raw.from;

  if ((c->a->by_mm + c->b->by_mm) * c->turn_rad < 0)
    along = fabs (c->a->by_mm) > fabs (c->b->by_mm) ? c->a->end : c->b->start;
  if (!line_meets_side (c->corner, sq_right (along), c->a, FALSE, &from))
    from = c->a->raw.to;
  if (!line_meets_side (c->corner, sq_right (along), c->b, TRUE, &to))
    to = c->b->raw.from;
  join_start (join, SQ_TRIM_STEP, from);
  join_add (join, 0, to);
  /* on its own normal an end is where it was but for rounding */
  join->cuts_back = sq_offset_beyond (c->a, FALSE, from) < -SQ_COINCIDE_MM
                    || sq_offset_beyond (c->b, TRUE, to) < -SQ_COINCIDE_MM;
}

static gboolean
needs_step (const Corner *c)
{
  return !c->is_even && c->cosine > 0
         && (fabs (c->sine) < SQ_STRAIGHT_RAD
             || (fabs (c->turn_rad) < c->rule->step_rad && c->prolong_a * c->prolong_b < 0));
}

/* The parallels overlap: both end where they meet, which for different distances may mean that the
 * farther one is prolonged over what is cut off the nearer one. An outline drawn in by a clearance
 * of its own at every edge lives by this: its corners stay corners. */
static gboolean
join_overlap (const Corner *c, SqOffsetJoin *join)
{
  SqPoint at;

  if (!find_meeting (c, FALSE, &at))
    return FALSE;
  join_in_one (join, at);
  join->cuts_back = TRUE;
  return TRUE;
}

/* An arc about the corner. Where the distances differ it has the larger one for its radius, and
 * the nearer parallel steps out to it along its own normal. */
static void
join_by_arc (const Corner *c, SqOffsetJoin *join)
{
  gboolean by_a = fabs (c->a->by_mm) > fabs (c->b->by_mm);
  double by = by_a ? c->a->by_mm : c->b->by_mm, bulge = tan (c->turn_rad / 4);

  join_start (join, SQ_TRIM_ROUND, c->a->raw.to);
  if (!c->is_even && !by_a)
    join_add (join, 0, sq_moved (c->corner, sq_right (c->a->end), by));
  if (!c->is_even && by_a)
    {
      join_add (join, bulge, sq_moved (c->corner, sq_right (c->b->start), by));
      join_add (join, 0, c->b->raw.from);
    }
  else
    join_add (join, bulge, c->b->raw.from);
}

/* Appends the way along @side's own line or circle, or if that can't be its tangent, to the line
 * that cuts the corner square at @depth_mm; its end there is *@at. */
static gboolean
reach_square_cut (const Corner *c, const SqOffsetSide *side, gboolean at_start, SqVector bisector,
                  double depth_mm, SqPoint *at)
{
  SqPoint through = sq_moved (c->corner, bisector, depth_mm);
  SqOffsetSide tangent = {
    .raw = side->raw, .start = side->start, .end = side->end, .radius_mm = INFINITY
  };

  if (line_meets_side (through, sq_left (bisector), side, at_start, at)
      && is_in_reach (side, at_start, *at, TRUE))
    return TRUE;
  line_meets_side (through, sq_left (bisector), &tangent, at_start, at);
  return FALSE;
}

/* A mitre too long, cut square to the corner's bisector. */
static void
join_by_square (const Corner *c, SqOffsetJoin *join)
{
  SqVector bisector = sq_unit (sq_sub (c->a->end, c->b->start));
  double depth = c->rule->square_at * c->larger_mm;
  SqPoint from = c->a->raw.to, to = c->b->raw.from;
  gboolean a_reaches = reach_square_cut (c, c->a, FALSE, bisector, depth, &from);
  gboolean b_reaches = reach_square_cut (c, c->b, TRUE, bisector, depth, &to);

  join_start (join, SQ_TRIM_MITRE, a_reaches ? from : c->a->raw.to);
  if (!a_reaches)
    join_add (join, 0, from);
  join_add (join, 0, to);
  if (!b_reaches)
    join_add (join, 0, c->b->raw.from);
}

static gboolean
is_too_long (const Corner *c, SqPoint tip)
{
  SqVector to_tip = sq_sub (tip, c->corner);
  SqVector bisector = sq_unit (sq_sub (c->a->end, c->b->start));

  return !isfinite (tip.x)
         || (sq_norm (to_tip) > c->rule->mitre_limit * c->larger_mm
             && sq_dot (to_tip, bisector) > c->rule->square_at * c->larger_mm);
}

/* The parallels part: both are prolonged until they meet. */
static void
join_by_mitre (const Corner *c, SqOffsetJoin *join)
{
  SqPoint tip;
  gboolean meets = find_meeting (c, TRUE, &tip);

  if (!meets)
    tip = c->tip;
  if (is_too_long (c, tip))
    join_by_square (c, join);
  else if (meets)
    join_in_one (join, tip);
  else
    {
      join_start (join, SQ_TRIM_BEVEL, c->a->raw.to);
      join_add (join, 0, tip);
      join_add (join, 0, c->b->raw.from);
    }
}

gboolean
sq_offset_join (const SqOffsetSide *a, const SqOffsetSide *b, SqPoint corner,
                const SqJoinRule *rule, SqOffsetJoin *join)
{
  Corner c = corner_of (a, b, corner, rule);

  *join = (SqOffsetJoin){ .n = 0 };
  if (c.is_even && sq_distance (a->raw.to, b->raw.from) <= SQ_COINCIDE_MM)
    join_in_one (join, isfinite (c.tip.x) ? c.tip : a->raw.to);
  else if (needs_step (&c))
    join_by_step (&c, join);
  else if (rule->kind == SQ_JOIN_ROUND && a->by_mm * c.turn_rad >= 0 && b->by_mm * c.turn_rad >= 0)
    join_by_arc (&c, join);
  else if (c.prolong_a >= 0 && c.prolong_b >= 0)
    join_by_mitre (&c, join);
  else
    return join_overlap (&c, join);
  return TRUE;
}

void
sq_offset_join_through (const SqOffsetSide *a, const SqOffsetSide *b, SqPoint corner,
                        SqOffsetJoin *join)
{
  double cosine = sq_dot (a->end, b->start), turn = sq_angle_rad (a->end, b->start);
  double nearer = fabs (a->by_mm) < fabs (b->by_mm) ? a->by_mm : b->by_mm;
  gboolean is_gap = a->by_mm * turn >= 0 && b->by_mm * turn >= 0;
  SqPoint between = corner;

  /* where they part, the nearer one is prolonged as far as the normal under the farther one */
  if (is_gap && cosine > 0)
    between = sq_moved (corner, sq_right (nearer == a->by_mm ? b->start : a->end), nearer / cosine);
  join_start (join, SQ_TRIM_STEP, a->is_used_up && !is_gap ? corner : a->raw.to);
  join_add (join, 0, between);
  join_add (join, 0, b->is_used_up && !is_gap ? corner : b->raw.from);
}
