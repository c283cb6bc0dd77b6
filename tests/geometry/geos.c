/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "geometry/geos.h"

GEOSContextHandle_t
geos_context (void)
{
  static GEOSContextHandle_t context;

  if (context == NULL)
    context = GEOS_init_r ();
  return context;
}

/* The nodes of the flattened path, a ring's first repeated at its end. */
static GEOSCoordSequence *
coordinates (const SqPath *path, double deviation_mm)
{
  g_autoptr (SqPath) flat = sq_path_flattened (path, deviation_mm);
  guint n = sq_path_n_segments (flat) + 1;
  GEOSCoordSequence *sequence = GEOSCoordSeq_create_r (geos_context (), n, 2);

  for (guint i = 0; i < n; i++)
    {
      SqPoint at = sq_path_nodes (flat)[i % sq_path_n_nodes (flat)].at;
      GEOSCoordSeq_setXY_r (geos_context (), sequence, i, at.x, at.y);
    }
  return sequence;
}

GEOSGeometry *
geos_polygon (const SqPath *ring, double deviation_mm)
{
  GEOSGeometry *shell = GEOSGeom_createLinearRing_r (geos_context (),
                                                     coordinates (ring, deviation_mm));
  return GEOSGeom_createPolygon_r (geos_context (), shell, NULL, 0);
}

GEOSGeometry *
geos_line (const SqPath *path, double deviation_mm)
{
  return GEOSGeom_createLineString_r (geos_context (), coordinates (path, deviation_mm));
}

double
geos_area_mm2 (const SqPath *ring, double deviation_mm)
{
  GEOSGeometry *polygon = geos_polygon (ring, deviation_mm);
  double area = -1;

  GEOSArea_r (geos_context (), polygon, &area);
  GEOSGeom_destroy_r (geos_context (), polygon);
  return area;
}

double
geos_length_mm (const SqPath *path, double deviation_mm)
{
  GEOSGeometry *line = geos_line (path, deviation_mm);
  double length = -1;

  GEOSLength_r (geos_context (), line, &length);
  GEOSGeom_destroy_r (geos_context (), line);
  return length;
}

gboolean
geos_is_simple (const SqPath *path, double deviation_mm)
{
  GEOSGeometry *line = geos_line (path, deviation_mm);
  gboolean is_simple = GEOSisSimple_r (geos_context (), line) == 1;

  GEOSGeom_destroy_r (geos_context (), line);
  return is_simple;
}

gboolean
geos_are_near (const SqPath *a, const SqPath *b, double within_mm, double deviation_mm)
{
  GEOSGeometry *line_a = geos_line (a, deviation_mm), *line_b = geos_line (b, deviation_mm);
  gboolean are_near = GEOSDistanceWithin_r (geos_context (), line_a, line_b, within_mm) == 1;

  GEOSGeom_destroy_r (geos_context (), line_a);
  GEOSGeom_destroy_r (geos_context (), line_b);
  return are_near;
}
