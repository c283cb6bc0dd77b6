/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "cover/finishing.h"

gboolean
sq_tagged_stretch (const SqPath *path, guint32 tag, double *from, double *to)
{
  const SqNode *nodes = sq_path_nodes (path);
  guint n = sq_path_n_nodes (path);
  gboolean any = FALSE;

  for (guint k = 0; k < n; k++)
    {
      if (nodes[k].tag != tag)
        continue;
      if (!any)
        *from = sq_path_station_mm (path, k);
      *to = sq_path_station_mm (path, k + 1);
      any = TRUE;
    }
  return any;
}

void
sq_measure_edge_stations (SqFinishedRing *ring)
{
  const SqPath *path = ring->path;
  const SqNode *nodes = sq_path_nodes (path);
  guint n = ring->n_edges, n_nodes = sq_path_n_nodes (path);

  for (guint i = 0; i < n; i++)
    {
      ring->edges[i].own_start_mm = INFINITY;
      ring->edges[i].is_straight = TRUE;
    }
  for (guint k = 0; k < n_nodes; k++)
    {
      if (nodes[k].tag >= n)
        continue;
      SqFinishedEdge *e = &ring->edges[nodes[k].tag];
      SqSegment s = sq_path_segment (path, k);
      e->is_straight = e->is_straight && !sq_segment_is_arc (&s) && isinf (e->own_start_mm);
      if (isinf (e->own_start_mm))
        e->own_start_mm = sq_path_station_mm (path, k);
      e->own_end_mm = sq_path_station_mm (path, k + 1);
    }
  for (guint i = 0; i < n; i++)
    {
      SqFinishedEdge *e = &ring->edges[i];
      double start = 0, end = 0;
      if (!isinf (e->own_start_mm))
        continue;
      if (sq_tagged_stretch (path, n + i, &start, &end))
        start = end;
      else
        sq_tagged_stretch (path, n + (i + 1) % n, &start, &end);
      e->own_start_mm = e->own_end_mm = start;
    }
  for (guint i = 0; i < n; i++)
    {
      SqFinishedEdge *e = &ring->edges[i], *before = &ring->edges[(i + n - 1) % n];
      e->start_mm = i == 0 ? 0 : (before->own_end_mm + e->own_start_mm) / 2;
      before->end_mm = i == 0 ? sq_path_length_mm (path) : e->start_mm;
    }
}
