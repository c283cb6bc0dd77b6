/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "cover/notches.h"

#include "base/units.h"

static guint
ticks_in_middle (SqSideOf side)
{
  switch (side)
    {
    case SQ_SIDE_BACK:
      return 2;
    case SQ_SIDE_RIGHT:
      return 3;
    case SQ_SIDE_FRONT:
    case SQ_SIDE_LEFT:
      break;
    }
  return 1;
}

/* The tightest arc between two stations; infinite if straight. */
static double
tightest_radius_mm (const SqPath *path, double from, double to)
{
  double tightest = INFINITY, whole = sq_path_length_mm (path);

  for (guint i = 0; i < sq_path_n_segments (path); i++)
    {
      SqSegment s = sq_path_segment (path, i);
      double a = sq_path_station_mm (path, i), b = sq_path_station_mm (path, i + 1);
      if (!sq_segment_is_arc (&s))
        continue;
      if ((a < to - 1e-6 && b > from + 1e-6) || (a + whole < to - 1e-6 && b + whole > from + 1e-6))
        tightest = fmin (tightest, fabs (sq_segment_radius_mm (&s)));
    }
  return tightest;
}

double
sq_notch_spacing_mm (const SqDefaults *house, double radius)
{
  for (guint i = 0; i < house->n_notch_steps; i++)
    if (radius > house->notch_steps[i].over_radius_mm)
      return house->notch_steps[i].spacing_mm;
  return INFINITY;
}

static double
spacing_mm (const SqDefaults *house, double radius, double edge_length)
{
  if (!isinf (radius))
    return sq_notch_spacing_mm (house, radius);
  return edge_length > house->notch_straight_over_mm + SQ_COINCIDE_MM
             ? house->notch_straight_spacing_mm
             : INFINITY;
}

static void
add_place (GArray *places, double station, guint ticks, gboolean corner)
{
  SqNotchPlace place = { station, ticks, corner };
  g_array_append_val (places, place);
}

/* Single notches evenly between two that are there. */
static void
fill (const SqDefaults *house, const SqFinishedRing *ring, GArray *places, double from, double to,
      double edge_length)
{
  double spacing = spacing_mm (house, tightest_radius_mm (ring->path, from, to), edge_length);
  if (isinf (spacing) || !(spacing > 0) || to - from <= SQ_COINCIDE_MM)
    return;
  guint n = (guint) fmin (1000, ceil ((to - from) / spacing - 1e-6));
  for (guint k = 1; k < n; k++)
    add_place (places, from + (to - from) * k / n, 1, FALSE);
}

GArray *
sq_notch_places (const SqDefaults *house, const SqFinishedRing *ring)
{
  GArray *places = g_array_new (FALSE, FALSE, sizeof (SqNotchPlace));

  for (guint i = 0; i < ring->n_edges; i++)
    {
      const SqFinishedEdge *e = &ring->edges[i];
      double middle = (e->own_start_mm + e->own_end_mm) / 2,
             length = e->own_end_mm - e->own_start_mm;
      gboolean rounded_before = e->own_start_mm - e->start_mm > SQ_COINCIDE_MM;
      gboolean rounded_after = e->end_mm - e->own_end_mm > SQ_COINCIDE_MM;

      add_place (places, e->start_mm, 1, TRUE);
      if (rounded_before)
        {
          fill (house, ring, places, e->start_mm, e->own_start_mm, 0);
          add_place (places, e->own_start_mm, 1, FALSE);
        }
      if (length > SQ_COINCIDE_MM)
        {
          fill (house, ring, places, e->own_start_mm, middle, length);
          add_place (places, middle, ticks_in_middle (e->side), FALSE);
          fill (house, ring, places, middle, e->own_end_mm, length);
        }
      if (rounded_after)
        {
          add_place (places, e->own_end_mm, 1, FALSE);
          fill (house, ring, places, e->own_end_mm, e->end_mm, 0);
        }
    }
  return places;
}

/* The notch on one side of the seam, @along from that side's start. */
static void
notch_side (SqMaking *making, const SqSide *side, guint seam, double along, guint ticks)
{
  const SqDefaults *house = making->choices.house;
  SqPiece *piece = sq_making_piece (making, side->piece);
  double rest = along;

  for (guint i = 0, index = side->first_run; i < side->n_runs; i++)
    {
      const SqRun *run = sq_piece_run (piece, index);
      index = sq_piece_next_run (piece, index);
      if (rest > run->length_mm + SQ_COINCIDE_MM && i + 1 < side->n_runs)
        {
          rest -= run->length_mm;
          continue;
        }
      const SqPath *ring = sq_piece_sew (piece, run->ring);
      double station = sq_path_station_mm (ring, run->from) + fmin (rest, run->length_mm);
      SqVector before, after;
      SqPoint at = sq_path_point_at (ring, station, NULL);
      /* At a corner the notch points along the bisector; its station may be a hair off the node. */
      sq_path_point_at (ring, station - 1e-6, &before);
      sq_path_point_at (ring, station + 1e-6, &after);
      SqVector outward = sq_right (sq_add (before, after));
      double depth = fmin (house->notch_depth_mm, run->allowance_mm * house->notch_most_share);
      sq_piece_add_mark (piece, SQ_MARK_NOTCH, ticks, at, atan2 (outward.y, outward.x), depth, NULL,
                         (gint) seam, along);
      return;
    }
}

void
sq_notch_seam (SqMaking *making, guint index, double station, guint ticks)
{
  const SqSeam seam = *sq_cover_seam (making->cover, index);

  notch_side (making, &seam.a, index, station, ticks);
  notch_side (making, &seam.b, index, seam.length_b_mm - station, ticks);
}
