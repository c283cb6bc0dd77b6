/* SPDX-License-Identifier: GPL-3.0-or-later */
/* Paths handed to GEOS, arcs flattened: the second opinion on areas, crossings and offsets. */
#pragma once

#include "geometry/path.h"

#include <geos_c.h>

/* The one handle of a test program; GEOS keeps silent. */
GEOSContextHandle_t geos_context (void);

/* @ring as a polygon, or @path as a line string. The caller frees it with
 * GEOSGeom_destroy_r (geos_context (), …). */
GEOSGeometry *geos_polygon (const SqPath *ring, double deviation_mm);
GEOSGeometry *geos_line (const SqPath *path, double deviation_mm);

double geos_area_mm2 (const SqPath *ring, double deviation_mm);
double geos_length_mm (const SqPath *path, double deviation_mm);
/* GEOSisSimple of the line of a path. */
gboolean geos_is_simple (const SqPath *path, double deviation_mm);
/* Whether the line strings of both come nearer than @within_mm. */
gboolean geos_are_near (const SqPath *a, const SqPath *b, double within_mm, double deviation_mm);
