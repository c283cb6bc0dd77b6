/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "job/symmetry-sides.h"

#include "job/safe-edit.h"

#include <math.h>

/* An angle is met within this (rad). */
#define MET_RAD 1e-7

/* A ring, and which of its corners move: those of one half, from the side or corner that is changed
 * up to the axis. The edge that crosses the axis there takes up the change. */
typedef struct
{
  const SqOutline *outline;
  const SqCorner *corners;
  const SqTwins *twins;
  guint n;
  gboolean *is_moved;
} Half;

static SqOutline *
refuse (SqSidesResult why, SqSidesResult *result)
{
  if (result != NULL)
    *result = why;
  return NULL;
}

/* Marks corners from @from on, or back; TRUE if that led to the axis and any can move. */
static gboolean
mark (Half *half, guint from, gboolean is_on)
{
  guint i = from, marked = 0;
  for (guint j = 0; j < half->n; j++)
    half->is_moved[j] = FALSE;
  for (; marked < half->n; marked++)
    {
      guint edge = is_on ? i : (i + half->n - 1) % half->n;
      if (half->twins[i].twin == half->corners[i].id)
        return marked > 0;
      half->is_moved[i] = TRUE;
      if (half->twins[edge].edge_twin == half->corners[edge].id)
        return TRUE;
      i = is_on ? (i + 1) % half->n : edge;
    }
  return FALSE;
}

/* The marked corners moved by @by, or turned about @about, and their twins likewise. */
static SqOutline *
move_half (const Half *half, SqVector by, SqPoint about, double turn_rad, const SqAxis *axis)
{
  g_autoptr (SqOutline) one = sq_outline_ref (half->outline);
  for (guint i = 0; i < half->n; i++)
    {
      SqPoint at = half->corners[i].at;
      SqPoint to = sq_add (sq_add (about, sq_turned (sq_sub (at, about), turn_rad)), by);
      SqOutline *next;
      if (!half->is_moved[i])
        continue;
      next = sq_outline_with_corner_moved (one, half->corners[i].id, sq_sub (to, at));
      sq_outline_unref (one);
      one = next;
    }
  return sq_outline_symmetric_edit (half->outline, one, axis, FALSE);
}

/* Takes @outline; NULL where a good seat would cross itself. */
static SqOutline *
checked (const SqOutline *before, SqOutline *outline, SqSidesResult *result)
{
  g_autoptr (SqOutline) made = outline;
  if (sq_outline_is_good (before, NULL) && !sq_outline_is_good (made, NULL))
    return refuse (SQ_SIDES_CROSS, result);
  if (result != NULL)
    *result = SQ_SIDES_FINE;
  return g_steal_pointer (&made);
}

/* The ring of @id in @half, its place in *@index; FALSE where the ring has no twins. */
static gboolean
half_init (Half *half, const SqOutline *outline, SqId id, GArray *twins, guint *index)
{
  guint ring, first = 0;
  if (sq_outline_corner (outline, id, &ring, index) == NULL)
    return FALSE;
  for (guint r = 0, n; r < ring; r++, first += n)
    sq_outline_ring (outline, r, &n);
  half->outline = outline;
  half->corners = sq_outline_ring (outline, ring, &half->n);
  half->twins = &g_array_index (twins, SqTwins, first);
  half->is_moved = g_new0 (gboolean, half->n);
  return half->twins[*index].twin != 0;
}

static SqOutline *
with_length (Half *half, guint i, double length_mm, SqStays stays, const SqAxis *axis,
             SqSidesResult *result)
{
  guint next = (i + 1) % half->n;
  SqVector chord = sq_sub (half->corners[next].at, half->corners[i].at);
  double more_mm = length_mm - sq_norm (chord);
  gboolean is_across = half->twins[i].edge_twin == half->corners[i].id;
  gboolean is_on = stays == SQ_STAYS_START || is_across;
  if (!mark (half, is_on ? next : i, is_on) && !mark (half, is_on ? i : next, !is_on))
    return refuse (SQ_SIDES_NO_DIRECTION, result);
  /* Across the axis the other end moves as much. */
  double share = (half->is_moved[next] ? 1 : -1) * (is_across ? 0.5 : 1);
  SqVector by = sq_scale (sq_unit (chord), share * more_mm);
  return checked (half->outline, move_half (half, by, sq_point (0, 0), 0, axis), result);
}

SqOutline *
sq_outline_with_side_length_symmetric (const SqOutline *outline, SqId edge, double length_mm,
                                       SqStays stays, const SqAxis *axis, SqSidesResult *result)
{
  g_autoptr (GArray) twins = sq_outline_twins (outline, axis);
  Half half = { 0 };
  SqOutline *made;
  guint i;
  if (!(length_mm > 0))
    return refuse (SQ_SIDES_NOT_POSITIVE, result);
  if (length_mm > SQ_SEAT_MOST_MM)
    return refuse (SQ_SIDES_TOO_LONG, result);
  if (!half_init (&half, outline, edge, twins, &i))
    made = sq_outline_with_side_length (outline, edge, length_mm, stays, result);
  else
    made = with_length (&half, i, length_mm, stays, axis, result);
  g_free (half.is_moved);
  return made;
}

static double
angle_at (const SqOutline *outline, SqId corner)
{
  guint ring, i, n;
  sq_outline_corner (outline, corner, &ring, &i);
  g_autofree SqSideReading *readings = sq_outline_side_readings (outline, ring, &n);
  return readings[i].angle_rad;
}

static SqOutline *
with_angle (Half *half, guint i, double angle_rad, SqStays stays, const SqAxis *axis,
            SqSidesResult *result)
{
  SqId id = half->corners[i].id;
  guint next = (i + 1) % half->n, before = (i + half->n - 1) % half->n;
  gboolean is_middle = half->twins[i].twin == id, is_on = stays == SQ_STAYS_START;
  /* What crosses the axis stays square to it: then the other side turns. */
  if (half->twins[i].edge_twin == id)
    is_on = FALSE;
  else if (half->twins[before].edge_twin == half->corners[before].id)
    is_on = TRUE;
  if (!mark (half, is_on ? next : before, is_on) && !mark (half, is_on ? before : next, !is_on))
    return refuse (SQ_SIDES_NO_DIRECTION, result);
  /* In the middle both sides turn. */
  double turn = (angle_rad - angle_at (half->outline, id)) * (is_middle ? 0.5 : 1);
  for (int sign = -1; sign <= 1; sign += 2) /* holes run the other way round */
    {
      g_autoptr (SqOutline) made = move_half (half, sq_point (0, 0), half->corners[i].at,
                                              sign * turn, axis);
      if (fabs (angle_at (made, id) - angle_rad) < MET_RAD)
        return checked (half->outline, g_steal_pointer (&made), result);
    }
  return refuse (SQ_SIDES_NO_DIRECTION, result);
}

SqOutline *
sq_outline_with_angle_symmetric (const SqOutline *outline, SqId corner, double angle_rad,
                                 SqStays stays, const SqAxis *axis, SqSidesResult *result)
{
  g_autoptr (GArray) twins = sq_outline_twins (outline, axis);
  Half half = { 0 };
  SqOutline *made;
  guint i;
  if (!(angle_rad > 0 && angle_rad < 2 * M_PI))
    return refuse (SQ_SIDES_NOT_POSITIVE, result);
  if (!half_init (&half, outline, corner, twins, &i))
    made = sq_outline_with_angle (outline, corner, angle_rad, stays, result);
  else
    made = with_angle (&half, i, angle_rad, stays, axis, result);
  g_free (half.is_moved);
  return made;
}
