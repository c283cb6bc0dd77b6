/* SPDX-License-Identifier: GPL-3.0-or-later */
/* The one path type: lines and circular arcs, with a tag on every segment that says what it came
 * from and survives offset, cut, mirror and rounding. Immutable, shared by reference. */
#pragma once

#include "geometry/segment.h"

/* A node, and the segment that starts there. */
typedef struct
{
  SqPoint at;
  double bulge; /* see SqSegment */
  guint32 tag;  /* small numbers, 0 … n_tags − 1; what a tag means is its maker's business */
} SqNode;

/* A ring (closed; its first point is not repeated) or an open path (the last node starts no
 * segment; its bulge is 0 and its tag is ignored). Outer rings run counter-clockwise, holes
 * clockwise, so that "outward", away from the material, is to the right of travel in both. */
typedef struct _SqPath SqPath;

/* Takes a copy of @nodes. A ring has at least 2 nodes, an open path at least 2. Coordinates and
 * bulges must be finite. Nodes may coincide; nothing is cleaned here. */
SqPath *sq_path_new (const SqNode *nodes, guint n_nodes, gboolean is_ring);
SqPath *sq_path_ref (const SqPath *path);
void sq_path_unref (SqPath *path);
G_DEFINE_AUTOPTR_CLEANUP_FUNC (SqPath, sq_path_unref)

/* Builders for the common shapes: a ring through points, tags 0, 1, …; a rectangle from
 * (x0, y0) to (x1, y1) counter-clockwise, tags 0 … 3 from the lower side; a circle of two arcs,
 * tag 0. */
SqPath *sq_path_new_polygon (const SqPoint *points, guint n_points);
SqPath *sq_path_new_rectangle (double x0, double y0, double x1, double y1);
SqPath *sq_path_new_circle (SqPoint centre, double radius_mm);

gboolean sq_path_is_ring (const SqPath *path);
guint sq_path_n_nodes (const SqPath *path);
const SqNode *sq_path_nodes (const SqPath *path);
guint sq_path_n_segments (const SqPath *path);
SqSegment sq_path_segment (const SqPath *path, guint i);
/* One more than the greatest tag. */
guint32 sq_path_n_tags (const SqPath *path);

double sq_path_length_mm (const SqPath *path);
/* > 0 for a counter-clockwise ring; 0 for an open path. */
double sq_path_area_mm2 (const SqPath *path);
SqBox sq_path_box (const SqPath *path);

/* Length from the start to node @i; for a ring also i = n_nodes (the whole length). */
double sq_path_station_mm (const SqPath *path, guint i);

/* Point, and unit direction if @direction is given, at @station_mm from the start. On a ring any
 * station, taken round; on an open path held to its ends. At a node the direction is that of the
 * segment that starts there. */
SqPoint sq_path_point_at (const SqPath *path, double station_mm, SqVector *direction);

typedef struct
{
  double distance_mm;
  SqPoint at;
  guint segment;
  double station_mm;
} SqNearest;

SqNearest sq_path_nearest (const SqPath *path, SqPoint p);

/* Winding number of a ring about @p: 1 inside a counter-clockwise simple ring, −1 inside a
 * clockwise one, 0 outside. On the ring itself any of the neighbours' values. */
int sq_path_winding (const SqPath *ring, SqPoint p);

/* New paths. Tags stay with their segments. */
SqPath *sq_path_reversed (const SqPath *path);
/* Mirrored x → −x; the direction of travel is turned over too, so a counter-clockwise ring stays
 * counter-clockwise. The result starts at the image of the same node as @path (for an open path:
 * of its last). */
SqPath *sq_path_mirrored (const SqPath *path);
/* Turned by @turn_rad counter-clockwise about (0, 0), then moved. */
SqPath *sq_path_moved (const SqPath *path, double turn_rad, SqVector by);
/* The open path from station @from_mm forwards to @to_mm; on a ring past the start where to_mm <=
 * from_mm (equal: once round). Cuts exactly; ends within SQ_COINCIDE_MM of a node use the node. */
SqPath *sq_path_part (const SqPath *path, double from_mm, double to_mm);
/* Lines only; no point of an arc is farther than @deviation_mm from its chord. Nodes stay nodes.
 * Segments keep their tags. */
SqPath *sq_path_flattened (const SqPath *path, double deviation_mm);
/* A ring with a node added at each of @n stations (any order, duplicates and ones within
 * SQ_COINCIDE_MM of a node add nothing). */
SqPath *sq_path_split_at (const SqPath *path, const double *stations_mm, guint n);

/* A growing list of nodes: how paths are made. */
typedef struct
{
  GArray *nodes; /* of SqNode */
} SqPathBuilder;

void sq_path_builder_init (SqPathBuilder *builder);
/* A node at @at whose segment bulges by @bulge and carries @tag. */
void sq_path_builder_add (SqPathBuilder *builder, SqPoint at, double bulge, guint32 tag);
/* Ends it: the path, or NULL if there are fewer than 2 nodes. The builder is empty after. */
SqPath *sq_path_builder_end (SqPathBuilder *builder, gboolean is_ring);
