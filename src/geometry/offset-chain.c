/* SPDX-License-Identifier: GPL-3.0-or-later */
/* The closed chain of pieces that is the raw parallel. */
#include "geometry/offset-chain.h"

#include "base/units.h"

#include <stdlib.h>

/* As near to a line or circle as doubles tell (mm). */
#define SETTLED_MM 1e-11

double
sq_offset_chain_area_mm2 (const GArray *chain)
{
  SqPoint first = sq_offset_piece (chain, 0)->s.from;
  double area = 0;

  /* about the first node: far from the origin the terms would cancel */
  for (guint i = 0; i < chain->len; i++)
    {
      const SqSegment *s = &sq_offset_piece (chain, i)->s;
      SqSegment about_first = { sq_sub (s->from, first), sq_sub (s->to, first), s->bulge };
      area += sq_segment_area_mm2 (&about_first);
    }
  return area;
}

typedef struct
{
  SqBox box;
  guint piece;
} Boxed;

static int
compare_boxes (gconstpointer a, gconstpointer b)
{
  double x = ((const Boxed *) a)->box.min.x, y = ((const Boxed *) b)->box.min.x;
  return (x > y) - (x < y);
}

gboolean
sq_offset_near_pairs (const GArray *chain, SqOffsetPairFunc func, gpointer data)
{
  g_autofree Boxed *boxes = g_new (Boxed, chain->len);

  for (guint i = 0; i < chain->len; i++)
    boxes[i] = (Boxed){ sq_segment_box (&sq_offset_piece (chain, i)->s), i };
  qsort (boxes, chain->len, sizeof (Boxed), compare_boxes);
  for (guint i = 0; i < chain->len; i++)
    for (guint j = i + 1;
         j < chain->len && boxes[j].box.min.x <= boxes[i].box.max.x + SQ_COINCIDE_MM; j++)
      if (sq_box_meets (boxes[i].box, boxes[j].box, SQ_COINCIDE_MM)
          && !func (chain, MIN (boxes[i].piece, boxes[j].piece),
                    MAX (boxes[i].piece, boxes[j].piece), data))
        return FALSE;
  return TRUE;
}

/* Whether a line square to the way through the common node of @a and @b parts them: each lies
 * between its tangent there and its chord. */
static gboolean
part_at_node (const SqSegment *a, const SqSegment *b)
{
  SqVector in = sq_segment_direction (a, 1), out = sq_segment_direction (b, 0);
  SqVector way = sq_add (in, out);
  SqVector chord_a = sq_sub (a->to, a->from), chord_b = sq_sub (b->to, b->from);

  return fabs (a->bulge) < 1 && fabs (b->bulge) < 1 && sq_dot (in, way) > 1e-3
         && sq_dot (chord_a, way) > 1e-3 * sq_norm (chord_a)
         && sq_dot (chord_b, way) > 1e-3 * sq_norm (chord_b);
}

static gboolean
meet_only_at_node (const GArray *chain, guint i, guint j, gpointer data)
{
  const SqSegment *a = &sq_offset_piece (chain, i)->s, *b = &sq_offset_piece (chain, j)->s;
  gboolean a_to_b = j == i + 1, b_to_a = i == 0 && j == chain->len - 1, overlap;
  SqMeeting meetings[2];
  (void) data;

  if (a_to_b && !b_to_a && part_at_node (a, b))
    return TRUE;
  if (b_to_a && !a_to_b && part_at_node (b, a))
    return TRUE;
  guint n = sq_segments_meet (a, b, meetings, &overlap);
  if (n != (guint) a_to_b + (guint) b_to_a || overlap)
    return FALSE;
  for (guint k = 0; k < n; k++)
    if (!(a_to_b && sq_distance (meetings[k].at, a->to) <= SQ_COINCIDE_MM)
        && !(b_to_a && sq_distance (meetings[k].at, b->to) <= SQ_COINCIDE_MM))
      return FALSE;
  return TRUE;
}

gboolean
sq_offset_chain_is_simple (const GArray *chain)
{
  return sq_offset_near_pairs (chain, meet_only_at_node, NULL);
}

/* How far @p is from the unbounded line or circle of @s, and the unit direction in which that
 * grows. */
static double
distance_from (const SqSegment *s, SqPoint p, SqVector *outward)
{
  if (!sq_segment_is_arc (s))
    {
      *outward = sq_right (sq_segment_direction (s, 0));
      return sq_dot (sq_sub (p, s->from), *outward);
    }
  SqVector from_centre = sq_sub (p, sq_segment_centre (s));
  *outward = sq_unit (from_centre);
  return sq_norm (from_centre) - fabs (sq_segment_radius_mm (s));
}

gboolean
sq_offset_settle_on (const SqSegment *a, const SqSegment *b, double within_mm, SqPoint *at)
{
  SqPoint p = *at;

  for (int round = 0; round < 8 && sq_distance (p, *at) <= within_mm; round++)
    {
      SqVector out_a, out_b;
      double from_a = distance_from (a, p, &out_a), from_b = distance_from (b, p, &out_b);
      if (fmax (fabs (from_a), fabs (from_b)) <= SETTLED_MM)
        {
          *at = p;
          return TRUE;
        }
      double cross = sq_cross (out_a, out_b);
      if (fabs (cross) < SQ_STRAIGHT_RAD)
        return FALSE;
      SqVector to_a = sq_scale (sq_left (out_b), from_a),
               to_b = sq_scale (sq_left (out_a), -from_b);
      p = sq_moved (p, sq_add (to_a, to_b), 1 / cross);
    }
  return FALSE;
}
