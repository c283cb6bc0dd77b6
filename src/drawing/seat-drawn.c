/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "drawing/seat-drawn.h"

#include "geometry/rounding.h"

static SqPath *
polygon_of (const SqCorner *corners, guint n)
{
  SqPathBuilder builder;
  sq_path_builder_init (&builder);
  for (guint i = 0; i < n; i++)
    sq_path_builder_add (&builder, corners[i].at, 0, i);
  return sq_path_builder_end (&builder, TRUE);
}

SqPath *
sq_seat_ring (const SqOutline *outline, guint ring)
{
  guint n;
  const SqCorner *corners = sq_outline_ring (outline, ring, &n);
  g_autoptr (SqPath) sharp = sq_outline_path (outline, ring, NULL);
  if (sharp == NULL)
    return polygon_of (corners, n);
  guint n_nodes = sq_path_n_nodes (sharp);
  const SqNode *nodes = sq_path_nodes (sharp);
  g_autofree double *radius = g_new0 (double, n_nodes);
  g_autofree guint32 *tag = g_new0 (guint32, n_nodes);
  gboolean any = FALSE;
  for (guint i = 0; i < n_nodes; i++)
    if (i == 0 || nodes[i].tag != nodes[i - 1].tag)
      {
        radius[i] = fmax (corners[nodes[i].tag].radius_mm, 0);
        tag[i] = n + nodes[i].tag;
        any = any || radius[i] > 0;
      }
  return any ? sq_path_rounded (sharp, radius, tag, NULL) : g_steal_pointer (&sharp);
}

gboolean
sq_seat_edge_point (const SqPath *ring, guint32 tag, double t, SqPoint *at, SqVector *along)
{
  double length = 0, rest;
  guint n = sq_path_n_segments (ring);
  for (guint i = 0; i < n; i++)
    if (sq_path_nodes (ring)[i].tag == tag)
      length += sq_path_station_mm (ring, i + 1) - sq_path_station_mm (ring, i);
  rest = t * length;
  for (guint i = 0; i < n; i++)
    {
      SqSegment segment = sq_path_segment (ring, i);
      double own = sq_segment_length_mm (&segment);
      if (sq_path_nodes (ring)[i].tag != tag)
        continue;
      if (rest <= own * (1 + 1e-9))
        {
          *at = sq_segment_point (&segment, own > 0 ? rest / own : 0);
          *along = sq_segment_direction (&segment, own > 0 ? rest / own : 0);
          return TRUE;
        }
      rest -= own;
    }
  return FALSE;
}
