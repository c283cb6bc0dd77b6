/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "exchange/dxf-entities.h"

static double
degrees (double angle_rad)
{
  return angle_rad * 180 / G_PI;
}

/* A DXF bulge is the tangent of a quarter of the arc's angle, > 0 counter-clockwise, 0 for a line:
 * ours. */
static void
add_bulge (SqDxfOut *out, const SqPath *path, guint node)
{
  if (node >= sq_path_n_segments (path))
    return;
  SqSegment segment = sq_path_segment (path, node);
  if (sq_segment_is_arc (&segment))
    sq_dxf_ratio (out, 42, segment.bulge);
}

static void
add_light_polyline (SqDxfOut *out, guint32 owner, const char *layer, const SqPath *path)
{
  const SqNode *nodes = sq_path_nodes (path);
  guint n = sq_path_n_nodes (path);

  sq_dxf_entity (out, "LWPOLYLINE", owner, layer);
  sq_dxf_subclass (out, "AcDbPolyline");
  sq_dxf_integer (out, 90, (int) n);
  sq_dxf_integer (out, 70, sq_path_is_ring (path) ? 1 : 0);
  sq_dxf_length (out, 43, 0);
  for (guint i = 0; i < n; i++)
    {
      sq_dxf_length (out, 10, nodes[i].at.x);
      sq_dxf_length (out, 20, nodes[i].at.y);
      add_bulge (out, path, i);
    }
}

static void
add_old_polyline (SqDxfOut *out, guint32 owner, const char *layer, const SqPath *path)
{
  const SqNode *nodes = sq_path_nodes (path);
  guint32 polyline = sq_dxf_entity (out, "POLYLINE", owner, layer);

  sq_dxf_subclass (out, "AcDb2dPolyline");
  sq_dxf_integer (out, 66, 1);
  sq_dxf_point (out, 10, sq_point (0, 0), 0);
  sq_dxf_integer (out, 70, sq_path_is_ring (path) ? 1 : 0);
  for (guint i = 0; i < sq_path_n_nodes (path); i++)
    {
      sq_dxf_entity (out, "VERTEX", polyline, layer);
      sq_dxf_subclass (out, "AcDbVertex");
      sq_dxf_subclass (out, "AcDb2dVertex");
      sq_dxf_point (out, 10, nodes[i].at, 0);
      add_bulge (out, path, i);
    }
  sq_dxf_entity (out, "SEQEND", polyline, layer);
}

void
sq_dxf_path (SqDxfOut *out, guint32 owner, const char *layer, const SqPath *path, gboolean old)
{
  const SqNode *nodes = sq_path_nodes (path);
  SqSegment first = sq_path_segment (path, 0);

  if (sq_path_n_segments (path) == 1 && !sq_segment_is_arc (&first))
    sq_dxf_line (out, owner, layer, nodes[0].at, nodes[1].at);
  else if (old || out->release == SQ_DXF_R12)
    add_old_polyline (out, owner, layer, path);
  else
    add_light_polyline (out, owner, layer, path);
}

void
sq_dxf_line (SqDxfOut *out, guint32 owner, const char *layer, SqPoint from, SqPoint to)
{
  sq_dxf_entity (out, "LINE", owner, layer);
  sq_dxf_subclass (out, "AcDbLine");
  sq_dxf_point (out, 10, from, 0);
  sq_dxf_point (out, 11, to, 0);
}

void
sq_dxf_mark (SqDxfOut *out, guint32 owner, const char *layer, SqPoint at, double z_mm)
{
  sq_dxf_entity (out, "POINT", owner, layer);
  sq_dxf_subclass (out, "AcDbPoint");
  sq_dxf_point (out, 10, at, z_mm);
}

void
sq_dxf_text (SqDxfOut *out, guint32 owner, const char *layer, const char *label,
             const SqCutText *text)
{
  sq_dxf_entity (out, "TEXT", owner, layer);
  sq_dxf_subclass (out, "AcDbText");
  sq_dxf_point (out, 10, text->at, 0);
  sq_dxf_length (out, 40, text->height_mm);
  sq_dxf_words (out, 1, label, text->text);
  sq_dxf_ratio (out, 50, degrees (text->angle_rad));
  sq_dxf_subclass (out, "AcDbText");
}

void
sq_dxf_insert (SqDxfOut *out, guint32 owner, const char *layer, const char *name,
               const SqCutPlace *place)
{
  sq_dxf_entity (out, "INSERT", owner, layer);
  sq_dxf_subclass (out, "AcDbBlockReference");
  sq_dxf_string (out, 2, name);
  sq_dxf_point (out, 10, place->at, 0);
  sq_dxf_ratio (out, 50, degrees (place->turn_rad));
}
