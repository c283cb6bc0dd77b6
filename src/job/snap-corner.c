/* SPDX-License-Identifier: GPL-3.0-or-later */
/* A corner lands where two of its guides meet, else on one, else on the grid. */
#include "job/snap-guides.h"

#include "base/units.h"

/* Guides that cross at less than some 6° meet nowhere a hand could mean. */
#define LEAST_SINE 0.1

/* Enough for guides that meet at a fair angle within reach; a meeting off a guide by more than
 * this is none. */
#define ROUNDS 10
#define ON_GUIDE_MM 1e-10

#define TIE_MM 1e-7

/* How far @p is off a line or circle, and in which direction that grows. */
static double
off_guide (const SqGuide *guide, SqPoint p, SqVector *normal)
{
  SqVector v = sq_sub (p, guide->at);

  if (guide->locus == SQ_GUIDE_LINE)
    {
      *normal = sq_left (guide->along);
      return sq_dot (*normal, v);
    }
  *normal = sq_unit (v);
  return sq_norm (v) - guide->radius_mm;
}

/* Newton's way from the hand to where two guides meet. */
static gboolean
meet (const SqGuide *a, const SqGuide *b, SqPoint raw, SqPoint *at)
{
  SqVector na, nb;
  double off_a = 0, off_b = 0;

  *at = raw;
  for (guint i = 0; i < ROUNDS; i++)
    {
      off_a = off_guide (a, *at, &na);
      off_b = off_guide (b, *at, &nb);
      double sine = sq_cross (na, nb);
      if (!(fabs (sine) >= LEAST_SINE))
        return FALSE;
      if (off_a == 0 && off_b == 0)
        break;
      at->x -= (off_a * nb.y - off_b * na.y) / sine;
      at->y -= (off_b * na.x - off_a * nb.x) / sine;
    }
  return fabs (off_a) <= ON_GUIDE_MM * 2 && fabs (off_b) <= ON_GUIDE_MM * 2;
}

static SqPoint
on_guide (const SqGuide *guide, SqPoint raw)
{
  SqVector normal;

  if (guide->locus == SQ_GUIDE_POINT)
    return guide->at;
  for (guint i = 0; i < 2; i++)
    {
      double off = off_guide (guide, raw, &normal);
      raw = sq_moved (raw, normal, -off);
    }
  return raw;
}

static gboolean
may_land (const SqSnapSeat *seat, guint moved, SqPoint at)
{
  return sq_distance (at, seat->raw) <= seat->question->reach_mm
         && !sq_snap_is_taken (seat, at, moved);
}

static void
give_reason (const SqSnapSeat *seat, const SqGuide *guide, SqSnap *snap)
{
  SqSnapReason *reason = &snap->reasons[snap->n_reasons++];

  *reason = guide->reason;
  reason->to = snap->at;
  if (reason->kind == SQ_SNAP_SQUARE)
    reason->figure = G_PI_2;
  else if (reason->kind == SQ_SNAP_EQUAL_LENGTH || reason->kind == SQ_SNAP_ALIGNED
           || reason->kind == SQ_SNAP_MIDDLE)
    reason->figure = sq_distance (reason->from, reason->to);
  else if (reason->kind == SQ_SNAP_SYMMETRY)
    reason->figure = fabs (sq_axis_left_mm (&seat->axis, snap->at));
}

/* Two guides that meet, or an image, which is as good as two. */
static gboolean
land_on_two (const SqSnapSeat *seat, guint moved, const SqGuides *guides, SqSnap *snap)
{
  double best_mm = INFINITY;
  const SqGuide *one = NULL, *other = NULL;

  for (guint i = 0; i < guides->n; i++)
    for (guint j = i; j < guides->n; j++)
      {
        const SqGuide *a = &guides->guides[i], *b = &guides->guides[j];
        gboolean is_point = a->locus == SQ_GUIDE_POINT;
        SqPoint at = a->at;
        if (is_point ? i != j
                     : i == j || b->locus == SQ_GUIDE_POINT || !meet (a, b, seat->raw, &at))
          continue;
        double away_mm = sq_distance (at, seat->raw);
        /* what both guides' kinds add to their distances, on average */
        double cost_mm = away_mm
                         + (sq_snap_cost_mm (seat, a->reason.kind, 0)
                            + sq_snap_cost_mm (seat, b->reason.kind, 0))
                               / 2;
        if (cost_mm < best_mm - TIE_MM && may_land (seat, moved, at))
          {
            best_mm = cost_mm;
            one = a;
            other = is_point ? NULL : b;
            snap->at = at;
          }
      }
  if (one == NULL)
    return FALSE;
  give_reason (seat, one, snap);
  if (other != NULL)
    give_reason (seat, other, snap);
  return TRUE;
}

static void
give_grid (const SqSnapSeat *seat, SqPoint from, SqSnap *snap)
{
  snap->reasons[snap->n_reasons++] = (SqSnapReason){
    .kind = SQ_SNAP_GRID, .from = from, .to = snap->at, .figure = seat->question->grid_mm
  };
}

/* A whole number of steps along the line where it begins to count. */
static gboolean
step_along (const SqSnapSeat *seat, guint moved, const SqGuide *line, SqSnap *snap)
{
  double along_mm = sq_dot (line->along, sq_sub (snap->at, line->count_from));
  SqPoint at;

  if (line->locus != SQ_GUIDE_LINE || !sq_snap_takes (seat, SQ_SNAP_GRID))
    return FALSE;
  at = sq_moved (line->count_from, line->along, sq_snap_whole (seat, along_mm));
  if (!may_land (seat, moved, at))
    return FALSE;
  snap->at = at;
  return TRUE;
}

static gboolean
land_on_one (const SqSnapSeat *seat, guint moved, const SqGuides *guides, SqSnap *snap)
{
  const SqGuide *best = NULL;

  for (guint i = 0; i < guides->n; i++)
    {
      const SqGuide *guide = &guides->guides[i];
      SqPoint at = on_guide (guide, seat->raw);
      if ((best != NULL && !(guide->cost_mm < best->cost_mm - TIE_MM))
          || !may_land (seat, moved, at))
        continue;
      best = guide;
      snap->at = at;
    }
  if (best == NULL)
    return FALSE;
  gboolean is_stepped = step_along (seat, moved, best, snap);
  give_reason (seat, best, snap);
  if (is_stepped)
    give_grid (seat, best->count_from, snap);
  return TRUE;
}

static void
land_on_grid (const SqSnapSeat *seat, guint moved, SqSnap *snap)
{
  SqVector x = seat->grid_along;
  SqVector v = sq_sub (seat->raw, seat->grid_at);

  if (!sq_snap_takes (seat, SQ_SNAP_GRID))
    return;
  snap->at = sq_moved (sq_moved (seat->grid_at, x, sq_snap_whole (seat, sq_dot (x, v))),
                       sq_left (x), sq_snap_whole (seat, sq_cross (x, v)));
  if (may_land (seat, moved, snap->at))
    give_grid (seat, seat->grid_at, snap);
}

SqSnap
sq_snap_corner (const SqSnapSeat *seat)
{
  SqSnap snap = { .at = seat->raw };
  gboolean is_new = seat->question->drag == SQ_DRAG_NEW_CORNER;
  guint held = sq_snap_find (seat, seat->question->id);
  guint moved = is_new ? SQ_SNAP_NONE : held;
  SqGuides guides = { .n = 0 };

  sq_snap_collect (seat, moved, is_new ? held : SQ_SNAP_NONE, &guides);
  if (!land_on_two (seat, moved, &guides, &snap) && !land_on_one (seat, moved, &guides, &snap))
    land_on_grid (seat, moved, &snap);
  return snap;
}
